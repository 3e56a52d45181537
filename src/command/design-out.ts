import { notFile, notOneOf, written } from '../../content/words/command/options.ts'
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
    throw new Refusal(notFile('out', ['.hingebook.json'], out))
  writeOut(out, place(out), `${JSON.stringify(design, null, 2)}\n`)
  console.log(written(visibleText(out)))
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
  throw new Refusal(notOneOf(name, words, text))
}

export const mm = (length: number): string => `${length.toFixed(1)} mm`
