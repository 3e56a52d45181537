import type { Point } from '../../drawing/pen/marks.ts'
import { between, insideBox } from '../../paper/plane/clip.ts'

/** A rectangle of the page: left, top, right, bottom. */
export type Rectangle = readonly [left: number, top: number, right: number, bottom: number]

/** The part of a straight line inside a rectangle, or null. */
export function clipped(a: Point, b: Point, box: Rectangle): [Point, Point] | null {
  const shares = insideBox(a, b, box)
  return shares && [between(a, b, shares[0]), between(a, b, shares[1])]
}
