/**
 * Flat pieces side by side on sheets or a roll, by their true outlines. What it knows of an outline is which square
 * millimetres it touches: two pieces that touch no square in common have the gap between them that was asked for.
 */
import { signedArea } from '../paper/plane/convex.ts'
import type { Flat } from '../paper/plane/lay.ts'
import { nearestOn } from '../paper/plane/segment.ts'
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
}

export interface NestedSheet {
  readonly width: number
  /** Of a roll: as much as is used. */
  readonly height: number
  readonly nested: readonly Nested[]
  /** Part of the sheet that becomes pieces, 0 to 1. */
  readonly full: number
}

/** The side of a square, mm. */
const CELL = 1

/** Half of a square's diagonal. */
const HALF_DIAGONAL = Math.SQRT1_2 * CELL

/** A stretch of squares in a row, both ends in it. */
type Stretch = readonly [from: number, to: number]

/** What a turned piece covers: rows from the lowest up, each with its stretches; and where its origin lies. */
interface Stamp {
  readonly rows: readonly (readonly Stretch[])[]
  readonly wide: number
  readonly high: number
  /** From the lower left corner of its box to the piece's origin. */
  readonly origin: Flat
  readonly turn: number
  readonly acrossGrain: boolean
}

/**
 * Marks each square whose middle is nearer to the outline than half the gap and half a diagonal, or within it. Were two
 * outlines nearer to each other than the gap, the square half way between them would be marked for both.
 */
function stampOf(outline: readonly Flat[], turn: number, acrossGrain: boolean, gap: number): Stamp {
  const points = outline.map((p) => turned(p, turn))
  const left = Math.min(...points.map(([x]) => x))
  const low = Math.min(...points.map(([, y]) => y))
  const wide = Math.max(...points.map(([x]) => x)) - left
  const high = Math.max(...points.map(([, y]) => y)) - low
  const reach = gap / 2 + HALF_DIAGONAL
  const pad = Math.ceil(reach / CELL)
  const [columns, count] = [Math.ceil(wide / CELL) + 2 * pad, Math.ceil(high / CELL) + 2 * pad]
  const cells = new Uint8Array(columns * count)
  const at = points.map(([x, y]): Flat => [x - left + pad * CELL, y - low + pad * CELL])
  at.forEach((a, k) => {
    const b = at[(k + 1) % at.length] as Flat
    const span = (u: number, v: number, most: number): readonly [number, number] => [
      Math.max(0, Math.floor((Math.min(u, v) - reach) / CELL)),
      Math.min(most - 1, Math.ceil((Math.max(u, v) + reach) / CELL)),
    ]
    const [i0, i1] = span(a[0], b[0], columns)
    const [k0, k1] = span(a[1], b[1], count)
    for (let row = k0; row <= k1; row++)
      for (let column = i0; column <= i1; column++)
        if (nearestOn({ a, b }, [(column + 0.5) * CELL, (row + 0.5) * CELL]).distance <= reach)
          cells[row * columns + column] = 1
  })
  const rows: Stretch[][] = []
  for (let row = 0; row < count; row++) {
    const y = (row + 0.5) * CELL
    // Where the row's middle line crosses the outline: within, between each first and second (even-odd rule).
    const crossings = at
      .flatMap(([ax, ay], k): number[] => {
        const [bx, by] = at[(k + 1) % at.length] as Flat
        return ay > y !== by > y ? [ax + ((y - ay) / (by - ay)) * (bx - ax)] : []
      })
      .sort((a, b) => a - b)
    for (let k = 0; k + 1 < crossings.length; k += 2)
      for (
        let column = Math.ceil((crossings[k] as number) / CELL - 0.5);
        (column + 0.5) * CELL <= (crossings[k + 1] as number);
        column++
      )
        cells[row * columns + column] = 1
    const stretches: Stretch[] = []
    for (let column = 0; column < columns; column++) {
      if (!cells[row * columns + column]) continue
      const from = column
      while (column + 1 < columns && cells[row * columns + column + 1]) column++
      stretches.push([from, column])
    }
    rows.push(stretches)
  }
  return { rows, wide, high, origin: [-left, -low], turn, acrossGrain }
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
    this.nested.push({
      id,
      turn: stamp.turn,
      at: [x * CELL + right, y * CELL + up],
      acrossGrain: stamp.acrossGrain,
    })
    this.top = Math.max(this.top, y * CELL + stamp.high)
    return true
  }
}

const QUARTERS = [0, 1, 2, 3].map((k) => (k * Math.PI) / 2)

/** Whether a turned outline goes on the stock at all. */
const fits = ({ wide, high }: Stamp, { width, height, margin }: Stock): boolean =>
  wide <= width - 2 * margin + 1e-9 && high <= height - 2 * margin + 1e-9

/** The turns of a piece that fit: with its main fold along the grain if that is asked for and possible, else any. */
function stampsOf(
  { outline, fold }: Blank,
  stock: Stock,
  { gap, keepsGrain }: NestOptions,
): readonly Stamp[] {
  if (keepsGrain && fold !== null) {
    const along = Math.PI / 2 - fold
    const kept = [along, along + Math.PI]
      .map((turn) => stampOf(outline, turn, false, gap))
      .filter((stamp) => fits(stamp, stock))
    if (kept.length > 0) return kept
  }
  const isAcross = (turn: number): boolean => fold !== null && Math.abs(Math.cos(fold + turn)) > 1e-6
  return QUARTERS.map((turn) => stampOf(outline, turn, isAcross(turn), gap)).filter((stamp) =>
    fits(stamp, stock),
  )
}

/** So many sheets are looked through for room. */
const OPEN = 8

/** A piece that no turn brings onto the stock. */
export class NoRoomError extends RangeError {
  readonly id: string
  constructor(id: string) {
    super(`${id} does not go on the sheet`)
    this.id = id
  }
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
  const pad = Math.ceil((options.gap / 2 + HALF_DIAGONAL) / CELL)
  const sizes = new Map(blanks.map(({ id, outline }) => [id, Math.abs(signedArea(outline))]))
  const beds: Bed[] = []
  const order = [...blanks].sort((a, b) => (sizes.get(b.id) ?? 0) - (sizes.get(a.id) ?? 0))
  for (const blank of order) {
    const usual = stampsOf(blank, stock, options)
    const margin = usual.length > 0 ? stock.margin : 0
    const stamps = usual.length > 0 ? usual : stampsOf(blank, { ...stock, margin }, options)
    if (stamps.length === 0) throw new NoRoomError(blank.id)
    for (let copy = 0; copy < copies; copy++) {
      if (beds.slice(-OPEN).some((bed) => bed.put(blank.id, stamps, margin))) continue
      const bed = new Bed(stock, pad)
      bed.put(blank.id, stamps, margin)
      beds.push(bed)
    }
  }
  return beds.map(({ nested, top }): NestedSheet => {
    const height = Number.isFinite(stock.height) ? stock.height : top + stock.margin
    const area = nested.reduce((sum, { id }) => sum + (sizes.get(id) ?? 0), 0)
    return { width: stock.width, height, nested, full: area / (stock.width * height) }
  })
}
