import { sharedSlits } from './measure.ts'
import type { Design } from './model.ts'
import type { Mechanism } from './registry.ts'
import { kindOf } from './registry.ts'
import type { Derived, Field, Placed } from './types.ts'

/** The fields and derived numbers of a mechanism that a reader can set. */
export function settable(m: Placed): readonly (Field | Derived<Placed>)[] {
  const kind = kindOf(m)
  return [...kind.fields, ...kind.derived]
}

/** A field's or derived number's value, mm or degrees. Throws a RangeError for an unknown name. */
export function valueOf(m: Placed, name: string): number {
  const kind = kindOf(m)
  const derived = kind.derived.find((d) => d.name === name)
  if (derived) return derived.get(m)
  if (!kind.fields.some((field) => field.name === name)) throw new RangeError(`${m.id} has no ${name}`)
  const value = (kind.complete(m) as unknown as Record<string, unknown>)[name]
  return typeof value === 'number' ? value : 0
}

/** The fields that give a mechanism this value of a field or derived number. */
export function fieldsFor(m: Placed, name: string, value: number): Readonly<Record<string, number>> {
  const derived = kindOf(m).derived.find((d) => d.name === name)
  return (derived ? derived.set(m, value) : { [name]: value }) as Record<string, number>
}

/**
 * The design with some fields of one mechanism changed. A slit that was shared stays shared: the
 * other half follows, with its apex kept.
 */
export function change(design: Design, id: string, fields: Readonly<Record<string, number>>): Design {
  const index = design.mechanisms.findIndex((m) => m.id === id)
  const before = design.mechanisms[index]
  if (!before) throw new RangeError(`there is no mechanism ${id}`)
  const mechanisms = [...design.mechanisms]
  const after = { ...before, ...fields } as Mechanism
  mechanisms[index] = after
  const slit = kindOf(after).slit?.(after)
  if (slit)
    for (const [i, j] of sharedSlits(design)) {
      const other = i === index ? j : j === index ? i : -1
      const twin = mechanisms[other]
      if (twin) mechanisms[other] = { ...twin, ...kindOf(twin).moveSlit?.(twin, slit) } as Mechanism
    }
  return { ...design, mechanisms }
}
