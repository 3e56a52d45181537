import * as says from '../../../content/words/measure/compare.ts'
import type { Design, Explanation, Field, Flat, Reading, Slip } from '../../paper/index.ts'
import { kindOf, likelyPointSlips, likelySlips, nameOf, readBack } from '../../paper/index.ts'
import type { BenchConfig } from '../state/config.ts'
import type { LengthUnit } from '../state/format.ts'
import { shown, small } from '../state/format.ts'
import { measured, readingValue } from '../state/readings.ts'
import type { BenchState } from '../state/state.ts'
import { leadOf, startState } from '../state/state.ts'

/** A ruler's reading beside the model's. */
export interface Comparison {
  /** What the model says, mm. */
  readonly model: number
  /** The reading less the model, mm. */
  readonly off: number
  readonly slips: readonly Slip[]
}

/** Nearer than this nobody reads a ruler, mm. Common practice, no source. */
export const AS_GOOD_AS_RIGHT = 0.5

/** A hand that draws, cuts and folds is off by no more than this, mm and degrees. Common practice, no source. */
const A_HAND = { mm: 5, deg: 6 } as const

const byHand = ({ slip, unit }: Slip): boolean => Math.abs(slip) <= A_HAND[unit]

export interface Measured {
  /** The mechanism whose rise is read; the bench's lead if left out. */
  readonly id?: string | undefined
  /** Degrees. */
  readonly opening: number
}

/** The state as it is when the reader measures: at the opening stated. */
function measuring(design: Design, config: BenchConfig, point: Flat | null, opening: number): BenchState {
  return { ...startState(design, config), point, opening }
}

/** What the ruler should say, mm: the rise, or on a bare card the gap between the two points. */
export function modelSays(
  design: Design,
  config: BenchConfig,
  point: Flat | null,
  { id, opening }: Measured,
): number {
  const led = id === undefined ? config : { ...config, lead: id }
  const state = measuring(design, config, point, opening)
  return readingValue(point ? 'gape' : 'rise', state, measured(state, led))
}

/** A reading in mm beside the model, with the likeliest slips of the hand. */
export function compare(
  design: Design,
  config: BenchConfig,
  point: Flat | null,
  where: Measured,
  reading: number,
): Comparison {
  const model = modelSays(design, config, point, where)
  const off = reading - model
  const id = where.id ?? leadOf(design, config)?.id
  const near = Math.abs(off) < AS_GOOD_AS_RIGHT
  const slips = near
    ? []
    : point
      ? likelyPointSlips(point, where.opening, reading)
      : id === undefined
        ? []
        : likelySlips(design, id, where.opening, reading)
  return { model, off, slips: slips.filter(byHand) }
}

/** What else a reader may measure: along the gutter, from tip to tip, how far the card opens. */
export type Further = 'reach' | 'gape' | 'stop'

/** One reading of several beside the model's; mm, the stop in degrees. */
export interface Read {
  readonly what: 'rise' | Further
  readonly model: number
  readonly off: number
}

/** A cause that several readings together speak for; `slip` null: nothing is off. */
export interface Cause {
  readonly slip: Slip | null
  /** 0 to 1. */
  readonly sure: number
}

/** Several readings beside the model. */
export interface SeveralCompared {
  readonly reads: readonly Read[]
  /** Likeliest first, at most three; empty: no single slip explains them all. */
  readonly causes: readonly Cause[]
}

/** An explanation that leaves more than this, in ruler errors, explains nothing. */
const LEFT = 3

/** A cause less sure than this is not worth a look. */
const UNSURE = 0.05

/** A slip too small to see, mm or degrees. */
const SMALLEST = 0.05

const MOST_CAUSES = 3

/** The same field on the other side of its mechanism. */
function twinOf(design: Design, { id, field }: Slip): Field | undefined {
  const m = design.mechanisms.find((one) => one.id === id)
  const fields = m ? kindOf(m).fields : []
  const twin = fields.find(({ name }) => name === field)?.twin
  return fields.find(({ name }) => name === twin)
}

function either(word: string, other: string | undefined): string {
  const [one = '', two = ''] = [word, other].sort()
  return says.either(one, two)
}

/** Left and right that read alike are one cause: `left or right wall`. */
function eitherSide(one: string, other: string): string {
  const [mine, theirs] = [one.toLowerCase().split(' '), other.toLowerCase().split(' ')]
  return mine.map((word, k) => (word === theirs[k] ? word : either(word, theirs[k]))).join(' ')
}

/** Two that are so nearly as sure as one another are told apart by no reading. */
const AS_SURE = 1e-3

/**
 * Explanations as causes: what moves nothing is no slip; two sides, or two halves that share a slit, are one where
 * no reading tells them apart. The mechanism that was measured goes before others.
 */
function causesOf(design: Design, found: readonly Explanation[], lead: string): readonly Cause[] {
  const causes: { slip: Slip | null; sure: number; each: number }[] = []
  for (const { slip, sure, left } of found) {
    if (left >= LEFT) continue
    const off = slip ? slip.fitted - slip.designed : 0
    if (!slip || Math.abs(off) < SMALLEST) {
      const nothing = causes.find((one) => one.slip === null)
      if (nothing) nothing.sure += sure
      else causes.push({ slip: null, sure, each: sure })
      continue
    }
    const { id, field, label, unit, said, designed: from, fitted: to } = slip
    const own: Slip = {
      ...{ id, field, label, unit, from, to, slip: from < 0 ? -off : off },
      ...(said ? { said } : {}),
    }
    if (!byHand(own)) continue
    const twin = twinOf(design, own)
    const alike = causes.find(
      (one) =>
        one.slip?.unit === unit &&
        Math.abs(one.each - sure) < AS_SURE &&
        Math.abs(Math.abs(one.slip.slip) - Math.abs(off)) < SMALLEST &&
        (one.slip.id !== id || one.slip.field === twin?.name),
    )
    if (!alike?.slip) causes.push({ slip: own, sure, each: sure })
    else {
      alike.sure += sure
      if (alike.slip.id === id) alike.slip = { ...alike.slip, label: eitherSide(label, twin?.label ?? label) }
      else if (id === lead) alike.slip = own
    }
  }
  const ranked = causes.sort((a, b) => b.sure - a.sure)
  return ranked
    .filter(({ sure }, k) => k === 0 || sure >= UNSURE)
    .slice(0, MOST_CAUSES)
    .map(({ slip, sure }) => ({ slip, sure }))
}

/** Several readings of one card, mm (the stop in degrees), beside the model, with what they together speak for. */
export function compareSeveral(
  design: Design,
  config: BenchConfig,
  where: Measured,
  given: Readonly<Partial<Record<'rise' | Further, number>>>,
): SeveralCompared {
  const lead = where.id ?? leadOf(design, config)?.id ?? ''
  const led = { ...config, lead }
  const state = measuring(design, led, null, where.opening)
  const all = measured(state, led)
  const pair = all.measure.gapes.find(({ between }) => between.includes(lead))?.between
  const order: readonly ('rise' | Further)[] = ['rise', 'reach', 'gape', 'stop']
  const reads = order.flatMap((what): (Read & { as: Reading })[] => {
    const value = given[what]
    if (value === undefined) return []
    const { opening } = where
    const model = readingValue(what, state, all)
    const as: Reading | null =
      what === 'stop'
        ? { what, id: lead, value }
        : what === 'gape'
          ? pair
            ? { what, between: pair, opening, value }
            : null
          : { what, id: lead, opening, value }
    return as && Number.isFinite(model) ? [{ what, model, off: value - model, as }] : []
  })
  const right = reads.every(isRight)
  return {
    reads: reads.map(({ what, model, off }) => ({ what, model, off })),
    causes: right
      ? []
      : causesOf(
          design,
          readBack(
            design,
            reads.map(({ as }) => as),
          ),
          lead,
        ),
  }
}

/** Nearer than this nobody reads a protractor, degrees. Common practice, no source. */
const RIGHT_ANGLE = 1

const isRight = ({ what, off }: Read): boolean =>
  Math.abs(off) < (what === 'stop' ? RIGHT_ANGLE : AS_GOOD_AS_RIGHT)

const isLength = ({ unit }: Slip): boolean => unit === 'mm'

/** One slip as a clause: `the slit is 1.9 mm short`. `lead` is the mechanism that goes without its name. */
export function slipSays(slip: Slip, length: LengthUnit, lead?: string): string {
  const { id, label, unit, said, from, to, slip: off } = slip
  const much = shown(Math.abs(off), unit, length)
  if (id === 'card') return says.openedWrong(shown(to, 'deg', length), shown(from, 'deg', length))
  const owner = id === lead || id === 'point' ? null : nameOf(id)
  const { as = 'size', of: name = small(label) } = said ?? {}
  const size = { name, owner, isBoth: as === 'both', much }
  if (as === 'shift') return says.offAlongFold(size)
  if (as === 'place') return off > 0 ? says.tooFarFromStart(size) : says.tooFarTowardsStart(size)
  if (isLength(slip)) return off < 0 ? says.tooShort(size) : says.tooLong(size)
  return off < 0 ? says.tooSmall(size) : says.tooLarge(size)
}

const howSure = (cause: string, sure: number, first: boolean): string =>
  first && sure >= 0.5 ? says.mostLikely(cause) : sure >= 0.2 ? says.maybe(cause) : says.lessLikely(cause)

const unitOf = (what: Read['what']): 'mm' | 'deg' => (what === 'stop' ? 'deg' : 'mm')

/** What several readings show, in sentences, and their causes, one line each. */
export function severalSay(
  { reads, causes }: SeveralCompared,
  opening: number,
  length: LengthUnit,
  lead?: string,
): { readonly says: readonly string[]; readonly causes: readonly string[] } {
  const models = reads.map(({ what, model }) =>
    says.reading(says.readings[what], shown(model, unitOf(what), length)),
  )
  const told = [says.modelSays(opening, models)]
  if (reads.every(isRight)) return { says: [...told, says.allRight], causes: [] }
  const offs = reads.map((read) => {
    const { what, off } = read
    const name = says.readings[what]
    if (isRight(read)) return says.readingRight(name)
    const much = shown(Math.abs(off), unitOf(what), length)
    return off < 0 ? says.readingSmall(name, much) : says.readingLarge(name, much)
  })
  told.push(says.readingsAre(offs))
  if (causes.length === 0) told.push(says.noSingleSlip)
  return {
    says: told,
    causes: causes.map(({ slip, sure }, k) =>
      howSure(slip ? slipSays(slip, length, lead) : says.nothingOff, sure, k === 0),
    ),
  }
}

/** The comparison in sentences. */
export function comparisonSays(
  { off, slips }: Comparison,
  length: LengthUnit,
  lead?: string,
): readonly string[] {
  if (Math.abs(off) < AS_GOOD_AS_RIGHT) return [says.right]
  const much = shown(Math.abs(off), 'mm', length)
  const told = off < 0 ? says.tooLow(much) : says.tooHigh(much)
  const [first, second, third] = slips
  if (!first) return [told, says.noSingleSlip]
  const others = [second, third].flatMap((slip) => (slip ? [slipSays(slip, length, lead)] : []))
  return [
    told,
    says.likeliest(slipSays(first, length, lead)),
    ...(others.length > 0 ? [says.couldAlsoBe(others)] : []),
  ]
}
