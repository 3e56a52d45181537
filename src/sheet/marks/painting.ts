/** What is drawn on the pieces of a page in colour, and the paper that stays white for lines, letters and glue. */
import type { PaintedPanel } from '../../drawing/art/colours.ts'
import { artColours, tabPaper } from '../../drawing/art/colours.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import type { Hex } from '../../drawing/pen/papers.ts'
import type { Design, Piece } from '../../paper/index.ts'
import type { Band } from './bands.ts'
import { bandsUnder } from './bands.ts'
import type { Ground } from './ground.ts'
import { groundOf } from './ground.ts'
import type { SheetLines } from './instructions.ts'
import { faceOf, printedAs } from './instructions.ts'
import { placesOn } from './joint-places.ts'
import type { Place } from './piece-marks.ts'
import { foldsOf, onPage, onPiece } from './piece-marks.ts'
import type { SheetMark } from './setting.ts'
import { extent } from './setting.ts'
import type { Stretch } from './stretches.ts'

/** Stretches of folds in the colour that lies on both their sides. */
export interface Seam {
  readonly colour: Hex
  readonly runs: readonly Stretch[]
}

/** Painted under all marks of a page: first the panels, then their seams, then what stays white. Lengths in mm, on the page. */
export interface Painting {
  readonly panels: readonly PaintedPanel[]
  readonly seams: readonly Seam[]
  readonly areas: readonly (readonly Point[])[]
  readonly bands: readonly Band[]
}

/** Panels of one paper overlap by this much, mm: no seam of light is left where they meet. */
export const SEAM = 0.15

/** How wide the seam of a fold is, mm: less than a fold in paper. */
export const FOLD_SEAM = 0.3

/** Where across a fold its sides are looked at, to the seam's edges: what is narrower shall not be drawn out. */
const ASIDE = [-FOLD_SEAM / 2, -0.05, 0.05, FOLD_SEAM / 2] as const

/** Folds are looked at so finely along, mm. */
const FINE = 0.1

/** White paper round words, mm. */
const ROUND = 0.6

const ownerOf = ({ of }: PaintedPanel): string => of.slice(0, of.indexOf('/'))

/**
 * Of panels that meet in folds first what they are cut from, then what is drawn on them: else the paper of the later
 * one would lie as a hairline over the picture of the one before. What is cut loose from them follows.
 */
function groundsFirst(panels: readonly PaintedPanel[]): readonly PaintedPanel[] {
  return [...new Set(panels.map(ownerOf))].flatMap((owner) => {
    const own = panels.filter((panel) => ownerOf(panel) === owner)
    if (own.length < 2) return own
    const bare = own.flatMap((panel) => (panel.paper === null ? [] : [{ ...panel, shapes: [] }]))
    const drawn = own.flatMap((panel) => (panel.shapes.length === 0 ? [] : [{ ...panel, paper: null }]))
    return [...bare, ...drawn]
  })
}

interface Part {
  readonly stretch: Stretch
  /** What lies on both its sides; null where they differ, or may. */
  readonly colour: Hex | null
}

/** A fold in parts, each with one colour on both its sides or with sides that differ. */
function partsOf([a, b]: Stretch, ground: Ground): readonly Part[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (!(long > 0)) return []
  const [u, v] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  const at = (t: number, off = 0): Point => [a[0] + t * u - off * v, a[1] + t * v + off * u]
  const count = Math.ceil(long / FINE)
  const found: Part[] = []
  for (let k = 0; k < count; k++) {
    const [first = null, ...others] = ASIDE.map((off) => ground(at(((k + 0.5) * long) / count, off)))
    const colour = others.every((one) => one === first) ? first : null
    const last = found.at(-1)
    const to = at(((k + 1) * long) / count)
    if (last?.colour === colour) found[found.length - 1] = { colour, stretch: [last.stretch[0], to] }
    else found.push({ colour, stretch: [at((k * long) / count), to] })
  }
  return found
}

/**
 * Each panel is clipped to its outline, and where two are, a pen lets a little of what lies below shine through. Along
 * folds whose sides have one colour that closes the gap; where they differ there is an edge anyway.
 */
function seamsOn(folds: readonly Stretch[], ground: Ground): readonly Seam[] {
  const seams = new Map<Hex, Stretch[]>()
  for (const { stretch, colour } of folds.flatMap((fold) => partsOf(fold, ground))) {
    if (colour === null) continue
    const runs = seams.get(colour) ?? []
    seams.set(colour, runs)
    runs.push(stretch)
  }
  return [...seams].map(([colour, runs]) => ({ colour, runs }))
}

/** Where the sides of a piece's folds differ in colour: edges to colour up to. */
export function edgesOnFolds(
  design: Design,
  piece: Piece,
  place: Place,
  lines: SheetLines,
): readonly Stretch[] {
  const ground = groundOf(painted(design, piece, place, lines).panels)
  return foldsOf(piece, place).flatMap((fold) =>
    partsOf(fold, ground).flatMap(({ stretch, colour }) => (colour === null ? [stretch] : [])),
  )
}

/** One piece in colour, and the places on it that are glued on this face: glue holds on bare paper. */
function painted(
  design: Design,
  piece: Piece,
  place: Place,
  asked: SheetLines,
): Pick<Painting, 'panels' | 'areas'> {
  const lines = printedAs(piece.id, asked)
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
    panels: [...tabs, ...groundsFirst(panels)],
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
  const folds = placed.flatMap(({ piece, place }) => foldsOf(piece, place))
  const outlines = new Map(
    placed.map(({ piece: { id, outline }, place }) => [
      id === 'card' ? 'page' : id,
      outline.map((point) => onPage(place, point)),
    ]),
  )
  const areas = [...all.flatMap((one) => one.areas), ...roundWords(marks)]
  return {
    panels,
    seams: seamsOn(folds, groundOf(panels)),
    areas,
    bands: bandsUnder(marks, outlines, areas, groundOf(panels, areas)),
  }
}
