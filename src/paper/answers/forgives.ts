import { faults } from '../checks/check.ts'
import { affected, neighbourhood } from '../checks/repair.ts'
import type { Finding } from '../checks/subject.ts'
import { keyOf } from '../checks/subject.ts'
import { examiners } from '../checks/table.ts'
import type { CheckName } from '../checks/verdict.ts'
import { change, made, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { isHoldable } from '../design/setting.ts'
import { lastGood } from '../plane/search.ts'
import { sizesWouldNotFit } from '../words/answers.ts'
import type { Effort } from './seek/sound.ts'
import { failingIn } from './seek/sound.ts'

/** How far one number may be off, one way. */
export interface Slack {
  /** So far it may be off with every check as it is, mm or degrees; 0: not by a tenth. */
  readonly by: number
  /** So far off it fails, to the next tenth; null if nothing does as far as was looked. */
  readonly spoilt: number | null
  /** What fails first beyond; null if nothing does as far as was looked. */
  readonly fails: CheckName | 'limits' | null
  readonly sentence: string | null
}

/** How far one number of a mechanism may be made wrongly, too small and too large. */
export interface Forgiveness {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly less: Slack
  readonly more: Slack
}

export interface Forgiving {
  /** These mechanisms alone; all if left out. */
  readonly ids?: readonly string[]
  /** Checks that do not count. */
  readonly but?: readonly CheckName[]
  /** No farther than this is looked, mm and degrees; 8 if left out. */
  readonly most?: number
  /** Looked at that far out alone, and nearer only where that fails: what fails nearer and holds there is not seen. */
  readonly once?: boolean
}

/** Looks at two moving panels that it may take: about three seconds. */
const EFFORT = 2.4e5

/** Found to so much, mm and degrees. */
const NEAR = 0.1

const LADDER = [0.5, 1, 2, 4, 8, 16, 32] as const

const NAMES: readonly CheckName[] = examiners.map(({ name }) => name)

/** What fails anew with one number off: null if nothing does. */
type Against = Pick<Finding, 'sentence'> & { readonly name: CheckName | 'limits' }

/**
 * For every number that a hand makes, how far it may be off, all else being right, before a check fails that holds
 * now: the card jams, sticks out, tears. It is stepped outwards by doubling and then halved to a tenth; a number that
 * spoils the card nearer and mends it again within one such step is not seen. Where two sides must match when shut,
 * that is nought. Numbers that nobody got to within the search's effort are left out.
 */
export const forgives = (design: Design, asked: Forgiving = {}): readonly Forgiveness[] => [
  ...weighed(design, asked, failingIn(design), { left: EFFORT }),
]

/** The same one number after another, for those who may stop before the last. */
export function* weighed(
  design: Design,
  { ids, but = [], most = 8, once = false }: Forgiving,
  known: ReadonlySet<string>,
  effort: Effort,
): Generator<Forgiveness, void> {
  const names = NAMES.filter((name) => !but.includes(name))
  const steps = [...(once ? [] : LADDER.filter((one) => one < most)), most]
  for (const m of design.mechanisms.filter(({ id }) => !ids || ids.includes(id))) {
    const part = neighbourhood(design, [m.id])
    for (const { name, label, unit } of made(m)) {
      const from = settingOf(m, name)
      const against = (by: number): Against | null => {
        const next = change(part, m.id, { [name]: from + by })
        if (!isHoldable(next)) return { name: 'limits', sentence: sizesWouldNotFit }
        // By a cut it may spoil the glue of any other.
        const glue = names.filter((one) => one === 'glue')
        for (const asked of [{ names, ids: affected(part, next) }, { names: glue }])
          for (const one of faults(next, { ...asked, effort })) if (!known.has(keyOf(one))) return one
        return null
      }
      if (effort.left <= 0) return
      yield {
        id: m.id,
        field: name,
        label,
        unit,
        less: slack(against, -1, steps),
        more: slack(against, 1, steps),
      }
    }
  }
}

function slack(against: (by: number) => Against | null, way: 1 | -1, steps: readonly number[]): Slack {
  let good = 0
  for (const step of steps) {
    let fault = against(way * step)
    if (!fault) {
      good = step
      continue
    }
    const holds = (by: number): boolean => {
      const here = against(way * by)
      fault = here ?? fault
      return !here
    }
    const [last, bad] = lastGood(holds, good, step, NEAR)
    return {
      by: Math.floor(last / NEAR + 1e-9) * NEAR,
      spoilt: Math.ceil(bad / NEAR - 1e-9) * NEAR,
      fails: fault.name,
      sentence: fault.sentence,
    }
  }
  return { by: good, spoilt: null, fails: null, sentence: null }
}
