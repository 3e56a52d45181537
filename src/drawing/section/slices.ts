import type { Surface, Vec3 } from '../../paper/index.ts'

/** What a plane square to the gutter cuts from one leaf of the paper: a straight piece, mm. */
export interface Slice {
  readonly panel: string
  readonly owner: number
  readonly leaf: number
  readonly from: Vec3
  readonly to: Vec3
}

/** Pieces nearer than this are one, mm. */
const TOUCHING = 1e-6

/** The two points where a convex outline crosses y = station; null if it does not. */
function crossing(points: readonly Vec3[], station: number): readonly [Vec3, Vec3] | null {
  const found: Vec3[] = []
  points.forEach((p, k) => {
    const q = points[(k + 1) % points.length] as Vec3
    // Half open: a corner on the plane counts with what lies beyond it, so it is never met twice.
    if (p[1] < station === q[1] < station) return
    const t = (station - p[1]) / (q[1] - p[1])
    found.push([p[0] + t * (q[0] - p[0]), station, p[2] + t * (q[2] - p[2])])
  })
  const [a, b] = found
  return a && b ? [a, b] : null
}

/** The pieces of paper that a plane square to the gutter meets, `station` mm from the reader's end. */
export function slices(paper: readonly Surface[], station: number): readonly Slice[] {
  const byLeaf = new Map<number, { surface: Surface; pairs: (readonly [Vec3, Vec3])[] }>()
  for (const surface of paper) {
    const pair = crossing(surface.points, station)
    if (!pair) continue
    const known = byLeaf.get(surface.leaf)
    if (known) known.pairs.push(pair)
    else byLeaf.set(surface.leaf, { surface, pairs: [pair] })
  }
  return [...byLeaf.values()].flatMap(({ surface: { panel, owner, leaf }, pairs }) => {
    // All pairs lie on one line: order them along it and join those that touch.
    const [origin, other] = pairs[0] as readonly [Vec3, Vec3]
    const long = Math.hypot(other[0] - origin[0], other[2] - origin[2]) || 1
    const way = [(other[0] - origin[0]) / long, (other[2] - origin[2]) / long] as const
    const along = (p: Vec3): number => (p[0] - origin[0]) * way[0] + (p[2] - origin[2]) * way[1]
    const sorted = pairs
      .map(([a, b]) => (along(a) <= along(b) ? { from: a, to: b } : { from: b, to: a }))
      .sort((a, b) => along(a.from) - along(b.from))
    const joined: { from: Vec3; to: Vec3 }[] = []
    for (const piece of sorted) {
      const last = joined[joined.length - 1]
      if (last && along(piece.from) - along(last.to) < TOUCHING) {
        if (along(piece.to) > along(last.to)) last.to = piece.to
      } else joined.push({ ...piece })
    }
    return joined
      .filter(({ from, to }) => along(to) - along(from) > TOUCHING)
      .map((piece): Slice => ({ panel, owner, leaf, ...piece }))
  })
}
