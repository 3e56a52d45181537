import type { Design, Piece } from '../../paper/index.ts'
import type { SheetFace } from '../marks/instructions.ts'
import { pieceName } from '../marks/instructions.ts'
import type { Place } from '../marks/piece-marks.ts'
import { pieceMarks } from '../marks/piece-marks.ts'
import { rulers } from '../marks/rulers.ts'
import type { SheetMark } from '../marks/setting.ts'
import { moved, paragraph } from '../marks/setting.ts'
import { MARGIN, placeAt, printableOf } from './bed.ts'
import type { Turned } from './fit.ts'
import { bestTurn, boxOf, turns } from './fit.ts'
import type { Paper } from './paper-sizes.ts'
import { pieceHeader } from './sections.ts'

/** A page of pieces that are glued on. */
export interface PiecePage {
  readonly turn: Turned
  readonly marks: readonly SheetMark[]
  readonly placed: readonly { readonly piece: string; readonly place: Place }[]
}

/** Between pieces, mm; a piece's name stands in the gap below it. */
const APART = 8

const NAME = { size: 2.9, leading: 3.6 }

const NAME_DROP = 1.6

interface Spot {
  readonly piece: Piece
  readonly x: number
  readonly y: number
}

const sizeOf = ({ outline }: Piece): { readonly w: number; readonly h: number } => {
  const box = boxOf(outline)
  return { w: box.right - box.left, h: box.bottom - box.top }
}

/** Rows of pieces, the highest first, on as many pages as they take. */
function shelved(flat: readonly Piece[], width: number, height: number): Spot[][] {
  const pages: Spot[][] = []
  let row = { x: 0, y: 0, height: 0 }
  for (const piece of [...flat].sort((a, b) => sizeOf(b).h - sizeOf(a).h)) {
    const { w, h } = sizeOf(piece)
    if (row.x > 0 && row.x + w > width) row = { x: 0, y: row.y + row.height + APART, height: 0 }
    if (pages.length === 0 || row.y + h > height) {
      pages.push([])
      row = { x: 0, y: 0, height: 0 }
    }
    pages.at(-1)?.push({ piece, x: row.x, y: row.y })
    row = { x: row.x + w + APART, y: row.y, height: Math.max(row.height, h) }
  }
  return pages
}

function drawn(spots: readonly Spot[], turn: Turned, face: SheetFace): PiecePage {
  const printable = printableOf(turn)
  const marks: SheetMark[] = []
  const placed: { piece: string; place: Place }[] = []
  for (const { piece, x, y } of spots) {
    const place = placeAt(boxOf(piece.outline), x, y, face)
    placed.push({ piece: piece.id, place })
    marks.push(...pieceMarks(piece, place, face, printable))
    const { w, h } = sizeOf(piece)
    const name = pieceName(piece.id)
    const words = paragraph([{ text: name, bold: true }], NAME, Math.max(w, 20), 'name')
    if (y + h + NAME_DROP + words.height <= printable[3])
      marks.push(...words.marks.map((mark) => moved(mark, x, y + h + NAME_DROP)))
  }
  return { turn, marks, placed }
}

/** Pieces that are glued on, each at true size and with its name, in rows on as few pages as rows take. */
export function piecePages(
  design: Design,
  flat: readonly Piece[],
  paper: Paper,
  face: SheetFace,
): readonly PiecePage[] {
  const room = (turn: Turned) => {
    const head = pieceHeader(design, face, turn.width - 2 * MARGIN)
    const top = MARGIN + head.height + 5
    const foot = rulers().height + APART
    return { head, top, width: turn.width - 2 * MARGIN, height: turn.height - MARGIN - top - foot }
  }
  const ways = turns(paper).map((turn) => {
    const { width, height } = room(turn)
    const small = flat.filter((piece) => sizeOf(piece).w <= width && sizeOf(piece).h <= height)
    const large = flat.filter((piece) => !small.includes(piece))
    return { turn, rows: shelved(small, width, height), large }
  })
  const best = ways.reduce((a, b) =>
    b.rows.length + b.large.length < a.rows.length + a.large.length ? b : a,
  )
  const { turn } = best
  const { head, top } = room(turn)
  const full = best.rows.map((spots): PiecePage => {
    const page = drawn(
      spots.map((spot) => ({ ...spot, x: spot.x + MARGIN, y: spot.y + top })),
      turn,
      face,
    )
    const foot = turn.height - MARGIN - rulers().height
    const words = [
      ...head.marks.map((mark) => moved(mark, MARGIN, MARGIN)),
      ...rulers().marks.map((mark) => moved(mark, MARGIN, foot)),
    ]
    return { ...page, marks: [...page.marks, ...words] }
  })
  // A piece that leaves no room for words has a page to itself.
  const alone = best.large.map((piece): PiecePage => {
    const own = bestTurn(piece, paper).turn
    const { w, h } = sizeOf(piece)
    return drawn([{ piece, x: (own.width - w) / 2, y: (own.height - h) / 2 }], own, face)
  })
  return [...full, ...alone]
}
