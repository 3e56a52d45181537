/** What the readings of a class say together, whatever each hand did. Lengths in mm, angles in degrees. */
import type { Sheet } from './class.ts'
import type { Readings } from './readings.ts'
import type { Measured } from './spread.ts'
import { readingOf } from './spread.ts'

export interface Together {
  readonly count: number
  /** The mean of reading less model. */
  readonly off: number
  /** The root of the mean square of what is left when that mean is taken away. */
  readonly scatter: number
  /** The opening at which all cards would have been read, where that explains the readings much better; else null. */
  readonly opening: number | null
}

/** So far from the opening it is looked for, and in such steps. */
const REACH = 30

const STEP = 0.5

/** An opening nearer than this to the right one is right: nobody holds a card better. Common practice, no source. */
const HELD = 2

/** It must leave less than this share of the squares. */
const BETTER = 0.5

const mean = (values: readonly number[]): number =>
  values.reduce((sum, v) => sum + v, 0) / Math.max(1, values.length)

const squares = (values: readonly number[]): number => values.reduce((sum, v) => sum + v * v, 0)

/** All readings of a class. `count` 0: nothing was read. */
export function together(sheets: readonly Sheet[], measured: Measured, readings: Readings): Together {
  const read = sheets.flatMap((sheet) => {
    const value = readings[sheet.code]
    return value === undefined || !Number.isFinite(sheet.reads) ? [] : [{ sheet, value }]
  })
  const offs = read.map(({ sheet, value }) => value - sheet.reads)
  const off = mean(offs)
  const left = (opening: number): number =>
    squares(
      read.map(
        ({ sheet: { design, size }, value }) =>
          value - readingOf(design, { ...measured, opening }, size ?? 0),
      ),
    )
  const { opening } = measured
  let best = { opening, left: squares(offs) }
  if (read.length > 2)
    for (let at = Math.max(1, opening - REACH); at <= Math.min(179, opening + REACH); at += STEP) {
      const here = left(at)
      if (here < best.left) best = { opening: at, left: here }
    }
  const isBetter = best.left < BETTER * squares(offs) && Math.abs(best.opening - opening) >= HELD
  return {
    count: read.length,
    off: read.length === 0 ? 0 : off,
    scatter: Math.sqrt(mean(offs.map((one) => (one - off) ** 2))),
    opening: isBetter ? best.opening : null,
  }
}
