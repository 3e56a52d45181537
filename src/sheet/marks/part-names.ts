/** The names of parts that are cut from the card itself: steps call them by these. Lengths in mm. */
import { polygonContains, polygonHull } from 'd3'
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import type { Piece } from '../../paper/index.ts'
import { nameOf } from '../../paper/index.ts'
import type { Rectangle } from './clip.ts'
import { corners, grown, overlap, runsThrough } from './clip.ts'
import { CAPITAL, TAIL, wordWidth } from './letters.ts'

/** A name is small where it would else find no place. */
const SIZES = [2.5, 2, 1.6] as const

/** Free paper round a name. */
const CLEAR = 0.6

/** Places are tried in such steps. */
const STEP = 0.5

/** A part, and the paper within its lines. */
interface Part {
  readonly id: string
  readonly hull: readonly [number, number][]
  readonly area: number
}

/** What names keep clear of. */
interface Ground {
  readonly lines: readonly (readonly [Point, Point])[]
  readonly taken: readonly Rectangle[]
  readonly printable: Rectangle
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
    return hull ? [{ id, hull, area: areaOf(hull) }] : []
  })
}

const areaOf = (ring: readonly (readonly [number, number])[]): number =>
  Math.abs(
    ring.reduce((sum, [x, y], k) => {
      const [u, v] = ring[(k + 1) % ring.length] as readonly [number, number]
      return sum + x * v - u * y
    }, 0) / 2,
  )

const holds = ({ hull }: Part, box: Rectangle): boolean =>
  corners(box).every(([x, y]) => polygonContains(hull as [number, number][], [x, y]))

/** The box of a name with its middle at a point. */
function boxAt([x, y]: Point, text: string, size: number, turn: 0 | -90): Rectangle {
  const [half, drop, tail] = [wordWidth(text, size) / 2, (CAPITAL * size) / 2, TAIL * size]
  return turn === 0
    ? [x - half, y - drop, x + half, y + drop + tail]
    : [x - drop, y - half, x + drop + tail, y + half]
}

/** Where within a part a name stands free, as near to its middle as may be; in no part that lies within it. */
function placeIn(
  part: Part,
  inner: readonly Part[],
  text: string,
  isFree: (box: Rectangle) => boolean,
): WordMark | null {
  const [xs, ys] = [part.hull.map(([x]) => x), part.hull.map(([, y]) => y)]
  const [l, r, t, b] = [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
  const spots: Point[] = []
  for (let x = l; x <= r; x += STEP) for (let y = t; y <= b; y += STEP) spots.push([x, y])
  const [cx, cy] = [(l + r) / 2, (t + b) / 2]
  spots.sort((p, q) => Math.hypot(p[0] - cx, p[1] - cy) - Math.hypot(q[0] - cx, q[1] - cy))
  for (const size of SIZES)
    for (const turn of [0, -90] as const)
      for (const [x, y] of spots) {
        const box = boxAt([x, y], text, size, turn)
        const isInner = inner.some(({ hull }) =>
          [[x, y] as const, ...corners(box)].some((p) =>
            polygonContains(hull as [number, number][], p as [number, number]),
          ),
        )
        if (isInner || !holds(part, box) || !isFree(grown(box, CLEAR))) continue
        const drop = (CAPITAL * size) / 2
        const half = wordWidth(text, size) / 2
        return {
          ...{ mark: 'word', role: 'note', anchor: 'start', size, text, of: `${part.id}/name` },
          ...(turn === 0 ? { at: [x - half, y + drop] } : { at: [x + drop, y + half], turn }),
        }
      }
  return null
}

/** Names on the card of the parts that are cut from it, where there are several and each finds room for its own. */
export function partNames(
  piece: Piece,
  onPage: (point: Point) => Point,
  { lines, taken, printable }: Ground,
): { readonly marks: readonly WordMark[]; readonly boxes: readonly Rectangle[] } {
  const parts = partsOf(piece, onPage)
  if (parts.length < 2) return { marks: [], boxes: [] }
  const isCrossed = runsThrough(lines)
  const boxes: Rectangle[] = []
  const [left, top, right, bottom] = printable
  const isFree = (box: Rectangle): boolean =>
    box[0] >= left &&
    box[1] >= top &&
    box[2] <= right &&
    box[3] <= bottom &&
    !isCrossed(box) &&
    ![...taken, ...boxes].some((other) => overlap(other, box))
  // The smallest choose first.
  const marks = [...parts]
    .sort((a, b) => a.area - b.area)
    .flatMap((part) => {
      const inner = parts.filter((other) => other.area < part.area)
      const text = nameOf(part.id)
      const mark = placeIn(part, inner, text, isFree)
      if (!mark) return []
      const [x, y] = mark.at
      const wide = wordWidth(text, mark.size)
      const box: Rectangle = mark.turn
        ? [x - CAPITAL * mark.size, y - wide, x + TAIL * mark.size, y]
        : [x, y - CAPITAL * mark.size, x + wide, y + TAIL * mark.size]
      boxes.push(grown(box, CLEAR))
      return [mark]
    })
  return { marks, boxes }
}
