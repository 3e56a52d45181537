/** The name of a file to print. */
export const fileTitle = (card: string): string => `${card}: template at true size`

/** Before what a card fails. */
export const doNotCut = 'Do not cut yet.'

/** What a card fails, for whoever is about to cut; `first`: the first of it, in a sentence. */
export const toMend = (count: number, first: string): string =>
  `${count === 1 ? '1 thing' : `${count} things`} to mend first. ${first}`
