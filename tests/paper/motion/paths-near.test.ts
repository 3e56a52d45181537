// Bodies near an end of the motion, where heights are told in the measure of the way from there; and the box that a
// body sweeps, corner by corner. Bounds worked by hand.
import { describe, expect, test } from 'vitest'
import { compile } from '../../../src/paper/index.ts'
import { bodyOf, motionOf } from '../../../src/paper/motion/motion.ts'
import type { Path } from '../../../src/paper/motion/paths.ts'
import { beyondNear, follow, roomFor, sweptBox } from '../../../src/paper/motion/paths.ts'
import { layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

type Corner = readonly [across: number, along: number, height: number]

const path = (corners: readonly { from: Corner; to: Corner; m: number }[]): Path => ({
  corners: corners.length,
  from: Float64Array.from(corners.flatMap(({ from }) => from)),
  to: Float64Array.from(corners.flatMap(({ to }) => to)),
  M: Float64Array.from(corners.map(({ m }) => m)),
})

const one = (from: Corner, to: Corner, m: number): Path => path([{ from, to, m }])

const way = (x: number, y: number, z: number, edge: number) => ({ x, y, z, edge, gap: 0 })

describe('straight up from the plane', () => {
  // Nothing but heights counts: a at the end, b at the other, and between them no more than M sags:
  // (sqrt a + sqrt b)² > M.
  test.each([
    [4, 9, 24.9, true],
    [4, 9, 25.1, false],
    [0, 5, 4.9, true],
    [0, 5, 5.1, false],
    [1, 1, 3.9, true],
    [1, 1, 4.1, false],
    [1, 4, 8.9, true],
    [1, 4, 9.1, false],
  ])('from %d to %d, bent by %d: %s', (a, b, m, is) => {
    expect(beyondNear(one([7, 8, a], [7, 8, b], m), 'from', way(0, 0, 1, 0), 0.1)).toBe(is)
    expect(beyondNear(one([7, 8, b], [7, 8, a], m), 'to', way(0, 0, 1, 0), 0.1)).toBe(is)
    // Under the plane the same, downwards.
    expect(beyondNear(one([7, 8, -a], [7, 8, -b], m), 'from', way(0, 0, -1, 0), 0.1)).toBe(is)
  })

  test('what stays in the plane is beyond it only if it does not bend', () => {
    expect(beyondNear(one([7, 8, 0], [7, 8, 0], 0), 'from', way(0, 0, 1, 0), 0.1)).toBe(true)
    expect(beyondNear(one([7, 8, 0], [7, 8, 0], 1e-3), 'from', way(0, 0, 1, 0), 0.1)).toBe(false)
    expect(beyondNear(one([7, 8, 0], [7, 8, 1], 0), 'from', way(0, 0, 1, 0), 0.1)).toBe(true)
    expect(beyondNear(one([7, 8, 1], [7, 8, 0], 0), 'from', way(0, 0, 1, 0), 0.1)).toBe(true)
  })

  test('every corner counts', () => {
    const good = { from: [0, 0, 4], to: [0, 0, 9], m: 20 } as const
    const bad = { from: [0, 0, 4], to: [0, 0, 9], m: 26 } as const
    const under = { from: [0, 0, 4], to: [0, 0, -1], m: 0 } as const
    const still = { from: [0, 0, 0], to: [0, 0, 0], m: 0 } as const
    const is = (...corners: readonly (typeof good | typeof bad | typeof under | typeof still)[]) =>
      beyondNear(path(corners), 'from', way(0, 0, 1, 0), 0.1)
    expect(is(good, good)).toBe(true)
    expect(is(still, good)).toBe(true)
    expect(is(good, bad)).toBe(false)
    expect(is(bad, good)).toBe(false)
    expect(is(still, bad)).toBe(false)
    expect(is(good, under)).toBe(false)
  })
})

describe('aslant', () => {
  // At the far end: z h + width (x a + y l - edge). In between no more sags than M (hypot(z, g) + g) + |width x da + ...|,
  // g = width hypot(x, y).
  const [x, y, z, edge, width] = [3, 4, 12, 2, 0.1]
  const g = 0.5
  const spread = Math.hypot(12, 0.5) + 0.5

  const far = (a: number, l: number, h: number) => z * h + width * (x * a + y * l - edge)

  test.each([
    [5, 6, 1],
    [-20, 6, 1],
    [5, -30, 0.8],
  ])('with its far end at (%d, %d, %d)', (a1, l1, h1) => {
    const [a0, l0, h0] = [4, 7, 0.5]
    const [a, b] = [z * h0, far(a1, l1, h1)]
    const moved = Math.abs(width * (x * (a1 - a0) + y * (l1 - l0)))
    const room = (Math.sqrt(a) + Math.sqrt(b)) ** 2 - moved
    if (!(b > 0) || room <= 0) {
      expect(beyondNear(one([a0, l0, h0], [a1, l1, h1], 0), 'from', way(x, y, z, edge), width)).toBe(false)
      return
    }
    const most = room / spread
    expect(g).toBe(width * Math.hypot(x, y))
    expect(beyondNear(one([a0, l0, h0], [a1, l1, h1], most * 0.999), 'from', way(x, y, z, edge), width)).toBe(
      true,
    )
    expect(beyondNear(one([a0, l0, h0], [a1, l1, h1], most * 1.001), 'from', way(x, y, z, edge), width)).toBe(
      false,
    )
    expect(beyondNear(one([a1, l1, h1], [a0, l0, h0], most * 0.999), 'to', way(x, y, z, edge), width)).toBe(
      true,
    )
  })
})

describe('the box that a page sweeps', () => {
  const motion = motionOf(compile(design([])))
  const stretch = motion.stretch(motion.still(0), motion.still(180))

  test('is wider by each corner’s own bend', () => {
    // A point r from the gutter bends by r / 4 per radian², and so is within r / 4 pi² / 8 of its chord.
    const off = (r: number) => ((r / 4) * Math.PI ** 2) / 8
    const body = bodyOf(1, [
      [100, 10],
      [0, 20],
      [50, 30],
      [8, 140],
    ])
    const [x0, x1, y0, y1, z0, z1] = sweptBox(stretch, body, 0)
    expect(x0).toBeCloseTo(-off(100), 9)
    expect(x1).toBeCloseTo(100 + off(100), 9)
    expect(y0).toBeCloseTo(10 - off(100), 9)
    expect(y1).toBeCloseTo(140 + off(8), 9)
    expect(z0).toBeCloseTo(-off(100), 9)
    expect(z1).toBeCloseTo(100 + off(100), 9)
    expect(sweptBox(stretch, bodyOf(1, [[0, 20]]), 0.25)).toEqual(
      Float64Array.of(-0.25, 0.25, 19.75, 20.25, -0.25, 0.25),
    )
  })
})

test('a path makes room for as many corners as come, and tells how many there are', () => {
  const motion = motionOf(compile(design([layer('step', 'gutter', 40, 80, 20)])))
  const scene = { motion, lifts: { at: () => 0, most: () => 0, bend: () => 0 } }
  const stretch = motion.stretch(motion.still(60), motion.still(90))
  const kept = roomFor(0)
  const three = bodyOf(1, [
    [0, 0],
    [10, 0],
    [10, 10],
  ])
  const found = follow(kept, scene, stretch, three, 0)
  expect(found).toBe(kept)
  expect(kept.corners).toBe(3)
  // At 90 degrees the right page stands square to the left one: 10 across are 10 off it.
  expect(Math.abs(kept.to[5] as number)).toBeCloseTo(10, 9)
  expect(follow(kept, scene, stretch, bodyOf(1, [[5, 7]]), 0).corners).toBe(1)
  expect([kept.to[0], kept.to[1]].map((v) => Math.round((v as number) * 1e6) / 1e6 + 0)).toEqual([0, 7])
})
