import type { Design, Piece, Tight } from '../../paper/index.ts'
import type { Rectangle } from '../marks/clip.ts'
import { EVERYWHERE } from '../marks/clip.ts'
import type { SheetLines, Trim } from '../marks/instructions.ts'
import { coverEdge, faceOf, pieceName, trimStep } from '../marks/instructions.ts'
import { placesOn } from '../marks/joint-places.ts'
import type { Place } from '../marks/piece-marks.ts'
import { pieceMarks } from '../marks/piece-marks.ts'
import type { End } from '../marks/readers-end.ts'
import { readersEnds } from '../marks/readers-end.ts'
import { RULER_WIDTH, rulers } from '../marks/rulers.ts'
import type { Run, SheetMark } from '../marks/setting.ts'
import { extent, moved, paragraph, stack } from '../marks/setting.ts'
import type { Cell } from './bed.ts'
import { GAP, MARGIN, placeAt, Shelves } from './bed.ts'
import { bedPage } from './bed-page.ts'
import type { Turned } from './fit.ts'
import { boxOf, turns } from './fit.ts'
import type { Paper } from './paper-sizes.ts'
import type { Fitting, Section } from './sections.ts'
import { checkWords, fittings, pieceHead, pieceHeader, rulersAlone } from './sections.ts'

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

/** Lists that may run on in a next column. */
const PARTED: ReadonlySet<Section['id']> = new Set(['sizes', 'joints', 'steps'])

/** Between the rows of a section that the end of a column parts, mm. */
const ROW_GAP = 1.2

interface Job {
  readonly design: Design
  readonly lines: SheetLines
  readonly care: readonly Tight[]
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

/** A column of words is no narrower than this, mm. */
const LEAST = 50

/** How words stand on free paper: in which type they are tried, in columns about so wide, mm. */
interface Manner {
  readonly types: readonly Fitting[]
  readonly column: number
}

/** Roomy as far as that goes; and close from the start, where a further page of words alone is spared by it. */
const manners: readonly Manner[] = [
  { types: [fittings.roomy, fittings.close], column: 75 },
  { types: [fittings.close], column: 75 },
  { types: [fittings.close], column: 56 },
  { types: [fittings.tight], column: 75 },
  { types: [fittings.tight], column: 56 },
]

/** A piece with all that is written at it. */
function cutOf({ design, lines, care, ends }: Job, piece: Piece): Cut {
  const place = placeAt(boxOf(piece.outline), 0, 0, faceOf(lines))
  const joints = placesOn(design, piece.id, faceOf(lines))
  const { lines: paths, words } = pieceMarks(piece, joints, place, lines, EVERYWHERE, care)
  const drawn = [...paths, ...words]
  const [left, , right, bottom] = boundsOf(drawn)
  const runs = nameOfPiece(piece, ends.get(piece.id), lines)
  const name = paragraph(runs, NAME, Math.max(right - left, 34), 'name')
  const marks = [...drawn, ...name.marks.map((mark) => moved(mark, left, bottom + NAME_DROP))]
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

/** Columns of words in a rectangle, as many as are pleasant to read. */
function columnsIn([left, top, right, bottom]: Rectangle, usual: number): readonly Cell[] {
  const whole = right - left
  const count = Math.max(1, Math.min(4, Math.floor((whole + GAP) / (usual + GAP))))
  const width = (whole - (count - 1) * GAP) / count
  if (width < LEAST) return []
  return Array.from({ length: count }, (_, k) => ({ x: left + k * (width + GAP), y: top, width, bottom }))
}

/** The free paper of a page of rows: beside all rows or the last, and below them. */
function freeCells(spots: readonly Spot[], { width }: Turned, foot: number, usual: number): readonly Cell[] {
  const bottom = Math.max(...spots.map(({ cut, y }) => y + cut.height))
  const lastTop = Math.max(...spots.map(({ y }) => y))
  const beside = (of: readonly Spot[], low: number): readonly Cell[] => {
    const far = Math.max(...of.map(({ cut, x }) => x + cut.width)) + GAP
    return of.length === 0
      ? []
      : columnsIn([far, Math.min(...of.map(({ y }) => y)), width - MARGIN, low], usual)
  }
  const above = beside(
    spots.filter(({ y }) => y < lastTop),
    lastTop - GAP,
  )
  // What stands beside the last row may run on below it.
  const right = beside(
    spots.filter(({ y }) => y === lastTop),
    foot - APART,
  )
  const edge = right[0] ? right[0].x - GAP : width - MARGIN
  return [...above, ...right, ...columnsIn([MARGIN, bottom + GAP, edge, foot - APART], usual)]
}

/** Pages of pieces, and the sections of words that found no room on them. */
export interface PiecePages {
  readonly pages: readonly PiecePage[]
  readonly left: ReadonlySet<Section['id']>
}

/** What the check lines are for, at their right, and where that begins; no words where it would be too narrow. */
function checkBeside(
  spots: readonly Spot[],
  turn: Turned,
  stretch: number | undefined,
): { readonly words: readonly SheetMark[]; readonly top: number } {
  const x = MARGIN + RULER_WIDTH + GAP
  const low = turn.height - MARGIN
  const block =
    turn.width - MARGIN - x >= LEAST
      ? checkWords(fittings.roomy, stretch).block(turn.width - MARGIN - x)
      : null
  const top = low - (block?.height ?? 0)
  const bottom = Math.max(...spots.map(({ cut, y }) => y + cut.height))
  if (!block || top < bottom + APART) return { words: [], top: low }
  return { words: block.marks.map((mark) => moved(mark, x, top)), top }
}

/** The words on a page of rows: its head, its check lines, and what else finds room. */
function wordsOn(
  spots: readonly Spot[],
  turn: Turned,
  head: readonly SheetMark[],
  waiting: (type: Fitting) => readonly Section[],
  left: Set<Section['id']>,
  { types, column }: Manner,
  stretch: number | undefined,
): readonly SheetMark[] {
  const foot = turn.height - MARGIN - rulers().height
  const marks = [...head, ...rulers().marks.map((mark) => moved(mark, MARGIN, foot))]
  const { words, top } = left.has('check') ? checkBeside(spots, turn, stretch) : { words: [], top: foot }
  if (words.length > 0) left.delete('check')
  marks.push(...words)
  const free = freeCells(spots, turn, Math.min(foot, top), column)
  const shelves = new Shelves()
  const place = (section: Section, cells: readonly Cell[]): void => {
    const found = shelves.put(section.block, cells)
    if (!found) return
    marks.push(...found)
    left.delete(section.id)
  }
  /** Rows through several columns, where no column holds them all; the first are kept with their label. */
  const flow = (section: Section, all: readonly Cell[]): void => {
    const widest = Math.max(...all.map((cell) => cell.width))
    // Rows are as wide as the narrowest of their columns: without narrow ones they are fewer.
    for (const cells of [all, all.filter((cell) => cell.width > 0.9 * widest)]) {
      if (cells.length === 0) return
      const width = Math.min(...cells.map((cell) => cell.width))
      const rows = section.rows(width)
      const whole = [stack(rows.slice(0, 4), ROW_GAP), ...rows.slice(4)]
      const found = shelves.flow(whole, cells, ROW_GAP, section.again?.(width) ?? null)
      if (!found) continue
      marks.push(...found)
      left.delete(section.id)
      return
    }
  }
  const inOrder = [...free].sort((a, b) => a.x - b.x)
  for (const type of types)
    for (const section of waiting(type).filter(({ id }) => left.has(id) && id !== 'check')) {
      place(section, free)
      if (type !== fittings.roomy && left.has(section.id) && PARTED.has(section.id)) flow(section, inOrder)
    }
  return marks
}

/** A piece that leaves no room beside others: on a page to itself, with what words find room there. */
function alone(
  { design, lines, care, ends }: Job,
  piece: Piece,
  paper: Paper,
  waiting: (type: Fitting) => readonly Section[],
): { readonly page: PiecePage; readonly left: readonly Section[] } {
  const isCover = piece.id === 'cover'
  const head = (width: number) => pieceHeader(design, lines, width, isCover)
  const name: readonly Run[] = isCover
    ? [{ text: coverEdge[faceOf(lines)] }]
    : nameOfPiece(piece, ends.get(piece.id), lines)
  const named = (trim: Trim): readonly Run[] => {
    const trimming = trimStep(trim)
    return trimming === null ? name : [...name, { text: `. ${trimming}` }]
  }
  const { bed, marks, left } = bedPage(
    {
      piece,
      joints: placesOn(design, piece.id, faceOf(lines)),
      lines,
      care,
      head,
      sections: (type) => {
        const wanted = waiting(type)
        const check = wanted.find(({ id }) => id === 'check') ?? rulersAlone
        return [pieceHead(head), check, ...wanted.filter(({ id }) => id !== 'check')]
      },
      notes: (trim) => ({ below: named(trim), beside: named(trim), on: [named(trim)] }),
    },
    paper,
  )
  const page: PiecePage = { turn: bed.turn, marks, placed: [{ piece: piece.id, place: bed.place }] }
  return { page, left }
}

/**
 * Pieces that are glued on, each at true size and with its name, in rows on as few pages as rows take; those that
 * leave no room for words have a page to themselves, and so has the cover, which comes last. Words that found no room beside the card stand on free paper.
 * @param waiting these words, in a type
 */
export function piecePages(
  design: Design,
  flat: readonly Piece[],
  paper: Paper,
  lines: SheetLines,
  care: readonly Tight[],
  waiting: (type: Fitting) => readonly Section[],
): PiecePages {
  const room = (turn: Turned) => {
    const head = pieceHeader(design, lines, turn.width - 2 * MARGIN)
    const top = MARGIN + head.height + 5
    const foot = rulers().height + APART
    return { head, top, width: turn.width - 2 * MARGIN, height: turn.height - MARGIN - top - foot }
  }
  const job: Job = { design, lines, care, ends: readersEnds(design, faceOf(lines)) }
  const drawnOnce = new Map([...new Set(flat)].map((piece) => [piece, cutOf(job, piece)]))
  const cuts = flat.map((piece) => drawnOnce.get(piece) as Cut)
  const ways = turns(paper).map((turn) => {
    const { width, height } = room(turn)
    const small = cuts.filter((cut) => cut.piece.id !== 'cover' && cut.width <= width && cut.height <= height)
    const large = cuts.filter((cut) => !small.includes(cut))
    return { turn, rows: shelved(small, width, height), large }
  })
  const count = ({ rows, large }: (typeof ways)[number]): number => rows.length + large.length
  const fewest = Math.min(...ways.map(count))
  const filled = ({ turn, rows, large }: (typeof ways)[number], manner: Manner): PiecePages => {
    const { head, top } = room(turn)
    const left = new Set(waiting(fittings.roomy).map(({ id }) => id))
    const full = rows.map((row): PiecePage => {
      const spots = row.map((spot) => ({ ...spot, x: spot.x + MARGIN, y: spot.y + top }))
      const page = drawn(spots, turn)
      const over = head.marks.map((mark) => moved(mark, MARGIN, MARGIN))
      return {
        ...page,
        marks: [...page.marks, ...wordsOn(spots, turn, over, waiting, left, manner, paper.stretch)],
      }
    })
    const single = large.map(({ piece }): PiecePage => {
      const made = alone(job, piece, paper, (type) => waiting(type).filter(({ id }) => left.has(id)))
      const rest = new Set(made.left.map(({ id }) => id))
      for (const id of [...left]) if (!rest.has(id)) left.delete(id)
      return made.page
    })
    return { pages: [...full, ...single], left }
  }
  let best: PiecePages | undefined
  for (const manner of manners)
    for (const way of ways.filter((one) => count(one) === fewest)) {
      const made = filled(way, manner)
      if (!best || made.left.size < best.left.size) best = made
      if (best.left.size === 0) return best
    }
  return best as PiecePages
}
