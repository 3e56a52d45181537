// Files that say they are pictures: made by another library, and made to do harm. PNG by ISO/IEC 15948, JPEG by ITU-T T.81.
import fc from 'fast-check'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { bytesOf, dotsOf, fromBase64 } from '../../../src/paper/design/picture.ts'
import { DesignError, parseDesign } from '../../../src/paper/index.ts'

const bufferOf = (bytes: Uint8Array): ArrayBuffer => Uint8Array.from(bytes).buffer

const picture = (width: number, height: number) =>
  sharp({ create: { width, height, channels: 3, background: '#39437f' } })

describe('how large a picture is', () => {
  test('is read off PNG and JPEG files as libvips writes them', async () => {
    for (const [width, height] of [
      [1, 1],
      [640, 480],
      [33, 1200],
    ] as const) {
      const files = await Promise.all([
        picture(width, height).png().toBuffer(),
        picture(width, height).jpeg().toBuffer(),
        picture(width, height).jpeg({ progressive: true }).withMetadata().toBuffer(),
      ])
      for (const file of files) expect(dotsOf(bufferOf(file))).toEqual({ width, height })
    }
  })

  test('is refused in a sentence where it would unpack to more than a page can hold', async () => {
    const bomb = await picture(4, 4).png().toBuffer()
    bomb.writeUInt32BE(60_000, 16)
    bomb.writeUInt32BE(60_000, 20)
    expect(dotsOf(bufferOf(bomb))).toBe(
      'That picture is too large: 60000 by 60000 dots. At most 50 million can be read.',
    )
    bomb.writeUInt32BE(0, 16)
    expect(dotsOf(bufferOf(bomb))).toBe('That picture has no dots.')
  })

  test('is read off no other file: scripts, vector pictures, other kinds, nothing', async () => {
    const others = [
      new Uint8Array(),
      new TextEncoder().encode('<svg xmlns="http://www.w3.org/2000/svg" onload="alert(1)"/>'),
      new TextEncoder().encode('<script>alert(1)</script>'),
      await picture(8, 8).webp().toBuffer(),
      await picture(8, 8).gif().toBuffer(),
    ]
    for (const file of others)
      expect(dotsOf(bufferOf(file))).toBe('That is no picture: a PNG or a JPEG can be read.')
  })

  test('is a size or a sentence for whatever bytes, also behind the head of a JPEG', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 300 }), fc.boolean(), (bytes, isJpeg) => {
        const file = isJpeg ? Uint8Array.from([0xff, 0xd8, 0xff, ...bytes]) : bytes
        const found = dotsOf(bufferOf(file))
        if (typeof found === 'string') expect(found).toMatch(/^That .*\.$/)
        else expect(found.width * found.height).toBeLessThanOrEqual(50e6)
      }),
      { numRuns: 2000 },
    )
  })
})

describe('base 64', () => {
  test('is read as Node reads it', () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 80 }), (bytes) => {
        const text = Buffer.from(bytes).toString('base64')
        expect([...(fromBase64(text) ?? [])]).toEqual([...bytes])
      }),
    )
  })

  // RFC 4648, section 10, and what is none.
  test.each([
    ['', []],
    ['Zg==', [0x66]],
    ['Zm8=', [0x66, 0x6f]],
    ['Zm9vYmFy', [0x66, 0x6f, 0x6f, 0x62, 0x61, 0x72]],
    ['Zm9', null],
    ['Zm9vY===', null],
    ['Zm 9', null],
    ['Zm9_', null],
  ] as const)('%s', (text, bytes) => {
    expect(fromBase64(text)?.length ?? null).toBe(bytes?.length ?? null)
    expect([...(fromBase64(text) ?? [])]).toEqual(bytes ?? [])
  })
})

const FRAME = [
  [10, 20],
  [40, 20],
  [40, 40],
  [10, 40],
]

const withArt = (...art: readonly object[]) => ({
  hingebook: 1,
  title: 'Moon',
  card: { width: 105, height: 148 },
  mechanisms: [],
  art,
})

const address = async (type: 'png' | 'jpeg' = 'png', width = 4): Promise<string> =>
  `data:image/${type};base64,${(await picture(width, 3).toFormat(type).toBuffer()).toString('base64')}`

const refusal = (...art: readonly object[]): string => {
  try {
    parseDesign(withArt(...art))
  } catch (error) {
    if (error instanceof DesignError) return error.message
    throw error
  }
  return 'read'
}

describe('a picture in a design', () => {
  test('is kept as it came, and reads back as it was written', async () => {
    for (const type of ['png', 'jpeg'] as const) {
      const one = { on: 'page/right', shape: FRAME, picture: await address(type) }
      const read = parseDesign(withArt(one, { ...one, trace: true }))
      expect(read.art?.map(({ picture: found, trace }) => [found, trace])).toEqual([
        [one.picture, undefined],
        [one.picture, true],
      ])
      expect(read.art?.[0]).toMatchObject({ fill: null, line: false, closed: true, curve: false })
      expect(parseDesign(JSON.parse(JSON.stringify(read)))).toEqual(read)
      expect(bytesOf(one.picture)?.type).toBe(type)
    }
  })

  test('is refused by name and reason', async () => {
    const png = await address()
    const one = { on: 'page/right', shape: FRAME, picture: png }
    const swapped = png.replace('image/png', 'image/jpeg')
    expect(refusal(one)).toBe('read')
    for (const other of ['moon.png', 'data:image/svg+xml;base64,PHN2Zy8+', 'data:text/html;base64,AAAA', 7])
      expect(refusal({ ...one, picture: other })).toMatch(/^art\[0\]\.picture must be a PNG or JPEG as /)
    expect(refusal({ ...one, picture: `${png}*` })).toBe(
      'art[0].picture must go on in base 64 after the comma.',
    )
    expect(refusal({ ...one, picture: swapped })).toMatch(/must hold a JPEG of at most 50 million dots\.$/)
    expect(refusal({ ...one, picture: png.slice(0, 40) })).toMatch(/^art\[0\]\.picture must /)
    expect(refusal({ ...one, fill: 'moon' })).toBe(
      'art[0].fill must be null or left out where there is a picture.',
    )
    expect(refusal({ ...one, line: true })).toMatch(/^art\[0\]\.line must be false or left out/)
    expect(refusal({ ...one, shape: FRAME.slice(0, 3) })).toMatch(
      /^art\[0\]\.shape must hold the four corners/,
    )
    expect(refusal({ ...one, shape: [...FRAME, [0, 0]] })).toMatch(
      /^art\[0\]\.shape must hold the four corners/,
    )
    const skewed = [FRAME[0], FRAME[1], FRAME[2], [10.1, 40]]
    expect(refusal({ ...one, shape: skewed })).toMatch(/^art\[0\]\.shape must hold the four corners/)
    expect(refusal({ ...one, shape: [FRAME[0], FRAME[1], FRAME[2], [10.04, 40]] })).toBe('read')
    expect(refusal({ on: 'page/right', shape: FRAME, fill: 'moon', trace: true })).toBe(
      'art[0].trace can stand beside a picture alone.',
    )
  })

  test('may have 240,000 letters, and all together 700,000', async () => {
    const head = await address()
    const bytes = Buffer.from(head.slice(22), 'base64')
    const long = (letters: number): string => {
      const room = ((letters - 22) / 4) * 3
      return `data:image/png;base64,${Buffer.concat([bytes, Buffer.alloc(room - bytes.length)]).toString('base64')}`
    }
    const one = (letters: number) => ({ on: 'page/right', shape: FRAME, picture: long(letters) })
    expect(one(239_998).picture.length).toBe(239_998)
    expect(refusal(one(239_998))).toBe('read')
    expect(refusal(one(240_002))).toBe('art[0].picture must have at most 240000 letters, not 240002.')
    expect(refusal(one(239_998), one(239_998), one(219_998))).toBe('read')
    expect(refusal(one(239_998), one(239_998), one(220_010))).toBe(
      'art must hold at most 700000 letters of pictures, not 700006.',
    )
  })
})
