/** Tabs on the card, or through slits in it: paper that is stuck down first may not lie over a slit that is still to be used. */
import { change, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { tabbed } from '../design/tabs.ts'
import type { Tabs } from '../mechanisms/shared/own-piece.ts'
import { LEAST_THROUGH } from '../mechanisms/shared/own-piece.ts'
import type { Flat } from '../plane/lay.ts'
import { areNear, extentOf } from '../plane/near.ts'
import { longestThrough } from '../plane/outline.ts'
import type { Model, ModelGlue } from './model.ts'
import { modelOf } from './model.ts'

/** A slit that is closed, on either face, before its own tab goes through. */
export interface CoveredSlit {
  /** Owner of what lies over it, and of the tab that it is for. */
  readonly by: number
  readonly of: number
  readonly panel: number
  readonly slit: readonly [Flat, Flat]
  /** How much of it is covered, mm. */
  readonly long: number
}

/** The paper that a glued place lays on its panel: a tab, or the whole of what is stuck on flat. */
const paperOn = (model: Model, { owner, outline, closed, aside }: ModelGlue): readonly Flat[] => {
  if (aside !== undefined) return closed ? outline : []
  return model.panels[model.builds[owner]?.firstPanel ?? -1]?.outline ?? []
}

/** Mechanisms are glued on in their order: what comes later may lie over a slit, for its tab is behind by then. */
export function coveredSlits(model: Model): readonly CoveredSlit[] {
  return model.glue.flatMap(({ slit, panel, owner: of }) => {
    if (!slit) return []
    const reach = extentOf(slit)
    return model.glue.flatMap((over): CoveredSlit[] => {
      if (over.panel !== panel || over.owner >= of) return []
      const paper = paperOn(model, over)
      const long =
        paper.length > 2 && areNear(extentOf(paper), reach, 0)
          ? longestThrough({ a: slit[0], b: slit[1] }, paper)
          : 0
      return long > 0 ? [{ by: over.owner, of, panel, slit, long }] : []
    })
  })
}

/** Tabs are made narrower in steps of so much, mm. */
const STEP = 0.5

/** The mechanisms that lie over slits of others, by id. */
const covering = (design: Design): ReadonlySet<string> =>
  new Set(coveredSlits(modelOf(design)).flatMap(({ by }) => design.mechanisms[by]?.id ?? []))

/** The width of a mechanism's tab, mm. */
const tabOf = ({ mechanisms }: Design, id: string): number => {
  const m = mechanisms.find((one) => one.id === id)
  return m ? settingOf(m, 'tab') : 0
}

/** The design with tabs just so narrow that they cover no slit any more, all at once; one that no width helps is as it was. */
function leftFree(design: Design, ids: readonly string[]): Design {
  for (let now = design; ; ) {
    const over = covering(now)
    const left = ids.filter((id) => over.has(id))
    const narrower = left.filter((id) => tabOf(now, id) - STEP >= LEAST_THROUGH)
    if (narrower.length === 0)
      return left.reduce((one, id) => change(one, id, { tab: tabOf(design, id) }), now)
    now = narrower.reduce((one, id) => change(one, id, { tab: tabOf(one, id) - STEP }), now)
  }
}

/**
 * The design with all its tabs glued on the card, or all pushed through slits; there they are as narrow as it takes
 * to leave each other's slits free. The rest as it was.
 */
export function withTabs(design: Design, tabs: Tabs): Design {
  const ids = tabbed(design)
  const made = ids.reduce((now, id) => change(now, id, { tabs }), design)
  return tabs === 'slit' ? leftFree(made, ids) : made
}
