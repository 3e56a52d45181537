import { change, settable, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { sharedSlits } from '../design/slits.ts'
import { riseOf, tipAt } from '../measure/measure.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { compile } from '../motion/pose.ts'
import { broughtIn } from '../motion/range.ts'
import { distance } from '../plane/vector.ts'

/** One thing a maker read off a finished card; mm, the stop angle in degrees. */
export type Reading =
  | { readonly what: 'rise' | 'reach'; readonly id: string; readonly opening: number; readonly value: number }
  | {
      readonly what: 'gape'
      readonly between: readonly [string, string]
      readonly opening: number
      readonly value: number
    }
  | { readonly what: 'stop'; readonly id: string; readonly value: number }

/** A making error, or a card held open wrongly (`card`, `opening`), that would explain the readings. */
export interface Explanation {
  /** Null: nothing is off, the readings scatter as a ruler does. */
  readonly slip: {
    readonly id: string
    readonly field: string
    readonly label: string
    readonly unit: 'mm' | 'deg'
    readonly designed: number
    /** As it was most likely made: near the design, as far as the readings let it. */
    readonly made: number
    /** As it would have to be for the readings alone, however large a slip that is. */
    readonly fitted: number
  } | null
  /** 0 to 1; all explanations add up to 1. */
  readonly sure: number
  /** How far the readings still are from this explanation: root mean square, in ruler errors. */
  readonly left: number
}

/**
 * Common practice, no source: a school ruler held to a tip reads to half a millimetre, a protractor to
 * a degree; a careful hand draws, cuts and folds to a millimetre, or a degree and a half.
 */
const RULER = 0.5

const PROTRACTOR = 1

const HAND = { mm: 1, deg: 1.5 } as const

/** A card held against the corner of a book is open to its angle within so much. Common practice, no source. */
const HELD = 3

/** Larger slips than this are no slips of the hand, mm or degrees. */
const LARGEST = 15

/** What each reading would be on a card made like this, in their order. */
function modelled(design: Design, readings: readonly Reading[]): number[] {
  const poser = compile(design)
  const indexOf = (id: string): number => {
    const index = design.mechanisms.findIndex((m) => m.id === id)
    if (index < 0) throw new RangeError(`there is no mechanism ${id}`)
    return index
  }
  let posed = Number.NaN
  return readings.map((reading) => {
    if (reading.what === 'stop') return poser.model.builds[indexOf(reading.id)]?.build.range?.[1] ?? 180
    // A card is held no further open than it goes.
    const opening = broughtIn(design, reading.opening)
    if (posed !== opening) poser(opening)
    posed = opening
    if (reading.what === 'gape') {
      const [a, b] = reading.between.map(indexOf) as [number, number]
      if (!sharedSlits(design).some((pair) => pair.includes(a) && pair.includes(b)))
        throw new RangeError(`${reading.between.join(' and ')} share no slit`)
      return distance(tipAt(poser, a), tipAt(poser, b))
    }
    const at = tipAt(poser, indexOf(reading.id))
    return reading.what === 'rise' ? riseOf(at, opening) : at[1]
  })
}

/** Readings' errors under a design, in units of the instrument's own error. */
const errors = (design: Design, readings: readonly Reading[]): number[] =>
  modelled(design, readings).map((value, k) => {
    const reading = readings[k] as Reading
    return (value - reading.value) / (reading.what === 'stop' ? PROTRACTOR : RULER)
  })

/** The design with nothing but what the readings can depend on: what was read, what it stands on, and who shares a slit with these. */
function concerned(design: Design, readings: readonly Reading[]): Design {
  const kept = new Set<string>()
  const keep = (id: string): void => {
    const index = design.mechanisms.findIndex((m) => m.id === id)
    if (index < 0) throw new RangeError(`there is no mechanism ${id}`)
    if (kept.has(id)) return
    kept.add(id)
    const { on } = design.mechanisms[index] as Design['mechanisms'][number]
    if (on !== 'gutter') keep(on.split('/')[0] as string)
    for (const [i, j] of sharedSlits(design))
      if (i === index || j === index) keep(design.mechanisms[i === index ? j : i]?.id ?? id)
  }
  for (const reading of readings)
    for (const id of reading.what === 'gape' ? reading.between : [reading.id]) keep(id)
  return { ...design, mechanisms: design.mechanisms.filter(({ id }) => kept.has(id)) }
}

const squares = (v: readonly number[]): number => v.reduce((sum, x) => sum + x * x, 0)

/**
 * The likeliest making errors behind a maker's readings, likeliest first: each single setting off by
 * some amount, or nothing off at all. Each is weighed by how well it explains the readings and by how
 * large a slip it asks for (evidence of a one-parameter Gaussian model, Laplace's approximation).
 * Throws a RangeError for an unknown mechanism or pair.
 */
export function readBack(whole: Design, readings: readonly Reading[]): readonly Explanation[] {
  const design = concerned(whole, readings)
  const nothing = errors(design, readings)
  const spread = (e: readonly number[]) => Math.sqrt(squares(e) / Math.max(1, e.length))
  const candidates: Candidate[] = [
    { explanation: { slip: null, left: spread(nothing) }, log: -squares(nothing) / 2 },
  ]
  /** Weighs one slip: how well it explains the readings, against how large it is for the hand. */
  const weighed = (slip: Slipping, hand: number, at: (by: number) => number[] | null): Candidate[] => {
    const best = leastSlip(at, hand)
    if (!best) return []
    const { by, errors: e, slope } = best
    // How much the readings pin the slip down, against what the hand alone says of it.
    const width = -0.5 * Math.log(1 + slope * hand * hand)
    const { designed } = slip
    const made = { ...slip, made: designed + by, fitted: designed + fittedSlip(at, by) }
    return [
      { explanation: { slip: made, left: spread(e) }, log: -(squares(e) + (by / hand) ** 2) / 2 + width },
    ]
  }
  const openings = new Set(readings.flatMap((one) => (one.what === 'stop' ? [] : [one.opening])))
  const [held, another] = openings
  // Read at several openings, a card is hardly held wrongly by as much each time.
  if (held !== undefined && another === undefined)
    candidates.push(
      ...weighed(
        { id: 'card', field: 'opening', label: 'Opening', unit: 'deg', designed: held },
        HELD,
        (by) =>
          held + by < 0 || held + by > 180
            ? null
            : errors(
                design,
                readings.map((one) => (one.what === 'stop' ? one : { ...one, opening: held + by })),
              ),
      ),
    )
  const seen = new Set<string>()
  for (const m of design.mechanisms) {
    const kind = kindOf(m)
    for (const { name, label, unit, min, max } of settable(m)) {
      if (name === 'tab' || !kind.fields.some((field) => field.name === name)) continue
      const designed = settingOf(m, name)
      const hand = HAND[unit]
      const at = (by: number): number[] | null => {
        const value = designed + by
        if (value < min || value > max || value * designed < 0) return null
        const changed = change(design, m.id, { [name]: value })
        return changed.mechanisms.some((one) => kindOf(one).limits?.(one)) ? null : errors(changed, readings)
      }
      for (const one of weighed({ id: m.id, field: name, label, unit, designed }, hand, at)) {
        // A shared slit stands at two mechanisms and is one slip.
        const made = twinKey(change(design, m.id, { [name]: one.explanation.slip?.made ?? designed }))
        if (!seen.has(made)) candidates.push(one)
        seen.add(made)
      }
    }
  }
  const top = Math.max(...candidates.map(({ log }) => log))
  const total = candidates.reduce((sum, { log }) => sum + Math.exp(log - top), 0)
  return candidates
    .map(({ explanation, log }) => ({ ...explanation, sure: Math.exp(log - top) / total }))
    .sort((a, b) => b.sure - a.sure)
}

interface Candidate {
  readonly explanation: Omit<Explanation, 'sure'>
  /** Of its weight. */
  readonly log: number
}

type Slipping = Omit<NonNullable<Explanation['slip']>, 'made' | 'fitted'>

/** Tells two changed designs apart to a hundredth of a millimetre. */
const twinKey = (design: Design): string =>
  JSON.stringify(design.mechanisms, (_, value: unknown) =>
    typeof value === 'number' ? Math.round(value * 100) / 100 : value,
  )

/** The slip that explains best at the least size: Gauss-Newton in one number, from several starts. */
function leastSlip(
  at: (by: number) => number[] | null,
  hand: number,
): { by: number; errors: number[]; slope: number } | null {
  const h = 1e-3
  let best: { by: number; errors: number[]; slope: number; cost: number } | null = null
  for (const start of [0, 4, -4]) {
    let by = start
    for (let turn = 0; turn < 25; turn++) {
      const [e, more, less] = [at(by), at(by + h), at(by - h)]
      if (!e || !more || !less) break
      const slope = e.map((_, k) => ((more[k] as number) - (less[k] as number)) / (2 * h))
      const pull = slope.reduce((sum, s, k) => sum + s * (e[k] as number), 0) + by / (hand * hand)
      const stiff = squares(slope) + 1 / (hand * hand)
      const cost = squares(e) + (by / hand) ** 2
      if (!best || cost < best.cost) best = { by, errors: e, slope: squares(slope), cost }
      const step = Math.max(-3, Math.min(3, -pull / stiff))
      if (Math.abs(step) < 1e-7) break
      by += step
    }
  }
  return best
}

/** The slip that fits the readings best whatever its size, from the likeliest one on; that one where none fits better. */
function fittedSlip(at: (by: number) => number[] | null, likeliest: number): number {
  const h = 1e-3
  let best = { by: likeliest, cost: Number.POSITIVE_INFINITY }
  for (let by = likeliest, turn = 0; turn < 25 && Math.abs(by) <= LARGEST; turn++) {
    const [e, more, less] = [at(by), at(by + h), at(by - h)]
    if (!e || !more || !less) break
    const slope = e.map((_, k) => ((more[k] as number) - (less[k] as number)) / (2 * h))
    const stiff = squares(slope)
    const cost = squares(e)
    if (cost < best.cost) best = { by, cost }
    // What hardly moves the readings is not asked to explain them.
    if (stiff < 1e-4) break
    const step = -slope.reduce((sum, s, k) => sum + s * (e[k] as number), 0) / stiff
    if (Math.abs(step) < 1e-7) break
    by += Math.max(-3, Math.min(3, step))
  }
  return best.by
}
