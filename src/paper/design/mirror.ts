import type { Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { assign, read } from './change.ts'
import type { Design } from './design.ts'
import { ownerOf } from './name.ts'
import { artMirrored, otherSide, withGuests } from './tree.ts'

/**
 * The same mechanism, left for right, on the crease it is on. The flat coordinates of the left and the right
 * panel of a crease are mirror images already: what has no side of its own stays as it is.
 */
export function mirroredMechanism(m: Mechanism): Mechanism {
  const kind = kindOf(m)
  const swapped = Object.fromEntries(
    kind.fields.flatMap(({ name, twin }): [string, number][] => {
      const value = twin === undefined ? undefined : read(m, twin)
      return typeof value === 'number' ? [[name, value]] : []
    }),
  )
  const lists = (kind.lists ?? []).flatMap(({ name, sense }) => {
    const value = read(m, name)
    return sense === 'sides' && Array.isArray(value)
      ? [[name, (value as readonly number[]).map((across) => 0 - across)] as const]
      : []
  })
  return { ...assign(m, swapped), ...Object.fromEntries(lists) }
}

/**
 * The design with one mechanism and all that sits on it left for right: what sat on its left side sits on its
 * right one. On a left crease or panel of its host it goes over to the right one.
 */
export function mirrored(design: Design, id: string): Design {
  const ids = new Set(withGuests(design, id))
  return {
    ...design,
    mechanisms: design.mechanisms.map((m): Mechanism => {
      if (!ids.has(m.id)) return m
      const over = m.id === id || ids.has(ownerOf(m.on))
      return { ...mirroredMechanism(m), on: over ? otherSide(m.on) : m.on }
    }),
    ...artMirrored(design, ids),
  }
}
