import type { Gap } from './gap.ts'
import { crossing, middleOf } from './gap.ts'
import type { Flat } from './lay.ts'
import type { Segment } from './segment.ts'
import { edgesOf, isWithin, nearestOn, SAME } from './segment.ts'

/** Distance of a point from an outline's nearest edge, mm, and where. */
export function nearestEdge(edges: readonly Segment[], p: Flat): { distance: number; at: Flat } {
  let best = { distance: Number.POSITIVE_INFINITY, at: p }
  for (const edge of edges) {
    const found = nearestOn(edge, p)
    if (found.distance < best.distance) best = found
  }
  return best
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

/** How long a segment runs through the inside of an outline at a stretch, mm: 0 where it only runs along or to its edge. */
export function longestThrough(segment: Segment, outline: readonly Flat[]): number {
  const edges = edgesOf(outline)
  const within = cutUp(segment, edges).filter((stretch) => {
    const middle = middleOf(stretch)
    return isWithin(edges, middle) && nearestEdge(edges, middle).distance > SAME
  })
  return Math.max(0, ...within.map(({ a, b }) => Math.hypot(b[0] - a[0], b[1] - a[1])))
}

/** Whether a segment runs through the inside of an outline, not only along or to its edge. */
export const runsThrough = (segment: Segment, outline: readonly Flat[]): boolean =>
  longestThrough(segment, outline) > 0

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
