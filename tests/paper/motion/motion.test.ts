import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Vec3 } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import { WORLD } from '../../../src/paper/motion/chain.ts'
import type { Body, Still } from '../../../src/paper/motion/motion.ts'
import { bodyOf, motionOf } from '../../../src/paper/motion/motion.ts'
import { planeOf } from '../shared/crossing.ts'
import { designs, runs } from '../shared/designs.ts'
import { between, gardens } from '../shared/gardens.ts'
import { dotOf, minus, RAD } from '../shared/space.ts'

const points = (still: Still, body: Body): Vec3[] => {
  const p = still.places(body)
  return Array.from({ length: p.length / 3 }, (_, k): Vec3 => [p[3 * k], p[3 * k + 1], p[3 * k + 2]] as Vec3)
}

/**
 * How far points stray from the straight line between two openings, as a share of what the bounds allow;
 * seen from the world or from a panel. Above 1 a bound is wrong.
 */
function strays(made: Design, root: number, from: number, to: number): { share: number; high: number } {
  const motion = motionOf(compile(made))
  const { panels } = motion.model
  const [a, b] = [motion.still(from), motion.still(to)]
  const stretch = motion.stretch(a, b)
  const rootPanel = panels[root]
  const seen = (still: Still, body: Body): Vec3[] => {
    if (!rootPanel) return points(still, body)
    const plane = planeOf(rootPanel.outline, points(still, bodyOf(root, rootPanel.outline)))
    if (!plane) return points(still, body)
    return points(still, body).map((p): Vec3 => {
      const q = minus(p, plane.origin)
      return [dotOf(q, plane.across), dotOf(q, plane.along), dotOf(q, plane.normal)]
    })
  }
  let [share, high] = [0, 0]
  panels.forEach(({ outline }, panel) => {
    const body = bodyOf(panel, outline)
    const bends = stretch.bends(root, body)
    const bendsY = stretch.bendsAlongY(body)
    const [p, q] = [seen(a, body), seen(b, body)]
    for (const t of [0.1, 0.35, 0.5, 0.8, 0.99]) {
      const room = (stretch.width ** 2 * t * (1 - t)) / 2
      seen(motion.still(from + t * (to - from)), body).forEach((at, k) => {
        const off = [0, 1, 2].map(
          (i) => (at[i] as number) - (1 - t) * (p[k]?.[i] as number) - t * (q[k]?.[i] as number),
        )
        const stray = Math.hypot(...off) - 1e-9
        if (stray > 0) share = Math.max(share, stray / ((bends[k] as number) * room))
        const strayY = Math.abs(off[1] as number) - 1e-9
        if (root === WORLD && strayY > 0) share = Math.max(share, strayY / ((bendsY[k] as number) * room))
        high = Math.max(high, stray)
      })
    }
  })
  return { share, high }
}

const spans = fc
  .tuple(fc.integer({ min: 0, max: 1799 }), fc.constantFrom(1, 3, 10, 30, 100, 300, 900, 1800))
  .map(([from, width]) => [from / 10, Math.min(1800, from + width) / 10] as const)

describe('between two openings every point keeps to its bounds', () => {
  test('seen from the world', () => {
    let most = 0
    fc.assert(
      fc.property(gardens(6), spans, (made, [from, to]) => {
        const { share } = strays(made, WORLD, from, to)
        expect(share).toBeLessThanOrEqual(1)
        most = Math.max(most, share)
      }),
      runs(300),
    )
    // A page point itself bends by just what is allowed: the bounds are no wild guess.
    expect(most).toBeGreaterThan(0.5)
  })

  test('seen from any panel', () => {
    fc.assert(
      fc.property(gardens(6), spans, fc.nat({ max: 13 }), (made, [from, to], root) => {
        expect(strays(made, root % (2 + 2 * made.mechanisms.length), from, to).share).toBeLessThanOrEqual(1)
      }),
      runs(300),
    )
  })

  test('six levels deep', () => {
    fc.assert(
      fc.property(designs({ chain: true, depth: 6 }), spans, (made, [from, to]) => {
        expect(strays(made, WORLD, from, to).share).toBeLessThanOrEqual(1)
      }),
      runs(100),
    )
  })

  test('with steep wedges, whose folds swing round in the last degrees', () => {
    const late = fc
      .tuple(between(100, 179), between(0.01, 1))
      .map(([from, part]) => [from, from + part * (180 - from)] as const)
    fc.assert(
      fc.property(
        designs({ chain: true, depth: 4, kinds: ['cut-v-fold'], steepest: 89 }),
        late,
        (made, [from, to]) => {
          expect(strays(made, WORLD, from, to).share).toBeLessThanOrEqual(1)
        },
      ),
      runs(300),
    )
  })

  test('a page point strays from its chord by r (1 - cos), which is the bound to second order', () => {
    const { share, high } = strays(
      { hingebook: 1, title: 'Bare', card: { width: 100, height: 100, caliper: 0.25 }, mechanisms: [] },
      WORLD,
      80,
      100,
    )
    // Chord of a circle (Euclid): half-way it is 100 (1 - cos 5) inside the arc, page points turning by half the opening.
    expect(high).toBeCloseTo(100 * (1 - Math.cos(5 * RAD)), 6)
    expect(share).toBeGreaterThan(0.99)
    expect(share).toBeLessThanOrEqual(1)
  })
})
