/**
 * Where in a text of JSON (RFC 8259) something stands. Engines do not all say where a text stops being JSON, none says
 * where a value came from, and all are slow to fail on deep nesting: one walk over the text tells all three.
 */

import * as says from '../../content/words/file.ts'

export interface Place {
  /** Counted from 1. */
  readonly line: number
  readonly column: number
}

export interface Walk {
  /** Where the text stops being JSON; null if it is JSON to its end. */
  readonly fault: number | null
  /** Whether that is because it nests deeper than any design. */
  readonly isTooDeep: boolean
  /** Where the value at the path begins, or the innermost part round it that is there. */
  readonly at: number
}

/** A design nests five deep. Deeper than this, an engine may take seconds to read it, or fail. */
export const MOST_DEPTH = 10_000

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y

const WORDS = ['true', 'false', 'null']

const isSpace = (code: number): boolean => code === 32 || code === 10 || code === 13 || code === 9

/** Past the closing quote of the string that begins here; where it is none, the place at fault, below zero (`~`). */
function stringEnd(text: string, from: number): number {
  let i = from + 1
  for (;;) {
    const code = text.charCodeAt(i)
    if (!(code >= 32)) return ~i
    if (code === 34) return i + 1
    if (code !== 92) {
      i++
      continue
    }
    const escaped = text.charAt(i + 1)
    if (escaped === 'u') {
      if (!/^[0-9a-fA-F]{4}$/.test(text.slice(i + 2, i + 6))) return ~i
      i += 6
    } else if (escaped !== '' && '"\\/bfnrt'.includes(escaped)) i += 2
    else return ~i
  }
}

/** Past the number or word that begins here; where there is none, `~` of its beginning. */
function plainEnd(text: string, from: number): number {
  const word = WORDS.find((one) => text.startsWith(one, from))
  if (word !== undefined) return from + word.length
  NUMBER.lastIndex = from
  return NUMBER.test(text) ? NUMBER.lastIndex : ~from
}

interface Frame {
  readonly isList: boolean
  /** How many names of the path lead to it; -1 off the path. */
  readonly on: number
  count: number
}

/** How many names of the path lead to an item of a list, or to the value of a name as it is written. */
function inner(frame: Frame, path: readonly string[], written: string | null): number {
  const wanted = frame.on < 0 ? undefined : path[frame.on]
  if (wanted === undefined) return -1
  const isIt = written === null ? frame.count === Number(wanted) : JSON.parse(written) === wanted
  return isIt ? frame.on + 1 : -1
}

/** What may stand next. */
type Next = 'value' | 'item-or-end' | 'name' | 'name-or-end' | 'comma-or-end' | 'nothing'

/** Walks over a text. `path`: names and numbers (of items, from 0) that lead to a value. */
export function walk(text: string, path: readonly string[] = []): Walk {
  const open: Frame[] = []
  let next: Next = 'value'
  let i = 0
  let best = -1
  let at = 0
  /** How many names of the path lead to the value that comes next. */
  let on = 0
  const failed = (fault: number, isTooDeep = false): Walk => ({ fault, isTooDeep, at })
  const ended = (): Next => (open.length === 0 ? 'nothing' : 'comma-or-end')

  for (;;) {
    while (isSpace(text.charCodeAt(i))) i++
    const letter = text.charAt(i)
    const top = open.at(-1)
    if (letter === '') return next === 'nothing' ? { fault: null, isTooDeep: false, at } : failed(i)
    if (next === 'nothing') return failed(i)
    if (next !== 'value' && next !== 'name' && top && letter === (top.isList ? ']' : '}')) {
      open.pop()
      next = ended()
      i++
      continue
    }
    if (next === 'comma-or-end') {
      if (letter !== ',') return failed(i)
      next = top?.isList ? 'value' : 'name'
      if (top?.isList) {
        top.count++
        on = inner(top, path, null)
      }
      i++
      continue
    }
    if (next === 'name' || next === 'name-or-end') {
      const end = letter === '"' ? stringEnd(text, i) : ~i
      if (end < 0) return failed(~end)
      on = top ? inner(top, path, text.slice(i, end)) : -1
      i = end
      while (isSpace(text.charCodeAt(i))) i++
      if (text.charAt(i) !== ':') return failed(i)
      next = 'value'
      i++
      continue
    }
    if (on > best || (on >= 0 && on === best)) {
      best = on
      at = i
    }
    if (letter === '{' || letter === '[') {
      if (open.length === MOST_DEPTH) return failed(i, true)
      const frame: Frame = { isList: letter === '[', on, count: 0 }
      open.push(frame)
      next = frame.isList ? 'item-or-end' : 'name-or-end'
      if (frame.isList) on = inner(frame, path, null)
      i++
      continue
    }
    const end = letter === '"' ? stringEnd(text, i) : plainEnd(text, i)
    if (end < 0) return failed(~end)
    i = end
    next = ended()
  }
}

/** The names and numbers of a path as faults tell it: `mechanisms[3].left.base`. */
export const pathNames = (path: string): string[] => path.split(/[.[\]]+/).filter((name) => name !== '')

/** Line and column of a place in a text. */
export function placeIn(text: string, at: number): Place {
  let line = 1
  let begins = 0
  for (let k = text.indexOf('\n'); k >= 0 && k < at; k = text.indexOf('\n', k + 1)) {
    line++
    begins = k + 1
  }
  return { line, column: at - begins + 1 }
}

/** The line that holds a place, and no more of it than a sentence can show. */
function lineAt(text: string, at: number): string {
  const begins = text.lastIndexOf('\n', at - 1) + 1
  const end = text.indexOf('\n', at)
  return text
    .slice(at === 0 ? 0 : begins, end < 0 ? undefined : end)
    .trim()
    .slice(0, 60)
}

export type Json =
  | { readonly ok: true; readonly value: unknown }
  | { readonly ok: false; readonly place: Place; readonly sentence: string }

/** A text as a value, or where it is no JSON, in a sentence without its beginning: `line 3 is not JSON …`. It never throws. */
export function parseJson(text: string): Json {
  if (text.trim() === '')
    return {
      ok: false,
      place: { line: 1, column: 1 },
      sentence: says.empty,
    }
  const { fault, isTooDeep } = walk(text)
  if (fault === null) return { ok: true, value: JSON.parse(text) as unknown }
  const place = placeIn(text, fault)
  const { line, column } = place
  if (isTooDeep) return { ok: false, place, sentence: says.tooDeep(line, column, MOST_DEPTH) }
  const there = lineAt(text, fault)
  const sentence = there === '' ? says.endsTooEarly(line, column) : says.notJson(line, column, there)
  return { ok: false, place, sentence }
}
