/** Straight lines of a page, and how points lie to them. Lengths in mm. */
import type { PathMark, Point } from '../../drawing/pen/marks.ts'

export type Stretch = readonly [Point, Point]

export const far = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** From one point so far on the way to another. */
export function toward(a: Point, b: Point, by: number): Point {
  const long = far(a, b) || 1
  return [a[0] + (by / long) * (b[0] - a[0]), a[1] + (by / long) * (b[1] - a[1])]
}

/** Whether a point lies in an outline, by the even-odd rule. */
export function isIn([x, y]: Point, outline: readonly Point[]): boolean {
  let inside = false
  outline.forEach(([ax, ay], k) => {
    const [bx, by] = outline[(k + 1) % outline.length] as Point
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) inside = !inside
  })
  return inside
}

export const edges = (outline: readonly Point[]): Stretch[] =>
  outline.map((a, k): Stretch => [a, outline[(k + 1) % outline.length] as Point])

/** A drawn line, stretch by stretch. */
export const stretchesOf = ({ runs, closed }: Pick<PathMark, 'runs' | 'closed'>): readonly Stretch[] =>
  runs.flatMap((run) => (closed ? edges(run) : run.slice(1).map((b, k): Stretch => [run[k] as Point, b])))

/** How far a point is from a stretch. Asked a hundred thousand times a sheet: no square is too large here for a plain root. */
export const nearest = (p: Point, [a, b]: Stretch): number => {
  const x = p[0] - a[0]
  const y = p[1] - a[1]
  const dx = b[0] - a[0]
  const dy = b[1] - a[1]
  const t = Math.max(0, Math.min(1, (x * dx + y * dy) / (dx * dx + dy * dy || 1)))
  return Math.sqrt((x - t * dx) ** 2 + (y - t * dy) ** 2)
}
