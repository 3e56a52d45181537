import type { Flat, Lay } from '../plane/lay.ts'
import type { Segment } from '../plane/segment.ts'
import { nearestOn, SAME } from '../plane/segment.ts'
import type { Model } from './model.ts'

/** The point of a crease at a distance from its origin, in the coordinates of a panel that it lies in. */
export const alongLay = ({ origin, run }: Lay, s: number): Flat => [
  origin[0] + s * run[0],
  origin[1] + s * run[1],
]

/** By panel: where its creases lie. */
export function creaseLines(model: Model): readonly (readonly Segment[])[] {
  const lines: Segment[][] = model.panels.map(() => [])
  for (const { left, right, length } of model.creases)
    for (const { panel, lay } of [left, right])
      lines[panel]?.push({ a: alongLay(lay, 0), b: alongLay(lay, length) })
  return lines
}

/** Whether a point lies in the box round a line: most do not, and need no further look. */
const inBox = ({ a, b }: Segment, [x, y]: Flat): boolean =>
  x >= Math.min(a[0], b[0]) - SAME &&
  x <= Math.max(a[0], b[0]) + SAME &&
  y >= Math.min(a[1], b[1]) - SAME &&
  y <= Math.max(a[1], b[1]) + SAME

/** Whether a segment lies along one of the lines, from end to end. */
export const isAlong = (segment: Segment, lines: readonly Segment[]): boolean =>
  lines.some(
    (line) =>
      inBox(line, segment.a) &&
      nearestOn(line, segment.a).distance <= SAME &&
      nearestOn(line, segment.b).distance <= SAME,
  )
