import type { Card, Design } from '../design/design.ts'
import { sharedSlits } from '../design/slits.ts'
import type { Model } from '../model/model.ts'
import { modelOf } from '../model/model.ts'
import { baseOf } from '../motion/base.ts'
import type { Poser } from '../motion/pose.ts'
import { checkOpening, compile } from '../motion/pose.ts'
import { broughtIn, openingRange, rangesOf } from '../motion/range.ts'
import type { Frame } from '../plane/frame.ts'
import { once } from '../plane/once.ts'
import { largest } from '../plane/search.ts'
import type { Vec3 } from '../plane/vector.ts'
import { distance, halfAngle } from '../plane/vector.ts'

/** What a ruler reads at one mechanism's tip, mm. */
export interface TipMeasure {
  readonly at: Vec3
  /** Distance from the page plane beneath it; below 0: it lies behind that page. */
  readonly rise: number
  /** Distance from the gutter line. */
  readonly standOff: number
  /** Position along the gutter. */
  readonly reach: number
}

export interface Gape {
  readonly between: readonly [string, string]
  /** Between the two tips, mm. */
  readonly gape: number
}

export interface Measure {
  /** What was measured at, degrees: the opening asked for, or the end of the card's range that is nearest to it. */
  readonly opening: number
  /** Of every mechanism that `isRead`. */
  readonly tips: Readonly<Record<string, TipMeasure>>
  readonly gapes: readonly Gape[]
  /** Least distance from the shut model's outline to the page edge, mm; negative: it sticks out. */
  readonly margin: number
}

/** The distance of a point from the page plane beneath it, mm: the right page for x > 0, else the left one. */
export function riseOf([x, , z]: Vec3, opening: number): number {
  const [sine, cosine] = halfAngle(opening)
  return z * sine - Math.abs(x) * cosine
}

/** The point of a mechanism (index into `model.builds`) that rises, in space at the opening posed last; mm. */
export const tipAt = (poser: Poser, index: number): Vec3 => {
  const build = poser.model.builds[index]
  if (!build) throw new RangeError(`there is no mechanism ${index}`)
  const { crease, along, across } = build.build.tip
  const panel = poser.model.panels[build.firstPanel]
  if (crease === 'host' && panel) return poser.lift(build.firstPanel, [across ?? 0, along])
  const f = poser.frames[build.tipCrease] as Frame
  return [0, 1, 2].map((k) => (f[k] as number) + along * (f[6 + k] as number)) as Vec3
}

/**
 * Whether anything can be read of a mechanism (index): it and all that it stands on fit together, at an opening that
 * the others allow. Of what fits nowhere the pose is a guess.
 */
export function isRead(design: Design, index: number): boolean {
  const { nowhere, lineage } = rangesOf(design)
  const model = modelOf(design)
  for (let owner = index; owner >= 0; owner = baseOf(model, owner)) if (nowhere.includes(owner)) return false
  return lineage(index) !== null
}

/** How far a point is from the nearest edge of the card, mm: near, far or side; below 0 outside. */
export const toEdge = ({ width, height }: Card, [x, y, z]: Vec3): number =>
  Math.min(y, height - y, width - Math.hypot(x, z))

/** What rounding may leave of a point on the gutter, mm, and more. */
const ROUNDING = 1e-6

/** How far a point of the shut card is past the gutter, mm, below 0; infinite for what is not: there all paper begins. */
export const toGutter = ([, , z]: Vec3): number => (z < -ROUNDING ? z : Number.POSITIVE_INFINITY)

/** How far a point of the shut card is from the nearest end of the card, the gutter included, mm; below 0 outside. */
export const toShutEdge = (card: Card, p: Vec3): number => Math.min(toEdge(card, p), toGutter(p))

/** The least distance of the model's outline from the page edges at an opening (shut, from the gutter as well), and the panel point it is at. */
export function marginOf(poser: Poser, opening: number): { margin: number; panel: string; at: Vec3 } {
  const { card } = poser.model.design
  const pose = poser(opening)
  let best = { margin: Number.POSITIVE_INFINITY, panel: 'page/right', at: [0, 0, 0] as Vec3 }
  for (const { name, owner } of poser.model.panels) {
    if (owner < 0) continue
    for (const p of pose.panels[name] ?? []) {
      const margin = opening === 0 ? toShutEdge(card, p) : toEdge(card, p)
      if (margin < best.margin) best = { margin, panel: name, at: [...p] }
    }
  }
  return best
}

/**
 * The shut model's margin, mm, and where it is; worked out once for each design. A bare card keeps its whole
 * half width and height as margin.
 */
export const shutMargin: (design: Design) => { margin: number; panel: string; at: Vec3 } = once(
  (design: Design) => {
    const found = marginOf(compile(design), 0)
    const { width, height } = design.card
    return Number.isFinite(found.margin) ? found : { ...found, margin: Math.min(width, height / 2) }
  },
)

/** A ruler's own poser, put together once for each design: nothing of it leaves `measure`. */
const rulerOf = once(compile)

/**
 * Everything a ruler can read at one opening (degrees, 0 to 180); lengths in mm. Where paper cannot be no
 * ruler reads: past the card's range it is measured at the end of it.
 */
export function measure(design: Design, asked: number): Measure {
  checkOpening(asked)
  const opening = broughtIn(design, asked)
  const poser = rulerOf(design)
  poser(opening)
  const tips: Record<string, TipMeasure> = {}
  design.mechanisms.forEach(({ id }, index) => {
    if (!isRead(design, index)) return
    const at = tipAt(poser, index)
    tips[id] = { at, rise: riseOf(at, opening), standOff: Math.hypot(at[0], at[2]), reach: at[1] }
  })
  const gapes = sharedSlits(design).map(([i, j]): Gape => {
    const [a, b] = [design.mechanisms[i]?.id ?? '', design.mechanisms[j]?.id ?? '']
    return { between: [a, b], gape: distance(tipAt(poser, i), tipAt(poser, j)) }
  })
  return { opening, tips, gapes, margin: shutMargin(design).margin }
}

export const indexOf = (model: Model, id: string): number => {
  const index = model.builds.findIndex(({ mechanism }) => mechanism.id === id)
  if (index < 0) throw new RangeError(`there is no mechanism ${id}`)
  return index
}

type Highest = { readonly opening: number; readonly rise: number }

const peaks = once((_: Design) => new Map<string, Highest>())

/**
 * The opening (degrees) within the card's range at which a mechanism's tip rises highest, and that rise (mm); looked
 * for once in each design.
 */
export function highest(design: Design, id: string): Highest {
  const known = peaks(design)
  const found = known.get(id) ?? highestIn(design, id)
  known.set(id, found)
  return found
}

function highestIn(design: Design, id: string): Highest {
  const poser = compile(design)
  const index = indexOf(modelOf(design), id)
  const { x, value } = largest(
    (opening) => {
      poser(opening)
      return riseOf(tipAt(poser, index), opening)
    },
    ...openingRange(design),
  )
  return { opening: x, rise: value }
}
