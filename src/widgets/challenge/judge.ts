import * as says from '../../../content/words/challenge.ts'
import type { Check } from '../../paper/index.ts'
import { broughtIn, nameOf, openingStops, settable, settingOf } from '../../paper/index.ts'
import type { BenchConfig, ReadingName } from '../state/config.ts'
import type { LengthUnit, ValueUnit } from '../state/format.ts'
import { large, shown } from '../state/format.ts'
import { measured, readingValue, readingWords } from '../state/readings.ts'
import type { BenchState } from '../state/state.ts'
import { leadOf } from '../state/state.ts'

/** How a number must lie, mm or degrees. */
export interface Bounds {
  readonly atLeast?: number
  readonly atMost?: number
  readonly between?: readonly [low: number, high: number]
}

/** A number that must lie somewhere: what is measured, or a field of the design. */
export interface NumberGoal extends Bounds {
  /** One of the strip's readings, or `field` for a number of a mechanism. */
  readonly measure: ReadingName | 'field'
  /** The mechanism; the bench's lead if left out. */
  readonly id?: string
  /** With `field`: its name in the design file. */
  readonly field?: string
  /** The opening in degrees at which it is judged; the one on the screen if left out. */
  readonly at?: number
  /** How far it is to go would be the answer: only what is true now is said. */
  readonly quiet?: true
}

/** Every check of the design must hold. */
export interface SoundGoal {
  readonly sound: true
}

/** Several at once. */
export interface AllGoal {
  readonly all: readonly Goal[]
}

/** What a challenge asks for, as data. */
export type Goal = NumberGoal | SoundGoal | AllGoal

/** What a goal has the bench measure. */
export function measuresOf(goal: Goal): readonly string[] {
  if ('all' in goal) return goal.all.flatMap(measuresOf)
  return 'measure' in goal ? [goal.measure] : []
}

export interface Verdict {
  readonly done: boolean
  /** What is true now and how far it is to go. */
  readonly says: string
}

/** Rounded as shown, so that a goal that reads as met is met. */
const shownTenth = (value: number): number => Math.round(value * 10) / 10

/**
 * How far a value has to go: below 0 too small, above 0 too large, 0 inside its bounds. Outside of two bounds it
 * is told from the middle between them, which is the number that the task asks for.
 */
function offBy(value: number, { atLeast, atMost, between }: Bounds): number {
  const low = between?.[0] ?? atLeast ?? Number.NEGATIVE_INFINITY
  const high = between?.[1] ?? atMost ?? Number.POSITIVE_INFINITY
  const seen = shownTenth(value)
  if (seen >= low && seen <= high) return 0
  return between ? seen - (low + high) / 2 : seen - (seen < low ? low : high)
}

/** The parts whose measures a goal names. */
function partsOf(goal: Goal): readonly (string | undefined)[] {
  if ('all' in goal) return goal.all.flatMap(partsOf)
  return 'measure' in goal && !['field', 'margin', 'opening'].includes(goal.measure) ? [goal.id] : []
}

/** Number and unit stay on one line. */
const kept = (...of: Parameters<typeof shown>): string => shown(...of).replaceAll(' ', '\u00a0')

interface Judged {
  readonly label: string
  readonly unit: ValueUnit
  readonly value: number
}

function numberOf(goal: NumberGoal, state: BenchState, config: BenchConfig): Judged {
  const there = goal.at === undefined ? state : { ...state, opening: goal.at }
  const led = goal.id === undefined ? config : { ...config, lead: goal.id }
  const all = measured(there, led)
  if (goal.measure !== 'field') {
    const value = readingValue(goal.measure, there, all)
    if (!Number.isFinite(value))
      throw new RangeError(`a goal asks for ${goal.measure}, which this bench does not have`)
    return { ...readingWords(goal.measure, there), value }
  }
  const field = all.lead && settable(all.lead).find(({ name }) => name === goal.field)
  if (!all.lead || !field)
    throw new RangeError(`a goal asks for ${goal.field}, which ${goal.id ?? 'the lead'} does not have`)
  const offered = config.fields?.find((one) => one.id === all.lead?.id && one.field === field.name)
  return { label: offered?.label ?? field.label, unit: field.unit, value: settingOf(all.lead, field.name) }
}

interface Telling {
  readonly unit: LengthUnit
  /** Several parts are measured: each number is said with its own. */
  readonly isOfSeveral: boolean
}

function judgeNumber(
  goal: NumberGoal,
  state: BenchState,
  config: BenchConfig,
  { unit, isOfSeveral }: Telling,
): Verdict {
  // What the card does not open to cannot be read there.
  if (goal.at !== undefined && broughtIn(state.design, goal.at) !== goal.at) {
    const { least, most } = openingStops(state.design)
    const stop = goal.at > (most?.opening ?? 180) ? most : least
    return { done: false, says: stop?.sentence ?? '' }
  }
  const judged = numberOf(goal, state, config)
  const off = offBy(judged.value, goal)
  const { id, measure } = goal
  // Of the part that the bench reads, it is said without its name, as there.
  const isNamed = isOfSeveral || id !== leadOf(state.design, config)?.id
  const label =
    id !== undefined && measure !== 'field' && isNamed
      ? says.measureOf(judged.label, nameOf(id))
      : judged.label
  const [what, value] = [large(label), kept(judged.value, judged.unit, unit)]
  const now =
    goal.measure === 'margin' && judged.value < 0
      ? says.sticksOut(kept(-judged.value, 'mm', unit))
      : goal.measure === 'margin'
        ? says.hidden(kept(judged.value, 'mm', unit))
        : goal.at === undefined
          ? says.is(what, value)
          : says.isAt(what, value, goal.at)
  if (off === 0) return { done: true, says: says.reached(now) }
  if (goal.quiet) return { done: false, says: says.reached(now) }
  const far = kept(Math.abs(off), judged.unit, unit)
  return { done: false, says: off < 0 ? says.toGo(now, far) : says.tooMuch(now, far) }
}

/** One goal, or several that are told together. */
function judgeOf(
  goal: Goal,
  state: BenchState,
  config: BenchConfig,
  checks: readonly Check[] | null,
  telling: Telling,
): Verdict {
  if ('all' in goal) {
    const verdicts = goal.all.map((one) => judgeOf(one, state, config, checks, telling))
    const open = verdicts.filter(({ done }) => !done)
    return {
      done: open.length === 0,
      says: (open.length > 0 ? open : verdicts).map((one) => one.says).join(' '),
    }
  }
  if ('sound' in goal) {
    if (!checks) return { done: false, says: says.mustWork }
    const failed = checks.find(({ ok }) => !ok)
    return failed
      ? { done: false, says: says.mustWorkBut(large(failed.sentence)) }
      : { done: true, says: says.works }
  }
  return judgeNumber(goal, state, config, telling)
}

/**
 * How a state stands against a goal. `checks` are the verdicts on the very same design; null: not known yet.
 * Throws a RangeError if the goal asks for something the bench does not have.
 */
export function judge(
  goal: Goal,
  state: BenchState,
  config: BenchConfig,
  checks: readonly Check[] | null,
  unit: LengthUnit = 'mm',
): Verdict {
  const isOfSeveral = new Set(partsOf(goal)).size > 1
  return judgeOf(goal, state, config, checks, { unit, isOfSeveral })
}
