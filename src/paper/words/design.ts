/** What is wrong with a design file. Each follows the name of the field, as in `card.width must be …`, and has no full stop. */

/** A value that is not there, in place of what was given. */
export const leftOut = 'left out'

// Labels of sizes that are no mechanism's.

export const pageWidth = 'Page width'

export const pageHeight = 'Page height'

export const thickness = 'Thickness'

export const lineWidth = 'Line width'

// Any field. `got`: what was given, shortened.

export const notThing = (got: string): string => `must be an object in curly brackets, not ${got}`

export const unknownKey = (known: readonly string[]): string => `is not known here: use ${known.join(', ')}`

const inRange = (min: number, max: number, unit: 'mm' | 'deg'): string =>
  `from ${min} to ${max} ${unit === 'mm' ? 'mm' : 'degrees'}`

export const notNumber = (min: number, max: number, unit: 'mm' | 'deg', got: string): string =>
  `must be a number ${inRange(min, max, unit)}, not ${got}`

export const outOfRange = (min: number, max: number, unit: 'mm' | 'deg', got: number): string =>
  `must be ${inRange(min, max, unit)}, not ${got}`

export const notPoints = (got: string): string => `must be a list of points [across, along], not ${got}`

export const notPoint = (most: number, got: string): string =>
  `must be a point [across, along] in mm, each from -${most} to ${most}, not ${got}`

export const tooManyPoints = (most: number, got: number): string =>
  `must hold at most ${most} points, not ${got}`

export const tooFewPoints = (least: number, got: number): string =>
  `must hold at least ${least} points, not ${got}`

export const notFlag = (got: string): string => `must be true or false, not ${got}`

export const notOneOf = (allowed: readonly string[], got: string): string =>
  `must be one of ${allowed.join(', ')}, not ${got}`

export const notList = (got: string): string => `must be a list in square brackets, not ${got}`

export const notNumbers = (got: string): string => `must be a list of numbers, not ${got}`

export const tooManyNumbers = (most: number, got: number): string =>
  `must hold at most ${most} numbers, not ${got}`

/** So many names are told; of more, the first. */
const MOST_TOLD = 7

const few = (names: readonly string[]): string =>
  names.length > MOST_TOLD ? `${names.slice(0, MOST_TOLD).join(', ')} and so on` : names.join(', ')

// The design and its card.

export const notVersion = (got: string): string => `must be 1, the version of the design file, not ${got}`

export const notTitle = (got: string): string => `must be 1 to 120 characters, not ${got}`

/** `place`: of the character, counted from 1. */
export const unprintable = (place: number, name: string): string =>
  `must hold only characters that can be printed: the one at place ${place}, ${name}, cannot be shown`

export const coverNeedsName = 'needs its name for itself: call the mechanism cover something else'

export const tooManyMechanisms = (most: number, got: number): string =>
  `must hold at most ${most} mechanisms, not ${got}`

// Mechanisms.

export const notId = (got: string): string =>
  `must be 1 to 40 lower-case letters, digits or hyphens, not ${got}`

export const cardsOwnName = (id: string): string => `must not be ${id}: the card itself has that name`

export const usedTwice = (id: string): string => `is used twice: ${id}`

export const noPanelToSitOn = (panels: readonly string[], got: string): string =>
  `must name a page or a panel of an earlier mechanism (${few(panels)}), not ${got}`

export const noCreaseToSitOn = (creases: readonly string[], got: string): string =>
  `must name the gutter or a crease of an earlier mechanism (${few(creases)}), not ${got}`

export const notChoice = (allowed: readonly (string | number)[], got: string): string =>
  `must be ${allowed.join(' or ')}, not ${got}`

// What is drawn.

export const notPanel = (panels: readonly string[], got: string): string =>
  `must name a panel of this design (${few(panels)}), not ${got}`

export const notPanels = (most: number, got: string): string =>
  `must be a list of at most ${most} panels, not ${got}`

export const nothingSeen = 'must be true where there is no fill: else nothing is seen'

export const tooManyShapes = (most: number, got: number): string =>
  `must hold at most ${most} shapes, not ${got}`

export const tooManyPointsInAll = (most: number, got: number): string =>
  `must hold at most ${most} points in all, not ${got}`

export const tooManyLettersInAll = (most: number, got: number): string =>
  `must hold at most ${most} letters of pictures, not ${got}`

export const besidePicture = (value: string | boolean | null): string =>
  `must be ${value} or left out where there is a picture`

export const notFrame =
  'must hold the four corners of the picture, lower left, lower right, upper right, upper left, opposite sides alike'

export const traceAlone = 'can stand beside a picture alone'
