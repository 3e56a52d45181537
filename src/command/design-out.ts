import type { Design } from '../paper/index.ts'
import { visibleText } from '../paper/index.ts'
import type { Options } from './command.ts'
import { Refusal } from './refusal.ts'
import { writeOut } from './write-out.ts'

/** Writes a design as a file that the other commands read. */
export function saveDesign(
  design: Design,
  out: string | boolean | undefined,
  place: (path: string) => string,
): void {
  if (typeof out !== 'string' || !out.endsWith('.json'))
    throw new Refusal(`--out must name a file that ends in .hingebook.json, not ${out}.`)
  writeOut(out, place(out), `${JSON.stringify(design, null, 2)}\n`)
  console.log(`Written: ${visibleText(out)}`)
}

/** An option that takes one of a few words. */
export function optionWord<W extends string>(
  options: Options,
  name: string,
  words: readonly W[],
): W | undefined {
  const text = options[name]
  if (text === undefined) return undefined
  const word = words.find((one) => one === text)
  if (word) return word
  throw new Refusal(`--${name} must be one of ${words.join(', ')}, not ${text}.`)
}

export const mm = (length: number): string => `${length.toFixed(1)} mm`
