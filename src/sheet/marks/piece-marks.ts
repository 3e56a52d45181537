import { hatch, strokes } from '../../drawing/pen/hatch.ts'
import type { PathMark, Point } from '../../drawing/pen/marks.ts'
import type { LineKind, Piece, PieceLine } from '../../paper/index.ts'
import type { SheetFace } from './instructions.ts'

/** Where a piece lies on its page: the page's own coordinates of the piece's 0, 0; y of the piece runs up. */
export interface Place {
  readonly origin: Point
  /** Printed for the outside: left and right swapped. */
  readonly mirrored: boolean
}

/** A rectangle of the page: left, top, right, bottom. */
export type Rectangle = readonly [left: number, top: number, right: number, bottom: number]

const turned: Partial<Record<LineKind, LineKind>> = { mountain: 'valley', valley: 'mountain' }

/** What a fold is as seen on the printed side. */
export const seen = (kind: LineKind, face: SheetFace): LineKind =>
  face === 'inside' ? kind : (turned[kind] ?? kind)

/** A point of a piece, on the page. */
export const onPage = ({ origin, mirrored }: Place, [x, y]: Point): Point => [
  origin[0] + (mirrored ? -x : x),
  origin[1] - y,
]

/**
 * The part of a straight line inside a rectangle, or null. Liang and Barsky's clipping (ACM Transactions
 * on Graphics 3 (1984) 1-22).
 */
export function clipped(a: Point, b: Point, [left, top, right, bottom]: Rectangle): [Point, Point] | null {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  let from = 0
  let to = 1
  for (const [p, q] of [
    [-dx, a[0] - left],
    [dx, right - a[0]],
    [-dy, a[1] - top],
    [dy, bottom - a[1]],
  ] as const) {
    if (p === 0) {
      if (q < 0) return null
    } else if (p < 0) from = Math.max(from, q / p)
    else to = Math.min(to, q / p)
  }
  if (from >= to) return null
  const at = (t: number): Point => [a[0] + t * dx, a[1] + t * dy]
  return [at(from), at(to)]
}

const inside = ([x, y]: Point, [left, top, right, bottom]: Rectangle): boolean =>
  x >= left && x <= right && y >= top && y <= bottom

/** One line of a piece as a mark; what lies beyond the printable rectangle is left out. */
function lineMark(line: PieceLine, place: Place, face: SheetFace, printable: Rectangle): PathMark | null {
  const points = line.points.map((point) => onPage(place, point))
  const mark = { mark: 'path', role: seen(line.kind, face), of: line.of } as const
  if (points.every((point) => inside(point, printable)))
    return { ...mark, runs: [points], closed: line.closed ?? false }
  const ends = line.closed ? [...points, points[0] as Point] : points
  const runs = ends
    .slice(1)
    .flatMap((point, k) => [clipped(ends[k] as Point, point, printable)])
    .filter((run) => run !== null)
  return runs.length === 0 ? null : { ...mark, runs, closed: false }
}

/** The hatching of a glue area, or of a line to be taped. */
export const glueHatch = (points: readonly Point[], closed: boolean, of: string): PathMark => ({
  mark: 'path',
  runs: closed ? hatch(points) : strokes(points),
  closed: false,
  role: 'glue',
  of: `${of}-hatch`,
})

/** A piece's lines as marks of the page: the kernel's own points, moved, never scaled. */
export function pieceMarks(piece: Piece, place: Place, face: SheetFace, printable: Rectangle): PathMark[] {
  return piece.lines.flatMap((line) => {
    const mark = lineMark(line, place, face, printable)
    if (!mark) return []
    if (line.kind !== 'glue') return [mark]
    return [
      mark,
      glueHatch(
        line.points.map((point) => onPage(place, point)),
        line.closed ?? false,
        line.of,
      ),
    ]
  })
}
