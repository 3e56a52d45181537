import { convexParts, minus } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import { once } from '../plane/once.ts'
import type { Model, ModelBuild } from './model.ts'

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

/** How a flat piece lies among the others where all lie flat. */
export interface Stacking {
  /** So many pieces of card lie under it; below 0: it lies under so many itself. */
  readonly layer: number
  /** Which way along its own front layers count up: -1 where it is stuck on a back, or built on one. */
  readonly over: 1 | -1
}

/** Whether a piece lies on the back of its host: on a fold that is a mountain the inside is there. */
const isBehind = ({ mechanism, build, hostPanel, host }: ModelBuild, { creases }: Model): boolean =>
  hostPanel === undefined
    ? ('side' in mechanism && mechanism.side === 'outside') !== (creases[host]?.fold === 'mountain')
    : Boolean(build.fromBack)

/** How each flat piece of a model lies, by index. */
export const stackingOf: (model: Model) => readonly Stacking[] = once((model: Model) => {
  const list: Stacking[] = []
  for (const { owner } of model.pieces) {
    const one = model.builds[owner]
    // The card lies under all.
    let [layer, over]: [number, 1 | -1] = [0, 1]
    if (one) {
      const { left, right } = model.creases[one.host] as Model['creases'][number]
      const below = (one.hostPanel === undefined ? [left.panel, right.panel] : [one.hostPanel]).map(
        (panel) => list[model.panels[panel]?.piece as number] as Stacking,
      )
      const side = (below.at(-1) as Stacking).over
      over = isBehind(one, model) ? (-side as 1 | -1) : side
      layer = over + over * Math.max(...below.map((under) => over * under.layer))
    }
    list.push({ layer, over })
  }
  return list
})
