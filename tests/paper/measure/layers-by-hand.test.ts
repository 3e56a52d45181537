// Where most panels of a shut card lie on one another: squares stuck on its pages, counted by hand.
import { describe, expect, test } from 'vitest'
import { mostLayers } from '../../../src/paper/measure/layers.ts'
import { compile } from '../../../src/paper/motion/pose.ts'
import { layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const star = (id: string, on: string, a: number, l: number, size = 20) => {
  const shape = [
    [a, l],
    [a + size, l],
    [a + size, l + size],
    [a, l + size],
  ]
  return { id, kind: 'rider', on, shape, glue: shape }
}

const most = (mechanisms: readonly object[], enough?: number) =>
  mostLayers(compile(design(mechanisms)), enough)

/** Whether the spot is that of a square from (a, l) on, z away from the gutter and y along it. */
const isIn = ({ at }: ReturnType<typeof most>, [a0, a1]: number[], [l0, l1]: number[]): boolean =>
  at.z > (a0 as number) && at.z < (a1 as number) && at.y > (l0 as number) && at.y < (l1 as number)

describe('pages and what is stuck on them', () => {
  test('a bare card is two pages thick', () => {
    const found = most([])
    expect(found.count).toBe(2)
    expect([...found.panels].sort()).toEqual([0, 1])
    expect(isIn(found, [0, 105], [0, 148])).toBe(true)
  })

  test.each([
    ['one', [star('s', 'page/right', 20, 30)], 3, [20, 40], [30, 50]],
    [
      'two that overlap',
      [star('s', 'page/right', 20, 30), star('t', 'page/right', 30, 45)],
      4,
      [30, 40],
      [45, 50],
    ],
    [
      'two on two pages',
      [star('s', 'page/right', 20, 30), star('t', 'page/left', 30, 45)],
      4,
      [30, 40],
      [45, 50],
    ],
    [
      'three, and two elsewhere',
      [
        star('s', 'page/right', 60, 90),
        star('t', 'page/left', 60, 90),
        star('u', 'page/right', 20, 30),
        star('v', 'page/left', 32, 38),
        star('w', 'page/right', 25, 42),
      ],
      5,
      [32, 40],
      [42, 50],
    ],
    [
      'a small one in the middle of a large one',
      [star('s', 'page/right', 20, 20, 80), star('t', 'page/left', 50, 55, 6)],
      4,
      [50, 56],
      [55, 61],
    ],
  ] as const)('%s', (_, mechanisms, count, across, along) => {
    const found = most(mechanisms)
    expect(found.count).toBe(count)
    expect(found.panels).toHaveLength(count)
    expect(isIn(found, [...across], [...along])).toBe(true)
  })

  test.each([
    ['across', 0.05, 4],
    ['across', -0.05, 3],
    ['along', 0.05, 4],
    ['along', -0.05, 3],
    ['across', 0, 3],
    ['along', 0, 3],
  ] as const)('overlapping %s by %d mm, a hair: %d', (way, by, count) => {
    const [a, l] = way === 'across' ? [40 - by, 30] : [20, 50 - by]
    expect(most([star('s', 'page/right', 20, 30), star('t', 'page/right', a, l)]).count).toBe(count)
  })

  test('in a row of many, the one spot that is deepest', () => {
    // A staircase of twelve, each overlapping the next by 2 mm; over one overlap lies one more.
    const stairs = Array.from({ length: 12 }, (_, k) => star(`s${k}`, 'page/right', 4 + 8 * k, 3 + 8 * k, 10))
    expect(most(stairs).count).toBe(4)
    const found = most([...stairs, star('t', 'page/left', 60, 59, 3)])
    expect(found.count).toBe(5)
    expect(isIn(found, [60, 62], [59, 61])).toBe(true)
  })
})

describe('holes', () => {
  test('are no paper: a layer lies over the pages beyond the hole it left', () => {
    // Cut 20 deep, shut its strip lies from 20 to 40 mm, between the two pages.
    const found = most([layer('lamp', 'gutter', 40, 80, 20)])
    expect(found.count).toBe(4)
    expect(isIn(found, [20, 40], [40, 80])).toBe(true)
  })

  test('what is stuck over one counts without its page', () => {
    // Right over the hole of 40 by 20 mm: the star, nothing beneath; the strip lies beyond it.
    const found = most([layer('lamp', 'gutter', 40, 80, 30), star('s', 'page/right', 2, 45, 20)])
    expect(found.count).toBe(4)
    expect(isIn(found, [30, 60], [40, 80])).toBe(true)
  })
})

test('stops looking when it has found more than enough', () => {
  const three = [
    star('s', 'page/right', 20, 30),
    star('t', 'page/right', 22, 32),
    star('u', 'page/right', 24, 34),
  ]
  expect(most(three).count).toBe(5)
  expect(most(three, 2).count).toBeGreaterThan(2)
  expect(most(three, 5).count).toBe(5)
})
