/** Lines of a picture keep off folds and cuts that run the same way. */
import type { Point } from '../../drawing/pen/marks.ts'
import type { Stretch } from './stretches.ts'

/** Lines that are no further from one another are one, mm. */
const NEAR = 0.2

/** Lines that differ by less in direction, as the sine of the angle, run along one another. */
const PARALLEL = 0.1

/** Whether one stretch lies along another, with both its ends on it. */
export const isAlong = (side: Stretch, [a, b]: Stretch): boolean => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const square = dx * dx + dy * dy
  return side.every(([x, y]) => {
    const t = square === 0 ? 0 : Math.min(1, Math.max(0, ((x - a[0]) * dx + (y - a[1]) * dy) / square))
    return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy) < NEAR
  })
}

/** What is left of a run of points where none of these lines runs along it: dots on dashes would be neither. */
export function offLines(run: readonly Point[], lines: readonly Stretch[]): readonly (readonly Point[])[] {
  const left: Point[][] = []
  for (const [k, to] of run.entries()) {
    const from = run[k - 1]
    if (!from) continue
    const side: Stretch = [from, to]
    if (lines.some((line) => isAlong(side, line) && sine(side, line) < PARALLEL)) continue
    if (left.at(-1)?.at(-1) === from) left.at(-1)?.push(to)
    else left.push([from, to])
  }
  return left
}

/** Of the angle between two stretches. */
export function sine([a, b]: Stretch, [c, d]: Stretch): number {
  const [x, y, u, v] = [b[0] - a[0], b[1] - a[1], d[0] - c[0], d[1] - c[1]]
  return Math.abs(x * v - y * u) / (Math.hypot(x, y) * Math.hypot(u, v) || 1)
}
