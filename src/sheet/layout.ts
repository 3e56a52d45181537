/**
 * A sheet: the pieces of a design at true size on paper, and round them the words that a reader needs at
 * the table. A page looks like a page of the exercise book: a margin with a red line down the left, the
 * card beside it, the rest in the strip below.
 *
 *   +--------+------------------+
 *   | margin | card             |
 *   | title  |                  |
 *   | steps  +------------------+
 *   | care   | rulers |  lines  |
 *   +--------+------------------+
 *
 * Where the card leaves no room for a section, a further page of words takes it.
 */
import type { Drawing, PathMark } from '../drawing/marks.ts'
import type { Design, Piece } from '../paper/index.ts'
import { pieces } from '../paper/index.ts'
import { bestTurn, boxOf, fitOn, SAFE, TooLargeError, type Turned, turns } from './fit.ts'
import type { Paper, PaperName } from './paper-sizes.ts'
import { paperOf } from './paper-sizes.ts'
import { onPage, type Place, pieceMarks, type Rectangle } from './piece-marks.ts'
import { RULER_WIDTH, rulers, upright } from './rulers.ts'
import { header, type Section, sectionsFor } from './sections.ts'
import type { Block, SheetMark } from './setting.ts'
import { moved, paragraph } from './setting.ts'
import type { SheetFace } from './words.ts'
import { nearEdge } from './words.ts'

export interface SheetOptions {
  readonly paper: PaperName
  /** The side of the card that is printed; default inside. */
  readonly face?: SheetFace
}

/** One page to print; the box is the whole paper, in mm. */
export interface SheetPage extends Drawing {
  readonly unit: 'mm'
  readonly marks: readonly SheetMark[]
  readonly paper: Paper
  /** The piece on this page and where it lies; a page of words has none. */
  readonly piece?: { readonly id: string; readonly place: Place }
}

/** From the paper's edge to words, mm. */
const MARGIN = 9
/** Between the card and what stands beside it, and between sections, mm. */
const GAP = 7
const SECTION_GAP = 6
/** A column narrower than this is no pleasure to read, one wider neither. */
const COLUMN = { least: 40, most: 72 }

/** A free rectangle that sections fill from the top. */
interface Cell {
  readonly x: number
  y: number
  readonly width: number
  readonly bottom: number
}

interface Bed {
  readonly turn: Turned
  /** Left top corner of the piece. */
  readonly x: number
  readonly y: number
  readonly column: Cell | null
  readonly strip: readonly Cell[]
  readonly top: Cell | null
}

/** Splits a strip into the rulers' cell and columns beside it. */
function stripCells(x: number, y: number, width: number, bottom: number): Cell[] {
  if (bottom - y < 10 || width < COLUMN.least) return []
  if (width < RULER_WIDTH + GAP + COLUMN.least) return [{ x, y, width, bottom }]
  const rest = width - RULER_WIDTH - GAP
  const count = Math.max(1, Math.floor((rest + GAP) / (58 + GAP)))
  const each = (rest - (count - 1) * GAP) / count
  return [
    { x, y, width: RULER_WIDTH, bottom },
    ...Array.from({ length: count }, (_, k) => ({
      x: x + RULER_WIDTH + GAP + k * (each + GAP),
      y,
      width: each,
      bottom,
    })),
  ]
}

/** Where a piece lies on a turn of the paper, and what room it leaves. */
function bedFor(piece: Piece, turn: Turned, head: Block): Bed {
  const box = boxOf(piece.outline)
  const [w, h] = [box.right - box.left, box.bottom - box.top]
  const { width: W, height: H } = turn
  const free = W - w - MARGIN - GAP - Math.min(MARGIN, (W - w) / 2)
  const hasColumn = free >= COLUMN.least && h <= H - 2 * SAFE
  const columnWidth = Math.min(free, COLUMN.most)
  const x = hasColumn ? MARGIN + columnWidth + GAP : (W - w) / 2
  const headed = !hasColumn && H - h - 2 * MARGIN - head.height - GAP >= 0
  const y = headed
    ? MARGIN + head.height + GAP
    : h > H - 2 * SAFE
      ? (H - h) / 2
      : Math.min(MARGIN, (H - h) / 2)
  const below = y + h + GAP
  const stripX = hasColumn ? x : MARGIN
  return {
    turn,
    x,
    y,
    column: hasColumn ? { x: MARGIN, y: MARGIN, width: columnWidth, bottom: H - MARGIN } : null,
    strip: stripCells(stripX, below, W - MARGIN - stripX, H - MARGIN),
    top: headed ? { x: MARGIN, y: MARGIN, width: W - 2 * MARGIN, bottom: y } : null,
  }
}

/** Puts a block at the top of the first cell that holds it. */
function put(block: (width: number) => Block | null, cells: readonly Cell[]): SheetMark[] | null {
  for (const cell of cells) {
    const made = block(cell.width)
    if (!made || made.height > cell.bottom - cell.y + 1e-9) continue
    const marks = made.marks.map((mark) => moved(mark, cell.x, cell.y))
    cell.y += made.height + SECTION_GAP
    return marks
  }
  return null
}

const overlaps = (a: Rectangle, b: Rectangle): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]

/** The rulers on the card itself, where they touch none of its lines; null if there is no such place. */
function rulersOnCard(lines: readonly PathMark[], card: Rectangle, printable: Rectangle): SheetMark[] | null {
  const block = rulers()
  const clear = 2.5
  const busy = lines.flatMap((line) =>
    line.of === 'page'
      ? []
      : line.runs.flatMap((run) =>
          run.slice(1).map((point, k): Rectangle => {
            const [ax, ay] = run[k] ?? point
            const [bx, by] = point
            return [
              Math.min(ax, bx) - clear,
              Math.min(ay, by) - clear,
              Math.max(ax, bx) + clear,
              Math.max(ay, by) + clear,
            ]
          }),
        ),
  )
  const field: Rectangle = [
    Math.max(card[0], printable[0]) + 3,
    Math.max(card[1], printable[1]) + 3,
    Math.min(card[2], printable[2]) - 3,
    Math.min(card[3], printable[3]) - 3,
  ]
  for (let y = field[3] - block.height; y >= field[1]; y -= 2)
    for (let x = field[0]; x + block.width <= field[2]; x += 2) {
      const here: Rectangle = [x, y, x + block.width, y + block.height]
      if (!busy.some((box) => overlaps(box, here))) return block.marks.map((mark) => moved(mark, x, y))
    }
  return null
}

/** Short lines beyond the card that carry the gutter on, to lay a ruler to. */
function gutterTicks(place: Place, height: number, printable: Rectangle): PathMark[] {
  const [x] = onPage(place, [0, 0])
  const ends = [onPage(place, [0, 0])[1], onPage(place, [0, height])[1]] as const
  const runs = [
    [ends[0] + 1, ends[0] + 4],
    [ends[1] - 1, ends[1] - 4],
  ].flatMap(([from, to]) => {
    if (from === undefined || to === undefined || to > printable[3] || to < printable[1]) return []
    return [
      [
        [x, from],
        [x, to],
      ] as const,
    ]
  })
  return runs.length === 0 ? [] : [{ mark: 'path', runs, closed: false, role: 'guide', of: 'gutter-tick' }]
}

interface Page {
  readonly turn: Turned
  readonly marks: SheetMark[]
  readonly place: Place
  /** Sections that found no room. */
  readonly left: readonly Section[]
  readonly checked: boolean
}

/** One piece on one turn of the paper, with as many of the sections as go beside it. */
function pageFor(
  piece: Piece,
  turn: Turned,
  face: SheetFace,
  design: Design,
  sections: readonly Section[],
): Page {
  const box = boxOf(piece.outline)
  const bed = bedFor(piece, turn, header(design, face, turn.width - 2 * MARGIN))
  const mirrored = face === 'outside'
  const place: Place = {
    origin: [bed.x + (mirrored ? box.right : -box.left), bed.y + box.bottom],
    mirrored,
  }
  const printable: Rectangle = [SAFE, SAFE, turn.width - SAFE, turn.height - SAFE]
  const lines = pieceMarks(piece, place, face, printable)
  const card: Rectangle = [bed.x, bed.y, bed.x + box.right - box.left, bed.y + box.bottom - box.top]
  const marks: SheetMark[] = [...lines, ...gutterTicks(place, box.bottom, printable)]
  const edge = paragraph([{ text: nearEdge, role: 'guide' }], { size: 2.8, leading: 3.6 }, 80, 'near-edge')
  if (card[3] + 2 + edge.height <= printable[3])
    marks.push(...edge.marks.map((mark) => moved(mark, Math.max(card[0], MARGIN), card[3] + 1.8)))
  if (bed.column) {
    const x = bed.column.x + bed.column.width + GAP / 2
    marks.push({
      mark: 'path',
      runs: [
        [
          [x, SAFE],
          [x, turn.height - SAFE],
        ],
      ],
      closed: false,
      role: 'dimension',
      of: 'margin-line',
    })
  }
  const column = bed.column ? [bed.column] : []
  const left: Section[] = []
  let checked = false
  for (const section of sections) {
    const cells = {
      head: [...(bed.top ? [bed.top] : []), ...column, ...bed.strip],
      column: [...column, ...bed.strip],
      strip: [...bed.strip, ...column],
    }[section.home]
    const found = put(section.block, cells)
    if (found) marks.push(...found)
    else if (section.id !== 'check') left.push(section)
    if (section.id !== 'check') continue
    const alone =
      found ??
      put((width) => (width >= rulers().width ? rulers() : null), cells) ??
      put((width) => (width >= rulers().height ? upright(rulers()) : null), column) ??
      rulersOnCard(lines, card, printable)
    checked = alone !== null
    if (found) continue
    if (alone) marks.push(...alone)
    left.push(section)
  }
  return { turn, marks, place, left, checked }
}

/** Pages of words alone: sections whole where they fit, row by row where they do not. */
function wordPages(sections: readonly Section[], turn: Turned): SheetMark[][] {
  const pages: SheetMark[][] = []
  const width = (turn.width - 2 * MARGIN - 2 * GAP) / 2
  const fresh = (): Cell[] => [
    { x: MARGIN, y: MARGIN, width, bottom: turn.height - MARGIN },
    { x: MARGIN + width + 2 * GAP, y: MARGIN, width, bottom: turn.height - MARGIN },
  ]
  let cells = fresh()
  let marks: SheetMark[] = []
  pages.push(marks)
  const turnOver = (): void => {
    cells = fresh()
    marks = []
    pages.push(marks)
  }
  for (const section of sections) {
    const whole = put(section.block, cells)
    if (whole) {
      marks.push(...whole)
      continue
    }
    const rows = section.rows(width)
    for (const row of rows) {
      let found = put(() => row, cells)
      if (!found) {
        turnOver()
        found = put(() => row, cells)
      }
      if (found) marks.push(...found)
      for (const cell of cells) if (cell.y > MARGIN) cell.y -= found ? SECTION_GAP - 1.2 : 0
    }
  }
  return pages
}

/**
 * The pages of a design on a paper, pieces at true size. Throws a `TooLargeError` that says by how much a
 * design is too large and which paper would do.
 */
export function layOut(design: Design, options: SheetOptions): SheetPage[] {
  const paper = paperOf(options.paper)
  const face = options.face ?? 'inside'
  const fit = fitOn(design, paper)
  if (!fit.ok) throw new TooLargeError(fit)
  const sections = sectionsFor(design, face)
  const pages: Omit<SheetPage, 'says'>[] = []
  let left: readonly Section[] = sections
  pieces(design).forEach((piece) => {
    const page = bestPage(piece, paper, face, design, left)
    left = page.left
    const { width, height } = page.turn
    pages.push({
      box: [0, 0, width, height],
      unit: 'mm',
      marks: page.marks,
      paper,
      piece: { id: piece.id, place: page.place },
    })
  })
  if (left.length > 0)
    for (const marks of wordPages(left, turns(paper)[0])) {
      const { width, height } = turns(paper)[0]
      pages.push({ box: [0, 0, width, height], unit: 'mm', marks, paper })
    }
  return pages.map((page, k) => ({
    ...page,
    says:
      `${design.title}, page ${k + 1} of ${pages.length} on ${paper.label}: ` +
      (page.piece
        ? `the ${page.piece.id} at true size, seen from ${face}, with its cut and fold lines.`
        : 'words.'),
  }))
}

/** The turn of the paper that leaves most of the words on the card's own page. */
function bestPage(
  piece: Piece,
  paper: Paper,
  face: SheetFace,
  design: Design,
  sections: readonly Section[],
): Page {
  const best = bestTurn(piece, paper)
  const tries = turns(paper)
    .filter((turn) => {
      const box = boxOf(piece.outline)
      return box.right - box.left <= turn.width - 2 * SAFE && box.bottom - box.top <= turn.height - 2 * SAFE
    })
    .map((turn) => pageFor(piece, turn, face, design, sections))
  const cost = (page: Page): number => page.left.length + (page.checked ? 0 : 100)
  return tries.reduce(
    (a, b) => (cost(b) < cost(a) ? b : a),
    tries[0] ?? pageFor(piece, best.turn, face, design, sections),
  )
}
