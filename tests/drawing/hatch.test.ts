import { describe, expect, test } from 'vitest'
import { hatch, strokes } from '../../src/drawing/pen/hatch.ts'
import type { Point } from '../../src/drawing/pen/marks.ts'
import { clipped } from '../../src/sheet/marks/clip.ts'

const length = (runs: readonly (readonly Point[])[]): number =>
  runs.reduce(
    (sum, [a, b]) => sum + Math.hypot((b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)),
    0,
  )

/** Gauss's area formula. */
const area = (outline: readonly Point[]): number =>
  Math.abs(
    outline.reduce((sum, [x, y], k) => {
      const [u, v] = outline[(k + 1) % outline.length] as Point
      return sum + x * v - u * y
    }, 0) / 2,
  )

const shapes: readonly { readonly name: string; readonly outline: readonly Point[] }[] = [
  {
    name: 'a square',
    outline: [
      [0, 0],
      [20, 0],
      [20, 20],
      [0, 20],
    ],
  },
  {
    name: 'a tab',
    outline: [
      [0, 0],
      [30, 0],
      [22, 8],
      [8, 8],
    ],
  },
  {
    name: 'a notched shape',
    outline: [
      [0, 0],
      [30, 0],
      [30, 20],
      [15, 6],
      [0, 20],
    ],
  },
]

describe('a hatch', () => {
  test.each(shapes)('fills $name: its lines times their distance make its area', ({ outline }) => {
    const step = 0.01
    expect((length(hatch(outline, step)) * step) / Math.SQRT2).toBeCloseTo(area(outline), 1)
  })

  test('stays inside a notch', () => {
    const runs = hatch(shapes[2]?.outline ?? [], 1)
    for (const [a, b] of runs) {
      const [x, y] = [((a?.[0] ?? 0) + (b?.[0] ?? 0)) / 2, ((a?.[1] ?? 0) + (b?.[1] ?? 0)) / 2]
      // Above the notch's two sides, from (30, 20) and (0, 20) to (15, 6).
      expect(y).toBeLessThanOrEqual(6 + (Math.abs(x - 15) * 14) / 15 + 1e-9)
    }
  })
})

test('a line to be taped is crossed by strokes, none beyond its ends', () => {
  const runs = strokes([
    [0, 0],
    [40, 0],
  ])
  expect(runs.length).toBe(20)
  for (const [x] of runs.flat()) {
    expect(x).toBeGreaterThan(0)
    expect(x).toBeLessThan(40)
  }
})

test('a line is clipped to the printable part of the page', () => {
  const page = [10, 10, 100, 60] as const
  expect(clipped([0, 30], [200, 30], page)).toEqual([
    [10, 30],
    [100, 30],
  ])
  expect(clipped([50, 0], [50, 30], page)).toEqual([
    [50, 10],
    [50, 30],
  ])
  expect(clipped([0, 5], [200, 5], page)).toBeNull()
  expect(clipped([0, 0], [5, 100], page)).toBeNull()
  expect(clipped([20, 20], [30, 40], page)).toEqual([
    [20, 20],
    [30, 40],
  ])
})

test('no line of a hatch runs along the area’s own long edges', () => {
  // A joint at 45 degrees, 70 mm long, with a tab of 8 mm, and its mirror image: seen from page’s left and right.
  const joint: readonly Point[] = [
    [0, 0],
    [50, -50],
    [50, -38],
    [12, 0],
  ]
  for (const side of [1, -1]) {
    const area = joint.map(([x, y]): Point => [side * x, y])
    for (const [a, b] of hatch(area)) {
      const [dx, dy] = [(b?.[0] ?? 0) - (a?.[0] ?? 0), (b?.[1] ?? 0) - (a?.[1] ?? 0)]
      // The long edges climb by side * 45 degrees: a line along them would have this product of nought.
      expect(Math.abs(dx * -1 - dy * side) / Math.hypot(dx, dy)).toBeGreaterThan(0.9)
    }
    expect(hatch(area).length).toBeGreaterThan(20)
  }
})
