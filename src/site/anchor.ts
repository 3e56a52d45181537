/** A sentence as the end of an address: `The moth leans.` is `the-moth-leans`. */
export const anchorOf = (words: string): string =>
  words
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, '-')
    .replace(/^-|-$/g, '')

/** Where a word of the glossary stands on its page, by its own spelling: `V-fold`, `cut-layer`. */
export const wordAnchor = (word: string): string => word.replaceAll(' ', '-')
