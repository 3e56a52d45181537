/** What moves in a step. */
export const pushing =
  'The card opens flat, the strips come over to the other side, and it shuts a little with them inside.'
export const stripsJump =
  'The strips jump from one side to the other: paper bends for a moment, which is not drawn.'
export const pieceJumps =
  'The piece jumps from its lower state to its upper one: paper bends for a moment, which is not drawn.'
export const closing =
  'The right page comes over, presses on the piece, and takes it along when the card opens again.'
export const shutting = 'The card shuts, and all that stands in it lies down.'
export const opening = 'The card opens, and all that lies in it stands up.'
export const lowering = 'The piece comes down on its place.'
export const threading = 'The piece comes down on the card, and its tabs go through their slits.'
export const threadingLoose = 'The piece comes down on the platform, and its tabs go through their slits.'
export const creasing =
  'The strips are folded over to the front and back flat. The card is turned over, and they are folded the other way and back flat.'
export const covering = 'The card comes down on its cover, gutter on gutter. Both are shut, and open as one.'

/** How far it is. */
export const pieceOverCard = (mm: string): string => `piece ${mm} mm over the card`
export const pieceOverPlatform = (mm: string): string => `piece ${mm} mm over the platform`
export const stripsToFront = (by: string): string => `strips folded ${by} over to the front`
export const stripsToBack = (by: string): string => `strips folded ${by} over to the back`
export const turnedOver = (by: string): string => `card turned over by ${by}`
export const cardOverCover = (mm: string): string => `card ${mm} mm over its cover`
export const cardOpen = (by: string): string => `card open ${by}`

/** What moves, and how far it is now. */
export const now = (moves: string, far: string): string => `${moves} Now: ${far}.`
