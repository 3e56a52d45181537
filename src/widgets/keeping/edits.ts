/** What a maker does to a design. Every edit gives a design that a file may hold, or says why not and keeps the old. */
import * as says from '../../../content/words/keeping/edits.ts'
import * as stepSays from '../../../content/words/keeping/steps.ts'
import type { Art, Card, Change, Design, Flat, Mechanism, PaperColour } from '../../paper/index.ts'
import {
  cardFields,
  change,
  fieldsFor,
  freeId,
  held,
  hostsFirst,
  kindOf,
  mirrored,
  nameOf,
  ownerOf,
  parseDesign,
  renamed,
  runOf,
  settable,
  settled,
  shiftedAlong,
  sizedBy,
  stretchOf,
  wayToRoom,
  withGuests,
  without,
} from '../../paper/index.ts'
import { large, small } from '../state/format.ts'
import { placeWords, sentenceOf, stepWords } from './words.ts'

/** What came of an edit. `design` is the one to go on with: the old one where it could not be done. */
export type Edit =
  | {
      readonly done: true
      readonly design: Design
      /** For the list of steps: `wing: slit 38 to 41`. */
      readonly says: string
      /** The mechanism to choose next: the new one, or the one that was changed. */
      readonly id?: string
      /** What else the maker should know: that there was no free room, or that sizes were changed to fit. */
      readonly note?: string
    }
  | { readonly done: false; readonly design: Design; readonly sentence: string }

const refused = (design: Design, sentence: string): Edit => ({ done: false, design, sentence })

/** Takes a design if a file may hold it. */
function admitted(
  before: Design,
  after: Design,
  more: { says?: string; id?: string; note?: string } = {},
): Edit {
  try {
    parseDesign(after)
  } catch (error) {
    return refused(before, sentenceOf(error, after))
  }
  return { done: true, design: after, says: stepWords(before, after), ...more }
}

const mechanismNamed = (design: Design, id: string): Mechanism | undefined =>
  design.mechanisms.find((m) => m.id === id)

const missing = (design: Design, id: string): Edit => refused(design, says.noPart(nameOf(id)))

const withChanged = (design: Design, id: string, next: (m: Mechanism) => Mechanism): Design => ({
  ...design,
  mechanisms: design.mechanisms.map((m) => (m.id === id ? next(m) : m)),
})

/** An empty card. */
export const bareCard = (title: string, card: Card): Design => ({ hingebook: 1, title, card, mechanisms: [] })

/** Takes a ready design in place of the present one: an offer, a mended card, a file. What is the same stays the same. */
export function take(design: Design, offered: Design, id?: string): Edit {
  let read: Design
  try {
    read = parseDesign(offered)
  } catch (error) {
    return refused(design, sentenceOf(error, offered))
  }
  return {
    done: true,
    design: sharing(design, read),
    says: stepWords(design, read),
    ...(id === undefined ? {} : { id }),
  }
}

/** The second design, made of the first one's parts where they are equal: histories stay small. */
export function sharing(before: Design, after: Design): Design {
  const known = new Map<string, unknown>()
  const note = <T>(part: T): void => void known.set(JSON.stringify(part), part)
  for (const part of [...before.mechanisms, ...(before.art ?? []), before.card, before.papers])
    if (part !== undefined) note(part)
  const old = <T>(part: T): T => (known.get(JSON.stringify(part)) as T | undefined) ?? part
  const list = <T>(now: readonly T[], was: readonly T[] | undefined): readonly T[] => {
    const shared = now.map(old)
    return was && shared.length === was.length && shared.every((one, k) => one === was[k]) ? was : shared
  }
  return {
    ...after,
    card: old(after.card),
    mechanisms: list(after.mechanisms, before.mechanisms),
    ...(after.papers ? { papers: old(after.papers) } : {}),
    ...(after.art ? { art: list(after.art, before.art) } : {}),
  }
}

/** Adds a mechanism. Its id is kept if it is free, else it gets a number. */
export function add(design: Design, mechanism: Mechanism): Edit {
  const id = freeId(design, mechanism.id)
  let whole: Mechanism | undefined
  try {
    const read = parseDesign({ ...design, mechanisms: [...design.mechanisms, { ...mechanism, id }] })
    whole = read.mechanisms.at(-1)
  } catch (error) {
    const tried = { ...design, mechanisms: [...design.mechanisms, { ...mechanism, id }] }
    return refused(design, sentenceOf(error, tried))
  }
  if (!whole) return missing(design, id)
  return admitted(design, { ...design, mechanisms: [...design.mechanisms, whole] }, { id })
}

/** A number as it was given; what is none is called so. */
const given = (value: number): string => (Number.isFinite(value) ? String(value) : says.noNumber)

/** Sets a number, typed: what is out of its range is refused, and the range said. mm or degrees. */
export function setSize(design: Design, id: string, name: string, value: number): Edit {
  const m = mechanismNamed(design, id)
  if (!m) return missing(design, id)
  const field = settable(m).find((one) => one.name === name)
  if (!field) return refused(design, says.noSize(large(nameOf(id)), name))
  const { label, min, max, unit } = field
  if (!(value >= min && value <= max)) {
    const part = large(nameOf(id))
    return refused(design, says.sizeRange(part, small(label), min, max, says.units[unit], given(value)))
  }
  const next = change(design, id, fieldsFor(m, name, value + 0))
  const now = mechanismNamed(next, id)
  const fault = now && kindOf(now).limits?.(now)
  // What can be drawn but not held in a hand is brought to the nearest that can, as a drag is.
  if (fault?.drawable) return admitted(design, settled(next) ?? next, { id })
  return admitted(design, next, { id })
}

/** The nearest design that a file may hold with these fields, as a hand that drags leaves it. For every frame of a drag. */
export function nearest(design: Design, id: string, fields: Change): Design {
  const m = mechanismNamed(design, id)
  if (!m) return design
  const { fields: known, choices = [] } = kindOf(m)
  const fine = Object.entries(fields).filter(
    ([name, value]) =>
      !Number.isNaN(value) &&
      (known.some((one) => one.name === name) ||
        choices.some((one) => one.name === name && one.values.includes(value))),
  )
  if (fine.length === 0) return design
  return settled(change(design, id, held(m, Object.fromEntries(fine)))) ?? design
}

/** Chooses one of a few states: popped or still down, front or back. */
export function setChoice(design: Design, id: string, name: string, value: string | number): Edit {
  const m = mechanismNamed(design, id)
  if (!m) return missing(design, id)
  if (!kindOf(m).choices?.some((choice) => choice.name === name))
    return refused(design, says.noChoice(large(nameOf(id)), name))
  return admitted(design, change(design, id, { [name]: value }), { id })
}

/** Sets an outline (points across and along, mm), or a list of numbers: where walls stand, mm. Empty: none. */
export function setList(
  design: Design,
  id: string,
  name: string,
  list: readonly Flat[] | readonly number[],
): Edit {
  const m = mechanismNamed(design, id)
  if (!m) return missing(design, id)
  const kind = kindOf(m)
  const points = kind.points.find((one) => one.name === name)
  if (!points && !kind.lists?.some((one) => one.name === name))
    return refused(design, says.noOutline(large(nameOf(id)), name))
  const next = withChanged(design, id, (one) => {
    const { [name as keyof Mechanism]: _before, ...rest } = one
    const isLeftOut = list.length === 0 && points && !points.required
    return (isLeftOut ? rest : { ...one, [name]: list }) as Mechanism
  })
  return admitted(design, next, { id })
}

export interface Copying {
  /** With all that sits on it; true unless said. */
  readonly guests?: boolean
  /** Left for right: what sits on the left side of its host is copied to the right side. */
  readonly mirrored?: boolean
}

/** Copies of art for copied panels: a shape that lies on several gets the copies beside them. */
const copiedArt = (art: readonly Art[], ids: ReadonlyMap<string, string>): Art[] =>
  art.flatMap((one): Art[] => {
    const [on, ...also] = [one.on, ...one.also].flatMap((panel) => {
      const id = ids.get(ownerOf(panel))
      return id === undefined ? [] : [`${id}${panel.slice(ownerOf(panel).length)}`]
    })
    return on === undefined ? [one] : [one, { ...one, on, also }]
  })

/** The design with a copy of some mechanisms, in the same places, behind them. */
function copied(design: Design, ids: ReadonlyMap<string, string>): Design {
  const place = (on: string): string => {
    const id = ids.get(ownerOf(on))
    return id === undefined ? on : `${id}${on.slice(ownerOf(on).length)}`
  }
  const copies = design.mechanisms.flatMap((m): Mechanism[] => {
    const id = ids.get(m.id)
    return id === undefined ? [] : [{ ...m, id, on: place(m.on) }]
  })
  const papers =
    design.papers &&
    Object.fromEntries(
      Object.entries(design.papers).flatMap(([owner, paper]) => {
        const id = ids.get(owner)
        return id === undefined
          ? [[owner, paper]]
          : [
              [owner, paper],
              [id, paper],
            ]
      }),
    )
  return {
    ...design,
    mechanisms: [...design.mechanisms, ...copies],
    ...(papers ? { papers } : {}),
    ...(design.art ? { art: copiedArt(design.art, ids) } : {}),
  }
}

/** Where a mechanism lies within its host and clear of the others; as near as can be to that where all is taken. */
function withRoom(design: Design, id: string): { design: Design; free: boolean } {
  const m = mechanismNamed(design, id)
  const run = m && runOf(design, m.on)
  if (!m || !run) return { design, free: true }
  const way = wayToRoom(design, m)
  if (way !== null)
    return {
      design: way === 0 ? design : withChanged(design, id, (one) => shiftedAlong(one, way)),
      free: true,
    }
  const [from, to] = stretchOf(m)
  const inside = to > run[1] ? Math.max(run[0] - from, run[1] - to) : Math.max(0, run[0] - from)
  return { design: withChanged(design, id, (one) => shiftedAlong(one, inside)), free: false }
}

/** Copies a mechanism to the nearest free room on its host, or left for right to its other side. */
export function duplicate(
  design: Design,
  id: string,
  { guests = true, mirrored: over = false }: Copying = {},
): Edit {
  const m = mechanismNamed(design, id)
  if (!m) return missing(design, id)
  const chosen = guests ? withGuests(design, id) : [id]
  const ids = new Map<string, string>()
  for (const one of chosen) ids.set(one, freeId(design, one, [...ids.values()]))
  const copy = ids.get(id) as string
  const twin = copied(design, ids)
  const placed = withRoom(over ? mirrored(twin, copy) : twin, copy)
  const note = placed.free ? {} : { note: says.noRoomForCopy(placeWords(m.on)) }
  return admitted(design, placed.design, { says: stepSays.copied(nameOf(id)), id: copy, ...note })
}

/** Turns a mechanism and all on it left for right; from a left fold or panel of its host it goes over to the right one. */
export function mirror(design: Design, id: string): Edit {
  if (!mechanismNamed(design, id)) return missing(design, id)
  return admitted(design, hosted(mirrored(design, id)), { says: stepSays.mirrored(nameOf(id)), id })
}

const hosted = (design: Design): Design => ({ ...design, mechanisms: hostsFirst(design.mechanisms) })

/** Moves a mechanism and all on it to another crease or panel: its sizes stay if they fit there, else it is made smaller. */
export function move(design: Design, id: string, on: string): Edit {
  const m = mechanismNamed(design, id)
  if (!m) return missing(design, id)
  if (m.on === on) return { done: true, design, says: stepWords(design, design), id }
  if (withGuests(design, id).includes(ownerOf(on)))
    return refused(design, says.onItself(large(nameOf(id)), placeWords(on), nameOf(id)))
  const there = hosted(withChanged(design, id, (one) => ({ ...one, on })))
  const run = runOf(design, on)
  if (!run) return admitted(design, there, { id })
  const [from, to] = stretchOf(m)
  const [room, long] = [run[1] - run[0], to - from]
  const k = long > room && room > 0 ? room / long : 1
  // Rounding must not leave it a hair too long.
  const sized = k === 1 ? there : withChanged(there, id, (one) => sizedBy(one, k * (1 - 1e-9)))
  const placed = withRoom(sized, id)
  const notes = [
    k === 1 ? '' : says.madeSmaller(Math.round(k * 100)),
    placed.free ? '' : says.noRoom(placeWords(on)),
  ].filter((one) => one !== '')
  const note = notes.length > 0 ? { note: notes.join(' ') } : {}
  return admitted(design, placed.design, { says: stepSays.movedTo(nameOf(id), placeWords(on)), id, ...note })
}

/** Letters that are no letter from a to z with a mark on it, and how they are written without them. */
const SPELT: Readonly<Record<string, string>> = {
  ß: 'ss',
  æ: 'ae',
  œ: 'oe',
  ø: 'o',
  ð: 'd',
  đ: 'd',
  þ: 'th',
  ł: 'l',
  ħ: 'h',
  ı: 'i',
}

/**
 * An id from what somebody typed as a name: `Left Reed` is `left-reed`, `Owl’s wing` is `owls-wing`; empty if no letter
 * of it can stand in one.
 */
export const idFrom = (text: string): string =>
  text
    .slice(0, 200)
    .replace(/['’‘ʼ`´]/g, '')
    .normalize('NFKD')
    .replace(/\p{M}/gu, '')
    .toLowerCase()
    .replace(/[^a-z0-9]/g, (letter) => SPELT[letter] ?? letter)
    .replace(/[^a-z0-9]+/g, '-')
    // A sentence brings its own article.
    .replace(/^-?the-(?=.)/, '')
    .replace(/^-+|-+$/g, '')
    .slice(0, 40)
    .replace(/-+$/, '')

/** Gives a mechanism another name, as typed: what sits on it, its paper and its art follow. */
export function rename(design: Design, id: string, name: string): Edit {
  if (!mechanismNamed(design, id)) return missing(design, id)
  const to = idFrom(name)
  if (to === '') return refused(design, says.nameNeedsLetters)
  // Large letters come by themselves where a name begins a sentence; what else is lost is told.
  const isAsTyped = nameOf(to).toLowerCase() === name.trim().toLowerCase()
  const note = isAsTyped ? {} : { note: says.nameKeeps(nameOf(to)) }
  if (to === id) return { done: true, design, says: stepWords(design, design), id, ...note }
  if (mechanismNamed(design, to)) return refused(design, says.nameTaken(nameOf(to)))
  const step = stepSays.renamed(nameOf(id), nameOf(to))
  return admitted(design, renamed(design, id, to), { says: step, id: to, ...note })
}

/** What goes when this mechanism is removed: itself first, then all that sits on it. To be said before. */
export const withChildren = (design: Design, id: string): string[] =>
  mechanismNamed(design, id) ? [id, ...withGuests(design, id).filter((one) => one !== id)] : []

/** Removes a mechanism, all that sits on it, and what is drawn on them. */
export function remove(design: Design, id: string): Edit {
  if (!mechanismNamed(design, id)) return missing(design, id)
  return admitted(design, without(design, withChildren(design, id)))
}

/** Puts every host before its guests: what a file asks for. */
export const reorder = (design: Design): Edit => admitted(design, hosted(design))

/** Sets the card: page width and height and thickness, mm, and whether there is a cover. */
export function setCard(design: Design, part: Partial<Card>): Edit {
  for (const { name, label, min, max } of cardFields) {
    const value = part[name as 'width' | 'height' | 'caliper']
    if (value !== undefined && !(value >= min && value <= max))
      return refused(design, says.cardRange(small(label), min, max, given(value)))
  }
  const { cover = design.card.cover ?? false, ...sizes } = part
  const { cover: _cover, ...plain } = design.card
  const card: Card = { ...plain, ...sizes, ...(cover ? { cover } : {}) }
  // A cover that goes takes its paper and what is drawn on it along.
  const rest = cover ? design : without(design, ['cover'])
  const kept = mechanismNamed(design, 'cover') ? design : rest
  return admitted(design, { ...kept, card })
}

export const setTitle = (design: Design, title: string): Edit =>
  admitted(design, { ...design, title: title.trim() })

/** What a part is cut from: `page`, `cover` or a mechanism’s id; null: plain. */
export function setPaper(design: Design, owner: string, paper: PaperColour | null): Edit {
  const { [owner]: _before, ...rest } = design.papers ?? {}
  return admitted(design, { ...design, papers: paper === null ? rest : { ...rest, [owner]: paper } })
}

/** Sets all that is drawn on the panels. */
export const setArt = (design: Design, art: readonly Art[]): Edit => admitted(design, { ...design, art })
