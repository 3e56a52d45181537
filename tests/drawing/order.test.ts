import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Part } from '../../src/drawing/view/order.ts'
import { ON_PLANE, paintOrder } from '../../src/drawing/view/order.ts'
import type { Vec3 } from '../../src/paper/index.ts'
import { runs } from '../paper/shared/designs.ts'
import { crossOf, dotOf, minus, sizeOf, unit } from '../paper/shared/space.ts'
import { hits, within } from './rays.ts'

const coordinate = fc.double({ min: -50, max: 50, noNaN: true })

const point: fc.Arbitrary<Vec3> = fc.tuple(coordinate, coordinate, coordinate)

const eyes: fc.Arbitrary<Vec3> = fc
  .tuple(fc.double({ min: 0, max: 6.28, noNaN: true }), fc.double({ min: -1, max: 1, noNaN: true }))
  .map(([turn, high]) => [300 * Math.cos(turn), 300 * Math.sin(turn), 300 * high])

const weights = fc.array(fc.double({ min: 0, max: 1, noNaN: true }), { minLength: 3, maxLength: 3 })

const triangle = (leaf: number, points: readonly Vec3[]): Part | null => {
  const [a, b, c] = points as [Vec3, Vec3, Vec3]
  const square = crossOf(minus(b, a), minus(c, a))
  if (sizeOf(square) < 20) return null
  return { leaf, points, drawn: [true, true, true], normal: unit(square), from: leaf }
}

const triangles = (count: number): fc.Arbitrary<readonly Part[]> =>
  fc
    .array(fc.tuple(point, point, point), { minLength: 1, maxLength: count })
    .map((all) => all.map((points, k) => triangle(k, points)).filter((part) => part !== null))

/** The last painted part that a ray meets; the distance to the nearest edge is left to the caller. */
const lastPainted = (
  order: readonly Part[],
  eye: Vec3,
  aim: Vec3,
): { from: number; reach: number } | null => {
  for (let k = order.length - 1; k >= 0; k--) {
    const part = order[k] as Part
    const [hit] = hits(eye, aim, [{ name: '', points: part.points }])
    if (hit) return { from: part.from, reach: hit.reach }
  }
  return null
}

const areaOf = (points: readonly Vec3[]): number => {
  let sum: Vec3 = [0, 0, 0]
  points.forEach((p, k) => {
    const turn = crossOf(p, points[(k + 1) % points.length] as Vec3)
    sum = [sum[0] + turn[0], sum[1] + turn[1], sum[2] + turn[2]]
  })
  return sizeOf(sum) / 2
}

describe('paintOrder', () => {
  it('paints nothing when there is nothing, and one part as it is', () => {
    expect(paintOrder([], [0, 0, 100])).toEqual([])
    const one = triangle(0, [
      [0, 0, 0],
      [10, 0, 0],
      [0, 10, 0],
    ]) as Part
    expect(paintOrder([one], [0, 0, 100])).toEqual([one])
  })

  it('paints last what is nearest, wherever triangles pass through one another', () => {
    fc.assert(
      fc.property(
        triangles(9),
        eyes,
        fc.array(weights, { minLength: 12, maxLength: 12 }),
        (parts, eye, spots) => {
          const order = paintOrder(parts, eye)
          for (const part of parts)
            for (const spot of spots) {
              const aim = within(part.points, spot)
              const met = hits(
                eye,
                aim,
                parts.map(({ from, points }) => ({ name: `${from}`, points })),
              )
              const [first, second] = met
              if (!first || (second && second.reach - first.reach < 1e-7)) continue
              const seen = lastPainted(order, eye, aim)
              // A ray that slips through the seam of two fragments sees what lies behind by a hair: aim again.
              if (!seen || Math.abs(seen.reach - first.reach) < 1e-7) continue
              const beside = within(
                part.points,
                spot.map((w) => w * 0.999),
              )
              const again = hits(
                eye,
                beside,
                parts.map(({ from, points }) => ({ name: `${from}`, points })),
              )[0]
              expect(lastPainted(order, eye, beside)?.reach).toBeCloseTo(again?.reach ?? -1, 6)
            }
        },
      ),
      runs(150),
    )
  })

  it('splits without losing or doubling paper', () => {
    fc.assert(
      fc.property(triangles(9), eyes, (parts, eye) => {
        const order = paintOrder(parts, eye)
        for (const part of parts) {
          const pieces = order.filter(({ from }) => from === part.from)
          const sum = pieces.reduce((area, { points }) => area + areaOf(points), 0)
          expect(Math.abs(sum - areaOf(part.points))).toBeLessThan(1e-4)
          for (const { points } of pieces)
            for (const p of points)
              expect(Math.abs(dotOf(minus(p, part.points[0] as Vec3), part.normal))).toBeLessThan(
                1e-9 + ON_PLANE,
              )
        }
      }),
      runs(150),
    )
  })

  it('splits three sheets that overlap in a ring', () => {
    // Each lies over the next: no order of whole sheets is right, so at least one must be split.
    const ring = [0, 1, 2].map((k) => {
      const [c, s] = [Math.cos((k * 2 * Math.PI) / 3), Math.sin((k * 2 * Math.PI) / 3)]
      const turn = ([x, y, z]: Vec3): Vec3 => [x * c - y * s, x * s + y * c, z]
      return triangle(
        k,
        (
          [
            [-30, -14, -4],
            [30, -14, 4],
            [0, -7, 0],
          ] as Vec3[]
        ).map(turn),
      ) as Part
    })
    const eye: Vec3 = [0, 0, 200]
    const order = paintOrder(ring, eye)
    expect(order.length).toBeGreaterThan(3)
    for (const part of ring)
      for (let k = 1; k < 30; k++) {
        const aim = within(part.points, [k / 30, 1 - k / 30, ((k * 11) % 30) / 30])
        const first = hits(
          eye,
          aim,
          ring.map(({ from, points }) => ({ name: `${from}`, points })),
        )[0]
        expect(lastPainted(order, eye, aim)?.reach).toBeCloseTo(first?.reach ?? -1, 9)
      }
  })

  it('does not draw the cut where a part is split', () => {
    const floor = triangle(0, [
      [-20, -20, 0],
      [20, -20, 0],
      [0, 30, 0],
    ]) as Part
    const wall = triangle(1, [
      [0, -40, -40],
      [0, 40, -40],
      [0, 0, 40],
    ]) as Part
    const order = paintOrder([floor, wall], [100, 10, 50])
    for (const { points, drawn } of order.filter(({ from }) => from === 0))
      points.forEach((p, k) => {
        const q = points[(k + 1) % points.length] as Vec3
        const onCut = Math.abs(p[0]) < 1e-9 && Math.abs(q[0]) < 1e-9
        expect(drawn[k]).toBe(!onCut)
      })
  })

  it('keeps the order given in one plane, and turns it when the back is seen', () => {
    const low = triangle(0, [
      [0, 0, 0],
      [10, 0, 0],
      [0, 10, 0],
    ]) as Part
    const high = { ...low, leaf: 1, from: 1 }
    expect(paintOrder([low, high], [0, 0, 90]).map(({ from }) => from)).toEqual([0, 1])
    expect(paintOrder([low, high], [0, 0, -90]).map(({ from }) => from)).toEqual([1, 0])
  })
})
