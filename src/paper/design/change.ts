import type { Change, Derived, Field, Placed } from '../mechanisms/kind.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { artCarried } from './art-carried.ts'
import type { Design } from './design.ts'
import { sharedSlits } from './slits.ts'

/** The fields and derived numbers of a mechanism that a reader can set. */
export function settable(m: Placed): readonly (Field | Derived<Placed>)[] {
  const kind = kindOf(m)
  return [...kind.fields.filter((field) => !field.shorthand), ...kind.derived]
}

/** The fields whose size a hand can get wrong so that it shows; what follows from them is not made by itself. */
export const made = (m: Placed): readonly Field[] =>
  kindOf(m).fields.filter(({ shorthand, idle }) => !shorthand && !idle)

/** What stands at a field's name: `left.base` is `base` inside `left`. */
export function read(m: Placed, name: string): unknown {
  const [outer = '', inner] = name.split('.')
  const value = (m as unknown as Record<string, unknown>)[outer]
  return inner === undefined ? value : (value as Record<string, unknown> | undefined)?.[inner]
}

/** The mechanism with these fields set. */
export function assign<M extends Placed>(m: M, fields: Change): M {
  const next = { ...m } as unknown as Record<string, unknown>
  for (const [name, value] of Object.entries(fields)) {
    const [outer = '', inner] = name.split('.')
    next[outer] = inner === undefined ? value : { ...(next[outer] as object), [inner]: value }
  }
  return next as unknown as M
}

/** A field's or derived number's value, mm or degrees. Throws a RangeError for an unknown name. */
export function settingOf(m: Placed, name: string): number {
  const kind = kindOf(m)
  const derived = kind.derived.find((d) => d.name === name)
  if (derived) return derived.get(m)
  if (!kind.fields.some((field) => field.name === name)) throw new RangeError(`${m.id} has no ${name}`)
  const value = read(kind.complete(m), name)
  return typeof value === 'number' ? value : 0
}

export const clamped = (
  value: number,
  { min, max }: { readonly min: number; readonly max: number },
): number => Math.min(max, Math.max(min, value))

/** The nearest that a file may hold: numbers in their range; what is no number at all stays as it was. */
export const held = (m: Placed, fields: Change): Change =>
  Object.fromEntries(
    Object.entries(fields).flatMap(([name, value]): [string, number | string][] => {
      const field = kindOf(m).fields.find((one) => one.name === name)
      if (!field || typeof value !== 'number') return [[name, value]]
      return Number.isNaN(value) ? [] : [[name, clamped(value, field)]]
    }),
  )

/** So many numbers are brought back in turn: each may move the other half of a shared slit along. */
const MOST_NUDGES = 12

/** The first number of a design that its rules or its range would have elsewhere. */
export function firstFault({ mechanisms }: Design): { id: string; fields: Change | null } | null {
  for (const m of mechanisms) {
    const { fields, limits } = kindOf(m)
    for (const { name, min, max, shorthand } of fields) {
      const value = read(m, name)
      if (shorthand || typeof value !== 'number' || (value >= min && value <= max)) continue
      return { id: m.id, fields: Number.isNaN(value) ? null : { [name]: clamped(value, { min, max }) } }
    }
    const fault = limits?.(m)
    if (fault)
      return { id: m.id, fields: fault.nearest === undefined ? null : { [fault.field]: fault.nearest } }
  }
  return null
}

/**
 * The design with every number in its range and every rule kept that ties numbers together, as a hand that
 * drags or types leaves it; null if that takes more than nudges.
 */
export function settled(design: Design): Design | null {
  let now = design
  for (let k = 0; k <= MOST_NUDGES; k++) {
    const fault = firstFault(now)
    if (!fault) return now
    if (!fault.fields) return null
    now = change(now, fault.id, fault.fields)
  }
  return null
}

/**
 * The design with some fields of one mechanism changed, as they are given: see `held` and `settled` for what
 * a file may hold. A slit that was shared stays shared: the other half follows, with its apex kept.
 */
export function change(design: Design, id: string, fields: Change): Design {
  const index = design.mechanisms.findIndex((m) => m.id === id)
  const before = design.mechanisms[index]
  if (!before) throw new RangeError(`there is no mechanism ${id}`)
  const mechanisms = [...design.mechanisms]
  const after: Mechanism = assign(before, fields)
  mechanisms[index] = after
  const slit = kindOf(after).slit?.(after)
  if (slit)
    for (const [i, j] of sharedSlits(design)) {
      const other = i === index ? j : j === index ? i : -1
      const twin = mechanisms[other]
      if (twin) mechanisms[other] = assign(twin, kindOf(twin).moveSlit?.(twin, slit) ?? {})
    }
  const way = design.art && kindOf(after).carries?.(before, after)
  return { ...design, mechanisms, ...(way ? { art: artCarried(design.art ?? [], id, way) } : {}) }
}
