// Links made to harm: each ends in a design or a sentence, soon.
import { deflateRawSync } from 'node:zlib'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { briefJson, readLink } from '../../../src/widgets/keeping/link.ts'
import { busy, heron, judged, LONGEST, letters, linkAround, linkOf, spoilt } from './hostile.ts'

describe('spoilt links', () => {
  test('with a sound checksum and a spoilt design give a design or a sentence', async () => {
    await fc.assert(
      fc.asyncProperty(spoilt, async (text) => judged(await readLink(linkOf(text)))),
      { numRuns: 1200 },
    )
  })

  test('of any letters, or any bytes behind a sound checksum, do too', async () => {
    await fc.assert(
      fc.asyncProperty(letters, fc.uint8Array({ maxLength: 60 }), async (text, bytes) => {
        judged(await readLink(text))
        judged(await readLink(`d=${text}`))
        judged(await readLink(`d=1.${text}`))
        judged(await readLink(linkAround(bytes)))
      }),
      { numRuns: 300 },
    )
  })

  test('that stop in the middle, or go on behind their end, are damaged', async () => {
    const packed = deflateRawSync(briefJson(heron))
    for (const bytes of [packed.subarray(0, -3), Buffer.concat([packed, packed]), packed.subarray(5)]) {
      const read = await readLink(linkAround(bytes))
      expect(read).toMatchObject({ read: false, sentence: expect.stringMatching(/^The link is damaged/) })
    }
  })

  test.each([
    ['spaces', Buffer.alloc(30e6, ' ')],
    ['brackets', Buffer.alloc(30e6, '[')],
    ['a megabyte of brackets', Buffer.alloc(1e6, '[')],
    ['a megabyte of empty lists', Buffer.from('[[],'.repeat(2e5))],
  ])('packed %s are told within 200 ms', async (_, bytes) => {
    const link = linkOf(bytes)
    expect(await busy(() => readLink(link))).toBeLessThan(LONGEST)
    const read = await readLink(link)
    expect(read.read).toBe(false)
    judged(read)
  })
})
