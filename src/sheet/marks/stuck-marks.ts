/** Where a piece that is stuck flat goes: its outline where every line is printed, else its corners. Lengths in mm. */
import { inset } from '../../drawing/pen/inset.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import { crossing } from '../../paper/plane/gap.ts'
import type { Stretch } from './stretches.ts'
import { edges, far, isIn, nearest, toward } from './stretches.ts'

/** How far a mark runs from its corner along both edges: of dashes, and of dots, of which three tell a line. */
const LEG = 2.5
const DOTTED_LEG = 2.6

/** Of the corners of a whole area in dots. */
const AREA_LEG = 4

/** A leg that is shorter says nothing; at a foot no wider than a straw it is enough beside a whole one. */
const SHORT = 1.3
const STUMP = 0.4

/** So many marks say where a piece goes and how it is turned. */
const MOST = 4

/** How far within a piece's own edge the marks lie: it covers them though it is glued a little beside its place. */
const COVERED = 1

/** The same of a piece with feet so narrow that nothing would be left of them. */
const BARELY_COVERED = 0.5
const NARROW = 1.5

/** Free paper between a mark and a cut, a fold, and other marks. */
const OFF_CUTS = 1
const CLEAR = 0.6

/** Nearer to the border of the glued place a mark would be taken for part of it. */
const OFF_GLUE = 0.9

/** Marks that are nearer to one another run together. */
const APART = 5

/** An outline is followed in such steps. */
const STEP = 0.25

/** A turn of so much is a sharp corner, radians. */
const SHARP = Math.PI / 3

/** So many marks are weighed against one another. */
const WEIGHED = 14

/** The paper that a piece is stuck to. */
export interface Under {
  readonly outline: readonly Point[]
  /** Its cuts, its edge among them. */
  readonly cuts: readonly Stretch[]
  readonly folds: readonly Stretch[]
  /** Other marks on it. */
  readonly busy: readonly Stretch[]
  /** The way to the reader's end. */
  readonly down: Point
}

/** A place where something is stuck flat: the outline of all of it, and of what is glued. */
export interface Stuck {
  readonly outline: readonly Point[]
  readonly glue: readonly Point[]
}

/** A corner of an outline with a line from it along both its edges, or where it runs off the paper, with one. */
interface Mark {
  readonly at: Point
  readonly legs: readonly Stretch[]
  /** By how much the outline turns there, radians. */
  readonly turn: number
}

const isNear = (p: Point, lines: readonly Stretch[], by: number): boolean =>
  lines.some((line) => nearest(p, line) < by)

const centre = (area: readonly Point[]): Point => {
  const [x, y] = area.reduce(([u, v], p) => [u + p[0], v + p[1]], [0, 0])
  return [x / area.length, y / area.length]
}

/** Whether a line lies on the edge of a piece. */
const isEdge = (line: Stretch, outline: readonly Point[]): boolean =>
  edges(outline).some((side) => line.every((end) => nearest(end, side) < 0.01))

/** Whether the paper at a point stays with the glue: no fold and no cut within the piece lies between. */
function staysWith(glue: readonly Point[], { outline, cuts, folds }: Under): (p: Point) => boolean {
  const from = centre(glue)
  const between = [...folds, ...cuts.filter((cut) => !isEdge(cut, outline))]
  return (p) => between.every(([a, b]) => crossing({ a: from, b: p }, { a, b }) === null)
}

/** Whether there is paper at a point, off all cuts. */
const onPaper =
  ({ outline, cuts }: Under) =>
  (p: Point): boolean =>
    isIn(p, outline) && !isNear(p, cuts, OFF_CUTS) && !isNear(p, edges(outline), OFF_CUTS)

/** A point of an outline that is followed; its corners are told. */
interface Step {
  readonly at: Point
  readonly isCorner: boolean
}

const stepsOf = (ring: readonly Point[]): readonly Step[] =>
  edges(ring).flatMap(([a, b]) => {
    const count = Math.max(1, Math.ceil(far(a, b) / STEP))
    return Array.from({ length: count }, (_, k): Step => {
      const t = k / count
      return { at: [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])], isCorner: k === 0 }
    })
  })

/** A stretch of an outline, from corner to corner; the points just before and behind it, where it is not all of it. */
interface Part {
  readonly points: readonly Point[]
  readonly beyond: readonly [Point, Point] | null
}

/** What is left of an outline where its points pass a test. */
function partsOf(ring: readonly Point[], passes: (p: Point) => boolean): readonly Part[] {
  const steps = stepsOf(ring)
  const isKept = steps.map(({ at }) => passes(at))
  const first = isKept.indexOf(false)
  if (first < 0) return [{ points: ring, beyond: null }]
  const parts: Part[] = []
  let run: Step[] = []
  const step = (k: number): Step => steps[(first + k) % steps.length] as Step
  for (let k = 0; k <= steps.length; k++) {
    if (isKept[(first + k) % steps.length]) {
      run.push(step(k))
      continue
    }
    if (run.length > 1)
      parts.push({
        points: run
          .filter(({ isCorner }, n) => isCorner || n === 0 || n === run.length - 1)
          .map(({ at }) => at),
        beyond: [step(k - run.length - 1).at, step(k).at],
      })
    run = []
  }
  return parts
}

const signedArea = (ring: readonly Point[]): number =>
  edges(ring).reduce((sum, [[x, y], [u, v]]) => sum + x * v - u * y, 0) / 2

/** By how much an outline turns at a corner, radians: less than nought where it turns inwards. */
function turnAt(before: Point, at: Point, next: Point, way: number): number {
  const [u, v] = [at[0] - before[0], at[1] - before[1]]
  const [s, t] = [next[0] - at[0], next[1] - at[1]]
  return way * Math.atan2(u * t - v * s, u * s + v * t)
}

/** The marks that could be drawn: at corners that turn outwards, and where the outline comes in over the edge. */
function marksOf(
  ring: readonly Point[],
  passes: (p: Point) => boolean,
  isPaper: (p: Point) => boolean,
  leg: number,
): readonly Mark[] {
  const way = Math.sign(signedArea(ring))
  const isFree = (line: Stretch): boolean =>
    [0, 0.25, 0.5, 0.75, 1].every((t) => passes(toward(line[0], line[1], t * far(...line))))
  const corners = ring.flatMap((at, k): readonly Mark[] => {
    const ends = [ring.at(k - 1) as Point, ring[(k + 1) % ring.length] as Point] as const
    const turn = turnAt(ends[0], at, ends[1], way)
    const legs = ends.map((end): Stretch => [at, toward(at, end, Math.min(leg, far(at, end) / 2))])
    const longs = legs.map((line) => far(...line)).sort((a, b) => a - b)
    const [short = 0, long = 0] = longs
    const isSeen = short >= SHORT || (short >= STUMP && long >= leg - 0.01)
    return turn > 0.05 && isSeen && legs.every(isFree) ? [{ at, legs, turn }] : []
  })
  const crossings = partsOf(ring, passes).flatMap(({ points, beyond }): readonly Mark[] => {
    if (!beyond || points.length < 2) return []
    const ends: readonly (readonly [Point, Point, Point])[] = [
      [points[0] as Point, points[1] as Point, beyond[0]],
      [points.at(-1) as Point, points.at(-2) as Point, beyond[1]],
    ]
    return ends.flatMap(([at, next, off]) => {
      const long = Math.min(leg, far(at, next))
      return long >= SHORT && !isPaper(off) ? [{ at, legs: [[at, toward(at, next, long)]], turn: 0 }] : []
    })
  })
  return [...corners, ...crossings]
}

/** All ways to take so many of some things. */
function chosen<T>(all: readonly T[], count: number): readonly (readonly T[])[] {
  if (count === 0) return [[]]
  return all.flatMap((one, k) => chosen(all.slice(k + 1), count - 1).map((rest) => [one, ...rest]))
}

/** The area that up to four points span. */
function spanned(points: readonly Point[]): number {
  const [x, y] = centre(points)
  const round = [...points].sort((p, q) => Math.atan2(p[1] - y, p[0] - x) - Math.atan2(q[1] - y, q[0] - x))
  return Math.abs(signedArea(round))
}

/** The sharpest, and of a round outline some all round it. */
function someOf(marks: readonly Mark[]): readonly Mark[] {
  const sharp = marks.filter(({ turn }) => turn === 0 || turn >= SHARP).slice(0, WEIGHED)
  const blunt = marks.filter((one) => !sharp.includes(one))
  const room = WEIGHED - sharp.length
  const each = Math.max(1, Math.ceil(blunt.length / Math.max(1, room)))
  return [...sharp, ...(room > 0 ? blunt.filter((_, k) => k % each === 0) : [])]
}

/** Four marks, or as many as there are: those that lie farthest apart, low rather than high, sharp rather than blunt. */
function best(marks: readonly Mark[], down: Point): readonly Mark[] {
  const some = someOf(marks)
  const lows = some.map(({ at }) => at[0] * down[0] + at[1] * down[1])
  const [high, low] = [Math.min(...lows), Math.max(...lows)]
  const wide = Math.max(1, ...some.flatMap(({ at }) => some.map((one) => far(at, one.at))))
  const worth = (few: readonly Mark[]): number => {
    const points = few.map(({ at }) => at)
    const around = points.reduce((sum, p) => sum + points.reduce((all, q) => all + far(p, q), 0), 0)
    const lowness = points.reduce(
      (sum, [x, y]) => sum + (x * down[0] + y * down[1] - high) / (low - high || 1),
      0,
    )
    const sharpness = few.reduce((sum, { turn }) => sum + Math.min(1, turn / SHARP), 0)
    return spanned(points) / wide ** 2 + around / (12 * wide) + 0.2 * lowness + 0.1 * sharpness
  }
  for (let count = Math.min(MOST, some.length); count > 0; count--) {
    const ways = chosen(some, count).filter((few) =>
      few.every((one, k) => few.slice(k + 1).every(({ at }) => far(one.at, at) >= APART)),
    )
    const [first, ...rest] = ways
    if (first)
      return rest.reduce<readonly [readonly Mark[], number]>(
        (found, way) => {
          const value = worth(way)
          return value > found[1] ? [way, value] : found
        },
        [first, worth(first)],
      )[0]
  }
  return []
}

const legsOf = (marks: readonly Mark[]): readonly Stretch[] => marks.flatMap(({ legs }) => legs)

/** The corners of an area. */
export const cornersOf = (area: readonly Point[]): readonly Stretch[] =>
  legsOf(
    best(
      marksOf(
        area,
        () => true,
        () => true,
        AREA_LEG,
      ),
      [0, 1],
    ),
  )

/** An outline drawn in as far as its marks lie. */
function coveredBy(outline: readonly Point[]): readonly Point[] {
  const ring = inset(outline, COVERED)
  const isLost = edges(outline).some(
    ([a, b], k) =>
      far(a, b) >= NARROW && far(ring[k] as Point, ring[(k + 1) % ring.length] as Point) < 2 * STUMP,
  )
  return ring.length === outline.length && isLost ? inset(outline, BARELY_COVERED) : ring
}

function cornersOn({ outline, glue }: Stuck, under: Under, leg: number): readonly Stretch[] {
  if (outline.length < 3) return []
  const stays = staysWith(glue, under)
  const isPaper = onPaper(under)
  const border = edges(glue)
  const passes = (p: Point): boolean =>
    isPaper(p) &&
    !isIn(p, glue) &&
    !isNear(p, border, OFF_GLUE) &&
    !isNear(p, [...under.folds, ...under.busy], CLEAR) &&
    stays(p)
  return legsOf(best(marksOf(coveredBy(outline), passes, isPaper, leg), under.down))
}

/**
 * The corners of a piece on the face that it is stuck to, just within its edge, so that it covers them: two lines
 * each, that meet, and one where it comes in over the edge of that face. None where a fold or a cut lies between them
 * and the glue: what lies there may move off; and none beside other marks.
 */
export const cornersUnder = (stuck: Stuck, under: Under): readonly Stretch[] => cornersOn(stuck, under, LEG)

/** The same in dots on the other face, to be pricked through. */
export const pricksUnder = (stuck: Stuck, under: Under): readonly Stretch[] =>
  cornersOn(stuck, under, DOTTED_LEG)

/** The outline of a piece on the face that it is stuck to, as far as there is paper, and no other line. */
export function outlineUnder({ outline, glue }: Stuck, under: Under): readonly (readonly Point[])[] {
  if (outline.length < 3) return []
  const stays = staysWith(glue, under)
  const isPaper = onPaper(under)
  const taken = [...under.folds, ...under.busy]
  const parts = partsOf(outline, (p) => isPaper(p) && !isNear(p, taken, CLEAR) && stays(p))
  return parts.flatMap(({ points, beyond }) => {
    const run = beyond ? points : [...points, points[0] as Point]
    const long = run.slice(1).reduce((sum, p, k) => sum + far(run[k] as Point, p), 0)
    return long >= SHORT ? [run] : []
  })
}
