import type { Design } from '../../design/design.ts'
import { riseOf, tipAt } from '../../measure/measure.ts'
import { compile } from '../../motion/pose.ts'
import { broughtIn, openingRange } from '../../motion/range.ts'
import type { Vec3 } from '../../plane/vector.ts'
import { distance } from '../../plane/vector.ts'
import * as says from '../../words/answers.ts'
import type { Mark } from './reach.ts'

/**
 * Where a tip comes from as the card opens from shut, by the longest of its ways: up off the page over the gutter,
 * along the gutter from the reader's (near) or the other (far) end, or inwards from the page's edge.
 */
export type Origin = 'gutter' | 'near' | 'far' | 'edge'

/** Something wished for on a card. World frame, mm and degrees. */
export interface Wish {
  readonly opening: number
  /** Where a tip is to be at that opening. */
  readonly at: Vec3
  /** As near as this, mm; 1 if left out. */
  readonly within?: number
  /** The creases and panels that may be built on; all if left out. What stands on a new part is free to choose. */
  readonly on?: readonly string[]
  /** Nothing of it may stick out, shut and on the way; true if left out. */
  readonly hidden?: boolean
  readonly from?: Origin
  /** From that opening on to flat, as far as the card goes, the tip stays at least so far off the page, mm. */
  readonly above?: number
  /** Cut from the card, or of its own card. */
  readonly made?: 'card' | 'own'
  /** A way that the tip goes: at each of these openings it is within `near` mm of the place. */
  readonly path?: readonly Mark[]
  /** 5 mm if left out. */
  readonly near?: number
}

/** So near to the marks of its path a tip goes, mm, if nothing else is said. */
export const NEAR = 5

/** Throws a RangeError that names what in a wish cannot be. */
export function checkWish(wish: Wish): void {
  const { opening, at, within = 1, near = NEAR, path = [] } = wish
  const places = [{ opening, at, name: 'at' }, ...path.map((mark, k) => ({ ...mark, name: `path[${k}].at` }))]
  for (const one of places) {
    if (!(one.opening >= 0 && one.opening <= 180)) throw new RangeError(says.notOpening(one.opening))
    if (one.at.length !== 3 || !one.at.every((x) => Math.abs(x) <= 2000))
      throw new RangeError(says.notPlace(one.name, one.at))
  }
  for (const [name, value] of Object.entries({ within, near }))
    if (!(value >= 0.1 && value <= 100)) throw new RangeError(says.notNear(name, value))
}

/** All the places where the tip is to be: the wish's own first. */
export const marksOf = ({ opening, at, path = [] }: Wish): readonly Mark[] => [{ opening, at }, ...path]

/** Whether a chain that misses by so much is near enough, mm: at the wish's own place, and on its way. */
export const isNear = ({ within = 1, near = NEAR }: Wish, miss: number, worst: number): boolean =>
  miss <= within && worst <= Math.max(within, near)

/** Where the tip of a mechanism (index) comes from by an opening, degrees. */
export function originOf(design: Design, index: number, opening: number): Origin {
  const poser = compile(design)
  poser(openingRange(design)[0])
  const shut = tipAt(poser, index)
  const at = broughtIn(design, opening)
  poser(at)
  const open = tipAt(poser, index)
  const ways: readonly (readonly [Origin, number])[] = [
    ['gutter', riseOf(open, at)],
    ['near', open[1] - shut[1]],
    ['far', shut[1] - open[1]],
    ['edge', Math.hypot(shut[0], shut[2]) - Math.hypot(open[0], open[2])],
  ]
  return ways.reduce((best, one) => (one[1] > best[1] ? one : best))[0]
}

/** Openings at which a tip is looked at on its way on to flat. */
const LOOKS = 12

/** The least distance of a tip from the page from an opening on, mm. */
function lowestFrom(design: Design, index: number, opening: number): number {
  const poser = compile(design)
  const [least, most] = openingRange(design)
  const from = Math.max(least, Math.min(most, opening))
  let low = Number.POSITIVE_INFINITY
  for (let k = 0; k <= LOOKS; k++) {
    const at = k === LOOKS ? most : from + ((most - from) * k) / LOOKS
    poser(at)
    low = Math.min(low, riseOf(tipAt(poser, index), at))
  }
  return low
}

/** Whether what was added last moves as was wished: where it comes from, and how low its tip sinks. */
export function movesAsWished(design: Design, { opening, from, above }: Wish): boolean {
  const index = design.mechanisms.length - 1
  if (from !== undefined && originOf(design, index, opening) !== from) return false
  return above === undefined || lowestFrom(design, index, opening) >= above - 1e-6
}

/** How far the tip of what was added last is from the wished place, mm. */
export function missOf(design: Design, { opening, at }: Wish): number {
  const poser = compile(design)
  poser(opening)
  return distance(tipAt(poser, design.mechanisms.length - 1), at)
}

/** How far the tip of what was added last is from the farthest mark of the wished path, mm; 0 without one. */
export function straysOf(design: Design, { path = [] }: Wish): number {
  const poser = compile(design)
  return path.reduce((most, { opening, at }) => {
    poser(opening)
    return Math.max(most, distance(tipAt(poser, design.mechanisms.length - 1), at))
  }, 0)
}
