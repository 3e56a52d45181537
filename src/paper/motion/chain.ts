import type { Model, ModelCrease } from '../model/model.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import { sameLay } from '../plane/lay.ts'

/** The root of a chain that is fixed to no panel but to the card's plane of symmetry. */
export const WORLD = -1

/** A crease as it lies in the two panels that it joins; -1: the two move as one. */
export interface Hinge {
  readonly crease: number
  readonly length: number
  readonly here: Lay
  readonly there: Lay
  readonly next: number
}

/** A point of a panel as reached from the crease by which the panel was: how far off it, and from its two ends along it; mm. */
export interface Reach {
  readonly across: number
  readonly fromOrigin: number
  readonly fromEnd: number
}

/**
 * One step from a panel over a crease to the next: the crease's two ends, its direction and its square
 * direction in the coordinates of the crease by which `panel` was reached, without sign.
 */
export interface Step {
  readonly panel: number
  readonly crease: number
  readonly origin: Reach
  readonly end: Reach
  readonly runAcross: number
  readonly runAlong: number
  readonly offAcross: number
  readonly offAlong: number
  /** Seen from the world, the panel it leads to turns about directions along the gutter alone. */
  readonly upright: boolean
}

/** How every panel hangs, over the fewest creases, on one root. Steps are worked out when first asked for. */
export interface Chain {
  readonly root: number
  /** The last step on the way to a panel; null for the root: for `WORLD`, either page. */
  stepTo(panel: number): Step | null
  /** The crease by which a panel is reached, as it lies in it, and how long it is, mm. */
  entry(panel: number): Lay
  length(panel: number): number
}

/** By panel: its creases, and what is stuck to it. */
export function hingesOf(model: Model): readonly (readonly Hinge[])[] {
  const hinges: Hinge[][] = model.panels.map(() => [])
  type End = { readonly panel: number; readonly lay: Lay }
  const join = (crease: number, length: number, a: End, b: End): void => {
    hinges[a.panel]?.push({ crease, length, here: a.lay, there: b.lay, next: b.panel })
    hinges[b.panel]?.push({ crease, length, here: b.lay, there: a.lay, next: a.panel })
  }
  model.creases.forEach(({ left, right, length }, crease) => {
    join(crease, length, left, right)
  })
  model.panels.forEach(({ crease, side }, panel) => {
    const { length, [side]: base } = model.creases[crease] as ModelCrease
    if (base.panel !== panel) join(-1, length, base, { panel, lay: sameLay })
  })
  return hinges
}

const inner = (p: Flat, q: Flat): number => p[0] * q[0] + p[1] * q[1]

/** The chain from one panel, or from both pages for `WORLD`. */
export function chainFrom(hinges: readonly (readonly Hinge[])[], root: number): Chain {
  const roots = root === WORLD ? [0, 1] : [root]
  // How each panel is reached: from which other, and over which of its hinges.
  const before = new Int32Array(hinges.length).fill(-1)
  const via: (Hinge | undefined)[] = []
  const line = [...roots]
  // It grows while it is gone through.
  for (const panel of line)
    for (const hinge of hinges[panel] ?? []) {
      if (via[hinge.next] || roots.includes(hinge.next)) continue
      via[hinge.next] = hinge
      before[hinge.next] = panel
      line.push(hinge.next)
    }
  const entry = (panel: number): Lay => via[panel]?.there ?? sameLay
  const length = (panel: number): number => via[panel]?.length ?? 0
  const isRoot = (panel: number): boolean => roots.includes(panel)
  const isUpright = (panel: number): boolean =>
    isRoot(panel) ? root === WORLD : (stepTo(panel)?.upright ?? false)

  const stepOver = ({ crease, length: long, here }: Hinge, panel: number): Step => {
    const { origin, run, off } = entry(panel)
    const reached = length(panel)
    const reach = (to: Flat): Reach => {
      const from: Flat = [to[0] - origin[0], to[1] - origin[1]]
      const along = inner(from, run)
      return {
        across: Math.abs(inner(from, off)),
        fromOrigin: Math.abs(along),
        fromEnd: Math.abs(along - reached),
      }
    }
    const runAcross = Math.abs(inner(here.run, off))
    return {
      panel,
      crease,
      origin: reach(here.origin),
      end: reach([here.origin[0] + long * here.run[0], here.origin[1] + long * here.run[1]]),
      runAcross,
      runAlong: Math.abs(inner(here.run, run)),
      offAcross: Math.abs(inner(here.off, off)),
      offAlong: Math.abs(inner(here.off, run)),
      // The entry of an upright panel lies along the gutter, and so does a crease along that entry.
      upright: isUpright(panel) && (crease < 0 || runAcross === 0),
    }
  }
  const steps: (Step | undefined)[] = []
  const stepTo = (panel: number): Step | null => {
    const hinge = via[panel]
    if (!hinge) return null
    const known = steps[panel]
    if (known) return known
    const step = stepOver(hinge, before[panel] as number)
    steps[panel] = step
    return step
  }
  return { root, stepTo, entry, length }
}
