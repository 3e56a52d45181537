import type { Mark, Point } from './marks.ts'

/** A place that fails a check: a dashed line or outline, and a ring where that would be too small to see. */
export function faultMarks(points: readonly Point[], of: string, radius: number): readonly Mark[] {
  if (points.length === 0) return []
  const marks: Mark[] = []
  if (points.length > 1)
    marks.push({ mark: 'path', runs: [points], closed: points.length > 2, role: 'fault', of })
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const [x0, x1, y0, y1] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  if (Math.hypot(x1 - x0, y1 - y0) < 1.7 * radius)
    marks.push({ mark: 'dot', at: [(x0 + x1) / 2, (y0 + y1) / 2], radius, role: 'fault', of })
  return marks
}
