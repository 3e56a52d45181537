import type { Check, Design, Repair } from '../../../paper/index.ts'
import { settable, settingOf } from '../../../paper/index.ts'
import { withFields } from '../../state/settings.ts'

/** What can be pressed to mend one fault alone. */
export interface SingleRepair {
  readonly check: Check
  /** The change that is offered; null: none is. */
  readonly repair: Repair | null
  /** What is kept and would be changed: that is why none is offered. */
  readonly kept: { readonly id: string; readonly label: string } | null
  /** A fault before this one offers the very same change. */
  readonly isAbove: boolean
}

/** The first size that is kept and that a repair would set, itself or by what follows from it. */
function keptIn(design: Design, repair: Repair, pins: readonly string[]): SingleRepair['kept'] {
  const after = repair.change.reduce((made, { id, fields }) => withFields(made, id, fields), design)
  for (const [k, m] of design.mechanisms.entries()) {
    const now = after.mechanisms[k]
    for (const { name, label } of settable(m))
      if (
        now &&
        pins.includes(`${m.id}.${name}`) &&
        Math.abs(settingOf(now, name) - settingOf(m, name)) > 1e-6
      )
        return { id: m.id, label }
  }
  return null
}

/** The faults, each with the one change that may be offered for it: none that sets what is kept, and none twice. */
export function singleRepairs(
  design: Design,
  failed: readonly Check[],
  pins: readonly string[],
): readonly SingleRepair[] {
  const offered = new Set<string>()
  return failed.map((check): SingleRepair => {
    const { repair = null } = check
    const kept = repair && keptIn(design, repair, pins)
    if (!repair || kept) return { check, repair: null, kept, isAbove: false }
    const key = JSON.stringify(repair.change)
    const isAbove = offered.has(key)
    offered.add(key)
    return { check, repair: isAbove ? null : repair, kept: null, isAbove }
  })
}
