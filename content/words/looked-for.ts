/** What a search has to know of the language. */

/** Words that say nothing of what is looked for. */
export const idle =
  'a an and as at be but by can do does doesn doesn’t don don’t isn isn’t not won won’t i if in into is it its me my of on or so that the there this to too up was what when will with you your'

/** A word without an ending that changes nothing of what it means. */
export const withoutEnding = (word: string): string =>
  word.length > 4 ? word.replace(/(?:ing|es|ed|s)$/, '') : word

/** Said of everything on the page that finds faults: it tells one trouble from another no more than `the` does. */
export const everywhere = 'card'

/** A mechanism that is written in several ways, as one word. */
export const oneWord = 'vfold'

/** A text with that word in it, and a fold besides. */
export const withOneWord = (text: string): string => text.replace(/\bv[-\s]?(fold\w*)/gi, `${oneWord} $1`)
