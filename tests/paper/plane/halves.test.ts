// What lies in a half of the plane of squares and combs, by hand.
import { describe, expect, test } from 'vitest'
import { signedArea } from '../../../src/paper/plane/convex.ts'
import type { Half } from '../../../src/paper/plane/halves.ts'
import { depthIn, inHalf } from '../../../src/paper/plane/halves.ts'
import type { Flat } from '../../../src/paper/plane/lay.ts'

const square: readonly Flat[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]

const below = (upTo: number): Half => ({ way: [0, 1], upTo })

const areas = (outline: readonly Flat[], half: Half): number[] =>
  inHalf(outline, half)
    .map((part) => Math.abs(signedArea(part)))
    .sort((a, b) => a - b)

test('how deep a point lies within', () => {
  expect(depthIn(below(4), [7, 1])).toBe(3)
  expect(depthIn(below(4), [7, 6])).toBe(-2)
  expect(depthIn({ way: [0.6, 0.8], upTo: 10 }, [5, 5])).toBeCloseTo(3, 12)
})

describe('of a square', () => {
  test('is all, none, or what lies before the line', () => {
    expect(inHalf(square, below(10))).toEqual([square])
    expect(inHalf(square, below(11))).toEqual([square])
    expect(inHalf(square, below(-0.1))).toEqual([])
    expect(areas(square, below(4))).toEqual([expect.closeTo(40, 9)])
    expect(areas(square, { way: [0, -1], upTo: -4 })).toEqual([expect.closeTo(60, 9)])
    expect(areas(square, { way: [1, 0], upTo: 3 })).toEqual([expect.closeTo(30, 9)])
    // Across a corner: half of 4 by 4.
    expect(areas(square, { way: [Math.SQRT1_2, Math.SQRT1_2], upTo: 4 * Math.SQRT1_2 })).toEqual([
      expect.closeTo(8, 9),
    ])
  })

  test('has its corners where the line crosses', () => {
    const [part] = inHalf(square, below(4))
    const sorted = [...(part ?? [])].map(([x, y]) => `${x} ${y}`).sort()
    expect(sorted).toEqual(['0 0', '0 4', '10 0', '10 4'])
  })

  test('leaves nothing where the line only touches', () => {
    expect(inHalf(square, below(0))).toEqual([])
    expect(areas(square, below(1e-5))).toEqual([])
  })
})

describe('of a comb', () => {
  /** Three teeth of 2 by 8 mm on a back of 10 by 2. */
  const comb: readonly Flat[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [8, 10],
    [8, 2],
    [6, 2],
    [6, 10],
    [4, 10],
    [4, 2],
    [2, 2],
    [2, 10],
    [0, 10],
  ]

  test('is one part with its back, and three without', () => {
    // 20 for the back, and 3 teeth of 2 by 3.
    expect(areas(comb, below(5))).toEqual([expect.closeTo(38, 9)])
    expect(areas(comb, { way: [0, -1], upTo: -5 })).toEqual([10, 10, 10].map((x) => expect.closeTo(x, 9)))
    expect(areas([...comb].reverse(), { way: [0, -1], upTo: -5 })).toHaveLength(3)
  })

  test('is cut lengthwise into what hangs together', () => {
    // Right of 5: back 5 by 2, half of the middle tooth 1 by 8, the last one 2 by 8.
    expect(areas(comb, { way: [-1, 0], upTo: -5 })).toEqual([expect.closeTo(10 + 8 + 16, 9)])
    // From the teeth's ends down to above their roots, slanting: parts of their own.
    expect(areas(comb, { way: [0, -1], upTo: -9 })).toEqual([2, 2, 2].map((x) => expect.closeTo(x, 9)))
  })
})
