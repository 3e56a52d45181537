/**
 * The bench: its figures, its opening, its readings. All that stands here comes with the first script of a page, whose
 * bytes are counted: what is said later stands in `beside.ts` and other files.
 */

export const skipToTemplate = 'Skip to the template'

/* The figures. */

export const standingCard = 'Standing card'

export const flatSheet = 'Flat sheet'

export const section = 'Section'

export const chart = 'Chart'

export const dragCard = 'Drag the card to open it, the table to turn it.'

export const dragBlue = 'Drag what is blue.'

export const figure = 'Figure'

/** `side` is `left` or `right`. */
export const figureOn = (side: string): string => `Figure on the ${side}`

export const openingByEdge = 'Opening, by the edge of the page'

/** Rides beside the hand, before an angle. */
export const openingBefore = 'opening'

export const cutAt = 'Cut at'

export const whereCutAlong = 'Where the section is cut, along the gutter'

export const stayAtDot = 'Stay at the dot'

export const stayAtTip = 'Stay at the tip'

export const whereCut = 'Where the section is cut'

/** Rides beside the hand, before a length. */
export const sectionBefore = 'section at'

export const piecesShown = 'Pieces shown on the flat sheet'

export const allPieces = 'All pieces'

/* The point of a bare card, on the sheet. */

export const point = 'Point'

export const toGutter = 'To the gutter'

export const toLowerEdge = 'to the lower edge'

/* The opening. */

export const opening = 'Opening'

export const pause = 'Pause'

export const openAndShut = 'Open and shut the card'

export const openAndShutBySteps = 'Open and shut the card, step by step'

export const onePressOneStep = (degrees: number): string =>
  `One press, one step of ${degrees}°: this device asks for little motion.`

export const opensAllTheWay = 'The opening goes from 0° (shut) to 180° (flat).'

export const shut = '0° (shut)'

export const flat = '180° (flat)'

/** `why` is a sentence, or two. */
export const opensFromTo = (least: string, most: string, why: string): string =>
  `The opening of this card goes from ${least} to ${most}. ${why}`

/* The readings. */

export const rise = 'Rise'

export const reach = 'Reach'

export const standOff = 'Stand-off'

export const gape = 'Gape'

export const wedge = 'Wedge'

export const slit = 'Slit'

export const lean = 'Lean'

export const depth = 'Depth'

export const shutCard = 'Shut card'

export const highestAt = 'Highest at'

export const opensTo = 'Opens to'

export const behindPage = 'Behind the page'

/* Of a point of a bare card: to its twin, and to the gutter. */

export const gap = 'Gap'

export const pointToGutter = 'To the gutter'

/* Before the distance from the edge of the shut card. */

export const justSticksOut = 'just sticks out, '

export const justInside = 'just inside, '

export const sticksOutBy = 'sticks out by '

export const insideBy = 'inside by '

/** Where it cannot be shut at all. */
export const wouldBeInsideBy = 'would be inside by '

/** Before what was read until a phrase moved the card. */
export const wasBefore = 'was'

/* Units, as they are spoken. */

export const degrees = 'degrees'

export const inches = 'inches'

export const millimetres = 'millimetres'

/* What answers the guess. */

export const covered = 'Covered until you have guessed.'

export const show = 'Show'

export const hide = 'Hide'

/* What could not be loaded. */

export const whatMovesCard = 'What moves the card'

export const theChart = 'The chart'

export const whatSetsSizes = 'What sets the sizes'

export const whatChecksCard = 'What checks the card'
