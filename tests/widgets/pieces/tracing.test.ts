// Files that say they are pictures: made by another library, and made to do harm. PNG by ISO/IEC 15948, JPEG by ITU-T T.81.
import fc from 'fast-check'
import sharp from 'sharp'
import { describe, expect, test } from 'vitest'
import { dotsOf } from '../../../src/widgets/pieces/tracing.ts'

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
      expect(dotsOf(bufferOf(file))).toBe('That is no picture: a PNG or a JPEG can be traced.')
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
