// Sizes that differ from sheet to sheet.
import { describe, expect, test, vi } from 'vitest'
import { placesFor } from '../../src/class/choice.ts'
import { alike, measuredOn, sizeName, spreadOf } from '../../src/class/spread.ts'
import type { Design } from '../../src/paper/index.ts'
import { check, parseDesign } from '../../src/paper/index.ts'
import { uncovered } from '../../src/sheet/index.ts'
import { dummy } from './shared.ts'

vi.setConfig({ testTimeout: 30_000 })

const named = (design: Design, id: string | null, field: string) => {
  const found = measuredOn(design, id).find((one) => one.field === field)
  if (!found) throw new Error(`${field} is not among the sizes`)
  return found
}

const sizesOf = (copies: ReturnType<typeof spreadOf>['copies']): readonly number[] =>
  copies.map(({ size }) => size ?? Number.NaN)

describe('thirty slits of a beak', () => {
  const beak = uncovered(dummy('beak'))
  const cut = named(beak, 'beak', 'cut')
  const { copies, notes } = spreadOf(beak, cut, 30)
  const sizes = sizesOf(copies)

  test('all differ, in whole millimetres, from half of the slit to one and a half and a tenth', () => {
    // 42 mm as designed: 21 to 67.2 were asked for.
    expect(new Set(sizes).size).toBe(30)
    expect(sizes[0]).toBe(21)
    expect(sizes.at(-1)).toBe(67)
    expect(sizes.every(Number.isInteger)).toBe(true)
    expect([...sizes].sort((a, b) => a - b)).toEqual(sizes)
    expect(notes).toEqual([])
  })

  test('are cut into both halves that share the slit', () => {
    for (const { size, design } of copies)
      expect(design.mechanisms.map((m) => ('cut' in m ? m.cut : null))).toEqual([size, size])
  })

  test('are sound, every one', () => {
    for (const { design } of copies)
      expect(check(design, { repairs: false }).filter(({ ok, caution }) => !ok && !caution)).toEqual([])
  })

  // Spherical trigonometry on the cut V-fold: tan(f/2) = tan(wedge) cos(opening/2), rise = ridge sin f
  // sin(opening/2); the ridge is the way from the apex to the slit, and tan(wedge) the slit through it.
  test('read what the formula of the cut V-fold says', () => {
    const [m] = beak.mechanisms
    const ridge = m && 'run' in m ? Math.abs(m.run) : Number.NaN
    for (const { size, reads } of copies) {
      const f = 2 * Math.atan(((size ?? 0) / ridge) * Math.SQRT1_2)
      expect(reads).toBeCloseTo(ridge * Math.sin(f) * Math.SQRT1_2, 6)
    }
  })
})

test('a slit and its angle go before other sizes, and a size that moves the tip little is not among them', () => {
  const fields = measuredOn(dummy('beak'), 'beak').map(({ field }) => field)
  expect(fields.slice(0, 2)).toEqual(['cut', 'wedge'])
  // By an apex a beak moves along the gutter and rises no higher.
  expect(fields).not.toContain('apex')
})

test('two sides that must match change together', () => {
  const fields = measuredOn(dummy('moth'), 'moth').map(({ field }) => field)
  expect(fields).toContain('facet')
  expect(fields.filter((field) => /^(left|right)\./.test(field))).toEqual([])
})

describe('what is asked for and is not sound', () => {
  const moth = uncovered(dummy('moth'))
  const { copies, notes } = spreadOf(moth, named(moth, 'moth', 'facet'), 20)
  const sizes = sizesOf(copies)

  // A facet angle below the base angle stops the card before it is flat (common geometry of the V-fold):
  // the moth's base angle is 45 degrees.
  test('is left out: the range is narrower', () => {
    expect(Math.min(...sizes)).toBeGreaterThanOrEqual(45)
    expect(new Set(sizes).size).toBe(20)
    for (const { design } of copies)
      expect(check(design, { repairs: false }).every(({ ok, caution }) => ok || caution)).toBe(true)
  })

  test('and that is said, with both ranges and the reason', () => {
    expect(notes).toHaveLength(1)
    expect(notes[0]).toContain('facet angle of the moth')
    expect(notes[0]).toContain(`from ${sizes[0]}° to ${sizes.at(-1)}°`)
    expect(notes[0]).toContain('short of flat')
  })
})

test('a card that is not sound itself is left as it is, and its fault is told', () => {
  const long = parseDesign({
    hingebook: 1,
    title: 'Too long',
    card: { width: 105, height: 148 },
    mechanisms: [{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 140, run: -120, cut: 100 }],
  })
  const { copies, notes } = spreadOf(long, named(long, 'beak', 'cut'), 5)
  expect(copies.every(({ size, design }) => size === null && design === long)).toBe(true)
  expect(notes[0]).toMatch(/^All sheets are alike, for this card has something to mend first\. ./)
})

test('more sheets than there is room for are alike, and that is said', () => {
  // A layer 4 mm deep: 2 to 6.4 mm in steps of a tenth are 45 different ones.
  const low = parseDesign({
    hingebook: 1,
    title: 'Low',
    card: { width: 105, height: 148 },
    mechanisms: [{ id: 'box', kind: 'cut-layer', on: 'gutter', start: 40, end: 90, left: 4, right: 4 }],
  })
  const depth = named(low, 'box', 'depth')
  expect(new Set(sizesOf(spreadOf(low, depth, 30).copies)).size).toBe(30)
  const many = spreadOf(low, depth, 60)
  expect(many.copies).toHaveLength(60)
  expect(new Set(many.copies.map(({ size }) => size))).toEqual(new Set([null]))
  expect(many.notes[0]).toContain('no room for 60 different sizes')
})

test('one sheet alone has a size in the middle', () => {
  const beak = uncovered(dummy('beak'))
  // Of 21 to 67.2 mm in steps of 5: half-way between 25 and 65.
  expect(sizesOf(spreadOf(beak, named(beak, 'beak', 'cut'), 1).copies)).toEqual([45])
})

test('the steps are as large as so many sizes allow', () => {
  const beak = uncovered(dummy('beak'))
  const of = (count: number) => sizesOf(spreadOf(beak, named(beak, 'beak', 'cut'), count).copies)
  // Of 21 to 67.2 mm there are 23 even ones, 22 to 66; 24 sizes need whole millimetres, and then the ends are 21 and 67.
  expect(of(23)).toEqual(Array.from({ length: 23 }, (_, k) => 22 + 2 * k))
  const more = of(24)
  expect([more[0], more.at(-1)]).toEqual([21, 67])
})

test.each([
  ['layers', 'roof', 'wedge'],
  ['heron-in-the-reeds', 'reed', 'depth'],
  ['reeds', 'reed-2', 'depth'],
])('sizes that fail between sound ends are left out: %s %s %s', (name, id, field) => {
  const design = uncovered(dummy(name))
  const { copies } = spreadOf(design, named(design, id, field), 12)
  expect(copies).toHaveLength(12)
  for (const copy of copies)
    expect(check(copy.design, { repairs: false }).filter(({ ok, caution }) => !ok && !caution)).toEqual([])
})

test('how far it is is told, up to the last of all looks', () => {
  const beak = uncovered(dummy('beak'))
  const told: (readonly [number, number])[] = []
  spreadOf(beak, named(beak, 'beak', 'cut'), 4, (done, of) => told.push([done, of]))
  expect(told).toEqual([1, 2, 3, 4, 5, 6].map((done) => [done, 6]))
})

test('alike on a bare card, the dots stand where the chapter has them', () => {
  const card = dummy('card')
  const [dots] = measuredOn(card, null, [60, 70])
  if (!dots) throw new Error('nothing is read on a bare card')
  // 2 × 60 mm × sin 45°.
  expect(alike(card, dots, 1, [60, 70]).copies[0]?.reads).toBeCloseTo(120 * Math.SQRT1_2, 9)
  expect(dots.along).toBe(70)
})

test('on a bare card the dots differ, and the gap is twice their way from the gutter by the sine of half the opening', () => {
  const card = dummy('card')
  const [dots] = measuredOn(card, null, [60, 70])
  if (!dots) throw new Error('nothing is read on a bare card')
  expect(sizeName(dots)).toBe('way from the gutter to the dot')
  const { copies } = spreadOf(card, dots, 12)
  expect(new Set(copies.map(({ size }) => size)).size).toBe(12)
  for (const { size, reads } of copies) expect(reads).toBeCloseTo(2 * (size ?? 0) * Math.SQRT1_2, 9)
})

describe('who has which sheet', () => {
  test('thirty in ten groups: every size once, and each group has a small, a middle and a large one', () => {
    const places = placesFor({ pupils: 30, groups: 10 })
    expect(places.map(({ code }) => code).slice(0, 4)).toEqual(['A1', 'A2', 'A3', 'B1'])
    expect(new Set(places.map(({ nth }) => nth)).size).toBe(30)
    expect(new Set(places.map(({ code }) => code)).size).toBe(30)
    for (const letter of new Set(places.map(({ group }) => group))) {
      const mine = places.filter(({ group }) => group === letter).map(({ nth }) => Math.floor(nth / 10))
      expect(mine).toEqual([0, 1, 2])
    }
  })

  test('as many groups as pupils: letters go on after Z, and none is taken for a one or a nought', () => {
    const groups = placesFor({ pupils: 30, groups: 30 }).map(({ group }) => group)
    expect(new Set(groups).size).toBe(30)
    expect(groups.slice(22)).toEqual(['Y', 'Z', 'AA', 'AB', 'AC', 'AD', 'AE', 'AF'])
    expect(groups.join('')).not.toMatch(/[IO]/)
  })

  test('a number that does not divide: some groups have one more', () => {
    const places = placesFor({ pupils: 7, groups: 3 })
    expect(places.map(({ code }) => code)).toEqual(['A1', 'A2', 'A3', 'B1', 'B2', 'C1', 'C2'])
    expect(places.map(({ nth }) => nth).sort((a, b) => a - b)).toEqual([0, 1, 2, 3, 4, 5, 6])
  })
})
