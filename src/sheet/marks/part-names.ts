/** The names of parts that are cut from the card itself: steps call them by these. Lengths in mm. */
import { polygonArea, polygonContains, polygonHull } from 'd3'
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import type { Piece } from '../../paper/index.ts'
import { nameOf } from '../../paper/index.ts'
import type { Rectangle } from './clip.ts'
import { corners, grown, overlap, runsThrough } from './clip.ts'
import { boxAt } from './lettering.ts'
import { CAPITAL, wordWidth } from './letters.ts'
import type { Stretch } from './stretches.ts'

/** In which size a name is tried, and how much paper stays free between it and folds and cuts: nearer it reads as a part of it. */
interface Manner {
  readonly size: number
  readonly fold: number
  readonly cut: number
}

/** Capitals of 2 mm can be read at arm's length: common practice, no source. Small and near a line only where there is no other room. */
const MANNERS: readonly Manner[] = [
  { size: 3, fold: 2, cut: 1.5 },
  { size: 2.5, fold: 2, cut: 1.5 },
  { size: 2.5, fold: 1, cut: 1 },
  { size: 2, fold: 1.2, cut: 1 },
  { size: 2, fold: 0.6, cut: 0.6 },
  { size: 1.6, fold: 0.6, cut: 0.6 },
]

/** Free paper round a name on all sides. */
const CLEAR = 0.6

/** Places are tried in such steps. */
const STEP = 0.5

/** A part, and the paper within its lines. */
interface Part {
  readonly id: string
  readonly hull: [number, number][]
  readonly area: number
}

/** What names keep clear of. */
interface Ground {
  readonly folds: readonly Stretch[]
  readonly cuts: readonly Stretch[]
  /** All other lines. */
  readonly lines: readonly Stretch[]
  readonly taken: readonly Rectangle[]
  readonly printable: Rectangle
  /** Small shapes of the picture: names leave them free where there is other room. */
  readonly small: readonly Rectangle[]
}

/** What folds in the card; slits alone are for tabs of other pieces. */
const folds = (piece: Piece): ReadonlySet<string> =>
  new Set(
    piece.lines.flatMap(({ kind, of }) =>
      of.includes('/') && (kind === 'valley' || kind === 'mountain') ? [of.slice(0, of.indexOf('/'))] : [],
    ),
  )

function partsOf(piece: Piece, onPage: (point: Point) => Point): readonly Part[] {
  const cut = folds(piece)
  const points = new Map<string, [number, number][]>()
  for (const { kind, of, points: run } of piece.lines) {
    const [id = ''] = of.split('/')
    if (kind === 'glue' || !cut.has(id)) continue
    const known = points.get(id) ?? []
    known.push(...run.map((point): [number, number] => [...onPage(point)] as [number, number]))
    points.set(id, known)
  }
  return [...points].flatMap(([id, all]): Part[] => {
    const hull = polygonHull(all)
    return hull ? [{ id, hull, area: Math.abs(polygonArea(hull)) }] : []
  })
}

const holds = ({ hull }: Part, box: Rectangle): boolean =>
  corners(box).every(([x, y]) => polygonContains(hull, [x, y]))

const touches = ({ hull }: Part, middle: Point, box: Rectangle): boolean =>
  [middle, ...corners(box)].some(([x, y]) => polygonContains(hull, [x, y]))

/** A part with what it is called, and what lies within it. */
interface Named {
  readonly part: Part
  readonly text: string
  readonly inner: readonly Part[]
}

type IsFree = (box: Rectangle, manner: Manner) => boolean

/** Where a name's middle is. */
interface Spot {
  readonly at: Point
  readonly manner: Manner
  readonly turn: 0 | -90
}

const boxOf = ({ text }: Named, { at, manner: { size }, turn }: Spot): Rectangle =>
  boxAt(at, wordWidth(text, size), size, turn)

function mayStand(named: Named, spot: Spot, isFree: IsFree): boolean {
  const box = boxOf(named, spot)
  // Most places fail by the first of these; looking at all that lies within is what costs.
  return (
    holds(named.part, box) &&
    isFree(box, spot.manner) &&
    !named.inner.some((one) => touches(one, spot.at, box))
  )
}

/** Where within a part a name may stand free, as near to its middle as may be; in no part that lies within it. */
function spotIn({ part }: Named, isGood: (spot: Spot) => boolean): Spot | null {
  const [xs, ys] = [part.hull.map(([x]) => x), part.hull.map(([, y]) => y)]
  const [l, r, t, b] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const points: Point[] = []
  for (let x = l; x <= r; x += STEP) for (let y = t; y <= b; y += STEP) points.push([x, y])
  const [cx, cy] = [(l + r) / 2, (t + b) / 2]
  points.sort((p, q) => Math.hypot(p[0] - cx, p[1] - cy) - Math.hypot(q[0] - cx, q[1] - cy))
  for (const manner of MANNERS)
    for (const turn of [0, -90] as const)
      for (const at of points) if (isGood({ at, manner, turn })) return { at, manner, turn }
  return null
}

function wordAt({ part, text }: Named, { at: [x, y], manner: { size }, turn }: Spot): WordMark {
  const drop = (CAPITAL * size) / 2
  const half = wordWidth(text, size) / 2
  return {
    ...{ mark: 'word', role: 'note', anchor: 'start', size, text, of: `${part.id}/name` },
    ...(turn === 0 ? { at: [x - half, y + drop] } : { at: [x + drop, y + half], turn }),
  }
}

/** Nearer than this to where its mirror image is, a corner is that, mm. */
const SAME = 0.05

/** Whether a part is the mirror image of another. */
const areTwins = (a: Part, b: Part, mirrored: (point: Point) => Point): boolean =>
  a.hull.length === b.hull.length &&
  a.hull.every((point) => {
    const [x, y] = mirrored(point)
    return b.hull.some(([u, v]) => Math.hypot(u - x, v - y) < SAME)
  })

/** Names on the card of the parts that are cut from it, where each finds room for its own. */
export function partNames(
  piece: Piece,
  onPage: (point: Point) => Point,
  { folds, cuts, lines, taken, printable, small }: Ground,
): { readonly marks: readonly WordMark[]; readonly boxes: readonly Rectangle[] } {
  const parts = partsOf(piece, onPage)
  if (parts.length === 0) return { marks: [], boxes: [] }
  const [isOnFold, isOnCut, isOnLine] = [runsThrough(folds), runsThrough(cuts), runsThrough(lines)]
  const boxes: Rectangle[] = []
  const [left, top, right, bottom] = printable
  const isFree: IsFree = (own, { fold, cut }) => {
    const box = grown(own, CLEAR)
    return (
      box[0] >= left &&
      box[1] >= top &&
      box[2] <= right &&
      box[3] <= bottom &&
      !isOnFold(grown(own, fold)) &&
      !isOnCut(grown(own, cut)) &&
      !isOnLine(box) &&
      ![...taken, ...boxes].some((other) => overlap(other, box))
    )
  }
  const isBare: IsFree = (own, manner) =>
    isFree(own, manner) && !small.some((one) => overlap(one, grown(own, CLEAR)))
  const ways = small.length > 0 ? [isBare, isFree] : [isFree]
  const axis = onPage([0, 0])[0]
  const mirrored = ([x, y]: Point): Point => [2 * axis - x, y]
  // The smallest choose first.
  const waiting = [...parts]
    .sort((a, b) => a.area - b.area)
    .map((part): Named => {
      return { part, text: nameOf(part.id), inner: parts.filter((other) => other.area < part.area - SAME) }
    })
  const marks: WordMark[] = []
  const put = (named: Named, spot: Spot): void => {
    marks.push(wordAt(named, spot))
    boxes.push(grown(boxOf(named, spot), CLEAR))
  }
  const over = (spot: Spot): Spot => ({ ...spot, at: mirrored(spot.at) })
  for (let named = waiting.shift(); named; named = waiting.shift()) {
    const own = named
    // Two parts that are each other's mirror image have their names alike.
    const k = waiting.findIndex(({ part }) => areTwins(own.part, part, mirrored))
    const twin = waiting[k]
    const both =
      twin &&
      firstOf(ways, (is) => spotIn(own, (spot) => mayStand(own, spot, is) && mayStand(twin, over(spot), is)))
    if (twin && both) {
      put(own, both)
      put(twin, over(both))
      waiting.splice(k, 1)
      continue
    }
    const spot = firstOf(ways, (is) => spotIn(own, (one) => mayStand(own, one, is)))
    if (spot) put(own, spot)
  }
  return { marks, boxes }
}

/** The first thing that one of these ways finds. */
function firstOf<W, T>(ways: readonly W[], find: (way: W) => T | null): T | null {
  for (const way of ways) {
    const found = find(way)
    if (found !== null) return found
  }
  return null
}
