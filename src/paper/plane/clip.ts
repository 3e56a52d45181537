/** Cutting outlines at a line or plane. Source: Sutherland and Hodgman 1974. */

/** What is left of an outline. */
export interface Clipped<P> {
  readonly points: P[]
  /** For each point the edge of the old outline on which the edge that begins there lies; -1: on the cut. */
  readonly edges: number[]
}

/** The point at a share of the way from one to the other, in the plane or in space. */
export type Between<P> = (from: P, to: P, share: number) => P

/** Between two points of the plane. */
export const between: Between<readonly [number, number]> = (p, q, t) => [
  p[0] + t * (q[0] - p[0]),
  p[1] + t * (q[1] - p[1]),
]

/** Between two points in space. */
export const betweenInSpace: Between<[number, number, number]> = (p, q, t) => [
  p[0] + t * (q[0] - p[0]),
  p[1] + t * (q[1] - p[1]),
  p[2] + t * (q[2] - p[2]),
]

/**
 * The part of a convex outline on the upper side of a line or plane.
 * @param off how far each point lies above it, in any measure; below 0 is the side that goes
 * @param near so little off counts as on it: such points stay, and nothing is cut there
 * @param closed whether an edge leads from the last point to the first; false for a line
 */
export function clip<P>(
  points: readonly P[],
  off: readonly number[],
  between: Between<P>,
  near = 0,
  closed = true,
): Clipped<P> {
  const left: P[] = []
  const edges: number[] = []
  const count = points.length
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count
    const [here, there] = [off[k] as number, off[next] as number]
    if (here >= -near) {
      left.push(points[k] as P)
      // From a corner on the line down to the other side: what follows is the cut.
      edges.push(here > near || there >= -near ? k : -1)
    }
    if (!closed && next === 0) break
    if ((here > near && there < -near) || (here < -near && there > near)) {
      left.push(between(points[k] as P, points[next] as P, here / (here - there)))
      edges.push(here < 0 ? k : -1)
    }
  }
  return { points: left, edges }
}

/**
 * The stretch of the segment a-b inside a rectangle, as shares of its length; null if there is none.
 * Source: Y.-D. Liang and B. A. Barsky, ACM Transactions on Graphics 3 (1984) 1-22.
 */
export function insideBox(
  a: readonly [number, number],
  b: readonly [number, number],
  [left, top, right, bottom]: readonly [number, number, number, number],
): readonly [from: number, to: number] | null {
  // Most segments are nowhere near.
  if ((a[0] < left && b[0] < left) || (a[0] > right && b[0] > right)) return null
  if ((a[1] < top && b[1] < top) || (a[1] > bottom && b[1] > bottom)) return null
  let from = 0
  let to = 1
  const across = b[0] - a[0]
  if (across !== 0) {
    const t = (left - a[0]) / across
    const u = (right - a[0]) / across
    from = Math.max(from, Math.min(t, u))
    to = Math.min(to, Math.max(t, u))
  }
  const along = b[1] - a[1]
  if (along !== 0) {
    const t = (top - a[1]) / along
    const u = (bottom - a[1]) / along
    from = Math.max(from, Math.min(t, u))
    to = Math.min(to, Math.max(t, u))
  }
  return from < to ? [from, to] : null
}
