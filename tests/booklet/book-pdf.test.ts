// The booklet on paper: laid out by its marks, and read back with PDF.js, which shares no code with our writer.
import { beforeAll, describe, expect, test, vi } from 'vitest'
import type { BookOptions, PerPage } from '../../src/booklet/book-pages.ts'
import { bookPages, PER_PAGE } from '../../src/booklet/book-pages.ts'
import { bookPdf } from '../../src/booklet/book-pdf.ts'
import { figureOf, orderOf, wordsOf } from '../../src/booklet/index.ts'
import type { Drawing } from '../../src/drawing/pen/marks.ts'
import type { Design } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { card, dummies, dummy } from '../sheet/designs.ts'
import type { ReadPdf } from '../sheet/read-pdf.ts'
import { readPdf } from '../sheet/read-pdf.ts'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

const font = await fontOnDisk()

/** Where figures do not matter: a box with something at its middle. */
const blank: typeof figureOf = (_design, { does }, { width, height }): Drawing => ({
  box: [0, 0, width, height],
  unit: 'px',
  marks: [{ mark: 'dot', at: [width / 2, height / 2], radius: height / 2, role: 'guide' }],
  says: `${does}.`,
})

const titlesOn = ({ marks }: SheetPage): readonly string[] => {
  const titles = new Map<unknown, string>()
  for (const mark of marks)
    if (mark.mark === 'word' && mark.told?.as === 'H2')
      titles.set(mark.told, [titles.get(mark.told), mark.text].filter(Boolean).join(' '))
  return [...titles.values()]
}

const picturesOn = ({ marks }: SheetPage) => marks.filter((mark) => mark.mark === 'path' && mark.picture)

/** Holds the pages of a design to what a reader needs; gives their titles. */
function expectReadable(design: Design, options: BookOptions): readonly string[] {
  const pages = bookPages(design, options, blank)
  for (const page of pages) {
    const [, , width, height] = page.box
    const boxes = page.marks.map(extent)
    // What printers leave free: 4 to 10 mm at most. Common practice, no source.
    const beyond = boxes.filter(([l, t, r, b]) => !(l > 10 && t > 10 && r < width - 10 && b < height - 10))
    expect(beyond).toEqual([])
    const overlaps = boxes.flatMap(([left, top, right, bottom], k) =>
      boxes
        .slice(k + 1)
        .filter(([l, t, r, b]) => l < right - 0.01 && r > left + 0.01 && t < bottom - 0.01 && b > top + 0.01),
    )
    expect(overlaps).toEqual([])
    const titles = titlesOn(page)
    expect(titles.length).toBeGreaterThan(0)
    expect(titles.length).toBeLessThanOrEqual(options.perPage)
    expect(picturesOn(page)).toHaveLength(titles.length)
  }
  return pages.flatMap(titlesOn)
}

const told = (text: string): string => text.replaceAll('\u00a0', ' ')

describe('the pages of a booklet', () => {
  test.each(dummies)('of %s hold every step once, in order, and nothing overflows', (_, design) => {
    const titles = orderOf(design).map((work, k) => told(`${k + 1}. ${wordsOf(design, work).title}`))
    expect(expectReadable(design, { paper: 'a4', perPage: 2 })).toEqual(titles)
    expect(expectReadable(design, { paper: 'letter', perPage: 4 })).toEqual(titles)
    expect(expectReadable(design, { paper: 'letter', perPage: 6 })).toEqual(titles)
  })

  test('are as few as the steps need, so many to a page', () => {
    const heron = dummy('heron')
    const steps = orderOf(heron).length
    for (const perPage of PER_PAGE)
      expect(bookPages(heron, { paper: 'a4', perPage }, blank)).toHaveLength(Math.ceil(steps / perPage))
  })

  test('are more where a step is told in many words, which still all stand there', () => {
    const mechanisms = Array.from({ length: 90 }, (_, k) => ({
      ...{ id: `a-part-with-quite-a-long-name-${k}`, kind: 'cut-layer', on: 'gutter' },
      ...{ start: 1 + 3 * k, end: 3 + 3 * k, left: 20, right: 20 },
    }))
    const design = parseDesign({ hingebook: 1, title: 'Many', card: { width: 105, height: 290 }, mechanisms })
    expectReadable(design, { paper: 'a4', perPage: 6 })
    const text = bookPages(design, { paper: 'a4', perPage: 6 }, blank)
      .flatMap(({ marks }) => marks.map((mark) => (mark.mark === 'word' ? mark.text : '')))
      .join(' ')
    expect(text).toContain('long name 89')
  })

  test('the same figure as on the screen stands on the page', () => {
    const design = dummy('heron-beak')
    const [first] = bookPages(design, { paper: 'a4', perPage: 2 })
    const [work] = orderOf(design)
    if (!first || !work) throw new Error('a booklet has a first page')
    const [frame] = picturesOn(first)
    const picture = frame?.mark === 'path' ? frame.picture : undefined
    const [, , width, height] = picture?.box ?? [0, 0, 0, 0]
    const same = figureOf(design, work, { width: 340, height: 323 })
    expect(width).toBeGreaterThanOrEqual(340)
    expect(height).toBeLessThanOrEqual(323)
    expect(picture?.marks.filter(({ mark }) => mark === 'path')).toEqual(
      same.marks.filter(({ mark }) => mark === 'path'),
    )
  })
})

describe('figures on paper', () => {
  const picturesOf = (perPage: PerPage) =>
    bookPages(dummy('pond'), { paper: 'letter', perPage }).flatMap((page) =>
      picturesOn(page).flatMap((frame) =>
        frame.mark === 'path' && frame.picture ? [{ picture: frame.picture, runs: frame.runs }] : [],
      ),
    )

  test.each(PER_PAGE)('%i to a page have their shadows whole', (perPage) => {
    let shadows = 0
    for (const { picture } of picturesOf(perPage)) {
      const [left, , width] = picture.box
      for (const mark of picture.marks) {
        if (mark.mark !== 'path' || mark.role !== 'shadow') continue
        for (const [x] of mark.runs.flat()) {
          shadows += 1
          expect(x).toBeGreaterThanOrEqual(left)
          expect(x).toBeLessThanOrEqual(left + width)
        }
      }
    }
    expect(shadows).toBeGreaterThan(100)
  })

  test.each(PER_PAGE)(
    '%i to a page have words hardly smaller than the text, and so has the foot',
    (perPage) => {
      // From far away as from near: type on one page is of one order of size. Common practice, no source.
      const pages = bookPages(dummy('pond'), { paper: 'letter', perPage }, blank)
      const words = pages.flatMap(({ marks }) =>
        marks.flatMap((mark) => (mark.mark === 'word' ? [mark] : [])),
      )
      const body = words.find(({ text }) => text.startsWith('Hold the card'))?.size ?? Number.NaN
      const feet = words.filter(({ told }) => told?.as === 'Artifact')
      expect(feet.length).toBeGreaterThanOrEqual(pages.length)
      for (const { size } of feet) expect(size / body).toBeGreaterThan(0.75)
      const inFigures = picturesOf(perPage).flatMap(({ picture, runs }) => {
        const [[left] = [0, 0], [right] = [0, 0]] = runs[0] ?? []
        const printed = (right - left) / picture.box[2]
        return picture.marks.flatMap((mark) => (mark.mark === 'word' ? [mark.size * printed] : []))
      })
      expect(inFigures.length).toBeGreaterThan(0)
      for (const size of inFigures) expect(size / body).toBeGreaterThan(0.75)
    },
  )
})

describe('the booklet as a PDF', () => {
  const moth = dummy('moth')
  const steps = orderOf(moth).map((work) => wordsOf(moth, work))
  let read: ReadPdf
  beforeAll(async () => {
    read = await readPdf((await bookPdf(moth, { paper: 'a4', perPage: 6 }, font)).bytes)
  })

  test('has pages of ISO 216 A4, 210 by 297 mm, or letter of ANSI Y14.1, 8.5 by 11 in', async () => {
    // ISO 32000-1:2008, 8.3.2.3: a unit is 1/72 inch.
    for (const { box } of read.pages) {
      expect(box[2]).toBeCloseTo((210 / 25.4) * 72, 3)
      expect(box[3]).toBeCloseTo((297 / 25.4) * 72, 3)
    }
    const { pages } = await readPdf(
      (await bookPdf(card(105, 148), { paper: 'letter', perPage: 4 }, font)).bytes,
    )
    expect(pages.map(({ box }) => box)).toEqual([[0, 0, 612, 792]])
  })

  test('is read out in order: a title, then of each step its heading, its figure and its words', () => {
    // ISO 32000-1:2008, 14.8.4: H1, H2 and P among the block-level elements, Figure among illustrations (from memory).
    const parts = read.pages.flatMap((page) => page.parts)
    expect(parts[0]).toEqual({ as: 'H1', text: 'Moth, step by step' })
    expect(parts.filter(({ as }) => as === 'H1')).toHaveLength(1)
    const headings = parts.flatMap(({ as, text }, k) => (as === 'H2' ? [{ text, k }] : []))
    expect(headings.map(({ text }) => text)).toEqual(steps.map(({ title }, k) => told(`${k + 1}. ${title}`)))
    headings.forEach(({ k }, n) => {
      const own = parts.slice(k + 1, headings[n + 1]?.k)
      expect(own[0]?.as).toBe('Figure')
      expect(own[0]?.alt).toMatch(/\S\.$/)
      const { text, letters, check, tools, caution } = steps[n] as (typeof steps)[number]
      expect(own.slice(1)).toEqual(
        [
          ...text,
          ...(letters === undefined ? [] : [`Letters. ${letters}`]),
          ...(check === undefined ? [] : [`Check. ${check}`]),
          `You need: ${tools}.`,
          ...(caution === undefined ? [] : [`Take care. ${caution}`]),
        ].map((one) => ({ as: 'P', text: told(one) })),
      )
    })
  })

  test('says of the joints which letter goes on which', () => {
    const letters = steps.flatMap((one) => one.letters ?? [])
    expect(letters[0]).toBe('A on A.')
    expect(letters[1]).toBe('B on B.')
  })

  test('keeps the foot of its pages out of what is read', () => {
    read.pages.forEach(({ apart }, k) => {
      expect(apart).toEqual([`Moth, step by step, ${k + 1} of ${read.pages.length}`])
    })
  })

  test('says its language and title, and that it is marked', () => {
    // ISO 32000-1:2008, 14.7.1 (MarkInfo), 14.9.2 (Lang), 12.2 (DisplayDocTitle); from memory.
    expect(read).toMatchObject({
      ...{ isMarked: true, language: 'en', showsTitle: true },
      title: 'Moth: step by step',
    })
  })

  test('is the same every time', async () => {
    const [one, two] = await Promise.all(
      [1, 2].map(
        async () => (await bookPdf(dummy('beak'), { paper: 'a4', perPage: 4 satisfies PerPage }, font)).bytes,
      ),
    )
    expect(Buffer.compare(Buffer.from(one ?? []), Buffer.from(two ?? []))).toBe(0)
  })
})
