// The PDF measured with PDF.js, and with poppler's tools where the machine has them: neither is our writer.
import { execFileSync, spawnSync } from 'node:child_process'
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs'
import { tmpdir } from 'node:os'
import { join } from 'node:path'
import { afterAll, beforeAll, describe, expect, test, vi } from 'vitest'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { layOut, sheetPdf } from '../../src/sheet/index.ts'
import { wordWidth } from '../../src/sheet/marks/letters.ts'
import { card, dummy, shelf, uncovered } from './designs.ts'
import type { ReadLine, ReadPdf } from './read-pdf.ts'
import { readPdf } from './read-pdf.ts'

// A PDF is written and read: slow on a busy machine.
vi.setConfig({ testTimeout: 30_000, hookTimeout: 30_000 })

const font = await fontOnDisk()

/** ISO 32000-1:2008, 8.3.2.3: a unit is 1/72 inch, so 100 mm are 283.464567 units and 4 in are 288. */
const UNIT = 72 / 25.4

const lengths = (line: ReadLine): number[] =>
  line.runs.flatMap((run) =>
    run.slice(1).map(([x, y], k) => Math.hypot(x - (run[k]?.[0] ?? 0), y - (run[k]?.[1] ?? 0))),
  )

/** Unbroken straight lines of one length, in PDF units. */
const ofLength = ({ pages: [page] }: ReadPdf, length: number): ReadLine[] =>
  (page?.lines ?? []).filter(
    (line) =>
      line.runs.length === 1 &&
      lengths(line).length === 1 &&
      Math.abs((lengths(line)[0] ?? 0) - length) < 0.001,
  )

const heron = uncovered(dummy('heron'))

describe('the heron’s PDF', () => {
  let bytes: Uint8Array
  let read: ReadPdf
  beforeAll(async () => {
    bytes = await sheetPdf(heron, { paper: 'a4' }, font)
    read = await readPdf(bytes)
  })

  test('has pages of A4', () => {
    expect(read.pages.map(({ box }) => box)).toEqual([[0, 0, 841.8898, 595.2756]])
  })

  test('asks the print dialogue not to scale', () => {
    expect(read.printScaling).toBe('None')
  })

  test('has a title', () => {
    expect(read.title).toBe('Heron: template at true size')
  })

  test('is read out: a title, headings with their words, and the drawing of the pieces in a sentence', () => {
    // ISO 32000-1:2008, 14.7 (structure), 14.8.4 (its types), 14.9.3 (Alt), 12.2 (DisplayDocTitle); from memory.
    expect(read).toMatchObject({ isMarked: true, language: 'en', showsTitle: true })
    const { parts = [], apart } = read.pages[0] ?? {}
    expect(parts.filter(({ as }) => as === 'H1').map(({ text }) => text)).toEqual(['Heron'])
    const headings = parts.flatMap(({ as, text }) => (as === 'H2' ? [text] : []))
    expect(headings).toContain('Lines')
    expect(headings).toContain('Check the size')
    const [page] = layOut(heron, { paper: 'a4' })
    expect(parts.at(-1)).toMatchObject({ as: 'Figure', alt: page?.says })
    expect(parts.filter(({ as }) => as === 'Figure')).toHaveLength(1)
    // Nothing that is written on the sheet is left out.
    expect(apart).toEqual([])
    const said = parts.map(({ text }) => text).join(' ')
    for (const mark of page?.marks ?? []) if (mark.mark === 'word') expect(said).toContain(mark.text)
  })

  test('has check lines of 100 mm and 4 in', () => {
    expect(ofLength(read, 283.464567)).toHaveLength(1)
    expect(ofLength(read, 288)).toHaveLength(1)
  })

  test('has the slit of 84 mm, cut as one solid line', () => {
    // Beak and jaw share it: 42 mm into either page, by way of the gutter.
    const slits = (read.pages[0]?.lines ?? []).filter((line) => {
      const [first, last] = [line.runs[0]?.[0], line.runs[0]?.at(-1)]
      const across = (last?.[0] ?? 0) - (first?.[0] ?? 0)
      return (
        line.runs.length === 1 && Math.abs(Math.abs(across) - 84 * UNIT) < 0.001 && first?.[1] === last?.[1]
      )
    })
    expect(slits).toHaveLength(1)
    expect(slits[0]?.dash).toEqual([])
  })

  test('tells the lines apart by dash pattern: cut solid, valley dashed, mountain dash and dot', () => {
    // In parts of the first dash: a line's own pattern is fitted to its length. One more is dots: the line for
    // the maker's name.
    const patterns = new Set(
      (read.pages[0]?.lines ?? []).map(({ dash }) =>
        dash.map((d) => (d / (dash[0] ?? 1)).toFixed(1)).join(' '),
      ),
    )
    expect([...patterns].sort()).toEqual(['', '1.0 0.4 0.2 0.4', '1.0 0.5', '1.0 2.3'])
  })

  test('begins and ends every fold with a dash, at its end or just clear of it', () => {
    const dashed = (read.pages[0]?.lines ?? []).filter(({ dash }) => dash.length > 0)
    expect(dashed.length).toBeGreaterThan(10)
    let clear = 0
    for (const line of dashed) {
      const [long = 0] = lengths(line)
      const period = line.dash.reduce((sum, part) => sum + part, 0)
      const start = line.phase > 0 ? period - line.phase : 0
      const times = (long - start - (line.dash[0] ?? 0)) / period
      // What the last dash leaves of the line, once as many have been drawn as it holds.
      const end = (times - Math.floor(times + 0.001)) * period
      for (const off of [start, end]) expect(off).toBeLessThan(0.95 * UNIT)
      if (start > 0 || end > 0.01) clear += 1
    }
    expect(clear).toBeGreaterThan(8)
  })

  test('is set in the typeface, embedded in part', () => {
    const fonts = read.pages[0]?.fonts ?? []
    expect(fonts.length).toBe(2)
    for (const name of fonts) expect(name).toMatch(/^HINGE[A-Z]\+AtkinsonHyperlegibleNext-(Regular|Bold)$/)
    expect(bytes.length).toBeLessThan(40_000)
  })

  test('has words that can be read out, each as wide as it was set', () => {
    const [page] = layOut(heron, { paper: 'a4' })
    const set = page?.marks.flatMap((mark) => (mark.mark === 'word' ? [mark] : [])) ?? []
    const words = read.pages[0]?.words ?? []
    expect(words.map(({ text }) => text).sort()).toEqual(set.map(({ text }) => text).sort())
    for (const { text, size, bold } of set) {
      const found = words.find((word) => word.text === text && Math.abs(word.size - size * UNIT) < 0.01)
      expect(found?.width, text).toBeCloseTo(wordWidth(text, size, bold) * UNIT, 1)
    }
  })

  test('is the same every time', async () => {
    const again = await sheetPdf(heron, { paper: 'a4' }, font)
    expect(Buffer.compare(Buffer.from(again), Buffer.from(bytes))).toBe(0)
  })
})

test('letter paper is 612 by 792 units', async () => {
  const { pages } = await readPdf(await sheetPdf(dummy('lantern'), { paper: 'letter' }, font))
  expect(pages[0]?.box).toEqual([0, 0, 792, 612])
})

test('accents come through, from either file of the font, and a strange letter is a question mark', async () => {
  const title = 'Żółw, kaczę & Ödön’s «été» 蛾'
  const { pages, title: said } = await readPdf(
    await sheetPdf(card(105, 148, [], title), { paper: 'a4' }, font),
  )
  const read = pages[0]?.words.map(({ text }) => text).join('')
  expect(read?.replaceAll(' ', '')).toContain('Żółw,kaczę&Ödön’s«été»?')
  expect(said).toBe(`${title}: template at true size`)
})

test('a font whose letters run together still gives words as wide as set', async () => {
  const { pages } = await readPdf(await sheetPdf(card(105, 148, [], 'fi ffl AV To'), { paper: 'a4' }, font))
  const title = pages[0]?.words.filter(({ size }) => size > 20) ?? []
  const width = title.reduce((sum, word) => sum + word.width, 0)
  expect(width / UNIT).toBeCloseTo(wordWidth('fi ffl AV To', 8, true), 1)
})

const has = (tool: string): boolean => spawnSync(tool, ['-v']).status === 0

describe.skipIf(!has('pdftoppm') || !has('pdfinfo') || !has('pdffonts'))('by poppler', () => {
  let folder: string
  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), 'sheet-'))
  })
  afterAll(() => rmSync(folder, { recursive: true }))

  const saved = async (name: string, paper: 'a4' | 'letter'): Promise<string> => {
    const design = shelf.find((one) => one.name === name)?.design ?? dummy(name)
    const file = join(folder, `${name}-${paper}.pdf`)
    writeFileSync(file, await sheetPdf(design, { paper }, font))
    return file
  }

  /** A page as rows of grey, 0 black, at 300 dots an inch: portable greymap, binary (netpbm's P5). */
  function raster(file: string): { width: number; height: number; at: (x: number, y: number) => number } {
    execFileSync('pdftoppm', ['-r', '300', '-gray', '-f', '1', '-singlefile', file, file.replace('.pdf', '')])
    const bytes = readFileSync(file.replace('.pdf', '.pgm'))
    const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1'))
    const [start, width, height] = [head?.[0].length ?? 0, Number(head?.[1]), Number(head?.[2])]
    return { width, height, at: (x, y) => bytes[start + y * width + x] ?? 255 }
  }

  test.each(['a4', 'letter'] as const)(
    'the check lines on %s are 1181 and 1200 dots long at 300 dpi',
    async (paper) => {
      const { width, height, at } = raster(await saved('heron', paper))
      const sheet = layOut(dummy('heron'), { paper })[0]
      for (const [of, dots] of [
        ['check-100mm', 1181.1],
        ['check-4in', 1200],
      ] as const) {
        const mark = sheet?.marks.find((one) => one.mark === 'path' && one.of === of)
        const [[x = 0, y = 0] = []] = (mark?.mark === 'path' && mark.runs[0]) || []
        const dot = (mm: number): number => Math.round((mm * 300) / 25.4)
        expect(width * height).toBeGreaterThan(8e6)
        // The longest dark run in the rows round the line.
        let longest = 0
        for (let row = dot(y) - 3; row <= dot(y) + 3; row++) {
          let run = 0
          for (let column = dot(x) - 20; column < dot(x) + 1300; column++) {
            run = at(column, row) < 128 ? run + 1 : 0
            longest = Math.max(longest, run)
          }
        }
        // The ends' ticks are 0.25 mm wide, half of it beyond the line's own end: 3 dots in all.
        expect(Math.abs(longest - 3 - dots), of).toBeLessThanOrEqual(1.5)
      }
    },
  )

  test('pdfinfo sees the card’s page and the cover’s, of A4 without scripts, pdffonts the two parts of the typeface', async () => {
    const file = await saved('heron', 'a4')
    const info = execFileSync('pdfinfo', [file]).toString()
    expect(info).toMatch(/Pages:\s+2\n/)
    expect(info).toMatch(/Page size:\s+841\.89 x 595\.276 pts \(A4\)/)
    expect(info).toMatch(/JavaScript:\s+no/)
    const fonts = execFileSync('pdffonts', [file]).toString()
    expect(fonts).toMatch(/\+AtkinsonHyperlegibleNext-Regular .* yes yes yes/)
    expect(fonts).toMatch(/\+AtkinsonHyperlegibleNext-Bold .* yes yes yes/)
  })
})
