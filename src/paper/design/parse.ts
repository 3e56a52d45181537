import type { Field } from '../mechanisms/kind.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindNamed, kinds } from '../mechanisms/registry.ts'
import type { Flat } from '../plane/lay.ts'
import type { Card, Design } from './design.ts'
import { strayIn, visibleText } from './text.ts'

/** A design that cannot be read: `path` names the place in the file, the message says why in one sentence. */
export class DesignError extends Error {
  readonly path: string
  /** The nearest value that works, where there is one. */
  readonly nearest: number | undefined
  constructor(path: string, sentence: string, nearest?: number) {
    super(`${path} ${sentence}.`)
    this.name = 'DesignError'
    this.path = path
    this.nearest = nearest
  }
}

export const MOST_MECHANISMS = 200

export const cardFields: readonly Field[] = [
  {
    name: 'width',
    label: 'Page width',
    unit: 'mm',
    min: 10,
    max: 1000,
    help: 'One page, from the gutter to its edge.',
  },
  { name: 'height', label: 'Page height', unit: 'mm', min: 10, max: 1000, help: 'Along the gutter.' },
  {
    name: 'caliper',
    label: 'Thickness',
    unit: 'mm',
    min: 0.02,
    max: 3,
    help: 'How thick one sheet of the card is.',
  },
]

const DEFAULT_CALIPER = 0.25

type Thing = Record<string, unknown>

function thing(value: unknown, path: string): Thing {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new DesignError(path, `must be an object in curly brackets, not ${shown(value)}`)
  return value as Thing
}

/** Longer than this, a received value is cut short in a sentence. */
const LONG = 40

/** A received value in a sentence: short, never a wall of text, and nothing in it that cannot be shown. */
function shown(value: unknown): string {
  if (value === undefined) return 'left out'
  if (typeof value === 'number') return String(value)
  if (typeof value === 'string')
    return visibleText(JSON.stringify(value.length > LONG ? `${value.slice(0, 36)} …` : value))
  const text = visibleText(opening(value, LONG + 1))
  return text.length > LONG ? `${text.slice(0, 36)} …` : text
}

/** How a value begins as JSON, up to so many letters or a little more: however deep it is, no more is read. */
function opening(value: unknown, room: number): string {
  if (room <= 0) return ''
  if (typeof value === 'string') return JSON.stringify(value.slice(0, room))
  if (typeof value !== 'object' || value === null) return String(value)
  const isList = Array.isArray(value)
  let text = isList ? '[' : '{'
  let first = true
  for (const [key, one] of isList ? value.entries() : Object.entries(value)) {
    if (text.length > room) return text
    if (!first) text += ','
    if (!isList) text += `${JSON.stringify(key)}:`
    text += opening(one ?? null, room - text.length)
    first = false
  }
  return text + (isList ? ']' : '}')
}

function onlyKeys(value: Thing, known: readonly string[], path: string): void {
  for (const key of Object.keys(value))
    if (!known.includes(key))
      throw new DesignError(
        visibleText(path === '' ? key.slice(0, LONG) : `${path}.${key.slice(0, LONG)}`),
        `is not known here: use ${known.join(', ')}`,
      )
}

/** A number of a field, checked against its range. */
export function checkNumber(value: unknown, field: Field, path: string): number {
  const range = `from ${field.min} to ${field.max} ${field.unit === 'mm' ? 'mm' : 'degrees'}`
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new DesignError(path, `must be a number ${range}, not ${shown(value)}`)
  if (value < field.min || value > field.max)
    throw new DesignError(
      path,
      `must be ${range}, not ${value}`,
      Math.min(field.max, Math.max(field.min, value)),
    )
  return value
}

function checkPoints(value: unknown, path: string): readonly Flat[] {
  if (!Array.isArray(value))
    throw new DesignError(path, `must be a list of points [across, along], not ${shown(value)}`)
  if (value.length > 200) throw new DesignError(path, `must hold at most 200 points, not ${value.length}`)
  // Not `map`: it passes over the holes of a list.
  return Array.from(value, (point: unknown, k): Flat => {
    const fine = (n: unknown): n is number =>
      typeof n === 'number' && Number.isFinite(n) && Math.abs(n) <= 2000
    if (!Array.isArray(point) || point.length !== 2 || !fine(point[0]) || !fine(point[1]))
      throw new DesignError(
        `${path}[${k}]`,
        `must be a point [across, along] in mm, each from -2000 to 2000, not ${shown(point)}`,
      )
    return [point[0], point[1]]
  })
}

function checkList(value: unknown, field: Field, path: string): readonly number[] {
  if (!Array.isArray(value)) throw new DesignError(path, `must be a list of numbers, not ${shown(value)}`)
  if (value.length > 20) throw new DesignError(path, `must hold at most 20 numbers, not ${value.length}`)
  return Array.from(value, (number: unknown, k) => checkNumber(number, field, `${path}[${k}]`))
}

function parseCard(json: unknown): Card {
  const card = thing(json, 'card')
  onlyKeys(
    card,
    cardFields.map((field) => field.name),
    'card',
  )
  const [width, height, caliper] = cardFields.map((field) =>
    field.name === 'caliper' && card[field.name] === undefined
      ? DEFAULT_CALIPER
      : checkNumber(card[field.name], field, `card.${field.name}`),
  ) as [number, number, number]
  return { width, height, caliper }
}

/** What later mechanisms may sit on. */
interface Places {
  readonly ids: Set<string>
  readonly creases: string[]
  readonly panels: string[]
}

const named = (list: readonly { readonly name: string }[] | undefined): string[] =>
  (list ?? []).map(({ name }) => name)

/** What the card calls parts of its own. */
const TAKEN: readonly string[] = ['card', 'page', 'gutter', 'point']

function parseMechanism(json: unknown, path: string, places: Places): Mechanism {
  const raw = thing(json, path)
  if (typeof raw.id !== 'string' || !/^[a-z0-9-]{1,40}$/.test(raw.id))
    throw new DesignError(
      `${path}.id`,
      `must be 1 to 40 lower-case letters, digits or hyphens, not ${shown(raw.id)}`,
    )
  if (TAKEN.includes(raw.id))
    throw new DesignError(`${path}.id`, `must not be ${raw.id}: the card itself has that name`)
  if (places.ids.has(raw.id)) throw new DesignError(`${path}.id`, `is used twice: ${raw.id}`)
  const kind = typeof raw.kind === 'string' ? kindNamed(raw.kind) : undefined
  if (!kind)
    throw new DesignError(
      `${path}.kind`,
      `must be one of ${kinds.map((k) => k.kind).join(', ')}, not ${shown(raw.kind)}`,
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
    const what = kind.sitsOn === 'panel' ? 'a page or a panel' : 'the gutter or a crease'
    const few = hosts.length > 7 ? `${hosts.slice(0, 7).join(', ')} and so on` : hosts.join(', ')
    throw new DesignError(
      `${path}.on`,
      `must name ${what} of an earlier mechanism (${few}), not ${shown(raw.on)}`,
    )
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
        throw new DesignError(`${path}.${name}`, `must be ${values.join(' or ')}, not ${shown(raw[name])}`)
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
  if (raw.hingebook !== 1)
    throw new DesignError(
      'hingebook',
      `must be 1, the version of the design file, not ${shown(raw.hingebook)}`,
    )
  onlyKeys(raw, ['hingebook', 'title', 'card', 'mechanisms'], '')
  if (typeof raw.title !== 'string' || raw.title.trim() === '' || raw.title.length > 120)
    throw new DesignError('title', `must be 1 to 120 characters, not ${shown(raw.title)}`)
  const stray = strayIn(raw.title)
  if (stray)
    throw new DesignError(
      'title',
      `must hold only characters that can be printed: the one at place ${stray.place}, ${stray.name}, cannot be shown`,
    )
  const card = parseCard(raw.card)
  if (!Array.isArray(raw.mechanisms))
    throw new DesignError('mechanisms', `must be a list in square brackets, not ${shown(raw.mechanisms)}`)
  if (raw.mechanisms.length > MOST_MECHANISMS)
    throw new DesignError(
      'mechanisms',
      `must hold at most ${MOST_MECHANISMS} mechanisms, not ${raw.mechanisms.length}`,
    )
  const places: Places = { ids: new Set(), creases: ['gutter'], panels: ['page/left', 'page/right'] }
  const mechanisms = Array.from(raw.mechanisms, (json: unknown, k) =>
    parseMechanism(json, `mechanisms[${k}]`, places),
  )
  return { hingebook: 1, title: raw.title, card, mechanisms }
}
