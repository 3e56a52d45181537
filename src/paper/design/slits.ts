import { kindOf } from '../mechanisms/registry.ts'
import type { Design } from './design.ts'

/** Pairs of mechanisms that share one slit: the upper and lower half of a beak. */
export function sharedSlits(design: Design): readonly (readonly [number, number])[] {
  const slits = design.mechanisms.map((m) => ({ on: m.on, slit: kindOf(m).slit?.(m) }))
  const pairs: [number, number][] = []
  slits.forEach((a, i) => {
    slits.slice(i + 1).forEach((b, k) => {
      if (!a.slit || !b.slit || a.on !== b.on) return
      const off = Math.hypot(
        a.slit.foot[1] - b.slit.foot[1],
        a.slit.end[0] - b.slit.end[0],
        a.slit.end[1] - b.slit.end[1],
      )
      if (off < 1e-6) pairs.push([i, i + 1 + k])
    })
  })
  return pairs
}
