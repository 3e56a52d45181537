/** What folds, faces and parts of a card are called, in sentences and in the list of what is on it. */
export const part = (name: string): string => `the ${name}`

export const gutter = 'the gutter'

/** Sides and ridge, as they stand in front of `page`, `fold` or `face`. */
export const sides: Readonly<Record<string, string>> = { ridge: 'ridge', left: 'left', right: 'right' }

export const page = (side: string): string => `the ${side} page`

/** The one face of a piece. */
export const pieceFace = (owner: string): string => `the ${owner}`

export const faceOf = (side: string, owner: string): string => `the ${side} face of the ${owner}`

export const ridgeOf = (owner: string): string => `the ridge of the ${owner}`

export const foldOf = (side: string, owner: string): string => `the ${side} fold of the ${owner}`

/** In the list, under their owner. */
export const ridge = 'ridge'

export const itsFace = 'its face'

export const sideFold = (side: string): string => `${side} fold`

export const sideFace = (side: string): string => `${side} face`

/** In the list, by themselves. */
export const leftPage = 'Left page'

export const gutterRow = 'Gutter'

export const rightPage = 'Right page'

/** How many parts stand on it. */
export const parts = (count: number): string =>
  count === 0 ? 'free' : count === 1 ? '1 part' : `${count} parts`

export const hidden = 'hidden'

export const locked = 'locked'

export const toMend = 'to mend'

/** What is noted of a row, one behind the other. */
export const notes = (all: readonly string[]): string => all.join(', ')
