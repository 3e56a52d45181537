import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { modelOf, parseDesign, poseAt } from '../../src/paper/index.ts'

const DEGREES = 180 / Math.PI

const card = (mechanism: object): Design =>
  parseDesign({ hingebook: 1, title: 'Moth', card: { width: 200, height: 300 }, mechanisms: [mechanism] })

const vFold = (more: object): Design =>
  card({ id: 'moth', kind: 'glued-v-fold', on: 'gutter', apex: 100, toward: 1, foot: 50, ridge: 1, ...more })

const tent = (more: object): Design =>
  card({ id: 'tent', kind: 'glued-tent', on: 'gutter', start: 0, end: 20, ...more })

/** The ridge's direction, and its angle from the gutter in the mirror plane, degrees. */
function ridgeOf(design: Design, opening: number) {
  const { start, end, angle } = poseAt(design, opening).creases['moth/ridge'] ?? {
    start: [],
    end: [],
    angle: 0,
  }
  const [x, y, z] = [0, 1, 2].map((k) => (end[k] as number) - (start[k] as number)) as [
    number,
    number,
    number,
  ]
  return { x, y, z, phi: Math.atan2(z, y) * DEGREES, angle }
}

// Three spheres round the apex and the two joint ends: trilateration (analytic geometry, surveying; any textbook).
// Numbers computed by plain three-sphere coordinates, apart from the kernel; six decimals.
describe('a glued V-fold stands where three spheres meet', () => {
  const rows = [
    { base: 45, facet: 60, opening: 90, up: 90, down: -19.471221, ridge: 70.528779 },
    { base: 45, facet: 60, opening: 180, up: 45, down: -45, ridge: 109.471221 },
    { base: 60, facet: 80, opening: 120, up: 115.673077, down: -33.886288, ridge: 99.205596 },
    { base: 50, facet: 70, opening: 100, up: 102.46777, down: -27.560331, ridge: 77.288818 },
    { base: 45, facet: 45, opening: 90, up: 70.528779, down: 0, ridge: 90 },
    { base: 60, facet: 60, opening: 60, up: 112.619865, down: 0, ridge: 60 },
  ]
  test.each(rows)(
    'base $base, facet $facet at $opening: popped and lying',
    ({ base, facet, opening, up, down, ridge }) => {
      const popped = ridgeOf(vFold({ base, facet }), opening)
      const lying = ridgeOf(vFold({ base, facet, pop: 'down' }), opening)
      expect(popped.phi).toBeCloseTo(up, 6)
      expect(lying.phi).toBeCloseTo(down, 6)
      expect(popped.angle).toBeCloseTo(ridge, 6)
    },
  )

  const sides = { right: { base: 40, facet: 70 }, left: { base: 60, facet: 50 } }
  test.each([
    { opening: 60, at: [-0.068771522, -0.230087933, 0.970736844] },
    { opening: 90, at: [-0.117536629, -0.071478158, 0.990492814] },
    { opening: 120, at: [-0.182791383, 0.173282999, 0.967760462] },
  ])('unequal sides at $opening', ({ opening, at }) => {
    const { x, y, z } = ridgeOf(vFold(sides), opening)
    expect([x, y, z].map((v, k) => Math.abs(v - (at[k] as number))).every((off) => off < 1e-9)).toBe(true)
  })
})

describe('limits of a glued V-fold', () => {
  // Spherical law of cosines with the ridge in the plane of the joints; the angle is the octahedron's
  // dihedral, arccos(-1/3): Coxeter, Regular Polytopes, table I [memory].
  test('base 60, facet 45 stops at 109.471220634 degrees, and says so exactly', () => {
    const range = modelOf(vFold({ base: 60, facet: 45 })).builds[0]?.build.range
    expect(range?.[0]).toBe(0)
    expect(range?.[1]).toBeCloseTo(Math.acos(-1 / 3) * DEGREES, 10)
  })
  test('past its stop it stays at its stop and is named', () => {
    const design = vFold({ base: 60, facet: 45 })
    expect(poseAt(design, 109).stopped).toEqual([])
    expect(poseAt(design, 110).stopped).toEqual(['moth'])
    expect(poseAt(design, 170).creases['moth/ridge']?.angle).toBeCloseTo(180, 5)
  })
  test('a facet wider than its base opens flat', () => {
    expect(modelOf(vFold({ base: 45, facet: 60 })).builds[0]?.build.range).toEqual([0, 180])
  })
  // Kawasaki–Justin in its alternating-sum form, which holds on cones too (encyclopaedia article
  // 'Kawasaki's theorem' [found]): b1 + a1 = b2 + a2 for the popped state.
  test('unequal sums do not shut flat, and say by how many degrees', () => {
    const gap = (more: object) => modelOf(vFold(more)).builds[0]?.build.shutGap?.gap
    expect(gap({ right: { base: 40, facet: 70 }, left: { base: 60, facet: 50 } })).toBe(0)
    expect(gap({ right: { base: 40, facet: 73 }, left: { base: 60, facet: 50 } })).toBeCloseTo(3, 12)
    expect(gap({ right: { base: 40, facet: 50 }, left: { base: 60, facet: 70 }, pop: 'down' })).toBe(0)
  })
})

// Planar four-bar, worked examples. R. L. Norton, Design of Machinery [memory]; the published figures hold
// to half a unit of their last digit, L1 within 0.006. Ground = right foot, crank = left foot, coupler =
// left wall, rocker = right wall; the rocker's angle is 180 less the right joint's inner angle.
describe('a tent is a planar four-bar', () => {
  const rocker = (
    d: number,
    a: number,
    b: number,
    c: number,
    opening: number,
    pop: 'up' | 'down',
  ): number => {
    const design = tent({ rightFoot: d, leftFoot: a, leftWall: b, rightWall: c, pop })
    const { creases } = poseAt(design, opening)
    const [joint, ridge] = [creases['tent/right']?.start, creases['tent/ridge']?.start] as [
      number[],
      number[],
    ]
    const half = (opening * Math.PI) / 360
    const along = [Math.sin(half), Math.cos(half)]
    const wall = [(ridge[0] as number) - (joint[0] as number), (ridge[2] as number) - (joint[2] as number)]
    const dot = (wall[0] as number) * (along[0] as number) + (wall[1] as number) * (along[1] as number)
    const turn = (along[0] as number) * (wall[1] as number) - (along[1] as number) * (wall[0] as number)
    return Math.atan2(turn, dot) * DEGREES
  }
  test.each([
    { name: 'L1', d: 100, a: 40, b: 120, c: 80, opening: 40, open: 57.325, crossed: -98.01, within: 0.006 },
    { name: 'L2', d: 6, a: 2, b: 7, c: 9, opening: 30, open: 117.3, crossed: -143.66, within: 0.05 },
    { name: 'L3', d: 3, a: 10, b: 6, c: 8, opening: 45, open: 16.5, crossed: 103.6, within: 0.05 },
  ])('$name: rocker angle, open and crossed', ({ d, a, b, c, opening, open, crossed, within }) => {
    const both = (['up', 'down'] as const)
      .map((pop) => rocker(d, a, b, c, opening, pop))
      .sort((p, q) => p - q)
    const expected = [open, crossed].sort((p, q) => p - q)
    both.forEach((angle, k) => {
      expect(Math.abs(angle - (expected[k] as number))).toBeLessThan(within)
    })
  })

  // Freudenstein, Trans. ASME 76 (1954) 483-492 [memory]: K1 cos t4 - K2 cos t2 + K3 = cos(t2 - t4).
  test('Freudenstein’s equation holds all the way', () => {
    const [d, a, b, c] = [30, 40, 40, 50]
    const [K1, K2, K3] = [d / a, d / c, (a * a - b * b + c * c + d * d) / (2 * a * c)]
    for (let opening = 5; opening <= 180; opening += 5)
      for (const pop of ['up', 'down'] as const) {
        const t4 = rocker(d, a, b, c, opening, pop) / DEGREES
        const t2 = opening / DEGREES
        expect(K1 * Math.cos(t4) - K2 * Math.cos(t2) + K3 - Math.cos(t2 - t4)).toBeCloseTo(0, 10)
      }
  })

  // Circle–circle intersection, computed independently; x to the right, z out.
  test.each([
    { opening: 60, up: [-5.100525479, 71.762514761], down: [-24.130243751, -5.145176008] },
    { opening: 90, up: [-7.26048679, 62.313677459], down: [-17.629671908, -10.270618363] },
    { opening: 120, up: [-9.013890762, 50.712382588], down: [-14.392201233, -14.496166372] },
    { opening: 180, up: [-11.428571429, 27.994168489], down: [-11.428571429, -27.994168489] },
  ])('feet 30 and 40, walls 50 and 40 at $opening', ({ opening, up, down }) => {
    for (const [pop, at] of [
      ['up', up],
      ['down', down],
    ] as const) {
      const ridge = poseAt(tent({ rightFoot: 30, leftFoot: 40, rightWall: 50, leftWall: 40, pop }), opening)
        .creases['tent/ridge']
      expect(ridge?.start[0]).toBeCloseTo(at[0] as number, 8)
      expect(ridge?.start[2]).toBeCloseTo(at[1] as number, 8)
    }
  })
  // Shut-flat rule for the quadrilateral, A + B = C + D: Pop-Up Cards as a Vehicle to Teach Mathematics,
  // research notes with J. O'Rourke [found].
  test('it shuts flat only if foot and wall add up alike', () => {
    const gap = (more: object) => modelOf(tent(more)).builds[0]?.build.shutGap
    expect(gap({ rightFoot: 30, leftFoot: 40, rightWall: 50, leftWall: 40 })?.gap).toBe(0)
    expect(gap({ rightFoot: 30, leftFoot: 40, rightWall: 50, leftWall: 42 })).toEqual({ gap: -2, unit: 'mm' })
  })
})
