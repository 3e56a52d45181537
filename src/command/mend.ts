import * as says from '../../content/words/command/mend.ts'
import type { Mended } from '../paper/index.ts'
import { mend as mended } from '../paper/index.ts'
import type { Command } from './command.ts'
import { saveDesign } from './design-out.ts'
import { Refusal } from './refusal.ts'

/** Ends with this code when something is left that cannot be mended. */
const LEFT = 2

/** The nearest design that works. */
export const mend: Command = {
  name: 'mend',
  usage: says.usage,
  help: says.help,
  options: { pins: { type: 'string' }, out: { type: 'string' }, json: { type: 'boolean' } },
  run(design, options, place) {
    const pins = typeof options.pins === 'string' ? options.pins.split(',').map((pin) => pin.trim()) : []
    const answer = pinned(() => mended(design, { pins }))
    if (options.json) console.log(JSON.stringify(answer, null, 2))
    else say(answer)
    if (options.out !== undefined) saveDesign(answer.design, options.out, place)
    return answer.left.length === 0 ? 0 : LEFT
  },
}

function pinned<T>(work: () => T): T {
  try {
    return work()
  } catch (error) {
    if (error instanceof RangeError) throw new Refusal(`--${error.message}.`)
    throw error
  }
}

function say({ changes, left }: Mended): void {
  if (changes.length === 0 && left.length === 0) console.log(says.nothingFails)
  for (const { id, label, unit, from, to } of changes)
    console.log(says.changed(id, label, round(from), round(to), unit))
  for (const { sentence } of left) console.log(says.cannotBeMended(sentence))
}

const round = (value: number): string => String(Number(value.toFixed(2)))
