// Sizes for a wanted tip of layers and folds, from their formulas. Quick, beside the random ones.
import { describe, expect, test } from 'vitest'
import type { Aim, Design } from '../../../src/paper/index.ts'
import { aim, check } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'
import { RAD } from '../shared/space.ts'

// Cut a deep on the left and b on the right, a layer's ridge is at a along the left page and b along the right one:
// min(a, b) sin t off the page, and half way between its ends along the gutter.
const step = (more: object = {}) => design([{ ...layer('step', 'gutter', 40, 80, 20), ...more }])

const told = ({ ways }: Aim) =>
  ways.map(({ settings }) =>
    Object.fromEntries(Object.entries(settings).map(([name, value]) => [name, Number(value.toFixed(4))])),
  )

const isSound = (made: Design): boolean => check(made, { repairs: false }).every(({ ok }) => ok)

describe('one reading asks for one number', () => {
  test('a lower ridge: one cut less deep, or both', () => {
    const found = aim(step(), 'step', { opening: 90, rise: 15 })
    expect(found.reached).toBe(true)
    expect(found.nearest).toBeNull()
    const ways = told(found)
    expect(ways).toHaveLength(3)
    for (const way of [{ left: 15 }, { right: 15 }, { depth: 15 }]) expect(ways).toContainEqual(way)
    for (const way of found.ways) {
      expect(way.rise).toBeCloseTo(15, 5)
      expect(way.reach).toBeCloseTo(60, 9)
      expect(way.miss).toBeLessThan(1e-6)
      expect(isSound(way.design)).toBe(true)
    }
  })

  test('a higher one: only both cuts together', () => {
    const found = aim(step(), 'step', { opening: 90, rise: 30 })
    expect(told(found)).toEqual([{ depth: 30 }])
    expect(found.ways[0]?.fields).toEqual({
      left: expect.closeTo(30, 5),
      right: expect.closeTo(30, 5),
    })
    expect(found.ways[0]?.design.mechanisms[0]).toMatchObject({ start: 40, end: 80 })
    // At 120 degrees it is lower by sin 120.
    expect(told(aim(step(), 'step', { opening: 120, rise: 30 * Math.sin(120 * RAD) }))).toEqual([
      { depth: 30 },
    ])
  })

  test('farther along: either end, the one as good as the other', () => {
    const found = aim(step(), 'step', { opening: 90, reach: 65 })
    const ways = told(found)
    expect(ways).toHaveLength(2)
    expect(ways).toContainEqual({ end: 90 })
    expect(ways).toContainEqual({ start: 50 })
    expect(found.ways[0]?.rise).toBeCloseTo(20, 9)
  })

  test('a V-fold’s ridge by its apex, its length or its wedge', () => {
    // 45 degrees cut and at 90: its ridge of 40 stands at 70.53 degrees and rises two thirds of that; 30 rise 20.
    const beak = design([fold('beak', 'gutter', 100, -40, 40)])
    const found = aim(beak, 'beak', { opening: 90, rise: 20 })
    expect(found.reached).toBe(true)
    for (const { rise, miss } of found.ways) {
      expect(rise).toBeCloseTo(20, 5)
      expect(miss).toBeLessThan(1e-6)
    }
    // Least change first, and none twice.
    const far = found.ways.map(({ settings }) => {
      const now: Record<string, number> = { apex: 100, run: -40, cut: 40, lean: 0, wedge: 45 }
      return Math.hypot(...Object.entries(settings).map(([name, value]) => value - (now[name] ?? Number.NaN)))
    })
    expect(far).toEqual([...far].sort((a, b) => a - b))
    expect(new Set(told(found).map((way) => JSON.stringify(way))).size).toBe(found.ways.length)
    // The apex moves its tip along, and nothing else: from 100 - 40 cos 70.53 = 86.67 to 90.
    const along = told(aim(beak, 'beak', { opening: 90, reach: 90 }))
    expect(along).toContainEqual({ apex: Number((90 + 40 / 3).toFixed(4)) })
  })
})

describe('two readings ask for two numbers', () => {
  test('of a layer: a depth and an end', () => {
    const found = aim(step(), 'step', { opening: 90, rise: 15, reach: 65 })
    expect(found.reached).toBe(true)
    const ways = told(found)
    for (const depth of [{ depth: 15 }, { left: 15 }, { right: 15 }])
      for (const end of [{ end: 90 }, { start: 50 }]) expect(ways).toContainEqual({ ...end, ...depth })
    for (const way of ways) expect(Object.keys(way)).toHaveLength(2)
    for (const { rise, reach } of found.ways) {
      expect(rise).toBeCloseTo(15, 5)
      expect(reach).toBeCloseTo(65, 5)
    }
  })

  test('and where two will not do, one more is moved', () => {
    // 20 mm long, between neighbours: neither end alone can go 30 mm, both together can.
    const made = design([layer('step', 'gutter', 60, 80, 20)], { height: 130 })
    const found = aim(made, 'step', { opening: 90, reach: 112 })
    // Its start alone would have to come to 144, past its end; its end alone to 164, past the card.
    expect(found.reached).toBe(true)
    for (const { settings, reach } of found.ways) {
      expect(Object.keys(settings)).toHaveLength(2)
      expect(reach).toBeCloseTo(112, 5)
    }
    // Of one pair of numbers one way is told.
    const names = found.ways.map(({ settings }) => Object.keys(settings).join())
    expect(new Set(names).size).toBe(names.length)
  })
})

describe('what is out of reach', () => {
  test('is come near to as far as the checks allow', () => {
    // 60 high it would reach 120 of 105 when shut: 52.5 is the most.
    const found = aim(step(), 'step', { opening: 90, rise: 60 })
    expect(found.reached).toBe(false)
    expect(found.ways).toEqual([])
    expect(found.nearest?.miss).toBeGreaterThan(7.5 - 1e-6)
    expect(found.nearest?.miss).toBeLessThan(7.5 + 0.05)
    expect(found.nearest?.rise).toBeCloseTo(60 - (found.nearest?.miss ?? 0), 9)
    expect(found.nearest && isSound(found.nearest.design)).toBe(true)
  })

  test('is no harm where the card fails that check anyway', () => {
    // It sticks out already.
    const outside = step({ left: 60, right: 60 })
    const found = aim(outside, 'step', { opening: 90, rise: 65 })
    expect(told(found)).toContainEqual({ depth: 65 })
  })
})

describe('the readings of what stands on another', () => {
  test('hang on what it stands on, which stays', () => {
    // On the ridge of a layer what is cut leads back towards the gutter: 20 - d along either page.
    const made = design([layer('step', 'gutter', 40, 80, 20), layer('top', 'step/ridge', 10, 30, 8)])
    const found = aim(made, 'top', { opening: 90, rise: 10 })
    expect(told(found)).toContainEqual({ depth: 10 })
    for (const { design: next } of found.ways) expect(next.mechanisms[0]).toEqual(made.mechanisms[0])
  })
})

test('what cannot be asked is refused in words', () => {
  expect(() => aim(step(), 'owl', { opening: 90, rise: 5 })).toThrow(
    new RangeError('there is no mechanism owl'),
  )
  expect(() => aim(step(), 'step', { opening: 90 })).toThrow(
    new RangeError('the target must name a rise, a reach or both'),
  )
})
