import { isInPacked } from './in-convex.ts'
import type { Vec3 } from './vector.ts'

/** Rounding of positions, mm: some 1e-13 at each level of nesting. */
export const ROUNDING = 1e-10

/** Crossing by less than this is touching along a joint, mm. */
export const TOUCH = 1e-6

/** The direction along which two convex bodies at rest are farthest apart. */
export interface Parting {
  x: number
  y: number
  z: number
  /** Where the second ends along it. */
  edge: number
  /** How far the first begins beyond that, mm; below 0: they cross by so much. */
  gap: number
}

/**
 * Separating axes of a body at rest (given in the frame of a panel) and a convex part of that panel.
 * Two plane bodies that are apart are so along one of the two normals, a product of two edges, or, in one
 * plane, square to an edge (faces of their Minkowski difference).
 */
export function parting(points: Float64Array, pinned: readonly boolean[], part: Float64Array): Parting {
  const best: Parting = { x: 0, y: 0, z: 1, edge: 0, gap: Number.NEGATIVE_INFINITY }
  const count = points.length / 3
  const sides = part.length / 2
  const look = (ax: number, ay: number, az: number): void => {
    const size = Math.sqrt(ax * ax + ay * ay + az * az)
    if (!(size > 1e-9)) return
    const [x, y, z] = [ax / size, ay / size, az / size]
    let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]
    for (let i = 0; i < part.length; i += 2) {
      const at = x * (part[i] as number) + y * (part[i + 1] as number)
      if (at < low) low = at
      if (at > high) high = at
    }
    for (let sign = 1; sign >= -1; sign -= 2) {
      const edge = sign > 0 ? high : -low
      let gap = Number.POSITIVE_INFINITY
      for (let k = 0, i = 0; k < count; k++, i += 3) {
        const at =
          sign * (x * (points[i] as number) + y * (points[i + 1] as number) + z * (points[i + 2] as number)) -
          edge
        if (at < gap && !(pinned[k] && Math.abs(at) < ROUNDING)) gap = at
      }
      if (gap > best.gap && Number.isFinite(gap))
        Object.assign(best, { x: sign * x, y: sign * y, z: sign * z, edge, gap })
    }
  }
  look(0, 0, 1)
  // The first body's normal, by its largest corner (Newell's sum keeps its digits for any polygon).
  let [nx, ny, nz] = [0, 0, 0]
  for (let k = 0; k < count; k++) {
    const [i, j] = [3 * k, 3 * ((k + 1) % count)]
    const [px, py, pz] = [points[i], points[i + 1], points[i + 2]] as unknown as Vec3
    const [qx, qy, qz] = [points[j], points[j + 1], points[j + 2]] as unknown as Vec3
    nx += (py - qy) * (pz + qz)
    ny += (pz - qz) * (px + qx)
    nz += (px - qx) * (py + qy)
  }
  look(nx, ny, nz)
  for (let s = 0; s < sides; s++) {
    const t = (s + 1) % sides
    const u = (part[2 * t] as number) - (part[2 * s] as number)
    const v = (part[2 * t + 1] as number) - (part[2 * s + 1] as number)
    look(v, -u, 0)
    for (let k = 0; k < count; k++) {
      const [i, j] = [3 * k, 3 * ((k + 1) % count)]
      const ex = (points[j] as number) - (points[i] as number)
      const ey = (points[j + 1] as number) - (points[i + 1] as number)
      const ez = (points[j + 2] as number) - (points[i + 2] as number)
      look(ez * v, -ez * u, ex * -v + ey * u)
      if (s === 0) look(ny * ez - nz * ey, nz * ex - nx * ez, nx * ey - ny * ex)
    }
  }
  return best
}

/** Where the edges of a body at rest pierce a convex part of the panel it is seen from. */
export function piercings(points: Float64Array, part: Float64Array): [number, number][] {
  const found: [number, number][] = []
  for (let i = 0; i < points.length; i += 3) {
    const j = (i + 3) % points.length
    const [here, there] = [points[i + 2] as number, points[j + 2] as number]
    if (here * there > 0 || here === there) continue
    const t = here / (here - there)
    const a = (points[i] as number) + t * ((points[j] as number) - (points[i] as number))
    const l = (points[i + 1] as number) + t * ((points[j + 1] as number) - (points[i + 1] as number))
    if (isInPacked(part, a, l, TOUCH)) found.push([a, l])
  }
  return found
}
