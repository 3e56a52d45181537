import type { Vec3 } from './vector.ts'
import { cross, dot, subtract } from './vector.ts'

/**
 * How far along a ray a triangle is met, in lengths of the ray's way; below 0 behind its beginning, infinite if it is
 * not. Source: Möller and Trumbore 1997.
 */
export function metAt(from: Vec3, way: Vec3, [a, b, c]: readonly [Vec3, Vec3, Vec3]): number {
  const [u, v] = [subtract(b, a), subtract(c, a)]
  const p = cross(way, v)
  const size = dot(u, p)
  if (Math.abs(size) < 1e-12) return Number.POSITIVE_INFINITY
  const off = subtract(from, a)
  const s = dot(off, p) / size
  const q = cross(off, u)
  const t = dot(way, q) / size
  return s < -1e-9 || t < -1e-9 || s + t > 1 + 1e-9 ? Number.POSITIVE_INFINITY : dot(v, q) / size
}
