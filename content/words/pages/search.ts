/** The page that looks through the book. */

export const title = 'Search'

export const description = 'Look through the whole book: chapters, words, troubles, plans.'
