// Worked by hand: a triangle in the plane z = 5, right over the corner of the axes.
import { expect, test } from 'vitest'
import { metAt } from '../../../src/paper/plane/ray.ts'
import type { Vec3 } from '../../../src/paper/plane/vector.ts'

const roof: readonly [Vec3, Vec3, Vec3] = [
  [0, 0, 5],
  [4, 0, 5],
  [0, 4, 5],
]

const NEVER = Number.POSITIVE_INFINITY

test.each<[name: string, from: Vec3, way: Vec3, far: number]>([
  ['from below', [1, 1, 0], [0, 0, 1], 5],
  ['from above it lies behind', [1, 1, 7], [0, 0, 1], -2],
  ['in lengths of the way', [1, 1, 0], [0, 0, 2], 2.5],
  ['aslant', [0, 1, 0], [1, 0, 5], 1],
  ['on its edge', [2, 2, 0], [0, 0, 1], 5],
  ['past its long side', [2.1, 2, 0], [0, 0, 1], NEVER],
  ['past its left side', [-0.1, 2, 0], [0, 0, 1], NEVER],
  ['past its near side', [2, -0.1, 0], [0, 0, 1], NEVER],
  ['along it', [1, 1, 0], [1, 0, 0], NEVER],
])('%s', (_, from, way, far) => {
  expect(metAt(from, way, roof)).toBeCloseTo(far, 12)
})
