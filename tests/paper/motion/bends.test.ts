// The bounds on how paths bend, against second differences of the poses themselves (any text on numerical analysis):
// never less, and where every turn goes the same way also not more.
import { describe, expect, test } from 'vitest'
import type { Design, Flat, Vec3 } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import { WORLD } from '../../../src/paper/motion/chain.ts'
import type { Still } from '../../../src/paper/motion/motion.ts'
import { bodyOf, motionOf } from '../../../src/paper/motion/motion.ts'
import { seamsAlong } from '../../../src/paper/motion/seams.ts'
import { design } from '../shared/designs.ts'
import { crossOf, dotOf, minus, RAD, unit } from '../shared/space.ts'

const KINDS: Readonly<Record<string, object>> = {
  'a V-fold': { kind: 'cut-v-fold', apex: 40, run: 50, cut: 40, lean: 6 },
  'a steep V-fold': { kind: 'cut-v-fold', apex: 100, run: -20, cut: 80 },
  'a layer': { kind: 'cut-layer', start: 40, end: 80, left: 30, right: 20 },
  'a trapezoid': { kind: 'cut-trapezoid', start: 40, end: 80, startCut: 20, endCut: 40 },
  'a moth': { kind: 'glued-v-fold', apex: 40, toward: 1, base: 50, facet: 70, foot: 50, ridge: 50 },
  'a moth still down': {
    kind: 'glued-v-fold',
    apex: 40,
    toward: 1,
    base: 50,
    facet: 70,
    foot: 50,
    ridge: 50,
    pop: 'down',
  },
  'a tent': {
    kind: 'glued-tent',
    start: 40,
    end: 80,
    rightFoot: 20,
    leftFoot: 30,
    rightWall: 50,
    leftWall: 40,
  },
  'a platform': {
    kind: 'floating-layer',
    start: 40,
    end: 80,
    height: 20,
    left: 30,
    right: 30,
    walls: [-30, 0, 30],
  },
}

const card = { width: 200, height: 200 }

const made = (m: object, ...guests: readonly object[]): Design =>
  design([{ id: 'm', on: 'gutter', ...m }, ...guests], card)

const threes = (p: Float64Array): Vec3[] =>
  Array.from({ length: p.length / 3 }, (_, k): Vec3 => [p[3 * k], p[3 * k + 1], p[3 * k + 2]] as Vec3)

const H = 0.05

interface Bent {
  /** Of the point that bends most: what is measured by what is allowed; mm per radian². */
  readonly most: number
  /** The worst such share of all points: above 1 a bound is wrong. */
  readonly worst: number
  /** The same along y alone, seen from the world. */
  readonly worstY: number
  readonly mostY: number
}

/** How a panel's corners bend at an opening, seen from the world or from a panel. */
function bent(of: Design, root: string, panel: string, opening: number): Bent {
  const motion = motionOf(compile(of))
  const indexOf = (name: string): number => motion.model.panels.findIndex((one) => one.name === name)
  const from = root === 'world' ? WORLD : indexOf(root)
  const { outline } = motion.model.panels[indexOf(panel)] ?? { outline: [] }
  const body = bodyOf(indexOf(panel), outline)
  const seen = (still: Still): Vec3[] => {
    const points = threes(still.places(body))
    if (from === WORLD) return points
    const [o, x, y] = threes(
      still.places(
        bodyOf(from, [
          [0, 0],
          [1, 0],
          [0, 1],
        ]),
      ),
    ) as [Vec3, Vec3, Vec3]
    const [u, v] = [unit(minus(x, o)), unit(minus(y, o))]
    return points.map((p): Vec3 => {
      const q = minus(p, o)
      return [dotOf(q, u), dotOf(q, v), dotOf(q, crossOf(u, v))]
    })
  }
  const stills = [opening - H, opening, opening + H].map(motion.still) as [Still, Still, Still]
  const stretch = motion.stretch(stills[0], stills[2])
  const [a, b, c] = stills.map(seen) as [Vec3[], Vec3[], Vec3[]]
  const [bends, bendsY] = [stretch.bends(from, body), stretch.bendsAlongY(body)]
  let found = { most: 0, worst: 0, worstY: 0, mostY: 0 }
  let [big, bigY] = [1e-3, 1e-3]
  outline.forEach((_, k) => {
    const second = [0, 1, 2].map(
      (i) => ((a[k]?.[i] ?? 9) - 2 * (b[k]?.[i] ?? 9) + (c[k]?.[i] ?? 9)) / (H * RAD) ** 2,
    ) as unknown as Vec3
    const size = Math.hypot(...second)
    // Second differences of places good to 1e-13 mm carry noise of some 1e-5.
    const share = Math.max(0, size - 3e-3) / (bends[k] as number)
    found = { ...found, worst: Math.max(found.worst, share || 0) }
    if (size > big) found = { ...found, most: share }
    big = Math.max(big, size)
    if (from !== WORLD) return
    const y = Math.abs(second[1])
    const shareY = Math.max(0, y - 3e-3) / (bendsY[k] as number)
    found = { ...found, worstY: Math.max(found.worstY, shareY || 0) }
    if (y > bigY) found = { ...found, mostY: shareY }
    bigY = Math.max(bigY, y)
  })
  return found
}

const panelsOf = (of: Design): string[] => Object.keys(compile(of)(90).panels)

describe.each(Object.entries(KINDS))('%s', (_, m) => {
  const one = made(m)
  const { kind } = m as { kind: string }
  // A platform has no fold for a guest on its right.
  const hosts =
    kind === 'floating-layer'
      ? [one]
      : [one, made(m, { id: 'eye', kind: 'cut-v-fold', on: 'm/right', apex: 6, run: 12, cut: 7 })]

  test('no point bends more than its bound, seen from anywhere, nor along the gutter', () => {
    for (const of of hosts)
      for (const root of ['world', ...panelsOf(of)])
        for (const panel of panelsOf(of))
          for (const opening of [4, 60, 120, 176]) {
            const { worst, worstY } = bent(of, root, panel, opening)
            // Rates grow within the stretch; at its middle the bound has a little to spare.
            expect(worst).toBeLessThanOrEqual(1.0001)
            expect(worstY).toBeLessThanOrEqual(1.0001)
          }
  })

  test('over one crease the bound is what is measured', () => {
    const pairs = [
      ['page/left', 'page/right'],
      ['world', 'page/left'],
      ...(kind === 'floating-layer'
        ? [['page/right', 'm/wall-3']]
        : [
            ['page/left', 'm/left'],
            ['page/right', 'm/right'],
            ['m/left', 'm/right'],
            ['m/right', 'page/right'],
          ]),
    ] as [string, string][]
    for (const [root, panel] of pairs)
      for (const opening of [90, 150]) expect(bent(one, root, panel, opening).most).toBeGreaterThan(0.97)
  })
})

describe('over more creases, all turning one way, there is little to spare', () => {
  const down = KINDS['a moth still down'] as object
  const moth = KINDS['a moth'] as object

  test.each([
    [moth, 'm/left', 'page/right', 0.9],
    [moth, 'm/right', 'page/left', 0.9],
    [down, 'world', 'm/left', 0.97],
    [down, 'world', 'm/right', 0.97],
    [KINDS['a steep V-fold'] as object, 'world', 'm/right', 0.97],
    [KINDS['a steep V-fold'] as object, 'm/left', 'page/right', 0.45],
    [KINDS['a platform'] as object, 'page/right', 'm/left', 0.43],
    [KINDS['a platform'] as object, 'm/left', 'm/wall-3', 0.97],
  ] as const)('case %#', (m, root, panel, least) => {
    expect(bent(made(m), root, panel, 90).most).toBeGreaterThan(least)
  })

  test('what turns about the gutter alone keeps its place along it', () => {
    for (const name of ['a layer', 'a tent', 'a platform']) {
      const of = made(KINDS[name] as object)
      const motion = motionOf(compile(of))
      const stretch = motion.stretch(motion.still(20), motion.still(160))
      motion.model.panels.forEach(({ outline }, panel) => {
        expect([...stretch.bendsAlongY(bodyOf(panel, outline))].every((bend) => bend === 0)).toBe(true)
      })
    }
    const along = bent(made(down), 'world', 'm/left', 90)
    expect(along.mostY).toBeGreaterThan(0.13)
  })
})

describe('how fast panels turn', () => {
  /** Angular velocity of a panel seen from another one, radians per radian, from three directions that it carries. */
  function turning(of: Design, root: string, panel: string, opening: number, h: number): Vec3 {
    const motion = motionOf(compile(of))
    const axes = (still: Still, name: string): readonly [Vec3, Vec3, Vec3] => {
      const index = motion.model.panels.findIndex((one) => one.name === name)
      const flat: Flat[] = [
        [0, 0],
        [1, 0],
        [0, 1],
      ]
      const [o, x, y] = threes(still.places(bodyOf(index, flat))) as [Vec3, Vec3, Vec3]
      const [u, v] = [unit(minus(x, o)), unit(minus(y, o))]
      return [u, v, crossOf(u, v)]
    }
    const seen = (at: number): readonly Vec3[] => {
      const still = motion.still(at)
      const frame = axes(still, root)
      return axes(still, panel).map((e): Vec3 => [dotOf(e, frame[0]), dotOf(e, frame[1]), dotOf(e, frame[2])])
    }
    const [a, b, c] = [seen(opening - h), seen(opening), seen(opening + h)]
    // w = half the sum of e x e' over three square directions (rigid-body kinematics, any textbook).
    return [0, 1, 2].reduce<Vec3>(
      (sum, k) => {
        const rate = minus(c[k] as Vec3, a[k] as Vec3).map((d) => d / (2 * h * RAD)) as Vec3
        const w = crossOf(b[k] as Vec3, rate)
        return [sum[0] + w[0] / 2, sum[1] + w[1] / 2, sum[2] + w[2] / 2]
      },
      [0, 0, 0],
    )
  }

  test.each(Object.entries(KINDS))('%s: never faster than told, over one crease just as fast', (_, m) => {
    const of = made(m)
    const motion = motionOf(compile(of))
    const names = panelsOf(of)
    for (const opening of [30, 90, 150]) {
      const [from, to] = [opening - 0.3, opening + 0.3]
      const stretch = motion.stretch(motion.still(from), motion.still(to))
      for (const root of names)
        for (const panel of names) {
          if (root === panel) continue
          const indexOf = (name: string) => motion.model.panels.findIndex((one) => one.name === name)
          const [spin, jerk] = stretch.turns(indexOf(root), indexOf(panel))
          const [a, b, c] = [-0.2, 0, 0.2].map((d) => turning(of, root, panel, opening + d, 0.05)) as [
            Vec3,
            Vec3,
            Vec3,
          ]
          const fast = Math.hypot(...b)
          expect(fast).toBeLessThanOrEqual(spin * 1.0001)
          expect(Math.hypot(...minus(c, a)) / (0.4 * RAD)).toBeLessThanOrEqual(jerk * 1.001 + 1e-4)
          const joined = [
            ['page/left', 'page/right'],
            ['page/left', 'm/left'],
            ['m/right', 'page/right'],
          ].some((pair) => pair.includes(root) && pair.includes(panel))
          if (joined && (m as { kind: string }).kind !== 'floating-layer')
            expect(fast).toBeGreaterThan(0.75 * spin)
        }
    }
  })
})

test('a still is posed once, and so are the places in it', () => {
  const motion = motionOf(compile(made(KINDS['a layer'] as object)))
  const body = bodyOf(0, [[10, 10]])
  expect(motion.still(40)).toBe(motion.still(40))
  expect(motion.still(40).places(body)).toBe(motion.still(40).places(body))
  expect(motion.still(40)).not.toBe(motion.still(41))
  // By the definition of the world frame: x to the right, y along the gutter, z out; the left page at half the opening.
  const [x, y, z] = motion.still(40).places(body)
  expect(x).toBeCloseTo(-10 * Math.sin(20 * RAD), 12)
  expect(y).toBeCloseTo(10, 12)
  expect(z).toBeCloseTo(10 * Math.cos(20 * RAD), 12)
})

describe('paper over seams', () => {
  const square = (a: number, l: number, wide: number, long: number): Flat[] => [
    [a, l],
    [a + wide, l],
    [a + wide, l + long],
    [a, l + long],
  ]
  const part = (outline: Flat[], ...seams: readonly number[]) => ({
    panel: 0,
    outline,
    drawn: outline.map((_, k) => !seams.includes(k)),
  })
  const fold = { a: [0, -50] as Flat, b: [0, -20] as Flat }
  const left = part(square(-8, 5, 8, 10), 1)
  const right = part(square(0, 0, 8, 20), 3)

  test('lies half on the one part and half on the other, along all that they share, a millimetre wide', () => {
    const found = seamsAlong([left, right], [fold])
    expect(found).toHaveLength(1)
    const corners = [...(found[0] ?? [])].sort((p, q) => p[0] - q[0] || p[1] - q[1])
    const wanted = [
      [-1, 10],
      [0, 5],
      [0, 15],
      [1, 10],
    ]
    corners.forEach((corner, k) => {
      expect(corner[0]).toBeCloseTo(wanted[k]?.[0] ?? 9, 9)
      expect(corner[1]).toBeCloseTo(wanted[k]?.[1] ?? 9, 9)
    })
    // The corners go round counter-clockwise: twice the area of the triangle of three is above 0.
    const [a, b, c] = found[0] as unknown as [Flat, Flat, Flat]
    expect((b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])).toBeGreaterThan(0)
    expect(seamsAlong([right, left], [fold])).toHaveLength(1)
  })

  test('is as narrow as the narrower part, to a factor of two, and never nothing', () => {
    for (const wide of [0.9, 0.3, 0.1, 0.02]) {
      const [rhomb] = seamsAlong([left, part(square(0, 0, wide, 20), 3)], [fold])
      const reach = Math.max(...(rhomb ?? []).map(([a]) => a))
      expect(reach).toBeLessThanOrEqual(wide)
      expect(reach).toBeGreaterThan(wide / 2)
    }
    const [least] = seamsAlong([left, part(square(0, 0, 1e-5, 20), 3)], [fold])
    expect(Math.max(...(least ?? []).map(([a]) => a))).toBeGreaterThan(0.002)
  })

  test('is only looked at where a crease is in line, and where the edges are no real ones', () => {
    expect(seamsAlong([left, right], [])).toEqual([])
    expect(seamsAlong([left, right], [{ a: [0, -50], b: [1e-3, -20] }])).toEqual([])
    expect(seamsAlong([left, right], [{ a: [1e-3, -50], b: [0, -20] }])).toEqual([])
    expect(seamsAlong([left, right], [{ a: [2, -50], b: [2, -20] }])).toEqual([])
    expect(seamsAlong([left, right], [{ a: [5, 5], b: [6, 5] }, fold])).toHaveLength(1)
    expect(seamsAlong([part(left.outline), right], [fold])).toEqual([])
    expect(seamsAlong([left, part(right.outline)], [fold])).toEqual([])
    // Apart by a hair, or sharing less than a tenth of a millimetre, or only a corner.
    expect(seamsAlong([left, part(square(1e-3, 0, 8, 20), 3)], [fold])).toEqual([])
    expect(seamsAlong([left, part(square(0, 14.95, 8, 20), 3)], [fold])).toEqual([])
    expect(seamsAlong([left, part(square(0, 14.8, 8, 20), 3)], [fold])).toHaveLength(1)
    expect(seamsAlong([left, part(square(0, 15, 8, 20), 3)], [fold])).toEqual([])
    expect(seamsAlong([part(square(-8, 5, 8, 0.05), 1), right], [fold])).toEqual([])
    expect(seamsAlong([part(square(-8, 5, 8, 0.2), 1), right], [fold])).toHaveLength(1)
  })
})
