import type { Design } from './model.ts'
import type { Mechanism } from './registry.ts'
import { kindNamed, kinds } from './registry.ts'
import type { Card, Field, Flat } from './types.ts'

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
  { name: 'width', label: 'Page width', unit: 'mm', min: 10, max: 1000, help: 'One page, from the gutter to its edge.' },
  { name: 'height', label: 'Page height', unit: 'mm', min: 10, max: 1000, help: 'Along the gutter.' },
  { name: 'caliper', label: 'Thickness', unit: 'mm', min: 0.02, max: 3, help: 'How thick one sheet of the card is.' },
]
const DEFAULT_CALIPER = 0.25

type Thing = Record<string, unknown>

function thing(value: unknown, path: string): Thing {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new DesignError(path, `must be an object in curly brackets, not ${shown(value)}`)
  return value as Thing
}

/** A received value in a sentence: short, and never a wall of text. */
function shown(value: unknown): string {
  if (value === undefined) return 'left out'
  const text = JSON.stringify(value) ?? String(value)
  return text.length > 40 ? `${text.slice(0, 37)}...` : text
}

function onlyKeys(value: Thing, known: readonly string[], path: string): void {
  for (const key of Object.keys(value))
    if (!known.includes(key))
      throw new DesignError(path === '' ? key : `${path}.${key}`, `is not known here: use ${known.join(', ')}`)
}

/** A number of a field, checked against its range. */
export function checkNumber(value: unknown, field: Field, path: string): number {
  const range = `from ${field.min} to ${field.max} ${field.unit === 'mm' ? 'mm' : 'degrees'}`
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new DesignError(path, `must be a number ${range}, not ${shown(value)}`)
  if (value < field.min || value > field.max)
    throw new DesignError(path, `must be ${range}, not ${value}`, Math.min(field.max, Math.max(field.min, value)))
  return value
}

function checkPoints(value: unknown, path: string): readonly Flat[] {
  if (!Array.isArray(value)) throw new DesignError(path, `must be a list of points [across, along], not ${shown(value)}`)
  if (value.length > 200) throw new DesignError(path, `must hold at most 200 points, not ${value.length}`)
  return value.map((point: unknown, k): Flat => {
    const fine = (n: unknown): n is number => typeof n === 'number' && Number.isFinite(n) && Math.abs(n) <= 2000
    if (!Array.isArray(point) || point.length !== 2 || !fine(point[0]) || !fine(point[1]))
      throw new DesignError(`${path}[${k}]`, `must be a point [across, along] in mm, each from -2000 to 2000, not ${shown(point)}`)
    return [point[0], point[1]]
  })
}

function parseCard(json: unknown): Card {
  const card = thing(json, 'card')
  onlyKeys(card, cardFields.map((field) => field.name), 'card')
  const [width, height, caliper] = cardFields.map((field) =>
    field.name === 'caliper' && card[field.name] === undefined
      ? DEFAULT_CALIPER
      : checkNumber(card[field.name], field, `card.${field.name}`),
  ) as [number, number, number]
  return { width, height, caliper }
}

function parseMechanism(json: unknown, path: string, creases: Map<string, string[]>): Mechanism {
  const raw = thing(json, path)
  if (typeof raw.id !== 'string' || !/^[a-z0-9-]{1,40}$/.test(raw.id))
    throw new DesignError(`${path}.id`, `must be 1 to 40 lower-case letters, digits or hyphens, not ${shown(raw.id)}`)
  if (raw.id === 'page' || raw.id === 'gutter')
    throw new DesignError(`${path}.id`, `must not be ${raw.id}: the card itself has that name`)
  if (creases.has(raw.id)) throw new DesignError(`${path}.id`, `is used twice: ${raw.id}`)
  const kind = typeof raw.kind === 'string' ? kindNamed(raw.kind) : undefined
  if (!kind)
    throw new DesignError(`${path}.kind`, `must be one of ${kinds.map((k) => k.kind).join(', ')}, not ${shown(raw.kind)}`)
  onlyKeys(
    raw,
    ['id', 'kind', 'on', ...kind.fields.map((field) => field.name), ...kind.points.map((point) => point.name)],
    path,
  )
  const [host, part, ...rest] = typeof raw.on === 'string' ? raw.on.split('/') : []
  const known = raw.on === 'gutter' || (rest.length === 0 && creases.get(host ?? '')?.includes(part ?? ''))
  if (!known) {
    const names = ['gutter', ...[...creases].flatMap(([id, parts]) => parts.map((p) => `${id}/${p}`))]
    const few = names.length > 7 ? `${names.slice(0, 7).join(', ')} and so on` : names.join(', ')
    throw new DesignError(`${path}.on`, `must name the gutter or a crease of an earlier mechanism (${few}), not ${shown(raw.on)}`)
  }
  const mechanism: Thing = { id: raw.id, kind: kind.kind, on: raw.on }
  for (const field of kind.fields) {
    if (raw[field.name] === undefined && field.optional) continue
    mechanism[field.name] = checkNumber(raw[field.name], field, `${path}.${field.name}`)
  }
  for (const { name } of kind.points)
    if (raw[name] !== undefined) mechanism[name] = checkPoints(raw[name], `${path}.${name}`)
  const fault = kind.limits?.(mechanism as unknown as Mechanism)
  if (fault) throw new DesignError(`${path}.${fault.field}`, fault.sentence, fault.nearest)
  const whole = kind.complete(mechanism as unknown as Mechanism) as Mechanism
  creases.set(whole.id, kind.build(whole).creases.map((crease) => crease.part))
  return whole
}

/**
 * Reads a design file's JSON value: lengths in mm, angles in degrees.
 * Optional fields are filled in. Throws a `DesignError` that names the field and the allowed range.
 */
export function parseDesign(json: unknown): Design {
  const raw = thing(json, 'design')
  if (raw.hingebook !== 1)
    throw new DesignError('hingebook', `must be 1, the version of the design file, not ${shown(raw.hingebook)}`)
  onlyKeys(raw, ['hingebook', 'title', 'card', 'mechanisms'], '')
  if (typeof raw.title !== 'string' || raw.title.trim() === '' || raw.title.length > 120)
    throw new DesignError('title', `must be 1 to 120 characters, not ${shown(raw.title)}`)
  const card = parseCard(raw.card)
  if (!Array.isArray(raw.mechanisms))
    throw new DesignError('mechanisms', `must be a list in square brackets, not ${shown(raw.mechanisms)}`)
  if (raw.mechanisms.length > MOST_MECHANISMS)
    throw new DesignError('mechanisms', `must hold at most ${MOST_MECHANISMS} mechanisms, not ${raw.mechanisms.length}`)
  const creases = new Map<string, string[]>()
  const mechanisms = raw.mechanisms.map((json: unknown, k) => parseMechanism(json, `mechanisms[${k}]`, creases))
  return { hingebook: 1, title: raw.title, card, mechanisms }
}
