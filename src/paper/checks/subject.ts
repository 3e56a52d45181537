import type { Design } from '../design/design.ts'
import { sharedSlits } from '../design/slits.ts'
import type { Side } from '../mechanisms/build.ts'
import type { Model } from '../model/model.ts'
import { modelOf } from '../model/model.ts'
import type { Motion } from '../motion/motion.ts'
import { motionOf } from '../motion/motion.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { stopOf } from '../motion/stop.ts'
import type { Part } from '../plane/convex.ts'
import { convexParts } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import { laid, throughLay } from '../plane/lay.ts'
import type { Check } from './verdict.ts'

/** What one check found; repairs are looked for afterwards. */
export type Finding = Omit<Check, 'repair'>

/** One mechanism's hole in one panel: outline in the panel's flat coordinates. */
export interface Notch {
  /** Index of the mechanism. */
  readonly owner: number
  readonly panel: number
  readonly side: Side
  readonly outline: readonly Flat[]
  readonly parts: readonly Part[]
}

/** Settings of `check` that its checks read. */
export interface Limits {
  /** Least paper between a cut and an edge or another line, mm. */
  readonly bridge: number
  /** Greatest thickness of the shut card, mm. */
  readonly thickness: number
}

/** A design on the bench: what several checks need, worked out once. */
export interface Subject {
  readonly design: Design
  readonly model: Model
  readonly limits: Limits
  /** Poses are overwritten by the next call. */
  readonly poser: Poser
  readonly motion: Motion
  readonly notches: readonly Notch[]
  /** True if two mechanisms share one slit. */
  shareSlit(one: number, two: number): boolean
  /**
   * The openings in degrees that the card can reach: 0 to 180, less what a mechanism that stops earlier
   * takes off, and a hundredth of a degree, for at its stop it turns infinitely fast.
   */
  range(): readonly [least: number, most: number]
  /** Only whether a check holds is asked for: where it fails it need not be worst. */
  readonly hasty: boolean
  /** Looks at two moving panels that are left for all searches together; counted down. */
  readonly effort: { left: number }
  /** Whether a finding about these mechanisms is asked for (a repair looks at its own ones alone). */
  wants(owners: readonly number[]): boolean
}

export function subjectOf(
  design: Design,
  limits: Limits,
  only: ReadonlySet<string> | null,
  effort: { left: number },
): Subject {
  const model = modelOf(design)
  const pairs = new Set(sharedSlits(design).map(([i, j]) => `${i} ${j}`))
  const wanted = only && new Set(design.mechanisms.flatMap((m, index) => (only.has(m.id) ? index : [])))
  const poser = compile(design)
  let range: readonly [number, number] | null = null
  return {
    design,
    model,
    limits,
    range: () => {
      range ??= rangeOf(poser)
      return range
    },
    hasty: only !== null,
    effort,
    poser,
    motion: motionOf(poser),
    notches: notchesOf(model),
    shareSlit: (i, j) => pairs.has(i < j ? `${i} ${j}` : `${j} ${i}`),
    wants: (owners) => !wanted || owners.every((owner) => owner < 0 || wanted.has(owner)),
  }
}

/** Kept from a stop, degrees. */
const SHORT = 0.01

function rangeOf(poser: Poser): readonly [number, number] {
  const stops = (end: 0 | 180) => [...poser(end).stopped].map((id) => stopOf(poser, id, end))
  const low = Math.min(180, Math.max(0, ...stops(0).map((opening) => opening + SHORT)))
  const high = Math.min(180, ...stops(180).map((opening) => opening - SHORT))
  return [low, Math.max(low, high)]
}

function notchesOf(model: Model): Notch[] {
  return model.builds.flatMap(({ build, host }, owner) => {
    const { notch } = build
    if (!notch) return []
    return (['left', 'right'] as const).flatMap((side): Notch[] => {
      const { panel, lay } = model.creases[host]?.[side] ?? {}
      if (panel === undefined || !lay) return []
      const outline = throughLay(lay, notch[side])
      return [{ owner, panel, side, outline, parts: convexParts(outline) }]
    })
  })
}

/** The id of a mechanism, or of the card's own part. */
export const idOf = ({ design }: Subject, owner: number): string => design.mechanisms[owner]?.id ?? 'page'

/** Points of a panel on the flat piece it is printed on, and that piece. */
export function onPiece({ model }: Subject, panel: number, points: readonly Flat[]) {
  const { onPiece, piece } = model.panels[panel] as Model['panels'][number]
  const id = model.pieces[piece]?.id ?? 'card'
  return { flat: points.map((p) => laid(onPiece, p)), ...(id === 'card' ? {} : { piece: id }) }
}

/** The mechanisms that a finding is about: names of panels have a stroke in them. */
export const mechanismsIn = ({ ids }: Finding): string[] => ids.filter((id) => !id.includes('/'))

/** Two findings with one key are about the same thing. */
export const keyOf = (finding: Finding): string => `${finding.name} ${mechanismsIn(finding).sort().join(' ')}`

/** How far a finding is from its limit, above 0 on the good side. */
export const roomOf = ({ sense, value, limit }: Finding): number =>
  sense === 'at-least' ? value - limit : limit - value
