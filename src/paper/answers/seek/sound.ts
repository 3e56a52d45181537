import { check, faults } from '../../checks/check.ts'
import { keyOf } from '../../checks/subject.ts'
import { checksThat } from '../../checks/table.ts'
import type { CheckName } from '../../checks/verdict.ts'
import type { Design } from '../../design/design.ts'
import { isHoldable } from '../../design/setting.ts'
import { once } from '../../plane/once.ts'
import * as says from '../../words/answers.ts'

/** The checks by what they cost: asked in this order, so that most of what fails is told at once. */
const STEP = checksThat(({ cost }) => cost === 'step')

const DESIGN = checksThat(({ cost }) => cost === 'design')

const LAST = checksThat(({ cost }) => cost === 'last')

/** Looks at two moving panels that are left; counted down. */
export interface Effort {
  left: number
}

/** What fails in a design, each thing by its key; worked out once for each design. */
export const failingIn: (design: Design) => ReadonlySet<string> = once(
  (design: Design) =>
    new Set(check(design, { repairs: false }).flatMap((one) => (one.ok ? [] : [keyOf(one)]))),
)

/** What stands against adding mechanisms to a design. */
export interface Against {
  readonly name: CheckName | 'limits'
  readonly sentence: string
  /** By how much it fails, mm or degrees; infinite where no number says so. */
  readonly by: number
}

/** Whether mechanisms may be added to a design: the first thing that stands against it, or null. */
export interface Judge {
  /** By what is quick to tell of the new ones, and of the glue of all. */
  quick(next: Design, added: ReadonlySet<string>): Against | null
  /** By what is left, the proof that nothing meets on the way last of all. */
  slow(next: Design, added: ReadonlySet<string>): Against | null
}

const SPENT: Against = {
  name: 'clear-motion',
  sentence: says.untoldInTime,
  by: Number.POSITIVE_INFINITY,
}

const UNHOLDABLE: Against = {
  name: 'limits',
  sentence: says.sizesDoNotFit,
  by: Number.POSITIVE_INFINITY,
}

/**
 * Judges designs that have mechanisms more than `before`: the new ones may fail no check at all but those excused, and
 * nothing may fail that did not. A new one can spoil of the old ones their glue, by a cut through it, and the
 * thickness; whatever else it spoils, it fails in itself.
 */
export function additionsTo(before: Design, effort: Effort, excused: readonly CheckName[] = []): Judge {
  const known = failingIn(before)
  const against = (next: Design, names: typeof STEP, ids?: ReadonlySet<string>): Against | null => {
    if (effort.left <= 0) return SPENT
    const asked = names.filter((name) => !excused.includes(name))
    for (const one of faults(next, { names: asked, effort, ...(ids ? { ids } : {}) }))
      if (!known.has(keyOf(one))) return { ...one, by: Math.abs(one.value - one.limit) }
    return null
  }
  return {
    quick: (next, added) =>
      isHoldable(next) ? (against(next, STEP, added) ?? against(next, ['glue'])) : UNHOLDABLE,
    slow: (next, added) => against(next, DESIGN) ?? against(next, LAST, added),
  }
}
