/** The names of parts that are cut from the card itself: steps call them by these. Lengths in mm. */
import { polygonArea, polygonContains, polygonHull } from 'd3'
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import type { Piece } from '../../paper/index.ts'
import { nameOf } from '../../paper/index.ts'
import type { Rectangle } from './clip.ts'
import { corners, grown, overlap, runsThrough } from './clip.ts'
import { boxAt } from './lettering.ts'
import { CAPITAL, wordWidth } from './letters.ts'
import { extent } from './setting.ts'

/** A name is small where it would else find no place. */
const SIZES = [2.5, 2, 1.6] as const

/** Free paper round a name. */
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
  readonly lines: readonly (readonly [Point, Point])[]
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
        const box = boxAt([x, y], wordWidth(text, size), size, turn)
        // Most places fail by the first of these; looking at all that lies within is what costs.
        if (!holds(part, box) || !isFree(grown(box, CLEAR)) || inner.some((one) => touches(one, [x, y], box)))
          continue
        const drop = (CAPITAL * size) / 2
        const half = wordWidth(text, size) / 2
        return {
          ...{ mark: 'word', role: 'note', anchor: 'start', size, text, of: `${part.id}/name` },
          ...(turn === 0 ? { at: [x - half, y + drop] } : { at: [x + drop, y + half], turn }),
        }
      }
  return null
}

/** Names on the card of the parts that are cut from it, where each finds room for its own. */
export function partNames(
  piece: Piece,
  onPage: (point: Point) => Point,
  { lines, taken, printable, small }: Ground,
): { readonly marks: readonly WordMark[]; readonly boxes: readonly Rectangle[] } {
  const parts = partsOf(piece, onPage)
  if (parts.length === 0) return { marks: [], boxes: [] }
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
      const isBare = (box: Rectangle): boolean => isFree(box) && !small.some((one) => overlap(one, box))
      const mark =
        (small.length > 0 ? placeIn(part, inner, text, isBare) : null) ?? placeIn(part, inner, text, isFree)
      if (!mark) return []
      boxes.push(grown(extent(mark), CLEAR))
      return [mark]
    })
  return { marks, boxes }
}
