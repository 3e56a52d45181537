import type { Patch } from '../model/patches.ts'
import { isInConvex } from '../plane/in-convex.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import { laid, unlaid } from '../plane/lay.ts'
import type { Segment } from '../plane/segment.ts'

/** Corners counter-clockwise: the seam's two ends are the first and the third. */
export type Rhomb = readonly [Flat, Flat, Flat, Flat]

/** How far at most a rhomb reaches to either side of its seam, and how far at least, mm. */
const WIDE = 1

const NARROW = 0.005

/** Seams shorter than this are not looked at, mm. */
const SHORT = 0.1

/** So near to a line an edge lies on it, mm. */
const IN_LINE = 1e-6

const cornerOf = (outline: readonly Flat[], k: number): Flat => outline[k % outline.length] as Flat

/** An edge as a lay: across is to its left, along runs from its first end; and how long it is, mm. */
function layOf(p: Flat, q: Flat): { lay: Lay; size: number } {
  const size = Math.hypot(q[0] - p[0], q[1] - p[1])
  const run: Flat = [(q[0] - p[0]) / size, (q[1] - p[1]) / size]
  return { lay: { origin: p, run, off: [-run[1], run[0]] }, size }
}

/**
 * Paper that reaches over the seams between the convex parts of one panel: a rhomb for each, half on the one
 * part and half on the other. A panel that passes through a seam and just along it only touches the parts on
 * either side. It can do so for longer than a moment only where the two panels turn about the seam's line
 * against each other, so only seams in line with one of the panel's creases are given.
 */
export function seamsAlong(parts: readonly Patch[], folds: readonly Segment[]): readonly Rhomb[] {
  return parts.flatMap((one, i) =>
    one.outline.flatMap((p, k): Rhomb[] => {
      const { lay, size } = layOf(p, cornerOf(one.outline, k + 1))
      const inLine = ({ a, b }: Segment) =>
        Math.abs(unlaid(lay, a)[0]) < IN_LINE && Math.abs(unlaid(lay, b)[0]) < IN_LINE
      if (one.drawn[k] || !(size > SHORT) || !folds.some(inLine)) return []
      return parts.slice(i + 1).flatMap((two): Rhomb[] => {
        const seen = two.outline.map((corner) => unlaid(lay, corner))
        return seen.flatMap(([off, s], m): Rhomb[] => {
          const [on, t] = cornerOf(seen, m + 1)
          const [from, to] = [Math.max(0, Math.min(s, t)), Math.min(size, Math.max(s, t))]
          if (two.drawn[m] || Math.abs(off) > IN_LINE || Math.abs(on) > IN_LINE || to - from < SHORT)
            return []
          const middle = (from + to) / 2
          const fits = (half: number) =>
            isInConvex(one.outline, laid(lay, [half, middle])) &&
            isInConvex(two.outline, laid(lay, [-half, middle]))
          let half = WIDE
          while (half > NARROW && !fits(half)) half /= 2
          const corners = [
            [0, from],
            [-half, middle],
            [0, to],
            [half, middle],
          ] as const
          return [corners.map((corner) => laid(lay, corner)) as unknown as Rhomb]
        })
      })
    }),
  )
}
