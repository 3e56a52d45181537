import { faults } from '../checks/check.ts'
import type { Finding } from '../checks/subject.ts'
import { keyOf } from '../checks/subject.ts'
import { checksThat } from '../checks/table.ts'
import type { CheckName } from '../checks/verdict.ts'
import type { Design } from '../design/design.ts'
import type { Effort } from './sound.ts'

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

/** The checks by what they cost; each group is asked only if the ones before leave it worth asking. */
const GROUPS: readonly (readonly CheckName[])[] = (['step', 'design', 'last'] as const).map((cost) =>
  checksThat((one) => one.cost === cost),
)

/** What asks about a design in a search. */
export interface Weighing {
  readonly effort: Effort
  /** What concerns these mechanisms alone; everything if left out. */
  readonly ids?: ReadonlySet<string>
  /** Faults by their keys that do not count. */
  readonly known?: ReadonlySet<string>
  /** It is known to be worse than wanted once it weighs so much: then infinite. */
  readonly most?: number
}

/** What all faults of a design weigh together: nought for a sound one. Infinite past what is asked for, or if it could not be told. */
export function weigh(
  design: Design,
  { effort, ids, known, most = Number.POSITIVE_INFINITY }: Weighing,
): number {
  let sum = 0
  for (const names of GROUPS) {
    const worst = new Map<string, number>()
    for (const one of faults(design, { names, effort, ...(ids ? { ids } : {}) })) {
      const key = keyOf(one)
      if (known?.has(key)) continue
      worst.set(key, Math.max(worst.get(key) ?? 0, weightOf(one)))
    }
    for (const weight of worst.values()) sum += weight
    if (sum > most || effort.left <= 0) return Number.POSITIVE_INFINITY
  }
  return sum
}
