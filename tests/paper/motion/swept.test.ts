// What the proofs of a clear motion stand on, against plain sampling: the box that a body keeps to, the half spaces
// that a path stays in, and what parts two bodies at rest, in one plane too.
import fc from 'fast-check'
import { intersection } from 'polyclip-ts'
import { orient3d } from 'robust-predicates'
import { describe, expect, test } from 'vitest'
import type { Flat, Vec3 } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import { bodyOf, motionOf } from '../../../src/paper/motion/motion.ts'
import { beyond, clearOfBox, sweptBox } from '../../../src/paper/motion/paths.ts'
import { parting, piercings } from '../../../src/paper/plane/parting.ts'
import { runs } from '../shared/designs.ts'
import { between, gardens } from '../shared/gardens.ts'
import { RAD } from '../shared/space.ts'

describe('the box that a body keeps to', () => {
  const spans = fc
    .tuple(between(0, 170), fc.constantFrom(0.5, 4, 20, 60))
    .map(([from, wide]) => [from, Math.min(180, from + wide)] as const)

  test('holds it at every opening of the stretch, and is not much larger than that takes', () => {
    fc.assert(
      fc.property(gardens(4), spans, fc.constantFrom(0, 0.3), (made, [from, to], lift) => {
        const motion = motionOf(compile(made))
        const stretch = motion.stretch(motion.still(from), motion.still(to))
        motion.model.panels.forEach(({ outline }, panel) => {
          const body = bodyOf(panel, outline)
          const box = sweptBox(stretch, body, lift)
          const [low, high] = [
            [9e9, 9e9, 9e9],
            [-9e9, -9e9, -9e9],
          ] as [number[], number[]]
          for (let k = 0; k <= 20; k++) {
            const places = motion.still(from + ((to - from) * k) / 20).places(body)
            places.forEach((value, i) => {
              low[i % 3] = Math.min(low[i % 3] as number, value)
              high[i % 3] = Math.max(high[i % 3] as number, value)
            })
          }
          const most = Math.max(...stretch.bends(-1, body))
          // Half a step between samples hides at most the bend over that step; the chord's remainder is w² / 8.
          const spare = lift + (most * stretch.width ** 2) / 8 + 1e-9
          for (const k of [0, 1, 2] as const) {
            expect(box[2 * k] as number).toBeLessThanOrEqual((low[k] as number) - lift + 1e-9)
            expect(box[2 * k + 1] as number).toBeGreaterThanOrEqual((high[k] as number) + lift - 1e-9)
            expect(box[2 * k] as number).toBeGreaterThanOrEqual((low[k] as number) - spare)
            expect(box[2 * k + 1] as number).toBeLessThanOrEqual((high[k] as number) + spare)
          }
        })
      }),
      runs(60),
    )
  })
})

const triple = fc.tuple(between(-6, 6), between(-6, 6), between(-6, 6))

const paths = fc.array(fc.record({ from: triple, to: triple, M: between(0, 3) }), {
  minLength: 1,
  maxLength: 4,
})

const packed = (all: readonly { from: readonly number[]; to: readonly number[]; M: number }[]) => ({
  corners: all.length,
  from: Float64Array.from(all.flatMap(({ from }) => from)),
  to: Float64Array.from(all.flatMap(({ to }) => to)),
  M: Float64Array.from(all.map(({ M }) => M)),
})

/** The least that a corner can be beyond an edge along a direction: chord less the parabola of its bound. */
function least(
  all: readonly { from: readonly number[]; to: readonly number[]; M: number }[],
  way: Vec3,
  edge: number,
) {
  const along = (p: readonly number[]) =>
    (p[0] ?? 0) * way[0] + (p[1] ?? 0) * way[1] + (p[2] ?? 0) * way[2] - edge
  return Math.min(
    ...all.flatMap(({ from, to, M }) =>
      Array.from({ length: 401 }, (_, k) => {
        const s = k / 400
        return (1 - s) * along(from) + s * along(to) - M * s * (1 - s)
      }),
    ),
  )
}

describe('half spaces', () => {
  const ways = fc
    .tuple(between(-1, 1), between(-1, 1), between(-1, 1))
    .filter((w) => Math.hypot(...w) > 0.2)
    .map((w): Vec3 => {
      const size = Math.hypot(...w)
      return [w[0] / size, w[1] / size, w[2] / size]
    })

  test('all corners stay beyond an edge exactly if the worst of them does', () => {
    let [clear, not] = [0, 0]
    fc.assert(
      fc.property(paths, ways, between(-9, 2), (all, way, edge) => {
        const worst = least(all, way, edge)
        if (Math.abs(worst) < 1e-3) return
        expect(beyond(packed(all), ...way, edge)).toBe(worst > 0)
        if (worst > 0) clear++
        else not++
      }),
      runs(600),
    )
    expect(Math.min(clear, not)).toBeGreaterThan(60)
  })

  test('a path is clear of a panel’s box on either side of its plane, or beyond one of its four sides', () => {
    let [clear, not] = [0, 0]
    fc.assert(
      fc.property(
        paths,
        fc.tuple(between(-3, 0), between(0, 3), between(-3, 0), between(0, 3)),
        (all, [a0, a1, l0, l1]) => {
          const worst = Math.max(
            least(all, [0, 0, 1], 0),
            least(all, [0, 0, -1], 0),
            least(all, [1, 0, 0], a1),
            least(all, [-1, 0, 0], -a0),
            least(all, [0, 1, 0], l1),
            least(all, [0, -1, 0], -l0),
          )
          if (Math.abs(worst) < 1e-3) return
          expect(clearOfBox(packed(all), [a0, a1, l0, l1])).toBe(worst > 0)
          if (worst > 0) clear++
          else not++
        },
      ),
      runs(600),
    )
    expect(Math.min(clear, not)).toBeGreaterThan(60)
  })
})

const ovals: fc.Arbitrary<Flat[]> = fc
  .record({
    turns: fc.array(fc.integer({ min: 0, max: 71 }), { minLength: 3, maxLength: 6 }),
    at: fc.tuple(between(-8, 8), between(-8, 8)),
    size: between(2, 9),
  })
  .map(({ turns, at, size }) =>
    [...new Set(turns)]
      .sort((a, b) => a - b)
      .map((k): Flat => [at[0] + size * Math.cos(5 * k * RAD), at[1] + 0.7 * size * Math.sin(5 * k * RAD)]),
  )
  .filter((points) => points.length > 2)

const areaOf = (polygons: readonly (readonly (readonly (readonly number[])[])[])[]): number =>
  polygons.flat().reduce((sum, ring) => {
    const twice = ring.reduce((all, [x = 0, y = 0], k) => {
      const [u = 0, v = 0] = ring[(k + 1) % ring.length] ?? []
      return all + x * v - y * u
    }, 0)
    return sum + twice / 2
  }, 0)

describe('two bodies in one plane', () => {
  // The shortest way out of convex bodies that overlap is square to an edge (faces of their Minkowski difference).
  test('are parted within the plane exactly if they share no area, by the edge that parts them most', () => {
    let [apart, over] = [0, 0]
    fc.assert(
      fc.property(ovals, ovals, (one, two) => {
        const shared = areaOf(intersection([one as never], [two as never]) as never)
        if (areaOf([[one]] as never) < 1 || areaOf([[two]] as never) < 1) return
        const flat = Float64Array.from(one.flatMap(([a, l]) => [a, l, 0]))
        const found = parting(flat, [], Float64Array.from(two.flat()))
        const best = Math.max(
          ...Array.from({ length: 1440 }, (_, k) => {
            const [x, y] = [Math.cos((k / 4) * RAD), Math.sin((k / 4) * RAD)]
            const from = Math.min(...one.map(([a, l]) => a * x + l * y))
            return from - Math.max(...two.map(([a, l]) => a * x + l * y))
          }),
        )
        if (Math.abs(best) < 0.05) return
        expect(best > 0).toBe(shared < 1e-9)
        if (best < 0) {
          // Paper on paper: they touch all over, and do not pass through each other.
          expect(found.gap).toBeCloseTo(0, 12)
          over++
          return
        }
        expect(Math.abs(found.z)).toBe(0)
        expect(found.gap).toBeGreaterThan(0)
        // Nearest corner to corner they may be farther apart than square to any edge; never nearer than told.
        expect(found.gap).toBeLessThanOrEqual(best + 0.05)
        // Square to the edges of either is all that there is to try.
        const square = [one, two].flatMap((points) =>
          points.map((p, k) => {
            const q = points[(k + 1) % points.length] as Flat
            const size = Math.hypot(q[0] - p[0], q[1] - p[1])
            const [x, y] = [(q[1] - p[1]) / size, (p[0] - q[0]) / size]
            const at = ([a, l]: Flat) => a * x + l * y
            const [o, t] = [one.map(at), two.map(at)]
            return Math.max(Math.min(...o) - Math.max(...t), Math.min(...t) - Math.max(...o))
          }),
        )
        expect(found.gap).toBeCloseTo(Math.max(...square), 9)
        apart++
      }),
      runs(500),
    )
    expect(Math.min(apart, over)).toBeGreaterThan(60)
  })

  test('corners that are joints count for nothing: the rest decides', () => {
    const part = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10)
    // A triangle that stands on the part's corner, its other corners beyond the left side.
    const points = Float64Array.of(0, 0, 0, -4, 3, 0, -4, 6, 0)
    expect(parting(points, [true, false, false], part)).toMatchObject({ x: -1, gap: 4 })
    expect(parting(points, [false, false, false], part).gap).toBeCloseTo(0, 12)
    // A joint that lies beyond the side counts, as near as it is.
    const off = Float64Array.of(-1, 1, 0, -4, 3, 0, -4, 6, 0)
    expect(parting(off, [true, false, false], part)).toMatchObject({ x: -1, gap: 1 })
  })

  test('across the plane the panel’s own normal is tried too, both ways', () => {
    const part = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10)
    const above = Float64Array.of(2, 2, 3, 8, 2, 4, 8, 8, 5)
    expect(parting(above, [], part)).toMatchObject({ z: 1, gap: 3 })
    const below = above.map((value, k) => (k % 3 === 2 ? -value : value))
    expect(parting(below, [], part)).toMatchObject({ z: -1, gap: 3 })
  })
})

describe('where edges pierce a panel', () => {
  const corner = fc.tuple(between(-9, 9), between(-9, 9), between(-9, 9))

  test('is where the signs of tetrahedra say so, on the edge and in the panel', () => {
    let pierced = 0
    fc.assert(
      fc.property(fc.array(corner, { minLength: 3, maxLength: 5 }), ovals, (points, outline) => {
        const part = Float64Array.from(outline.flat())
        const flat = outline.map(([a, l]): Vec3 => [a, l, 0])
        const [a, b, c] = flat as [Vec3, Vec3, Vec3]
        fc.pre(Math.abs(orient3d(...a, ...b, ...c, 0, 0, 1)) > 1)
        let blurred = false
        const wanted = points.filter((p, k) => {
          const q = points[(k + 1) % points.length] as Vec3
          if (p[2] > 0 === q[2] > 0) return false
          const turns = flat.map((e, m) =>
            orient3d(...e, ...(flat[(m + 1) % flat.length] as Vec3), ...p, ...q),
          )
          if (turns.some((turn) => Math.abs(turn) < 1e-3)) blurred = true
          return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)
        })
        if (blurred) return
        const found = piercings(Float64Array.from(points.flat()), part)
        expect(found).toHaveLength(wanted.length)
        wanted.forEach((p, n) => {
          const q = points[(points.indexOf(p) + 1) % points.length] as Vec3
          const t = p[2] / (p[2] - q[2])
          expect(found[n]?.[0]).toBeCloseTo(p[0] + t * (q[0] - p[0]), 9)
          expect(found[n]?.[1]).toBeCloseTo(p[1] + t * (q[1] - p[1]), 9)
        })
        pierced += wanted.length
      }),
      runs(500),
    )
    expect(pierced).toBeGreaterThan(40)
  })

  test('an end in the panel pierces it, an edge in its plane does not', () => {
    const part = Float64Array.of(0, 0, 10, 0, 10, 10, 0, 10)
    const standing = Float64Array.of(5, 5, 0, 5, 5, 4, 6, 5, 4)
    expect(piercings(standing, part).length).toBeGreaterThan(0)
    const lying = Float64Array.of(2, 2, 0, 8, 2, 0, 8, 8, 0)
    expect(piercings(lying, part)).toEqual([])
    const rim = Float64Array.of(10 + 1e-7, 5, 1, 10 + 1e-7, 5, -1, 30, 5, -1)
    expect(piercings(rim, part)).toHaveLength(1)
    const beside = Float64Array.of(10 + 1e-5, 5, 1, 10 + 1e-5, 5, -1, 30, 5, -1)
    expect(piercings(beside, part)).toHaveLength(0)
  })
})
