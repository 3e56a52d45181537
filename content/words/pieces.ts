/** What is said where pieces are stuck on, cut, drawn and coloured. All of it comes when the shelf is asked for. */

/** The tabs. */
export const tabs = { cut: 'Outline', shelf: 'Shelf', draw: 'Draw', colour: 'Colour' } as const

/** Said of the other side in every tab. */
export const onBothSides = 'The same on the other side of the ridge'

export const takeAway = 'Take it away'

/** Tools to draw with. */
export const smooth = 'Smooth'

export const snapToEdges = 'Snap to edges'

export const freehand = 'Freehand'

export const planLabel = 'The face lying flat. Press to set a point, drag it to move it.'

/** Lengths in mm. */
export const pointAt = (number: number, count: number, across: string, along: string): string =>
  `Point ${number} of ${count}: across ${across}, along ${along} mm. Arrow keys move it, Delete takes it away, Page Down goes to the next.`

/** A point in numbers. */
export const across = 'across'

export const along = 'along'

export const pointNumber = (number: number, label: string): string => `Point ${number}, ${label}`

export const pointRange = 'A number from -2000 to 2000 mm.'

export const pointBefore = 'Point before'

export const nextPoint = 'Next point'

export const pointOf = (number: number, count: number): string => `${number} of ${count}`

export const addPoint = 'Add a point'

export const startOver = 'Start over'

export const cornerHere = 'Corner here'

/** An outline of one's own, to be stuck on. */
export const drawOutline = 'Press on the face where the outline goes, or draw it in one stroke with Freehand.'

export const layMoreOn = 'Lay more of it on the face: there is no place for glue.'

export const hatchedIsGlued =
  'The hatched place is glued. What reaches over the edge of the face rides along.'

export const stickOn = 'Stick it on'

export const stuckOn = 'Piece stuck on. Undo takes it off.'

/** The outline of a piece that is stuck on. `Piece` is its name with a large letter. */
export const cutBigFirst =
  'Cut big first, see it move, then trim it. What you change below is cut at once; Undo puts it back.'

export const trimIt = (much: string): string => `Trim it: ${much} off`

export const trimmed = (piece: string, much: string): string =>
  `${piece} trimmed: ${much} off. Undo puts it back.`

export const cutOffHit = 'Cut off what is hit'

export const cutClear = (piece: string): string => `${piece} is cut clear of what hits it. Undo puts it back.`

export const glueWhereItLies = 'Glue it where it lies'

export const gluedWhereItLies = (piece: string): string =>
  `${piece} is glued where it lies. Undo puts it back.`

export const cutToFace = 'Cut it to its face'

export const cutToItsFace = (piece: string): string => `${piece} cut to its face. Undo puts it back.`

export const withinFace = (piece: string): string => `${piece} lies within its face already.`

export const newOutline = (piece: string): string => `${piece} has a new outline. Undo puts it back.`

/** Why what is drawn is not cut. */
export const notCutYet = (reason: string): string => `The piece is still as it was. ${reason}`

export const leaveAsItWas = 'Leave it as it was'

/** Why an outline makes no piece. */
export const noOutline = 'An outline needs three points that are not in a row.'

export const noGlue = 'It has no place for glue: at least 4 mm of it must lie on the face.'

export const noSuchPiece = (name: string): string => `There is no ${name} to cut.`

/** Why it cannot be drawn. */
export const shapeNeeds = (least: number, count: number): string =>
  `A shape needs ${least} points, not ${count}.`

export const lineNeeds = (least: number, count: number): string =>
  `A line needs ${least} points, not ${count}.`

export const tooManyPoints = (most: number): string => `It may have at most ${most} points.`

/** The shelf. */
export const pressOne = 'Press one to stick it on. It is made as large as fits, shuts flat and stays inside.'

/** Behind why the one that was pressed could not be stuck. */
export const pressAnother = 'Try another shape, or press another face of the card.'

export const trying = 'Trying where it fits …'

export const coloured = 'Coloured, with what is drawn on it'

/** `Shape` is its name with a large letter. */
export const shapeStuck = (shape: string): string => `${shape} stuck on. Undo takes it off.`

export const shapeStuckTwice = (shape: string): string => `${shape} stuck on both sides. Undo takes it off.`

export const notStuck = (reason: string): string => `It could not be stuck: ${reason}.`

/** Our own shapes. */
export const moon = 'Moon'

export const star = 'Star'

export const leaf = 'Leaf'

export const reeds = 'Reeds'

export const feather = 'Feather'

export const lantern = 'Lantern'

export const heronHead = 'Heron’s head'

export const owlEye = 'Owl’s eye'

export const mothWing = 'Moth’s wing'

export const hedgehog = 'Hedgehog'

export const mushroom = 'Mushroom'

export const cloud = 'Cloud'

/** Paper and ink: of the card, or of a part. */
export const ofCard = 'the card'

export const ofPart = (name: string): string => `the ${name}`

/** Papers and inks by their names in a design. */
export const papers = {
  dusk: 'dusk',
  hedge: 'hedge',
  meadow: 'meadow',
  moss: 'moss',
  night: 'night',
  paper: 'paper',
  cream: 'cream',
  oat: 'oat',
  amber: 'amber',
  ochre: 'ochre',
  clay: 'clay',
  bark: 'bark',
  fern: 'fern',
  leaf: 'leaf',
  pond: 'pond',
  water: 'water',
  lilac: 'lilac',
  plum: 'plum',
  rose: 'rose',
  blush: 'blush',
  rust: 'rust',
  heron: 'heron',
  moon: 'moon',
  flame: 'flame',
  ink: 'ink',
} as const

export const paperOf = (what: string): string => `Paper of ${what}`

export const plainPaper = 'plain'

export const whitePaper = (what: string): string => `White paper for ${what}.`

export const paperChosen = (what: string, colour: string): string => `Paper for ${what}: ${colour}.`

export const drawOnIt = 'Draw on it'

export const weighsNothing = 'Lines and filled shapes weigh nothing. What runs over the edge is not printed.'

export const closedShape = 'Closed shape'

export const outlineDrawn = 'Outline drawn'

export const filledWith = 'Filled with'

export const filledWithNothing = 'nothing'

export const line = 'Line'

export const lineWidth = 'Line width'

export const lineWidthRange = 'A number from 0.1 to 20 mm.'

export const drawIt = 'Draw it'

export const drawn = 'Drawn. Undo takes it away.'

export const rubOutLast = 'Rub out the last'

export const rubbedOutLast = 'The last shape is rubbed out.'

export const rubOutAll = (count: number): string => `Rub out all ${count}`

export const rubbedOutAll = 'All that was drawn here is rubbed out.'

/** An SVG path brought in. */
export const bringPath = 'Bring an SVG path in'

export const pastePath = 'Paste what stands in d="…", or a whole SVG'

export const readIt = 'Read it'

export const openFile = 'Open a file'

export const fileTooLarge = 'That file is too large: at most 2 MB are read.'

export const textTooLong = 'That is too long: an outline needs at most 2 million letters.'

export const noPath = 'There is no path in that. Paste what stands in d="…" of an SVG path.'

export const pathTooLong = (letters: number, most: number): string =>
  `That path is too long: ${letters} letters, and at most ${most} are read. Make it simpler first.`

export const notPath =
  'That is no path. A path begins with M and holds only letters for its steps, and numbers.'

export const tooManyNumbers = (count: number, most: number): string =>
  `That path has ${count} numbers, and at most ${most} are read. Make it simpler first.`

export const numberTooLarge = (most: number): string =>
  `That path has a number above ${most}. Make it smaller first.`

export const pathUnread = 'That path could not be read: its numbers do not fit its letters.'

export const enclosesNothing =
  'That path encloses nothing. An outline needs three corners that are not in a row.'

/** A picture laid on a face. */
export const layPicture = 'Lay a picture on it'

export const pictureExplained =
  'A PNG, JPEG or SVG, to draw after or to print. It is made small and kept in the design; it is sent nowhere.'

export const pictureFile = 'Picture to lay on the face'

export const pictureLies = (face: string): string => `A picture lies on ${face}.`

export const pictureAnew = 'The picture is laid anew.'

export const pictureGone = 'The picture is taken away.'

export const printIt = 'Print it with the card'

export const picturePrinted = 'The picture is printed with the card.'

export const pictureOnlyDrawnAfter = 'The picture is only drawn after.'

export const width = 'Width'

export const toTheRight = 'To the right'

export const up = 'Up'

/** The label of a size comes with a small letter. */
export const pictureSize = (label: string): string => `Picture: ${label}`

/** mm. */
export const pictureRange = (min: number): string => `A number from ${min} to 400 mm.`

export const pictureBroken = 'That picture cannot be read: its file is broken.'

export const pictureTooLarge = 'That file is too large: at most 20 MB can be read.'

export const pictureWithoutDots = 'That picture has no dots.'
