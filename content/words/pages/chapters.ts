/** The page of all chapters. */

export const title = 'Chapters'

export const description = 'Every chapter of Hingebook, in the order to read them.'

/** What a clicker goes to next. */
export const stop = 'chapter'

export const lead = 'Each one stands on the one before. Start at the top, or where you are curious.'

export const notHow = 'Do you know what you want your part to do, but not how?'

export const choose = 'Choose a mechanism'
