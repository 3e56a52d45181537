/** The slips that lie beside the card, each by its title. */
export const putAway = 'Put the slip away'

/** What could not be worked out beside the page. */
export const notWorkedOut = (reason: string): string => `This could not be worked out: ${reason}.`

/** A number in a sentence of a slip: said of what is no number and of one that is out of its range. */
export const goesFrom = (label: string, min: string, max: string): string =>
  `${label}: type a number from ${min} to ${max}.`

/** An empty card. */
export const whatDoYouWant = 'What do you want?'

export const pressFold = 'Press a fold'

export const pressFoldMore = 'See what can be built on it. The gutter is the first.'

export const makeWish = 'Make a wish'

export const makeWishMore = '“I want something up here.” Say where a tip should be.'

export const orFromGarden = 'Or begin with one from the garden'

export const wholeGarden = 'See the whole garden'

export const followPlan = 'Follow a plan'

export const openSaved = 'Open a saved dummy'

/** What can be built. `place` as in `the gutter`. */
export const buildOn = (place: string): string => `Build on ${place}`

export const stickOn = (place: string): string => `Stick on ${place}`

export const lookingForOffers = 'Looking for what fits …'

export const pressOffer = 'Press one to put it on the card. All of them fit, shut flat and clear the rest.'

/** Around the words that are pressed. */
export const orWishBefore = 'Or'

export const orWish = 'make a wish'

export const orWishAfter = ': say where a tip should be, and see what brings it there.'

export const takeShape = 'Take a shape, or draw your own …'

export const blueSquares =
  'Blue squares on the card show where there is room, from this opening on to flat: the darker, the higher something may stand there.'

export const high = (much: string): string => `${much} high`

/** Hardly worth cutting; and where that is so for want of room. */
export const onlyHigh = (much: string): string => `only ${much} high`

export const onlyHighHere = (much: string): string => `only ${much} high: there is little room here`

export const behind = (much: string): string => `${much} behind the page`

export const added = (label: string): string => `${label} added. Undo takes it away.`

/** Pieces. */
export const stickOrDraw = (place: string): string => `Stick or draw on ${place}`

export const outlineAndColour = (place: string): string => `Outline and colour of ${place}`

export const fetchingShelf = 'Fetching the shelf …'

export const shelfNotLoaded = (reason: string): string => `The shelf could not be loaded: ${reason}.`

/** What fails, and what mends it; its title is the verdict's. */
export const mendNotWorkedOut = (reason: string): string =>
  `What mends it could not be worked out: ${reason}.`

export const lookingForMend = 'Looking for what mends it all …'

export const noMendKept = 'No change of sizes mends it while so much is kept.'

export const noMend = 'No change of sizes mends it. Move a part, or take one away.'

export const now = 'now'

export const afterMending = 'after mending'

/** A size of one of several parts. */
export const sizeOf = (part: string, label: string): string => `${part}: ${label}`

/** What is left to mend then. */
export const left = (fault: string): string => `Left: ${fault}`

const changes = (count: number): string => `${count} ${count === 1 ? 'change' : 'changes'}`

export const mendAll = (count: number): string => `Mend all: ${changes(count)}`

export const mendWhatCanBe = (count: number): string => `Mend what can be: ${changes(count)}`

export const mended = (count: number): string => `Mended with ${changes(count)}. Undo puts it back.`

export const leaveIt = 'Leave it'

export const keptIsKept =
  'A mend never changes what is kept. Left as it is, the card can still be printed: the sheet then says what fails.'

export const unlockToMend = (name: string): string =>
  `The ${name} is locked: unlock it, and it can be mended.`

/** `size`: as a field is called, of the part named. */
export const freeToMend = (size: string, name: string): string =>
  `${size} of the ${name} is kept: let it go, and this can be mended by one size.`

export const sameAsAbove = 'The change above mends this too.'

/** A repair that mends its fault alone. */
export const breaksElse = (repair: string): string => `${repair}, which breaks something else`
