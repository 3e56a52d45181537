/** What is drawn on the pieces of a page in colour, and the paper that stays white for lines, letters and glue. */
import type { PaintedPanel } from '../../drawing/art/colours.ts'
import { artColours, tabPaper } from '../../drawing/art/colours.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import type { Hex } from '../../drawing/pen/papers.ts'
import type { Design, Piece } from '../../paper/index.ts'
import { between } from '../../paper/plane/clip.ts'
import type { Ground } from './ground.ts'
import { contrast, groundOf } from './ground.ts'
import type { SheetLines } from './instructions.ts'
import { faceOf, printedAs } from './instructions.ts'
import { placesOn } from './joint-places.ts'
import { lookOf } from './looks.ts'
import type { Place } from './piece-marks.ts'
import { foldsOf, onPage, onPiece } from './piece-marks.ts'
import type { SheetMark } from './setting.ts'
import { extent } from './setting.ts'
import type { Stretch } from './stretches.ts'
import { stretchesOf } from './stretches.ts'

/** Lines, or parts of them, with white paper on either side. */
export interface Band {
  readonly runs: readonly (readonly Point[])[]
  readonly closed: boolean
  /** mm. */
  readonly width: number
}

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

/** White paper on either side of a line that would not show on what is painted there, mm: it stays in view. */
const BESIDE = 0.3

/** As much brighter than its line a ground has to be for the line to show: WCAG 2.2, 1.4.11. */
const SHOWS = 3

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

/** Where a line is looked at beside it, beyond its own half width, and how finely along it. */
const NEXT_TO = 0.15

const STEP = 0.4

/** Stretches of a line that hide, in turn; those with less than `STEP` twice between them are one. */
function hidden([a, b]: Stretch, hides: (point: Point, across: Point) => boolean): readonly Stretch[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const parts = Math.max(1, Math.ceil(long / STEP))
  const across: Point = [(a[1] - b[1]) / (long || 1), (b[0] - a[0]) / (long || 1)]
  const found: [number, number][] = []
  for (let k = 0; k < parts; k++) {
    if (!hides(between(a, b, (k + 0.5) / parts), across)) continue
    // What shows ends between two looks: the white reaches to the next one.
    const [from, to] = [Math.max(0, k - 0.5), Math.min(parts, k + 1.5)]
    const last = found.at(-1)
    if (last && from - last[1] < 2) last[1] = to
    else found.push([from, to])
  }
  return found.map(([from, to]) => [between(a, b, from / parts), between(a, b, to / parts)])
}

/** The bands under the parts of lines that would hide on a dark ground, as few as there are widths. */
function bandsUnder(
  marks: readonly SheetMark[],
  edges: ReadonlySet<string>,
  ground: Ground,
): readonly Band[] {
  const bands = new Map<number, (readonly Point[])[]>()
  for (const mark of marks) {
    if (mark.mark !== 'path') continue
    // Beyond the edges of pieces (ids) the paper is white anyway.
    if (mark.role === 'cut' && mark.closed && edges.has(mark.of ?? '')) continue
    const { colour, width } = lookOf(mark.role)
    const off = width / 2 + NEXT_TO
    const isSeenOn = (point: Point): boolean => {
      const under = ground(point)
      return under !== null && contrast(under, colour) >= SHOWS
    }
    // Beside one light side a line is seen, and so are its dashes.
    const hides = ([x, y]: Point, [u, v]: Point): boolean =>
      !isSeenOn([x + off * u, y + off * v]) && !isSeenOn([x - off * u, y - off * v])
    const found = stretchesOf(mark).flatMap((line) => hidden(line, hides))
    if (found.length === 0) continue
    const runs = bands.get(width) ?? []
    bands.set(width, runs)
    runs.push(...found)
  }
  return [...bands].map(([width, runs]) => ({ runs, closed: false, width: width + 2 * BESIDE }))
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
  const folds = placed.flatMap(({ piece, place }) => foldsOf(piece, place))
  const edges = new Set(placed.map(({ piece: { id } }) => (id === 'card' ? 'page' : id)))
  const areas = [...all.flatMap((one) => one.areas), ...roundWords(marks)]
  return {
    panels,
    seams: seamsOn(folds, groundOf(panels)),
    areas,
    bands: bandsUnder(marks, edges, groundOf(panels, areas)),
  }
}
