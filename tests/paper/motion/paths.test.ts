// How paper moves as seen from a panel: coordinates by plain vectors, and bounds worked by hand.
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import type { Lifts } from '../../../src/paper/motion/lift.ts'
import { bodyOf, motionOf } from '../../../src/paper/motion/motion.ts'
import type { Path } from '../../../src/paper/motion/paths.ts'
import {
  beyond,
  beyondNear,
  clearOfBox,
  follow,
  roomFor,
  seen,
  sweptBox,
} from '../../../src/paper/motion/paths.ts'
import { layer } from '../shared/check-designs.ts'
import { design, gluedMoth, vFold } from '../shared/designs.ts'
import { crossOf, dotOf, minus, plus, times } from '../shared/space.ts'

const garden = design([
  vFold('beak', 'gutter', 110, -40, 50),
  layer('eye', 'beak/right', 20, 34, 6),
  gluedMoth({ apex: 20, foot: 25, ridge: 30 }),
])

/** Paper held off one panel by so much. */
const held = (panel: number, by: number): Lifts => ({
  at: (one) => (one === panel ? by : 0),
  most: (one) => (one === panel ? Math.abs(by) : 0),
  bend: () => 0,
})

const FLUSH = held(-1, 0)

/** Across, along and square to a panel, by three points of it that are lifted into space. */
function axesOf(opening: number, panel: number) {
  const poser = compile(garden)
  poser(opening)
  const { crease, side } = poser.model.panels[panel] ?? { crease: 0, side: 'right' }
  const origin = poser.lift(panel, [0, 0])
  const [across, along] = [minus(poser.lift(panel, [1, 0]), origin), minus(poser.lift(panel, [0, 1]), origin)]
  // Square to both, on the side of C x - S n: the right-handed way round on the right of a right-handed crease.
  const f = poser.frames[crease] as Float64Array
  const x = [f[3], f[4], f[5]] as unknown as Vec3
  const n = [f[9], f[10], f[11]] as unknown as Vec3
  const s = (side === 'left' ? -1 : 1) * (f[12] as number)
  const plain = crossOf(across, along)
  const up = dotOf(plain, plus(times(x, f[13] as number), times(n, -s))) < 0 ? times(plain, -1) : plain
  return { origin, across, along, up, lift: poser.lift, panels: poser.model.panels }
}

describe('a body seen from a panel', () => {
  const motion = motionOf(compile(garden))

  test.each([30, 90, 150])('lies across, along and square to it, at %d degrees', (opening) => {
    const still = motion.still(opening)
    const count = axesOf(opening, 0).panels.length
    for (let panel = 0; panel < count; panel++) {
      const { origin, across, along, up, lift, panels } = axesOf(opening, panel)
      panels.forEach(({ outline }, other) => {
        const found = seen({ motion, lifts: FLUSH }, still, bodyOf(other, outline), panel)
        outline.forEach((flat, k) => {
          const way = minus(lift(other, flat), origin)
          expect(found[3 * k]).toBeCloseTo(dotOf(way, across), 8)
          expect(found[3 * k + 1]).toBeCloseTo(dotOf(way, along), 8)
          expect(found[3 * k + 2]).toBeCloseTo(dotOf(way, up), 8)
        })
      })
    }
  })

  test('is off by what it is held off its own panel, and by what that panel is', () => {
    const [opening, by] = [70, 0.5]
    const still = motion.still(opening)
    const { panels } = axesOf(opening, 0)
    panels.forEach(({ outline }, other) => {
      const body = bodyOf(other, outline)
      const own = axesOf(opening, other)
      for (let panel = 0; panel < panels.length; panel++) {
        if (panel === other) continue
        const { across, along, up } = axesOf(opening, panel)
        const flush = seen({ motion, lifts: FLUSH }, still, body, panel)
        const off = seen({ motion, lifts: held(other, by) }, still, body, panel)
        const under = seen({ motion, lifts: held(panel, by) }, still, body, panel)
        for (let i = 0; i < flush.length; i += 3) {
          for (const [k, axis] of [across, along, up].entries())
            expect((off[i + k] as number) - (flush[i + k] as number)).toBeCloseTo(by * dotOf(own.up, axis), 8)
          expect((under[i + 2] as number) - (flush[i + 2] as number)).toBeCloseTo(-by, 8)
          expect([under[i], under[i + 1]]).toEqual([flush[i], flush[i + 1]])
        }
      }
    })
  })

  test('is followed from one end of a stretch to the other, with how far it may bend', () => {
    const stretch = motion.stretch(motion.still(60), motion.still(80))
    const { panels } = axesOf(60, 0)
    const body = bodyOf(2, panels[2]?.outline ?? [])
    const path = follow(roomFor(1), { motion, lifts: { ...FLUSH, bend: () => 7 } }, stretch, body, 0)
    expect(path.corners).toBe(panels[2]?.outline.length)
    for (const [kept, opening] of [
      [path.from, 60],
      [path.to, 80],
    ] as const) {
      const there = seen({ motion, lifts: FLUSH }, motion.still(opening), body, 0)
      expect([...kept.slice(0, there.length)]).toEqual([...there])
    }
    const width = (20 * Math.PI) / 180
    const bends = stretch.bends(0, body)
    for (let k = 0; k < path.corners; k++)
      expect(path.M[k]).toBeCloseTo((((bends[k] as number) + 7) * width * width) / 2, 9)
  })
})

describe('a path that may bend by M', () => {
  /** One corner from `a` to `b` along across, 0 along and square. */
  const path = (a: number, b: number, m: number): Path => ({
    corners: 1,
    from: Float64Array.of(a, 0, 0),
    to: Float64Array.of(b, 0, 0),
    M: Float64Array.of(m),
  })

  // The parabola through a and b that sags by M t (1 - t) touches nought where (sqrt a + sqrt b) squared is M.
  test.each([
    [4, 9, 24.9, true],
    [4, 9, 25.1, false],
    [1, 1, 3.9, true],
    [1, 1, 4.1, false],
    [0, 5, 4.9, true],
    [0, 5, 5.1, false],
  ])('from %d to %d, bent by %d: beyond is %s', (a, b, m, is) => {
    expect(beyond(path(a, b, m), 1, 0, 0, 0)).toBe(is)
    expect(beyond(path(a + 3, b + 3, m), 1, 0, 0, 3)).toBe(is)
    expect(beyond(path(-a, -b, m), -1, 0, 0, 0)).toBe(is)
  })

  test('is not beyond where an end is not, nor bends where it stays', () => {
    expect(beyond(path(-1, 9, 0), 1, 0, 0, 0)).toBe(false)
    expect(beyond(path(9, -1, 0), 1, 0, 0, 0)).toBe(false)
    // A joint lies on the edge all the time.
    expect(beyond(path(0, 0, 0), 1, 0, 0, 0)).toBe(true)
    expect(beyond(path(0, 0, 1), 1, 0, 0, 0)).toBe(false)
  })

  test('is looked at along all three ways, and at every corner', () => {
    const two = (second: number): Path => ({
      corners: 2,
      from: Float64Array.of(1, 2, 3, second, second, second),
      to: Float64Array.of(1, 2, 3, second, second, second),
      M: Float64Array.of(0, 0),
    })
    for (const [x, y, z, edge] of [
      [1, 0, 0, 1],
      [0, 1, 0, 2],
      [0, 0, 1, 3],
    ] as const) {
      expect(beyond(two(9), x, y, z, edge - 0.1)).toBe(true)
      expect(beyond(two(9), x, y, z, edge + 0.1)).toBe(false)
      expect(beyond(two(-9), x, y, z, edge - 0.1)).toBe(false)
    }
  })

  test('is clear of a box on any of its six sides, and of nothing inside it', () => {
    const at = (x: number, y: number, z: number): Path => ({
      corners: 1,
      from: Float64Array.of(x, y, z),
      to: Float64Array.of(x, y, z),
      M: Float64Array.of(0.001),
    })
    const box = [-2, 3, 5, 8] as const
    for (const off of [
      at(3.1, 6, 0),
      at(-2.1, 6, 0),
      at(0, 8.1, 0),
      at(0, 4.9, 0),
      at(0, 6, 0.1),
      at(0, 6, -0.1),
    ])
      expect(clearOfBox(off, box as never)).toBe(true)
    for (const inside of [at(2.9, 6, 0), at(-1.9, 6, 0), at(0, 7.9, 0), at(0, 5.1, 0)])
      expect(clearOfBox(inside, box as never)).toBe(false)
  })

  test('near an end of the motion heights are those there', () => {
    const near = (h0: number, h1: number): Path => ({
      corners: 1,
      from: Float64Array.of(2, 0, h0),
      to: Float64Array.of(2, 0, h1),
      M: Float64Array.of(0),
    })
    // Along 1 across and 1 square, the across in widths: at the far end h + width (a - edge), at the near one h alone.
    const way = { x: 1, y: 0, z: 1, edge: 1 } as never
    expect(beyondNear(near(1, 1), 'from', way, 0.1)).toBe(true)
    expect(beyondNear(near(-1, 1), 'from', way, 0.1)).toBe(false)
    expect(beyondNear(near(1, -0.2), 'from', way, 0.1)).toBe(false)
    expect(beyondNear(near(0.5, -0.09), 'from', way, 0.1)).toBe(true)
    // The other end: from and to change places.
    expect(beyondNear(near(-0.09, 0.5), 'to', way, 0.1)).toBe(true)
    expect(beyondNear(near(-0.2, 1), 'to', way, 0.1)).toBe(false)
  })
})

test('a page keeps to the box that it sweeps: a quarter circle, and its bulge', () => {
  const motion = motionOf(compile(design([])))
  const page = bodyOf(1, [
    [0, 0],
    [100, 0],
    [100, 148],
  ])
  const stretch = motion.stretch(motion.still(0), motion.still(180))
  const [x0 = 0, x1 = 0, y0 = 0, y1 = 0, z0 = 0, z1 = 0] = sweptBox(stretch, page, 0)
  // The right page turns from straight up to flat on the right: x from 0 to 100, z from 100 down to 0.
  expect(x0).toBeLessThanOrEqual(1e-9)
  expect(x1).toBeGreaterThanOrEqual(100)
  expect(z1).toBeGreaterThanOrEqual(100)
  expect(y0).toBeLessThanOrEqual(0)
  expect(y1).toBeGreaterThanOrEqual(148)
  // A point on a circle of 100 turned by 90 degrees over pi of opening bends 100 / 4 per radian squared.
  const off = (25 * Math.PI ** 2) / 8
  expect(x1).toBeCloseTo(100 + off, 6)
  expect(z0).toBeCloseTo(-off, 6)
  const [, more = 0] = sweptBox(stretch, page, 0.5)
  expect(more).toBeCloseTo(100.5 + off, 6)
})
