/** The steps on paper. */
export const fileTitle = (card: string): string => `${card}: step by step`

/** Over the first page, and under each. */
export const title = (card: string): string => `${card}, step by step`
export const page = (card: string, number: number, all: number): string =>
  `${card}, step by step, ${number} of ${all}`

export const step = (number: number, what: string): string => `${number}. ${what}`

/** What begins a paragraph of a step. */
export const letters = 'Letters.'
export const check = 'Check.'
export const youNeed = 'You need:'
export const takeCare = 'Take care.'
