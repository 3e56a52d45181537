import type { Model } from '../model/model.ts'
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
interface Step {
  readonly panel: number
  readonly next: number
  readonly crease: number
  readonly origin: Reach
  readonly end: Reach
  readonly runAcross: number
  readonly runAlong: number
  readonly offAcross: number
  readonly offAlong: number
}

/** How every panel hangs, over the fewest creases, on one root. */
export interface Chain {
  readonly root: number
  readonly steps: readonly Step[]
  /** By panel: the crease by which it is reached, as it lies in it, and how long it is, mm. */
  readonly entries: readonly Lay[]
  readonly lengths: readonly number[]
  /** By panel: seen from the world, it turns about directions along the gutter alone. */
  readonly upright: readonly boolean[]
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
    const base = model.creases[crease]?.[side]
    if (base && base.panel !== panel)
      join(-1, model.creases[crease]?.length ?? 0, base, { panel, lay: sameLay })
  })
  return hinges
}

const inner = (p: Flat, q: Flat): number => p[0] * q[0] + p[1] * q[1]

/** The chain from one panel, or from both pages for `WORLD`. */
export function chainFrom(hinges: readonly (readonly Hinge[])[], root: number): Chain {
  const line = root === WORLD ? [0, 1] : [root]
  const known = new Set(line)
  const entries: Lay[] = hinges.map(() => sameLay)
  const lengths = hinges.map(() => 0)
  const upright = hinges.map((_, panel) => root === WORLD && known.has(panel))
  const steps: Step[] = []
  for (let panel = line.shift(); panel !== undefined; panel = line.shift()) {
    const { origin, run, off } = entries[panel] as Lay
    const reached = lengths[panel] as number
    const reach = (to: Flat): Reach => {
      const from: Flat = [to[0] - origin[0], to[1] - origin[1]]
      const along = inner(from, run)
      return {
        across: Math.abs(inner(from, off)),
        fromOrigin: Math.abs(along),
        fromEnd: Math.abs(along - reached),
      }
    }
    for (const { crease, length, here, there, next } of hinges[panel] ?? []) {
      if (known.has(next)) continue
      known.add(next)
      line.push(next)
      entries[next] = there
      lengths[next] = length
      const end: Flat = [here.origin[0] + length * here.run[0], here.origin[1] + length * here.run[1]]
      const runAcross = Math.abs(inner(here.run, off))
      // The entry of an upright panel lies along the gutter, and so does a crease along that entry.
      upright[next] = upright[panel] === true && (crease < 0 || runAcross === 0)
      steps.push({
        panel,
        next,
        crease,
        origin: reach(here.origin),
        end: reach(end),
        runAcross,
        runAlong: Math.abs(inner(here.run, run)),
        offAcross: Math.abs(inner(here.off, off)),
        offAlong: Math.abs(inner(here.off, run)),
      })
    }
  }
  return { root, steps, entries, lengths, upright }
}
