// The rings of a piece that is cut: shape and glue in a half of the plane, and back into the design; by hand.
import { describe, expect, test } from 'vitest'
import { signedArea } from '../../../src/paper/plane/convex.ts'
import type { Flat } from '../../../src/paper/plane/lay.ts'
import { cutTo, withRings } from '../../../src/paper/stuck/trim.ts'
import { layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const box = (x0: number, x1: number, y0: number, y1: number): readonly Flat[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

const area = (ring: readonly Flat[] | undefined): number => Math.abs(signedArea(ring ?? []))

const star = (id: string, more: object = {}) => ({
  id,
  kind: 'rider',
  on: 'page/right',
  shape: box(20, 60, 20, 60),
  glue: box(30, 50, 30, 50),
  ...more,
})

describe('a piece cut to a half of the plane', () => {
  const rings = { shape: box(0, 40, 0, 40), glue: box(10, 30, 10, 30) }

  test('keeps what lies there, and its glue', () => {
    const found = cutTo(rings, { way: [0, 1], upTo: 20 })
    expect(area(found?.shape)).toBeCloseTo(800, 9)
    expect(area(found?.glue)).toBeCloseTo(200, 9)
    expect(cutTo(rings, { way: [0, 1], upTo: 40 })).toEqual(rings)
  })

  test('is lost where no glue is left', () => {
    expect(cutTo(rings, { way: [0, 1], upTo: 9 })).toBeNull()
    expect(cutTo(rings, { way: [0, 1], upTo: -1 })).toBeNull()
    // Glue of 9 mm², 3 by 3, is enough: common practice, no source.
    expect(cutTo({ ...rings, glue: box(10, 13, 10, 30) }, { way: [0, 1], upTo: 13.001 })).not.toBeNull()
    expect(cutTo({ ...rings, glue: box(10, 13, 10, 30) }, { way: [0, 1], upTo: 12.99 })).toBeNull()
  })

  test('of several parts keeps the one with most glue', () => {
    // A bridge between two feet: the left foot is 10 wide, the right one 20, and so is the glue on them.
    const arch: readonly Flat[] = [
      [0, 0],
      [10, 0],
      [10, 30],
      [30, 30],
      [30, 0],
      [50, 0],
      [50, 40],
      [0, 40],
    ]
    const found = cutTo({ shape: arch, glue: arch }, { way: [0, 1], upTo: 20 })
    expect(area(found?.glue)).toBeCloseTo(400, 9)
    expect(Math.min(...(found?.shape ?? []).map(([x]) => x))).toBe(30)
  })
})

describe('rings written into a design', () => {
  const made = design([
    layer('lamp', 'gutter', 100, 120, 9),
    star('one', { across: 3, along: 4, turn: 20, size: 50 }),
    star('two'),
  ])

  test('change that piece alone', () => {
    const next = withRings(made, 'one', { shape: box(1, 9, 1, 9), glue: box(2, 8, 2, 8) })
    expect(next.mechanisms[0]).toBe(made.mechanisms[0])
    expect(next.mechanisms[2]).toBe(made.mechanisms[2])
    const one = next.mechanisms[1]
    expect(one).toMatchObject({ across: 0, along: 0, turn: 0, shape: box(1, 9, 1, 9), glue: box(2, 8, 2, 8) })
    expect(one).not.toHaveProperty('size')
  })

  test('are rounded to hundredths', () => {
    const next = withRings(made, 'two', {
      shape: box(1.234, 9.876, 1.005, 9),
      glue: box(2.001, 8, 2, 8),
    }).mechanisms[2] as unknown as { shape: readonly Flat[]; glue: readonly Flat[] }
    expect(next.shape[0]?.[0]).toBe(1.23)
    expect(next.shape[1]?.[0]).toBe(9.88)
    expect(next.glue[0]).toEqual([2, 2])
  })

  test('change nothing of what is no such piece', () => {
    expect(withRings(made, 'lamp', { shape: box(1, 9, 1, 9), glue: box(2, 8, 2, 8) })).toEqual(made)
  })
})
