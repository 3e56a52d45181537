/** The field for a ruler's reading. */
export const myRuler = 'My ruler says'

export const secondReading = 'Add a second reading'

/** What could not be loaded. */
export const comparer = 'What compares your reading'
