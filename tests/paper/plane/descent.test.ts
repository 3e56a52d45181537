// Small sets of equations, solved on paper.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Bounds } from '../../../src/paper/plane/descent.ts'
import { descended, slopes, solution } from '../../../src/paper/plane/descent.ts'

const FREE: Bounds = { min: -1e6, max: 1e6 }

describe('linear equations', () => {
  test('two and three of them, as by hand', () => {
    // 2x + y = 5, x + 3y = 10: x = 1, y = 3.
    expect(
      solution(
        [
          [2, 1],
          [1, 3],
        ],
        [5, 10],
      )?.map((v) => Number(v.toFixed(9))),
    ).toEqual([1, 3])
    // x + 2y + 3z = 14, 2x - y + z = 3, 3x + y - 2z = -1: (1, 2, 3).
    const three = solution(
      [
        [1, 2, 3],
        [2, -1, 1],
        [3, 1, -2],
      ],
      [14, 3, -1],
    )
    expect(three?.map((v) => Number(v.toFixed(9)))).toEqual([1, 2, 3])
    expect(solution([[4]], [6])).toEqual([1.5])
  })

  test('a nought in the corner is no hindrance: rows change places', () => {
    expect(
      solution(
        [
          [0, 1],
          [1, 0],
        ],
        [7, 4],
      ),
    ).toEqual([4, 7])
    expect(
      solution(
        [
          [0, 2, 0],
          [0, 0, 4],
          [8, 0, 0],
        ],
        [2, 8, 24],
      ),
    ).toEqual([3, 1, 2])
  })

  test('the largest pivot is taken, or digits are lost', () => {
    // With 1e-17 as a pivot x would come out as 0; it is 1 to within 1e-16 (Forsythe and Moler's example).
    const found = solution(
      [
        [1e-11, 1],
        [1, 1],
      ],
      [1, 2],
    ) as number[]
    expect(found[0]).toBeCloseTo(1, 10)
    expect(found[1]).toBeCloseTo(1, 10)
  })

  test('rows that say the same, or nothing, have no one solution', () => {
    expect(
      solution(
        [
          [1, 2],
          [2, 4],
        ],
        [3, 6],
      ),
    ).toBeNull()
    expect(
      solution(
        [
          [1, 2],
          [2, 4],
        ],
        [3, 7],
      ),
    ).toBeNull()
    expect(solution([[0]], [1])).toBeNull()
    expect(solution([[1e-13]], [1])).toBeNull()
    expect(solution([[Number.NaN]], [1])).toBeNull()
    expect(solution([[2e-12]], [2e-12])).toEqual([1])
  })

  test('put in again they hold', () => {
    const number = fc.integer({ min: -9, max: 9 })
    fc.assert(
      fc.property(
        fc.array(number, { minLength: 9, maxLength: 9 }),
        fc.tuple(number, number, number),
        ([a = 0, b = 0, c = 0, d = 0, e = 0, f = 0, g = 0, h = 0, i = 0], right) => {
          const rows = [
            [a, b, c],
            [d, e, f],
            [g, h, i],
          ]
          // Sarrus' rule.
          const determinant = a * e * i + b * f * g + c * d * h - c * e * g - b * d * i - a * f * h
          const x = solution(rows, right)
          if (determinant === 0) return
          expect(x).not.toBeNull()
          rows.forEach((row, k) => {
            const sum = row.reduce((all, v, j) => all + v * (x?.[j] ?? Number.NaN), 0)
            expect(sum).toBeCloseTo(right[k] as number, 6)
          })
        },
      ),
      { numRuns: 60 },
    )
  })
})

describe('slopes', () => {
  test('are those of calculus', () => {
    // x² y and x + 3 y at (2, 5): 2 x y = 20 and x² = 4; 1 and 3.
    const missed = ([x = 0, y = 0]: readonly number[]) => [x * x * y, x + 3 * y]
    const J = slopes(missed, [2, 5], missed([2, 5])) as number[][]
    expect(J[0]?.[0]).toBeCloseTo(20, 1)
    expect(J[0]?.[1]).toBeCloseTo(1, 6)
    expect(J[1]?.[0]).toBeCloseTo(4, 6)
    expect(J[1]?.[1]).toBeCloseTo(3, 6)
    expect(J).toHaveLength(2)
  })

  test('are taken from behind where there is nothing ahead, and are none where there is nothing on either side', () => {
    const upTo =
      (most: number, from = Number.NEGATIVE_INFINITY) =>
      ([x = 0]: readonly number[]) =>
        x > most || x < from ? null : [3 * x + 1]
    expect(slopes(upTo(4), [4], [13])?.[0]?.[0]).toBeCloseTo(3, 6)
    expect(slopes(upTo(1e9, 4), [4], [13])?.[0]?.[0]).toBeCloseTo(3, 6)
    expect(slopes(upTo(4, 4), [4], [13])).toBeNull()
  })

  test('are taken from behind where nothing moves ahead, and nought where nothing moves at all', () => {
    // The lesser of two cuts decides: past the other one more of it does nothing.
    const lesser = ([x = 0]: readonly number[]) => [Math.min(x, 20)]
    expect(slopes(lesser, [20], [20])?.[0]?.[0]).toBeCloseTo(1, 6)
    expect(slopes(lesser, [10], [10])?.[0]?.[0]).toBeCloseTo(1, 6)
    expect(slopes(lesser, [30], [20])?.[0]?.[0]).toBeCloseTo(0, 9)
    const ends = ([x = 0]: readonly number[]) => (x < 20 ? null : [20])
    expect(slopes(ends, [20], [20])?.[0]?.[0]).toBeCloseTo(0, 9)
  })
})

describe('a descent', () => {
  const near = (found: readonly number[] | undefined, wanted: readonly number[], digits = 2) => {
    expect(found).toHaveLength(wanted.length)
    for (const [k, v] of wanted.entries()) expect(found?.[k]).toBeCloseTo(v, digits)
  }

  test('of several ways takes the shortest', () => {
    // x + y = 6 from (0, 0) with x² + y² least: (3, 3); x + 2y = 10: (2, 4) (Lagrange).
    near(descended(([x = 0, y = 0]) => [x + y - 6], [0, 0], [FREE, FREE], 1e-6)?.x, [3, 3])
    near(descended(([x = 0, y = 0]) => [x + 2 * y - 10], [0, 0], [FREE, FREE], 1e-6)?.x, [2, 4])
    // From (4, 0) the nearest point of x + y = 6 is (5, 1).
    near(descended(([x = 0, y = 0]) => [x + y - 6], [4, 0], [FREE, FREE], 1e-6)?.x, [5, 1])
    // Two equations in three unknowns: x + y + z = 6 and x = z from the origin: (2, 2, 2).
    const two = descended(
      ([x = 0, y = 0, z = 0]) => [x + y + z - 6, x - z],
      [0, 0, 0],
      [FREE, FREE, FREE],
      1e-6,
    )
    near(two?.x, [2, 2, 2])
    expect(two?.miss).toBeLessThan(1e-3)
  })

  test('finds roots that are no straight lines', () => {
    // x² = 2, and the circle of radius 5 with the line y = x + 1: (3, 4).
    near(descended(([x = 0]) => [x * x - 2], [1], [FREE], 1e-9)?.x, [Math.SQRT2], 6)
    near(
      descended(([x = 0, y = 0]) => [x * x + y * y - 25, y - x - 1], [2, 2], [FREE, FREE], 1e-9)?.x,
      [3, 4],
      6,
    )
  })

  test('keeps to its bounds, and the others do the rest', () => {
    // x + y = 6 with x no more than 1: y = 5.
    const capped = descended(([x = 0, y = 0]) => [x + y - 6], [0, 0], [{ min: 0, max: 1 }, FREE], 1e-6)
    near(capped?.x, [1, 5])
    expect(capped?.x[0]).toBeLessThanOrEqual(1)
    // And with x no less than -1 for x + y = -6.
    const floor = descended(([x = 0, y = 0]) => [x + y + 6], [0, 0], [{ min: -1, max: 9 }, FREE], 1e-6)
    near(floor?.x, [-1, -5])
    expect(floor?.x[0]).toBeGreaterThanOrEqual(-1)
    // It begins at its bound.
    near(descended(([x = 0, y = 0]) => [x + y - 6], [1, 0], [{ min: 0, max: 1 }, FREE], 1e-6)?.x, [1, 5])
    near(descended(([x = 0, y = 0]) => [x + y + 6], [-1, 0], [{ min: -1, max: 9 }, FREE], 1e-6)?.x, [-1, -5])
    // Nothing more to be had: x + y = 6 with both no more than 2 misses by 2.
    const both = { min: 0, max: 2 }
    const stuck = descended(([x = 0, y = 0]) => [x + y - 6], [0, 0], [both, both], 1e-6)
    near(stuck?.x, [2, 2])
    expect(stuck?.miss).toBeCloseTo(2, 6)
  })

  test('ends where it is near enough, and begins nowhere where nothing is', () => {
    let asked = 0
    const missed = ([x = 0]: readonly number[]) => {
      asked++
      return [x - 3]
    }
    expect(descended(missed, [3.01], [FREE], 0.02)).toEqual({ x: [3.01], miss: expect.closeTo(0.01, 9) })
    expect(asked).toBe(1)
    expect(descended(() => null, [0], [FREE], 1e-6)).toBeNull()
    // What can be had no nearer is given as it is: x² + 1 is never less than 1.
    const least = descended(([x = 0]) => [x * x + 1], [2], [FREE], 1e-6)
    expect(least?.miss).toBeGreaterThanOrEqual(1)
    expect(least?.miss).toBeLessThan(1.2)
  })

  test('never comes out farther off than it began, and goes round holes', () => {
    const holed = ([x = 0]: readonly number[]) => (x > 2.5 ? null : [x - 3])
    const found = descended(holed, [0], [FREE], 1e-6)
    expect(found?.x[0]).toBeGreaterThan(0)
    expect(found?.x[0]).toBeLessThanOrEqual(2.5)
    fc.assert(
      fc.property(fc.integer({ min: -5, max: 5 }), fc.integer({ min: -5, max: 5 }), (a, b) => {
        const missed = ([x = 0, y = 0]: readonly number[]) => [
          Math.sin(x) * y - a / 5,
          Math.cos(y) + x - b / 5,
        ]
        const start = [a / 3, b / 2]
        const began = Math.hypot(...missed(start))
        const end = descended(missed, start, [FREE, FREE], 1e-6)
        expect(end?.miss).toBeLessThanOrEqual(began)
        expect(end?.miss).toBeCloseTo(Math.hypot(...missed(end?.x ?? [])), 9)
      }),
      { numRuns: 40 },
    )
  })
})
