import type { Piece } from '../../paper/index.ts'
import type { Rectangle } from '../marks/clip.ts'
import type { SheetFace } from '../marks/instructions.ts'
import type { Place } from '../marks/piece-marks.ts'
import { RULER_WIDTH } from '../marks/rulers.ts'
import type { Block, SheetMark } from '../marks/setting.ts'
import { moved, stack } from '../marks/setting.ts'
import type { Box, Turned } from './fit.ts'
import { boxOf, SAFE } from './fit.ts'

/** From the paper's edge to words, mm. */
export const MARGIN = 8

/** Between the card and what stands beside it, mm. */
export const GAP = 7

const SECTION_GAP = 5.5

/** A column narrower than this is no pleasure to read, nor one that is wider. */
const COLUMN = { least: 40, most: 72 }

/** A free rectangle that blocks fill from the top. */
export interface Cell {
  readonly x: number
  readonly y: number
  readonly width: number
  readonly bottom: number
}

/** Where a piece lies on a turn of the paper, and what room it leaves. */
export interface Bed {
  readonly turn: Turned
  readonly place: Place
  /** The piece's box on the page. */
  readonly card: Rectangle
  readonly printable: Rectangle
  /** The margin down the left; if there is none, two cells above the card; and the strip below it. */
  readonly column: Cell | null
  readonly top: readonly [title: Cell, rulers: Cell] | null
  readonly strip: readonly Cell[]
}

export const printableOf = ({ width, height }: Turned): Rectangle => [SAFE, SAFE, width - SAFE, height - SAFE]

/** Puts the left top corner of a piece's box at x, y. */
export const placeAt = (box: Box, x: number, y: number, face: SheetFace): Place => {
  const mirrored = face === 'outside'
  return { origin: [x + (mirrored ? box.right : -box.left), y + box.bottom], mirrored }
}

/** Splits the strip into a cell for the check lines and columns beside it. */
function stripCells({ x, y, width, bottom }: Cell): readonly Cell[] {
  if (bottom - y < 7 || width < COLUMN.least) return []
  const rest = width - RULER_WIDTH - GAP
  if (rest < COLUMN.least) return [{ x, y, width, bottom }]
  const count = Math.max(1, Math.floor((rest + GAP) / (COLUMN.most - 14 + GAP)))
  const each = (rest - (count - 1) * GAP) / count
  const columns = Array.from({ length: count }, (_, k): Cell => {
    return { x: x + RULER_WIDTH + GAP + k * (each + GAP), y, width: each, bottom }
  })
  return [{ x, y, width: RULER_WIDTH, bottom }, ...columns]
}

/** The bed of a piece. `head` is what stands above the card where no column can hold it. */
export function bedFor(piece: Piece, turn: Turned, head: (width: number) => Block, face: SheetFace): Bed {
  const box = boxOf(piece.outline)
  const [w, h] = [box.right - box.left, box.bottom - box.top]
  const { width: W, height: H } = turn
  const [spareX, spareY] = [W - w, H - h]
  const free = spareX - 2 * MARGIN - GAP
  const columnWidth = free >= COLUMN.least ? Math.min(free, COLUMN.most) : 0
  const titleWidth = W - 2 * MARGIN - GAP - RULER_WIDTH
  const headHeight = titleWidth > 0 ? head(titleWidth).height : Number.POSITIVE_INFINITY
  const headed = columnWidth === 0 && spareY >= 2 * MARGIN + headHeight + GAP
  // A card that fills the paper lies in its middle: the edge of the paper is its edge.
  const x = columnWidth > 0 ? MARGIN + columnWidth + GAP : spareX / 2
  // What is trimmed off above and below is too narrow for words, unless all of it is below.
  const isHigh = columnWidth === 0 && spareY >= 2 * SAFE && spareY < 2 * MARGIN
  const y = headed ? MARGIN + headHeight + GAP : isHigh ? SAFE : Math.min(MARGIN, spareY / 2)
  const stripX = columnWidth > 0 ? x : MARGIN
  const title: Cell = { x: MARGIN, y: MARGIN, width: titleWidth, bottom: y - 2 }
  return {
    turn,
    place: placeAt(box, x, y, face),
    card: [x, y, x + w, y + h],
    printable: printableOf(turn),
    column: columnWidth > 0 ? { x: MARGIN, y: MARGIN, width: columnWidth, bottom: H - MARGIN } : null,
    top: headed ? [title, { ...title, x: W - MARGIN - RULER_WIDTH, width: RULER_WIDTH }] : null,
    strip: stripCells({ x: stripX, y: y + h + GAP + 0.5, width: W - MARGIN - stripX, bottom: H - MARGIN }),
  }
}

/** Cells that fill up: each block goes to the top of the first cell that holds it. */
export class Shelves {
  private readonly tops = new Map<Cell, number>()

  /** The block's marks where they stand, or null if no cell holds it. */
  put(
    block: (width: number) => Block | null,
    cells: readonly Cell[],
    gap = SECTION_GAP,
    lowest = Number.POSITIVE_INFINITY,
  ): SheetMark[] | null {
    for (const cell of cells) {
      const top = this.tops.get(cell) ?? cell.y
      const made = block(cell.width)
      if (!made || made.height > Math.min(cell.bottom, lowest) - top + 1e-9) continue
      this.tops.set(cell, top + made.height + gap)
      return made.marks.map((mark) => moved(mark, cell.x, top))
    }
    return null
  }

  /**
   * Rows that may be parted between cells: all of them where they stand, or null if there is no room for all.
   * @param again their label where they go on: in another cell they might be taken for words of what lies there
   * @param high each cell is filled so far and no farther, mm
   */
  flow(
    rows: readonly Block[],
    cells: readonly Cell[],
    gap: number,
    again: Block | null,
    high = Number.POSITIVE_INFINITY,
  ): SheetMark[] | null {
    const before = new Map(this.tops)
    const marks: SheetMark[] = []
    let k = 0
    let isFresh = false
    for (const row of rows) {
      let found: SheetMark[] | null = null
      for (let cell = cells[k]; !found && cell; cell = cells[k]) {
        const goesOn = isFresh && marks.length > 0
        const lowest = (before.get(cell) ?? cell.y) + high
        found = this.put(() => (goesOn && again ? stack([again, row], gap) : row), [cell], gap, lowest)
        isFresh = !found
        if (!found) k += 1
      }
      if (!found) {
        this.tops.clear()
        for (const [cell, top] of before) this.tops.set(cell, top)
        return null
      }
      marks.push(...found)
    }
    return marks
  }

  /** The same, each cell filled as far as the next: no last row is alone in its cell. */
  evenly(
    rows: readonly Block[],
    cells: readonly Cell[],
    gap: number,
    again: Block | null,
  ): SheetMark[] | null {
    const all = rows.reduce((sum, row) => sum + row.height + gap, 0)
    for (let high = all / cells.length; high < all; high += 2) {
      const found = this.flow(rows, cells, gap, again, high)
      if (found) return found
    }
    return this.flow(rows, cells, gap, again)
  }
}
