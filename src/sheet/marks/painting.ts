/** What is drawn on the pieces of a page in colour, and the paper that stays white for lines, letters and glue. */
import type { PaintedPanel } from '../../drawing/art/colours.ts'
import { artColours, tabPaper } from '../../drawing/art/colours.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import type { Design, Piece } from '../../paper/index.ts'
import type { SheetLines } from './instructions.ts'
import { faceOf } from './instructions.ts'
import { placesOn } from './joint-places.ts'
import { lookOf } from './looks.ts'
import type { Place } from './piece-marks.ts'
import { onPage, onPiece } from './piece-marks.ts'
import type { SheetMark } from './setting.ts'
import { extent } from './setting.ts'

/** Lines with white paper on either side. */
export interface Band {
  readonly runs: readonly (readonly Point[])[]
  readonly closed: boolean
  /** mm. */
  readonly width: number
}

/** Painted under all marks of a page: first the panels, then what stays white. Lengths in mm, on the page. */
export interface Painting {
  readonly panels: readonly PaintedPanel[]
  readonly areas: readonly (readonly Point[])[]
  readonly bands: readonly Band[]
}

/** Panels of one paper overlap by this much, mm: no seam of light is left where they meet. */
export const SEAM = 0.15

/** White paper on either side of a line and round words, mm: lines stay black on white, on any printer. */
const BESIDE = 0.5

const ROUND = 0.6

/** One piece in colour, and the places on it that are glued on this face: glue holds on bare paper. */
function painted(
  design: Design,
  piece: Piece,
  place: Place,
  lines: SheetLines,
): Pick<Painting, 'panels' | 'areas'> {
  const face = faceOf(lines) === 'inside' ? 'front' : 'back'
  const at = (points: readonly Point[]): Point[] => points.map((point) => onPage(place, point))
  const outline = at(piece.outline)
  const places = placesOn(design, piece.id, faceOf(lines)).filter(({ isTaped }) => !isTaped)
  const tab = tabPaper(design, piece.id, face)
  const tabs = places.flatMap(({ isOwn, isBehind, isFlat, points, of }): PaintedPanel[] =>
    tab !== null && isOwn && isBehind && !isFlat ? [{ of, outline: at(points), paper: tab, shapes: [] }] : [],
  )
  const panels = artColours(design, piece.id, face).map((panel) => ({
    ...panel,
    outline: at(panel.outline),
    shapes: panel.shapes.map((shape) => ({ ...shape, runs: shape.runs.map(at) })),
  }))
  const glued = places.filter(({ isBehind }) => !isBehind)
  return {
    panels: [...tabs, ...panels],
    areas: glued.flatMap(({ points }) => onPiece(at(points), outline)),
  }
}

/** Rectangles round the words of a page, with a little paper more. */
const roundWords = (marks: readonly SheetMark[]): readonly (readonly Point[])[] =>
  marks.flatMap((mark) => {
    if (mark.mark !== 'word') return []
    const [l, t, r, b] = extent(mark)
    return [
      [
        [l - ROUND, t - ROUND],
        [r + ROUND, t - ROUND],
        [r + ROUND, b + ROUND],
        [l - ROUND, b + ROUND],
      ] as const,
    ]
  })

/** The bands under lines, as few as there are widths; beyond the edges of pieces (ids) the paper is white anyway. */
function bandsUnder(marks: readonly SheetMark[], edges: ReadonlySet<string>): readonly Band[] {
  const bands = new Map<string, Band>()
  for (const mark of marks) {
    if (mark.mark !== 'path') continue
    if (mark.role === 'cut' && mark.closed && edges.has(mark.of ?? '')) continue
    const { closed, role, runs } = mark
    const width = lookOf(role).width + 2 * BESIDE
    const key = `${width} ${closed}`
    bands.set(key, { width, closed, runs: [...(bands.get(key)?.runs ?? []), ...runs] })
  }
  return [...bands.values()]
}

/** The pieces of a page in colour, white round its marks; null where nothing on them has a colour. */
export function paintingOf(
  design: Design,
  placed: readonly { readonly piece: Piece; readonly place: Place }[],
  marks: readonly SheetMark[],
  lines: SheetLines,
): Painting | null {
  const all = placed.map(({ piece, place }) => painted(design, piece, place, lines))
  const panels = all.flatMap((one) => one.panels)
  if (panels.length === 0) return null
  return {
    panels,
    areas: [...all.flatMap(({ areas }) => areas), ...roundWords(marks)],
    bands: bandsUnder(marks, new Set(placed.map(({ piece: { id } }) => (id === 'card' ? 'page' : id)))),
  }
}
