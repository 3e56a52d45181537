import fc from 'fast-check'
import { difference, intersection } from 'polyclip-ts'
import { orient2d } from 'robust-predicates'
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { common, convexParts, overlapOf, signedArea } from '../../../src/paper/plane/convex.ts'
import { crossing, gapOf } from '../../../src/paper/plane/gap.ts'
import { overshoot, runsThrough, selfCrossing } from '../../../src/paper/plane/outline.ts'
import { edgesOf, isWithin, sideOf } from '../../../src/paper/plane/segment.ts'
import { runs } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'
import { nextFloat, RAD } from '../shared/space.ts'

const point: fc.Arbitrary<Flat> = fc.tuple(between(-50, 50), between(-50, 50))

/** A star-shaped outline round a point: simple, dented or not. */
const outlines: fc.Arbitrary<Flat[]> = fc
  .record({ at: point, arms: fc.array(between(5, 40), { minLength: 3, maxLength: 9 }) })
  .map(({ at, arms }) =>
    arms.map((arm, k): Flat => {
      const turn = (360 / arms.length) * k * RAD
      return [at[0] + arm * Math.cos(turn), at[1] + arm * Math.sin(turn)]
    }),
  )

const ring = (points: readonly Flat[]): [[number, number][]] => [points.map(([a, l]) => [a, l])]

const areaOf = (polygons: readonly (readonly (readonly [number, number])[])[][]): number =>
  polygons.flat().reduce((sum, points) => sum + signedArea(points as Flat[]), 0)

describe('which side of a line', () => {
  // robust-predicates (J. R. Shewchuk's adaptive predicates): the exact sign.
  test('never says left where it is right, up to the last bit', () => {
    fc.assert(
      fc.property(
        point,
        point,
        fc.double({ min: -1, max: 2, noNaN: true }),
        fc.constantFrom(-1, 0, 1),
        (a, b, t, nudge) => {
          const on: Flat = [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
          const p: Flat = nudge === 0 ? on : [on[0], nextFloat(on[1], nudge as 1 | -1)]
          const ours = Math.sign(sideOf(a, b, p))
          // Their sign is that of a clockwise turn.
          const exact = -Math.sign(orient2d(...a, ...b, ...p))
          expect(ours === 0 || ours === exact).toBe(true)
        },
      ),
      runs(2000),
    )
  })

  test('tells them apart as soon as they are a millionth of a millimetre off', () => {
    fc.assert(
      fc.property(point, point, fc.double({ min: 0, max: 1, noNaN: true }), (a, b, t) => {
        const size = Math.hypot(b[0] - a[0], b[1] - a[1])
        fc.pre(size > 1)
        const off = 1e-6
        const p: Flat = [
          a[0] + t * (b[0] - a[0]) - (off * (b[1] - a[1])) / size,
          a[1] + t * (b[1] - a[1]) + (off * (b[0] - a[0])) / size,
        ]
        expect(sideOf(a, b, p)).toBeGreaterThan(0)
      }),
      runs(500),
    )
  })
})

describe('against polyclip-ts', () => {
  test('an outline reaches over another by more than nothing exactly if something of it lies outside', () => {
    fc.assert(
      fc.property(outlines, outlines, (one, two) => {
        const outside = areaOf(difference(ring(one), ring(two)) as never)
        const { distance, from, to } = overshoot(one, two)
        if (outside > 1e-3) expect(distance).toBeGreaterThan(0)
        if (distance > 1e-3) expect(outside).toBeGreaterThan(0)
        expect(Math.hypot(from[0] - to[0], from[1] - to[1])).toBeCloseTo(distance, 9)
        // No more than its farthest corner, and where that is outside, no less.
        if (distance > 0) expect(isWithin(edgesOf(two), from)).toBe(false)
      }),
      runs(500),
    )
  })

  test('a bar laid across a dent reaches over, though all its corners are inside', () => {
    const dented: Flat[] = [
      [0, 0],
      [30, 0],
      [30, 20],
      [20, 20],
      [20, 10],
      [10, 10],
      [10, 20],
      [0, 20],
    ]
    const bar: Flat[] = [
      [5, 5],
      [25, 5],
      [25, 14],
      [5, 14],
    ]
    expect(overshoot(bar, dented).distance).toBeCloseTo(4, 9)
    expect(
      overshoot(
        bar.map(([a, l]): Flat => [a, Math.min(l, 10)]),
        dented,
      ).distance,
    ).toBe(0)
  })

  test('two convex parts overlap exactly if they have an area in common, and that is the one found', () => {
    fc.assert(
      fc.property(outlines, outlines, (one, two) => {
        for (const a of convexParts(one))
          for (const b of convexParts(two)) {
            const shared = areaOf(intersection(ring(a.points), ring(b.points)) as never)
            const deep = overlapOf(a, b)
            if (shared > 1e-3) expect(deep).toBeGreaterThan(0)
            // Slivers along a common edge have next to no area.
            if (deep > 1e-3) expect(shared).toBeGreaterThan(0)
            const ours = common(a.points, b.points)
            expect(ours.length < 3 ? 0 : signedArea(ours)).toBeCloseTo(shared, 6)
          }
      }),
      runs(300),
    )
  })

  test('moved apart by their overlap, two convex parts touch', () => {
    fc.assert(
      fc.property(outlines, outlines, (one, two) => {
        const [a, b] = [convexParts(one)[0], convexParts(two)[0]]
        if (!a || !b) return
        const deep = overlapOf(a, b)
        fc.pre(deep > 0)
        const parted = Array.from(
          { length: 720 },
          (_, k) => [Math.cos((k / 2) * RAD), Math.sin((k / 2) * RAD)] as const,
        ).map(([u, v]) =>
          overlapOf(a, {
            ...b,
            points: b.points.map(([x, y]): Flat => [x + 0.98 * deep * u, y + 0.98 * deep * v]),
          }),
        )
        // Nothing shorter parts them.
        expect(Math.min(...parted)).toBeGreaterThan(0)
      }),
      runs(40),
    )
  })
})

describe('segments', () => {
  test('cross where robust-predicates says that each has its ends on two sides of the other', () => {
    fc.assert(
      fc.property(point, point, point, point, (a, b, c, d) => {
        const turns = [
          orient2d(...a, ...b, ...c),
          orient2d(...a, ...b, ...d),
          orient2d(...c, ...d, ...a),
          orient2d(...c, ...d, ...b),
        ]
        fc.pre(turns.every((turn) => Math.abs(turn) > 1e-9))
        const [p, q, r, t] = turns.map(Math.sign)
        const meets = p !== q && r !== t
        const at = crossing({ a, b }, { a: c, b: d })
        expect(at !== null).toBe(meets)
        expect(gapOf({ a, b }, { a: c, b: d }).distance === 0).toBe(meets)
      }),
      runs(1000),
    )
  })

  test('have the gap that no pair of points on them undercuts, and two points attain', () => {
    const share = fc.double({ min: 0, max: 1, noNaN: true })
    fc.assert(
      fc.property(
        point,
        point,
        point,
        point,
        fc.array(fc.tuple(share, share), { minLength: 20 }),
        (a, b, c, d, at) => {
          const { distance, from, to } = gapOf({ a, b }, { a: c, b: d })
          expect(Math.hypot(from[0] - to[0], from[1] - to[1])).toBeCloseTo(distance, 9)
          for (const [s, t] of at) {
            const p = [a[0] + s * (b[0] - a[0]), a[1] + s * (b[1] - a[1])] as const
            const q = [c[0] + t * (d[0] - c[0]), c[1] + t * (d[1] - c[1])] as const
            expect(Math.hypot(p[0] - q[0], p[1] - q[1])).toBeGreaterThanOrEqual(distance - 1e-9)
          }
        },
      ),
      runs(300),
    )
  })

  test('run through an outline only if they enter it', () => {
    const square: Flat[] = [
      [0, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]
    expect(runsThrough({ a: [-5, 5], b: [5, 5] }, square)).toBe(true)
    expect(runsThrough({ a: [-5, 5], b: [0, 5] }, square)).toBe(false)
    expect(runsThrough({ a: [0, 0], b: [10, 0] }, square)).toBe(false)
    expect(runsThrough({ a: [0, 0], b: [10, 10] }, square)).toBe(true)
    expect(runsThrough({ a: [-1, 0], b: [0, 1] }, square)).toBe(false)
  })
})

test('a bow tie crosses itself, a dented outline does not', () => {
  expect(
    selfCrossing([
      [0, 0],
      [10, 10],
      [10, 0],
      [0, 10],
    ])?.at,
  ).toEqual([5, 5])
  expect(
    selfCrossing([
      [0, 0],
      [10, 0],
      [5, 3],
      [10, 10],
    ]),
  ).toBeNull()
  // Two corners in one place are no crossing.
  expect(
    selfCrossing([
      [0, 0],
      [10, 0],
      [10, 0],
      [10, 10],
    ]),
  ).toBeNull()
})

test('of several crossings the one farthest from any corner is told, and how far that is', () => {
  // A zigzag over its own base line: it crosses it at (20, 0), 14 mm from (30, 10), and at (4, 0), 4 mm from (0, 0).
  const found = selfCrossing([
    [0, 0],
    [40, 0],
    [40, 10],
    [30, 10],
    [10, -10],
    [6, -10],
    [2, 10],
    [0, 10],
  ])
  expect(found?.at[0]).toBeCloseTo(20, 9)
  expect(found?.at[1]).toBeCloseTo(0, 9)
  expect(found?.depth).toBeCloseTo(Math.hypot(10, 10), 9)
})
