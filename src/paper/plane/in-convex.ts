import type { Flat } from './lay.ts'
import { sideOf } from './segment.ts'

/** Whether a point lies in a convex outline (counter-clockwise), its edge included. */
export const isInConvex = (outline: readonly Flat[], p: Flat): boolean =>
  outline.every((a, k) => sideOf(a, outline[(k + 1) % outline.length] as Flat, p) >= 0)

/**
 * The same for corners packed as x, y, x, y: what is asked a million times.
 * @param slack how far beyond the edge is still in, mm
 */
export function isInPacked(corners: Float64Array, x: number, y: number, slack = 0): boolean {
  for (let i = 0; i < corners.length; i += 2) {
    const j = (i + 2) % corners.length
    const [a, b] = [corners[i] as number, corners[i + 1] as number]
    const [u, v] = [(corners[j] as number) - a, (corners[j + 1] as number) - b]
    if (u * (y - b) - v * (x - a) < (slack === 0 ? 0 : -slack * Math.hypot(u, v))) return false
  }
  return true
}
