// The largest circle in an outline: radii from school geometry.
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/plane/lay.ts'
import { roundest } from '../../../src/paper/plane/roundest.ts'

const box = (a0: number, l0: number, a1: number, l1: number): readonly Flat[] => [
  [a0, l0],
  [a1, l0],
  [a1, l1],
  [a0, l1],
]

describe('the largest circle', () => {
  test.each([
    ['a square', box(10, 20, 50, 60), [30, 40], 20],
    ['a strip', box(10, 20, 100, 30), null, 5],
    [
      'a right triangle of 30, 40 and 50: (30 + 40 - 50) / 2',
      [
        [100, 50],
        [140, 50],
        [100, 80],
      ],
      [110, 60],
      10,
    ],
    [
      'an L of two arms 20 wide: touching both outer sides and the inner corner, r (1 + 1 / sqrt 2) = 20 sqrt 2 - r …',
      [
        [0, 0],
        [60, 0],
        [60, 20],
        [20, 20],
        [20, 60],
        [0, 60],
      ],
      null,
      // r from both outer sides and from (20, 20): (20 - r) sqrt 2 = r.
      (20 * Math.SQRT2) / (1 + Math.SQRT2),
    ],
  ] as const)('of %s', (_, outline, at, radius) => {
    const found = roundest([outline as readonly Flat[]])
    expect(found.radius).toBeLessThanOrEqual(radius + 1e-9)
    expect(found.radius).toBeGreaterThan(radius - 0.05)
    if (at) {
      expect(Math.abs(found.at[0] - at[0])).toBeLessThan(0.06)
      expect(Math.abs(found.at[1] - at[1])).toBeLessThan(0.06)
    }
  })

  test('keeps off holes and lines, and within every outline', () => {
    const square = box(0, 0, 40, 40)
    // Right of a hole 24 wide are 16; above a line at 10 are 30.
    expect(roundest([square], [box(0, 0, 24, 40)]).radius).toBeCloseTo(8, 1)
    const line = roundest([square], [], [{ a: [-5, 10], b: [45, 10] }])
    expect(line.radius).toBeCloseTo(15, 1)
    expect(line.at[1]).toBeCloseTo(25, 1)
    expect(roundest([square, box(30, 0, 90, 40)]).radius).toBeCloseTo(5, 1)
    expect(roundest([square, box(50, 0, 90, 40)])).toEqual({ at: [0, 0], radius: 0 })
    // A hole as large as all of it leaves nothing.
    expect(roundest([square], [box(-1, -1, 41, 41)]).radius).toBe(0)
  })
})
