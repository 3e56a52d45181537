import { faults } from '../checks/check.ts'
import type { Finding } from '../checks/subject.ts'
import { keyOf } from '../checks/subject.ts'
import { checksThat } from '../checks/table.ts'
import type { CheckName } from '../checks/verdict.ts'
import type { Design } from '../design/design.ts'
import type { Effort } from './seek/sound.ts'

/**
 * What a fault weighs, by its check. A cut that cannot be made hides what follows from it, so it weighs more than all
 * that can be behind it; what keeps the card from shutting weighs more than what only tears in the end.
 */
const WEIGHTS: Readonly<Record<CheckName, number>> = {
  'inside-fold': 16,
  'cuts-inside': 16,
  'cuts-apart': 16,
  'shuts-flat': 4,
  'opens-flat': 3,
  'clear-motion': 3,
  'stays-inside': 2,
  glue: 2,
  thickness: 1.5,
  bridge: 1,
  narrow: 1,
}

/** The share of its weight that a fault has however small it is; the rest grows with how deep it is. */
const AT_ONCE = 0.5

/** A fault so deep has half of the rest, mm or degrees. */
const HALF = 10

/** What one fault weighs: more the deeper it is, and never more than its check's own weight. */
export function weightOf({ name, value, limit, waits }: Finding): number {
  if (waits) return 0
  const deep = Number.isFinite(value) ? Math.abs(value - limit) : 1e6
  return WEIGHTS[name] * (AT_ONCE + ((1 - AT_ONCE) * deep) / (deep + HALF))
}

/** The checks that are quick, and those that are asked about what the quick ones leave. */
const QUICK = checksThat(({ cost }) => cost === 'step')

const SLOW = checksThat(({ cost }) => cost !== 'step')

/** What asks about a design in a search. */
export interface Weighing {
  readonly effort: Effort
  /** What concerns these mechanisms alone; everything if left out. */
  readonly ids?: ReadonlySet<string>
  /** Faults by their keys that do not count. */
  readonly known?: ReadonlySet<string>
}

function weighed(design: Design, names: readonly CheckName[], { effort, ids, known }: Weighing): number {
  const worst = new Map<string, number>()
  for (const one of faults(design, { names, effort, ...(ids ? { ids } : {}) })) {
    const key = keyOf(one)
    if (!known?.has(key)) worst.set(key, Math.max(worst.get(key) ?? 0, weightOf(one)))
  }
  let sum = 0
  for (const weight of worst.values()) sum += weight
  return effort.left > 0 ? sum : Number.POSITIVE_INFINITY
}

/** What the faults of a design weigh together that are quick to tell: nought if there are none. Infinite if it could not be told. */
export const weighQuick = (design: Design, weighing: Weighing): number => weighed(design, QUICK, weighing)

/** The same of one check alone. */
export const weighOne = (design: Design, name: CheckName, weighing: Weighing): number =>
  weighed(design, [name], weighing)

/** The same of those that are slow to tell. */
export const weighSlow = (design: Design, weighing: Weighing): number => weighed(design, SLOW, weighing)

/** What fails weighs so much: what is quick to tell first, for the rest hangs on it. */
export interface Weight {
  readonly quick: number
  readonly slow: number
}

export function weightOfAll(findings: readonly Finding[]): Weight {
  let [quick, slow] = [0, 0]
  for (const one of findings)
    if (QUICK.includes(one.name)) quick += weightOf(one)
    else slow += weightOf(one)
  return { quick, slow }
}

/** Whether one weight is less than another by more than rounding. */
export const isLess = (one: Weight, two: Weight): boolean =>
  one.quick < two.quick - 1e-9 || (one.quick <= two.quick + 1e-9 && one.slow < two.slow - 1e-9)

export const isQuick = ({ name }: Finding): boolean => QUICK.includes(name)
