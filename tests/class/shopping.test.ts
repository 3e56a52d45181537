// What must be on the tables.
import { describe, expect, test } from 'vitest'
import type { Grade } from '../../src/class/shopping.ts'
import {
  cardFor,
  grammage,
  massOf,
  perPound,
  shoppingFor,
  stickingOf,
  stockOf,
} from '../../src/class/shopping.ts'
import { parseDesign } from '../../src/paper/index.ts'

const design = (...mechanisms: object[]) =>
  parseDesign({ hingebook: 1, title: 'Card', card: { width: 105, height: 148 }, mechanisms })

// A printer maker's paper guide: g/m² of one pound by the basis size (500 sheets).
test.each<[Grade, number]>([
  ['bond', 3.76],
  ['text', 1.48],
  ['cover', 2.704],
  ['index', 1.808],
  ['tag', 1.627],
  ['bristol', 2.193],
])('a pound of %s is %d g/m²', (grade, factor) => {
  expect(perPound(grade)).toBeCloseTo(factor, 3)
})

// The same guide and trade charts: 20 lb bond 75, 90 lb index 163, 110 lb index 199, 65 lb cover 176, 80 lb cover 216.
test.each<[number, Grade, number]>([
  [20, 'bond', 75],
  [90, 'index', 163],
  [110, 'index', 199],
  [65, 'cover', 176],
  [80, 'cover', 216],
])('%d lb %s is %d g/m²', (pounds, grade, grams) => {
  expect(Math.round(grammage(pounds, grade))).toBe(grams)
})

test('card of 200 g/m² is 110 lb index in the US, 160 is 90 lb index, copy paper 20 lb bond', () => {
  expect(stockOf(200).us).toEqual({ pounds: 110, grade: 'index' })
  expect(stockOf(160).us).toEqual({ pounds: 90, grade: 'index' })
  expect(stockOf(80).us).toEqual({ pounds: 20, grade: 'bond' })
  expect(stockOf(90).us).toEqual({ pounds: 24, grade: 'bond' })
  expect(stockOf(250).us).toEqual({ pounds: 140, grade: 'index' })
})

// Trade charts: 0.23 mm is 199 g/m², 0.19 mm is 163 g/m², 0.097 mm is 75 g/m².
test('the card asks for card of its own thickness', () => {
  const thick = (caliper: number) => cardFor({ card: { width: 105, height: 148, caliper } }).grams
  expect([thick(0.1), thick(0.19), thick(0.25), thick(0.3)]).toEqual([80, 160, 200, 250])
})

// ISO 536: an A4 sheet of 80 g/m² weighs 4.99 g.
test('a sheet of A4 copy paper weighs 4.99 g', () => {
  expect(massOf(1, { width: 210, height: 297 }, 80)).toBeCloseTo(4.99, 2)
  expect(massOf(500, { width: 210, height: 297 }, 80)).toBeCloseTo(2494.8, 6)
})

describe('tape and glue by the joints', () => {
  // By hand: a V-fold of its own card without tabs stands on two joints, 40 mm each.
  const taped = design({
    ...{ id: 'moth', kind: 'glued-v-fold', on: 'gutter', apex: 40, toward: 1, base: 45, facet: 60 },
    ...{ foot: 40, ridge: 50, tab: 0 },
  })

  test('two joints of 40 mm take 80 mm of tape a card, 3 m for thirty with a quarter to spare', () => {
    const sticking = stickingOf(taped)
    expect(sticking.taped).toBe(2)
    expect(sticking.tape).toBeCloseTo(80, 6)
    expect(sticking.glued).toBe(0)
    // 30 × 80 mm = 2.4 m, and a quarter more is 3.0 m: one roll of 10 m.
    const list = shoppingFor(taped, { pupils: 30, groups: 10 }, { cardSheets: 60, paperSheets: 10 })
    expect(list.tapeMetres).toBe(3)
    expect(list.rolls).toBe(1)
    expect(list.glueSticks).toBe(0)
    // 110 pupils: 11 m, two rolls.
    expect(shoppingFor(taped, { pupils: 110, groups: 10 }, { cardSheets: 0, paperSheets: 0 }).rolls).toBe(2)
  })

  test('a piece stuck flat by a square of 12 mm has 144 mm² of glue', () => {
    const stuck = design({
      ...{ id: 'star', kind: 'rider', on: 'page/left' },
      shape: [
        [20, 20],
        [50, 20],
        [50, 50],
        [20, 50],
      ],
      glue: [
        [25, 25],
        [37, 25],
        [37, 37],
        [25, 37],
      ],
    })
    const sticking = stickingOf(stuck)
    expect(sticking).toMatchObject({ taped: 0, tape: 0, glued: 1 })
    expect(sticking.glue).toBeCloseTo(144, 6)
    expect(shoppingFor(stuck, { pupils: 30, groups: 10 }, { cardSheets: 0, paperSheets: 0 }).glueSticks).toBe(
      10,
    )
  })

  test('a card that is cut only is not stuck at all', () => {
    const cut = design({ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 38 })
    expect(stickingOf(cut)).toEqual({ taped: 0, tape: 0, glued: 0, glue: 0 })
  })
})

test('one pupil in ten needs scissors for the left hand; a square corner for each group', () => {
  const card = design()
  const list = shoppingFor(card, { pupils: 31, groups: 7 }, { cardSheets: 31, paperSheets: 60 })
  expect(list.leftScissors).toBe(4)
  expect(list.scissors).toBe(27)
  expect(list.corners).toBe(7)
  expect(list.rulers).toBe(31)
})
