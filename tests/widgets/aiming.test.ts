import { describe, expect, test } from 'vitest'
import type { Design, Target } from '../../src/paper/index.ts'
import { check, measure, settingOf } from '../../src/paper/index.ts'
import type { Answer } from '../../src/widgets/aim/aiming.ts'
import { answering, placeIn, rangeOfWish, readWish, taken, takenSays } from '../../src/widgets/aim/aiming.ts'
import { benchModel } from '../../src/widgets/model/bench-model.ts'
import * as tools from '../../src/widgets/model/checker.ts'
import type { BenchConfig } from '../../src/widgets/state/config.ts'
import type { LengthUnit } from '../../src/widgets/state/format.ts'
import { beak, dummy, layer } from './benches.ts'

const placeAt = (design: Design, id: string, opening: number) => placeIn(measure(design, opening), id)

/** The answer, without stopping on the way. */
function answer(
  design: Design,
  id: string,
  target: Target,
  config: BenchConfig = {},
  length: LengthUnit = 'mm',
): Answer {
  const steps = answering(tools, benchModel(design, { lead: id, ...config }), design, id, target, length)
  for (;;) {
    const { done, value } = steps.next()
    if (done) return value
  }
}

const failing = (design: Design): readonly string[] =>
  check(design, { repairs: false }).flatMap(({ ok, name }) => (ok ? [] : [name]))

describe('what is typed', () => {
  const now = placeAt(layer, 'body', 90)
  const read = (rise: string, reach: string, length: LengthUnit = 'mm') =>
    readWish({ rise, reach }, layer, now, 90, length)

  test('either field may be left empty', () => {
    expect(read('30', '').target).toEqual({ opening: 90, rise: 30 })
    expect(read(' ', '72,5').target).toEqual({ opening: 90, reach: 72.5 })
    expect(read('30 mm', '72').target).toEqual({ opening: 90, rise: 30, reach: 72 })
  })

  test('inches are read as inches', () => {
    expect(read('1', '', 'in').target).toEqual({ opening: 90, rise: 25.4 })
  })

  test('nothing at all is asked for again', () => {
    expect(read('', '').fault).toEqual({ field: null, says: 'Type a rise, a reach, or both.' })
  })

  test('what is no number, or out of range, is told with the field and its range', () => {
    expect(read('high', '').fault).toEqual({ field: 'rise', says: 'Rise goes from 0.0 mm to 105.0 mm.' })
    expect(read('106', '').fault?.field).toBe('rise')
    expect(read('20', '-1').fault).toEqual({ field: 'reach', says: 'Reach goes from 0.0 mm to 148.0 mm.' })
    expect(read('5', '', 'in').fault?.says).toBe('Rise goes from 0.00 in to 4.13 in.')
  })

  test('a tip that is outside now may stay there', () => {
    expect(rangeOfWish(layer, 'reach', { rise: 3, reach: 151.2 })).toEqual([0, 152])
    expect(rangeOfWish(layer, 'rise', { rise: -4.5, reach: 3 })).toEqual([-5, 105])
  })
})

describe('the ways there', () => {
  test('a layer at 90 degrees stands as high as it is deep: its depth is the first way', () => {
    const { says, ways } = answer(layer, 'body', { opening: 90, rise: 27 })
    expect(ways[0]?.says).toBe('Depth 27.0 mm instead of 34.0 mm.')
    expect(says).toMatch(/^There are \d ways\. The least change comes first\.$/)
  })

  test('names are those of the bench, and no way is told twice', () => {
    const { ways } = answer(
      beak,
      'beak',
      { opening: 90, rise: 27, reach: 92 },
      { fields: [{ id: 'beak', field: 'cut', label: 'Depth of the slit' }] },
    )
    const said = ways.map(({ says }) => says)
    expect(new Set(said).size).toBe(said.length)
    expect(said.join(' ')).toMatch(/depth of the slit \d+\.\d mm/i)
    expect(said.join(' ')).toMatch(/place of the slit \d+\.\d mm along the fold instead of 70\.0 mm/i)
  })

  test('every way that is taken brings the tip there, in tenths, and breaks nothing', () => {
    for (const [design, id, target] of [
      [beak, 'beak', { opening: 90, rise: 27, reach: 92 }],
      [layer, 'body', { opening: 110, rise: 20 }],
      [dummy('moth'), 'moth', { opening: 110, rise: 32, reach: 60 }],
      [dummy('hedgehog'), 'body', { opening: 110, rise: 40, reach: 66 }],
    ] as const) {
      const { ways } = answer(design, id, target)
      expect(ways.length, id).toBeGreaterThan(0)
      for (const way of ways) {
        const next = taken(tools, design, id, target, way)
        const place = placeAt(next, id, target.opening)
        expect(Math.abs(place.rise - target.rise), way.says).toBeLessThan(0.1 + 1e-9)
        if ('reach' in target) expect(Math.abs(place.reach - target.reach), way.says).toBeLessThan(0.1 + 1e-9)
        expect(failing(next).filter((name) => !failing(design).includes(name))).toEqual([])
        const m = next.mechanisms.find((one) => one.id === id)
        for (const name of Object.keys(way.aimed.settings)) {
          const value = m ? settingOf(m, name) : Number.NaN
          // To a tenth where that still reaches, to a thousandth everywhere.
          expect(Math.abs(value * 1000 - Math.round(value * 1000))).toBeLessThan(1e-6)
        }
      }
    }
  })

  test('a slit of tenths is a slit of tenths', () => {
    const target = { opening: 90, rise: 20 }
    const [way] = answer(layer, 'body', target).ways
    if (!way) throw new Error('no way')
    expect(taken(tools, layer, 'body', { ...target, rise: 20 }, way).mechanisms[0]).toMatchObject({
      left: 20,
      right: 20,
    })
    expect(takenSays(taken(tools, layer, 'body', target, way), 'body', target, 'mm')).toBe(
      'Done. The ridge stands 20.0 mm high now.',
    )
  })

  test('where it stands already nothing is worked out', () => {
    const now = placeAt(beak, 'beak', 90)
    expect(answer(beak, 'beak', { opening: 90, rise: now.rise })).toEqual({
      says: 'The tip is there already.',
      ways: [],
    })
  })

  test('out of reach: the nearest that works as paper, and it is no worse than before', () => {
    const target = { opening: 90, rise: 100 }
    const { says, ways } = answer(beak, 'beak', target)
    expect(says).toMatch(
      /^That is out of reach\. The nearest that still works as paper: the tip stands \d+\.\d mm high\.$/,
    )
    expect(ways).toHaveLength(1)
    const [way] = ways
    if (!way) throw new Error('no way')
    const next = taken(tools, beak, 'beak', target, way)
    expect(placeAt(next, 'beak', 90).rise).toBeGreaterThan(placeAt(beak, 'beak', 90).rise)
    expect(placeAt(next, 'beak', 90).rise).toBeCloseTo(way.aimed.rise, 0)
    expect(failing(next).filter((name) => !failing(beak).includes(name))).toEqual([])
  })

  test('inches are told in inches', () => {
    expect(answer(layer, 'body', { opening: 90, rise: 25.4 }, {}, 'in').ways[0]?.says).toBe(
      'Depth 1.00 in instead of 1.34 in.',
    )
  })
})
