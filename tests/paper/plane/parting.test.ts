import fc from 'fast-check'
import { orient3d } from 'robust-predicates'
import { describe, expect, test } from 'vitest'
import type { Flat, Vec3 } from '../../../src/paper/index.ts'
import { beyond } from '../../../src/paper/motion/paths.ts'
import { signedArea } from '../../../src/paper/plane/convex.ts'
import { parting } from '../../../src/paper/plane/parting.ts'
import { runs } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'
import { crossOf, dotOf, plus, RAD, times, unit } from '../shared/space.ts'

/** A convex outline: points on an ellipse. */
const ovals: fc.Arbitrary<Flat[]> = fc
  .record({
    corners: fc.array(between(0, 359), { minLength: 3, maxLength: 6 }),
    at: fc.tuple(between(-10, 10), between(-10, 10)),
    wide: between(2, 15),
    long: between(2, 15),
  })
  .map(({ corners, at, wide, long }) =>
    [...corners]
      .sort((a, b) => a - b)
      .map((turn): Flat => [at[0] + wide * Math.cos(turn * RAD), at[1] + long * Math.sin(turn * RAD)]),
  )
  .filter((outline) => Math.abs(signedArea(outline)) > 0.5)

const planes = fc
  .record({
    way: fc.tuple(between(-1, 1), between(-1, 1), between(-1, 1)),
    turn: between(0, 360),
    up: between(-8, 8),
  })
  .filter(({ way }) => Math.hypot(...way) > 0.1)

const inSpace = (
  outline: readonly Flat[],
  { way, turn, up }: { way: [number, number, number]; turn: number; up: number },
): Vec3[] => {
  const normal = unit(way as Vec3)
  const aside = unit(crossOf(normal, Math.abs(normal[0]) < 0.9 ? [1, 0, 0] : [0, 1, 0]))
  const third = crossOf(normal, aside)
  const u = plus(times(aside, Math.cos(turn * RAD)), times(third, Math.sin(turn * RAD)))
  const v = crossOf(normal, u)
  return outline.map(([a, l]) => plus(plus(times(u, a), times(v, l)), [0, 0, up]))
}

/** Whether an edge of one polygon pierces the other, by the signs of tetrahedra: exact. */
function pierces(one: readonly Vec3[], two: readonly Vec3[]): boolean {
  const [a, b, c] = two as [Vec3, Vec3, Vec3]
  return one.some((p, k) => {
    const q = one[(k + 1) % one.length] as Vec3
    if (orient3d(...a, ...b, ...c, ...p) * orient3d(...a, ...b, ...c, ...q) >= 0) return false
    const turns = two.map((e, m) =>
      Math.sign(orient3d(...e, ...(two[(m + 1) % two.length] as Vec3), ...p, ...q)),
    )
    return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)
  })
}

describe('two flat convex bodies at rest', () => {
  // robust-predicates' exact orient3d decides; edges that pierce are all ways in which two can cross.
  test('are said to be apart exactly if no edge of one pierces the other', () => {
    const seen = { apart: 0, crossing: 0 }
    fc.assert(
      fc.property(ovals, ovals, planes, (part, outline, plane) => {
        const points = inSpace(outline, plane)
        const flat = part.map(([a, l]): Vec3 => [a, l, 0])
        const crosses = pierces(points, flat) || pierces(flat, points)
        const { gap, x, y, z, edge } = parting(
          Float64Array.from(points.flat()),
          [],
          Float64Array.from(part.flat()),
        )
        if (Math.abs(gap) < 1e-9) return
        expect(gap < 0).toBe(crosses)
        seen[crosses ? 'crossing' : 'apart']++
        // And the direction found does part them by that much.
        expect(Math.hypot(x, y, z)).toBeCloseTo(1, 9)
        expect(Math.min(...points.map((p) => dotOf(p, [x, y, z])))).toBeCloseTo(edge + gap, 9)
        expect(Math.max(...flat.map((p) => dotOf(p, [x, y, z])))).toBeCloseTo(edge, 9)
      }),
      runs(1000),
    )
    expect(Math.min(seen.apart, seen.crossing)).toBeGreaterThan(30)
  })
})

describe('a corner over a stretch', () => {
  const path = (from: number, to: number, M: number) => ({
    corners: 1,
    from: Float64Array.of(0, 0, from),
    to: Float64Array.of(0, 0, to),
    M: Float64Array.of(M),
  })

  test('stays beyond a plane exactly if the parabola of its bound does (standard remainder of the chord)', () => {
    fc.assert(
      fc.property(between(0, 3), between(0, 3), between(0.001, 12), (a, b, M) => {
        // v(s) = (1 - s) a + s b - M s (1 - s), its least value by its vertex.
        const s = Math.max(0, Math.min(1, (M + a - b) / (2 * M)))
        const least = (1 - s) * a + s * b - M * s * (1 - s)
        if (Math.abs(least) < 1e-6) return
        expect(beyond(path(a, b, M), 0, 0, 1, 0)).toBe(least > 0)
      }),
      runs(1000),
    )
  })

  test('may begin or end in the plane, if it leaves it fast enough', () => {
    expect(beyond(path(0, 1, 0.99), 0, 0, 1, 0)).toBe(true)
    expect(beyond(path(0, 1, 1.01), 0, 0, 1, 0)).toBe(false)
    expect(beyond(path(1, 0, 0.99), 0, 0, 1, 0)).toBe(true)
    expect(beyond(path(0, 0, 1e-3), 0, 0, 1, 0)).toBe(false)
  })

  test('may stay in the plane only if it is a joint: it does not bend at all', () => {
    expect(beyond(path(0, 0, 0), 0, 0, 1, 0)).toBe(true)
    expect(beyond(path(-1e-6, 1, 0), 0, 0, 1, 0)).toBe(false)
  })
})
