import fc from 'fast-check'
import { expect, test } from 'vitest'
import { areNear, extentOf, nearPairs } from '../../../src/paper/plane/near.ts'
import { runs } from '../shared/designs.ts'

const box = fc
  .tuple(...[0, 1, 2].map(() => fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: 0, max: 4 }))))
  .map((axes) => axes.flatMap(([low, size]) => [low, low + size]))

/** Every two, held against each other by the definition: the gap along each axis. */
const byDefinition = (boxes: readonly (readonly number[])[], reach: number): number[][] =>
  boxes.flatMap((one, i) =>
    boxes.flatMap((two, j) => {
      const gaps = [0, 2, 4].map((k) =>
        Math.max((one[k] as number) - (two[k + 1] as number), (two[k] as number) - (one[k + 1] as number)),
      )
      return j > i && gaps.every((gap) => gap <= reach) ? [[i, j]] : []
    }),
  )

test('the pairs found are those whose gap along every axis is within reach, each once and in order', () => {
  fc.assert(
    fc.property(fc.array(box, { maxLength: 30 }), fc.integer({ min: 0, max: 3 }), (boxes, reach) => {
      expect(nearPairs(boxes, reach)).toEqual(byDefinition(boxes, reach))
    }),
    runs(200),
  )
})

test('a box of which nothing is known is near to all others', () => {
  const [nan, inf] = [Number.NaN, Number.POSITIVE_INFINITY]
  const boxes = [
    [0, 1, 0, 1],
    [nan, nan, nan, nan],
    [50, 51, 0, 1],
    [-inf, inf, -inf, inf],
    [-50, -49, 0, 1],
  ]
  expect(nearPairs(boxes)).toEqual([
    [0, 1],
    [0, 3],
    [1, 2],
    [1, 3],
    [1, 4],
    [2, 3],
    [3, 4],
  ])
})

test('boxes that only touch are near, and those a hair apart are not', () => {
  expect(areNear([0, 1, 0, 1], [1, 2, 0, 1], 0)).toBe(true)
  expect(areNear([0, 1, 0, 1], [1.001, 2, 0, 1], 0)).toBe(false)
  expect(
    extentOf([
      [3, -1],
      [0, 4],
    ]),
  ).toEqual([0, 3, -1, 4])
})
