/** A drawing of the screen on paper: greys that any printer has, black lines, and its measures. Lengths in mm. */
import type { Drawing, InkShape, PathMark, Point, Role } from '../../drawing/pen/marks.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import type { Pictured } from './frame.ts'

/** Drawn as a line over what lies beneath. */
const LINES: Partial<Record<Role, number>> = { edge: 0.2, dip: 0.15, brow: 0.15, cut: 0.3 }

/** What a chart or figure says in words and measures. */
const MARKS: ReadonlySet<Role> = new Set(['dimension', 'axis', 'curve', 'guide', 'note'])

/** Measures and crosses are black on paper. */
const onPaper: Partial<Record<Role, Role>> = { dimension: 'axis' }

/** Squared paper: so pale that a pencil's cross is seen on it. */
const SQUARES = { line: '#b4b9ca', width: 0.12 } as const

const two = (n: number): string =>
  Math.round(Math.min(255, Math.max(0, n)))
    .toString(16)
    .padStart(2, '0')

/** A facet's grey: as light as its share of the lamp. */
function greyOf({ paint }: PathMark): string {
  const share = paint ? 0.74 + 0.2 * paint.light + 0.08 * (paint.sky ?? 1) : 1
  const level = two(255 * Math.min(1, share))
  return `#${level}${level}${level}`
}

/** What a drawing shows, without the empty table round it. */
function cropped({ marks, box }: Drawing): Drawing['box'] {
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

/** The drawing `width` mm wide, as a block; a card is shown without the table round it, no higher than that. */
export function picture(drawing: Drawing, room: number, crops = false): Pictured {
  const [x, y, wide, high] = crops ? cropped(drawing) : drawing.box
  const width = Math.min(room, (room * TALLEST * wide) / high)
  const scale = width / wide
  const at = ([u, v]: Point): Point => [(u - x) * scale, (v - y) * scale]
  const placed = (runs: PathMark['runs']): readonly (readonly Point[])[] => runs.map((run) => run.map(at))
  const shapes: InkShape[] = []
  const marks: SheetMark[] = []
  for (const mark of drawing.marks) {
    if (mark.mark === 'dot') continue
    if (mark.mark === 'word') {
      marks.push({ ...mark, at: at(mark.at), size: mark.size * scale, role: 'note' })
      continue
    }
    const { role, runs, closed } = mark
    const line = LINES[role]
    if (role === 'facet' || role === 'bare')
      shapes.push({
        ...{ runs: placed(runs), bends: false, closed: true },
        ...{ fill: greyOf(mark), line: '#000000', width: 0.18 },
      })
    else if (role === 'square')
      shapes.push({ runs: placed(runs), bends: false, closed: false, fill: null, ...SQUARES })
    else if (line !== undefined)
      shapes.push({
        ...{ runs: placed(runs), bends: false, closed, fill: null },
        ...{ line: '#000000', width: line },
      })
    else if (MARKS.has(role))
      marks.push({
        ...{ mark: 'path', runs: placed(runs), closed, role: onPaper[role] ?? role },
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
