import type { Drawing, Mark, Point } from '../drawing/pen/marks.ts'

/** Kept free to the edges of the picture, px: a shadow is blurred by as much. */
const FREE = 6

/** The same of the card itself, as far as its shadow leaves room. */
const CLEAR = 16

/** Least x, least y, most x, most y. */
type Bounds = readonly [number, number, number, number]

const isShadow = (mark: Mark): boolean => mark.role === 'shadow' && mark.of === 'table'

const pointsOf = (mark: Mark): readonly Point[] => {
  if (mark.mark === 'path') return mark.runs.flat()
  const [x, y] = mark.at
  const reach = mark.mark === 'dot' ? mark.radius : 0
  return [
    [x - reach, y - reach],
    [x + reach, y + reach],
  ]
}

function boundsOf(marks: readonly Mark[]): Bounds | null {
  const points = marks.flatMap(pointsOf)
  if (points.length === 0) return null
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  return [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)]
}

const isIn = ([x0, y0, x1, y1]: Bounds, [x, y, width, height]: Drawing['box']): boolean =>
  x0 >= x && y0 >= y && x1 <= x + width && y1 <= y + height

const union = (a: Bounds, b: Bounds): Bounds => [
  Math.min(a[0], b[0]),
  Math.min(a[1], b[1]),
  Math.max(a[2], b[2]),
  Math.max(a[3], b[3]),
]

/** Where a stretch of this length begins that has `all` in its middle and all of `first` in it. */
function begin(length: number, all: readonly [number, number], first: readonly [number, number]): number {
  const middle = (all[0] + all[1] - length) / 2
  const spare = length - (all[1] - all[0])
  const most = spare < 1 ? CLEAR : Math.min(CLEAR, spare - 1)
  const clear = Math.max(0, Math.min(most, (length - (first[1] - first[0])) / 2))
  return Math.min(first[0] - clear, Math.max(first[1] + clear - length, middle))
}

/**
 * The picture moved, and made at most `most` times as large, for the shadow that its card throws on the table: at the edge
 * of the picture it would end in a straight line. The card comes first; where that goes beyond the picture, all stays.
 */
export function shadowFitted(drawing: Drawing, most: number): Drawing {
  const card = boundsOf(drawing.marks.filter((mark) => !isShadow(mark) && mark.role !== 'haze'))
  const shadow = boundsOf(drawing.marks.filter(isShadow))
  if (!card || !shadow) return drawing
  const [, , width, height] = drawing.box
  if (isIn(shadow, drawing.box) || !isIn(card, drawing.box)) return drawing
  const all = union(card, shadow)
  const needed = Math.max((all[2] - all[0] + 2 * FREE) / width, (all[3] - all[1] + 2 * FREE) / height)
  const [wide, high] = [width, height].map((side) => side * Math.min(most, Math.max(1, needed))) as [
    number,
    number,
  ]
  return {
    ...drawing,
    box: [
      begin(wide, [all[0], all[2]], [card[0], card[2]]),
      begin(high, [all[1], all[3]], [card[1], card[3]]),
      wide,
      high,
    ],
  }
}
