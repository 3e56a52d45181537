// A class pack, read back with PDF.js and by its marks.
import { beforeAll, describe, expect, test, vi } from 'vitest'
import type { Class } from '../../src/class/class.ts'
import { classOf, pageNumbers } from '../../src/class/class.ts'
import type { Pack } from '../../src/class/pack.ts'
import { packOf, packPdf, shoppingOf } from '../../src/class/pack.ts'
import { jointsOf, pieces } from '../../src/paper/index.ts'
import { fontOnDisk } from '../../src/sheet/files/font-on-disk.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { corners, grown, overlap, runsThrough } from '../../src/sheet/marks/clip.ts'
import { onPage } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { isIn, stretchesOf } from '../../src/sheet/marks/stretches.ts'
import type { ReadPage, ReadPdf } from '../sheet/read-pdf.ts'
import { readPdf } from '../sheet/read-pdf.ts'
import { dummy, orderFor } from './shared.ts'

vi.setConfig({ testTimeout: 60_000, hookTimeout: 60_000 })

const font = await fontOnDisk()

const textOf = ({ words }: ReadPage): string => words.map(({ text }) => text).join(' ')

const textOn = ({ marks }: SheetPage): string =>
  marks.map((mark) => (mark.mark === 'word' ? mark.text : '')).join(' ')

const sectionOf = ({ sections }: Pack, name: string): readonly SheetPage[] =>
  sections.find((one) => one.name === name)?.pages ?? []

/** Marks of a page that reach over the paper's edge. */
const outside = ({ box: [, , width, height], marks }: SheetPage): string[] =>
  marks.flatMap((mark) => {
    const points = mark.mark === 'path' ? mark.runs.flat() : [mark.at]
    return points.some(([x, y]) => x < -0.01 || y < -0.01 || x > width + 0.01 || y > height + 0.01)
      ? [mark.of ?? (mark.mark === 'word' ? mark.text : mark.role)]
      : []
  })

describe('a pack of the beak for thirty pupils in ten groups', () => {
  let made: Class
  let pack: Pack
  let read: ReadPdf
  beforeAll(async () => {
    made = classOf(orderFor('one-slit-two-v-folds', { differs: 'beak.cut', certificate: true }))
    const told: number[] = []
    pack = await packOf(made, (done) => told.push(done))
    // A line for a progress bar with each sheet.
    expect(told).toEqual(Array.from({ length: 30 }, (_, k) => k + 1))
    read = await readPdf(await packPdf(made, pack, font))
  })

  test('has a sheet and a worksheet for each of them, and says which pages go on card', () => {
    const count = (name: string): number => sectionOf(pack, name).length
    expect([count('sheets'), count('worksheets'), count('key')]).toEqual([30, 30, 1])
    expect(read.pages).toHaveLength(pack.sections.reduce((sum, { pages }) => sum + pages.length, 0))
    const [from, to] = pageNumbers(pack.sections, 'sheets') ?? []
    expect(textOf(read.pages[0] as ReadPage)).toContain(`Pages ${from} to ${to} are for card`)
    expect(read.title).toBe('Heron’s beak: class pack for 30')
    // ISO 32000-1, 12.2: what is at true size is not scaled by a print dialogue.
    expect(read.printScaling).toBe('None')
  })

  test('shows the card in its colours, once in the file for all its pages, and says what it shows', () => {
    const pictures = sectionOf(pack, 'worksheets').flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.mark === 'path' && mark.picture ? [mark.picture] : [])),
    )
    expect(pictures).toHaveLength(30)
    expect(new Set(pictures).size).toBe(1)
    const [from = 0] = pageNumbers(pack.sections, 'worksheets') ?? []
    const { parts, apart } = read.pages[from - 1] as ReadPage
    // ISO 32000-1:2008, 14.8.4 and 14.9.3, from memory: the figure and what is said in its place.
    expect(parts.filter(({ as }) => as === 'Figure')[0]?.alt).toBe(pictures[0]?.says)
    expect(parts.find(({ as }) => as === 'H1')?.text).toBe('Worksheet A1')
    expect(parts.filter(({ as }) => as === 'H2').length).toBeGreaterThan(3)
    // The foot of the page is not read out.
    expect(apart).toEqual(['Heron’s beak · Worksheet A1'])
    expect(read).toMatchObject({ isMarked: true, language: 'en', showsTitle: true })
  })

  test('each sheet has its own code, one line for a name, check lines and a slit as long as it says', () => {
    const [from = 0] = pageNumbers(pack.sections, 'sheets') ?? []
    made.sheets.forEach(({ code, size }, k) => {
      const page = read.pages[from - 1 + k] as ReadPage
      const text = textOf(page)
      expect(text).toContain(`Heron’s beak ${code}`)
      expect(text.match(/Made by/g)).toHaveLength(1)
      expect(sectionOf(pack, 'sheets')[k]?.marks.filter(({ of }) => of === 'maker')).toHaveLength(1)
      const lengths = page.lines.flatMap(({ runs, dash }) =>
        dash.length > 0
          ? []
          : runs.map((run) =>
              Math.hypot(
                (run.at(-1)?.[0] ?? 0) - (run[0]?.[0] ?? 0),
                (run.at(-1)?.[1] ?? 0) - (run[0]?.[1] ?? 0),
              ),
            ),
      )
      // A unit is 1/72 inch; the slit goes into both pages.
      const slit = ((2 * (size ?? 0)) / 25.4) * 72
      expect(
        lengths.some((long) => Math.abs(long - slit) < 0.001),
        code,
      ).toBe(true)
      expect(
        lengths.some((long) => Math.abs(long - 283.464567) < 0.001),
        'check line',
      ).toBe(true)
    })
  })

  test('the paper of a sheet holds the design it is for, and no two are alike', () => {
    const slits = made.sheets.map(({ design }) => JSON.stringify(pieces(design)[0]?.lines))
    expect(new Set(slits).size).toBe(30)
  })

  test('each worksheet has its code, its size, one line for a name, and gives the reading away nowhere', () => {
    const pages = sectionOf(pack, 'worksheets')
    made.sheets.forEach(({ code, size, reads }, k) => {
      const page = pages[k] as SheetPage
      const text = textOn(page)
      expect(text).toContain(`Worksheet ${code}`)
      expect(text).toContain(`${size} mm`)
      expect(page.marks.filter(({ of }) => of === 'name')).toHaveLength(1)
      expect(text).not.toContain(`${reads.toFixed(1)} mm`)
    })
  })

  // The formula of the cut V-fold: see spread.test.ts. A slit of 48 mm is as deep as the ridge is long: the wedge
  // is 45 degrees, and at an opening of 90 the tip stands at two thirds of the ridge, 32 mm.
  test('the answer key gives what the formula gives', () => {
    const key = textOn(sectionOf(pack, 'key')[0] as SheetPage)
    for (const { size } of made.sheets) {
      const f = 2 * Math.atan(((size ?? 0) / 48) * Math.SQRT1_2)
      expect(key).toContain(`${size} mm`)
      expect(key).toContain(`${(48 * Math.sin(f) * Math.SQRT1_2).toFixed(1)} mm`)
    }
    const right = made.sheets.find(({ size }) => size === 48)
    expect(right?.reads).toBeCloseTo(32, 6)
    expect(key).toContain('45.0°')
  })

  test('the teacher’s pages have the whole lesson, in minutes that add up', () => {
    const text = sectionOf(pack, 'teacher').map(textOn).join(' ')
    for (const label of [
      'The lesson',
      'Aims',
      'Words',
      'Questions',
      'When it goes wrong',
      'Take care',
      'Both hands',
      'On the tables',
      'Curriculum',
    ])
      expect(text).toContain(label)
    expect(text).toContain('39 to 45 min')
    expect(text).toContain('Your school’s own rules come first')
    expect(text).toContain('Common Core State Standards for Mathematics (US): 4.MD.C.6')
    expect(text).toContain('Next Generation Science Standards (US), engineering design: 3-5-ETS1-1')
    expect(text).toContain('Check your own curriculum')
    expect(text).toContain('30 sheets of card, A4, 200 g/m² (in the US 110 lb index)')
  })

  test('there is a recall slip and a certificate with a line for the name for each pupil', () => {
    for (const name of ['recall', 'certificates']) {
      const lines = sectionOf(pack, name).flatMap(({ marks }) => marks.filter(({ of }) => of === 'name'))
      expect(lines).toHaveLength(30)
    }
  })

  test('no mark lies beyond the paper', () => {
    expect(pack.sections.flatMap(({ pages }) => pages.flatMap(outside))).toEqual([])
  })

  test('what must be on the tables is counted before all of it is drawn', async () => {
    expect(await shoppingOf(made)).toEqual(pack.shopping)
    const paper = pack.sections.reduce(
      (sum, { name, pages }) => sum + (name === 'sheets' ? 0 : pages.length),
      0,
    )
    expect(pack.shopping).toMatchObject({ cardSheets: 30, paperSheets: paper })
  })
})

test('in large print nothing but a sheet’s own marks is smaller than 14 points, and the steps are set apart', async () => {
  const made = classOf(
    orderFor('one-slit-two-v-folds', { large: true, pupils: 3, groups: 1, differs: 'beak.cut' }),
  )
  const pack = await packOf(made)
  expect(sectionOf(pack, 'making').length).toBeGreaterThanOrEqual(3)
  const words = pack.sections
    .filter(({ name }) => name === 'worksheets' || name === 'making' || name === 'recall')
    .flatMap(({ pages }) => pages)
    .flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.mark === 'word' && mark.role !== 'guide' ? [mark] : [])),
    )
  // A point is 25.4 / 72 mm.
  const small = words.filter(({ size, text }) => size < (14 * 25.4) / 72 && text !== '?')
  expect(small).toEqual([])
  expect(pack.sections.flatMap(({ pages }) => pages.flatMap(outside))).toEqual([])
})

test('a card without slits has no wedge in its key, and each kind is worked out by its own formula', async () => {
  const keyOf = async (slug: string, differs: string): Promise<string> =>
    textOn(
      sectionOf(
        await packOf(classOf(orderFor(slug, { pupils: 3, groups: 1, differs }))),
        'key',
      )[0] as SheetPage,
    )
  const layer = await keyOf('layers', 'body.depth')
  expect(layer).not.toContain('Wedge')
  expect(layer).toContain('Rise = depth × sin (opening)')
  expect(await keyOf('it-starts-at-the-gutter', 'point.across')).toContain('Gap = 2 ×')
  expect(await keyOf('one-slit-two-v-folds', 'beak.wedge')).not.toContain('Wedge')
})

test('sheets that are alike are drawn once and differ by their codes', async () => {
  const made = classOf(orderFor('layers', { pupils: 4, groups: 2 }))
  const pages = sectionOf(await packOf(made), 'sheets')
  expect(pages).toHaveLength(4)
  for (const [k, code] of ['A1', 'A2', 'B1', 'B2'].entries())
    expect(textOn(pages[k] as SheetPage)).toContain(`Lantern ${code}`)
  const without = pages.map(({ marks }) => JSON.stringify(marks).replace(/Lantern [AB][12]/g, ''))
  expect(new Set(without).size).toBe(1)
})

test('on a bare card each sheet has a cross on either page, as far from the gutter as it says', async () => {
  const made = classOf(orderFor('it-starts-at-the-gutter', { pupils: 4, groups: 2, differs: 'point.across' }))
  const pages = sectionOf(await packOf(made), 'sheets')
  made.sheets.forEach(({ size }, k) => {
    const crosses = (pages[k]?.marks ?? []).flatMap((mark) =>
      mark.mark === 'path' && mark.of === 'point' ? [mark] : [],
    )
    expect(crosses).toHaveLength(2)
    const [left = Number.NaN, right = Number.NaN] = crosses.map(
      ({ runs }) => ((runs[0]?.[0]?.[0] ?? 0) + (runs[0]?.[1]?.[0] ?? 0)) / 2,
    )
    expect(right - left).toBeCloseTo(2 * (size ?? 0), 6)
  })
})

test('the whole garden has its code on every page with pieces, on US Letter as well', async () => {
  const order = {
    ...orderFor('layers', { pupils: 2, groups: 1, paper: 'tabloid' }),
    design: dummy('garden'),
    lead: 'lantern',
  }
  const made = classOf(order)
  const pages = sectionOf(await packOf(made), 'sheets')
  expect(pages.length % 2).toBe(0)
  const half = pages.length / 2
  pages.forEach((page, k) => {
    if (page.placed.length > 0) expect(textOn(page)).toMatch(k < half ? /\bA1\b/ : /\bA2\b/)
  })
})

describe('the code of a sheet without a title', () => {
  const orders = (['a4', 'letter'] as const).flatMap((paper) =>
    (['class-card-large', 'garden'] as const).flatMap((name) =>
      [true, false].map((large) => ({ name, paper, large })),
    ),
  )
  // Common practice, no source: what is printed over something else cannot be read.
  test.each(orders)(
    'stands on free paper: $name, $paper, large print $large',
    async ({ name, paper, large }) => {
      const design = dummy(name)
      const order = { ...orderFor('layers', { pupils: 2, groups: 1, paper, large }), design }
      const pages = sectionOf(await packOf(classOf(order)), 'sheets')
      const coded = pages.flatMap((page) =>
        page.marks.flatMap((mark) => (mark.mark === 'word' && mark.of === 'code' ? [{ page, mark }] : [])),
      )
      expect(coded.map(({ mark }) => mark.text)).toEqual(['A1', 'A2'])
      for (const { page, mark } of coded) {
        const box = grown(extent(mark), 0.5)
        const others = page.marks.filter((one) => one !== mark)
        expect(
          others.flatMap((one) => (one.mark === 'word' && overlap(extent(one), box) ? [one.text] : [])),
        ).toEqual([])
        const lines = others.flatMap((one) => (one.mark === 'path' ? stretchesOf(one) : []))
        expect(runsThrough(lines)(box)).toBe(false)
        const card = pieces(design).find(({ id }) => id === 'card')?.outline ?? []
        const place = page.placed[0]?.place
        // It stays on the card once its rim is trimmed off.
        const rim = place ? card.map((point) => onPage(place, point)) : []
        expect(corners(box).every((corner) => isIn(corner, rim))).toBe(true)
      }
    },
  )
})

test('sheets of several pages that are alike have their own code at each number of a page', async () => {
  const order = { ...orderFor('layers', { pupils: 2, groups: 1 }), design: dummy('garden') }
  const pages = sectionOf(await packOf(classOf(order)), 'sheets')
  const half = pages.length / 2
  expect(half).toBeGreaterThan(1)
  pages.forEach((page, k) => {
    expect(textOn(page)).toContain(
      `Garden at night ${k < half ? 'A1' : 'A2'}, page ${(k % half) + 1} of ${half}`,
    )
  })
})

// Common practice, no source: what is said of a page must be true of that page, and card is not spent on a head alone.
test.each(['class-card-large', 'garden', 'night-garden', 'card'])(
  'in large print each sheet of the %s has pieces, the check lines, and what is said of its own pieces alone',
  async (name) => {
    for (const paper of ['a4', 'letter'] as const) {
      const order = {
        ...orderFor('layers', { pupils: 1, groups: 1, paper, large: true }),
        design: dummy(name),
      }
      const pages = sectionOf(await packOf(classOf(order)), 'sheets')
      const texts = pages.map(textOn)
      expect(texts.some((text) => text.includes('100 mm'))).toBe(true)
      pages.forEach(({ placed }, k) => {
        const has = (text: string): boolean => texts[k]?.includes(text) ?? false
        expect(placed).not.toEqual([])
        expect(texts[k]?.match(/Made by/g) ?? []).toHaveLength(has('This side is') ? 1 : 0)
        expect(has('This side is the inside') && placed[0]?.piece !== 'card').toBe(false)
        expect(has('This side is the front of each') && placed[0]?.piece === 'card').toBe(false)
      })
    }
  },
)

describe('in large print the pages of the making say what the sheet leaves out', () => {
  const makingOf = async (name: string, paper: 'a4' | 'letter'): Promise<[string, readonly SheetPage[]]> => {
    const order = { ...orderFor('layers', { pupils: 1, groups: 1, paper, large: true }), design: dummy(name) }
    const pack = await packOf(classOf(order))
    return [sectionOf(pack, 'making').map(textOn).join(' '), sectionOf(pack, 'sheets')]
  }

  // ISO 216: A4 is 210 mm high lying; ANSI Letter, 279.4 mm wide. The card is 270 × 200 mm.
  test('what to trim off a card that fills its paper', async () => {
    const [a4] = await makingOf('class-card-large', 'a4')
    expect(a4).toContain(`Trim ${(210 - 200) / 2} mm off the upper and lower edges of the card’s sheet.`)
    expect(a4).not.toContain('left and right edges')
    const [letter] = await makingOf('class-card-large', 'letter')
    expect(letter).toContain(`Trim ${((279.4 - 270) / 2).toFixed(1)} mm off the left and right edges`)
    const [small] = await makingOf('class-card', 'a4')
    expect(small).not.toContain('edges of the card’s sheet')
  })

  // Common practice, no source: a key names every sign that stands on the sheet, and no other.
  test('the key of the lines, the letters of each step and where each letter goes', async () => {
    const [text] = await makingOf('class-card-large', 'a4')
    for (const said of [
      'Lines',
      'Cut',
      'Valley',
      'Mountain',
      'Glue',
      'Place',
      'Letters. A on A.',
      'Letters. B on B.',
    ])
      expect(text).toContain(said)
    expect(text).not.toContain('Grain')
    expect(text).toMatch(/Joints A B moon glued to card/)
    const [beak] = await makingOf('beak', 'a4')
    expect(beak).toContain('Lines')
    expect(beak).not.toContain('Joints')
    expect(beak).not.toContain('Letters.')
  })

  test.each(['class-card', 'class-card-large', 'beak'])('of care, where the %s is marked', async (name) => {
    const [text, sheets] = await makingOf(name, 'a4')
    const isMarked = sheets.some(({ marks }) => marks.some(({ role }) => role === 'care'))
    expect(text.includes('cut or glue this one with care')).toBe(isMarked)
  })

  test('each letter of the whole garden, and no caution twice', async () => {
    const [text, sheets] = await makingOf('garden', 'a4')
    const listed = text.slice(text.lastIndexOf('Joints'))
    const joints = new Set(jointsOf(dummy('garden')).map(({ of }) => of))
    const letters = sheets.flatMap(({ marks }) =>
      marks.flatMap((mark) =>
        mark.mark === 'word' && mark.bold && joints.has(mark.of ?? '') ? [mark.text] : [],
      ),
    )
    expect(letters.length).toBeGreaterThan(20)
    expect([...new Set(letters)].filter((one) => !new RegExp(`\\b${one}\\b`).test(listed))).toEqual([])
    expect(text.match(/A craft knife is a job for an adult/g)).toHaveLength(1)
  })
})

// No outside source: what a page asks must be there to be answered.
test.each([
  ['alike', null],
  ['of sizes that differ', 'body.depth'],
] as const)('for sheets that are %s the pages ask about what the class has', async (_, differs) => {
  const pack = await packOf(classOf(orderFor('layers', { pupils: 4, groups: 2, differs })))
  const has = (name: string, text: string): boolean =>
    sectionOf(pack, name).map(textOn).join(' ').includes(text)
  const isOfSizes = differs !== null
  expect(has('worksheets', 'Where would the cross be')).toBe(isOfSizes)
  expect(has('worksheets', 'How far apart are they')).toBe(!isOfSizes)
  for (const text of ['Which one thing differs', 'Groups have small and large sizes', 'Show the class curve'])
    expect(has('teacher', text)).toBe(isOfSizes)
  for (const text of ['Which things are alike', 'Write all readings on the board'])
    expect(has('teacher', text)).toBe(!isOfSizes)
})
