import { between, clip } from './clip.ts'
import type { Flat } from './lay.ts'
import { edgesOf, SAME, sideOf } from './segment.ts'

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
export function overlapOf(one: Pick<Part, 'points'>, two: Pick<Part, 'points'>): number {
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

/** What two convex parts (counter-clockwise) have in common: the corners of it. */
export function common(one: readonly Flat[], two: readonly Flat[]): readonly Flat[] {
  return edgesOf(two).reduce<readonly Flat[]>(
    (points, { a, b }) =>
      clip(
        points,
        points.map((p) => sideOf(a, b, p)),
        between,
      ).points,
    one,
  )
}

export interface Part {
  points: Flat[]
  drawn: boolean[]
}

const area2 = (a: Flat, b: Flat, c: Flat): number =>
  (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])

export function signedArea(points: readonly Flat[]): number {
  let sum = 0
  points.forEach((p, k) => {
    const q = points[(k + 1) % points.length] as Flat
    sum += p[0] * q[1] - p[1] * q[0]
  })
  return sum / 2
}

/** Counter-clockwise, without repeated points. */
function tidy(points: readonly Flat[]): Flat[] {
  const apart = points.filter((p, k) => {
    const q = points[(k + 1) % points.length] as Flat
    return Math.hypot(p[0] - q[0], p[1] - q[1]) > SAME
  })
  return signedArea(apart) < 0 ? apart.reverse() : apart
}

const isConvex = (points: readonly Flat[]): boolean =>
  points.every((p, k) => {
    const n = points.length
    return area2(p, points[(k + 1) % n] as Flat, points[(k + 2) % n] as Flat) >= -SAME
  })

/** Convex parts of a simple polygon: itself, or its triangles by ear clipping (Meisters 1975). */
export function convexParts(outline: readonly Flat[]): Part[] {
  const points = tidy(outline)
  if (points.length < 3) return []
  if (isConvex(points)) return [{ points, drawn: points.map(() => true) }]
  const parts: Part[] = []
  const ring = points.map((_, k) => k)
  const isEdge = (i: number, j: number) => (i + 1) % points.length === j
  while (ring.length > 3) {
    const n = ring.length
    const ear = ring.findIndex((_, k) => {
      const [i, j, l] = [ring[(k + n - 1) % n], ring[k], ring[(k + 1) % n]] as [number, number, number]
      const [a, b, c] = [points[i], points[j], points[l]] as [Flat, Flat, Flat]
      if (area2(a, b, c) <= 0) return false
      return !ring.some((m) => {
        if (m === i || m === j || m === l) return false
        const p = points[m] as Flat
        return area2(a, b, p) >= 0 && area2(b, c, p) >= 0 && area2(c, a, p) >= 0
      })
    })
    const k = Math.max(0, ear)
    const [i, j, l] = [ring[(k + n - 1) % n], ring[k], ring[(k + 1) % n]] as [number, number, number]
    if (ear >= 0)
      parts.push({
        points: [points[i], points[j], points[l]] as Flat[],
        drawn: [isEdge(i, j), isEdge(j, l), isEdge(l, i)],
      })
    ring.splice(k, 1)
  }
  const [i, j, l] = ring as [number, number, number]
  parts.push({
    points: [points[i], points[j], points[l]] as Flat[],
    drawn: [isEdge(i, j), isEdge(j, l), isEdge(l, i)],
  })
  return parts.filter((part) => Math.abs(signedArea(part.points)) > SAME)
}

/** The part of a convex polygon to the left (`side` 1) or right (-1) of the line a-b; new edges are seams. */
function halved(part: Part, a: Flat, b: Flat, side: 1 | -1): Part {
  const reach = Math.hypot(b[0] - a[0], b[1] - a[1])
  const off = part.points.map((p) => (side * area2(a, b, p)) / reach)
  const { points, edges } = clip(part.points, off, between, SAME)
  return { points, drawn: edges.map((k) => part.drawn[k] === true) }
}

/** Marks as drawn the stretch of the part's edges that lies on the segment a-b, splitting edges at its ends. */
function markDrawn(part: Part, a: Flat, b: Flat): Part {
  const reach = Math.hypot(b[0] - a[0], b[1] - a[1])
  const along = (p: Flat) => ((p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])) / reach
  const points: Flat[] = []
  const drawn: boolean[] = []
  part.points.forEach((p, k) => {
    const q = part.points[(k + 1) % part.points.length] as Flat
    const on = Math.abs(area2(a, b, p)) / reach <= SAME && Math.abs(area2(a, b, q)) / reach <= SAME
    const real = part.drawn[k] as boolean
    points.push(p)
    if (real || !on) {
      drawn.push(real)
      return
    }
    const from = along(p)
    const to = along(q)
    const stops = [0, reach].filter(
      (s) => (s - from) * (s - to) < 0 && Math.abs(s - from) > SAME && Math.abs(s - to) > SAME,
    )
    if (from > to) stops.reverse()
    const marks = [from, ...stops, to]
    for (let m = 0; m + 1 < marks.length; m++) {
      const middle = ((marks[m] as number) + (marks[m + 1] as number)) / 2
      if (m > 0) {
        const t = ((marks[m] as number) - from) / (to - from)
        points.push(between(p, q, t))
      }
      drawn.push(middle > 0 && middle < reach)
    }
  })
  return { points, drawn }
}

/** What is left of convex `part` when the convex polygon `hole` (counter-clockwise) is taken out. */
export function minus(part: Part, hole: Part): Part[] {
  const left: Part[] = []
  let rest = part
  for (let k = 0; k < hole.points.length; k++) {
    const a = hole.points[k] as Flat
    const b = hole.points[(k + 1) % hole.points.length] as Flat
    const outside = halved(rest, a, b, -1)
    if (Math.abs(signedArea(outside.points)) > 1e-6)
      left.push(hole.drawn[k] ? markDrawn(outside, a, b) : outside)
    rest = halved(rest, a, b, 1)
    if (rest.points.length < 3 || Math.abs(signedArea(rest.points)) <= 1e-6) return left
  }
  return left
}
