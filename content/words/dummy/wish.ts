/** A wish: where a tip should be, the way it goes there, and what brings it there. */
export const title = 'Your wish'

/** The wish as a sentence with blanks, between which this stands. */
export const aTip = 'A tip'

export const highAnd = 'high,'

export const fromYourEndWhenOpen = 'from your end, when the card is open'

export const itComes = '. It comes'

export const shutIt = '. Shut, it'

export const sentenceEnd = '.'

export const itStands = 'It stands'

export const toTheRightMade = 'to the right of the gutter, and is made'

export const thereItStays = '. From there on it stays'

export const offThePage = 'off the page.'

export const addCondition = 'Add a condition'

/** The blanks, to those who hear them. */
export const howHigh = 'How high over the page'

export const howFar = 'How far from your end'

export const opening = 'Opening of the wish'

export const comesFrom = 'From where it comes'

export const whenShut = 'When the card is shut'

export const howFarAside = 'How far to the right of the gutter'

export const madeOf = 'What it is made of'

export const staysOff = 'How far it stays off the page'

/** Behind `It comes`. */
export const fromAnywhere = 'from anywhere'

export const fromGutter = 'up from the gutter'

export const fromNear = 'from your end'

export const fromFar = 'from the far end'

export const fromEdge = 'in from the edge'

/** Behind `and is made`. */
export const madeAnyhow = 'however it goes'

export const madeOfCard = 'from the card itself'

export const madeOfOwn = 'from card of its own'

/** Behind `Shut, it`. */
export const shutHidden = 'is hidden'

export const shutFree = 'may stick out'

/** Marks on its way, counted from 1: a sentence with blanks, between which this stands. */
export const markAt = 'At'

export const markIs = 'it is'

export const markHigh = 'high,'

export const markFromYourEnd = 'from your end.'

export const markOpening = (number: number): string => `Mark ${number}: opening`

export const markHowHigh = (number: number): string => `Mark ${number}: how high over the page`

export const markHowFar = (number: number): string => `Mark ${number}: how far from your end`

export const takeMarkAway = (number: number): string => `Take mark ${number} away`

export const takeAway = 'Take it away'

export const marks = 'Marks on its way'

/** Around a length. */
export const asNearBefore = 'It goes as near to its marks as'

export const asNearAfter = '.'

export const howNear = 'How near to its marks'

export const drawWay = 'Draw its way'

export const drawAgain = 'Draw it again'

export const addMark = 'Add a mark'

export const oneStroke = 'Draw one stroke on the card: from where the tip begins to where it ends.'

export const wayDrawn = 'The way is drawn. Each of its marks can be moved.'

/** On the card: the tip and its marks, and what rides on them. */
export const wishedTip = 'The wished tip'

export const markOnWay = (number: number, opening: string): string =>
  `Mark ${number} on its way, at ${opening}`

/** Spoken. */
export const placeIs = (rise: string, along: string): string => `${rise} high, ${along} from your end`

export const high = (rise: string): string => `${rise} high`

export const highAt = (opening: string, rise: string): string => `at ${opening}, ${rise} high`

/** What was found. */
export const looking = 'Looking …'

export const lookingFound = (count: number): string => `Looking … ${count} so far.`

export const noWay = 'There is no such way.'

export const ways = (count: number): string =>
  `${count} ${count === 1 ? 'way' : 'ways'}. All shut flat and clear the rest.`

/** The kinds of parts of a way, each on the one before. */
export const oneOnAnother = (kinds: readonly string[]): string => kinds.join(', and on it ')

/** What a way is like: lengths with their unit; `strays` null where no way is wished for its tip. */
export function wayIs({
  miss,
  strays,
  layers,
  joints,
  paper,
  sway,
}: {
  /** null: it meets the point. */
  readonly miss: string | null
  readonly strays: string | null
  readonly layers: number
  readonly joints: number
  /** The size of each card of its own that it takes. */
  readonly paper: readonly string[]
  readonly sway: string
}): string {
  const all = [
    miss === null ? 'to the point' : `${miss} off`,
    ...(strays === null ? [] : [`at most ${strays} off its way`]),
    `${layers} layers shut`,
    joints === 0 ? 'no glue' : `${joints} ${joints === 1 ? 'place' : 'places'} to glue`,
    ...(paper.length === 0 ? [] : [`a piece of ${paper.join(', another of ')}`]),
    `a millimetre off moves it ${sway}`,
  ]
  return `${all.join(', ')}.`
}

/** How large a piece is. */
export const by = (width: string, height: string): string => `${width} by ${height}`

export const sizes = 'Sizes'

/** One size of a part, which is named where there are several. */
export const sizeOf = (label: string, size: string): string => `${label} ${size}`

export const sizeOfPart = (part: string, label: string, size: string): string => `${part}: ${label} ${size}`

export const useThis = 'Use this'

export const onCard = 'Your wish is on the card. Undo takes it away.'

export const dragTip =
  'Drag the blue tip on the card, or change a number. The wish is no part of the card until you use a way.'
