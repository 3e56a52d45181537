/** Where a piece that is stuck flat goes, told by its corners alone: for a face that will be seen. Lengths in mm. */
import { inset } from '../../drawing/pen/inset.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import { crossing, gapOf } from '../../paper/plane/gap.ts'
import type { Stretch } from './stretches.ts'
import { edges, far, isIn, toward } from './stretches.ts'

/** How far a mark runs from its corner along both edges: of dashes, and of dots, which say less. */
const LEG = 2.5
const DOTTED_LEG = 4

/** A leg that is shorter says nothing. */
const SHORT = 1.3

/** So many corners say where a piece goes and how it is turned. */
const MOST = 4

/** How far within a piece's own edge the marks lie: it covers them though it is glued a little beside its place. */
const COVERED = 1

/** Free paper between a mark and a fold or a cut. */
const CLEAR = 0.6

/** Nearer to the border of the glued place a mark would be taken for part of it. */
const OFF_GLUE = 0.9

/** From so much of a turn on a corner is one to the eye, radians: such are marked first, and those of a round outline where there are too few. */
const SHARP = (50 * Math.PI) / 180

/** Corners that are nearer to one another run together. */
const APART = 3 * LEG

/** Dots do not: nearer than this two corners are one. */
const SAME = 1e-6

const isCrossed = ([a, b]: Stretch, [c, d]: Stretch): boolean => crossing({ a, b }, { a: c, b: d }) !== null

/** How near two stretches come to one another. */
const apart = ([a, b]: Stretch, [c, d]: Stretch): number => gapOf({ a, b }, { a: c, b: d }).distance

/** A corner of an outline, with short lines from it along both its edges. */
interface Corner {
  readonly at: Point
  readonly legs: readonly [Stretch, Stretch]
  /** By how much the outline turns there, radians. */
  readonly turn: number
}

function cornersAlong(outline: readonly Point[], leg: number): readonly Corner[] {
  return outline.map((at, k): Corner => {
    const ends = [outline.at(k - 1) as Point, outline[(k + 1) % outline.length] as Point] as const
    const legTo = (end: Point): Stretch => [at, toward(at, end, Math.min(leg, far(at, end) / 2))]
    const [u, v] = ends.map(([x, y]) => [x - at[0], y - at[1]] as const) as [Point, Point]
    return {
      at,
      legs: [legTo(ends[0]), legTo(ends[1])],
      turn: Math.PI - Math.abs(Math.atan2(u[0] * v[1] - u[1] * v[0], u[0] * v[0] + u[1] * v[1])),
    }
  })
}

/** The farthest from all that were chosen, and so on; from a point where none was. */
function spread(
  corners: readonly Corner[],
  from: Point,
  before: readonly Corner[] = [],
  gap = APART,
): readonly Corner[] {
  const chosen = [...before]
  const away = ({ at }: Corner): number =>
    Math.min(...(chosen.length > 0 ? chosen.map((one) => one.at) : [from]).map((q) => far(at, q)))
  let left = corners
  while (chosen.length < MOST && left.length > 0) {
    const next = left.reduce((best, one) => (away(one) > away(best) ? one : best))
    chosen.push(next)
    left = left.filter((one) => away(one) >= gap)
  }
  return chosen
}

const centre = (area: readonly Point[]): Point => {
  const [x, y] = area.reduce(([u, v], p) => [u + p[0], v + p[1]], [0, 0])
  return [x / area.length, y / area.length]
}

const legsOf = (corners: readonly Corner[]): readonly Stretch[] => corners.flatMap(({ legs }) => legs)

/** The corners of an area. */
export const cornersOf = (area: readonly Point[]): readonly Stretch[] =>
  legsOf(spread(cornersAlong(area, DOTTED_LEG), centre(area), [], SAME))

/**
 * The corners of a piece on the face that it is stuck to, just within its edge, so that it covers them: two lines
 * each, that meet. None where a fold, a cut or the edge of that face (`drawn`) lies between them and the glue: what
 * lies there may move off; and none beside other marks (`busy`).
 */
export function cornersUnder(
  outline: readonly Point[],
  glue: readonly Point[],
  drawn: readonly Stretch[],
  busy: readonly Stretch[] = [],
): readonly Stretch[] {
  if (outline.length < 3) return []
  const from = centre(glue)
  const border = edges(glue)
  const isInSight = ({ at, legs }: Corner): boolean => {
    const ways = [at, ...legs.map(([, end]) => end)].map((to): Stretch => [from, to])
    return !drawn.some(
      (line) => ways.some((way) => isCrossed(way, line)) || legs.some((leg) => apart(leg, line) < CLEAR),
    )
  }
  const isFree = ({ at, legs }: Corner): boolean =>
    !isIn(at, glue) &&
    legs.every(
      (leg) =>
        far(...leg) >= SHORT &&
        border.every((side) => apart(leg, side) >= OFF_GLUE) &&
        [...drawn, ...busy].every((line) => apart(leg, line) >= CLEAR),
    )
  const found = cornersAlong(inset(outline, COVERED), LEG).filter((one) => isFree(one) && isInSight(one))
  const sharp = spread(
    found.filter(({ turn }) => turn > SHARP),
    from,
  )
  const blunt = found.filter(({ at }) => sharp.every((one) => far(at, one.at) >= APART))
  return legsOf(spread(blunt, from, sharp))
}
