/** A drawing of the screen on paper: greys that any printer has, black lines, and its measures. Lengths in mm. */
import type { Drawing, InkShape, Mark, PathMark, Point, Role } from '../../drawing/pen/marks.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import type { Pictured } from './frame.ts'

/** Drawn as a line over what lies beneath. */
const LINES: Partial<Record<Role, number>> = { edge: 0.2, dip: 0.15, brow: 0.15, cut: 0.3 }

/** What a chart or figure says in words and measures. */
const MARKS: ReadonlySet<Role> = new Set(['dimension', 'axis', 'curve', 'guide', 'note', 'swing'])

/** Measures and crosses are black on paper. */
const onPaper: Partial<Record<Role, Role>> = { dimension: 'axis', curve: 'axis', swing: 'guide' }

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

/** A small round, as corners. */
const ring = ([x, y]: Point, radius: number): readonly Point[] =>
  Array.from({ length: 12 }, (_, k): Point => {
    const turn = (k * Math.PI) / 6
    return [x + radius * Math.cos(turn), y + radius * Math.sin(turn)]
  })

/** An edge of a panel, whichever way it is gone along; to a tenth of a pixel. */
function edgeKey(of: string, a: Point, b: Point): string {
  const [from, to] = [a, b].map(([x, y]) => `${Math.round(10 * x)} ${Math.round(10 * y)}`).sort()
  return `${of} ${from} ${to}`
}

const isFacet = (mark: Mark): mark is PathMark =>
  mark.mark === 'path' && (mark.role === 'facet' || mark.role === 'bare')

const sides = (run: readonly Point[]): readonly (readonly [Point, Point])[] =>
  run.map((point, k) => [point, run[(k + 1) % run.length] ?? point])

/** Edges along which two parts of one panel meet: there is no edge of paper. */
function sharedEdges(marks: readonly Mark[]): ReadonlySet<string> {
  const seen = new Set<string>()
  const twice = new Set<string>()
  for (const { runs, of = '' } of marks.filter(isFacet))
    for (const [a, b] of runs.flatMap(sides)) {
      const key = edgeKey(of, a, b)
      if (seen.has(key)) twice.add(key)
      seen.add(key)
    }
  return twice
}

const edgesOf = ({ runs, of = '' }: PathMark, shared: ReadonlySet<string>): PathMark['runs'] =>
  runs.flatMap(sides).filter(([a, b]) => !shared.has(edgeKey(of, a, b)))

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
  const shared = sharedEdges(drawing.marks)
  const shapes: InkShape[] = []
  const marks: SheetMark[] = []
  for (const mark of drawing.marks) {
    if (mark.mark === 'dot') {
      const { at: middle, radius } = mark
      const round = ring(at(middle), 0.5 * radius * scale)
      shapes.push({ runs: [round], bends: false, closed: true, fill: '#000000', line: null, width: 0 })
      continue
    }
    if (mark.mark === 'word') {
      marks.push({ ...mark, at: at(mark.at), size: mark.size * scale, role: 'note' })
      continue
    }
    const { role, runs, closed } = mark
    const line = LINES[role]
    if (role === 'facet' || role === 'bare') {
      const grey = greyOf(mark)
      shapes.push(
        // A hair of its own grey hides where the parts of one panel meet.
        { runs: placed(runs), bends: false, closed: true, fill: grey, line: grey, width: 0.1 },
        {
          ...{ runs: placed(edgesOf(mark, shared)), bends: false, closed: false },
          ...{ fill: null, line: '#000000', width: 0.18 },
        },
      )
    } else if (role === 'square')
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
