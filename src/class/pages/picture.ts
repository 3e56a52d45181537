/** Drawings of the screen on paper: the card in its colours, and charts in black lines. Lengths in mm. */
import type { Drawing, InkShape, PathMark, Point, Role } from '../../drawing/pen/marks.ts'
import type { SheetMark, Told } from '../../sheet/marks/setting.ts'
import { pictureBlock } from '../../sheet/marks/setting.ts'
import type { Pictured } from './frame.ts'

/** What a chart says in lines and words. */
const MARKS: ReadonlySet<Role> = new Set(['dimension', 'axis', 'curve', 'guide', 'note', 'swing'])

/** Measures and crosses are black on paper. */
const onPaper: Partial<Record<Role, Role>> = { dimension: 'axis', curve: 'axis', swing: 'guide' }

/** Squared paper: so pale that a pencil's cross is seen on it. */
const SQUARES = { line: '#b4b9ca', width: 0.12 } as const

/** A small round, as corners. */
const ring = ([x, y]: Point, radius: number): readonly Point[] =>
  Array.from({ length: 12 }, (_, k): Point => {
    const turn = (k * Math.PI) / 6
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]
  })

/** The same drawing without the table round it, nor the shadow that would be cut off there. */
export const cropped = (drawing: Drawing): Drawing => ({
  ...drawing,
  box: shownIn(drawing),
  marks: drawing.marks.filter(
    (mark) => mark.mark !== 'path' || mark.role !== 'shadow' || mark.of !== 'table',
  ),
})

function shownIn({ marks, box }: Drawing): Drawing['box'] {
  const points = marks.flatMap((mark): readonly Point[] =>
    mark.mark === 'path'
      ? mark.role === 'facet' || mark.role === 'dimension'
        ? mark.runs.flat()
        : []
      : [mark.at],
  )
  if (points.length === 0) return box
  const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
  const [left, top] = [Math.min(...xs) - 6, Math.min(...ys) - 6]
  return [left, top, Math.max(...xs) + 6 - left, Math.max(...ys) + 6 - top]
}

/** No picture is higher than this share of its width. */
const TALLEST = 0.8

/** How wide a drawing may be in a room of that width, mm. */
const fitting = (room: number, wide: number, high: number): number =>
  Math.min(room, (room * TALLEST * wide) / high)

/** A card as it stands, no wider than `room` and no higher than it should be. */
export const cardPicture = (drawing: Drawing, room: number): Pictured =>
  pictureBlock(drawing, fitting(room, drawing.box[2], drawing.box[3]))

/** A chart, no wider than `room`: greys that any printer has, and black lines. */
export function chartPicture(drawing: Drawing, room: number): Pictured {
  const [x, y, wide, high] = drawing.box
  const width = fitting(room, wide, high)
  const scale = width / wide
  const told: Told = { as: 'Figure', alt: drawing.says }
  const at = ([u, v]: Point): Point => [(u - x) * scale, (v - y) * scale]
  const placed = (runs: PathMark['runs']): readonly (readonly Point[])[] => runs.map((run) => run.map(at))
  const shapes: InkShape[] = []
  const marks: SheetMark[] = []
  for (const mark of drawing.marks) {
    if (mark.mark === 'dot') {
      const { at: middle, radius } = mark
      const round = ring(at(middle), 0.5 * radius * scale)
      shapes.push({ runs: [round], bends: false, closed: true, fill: '#000000', line: null, width: 0 })
    } else if (mark.mark === 'word')
      marks.push({ ...mark, told, at: at(mark.at), size: mark.size * scale, role: 'note' })
    else if (mark.role === 'square')
      shapes.push({ runs: placed(mark.runs), bends: false, closed: false, fill: null, ...SQUARES })
    else if (MARKS.has(mark.role))
      marks.push({
        ...{ mark: 'path', runs: placed(mark.runs), closed: mark.closed, told },
        role: onPaper[mark.role] ?? mark.role,
        ...(mark.of === undefined ? {} : { of: mark.of }),
      })
  }
  const height = high * scale
  const outline: Point[] = [
    [0, 0],
    [width, 0],
    [width, height],
    [0, height],
  ]
  return {
    ...{ width, height, marks },
    panels: shapes.length > 0 ? [{ of: 'picture', outline, paper: null, shapes }] : [],
  }
}
