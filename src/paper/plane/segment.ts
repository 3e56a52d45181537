import type { Flat } from './lay.ts'

/**
 * Two flat points or lines nearer than this are one, mm. Rounding leaves some 1e-13 mm on a card of A3;
 * a pencil line is 0.5 mm wide.
 */
export const SAME = 1e-9

/**
 * Error bound of `sideOf`, in units of the terms that it subtracts.
 * Source: J. R. Shewchuk, "Adaptive precision floating-point arithmetic", 1997, the bound ccwerrboundA.
 */
const SIDE_ERROR = (3 + 16 * Number.EPSILON) * Number.EPSILON

/**
 * On which side of the line a-b a point lies: above 0 left, below 0 right (across to the right, along
 * upwards), 0 on it or too near to tell. Twice the area of the triangle, mm².
 */
export function sideOf(a: Flat, b: Flat, p: Flat): number {
  const one = (b[0] - a[0]) * (p[1] - a[1])
  const two = (b[1] - a[1]) * (p[0] - a[0])
  const area = one - two
  return Math.abs(area) <= SIDE_ERROR * (Math.abs(one) + Math.abs(two)) ? 0 : area
}

export interface Segment {
  readonly a: Flat
  readonly b: Flat
}

/** The edges of a closed outline. */
export const edgesOf = (outline: readonly Flat[]): Segment[] =>
  outline.map((a, k) => ({ a, b: outline[(k + 1) % outline.length] as Flat }))

/** The point of a segment nearest to `p`, and how far off it is, mm. */
export function nearestOn({ a, b }: Segment, p: Flat): { distance: number; at: Flat } {
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const size = x * x + y * y
  const t = size > 0 ? Math.max(0, Math.min(1, ((p[0] - a[0]) * x + (p[1] - a[1]) * y) / size)) : 0
  const at: Flat = t === 1 ? b : [a[0] + t * x, a[1] + t * y]
  return { distance: Math.hypot(p[0] - at[0], p[1] - at[1]), at }
}

/** Whether a point lies inside an outline (even-odd rule); a point on an edge may go either way. */
export function isWithin(edges: readonly Segment[], p: Flat): boolean {
  let within = false
  for (const { a, b } of edges)
    if (a[1] > p[1] !== b[1] > p[1] && sideOf(a, b, p) > 0 === b[1] > a[1]) within = !within
  return within
}
