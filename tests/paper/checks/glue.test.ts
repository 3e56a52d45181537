import { expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { check, parseDesign } from '../../../src/paper/index.ts'
import { gluedPond } from '../shared/designs.ts'

const card = { width: 105, height: 148 }

const design = (mechanisms: readonly object[]): Design =>
  parseDesign({ hingebook: 1, title: 'Moon', card, mechanisms })

const verdict = (mechanisms: readonly object[], name: string) =>
  check(design(mechanisms), { repairs: false }).filter((one) => one.name === name)

const moth = {
  id: 'moth',
  kind: 'glued-v-fold',
  on: 'gutter',
  apex: 60,
  toward: 1,
  base: 50,
  facet: 60,
  foot: 50,
  ridge: 50,
  tab: 8,
}

const slit = { id: 'slit', kind: 'cut-v-fold', on: 'gutter', apex: 70, run: 30, cut: 30 }

const square = (a: number, l: number, size: number) => [
  [a, l],
  [a + size, l],
  [a + size, l + size],
  [a, l + size],
]

const moon = (more: object) => ({
  id: 'moon',
  kind: 'rider',
  on: 'page/right',
  shape: square(20, 20, 30),
  glue: square(30, 30, 10),
  ...more,
})

test('glue on one face is as it should be', () => {
  expect(verdict([moth, moon({})], 'glue').every(({ ok }) => ok)).toBe(true)
})

test('a rider whose glue runs past the edge of the page says by how much', () => {
  const [fault] = verdict([moon({ across: 70 })], 'glue')
  // Glue from 30 to 40 mm, shifted by 70, on a page 105 mm wide.
  expect(fault).toMatchObject({ ok: false, ids: ['moon', 'page/right'] })
  expect(fault?.value).toBeCloseTo(5, 9)
})

test('glue over a slit glues shut what should move', () => {
  const [fault] = verdict([slit, { ...moth, base: 30 }], 'glue')
  expect(fault?.ok).toBe(false)
  expect(fault?.sentence).toMatch(/over the cut and folds of the slit/)
})

test('glue over a strip that runs right across it is told by the width of the strip', () => {
  // Cut 10 mm wide from 40 to 50 along the gutter, 60 mm deep; glue from 20 to 40 across, from 35 to 55 along.
  const strip = { id: 'strip', kind: 'cut-layer', on: 'gutter', start: 40, end: 50, left: 60, right: 60 }
  const [fault] = verdict([strip, moon({ shape: square(15, 30, 30), glue: square(20, 35, 20) })], 'glue')
  expect(fault?.value).toBeCloseTo(10, 9)
  expect(fault?.sentence).toContain('10.0 mm over the cut and folds of the strip')
})

test('glue that shows beside its piece is told', () => {
  const [fault] = verdict([moon({ glue: square(15, 30, 10) })], 'glue')
  expect(fault?.value).toBeCloseTo(5, 9)
  expect(fault?.sentence).toMatch(/shows 5\.0 mm beside the piece/)
})

test('a taped joint that runs off the page is told, though it has no tabs', () => {
  const [fault] = verdict([{ ...moth, tab: 0, apex: 130 }], 'glue')
  expect(fault?.ok).toBe(false)
  // The joint's far end lies 130 + 50 cos 50 from the reader's end, of 148.
  expect(fault?.value).toBeCloseTo(130 + 50 * Math.cos((50 * Math.PI) / 180) - 148, 9)
})

test('a wall beyond its platform has nothing to hold', () => {
  const pond = { ...gluedPond, left: 40, right: 40, tab: 6 }
  expect(verdict([{ ...pond, walls: [-30, 0, 30] }], 'glue').every(({ ok }) => ok)).toBe(true)
  const [fault] = verdict([{ ...pond, walls: [-30, 0, 46] }], 'glue')
  expect(fault).toMatchObject({ ok: false, ids: ['pond', 'pond/right'] })
})

test('two tabs that lie over each other’s joints leave none to be stuck down first', () => {
  // Under a platform that reaches 44 mm the tab of a wall at 40 turns back, from 40 to 32; a wall at 34 has its
  // tab from 34 to 42.
  const pond = { ...gluedPond, left: 44, right: 44, tab: 8 }
  const [fault, ...more] = verdict([{ ...pond, walls: [-20, 34, 40] }], 'glue')
  expect(more).toEqual([])
  expect(fault).toMatchObject({ ok: false, ids: ['pond', 'pond/right'] })
  // The strip from 34 to 40 is what they share.
  expect(fault?.value).toBeCloseTo(6, 9)
  expect(fault?.sentence).toMatch(
    /over each other’s joint on the pond’s right side: neither can be stuck down first/,
  )
  // Both turned outwards, the outer one goes on top.
  expect(
    verdict([{ ...pond, left: 60, right: 60, walls: [-20, 34, 40] }], 'glue').every(({ ok }) => ok),
  ).toBe(true)
})

// Common practice, no source: paper narrower than 5 mm tears or buckles.
test('a part narrower than 5 mm is named with its width', () => {
  const strip = (end: number) => [{ id: 'reed', kind: 'cut-layer', on: 'gutter', start: 40, end, left: 20 }]
  expect(verdict(strip(45), 'narrow').every(({ ok }) => ok)).toBe(true)
  const [fault] = verdict(strip(44.9), 'narrow')
  expect(fault).toMatchObject({ ok: false, caution: true })
  expect(fault?.value).toBeCloseTo(4.9, 9)
})

// Width of a triangle: the least of its three altitudes (Euclid). Legs 30 and 40: 24 on the longest side.
test('the width of a triangle is its least altitude', () => {
  const [found] = verdict(
    [{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 40, run: 40, cut: 30 }],
    'narrow',
  )
  expect(found?.value).toBeCloseTo(24, 9)
})

test('a moth from a paper corner that still lies in the fold is in nobody’s way', () => {
  const lying = { ...moth, base: 45, facet: 45, pop: 'down' }
  expect(verdict([lying], 'clear-motion')).toMatchObject([{ ok: true, verdict: 'clear' }])
  // A wider facet does not lie still: it would have to go through the page.
  const [fault] = verdict([{ ...lying, facet: 60 }], 'clear-motion')
  expect(fault).toMatchObject({ ok: false, verdict: 'touches' })
  expect(fault?.sentence).toMatch(/^The moth would have to go through the (left|right) page/)
  // Narrower facets do lie down, until they are pulled tight.
  expect(verdict([{ ...lying, facet: 40 }], 'clear-motion').every(({ ok }) => ok)).toBe(true)
})
