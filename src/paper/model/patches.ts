import { convexParts, minus } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import type { Model } from './model.ts'

/**
 * A convex part of what is left of a panel after its guests took their notches out of it.
 * Edge k runs from outline[k] to outline[k + 1]; `drawn[k]` tells a real edge of the paper (or a
 * fold) from a seam between two parts of the same panel.
 */
export interface Patch {
  /** Index into `Model.panels`. */
  readonly panel: number
  /** Flat coordinates of the panel, mm. */
  readonly outline: readonly Flat[]
  readonly drawn: readonly boolean[]
}

function cut(model: Model): readonly Patch[] {
  return model.panels.flatMap((panel, index) => {
    let parts = convexParts(panel.outline)
    for (const notch of panel.notches) {
      const holes = convexParts(notch.outline)
      for (const hole of holes)
        parts = parts.flatMap((part) => {
          const left = minus(part, hole)
          return left
        })
    }
    return parts.map(({ points, drawn }): Patch => ({ panel: index, outline: points, drawn }))
  })
}

const known = new WeakMap<Model, readonly Patch[]>()

/** Every panel of the model in convex patches, the guests’ notches taken out; worked out once for each model. */
export function patchesOf(model: Model): readonly Patch[] {
  let found = known.get(model)
  if (!found) {
    found = cut(model)
    known.set(model, found)
  }
  return found
}

const layers = new WeakMap<Model, readonly number[]>()

/** How many pieces of card lie under each flat piece of a model, by index; below 0: it lies under so many itself, stuck on their back. */
export function layersOf(model: Model): readonly number[] {
  let found = layers.get(model)
  if (!found) {
    const list: number[] = []
    for (const { owner } of model.pieces) {
      const { host, hostPanel, firstPanel = -1 } = model.builds[owner] ?? {}
      const behind = hostPanel !== undefined && model.panels[firstPanel]?.turned === true
      const crease = hostPanel === undefined && host !== undefined ? model.creases[host] : undefined
      const under = hostPanel === undefined ? [crease?.left.panel, crease?.right.panel] : [hostPanel]
      const below = under.map((panel) => list[model.panels[panel ?? -1]?.piece ?? -1] ?? -1)
      list.push(behind ? Math.min(...below) - 1 : 1 + Math.max(...below))
    }
    found = list
    layers.set(model, found)
  }
  return found
}
