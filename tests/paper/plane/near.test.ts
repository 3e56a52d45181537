// Boxes that come near each other: sweep and prune against every two of them.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { areNear, extentOf, nearPairs } from '../../../src/paper/plane/near.ts'
import { runs } from '../shared/designs.ts'

const span = fc
  .tuple(fc.integer({ min: -30, max: 30 }), fc.integer({ min: 0, max: 6 }))
  .map(([low, wide]) => [low, low + wide] as const)

const boxes = (axes: number) =>
  fc.array(
    fc.array(span, { minLength: axes, maxLength: axes }).map((spans) => spans.flat()),
    { maxLength: 30 },
  )

/** How far two boxes are apart along the axis on which they are farthest apart; 0 or below: they touch. */
const apart = (one: readonly number[], two: readonly number[]): number =>
  Math.max(
    ...Array.from({ length: one.length / 2 }, (_, k) => {
      const [a, b, c, d] = [one[2 * k], one[2 * k + 1], two[2 * k], two[2 * k + 1]] as [
        number,
        number,
        number,
        number,
      ]
      return Math.max(c - b, a - d)
    }),
  )

describe('near pairs', () => {
  test.each([1, 2, 3])('in %d dimensions are all that come within reach, once each and in order', (axes) => {
    fc.assert(
      fc.property(boxes(axes), fc.integer({ min: 0, max: 4 }), (all, reach) => {
        const wanted = all.flatMap((one, i) =>
          all.flatMap((two, j) => (j > i && apart(one, two) <= reach ? [[i, j]] : [])),
        )
        expect(nearPairs(all, reach)).toEqual(wanted)
        all.forEach((one, i) => {
          for (const two of all.slice(i + 1)) {
            expect(areNear(one, two, reach)).toBe(apart(one, two) <= reach)
            expect(areNear(two, one, reach)).toBe(apart(one, two) <= reach)
          }
        })
      }),
      runs(150),
    )
  })

  test('touching is near without any reach, a hair off is not', () => {
    const one = [0, 1, 0, 1]
    expect(nearPairs([one, [1, 2, 1, 2]])).toEqual([[0, 1]])
    expect(nearPairs([one, [1.001, 2, 0, 1]])).toEqual([])
    expect(nearPairs([])).toEqual([])
  })

  test('a row along any axis is looked at along that axis: boxes far apart are never held against each other', () => {
    // Counted by reading: each box is read a few times, not once for every other one.
    for (const axis of [0, 1, 2]) {
      let reads = 0
      const row = Array.from({ length: 300 }, (_, k) => {
        const box = [0, 1, 0, 1, 0, 1]
        box[2 * axis] = 10 * k
        box[2 * axis + 1] = 10 * k + 1
        return new Proxy(box, {
          get: (of, name, receiver) => {
            reads++
            return Reflect.get(of, name, receiver) as unknown
          },
        })
      })
      expect(nearPairs(row)).toEqual([])
      expect(reads / 300).toBeLessThan(60)
    }
  })

  test('the box round points is their least and greatest', () => {
    expect(
      extentOf([
        [3, -2],
        [-1, 5],
        [2, 7],
      ]),
    ).toEqual([-1, 3, -2, 7])
    expect(extentOf([[4, 9]])).toEqual([4, 4, 9, 9])
  })
})
