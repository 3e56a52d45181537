// What is known of a four-bar before it is posed: sums and differences of its four sides, and where it is in one line.
import { describe, expect, test } from 'vitest'
import {
  alignments,
  fourBar,
  liesInHost,
  rangeOf,
  shutGap,
  shutsOuter,
} from '../../../../src/paper/mechanisms/shared/four-bar.ts'
import { DEG, RAD } from '../../shared/space.ts'

type Sides = readonly [base1: number, facet1: number, base2: number, facet2: number]

const bar = (form: 'planar' | 'spherical', [b1, a1, b2, a2]: Sides, branch: 1 | -1 = 1, outside = false) =>
  fourBar(form, { base: b1, facet: a1 }, { base: b2, facet: a2 }, branch, outside)

describe('sums and differences', () => {
  test('of lengths', () => {
    const found = bar('planar', [50, 60, 40, 30])
    expect(found).toMatchObject({ b1: 50, a1: 60, b2: 40, a2: 30, db: 10, da: 30, dUp: 40, dDown: -20 })
    expect(found).toMatchObject({ plainDb: 10, halfDb: 5, misfit: null, branch: 1, outside: false })
    expect(found.right).toEqual({ plainB: 50, slopeB: 1, sinB: 1, cosB: 0, sinA: 1, cosA: 0 })
  })

  test('of angles, in radians', () => {
    const found = bar('spherical', [50, 60, 40, 30], -1, true)
    for (const [name, degrees] of [
      ['b1', 50],
      ['a1', 60],
      ['b2', 40],
      ['a2', 30],
      ['db', 10],
      ['da', 30],
      ['dUp', 40],
      ['dDown', -20],
    ] as const)
      expect(found[name]).toBeCloseTo(degrees * RAD, 12)
    expect(found.plainDb).toBeCloseTo(Math.sin(10 * RAD), 12)
    expect(found.halfDb).toBeCloseTo(Math.sin(5 * RAD), 12)
    expect(found).toMatchObject({ branch: -1, outside: true })
    expect(found.left.plainB).toBeCloseTo(Math.sin(40 * RAD), 12)
    expect(found.left.slopeB).toBeCloseTo(Math.cos(40 * RAD), 12)
    expect(found.left.sinA).toBeCloseTo(0.5, 12)
    expect(found.right.cosA).toBeCloseTo(0.5, 12)
    expect(found.right.cosB).toBeCloseTo(Math.cos(50 * RAD), 12)
  })

  test('that rounding alone makes are nought', () => {
    expect(bar('planar', [0.1 + 0.2, 1, 0.3, 1]).db).toBe(0)
    expect(bar('planar', [0.3 + 2e-9, 1, 0.3, 1]).db).toBeGreaterThan(0)
  })
})

describe('whether the stop is exactly flat', () => {
  test.each([
    ['planar', [30, 40, 20, 10], true],
    ['planar', [30, 40, 20, 10.001], false],
    ['planar', [100, 80, 100, 80], false],
    ['spherical', [50, 60, 40, 30], true],
    ['spherical', [50, 60, 40, 31], false],
    // All four make up one whole sheet.
    ['spherical', [100, 80, 100, 80], true],
    ['spherical', [120, 95, 80, 65], true],
    ['spherical', [100, 80, 100, 81], false],
    ['spherical', [100, 80, 80, 80], false],
  ] as const)('%s with %j: %s', (form, sides, full) => {
    expect(bar(form, sides).full).toBe(full)
    const [, most] = rangeOf(bar(form, sides))
    if (full) expect(most).toBe(180)
  })

  test('both joints in one line when flat', () => {
    expect(bar('spherical', [100, 80, 80, 80]).straight).toBe(true)
    expect(bar('spherical', [90, 60, 90, 60]).straight).toBe(true)
    expect(bar('spherical', [100, 80, 81, 80]).straight).toBe(false)
    expect(bar('spherical', [60, 80, 60, 80]).straight).toBe(false)
    // Lengths that make 180 mm are in no line for that.
    expect(bar('planar', [100, 80, 80, 80]).straight).toBe(false)
  })
})

describe('shutting', () => {
  test('popped inside against the outer parts, else against the inner ones', () => {
    for (const [branch, outside, outer] of [
      [1, false, true],
      [-1, false, false],
      [1, true, false],
      [-1, true, true],
    ] as const) {
      expect(shutsOuter({ branch, outside })).toBe(outer)
      const gap = shutGap(bar('planar', [50, 60, 40, 30], branch, outside))
      expect(gap).toEqual({ gap: outer ? 40 : -20, unit: 'mm' })
      const turn = shutGap(bar('spherical', [50, 60, 40, 30], branch, outside))
      expect(turn.gap).toBeCloseTo(outer ? 40 : -20, 9)
      expect(turn.unit).toBe('deg')
    }
  })

  test('a piece as wide as its bases, still down, lies in its host; one popped does not', () => {
    expect(liesInHost(bar('planar', [30, 30, 20, 20], -1))).toBe(true)
    expect(liesInHost(bar('planar', [30, 30, 20, 20], 1, true))).toBe(true)
    expect(liesInHost(bar('planar', [30, 30, 20, 20], 1))).toBe(false)
    expect(liesInHost(bar('planar', [30, 31, 20, 20], -1))).toBe(false)
    expect(liesInHost(bar('planar', [30, 30, 20, 21], -1))).toBe(false)
    // Popped, where base and facet make half a turn on either side.
    expect(liesInHost(bar('spherical', [70, 110, 50, 130], 1))).toBe(true)
    expect(liesInHost(bar('spherical', [70, 110, 50, 131], 1))).toBe(false)
    expect(liesInHost(bar('spherical', [70, 111, 50, 130], 1))).toBe(false)
    expect(liesInHost(bar('spherical', [60, 60, 50, 50], 1))).toBe(false)
  })
})

describe('where a facet comes into the plane of its page', () => {
  test('is told by the law of cosines about the host crease', () => {
    // Walls of 36 and 40 on feet of 30: the right one in line with its page, its ridge 66 out, the left one 40 away
    // from there; the left one in line, 70 out, and 36 from the right joint there is no triangle for: 70 - 30 > 36.
    const found = alignments(bar('planar', [30, 36, 30, 40]))
    const least = Math.acos((30 * 30 + 66 * 66 - 40 * 40) / (2 * 30 * 66)) * DEG
    expect(found).toHaveLength(1)
    expect(found[0]).toBeCloseTo(least, 9)
    // Still down the ridge is within: 30 - 36 = -6, on the other side of the gutter.
    const down = alignments(bar('planar', [30, 36, 30, 40], -1))
    for (const w of down) {
      expect(w).toBeGreaterThan(0)
      expect(w).toBeLessThan(180)
    }
  })

  test('is never where the piece shuts flat', () => {
    expect(alignments(bar('planar', [30, 40, 30, 40]))).toEqual([])
    expect(alignments(bar('spherical', [50, 60, 40, 70]))).toEqual([])
  })

  test('on the sphere as well', () => {
    // cos a' = cos b' cos q + sin b' sin q cos w with q = 50 + 60 = 110, b' = 40, a' = 75.
    const found = alignments(bar('spherical', [50, 60, 40, 75]))
    const [b, q, a] = [40 * RAD, 110 * RAD, 75 * RAD]
    const w = Math.acos((Math.cos(a) - Math.cos(b) * Math.cos(q)) / (Math.sin(b) * Math.sin(q))) * DEG
    expect(found.some((at) => Math.abs(at - w) < 1e-6)).toBe(true)
  })
})

describe('the range', () => {
  test('ends where both facets span the joints, and begins where their difference does', () => {
    // Feet of 30 and 20: at w the joints are sqrt(900 + 400 - 1200 cos w) apart. Walls of 25 and 10: from 15 to 35.
    const [least, most] = rangeOf(bar('planar', [30, 25, 20, 10]))
    expect(least).toBeCloseTo(Math.acos((1300 - 225) / 1200) * DEG, 9)
    expect(most).toBeCloseTo(Math.acos((1300 - 1225) / 1200) * DEG, 9)
    // One that shuts flat begins there, one whose walls reach across ends flat.
    expect(rangeOf(bar('planar', [30, 25, 20, 35]))[0]).toBe(0)
    expect(rangeOf(bar('planar', [30, 45, 20, 60]))[1]).toBe(180)
    // Without feet there is nothing to span.
    expect(rangeOf(bar('planar', [0, 25, 20, 30]))).toEqual([0, 180])
  })

  test('on the sphere by the law of cosines', () => {
    const apart = (w: number) =>
      Math.cos(50 * RAD) * Math.cos(40 * RAD) + Math.sin(50 * RAD) * Math.sin(40 * RAD) * Math.cos(w * RAD)
    const [least, most] = rangeOf(bar('spherical', [50, 45, 40, 25]))
    expect(apart(least)).toBeCloseTo(Math.cos(20 * RAD), 9)
    expect(apart(most)).toBeCloseTo(Math.cos(70 * RAD), 9)
  })
})
