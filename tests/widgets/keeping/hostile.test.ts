// Files and links made to harm: each ends in a design or a sentence, soon, and the design at hand stays.
import { deflateRawSync, crc32 as zlibCrc } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { parseDesign } from '../../../src/paper/index.ts'
import type { FileRead } from '../../../src/widgets/keeping/file.ts'
import { MOST_FILE_BYTES, readFileText, readPasted } from '../../../src/widgets/keeping/file.ts'
import { fileText } from '../../../src/widgets/keeping/file-text.ts'
import { briefJson, readLink } from '../../../src/widgets/keeping/link.ts'
import { unpacked } from '../../../src/widgets/keeping/packing.ts'
import { design, gluedMoth, gluedPond, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

const heron = design([vFold('beak', 'gutter', 110, -40, 45), gluedPond, gluedMoth({ apex: 2, foot: 20 })])

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
  '${7*7}',
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

/** A design file with some of its values, names or letters exchanged for others. */
const spoilt = fc
  .record({
    made: fc.oneof(fc.constant(heron), kept),
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
  .map(({ made, cuts }) =>
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
    }, fileText(made)),
  )

/** The least of a few times that something takes, ms: other work on the machine only adds to it. */
async function quickest(act: () => unknown): Promise<number> {
  let least = Number.POSITIVE_INFINITY
  for (let k = 0; k < 4 && least > LONGEST; k++) {
    const from = performance.now()
    await act()
    least = Math.min(least, performance.now() - from)
  }
  return least
}

/** A hang is noticed from here on, ms. */
const LONGEST = 200

function judged(read: FileRead): void {
  if (read.read) {
    // What was taken in is a design, and stays one.
    expect(parseDesign(JSON.parse(JSON.stringify(read.design)))).toEqual(read.design)
    return
  }
  expect(read.sentence.length).toBeLessThan(700)
  expect(read.sentence).not.toMatch(/undefined|\[object|function|Error:/)
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are what must not be there
  expect(read.sentence).not.toMatch(/[\u0000-\u001f\u007f-\u009f\u2028\u2029\u202e]/)
}

const linkOf = (json: string | Uint8Array): string => {
  const packed = deflateRawSync(json)
  const head = Buffer.alloc(4)
  head.writeUInt32BE(zlibCrc(packed))
  return `d=1.${Buffer.concat([head, packed]).toString('base64url')}`
}

const pristine = JSON.stringify(Object.getOwnPropertyNames(Object.prototype).sort())

describe('spoilt files', () => {
  test('give a design or a sentence, each within a moment', async () => {
    let slowest = { text: '', ms: 0 }
    fc.assert(
      fc.property(spoilt, (text) => {
        const from = performance.now()
        const read = readFileText(text)
        const ms = performance.now() - from
        if (ms > slowest.ms) slowest = { text, ms }
        judged(read)
      }),
      { numRuns: 4000 },
    )
    expect(await quickest(() => readFileText(slowest.text))).toBeLessThan(LONGEST)
    expect(JSON.stringify(Object.getOwnPropertyNames(Object.prototype).sort())).toBe(pristine)
    expect(({} as { cover?: unknown }).cover).toBeUndefined()
  })

  test('any text and any JSON does too', () => {
    fc.assert(
      fc.property(fc.oneof(fc.string({ unit: 'binary' }), fc.json({ maxDepth: 8 })), (text) =>
        judged(readFileText(text)),
      ),
      { numRuns: 1500 },
    )
  })

  const deep = (open: string, shut: string, count: number) => open.repeat(count) + shut.repeat(count)

  const mechanisms = (list: string) =>
    `{"hingebook":1,"title":"x","card":{"width":100,"height":100},"mechanisms":${list}}`

  const M = MOST_FILE_BYTES

  test.each<[string, () => string]>([
    ['a million brackets', () => deep('[', ']', M / 2)],
    ['a million open brackets', () => '['.repeat(M)],
    ['brackets in brackets', () => deep('{"a":[', ']}', M / 8)],
    ['deep where a title stands', () => `{"hingebook":1,"title":${deep('[', ']', M / 4)}}`],
    ['deep in the art', () => mechanisms(`[],"art":${deep('[', ']', M / 4)}`)],
    ['a long list of mechanisms', () => mechanisms(`[${'{},'.repeat(M / 4)}{}]`)],
    [
      'a long list of points',
      () =>
        mechanisms(`[{"id":"a","kind":"rider","on":"page/left","shape":[${'[1,1],'.repeat(M / 8)}[1,1]]}]`),
    ],
    ['a hundred thousand names', () => `{${Array.from({ length: 1e5 }, (_, k) => `"n${k}":1`).join()}}`],
    ['one name, again and again', () => `{${'"hingebook":1,'.repeat(1e5)}"title":"x"}`],
    ['a title of a megabyte', () => `{"hingebook":1,"title":"${'x'.repeat(M - 100)}"}`],
    ['a title of escapes', () => `{"hingebook":1,"title":"${'\\u0041'.repeat(M / 8)}"}`],
    ['a number of a megabyte', () => `{"hingebook":${'1'.repeat(M - 100)}}`],
    ['room and nothing else', () => ' '.repeat(M)],
    ['a fault behind a million lines', () => `${'\n'.repeat(M - 10)}{]`],
    ['a quote that never ends', () => `{"${'\\"'.repeat(M / 2 - 10)}`],
    ['larger than allowed', () => ' '.repeat(M * 4)],
  ])('%s is told within 200 ms', async (_, make) => {
    const text = make()
    expect(await quickest(() => readFileText(text))).toBeLessThan(LONGEST)
    const read = readFileText(text)
    expect(read.read).toBe(false)
    judged(read)
    judged(await readPasted(text))
  })

  test('names that are in every object are none of a design', () => {
    for (const word of ['__proto__', 'constructor', 'toString', 'hasOwnProperty']) {
      const read = readFileText(
        `{"hingebook":1,"title":"x","card":{"width":100,"height":100,"${word}":{"caliper":1}},"mechanisms":[]}`,
      )
      expect(read).toMatchObject({
        read: false,
        sentence: expect.stringContaining(`Card.${word} is not known here`),
      })
      judged(readFileText(mechanisms(`[{"id":"a","kind":"${word}","on":"gutter"}]`)))
      judged(readFileText(mechanisms(`[{"id":"a","kind":"cut-layer","on":"${word}"}]`)))
      judged(readFileText(mechanisms(`[],"papers":{"${word}":"rust"}`)))
    }
  })
})

describe('spoilt links', () => {
  test('with a sound checksum and a spoilt design give a design or a sentence', async () => {
    await fc.assert(
      fc.asyncProperty(spoilt, async (text) => judged(await readLink(linkOf(text)))),
      { numRuns: 700 },
    )
  })

  test('of any letters, or any bytes behind a sound checksum, do too', async () => {
    await fc.assert(
      fc.asyncProperty(
        fc.string({ unit: 'binary' }),
        fc.uint8Array({ maxLength: 60 }),
        async (text, bytes) => {
          judged(await readLink(text))
          judged(await readLink(`d=${text}`))
          judged(await readLink(`d=1.${text}`))
          const head = Buffer.alloc(4)
          head.writeUInt32BE(zlibCrc(bytes))
          judged(await readLink(`d=1.${Buffer.concat([head, bytes]).toString('base64url')}`))
        },
      ),
      { numRuns: 500 },
    )
  })

  test('that stop in the middle, or go on behind their end, are damaged', async () => {
    const packed = deflateRawSync(briefJson(heron))
    for (const bytes of [packed.subarray(0, -3), Buffer.concat([packed, packed]), packed.subarray(5)]) {
      const head = Buffer.alloc(4)
      head.writeUInt32BE(zlibCrc(bytes))
      const read = await readLink(`d=1.${Buffer.concat([head, bytes]).toString('base64url')}`)
      expect(read).toMatchObject({ read: false, sentence: expect.stringMatching(/^The link is damaged/) })
    }
  })

  test.each([
    ['spaces', Buffer.alloc(300e6, ' ')],
    ['brackets', Buffer.alloc(100e6, '[')],
    ['a megabyte of brackets', Buffer.alloc(1e6, '[')],
    ['a megabyte of empty lists', Buffer.from('[[],'.repeat(2e5))],
  ])('packed %s are told within 200 ms', async (_, bytes) => {
    const link = linkOf(bytes)
    expect(await quickest(() => readLink(link))).toBeLessThan(LONGEST)
    const read = await readLink(link)
    expect(read.read).toBe(false)
    judged(read)
  })
})

describe('spoilt histories', () => {
  test('are none, whatever stands in them', () => {
    fc.assert(
      fc.property(fc.jsonValue({ maxDepth: 6 }), fc.jsonValue({ maxDepth: 6 }), (stored, delta) => {
        expect(unpacked(stored)).toBeNull()
        const steps = [
          { label: 'begun', whole: heron },
          { label: 'x', delta },
        ]
        const back = unpacked({ v: 1, at: 0, dropped: 0, steps })
        if (back) expect(back.steps[0]?.design).toEqual(heron)
      }),
      { numRuns: 800 },
    )
  })
})
