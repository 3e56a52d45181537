/** A mechanism’s numbers, each with the way that it goes. */
export const size = (number: string, way: string): string => `${number} ${way}`

export const towardsYou = 'towards you'
export const awayFromYou = 'away from you'
export const towardsBeginning = 'towards the beginning of the fold'
export const towardsEnd = 'towards the end of the fold'
export const towardsFold = 'towards the fold'
export const awayFromFold = 'away from the fold'
export const clockwise = 'clockwise'
export const anticlockwise = 'anticlockwise'
export const narrower = (way: string): string => `narrower ${way}`
export const wider = (way: string): string => `wider ${way}`
export const left = 'left'
export const right = 'right'

/** Several places of one kind. */
export const several = (name: string, places: readonly string[]): string =>
  `${name}\u00a0at\u00a0${places.join(' and\u00a0')}`

/** The card’s own numbers, after its name. */
export const card = 'card'
export const cardSizes = (wide: string, high: string, page: string, thick: string): string =>
  `Open ${wide} × ${high}, page ${page} wide, ${thick} thick`
