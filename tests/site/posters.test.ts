// The picture beside a link, painted by librsvg through sharp: a program that knows neither our type nor our style sheet.
import { readdirSync, readFileSync } from 'node:fs'
import { fileURLToPath } from 'node:url'
import { SaxesParser } from 'saxes'
import sharp from 'sharp'
import { expect, test } from 'vitest'
import type { WordMark } from '../../src/drawing/pen/marks.ts'
import { view } from '../../src/drawing/view/view.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { wordWidth } from '../../src/sheet/marks/letters.ts'
import { outliner } from '../../src/site/preview/outlines.ts'
import { CARD, CARD_TEXT, POSTER, posterSvg } from '../../src/site/preview/poster.ts'

const content = (path: string): string => fileURLToPath(new URL(`../../content/${path}`, import.meta.url))

const cardOf = (name: string) => {
  const design = parseDesign(JSON.parse(readFileSync(content(`dummies/${name}.hingebook.json`), 'utf8')))
  const [lead] = design.mechanisms
  return view(design, 110, { turn: -13, tilt: 28 }, CARD, {
    frame: [110],
    text: CARD_TEXT,
    rise: lead ? [lead.id] : [],
  })
}

const outlined = outliner(await fontOnDisk())

const EMPTY = { box: [0, 0, CARD.width, CARD.height], unit: 'px', marks: [], says: '' } as const

/** The poster's pixels, red, green and blue, row by row. */
async function painted(svg: string): Promise<Uint8Array> {
  const { data, info } = await sharp(Buffer.from(svg))
    .removeAlpha()
    .raw()
    .toBuffer({ resolveWithObject: true })
  expect([info.width, info.height, info.channels]).toEqual([POSTER.width, POSTER.height, 3])
  return data
}

const pixel = (data: Uint8Array, x: number, y: number): readonly number[] => {
  const from = 3 * (y * POSTER.width + x)
  return [...data.subarray(from, from + 3)]
}

/** Where a poster is as dark as ink (#1a1d33), or half as dark, left of `SEEN`. */
async function inkIn(svg: string): Promise<readonly (readonly [x: number, y: number])[]> {
  const data = await painted(svg)
  const found: [number, number][] = []
  for (let y = 0; y < POSTER.height; y++)
    for (let x = 0; x < SEEN; x++) if ((data[3 * (y * POSTER.width + x)] ?? 255) < 140) found.push([x, y])
  return found
}

/** Half a square beyond the leaf. */
const SEEN = 445

const titles = ['chapters', 'plans']
  .flatMap((folder) =>
    readdirSync(content(folder)).map((name) => readFileSync(content(`${folder}/${name}`), 'utf8')),
  )
  .map((text) => /^title: (.*)$/m.exec(text)?.[1]?.replace(/^["']|["']$/g, '') ?? '')

test('a poster asks for no style sheet and no type: its colours are plain, its letters are outlines', () => {
  const svg = posterSvg({ title: 'V on V & more', over: 'Chapter 6', drawing: cardOf('owl') }, outlined)
  expect(svg).not.toMatch(/var\(|color-mix\(|light-dark\(|class="|<text|<style|font-/)
  const opened: string[] = []
  const parser = new SaxesParser({ xmlns: true })
  parser.on('opentag', ({ name }) => opened.push(name))
  parser.write(svg).close()
  expect(opened.length).toBeGreaterThan(100)
})

test('two cards give two posters, and so do two titles', () => {
  const [owl, moth] = ['owl', 'moth'].map((name) =>
    posterSvg({ title: 'V on V', over: 'Chapter 6', drawing: cardOf(name) }, outlined),
  )
  expect(owl).not.toBe(moth)
  expect(owl).not.toBe(posterSvg({ title: 'Layers', over: 'Chapter 6', drawing: cardOf('owl') }, outlined))
})

test('the card stands on the table, and the leaf beside it has a red line and squares', async () => {
  const svg = posterSvg({ title: 'V on V', over: 'Chapter 6', drawing: cardOf('owl') }, outlined)
  const data = await painted(svg)
  const at = (x: number, y: number) => pixel(data, x, y)
  // The tokens of the margin line, of the leaf between its squares, and of the table's rim.
  expect(at(60, 612)).toEqual([0xe5, 0x8a, 0x96])
  expect(at(40, 612)).toEqual([0xfd, 0xfd, 0xfa])
  const [r = 0, g = 0, b = 0] = at(POSTER.width - 1, 0)
  expect(r > g && g > b, `${r} ${g} ${b} is wood`).toBe(true)
  // The middle of the card: not wood, whatever is painted there.
  const [cr = 0, , cb = 0] = at(800, 470)
  expect(cr < cb || cr < 140, 'a card hides the table').toBe(true)
})

test.each(titles)('“%s” stays on the leaf and over the name of the book', async (title) => {
  const ink = await inkIn(posterSvg({ title, over: 'Chapter 13', drawing: EMPTY }, outlined))
  const words = ink.filter(([, y]) => y < 540)
  expect(words.length, 'it is painted').toBeGreaterThan(1500)
  expect(Math.max(...ink.map(([x]) => x))).toBeLessThan(425)
  // Rows without ink part the title from the name.
  expect(Math.max(...words.map(([, y]) => y))).toBeLessThan(500)
  expect(ink.some(([, y]) => y > 550)).toBe(true)
})

test('a word goes where its anchor says: by the widths that sheets are set by', () => {
  const word = { mark: 'word', text: '28.3 mm', at: [100, 50], role: 'note', size: 30, bold: true } as const
  const left = (anchor: WordMark['anchor']): number => {
    const xs = outlined({ ...word, anchor }).matchAll(/[MLQC](-?[\d.]+) /g)
    return Math.min(...[...xs].map(([, x]) => Number(x)))
  }
  const width = wordWidth(word.text, word.size, true)
  expect(left('start') - left('end')).toBeCloseTo(width, 1)
  expect(left('start') - left('middle')).toBeCloseTo(width / 2, 1)
  expect(left('start')).toBeGreaterThan(100)
  expect(left('start')).toBeLessThan(104)
})

test('a letter that the type does not have is named', () => {
  expect(() =>
    outlined({ mark: 'word', text: 'a ☂', at: [0, 0], role: 'note', size: 30, anchor: 'start' }),
  ).toThrow('☂')
})
