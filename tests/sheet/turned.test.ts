// What the pen writes into a PDF and an SVG, mark by mark, on a page made up here: read back by PDF.js (Apache-2.0),
// which shares no code with the writer. Turned words by the text matrix of ISO 32000-1:2008, 9.4.2.
import { inflateSync } from 'node:zlib'
import { getDocument, OPS } from 'pdfjs-dist/legacy/build/pdf.mjs'
import { describe, expect, test, vi } from 'vitest'
import type { Role } from '../../src/drawing/pen/marks.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import { pagesPdf } from '../../src/sheet/files/pdf.ts'
import { pageSvg } from '../../src/sheet/files/svg.ts'
import { wordWidth } from '../../src/sheet/marks/letters.ts'
import type { SheetPage } from '../../src/sheet/pages/layout.ts'

vi.setConfig({ testTimeout: 30_000 })

const UNIT = 72 / 25.4

const font = await fontOnDisk()

type SheetMark = SheetPage['marks'][number]

const page = (...marks: readonly SheetMark[]): SheetPage =>
  ({
    box: [0, 0, 100, 60],
    unit: 'mm',
    says: 'A page',
    marks,
    paper: 'a4',
    placed: [],
  }) as unknown as SheetPage

const word = (text: string, more: object = {}): SheetMark =>
  ({ mark: 'word', role: 'note', text, at: [30, 20], size: 4, anchor: 'start', ...more }) as SheetMark

const line = (
  role: Role,
  runs: readonly (readonly (readonly [number, number])[])[],
  closed = false,
): SheetMark => ({ mark: 'path', role, runs, closed }) as unknown as SheetMark

interface Text {
  readonly text: string
  readonly matrix: readonly number[]
}

async function read(...pages: readonly SheetPage[]) {
  const bytes = await pagesPdf(pages, 'Test', font)
  const pdf = await getDocument({ data: Uint8Array.from(bytes), verbosity: 0 }).promise
  const found = []
  for (let k = 1; k <= pdf.numPages; k++) {
    const one = await pdf.getPage(k)
    const { items } = await one.getTextContent()
    const texts = items.flatMap((item): Text[] =>
      'str' in item && item.str.trim() !== '' ? [{ text: item.str, matrix: item.transform as number[] }] : [],
    )
    const { fnArray, argsArray } = await one.getOperatorList()
    const steps = fnArray.map((op, n) => ({ op, given: argsArray[n] as unknown[] }))
    const fonts = steps.flatMap(({ op, given }) =>
      op === OPS.setFont ? [String(one.commonObjs.get(given[0] as string).name)] : [],
    )
    found.push({ box: one.view, texts, steps, fonts })
  }
  await pdf.destroy()
  return found
}

/** The streams of a PDF, unpacked. */
async function streams(...pages: readonly SheetPage[]): Promise<readonly string[]> {
  const raw = Buffer.from(await pagesPdf(pages, 'Test', font))
  const found: string[] = []
  for (let at = raw.indexOf('stream\n'); at >= 0; at = raw.indexOf('stream\n', at + 7)) {
    try {
      found.push(inflateSync(raw.subarray(at + 7)).toString('latin1'))
    } catch {}
  }
  return found
}

const near = (found: readonly number[] | undefined, wanted: readonly number[]): void => {
  wanted.forEach((value, k) => {
    expect(Math.abs((found?.[k] ?? Number.NaN) - value)).toBeLessThan(0.01)
  })
}

describe('words', () => {
  test.each([0, 90, -90, 180, 30, -37])(
    'turned by %d degrees stand where they should, whichever end is held',
    async (turn) => {
      const text = 'Night heron'
      const width = wordWidth(text, 4, false)
      const anchors = ['start', 'middle', 'end'] as const
      // A page each: PDF.js joins what stands in one line.
      const seen = await read(...anchors.map((anchor) => page(word(text, { anchor, turn, at: [30, 30] }))))
      // A page's y runs down and a PDF's up: a turn clockwise on the one is counter-clockwise on the other.
      const angle = (-turn * Math.PI) / 180
      const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
      for (const [k, share] of [0, 0.5, 1].entries()) {
        const size = 4 * UNIT
        near(seen[k]?.texts[0]?.matrix, [
          size * cos,
          size * sin,
          -size * sin,
          size * cos,
          UNIT * (30 - share * width * cos),
          UNIT * (60 - 30 - share * width * sin),
        ])
      }
    },
  )

  test('a word of several alphabets goes on where the last part ended', async () => {
    const [seen] = await read(page(word('Fox Łąka 蛾', { turn: 90 })))
    const texts = seen?.texts ?? []
    expect(
      texts
        .map(({ text }) => text)
        .join('')
        .replaceAll(' ', ''),
    ).toBe('FoxŁąka?')
    const downs = texts.map(({ matrix }) => matrix[5] ?? 0)
    for (let k = 1; k < downs.length; k++) expect(downs[k]).toBeLessThan((downs[k - 1] ?? 0) - 1)
    for (const { matrix } of texts) near([matrix[4] ?? 9], [30 * UNIT])
    // As far apart as the letters between them are wide.
    near([(downs[0] ?? 0) - (downs[1] ?? 0)], [wordWidth('Fox ', 4, false) * UNIT])
  })

  test('bold words are in the bold face and others are not; no face is carried for nothing', async () => {
    const [plain, bold, both] = await read(
      page(word('owl')),
      page(word('owl', { bold: true })),
      page(word('owl', { bold: true }), word('owl')),
    )
    expect(plain?.fonts.every((name) => name.endsWith('-Regular'))).toBe(true)
    expect(bold?.fonts.every((name) => name.endsWith('-Bold'))).toBe(true)
    expect(both?.fonts.map((name) => name.split('-').at(-1))).toEqual(['Bold', 'Regular'])
    // The second file of the alphabet is named apart from the first: ISO 32000-1:2008, 9.6.4.
    const [mixed] = await read(page(word('aŁ')))
    expect(new Set(mixed?.fonts.map((name) => name.slice(0, 7)))).toEqual(new Set(['HINGEA+', 'HINGEB+']))
  })
})

describe('lines', () => {
  const steps = async (...marks: readonly SheetMark[]) => (await read(page(...marks)))[0]?.steps ?? []

  test('go up where the page goes down, closed or open, in one piece or several', async () => {
    const paths = (
      await steps(
        line('cut', [
          [
            [10, 15],
            [40, 15],
            [40, 55],
          ],
          [
            [0, 0],
            [1, 1],
          ],
        ]),
        line(
          'cut',
          [
            [
              [10, 15],
              [40, 15],
              [40, 55],
            ],
          ],
          true,
        ),
      )
    ).filter(({ op }) => op === OPS.constructPath)
    const [open, closed] = paths.map(({ given }) =>
      Object.values((given[1] as Record<string, number>[])[0] ?? {}),
    )
    // Codes of PDF.js: 0 move, 1 line, 4 close.
    near(
      open,
      [0, 10, 45, 1, 40, 45, 1, 40, 5, 0, 0, 60, 1, 1, 59].map((n, k) => (k % 3 === 0 ? n : n * UNIT)),
    )
    expect(open).toHaveLength(15)
    expect(closed?.at(-1)).toBe(4)
    expect(closed).toHaveLength(10)
  })

  test('have the width and the colour of what they are: grey as grey, red as red', async () => {
    const run = [
      [
        [0, 0],
        [50, 0],
      ],
    ] as const
    const seen = await steps(
      line('cut', run),
      line('dimension', run),
      word('red', { role: 'dimension' }),
      word('quiet', { role: 'guide' }),
    )
    const widths = seen.filter(({ op }) => op === OPS.setLineWidth).map(({ given }) => Number(given[0]))
    near(widths, [0.4 * UNIT, 0.35 * UNIT])
    const strokes = seen.filter(({ op }) => op === OPS.setStrokeRGBColor).map(({ given }) => String(given[0]))
    expect(strokes).toEqual(['#000000', '#e58a96'])
    const fills = seen.filter(({ op }) => op === OPS.setFillRGBColor).map(({ given }) => String(given[0]))
    expect(fills).toEqual(['#c8102e', '#4e5470'])
  })

  test('what is black asks for black ink alone, words too', async () => {
    const run = [
      [
        [0, 0],
        [50, 0],
      ],
    ] as const
    // G and g set grey, RG and rg red, green and blue, of strokes and fills (ISO 32000-1:2008, table 74).
    const black = (await streams(page(line('cut', run), word('owl')))).find((text) => text.includes(' Tm'))
    expect(black).toMatch(/^0 G$/m)
    expect(black).toMatch(/^0 g$/m)
    expect(black).not.toMatch(/ (RG|rg)$/m)
    // Round joins: 1 j.
    expect(black).toMatch(/^1 j$/m)
    const red = (await streams(page(line('dimension', run), word('owl', { role: 'dimension' })))).find(
      (text) => text.includes(' Tm'),
    )
    expect(red).toMatch(/ RG$/m)
    expect(red).toMatch(/ rg$/m)
  })

  test('only faces that give a letter are carried; the first one stands in for letters that none has', async () => {
    const fonts = async (...marks: readonly SheetMark[]) =>
      new Set((await streams(page(...marks))).flatMap((text) => text.match(/HINGE[A-Z]\+\w+-\w+/g) ?? []))
    expect([...(await fonts(word('owl')))].filter((name) => name.startsWith('HINGEB'))).toEqual([])
    expect([...(await fonts(word('Łu')))].some((name) => name.startsWith('HINGEB'))).toBe(true)
    const [strange] = await read(page(word('蛾', { bold: true })))
    expect(strange?.texts.map(({ text }) => text)).toEqual(['?'])
    expect(strange?.fonts).toEqual(['HINGEA+AtkinsonHyperlegibleNext-Bold'])
  })

  test('a page is as large as its box, and each has its own', async () => {
    const small = { ...page(), box: [0, 0, 25.4, 50.8] } as SheetPage
    const [one, two] = await read(page(), small)
    near(one?.box, [0, 0, 100 * UNIT, 60 * UNIT])
    near(two?.box, [0, 0, 72, 144])
  })
})

describe('the same in SVG', () => {
  test('folds carry their own dashes, solid lines none; a file without a font asks for it by name', () => {
    const run = [
      [
        [0, 0],
        [50, 0],
      ],
    ] as const
    const text = pageSvg(
      page(line('cut', run), line('valley', run), word('A < B', { turn: 90, role: 'guide' })),
    )
    const [cut, valley] = text.split('\n').filter((one) => one.startsWith('<path'))
    expect(cut).not.toContain('dasharray')
    expect(valley).toMatch(/stroke-dasharray:[\d.]+ [\d.]+/)
    expect(text).toContain('rotate(90 30 20)')
    expect(text).toContain('A &lt; B')
    expect(text).not.toContain('@font-face')
    expect(text).toContain('path.m-cut { stroke: #000000; stroke-width: 0.4; stroke-dasharray: none;')
    expect(text).toContain('text.m-guide { fill: #4e5470; }')
  })

  test('a file with the font carries both weights of both alphabets, byte for byte', () => {
    const text = pageSvg(page(word('owl')), font)
    const faces = [
      ...text.matchAll(
        /font-family: '([^']*)'; font-weight: (\d+); src: url\(data:font\/woff;base64,([^)]*)\)/g,
      ),
    ]
    expect(faces.map(([, name, weight]) => `${name} ${weight}`)).toEqual([
      'Atkinson Hyperlegible Next 0 400',
      'Atkinson Hyperlegible Next 1 400',
      'Atkinson Hyperlegible Next 0 700',
      'Atkinson Hyperlegible Next 1 700',
    ])
    const carried = faces.map(([, , , data = '']) => Buffer.from(data, 'base64'))
    for (const [k, file] of [...font.regular, ...font.bold].entries())
      expect(Buffer.compare(carried[k] ?? Buffer.alloc(0), Buffer.from(file))).toBe(0)
  })
})
