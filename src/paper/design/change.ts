import type { Change, Derived, Field, Placed } from '../mechanisms/kind.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
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

/** The fields that give a mechanism this value of a field or derived number. */
export function fieldsFor(m: Placed, name: string, value: number): Change {
  const derived = kindOf(m).derived.find((d) => d.name === name)
  return derived ? derived.set(m, value) : { [name]: value }
}

/**
 * The design with some fields of one mechanism changed. A slit that was shared stays shared: the
 * other half follows, with its apex kept.
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
  return { ...design, mechanisms }
}
