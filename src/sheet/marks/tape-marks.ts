/** What is taped: strokes along its line, and on a good copy corners at its ends, crossed by two of them. Lengths in mm. */
import type { Point } from '../../drawing/pen/marks.ts'
import { gapOf } from '../../paper/plane/gap.ts'
import type { Stretch } from './stretches.ts'
import { edges, far, isIn, nearest, toward } from './stretches.ts'

/** From stroke to stroke along a line. */
const STEP = 2

/** How far a stroke reaches across its line, and along it: slanted, it is no division of a ruler. */
const ACROSS = 1.4
const ALONG = 0.9

/** Between a cut edge and the strokes within it: nothing solid touches a cut; and between a fold and them. */
const OFF_CUT = 0.5
const OFF_FOLD = 0.8

/** From one stroke at an end of a good copy to the next. */
const NEXT = 1.5

/** The legs of a corner on a good copy: shorter than the tick of a fold, and never alone. */
const LEG = 3
const ASIDE = 2

/** Ends that are nearer are one corner of two lines: there the two say it themselves. */
const SAME = 1

const moved = ([x, y]: Point, [u, v]: Point, by: number): Point => [x + by * u, y + by * v]

/** The way from one point to another, and the way square to it to one side or the other. */
const wayOf = (a: Point, b: Point): Point => {
  const long = far(a, b) || 1
  return [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
}

const squareTo = ([u, v]: Point): Point => [-v, u]

/** The way from an edge into its outline. */
export function inwardFrom([a, b]: Stretch, outline: readonly Point[]): Point {
  const way = squareTo(wayOf(a, b))
  const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
  return isIn(moved(middle, way, OFF_CUT), outline) ? way : [-way[0], -way[1]]
}

/**
 * Slanting strokes along a line, the way `aside` of it or, where that is a number, across it. They lean to its first
 * end, so that on the two edges of a piece, which both begin at its ridge, they lean alike.
 */
function strokesAt(
  [a, b]: Stretch,
  places: readonly number[],
  aside: Point,
  from: number,
): readonly Stretch[] {
  const way = wayOf(a, b)
  return places.map((place): Stretch => {
    const middle = moved(moved(a, way, place), aside, from + ACROSS / 2)
    const [dx, dy] = [(ACROSS * aside[0] - ALONG * way[0]) / 2, (ACROSS * aside[1] - ALONG * way[1]) / 2]
    return [
      [middle[0] - dx, middle[1] - dy],
      [middle[0] + dx, middle[1] + dy],
    ]
  })
}

const spread = (long: number): readonly number[] => {
  const count = Math.max(1, Math.round(long / STEP))
  return Array.from({ length: count }, (_, k) => ((k + 0.5) / count) * long)
}

const isShared = (end: Point, others: readonly Stretch[]): boolean =>
  others.flat().some((one) => far(one, end) < SAME)

/** At both ends of a good copy's line: two, and one where another such line begins. */
function atEnds([a, b]: Stretch, others: readonly Stretch[]): readonly number[] {
  const long = far(a, b)
  const leg = Math.min(LEG, long / 3)
  const at = (end: Point): readonly number[] =>
    isShared(end, others) ? [0.75 * leg] : [0.4 * leg, 0.85 * leg]
  return long > 0 ? [...at(a), ...at(b).map((place) => long - place)] : []
}

/** Strokes across a line on which another piece is taped. */
export const strokesAcross = (line: Stretch, aside: Point): readonly Stretch[] =>
  strokesAt(line, spread(far(...line)), aside, -ACROSS / 2)

/** The same at its ends alone. */
export const strokesAtEnds = (line: Stretch, aside: Point, others: readonly Stretch[]): readonly Stretch[] =>
  strokesAt(line, atEnds(line, others), aside, -ACROSS / 2)

/** Strokes within an edge that is taped, along all of it or at its ends: none comes near a fold or another edge. */
export function strokesWithin(
  line: Stretch,
  outline: readonly Point[],
  folds: readonly Stretch[],
  isEndsAlone: boolean,
): readonly Stretch[] {
  const long = far(...line)
  const aside = inwardFrom(line, outline)
  const sides = edges(outline)
  const isFree = ([a, b]: Stretch): boolean =>
    [a, b].every(
      (end) => isIn(end, outline) && sides.every((side) => nearest(end, side) >= OFF_CUT - 0.01),
    ) && folds.every((fold) => gapOf({ a, b }, { a: fold[0], b: fold[1] }).distance >= OFF_FOLD)
  const free = (places: readonly number[]): readonly (readonly [number, Stretch])[] =>
    places.flatMap((place) =>
      strokesAt(line, [place], aside, OFF_CUT)
        .filter(isFree)
        .map((stroke) => [place, stroke] as const),
    )
  if (!isEndsAlone) return free(spread(long)).map(([, stroke]) => stroke)
  // At each end the first that is free, and the next beside it.
  const at = (places: readonly number[]): readonly Stretch[] => {
    const all = free(places)
    const [first] = all
    const second = first && all.find(([place]) => Math.abs(place - first[0]) >= NEXT)
    return [first, second].flatMap((one) => (one ? [one[1]] : []))
  }
  const steps = Array.from(
    { length: Math.floor((2 * long) / 3 / NEXT) },
    (_, k) => (k * NEXT) / 4 + 0.5,
  ).filter((place) => place < long / 2)
  return [...at(steps), ...at(steps.map((place) => long - place))]
}

/**
 * Both ends of a line on which another piece is taped: a short leg along it, and one aside, on the side that the piece
 * will hide. Where another such line (`others`) begins, the two lines make a corner.
 */
export function tapeCorners([a, b]: Stretch, aside: Point, others: readonly Stretch[]): readonly Stretch[] {
  const leg = Math.min(LEG, far(a, b) / 3)
  if (!(leg > 0)) return []
  const at = (end: Point, to: Point): readonly Stretch[] => [
    [end, toward(end, to, leg)],
    ...(isShared(end, others) ? [] : [[end, moved(end, aside, ASIDE)] as const]),
  ]
  return [...at(a, b), ...at(b, a)]
}
