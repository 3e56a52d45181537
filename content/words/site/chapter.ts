/** What stands round a chapter's text. */

/** Read aloud before its number. */
export const chapter = 'Chapter'

export const placeInGarden = 'Its place in the night garden'

export const inTheGarden = 'In the garden'

export const beforeAndAfter = 'Chapters before and after'

export const before = (number: number): string => `Chapter ${number}`

export const next = (number: number): string => `Next: chapter ${number}`

export const lastSoFar = 'That is the last one so far'

export const allChapters = 'All chapters'
