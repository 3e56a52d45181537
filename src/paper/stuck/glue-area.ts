/** Where a piece may be glued: on paper of its panel, and under itself. */
import type { Model } from '../model/model.ts'
import { crossing } from '../plane/gap.ts'
import type { Flat } from '../plane/lay.ts'
import { overshoot, runsThrough } from '../plane/outline.ts'
import { roundest } from '../plane/roundest.ts'
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
