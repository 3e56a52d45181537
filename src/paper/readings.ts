import type { Design } from './model.ts'
import { compile } from './pose.ts'
import { stopOf } from './stop.ts'
import { mostLayers } from './thickness.ts'

/** The opening (degrees) at which a mechanism stops the card; 180 if it lets it open flat. */
export function opensTo(design: Design, id: string): number {
  const poser = compile(design)
  return poser(180).stopped.includes(id) ? stopOf(poser, id, 180) : 180
}

/** The least distance of one mechanism's own panels from the page edge when the card is shut, mm; negative: it sticks out. */
export function partMargin(design: Design, id: string): number {
  const { width, height } = design.card
  const pose = compile(design)(0)
  const points = Object.entries(pose.panels).flatMap(([name, corners]) =>
    name.startsWith(`${id}/`) ? corners : [],
  )
  return Math.min(...points.map(([x, y, z]) => Math.min(y, height - y, width - Math.hypot(x, z))))
}

/** How many layers lie on one another at the thickest spot of the shut card, and how thick they are, mm. */
export function thickest(design: Design): { layers: number; thickness: number } {
  const poser = compile(design)
  poser(0)
  const { count } = mostLayers(poser)
  return { layers: count, thickness: count * design.card.caliper }
}
