// Rays against flat polygons in space, for tests: by triangles and signed volumes, which shares no formula
// with the painter's order under test. Source: Moeller and Trumbore 1997, in the form of determinants.
import type { Vec3 } from '../../src/paper/index.ts'
import { crossOf, dotOf, minus, plus, times } from '../paper/shared/space.ts'

/** A convex polygon that a ray may meet; `name` tells which. */
export interface Target {
  readonly name: string
  readonly points: readonly Vec3[]
}

export interface Hit {
  readonly name: string
  /** 1 at the point that the ray was aimed at. */
  readonly reach: number
}

const HAIR = 1e-9

/** How far along from `eye` to `aim` the triangle is met; null if it is missed or seen edge-on. */
function reachOf(eye: Vec3, aim: Vec3, a: Vec3, b: Vec3, c: Vec3): number | null {
  const way = minus(aim, eye)
  const [ab, ac] = [minus(b, a), minus(c, a)]
  const side = crossOf(way, ac)
  const volume = dotOf(ab, side)
  if (Math.abs(volume) < 1e-9) return null
  const from = minus(eye, a)
  const u = dotOf(from, side) / volume
  const turn = crossOf(from, ab)
  const v = dotOf(way, turn) / volume
  // A hair of overlap, so that no ray slips between two triangles of one polygon.
  if (u < -HAIR || v < -HAIR || u + v > 1 + HAIR) return null
  return dotOf(ac, turn) / volume
}

/** Everything that the ray from `eye` through `aim` meets, nearest first. */
export function hits(eye: Vec3, aim: Vec3, targets: readonly Target[]): readonly Hit[] {
  const found: Hit[] = []
  for (const { name, points } of targets)
    for (let k = 1; k + 1 < points.length; k++) {
      const reach = reachOf(eye, aim, points[0] as Vec3, points[k] as Vec3, points[k + 1] as Vec3)
      if (reach !== null && reach > 0) found.push({ name, reach })
    }
  return found.sort((a, b) => a.reach - b.reach)
}

/** A point inside a convex polygon, from numbers between 0 and 1. */
export function within(points: readonly Vec3[], weights: readonly number[]): Vec3 {
  const some = points.map((_, k) => 0.02 + (weights[k % weights.length] ?? 0.5) ** 2 * (1 + ((k * 7) % 3)))
  const sum = some.reduce((a, b) => a + b, 0)
  return points.reduce<Vec3>((at, p, k) => plus(at, times(p, (some[k] as number) / sum)), [0, 0, 0])
}
