import { insideBox } from '../../paper/plane/clip.ts'
import type { Segment } from '../../paper/plane/segment.ts'
import { edgesOf, isWithin } from '../../paper/plane/segment.ts'
import type { Point, Role, WordMark } from './marks.ts'

/** Left, top, width, height. */
export type Rect = readonly [number, number, number, number]

/** About how wide letters are, in ems. Figures have one width each, as tables are set: a number keeps its place. */
const WIDTHS = [
  [" ,.:;'’`|ijl!", 0.28],
  ['f()[]{}trI-/°', 0.39],
  ['0123456789', 0.635],
  ['mMW%@', 0.87],
  ['wGHNUOQD&CK#=', 0.7],
] as const

/** About how wide a text is set, in the unit of `size`: a little generous, so that words do not touch. */
export function textWidth(text: string, size: number, bold = false): number {
  let em = 0
  for (const c of text) em += WIDTHS.find(([letters]) => letters.includes(c))?.[1] ?? 0.575
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
  /** What says it in fewer words right beside the spot, where all of them would lie on a line or on something else. */
  readonly brief?: string
  readonly role: Role
  readonly size: number
  readonly bold?: boolean
  readonly of?: string
  /** The spot it belongs to. */
  readonly at: Point
  /** Other spots that will do, the better ones first: along the line that it measures. */
  readonly orAt?: readonly Point[]
  /** Left out where it would lie on another word, across a line or on something that it must keep clear of. */
  readonly optional?: boolean
  /** Free space between spot and word. */
  readonly gap: number
  /** Sides in the order wished for; the others come after. */
  readonly sides?: readonly Side[]
}

export type Line = readonly [from: Point, to: Point]

/** What words should keep clear of: rectangles, and lines that they may cover only if they must. */
export interface Obstacles {
  /** Other words, which want air as well. */
  readonly words?: readonly Rect[]
  readonly rects?: readonly Rect[]
  readonly lines?: readonly Line[]
  /** Outlines whose inside is better left free, as the paper of a pop-up. */
  readonly shapes?: readonly (readonly Point[])[]
}

/** How large a dot is that can be dragged, px from its middle: it grows with the words, for a projector. */
export const gripRadius = (text: number): number => Math.max(10, 0.7 * text)

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

function wordAt(wish: Wish, text: string, spot: Point, side: Side, far: number): WordMark {
  const { role, size, bold, of } = wish
  const gap = wish.gap + far
  const x = side.endsWith('right') ? 1 : side.endsWith('left') ? -1 : 0
  const y = side.startsWith('above') ? -1 : side.startsWith('below') ? 1 : 0
  const slant = x !== 0 && y !== 0 ? 0.7 : 1
  const rise = y < 0 ? -DESCENT * size : y > 0 ? ASCENT * size : ((ASCENT - DESCENT) / 2) * size
  const at: Point = [spot[0] + x * gap * slant, spot[1] + y * gap * slant + rise]
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

/** Whether two rectangles share more than an edge. */
export const meet = (a: Rect, b: Rect): boolean => overlap(a, b) > 0

/** How much of the segment lies inside the rectangle. */
function inside([a, b]: Line, [x, y, w, h]: Rect): number {
  const [from, to] = insideBox(a, b, [x, y, x + w, y + h]) ?? [0, 0]
  return (to - from) * Math.hypot(b[0] - a[0], b[1] - a[1])
}

/** Pushes a word back inside the box. */
function kept(word: WordMark, box: Rect): WordMark {
  const [x, y, w, h] = wordRect(word)
  const dx = Math.max(0, box[0] + 2 - x) - Math.max(0, x + w - (box[0] + box[2] - 2))
  const dy = Math.max(0, box[1] + 2 - y) - Math.max(0, y + h - (box[1] + box[3] - 2))
  return { ...word, at: [word.at[0] + dx, word.at[1] + dy] }
}

interface Shape {
  readonly edges: readonly Segment[]
  readonly bounds: Rect
}

/** An outline with the rectangle round it: most words are nowhere near. */
function shapeOf(points: readonly Point[]): Shape {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const [x, y] of points) {
    x0 = Math.min(x0, x)
    x1 = Math.max(x1, x)
    y0 = Math.min(y0, y)
    y1 = Math.max(y1, y)
  }
  return { edges: edgesOf(points), bounds: [x0, y0, x1 - x0, y1 - y0] }
}

/** Places of a word at which it is looked whether a shape lies beneath. */
const PROBES: readonly Point[] = [0.05, 0.2, 0.35, 0.5, 0.65, 0.8, 0.95].flatMap((u): Point[] => [
  [u, 0.15],
  [u, 0.85],
])

/** The share of a rectangle that lies on shapes. */
function covered([x, y, w, h]: Rect, shapes: readonly Shape[]): number {
  const near = shapes.filter(({ bounds }) => overlap([x, y, w, h], bounds) > 0)
  const hits = PROBES.filter(([u, v]) => near.some(({ edges }) => isWithin(edges, [x + u * w, y + v * h])))
  return hits.length / PROBES.length
}

/** Free space round a word, in ems: two words on one line do not read as one, nor two lines as one text. */
const AIR = 0.5

const airy = ([x, y, w, h]: Rect, air: number): Rect => [x - air, y - air, w + 2 * air, h + 2 * air]

/** What the words cost that are left out: a little less than one line across what is said. */
const BRIEF = 30

/** How far from its spot a word may stand, in ems beyond the gap. */
const STEPS = [0, 0.5, 1, 1.6, 2.4, 3.4]

/** Further off, an optional word would seem to belong to something else. */
const NEAR_STEPS = [0, 0.5]

/**
 * Places words one after the other, each beside its spot where it covers least; the first get the best
 * places. Words stay inside the box. What is optional and finds no free place is left out.
 */
export function placeWords(
  wishes: readonly Wish[],
  box: Rect,
  obstacles: Obstacles = {},
): readonly WordMark[] {
  const taken = [...(obstacles.words ?? [])]
  const placed: WordMark[] = []
  const shapes = (obstacles.shapes ?? []).map(shapeOf)
  for (const wish of wishes) {
    const { size } = wish
    // Costs are counted for words of 15 px, so that large ones weigh the same.
    const unit = size / 15
    const sides = [...new Set([...(wish.sides ?? []), ...SIDES])]
    let best: WordMark | null = null
    let least = Infinity
    const spots = [wish.at, ...(wish.orAt ?? [])]
    // A number without its name stands right beside what it measures.
    for (const text of [wish.text, wish.brief ?? wish.text])
      for (const [turn, spot] of spots.entries())
        for (const far of text === wish.brief ? [0] : wish.optional ? NEAR_STEPS : STEPS)
          for (const [rank, side] of sides.entries()) {
            // The place itself costs too much already: whatever it covers, it is not the best.
            let cost = rank * 2 + far * 22 + turn * 3 + (text === wish.text ? 0 : BRIEF)
            if (cost >= least) break
            const free = wordAt(wish, text, spot, side, far * size)
            const word = kept(free, box)
            cost += (4 * Math.hypot(word.at[0] - free.at[0], word.at[1] - free.at[1])) / unit
            if (cost >= least) continue
            const rect = wordRect(word)
            const wide = airy(rect, AIR * size)
            let on = 0
            for (const other of taken) on += 20 * overlap(wide, other)
            // The farther from its spot, the farther from all others: it is taken for what it is nearest to.
            for (const other of obstacles.rects ?? []) on += 6 * overlap(airy(rect, (far * size) / 2), other)
            on /= unit * unit
            cost += on
            if (cost >= least) continue
            let crossed = 0
            // Its width is a generous guess: a line that no more than grazes its side does not cross it.
            const [x, y, w, h] = rect
            const core: Rect = [x + size / GRAZED, y, w - (2 * size) / GRAZED, h]
            for (const line of obstacles.lines ?? []) crossed += inside(line, core)
            if (wish.optional && (on > CLASH || crossed > CROSSED * size)) continue
            cost += (2.5 * crossed) / unit
            if (cost >= least) continue
            cost += 160 * covered(rect, shapes)
            if (cost < least) [least, best] = [cost, word]
          }
    if (best) {
      taken.push(wordRect(best))
      placed.push(best)
    }
  }
  return placed
}

/** What an optional word may cover: a hair of white, and lines of this length in ems, no more than at its corner. */
const CLASH = 60

const CROSSED = 0.3

/** So many times as high is a word as the strips at its sides in which no line counts. */
const GRAZED = 8

/** Whether the words of a dot that is held ride below it: it lies too near the figure's top. */
export const ridesBelow = (y: number, height: number): boolean => y < 0.22 * height
