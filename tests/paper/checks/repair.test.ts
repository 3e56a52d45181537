import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { keyOf } from '../../../src/paper/checks/subject.ts'
import type { Check, Design, Repair } from '../../../src/paper/index.ts'
import { change, check, parseDesign } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, runs } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'

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

test('every repair mends what it is for; one that says so breaks nothing; a file can hold it', () => {
  const seen = { mended: 0, kept: 0 }
  fc.assert(
    fc.property(gardens(3), (made) => {
      const before = check(made)
      for (const one of before) {
        if (!one.repair) continue
        const after = applied(made, one.repair)
        const now = failed(check(after, { repairs: false }))
        expect(now).not.toContain(keyOf(one))
        seen.mended++
        if (one.repair.keepsRest) {
          seen.kept++
          expect(now.filter((key) => !failed(before).includes(key))).toEqual([])
        }
        expect(() => parseDesign(JSON.parse(JSON.stringify(after)))).not.toThrow()
        // To a tenth, as a hand can cut it.
        expect(one.repair.to * 10).toBeCloseTo(Math.round(one.repair.to * 10), 6)
      }
    }),
    { numRuns: 30 },
  )
  expect(seen.mended).toBeGreaterThan(20)
  expect(seen.kept).toBeGreaterThan(10)
}, 240_000)

test('no smaller turn of the same number mends it: of a repair’s tenths, the last one back fails', () => {
  fc.assert(
    fc.property(gardens(2), (made) => {
      const before = check(made)
      for (const one of before) {
        const { repair } = one
        if (!repair?.keepsRest || repair.change.length !== 1) continue
        const [only] = repair.change
        const [[field, to]] = Object.entries(only?.fields ?? {}) as [[string, number]]
        if (Object.keys(only?.fields ?? {}).length !== 1 || field !== repair.field) continue
        const back = to + (repair.from > to ? 0.1 : -0.1)
        if (Math.abs(back - repair.from) < 0.1) continue
        const now = failed(check(change(made, repair.id, { [field]: back }), { repairs: false }))
        // Either it is not mended, or something else that held is broken.
        expect(now.includes(keyOf(one)) || now.some((key) => !failed(before).includes(key))).toBe(true)
      }
    }),
    runs(25),
  )
}, 60_000)
