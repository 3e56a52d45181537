import * as says from '../../../content/words/sheet/fit.ts'
import type { Design, Piece } from '../../paper/index.ts'
import { nameOf, pieces } from '../../paper/index.ts'
import type { Paper } from './paper-sizes.ts'
import { papers, stretched } from './paper-sizes.ts'

/**
 * Nothing that must be seen is printed nearer the paper's edge than this, mm: a quarter of an inch and a
 * little. Common practice, no source; printers' manuals name 4 to 6.7 mm as what they cannot reach.
 */
export const SAFE = 6.5

/** A paper turned one way or the other, mm. */
export interface Turned {
  readonly width: number
  readonly height: number
}

/** The paper lying and standing. */
export const turns = ({ width, height }: Paper): readonly [Turned, Turned] => [
  { width: height, height: width },
  { width, height },
]

/** By how much a design is too large for a paper in its best turn, mm; 0: not in that direction. */
export interface Excess {
  readonly wide: number
  readonly high: number
  /** The piece that sticks out, `card` for the card itself. */
  readonly piece: string
  /** Only lines stick out, into the border that no printer reaches: those of this mechanism. */
  readonly lines?: string
}

export interface Box {
  readonly left: number
  readonly top: number
  readonly right: number
  readonly bottom: number
}

/** The least upright rectangle round some points; `top` is the lesser y. */
export function boxOf(points: readonly (readonly [number, number])[]): Box {
  const xs = points.map((p) => p[0])
  const ys = points.map((p) => p[1])
  return { left: Math.min(...xs), top: Math.min(...ys), right: Math.max(...xs), bottom: Math.max(...ys) }
}

/**
 * Lines that may run off the printable part of the paper: where the edge and the gutter of the card and its cover
 * are shows anyway, and so does the rim between two corners of the paper.
 */
const mayLeave = (of: string): boolean =>
  of === 'page' || of === 'gutter' || of === 'cover' || of.startsWith('cover/')

/** Rounding of a point or two in a converted size must not make a card too large, mm. */
const SLACK = 0.05

const over = (x: number): number => (x > SLACK ? x : 0)

/** How far one piece is too large for one turn of a paper; the edge of the paper may be the edge of the card. */
function excessOf(piece: Piece, { width, height }: Turned, safe: number): Excess {
  const card = boxOf(piece.outline)
  const [w, h] = [card.right - card.left, card.bottom - card.top]
  const whole: Excess = { wide: over(w - width), high: over(h - height), piece: piece.id }
  if (whole.wide > 0 || whole.high > 0) return whole
  let worst = whole
  for (const line of piece.lines) {
    if (mayLeave(line.of)) continue
    const box = boxOf(line.points)
    // A piece that fills the paper lies in the middle of it.
    const rim = (room: number, size: number, from: number, to: number): number =>
      size <= room - 2 * safe ? 0 : over(safe - (room - size) / 2 - Math.min(from, to))
    const wide = rim(width, w, box.left - card.left, card.right - box.right)
    const high = rim(height, h, box.top - card.top, card.bottom - box.bottom)
    if (Math.max(wide, high) > Math.max(worst.wide, worst.high))
      worst = { wide, high, piece: piece.id, lines: line.of.split('/')[0] ?? line.of }
  }
  return worst
}

const sum = ({ wide, high }: Excess): number => wide + high

/** The turn of a paper that a piece exceeds least, and by how much. */
export function bestTurn(piece: Piece, paper: Paper): { readonly turn: Turned; readonly excess: Excess } {
  const [lying, standing] = turns(paper)
  // What is printed larger comes as much nearer to the edge, and is drawn as much farther from it.
  const safe = SAFE / Math.max(1, paper.stretch ?? 1)
  const [a, b] = [excessOf(piece, lying, safe), excessOf(piece, standing, safe)]
  return sum(b) < sum(a) ? { turn: standing, excess: b } : { turn: lying, excess: a }
}

/** Whether a piece goes on no turn of a paper at true size. */
export const isTooLarge = (piece: Piece, paper: Paper): boolean => sum(bestTurn(piece, paper).excess) > 0

/** Whether a design goes on a paper at true size. */
export interface Fit {
  readonly ok: boolean
  /** All goes on it but the cover: the sheet leaves that out and says how to cut it from other card. */
  readonly leavesCover: boolean
  readonly excess: Excess
  /** Papers that would do, from small to large within their family. */
  readonly others: readonly Paper[]
  /** What a reader is told; empty if all of it fits. */
  readonly sentence: string
}

/** Up, not to the nearest: a card cut down by the number that was said must fit. */
const tenths = (x: number): string => (Math.ceil(x * 10 - 1e-6) / 10).toFixed(1)

function pieceNamed(piece: string): string {
  if (piece === 'card') return says.theCard
  return piece === 'cover' ? says.theCover : says.thePiece(nameOf(piece.split('/')[0] ?? piece))
}

function sentenceFor({ wide, high, piece, lines }: Excess, paper: Paper, others: readonly Paper[]): string {
  const by = (much: number): string => (much > 0 ? tenths(much) : '')
  const what = pieceNamed(piece)
  const first =
    lines === undefined
      ? says.tooLarge(what, by(wide), by(high), paper.label)
      : says.intoBorder(what, paper.label, nameOf(lines), tenths(Math.max(wide, high)))
  const names = others.map((other) => other.label)
  return `${first} ${names.length === 0 ? says.noneLargeEnough : says.fitsOn(names)}`
}

/** Whether a design fits a paper, by how much it does not, and which paper would do. It is never scaled. */
export function fitOn(design: Design, paper: Paper): Fit {
  const flat = pieces(design)
  const worstOn = (on: Paper, some = flat): Excess =>
    some.map((piece) => bestTurn(piece, on).excess).reduce((a, b) => (sum(b) > sum(a) ? b : a))
  const excess = worstOn(paper)
  if (sum(excess) === 0) return { ok: true, leavesCover: false, excess, others: [], sentence: '' }
  const others = papers.filter((other) => sum(worstOn(stretched(other, paper.stretch ?? 1))) === 0)
  const sentence = sentenceFor(excess, paper, others)
  const uncovered = worstOn(
    paper,
    flat.filter(({ id }) => id !== 'cover'),
  )
  if (sum(uncovered) > 0)
    return excess.piece === 'cover'
      ? {
          ok: false,
          leavesCover: false,
          excess: uncovered,
          others,
          sentence: sentenceFor(uncovered, paper, others),
        }
      : { ok: false, leavesCover: false, excess, others, sentence }
  return {
    ok: true,
    leavesCover: true,
    excess,
    others,
    sentence: `${sentence} ${says.leavesCover(paper.label)}`,
  }
}

/** A design that is too large for the paper: the message says by how much and what would do. */
export class TooLargeError extends Error {
  readonly fit: Fit
  constructor(fit: Fit) {
    super(fit.sentence)
    this.name = 'TooLargeError'
    this.fit = fit
  }
}
