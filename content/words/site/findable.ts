/** What a place is that the search has found, and what is told of it. */

export const chapter = 'Chapter'

export const word = 'Word'

export const wordAlso = (forms: readonly string[]): string => `Word: ${forms.join(', ')}`

export const toLookUp = 'To look up'

export const index = 'Index'

export const fromAToZ = 'From A to Z'

export const indexTells = (subjects: readonly string[]): string =>
  `What the book is about, and where: ${subjects.join(', ')}.`

export const goesWrongIn = (chapter: string): string => `When it goes wrong: ${chapter}`

export const plan = 'Plan'

export const cardOfGarden = 'A card of the garden, step by step'

export const madeOf = (parts: readonly string[]): string => `Made of ${parts.join(', ')}.`
