// Files made to harm: each ends in a design or a sentence, soon, and the page's own objects stay as they are.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { MOST_FILE_BYTES, readFileText, readPasted } from '../../../src/widgets/keeping/file.ts'
import { unpacked } from '../../../src/widgets/keeping/packing.ts'
import { busy, heron, judged, LONGEST, letters, spoilt } from './hostile.ts'

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
      { numRuns: 7000 },
    )
    expect(await busy(() => readFileText(slowest.text))).toBeLessThan(LONGEST)
    expect(JSON.stringify(Object.getOwnPropertyNames(Object.prototype).sort())).toBe(pristine)
    expect(({} as { cover?: unknown }).cover).toBeUndefined()
  })

  test('any text and any JSON does too', () => {
    fc.assert(
      fc.property(fc.oneof(letters, fc.json({ maxDepth: 4 })), (text) => judged(readFileText(text))),
      { numRuns: 300 },
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
    ['a long list of mechanisms', () => mechanisms(`[${'{},'.repeat(M / 8)}{}]`)],
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
    expect(await busy(() => readFileText(text))).toBeLessThan(LONGEST)
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
      { numRuns: 400 },
    )
  })
})
