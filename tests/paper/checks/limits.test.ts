// Each check a hair inside its limit and a hair outside, on either side of the card: sums of lengths on an A6 page,
// 105 by 148 mm. The limits of 5 mm and 2 mm are common practice, no source.
import { describe, expect, test } from 'vitest'
import type { CheckName } from '../../../src/paper/index.ts'
import { first, fold, layer, tent } from '../shared/check-designs.ts'
import { gluedMoth } from '../shared/designs.ts'

/** A hair, mm and degrees. */
const H = 0.01

const moon = (on: string, more: object) => {
  const square = (a: number, l: number, size: number) => [
    [a, l],
    [a + size, l],
    [a + size, l + size],
    [a, l + size],
  ]
  return { id: 'moon', kind: 'rider', on, shape: square(20, 20, 30), glue: square(30, 30, 10), ...more }
}

/** Of 60 degrees: shut, its ridge of 40 leans 40 cos 60 = 20 past its apex. */
const steep = (apex: number, run: number) => fold('beak', 'gutter', apex, run, 40 * Math.sqrt(3))

interface Row {
  readonly check: CheckName
  readonly of: string
  /** At the limit, and by so much past it (`by` above 0), mm or degrees. */
  at(by: number): readonly object[]
  /** What is measured by so much past the limit. */
  value(by: number): number
}

const rows: readonly Row[] = [
  // Shut, a layer's ridge lies both its depths from the gutter.
  {
    check: 'stays-inside',
    of: 'a layer at the side',
    at: (by) => [layer('lamp', 'gutter', 40, 80, 52.5 + by / 2)],
    value: (by) => -by,
  },
  {
    check: 'stays-inside',
    of: 'a layer that is deeper on the left',
    at: (by) => [layer('lamp', 'gutter', 40, 80, 80 + by, 25)],
    value: (by) => -by,
  },
  {
    check: 'stays-inside',
    of: 'a layer that is deeper on the right',
    at: (by) => [layer('lamp', 'gutter', 40, 80, 25, 80 + by)],
    value: (by) => -by,
  },
  {
    check: 'stays-inside',
    of: 'a ridge that leans to the far edge',
    at: (by) => [steep(128 + by, -40)],
    value: (by) => -by,
  },
  {
    check: 'stays-inside',
    of: 'a ridge that leans to the near edge',
    at: (by) => [steep(20 - by, 40)],
    value: (by) => -by,
  },
  {
    check: 'inside-fold',
    of: 'the far end of a layer',
    at: (by) => [layer('lamp', 'gutter', 100, 148 + by, 20)],
    value: (by) => by,
  },
  {
    check: 'inside-fold',
    of: 'the foot of a slit before the near end',
    at: (by) => [fold('beak', 'gutter', 40, -40 - by, 30)],
    value: (by) => by,
  },
  {
    check: 'inside-fold',
    of: 'a guest past the end of a ridge',
    at: (by) => [layer('lamp', 'gutter', 20, 90, 30), layer('eye', 'lamp/ridge', 50, 70 + by, 9)],
    value: (by) => by,
  },
  {
    check: 'cuts-inside',
    of: 'a slit as long as the page is wide',
    at: (by) => [fold('beak', 'gutter', 110, -40, 105 + by)],
    value: (by) => by,
  },
  {
    check: 'cuts-inside',
    of: 'a cut on the left page',
    at: (by) => [layer('lamp', 'gutter', 40, 80, 105 + by, 20)],
    value: (by) => by,
  },
  {
    check: 'cuts-inside',
    of: 'a cut on the right page',
    at: (by) => [layer('lamp', 'gutter', 40, 80, 20, 105 + by)],
    value: (by) => by,
  },
  {
    check: 'cuts-apart',
    of: 'two that take the same stretch',
    at: (by) => [layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 50 - by, 80, 30)],
    value: (by) => by,
  },
  {
    check: 'cuts-apart',
    of: 'the same two, told the other way round',
    at: (by) => [layer('reed', 'gutter', 50 - by, 80, 30), layer('lamp', 'gutter', 20, 50, 20)],
    value: (by) => by,
  },
  {
    check: 'bridge',
    of: 'a cut by the near edge',
    at: (by) => [layer('lamp', 'gutter', 5 - by, 40, 20)],
    value: (by) => 5 - by,
  },
  {
    check: 'bridge',
    of: 'a cut by the far edge',
    at: (by) => [layer('lamp', 'gutter', 100, 143 + by, 20)],
    value: (by) => 5 - by,
  },
  {
    check: 'bridge',
    of: 'a slit by the side edge',
    at: (by) => [fold('beak', 'gutter', 110, -40, 100 + by)],
    value: (by) => 5 - by,
  },
  {
    check: 'bridge',
    of: 'two cuts side by side',
    at: (by) => [layer('lamp', 'gutter', 20, 50, 20), layer('reed', 'gutter', 55 - by, 80, 20)],
    value: (by) => 5 - by,
  },
  {
    check: 'bridge',
    of: 'a guest by the end of its strip',
    at: (by) => [layer('lamp', 'gutter', 20, 90, 30), layer('eye', 'lamp/ridge', 5 - by, 40, 9)],
    value: (by) => 5 - by,
  },
  {
    check: 'narrow',
    of: 'a strip',
    at: (by) => [layer('reed', 'gutter', 40, 45 - by, 20)],
    value: (by) => 5 - by,
  },
  {
    check: 'narrow',
    of: 'a strip that is hardly deep',
    at: (by) => [layer('reed', 'gutter', 40, 80, 5 - by)],
    value: (by) => 5 - by,
  },
  {
    check: 'glue',
    of: 'glue at the edge of the right page',
    at: (by) => [moon('page/right', { across: 65 + by })],
    value: (by) => by,
  },
  {
    check: 'glue',
    of: 'glue at the edge of the left page',
    at: (by) => [moon('page/left', { across: 65 + by })],
    value: (by) => by,
  },
  {
    check: 'glue',
    of: 'glue at the near edge',
    at: (by) => [moon('page/left', { along: -30 - by })],
    value: (by) => by,
  },
  {
    check: 'glue',
    of: 'glue at the gutter',
    at: (by) => [moon('page/right', { across: -30 - by })],
    value: (by) => by,
  },
  {
    check: 'glue',
    of: 'glue beside a hole',
    at: (by) => [layer('lamp', 'gutter', 20, 60, 30), moon('page/right', { across: -by })],
    value: (by) => by,
  },
  {
    check: 'shuts-flat',
    of: 'a tent with a wall too long on the right',
    at: (by) => [tent({ rightWall: 40 + by })],
    value: (by) => by,
  },
  {
    check: 'shuts-flat',
    of: 'a tent with a wall too long on the left',
    at: (by) => [tent({ leftWall: 40 + by })],
    value: (by) => by,
  },
  {
    check: 'shuts-flat',
    of: 'a V-fold with a facet too wide on one side',
    at: (by) => [gluedMoth({ right: { base: 45, facet: 60 + by } })],
    value: (by) => by,
  },
]

describe.each(rows)('$check: $of', ({ check, at, value }) => {
  test('at its limit holds, and a hair inside', () => {
    expect(first(check, at(0)).ok).toBe(true)
    if (check !== 'shuts-flat') expect(first(check, at(-H)).ok).toBe(true)
  })

  test('a hair outside fails, by as much as it is', () => {
    const found = first(check, at(H))
    expect(found.ok).toBe(false)
    expect(found.value).toBeCloseTo(value(H), 6)
    expect(first(check, at(3)).value).toBeCloseTo(value(3), 6)
  })
})

test('sides that do not match fail either way', () => {
  for (const more of [{ rightWall: 40 - H }, { leftFoot: 30 - H }, { rightFoot: 30 + H }]) {
    const found = first('shuts-flat', [tent(more)])
    expect(found.ok).toBe(false)
    expect(found.value).toBeCloseTo(H, 6)
  }
})

test('a card of two pages is thick enough to spring open above 2 mm, and a layer doubles it', () => {
  for (const [mechanisms, limit] of [
    [[], 1],
    [[layer('lamp', 'gutter', 40, 80, 20)], 0.5],
  ] as const) {
    expect(first('thickness', mechanisms, { caliper: limit }).ok).toBe(true)
    expect(first('thickness', mechanisms, { caliper: limit - H }).ok).toBe(true)
    const found = first('thickness', mechanisms, { caliper: limit + H })
    expect(found.ok).toBe(false)
    expect(found.value).toBeCloseTo(2 + (2 * H) / limit, 9)
  }
})
