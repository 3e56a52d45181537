/** Where a piece may be glued: on paper of its panel, and under itself. */
import type { Model } from '../model/model.ts'
import { crossing } from '../plane/gap.ts'
import type { Flat } from '../plane/lay.ts'
import { nearestEdge, overshoot, runsThrough } from '../plane/outline.ts'
import type { Segment } from '../plane/segment.ts'
import { edgesOf, isWithin } from '../plane/segment.ts'

/** Less than this from its middle to its edge, a glued place holds nothing, mm. */
export const LEAST_GLUE = 2

/** Corners of a glued place. */
const CORNERS = 16

/** So much of the way to the nearest edge is glued, and to the edge in each direction: glue that shows is ugly. */
const NEAR = 0.9

/** In no direction farther than so many times the nearest edge: a long piece is glued over its middle. */
const LONG = 3

/** How finely the middle is looked for: cells to a side, and rounds about the best. */
const CELLS = 11

const ROUNDS = 4

/** The middle and the radius of the largest circle in all of these outlines and none of the holes, mm. */
export function roundest(
  outlines: readonly (readonly Flat[])[],
  holes: readonly (readonly Flat[])[] = [],
): { readonly at: Flat; readonly radius: number } {
  const within = outlines.map(edgesOf)
  const without = holes.map(edgesOf)
  const all = [...within, ...without].flat()
  const corners = outlines[0] ?? []
  const box = (k: 0 | 1): [number, number] => [
    Math.min(...corners.map((p) => p[k])),
    Math.max(...corners.map((p) => p[k])),
  ]
  let [across, along] = [box(0), box(1)]
  let best: { at: Flat; radius: number } = { at: [0, 0], radius: 0 }
  for (let round = 0; round < ROUNDS; round++) {
    const step: Flat = [(across[1] - across[0]) / CELLS, (along[1] - along[0]) / CELLS]
    for (let i = 0; i < CELLS; i++)
      for (let k = 0; k < CELLS; k++) {
        const at: Flat = [across[0] + (i + 0.5) * step[0], along[0] + (k + 0.5) * step[1]]
        const radius = nearestEdge(all, at).distance
        if (
          radius > best.radius &&
          within.every((edges) => isWithin(edges, at)) &&
          !without.some((edges) => isWithin(edges, at))
        )
          best = { at, radius }
      }
    across = [best.at[0] - step[0], best.at[0] + step[0]]
    along = [best.at[1] - step[1], best.at[1] + step[1]]
  }
  return best
}

/** How far it is from a point to the nearest of these edges in a direction, mm. */
function reach(edges: readonly Segment[], [a, l]: Flat, [x, y]: Flat, most: number): number {
  const ray: Segment = { a: [a, l], b: [a + most * x, l + most * y] }
  return edges.reduce((least, edge) => {
    const meet = crossing(ray, edge)
    return meet ? Math.min(least, Math.hypot(meet[0] - a, meet[1] - l)) : least
  }, most)
}

/** What is free on a panel: its outline, and what its guests took out of it. */
export const paperOf = (
  { panels }: Model,
  panel: number,
): { readonly outline: readonly Flat[]; readonly holes: readonly (readonly Flat[])[] } => {
  const { outline, notches } = panels[panel] ?? { outline: [], notches: [] }
  return { outline, holes: notches.map((notch) => notch.outline) }
}

/**
 * The place where a piece of this outline is glued to a panel, in the panel's flat coordinates, mm: within both, clear
 * of what is cut out of the panel; null where there is less than a few millimetres. Rounded to hundredths.
 */
export function glueArea(model: Model, panel: number, shape: readonly Flat[]): readonly Flat[] | null {
  const { outline, holes } = paperOf(model, panel)
  const { at, radius } = roundest([shape, outline], holes)
  if (radius < LEAST_GLUE) return null
  const edges = [shape, outline, ...holes].flatMap(edgesOf)
  const ways = Array.from({ length: CORNERS }, (_, k): Flat => {
    const turn = (2 * Math.PI * k) / CORNERS
    return [Math.cos(turn), Math.sin(turn)]
  })
  const reaches = ways.map((way) => NEAR * reach(edges, at, way, LONG * radius))
  const stays = (glue: readonly Flat[]): boolean =>
    overshoot(glue, shape).distance === 0 &&
    overshoot(glue, outline).distance === 0 &&
    holes.every(
      (hole) =>
        !glue.some((p) => isWithin(edgesOf(hole), p)) &&
        !edgesOf(glue).some((edge) => runsThrough(edge, hole)),
    )
  // As far as it goes in each direction, or less far, down to a circle that surely lies within.
  for (const far of [1, 0.6, 0.3, 0]) {
    const glue = ways.map(([x, y], k): Flat => {
      const r = NEAR * radius + far * ((reaches[k] as number) - NEAR * radius)
      return [hundredths(at[0] + r * x), hundredths(at[1] + r * y)]
    })
    if (stays(glue)) return glue
  }
  return null
}

export const hundredths = (x: number): number => Math.round(x * 100) / 100 + 0
