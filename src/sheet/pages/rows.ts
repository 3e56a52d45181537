/** Pieces in rows by their boxes, and the free paper beside those. Lengths in mm. */
import type { Rectangle } from '../marks/clip.ts'
import type { Cell } from './bed.ts'
import { GAP, MARGIN } from './bed.ts'
import type { Turned } from './fit.ts'
import type { Cut } from './named-piece.ts'

/** Between pieces with all that is written beside them. */
export const APART = 5

/** A column of words is no narrower than this. */
export const LEAST = 50

/** A piece with its left top corner at x, y. */
export interface Spot {
  readonly cut: Cut
  readonly x: number
  readonly y: number
}

/** Rows of pieces, the highest first, on as many pages as they take. */
export function shelved(cuts: readonly Cut[], width: number, height: number): readonly (readonly Spot[])[] {
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

/** Columns of words in a rectangle, as many as are pleasant to read. */
export function columnsIn([left, top, right, bottom]: Rectangle, usual: number): readonly Cell[] {
  const whole = right - left
  const count = Math.max(1, Math.min(4, Math.floor((whole + GAP) / (usual + GAP))))
  const width = (whole - (count - 1) * GAP) / count
  if (width < LEAST) return []
  return Array.from({ length: count }, (_, k) => ({ x: left + k * (width + GAP), y: top, width, bottom }))
}

/** The free paper of a page of rows: beside all rows or the last, and below them. */
export function besideRows(
  spots: readonly Spot[],
  { width }: Turned,
  foot: number,
  usual: number,
): readonly Cell[] {
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

/** Whether one cell is read before another: at its left, or over it. */
const isBefore = (a: Cell, b: Cell): boolean =>
  a.x + a.width <= b.x || (b.x + b.width > a.x && (a.y < b.y || (a.y === b.y && a.x < b.x)))

/** Cells as they are read: column by column from the left, each from its top. */
export function asRead(cells: readonly Cell[]): readonly Cell[] {
  const waiting = [...cells].sort((a, b) => a.x - b.x || a.y - b.y)
  const read: Cell[] = []
  while (waiting.length > 0) {
    const k = waiting.findIndex((one) => waiting.every((other) => other === one || !isBefore(other, one)))
    read.push(...waiting.splice(Math.max(0, k), 1))
  }
  return read
}
