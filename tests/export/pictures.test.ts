// Pictures read with saxes (XML 1.0), GIFs with libvips by sharp, PDFs with PDF.js: none of them is our writer.
import { readFileSync } from 'node:fs'
import { SaxesParser } from 'saxes'
import sharp from 'sharp'
import { beforeAll, describe, expect, test, vi } from 'vitest'
import { FLIP_PICTURE, flipBookPdf, LEAVES } from '../../src/export/flip-book.ts'
import { gifBytes } from '../../src/export/gif.ts'
import { openingSteps, thereAndBack } from '../../src/export/motion.ts'
import { pictureSvg } from '../../src/export/picture.ts'
import { compile, openingRange } from '../../src/paper/index.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { dummy } from '../sheet/designs.ts'
import type { ReadPdf } from '../sheet/read-pdf.ts'
import { readPdf } from '../sheet/read-pdf.ts'

// A PDF is written and read: slow on a busy machine.
vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

const UNIT = 72 / 25.4

const MARKS = readFileSync(new URL('../../src/drawing/pen/marks.css', import.meta.url), 'utf8')

describe('a picture that stands alone', () => {
  const shot = { opening: 96, camera: { turn: -20, tilt: 34 }, size: { width: 960, height: 640 } }

  test.each(['owl', 'garden', 'pond'])('%s: well-formed, with nothing from elsewhere', (name) => {
    const text = pictureSvg(compile(dummy(name)), shot, MARKS)
    const outside: string[] = []
    let root: Record<string, unknown> = {}
    let css = ''
    const parser = new SaxesParser()
    parser.on('opentag', ({ name: tag, attributes }) => {
      if (Object.keys(root).length === 0) root = attributes
      if (/^(script|image|foreignObject|use|iframe)$/.test(tag)) outside.push(tag)
      for (const [key, value] of Object.entries(attributes)) {
        if (/^on/.test(key)) outside.push(key)
        if (/href|src/.test(key) && !String(value).startsWith('#')) outside.push(`${key}=${value}`)
      }
    })
    parser.on('text', (words) => {
      css += words
    })
    parser.on('error', (error) => {
      throw error
    })
    parser.write(text).close()
    expect(outside).toEqual([])
    expect(css).toContain('.drawing')
    expect(css).not.toMatch(/@import|@font-face|url\((?!#)/)
    expect(root).toMatchObject({ width: '960', height: '640', viewBox: '0 0 960 640' })
  })

  test('names no colour that only the site knows: each has a value of its own', () => {
    const css = /<style>(.*?)<\/style>/s.exec(pictureSvg(compile(dummy('owl')), shot, MARKS))?.[1] ?? ''
    // Set by the style sheet or the marks themselves.
    const own = new Set(['--paper', '--shade', '--lamp', '--glow', '--dark', '--face', '--lit'])
    expect(css).toContain('.drawing path.m-facet')
    const bare = [...css.matchAll(/var\((--[\w-]+)\)/g)].map(([, name]) => name ?? '')
    expect(bare.filter((name) => !own.has(name) && name !== '--strength')).toEqual([])
  })
})

describe('openings of a motion', () => {
  test('go evenly from shut to as far as the card opens', () => {
    const [, high] = openingRange(dummy('moth'))
    const steps = openingSteps(dummy('moth'), 5)
    expect(steps[0]).toBe(0.05)
    expect(steps[4]).toBe(high)
    expect((steps[2] ?? 0) - (steps[1] ?? 0)).toBeCloseTo((high - 0.05) / 4, 9)
  })

  test('there and back shows neither end twice', () => {
    expect(thereAndBack([1, 2, 3, 4])).toEqual([1, 2, 3, 4, 3, 2])
  })
})

test('a GIF keeps its pictures, their colours and their time', async () => {
  const colours = [
    [200, 16, 46],
    [27, 77, 209],
    [93, 165, 119],
  ] as const
  const frames = colours.map((colour) => {
    const data = new Uint8ClampedArray(4 * 16 * 12)
    for (let k = 0; k < data.length; k += 4) data.set([...colour, 255], k)
    return data
  })
  const gif = await gifBytes(frames, { width: 16, height: 12, wait: 80 })
  const read = sharp(gif, { pages: -1 })
  const { pages, pageHeight, width, delay, loop } = await read.metadata()
  expect({ pages, pageHeight, width, delay, loop }).toEqual({
    pages: 3,
    pageHeight: 12,
    width: 16,
    delay: [80, 80, 80],
    loop: 0,
  })
  const pixels = await read.removeAlpha().raw().toBuffer()
  for (const [k, colour] of colours.entries())
    expect([...pixels.subarray(3 * 16 * (12 * k + 6), 3 * 16 * (12 * k + 6) + 3)]).toEqual([...colour])
})

describe.each([
  ['a4', 210, 297],
  ['letter', 215.9, 279.4],
] as const)('a flip book on %s', (paper, width, height) => {
  let bytes: Uint8Array
  let read: ReadPdf
  beforeAll(async () => {
    const picture = await sharp({
      create: { width: 66, height: 44, channels: 3, background: '#39437f' },
    })
      .jpeg()
      .toBuffer()
    bytes = await flipBookPdf(Array(LEAVES).fill(picture), 'Owl', paper, await fontOnDisk())
    read = await readPdf(bytes)
  })

  test('has three pages of exactly that paper, not to be scaled', () => {
    expect(read.pages).toHaveLength(3)
    for (const { box } of read.pages) {
      expect(box[2]).toBeCloseTo(width * UNIT, 3)
      expect(box[3]).toBeCloseTo(height * UNIT, 3)
    }
    expect(read.printScaling).toBe('None')
    expect(read.title).toBe('Owl: flip book')
  })

  test('numbers the leaves 1 to 30, ten on a page', () => {
    const numbers = read.pages.map(({ words }) =>
      words.filter(({ text }) => /^\d+$/.test(text)).map(({ text }) => Number(text)),
    )
    expect(numbers).toEqual([0, 10, 20].map((from) => Array.from({ length: 10 }, (_, k) => from + k + 1)))
  })

  test('has solid cuts round every leaf, within what printers reach, and a picture in each', async () => {
    const { getDocument, OPS } = await import('pdfjs-dist/legacy/build/pdf.mjs')
    const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
    const page = await pdf.getPage(1)
    const { fnArray } = await page.getOperatorList()
    const painted = fnArray.filter((one) => one === OPS.paintImageXObject).length
    const repeated = fnArray.filter((one) => one === OPS.paintImageXObjectRepeat).length
    expect(painted + repeated).toBeGreaterThan(0)
    expect(painted === 10 || repeated > 0).toBe(true)
    await pdf.destroy()
    const solid = read.pages[0]?.lines.filter(({ dash }) => dash.length === 0) ?? []
    expect(solid).toHaveLength(1)
    const runs = (solid[0]?.runs ?? []).map((run) => run.map(([x, y]) => [x / UNIT, y / UNIT] as const))
    // Three lines down and six across part 2 × 5 leaves.
    expect(runs).toHaveLength(9)
    const xs = runs.flat().map(([x]) => x)
    const ys = runs.flat().map(([, y]) => y)
    expect(Math.min(...xs)).toBeGreaterThan(10)
    expect(width - Math.max(...xs)).toBeGreaterThan(10)
    // 5 mm: common practice, no source.
    expect(Math.min(...ys)).toBeGreaterThan(5)
    expect(Math.max(...xs) - Math.min(...xs)).toBeCloseTo(184, 3)
    expect(Math.max(...ys) - Math.min(...ys)).toBeCloseTo(240, 3)
  })

  test('says in words how it is bound, above the leaves', () => {
    const words = read.pages[0]?.words ?? []
    const text = words.map((one) => one.text).join(' ')
    expect(text).toMatch(/Stack the leaves by their numbers/)
    expect(text).toMatch(/clip or two staples/)
    const lowest = Math.min(...words.filter(({ text: t }) => !/^\d+$/.test(t)).map(({ y }) => y))
    expect(lowest).toBeGreaterThan((height - 31) * UNIT)
  })

  test('has pictures of the shape of a leaf’s', () => {
    expect(FLIP_PICTURE.width / FLIP_PICTURE.height).toBeCloseTo(1.5, 9)
  })
})
