/** A card of the garden: the ways to have it. Each is called by its card where it is read aloud. */

export const takeIt = 'Take it'

export const takeCard = (card: string): string => `Take it: ${card}`

/** Before the names of papers. */
export const print = 'Print'

export const printOn = (card: string, paper: string): string => `Print ${card} on ${paper}`

export const steps = 'Steps'

export const stepsOf = (card: string): string => `${card}, step by step`

export const forClass = 'Class'

export const cardForClass = (card: string): string => `${card} for a class`

export const file = 'File'

export const fileOf = (card: string): string => `File of ${card}`
