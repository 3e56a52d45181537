import type { Design } from '../design/design.ts'
import { sharedSlits } from '../design/slits.ts'
import type { Side } from '../mechanisms/build.ts'
import { closesNowhere } from '../mechanisms/build.ts'
import type { Model } from '../model/model.ts'
import { modelOf } from '../model/model.ts'
import { baseOf } from '../motion/base.ts'
import type { Paper } from '../motion/kept.ts'
import { paperOf } from '../motion/kept.ts'
import type { Motion } from '../motion/motion.ts'
import { motionOf } from '../motion/motion.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import type { Span } from '../motion/range.ts'
import { rangesOf } from '../motion/range.ts'
import type { Part } from '../plane/convex.ts'
import { convexParts } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import { laid, throughLay } from '../plane/lay.ts'
import * as says from '../words/checks.ts'
import { The } from './names.ts'
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
   * The openings in degrees over which mechanisms (indices; -1: a page) are judged together: those to which
   * the card gets without what stands on them, so that no guest hides what its host runs into. That is what
   * their lineages allow (by their stops, and where they would have to go through their pages), less what
   * the stops of others elsewhere on the card take off. A hundredth of a degree is kept from every end, for
   * at its stop a mechanism turns infinitely fast. Null: they fit together at no opening.
   */
  range(...owners: readonly number[]): Range | null
  /** The openings in degrees that a mechanism (index; -1: a page) and what it stands on allow by themselves. */
  alone(owner: number): Range | null
  /** Stands for the paper of a mechanism (index; -1: the card); see `motion/kept.ts`. */
  paper(owner: number): Paper
  /** Whether a look at these papers over these openings counts as effort: not where they are as they were in the design to be mended. */
  counts(papers: readonly Paper[], span: Range): boolean
  /** Only whether a check holds is asked for: where it fails it need not be worst. */
  readonly hasty: boolean
  /** Looks at two moving panels that are left for all searches together; counted down. */
  readonly effort: { left: number }
  /** Whether a finding about these mechanisms is asked for (a repair looks at what it changes alone). */
  wants(owners: readonly number[]): boolean
}

/** What a question is about: findings that concern these mechanisms alone, or any of them. */
export interface About {
  readonly ids: ReadonlySet<string>
  readonly alone: boolean
}

export function subjectOf(
  design: Design,
  limits: Limits,
  about: About | null,
  effort: { left: number },
  before: ReadonlySet<Paper> | null = null,
): Subject {
  const model = modelOf(design)
  const pairs = new Set(sharedSlits(design).map(([i, j]) => `${i} ${j}`))
  const wanted = about && new Set(design.mechanisms.flatMap((m, index) => (about.ids.has(m.id) ? index : [])))
  const motion = motionOf({ model })
  let poser: Poser | null = null
  let notches: readonly Notch[] | null = null
  return {
    design,
    model,
    limits,
    ...rangesIn(design, model),
    paper: (owner) => paperOf(model, owner),
    counts: (papers, [low, high]) =>
      !before || low > 0 || high < 180 || papers.some((paper) => !before.has(paper)),
    hasty: about !== null,
    effort,
    get poser() {
      poser ??= compile(design)
      return poser
    },
    motion,
    get notches() {
      notches ??= notchesOf(model)
      return notches
    },
    shareSlit: (i, j) => pairs.has(i < j ? `${i} ${j}` : `${j} ${i}`),
    wants: (owners) => {
      if (!wanted) return true
      if (about.alone) return owners.every((owner) => owner < 0 || wanted.has(owner))
      return owners.some((owner) => wanted.has(owner))
    },
  }
}

/** Kept from a stop, degrees. */
const SHORT = 0.01

/** `Subject.range`: each set of owners is worked out once. */
function rangesIn(design: Design, model: Model): Pick<Subject, 'range' | 'alone'> {
  const { lineage } = rangesOf(design)
  const under = (owner: number): number => baseOf(model, owner)
  /** By mechanism that stops the card: what it allows, and what it stands on. */
  const stops = model.builds.flatMap((_, owner) => {
    const { low, high } = lineage(owner) ?? {}
    const range: Range = [
      low?.why?.how === 'stop' ? low.at + SHORT : 0,
      high?.why?.how === 'stop' ? high.at - SHORT : 180,
    ]
    if (!low || (range[0] === 0 && range[1] === 180)) return []
    const on = new Set<number>()
    for (let base = under(owner); base >= 0; base = under(base)) on.add(base)
    return [{ range, on }]
  })
  const known = new Map<string, Range | null>()
  const range: Subject['range'] = (...owners) => {
    const key = owners.join(' ')
    const found = known.get(key)
    if (found !== undefined) return found
    const own = owners.reduce<Range | null>(
      (range, owner) => common(range, ownRange(lineage(owner))),
      [0, 180],
    )
    const others = stops
      .filter(({ on }) => !owners.some((owner) => on.has(owner)))
      .reduce<Range | null>((range, stop) => common(range, stop.range), own)
    // Where others leave nothing, nothing can be told of the card; of these two it still can.
    const range = others ?? own
    known.set(key, range)
    return range
  }
  return { range, alone: (owner) => ownRange(lineage(owner)) }
}

function ownRange(span: Span | null): Range | null {
  if (!span) return null
  const low = span.low.why ? span.low.at + SHORT : 0
  const high = span.high.why ? span.high.at - SHORT : 180
  return low < high ? [low, high] : null
}

/** What two ranges have in common. */
function common(one: Range | null, two: Range | null): Range | null {
  if (!one || !two) return null
  const [low, high] = [Math.max(one[0], two[0]), Math.min(one[1], two[1])]
  return low < high ? [low, high] : null
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

/** Of a mechanism that fits at no opening, by itself or with what it stands on: why, in a sentence. */
export function fitsNowhere({ model }: Subject, owner: number): string {
  const { mechanism, build } = model.builds[owner] as Model['builds'][number]
  return closesNowhere(build) ? says.sidesNeverMeet(The(mechanism.id)) : says.neverFits(The(mechanism.id))
}

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
