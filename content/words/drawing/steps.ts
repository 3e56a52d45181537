/** What the figures of making steps show. */
export const flat = 'The sheet lies flat with its lines drawn.'
export const folding = 'The right page is lifted over to the left one.'
export const cutting = 'The card is shut with the lines outside, and cut from the fold through both layers.'
export const foldedToFront = 'The card is shut; both layers of each strip are folded over to the front.'
export const foldedToBack = 'The card is turned over; both layers of each strip are folded the other way.'
export const creased =
  'The card is shut; both layers of each strip are folded over to the front, then to the back.'

/** Under the two halves of that figure. */
export const toFront = 'to the front'
export const toBack = 'to the back'

export const reversing = (opening: string): string =>
  `The card is open ${opening}; a strip that still lies in the pages is pushed through to the inside.`

export const nestedCutting =
  'The fold is pinched flat on its page, and cut from the fold through both layers. What lies over it is left out.'

export const nestedCreased = (opening: string): string =>
  `The card is open ${opening}; the strips are cut and their fold lines creased both ways.`

export const nestedReversing = (opening: string): string =>
  `The card is open ${opening}; strips that still lie in their hosts are pushed through.`

export const shut = 'The card is nearly shut; its upper page comes down.'

export const pressed = 'The card is shut; its fold is rubbed down from the middle out to both ends.'

export const ridged =
  'The card is folded the other way: the gutter is a ridge on top, and both pages come down.'

export const backing =
  'The card stands on its edges like a tent; strips of paper are glued over the back of its gutter.'

/** Added to what such a figure shows. */
export const dots = 'There is a dot on each page.'

export const open = (opening: string): string => `The card stands open ${opening}.`

export const covering =
  'The finished card is held over its cover, gutter over gutter; the rim of the cover is hatched, and only the rim.'

export const pieceFolded = (part: string): string => `The piece of ${part} is folded and its tabs are bent.`

export const piecesFlat = (parts: readonly string[]): string =>
  parts.length > 1
    ? `The pieces of ${parts.join(', ')} are cut out and lie flat, with their fold lines and their glue areas.`
    : `The piece of ${parts.join('')} is cut out and lies flat, with its fold lines and its glue areas.`

export const laidOnLeft = (opening: string): string =>
  `The card is open ${opening}; the folded piece lies on the left page, its left joint on its line.`

export const heldOverPlace = (opening: string): string =>
  `The card is open ${opening}; the piece is held over its place.`

export const heldAstride = 'The fold is pinched; the piece is held off it, one half for each side.'
export const setAstride = 'The fold is pinched; the piece sits on it, one half on each side, and is pressed.'

export const heldOverSlits = (opening: string): string =>
  `The card is open ${opening}; the piece is held over its slits, its tabs straight.`

export const heldOverLoose =
  'The platform lies by itself; the piece is held over its slits, its tabs straight.'

export const closing = 'The right page comes over and is pressed on the piece.'

export const popping = (opening: string): string =>
  `The card is open ${opening}; the piece still lies down in the fold, and its ridge is pushed up.`

export const taping = (opening: string): string =>
  `The card stands open ${opening}, with tape along the whole of every joint.`

/** Beside a tape in that figure. */
export const tape = 'tape'
