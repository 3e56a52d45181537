// The nearest repairs, by hand, and the parts of a design in which they are looked for. Quick, beside the random ones.
import { describe, expect, test } from 'vitest'
import { affected, neighbourhood, nothingVanishes, standing } from '../../../src/paper/checks/repair.ts'
import { keyOf } from '../../../src/paper/checks/subject.ts'
import type { Check, Design, Repair } from '../../../src/paper/index.ts'
import { change, check } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, ladder } from '../shared/designs.ts'

/** What a button does with a repair. */
const applied = (made: Design, repair: Repair): Design =>
  repair.change.reduce((next, { id, fields }) => change(next, id, fields), made)

const failed = (checks: readonly Check[]): string[] => checks.filter(({ ok }) => !ok).map(keyOf)

const repairOf = (mechanisms: readonly object[], name: Check['name'], card = {}): Repair => {
  const found = check(design(mechanisms, card)).find((one) => one.name === name && !one.ok)
  expect(found).toBeDefined()
  expect(found?.repair).toBeTruthy()
  return found?.repair as Repair
}

describe('the nearest repair, by hand', () => {
  test('of a beak that sticks out: move it back by as much, rounded to a tenth on the safe side', () => {
    // Shut, the tip of 40 mm of ridge and a wedge of 60 degrees leans 20 mm past the apex: 148 − 20 = 128.
    const beak = fold('beak', 'gutter', 129.97, -40, 40 * Math.tan(Math.PI / 3))
    expect(repairOf([beak], 'stays-inside')).toMatchObject({
      id: 'beak',
      field: 'apex',
      from: 129.97,
      to: 128,
      unit: 'mm',
      keepsRest: true,
    })
  })

  test('of a layer too deep for the page: both depths at once', () => {
    expect(repairOf([layer('lamp', 'gutter', 40, 80, 60)], 'stays-inside')).toMatchObject({
      field: 'depth',
      to: 52.5,
      change: [{ id: 'lamp', fields: { left: 52.5, right: 52.5 } }],
    })
  })

  test('of an eye past the end of its ridge: slide the eye back', () => {
    expect(
      repairOf([fold('beak', 'gutter', 110, -60, 58), fold('eye', 'beak/ridge', 49, 14, 6)], 'inside-fold'),
    ).toMatchObject({
      id: 'eye',
      // 49 + 14 = 63 on a ridge of 60; and 5 mm of bridge to the beak's slit are kept as well.
      field: 'apex',
      keepsRest: true,
    })
  })

  test('of one half of a shared slit: the other half follows', () => {
    const heron = [fold('beak', 'gutter', 124, -48, 90), fold('jaw', 'gutter', 40, 36, 90)]
    const made = design(heron)
    const repair = repairOf(heron, 'stays-inside')
    expect(repair.change.map(({ id }) => id)).toEqual(['beak', 'jaw'])
    expect(failed(check(applied(made, repair), { repairs: false }))).not.toContain('stays-inside beak')
  })

  test('of two owls that collide: part them far enough, to the tenth', () => {
    const owls = [fold('owl', 'gutter', 70, -30, 40), fold('moth', 'gutter', 78, 30, 40)]
    const repair = repairOf(owls, 'clear-motion')
    expect(repair).toMatchObject({ id: 'owl', field: 'apex', keepsRest: true })
    // Ridges lean 30 cos(2 · 53.13) = 8.4 mm past each apex: 16.8 mm apart they only touch.
    expect(78 - repair.to).toBeCloseTo(16.8, 6)
  })

  test('of a bridge too thin: give it 5 mm', () => {
    expect(repairOf([fold('beak', 'gutter', 110, -40, 102)], 'bridge')).toMatchObject({
      id: 'beak',
      field: 'cut',
      to: 100,
    })
  })

  test('is null where no single number of a mechanism mends it', () => {
    // Two bare pages of 3 mm board are too thick by themselves.
    const found = check(design([], { caliper: 3 })).find(({ name }) => name === 'thickness')
    expect(found).toMatchObject({ ok: false, value: 6, repair: null })
  })

  test('is not looked for when it is not asked for, nor where another check must be mended first', () => {
    const spoilt = design([fold('beak', 'gutter', 110, -40, 38), fold('eye', 'beak/ridge', 30, 14, 4)])
    expect(check(spoilt, { repairs: false }).some((one) => 'repair' in one)).toBe(false)
    expect(check(spoilt).find(({ waits }) => waits)).not.toHaveProperty('repair')
  })

  test('a check that holds has none', () => {
    expect(check(design([fold('beak', 'gutter', 110, -40, 38)])).every((one) => !('repair' in one))).toBe(
      true,
    )
  })
})

describe('the part of a design that a repair is about', () => {
  const nested = ladder[3]?.design as Design

  test('is what a mechanism stands on', () => {
    expect(standing(nested, ['pupil'])).toEqual(['pupil', 'eye', 'beak'])
    expect(standing(nested, ['beak'])).toEqual(['beak'])
    expect(standing(nested, ['eye', 'pupil'])).toEqual(['eye', 'pupil', 'beak'])
  })

  test('is what a change moves: what is changed, and all that stands on it', () => {
    expect([...affected(nested, nested)]).toEqual([])
    expect([...affected(nested, change(nested, 'beak', { apex: 111 }))]).toEqual(['beak', 'eye', 'pupil'])
    expect([...affected(nested, change(nested, 'eye', { left: 7 }))]).toEqual(['eye', 'pupil'])
    expect([...affected(nested, change(nested, 'pupil', { start: 4 }))]).toEqual(['pupil'])
  })

  const row = (...places: readonly number[]) => places.map((at) => layer(`l${at}`, 'gutter', at, at + 8, 12))

  test('is all of a small one', () => {
    const four = design(row(10, 30, 50, 70))
    expect(neighbourhood(four, ['l10'])).toBe(four)
  })

  test('is one neighbour on either side on its fold, what they stand on, and what stands on them', () => {
    // Told out of order: neighbours are those along the fold.
    const made = design([
      ...row(50, 10, 90, 30, 70),
      layer('eye', 'l30/ridge', 1, 6, 3),
      layer('far', 'l10/ridge', 1, 6, 3),
    ])
    const ids = (concerned: string[]) =>
      neighbourhood(made, concerned)
        .mechanisms.map(({ id }) => id)
        .sort()
    expect(ids(['l50'])).toEqual(['eye', 'l30', 'l50', 'l70'])
    expect(ids(['l90'])).toEqual(['l70', 'l90'])
    expect(ids(['l10'])).toEqual(['eye', 'far', 'l10', 'l30'])
    // Of what stands on another, its host's neighbours as well.
    expect(ids(['eye'])).toEqual(['eye', 'far', 'l10', 'l30', 'l50'])
  })

  test('may shrink to a tenth of its area, and not to less', () => {
    // Panels of 40 by 20 mm.
    const made = design([layer('lamp', 'gutter', 40, 80, 20)])
    expect(nothingVanishes(made, change(made, 'lamp', { end: 44.01 }))).toBe(true)
    expect(nothingVanishes(made, change(made, 'lamp', { end: 43.99 }))).toBe(false)
    expect(nothingVanishes(made, change(made, 'lamp', { left: 2.01 }))).toBe(true)
    expect(nothingVanishes(made, change(made, 'lamp', { left: 1.99 }))).toBe(false)
    expect(nothingVanishes(made, change(made, 'lamp', { left: 60, right: 60 }))).toBe(true)
  })
})
