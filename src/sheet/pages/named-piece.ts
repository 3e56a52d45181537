/** A piece with its letters and its name, ready to lie beside others. Lengths in mm. */
import * as says from '../../../content/words/sheet/pages.ts'
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import type { Design, Piece, Tight } from '../../paper/index.ts'
import type { Rectangle } from '../marks/clip.ts'
import { corners, EVERYWHERE, grown, overlap, runsThrough } from '../marks/clip.ts'
import type { SheetLines } from '../marks/instructions.ts'
import { faceOf, pieceName, printedAs } from '../marks/instructions.ts'
import { placesOn } from '../marks/joint-places.ts'
import type { Place } from '../marks/piece-marks.ts'
import { isFold, onPage, pieceMarks } from '../marks/piece-marks.ts'
import type { End, Ends } from '../marks/readers-end.ts'
import type { Block, Run, SheetMark } from '../marks/setting.ts'
import { extent, moved, paragraph } from '../marks/setting.ts'
import type { Stretch } from '../marks/stretches.ts'
import { edges, isIn, nearest, stretchesOf } from '../marks/stretches.ts'
import { placeAt } from './bed.ts'
import { boxOf } from './fit.ts'
import { APART } from './rows.ts'

/** What the pieces of a sheet have in common. */
export interface Job {
  readonly design: Design
  readonly lines: SheetLines
  /** Sizes that are marked. */
  readonly care: readonly Tight[]
  readonly ends: Ends
  /** Round names. */
  readonly room: Room
  /** Whether its name may stand on a piece: every line is on that face anyway, and no picture. */
  isPlain(piece: string): boolean
}

/** A piece, its letters and its name, with their left top corner at 0, 0. */
export interface Cut {
  readonly piece: Piece
  readonly place: Place
  readonly marks: readonly SheetMark[]
  readonly width: number
  readonly height: number
  /** The paper that it takes: its outline, what is drawn across that, and its words. */
  readonly areas: readonly (readonly Point[])[]
}

/** Capitals of 2 mm can be read at arm's length: common practice, no source. */
const NAME = { size: 3, leading: 3.6 }

/** On a small piece. */
const SMALL = { size: 2.5, leading: 3 }

const NAME_DROP = 1.6

/** A name is broken where it is wider than this and than its piece, mm; or stands in one line. */
const NAME_WIDTHS = [34, 90] as const

/** So many places of a name are tried beside the usual one: those that take least room with their piece. */
const MOST_NAMES = 3

/** What lies beside a piece with its words keeps at least so far from them. */
const NEARER = 1.5

/** How far a name keeps from letters beside its piece, and what it takes of the paper round it, mm: what lies between pieces anyway comes to that. */
export interface Room {
  readonly letters: number
  readonly own: number
}

/** Nearer to letters a name would be read with them; the second is for pieces that would take a page more. */
export const ROOMS: Readonly<Record<'easy' | 'close', Room>> = {
  easy: { letters: 4, own: 2 },
  close: { letters: 1.2, own: 0 },
}

const boundsOf = (boxes: readonly Rectangle[]): Rectangle => [
  Math.min(...boxes.map((b) => b[0])),
  Math.min(...boxes.map((b) => b[1])),
  Math.max(...boxes.map((b) => b[2])),
  Math.max(...boxes.map((b) => b[3])),
]

export const movedPlace = (place: Place, dx: number, dy: number): Place => ({
  ...place,
  origin: [place.origin[0] + dx, place.origin[1] + dy],
})

/** What a piece is called, which of its faces this is, and which of its ends is the reader's. */
export function nameOfPiece(
  piece: Piece,
  end: End | undefined,
  lines: SheetLines,
  isAcross = false,
): readonly Run[] {
  const face = lines === 'back' ? 'back' : 'front'
  const side = piece.id === 'card' ? faceOf(lines) : face
  return [{ text: pieceName(piece.id), bold: true }, { text: ` ${says.face(side, end, isAcross)}` }]
}

/** A piece as it is drawn in one of its turns, without its name. */
export interface Drawn {
  readonly piece: Piece
  readonly place: Place
  readonly marks: readonly SheetMark[]
  readonly areas: readonly (readonly Point[])[]
  readonly box: Rectangle
  /** Edges, folds and whatever else is drawn, stretch by stretch. */
  readonly sides: readonly Stretch[]
  readonly folds: readonly Stretch[]
  readonly cuts: readonly Stretch[]
  /** What is drawn besides, and round its letters. */
  readonly others: readonly Stretch[]
  /** The letters that stand beside it. */
  readonly beside: readonly Rectangle[]
  readonly outline: readonly Point[]
}

/** The same with paper round its letters that no name may take, and how much a name takes round itself. */
interface Roomed extends Drawn {
  readonly own: number
}

/** The paper round a letter that nothing else may take: beside its piece it stays nearer to that than to any other. */
function ownGround(word: WordMark, outline: readonly Point[]): readonly Point[] {
  const box = extent(word)
  const far = Math.max(
    ...corners(box).map((corner) =>
      isIn(corner, outline) ? 0 : Math.min(...edges(outline).map((side) => nearest(corner, side))),
    ),
  )
  return corners(grown(box, Math.max(0, far - NEARER)))
}

export function drawnIn(
  { design, lines: asked, care }: Pick<Job, 'design' | 'lines' | 'care'>,
  piece: Piece,
  turn: number,
): Drawn {
  const lines = printedAs(piece.id, asked)
  const still = placeAt(boxOf(piece.outline), 0, 0, faceOf(lines))
  const place: Place = turn === 0 ? still : { ...still, turn }
  const joints = placesOn(design, piece.id, faceOf(lines))
  const { lines: paths, words } = pieceMarks(piece, joints, place, lines, EVERYWHERE, care)
  const outline = piece.outline.map((point) => onPage(place, point))
  const across = paths.flatMap(({ runs }) => runs.filter((run) => run.some((point) => !isIn(point, outline))))
  const marks = [...paths, ...words]
  return {
    piece,
    place,
    marks,
    areas: [outline, ...across, ...words.map((word) => ownGround(word, outline))],
    box: boundsOf(marks.map(extent)),
    sides: [...paths.flatMap(stretchesOf), ...words.flatMap((word) => edges(corners(extent(word))))],
    folds: paths.filter(({ role }) => isFold(role)).flatMap(stretchesOf),
    cuts: paths.filter(({ role }) => role === 'cut').flatMap(stretchesOf),
    others: [
      ...paths.filter(({ role }) => role !== 'cut' && !isFold(role)).flatMap(stretchesOf),
      ...words.flatMap((word) => edges(corners(extent(word)))),
    ],
    beside: words.map(extent).filter((box) => corners(box).some((corner) => !isIn(corner, outline))),
    outline,
  }
}

/** Where a name stands below a piece: clear of letters there. */
function lowest({ box, beside }: Roomed, name: Block, x: number): number {
  let y = box[3] + NAME_DROP
  while (beside.some((one) => overlap(one, [x, y, x + name.width, y + name.height]))) y += 0.5
  return y
}

/** How far up a name goes that stands below a piece: until paper of that is in its way, or a letter. */
function rise(drawn: Roomed, name: Block, x: number): number {
  const { sides, box, beside } = drawn
  const isCrossed = runsThrough(sides)
  const isFree = (y: number): boolean =>
    !isCrossed([x - NAME_DROP, y - NAME_DROP, x + name.width + NAME_DROP, y + name.height]) &&
    !beside.some((one) => overlap(one, [x, y, x + name.width, y + name.height]))
  let y = lowest(drawn, name, x)
  while (y - 0.5 >= box[1] && isFree(y - 0.5)) y -= 0.5
  return y
}

/** How far a name is from its piece. */
function apart([l, t, r, b]: Rectangle, outline: readonly Point[]): number {
  const fromCorner = Math.min(
    ...corners([l, t, r, b]).flatMap((corner) => edges(outline).map((side) => nearest(corner, side))),
  )
  const fromPoint = Math.min(
    ...outline.map(([x, y]) => Math.hypot(Math.max(l - x, 0, x - r), Math.max(t - y, 0, y - b))),
  )
  return isIn([l, t], outline) ? 0 : Math.min(fromCorner, fromPoint)
}

function named(drawn: Roomed, name: Block, x: number, y: number): Cut {
  const at: Rectangle = [x, y, x + name.width, y + name.height]
  // As a letter beside its piece, a name takes the paper round it: no other piece is nearer.
  const far = apart(at, drawn.outline)
  const ground = grown(at, far === 0 ? 0 : Math.max(drawn.own, far - NEARER))
  // In rows too, where boxes lie `APART`.
  const box = boundsOf([drawn.box, grown(at, Math.max(0, far - APART))])
  const marks = [...drawn.marks, ...name.marks.map((mark) => moved(mark, x, y))]
  return {
    piece: drawn.piece,
    place: movedPlace(drawn.place, -box[0], -box[1]),
    marks: marks.map((mark) => moved(mark, -box[0], -box[1])),
    width: box[2] - box[0],
    height: box[3] - box[1],
    areas: [...drawn.areas, corners(ground)].map((area) =>
      area.map(([p, q]): Point => [p - box[0], q - box[1]]),
    ),
  }
}

/**
 * In which type a name is tried on its piece, and how much paper stays free between it and folds and cuts: nearer it reads
 * as a part of it. Places are tried in steps, mm, fine ones where room is scarce.
 */
const ON_PIECE = [
  { type: NAME, fold: 2, cut: 1.5, step: 2 },
  { type: SMALL, fold: 2, cut: 1.5, step: 2 },
  { type: SMALL, fold: 1, cut: 1, step: 1 },
] as const

/** Free paper round it on all sides. */
const ROUND = 0.7

/** A name on its piece breaks into lines so wide: as few as there is room for. */
const WITHIN = [90, 34, 26, 20, 16, 12] as const

/** The place on a piece, as near to its middle as may be, where a name stands free of all that is drawn; null: none. */
function within(
  { folds, cuts, others, outline, box: [l, t, r, b] }: Drawn,
  name: Block,
  { fold, cut, step }: (typeof ON_PIECE)[number],
): Point | null {
  const [wide, high] = [name.width + 2 * ROUND, name.height + 2 * ROUND]
  const [columns, rows] = [Math.floor(r - l - wide), Math.floor(b - t - high)]
  const [isCrossed, isOnFold, isOnCut] = [runsThrough(others), runsThrough(folds), runsThrough(cuts)]
  let best: { readonly at: Point; readonly far: number } | null = null
  for (let row = 0; row <= rows; row += step)
    for (let column = 0; column <= columns; column += step) {
      const [x, y] = [l + column + ROUND, t + row + ROUND]
      const far = Math.hypot(x + name.width / 2 - (l + r) / 2, y + name.height / 2 - (t + b) / 2)
      if (best && far >= best.far) continue
      const own: Rectangle = [x, y, x + name.width, y + name.height]
      if (isOnCut(grown(own, cut)) || isOnFold(grown(own, fold)) || isCrossed(grown(own, ROUND))) continue
      if (isIn([x, y], outline)) best = { at: [x, y], far }
    }
  return best?.at ?? null
}

/** A piece in one turn. */
export interface Cuts {
  /** With its name below it. */
  readonly below: Cut
  /** With its name on it where that may be and finds room; else wherever that takes little room. */
  readonly close: readonly Cut[]
}

/**
 * A piece with all that is written at it, turned so (radians).
 * @param alone the piece as it is drawn in that turn
 * @param isAcross its main fold then lies across the grain, and its name says so
 */
export function cutsOf(job: Job, alone: Drawn, turn = 0, isAcross = false): Cuts {
  const { piece } = alone
  const { letters, own } = job.room
  const drawn: Roomed = { ...alone, beside: alone.beside.map((box) => grown(box, letters)), own }
  const [left, , right] = drawn.box
  const runs = nameOfPiece(piece, job.ends(piece.id, turn), job.lines, isAcross)
  const names = NAME_WIDTHS.map((width) => paragraph(runs, NAME, Math.max(right - left, width), 'name'))
  const [usual] = names as [Block, Block]
  const xsOf = ({ width }: Block): readonly number[] => [left, (left + right - width) / 2, right - width]
  const farAt = (x: number): number => {
    const y = lowest(drawn, usual, x)
    return apart([x, y, x + usual.width, y + usual.height], drawn.outline)
  }
  // Where its piece comes nearest to it, else at the left.
  const x = xsOf(usual).reduce((best, one) => (farAt(one) < farAt(best) - 0.5 ? one : best))
  const below = named(drawn, usual, x, lowest(drawn, usual, x))
  if (job.isPlain(piece.id))
    for (const manner of ON_PIECE) {
      const tried = new Set<number>()
      for (const width of WITHIN) {
        const name = paragraph(runs, manner.type, width, 'name')
        // Broken in the same way it finds no more room.
        if (tried.has(name.width)) continue
        tried.add(name.width)
        const at = within(drawn, name, manner)
        if (at) return { below, close: [named(drawn, name, ...at)] }
      }
    }
  const others = names.flatMap((name, k): Cut[] => {
    if (k > 0 && name.height === usual.height) return []
    const xs = [...xsOf(name), right + NAME_DROP]
    return xs.map((x) => named(drawn, name, x, rise(drawn, name, x)))
  })
  const smaller = others
    .filter((cut) => cut.height < below.height - 1 || cut.width < below.width - 1)
    .sort((a, b) => a.width * a.height - b.width * b.height)
  return { below, close: [below, ...smaller.slice(0, MOST_NAMES)] }
}
