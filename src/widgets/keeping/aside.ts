/** What is hidden, locked and kept on a maker's table. */
import type { Design, Mechanism } from '../../paper/index.ts'
import { kindOf, withGuests, without } from '../../paper/index.ts'
import type { Aside } from '../state/state.ts'

export const NOTHING_ASIDE: Aside = { hidden: [], locked: [], kept: [] }

const LISTS = ['hidden', 'locked', 'kept'] as const

const sameList = (a: readonly string[], b: readonly string[]): boolean =>
  a.length === b.length && a.every((one, k) => one === b[k])

export const sameAside = (a: Aside = NOTHING_ASIDE, b: Aside = NOTHING_ASIDE): boolean =>
  a === b || LISTS.every((list) => sameList(a[list], b[list]))

const ownerIn = (name: string): string => name.split('.')[0] ?? ''

/** Each name of each list as it is to go on; null: no longer. The very same object where nothing is another. */
function renamedBy(aside: Aside, to: (id: string) => string | null): Aside {
  const list = (names: readonly string[]): readonly string[] =>
    names.flatMap((name) => {
      const id = ownerIn(name)
      const next = to(id)
      return next === null ? [] : [`${next}${name.slice(id.length)}`]
    })
  const next: Aside = { hidden: list(aside.hidden), locked: list(aside.locked), kept: list(aside.kept) }
  return sameAside(aside, next) ? aside : next
}

/** What is gone from the design is neither hidden nor locked nor kept any more. */
export function asideThere(design: Design, aside: Aside): Aside {
  const there = new Set(design.mechanisms.map(({ id }) => id))
  return renamedBy(aside, (id) => (there.has(id) ? id : null))
}

/** A part that has another name stays as it was set. */
export const asideRenamed = (aside: Aside, from: string, to: string): Aside =>
  renamedBy(aside, (id) => (id === from ? to : id))

/** The name put on a list, or taken off it. */
export function asideWith(aside: Aside, list: keyof Aside, name: string, on: boolean): Aside {
  if (aside[list].includes(name) === on) return aside
  const others = aside[list].filter((one) => one !== name)
  return { ...aside, [list]: on ? [...others, name] : others }
}

/** All parts that no picture shows: those hidden, and what sits on them. */
export const hiddenIn = (design: Design, { hidden }: Aside): ReadonlySet<string> =>
  new Set(hidden.flatMap((id) => withGuests(design, id)))

/** The card as its pictures show it; the very same design where nothing of it is hidden. */
export function inSight(design: Design, aside: Aside): Design {
  const hidden = hiddenIn(design, aside)
  return design.mechanisms.some(({ id }) => hidden.has(id)) ? without(design, [...hidden]) : design
}

const sizesOf = (m: Mechanism): readonly string[] =>
  kindOf(m)
    .fields.filter(({ shorthand }) => !shorthand)
    .map(({ name }) => `${m.id}.${name}`)

/** All sizes that a mend leaves: those kept, and every one of a locked part. */
export function pinsOf({ mechanisms }: Design, { locked, kept }: Aside): readonly string[] {
  if (locked.length === 0) return kept
  const all = mechanisms.filter(({ id }) => locked.includes(id)).flatMap(sizesOf)
  return [...new Set([...kept, ...all])]
}

/** The first locked part that is another in the second design, or gone from it; null: none. */
export function touchedLock(before: Design, after: Design, { locked }: Aside): string | null {
  const now = new Map(after.mechanisms.map((m) => [m.id, m]))
  const touched = before.mechanisms.find(
    (m) => locked.includes(m.id) && JSON.stringify(now.get(m.id)) !== JSON.stringify(m),
  )
  return touched?.id ?? null
}

/** What was stored, read unbelieving: lists of short words, else nothing of it. */
export function readAside(stored: unknown): Aside | undefined {
  if (typeof stored !== 'object' || stored === null) return undefined
  const list = (name: keyof Aside): readonly string[] => {
    const names: unknown = (stored as Partial<Record<keyof Aside, unknown>>)[name]
    return Array.isArray(names) && names.length <= MOST && names.every(isName) ? names : []
  }
  return { hidden: list('hidden'), locked: list('locked'), kept: list('kept') }
}

/** Beyond what 200 mechanisms have of sizes. */
const MOST = 10_000

const isName = (name: unknown): name is string => typeof name === 'string' && name.length <= 100
