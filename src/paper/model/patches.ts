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

/** What is left of an outline of a panel (index) without some notches. */
export function patchesIn(
  panel: number,
  outline: readonly Flat[],
  notches: readonly { readonly outline: readonly Flat[] }[],
): readonly Patch[] {
  const holes = notches.flatMap((notch) => convexParts(notch.outline))
  return holes
    .reduce((parts, hole) => parts.flatMap((part) => minus(part, hole)), convexParts(outline))
    .map(({ points, drawn }): Patch => ({ panel, outline: points, drawn }))
}

const cut = ({ panels }: Model): readonly Patch[] =>
  panels.flatMap(({ outline, notches }, panel) => patchesIn(panel, outline, notches))

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
