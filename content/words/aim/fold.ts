/** The way to a place for the tip, folded away. */
export const where = (top: string): string => `Where do you want the ${top}?`

/** What could not be loaded. */
export const finder = 'What works the sizes out'
