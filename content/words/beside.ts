/** Beside the figures of a bench: what is said of the card, and what can be done with it. It comes after the first drag. */

/* What the checks say. */

export const works = 'It works as paper: it shuts flat, opens flat, and nothing is in the way.'

export const andMore = (sentence: string, count: number): string => `${sentence} And ${count} more.`

export const more = (count: number): string => `${count} more`

/* What a repair does: its button. `whose` is a part of the card, or left out where there is only one. */

const of = (whose?: string): string => (whose === undefined ? '' : ` of the ${whose}`)

export const putSlit = (distance: string, whose?: string): string =>
  `Put the slit${of(whose)} ${distance} from its apex`

export const setTo = (label: string, size: string): string => `Set “${label}” to ${size}`

export const make = (label: string, size: string, whose?: string): string =>
  `Make the ${label}${of(whose)} ${size}`

/** Behind what a repair does. */
export const breaksElse = ', which breaks something else'

export const whatTellsWay = 'What tells which way it goes'

/* The guess. Between them stands a question mark, as on what is covered. */

export const markedBefore = 'What is marked'

export const markedAfter = 'is covered.'

export const guessFirst = 'Guess first'

export const orElse = ', or'

export const showMe = 'Show me'

/* What is folded away. */

export const moreToSee = 'More to see'

/* From where one looks. */

export const whereFrom = 'Where you look from'

export const turnLeft = 'Turn the card to the left'

export const turnRight = 'Turn the card to the right'

export const lookHigher = 'Look from higher up'

export const lookLower = 'Look from lower down'

/* What can be done with the card. */

export const undo = 'Undo'

export const redo = 'Redo'

export const startAgain = 'Start again'

export const copyLink = 'Copy the link'

export const linkCopied = 'The link is copied.'

export const copyLinkByHand = 'Copy this link:'

export const copyFrame = 'Copy a frame'

export const frameCopied = 'The frame is copied. Paste it into your page as HTML.'

export const copyFrameByHand = 'Copy this frame:'

export const takeToDummy = 'Take it to my dummy'

export const myDummy = 'My dummy'

/* The address. */

export const whatReadsLink = 'What reads the link'

/** `why` is a sentence. */
export const ownSizesStand = (why: string): string => `${why} The page’s own sizes stand.`
