import { convexParts, minus } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import { once } from '../plane/once.ts'
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

/** Every panel of the model in convex patches, the guests’ notches taken out; worked out once for each model. */
export const patchesOf: (model: Model) => readonly Patch[] = once(cut)

/** How many pieces of card lie under each flat piece of a model, by index; below 0: it lies under so many itself, stuck on their back. */
export const layersOf: (model: Model) => readonly number[] = once((model: Model) => {
  const list: number[] = []
  for (const { owner } of model.pieces) {
    const build = model.builds[owner]
    // The card lies under all.
    if (!build) list.push(0)
    else {
      const { host, hostPanel, firstPanel } = build
      const { left, right } = model.creases[host] as Model['creases'][number]
      const under = hostPanel === undefined ? [left.panel, right.panel] : [hostPanel]
      const below = under.map((panel) => list[model.panels[panel]?.piece as number] as number)
      const isBehind = hostPanel !== undefined && model.panels[firstPanel]?.turned === true
      list.push(isBehind ? Math.min(...below) - 1 : 1 + Math.max(...below))
    }
  }
  return list
})
