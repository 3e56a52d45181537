import type { Design } from '../design/design.ts'
import { modelOf } from '../model/model.ts'
import { compile } from '../motion/pose.ts'
import { broughtIn } from '../motion/range.ts'
import { frontOf } from '../motion/surface.ts'
import type { Flat } from '../plane/lay.ts'
import type { Vec3 } from '../plane/vector.ts'
import { cross, dot, scale, subtract } from '../plane/vector.ts'

/** What is right and what is up on a panel for somebody who sits before the card, as directions of its flat coordinates. */
export interface Upright {
  readonly right: Flat
  readonly up: Flat
}

/** The reader looks down at the card so steeply, degrees: common practice for a card on a table, no source. */
const LOOK = (34 * Math.PI) / 180

/** Up as the reader sees it: from the table, and away from the reader. */
const UP: Vec3 = [0, Math.sin(LOOK), Math.cos(LOOK)]

/**
 * Which way is up on one face of a panel at an opening: what is drawn so stands upright in the open card, and is not
 * left for right. Throws a RangeError if there is no such panel.
 * @param opening degrees; 90 or the nearest that the card reaches if left out
 */
export function uprightOn(
  design: Design,
  panel: string,
  face: 'front' | 'back' = 'front',
  opening = 90,
): Upright {
  const model = modelOf(design)
  const index = model.panels.findIndex(({ name }) => name === panel)
  if (index < 0) throw new RangeError(`there is no panel ${panel}`)
  const poser = compile(design)
  poser(broughtIn(design, opening))
  const origin = poser.lift(index, [0, 0])
  const across = subtract(poser.lift(index, [1, 0]), origin)
  const along = subtract(poser.lift(index, [0, 1]), origin)
  const front = scale(frontOf(model, poser.frames, index), face === 'front' ? 1 : -1)
  const [u, v] = [dot(UP, across), dot(UP, along)]
  const size = Math.hypot(u, v)
  // A face seen edge on has no upper side: then away from its crease is as good as any.
  const up: Flat = size < 1e-6 ? [1, 0] : [u / size, v / size]
  const inSpace: Vec3 = [0, 1, 2].map(
    (k) => up[0] * (across[k] as number) + up[1] * (along[k] as number),
  ) as Vec3
  const right = cross(inSpace, front)
  return { right: [dot(right, across), dot(right, along)], up }
}

/** A point of a drawing (right and up of its middle) on the panel. */
export const placedOn =
  ({ right, up }: Upright, at: Flat, size = 1) =>
  ([x, y]: readonly [x: number, y: number]): Flat => [
    at[0] + size * (x * right[0] + y * up[0]),
    at[1] + size * (x * right[1] + y * up[1]),
  ]

/** Where a point of the panel lies in the drawing, right and up of the panel's origin. */
export const seenUpright = ({ right, up }: Upright, [a, l]: Flat): readonly [x: number, y: number] => [
  a * right[0] + l * right[1],
  a * up[0] + l * up[1],
]
