import type { Flat } from './lay.ts'
import { extentOf } from './near.ts'
import { nearestEdge } from './outline.ts'
import type { Segment } from './segment.ts'
import { edgesOf, isWithin } from './segment.ts'

/** How finely the middle is looked for: cells to a side, and rounds about the best. */
const CELLS = 11

const ROUNDS = 4

/** A circle in the plane, mm. */
export interface Circle {
  readonly at: Flat
  readonly radius: number
}

/**
 * The middle and the radius of the largest circle in all of these outlines, in none of the holes and over none of the
 * lines, mm: the best of a grid, then of a finer one about it; as good as a hand would choose. Radius 0 if there is none.
 */
export function roundest(
  outlines: readonly (readonly Flat[])[],
  holes: readonly (readonly Flat[])[] = [],
  lines: readonly Segment[] = [],
): Circle {
  const within = outlines.map(edgesOf)
  const without = holes.map(edgesOf)
  const all = [...within, ...without, lines].flat()
  let [left, right, low, high] = extentOf(outlines[0] ?? [])
  let best: Circle = { at: [0, 0], radius: 0 }
  for (let round = 0; round < ROUNDS; round++) {
    const [wide, long] = [(right - left) / CELLS, (high - low) / CELLS]
    for (let i = 0; i < CELLS; i++)
      for (let k = 0; k < CELLS; k++) {
        const at: Flat = [left + (i + 0.5) * wide, low + (k + 0.5) * long]
        const radius = nearestEdge(all, at).distance
        if (
          radius > best.radius &&
          within.every((edges) => isWithin(edges, at)) &&
          !without.some((edges) => isWithin(edges, at))
        )
          best = { at, radius }
      }
    const [a, l] = best.at
    ;[left, right, low, high] = [a - wide, a + wide, l - long, l + long]
  }
  return best
}
