// What is made to harm, and how what came of it is judged.
import { crc32, deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { expect } from 'vitest'
import { parseDesign } from '../../../src/paper/index.ts'
import type { FileRead } from '../../../src/widgets/keeping/file.ts'
import { fileText } from '../../../src/widgets/keeping/file-text.ts'
import { design, gluedMoth, gluedPond, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

export const heron = design([
  vFold('beak', 'gutter', 110, -40, 45),
  gluedPond,
  gluedMoth({ apex: 2, foot: 20 }),
])

const HOSTILE_NUMBERS = [
  '1e999',
  '-1e999',
  '1e308',
  '5e-324',
  '-0',
  '9007199254740993',
  '0.1e-400',
  '00',
  '+1',
  'NaN',
  '0x10',
]

const HOSTILE_WORDS = [
  '__proto__',
  'constructor',
  'prototype',
  'toString',
  'hasOwnProperty',
  '<script>alert(1)</script>',
  '"><img src=x onerror=alert(1)>',
  'javascript:alert(1)',
  '\\u0000',
  '\\ud800',
  '\\u202e',
  '../../etc/passwd',
  'a'.repeat(5000),
]

const HOSTILE_VALUES = [
  'null',
  'true',
  '[]',
  '{}',
  '[[[[[[[[[[]]]]]]]]]]',
  '{"__proto__":{"cover":true}}',
  '[null]',
  '""',
  `[${'0,'.repeat(300)}0]`,
  `{"length":1e9}`,
  ...HOSTILE_NUMBERS,
  ...HOSTILE_WORDS.map((word) => `"${word.replaceAll('"', '\\"')}"`),
]

/** Files of all kinds, drawn once: spoiling them is cheap, making them is not. */
const texts = [heron, ...fc.sample(kept, { numRuns: 60, seed: 9 })].map(fileText)

/** A design file with some of its values, names or letters exchanged for others. */
export const spoilt: fc.Arbitrary<string> = fc
  .record({
    text: fc.constantFrom(...texts),
    cuts: fc.array(
      fc.record({
        at: fc.nat(),
        sort: fc.constantFrom('value', 'name', 'letter', 'drop', 'twice', 'end'),
        put: fc.constantFrom(...HOSTILE_VALUES),
        word: fc.constantFrom(...HOSTILE_WORDS),
      }),
      { minLength: 1, maxLength: 4 },
    ),
  })
  .map(({ text: sound, cuts }) =>
    cuts.reduce((text, { at, sort, put, word }) => {
      const pick = (pattern: RegExp) => {
        const all = [...text.matchAll(pattern)]
        return all[at % Math.max(1, all.length)]
      }
      const place = at % (text.length + 1)
      if (sort === 'letter') return text.slice(0, place) + put.slice(0, 3) + text.slice(place + 1)
      if (sort === 'drop') return text.slice(0, place) + text.slice(place + 1 + (at % 7))
      if (sort === 'end') return text.slice(0, place)
      const found =
        sort === 'name' ? pick(/"\w+"(?=:)/g) : pick(/(?<=[:[,])(-?\d[\d.e-]*|"[^"]*"|true|false)/g)
      if (!found) return text
      const into =
        sort === 'name' ? `"${word.replaceAll('"', '')}"` : sort === 'twice' ? `${found[0]},${found[0]}` : put
      return text.slice(0, found.index) + into + text.slice(found.index + found[0].length)
    }, sound),
  )

/** Any text, halves of letters and all. */
export const letters = fc
  .array(fc.nat({ max: 0xffff }), { maxLength: 20 })
  .map((codes) => String.fromCharCode(...codes))

/** A hang is noticed from here on, ms. */
export const LONGEST = 200

/** The time that this thread was at work, whatever else the machine does, ms; the least of a few. */
export async function busy(act: () => unknown): Promise<number> {
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < 4 && least > LONGEST / 2; k++) {
    const from = process.threadCpuUsage()
    await act()
    const { user, system } = process.threadCpuUsage(from)
    least = Math.min(least, (user + system) / 1000)
  }
  return least
}

export function judged(read: FileRead): void {
  if (read.read) {
    // What was taken in is a design, and stays one.
    expect(JSON.stringify(parseDesign(JSON.parse(JSON.stringify(read.design))))).toBe(
      JSON.stringify(read.design),
    )
    return
  }
  expect(read.sentence.length).toBeLessThan(700)
  expect(read.sentence).not.toMatch(/undefined|\[object|function|Error:/)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
  expect(read.sentence).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202e]/)
}

/** A link as another program would make it, around any bytes that are packed, and any that are said to be. */
export function linkAround(packed: Uint8Array): string {
  const head = Buffer.alloc(4)
  head.writeUInt32BE(crc32(packed))
  return `d=1.${Buffer.concat([head, packed]).toString('base64url')}`
}

export const linkOf = (json: string | Uint8Array): string => linkAround(deflateRawSync(json))
