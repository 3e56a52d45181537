import type { Mechanism } from '../mechanisms/registry.ts'
import type { Art, Papers } from './art.ts'
import type { Design } from './design.ts'
import { ownerOf } from './name.ts'

/** A mechanism's id and those of all that sits on it, and on that, in the order of the file. */
export function withGuests(design: Design, id: string): string[] {
  const found = new Set([id])
  for (const m of design.mechanisms) if (found.has(ownerOf(m.on))) found.add(m.id)
  return design.mechanisms.flatMap((m) => (found.has(m.id) ? [m.id] : []))
}

/** The design with nothing but a mechanism and what it stands on, down to the card: all that its tip depends on. */
export function downTo(design: Design, id: string): Design {
  const kept = new Set<string>()
  for (let m = design.mechanisms.find((one) => one.id === id); m; ) {
    kept.add(m.id)
    const host = ownerOf(m.on)
    m = design.mechanisms.find((one) => one.id === host)
  }
  return { ...design, mechanisms: design.mechanisms.filter((m) => kept.has(m.id)) }
}

/**
 * The same mechanisms with every host before its guests, the rest as they stood. What sits on nothing that is
 * there, or in a ring on itself, comes last.
 */
export function hostsFirst(mechanisms: readonly Mechanism[]): Mechanism[] {
  const ids = new Set(mechanisms.map(({ id }) => id))
  const done = new Set<string>()
  const left = [...mechanisms]
  const placed: Mechanism[] = []
  while (left.length > 0) {
    const next = left.findIndex(({ on }) => done.has(ownerOf(on)) || !ids.has(ownerOf(on)))
    if (next < 0) return [...placed, ...left]
    const [m] = left.splice(next, 1) as [Mechanism]
    placed.push(m)
    done.add(m.id)
  }
  return placed
}

const renamedPlace = (place: string, from: string, to: string): string =>
  ownerOf(place) === from ? `${to}${place.slice(from.length)}` : place

/** The art with other names for its panels; a shape that has none left (null) is gone, its other panels are not. */
function artOn(art: readonly Art[], name: (panel: string) => string | null): Art[] {
  return art.flatMap((one): Art[] => {
    const panels = [one.on, ...one.also]
    const now = panels.map(name)
    if (now.every((panel, k) => panel === panels[k])) return [one]
    const [on, ...also] = now.filter((panel) => panel !== null)
    return on === undefined ? [] : [{ ...one, on, also }]
  })
}

/** The design with its parts where they are, and papers and art with other names of owners and panels. */
function renamedInks(
  design: Design,
  owner: (id: string) => string | null,
  panel: (name: string) => string | null,
): Pick<Design, 'papers' | 'art'> {
  const papers: Papers | undefined =
    design.papers &&
    Object.fromEntries(
      Object.entries(design.papers).flatMap(([id, paper]) => {
        const now = owner(id)
        return now === null ? [] : [[now, paper]]
      }),
    )
  const art = design.art && artOn(design.art, panel)
  return { ...(papers ? { papers } : {}), ...(art ? { art } : {}) }
}

/** The design with another id for one mechanism: all that sits on it, its paper and its art follow. */
export function renamed(design: Design, from: string, to: string): Design {
  return {
    ...design,
    mechanisms: design.mechanisms.map((m): Mechanism => {
      const on = renamedPlace(m.on, from, to)
      return m.id === from ? { ...m, id: to, on } : on === m.on ? m : { ...m, on }
    }),
    ...renamedInks(
      design,
      (id) => (id === from ? to : id),
      (panel) => renamedPlace(panel, from, to),
    ),
  }
}

/** The design without these mechanisms, their papers, and what is drawn on them alone. */
export function without(design: Design, ids: readonly string[]): Design {
  const gone = new Set(ids)
  return {
    ...design,
    mechanisms: design.mechanisms.filter(({ id }) => !gone.has(id)),
    ...renamedInks(
      design,
      (id) => (gone.has(id) ? null : id),
      (panel) => (gone.has(ownerOf(panel)) ? null : panel),
    ),
  }
}

/** Names of panels, with left and right changed over on these mechanisms. */
export const artMirrored = (design: Design, ids: ReadonlySet<string>): Pick<Design, 'papers' | 'art'> =>
  renamedInks(
    design,
    (id) => id,
    (panel) => (ids.has(ownerOf(panel)) ? otherSide(panel) : panel),
  )

/** `owl/right` for `owl/left`, and the other way round; a ridge keeps its name. */
export const otherSide = (place: string): string =>
  place.replace(/\/(left|right)$/, (_, side: string) => (side === 'left' ? '/right' : '/left'))

/** What the card calls parts of its own: no mechanism may be called so. */
export const CARD_NAMES: readonly string[] = ['card', 'page', 'gutter', 'point', 'cover']

/** An id that no mechanism has: the wanted one, or that with a number behind it (`reed-2`). */
export function freeId(design: Design, wanted: string, taken: readonly string[] = []): string {
  const ids = new Set([...CARD_NAMES, ...taken, ...design.mechanisms.map(({ id }) => id)])
  if (!ids.has(wanted)) return wanted
  const stem = wanted.replace(/-\d+$/, '').slice(0, 36) || 'part'
  let k = 2
  while (ids.has(`${stem}-${k}`)) k++
  return `${stem}-${k}`
}
