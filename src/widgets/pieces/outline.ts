/** Outlines as a hand draws them, made ready to be cut out: smooth, with few corners, crossing themselves nowhere. */
import { union } from 'polyclip-ts'
import simplify from 'simplify-js'
import { smooth } from '../../drawing/art/shapes.ts'
import type { Flat } from '../../paper/index.ts'
import { selfCrossing } from '../../paper/plane/outline.ts'

/** So many corners a file may hold of one outline. */
export const MOST_CORNERS = 200

/** Straight pieces for each stretch of a smooth line. */
const PIECES = 8

/** So far from a smooth line its corners may lie, mm: scissors follow no closer. */
export const NEAR = 0.1

const tenth = (x: number): number => Math.round(x * 10) / 10 + 0

/** To a tenth of a millimetre, as a ruler could set it out. */
export const rounded = (points: readonly Flat[]): readonly Flat[] =>
  points.map(([a, l]) => [tenth(a), tenth(l)])

/**
 * The line with as few points as keep it within `near` mm (Ramer 1972, Douglas and Peucker 1973). A closed one is
 * given without its first point again at the end, and is taken so.
 */
export function simplified(points: readonly Flat[], near: number, closed: boolean): readonly Flat[] {
  const ring = closed && points.length > 2 ? [...points, points[0] as Flat] : points
  const kept = simplify(
    ring.map(([x, y]) => ({ x, y })),
    near,
    true,
  ).map(({ x, y }): Flat => [x, y])
  return closed && kept.length > 1 ? kept.slice(0, -1) : kept
}

/** A smooth line through the points (see content/design-file.md) as corners. A point given twice in a row is a corner. */
export function flattened(points: readonly Flat[], closed: boolean): readonly Flat[] {
  if (points.length < 3) return points
  const cubics = smooth(points, closed)
  const out: Flat[] = [cubics[0] as Flat]
  for (let k = 0; k + 3 < cubics.length; k += 3) {
    const [a, b, c, d] = cubics.slice(k, k + 4) as unknown as [Flat, Flat, Flat, Flat]
    for (let n = 1; n <= PIECES; n++) {
      const [t, u] = [n / PIECES, 1 - n / PIECES]
      const at = (i: 0 | 1): number =>
        u * u * u * a[i] + 3 * u * u * t * b[i] + 3 * u * t * t * c[i] + t * t * t * d[i]
      out.push([at(0), at(1)])
    }
  }
  const [first, last] = [out[0] as Flat, out.at(-1) as Flat]
  const meets = closed && Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-9
  return meets ? out.slice(0, -1) : out
}

export const areaOf = (ring: readonly Flat[]): number =>
  ring.reduce((sum, [x, y], k) => {
    const [u, v] = ring[(k + 1) % ring.length] as Flat
    return sum + (x * v - u * y) / 2
  }, 0)

/** The largest part of what an outline encloses, without its holes; null where it encloses nothing. Where it crosses itself, both loops are paper. */
export function whole(outline: readonly Flat[]): readonly Flat[] | null {
  if (outline.length < 3 || !outline.flat().every(Number.isFinite)) return null
  if (!selfCrossing(outline)) return Math.abs(areaOf(outline)) > 1e-6 ? outline : null
  let parts: ReturnType<typeof union>
  try {
    parts = union([[...outline.map(([x, y]): [number, number] => [x, y])]])
  } catch {
    return null
  }
  const rings = parts.flatMap(([ring]) => (ring ? [ring.slice(0, -1)] : []))
  const best = rings.toSorted((one, two) => Math.abs(areaOf(two)) - Math.abs(areaOf(one)))[0]
  return best && Math.abs(areaOf(best)) > 1e-6 ? best : null
}

/**
 * The corners to cut along, of an outline drawn through these points: smooth or straight, whole, of no more corners than
 * a file may hold; null where nothing is enclosed. mm.
 */
export function cutLine(points: readonly Flat[], curve: boolean): readonly Flat[] | null {
  const drawn = curve ? simplified(flattened(points, true), NEAR, true) : points
  let ring = whole(drawn)
  for (let near = 2 * NEAR; ring && ring.length > MOST_CORNERS; near *= 2)
    ring = whole(simplified(ring, near, true))
  return ring && ring.length >= 3 ? rounded(ring) : null
}

/** What a finger drew, as few points for a smooth line: it shakes by a millimetre. */
export function fromStroke(stroke: readonly Flat[], closed: boolean): readonly Flat[] {
  const even = stroke.map((p, k): Flat => {
    const before = stroke[Math.max(0, k - 1)] as Flat
    const after = stroke[Math.min(stroke.length - 1, k + 1)] as Flat
    return [(before[0] + 2 * p[0] + after[0]) / 4, (before[1] + 2 * p[1] + after[1]) / 4]
  })
  return rounded(simplified(even, 0.7, closed)).slice(0, MOST_CORNERS)
}

/** The nearest point of a segment. */
function onto(a: Flat, b: Flat, p: Flat): Flat {
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const size = x * x + y * y
  const t = size === 0 ? 0 : Math.min(1, Math.max(0, ((p[0] - a[0]) * x + (p[1] - a[1]) * y) / size))
  return [a[0] + t * x, a[1] + t * y]
}

const far = (a: Flat, b: Flat): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The place that a point is drawn to: a corner of these outlines, or else an edge (ridge, joint, rim), if one is within reach (mm). */
export function snapped(p: Flat, rings: readonly (readonly Flat[])[], reach: number): Flat {
  const nearestOf = (places: readonly Flat[]): Flat | null =>
    places.reduce<Flat | null>(
      (best, q) => (far(p, q) <= reach && (!best || far(p, q) < far(p, best)) ? q : best),
      null,
    )
  return (
    nearestOf(rings.flat()) ??
    nearestOf(rings.flatMap((ring) => ring.map((a, k) => onto(a, ring[(k + 1) % ring.length] as Flat, p)))) ??
    p
  )
}

/** Between which two points a new one belongs: behind the index whose edge is nearest; at the end of an open line. */
export function slotFor(
  points: readonly Flat[],
  p: Flat,
  closed: boolean,
): { readonly after: number; readonly off: number } {
  const last = points.length - 1
  let best = { after: last, off: Number.POSITIVE_INFINITY }
  points.forEach((a, k) => {
    if (k === last && !closed) return
    const off = far(p, onto(a, points[(k + 1) % points.length] as Flat, p))
    if (off < best.off) best = { after: k, off }
  })
  return best
}

/** The other half of a line drawn on one side of an axis at `across` 0, joined to it: a shape alike on both sides. */
export const doubled = (points: readonly Flat[]): readonly Flat[] => [
  ...points,
  ...points.toReversed().flatMap(([a, l]): Flat[] => (Math.abs(a) < 0.05 ? [] : [[-a, l]])),
]
