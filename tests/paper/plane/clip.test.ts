import { polygonContains } from 'd3'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { clip, insideBox, between as partWay } from '../../../src/paper/plane/clip.ts'
import { isInConvex, isInPacked } from '../../../src/paper/plane/in-convex.ts'
import { runs } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'

const square: readonly Flat[] = [
  [0, 0],
  [4, 0],
  [4, 4],
  [0, 4],
]

const point: fc.Arbitrary<Flat> = fc.tuple(between(0, 10), between(0, 10))

/** A convex outline, counter-clockwise: points of a circle in order. */
const convex: fc.Arbitrary<Flat[]> = fc
  .record({
    at: point,
    radius: between(2, 7),
    turns: fc.array(between(0, 6.28), { minLength: 3, maxLength: 8 }),
  })
  .map(({ at: [x, y], radius, turns }) =>
    [...turns].sort((a, b) => a - b).map((t): Flat => [x + radius * Math.cos(t), y + radius * Math.sin(t)]),
  )

describe('an outline cut at a line', () => {
  test('keeps what lies above, says which edge each edge was, and which is the cut', () => {
    // Above y = 1: worked out by hand.
    const { points, edges } = clip(square, [-1, -1, 3, 3], partWay)
    expect(points).toEqual([
      [4, 1],
      [4, 4],
      [0, 4],
      [0, 1],
    ])
    expect(edges).toEqual([1, 2, 3, -1])
  })

  test('keeps whole what only touches the line, and of what lies below only what touches', () => {
    expect(clip(square, [0, 0, 4, 4], partWay)).toEqual({ points: [...square], edges: [0, 1, 2, 3] })
    expect(clip(square, [0, 0, -4, -4], partWay).points).toEqual([square[0], square[1]])
    // So near that it counts as on the line.
    expect(clip(square, [-1e-10, -1e-10, 4, 4], partWay, 1e-9).points).toEqual([...square])
    expect(clip(square, [-1e-8, -1e-8, 4, 4], partWay, 1e-9).points).not.toEqual([...square])
  })

  test('a line with two ends is cut once', () => {
    const line: readonly Flat[] = [
      [0, 0],
      [4, 0],
    ]
    expect(clip(line, [-1, 3], partWay, 0, false)).toEqual({
      points: [
        [1, 0],
        [4, 0],
      ],
      edges: [0, 1],
    })
  })
})

test('the stretch of a segment in a box is where its points are in the box, looked at one by one', () => {
  const [left, top, right, bottom] = [2, 3, 7, 8] as const
  fc.assert(
    fc.property(point, point, between(0, 1), (a, b, t) => {
      const found = insideBox(a, b, [left, top, right, bottom])
      const [x, y] = partWay(a, b, t)
      const edge = Math.min(...[x - left, right - x, y - top, bottom - y].map(Math.abs))
      fc.pre(edge > 1e-9)
      expect(found !== null && t >= found[0] && t <= found[1]).toBe(
        x > left && x < right && y > top && y < bottom,
      )
    }),
    runs(2000),
  )
})

test('a segment along the box, beside it and across its corner', () => {
  const box = [0, 0, 4, 4] as const
  expect(insideBox([-2, 4], [6, 4], box)).toEqual([0.25, 0.75])
  expect(insideBox([-2, 4.001], [6, 4.001], box)).toBeNull()
  expect(insideBox([1, 1], [3, 3], box)).toEqual([0, 1])
  expect(insideBox([-1, 1], [1, -1], box)).toBeNull()
})

test('a point lies in a convex outline where d3’s even-odd count says so, packed or not', () => {
  fc.assert(
    fc.property(convex, point, (outline, p) => {
      const expected = polygonContains(
        outline.map(([x, y]): [number, number] => [x, y]),
        [p[0], p[1]],
      )
      expect(isInConvex(outline, p)).toBe(expected)
      expect(isInPacked(Float64Array.from(outline.flat()), p[0], p[1])).toBe(expected)
    }),
    runs(2000),
  )
})

test('the edge counts, and as much beyond it as is allowed', () => {
  const packed = Float64Array.from(square.flat())
  expect(isInConvex(square, [4, 2])).toBe(true)
  expect(isInPacked(packed, 4, 2)).toBe(true)
  expect(isInPacked(packed, 4.01, 2)).toBe(false)
  expect(isInPacked(packed, 4.01, 2, 0.02)).toBe(true)
  expect(isInPacked(packed, 4.03, 2, 0.02)).toBe(false)
})
