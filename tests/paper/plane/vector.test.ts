// Vectors in space and lays in the plane, by hand.
import { describe, expect, test } from 'vitest'
import type { Lay } from '../../../src/paper/plane/lay.ts'
import {
  compose,
  isMirroring,
  laid,
  MIRROR,
  sameLay,
  throughLay,
  unlaid,
} from '../../../src/paper/plane/lay.ts'
import { turned } from '../../../src/paper/plane/turn.ts'
import type { Vec3 } from '../../../src/paper/plane/vector.ts'
import {
  add,
  cross,
  distance,
  dot,
  halfAngle,
  halfAngleInto,
  length,
  scale,
  subtract,
  unit,
} from '../../../src/paper/plane/vector.ts'

const a: Vec3 = [1, 2, 3]
const b: Vec3 = [4, -5, 6]

test('sums, products and lengths', () => {
  expect(add(a, b)).toEqual([5, -3, 9])
  expect(add(a, b, 2)).toEqual([9, -8, 15])
  expect(subtract(a, b)).toEqual([-3, 7, -3])
  expect(scale(b, 3)).toEqual([12, -15, 18])
  expect(dot(a, b)).toBe(4 - 10 + 18)
  // (2·6 + 3·5, 3·4 - 1·6, -1·5 - 2·4)
  expect(cross(a, b)).toEqual([27, 6, -13])
  expect(length([2, 3, 6])).toBe(7)
  expect(distance([1, 1, 1], [3, 4, 7])).toBe(7)
  expect(unit([2, 3, 6]).map((x) => 7 * x)).toEqual([2, 3, 6].map((x) => expect.closeTo(x, 12)))
  expect(unit([0, 0, 0])).toEqual([0, 0, 0])
})

describe('a turn about a line', () => {
  test.each([
    // A quarter turn about the line up through (1, 0, 0): x goes to y.
    [[3, 0, 5], 90, [1, 2, 5]],
    [[1, 2, 5], 90, [-1, 0, 5]],
    [[3, 0, 5], 180, [-1, 0, 5]],
    [[1, 0, 9], 70, [1, 0, 9]],
    [[3, 0, 0], 60, [2, Math.sqrt(3), 0]],
  ] as [Vec3, number, Vec3][])('takes %j by %d degrees to %j', (p, by, to) => {
    const found = turned(p, [1, 0, 0], [0, 0, 1], (by * Math.PI) / 180)
    for (const k of [0, 1, 2] as const) expect(found[k]).toBeCloseTo(to[k], 12)
  })
})

describe('half an opening', () => {
  test.each([
    [0, 0, 1],
    [60, 0.5, Math.sqrt(3) / 2],
    [90, Math.SQRT1_2, Math.SQRT1_2],
    [120, Math.sqrt(3) / 2, 0.5],
    [180, 1, 0],
  ])('of %d degrees has sine %d and cosine %d', (opening, sine, cosine) => {
    const [s, c] = halfAngle(opening)
    expect(s).toBeCloseTo(sine, 15)
    expect(c).toBeCloseTo(cosine, 15)
    const memory = Float64Array.of(7, 7, 7, 7)
    halfAngleInto(memory, 1, opening)
    expect([...memory]).toEqual([7, s, c, 7])
  })

  test('is exact at both ends, and loses no digits near flat', () => {
    expect(halfAngle(0)).toEqual([0, 1])
    expect(halfAngle(180)).toEqual([1, 0])
    // Half of 2e-9 degrees, as its own sine.
    expect(halfAngle(180 - 2 ** -29)[1] / ((2 ** -30 * Math.PI) / 180)).toBeCloseTo(1, 12)
  })
})

describe('a lay', () => {
  /** Along runs to the left, across up: a quarter turn, and no mirror. */
  const quarter: Lay = { origin: [10, 20], run: [-1, 0], off: [0, 1] }

  test('takes across and along to its plane, and back', () => {
    expect(laid(quarter, [3, 4])).toEqual([6, 23])
    expect(unlaid(quarter, [6, 23])).toEqual([3, 4])
    expect(
      throughLay(quarter, [
        [0, 0],
        [1, 2],
      ]),
    ).toEqual([
      [10, 20],
      [8, 21],
    ])
    expect(laid(sameLay, [3, 4])).toEqual([3, 4])
    expect(laid(MIRROR, [3, 4])).toEqual([-3, 4])
  })

  test('mirrors or not', () => {
    expect([sameLay, quarter, MIRROR].map(isMirroring)).toEqual([false, false, true])
    expect(isMirroring(compose(MIRROR, quarter))).toBe(true)
    expect(isMirroring(compose(MIRROR, MIRROR))).toBe(false)
  })

  test('is read through another', () => {
    const inner: Lay = { origin: [1, 2], run: [1, 0], off: [0, 1] }
    // (3, 4) lies at 1 + 4, 2 + 3 in the middle one, and so at 10 - 5, 20 + 5.
    expect(laid(compose(quarter, inner), [3, 4])).toEqual([5, 25])
    expect(laid(quarter, laid(inner, [3, 4]))).toEqual([5, 25])
  })
})
