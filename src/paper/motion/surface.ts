import type { Model, ModelPanel } from '../model/model.ts'
import { frontSign } from '../model/model.ts'
import type { Stacking } from '../model/patches.ts'
import { patchesOf, stackingOf } from '../model/patches.ts'
import type { Frame } from '../plane/frame.ts'
import type { Flat } from '../plane/lay.ts'
import type { Vec3 } from '../plane/vector.ts'
import type { Poser } from './pose.ts'

/** A convex flat part of the paper in space, mm. */
export interface Surface {
  /** Name of the panel it belongs to. */
  readonly panel: string
  /** Index of the mechanism that owns the panel; -1 for the card's own pages. */
  readonly owner: number
  /** Parts with the same number are one panel and lie in one plane. */
  readonly leaf: number
  /** How many pieces of card it lies on where all lie flat: 0 for the card itself, 1 for what is glued on it, … */
  readonly layer: number
  /** Which way along its front layers count up: 1 unless it lies on a back. */
  readonly over?: 1 | -1
  readonly points: readonly Vec3[]
  /** Edge k, from points[k] to points[k + 1], is a real edge or fold (not a seam inside the panel). */
  readonly drawn: readonly boolean[]
  /** Unit normal on the front of the paper: the side seen when you look into the open card. */
  readonly front: Vec3
  /** The same points in the panel's flat coordinates, where it is part of one. */
  readonly flat?: readonly Flat[]
  /** Sticky tape rather than card. */
  readonly tape?: boolean
}

/**
 * The front's unit normal of a panel at the opening posed last: square to "across" = +-S x + C n and
 * to "along" = d.
 */
export function frontOf(model: Model, frames: readonly Frame[], panel: number): Vec3 {
  const { crease, side } = model.panels[panel] as ModelPanel
  const f = frames[crease] as Frame
  const way = frontSign(model, model.panels[panel] as ModelPanel)
  const S = way * (side === 'left' ? 1 : -1) * (f[12] as number)
  const C = way * (f[13] as number)
  const part = (k: number): number => S * (f[9 + k] as number) + C * (f[3 + k] as number)
  return [part(0), part(1), part(2)]
}

/** The whole paper in space at the opening posed last. */
export function surfaces(poser: Poser): readonly Surface[] {
  const { model, frames } = poser
  const stacking = stackingOf(model)
  const fronts = model.panels.map((_, index) => frontOf(model, frames, index))
  return patchesOf(model).map(({ panel, outline, drawn }): Surface => {
    const { name, owner, piece } = model.panels[panel] as Model['panels'][number]
    const { layer, over } = stacking[piece] as Stacking
    return {
      panel: name,
      owner,
      leaf: panel,
      layer,
      over,
      points: outline.map((flat) => poser.lift(panel, flat)),
      flat: outline,
      drawn,
      front: fronts[panel] as Vec3,
    }
  })
}
