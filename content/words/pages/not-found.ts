/** The page for an address that is none of the book's. */

export const title = 'No such page'

export const description = 'This page does not exist.'

export const notInBook = 'This page is not in the book'

export const slipOrMoved = 'The address may have a slip in it, or the page has moved.'

export const seeChapters = 'See all chapters'

export const toFirstPage = 'To the first page'

export const heron = 'A heron looks out of a card, to chapter 2'
