import type { Design } from '../design/design.ts'
import { sharedSlits } from '../design/slits.ts'
import type { Side } from '../mechanisms/build.ts'
import type { Model } from '../model/model.ts'
import { modelOf } from '../model/model.ts'
import type { Motion } from '../motion/motion.ts'
import { motionOf } from '../motion/motion.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { rangesOf } from '../motion/range.ts'
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

/** Openings from the one to the other, degrees. */
export type Range = readonly [least: number, most: number]

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
   * The openings in degrees over which mechanisms (indices; -1: a page) move together: 0 to 180, less what
   * they and all that they stand on take off, each by its stop or where it would have to go through its
   * page. What stands on them takes nothing off, nor what stands elsewhere: that would hide what is wrong
   * with them. A hundredth of a degree is kept from such an end, for at its stop a mechanism turns
   * infinitely fast. Null: they fit together at no opening.
   */
  range(...owners: readonly number[]): Range | null
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
  return {
    design,
    model,
    limits,
    range: (...owners) => together(owners.map((owner) => rangeOf(design, owner))),
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

function rangeOf(design: Design, owner: number): Range | null {
  const span = rangesOf(design).lineage(owner)
  if (!span) return null
  const low = span.low.why ? span.low.at + SHORT : 0
  const high = span.high.why ? span.high.at - SHORT : 180
  return low < high ? [low, high] : null
}

/** What several ranges have in common. */
const together = (all: readonly (Range | null)[]): Range | null =>
  all.reduce<Range | null>(
    (common, one) => {
      if (!common || !one) return null
      const [low, high] = [Math.max(common[0], one[0]), Math.min(common[1], one[1])]
      return low < high ? [low, high] : null
    },
    [0, 180],
  )

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
  const { sheet, piece } = model.panels[panel] as Model['panels'][number]
  const id = model.pieces[piece]?.id ?? 'card'
  return { flat: points.map((p) => laid(sheet, p)), ...(id === 'card' ? {} : { piece: id }) }
}

/** The mechanisms that a finding is about: names of panels have a stroke in them. */
export const mechanismsIn = ({ ids }: Finding): string[] => ids.filter((id) => !id.includes('/'))

/** Two findings with one key are about the same thing. */
export const keyOf = (finding: Finding): string => `${finding.name} ${mechanismsIn(finding).sort().join(' ')}`

/** How far a finding is from its limit, above 0 on the good side. */
export const roomOf = ({ sense, value, limit }: Finding): number =>
  sense === 'at-least' ? value - limit : limit - value
