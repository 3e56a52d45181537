/** A mechanism's numbers as a maker would say them: no sign, but a way to go. */
import * as says from '../../../content/words/sheet/sizes.ts'
import type { Derived, Design, Field, Placed } from '../../paper/index.ts'
import { kindOf, modelOf, nameOf, settable, settingOf } from '../../paper/index.ts'
import type { Run } from './setting.ts'

type Mechanism = Design['mechanisms'][number]

/** At most one decimal and no idle nought. */
export const shown = (value: number): string => String(Number(value.toFixed(1)))

/** What a number below and above nought means, in words. */
type Ways = readonly [below: string, above: string]

/** Which way a fold runs: the gutter and the pages' edges run away from the reader. */
const alongWays = (m: Placed): Ways =>
  m.on === 'gutter' || m.on.startsWith('page/')
    ? [says.towardsYou, says.awayFromYou]
    : [says.towardsBeginning, says.towardsEnd]

/** Turned as seen on the front of what it is stuck on. */
function turnWays(design: Design, m: Placed): Ways {
  const panel = modelOf(design).panels.find(({ name }) => name === m.on)
  const { run, off } = panel?.onPiece ?? { run: [0, 1], off: [1, 0] }
  const isMirrored = off[0] * run[1] - off[1] * run[0] < 0
  return isMirrored ? [says.anticlockwise, says.clockwise] : [says.clockwise, says.anticlockwise]
}

function waysOf(design: Design, m: Placed, { sense }: { readonly sense?: Field['sense'] }): Ways {
  switch (sense) {
    case 'along':
      return alongWays(m)
    case 'across':
      return [says.towardsFold, says.awayFromFold]
    case 'turn':
      return turnWays(design, m)
    case 'widening':
      return [says.narrower(alongWays(m)[1]), says.wider(alongWays(m)[1])]
    case 'sides':
      return [says.left, says.right]
    default:
      return ['', '']
  }
}

/** `40 towards you`. */
function told(value: number, unit: 'mm' | 'deg', [below, above]: Ways): string {
  const size = shown(Math.abs(value))
  const way = Number(size) === 0 ? '' : value < 0 ? below : above
  const number = `${size}${unit === 'deg' ? '°' : ''}`
  return way === '' ? number : says.size(number, way)
}

/** On one line. */
const held = (text: string): string => text.replaceAll(' ', '\u00a0')

const isDerived = (field: Field | Derived<Placed>): field is Derived<Placed> => 'get' in field

/**
 * One mechanism's numbers, from the kernel. What is nought and may be left out is left out, and so is a
 * derived number that repeats a field. Empty if it has none.
 */
export function sizesOf(design: Design, m: Mechanism): readonly Run[] {
  const said: string[] = []
  const all = settable(m)
  // Two sides that are equal are told as one.
  const both = all.flatMap((field): readonly { name: string; parts: readonly string[] }[] => {
    if (!isDerived(field)) return []
    const parts = Object.keys(field.set(m, field.get(m)))
    const isEqual = parts.length > 1 && parts.every((part) => settingOf(m, part) === field.get(m))
    return isEqual ? [{ name: field.name, parts }] : []
  })
  const numbers = all.flatMap((field) => {
    const value = settingOf(m, field.name)
    const text = told(value, field.unit, waysOf(design, m, field))
    if (both.some(({ parts }) => parts.includes(field.name))) return []
    const silent = isDerived(field)
      ? !both.some(({ name }) => name === field.name) && said.includes(text)
      : field.optional === true && Math.abs(value) < 0.05
    said.push(text)
    return silent ? [] : [`${field.label} ${text}`]
  })
  const lists = (kindOf(m).lists ?? []).flatMap((list) => {
    const values = (m as unknown as Readonly<Record<string, unknown>>)[list.name]
    if (!Array.isArray(values)) return []
    const each = values.map((value) => told(Number(value), list.unit, waysOf(design, m, list)))
    // A list may be parted between two of its values: held together it would leave half a line free before it.
    return [says.several(held(list.label), each.map(held))]
  })
  const parts = [...numbers.map(held), ...lists]
  if (parts.length === 0) return []
  return [{ text: nameOf(m.id), bold: true }, { text: ` ${parts.join(', ')}` }]
}

/** The card's own numbers. */
export function cardSizes({ card: { width, height, caliper } }: Design): readonly Run[] {
  const sizes = says.cardSizes(shown(2 * width), shown(height), shown(width), String(caliper))
  return [{ text: says.card, bold: true }, { text: ` ${sizes}` }]
}
