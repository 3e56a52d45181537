import { deflateRawSync, inflateRawSync, crc32 as zlibCrc } from 'node:zlib'
import fc from 'fast-check'
import jsQR from 'jsqr'
import { describe, expect, test } from 'vitest'
import { parseDesign } from '../../../src/paper/index.ts'
import {
  briefJson,
  carriesDesign,
  crc32,
  fitsQr,
  linkText,
  MOST_QR_LETTERS,
  MOST_UNPACKED,
  readLink,
} from '../../../src/widgets/keeping/link.ts'
import { qrSvg } from '../../../src/widgets/keeping/qr.ts'
import { takeAddress, wayBack } from '../../../src/widgets/keeping/take.ts'
import { design, gluedPond, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const heron = design([beak])

/** A link as another program would make it, from any bytes: Node’s zlib in place of the browser’s streams. */
const linkOf = (json: string | Uint8Array): string => {
  const packed = deflateRawSync(json)
  const head = Buffer.alloc(4)
  head.writeUInt32BE(zlibCrc(packed))
  return `d=1.${Buffer.concat([head, packed]).toString('base64url')}`
}

const refusal = async (hash: string): Promise<string> => {
  const read = await readLink(hash)
  if (read.read) throw new Error('it was read without complaint')
  return read.sentence
}

const DAMAGED =
  'The link is damaged: a part of it is missing or changed. Copy it again, from its first letter to its last.'

describe('a link', () => {
  test('carries the whole design, whatever is in it', async () => {
    await fc.assert(
      fc.asyncProperty(kept, async (made) => {
        const link = await linkText(made)
        expect(link).toMatch(/^d=1\.[\w-]+$/)
        expect(await readLink(`#${link}`)).toEqual({ read: true, design: made })
      }),
      { numRuns: 100 },
    )
  })

  test('is what zlib packs and unpacks too', async () => {
    const link = (await linkText(heron)) ?? ''
    const bytes = Buffer.from(link.slice('d=1.'.length), 'base64url')
    expect(inflateRawSync(bytes.subarray(4)).toString()).toBe(briefJson(heron))
    expect(bytes.readUInt32BE(0)).toBe(zlibCrc(bytes.subarray(4)))
    expect(await readLink(linkOf(JSON.stringify(heron)))).toEqual({ read: true, design: heron })
  })

  // The check value that the catalogue of CRCs gives for CRC-32/ISO-HDLC.
  test('is checked by CRC-32', () => {
    expect(crc32(new TextEncoder().encode('123456789'))).toBe(0xcbf43926)
  })

  test('leaves out what a kind fills in by itself', () => {
    expect(briefJson(design([{ ...beak, lean: 0 }]))).not.toContain('lean')
    expect(briefJson(design([{ ...gluedPond, tab: 0 }]))).not.toContain('tab')
    expect(briefJson(design([{ ...gluedPond, tab: 5 }]))).toContain('"tab":5')
  })

  test('with any one letter changed or missing is told to be damaged', async () => {
    const link = (await linkText(heron)) ?? ''
    for (let k = 4; k < link.length; k++) {
      const other = link[k] === 'A' ? 'B' : 'A'
      for (const text of [
        link.slice(0, k) + other + link.slice(k + 1),
        link.slice(0, k) + link.slice(k + 1),
      ]) {
        const read = await readLink(text)
        // The last letter may hold bits that are not used.
        if (read.read) expect([k, read.design]).toEqual([link.length - 1, heron])
        else expect(read.sentence).toBe(DAMAGED)
      }
    }
  })

  test('says what is wrong with it', async () => {
    expect(await refusal('')).toBe('The link carries no design.')
    expect(await refusal('#beak.cut=3')).toBe('The link carries no design.')
    expect(await refusal('d=')).toBe(DAMAGED)
    expect(await refusal('d=1')).toBe(DAMAGED)
    expect(await refusal('d=1.')).toBe(DAMAGED)
    expect(await refusal('d=1.@@@')).toBe(DAMAGED)
    expect(await refusal(linkOf('{'))).toBe(DAMAGED)
    expect(await refusal(linkOf(Buffer.from([0xff, 0xfe, 0x22])))).toBe(DAMAGED)
    expect(await refusal('d=12.AAAA')).toBe(
      'The link is of kind 12, and this page reads kind 1. Load the page again, or ask for the file in place of the link.',
    )
    expect(await refusal(linkOf(JSON.stringify({ ...heron, mechanisms: [{ ...beak, cut: -1 }] })))).toBe(
      'The link holds a design that cannot be read. Beak: the slit must be from 0 to 2000 mm, not -1. The nearest that works is 0.',
    )
  })

  test('that unpacks to more than a design can be is left packed', async () => {
    const bomb = linkOf(Buffer.alloc(20 * MOST_UNPACKED, ' '))
    expect(bomb.length).toBeLessThan(40_000)
    expect(await refusal(bomb)).toBe('The link unpacks to more than 1024 kB: no design is so large.')
    expect(await refusal(`d=1.${'A'.repeat(3 * MOST_UNPACKED)}`)).toBe(
      'The link is longer than any design makes it.',
    )
  })

  test('is told from the links of chapters', () => {
    expect(carriesDesign('#d=1.AAAA')).toBe(true)
    expect(carriesDesign('#beak.cut=38&opening=96')).toBe(false)
  })
})

describe('a code for a phone', () => {
  /** The picture as a camera would see it: the SVG’s own rectangles, filled in a grid of bytes, four a module. */
  function seen(svg: string): { data: Uint8ClampedArray; size: number } {
    const modules = Number(/viewBox="0 0 (\d+)/.exec(svg)?.[1])
    const scale = 4
    const size = modules * scale
    const data = new Uint8ClampedArray(size * size * 4).fill(255)
    for (const [, x, y, long] of svg.matchAll(/M(\d+) (\d+)h(\d+)v1/g))
      for (let v = 0; v < scale; v++)
        for (let u = 0; u < Number(long) * scale; u++) {
          const at = ((Number(y) * scale + v) * size + Number(x) * scale + u) * 4
          data.fill(0, at, at + 3)
        }
    return { data, size }
  }

  // Read back by a decoder that shares nothing with what drew it.
  test('is read as the very link', async () => {
    const link = `https://example.org/dummy/#${await linkText(heron)}`
    expect(fitsQr(link)).toBe(true)
    const { data, size } = seen(qrSvg(link, 'Heron & <reeds>') ?? '')
    expect(jsQR(data, size, size)?.data).toBe(link)
    expect(qrSvg(link, 'Heron & <reeds>')).toContain('aria-label="Heron &#38; &#60;reeds&#62;"')
  })

  test('is not made where the link is too long', () => {
    expect(fitsQr('a'.repeat(MOST_QR_LETTERS))).toBe(true)
    expect(qrSvg('a'.repeat(MOST_QR_LETTERS + 1), 'Heron')).toBeNull()
    const { data, size } = seen(qrSvg('a'.repeat(MOST_QR_LETTERS), 'Heron') ?? '')
    expect(jsQR(data, size, size)?.data).toBe('a'.repeat(MOST_QR_LETTERS))
    // Version 25 has 17 + 4 x 25 modules a side (ISO/IEC 18004).
    expect(size / 4).toBe(17 + 4 * 25 + 8)
  })
})

describe('taking a design along', () => {
  test('the address opens it, and leads back to the bench as it was', async () => {
    const from = '/chapters/beak/#beak.cut=38.5&opening=96'
    const address = (await takeAddress(heron, '/dummy/', from)) ?? ''
    const hash = address.slice(address.indexOf('#'))
    expect(address.startsWith('/dummy/#d=1.')).toBe(true)
    expect(await readLink(hash)).toEqual({ read: true, design: parseDesign(heron) })
    expect(wayBack(hash)).toBe(from)
  })

  test.each([
    'https://example.org/',
    '//example.org/',
    'javascript:alert(1)',
    '/a b',
    '/\\example.org',
    '/<script>',
    '',
  ])('nothing leads off the site: %s', async (from) => {
    expect(wayBack(`#back=${encodeURIComponent(from)}`)).toBeNull()
    expect(await takeAddress(heron, '/dummy/', from)).not.toContain('back=')
  })
})
