/**
 * Sheets for a cutting machine: the flat pieces of a design, so many of each, side by side by their true outlines, each
 * line type a layer. Lengths in mm, y upwards.
 */
import * as says from '../../content/words/cutter.ts'
import { mainFold } from '../making/grain.ts'
import type { Blank, NestOptions, Stock } from '../making/nest.ts'
import { NoRoomError, nest } from '../making/nest.ts'
import type { Design, Flat, Piece } from '../paper/index.ts'
import { jointsOf, nameOf, pieces } from '../paper/index.ts'
import type { CutSheet, LineOptions } from './lines.ts'
import { cutLines } from './lines.ts'

export { mainFold } from '../making/grain.ts'
export type { Nested, NestOptions, Stock } from '../making/nest.ts'
export { sheetDxf } from './dxf.ts'
export type { CutSheet, Layer, LineOptions, Run } from './lines.ts'
export { LAYERS } from './lines.ts'
export { cutSvg } from './svg.ts'

export interface CutOptions extends NestOptions, LineOptions {
  readonly stock: Stock
  /** Of each piece. */
  readonly copies: number
}

/** Usual choices: half a centimetre of margin, 2 mm between pieces (common practice, no source). */
export const USUAL: Omit<CutOptions, 'stock'> = {
  copies: 1,
  gap: 2,
  keepsGrain: true,
  bridge: 0,
  perforate: null,
  glue: false,
}

export const USUAL_MARGIN = 5

/** More pieces than this are not laid out at once. */
export const MOST_PIECES = 2000

/** One sheet with what lies on it. */
export interface SheetToCut extends CutSheet {
  /** The paper it is cut from, as the design names it; null: any. */
  readonly paper: string | null
  readonly count: number
  /** Part of the sheet that becomes pieces, 0 to 1. */
  readonly full: number
  /** Pieces whose main fold lies across the grain: the other way round they would not fit. */
  readonly acrossGrain: readonly string[]
}

const paperOf = ({ papers }: Design, piece: string): string | null =>
  papers?.[piece === 'card' ? 'page' : (piece.split('/')[0] ?? piece)] ?? null

/** A piece that is too large for the stock: the sentence says which and how large it is. */
export class TooLargeToCutError extends RangeError {}

function tooLarge(piece: Piece, { width, height, margin }: Stock): TooLargeToCutError {
  const size = (k: 0 | 1): string => {
    const all = piece.outline.map((p) => p[k])
    return (Math.max(...all) - Math.min(...all)).toFixed(1)
  }
  const what = piece.id === 'card' ? says.theCard : says.thePart(nameOf(piece.id.split('/')[0] ?? piece.id))
  const room = Number.isFinite(height) ? says.sheet(width, height) : says.roll(width)
  return new TooLargeToCutError(says.tooLarge(what, size(0), size(1), room, margin))
}

/** Two corners nearer than this are one, mm. */
const SAME = 1e-6

/** Of the places for glue of each piece: whether glue goes on the face that lies down, where a plotter cannot draw it. */
function behindOn(design: Design): (piece: string, points: readonly Flat[]) => boolean {
  const behind = jointsOf(design).flatMap(({ host, own }) =>
    [host, own].filter(({ face }) => face === 'back'),
  )
  return (piece, points) =>
    behind.some(
      (side) =>
        side.piece === piece &&
        side.points.length === points.length &&
        side.points.every(
          ([x, y], k) => Math.hypot(x - (points[k]?.[0] ?? 0), y - (points[k]?.[1] ?? 0)) < SAME,
        ),
    )
}

/**
 * The sheets of a design: pieces of one paper lie together. Throws a `TooLargeToCutError`, and a `RangeError` for more
 * than 2000 pieces.
 */
export function sheetsToCut(design: Design, options: CutOptions): readonly SheetToCut[] {
  const flat = pieces(design)
  if (flat.length * options.copies > MOST_PIECES)
    throw new RangeError(says.tooMany(MOST_PIECES, Math.floor(MOST_PIECES / flat.length)))
  const isBehind = behindOn(design)
  const byPaper = new Map<string | null, Blank[]>()
  for (const piece of flat) {
    const paper = paperOf(design, piece.id)
    const blank: Blank = { id: piece.id, outline: piece.outline, fold: mainFold(piece) }
    byPaper.set(paper, [...(byPaper.get(paper) ?? []), blank])
  }
  return [...byPaper].flatMap(([paper, blanks]) => {
    try {
      return nest(blanks, options.copies, options.stock, options).map(
        (sheet): SheetToCut => ({
          ...cutLines(sheet, flat, options, isBehind),
          paper,
          count: sheet.nested.length,
          full: sheet.full,
          acrossGrain: [
            ...new Set(sheet.nested.filter(({ acrossGrain }) => acrossGrain).map(({ id }) => id)),
          ],
        }),
      )
    } catch (error) {
      const piece = error instanceof NoRoomError && flat.find(({ id }) => id === error.id)
      if (piece) throw tooLarge(piece, options.stock)
      throw error
    }
  })
}
