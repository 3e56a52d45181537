import type { Vec3 } from './vector.ts'
import { add, cross, dot, scale, subtract } from './vector.ts'

/** Turns a point about the line through `origin` along unit `way`, by an angle in radians. Source: Rodrigues' formula. */
export function turned(p: Vec3, origin: Vec3, way: Vec3, angle: number): Vec3 {
  const v = subtract(p, origin)
  const [c, s] = [Math.cos(angle), Math.sin(angle)]
  return add(origin, add(add(scale(v, c), scale(cross(way, v), s)), scale(way, dot(way, v) * (1 - c))))
}
