/** A piece that is larger than the paper, on several sheets that are joined. Lengths in mm. */
import * as says from '../../../content/words/sheet/pages.ts'
import type { PathMark, Point } from '../../drawing/pen/marks.ts'
import type { Piece } from '../../paper/index.ts'
import type { Rectangle } from '../marks/clip.ts'
import type { SheetFace } from '../marks/instructions.ts'
import { onPage } from '../marks/piece-marks.ts'
import { rulers } from '../marks/rulers.ts'
import type { Block, SheetMark } from '../marks/setting.ts'
import { moved, paragraph } from '../marks/setting.ts'
import { GAP, MARGIN, placeAt } from './bed.ts'
import type { Turned } from './fit.ts'
import { boxOf, SAFE, turns } from './fit.ts'
import type { Paper } from './paper-sizes.ts'

/** What neighbours both show. */
const LAP = 12

/** Free paper round the piece, so that its edge is seen as a line. */
const RIM = 2

/** Under the part of the piece: what to do with this sheet, the check lines, and where the sheet belongs. */
const FOOT = 26

/** A square of the plan of all sheets. */
const SQUARE = { wide: 9, high: 7 }

/** Arms of a cross. */
const ARM = 4

/** How a piece is parted: columns and rows of equal windows on it, from its left upper corner. */
export interface Tiling {
  readonly turn: Turned
  readonly columns: number
  readonly rows: number
  /** Size of a window. */
  readonly wide: number
  readonly high: number
  /** From window to window. */
  readonly stepX: number
  readonly stepY: number
  /** From the beginning of what neighbours share to the line along which they join. */
  readonly joinX: number
  readonly joinY: number
}

/** So many windows cover a length. */
const countFor = (length: number, window: number): number =>
  length <= window ? 1 : Math.ceil((length - LAP) / (window - LAP) - 1e-9)

/** Where in what they share neighbours may join, the middle first. */
const SHARES = [0.5, 0.25, 0.75] as const

/** Where a piece's upright (axis 0) or level (axis 1) lines stand, from the left upper corner of the first window. */
function parallels(piece: Piece, face: SheetFace, axis: 0 | 1): readonly number[] {
  const place = placeAt(boxOf(piece.outline), RIM, RIM, face)
  return piece.lines.flatMap(({ points }) => {
    const at = points.map((point) => onPage(place, point))
    return at.slice(1).flatMap((b, k) => (Math.abs(b[axis] - (at[k] as Point)[axis]) < 0.01 ? [b[axis]] : []))
  })
}

/** The join that keeps farthest from all lines along it: dots on the dashes of a fold would read as another fold. */
function joinOf(lines: readonly number[], count: number, step: number): number {
  const clear = (share: number): number =>
    Math.min(
      LAP,
      ...Array.from({ length: count - 1 }, (_, k) => (k + 1) * step + share * LAP).flatMap((join) =>
        lines.map((line) => Math.abs(line - join)),
      ),
    )
  return LAP * SHARES.reduce<number>((best, share) => (clear(share) > clear(best) ? share : best), SHARES[0])
}

/** The turn of the paper on which a piece takes fewest sheets. */
export function tilingOf(piece: Piece, paper: Paper, face: SheetFace): Tiling {
  const { left, top, right, bottom } = boxOf(piece.outline)
  const [w, h] = [right - left + 2 * RIM, bottom - top + 2 * RIM]
  const ways = turns(paper).map((turn) => {
    const [wide, high] = [turn.width - 2 * SAFE, turn.height - 2 * SAFE - FOOT]
    const [columns, rows] = [countFor(w, wide), countFor(h, high)]
    const equal = (length: number, count: number): number => (length + (count - 1) * LAP) / count
    const [each, tall] = [equal(w, columns), equal(h, rows)]
    return { turn, columns, rows, wide: each, high: tall, stepX: each - LAP, stepY: tall - LAP }
  })
  const best = ways.reduce((a, b) => (b.columns * b.rows < a.columns * a.rows ? b : a))
  return {
    ...best,
    joinX: joinOf(parallels(piece, face, 0), best.columns, best.stepX),
    joinY: joinOf(parallels(piece, face, 1), best.rows, best.stepY),
  }
}

/** Which of the sheets one is, row by row from 1: joints have letters. */
const numberOf = ({ columns }: Pick<Tiling, 'columns'>, column: number, row: number): number =>
  row * columns + column + 1

/** One sheet of a piece: where the piece's left upper corner lies on it, and what of it is seen. */
export interface Tile {
  readonly corner: Point
  readonly clip: Rectangle
  /** Where it joins its neighbours, its foot: never clipped. */
  readonly marks: readonly SheetMark[]
}

const guide = (runs: readonly (readonly Point[])[], of: string): PathMark => ({
  mark: 'path',
  runs,
  closed: false,
  role: 'guide',
  of,
})

const cross = ([x, y]: Point): readonly (readonly Point[])[] => [
  [
    [x - ARM, y],
    [x + ARM, y],
  ],
  [
    [x, y - ARM],
    [x, y + ARM],
  ],
]

/** Lines along which neighbours join, within what both show, with two crosses each. */
function joins(
  { columns, rows, stepX, stepY, joinX, joinY }: Tiling,
  column: number,
  row: number,
  clip: Rectangle,
) {
  const [left, top, right, bottom] = clip
  // Upright lines first; a level one is the same with x and y in each other's place.
  const sides = [
    { at: left + joinX, is: column > 0, level: false },
    { at: left + stepX + joinX, is: column + 1 < columns, level: false },
    { at: top + joinY, is: row > 0, level: true },
    { at: top + stepY + joinY, is: row + 1 < rows, level: true },
  ]
  return sides.flatMap(({ at, is, level }): PathMark[] => {
    if (!is) return []
    const [from, to, step] = level ? [left, right, stepX] : [top, bottom, stepY]
    const on = (along: number): Point => (level ? [along, at] : [at, along])
    const middles = [0.3, 0.7].map((part) => on(from + LAP / 2 + part * (step - LAP)))
    return [guide([[on(from), on(to)], ...middles.flatMap(cross)], 'join')]
  })
}

/** Which sheets there are, and which this is. */
function plan(tiling: Tiling, column: number, row: number): Block {
  const { columns, rows } = tiling
  const [wide, high] = [SQUARE.wide, Math.min(SQUARE.high, (FOOT - 3) / rows)]
  const marks: SheetMark[] = []
  for (let k = 0; k < rows; k++)
    for (let n = 0; n < columns; n++) {
      const [x, y] = [n * wide, k * high]
      const isThis = n === column && k === row
      const square = (inset: number): readonly Point[] => [
        [x + inset, y + inset],
        [x + wide - inset, y + inset],
        [x + wide - inset, y + high - inset],
        [x + inset, y + high - inset],
        [x + inset, y + inset],
      ]
      marks.push(guide([square(0.4), ...(isThis ? [square(1)] : [])], 'plan'), {
        mark: 'word',
        at: [x + wide / 2, y + high / 2 + 1],
        text: `${numberOf(tiling, n, k)}`,
        role: 'guide',
        anchor: 'middle',
        size: 2.8,
        ...(isThis ? { bold: true } : {}),
        of: 'plan',
      })
    }
  return { width: columns * wide, height: rows * high, marks }
}

/** What to do with this sheet. */
function jointSays(tiling: Tiling, column: number, row: number): string {
  const [left, upper] = [numberOf(tiling, column - 1, row), numberOf(tiling, column, row - 1)]
  if (column > 0) return row > 0 ? says.joinBoth(left, upper) : says.joinLeft(left)
  return row > 0 ? says.joinUpper(upper) : says.joinAll(tiling.columns * tiling.rows)
}

function footOf(tiling: Tiling, column: number, row: number, called: string): readonly SheetMark[] {
  const { width, height } = tiling.turn
  const drawn = plan(tiling, column, row)
  const top = height - SAFE - FOOT + 3
  const x = width - MARGIN - drawn.width
  const name = [
    { text: says.tile(called, numberOf(tiling, column, row), tiling.columns * tiling.rows), bold: true },
    { text: ` ${jointSays(tiling, column, row)}` },
  ]
  const words = paragraph(name, { size: 2.9, leading: 3.6 }, x - GAP - MARGIN, 'tile')
  const lines = rulers()
  return [
    ...words.marks.map((mark) => moved(mark, MARGIN, top)),
    ...lines.marks.map((mark) => moved(mark, MARGIN, height - SAFE - 0.5 - lines.height)),
    ...drawn.marks.map((mark) => moved(mark, x, top)),
  ]
}

/**
 * The sheets of a piece, row by row.
 * @param called what the piece is called on them
 */
export function tilesOf(tiling: Tiling, called: string): readonly Tile[] {
  const { columns, rows, wide, high, stepX, stepY } = tiling
  return Array.from({ length: columns * rows }, (_, k): Tile => {
    const [column, row] = [k % columns, Math.floor(k / columns)]
    const clip: Rectangle = [SAFE, SAFE, SAFE + wide, SAFE + high]
    return {
      corner: [SAFE + RIM - column * stepX, SAFE + RIM - row * stepY],
      clip,
      marks: [...joins(tiling, column, row, clip), ...footOf(tiling, column, row, called)],
    }
  })
}
