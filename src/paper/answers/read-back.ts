import type { Design } from '../design/design.ts'
import type { Said } from '../mechanisms/kind.ts'
import { kindOf } from '../mechanisms/registry.ts'
import type { Reading, Trial } from './trials.ts'
import { concerned, errors, heldWrongly, LARGEST, off, settingTrials } from './trials.ts'

/** A making error, or a card held open wrongly (`card`, `opening`), that would explain the readings. */
export interface Explanation {
  /** Null: nothing is off, the readings scatter as a ruler does. */
  readonly slip: {
    readonly id: string
    readonly field: string
    readonly label: string
    readonly unit: 'mm' | 'deg'
    readonly said?: Said
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

const squares = (v: readonly number[]): number => v.reduce((sum, x) => sum + x * x, 0)

const spread = (e: readonly number[]): number => Math.sqrt(squares(e) / Math.max(1, e.length))

interface Candidate {
  readonly explanation: Omit<Explanation, 'sure'>
  /** Of its weight. */
  readonly log: number
}

/** One slip, weighed: how well it explains the readings, against how large it is for the hand. */
function weighed(trial: Trial): readonly Candidate[] {
  const best = leastSlip(trial)
  if (!best) return []
  const { by, errors: e, slope } = best
  const { id, field, label, unit, said, from: designed, hand } = trial
  // How much the readings pin the slip down, against what the hand alone says of it.
  const width = -0.5 * Math.log(1 + slope * hand * hand)
  const slip = {
    ...{ id, field, label, unit, designed, made: designed + by, fitted: designed + fittedSlip(trial, by) },
    ...(said ? { said } : {}),
  }
  return [{ explanation: { slip, left: spread(e) }, log: -(squares(e) + (by / hand) ** 2) / 2 + width }]
}

/**
 * The likeliest making errors behind a maker's readings, likeliest first: each single setting off by
 * some amount, or nothing off at all. Each is weighed by how well it explains the readings and by how
 * large a slip it asks for (evidence of a one-parameter Gaussian model, Laplace's approximation).
 * Throws a RangeError for an unknown mechanism or pair.
 */
export function readBack(whole: Design, readings: readonly Reading[]): readonly Explanation[] {
  const design = concerned(whole, readings)
  const nothing = errors(design, readings)
  const right: Candidate = { explanation: { slip: null, left: spread(nothing) }, log: -squares(nothing) / 2 }
  const candidates = [right, ...heldWrongly(design, readings).flatMap(weighed)]
  const seen = new Set<string>()
  for (const m of design.mechanisms)
    for (const one of settingTrials(design, m, readings).flatMap(weighed)) {
      // A shared slit stands at two mechanisms and is one slip.
      const same = twinKey(design, m, one.explanation.slip)
      if (!seen.has(same)) candidates.push(one)
      seen.add(same)
    }
  const top = Math.max(...candidates.map(({ log }) => log))
  const total = candidates.reduce((sum, { log }) => sum + Math.exp(log - top), 0)
  return candidates
    .map(({ explanation, log }) => ({ ...explanation, sure: Math.exp(log - top) / total }))
    .sort((a, b) => b.sure - a.sure)
}

/** Tells the designs that two slips make apart, to a hundredth of a millimetre. */
function twinKey(design: Design, m: Design['mechanisms'][number], slip: Explanation['slip']): string {
  const field = kindOf(m).fields.find(({ name }) => name === slip?.field)
  const made = slip && field ? off(design, m, field, slip.made - slip.designed) : design
  return JSON.stringify(made?.mechanisms, (_, value: unknown) =>
    typeof value === 'number' ? Math.round(value * 100) / 100 : value,
  )
}

/** A slip as one walk found it. */
interface Walked {
  readonly by: number
  readonly errors: number[]
  /** How much the readings move with it, squared. */
  readonly slope: number
  readonly cost: number
}

/** The step of the differences, mm and degrees. */
const STEP = 1e-3

/** A walk takes so many steps at most, each so long at most; one so short ends it. */
const MOST_STEPS = 25

const LONGEST = 3

const SHORTEST = 1e-7

/** What moves the readings less than this, squared, is not asked to explain them. */
const HARDLY = 1e-4

/**
 * The best slip on a walk by Gauss-Newton in one number: the least sum of the squared errors, and of the squared slip
 * by what its size weighs. Null if nothing is at the start.
 */
function walked(at: Trial['errors'], start: number, weight: number): Walked | null {
  let best: Walked | null = null
  for (let by = start, turn = 0; turn < MOST_STEPS && Math.abs(by) <= LARGEST; turn++) {
    const [e, more, less] = [at(by), at(by + STEP), at(by - STEP)]
    if (!e || !more || !less) break
    const slopes = e.map((_, k) => ((more[k] as number) - (less[k] as number)) / (2 * STEP))
    const slope = squares(slopes)
    const cost = squares(e) + weight * by * by
    if (!best || cost < best.cost) best = { by, errors: e, slope, cost }
    const stiff = slope + weight
    if (stiff < HARDLY) break
    const pull = slopes.reduce((sum, s, k) => sum + s * (e[k] as number), weight * by)
    const step = Math.max(-LONGEST, Math.min(LONGEST, -pull / stiff))
    if (Math.abs(step) < SHORTEST) break
    by += step
  }
  return best
}

/** The slip that explains best at the least size, from several starts. */
const leastSlip = ({ errors: at, hand }: Trial): Walked | null =>
  [0, 4, -4]
    .map((start) => walked(at, start, 1 / (hand * hand)))
    .reduce((best, one) => (one && (!best || one.cost < best.cost) ? one : best), null)

/** The slip that fits the readings best whatever its size, from the likeliest one on; that one where none fits better. */
const fittedSlip = ({ errors: at }: Trial, likeliest: number): number =>
  walked(at, likeliest, 0)?.by ?? likeliest
