// Segments, lays and turns of the plane against plain search, and against gl-matrix (MIT).
import fc from 'fast-check'
import { glMatrix, mat3, mat4, vec2, vec3 } from 'gl-matrix'
import { orient2d } from 'robust-predicates'
import { describe, expect, test } from 'vitest'
import type { Flat, Vec3 } from '../../../src/paper/index.ts'
import { crossing, gapOf, middleOf } from '../../../src/paper/plane/gap.ts'
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
import { nearestEdge, overshoot, runsThrough, selfCrossing } from '../../../src/paper/plane/outline.ts'
import type { Segment } from '../../../src/paper/plane/segment.ts'
import { edgesOf, nearestOn, sideOf } from '../../../src/paper/plane/segment.ts'
import { turned } from '../../../src/paper/plane/turn.ts'
import { halfAngle } from '../../../src/paper/plane/vector.ts'
import { runs } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'
import { RAD } from '../shared/space.ts'

glMatrix.setMatrixArrayType(Array as never)

/** Half of them on a grid, where edges meet end to end, run along each other or are no longer than a point. */
const point: fc.Arbitrary<Flat> = fc.oneof(
  fc.tuple(between(-20, 20), between(-20, 20)),
  fc.tuple(fc.integer({ min: -3, max: 3 }), fc.integer({ min: -3, max: 3 })),
)

const segment: fc.Arbitrary<Segment> = fc.record({ a: point, b: point })

const far = (p: Flat, q: Flat): number => Math.hypot(p[0] - q[0], p[1] - q[1])

const on = ({ a, b }: Segment, t: number): Flat => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]

const steps = Array.from({ length: 41 }, (_, k) => k / 40)

describe('distances', () => {
  test('no point of a segment is nearer than the nearest one, which lies on it', () => {
    fc.assert(
      fc.property(segment, point, (s, p) => {
        const { distance, at } = nearestOn(s, p)
        expect(far(at, p)).toBeCloseTo(distance, 9)
        // On it: the two parts make up the whole.
        expect(far(s.a, at) + far(at, s.b)).toBeCloseTo(far(s.a, s.b), 9)
        expect(Math.min(...steps.map((t) => far(on(s, t), p)))).toBeGreaterThanOrEqual(distance - 1e-9)
      }),
      runs(300),
    )
  })

  test('no two points of two segments are nearer than their gap, and it lies between them', () => {
    fc.assert(
      fc.property(segment, segment, (s, t) => {
        const { distance, from, to } = gapOf(s, t)
        expect(far(from, to)).toBeCloseTo(distance, 9)
        expect(nearestOn(s, from).distance).toBeLessThan(1e-9)
        expect(nearestOn(t, to).distance).toBeLessThan(1e-9)
        const all = steps.flatMap((k) => steps.map((m) => far(on(s, k), on(t, m))))
        expect(Math.min(...all)).toBeGreaterThanOrEqual(distance - 1e-9)
      }),
      runs(200),
    )
  })

  test('an outline’s nearest edge is the nearest of its edges', () => {
    fc.assert(
      fc.property(fc.array(point, { minLength: 3, maxLength: 6 }), point, (outline, p) => {
        const { distance, at } = nearestEdge(edgesOf(outline), p)
        const last = outline.length - 1
        const all = outline.map((a, k) => nearestOn({ a, b: outline[k === last ? 0 : k + 1] as Flat }, p))
        expect(distance).toBe(Math.min(...all.map((one) => one.distance)))
        expect(far(at, p)).toBeCloseTo(distance, 9)
      }),
      runs(100),
    )
  })

  test('the middle is as far from both ends', () => {
    expect(middleOf({ a: [1, 2], b: [5, -4] })).toEqual([3, -1])
  })
})

describe('crossings', () => {
  // robust-predicates (Unlicense), exact: each has its ends on two sides of the other, ends counting for both.
  test('ends that touch are crossings; what runs along is none', () => {
    fc.assert(
      fc.property(segment, segment, (s, t) => {
        const turn = (p: Flat, q: Flat, r: Flat) => Math.sign(orient2d(...p, ...q, ...r))
        const [a, b] = [turn(t.a, t.b, s.a), turn(t.a, t.b, s.b)]
        const [c, d] = [turn(s.a, s.b, t.a), turn(s.a, s.b, t.b)]
        const at = crossing(s, t)
        // A hair's breadth is for the other test.
        fc.pre([a, b, c, d].every((sign) => sign === 0 || Math.abs(sign) === 1))
        const parallel = a === b && a === 0
        if (a * b > 0 || c * d > 0 || parallel) expect(at).toBeNull()
        else if (a !== b && c !== d) {
          expect(at).not.toBeNull()
          expect(nearestOn(s, at as Flat).distance).toBeLessThan(1e-9)
          expect(nearestOn(t, at as Flat).distance).toBeLessThan(1e-9)
        }
      }),
      runs(1000),
    )
    const s: Segment = { a: [0, 0], b: [4, 0] }
    expect(crossing(s, { a: [4, 0], b: [5, 3] })).toEqual([4, 0])
    expect(crossing(s, { a: [2, 0], b: [2, 3] })).toEqual([2, 0])
    expect(crossing(s, { a: [1, 0], b: [6, 0] })).toBeNull()
    expect(crossing(s, { a: [0, 1], b: [4, 1] })).toBeNull()
    expect(crossing(s, { a: [5, -1], b: [5, 1] })).toBeNull()
    expect(crossing(s, { a: [1, 1], b: [1, 2] })).toBeNull()
  })

  test('an edge shorter than the rounding of its place has no sides to tell', () => {
    // Shewchuk 1997: an error of (3 + 16 e) e of the terms, e half a last digit. The exact area below is 0.
    const a: Flat = [0.1, 0.1]
    const b: Flat = [0.3, 0.3]
    expect(sideOf(a, b, [0.2, 0.2])).toBe(0)
    expect(sideOf(a, b, [0.7, 0.7])).toBe(0)
    expect(sideOf(a, b, [0.2, 0.2 + 1e-15])).toBeGreaterThan(0)
    expect(sideOf(a, b, [0.2 + 1e-15, 0.2])).toBeLessThan(0)
    expect(sideOf(a, a, [5, 5])).toBe(0)
  })

  test('a bow crosses itself where its strings meet, as deep as its nearest corner; a plain outline nowhere', () => {
    const bow: Flat[] = [
      [0, 0],
      [10, 8],
      [10, 0],
      [0, 6],
    ]
    // Lines y = 0.8 x and y = 6 - 0.6 x meet at x = 30/7.
    const x = 30 / 7
    const { at, depth } = selfCrossing(bow) ?? { at: [9, 9], depth: 9 }
    expect(far(at as Flat, [x, 0.8 * x])).toBeLessThan(1e-9)
    expect(depth).toBeCloseTo(Math.min(Math.hypot(x, 0.8 * x), Math.hypot(x, 0.6 * x)), 9)
    const plain: Flat[] = [
      [0, 0],
      [10, 0],
      [10, 0],
      [10, 6],
      [5, 6],
      [0, 6],
    ]
    expect(selfCrossing(plain)).toBeNull()
    for (let k = 1; k < bow.length; k++)
      expect(selfCrossing([...bow.slice(k), ...bow.slice(0, k)])?.depth).toBeCloseTo(depth, 9)
    // Of two crossings the deeper one: the second bow is twice as large.
    const double: Flat[] = [
      [0, 0],
      [2, 2],
      [2, 0],
      [0, 2],
      [-10, 2],
      [-10, 20],
      [30, -4],
      [30, 20],
      [0, -9],
    ]
    const deep = selfCrossing(double)
    expect(deep?.depth).toBeGreaterThan(5)
  })
})

describe('outlines', () => {
  const square: Flat[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ]
  const box = (x: number, y: number, size: number): Flat[] => [
    [x, y],
    [x + size, y],
    [x + size, y + size],
    [x, y + size],
  ]

  test('reaching over is told to the nearest edge: none, touching, by a little, by all', () => {
    expect(overshoot(box(2, 2, 5), square)).toEqual({ distance: 0, from: [0, 0], to: [0, 0] })
    expect(overshoot(box(0, 0, 10), square).distance).toBe(0)
    expect(overshoot(box(2, 2, 8.5), square)).toMatchObject({
      distance: expect.closeTo(Math.hypot(0.5, 0.5), 9),
    })
    expect(overshoot(box(20, 4, 2), square)).toMatchObject({ distance: expect.closeTo(12, 9), to: [10, 4] })
    expect(overshoot(box(2, 2, 8 + 1e-10), square).distance).toBe(0)
    expect(overshoot(box(2, 2, 8 + 1e-6), square).distance).toBeGreaterThan(0)
  })

  test('a segment runs through the inside, or only along the edge, or to it', () => {
    const through = (a: Flat, b: Flat) => runsThrough({ a, b }, square)
    expect(through([-5, 5], [15, 5])).toBe(true)
    expect(through([5, 5], [6, 6])).toBe(true)
    expect(through([0, 0], [10, 10])).toBe(true)
    expect(through([5, 5], [50, 5])).toBe(true)
    expect(through([0, 2], [0, 8])).toBe(false)
    expect(through([-5, 0], [15, 0])).toBe(false)
    expect(through([-5, 5], [0, 5])).toBe(false)
    expect(through([10, 10], [20, 20])).toBe(false)
    expect(through([-5, 4], [4, -5])).toBe(false)
  })
})

describe('lays', () => {
  const lays: fc.Arbitrary<Lay> = fc
    .tuple(point, between(0, 360), fc.boolean())
    .map(([origin, turn, over]) => {
      const run: Flat = [Math.sin(turn * RAD), Math.cos(turn * RAD)]
      const off: Flat = over ? [-run[1], run[0]] : [run[1], -run[0]]
      return { origin, run, off }
    })

  /** The same motion as gl-matrix's 3 x 3 matrix: columns off, run, origin. */
  const matrix = ({ origin, run, off }: Lay): mat3 =>
    mat3.fromValues(off[0], off[1], 0, run[0], run[1], 0, origin[0], origin[1], 1)

  const moved = (m: mat3, p: Flat): Flat => {
    const q = vec2.transformMat3(vec2.create(), [...p], m)
    return [q[0], q[1]]
  }

  test('are matrices: applied, undone, one after the other', () => {
    fc.assert(
      fc.property(lays, lays, point, (outer, inner, p) => {
        const [m, n] = [matrix(outer), matrix(inner)]
        expect(far(laid(outer, p), moved(m, p))).toBeLessThan(1e-9)
        expect(far(throughLay(outer, [p])[0] as Flat, moved(m, p))).toBeLessThan(1e-9)
        const back = mat3.invert(mat3.create(), m) as mat3
        expect(far(unlaid(outer, p), moved(back, p))).toBeLessThan(1e-9)
        const both = mat3.multiply(mat3.create(), m, n)
        expect(far(laid(compose(outer, inner), p), moved(both, p))).toBeLessThan(1e-9)
        expect(isMirroring(outer)).toBe(mat3.determinant(m) < 0)
        expect(laid(sameLay, p)).toEqual([...p])
        expect(far(laid(MIRROR, p), [-p[0], p[1]])).toBe(0)
      }),
      runs(200),
    )
  })
})

describe('turns in space', () => {
  // gl-matrix's rotation about an axis.
  test('go as those of gl-matrix', () => {
    const places = fc.tuple(between(-9, 9), between(-9, 9), between(-9, 9))
    fc.assert(
      fc.property(places, places, places, between(-7, 7), (p, o, w, angle) => {
        fc.pre(Math.hypot(...w) > 0.1)
        const way = vec3.normalize(vec3.create(), w as vec3)
        const m = mat4.fromRotation(mat4.create(), angle, way) as mat4
        const q = vec3.transformMat4(vec3.create(), [p[0] - o[0], p[1] - o[1], p[2] - o[2]], m)
        const found = turned(p as Vec3, o as Vec3, [way[0], way[1], way[2]], angle)
        for (const k of [0, 1, 2] as const) expect(found[k]).toBeCloseTo(q[k] + o[k], 9)
      }),
      runs(100),
    )
  })

  test('half an opening has its sine and cosine, exact at both ends', () => {
    for (const opening of [0, 1e-9, 30, 89.9, 90, 90.1, 135, 180 - 1e-9, 180]) {
      const [s, c] = halfAngle(opening)
      expect(s).toBeCloseTo(Math.sin((opening / 2) * RAD), 14)
      // The cosine as the sine of what is missing: relative digits near flat.
      const short = Math.sin(((180 - opening) / 2) * RAD)
      expect(Math.abs(c - short)).toBeLessThanOrEqual(4e-16 * Math.max(short, opening > 90 ? 0 : 1))
    }
    expect(halfAngle(0)).toEqual([0, 1])
    expect(halfAngle(180)).toEqual([1, 0])
  })
})
