import type { Point } from '../../drawing/pen/marks.ts'

/** A rectangle of the page: left, top, right, bottom. */
export type Rectangle = readonly [left: number, top: number, right: number, bottom: number]

/**
 * The part of a straight line inside a rectangle, or null. Liang and Barsky's clipping (ACM Transactions
 * on Graphics 3 (1984) 1-22).
 */
export function clipped(a: Point, b: Point, [left, top, right, bottom]: Rectangle): [Point, Point] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  let from = 0
  let to = 1
  for (const [p, q] of [
    [-dx, a[0] - left],
    [dx, right - a[0]],
    [-dy, a[1] - top],
    [dy, bottom - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  if (from >= to) return null
  const at = (t: number): Point => [a[0] + t * dx, a[1] + t * dy]
  return [at(from), at(to)]
}
