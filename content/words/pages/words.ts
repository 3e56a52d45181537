/** The page of the words of the trade. */

export const title = 'Words'

export const description = 'The words of paper engineering, each in a sentence or two.'

/** What a clicker goes to next. */
export const stop = 'word'

export const leadBefore =
  'What paper engineers say, and what they mean by it. What you would calculate stands under'

export const formulas = 'Formulas, sizes and weights'

export const leadBetween = ', and where all of it is, in the'

export const index = 'Index'

export const leadAfter = '.'

/** Before the numbers of the chapters that use a word. */
export const chapters = (count: number): string => (count === 1 ? 'Chapter' : 'Chapters')

/** A word's picture, which opens and shuts when it is pressed. */
export const openAndShut = (word: string): string => `Open and shut the picture of “${word}”`
