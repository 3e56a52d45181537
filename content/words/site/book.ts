/** What the book is called, and what its parts are called wherever they are named. */

export const book = 'Hingebook'

/** The language of all pages, as HTML names it (BCP 47). */
export const language = 'en'

export const chapter = (number: number): string => `Chapter ${number}`

export const chapterTitled = (number: number, title: string): string => `${chapter(number)}: ${title}`

export const source = (source: string): string => `Source: ${source}`
