import type { Design } from '../design/design.ts'
import { compile } from '../motion/pose.ts'
import { rangesOf } from '../motion/range.ts'
import { toShutEdge } from './measure.ts'

/**
 * The opening (degrees) at which a mechanism, or one that it stands on, stops the card; 180 if they let it
 * open flat, 0 if they fit together at no opening.
 */
export const opensTo = (design: Design, id: string): number =>
  rangesOf(design).lineage(design.mechanisms.findIndex((m) => m.id === id))?.high.at ?? 0

/** The least distance of one mechanism's own panels from the page edge when the card is shut, mm; negative: it sticks out. */
export function partMargin(design: Design, id: string): number {
  const pose = compile(design)(0)
  const points = Object.entries(pose.panels).flatMap(([name, corners]) =>
    name.startsWith(`${id}/`) ? corners : [],
  )
  return Math.min(...points.map((p) => toShutEdge(design.card, p)))
}
