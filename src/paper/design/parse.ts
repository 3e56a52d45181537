import type { Field } from '../mechanisms/kind.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindNamed, kinds } from '../mechanisms/registry.ts'
import * as says from '../words/design.ts'
import { parseArt, parsePapers } from './art.ts'
import type { Card, Design } from './design.ts'
import type { Thing } from './read.ts'
import { checkFlag, checkNumber, checkPoints, DesignError, onlyKeys, shown, thing } from './read.ts'
import { strayIn } from './text.ts'
import { CARD_NAMES } from './tree.ts'

export const MOST_MECHANISMS = 200

export const cardFields: readonly Field[] = [
  { name: 'width', label: says.pageWidth, unit: 'mm', min: 10, max: 1000 },
  { name: 'height', label: says.pageHeight, unit: 'mm', min: 10, max: 1000 },
  { name: 'caliper', label: says.thickness, unit: 'mm', min: 0.02, max: 3 },
]

const DEFAULT_CALIPER = 0.25

/** In one list. */
const MOST_NUMBERS = 20

function checkList(value: unknown, field: Field, path: string): readonly number[] {
  if (!Array.isArray(value)) throw new DesignError(path, says.notNumbers(shown(value)))
  if (value.length > MOST_NUMBERS)
    throw new DesignError(path, says.tooManyNumbers(MOST_NUMBERS, value.length))
  return Array.from(value, (number: unknown, k) => checkNumber(number, field, `${path}[${k}]`))
}

function parseCard(json: unknown): Card {
  const card = thing(json, 'card')
  onlyKeys(card, [...cardFields.map((field) => field.name), 'cover'], 'card')
  const [width, height, caliper] = cardFields.map((field) =>
    field.name === 'caliper' && card[field.name] === undefined
      ? DEFAULT_CALIPER
      : checkNumber(card[field.name], field, `card.${field.name}`),
  ) as [number, number, number]
  const cover = checkFlag(card.cover, false, 'card.cover')
  return { width, height, caliper, ...(cover ? { cover } : {}) }
}

/** What later mechanisms may sit on. */
interface Places {
  readonly ids: Set<string>
  readonly creases: string[]
  readonly panels: string[]
}

const named = (list: readonly { readonly name: string }[] | undefined): string[] =>
  (list ?? []).map(({ name }) => name)

function parseMechanism(json: unknown, path: string, places: Places): Mechanism {
  const raw = thing(json, path)
  if (typeof raw.id !== 'string' || !/^[a-z0-9-]{1,40}$/.test(raw.id))
    throw new DesignError(`${path}.id`, says.notId(shown(raw.id)))
  if (raw.id !== 'cover' && CARD_NAMES.includes(raw.id))
    throw new DesignError(`${path}.id`, says.cardsOwnName(raw.id))
  if (places.ids.has(raw.id)) throw new DesignError(`${path}.id`, says.usedTwice(raw.id))
  const kind = typeof raw.kind === 'string' ? kindNamed(raw.kind) : undefined
  if (!kind)
    throw new DesignError(
      `${path}.kind`,
      says.notOneOf(
        kinds.map((k) => k.kind),
        shown(raw.kind),
      ),
    )
  const numbers = kind.fields.map((field) => field.name)
  const inner = (outer: string) =>
    numbers.flatMap((name) => (name.startsWith(`${outer}.`) ? name.slice(outer.length + 1) : []))
  const keys = [
    ...numbers.map((name) => name.split('.')[0] ?? name),
    ...named(kind.points),
    ...named(kind.choices),
    ...named(kind.lists),
  ]
  onlyKeys(raw, ['id', 'kind', 'on', ...new Set(keys)], path)
  const hosts = kind.sitsOn === 'panel' ? places.panels : places.creases
  if (typeof raw.on !== 'string' || !hosts.includes(raw.on)) {
    const refused = kind.sitsOn === 'panel' ? says.noPanelToSitOn : says.noCreaseToSitOn
    throw new DesignError(`${path}.on`, refused(hosts, shown(raw.on)))
  }
  const mechanism: Thing = { id: raw.id, kind: kind.kind, on: raw.on }
  for (const field of kind.fields) {
    const [outer = '', key] = field.name.split('.')
    const holder =
      key === undefined ? raw : raw[outer] === undefined ? {} : thing(raw[outer], `${path}.${outer}`)
    if (key !== undefined) onlyKeys(holder, inner(outer), `${path}.${outer}`)
    const value = holder[key ?? outer]
    // A nested number left out may follow from a shorthand: `limits` tells if it does not.
    if (value === undefined && (field.optional || key !== undefined)) continue
    const number = checkNumber(value, field, `${path}.${field.name}`)
    if (key === undefined) mechanism[outer] = number
    else mechanism[outer] = { ...(mechanism[outer] as object), [key]: number }
  }
  for (const { name, required } of kind.points)
    if (raw[name] !== undefined || required) mechanism[name] = checkPoints(raw[name], `${path}.${name}`)
  for (const { name, values, required } of kind.choices ?? [])
    if (raw[name] !== undefined || required) {
      if (!values.includes(raw[name] as string | number))
        throw new DesignError(`${path}.${name}`, says.notChoice(values, shown(raw[name])))
      mechanism[name] = raw[name]
    }
  for (const field of kind.lists ?? [])
    if (raw[field.name] !== undefined || !field.optional)
      mechanism[field.name] = checkList(raw[field.name], field, `${path}.${field.name}`)
  const fault = kind.limits?.(mechanism as unknown as Mechanism)
  if (fault && !fault.drawable) throw new DesignError(`${path}.${fault.field}`, fault.sentence, fault.nearest)
  const whole = kind.complete(mechanism as unknown as Mechanism) as Mechanism
  const built = kind.build(whole)
  places.ids.add(whole.id)
  places.creases.push(...built.creases.flatMap(({ part, hidden }) => (hidden ? [] : `${whole.id}/${part}`)))
  places.panels.push(...built.panels.map(({ part }) => `${whole.id}/${part}`))
  return whole
}

/**
 * Reads a design file's JSON value: lengths in mm, angles in degrees.
 * Optional fields are filled in. Throws a `DesignError` that names the field and the allowed range.
 */
export function parseDesign(json: unknown): Design {
  const raw = thing(json, 'design')
  if (raw.hingebook !== 1) throw new DesignError('hingebook', says.notVersion(shown(raw.hingebook)))
  onlyKeys(raw, ['hingebook', 'title', 'card', 'mechanisms', 'papers', 'art'], '')
  if (typeof raw.title !== 'string' || raw.title.trim() === '' || raw.title.length > 120)
    throw new DesignError('title', says.notTitle(shown(raw.title)))
  const stray = strayIn(raw.title)
  if (stray) throw new DesignError('title', says.unprintable(stray.place, stray.name))
  const card = parseCard(raw.card)
  if (!Array.isArray(raw.mechanisms)) throw new DesignError('mechanisms', says.notList(shown(raw.mechanisms)))
  if (raw.mechanisms.length > MOST_MECHANISMS)
    throw new DesignError('mechanisms', says.tooManyMechanisms(MOST_MECHANISMS, raw.mechanisms.length))
  const places: Places = { ids: new Set(), creases: ['gutter'], panels: ['page/left', 'page/right'] }
  const mechanisms = Array.from(raw.mechanisms, (json: unknown, k) =>
    parseMechanism(json, `mechanisms[${k}]`, places),
  )
  if (card.cover && places.ids.has('cover')) throw new DesignError('card.cover', says.coverNeedsName)
  const papers = parsePapers(raw.papers, [
    'page',
    ...(card.cover ? ['cover'] : []),
    ...mechanisms.map(({ id }) => id),
  ])
  const art = parseArt(raw.art, [...places.panels, ...(card.cover ? ['cover/left', 'cover/right'] : [])])
  return {
    hingebook: 1,
    title: raw.title,
    card,
    mechanisms,
    ...(papers ? { papers } : {}),
    ...(art ? { art } : {}),
  }
}
