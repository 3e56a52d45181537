import * as says from '../../content/words/command/find.ts'
import { notNumber } from '../../content/words/command/options.ts'
import type { Find, Vec3, Wish } from '../paper/index.ts'
import { nameOf, sought } from '../paper/index.ts'
import type { Command, Options } from './command.ts'
import { mm, optionWord, saveDesign } from './design-out.ts'
import { Refusal } from './refusal.ts'

/** Ends with this code when nothing was found. */
const NOTHING = 2

const FROM = ['gutter', 'near', 'far', 'edge'] as const

const MADE = ['card', 'own'] as const

/** Mechanisms that bring a tip to a wished place. */
export const find: Command = {
  name: 'find',
  usage: says.usage,
  help: says.help(FROM),
  options: {
    at: { type: 'string' },
    opening: { type: 'string' },
    within: { type: 'string' },
    on: { type: 'string' },
    from: { type: 'string' },
    made: { type: 'string' },
    above: { type: 'string' },
    shown: { type: 'boolean' },
    out: { type: 'string' },
    json: { type: 'boolean' },
  },
  run(design, options, place) {
    const wish = wishOf(options)
    const { finds, missed } = refused(() => sought(design, wish))
    if (options.json) console.log(JSON.stringify({ title: design.title, wish, finds, missed }, null, 2))
    else if (missed) console.log(missed.sentence)
    else for (const [k, one] of finds.entries()) say(k + 1, one)
    const [best] = finds
    if (!best) return NOTHING
    if (options.out !== undefined) saveDesign(best.design, options.out, place)
    return 0
  },
}

/** What the kernel refuses is refused in its own words. */
function refused<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(`--${error.message}.`)
    throw error
  }
}

function wishOf(options: Options): Wish {
  const { on } = options
  const from = optionWord(options, 'from', FROM)
  const made = optionWord(options, 'made', MADE)
  const above = numberOf(options, 'above')
  return {
    opening: numberOf(options, 'opening') ?? 90,
    at: pointOf(options.at),
    within: numberOf(options, 'within') ?? 1,
    ...(typeof on === 'string' ? { on: on.split(',').map((name) => name.trim()) } : {}),
    hidden: options.shown !== true,
    ...(from ? { from } : {}),
    ...(made ? { made } : {}),
    ...(above === undefined ? {} : { above }),
  }
}

function numberOf(options: Options, name: string): number | undefined {
  const text = options[name]
  if (text === undefined) return undefined
  const value = typeof text === 'string' && text.trim() !== '' ? Number(text) : Number.NaN
  if (Number.isFinite(value)) return value
  throw new Refusal(notNumber(name, text))
}

function pointOf(text: string | boolean | undefined): Vec3 {
  const numbers =
    typeof text === 'string'
      ? text.split(',').map((part) => (part.trim() === '' ? Number.NaN : Number(part)))
      : []
  const [x, y, z, ...more] = numbers
  if (
    x !== undefined &&
    y !== undefined &&
    z !== undefined &&
    more.length === 0 &&
    numbers.every(Number.isFinite)
  )
    return [x, y, z]
  throw new Refusal(says.notPoint(text))
}

function say(number: number, { design, ids, miss, sway, facts }: Find): void {
  const parts = design.mechanisms.flatMap(({ id, on, kind, ...sizes }) =>
    ids.includes(id) ? [says.part(nameOf(id), kind, on, sizesOf(sizes))] : [],
  )
  console.log(`${number}. ${parts.join('\n   ')}`)
  const cards = facts.paper.map(({ width, height }) => `${Math.ceil(width)} x ${Math.ceil(height)} mm`)
  console.log(`   ${says.facts(mm(miss), mm(sway), facts.joints, facts.layers, cards)}`)
}

/** The numbers and words of a mechanism in one line. */
const sizesOf = (sizes: object): string =>
  Object.entries(sizes)
    .flatMap(([key, value]) => {
      if (typeof value === 'number' || typeof value === 'string') return [`${key} ${value}`]
      if (Array.isArray(value))
        return value.every((one) => typeof one === 'number') ? [`${key} ${value.join(' ')}`] : []
      return typeof value === 'object' && value !== null
        ? Object.entries(value).map(([inner, number]) => `${key}.${inner} ${number}`)
        : []
    })
    .join(', ')
