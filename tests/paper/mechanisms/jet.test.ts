// Intervals with two derivatives, against plain sampling: every value that can be is inside, and the ends are
// values that can be. (Hull of a product, quotient, square: R. E. Moore, Interval Analysis, 1966 [memory];
// the chain rule and central differences: any analysis text.)
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Jet } from '../../../src/paper/mechanisms/shared/jet.ts'
import {
  addRates,
  angleRates,
  constant,
  halfSineCosine,
  largestOf,
  product,
  quotient,
  root,
  scaled,
  sum,
} from '../../../src/paper/mechanisms/shared/jet.ts'

type Interval = readonly [number, number]

const end = fc.oneof(fc.double({ min: -3, max: 3, noNaN: true }), fc.constantFrom(-2, -1, 0, 1, 2))
const interval: fc.Arbitrary<Interval> = fc
  .tuple(end, end)
  .map(([p, q]) => [Math.min(p, q), Math.max(p, q)] as const)
const above: fc.Arbitrary<Interval> = fc
  .tuple(fc.double({ min: 0.1, max: 3, noNaN: true }), fc.double({ min: 0, max: 2, noNaN: true }))
  .map(([low, wide]) => [low, low + wide] as const)
const jets = fc.record({ value: interval, first: interval, second: interval })
const jetsAbove = fc.record({ value: above, first: interval, second: interval })

const fixed = (x: number): Interval => [x, x]
const at = (value: number, first: number, second: number): Jet => ({
  value: fixed(value),
  first: fixed(first),
  second: fixed(second),
})

/** Points of an interval: its ends, nought if it is inside, and some between. */
const points = ([low, high]: Interval): number[] => [
  ...[0, 0.25, 0.5, 0.75, 1].map((t) => low + t * (high - low)),
  ...(low < 0 && high > 0 ? [0] : []),
]

/** The hull of a function over two intervals: its extremes are at ends, or at nought. */
function hull(a: Interval, b: Interval, of: (x: number, y: number) => number): Interval {
  const all = points(a).flatMap((x) => points(b).map((y) => of(x, y)))
  return [Math.min(...all), Math.max(...all)]
}

const near = (found: Interval, wanted: Interval): void => {
  for (const k of [0, 1] as const)
    expect(Math.abs(found[k] - wanted[k])).toBeLessThan(1e-9 * (1 + Math.abs(wanted[k])))
}

const holds = ([low, high]: Interval, x: number): void => {
  const spare = 1e-9 * (1 + Math.abs(x))
  expect(low).toBeLessThanOrEqual(x + spare)
  expect(high).toBeGreaterThanOrEqual(x - spare)
}

describe('one step', () => {
  test('sums, multiples and products reach as far as their parts, and no farther', () => {
    fc.assert(
      fc.property(jets, jets, end, (a, b, k) => {
        for (const part of ['value', 'first', 'second'] as const) {
          near(
            sum(a, b)[part],
            hull(a[part], b[part], (x, y) => x + y),
          )
          near(
            scaled(a, k)[part],
            hull(a[part], a[part], (x) => k * x),
          )
        }
        for (const part of ['first', 'second'] as const)
          near(
            addRates(a, b, k)[part],
            hull(a[part], b[part], (x, y) => x + k * y),
          )
        near(
          product(a, b).value,
          hull(a.value, b.value, (x, y) => x * y),
        )
        // With one part fixed the rules of Leibniz have nothing to lose.
        const c = at(1.5, 0, 0)
        for (const part of ['value', 'first', 'second'] as const)
          near(
            product(a, c)[part],
            hull(a[part], a[part], (x) => 1.5 * x),
          )
        expect(largestOf(a.value)).toBeCloseTo(Math.max(...points(a.value).map(Math.abs)), 12)
      }),
      { numRuns: 300 },
    )
    expect(constant(2)).toEqual(at(2, 0, 0))
  })

  test('a quotient and a root reach as far as their parts, and no farther', () => {
    fc.assert(
      fc.property(jets, jetsAbove, (a, b) => {
        near(
          quotient(a, b).value,
          hull(a.value, b.value, (x, y) => x / y),
        )
        near(root(b).value, [Math.sqrt(b.value[0]), Math.sqrt(b.value[1])])
      }),
      { numRuns: 300 },
    )
  })

  test('where nought is under the line or the root nothing is known, and nothing is not a number', () => {
    const all: Interval = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]
    const one = at(1, 1, 1)
    for (const low of [0, -1]) {
      const under: Jet = { value: [low, 2], first: [1, 1], second: [0, 0] }
      expect(quotient(one, under).value).toEqual(all)
      expect(root(under).value).toEqual([0, Math.SQRT2])
      expect(root(under).first).toEqual(all)
      expect(root(under).second).toEqual(all)
    }
    // The least float above nought still divides.
    expect(quotient(one, { ...one, value: [1e-300, 1] }).value[0]).toBe(1)
    // Nought times the unknown is unknown.
    const unknown: Jet = { value: all, first: all, second: all }
    expect(product(constant(0), unknown).value).toEqual(all)
    expect(product(unknown, constant(0)).second).toEqual(all)
    // An angle whose direction may be any has any rate; one that stays away from nought has not.
    const cross: Jet = { value: [-1, 1], first: [1, 1], second: [0, 0] }
    expect(angleRates(cross, cross).first).toEqual(all)
    // x in [-1, 1] by y = 2: r² is at least 4, so the rate of x = t, y = 2 is at most 1/2 in size (arctan's).
    expect(largestOf(angleRates(constant(2), cross).first)).toBeCloseTo(0.5, 12)
  })
})

/** Random formulas of half the variable's sine and cosine, as jets and as plain functions. */
interface Formula {
  readonly jet: (from: number, to: number) => Jet
  readonly plain: (t: number) => number
  readonly name: string
}

const sine: Formula = {
  jet: (from, to) => halfSineCosine(from, to).sine,
  plain: (t) => Math.sin(t / 2),
  name: 'S',
}
const cosine: Formula = {
  jet: (from, to) => halfSineCosine(from, to).cosine,
  plain: (t) => Math.cos(t / 2),
  name: 'C',
}

const { formula } = fc.letrec<{ formula: Formula }>((tie) => ({
  formula: fc.oneof(
    { maxDepth: 3, withCrossShrink: true },
    fc.constantFrom(sine, cosine),
    fc.tuple(tie('formula'), tie('formula')).map(([a, b]) => ({
      jet: (from: number, to: number) => sum(a.jet(from, to), b.jet(from, to)),
      plain: (t: number) => a.plain(t) + b.plain(t),
      name: `(${a.name} + ${b.name})`,
    })),
    fc.tuple(tie('formula'), tie('formula')).map(([a, b]) => ({
      jet: (from: number, to: number) => product(a.jet(from, to), b.jet(from, to)),
      plain: (t: number) => a.plain(t) * b.plain(t),
      name: `${a.name} ${b.name}`,
    })),
    fc.tuple(tie('formula'), fc.double({ min: -2, max: 2, noNaN: true })).map(([a, k]) => ({
      jet: (from: number, to: number) => scaled(a.jet(from, to), k),
      plain: (t: number) => k * a.plain(t),
      name: `${k} ${a.name}`,
    })),
    // Over the square and a bit, so that what is under the line stays above nought.
    fc.tuple(tie('formula'), tie('formula')).map(([a, b]) => ({
      jet: (from: number, to: number) =>
        quotient(a.jet(from, to), sum(constant(0.7), product(b.jet(from, to), b.jet(from, to)))),
      plain: (t: number) => a.plain(t) / (0.7 + b.plain(t) ** 2),
      name: `${a.name} / (0.7 + (${b.name})²)`,
    })),
    tie('formula').map((a) => ({
      jet: (from: number, to: number) => root(sum(constant(0.5), product(a.jet(from, to), a.jet(from, to)))),
      plain: (t: number) => Math.sqrt(0.5 + a.plain(t) ** 2),
      name: `√(0.5 + (${a.name})²)`,
    })),
  ),
}))

const H = 1e-3

/** First and second derivative by central differences of the fourth order. */
function differences(f: (t: number) => number, t: number): readonly [number, number] {
  const [a, b, c, d, e] = [-2, -1, 0, 1, 2].map((k) => f(t + k * H)) as [
    number,
    number,
    number,
    number,
    number,
  ]
  return [(a - 8 * b + 8 * d - e) / (12 * H), (-a + 16 * b - 30 * c + 16 * d - e) / (12 * H * H)]
}

const spans = fc
  .tuple(fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), fc.constantFrom(0, 0.01, 0.3, 2, 6.3))
  .map(([from, wide]) => [from, Math.min(2 * Math.PI, from + wide)] as const)

describe('whole formulas', () => {
  test('every value and derivative in between is inside, from 0 to 360 degrees', () => {
    fc.assert(
      fc.property(formula, spans, (f, [from, to]) => {
        const jet = f.jet(from, to)
        for (let k = 0; k <= 8; k++) {
          const t = from + ((to - from) * k) / 8
          const [first, second] = differences(f.plain, t)
          holds(jet.value, f.plain(t))
          for (const [found, wanted] of [
            [jet.first, first],
            [jet.second, second],
          ] as const) {
            const noise = 1e-6 * (1 + Math.abs(wanted) + largestOf(jet.second))
            expect(found[0]).toBeLessThanOrEqual(wanted + noise)
            expect(found[1]).toBeGreaterThanOrEqual(wanted - noise)
          }
        }
      }),
      { numRuns: 500 },
    )
  })

  test('over a stretch of no width they are the value and its derivatives', () => {
    fc.assert(
      fc.property(formula, fc.double({ min: 0, max: 2 * Math.PI, noNaN: true }), (f, t) => {
        const jet = f.jet(t, t)
        const [first, second] = differences(f.plain, t)
        const size = 1 + Math.abs(first) + Math.abs(second)
        for (const k of [0, 1] as const) {
          expect(Math.abs(jet.value[k] - f.plain(t))).toBeLessThan(1e-9)
          expect(Math.abs(jet.first[k] - first)).toBeLessThan(1e-6 * size)
          expect(Math.abs(jet.second[k] - second)).toBeLessThan(1e-5 * size)
        }
      }),
      { numRuns: 500 },
    )
  })

  test('an angle turns as its arctangent does, round the whole circle', () => {
    fc.assert(
      fc.property(formula, formula, spans, (y, x, [from, to]) => {
        // Pushed out of the middle to one side or other, where the direction is known.
        for (const [dy, dx] of [
          [0, 9],
          [9, 0],
          [-9, -9],
        ] as const) {
          const Y = sum(y.jet(from, to), constant(dy))
          const X = sum(x.jet(from, to), constant(dx))
          const rates = angleRates(Y, X)
          const narrow = angleRates(
            sum(y.jet(from, from), constant(dy)),
            sum(x.jet(from, from), constant(dx)),
          )
          const angle = (t: number) => {
            const [p, q] = [y.plain(t) + dy, x.plain(t) + dx]
            const [p0, q0] = [y.plain(from) + dy, x.plain(from) + dx]
            return Math.atan2(p * q0 - q * p0, p * p0 + q * q0)
          }
          const [first, second] = differences(angle, from)
          const noise = 1e-5 * (1 + Math.abs(first) + Math.abs(second))
          if (Math.hypot(y.plain(from) + dy, x.plain(from) + dx) < 0.5) return
          for (const [wide, point, wanted] of [
            [rates.first, narrow.first, first],
            [rates.second, narrow.second, second],
          ] as const) {
            expect(wide[0]).toBeLessThanOrEqual(wanted + noise)
            expect(wide[1]).toBeGreaterThanOrEqual(wanted - noise)
            for (const k of [0, 1] as const) expect(Math.abs(point[k] - wanted)).toBeLessThan(noise)
          }
        }
      }),
      { numRuns: 300 },
    )
  })

  test('sine and cosine of the half keep to their greatest and least over every stretch', () => {
    fc.assert(
      fc.property(spans, ([from, to]) => {
        const { sine: s, cosine: c } = halfSineCosine(from, to)
        const all = Array.from({ length: 2001 }, (_, k) => from + ((to - from) * k) / 2000)
        const [S, C] = [all.map((t) => Math.sin(t / 2)), all.map((t) => Math.cos(t / 2))]
        for (const [found, list] of [
          [s.value, S],
          [c.value, C],
        ] as const) {
          expect(Math.abs(found[0] - Math.min(...list))).toBeLessThan(2e-6)
          expect(Math.abs(found[1] - Math.max(...list))).toBeLessThan(2e-6)
        }
      }),
      { numRuns: 200 },
    )
  })
})
