import type { Segment } from './checks/plane.ts'
import type { Face } from './faces.ts'
import type { Flat } from './types.ts'

/** Corners counter-clockwise: the seam's two ends are the first and the third. */
export type Rhomb = readonly [Flat, Flat, Flat, Flat]

/** How far at most a rhomb reaches to either side of its seam, and how far at least, mm. */
const WIDE = 1
const NARROW = 0.005
/** Seams shorter than this are not looked at, mm. */
const SHORT = 0.1
const SAME = 1e-6

const cornerOf = (outline: readonly Flat[], k: number): Flat => outline[k % outline.length] as Flat

/** Whether a point lies in a convex outline, counter-clockwise. */
const holds = (outline: readonly Flat[], p: Flat): boolean =>
  outline.every((a, k) => {
    const b = cornerOf(outline, k + 1)
    return (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]) >= 0
  })

/** A point as seen from an edge: along it, and to its left; mm. */
function seenFrom(p: Flat, q: Flat): { size: number; see: (to: Flat) => Flat; at: (seen: Flat) => Flat } {
  const size = Math.hypot(q[0] - p[0], q[1] - p[1])
  const run: Flat = [(q[0] - p[0]) / size, (q[1] - p[1]) / size]
  return {
    size,
    see: ([a, l]) => {
      const [x, y] = [a - p[0], l - p[1]]
      return [x * run[0] + y * run[1], y * run[0] - x * run[1]]
    },
    at: ([s, off]) => [p[0] + s * run[0] - off * run[1], p[1] + s * run[1] + off * run[0]],
  }
}

/**
 * Paper that reaches over the seams between the convex parts of one panel: a rhomb for each, half on the one
 * part and half on the other. A panel that passes through a seam and just along it only touches the parts on
 * either side. It can do so for longer than a moment only where the two panels turn about the seam's line
 * against each other, so only seams in line with one of the panel's creases are given.
 */
export function seamsAlong(parts: readonly Face[], folds: readonly Segment[]): readonly Rhomb[] {
  return parts.flatMap((one, i) =>
    one.outline.flatMap((p, k): Rhomb[] => {
      const { size, see, at } = seenFrom(p, cornerOf(one.outline, k + 1))
      const inLine = ({ a, b }: Segment) => Math.abs(see(a)[1]) < SAME && Math.abs(see(b)[1]) < SAME
      if (one.drawn[k] || !(size > SHORT) || !folds.some(inLine)) return []
      return parts.slice(i + 1).flatMap((two): Rhomb[] => {
        const seen = two.outline.map(see)
        return seen.flatMap(([s, off], m): Rhomb[] => {
          const [t, on] = cornerOf(seen, m + 1)
          const [from, to] = [Math.max(0, Math.min(s, t)), Math.min(size, Math.max(s, t))]
          if (two.drawn[m] || Math.abs(off) > SAME || Math.abs(on) > SAME || to - from < SHORT) return []
          const middle = (from + to) / 2
          const fits = (half: number) =>
            holds(one.outline, at([middle, half])) && holds(two.outline, at([middle, -half]))
          let half = WIDE
          while (half > NARROW && !fits(half)) half /= 2
          return [[at([from, 0]), at([middle, -half]), at([to, 0]), at([middle, half])]]
        })
      })
    }),
  )
}
