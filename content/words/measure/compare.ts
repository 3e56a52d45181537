/** What a ruler's readings show beside the model, and what the hand may have done. */
import { asSentence, listed } from '../grammar.ts'

export const right = 'That is right, to the width of a pencil line. Well made.'

export const allRight = 'Yours is right, to the width of a pencil line. Well made.'

export const tooLow = (much: string): string => `You are ${much} low.`

export const tooHigh = (much: string): string => `You are ${much} high.`

export const noSingleSlip = 'No single small slip explains that. Measure once more, and check the opening.'

export const likeliest = (slip: string): string => `The likeliest slip: ${slip}.`

export const couldAlsoBe = (slips: readonly string[]): string =>
  `It could also be that ${slips.join(', or ')}.`

/** What is read, in the middle of a sentence. */
export const readings = { rise: 'rise', reach: 'reach', gape: 'gape', stop: 'opening' } as const

/** `rise 36.0 mm`. */
export const reading = (name: string, value: string): string => `${name} ${value}`

/** What the model says of several readings; the opening in degrees. */
export const modelSays = (opening: number, values: readonly string[]): string =>
  `At ${opening}° the model says ${listed(values)}.`

export const readingRight = (name: string): string => `your ${name} is right`

export const readingSmall = (name: string, much: string): string => `your ${name} is ${much} too small`

export const readingLarge = (name: string, much: string): string => `your ${name} is ${much} too large`

/** What is right and what is off, reading by reading. */
export const readingsAre = (clauses: readonly string[]): string => asSentence(listed(clauses))

export const nothingOff = 'nothing is off, and a ruler reads so much amiss'

export const mostLikely = (cause: string): string => `Most likely: ${cause}.`

export const maybe = (cause: string): string => `Could be: ${cause}.`

export const lessLikely = (cause: string): string => `Less likely: ${cause}.`

/** `left or right`, of two sides that read alike. */
export const either = (one: string, other: string): string => `${one} or ${other}`

export const openedWrong = (to: string, from: string): string => `the card was opened to ${to}, not ${from}`

/** A size that came out wrong. */
interface WrongSize {
  readonly name: string
  /** The part that it belongs to; null: it goes without saying. */
  readonly owner: string | null
  /** There are two of it. */
  readonly isBoth: boolean
  /** How much it is off, with its unit. */
  readonly much: string
}

const sizeIs = ({ name, owner, isBoth, much }: WrongSize): string =>
  `${isBoth ? 'both' : 'the'} ${name}${owner === null ? '' : ` of the ${owner}`} ${isBoth ? 'are' : 'is'} ${much}`

export const offAlongFold = (size: WrongSize): string => `${sizeIs(size)} off along the fold`

export const tooFarFromStart = (size: WrongSize): string =>
  `${sizeIs(size)} too far from the start of the fold`

export const tooFarTowardsStart = (size: WrongSize): string =>
  `${sizeIs(size)} too far towards the start of the fold`

export const tooShort = (size: WrongSize): string => `${sizeIs(size)} short`

export const tooLong = (size: WrongSize): string => `${sizeIs(size)} long`

export const tooSmall = (size: WrongSize): string => `${sizeIs(size)} too small`

export const tooLarge = (size: WrongSize): string => `${sizeIs(size)} too large`
