// How full a print is: areas worked out by hand, or summed by the shoelace formula over what lies on each sheet.
import { expect, test } from 'vitest'
import type { Design, Flat } from '../../src/paper/index.ts'
import { parseDesign, pieces } from '../../src/paper/index.ts'
import type { SheetOptions } from '../../src/sheet/index.ts'
import { fitOn, layOut, paperOf, paperUse, useSays } from '../../src/sheet/index.ts'
import { areaOf } from '../paper/shared/areas.ts'
import { card, dummy, moth } from './designs.ts'

const A4 = 210 * 297

const outlines = (design: Design): ReadonlyMap<string, readonly Flat[]> =>
  new Map(pieces(design).map(({ id, outline }) => [id, outline]))

const used = (design: Design, options: SheetOptions) => paperUse(design, layOut(design, options), options)

test('a bare card of 200 by 120 mm takes one sheet and fills so much of it, on whatever paper', () => {
  const small = card(100, 120)
  expect(used(small, { paper: 'a4' })).toEqual({ sheets: 1, full: expect.closeTo((200 * 120) / A4, 9) })
  expect(used(small, { paper: 'a3' }).full).toBeCloseTo((200 * 120) / (297 * 420), 9)
  const { sheets, full } = used(small, { paper: 'a4', copies: 5 })
  expect(sheets * full).toBeCloseTo((5 * 200 * 120) / A4, 9)
})

test.each([
  ['a moth', moth(), 1],
  ['the owl', dummy('owl'), 1],
  ['three herons', dummy('heron'), 3],
] as const)('%s: what lies on the sheets, piece by piece, is what fills them', (_, design, copies) => {
  const pages = layOut(design, { paper: 'a4', copies })
  const areas = outlines(design)
  const on = pages.map(({ placed }) =>
    placed.reduce((sum, { piece }) => sum + areaOf(areas.get(piece) as readonly Flat[]), 0),
  )
  const { sheets, full } = paperUse(design, pages, { copies })
  expect(sheets).toBe(pages.length)
  expect(full).toBeCloseTo(on.reduce((sum, area) => sum + area, 0) / (pages.length * A4), 9)
})

test('a piece on several sheets counts once, as often as it is copied', () => {
  const large = card(200, 200)
  for (const copies of [1, 2]) {
    const { sheets, full } = used(large, { paper: 'a4', tiled: true, copies })
    expect(sheets).toBeGreaterThan(copies)
    expect(sheets * full).toBeCloseTo((copies * 400 * 200) / A4, 9)
  }
})

test('a cover that is to be cut from other card does not count', () => {
  const paper = paperOf('a4')
  const design = parseDesign({
    hingebook: 1,
    title: 'Owl',
    card: { width: 147, height: 205, cover: true },
    mechanisms: [],
  })
  expect(fitOn(design, paper).leavesCover).toBe(true)
  // What is left of the sheet may hold words; the cover is none of it.
  expect(used(design, { paper }).full * used(design, { paper }).sheets).toBeCloseTo((294 * 205) / A4, 9)
})

test('it is said in whole hundredths, of one sheet and of several', () => {
  expect(useSays({ sheets: 1, full: 0.384 })).toBe('1 sheet, 38\u00a0% full')
  expect(useSays({ sheets: 2, full: 0.585 })).toBe('2 sheets, 59\u00a0% full')
})
