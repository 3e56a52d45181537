import type { Point, Role, WordMark } from './marks.ts'

/** Left, top, width, height. */
export type Rect = readonly [number, number, number, number]

const NARROW = new Set(" ,.:;'’`|ijl!")
const SLIM = new Set('f()[]{}trI-1/°')
const BROAD = new Set('wGHNUOQD&CK#=')
const BROADEST = new Set('mMW%@')

/** About how wide a text is set, in the unit of `size`: a little generous, so that words do not touch. */
export function textWidth(text: string, size: number, bold = false): number {
  let em = 0
  for (const c of text)
    em += NARROW.has(c) ? 0.28 : SLIM.has(c) ? 0.39 : BROADEST.has(c) ? 0.87 : BROAD.has(c) ? 0.7 : 0.575
  return em * size * (bold ? 1.05 : 1)
}

/** Above and below the base line, in ems. */
const ASCENT = 0.74
const DESCENT = 0.24

/** The place a word takes. */
export function wordRect(word: WordMark): Rect {
  const width = textWidth(word.text, word.size, word.bold)
  const [x, y] = word.at
  const left = word.anchor === 'start' ? x : word.anchor === 'end' ? x - width : x - width / 2
  return [left, y - ASCENT * word.size, width, (ASCENT + DESCENT) * word.size]
}

/** Where a word may stand, seen from the spot it belongs to. */
export type Side =
  | 'right'
  | 'left'
  | 'above'
  | 'below'
  | 'above-right'
  | 'above-left'
  | 'below-right'
  | 'below-left'

export interface Wish {
  readonly text: string
  readonly role: Role
  readonly size: number
  readonly bold?: boolean
  readonly of?: string
  /** The spot it belongs to. */
  readonly at: Point
  /** Free space between spot and word. */
  readonly gap: number
  /** Sides in the order wished for; the others come after. */
  readonly sides?: readonly Side[]
}

/** What words should keep clear of: rectangles, and lines that they may cover only if they must. */
export interface Obstacles {
  readonly rects?: readonly Rect[]
  readonly lines?: readonly (readonly [Point, Point])[]
}

const SIDES: readonly Side[] = [
  'right',
  'above-right',
  'below-right',
  'left',
  'above-left',
  'below-left',
  'above',
  'below',
]

function wordAt(wish: Wish, side: Side, far: number): WordMark {
  const { text, role, size, bold, of } = wish
  const gap = wish.gap + far
  const x = side.endsWith('right') ? 1 : side.endsWith('left') ? -1 : 0
  const y = side.startsWith('above') ? -1 : side.startsWith('below') ? 1 : 0
  const slant = x !== 0 && y !== 0 ? 0.7 : 1
  const rise = y < 0 ? -DESCENT * size : y > 0 ? ASCENT * size : ((ASCENT - DESCENT) / 2) * size
  const at: Point = [wish.at[0] + x * gap * slant, wish.at[1] + y * gap * slant + rise]
  return {
    mark: 'word',
    at,
    text,
    role,
    anchor: x > 0 ? 'start' : x < 0 ? 'end' : 'middle',
    size,
    ...(bold ? { bold } : {}),
    ...(of === undefined ? {} : { of }),
  }
}

const overlap = (a: Rect, b: Rect): number =>
  Math.max(0, Math.min(a[0] + a[2], b[0] + b[2]) - Math.max(a[0], b[0])) *
  Math.max(0, Math.min(a[1] + a[3], b[1] + b[3]) - Math.max(a[1], b[1]))

/** How much of the segment lies inside the rectangle. Source: Liang and Barsky 1984. */
function inside([a, b]: readonly [Point, Point], [x, y, w, h]: Rect): number {
  const [ax, ay] = a
  const [bx, by] = b
  // Most segments are nowhere near.
  if ((ax < x && bx < x) || (ay < y && by < y)) return 0
  if ((ax > x + w && bx > x + w) || (ay > y + h && by > y + h)) return 0
  const [dx, dy] = [bx - ax, by - ay]
  let from = 0
  let to = 1
  if (dx !== 0) {
    const [t, u] = [(x - ax) / dx, (x + w - ax) / dx]
    from = Math.max(from, Math.min(t, u))
    to = Math.min(to, Math.max(t, u))
  }
  if (dy !== 0) {
    const [t, u] = [(y - ay) / dy, (y + h - ay) / dy]
    from = Math.max(from, Math.min(t, u))
    to = Math.min(to, Math.max(t, u))
  }
  return to > from ? (to - from) * Math.hypot(dx, dy) : 0
}

/** Pushes a word back inside the box. */
function kept(word: WordMark, box: Rect): WordMark {
  const [x, y, w, h] = wordRect(word)
  const dx = Math.max(0, box[0] + 2 - x) - Math.max(0, x + w - (box[0] + box[2] - 2))
  const dy = Math.max(0, box[1] + 2 - y) - Math.max(0, y + h - (box[1] + box[3] - 2))
  return dx === 0 && dy === 0 ? word : { ...word, at: [word.at[0] + dx, word.at[1] + dy] }
}

/**
 * Places words one after the other, each beside its spot where it covers least; the first get the best
 * places. Words stay inside the box.
 */
export function placeWords(
  wishes: readonly Wish[],
  box: Rect,
  obstacles: Obstacles = {},
): readonly WordMark[] {
  const taken: Rect[] = []
  return wishes.map((wish) => {
    const sides = [...(wish.sides ?? []), ...SIDES.filter((side) => !wish.sides?.includes(side))]
    let best: WordMark | null = null
    let least = Number.POSITIVE_INFINITY
    for (const far of [0, wish.size, 2 * wish.size]) {
      sides.forEach((side, rank) => {
        // The place itself costs too much already: whatever it covers, it is not the best.
        if (rank * 2 + far * 3 >= least) return
        const free = wordAt(wish, side, far)
        const word = kept(free, box)
        const rect = wordRect(word)
        let cost = rank * 2 + far * 3 + 4 * Math.hypot(word.at[0] - free.at[0], word.at[1] - free.at[1])
        for (const other of taken) cost += 20 * overlap(rect, other)
        for (const other of obstacles.rects ?? []) cost += 6 * overlap(rect, other)
        for (const line of obstacles.lines ?? []) cost += 2.5 * inside(line, rect)
        if (cost < least) {
          least = cost
          best = word
        }
      })
    }
    const word = best ?? wordAt(wish, 'right', 0)
    taken.push(wordRect(word))
    return word
  })
}
