/** How what a maker did, and what a file cannot hold, is said. */
import * as faultSays from '../../../content/words/keeping/faults.ts'
import * as says from '../../../content/words/keeping/steps.ts'
import type { Card, Design, Mechanism } from '../../paper/index.ts'
import {
  cardFields,
  DesignError,
  kindNamed,
  kindOf,
  nameOf,
  ownerOf,
  read,
  withGuests,
} from '../../paper/index.ts'
import { large, small } from '../state/format.ts'
import type { Aside } from '../state/state.ts'
import { NOTHING_ASIDE } from './aside.ts'

/** A crease or panel by its name: `the gutter`, `the left page`, `owl, left`. */
export function placeWords(place: string): string {
  if (place === 'gutter') return says.gutter
  const owner = ownerOf(place)
  const part = nameOf(place.slice(owner.length + 1))
  return owner === 'page' ? says.page(part) : says.placeOn(nameOf(owner), part)
}

/** To a tenth, as a label needs it. */
const digits = (value: unknown): string =>
  typeof value === 'number' ? String(Number(value.toFixed(1)) + 0) : String(value)

/** A mechanism that may be anything: what was handed in need not be a design. */
function mechanismAt(json: unknown, index: number): { id: string; kind: string } | null {
  const list = (json as { mechanisms?: unknown } | null | undefined)?.mechanisms
  const m: unknown = Array.isArray(list) ? list[index] : undefined
  if (typeof m !== 'object' || m === null) return null
  const { id, kind } = m as { id?: unknown; kind?: unknown }
  return typeof id === 'string' && typeof kind === 'string' ? { id, kind } : null
}

/** What a mechanism is called in a sentence: by its place in the file where its id is none. */
const calledAs = (id: string, index: number): string =>
  /^[a-z0-9-]{1,40}$/.test(id) ? large(nameOf(id)) : faultSays.partNumber(index + 1)

/** The label of a field of a kind, with what stands behind its name: `shape[3]` is the shape’s point 4. */
function labelOf(kindName: string, path: string): string {
  const kind = kindNamed(kindName)
  const [, name = path, index] = /^(.*?)(?:\[(\d+)\])?$/.exec(path) ?? []
  const field = [...(kind?.fields ?? []), ...(kind?.choices ?? []), ...(kind?.lists ?? [])].find(
    (one) => one.name === name,
  )
  const label = small(
    field?.label ?? (name === 'on' ? faultSays.place : name === 'id' ? faultSays.name : name),
  )
  return index === undefined ? label : faultSays.numbered(label, Number(index) + 1)
}

/**
 * What a design cannot hold, in one sentence with the names a reader knows: `Beak: the slit must be from 0 to 2000 mm,
 * not 5000.`
 * @param json what was to be read as a design
 */
export function faultWords(error: DesignError, json: unknown): string {
  const rest = error.message.slice(error.path.length + 1)
  const [, index, path] = /^mechanisms\[(\d+)\]\.?(.*)$/.exec(error.path) ?? []
  const m = index === undefined ? null : mechanismAt(json, Number(index))
  if (m && path)
    return faultSays.ofPart(calledAs(m.id, Number(index)), labelOf(m.kind, path), rest, error.nearest)
  const [, cardField] = /^card\.(\w+)$/.exec(error.path) ?? []
  const field = cardFields.find(({ name }) => name === cardField)
  if (field) return faultSays.ofCard(small(field.label), rest, error.nearest)
  return faultSays.ofPlace(large(error.path), rest, error.nearest)
}

/** Says nothing of what is no fault of a design: that is thrown on. */
export function sentenceOf(error: unknown, json: unknown): string {
  if (error instanceof DesignError) return faultWords(error, json)
  throw error
}

const same = (a: unknown, b: unknown): boolean => a === b || JSON.stringify(a) === JSON.stringify(b)

/** What is another about one mechanism, name by name. */
function changesOf(before: Mechanism, after: Mechanism): string[] {
  const { fields, choices = [], lists = [], points } = kindOf(after)
  const numbers = fields
    .filter(({ shorthand }) => !shorthand)
    .flatMap(({ name, label }) => {
      const [from, to] = [read(before, name), read(after, name)]
      return same(from, to) ? [] : [says.changed(small(label), digits(from), digits(to))]
    })
  const words = choices.flatMap(({ name, label, values, words: said }) => {
    const [from, to] = [read(before, name), read(after, name)]
    // What the file does not say is the first.
    const word = (value: unknown = values[0]) =>
      said[(values as readonly unknown[]).indexOf(value)] ?? String(value)
    return same(from, to) ? [] : [says.changed(small(label), small(word(from)), small(word(to)))]
  })
  const rest = [...lists, ...points].flatMap(({ name }) =>
    same(read(before, name), read(after, name)) ? [] : [name],
  )
  return [...numbers, ...words, ...rest]
}

function mechanismWords(before: Mechanism, after: Mechanism): string {
  const name = nameOf(after.id)
  if (before.on !== after.on) return says.movedTo(name, placeWords(after.on))
  const changes = changesOf(before, after)
  return changes.length > 2 ? says.manyChanged(name, changes.length) : says.changes(name, changes)
}

const cardWords = (before: Card, after: Card): string[] => [
  ...cardFields.flatMap(({ name, label }) => {
    const [from, to] = [before, after].map((card) => card[name as 'width' | 'height' | 'caliper'])
    // Paper is thinner than a tenth of a millimetre: its thickness is said in full.
    return from === to ? [] : [says.changed(small(label), String(from), String(to))]
  }),
  ...(Boolean(before.cover) === Boolean(after.cover)
    ? []
    : [after.cover ? says.withCover : says.withoutCover]),
]

/** What is gone, with what sat on it: `moth removed, and 2 on it`. */
function removedWords(before: Design, gone: readonly string[]): string {
  const [first = ''] = gone
  const guests = withGuests(before, first).filter((id) => id !== first && gone.includes(id))
  return guests.length === gone.length - 1
    ? says.removedWith(nameOf(first), guests.length)
    : says.removed(gone.map(nameOf))
}

/** What is another about the parts of two designs, most telling first; null if their parts are the same. */
function partsWords(before: Design, after: Design): string | null {
  const [was, is] = [before, after].map(({ mechanisms }) => new Map(mechanisms.map((m) => [m.id, m])))
  if (!was || !is) return null
  const added = [...is.keys()].filter((id) => !was.has(id))
  const gone = [...was.keys()].filter((id) => !is.has(id))
  const [from, to] = [gone[0], added[0]]
  if (gone.length === 1 && added.length === 1 && from !== undefined && to !== undefined) {
    const [old, now] = [was.get(from), is.get(to)]
    if (old && now && same({ ...old, id: '', on: '' }, { ...now, id: '', on: '' }))
      return says.renamed(nameOf(from), nameOf(to))
  }
  if (gone.length > 0 && added.length > 0) return says.exchanged(gone.map(nameOf), added.map(nameOf))
  if (added.length > 0) return says.added(added.map(nameOf))
  if (gone.length > 0) return removedWords(before, gone)
  const changed = after.mechanisms.flatMap((m) => {
    const old = was.get(m.id)
    return old && !same(old, m) ? [[old, m] as const] : []
  })
  const [one, ...more] = changed
  if (!one) return null
  const step = mechanismWords(...one)
  return more.length > 0 ? says.andMore(step, more.length) : step
}

/** What was done between two designs, as a list of steps says it: `wing: slit 38 to 41`. */
export function stepWords(before: Design, after: Design): string {
  const parts = partsWords(before, after)
  if (parts !== null) return parts
  const card = cardWords(before.card, after.card)
  if (card.length > 0) return says.cardChanged(card)
  if (before.title !== after.title) return says.titleChanged(before.title, after.title)
  const [shapes, now] = [before.art?.length ?? 0, after.art?.length ?? 0]
  if (now !== shapes) return now > shapes ? says.shapesAdded(now - shapes) : says.shapesRemoved(shapes - now)
  if (!same(before.art, after.art)) return says.drawingChanged
  if (!same(before.papers, after.papers)) return says.papersChanged
  const order = ({ mechanisms }: Design) => mechanisms.map(({ id }) => id).join()
  return order(before) === order(after) ? says.nothingChanged : says.orderChanged
}

/** Owners, and how many of their names are meant: sizes are kept one by one. */
type AsideSays = (owners: readonly string[], count: number) => string

const ASIDE_SAYS: Readonly<Record<keyof Aside, readonly [on: AsideSays, off: AsideSays]>> = {
  hidden: [says.hidden, says.shownAgain],
  locked: [says.locked, says.unlocked],
  kept: [says.keptWhenMended, says.letGo],
}

/** What was set beside the design: `wing hidden`, `owl: 3 sizes kept when mended`. */
export function asideWords(before: Aside = NOTHING_ASIDE, after: Aside = NOTHING_ASIDE): string {
  for (const list of ['hidden', 'locked', 'kept'] as const) {
    const on = after[list].filter((name) => !before[list].includes(name))
    const names = on.length > 0 ? on : before[list].filter((name) => !after[list].includes(name))
    if (names.length === 0) continue
    const owners = [...new Set(names.map((name) => nameOf(name.split('.')[0] ?? '')))]
    return ASIDE_SAYS[list][on.length > 0 ? 0 : 1](owners, names.length)
  }
  return says.nothingChanged
}
