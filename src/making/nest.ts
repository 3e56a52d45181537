/**
 * Flat pieces side by side on sheets or a roll, by their true outlines. What it knows of an outline is which square
 * millimetres it touches: two pieces that touch no square in common have the gap between them that was asked for.
 */
import { signedArea } from '../paper/plane/convex.ts'
import type { Flat } from '../paper/plane/lay.ts'
import { CELL, HALF_DIAGONAL, mark } from './raster.ts'
import { turned } from './turn.ts'

/** A piece to be cut, in coordinates of its own, mm. */
export interface Blank {
  readonly id: string
  readonly outline: readonly Flat[]
  /** The way of its main fold, radians; null where it has none. */
  readonly fold: number | null
}

/** What it is cut from, mm. The grain runs along the height. */
export interface Stock {
  readonly width: number
  /** Infinite for a roll. */
  readonly height: number
  /** Nothing is cut nearer to its edge. */
  readonly margin: number
}

export interface NestOptions {
  /** Least distance between two pieces, mm. */
  readonly gap: number
  /** Main folds along the grain where that fits; else any quarter turn. */
  readonly keepsGrain: boolean
}

/** A piece on a sheet: turned about its own origin, then moved; mm and radians, y upwards from the lower left corner. */
export interface Nested {
  readonly id: string
  readonly turn: number
  readonly at: Flat
  /** Its main fold lies across the grain: the other way round it would not fit. */
  readonly acrossGrain: boolean
  readonly shape: Shape
}

export interface NestedSheet {
  readonly width: number
  /** Of a roll: as much as is used. */
  readonly height: number
  readonly nested: readonly Nested[]
  /** Part of the sheet that becomes pieces, 0 to 1. */
  readonly full: number
  /** How far up the sheet pieces reach, mm. */
  readonly top: number
}

/** A stretch of squares in a row, both ends in it. */
type Stretch = readonly [from: number, to: number]

/** One way in which a piece may lie: what it takes of the sheet, turned so, in coordinates about the piece's origin, mm. */
export interface Shape {
  /** Its outline, and what belongs to it and lies beside it. */
  readonly areas: readonly (readonly Flat[])[]
  readonly turn: number
  readonly acrossGrain: boolean
}

/** What a shape covers: rows from the lowest up, each with its stretches; and where its origin lies. */
export interface Stamp {
  readonly rows: readonly (readonly Stretch[])[]
  readonly wide: number
  readonly high: number
  /** From the lower left corner of its box to the piece's origin. */
  readonly origin: Flat
  readonly shape: Shape
}

function stampOf(shape: Shape, gap: number): Stamp {
  const points = shape.areas.flat()
  const left = Math.min(...points.map(([x]) => x))
  const low = Math.min(...points.map(([, y]) => y))
  const wide = Math.max(...points.map(([x]) => x)) - left
  const high = Math.max(...points.map(([, y]) => y)) - low
  const reach = gap / 2 + HALF_DIAGONAL
  const pad = Math.ceil(reach / CELL)
  const [columns, count] = [Math.ceil(wide / CELL) + 2 * pad, Math.ceil(high / CELL) + 2 * pad]
  const cells = new Uint8Array(columns * count)
  for (const area of shape.areas)
    mark(
      { cells, columns, count },
      area.map(([x, y]): Flat => [x - left + pad * CELL, y - low + pad * CELL]),
      reach,
    )
  const rows: Stretch[][] = []
  for (let row = 0; row < count; row++) {
    const stretches: Stretch[] = []
    for (let column = 0; column < columns; column++) {
      if (!cells[row * columns + column]) continue
      const from = column
      while (column + 1 < columns && cells[row * columns + column + 1]) column++
      stretches.push([from, column])
    }
    rows.push(stretches)
  }
  return { rows, wide, high, origin: [-left, -low], shape }
}

/** A sheet that is being filled. */
class Bed {
  readonly nested: Nested[] = []
  private readonly taken: Uint8Array[] = []
  /** For each square of a row the first taken one from there on. */
  private readonly next: Int32Array[] = []
  /** Of what has failed once nothing more need be tried: a sheet only gets fuller. */
  private readonly failed = new Set<string>()
  top = 0
  private readonly stock: Stock
  private readonly columns: number

  constructor(stock: Stock, pad: number) {
    this.stock = stock
    this.columns = Math.floor(stock.width / CELL) + 2 * pad
  }

  private row(k: number): Int32Array {
    for (let n = this.next.length; n <= k; n++) {
      this.taken.push(new Uint8Array(this.columns))
      this.next.push(new Int32Array(this.columns).fill(this.columns))
    }
    return this.next[k] as Int32Array
  }

  /** The lowest free place of a stamp, and of those the one farthest to the left; in squares. */
  private placeOf(
    { rows, wide, high }: Stamp,
    margin: number,
  ): readonly [column: number, row: number] | null {
    const { width, height } = this.stock
    const first = Math.ceil(margin / CELL)
    const last = (room: number, size: number): number => Math.floor((room - margin - size) / CELL + 1e-9)
    const lastColumn = last(width, wide)
    const lastRow = Number.isFinite(height) ? last(height, high) : Number.POSITIVE_INFINITY
    for (let y = first; y <= lastRow; y++) {
      let x = first
      let from = 0
      search: while (x <= lastColumn) {
        // The row that stood in the way is the likeliest to do so again.
        for (let n = 0; n < rows.length; n++) {
          const k = (from + n) % rows.length
          const next = this.row(y + k)
          for (const [a, b] of rows[k] as readonly Stretch[]) {
            const met = next[x + a] ?? this.columns
            if (met <= x + b) {
              x = met - a + 1
              from = k
              continue search
            }
          }
        }
        return [x, y]
      }
    }
    return null
  }

  /** Puts a piece where it lies lowest, in one of its turns; false where it has no room. */
  put(id: string, stamps: readonly Stamp[], margin: number): boolean {
    if (this.failed.has(id)) return false
    let best: { stamp: Stamp; x: number; y: number } | null = null
    for (const stamp of stamps) {
      const place = this.placeOf(stamp, margin)
      if (!place) continue
      const [x, y] = place
      const lower = best && y + stamp.high - (best.y + best.stamp.high)
      if (lower === null || lower < -1e-9 || (lower < 1e-9 && x < (best?.x ?? 0))) best = { stamp, x, y }
    }
    if (!best) {
      this.failed.add(id)
      return false
    }
    const { stamp, x, y } = best
    stamp.rows.forEach((stretches, k) => {
      const next = this.row(y + k)
      const taken = this.taken[y + k] as Uint8Array
      for (const [a, b] of stretches) taken.fill(1, x + a, x + b + 1)
      for (let column = this.columns - 1; column >= 0; column--)
        next[column] = taken[column] ? column : (next[column + 1] ?? this.columns)
    })
    const [right, up] = stamp.origin
    const { shape } = stamp
    const { turn, acrossGrain } = shape
    this.nested.push({ id, turn, at: [x * CELL + right, y * CELL + up], acrossGrain, shape })
    this.top = Math.max(this.top, y * CELL + stamp.high)
    return true
  }
}

const QUARTERS = [0, 1, 2, 3].map((k) => (k * Math.PI) / 2)

/** Whether a shape goes on the stock at all. */
const fits = ({ wide, high }: Stamp, { width, height, margin }: Stock): boolean =>
  wide <= width - 2 * margin + 1e-9 && high <= height - 2 * margin + 1e-9

/** A turn brings the main fold across the grain, which runs along the height. */
const isAcross = (fold: number | null, turn: number): boolean =>
  fold !== null && Math.abs(Math.cos(fold + turn)) > 1e-6

/** The turns of a piece: those that bring its main fold along the grain, and the quarter turns. */
export function turnsOf(fold: number | null): {
  readonly along: readonly number[]
  readonly any: readonly number[]
} {
  const along = fold === null ? [] : [Math.PI / 2 - fold, Math.PI / 2 - fold + Math.PI]
  return { along, any: QUARTERS }
}

/** The turns of a piece that fit: with its main fold along the grain if that is asked for and possible, else any. */
function stampsOf(
  { outline, fold }: Blank,
  stock: Stock,
  { gap, keepsGrain }: NestOptions,
): readonly Stamp[] {
  const stamped = (turn: number): Stamp => {
    const areas = [outline.map((p) => turned(p, turn))]
    return stampOf({ areas, turn, acrossGrain: isAcross(fold, turn) }, gap)
  }
  const fitting = (turns: readonly number[]): readonly Stamp[] =>
    turns.map(stamped).filter((stamp) => fits(stamp, stock))
  const { along, any } = turnsOf(fold)
  const kept = keepsGrain ? fitting(along) : []
  return kept.length > 0 ? kept : fitting(any)
}

/** A piece that no turn brings onto the stock. */
export class NoRoomError extends RangeError {
  readonly id: string
  constructor(id: string) {
    super(`${id} does not go on the sheet`)
    this.id = id
  }
}

/** What is laid out: a piece in the ways in which it may lie, and how near to the edge. */
interface Lain {
  readonly id: string
  /** mm². */
  readonly size: number
  readonly stamps: readonly Stamp[]
  readonly margin: number
}

/** Large ones first, each so often, where they lie lowest: on the first sheet that has room, be it long begun. */
function filled(lain: readonly Lain[], copies: number, stock: Stock, gap: number): readonly NestedSheet[] {
  const pad = Math.ceil((gap / 2 + HALF_DIAGONAL) / CELL)
  const sizes = new Map(lain.map(({ id, size }) => [id, size]))
  const beds: Bed[] = []
  for (const { id, stamps, margin } of [...lain].sort((a, b) => b.size - a.size)) {
    if (stamps.length === 0) throw new NoRoomError(id)
    for (let copy = 0; copy < copies; copy++) {
      if (beds.some((bed) => bed.put(id, stamps, margin))) continue
      const bed = new Bed(stock, pad)
      bed.put(id, stamps, margin)
      beds.push(bed)
    }
  }
  return beds.map(({ nested, top }): NestedSheet => {
    const height = Number.isFinite(stock.height) ? stock.height : top + stock.margin
    const area = nested.reduce((sum, { id }) => sum + (sizes.get(id) ?? 0), 0)
    return { width: stock.width, height, nested, full: area / (stock.width * height), top }
  })
}

/**
 * The pieces, so many of each, on as few sheets as the lowest place for each finds: large ones first. The same pieces
 * always lie in the same places. A piece that is too large for the room within the margin may lie on it. Throws a
 * `NoRoomError`.
 */
export function nest(
  blanks: readonly Blank[],
  copies: number,
  stock: Stock,
  options: NestOptions,
): readonly NestedSheet[] {
  const lain = blanks.map((blank): Lain => {
    const usual = stampsOf(blank, stock, options)
    const margin = usual.length > 0 ? stock.margin : 0
    const stamps = usual.length > 0 ? usual : stampsOf(blank, { ...stock, margin }, options)
    return { id: blank.id, size: Math.abs(signedArea(blank.outline)), stamps, margin }
  })
  return filled(lain, copies, stock, options.gap)
}

/** A piece in the ways in which it may lie, where more than its outline counts; the first that lies lowest is taken. */
export interface Shaped {
  readonly id: string
  /** What of it becomes a piece, mm². */
  readonly size: number
  readonly shapes: readonly Shape[]
}

/**
 * The same for pieces that bring something along, one of each. Throws a `NoRoomError`.
 * @param known what was worked out before for the same gap
 */
export function nestShapes(
  shaped: readonly Shaped[],
  stock: Stock,
  gap: number,
  known: Map<Shape, Stamp> = new Map(),
): readonly NestedSheet[] {
  const stamped = (shape: Shape): Stamp => {
    const stamp = known.get(shape) ?? stampOf(shape, gap)
    known.set(shape, stamp)
    return stamp
  }
  const lain = shaped.map(({ id, size, shapes }): Lain => {
    const stamps = shapes.map(stamped).filter((stamp) => fits(stamp, stock))
    return { id, size, stamps, margin: stock.margin }
  })
  return filled(lain, 1, stock, gap)
}
