import { change, made, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { ownerOf } from '../design/name.ts'
import { fieldsFor, isSetTo } from '../design/setting.ts'
import { sharedSlits } from '../design/slits.ts'
import { riseOf, tipAt } from '../measure/measure.ts'
import { closesNowhere } from '../mechanisms/build.ts'
import type { Derived, Field, Placed, Said } from '../mechanisms/kind.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { modelOf } from '../model/model.ts'
import { compile } from '../motion/pose.ts'
import { broughtIn } from '../motion/range.ts'
import { distance } from '../plane/vector.ts'
import * as says from '../words/answers.ts'

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

/** One thing that may be off about a card, all else being right. */
export interface Trial {
  /** The mechanism, or `card` for the opening, or `point` for a point of a page. */
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly said?: Said
  /** As designed, mm or degrees. */
  readonly from: number
  /** How far off an ordinary hand leaves it, mm or degrees. */
  readonly hand: number
  /**
   * With this much off: how far the readings would be from what was read, in units of the instrument's own
   * error; null where there is no such card.
   */
  errors(by: number): number[] | null
}

/** Larger slips than this are no slips of the hand, mm or degrees. */
export const LARGEST = 15

/**
 * Common practice, no source: a school ruler held to a tip reads to half a millimetre, a protractor to
 * a degree; a careful hand draws, cuts and folds to a millimetre, or a degree and a half.
 */
const RULER = 0.5

const PROTRACTOR = 1

const HAND = { mm: 1, deg: 1.5 } as const

/** A card held against the corner of a book is open to its angle within so much. Common practice, no source. */
const HELD = 3

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
export const errors = (design: Design, readings: readonly Reading[]): number[] =>
  modelled(design, readings).map((value, k) => {
    const reading = readings[k] as Reading
    return (value - reading.value) / (reading.what === 'stop' ? PROTRACTOR : RULER)
  })

/** The design with nothing but what the readings can depend on: what was read, what it stands on, and who shares a slit with these. */
export function concerned(design: Design, readings: readonly Reading[]): Design {
  const kept = new Set<string>()
  const keep = (id: string): void => {
    const index = design.mechanisms.findIndex((m) => m.id === id)
    if (index < 0) throw new RangeError(`there is no mechanism ${id}`)
    if (kept.has(id)) return
    kept.add(id)
    const { on } = design.mechanisms[index] as Design['mechanisms'][number]
    if (on !== 'gutter') keep(ownerOf(on))
    for (const [i, j] of sharedSlits(design))
      if (i === index || j === index) keep(design.mechanisms[i === index ? j : i]?.id ?? id)
  }
  for (const reading of readings)
    for (const id of reading.what === 'gape' ? reading.between : [reading.id]) keep(id)
  return { ...design, mechanisms: design.mechanisms.filter(({ id }) => kept.has(id)) }
}

/** The card opened too little or too far; `at` gives the errors at an opening. */
export const openingTrial = (from: number, at: (opening: number) => number[]): Trial => ({
  id: 'card',
  field: 'opening',
  label: says.opening,
  unit: 'deg',
  from,
  hand: HELD,
  errors: (by) => (from + by < 0 || from + by > 180 ? null : at(from + by)),
})

/** The card held open wrongly while it was read; read at several openings, it hardly is by as much each time. */
export function heldWrongly(design: Design, readings: readonly Reading[]): readonly Trial[] {
  const [held, another] = new Set(readings.flatMap((one) => (one.what === 'stop' ? [] : [one.opening])))
  if (held === undefined || another !== undefined) return []
  const readAt = (opening: number) => readings.map((one) => (one.what === 'stop' ? one : { ...one, opening }))
  return [openingTrial(held, (opening) => errors(design, readAt(opening)))]
}

/** Whether there is such a card: a file may hold its numbers, and its glued parts close somewhere. */
export const canBe = (design: Design): boolean =>
  !design.mechanisms.some((m) => kindOf(m).limits?.(m)) &&
  !modelOf(design).builds.some(({ build }) => closesNowhere(build))

/** The design with one setting off; null where that is past its range, or past nought, or nothing that can be put together. */
export function off(design: Design, m: Placed, field: Field | Derived<Placed>, by: number): Design | null {
  const from = settingOf(m, field.name)
  const to = from + by
  if (to < field.min || to > field.max || from * to < 0) return null
  const changed = change(design, m.id, fieldsFor(m, field.name, to))
  const wrong = changed.mechanisms.find(({ id }) => id === m.id)
  if (!wrong || !isSetTo(wrong, field.name, to)) return null
  return canBe(changed) ? changed : null
}

/** One setting of a mechanism made wrongly. */
export const settingTrial = (
  design: Design,
  m: Placed,
  field: Field | Derived<Placed>,
  readings: readonly Reading[],
): Trial => ({
  id: m.id,
  field: field.name,
  label: field.label,
  unit: field.unit,
  ...(field.said ? { said: field.said } : {}),
  from: settingOf(m, field.name),
  hand: HAND[field.unit],
  errors: (by) => {
    const changed = off(design, m, field, by)
    return changed && errors(changed, readings)
  },
})

/** Each setting of a mechanism that a hand makes. */
export const settingTrials = (design: Design, m: Placed, readings: readonly Reading[]): readonly Trial[] =>
  made(m).map((field) => settingTrial(design, m, field, readings))

/** The numbers of a mechanism that move several fields at once: two sides are drawn and cut as one. */
export const together = (m: Placed): readonly Derived<Placed>[] =>
  kindOf(m).derived.filter((derived) => {
    const parts = Object.entries(derived.set(m, derived.get(m)))
    return parts.length > 1 && parts.every(([name, value]) => settingOf(m, name) === value)
  })
