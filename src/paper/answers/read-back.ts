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

/** The slip that explains best at the least size: Gauss-Newton in one number, from several starts. */
function leastSlip({ errors: at, hand }: Trial): { by: number; errors: number[]; slope: number } | null {
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
function fittedSlip({ errors: at }: Trial, likeliest: number): number {
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
