import type { Part } from '../faces.ts'
import type { Flat } from '../types.ts'

/**
 * Two flat points or lines nearer than this are one, mm. Rounding leaves some 1e-13 mm on a card of A3;
 * a pencil line is 0.5 mm wide.
 */
export const SAME = 1e-9

/**
 * Error bound of `sideOf`, in units of the terms that it subtracts.
 * Source: J. R. Shewchuk, "Adaptive precision floating-point arithmetic", 1997, the bound ccwerrboundA.
 */
const SIDE_ERROR = (3 + 16 * Number.EPSILON) * Number.EPSILON

/**
 * On which side of the line a-b a point lies: above 0 left, below 0 right (across to the right, along
 * upwards), 0 on it or too near to tell. Twice the area of the triangle, mm².
 */
export function sideOf(a: Flat, b: Flat, p: Flat): number {
  const one = (b[0] - a[0]) * (p[1] - a[1])
  const two = (b[1] - a[1]) * (p[0] - a[0])
  const area = one - two
  return Math.abs(area) <= SIDE_ERROR * (Math.abs(one) + Math.abs(two)) ? 0 : area
}

export interface Segment {
  readonly a: Flat
  readonly b: Flat
}

/** The edges of a closed outline. */
export const edgesOf = (outline: readonly Flat[]): Segment[] =>
  outline.map((a, k) => ({ a, b: outline[(k + 1) % outline.length] as Flat }))

/** The point of a segment nearest to `p`, and how far off it is, mm. */
export function nearestOn({ a, b }: Segment, p: Flat): { distance: number; at: Flat } {
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const size = x * x + y * y
  const t = size > 0 ? Math.max(0, Math.min(1, ((p[0] - a[0]) * x + (p[1] - a[1]) * y) / size)) : 0
  const at: Flat = t === 1 ? b : [a[0] + t * x, a[1] + t * y]
  return { distance: Math.hypot(p[0] - at[0], p[1] - at[1]), at }
}

/** Where two segments cross, both ends included; null if they do not, or run along each other. */
export function crossing(s: Segment, t: Segment): Flat | null {
  const [a, b] = [sideOf(t.a, t.b, s.a), sideOf(t.a, t.b, s.b)]
  if (a * b > 0 || a === b) return null
  if (sideOf(s.a, s.b, t.a) * sideOf(s.a, s.b, t.b) > 0) return null
  const k = a / (a - b)
  return [s.a[0] + k * (s.b[0] - s.a[0]), s.a[1] + k * (s.b[1] - s.a[1])]
}

export interface Gap {
  readonly distance: number
  readonly from: Flat
  readonly to: Flat
}

/** The least distance of two segments, mm, and the two points it lies between. */
export function gapOf(s: Segment, t: Segment): Gap {
  const meet = crossing(s, t)
  if (meet) return { distance: 0, from: meet, to: meet }
  let best: Gap = { distance: Number.POSITIVE_INFINITY, from: s.a, to: t.a }
  for (const p of [s.a, s.b]) {
    const { distance, at } = nearestOn(t, p)
    if (distance < best.distance) best = { distance, from: p, to: at }
  }
  for (const p of [t.a, t.b]) {
    const { distance, at } = nearestOn(s, p)
    if (distance < best.distance) best = { distance, from: at, to: p }
  }
  return best
}

/** Distance of a point from an outline's nearest edge, mm, and where. */
export function nearestEdge(edges: readonly Segment[], p: Flat): { distance: number; at: Flat } {
  let best = { distance: Number.POSITIVE_INFINITY, at: p }
  for (const edge of edges) {
    const found = nearestOn(edge, p)
    if (found.distance < best.distance) best = found
  }
  return best
}

/** Whether a point lies inside an outline (even-odd rule); a point on an edge may go either way. */
export function isWithin(edges: readonly Segment[], p: Flat): boolean {
  let within = false
  for (const { a, b } of edges)
    if (a[1] > p[1] !== b[1] > p[1] && sideOf(a, b, p) > 0 === b[1] > a[1]) within = !within
  return within
}

/** Stretches of a segment between the points where it meets the edges, as pairs of points in order. */
function cutUp(segment: Segment, edges: readonly Segment[]): Segment[] {
  const { a, b } = segment
  const along = (p: Flat) => (p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])
  const stops: Flat[] = [a, b]
  for (const edge of edges) {
    const meet = crossing(segment, edge)
    if (meet) stops.push(meet)
    for (const end of [edge.a, edge.b]) if (nearestOn(segment, end).distance <= SAME) stops.push(end)
  }
  stops.sort((p, q) => along(p) - along(q))
  return stops.slice(1).map((q, k) => ({ a: stops[k] as Flat, b: q }))
}

const middleOf = ({ a, b }: Segment): Flat => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

/**
 * How far a polygon reaches over the edge of another, mm: 0 if it lies inside (edges may touch), and
 * where. It is 0 exactly when nothing reaches over: every stretch of its edges between two crossings is
 * looked at. For an outline with a dent the number is the largest one found at corners and at the
 * middles of those stretches.
 */
export function overshoot(polygon: readonly Flat[], outline: readonly Flat[]): Gap {
  const edges = edgesOf(outline)
  let worst: Gap = { distance: 0, from: [0, 0], to: [0, 0] }
  const look = (p: Flat): void => {
    const { distance, at } = nearestEdge(edges, p)
    if (distance > Math.max(SAME, worst.distance) && !isWithin(edges, p))
      worst = { distance, from: p, to: at }
  }
  for (const edge of edgesOf(polygon)) {
    look(edge.a)
    for (const stretch of cutUp(edge, edges)) look(middleOf(stretch))
  }
  return worst
}

/** Whether a segment runs through the inside of an outline, not only along or to its edge. */
export function runsThrough(segment: Segment, outline: readonly Flat[]): boolean {
  const edges = edgesOf(outline)
  return cutUp(segment, edges).some((stretch) => {
    const middle = middleOf(stretch)
    return isWithin(edges, middle) && nearestEdge(edges, middle).distance > SAME
  })
}

/** Where two edges of an outline that are not neighbours meet, and how far from their nearest corner, mm; null: nowhere. */
export function selfCrossing(outline: readonly Flat[]): { at: Flat; depth: number } | null {
  const edges = edgesOf(outline).filter(({ a, b }) => Math.hypot(a[0] - b[0], a[1] - b[1]) > SAME)
  let worst: { at: Flat; depth: number } | null = null
  edges.forEach((s, i) => {
    edges.slice(i + 2).forEach((t, k) => {
      if (i === 0 && k + 3 === edges.length) return
      const at = crossing(s, t)
      if (!at) return
      const depth = Math.min(...[s.a, s.b, t.a, t.b].map((p) => Math.hypot(p[0] - at[0], p[1] - at[1])))
      if (depth > Math.max(SAME, worst?.depth ?? 0)) worst = { at, depth }
    })
  })
  return worst
}

/** Least and greatest of a convex part along a unit direction. */
function range(points: readonly Flat[], x: number, y: number): [number, number] {
  let low = Number.POSITIVE_INFINITY
  let high = Number.NEGATIVE_INFINITY
  for (const [a, l] of points) {
    const at = a * x + l * y
    if (at < low) low = at
    if (at > high) high = at
  }
  return [low, high]
}

/**
 * How far one of two convex parts would have to move to be clear of the other, mm: 0 if they only touch.
 * The shortest way out is square to an edge (separating axes).
 */
export function overlapOf(one: Part, two: Part): number {
  let least = Number.POSITIVE_INFINITY
  for (const { a, b } of [...edgesOf(one.points), ...edgesOf(two.points)]) {
    const size = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (size === 0) continue
    const [x, y] = [(b[1] - a[1]) / size, (a[0] - b[0]) / size]
    const [p, q] = range(one.points, x, y)
    const [r, s] = range(two.points, x, y)
    least = Math.min(least, q - r, s - p)
    if (least <= SAME) return 0
  }
  return Number.isFinite(least) ? least : 0
}

/** What two convex parts (counter-clockwise) have in common: the corners of it. Sutherland and Hodgman 1974. */
export function common(one: readonly Flat[], two: readonly Flat[]): Flat[] {
  let points = [...one]
  for (const { a, b } of edgesOf(two)) {
    const off = points.map((p) => sideOf(a, b, p))
    points = points.flatMap((p, k) => {
      const next = (k + 1) % points.length
      const [here, there] = [off[k] as number, off[next] as number]
      const q = points[next] as Flat
      const kept: Flat[] = here >= 0 ? [p] : []
      if (here * there < 0) {
        const t = here / (here - there)
        kept.push([p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])])
      }
      return kept
    })
  }
  return points
}
