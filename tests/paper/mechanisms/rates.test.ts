// How fast each kind's creases turn, against central differences of its poses (any text on numerical analysis):
// the bounds of `Build.turns` are never below them, and over a short stretch not above them either.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { compile, modelOf, parseDesign } from '../../../src/paper/index.ts'
import { turnsOf } from '../../../src/paper/motion/turning.ts'
import { runs } from '../shared/designs.ts'
import { allKinds } from '../shared/kinds.ts'
import { DEG, RAD } from '../shared/space.ts'

const number = (min: number, max: number) => fc.double({ min, max, noNaN: true })

const state = { side: fc.constantFrom('inside', 'outside'), pop: fc.constantFrom('up', 'down') }

/** What lets the left side shut with the right one, in the state that the piece is in. */
const closing = ({ side, pop }: { side: string; pop: string }, b1: number, a1: number, b2: number): number =>
  (pop === 'up') === (side === 'inside') ? b1 + a1 - b2 : a1 - b1 + b2

/** Steep and blunt wedges alike: these turn fastest in their last degrees. */
const wedge = fc.oneof(number(5, 70), number(70, 88))

const PARTS: Readonly<Record<string, fc.Arbitrary<object>>> = {
  'cut-v-fold': fc
    .tuple(fc.constantFrom(1, -1), number(5, 60), wedge)
    .map(([toward, run, angle]) => ({ apex: 100, run: toward * run, cut: run * Math.tan(angle * RAD) })),
  'cut-layer': fc.record({ left: number(5, 60), right: number(5, 60) }),
  'cut-trapezoid': fc.record({ startCut: number(2, 60), endCut: number(2, 60) }),
  'glued-v-fold': fc
    .tuple(fc.record(state), number(20, 80), number(20, 110), fc.oneof(fc.constant(0), number(-25, 25)))
    .map(([way, base, facet, more]) => {
      const other = Math.max(15, Math.min(85, base + (Math.abs(more) < 5 ? 0 : more)))
      const left = { base: other, facet: closing(way, base, facet, other) }
      return { ...way, apex: 50, toward: 1, foot: 30, ridge: 40, right: { base, facet }, left }
    })
    .filter(({ left }) => left.facet > 8 && left.facet < 150),
  'glued-tent': fc
    .tuple(fc.record(state), number(10, 50), number(20, 70), fc.oneof(fc.constant(0), number(-25, 25)))
    .map(([way, rightFoot, rightWall, more]) => {
      const leftFoot = Math.max(8, rightFoot + (Math.abs(more) < 5 ? 0 : more))
      return {
        ...way,
        rightFoot,
        rightWall,
        leftFoot,
        leftWall: closing(way, rightFoot, rightWall, leftFoot),
      }
    })
    .filter(({ leftWall }) => leftWall > 3),
  'floating-layer': fc
    .record({ height: number(5, 40), left: number(10, 40), right: number(10, 40) })
    .map((sizes) => ({ ...sizes, walls: [-5, 0, 8] })),
}

const made = (kind: string, fields: object): Design =>
  parseDesign({
    hingebook: 1,
    title: 'Owl',
    card: { width: 297, height: 420 },
    mechanisms: [
      { id: 'owl', on: 'gutter', kind, ...(/v-fold/.test(kind) ? {} : { start: 40, end: 80 }), ...fields },
    ],
  })

/** Every crease's angle but the gutter's, radians, the unseen ones that only carry a panel too. */
function anglesOf(design: Design): (opening: number) => number[] {
  const poser = compile(design)
  return (opening) => {
    poser(opening)
    return poser.frames.slice(1).map((frame) => 2 * Math.atan2(frame[12] as number, frame[13] as number))
  }
}

/** First and second derivative of every crease's angle by the opening, both in radians, of the fourth order. */
function measured(design: Design, opening: number, step: number): readonly (readonly [number, number])[] {
  const angles = anglesOf(design)
  const rows = [-2, -1, 0, 1, 2].map((k) => angles(opening + k * step))
  const h = step * RAD
  return (rows[0] ?? []).map((_, j) => {
    const [a, b, c, d, e] = rows.map((row) => row[j]) as [number, number, number, number, number]
    return [(a - 8 * b + 8 * d - e) / (12 * h), (-a + 16 * b - 30 * c + 16 * d - e) / (12 * h * h)]
  })
}

function bounds(design: Design, from: number, to: number): readonly (readonly [number, number])[] {
  const build = modelOf(design).builds[0]?.build
  if (!build) throw new Error('no mechanism')
  const out = new Float64Array(2 * build.creases.length)
  turnsOf(build)?.(from * RAD, to * RAD, out)
  return build.creases.map((_, k) => [out[2 * k] as number, out[2 * k + 1] as number])
}

const rangeOf = (design: Design): readonly [number, number] =>
  modelOf(design).builds[0]?.build.range ?? [0, 180]

/** Openings from end to end, and near the ends. */
const openings = fc.oneof(number(0.3, 179.7), number(0.3, 3), number(177, 179.7))

test('every kind that adds creases is asked', () => {
  expect(Object.keys(PARTS).sort()).toEqual(allKinds.filter((kind) => kind !== 'rider').sort())
})

describe.each(Object.entries(PARTS))('%s', (kind, parts) => {
  test('no crease turns faster than its bound, wherever in the stretch', () => {
    fc.assert(
      fc.property(parts, openings, fc.constantFrom(0.5, 3, 20, 90), (fields, from, wide) => {
        const design = made(kind, fields)
        const [least, most] = rangeOf(design)
        const to = Math.min(179.8, from + wide)
        // Near a stop it turns without bound, and differences are no measure.
        fc.pre((least === 0 || from > least + 2) && (most === 180 || to < most - 2))
        const told = bounds(design, from, to)
        for (let k = 0; k <= 6; k++) {
          const at = from + ((to - from) * k) / 6
          measured(design, at, 0.05).forEach(([first, second], j) => {
            const [r1, r2] = told[j] as [number, number]
            expect(Math.abs(first)).toBeLessThanOrEqual(r1 * (1 + 1e-6) + 1e-7)
            expect(Math.abs(second)).toBeLessThanOrEqual(r2 * (1 + 1e-3) + 1e-4)
          })
        }
      }),
      runs(150),
    )
  })

  test('over a hundredth of a degree the bound is the rate itself', () => {
    fc.assert(
      fc.property(parts, openings, (fields, at) => {
        const design = made(kind, fields)
        const [least, most] = rangeOf(design)
        fc.pre((least === 0 || at > least + 4) && (most === 180 || at < most - 4))
        const told = bounds(design, at - 0.005, at + 0.005)
        const found = measured(design, at, 0.05)
        // A rate that grows fast has grown a little within the stretch.
        const steep = Math.max(1, ...found.flat().map(Math.abs))
        found.forEach(([first, second], j) => {
          const [r1, r2] = told[j] as [number, number]
          expect(r1).toBeLessThanOrEqual(Math.abs(first) + 2e-3 * steep ** 2)
          expect(r2).toBeLessThanOrEqual(Math.abs(second) + 2e-2 * steep ** 3)
        })
      }),
      runs(150),
    )
  })

  test('at the very ends it is still a bound, and finite where the piece goes there', () => {
    fc.assert(
      fc.property(parts, (fields) => {
        const design = made(kind, fields)
        const [least, most] = rangeOf(design)
        const angles = anglesOf(design)
        for (const [from, to, end] of [
          [0, 0.2, least === 0],
          [179.8, 180, most === 180],
        ] as const) {
          if (!end) continue
          const told = bounds(design, from, to)
          const [a, b] = [angles(from), angles(to)]
          told.forEach(([r1], k) => {
            if (from === 0 && least === 0 && most === 180) expect(Number.isFinite(r1)).toBe(true)
            const turned = Math.abs((b[k] as number) - (a[k] as number)) / ((to - from) * RAD)
            expect(turned).toBeLessThanOrEqual(r1 * (1 + 1e-6) + 1e-9)
          })
        }
      }),
      runs(40),
    )
  })
})

test('held at its stop nothing turns; across a stop nothing is known', () => {
  // base 60, facet 45 stops at 109.471220634 degrees, arccos(-1/3): Coxeter, Regular Polytopes, table I [memory].
  const design = made('glued-v-fold', { apex: 50, toward: 1, foot: 30, ridge: 40, base: 60, facet: 45 })
  const stop = Math.acos(-1 / 3) * DEG
  expect(bounds(design, stop + 1e-6, 150)).toEqual([
    [0, 0],
    [0, 0],
    [0, 0],
  ])
  const unknown = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY]
  expect(bounds(design, 90, stop + 1e-6)).toEqual([unknown, unknown, unknown])
  expect(
    bounds(design, stop - 2, stop - 1)
      .flat()
      .every(Number.isFinite),
  ).toBe(true)
  // One that cannot shut: feet 30 and 40, walls 20 and 60 stop before it does.
  const tent = made('glued-tent', { rightFoot: 30, leftFoot: 40, rightWall: 20, leftWall: 60 })
  const [least] = rangeOf(tent)
  expect(least).toBeGreaterThan(10)
  expect(bounds(tent, 0, least - 1e-6).flat()).toEqual([0, 0, 0, 0, 0, 0])
  expect(bounds(tent, least - 1e-6, least + 10)).toEqual([unknown, unknown, unknown])
  expect(
    bounds(tent, least + 1, least + 2)
      .flat()
      .every(Number.isFinite),
  ).toBe(true)
})
