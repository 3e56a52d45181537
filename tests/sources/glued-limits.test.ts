// When a glued piece shuts flat, where it stops, and that it never jumps: against published conditions, against
// trigonometry from the spherical law of cosines, and against spheres in sixty digits.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Mechanism, Vec3 } from '../../src/paper/index.ts'
import { compile, modelOf, parseDesign } from '../../src/paper/index.ts'
import { runs } from '../paper/shared/designs.ts'
import { gluedDesigns } from '../paper/shared/glued-designs.ts'
import { apart, crossOf, DEG, dotOf, minus, RAD, sizeOf } from '../paper/shared/space.ts'
import { fromLengths, sixtyDigits } from './lengths.ts'

interface Sides {
  readonly b1: number
  readonly a1: number
  readonly b2: number
  readonly a2: number
}

type State = { readonly side: 'inside' | 'outside'; readonly pop: 'up' | 'down' }

const card = (mechanism: object): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Moth',
    card: { width: 300, height: 400 },
    mechanisms: [{ id: 'moth', on: 'gutter', ...mechanism }],
  })

const vFold = ({ b1, a1, b2, a2 }: Sides, state: Partial<State> = {}): Design =>
  card({
    kind: 'glued-v-fold',
    apex: 100,
    toward: 1,
    foot: 50,
    ridge: 60,
    right: { base: b1, facet: a1 },
    left: { base: b2, facet: a2 },
    ...state,
  })

const tent = ({ b1, a1, b2, a2 }: Sides, state: Partial<State> = {}): Design =>
  card({
    kind: 'glued-tent',
    start: 10,
    end: 60,
    rightFoot: b1,
    leftFoot: b2,
    rightWall: a1,
    leftWall: a2,
    ...state,
  })

const buildOf = (made: Design) => modelOf(made).builds[0]?.build

const gapOf = (made: Design): number => buildOf(made)?.shutGap?.gap ?? 0

const rangeOf = (made: Design) => buildOf(made)?.range ?? ([0, 180] as const)

/** Whole numbers: their sums are exact. */
const whole = (min: number, max: number) => fc.integer({ min, max })

const states = fc.record({
  side: fc.constantFrom('inside', 'outside'),
  pop: fc.constantFrom('up', 'down'),
}) as fc.Arbitrary<State>

/**
 * How far, mm, the farthest corner of the piece is from lying in the shut card's plane with both facets on the
 * part of their page that the file promises, by flat trigonometry: the tip seen from the right joint and from
 * the left one. `beyond`: past the joints, as a popped piece shuts.
 */
function tornApart({ b1, a1, b2, a2 }: Sides, beyond: boolean, spherical: boolean): number {
  const sign = beyond ? 1 : -1
  if (!spherical) return Math.abs(b1 + sign * a1 - (b2 + sign * a2))
  const tip = (b: number, a: number) =>
    [Math.sin((b + sign * a) * RAD), Math.cos((b + sign * a) * RAD)] as const
  const [p, q] = [tip(b1, a1), tip(b2, a2)]
  return 60 * Math.hypot(p[0] - q[0], p[1] - q[1])
}

describe('it shuts flat only if its sides match', () => {
  // T. Kawasaki, J. Justin: a flat vertex folds flat if its angles, added with alternate signs, give 0; here the
  // four angles round the apex make up one whole sheet (360 degrees). Encyclopaedia article 'Kawasaki's
  // theorem' [found].
  test('a V-fold whose four angles make one flat sheet obeys Kawasaki’s theorem', () => {
    fc.assert(
      fc.property(whole(20, 160), whole(20, 160), whole(20, 160), (b1, a1, a2) => {
        const b2 = 360 - b1 - a1 - a2
        fc.pre(b2 >= 10 && b2 <= 170)
        const alternate = b1 - a1 + a2 - b2
        const made = vFold({ b1, a1, b2, a2 }, { pop: 'down' })
        expect(gapOf(made)).toBeCloseTo(alternate, 10)
        expect(gapOf(made) === 0).toBe(alternate === 0)
      }),
      runs(300),
    )
    // Chance seldom meets it: every pair of angles with their supplements does.
    fc.assert(
      fc.property(whole(20, 160), whole(20, 160), (b1, a1) => {
        expect(gapOf(vFold({ b1, a1, b2: 180 - a1, a2: 180 - b1 }, { pop: 'down' }))).toBe(0)
      }),
      runs(100),
    )
  })

  test('popped, the sheet is made of the facets and what is left of the pages beyond the joints', () => {
    fc.assert(
      fc.property(whole(20, 160), whole(20, 160), whole(20, 160), (b1, a1, b2) => {
        const a2 = b1 + b2 - a1
        fc.pre(a2 >= 10 && a2 <= 170)
        const alternate = 180 - b1 - a1 + a2 - (180 - b2)
        expect(gapOf(vFold({ b1, a1, b2, a2 }))).toBeCloseTo(-alternate, 10)
      }),
      runs(300),
    )
  })

  test('what the kernel calls 0 is what lies flat in the shut card, and nothing else does', () => {
    let [flat, torn] = [0, 0]
    fc.assert(
      fc.property(
        fc.tuple(whole(20, 80), whole(20, 80), whole(20, 80), whole(20, 80)),
        fc.boolean(),
        fc.boolean(),
        states,
        ([b1, a1, b2, free], match, spherical, state) => {
          const beyond = (state.pop === 'up') === (state.side === 'inside')
          const a2 = match ? (beyond ? b1 + a1 - b2 : a1 - b1 + b2) : free
          fc.pre(a2 >= 5 && a2 <= 150)
          const sides = { b1, a1, b2, a2 }
          const made = (spherical ? vFold : tent)(sides, state)
          const apartBy = tornApart(sides, beyond, spherical)
          expect(gapOf(made) === 0).toBe(apartBy < 1e-9)
          if (gapOf(made) !== 0) {
            torn++
            return
          }
          flat++
          // Both facets in the plane x = 0, one tip for both, and every fold shut.
          const { panels, creases } = compile(made)(0)
          const points = Object.values(panels).flat()
          expect(Math.max(...points.map(([x]) => Math.abs(x)))).toBeLessThan(1e-9)
          const tips = ['left', 'right'].map((side) => panels[`moth/${side}`]?.[1] as Vec3) as [Vec3, Vec3]
          expect(apart(...tips)).toBeLessThan(1e-9)
          for (const part of ['ridge', 'left', 'right'])
            expect(Math.abs(creases[`moth/${part}`]?.angle ?? 9)).toBeLessThan(1e-7)
        },
      ),
      runs(800),
    )
    expect(Math.min(flat, torn)).toBeGreaterThan(200)
  })

  test('spheres in sixty digits agree: matching sides still meet a hair from shut, others do not', () => {
    fc.assert(
      fc.property(
        fc.tuple(whole(20, 80), whole(20, 80), whole(20, 80), whole(20, 80)),
        fc.boolean(),
        fc.boolean(),
        ([b1, a1, b2, free], match, spherical) => {
          const a2 = match ? b1 + a1 - b2 : free
          fc.pre(a2 >= 5 && a2 <= 150)
          const made = (spherical ? vFold : tent)({ b1, a1, b2, a2 })
          const { refused, lift } = fromLengths(sixtyDigits, made, { open: 1e-24 })
          // They also meet if the other state's sum is the one that matches: then beside the place that is promised.
          const met = refused.size === 0
          if (gapOf(made) === 0) expect(met).toBe(true)
          else if (met) expect(b1 - a1 === b2 - a2 || Math.abs(b1 - b2) > Math.abs(a1 - a2)).toBe(true)
          if (met && gapOf(made) === 0)
            expect(Math.abs(lift('moth/right', [0, 60])?.[0] ?? 9)).toBeLessThan(1e-9)
        },
      ),
      runs(200),
    )
  })
})

/** Stop openings by the spherical or plane law of cosines: where the diagonal is as long as both facets, or as their difference. */
function stopsOf({ b1, a1, b2, a2 }: Sides, spherical: boolean): { least: number; most: number } {
  const opening = (g: number): number => {
    const cosine = spherical
      ? (Math.cos(g * RAD) - Math.cos(b1 * RAD) * Math.cos(b2 * RAD)) /
        (Math.sin(b1 * RAD) * Math.sin(b2 * RAD))
      : (b1 * b1 + b2 * b2 - g * g) / (2 * b1 * b2)
    return cosine >= 1 ? 0 : cosine <= -1 ? 180 : Math.acos(cosine) * DEG
  }
  const widest = spherical ? Math.min(a1 + a2, 360 - a1 - a2) : a1 + a2
  return { least: opening(Math.abs(a1 - a2)), most: opening(widest) }
}

/** Any sides that can move between two openings at least 5 degrees apart. */
const moving = fc
  .tuple(whole(15, 110), whole(15, 110), whole(15, 110), whole(15, 110), fc.boolean())
  .map(([b1, a1, b2, a2, spherical]) => ({ sides: { b1, a1, b2, a2 }, spherical }))
  .filter(({ sides, spherical }) => {
    const { least, most } = stopsOf(sides, spherical)
    return most - least > 5
  })

describe('where it stops', () => {
  // geometry: cos g = cos b1 cos b2 + sin b1 sin b2 cos w (Todhunter, Spherical Trigonometry, ch. IV [memory]),
  // and the plane law of cosines; for equal sides cos²(w/2) = (cos²a - cos²b) / sin²b.
  test('it is told to a millionth of a degree, at both ends', () => {
    fc.assert(
      fc.property(moving, states, ({ sides, spherical }, state) => {
        const [least, most] = rangeOf((spherical ? vFold : tent)(sides, state))
        const stops = stopsOf(sides, spherical)
        // Near 0 and 180 an arccosine keeps half its digits.
        const loose = (at: number) => (at < 1 || at > 179 ? 3e-6 : 1e-9)
        expect(Math.abs(least - stops.least)).toBeLessThan(loose(stops.least))
        expect(Math.abs(most - stops.most)).toBeLessThan(loose(stops.most))
      }),
      runs(500),
    )
  })

  test('equal sides: cos²(w/2) = (cos²a - cos²b) / sin²b', () => {
    fc.assert(
      fc.property(whole(20, 90), whole(10, 89), (b, a) => {
        const most = rangeOf(vFold({ b1: b, a1: a, b2: b, a2: a }))[1]
        const square = (Math.cos(a * RAD) ** 2 - Math.cos(b * RAD) ** 2) / Math.sin(b * RAD) ** 2
        if (a >= b) expect(most).toBe(180)
        else expect(Math.cos((most * RAD) / 2) ** 2).toBeCloseTo(square, 12)
      }),
      runs(300),
    )
  })

  /** How far the tip lies from where sixty digits put it, a hair short of flat, mm. */
  function offAtFlat(made: Design): number {
    const tip = compile(made)(180).panels['moth/right']?.[1] ?? [9, 9, 9]
    const told = fromLengths(sixtyDigits, made, { missing: 1e-24 }).lift('moth/right', [0, 60])
    return apart(tip, told ?? [Number.NaN, 0, 0])
  }

  test('a piece whose four angles make one whole sheet opens exactly flat, and lies right there', () => {
    fc.assert(
      fc.property(whole(20, 160), whole(20, 160), whole(20, 160), states, (b1, b2, a1, state) => {
        const a2 = 360 - b1 - b2 - a1
        fc.pre(a2 >= 10 && a2 <= 170)
        const made = vFold({ b1, a1, b2, a2 }, state)
        fc.pre(stopsOf({ b1, a1, b2, a2 }, true).least < 175)
        expect(rangeOf(made)[1]).toBe(180)
        expect(compile(made)(180).stopped).toEqual([])
        expect(offAtFlat(made)).toBeLessThan(1e-6)
      }),
      runs(200),
    )
  })

  test('so does a piece whose facets are together as wide as both its bases', () => {
    fc.assert(
      fc.property(whole(20, 160), whole(20, 160), whole(20, 160), states, (b1, b2, a1, state) => {
        const a2 = b1 + b2 - a1
        fc.pre(a2 >= 10 && a2 <= 170)
        const made = vFold({ b1, a1, b2, a2 }, state)
        fc.pre(stopsOf({ b1, a1, b2, a2 }, true).least < 175)
        expect(rangeOf(made)[1]).toBe(180)
        expect(offAtFlat(made)).toBeLessThan(1e-6)
      }),
      runs(200),
    )
  })

  test('joints in one straight line and facets too: flat, the ridge is where it was coming to', () => {
    fc.assert(
      fc.property(whole(20, 160), whole(20, 160), states, (b1, a1, state) => {
        const made = vFold({ b1, a1, b2: 180 - b1, a2: 180 - a1 }, state)
        fc.pre(rangeOf(made)[0] < 175)
        expect(rangeOf(made)[1]).toBe(180)
        expect(offAtFlat(made)).toBeLessThan(1e-6)
      }),
      runs(100),
    )
    // Square to the gutter on both sides, the commonest of them.
    for (const pop of ['up', 'down'] as const)
      expect(offAtFlat(vFold({ b1: 90, a1: 90, b2: 90, a2: 90 }, { side: 'inside', pop }))).toBeLessThan(1e-6)
  })

  test('a ten-millionth of a degree past a stop no spheres meet; as much before it they do', () => {
    let stops = 0
    fc.assert(
      fc.property(moving, ({ sides, spherical }) => {
        const made = (spherical ? vFold : tent)(sides)
        const [least, most] = rangeOf(made)
        const meets = (open: number) =>
          fromLengths(sixtyDigits, made, { open }).meetings[0]?.height ?? Number.NaN
        for (const [stop, way] of [
          [least, -1],
          [most, 1],
        ] as const) {
          if (stop === 0 || stop === 180) continue
          stops++
          expect(meets(stop + way * 1e-7)).toBeLessThan(0)
          expect(meets(stop - way * 1e-7)).toBeGreaterThan(0)
        }
      }),
      runs(150),
    )
    expect(stops).toBeGreaterThan(80)
  })

  /** Where a mechanism on the gutter stops, by the laws of cosines from the numbers in the file; cut ones never do. */
  function stopsOfMechanism(m: Mechanism): { least: number; most: number } {
    if (m.kind === 'glued-tent')
      return stopsOf({ b1: m.rightFoot, a1: m.rightWall, b2: m.leftFoot, a2: m.leftWall }, false)
    if (m.kind !== 'glued-v-fold') return { least: 0, most: 180 }
    const { base = Number.NaN, facet = Number.NaN } = m
    const [right, left] = [m.right ?? { base, facet }, m.left ?? { base, facet }]
    return stopsOf({ b1: right.base, a1: right.facet, b2: left.base, a2: left.facet }, true)
  }

  // Near 0 and 180 an arccosine keeps half its digits; what stops within so little of an end may be either.
  const loose = (at: number): number => (at < 1 || at > 179 ? 3e-5 : 2e-9)

  test('exactly those are named that cannot be there, and nothing is ever not a number', () => {
    let [named, free] = [0, 0]
    fc.assert(
      fc.property(
        gluedDesigns({ depth: 1, most: 6, match: ['any', 'alike', 'shuts'] }),
        fc.double({ min: 0, max: 180, noNaN: true }),
        (made, any) => {
          const poser = compile(made)
          const stops = made.mechanisms.map((m) => ({ id: m.id, ...stopsOfMechanism(m) }))
          const edges = stops
            .flatMap(({ least, most }) => [least, most])
            .flatMap((stop) => [stop, stop + 2 * loose(stop), stop - 2 * loose(stop)])
          for (const opening of [0, any, 180, ...edges.filter((x) => x >= 0 && x <= 180)]) {
            const pose = poser(opening)
            for (const { id, least, most } of stops) {
              const inside = Math.min(
                least === 0 ? 180 : opening - least - loose(least),
                most === 180 ? 180 : most - loose(most) - opening,
              )
              const outside = Math.max(least - loose(least) - opening, opening - most - loose(most))
              if (inside > 0) expect(pose.stopped).not.toContain(id)
              if (outside > 0) expect(pose.stopped).toContain(id)
              if (inside > 0) free++
              if (outside > 0) named++
            }
            const numbers = [
              ...Object.values(pose.panels).flat(2),
              ...Object.values(pose.creases).flatMap(({ start, end, angle }) => [...start, ...end, angle]),
            ]
            expect(numbers.every(Number.isFinite)).toBe(true)
          }
        },
      ),
      runs(200),
    )
    expect(Math.min(named, free)).toBeGreaterThan(200)
  })

  test('sides that cannot close at all stop at every opening, and shut nowhere', () => {
    // The left joint is 70 degrees farther round than the right one: two facets of 20 do not reach.
    const made = vFold({ b1: 100, a1: 20, b2: 10, a2: 20 })
    for (const opening of [1, 60, 120, 180]) expect(compile(made)(opening).stopped).toEqual(['moth'])
    expect(gapOf(made)).toBe(90)
  })
})

describe('it never jumps', () => {
  /** The tip's side of the plane through the two joints: it can change only where both states are one. */
  function above(made: Design, opening: number): number {
    const { creases, panels } = compile(made)(opening)
    const at = (part: string, end: 'start' | 'end') => creases[`moth/${part}`]?.[end] as Vec3
    const tip = panels['moth/right']?.[1] as Vec3
    const start = at('right', 'start')
    const [u, v] =
      made.mechanisms[0]?.kind === 'glued-tent'
        ? [minus(at('right', 'end'), start), minus(at('left', 'start'), start)]
        : [minus(at('right', 'end'), start), minus(at('left', 'end'), start)]
    const n = crossOf(u, v)
    return dotOf(n, minus(tip, start)) / (sizeOf(n) * 60)
  }

  test('popped or lying, the ridge never moves farther than a root of the step, down to shut, flat and stops', () => {
    fc.assert(
      fc.property(moving, states, ({ sides, spherical }, state) => {
        const made = (spherical ? vFold : tent)(sides, state)
        const poser = compile(made)
        const [least, most] = rangeOf(made)
        const tipAt = (opening: number) =>
          [...(poser(opening).panels['moth/right']?.[1] ?? [])] as unknown as Vec3
        for (const from of [least, most]) {
          const way = from === least ? 1 : -1
          // At a stop the tip comes to rest as a root does: a hundredth of the step, a tenth of the way.
          for (const step of [1e-2, 1e-4, 1e-6, 1e-8, 1e-10]) {
            const far = apart(tipAt(from), tipAt(from + way * step))
            expect(far).toBeLessThan(200 * Math.sqrt(step * RAD) * 3)
          }
        }
        // In between, no stretch of a quarter degree moves it by more than a stop could.
        const steps = 4 * Math.floor(most - least)
        let before = tipAt(least)
        for (let k = 1; k <= steps; k++) {
          const now = tipAt(least + ((most - least) * k) / steps)
          expect(apart(before, now)).toBeLessThan(200 * Math.sqrt(0.25 * RAD) * 3)
          before = now
        }
      }),
      runs(120),
    )
  })

  test('its ridge never goes through the plane of its joints, so one state never turns into the other', () => {
    fc.assert(
      fc.property(moving, states, ({ sides, spherical }, state) => {
        const made = (spherical ? vFold : tent)(sides, state)
        const [least, most] = rangeOf(made)
        const heights = Array.from({ length: 40 }, (_, k) =>
          above(made, least + ((most - least) * (k + 0.5)) / 40),
        )
        const clear = heights.filter((h) => Math.abs(h) > 1e-6)
        expect(new Set(clear.map(Math.sign)).size).toBeLessThanOrEqual(1)
        // And the other state is on the other side.
        const other = (spherical ? vFold : tent)(sides, { ...state, pop: state.pop === 'up' ? 'down' : 'up' })
        const middle = (least + most) / 2
        const [p, q] = [above(made, middle), above(other, middle)]
        expect(Math.abs(p + q)).toBeLessThan(1e-9)
      }),
      runs(120),
    )
  })
})
