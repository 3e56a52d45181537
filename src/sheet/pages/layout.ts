/**
 * A sheet: the pieces of a design at true size on paper, and round them the words that a reader needs at
 * the table. A page looks like a page of the exercise book: a margin with a red line down the left, the
 * card beside it, the rest in the strip below.
 *
 *   +--------+------------------+
 *   | margin | card             |
 *   | title  |                  |
 *   | steps  +------------------+
 *   | sizes  | rulers |  lines  |
 *   +--------+------------------+
 *
 * Where the card leaves no room for a section, a further page of words takes it.
 */
import type { Drawing } from '../../drawing/pen/marks.ts'
import type { Design, Piece } from '../../paper/index.ts'
import { nameOf, pieces } from '../../paper/index.ts'
import type { SheetFace } from '../marks/instructions.ts'
import type { Place } from '../marks/piece-marks.ts'
import type { SheetMark } from '../marks/setting.ts'
import type { Cell } from './bed.ts'
import { MARGIN, Shelves } from './bed.ts'
import { cardPage } from './card-page.ts'
import type { Turned } from './fit.ts'
import { fitOn, TooLargeError, turns } from './fit.ts'
import type { Paper, PaperName } from './paper-sizes.ts'
import { paperOf } from './paper-sizes.ts'
import { piecePages } from './piece-pages.ts'
import type { Section } from './sections.ts'
import { fittings, nameSection, sectionsFor } from './sections.ts'

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
  /** The pieces on this page and where they lie; a page of words has none. */
  readonly placed: readonly { readonly piece: string; readonly place: Place }[]
}

/** Between the rows of a section that the end of a column parts, mm. */
const ROW_GAP = 1.2

/** Pages of words alone, in two columns: sections whole where they fit, else parted between rows. */
function wordPages(sections: readonly Section[], turn: Turned): SheetMark[][] {
  const width = (turn.width - 4 * MARGIN) / 2
  const columns = [MARGIN, 3 * MARGIN + width].map((x): Cell => {
    return { x, y: MARGIN, width, bottom: turn.height - MARGIN }
  })
  const pages: SheetMark[][] = []
  let shelves = new Shelves()
  let column = columns.length
  const put = (block: Section['block'], gap?: number): boolean => {
    const cell = columns[column]
    const found = cell ? shelves.put(block, [cell], gap) : null
    if (found) pages.at(-1)?.push(...found)
    return found !== null
  }
  const next = (): void => {
    column += 1
    if (column < columns.length) return
    shelves = new Shelves()
    column = 0
    pages.push([])
  }
  for (const section of sections) {
    if (put(section.block)) continue
    if ((section.block(width)?.height ?? 0) <= turn.height - 2 * MARGIN) {
      next()
      if (put(section.block)) continue
    }
    for (const row of section.rows(width))
      if (!put(() => row, ROW_GAP)) {
        next()
        put(() => row, ROW_GAP)
      }
  }
  return pages
}

/** What a page shows, for those who do not see it. */
function sayOf(page: Omit<SheetPage, 'says'>, face: SheetFace): string {
  if (page.placed.length === 0) return 'words'
  const names = page.placed.map(({ piece }) => nameOf(piece.split('/')[0] ?? piece))
  const side = names[0] === 'card' ? face : face === 'inside' ? 'the front' : 'the back'
  return `${names.join(', ')} at true size with cut and fold lines, seen from ${side}`
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
  const [card, ...others] = pieces(design) as readonly [Piece, ...Piece[]]
  const first = cardPage(design, card, paper, face)
  const page = (turn: Turned, marks: readonly SheetMark[], placed: SheetPage['placed']) =>
    ({ box: [0, 0, turn.width, turn.height], unit: 'mm', marks, paper, placed }) as const
  const pages = [
    page(first.bed.turn, first.marks, [{ piece: card.id, place: first.bed.place }]),
    ...piecePages(design, others, paper, face).map(({ turn, marks, placed }) => page(turn, marks, placed)),
  ]
  if (first.left.length > 0) {
    const ids = new Set(first.left.map((section) => section.id))
    const roomy = sectionsFor(design, face, fittings.roomy, first.trim).filter((section) =>
      ids.has(section.id),
    )
    const [lying] = turns(paper)
    const named = ids.has('head') ? roomy : [nameSection(design), ...roomy]
    pages.push(...wordPages(named, lying).map((marks) => page(lying, marks, [])))
  }
  return pages.map((one, k) => ({
    ...one,
    says: `${design.title}, page ${k + 1} of ${pages.length} on ${paper.label}: ${sayOf(one, face)}.`,
  }))
}
