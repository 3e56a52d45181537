import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Check } from '../../../src/paper/index.ts'
import { check } from '../../../src/paper/index.ts'
import { fold, mirrored } from '../shared/check-designs.ts'
import { design, designs, ladder, runs } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'

const numbersOf = ({ value, limit, opening, flat, space, repair }: Check): number[] => [
  value,
  limit,
  ...(opening === undefined ? [] : [opening]),
  ...(flat ?? []).flat(),
  ...(space ?? []),
  ...(repair
    ? [repair.from, repair.to, ...repair.change.flatMap(({ fields }) => Object.values(fields))]
    : []),
]

/** What every result keeps to. */
function sane(checks: readonly Check[]): void {
  for (const one of checks) {
    for (const number of numbersOf(one)) expect(Number.isFinite(number)).toBe(true)
    expect(one.sentence).toMatch(/^[A-Z].*\.$/s)
    expect(one.sentence).not.toMatch(/NaN|undefined|Infinity|null|-\d/)
    if (one.verdict === 'touches' || one.verdict === 'undecided') expect(one.ok).toBe(false)
    if (one.name === 'clear-motion' && one.ok) expect(one.verdict).toBe('clear')
    if (one.opening !== undefined) expect(one.opening >= 0 && one.opening <= 180).toBe(true)
  }
}

describe('nothing is NaN, and nothing throws', () => {
  test.each(ladder)('$name', ({ design: made }) => {
    sane(check(made))
  })

  test.each([
    ['a slit of no length', [fold('beak', 'gutter', 60, -40, 0)]],
    ['no run', [fold('beak', 'gutter', 60, 0, 20)]],
    ['neither run nor slit', [fold('beak', 'gutter', 60, 0, 0)]],
    [
      'a guest on a fold of no length',
      [fold('beak', 'gutter', 60, 0, 0), fold('eye', 'beak/ridge', 0, 5, 5)],
    ],
    [
      'a layer of no depth',
      [{ id: 'lamp', kind: 'cut-layer', on: 'gutter', start: 10, end: 40, left: 0, right: 0 }],
    ],
    [
      'a layer of no length',
      [{ id: 'lamp', kind: 'cut-layer', on: 'gutter', start: 10, end: 10, left: 20, right: 20 }],
    ],
    [
      'a layer with one depth 0',
      [{ id: 'lamp', kind: 'cut-layer', on: 'gutter', start: 10, end: 40, left: 0, right: 30 }],
    ],
    ['a slit longer than the page', [fold('beak', 'gutter', 60, -40, 2000)]],
    ['a run longer than the card', [fold('beak', 'gutter', 60, 2000, 40)]],
    ['the same mechanism twice', [fold('beak', 'gutter', 60, -40, 30), fold('twin', 'gutter', 60, -40, 30)]],
    ['one inside another', [fold('beak', 'gutter', 100, -80, 60), fold('owl', 'gutter', 60, -20, 10)]],
    ['folds square to the gutter', [fold('beak', 'gutter', 60, -40, 30, { lean: 40 })]],
    [
      'an outline in knots',
      [
        fold('beak', 'gutter', 60, -40, 30, {
          outline: [
            [90, 90],
            [-20, 10],
            [0, 60],
            [0, 60],
          ],
        }),
      ],
    ],
    ['a needle', [fold('beak', 'gutter', 60, -40, 1e-9)]],
    ['a wedge of almost 90 degrees', [fold('beak', 'gutter', 60, -1e-9, 30)]],
  ])('%s', (_, mechanisms) => {
    const made = design(mechanisms)
    sane(check(made, { repairs: false }))
    sane(check(made))
  })

  test('whatever a file may hold', () => {
    fc.assert(
      fc.property(designs({ most: 5, poor: true, steepest: 90 }), (made) => {
        sane(check(made, { repairs: false }))
      }),
      runs(60),
    )
  }, 60_000)

  test('with repairs as well', () => {
    fc.assert(
      fc.property(designs({ most: 2, poor: true, steepest: 90 }), (made) => {
        sane(check(made))
      }),
      runs(12),
    )
  }, 60_000)
})

test('a check that holds is told once; one that fails, once for each thing concerned', () => {
  fc.assert(
    fc.property(gardens(6), (made) => {
      const checks = check(made, { repairs: false })
      const names = [...new Set(checks.map(({ name }) => name))]
      for (const name of names) {
        const all = checks.filter((one) => one.name === name)
        if (all.some(({ ok }) => ok)) expect(all).toHaveLength(1)
        const about = all.map(({ ids }) =>
          ids
            .filter((id) => !id.includes('/'))
            .sort()
            .join(' '),
        )
        expect(new Set(about).size).toBe(about.length)
      }
    }),
    runs(60),
  )
})

test('the mirrored twin passes and fails alike, by the same numbers', () => {
  fc.assert(
    fc.property(gardens(5), (made) => {
      const told = (checks: readonly Check[]) =>
        checks
          .filter(({ name }) => name !== 'clear-motion')
          .sort((a, b) => a.name.localeCompare(b.name) || a.value - b.value)
      const here = told(check(made, { repairs: false }))
      const twin = told(check(mirrored(made), { repairs: false }))
      expect(twin.map(({ name, ok }) => `${name} ${ok}`)).toEqual(here.map(({ name, ok }) => `${name} ${ok}`))
      twin.forEach(({ value }, k) => {
        expect(value).toBeCloseTo(here[k]?.value ?? Number.NaN, 6)
      })
    }),
    runs(60),
  )
})

test('a design twice as large has twice the margin, bridge and overlap', () => {
  fc.assert(
    fc.property(gardens(4), (made) => {
      const twice = {
        ...made,
        card: { width: 2 * made.card.width, height: 2 * made.card.height, caliper: 0.25 },
        mechanisms: made.mechanisms.map((m) =>
          Object.fromEntries(
            Object.entries(m).map(([key, value]) => [key, typeof value === 'number' ? 2 * value : value]),
          ),
        ) as never,
      }
      const told = (checks: readonly Check[], scale: number) =>
        checks
          .filter(({ name }) => ['cuts-inside', 'cuts-apart', 'inside-fold'].includes(name))
          .map(({ name, ok, value }) => ({ name, ok, value: Number((value * scale + 0).toFixed(4)) }))
      expect(told(check(twice, { repairs: false }), 1)).toEqual(told(check(made, { repairs: false }), 2))
    }),
    runs(60),
  )
})
