/** What is answered to a wish, to a look for room, and to what a hand may get wrong. */
import { within } from './grammar.ts'

// What stands against a new mechanism, or a changed one.

export const untoldInTime = 'It could not be told in time.'

export const sizesDoNotFit = 'Its sizes do not fit together.'

export const sizesWouldNotFit = 'Its sizes would not fit together.'

export const otherMotion = 'It does not move as was wished.'

// Why nothing is offered.

export const noRoom = (place: string, free: string, needed: number): string =>
  `There is no room on ${place}: ${free} mm are free, and the smallest piece needs ${needed} mm.`

export const roomForNothing = (place: string): string =>
  `There is room on ${place}, but whatever is put there runs into its neighbours, sticks out or tears.`

// Why nothing is found. `nearest`: one of the next two.

export const nearestLeaves = (miss: string): string => `the nearest that works leaves ${miss}`

export const nothingNear = 'nothing that works comes near'

/** `parts`: what reaches it, from the card up, as parts are named; `sentence`: what it does wrong. */
export const reachedButFails = (nearest: string, parts: readonly string[], sentence: string): string =>
  `What reaches it does not work, and ${nearest}. What stands in the way of ${[...parts]
    .reverse()
    .map((name) => `a ${name}`)
    .join(' on ')}: ${sentence}`

/** The id by which a sentence calls a part that is not there: of one, and of each of two of the same kind. */
export const newPart = (word: string, stage: 'only' | 'first' | 'second'): string =>
  stage === 'only' ? `new-${word}` : `${stage}-new-${word}`

export const noWayAlong = (nearest: string): string => `No way goes along the path: ${nearest}.`

export const noFoldReaches = (nearest: string): string => `No fold reaches: ${nearest}.`

export const opensOnly = (least: string, most: string, wished: string): string =>
  `The card opens from ${least} to ${most}, not to ${wished}.`

// What a wish, or what is to stay, may not be. Each begins with the name of what is asked, and has no full stop.

export const notOpening = (got: number): string =>
  `opening must be a number from 0 (shut) to 180 (flat) degrees, not ${got}`

export const notPlace = (name: string, got: readonly number[]): string =>
  `${name} must be three numbers x, y, z from -2000 to 2000 mm, not ${got.join(', ')}`

export const notNear = (name: string, got: number): string =>
  `${name} must be a number from 0.1 to 100 mm, not ${got}`

export const notBuiltOn = (got: string): string => `on must name creases or panels of the design, not ${got}`

export const notPin = (got: string): string =>
  `pins must name mechanisms of the design, as in beak.cut, not ${got}`

export const notPinOf = (id: string, names: readonly string[], got: string): string =>
  `pins of ${id} must be one of ${names.join(', ')}, not ${got}`

// What a hand may get wrong.

export const opening = 'Opening'

export const toGutter = 'Distance to the gutter'

const mostCareful = (size: string, name: string, unit: 'mm' | 'deg'): string =>
  `Make this most carefully: the ${within(size)} of ${name}. One ${unit === 'mm' ? 'millimetre' : 'degree'} off`

export const keepsFromShutting = (size: string, name: string, unit: 'mm' | 'deg'): string =>
  `${mostCareful(size, name, unit)}, and the card no longer shuts flat.`

/** `moved`: one of the next three. */
export const moves = (size: string, name: string, unit: 'mm' | 'deg', moved: string, by: string): string =>
  `${mostCareful(size, name, unit)} changes ${moved} by ${by}.`

export const riseOfTop = (top: 'tip' | 'ridge'): string => `the rise of the ${TOPS[top]}`

export const reachOfTop = (top: 'tip' | 'ridge'): string => `the place of the ${TOPS[top]} along the gutter`

export const shutMargin = 'the margin of the shut card'

const TOPS = { tip: 'tip', ridge: 'ridge' } as const
