/** Loaded when an address speaks of a bench: reading it takes the kernel's reader of designs. */
import * as says from '../../../content/words/link.ts'
import type { Design } from '../../paper/index.ts'
import { DesignError, kindOf, parseDesign } from '../../paper/index.ts'
import { stopOnWay, withinReach } from '../state/opening.ts'
import { withFields } from '../state/settings.ts'
import type { BenchState } from '../state/state.ts'
import { kept } from '../state/state.ts'
import type { PlainEntry } from './link-entries.ts'
import { onCard, owned, plainEntries } from './link-entries.ts'

export interface LinkRead {
  readonly state: BenchState
  /** One sentence for each part that could not be used; the page's own value stands there. */
  readonly faults: readonly string[]
}

interface Wanted {
  readonly id: string
  readonly field: string
  readonly value: number | string
}

function shownText(text: string): string {
  return text.length > 24 ? `${text.slice(0, 21)}...` : text
}

function numberIn(
  text: string,
  {
    label,
    key,
    min,
    max,
    unit,
  }: { label: string; key: string; min: number; max: number; unit: 'mm' | 'deg' },
): number | string {
  const value = text.trim() === '' ? Number.NaN : Number(text)
  if (Number.isFinite(value) && value >= min && value <= max) return kept(value)
  return says.notInRange(label, key, min, max, says.units[unit], shownText(text))
}

/** The fields of the link that give a sound design; a fault takes its field out and the rest is tried again. */
function designWith(start: Design, wanted: readonly Wanted[], faults: string[]): Design {
  let left = wanted
  while (left.length > 0) {
    const design = left.reduce((now, { id, field, value }) => withFields(now, id, { [field]: value }), start)
    try {
      return parseDesign(JSON.parse(JSON.stringify(design)))
    } catch (error) {
      if (!(error instanceof DesignError)) throw error
      const [, index, field] = /^mechanisms\[(\d+)\]\.(.*)$/.exec(error.path) ?? []
      const id = start.mechanisms[Number(index)]?.id
      const blamed = left.filter((one) => one.id === id && one.field === field)
      // A rule may tie the blamed field to another one that came with the link.
      const out = blamed.length > 0 ? blamed : left.filter((one) => one.id === id)
      faults.push(says.doesNotFit(error.message))
      left = out.length > 0 ? left.filter((one) => !out.includes(one)) : []
    }
  }
  return start
}

/** Reads a link over the page's own state. It never throws: what cannot be used is told and left out. */
export function readLink(text: string, start: BenchState): LinkRead {
  const plain = new Map<string, PlainEntry>(plainEntries(start.design).map((entry) => [entry.key, entry]))
  const faults: string[] = []
  const wanted: Wanted[] = []
  let state = start
  /** Whether the link speaks of the opening. */
  let told = false
  for (const [key, value] of new URLSearchParams(text.replace(/^#/, ''))) {
    if (key === '') continue
    const entry = plain.get(key)
    if (entry && (start.point || !key.startsWith('point.'))) {
      const number = numberIn(value, { ...entry, label: says.entries[entry.key] })
      if (typeof number === 'string') faults.push(number)
      else {
        state = entry.set(state, number)
        if (key === 'opening') told = true
      }
      continue
    }
    const dot = key.indexOf('.')
    const [id, name] = [key.slice(0, dot), key.slice(dot + 1)]
    const m = start.design.mechanisms.find((one) => one.id === id)
    const choice = m && kindOf(m).choices?.find((one) => one.name === name)
    if (m && choice) {
      const word = choice.values.find((one) => String(one) === value)
      if (word !== undefined) wanted.push({ id, field: name, value: word })
      else
        faults.push(
          says.notOneOf(choice.label.toLowerCase(), key, choice.values.map(String), shownText(value)),
        )
      continue
    }
    const field = m && owned(m).find((one) => one.name === name)
    if (!m || !field) {
      faults.push(says.notOnCard(shownText(key)))
      continue
    }
    const number = numberIn(value, {
      ...onCard(field, m, start.design),
      label: field.label.toLowerCase(),
      key,
      unit: field.unit,
    })
    if (typeof number === 'string') faults.push(number)
    else wanted.push({ id, field: name, value: number })
  }
  const read = { ...state, design: designWith(start.design, wanted, faults) }
  const brought = withinReach(read)
  const stop = stopOnWay(read.design, read.opening)
  if (told && stop)
    faults.push(says.notReached(Number(read.opening.toFixed(1)), stop.sentence, brought.opening.toFixed(1)))
  return { state: brought, faults }
}
