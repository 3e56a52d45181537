/** Where a piece that is stuck flat goes, told by its corners alone: for a face that will be seen. Lengths in mm. */
import { inset } from '../../drawing/pen/inset.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import { crossing, middleOf } from '../../paper/plane/gap.ts'
import type { Stretch } from './lettering.ts'
import { edges, isIn } from './lettering.ts'

/** How far a mark runs from its corner along an edge. */
const LEG = 4

/** So many corners say where a piece goes and how it is turned. */
const MOST = 4

/** How far within a piece's own edge the marks lie: it covers them though it is glued a little beside its place. */
const COVERED = 1

/** Where a line ends that runs into a fold or a cut it keeps clear of that. */
const CLEAR = 0.7

/** Shorter than this a stretch of an edge says nothing. */
const SHORT = 2

const far = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])

const toward = (a: Point, b: Point, by: number): Point => {
  const long = far(a, b) || 1
  return [a[0] + (by / long) * (b[0] - a[0]), a[1] + (by / long) * (b[1] - a[1])]
}

const crossed = ([a, b]: Stretch, [c, d]: Stretch): Point | null => crossing({ a, b }, { a: c, b: d })

/** Those farthest from a point first, then always the one farthest from all that were chosen. */
function spread(points: readonly Point[], from: Point): readonly Point[] {
  const chosen: Point[] = []
  let left = points
  while (chosen.length < MOST && left.length > 0) {
    const away = (p: Point): number =>
      Math.min(...(chosen.length > 0 ? chosen : [from]).map((q) => far(p, q)))
    const next = left.reduce((best, p) => (away(p) > away(best) ? p : best))
    chosen.push(next)
    left = left.filter((p) => far(p, next) > 1e-6)
  }
  return chosen
}

/** Short lines from some of the corners in which stretches end, along them. */
function corners(sides: readonly Stretch[], from: Point): readonly Stretch[] {
  return spread(sides.flat(), from).flatMap((corner) =>
    sides.flatMap(([a, b]): Stretch[] => {
      const leg = Math.min(LEG, far(a, b) / 2.5)
      return [
        ...(far(a, corner) < 1e-6 ? [[a, toward(a, b, leg)] as const] : []),
        ...(far(b, corner) < 1e-6 ? [[b, toward(b, a, leg)] as const] : []),
      ]
    }),
  )
}

const centre = (area: readonly Point[]): Point => {
  const [x, y] = area.reduce(([u, v], p) => [u + p[0], v + p[1]], [0, 0])
  return [x / area.length, y / area.length]
}

/** The corners of an area. */
export const cornersOf = (area: readonly Point[]): readonly Stretch[] => corners(edges(area), centre(area))

/**
 * The corners of a piece on the face that it is stuck to, just within its edge, so that it covers them. None where
 * a fold, a cut or the edge of that face (`drawn`) lies between them and the glue: what lies there may move off.
 */
export function cornersUnder(
  outline: readonly Point[],
  glue: readonly Point[],
  drawn: readonly Stretch[],
): readonly Stretch[] {
  if (outline.length < 3) return []
  const from = centre(glue)
  const sides = edges(inset(outline, COVERED)).flatMap(([a, b]): Stretch[] => {
    const stops = drawn
      .flatMap((line) => {
        const at = crossed([a, b], line)
        return at ? [at] : []
      })
      .sort((p, q) => far(a, p) - far(a, q))
    const ends: readonly Point[] = [a, ...stops, b]
    return ends.slice(1).flatMap((end, k): Stretch[] => {
      const start = ends[k] as Point
      const [first, last] = [k > 0, k < stops.length]
      if (far(start, end) < SHORT + CLEAR * (Number(first) + Number(last))) return []
      return [[first ? toward(start, end, CLEAR) : start, last ? toward(end, start, CLEAR) : end]]
    })
  })
  const inSight = sides.filter(([a, b]) => {
    const way: Stretch = [from, middleOf({ a, b }) as Point]
    return !drawn.some((line) => crossed(way, line) !== null)
  })
  return corners(inSight, from).filter(([corner]) => !isIn(corner, glue))
}
