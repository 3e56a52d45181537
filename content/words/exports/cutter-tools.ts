/** What is asked of pieces for a cutting machine. */
export const summary = 'For a cutting machine'

export const explained =
  'The pieces side by side at true size, each line type a layer: creases first, outlines last.'

/** In front of the choice of papers. */
export const cutFrom = 'Cut from'

export const papers = {
  a4: 'A4',
  a3: 'A3',
  letter: 'US Letter',
  tabloid: 'US Tabloid',
  roll: 'A roll 300 mm wide',
} as const

/** In front of their number. */
export const copies = 'Copies'

export const copiesRange = (most: number): string => `A whole number of copies from 1 to ${most}.`

export const keepsGrain = 'Main folds along the grain'

export const bridges = 'Bridges hold the pieces'

export const perforated = 'Folds as rows of cuts'

export const piecesAs = (format: string): string => `Pieces for a cutting machine as ${format}`

export const notMade = (reason: string): string => `This could not be made: ${reason}`
