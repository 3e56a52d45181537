import type { Design, Piece } from '../../paper/index.ts'
import type { Rectangle } from '../marks/clip.ts'
import type { SheetLines } from '../marks/instructions.ts'
import { faceOf, pieceName } from '../marks/instructions.ts'
import { placesOn } from '../marks/joint-places.ts'
import type { Place } from '../marks/piece-marks.ts'
import { pieceMarks } from '../marks/piece-marks.ts'
import type { End } from '../marks/readers-end.ts'
import { readersEnds } from '../marks/readers-end.ts'
import { rulers } from '../marks/rulers.ts'
import type { Run, SheetMark } from '../marks/setting.ts'
import { extent, moved, paragraph } from '../marks/setting.ts'
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

/** Between pieces with all that is written beside them, mm. */
const APART = 5

const NAME = { size: 2.9, leading: 3.6 }

const NAME_DROP = 1.6

interface Job {
  readonly design: Design
  readonly lines: SheetLines
  readonly ends: ReadonlyMap<string, End>
}

/** A piece, its letters and its name, with their left top corner at 0, 0. */
interface Cut {
  readonly piece: Piece
  readonly place: Place
  readonly marks: readonly SheetMark[]
  readonly width: number
  readonly height: number
}

const boundsOf = (marks: readonly SheetMark[]): Rectangle => {
  const boxes = marks.map(extent)
  return [
    Math.min(...boxes.map((b) => b[0])),
    Math.min(...boxes.map((b) => b[1])),
    Math.max(...boxes.map((b) => b[2])),
    Math.max(...boxes.map((b) => b[3])),
  ]
}

const movedPlace = ({ origin: [x, y], mirrored }: Place, dx: number, dy: number): Place => ({
  origin: [x + dx, y + dy],
  mirrored,
})

/** What a piece is called, which of its faces this is, and which of its ends is the reader's. */
function nameOfPiece(piece: Piece, end: End | undefined, lines: SheetLines): readonly Run[] {
  const face = lines === 'back' ? 'back' : 'front'
  return [
    { text: pieceName(piece.id), bold: true },
    { text: ` ${face}${end === undefined ? '' : `, reader’s end ${end}`}` },
  ]
}

/** A piece with all that is written at it; `printable`: where marks may be, measured from the piece's own corner. */
function cutOf({ design, lines, ends }: Job, piece: Piece, printable: Rectangle, isNamed: boolean): Cut {
  const place = placeAt(boxOf(piece.outline), 0, 0, faceOf(lines))
  const { lines: paths, words } = pieceMarks(
    piece,
    placesOn(design, piece.id, faceOf(lines)),
    place,
    lines,
    printable,
  )
  const drawn = [...paths, ...words]
  const [left, , right, bottom] = boundsOf(drawn)
  const name = paragraph(
    nameOfPiece(piece, ends.get(piece.id), lines),
    NAME,
    Math.max(right - left, 34),
    'name',
  )
  const fits = isNamed || bottom + NAME_DROP + name.height <= printable[3]
  const marks = [...drawn, ...(fits ? name.marks.map((mark) => moved(mark, left, bottom + NAME_DROP)) : [])]
  if (!isNamed) return { piece, place, marks, width: 0, height: 0 }
  const box = boundsOf(marks)
  return {
    piece,
    place: movedPlace(place, -box[0], -box[1]),
    marks: marks.map((mark) => moved(mark, -box[0], -box[1])),
    width: box[2] - box[0],
    height: box[3] - box[1],
  }
}

interface Spot {
  readonly cut: Cut
  readonly x: number
  readonly y: number
}

/** Rows of pieces, the highest first, on as many pages as they take. */
function shelved(cuts: readonly Cut[], width: number, height: number): Spot[][] {
  const pages: Spot[][] = []
  let row = { x: 0, y: 0, height: 0 }
  for (const cut of [...cuts].sort((a, b) => b.height - a.height)) {
    if (row.x > 0 && row.x + cut.width > width) row = { x: 0, y: row.y + row.height + APART, height: 0 }
    if (pages.length === 0 || row.y + cut.height > height) {
      pages.push([])
      row = { x: 0, y: 0, height: 0 }
    }
    pages.at(-1)?.push({ cut, x: row.x, y: row.y })
    row = { x: row.x + cut.width + APART, y: row.y, height: Math.max(row.height, cut.height) }
  }
  return pages
}

const drawn = (spots: readonly Spot[], turn: Turned): PiecePage => ({
  turn,
  marks: spots.flatMap(({ cut, x, y }) => cut.marks.map((mark) => moved(mark, x, y))),
  placed: spots.map(({ cut, x, y }) => ({ piece: cut.piece.id, place: movedPlace(cut.place, x, y) })),
})

const EVERYWHERE: Rectangle = [-1e4, -1e4, 1e4, 1e4]

/** Pieces that are glued on, each at true size and with its name, in rows on as few pages as rows take. */
export function piecePages(
  design: Design,
  flat: readonly Piece[],
  paper: Paper,
  lines: SheetLines,
): readonly PiecePage[] {
  const room = (turn: Turned) => {
    const head = pieceHeader(design, lines, turn.width - 2 * MARGIN)
    const top = MARGIN + head.height + 5
    const foot = rulers().height + APART
    return { head, top, width: turn.width - 2 * MARGIN, height: turn.height - MARGIN - top - foot }
  }
  const job: Job = { design, lines, ends: readersEnds(design, faceOf(lines)) }
  const cuts = flat.map((piece) => cutOf(job, piece, EVERYWHERE, true))
  const ways = turns(paper).map((turn) => {
    const { width, height } = room(turn)
    const small = cuts.filter((cut) => cut.width <= width && cut.height <= height)
    const large = cuts.filter((cut) => !small.includes(cut))
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
    )
    const foot = turn.height - MARGIN - rulers().height
    const words = [
      ...head.marks.map((mark) => moved(mark, MARGIN, MARGIN)),
      ...rulers().marks.map((mark) => moved(mark, MARGIN, foot)),
    ]
    return { ...page, marks: [...page.marks, ...words] }
  })
  // A piece that leaves no room for words has a page to itself.
  const alone = best.large.map(({ piece }): PiecePage => {
    const own = bestTurn(piece, paper).turn
    const box = boxOf(piece.outline)
    const x = (own.width - (box.right - box.left)) / 2
    const y = (own.height - (box.bottom - box.top)) / 2
    const [l, t, r, b] = printableOf(own)
    const cut = cutOf(job, piece, [l - x, t - y, r - x, b - y], false)
    return drawn([{ cut, x, y }], own)
  })
  return [...full, ...alone]
}
