/** Paper in squares: which of them outlines touch, and where there are none. Lengths in mm. */
import type { Flat } from '../paper/plane/lay.ts'

/** The side of a square, mm. */
export const CELL = 1

/** Half of a square's diagonal. */
export const HALF_DIAGONAL = Math.SQRT1_2 * CELL

/** A raster of squares, row by row. */
export interface Raster {
  readonly cells: Uint8Array
  readonly columns: number
  readonly count: number
}

/**
 * Marks each square whose middle is nearer to an outline than half the gap and half a diagonal, or within it. Were two
 * outlines nearer to each other than the gap, the square half way between them would be marked for both.
 */
export function mark({ cells, columns, count }: Raster, at: readonly Flat[], reach: number): void {
  at.forEach((a, k) => {
    const b = at[(k + 1) % at.length] as Flat
    const span = (u: number, v: number, most: number): readonly [number, number] => [
      Math.max(0, Math.floor((Math.min(u, v) - reach) / CELL)),
      Math.min(most - 1, Math.ceil((Math.max(u, v) + reach) / CELL)),
    ]
    const [i0, i1] = span(a[0], b[0], columns)
    const [k0, k1] = span(a[1], b[1], count)
    const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
    const long = dx * dx + dy * dy
    // Written out: this is most of the work.
    for (let row = k0; row <= k1; row++) {
      const y = (row + 0.5) * CELL - a[1]
      for (let column = i0; column <= i1; column++) {
        const x = (column + 0.5) * CELL - a[0]
        const t = long > 0 ? Math.max(0, Math.min(1, (x * dx + y * dy) / long)) : 0
        const [u, v] = [x - t * dx, y - t * dy]
        if (u * u + v * v <= reach * reach) cells[row * columns + column] = 1
      }
    }
  })
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
  }
}

/** A rectangle of free paper, mm. */
export interface Free {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
}

/**
 * The largest rectangle in a room (its lower left corner at 0, 0) that keeps `clear` of all areas; null if none is as
 * large as `least`.
 */
export function largestFree(
  areas: readonly (readonly Flat[])[],
  room: { readonly width: number; readonly height: number },
  clear: number,
  least: { readonly width: number; readonly height: number },
): Free | null {
  const [columns, count] = [Math.floor(room.width / CELL), Math.floor(room.height / CELL)]
  if (columns < 1 || count < 1) return null
  const raster: Raster = { cells: new Uint8Array(columns * count), columns, count }
  for (const area of areas) mark(raster, area, clear + HALF_DIAGONAL)
  let best: Free | null = null
  // Of each row: how far free paper reaches back from it, column by column; over that the widest steps of a stair.
  const deep = new Int32Array(columns)
  for (let row = 0; row < count; row++) {
    const open: { from: number; deep: number }[] = []
    for (let column = 0; column <= columns; column++) {
      const here =
        column === columns ? 0 : raster.cells[row * columns + column] ? 0 : (deep[column] as number) + 1
      if (column < columns) deep[column] = here
      let from = column
      for (let last = open.at(-1); last && last.deep >= here; last = open.at(-1)) {
        open.pop()
        from = last.from
        const width = (column - from) * CELL
        const height = last.deep * CELL
        const isLarge = width >= least.width && height >= least.height
        if (isLarge && (!best || width * height > best.width * best.height))
          best = { x: from * CELL, y: (row + 1) * CELL - height, width, height }
      }
      open.push({ from, deep: here })
    }
  }
  return best
}
