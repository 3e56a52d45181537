import { alongLay, isAlong } from '../model/lines.ts'
import type { Model } from '../model/model.ts'
import type { Patch } from '../model/patches.ts'
import { patchesIn } from '../model/patches.ts'
import { between, clip } from '../plane/clip.ts'
import type { Flat } from '../plane/lay.ts'
import { extentOf } from '../plane/near.ts'
import type { Segment } from '../plane/segment.ts'
import type { Body } from './motion.ts'
import { bodyOf } from './motion.ts'
import { seamsAlong } from './seams.ts'

/** Half the width of a cut, mm: paper this near to a cut edge is not looked at, so that the two edges of one cut do not count as touching when flat. */
export const KERF = 0.05

/** A panel as the search sees it. */
export interface Leaf {
  readonly panel: number
  /** Its whole outline, and the box round it. */
  readonly outline: Body
  readonly box: Box
  /**
   * The convex parts of the paper itself, without a narrow rim along cut edges; and some seams between them. Only
   * what mechanisms that are `near` take out of it is taken out, and only their folds, and those of what it is part
   * of itself, are seen.
   */
  facets(near: (owner: number) => boolean): readonly Facet[]
}

export interface Facet {
  /** With the rim, for what shares a point with it; without, for all else. */
  readonly whole: Body
  readonly body: Body
  readonly box: Box
}

/** Least and greatest across and along. */
export type Box = readonly [number, number, number, number]

/** A convex outline (counter-clockwise) with the strip along its cut edges taken off. */
function trimmed(outline: readonly Flat[], cut: readonly boolean[]): readonly Flat[] {
  let points = outline
  outline.forEach((a, k) => {
    if (!cut[k]) return
    const b = outline[(k + 1) % outline.length] as Flat
    const size = Math.hypot(b[0] - a[0], b[1] - a[1])
    const inside = (p: Flat) => ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / size - KERF
    points = clip(points, points.map(inside), between).points
  })
  return points
}

function facetsOf(panel: number, patches: readonly Patch[], folds: readonly Segment[]): readonly Facet[] {
  const facet = (whole: readonly Flat[], points: readonly Flat[]): Facet => ({
    whole: bodyOf(panel, whole),
    body: bodyOf(panel, points),
    box: extentOf(points),
  })
  const parts = patches.flatMap(({ outline, drawn }): Facet[] => {
    const cut = outline.map(
      (a, k) => drawn[k] === true && !isAlong({ a, b: outline[(k + 1) % outline.length] as Flat }, folds),
    )
    const points = trimmed(outline, cut)
    return points.length < 3 ? [] : [facet(outline, points)]
  })
  const seams = seamsAlong(patches, folds).map(([a, right, b, left]) => {
    const short = Math.min(0.5, KERF / Math.hypot(b[0] - a[0], b[1] - a[1]))
    const inset = (p: Flat, q: Flat): Flat => [p[0] + short * (q[0] - p[0]), p[1] + short * (q[1] - p[1])]
    return facet([a, right, b, left], [inset(a, b), right, inset(b, a), left])
  })
  return [...parts, ...seams]
}

/** Every panel of a model. The paper itself is cut up when it is first asked for: mostly an outline will do. */
export function leavesOf(model: Model): readonly Leaf[] {
  const folds = creasesIn(model)
  return model.panels.map(({ outline, notches }, panel): Leaf => {
    const known = new Map<string, readonly Facet[]>()
    return {
      panel,
      outline: bodyOf(panel, outline),
      box: extentOf(outline),
      facets: (near) => {
        const holes = notches.filter(({ owner }) => near(owner))
        const lines = (folds[panel] ?? []).filter(({ owner }) => near(owner))
        const key = [...new Set([...holes, ...lines].map(({ owner }) => owner))].join(' ')
        const found = known.get(key) ?? facetsOf(panel, patchesIn(panel, outline, holes), lines)
        known.set(key, found)
        return found
      },
    }
  })
}

/** By panel: where its creases lie, and whose they are. */
function creasesIn(model: Model): readonly (readonly (Segment & { readonly owner: number })[])[] {
  const lines: (Segment & { readonly owner: number })[][] = model.panels.map(() => [])
  for (const { left, right, length, owner } of model.creases)
    for (const { panel, lay } of [left, right])
      lines[panel]?.push({ a: alongLay(lay, 0), b: alongLay(lay, length), owner })
  return lines
}
