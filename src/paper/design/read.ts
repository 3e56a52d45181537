import type { Field } from '../mechanisms/kind.ts'
import type { Flat } from '../plane/lay.ts'
import * as says from '../words/design.ts'
import { visibleText } from './text.ts'

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

export type Thing = Record<string, unknown>

export function thing(value: unknown, path: string): Thing {
  if (typeof value !== 'object' || value === null || Array.isArray(value))
    throw new DesignError(path, says.notThing(shown(value)))
  return value as Thing
}

/** Longer than this, a received value is cut short in a sentence. */
const LONG = 40

/** A received value in a sentence: short, never a wall of text, and nothing in it that cannot be shown. */
export function shown(value: unknown): string {
  if (value === undefined) return says.leftOut
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

export function onlyKeys(value: Thing, known: readonly string[], path: string): void {
  for (const key of Object.keys(value))
    if (!known.includes(key))
      throw new DesignError(
        visibleText(path === '' ? key.slice(0, LONG) : `${path}.${key.slice(0, LONG)}`),
        says.unknownKey(known),
      )
}

/** A number of a field, checked against its range. */
export function checkNumber(value: unknown, field: Field, path: string): number {
  const { min, max, unit } = field
  if (typeof value !== 'number' || !Number.isFinite(value))
    throw new DesignError(path, says.notNumber(min, max, unit, shown(value)))
  if (value < min || value > max)
    throw new DesignError(path, says.outOfRange(min, max, unit, value), Math.min(max, Math.max(min, value)))
  // Minus nought is nought: JSON does not tell them apart when it writes them.
  return value + 0
}

const MOST_POINTS = 200

/** Either way from where a panel's coordinates begin, mm. */
const FARTHEST = 2000

export function checkPoints(value: unknown, path: string): readonly Flat[] {
  if (!Array.isArray(value)) throw new DesignError(path, says.notPoints(shown(value)))
  if (value.length > MOST_POINTS) throw new DesignError(path, says.tooManyPoints(MOST_POINTS, value.length))
  // Not `map`: it passes over the holes of a list.
  return Array.from(value, (point: unknown, k): Flat => {
    const fine = (n: unknown): n is number =>
      typeof n === 'number' && Number.isFinite(n) && Math.abs(n) <= FARTHEST
    if (!Array.isArray(point) || point.length !== 2 || !fine(point[0]) || !fine(point[1]))
      throw new DesignError(`${path}[${k}]`, says.notPoint(FARTHEST, shown(point)))
    return [point[0] + 0, point[1] + 0]
  })
}

/** A yes or no that may be left out. */
export function checkFlag(value: unknown, usual: boolean, path: string): boolean {
  if (value === undefined) return usual
  if (typeof value !== 'boolean') throw new DesignError(path, says.notFlag(shown(value)))
  return value
}

/** One of a few words; left out it is the usual one, where there is one. */
export function checkWord<W extends string>(value: unknown, words: readonly W[], path: string, usual?: W): W {
  if (value === undefined && usual !== undefined) return usual
  const word = words.find((one) => one === value)
  if (word === undefined) throw new DesignError(path, says.notOneOf(words, shown(value)))
  return word
}
