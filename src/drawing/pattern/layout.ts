import { lastGood } from '../../paper/plane/search.ts'
import type { Rect } from '../pen/lettering.ts'
import { meet } from '../pen/lettering.ts'
import type { Size } from '../view/camera.ts'

/** A piece on the flat sheet: its least and greatest x and y, mm, and how wide its name is, px. */
export interface Extent {
  readonly id: string
  readonly x: readonly [number, number]
  readonly y: readonly [number, number]
  readonly name: number
}

/** Where the pieces lie beside one another, in one scale. */
export interface Layout {
  /** px per mm. */
  readonly scale: number
  /** How far a piece is shifted in the card's frame, mm: whole squares, so that one grid is true for all. */
  readonly shifts: ReadonlyMap<string, readonly [number, number]>
  /** The middle of all, mm. */
  readonly middle: readonly [number, number]
}

/** The squares' side, mm. */
const SQUARE = 10

const down = (n: number): number => Math.floor(n / SQUARE + 1e-9) * SQUARE

const up = (n: number): number => Math.ceil(n / SQUARE - 1e-9) * SQUARE

interface Cell {
  readonly id: string
  /** Left and top of the cell in the piece's own frame, and its size; whole squares. */
  readonly left: number
  readonly top: number
  readonly width: number
  readonly height: number
}

/** The squares that a piece takes, and its name above it. */
function cellOf({ id, x, y, name }: Extent, scale: number): Cell {
  const wide = up(x[1]) - down(x[0])
  const width = Math.max(wide, up(name / scale))
  return {
    id,
    left: down(x[0]) - down((width - wide) / 2),
    top: up(y[1]),
    width,
    height: up(y[1]) - down(y[0]),
  }
}

interface Row {
  readonly cells: Cell[]
  width: number
  height: number
}

/** The cells in rows no wider than `most`; null if one is wider by itself. */
function rowsOf(cells: readonly Cell[], most: number, gap: number): readonly Row[] | null {
  const rows: Row[] = []
  for (const cell of cells) {
    if (cell.width > most) return null
    const row = rows.at(-1)
    if (row && row.width + gap + cell.width <= most) {
      row.cells.push(cell)
      row.width += gap + cell.width
      row.height = Math.max(row.height, cell.height)
    } else rows.push({ cells: [cell], width: cell.width, height: cell.height })
  }
  return rows
}

/** The arrangement in one scale, `beside` the card or below it; null if the room is too small. */
function arranged(
  all: readonly Extent[],
  room: Size,
  beside: boolean,
  scale: number,
  name: number,
): Layout | null {
  const [card, ...cells] = all.map((one) => cellOf(one, scale))
  if (!card) return null
  const [width, height] = [room.width / scale, room.height / scale]
  const gap = up(14 / scale)
  const head = up(name / scale)
  const rows = rowsOf(cells, beside ? width - card.width - gap : width, gap)
  if (!rows) return null
  const tall = rows.reduce((sum, row) => sum + head + row.height, 0)
  const wide = Math.max(...rows.map((row) => row.width))
  const whole = beside
    ? { width: card.width + gap + wide, height: Math.max(card.height, tall) }
    : { width: Math.max(card.width, wide), height: card.height + tall }
  if (whole.width > width || whole.height > height) return null
  // In the card's frame: x to the right, y up.
  const x0 = beside ? card.left + card.width + gap : card.left
  let y = beside ? card.top - down((card.height - tall) / 2) : card.top - card.height
  const shifts = new Map<string, readonly [number, number]>()
  for (const row of rows) {
    y -= head
    let x = x0 + down((beside ? wide - row.width : card.width - row.width) / 2)
    for (const cell of row.cells) {
      shifts.set(cell.id, [x - cell.left, y - down((row.height - cell.height) / 2) - cell.top])
      x += cell.width + gap
    }
    y -= row.height
  }
  const top = Math.max(card.top, beside ? card.top - down((card.height - tall) / 2) : card.top)
  const left = beside ? card.left : card.left + down((card.width - whole.width) / 2)
  return {
    scale,
    shifts,
    middle: [left + whole.width / 2, top - whole.height / 2] as const,
  }
}

/** How nearly the largest scale is found, as a share of where it can lie. */
const FINE = 4e-6

/**
 * The card (the first) and its glued pieces in one scale, as large as they go in `room` (px), the pieces in rows beside
 * the card or below it, whichever lets them be larger. `name` is the height kept free above each for its name.
 */
export function layOut(all: readonly Extent[], room: Size, name: number): Layout {
  let best: Layout = { scale: 0.05, shifts: new Map(), middle: [0, 0] }
  const most = Math.min(
    ...all.map(({ x, y }) => Math.min(room.width / (x[1] - x[0]), room.height / (y[1] - y[0]))),
  )
  for (const beside of [true, false]) {
    const fits = (scale: number): boolean => {
      const found = arranged(all, room, beside, scale, name)
      if (found) best = found
      return found !== null
    }
    lastGood(fits, best.scale, most, FINE * (most - best.scale))
  }
  return best
}

/** Whether the pieces still have room where they lay: inside the room, and off one another. */
export function roomFor(
  all: readonly Extent[],
  { scale, shifts, middle }: Layout,
  room: Size,
  name: number,
): boolean {
  const taken: Rect[] = []
  return all.every(({ id, x, y, name: named }) => {
    const [dx, dy] = shifts.get(id) ?? [0, named > 0 ? Number.NaN : 0]
    const rect: Rect = [x[0] + dx, y[0] + dy, x[1] - x[0], y[1] - y[0] + (named > 0 ? name / scale : 0)]
    const fits = [room.width, room.height].every((side, k) => {
      const most = side / 2 / scale + SLACK
      const low = (rect[k] as number) - (middle[k] as number)
      return low >= -most && low + (rect[k + 2] as number) <= most
    })
    return fits && !taken.some((other) => meet(rect, other)) && taken.push(rect) > 0
  })
}

/** What a piece may go past the room, mm: the room has a margin. */
const SLACK = 1
