import type { Point } from '../../drawing/pen/marks.ts'
import { between, insideBox } from '../../paper/plane/clip.ts'

/** A rectangle of the page: left, top, right, bottom. */
export type Rectangle = readonly [left: number, top: number, right: number, bottom: number]

export const isWithin = ([x, y]: Point, [left, top, right, bottom]: Rectangle): boolean =>
  x >= left && x <= right && y >= top && y <= bottom

/** Where nothing is in the way. */
export const EVERYWHERE: Rectangle = [-1e4, -1e4, 1e4, 1e4]

/** The part of a straight line inside a rectangle, or null. */
export function clipped(a: Point, b: Point, box: Rectangle): [Point, Point] | null {
  const shares = insideBox(a, b, box)
  return shares && [between(a, b, shares[0]), between(a, b, shares[1])]
}

/** Whether a line may come into a rectangle: most are far away, and that is soon told. */
const mayMeet = ([[ax, ay], [bx, by]]: readonly [Point, Point], [l, t, r, b]: Rectangle): boolean =>
  !((ax < l && bx < l) || (ax > r && bx > r) || (ay < t && by < t) || (ay > b && by > b))

/** What is left of a straight line outside some rectangles, without what is shorter than `least` mm. */
export function beside(
  line: readonly [Point, Point],
  boxes: readonly Rectangle[],
  least = 0,
): readonly (readonly [Point, Point])[] {
  let left: readonly (readonly [Point, Point])[] = [line]
  for (const box of boxes.filter((one) => mayMeet(line, one)))
    left = left.flatMap(([a, b]) => {
      const covered = clipped(a, b, box)
      return covered ? [[a, covered[0]] as const, [covered[1], b] as const] : [[a, b] as const]
    })
  return left.filter(([a, b]) => {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    return long > 1e-9 && long >= least
  })
}

/** A rectangle's corners, in turn. */
export const corners = ([left, top, right, bottom]: Rectangle): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
]

/** Whether one of these lines runs through a rectangle. The one that did last is asked first: it is the likeliest to again. */
export function runsThrough(lines: readonly (readonly [Point, Point])[]): (box: Rectangle) => boolean {
  let last = 0
  return (box) => {
    for (let n = 0; n < lines.length; n++) {
      const k = (last + n) % lines.length
      const [a, b] = lines[k] as readonly [Point, Point]
      if (insideBox(a, b, box) === null) continue
      last = k
      return true
    }
    return false
  }
}

/** The same with so much more on every side. */
export const grown = ([l, t, r, b]: Rectangle, by: number): Rectangle => [l - by, t - by, r + by, b + by]

export const overlap = (a: Rectangle, b: Rectangle): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]
