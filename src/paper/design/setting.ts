import type { Change, Placed } from '../mechanisms/kind.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { clamped, firstFault, held, settingOf } from './change.ts'
import type { Design } from './design.ts'

/**
 * The fields that give a mechanism this value of a field or derived number, or the nearest to it that a
 * file may hold.
 */
export function fieldsFor(m: Placed, name: string, value: number): Change {
  const derived = kindOf(m).derived.find((d) => d.name === name)
  if (Number.isNaN(value)) return {}
  return held(m, derived ? derived.set(m, clamped(value, derived)) : { [name]: value })
}

/** Whether a mechanism has this value of a field or derived number, but for rounding. */
export const isSetTo = (m: Placed, name: string, value: number): boolean =>
  Math.abs(settingOf(m, name) - value) <= 1e-9 * Math.max(1, Math.abs(value))

/** Whether every number of the design is in its range, and every rule kept that ties numbers together. */
export const isHoldable = (design: Design): boolean => firstFault(design) === null
