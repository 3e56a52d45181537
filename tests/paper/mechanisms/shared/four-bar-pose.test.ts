// Where ridge and joints of a glued piece come to stand, from the lengths or angles of its links alone: the place of the
// ridge by the law of cosines, the ways of its facets by subtraction. Unequal sides, both states, both sides of the fold.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../../../src/paper/index.ts'
import {
  fourBar,
  placeFourBar,
  rangeOf,
  shutGap,
  shutsOuter,
} from '../../../../src/paper/mechanisms/shared/four-bar.ts'
import { apart, crossOf, dotOf, minus, plus, RAD, sizeOf, times, unit } from '../../shared/space.ts'

interface Links {
  readonly b1: number
  readonly a1: number
  readonly b2: number
  readonly a2: number
}

const frameAt = (w: number): Float64Array =>
  Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, Math.sin((w / 2) * RAD), Math.cos((w / 2) * RAD))

const part = (f: Float64Array, k: number): Vec3 => [f[k] as number, f[k + 1] as number, f[k + 2] as number]

/** The ways off a crease into its left and its right panel, as its frame holds them. */
function ways(f: Float64Array): { left: Vec3; right: Vec3 } {
  const [x, n] = [part(f, 3), part(f, 9)]
  const [s, c] = [f[12] as number, f[13] as number]
  return { left: plus(times(x, -s), times(n, c)), right: plus(times(x, s), times(n, c)) }
}

const near = (found: Vec3, wanted: Vec3): void => expect(apart(found, wanted)).toBeLessThan(1e-6)

/** What is left of a way square to an axis, of length 1. */
const square = (way: Vec3, axis: Vec3): Vec3 => unit(minus(way, times(axis, dotOf(way, axis))))

interface Stand {
  /** Where the ridge, the left and the right joint begin, and along what they run. */
  readonly places: readonly [Vec3, Vec3, Vec3]
  readonly axes: readonly [Vec3, Vec3, Vec3]
  /** Ways from the ridge to the left and the right joint, and from either joint to the ridge, square to the crease. */
  readonly toLeft: Vec3
  readonly toRight: Vec3
  readonly fromLeft: Vec3
  readonly fromRight: Vec3
  /** Off either joint in its page, away from the host crease. */
  readonly pageLeft: Vec3
  readonly pageRight: Vec3
}

/** Of two solutions the one on the side of both joints that the state and the side of the fold ask for. */
const sided = (branch: 1 | -1, outside: boolean): 1 | -1 => (branch > 0 !== outside ? 1 : -1)

function planar({ b1, a1, b2, a2 }: Links, w: number, branch: 1 | -1, outside: boolean, from: number): Stand {
  const [s, c] = [Math.sin((w / 2) * RAD), Math.cos((w / 2) * RAD)]
  const [pageRight, pageLeft]: [Vec3, Vec3] = [
    [s, 0, c],
    [-s, 0, c],
  ]
  const start: Vec3 = [0, from, 0]
  const [right, left] = [plus(start, times(pageRight, b1)), plus(start, times(pageLeft, b2))]
  const g = apart(right, left)
  const to = unit(minus(left, right))
  // The foot of the ridge's plumb line on the diagonal, and how long that line is.
  const foot = (a1 * a1 - a2 * a2 + g * g) / (2 * g)
  const high = Math.sqrt(Math.max(0, a1 * a1 - foot * foot))
  // Square to the diagonal, away from the host crease.
  const up = square(minus(times(plus(right, left), 0.5), start), to)
  const aside = unit([-to[2], 0, to[0]])
  const off = dotOf(up, aside) < 0 ? times(aside, -1) : aside
  const ridge = plus(plus(right, times(to, foot)), times(off, sided(branch, outside) * high))
  const along: Vec3 = [0, 1, 0]
  return {
    places: [ridge, left, right],
    axes: [along, along, along],
    toLeft: unit(minus(left, ridge)),
    toRight: unit(minus(right, ridge)),
    fromLeft: unit(minus(ridge, left)),
    fromRight: unit(minus(ridge, right)),
    pageLeft,
    pageRight,
  }
}

function spherical(
  { b1, a1, b2, a2 }: Links,
  w: number,
  branch: 1 | -1,
  outside: boolean,
  from: number,
  toward: 1 | -1,
): Stand {
  const [s, c] = [Math.sin((w / 2) * RAD), Math.cos((w / 2) * RAD)]
  const axis: Vec3 = [0, toward, 0]
  const on = (b: number, side: 1 | -1): { way: Vec3; page: Vec3 } => {
    const across: Vec3 = [side * s, 0, c]
    const [sine, cosine] = [Math.sin(b * RAD), Math.cos(b * RAD)]
    return {
      way: plus(times(axis, cosine), times(across, sine)),
      page: plus(times(axis, -sine), times(across, cosine)),
    }
  }
  const [right, left] = [on(b1, 1), on(b2, -1)]
  const [g1, g2] = [right.way, left.way]
  const k = dotOf(g1, g2)
  const [c1, c2] = [Math.cos(a1 * RAD), Math.cos(a2 * RAD)]
  // r = x g1 + y g2 + z (g1 x g2) with r g1 = c1, r g2 = c2 and length 1.
  const free = 1 - k * k
  const [x, y] = [(c1 - c2 * k) / free, (c2 - c1 * k) / free]
  const flat = plus(times(g1, x), times(g2, y))
  const normal = crossOf(g1, g2)
  const z = Math.sqrt(Math.max(0, 1 - dotOf(flat, flat)) / free)
  const away = dotOf(normal, axis) > 0 ? -1 : 1
  const ridge = plus(flat, times(normal, away * sided(branch, outside) * z))
  const start: Vec3 = [0, from, 0]
  return {
    places: [start, start, start],
    axes: [ridge, g2, g1],
    toLeft: square(g2, ridge),
    toRight: square(g1, ridge),
    fromLeft: square(ridge, g2),
    fromRight: square(ridge, g1),
    pageLeft: left.page,
    pageRight: right.page,
  }
}

/** Far enough from every place where two things lie in one line, and one of them has no way. */
const isClear = (stand: Stand): boolean =>
  [
    [stand.toLeft, stand.toRight],
    [stand.fromLeft, stand.pageLeft],
    [stand.fromRight, stand.pageRight],
  ].every(([one, two]) => sizeOf(crossOf(one as Vec3, two as Vec3)) > 0.02)

describe.each(['planar', 'spherical'] as const)('%s', (form) => {
  test('every crease is where its links put it, and its panels lead where they must', () => {
    const long = fc.integer({ min: 5, max: 80 })
    let count = 0
    fc.assert(
      fc.property(
        fc.record({ b1: long, a1: long, b2: long, a2: long }),
        fc.constantFrom(1 as const, -1 as const),
        fc.boolean(),
        fc.constantFrom(1 as const, -1 as const),
        fc.integer({ min: 1, max: 99 }),
        (links, branch, outside, toward, share) => {
          const { b1, a1, b2, a2 } = links
          const bar = fourBar(form, { base: b1, facet: a1 }, { base: b2, facet: a2 }, branch, outside)
          const range = rangeOf(bar)
          if (!(range[1] - range[0] > 2)) return
          const w = range[0] + ((range[1] - range[0]) * share) / 100
          const stand =
            form === 'planar'
              ? planar(links, w, branch, outside, 30)
              : spherical(links, w, branch, outside, 30, toward)
          if (!isClear(stand)) return
          count++
          const out = [0, 1, 2].map(() => new Float64Array(14))
          const way = form === 'planar' ? 1 : toward
          expect(placeFourBar(bar, range, 30, way, frameAt(w), out)).toBe(true)
          out.forEach((frame, k) => {
            near(part(frame, 0), stand.places[k] as Vec3)
            near(part(frame, 6), stand.axes[k] as Vec3)
            expect(Math.hypot(frame[12] as number, frame[13] as number)).toBeCloseTo(1, 9)
            expect(sizeOf(part(frame, 3))).toBeCloseTo(1, 6)
            expect(dotOf(part(frame, 3), part(frame, 9))).toBeCloseTo(0, 6)
          })
          const [ridge, left, right] = out.map(ways)
          near(ridge?.left as Vec3, stand.toLeft)
          near(ridge?.right as Vec3, stand.toRight)
          // The page beyond the joint, or before it, whichever the facet lies on when shut.
          const on = shutsOuter(bar) ? 1 : -1
          near(left?.left as Vec3, times(stand.pageLeft, on))
          near(left?.right as Vec3, stand.fromLeft)
          near(right?.right as Vec3, times(stand.pageRight, on))
          near(right?.left as Vec3, stand.fromRight)
        },
      ),
      { numRuns: 400 },
    )
    expect(count).toBeGreaterThan(100)
  })

  test('past either stop it stays where it is there, whatever the pages do', () => {
    const long = fc.integer({ min: 5, max: 80 })
    const count = { low: 0, high: 0 }
    fc.assert(
      fc.property(
        fc.record({ b1: long, a1: long, b2: long, a2: long }),
        fc.constantFrom(1 as const, -1 as const),
        fc.boolean(),
        (links, branch, outside) => {
          const { b1, a1, b2, a2 } = links
          const bar = fourBar(form, { base: b1, facet: a1 }, { base: b2, facet: a2 }, branch, outside)
          const range = rangeOf(bar)
          if (!(range[1] - range[0] > 2)) return
          const out = [0, 1, 2].map(() => new Float64Array(14))
          for (const [end, at] of [
            ['low', range[0] / 2],
            ['high', (range[1] + 180) / 2],
          ] as const) {
            const stop = end === 'low' ? range[0] : range[1]
            if (Math.abs(stop - at) < 1) continue
            count[end]++
            expect(placeFourBar(bar, range, 30, 1, frameAt(at), out)).toBe(false)
            const stand =
              form === 'planar'
                ? planar(links, stop, branch, outside, 30)
                : spherical(links, stop, branch, outside, 30, 1)
            // Pulled tight, a hair of length is the root of a hair of height.
            out.forEach((frame, k) => {
              expect(apart(part(frame, 0), stand.places[k] as Vec3)).toBeLessThan(1e-3)
              expect(apart(part(frame, 6), stand.axes[k] as Vec3)).toBeLessThan(1e-3)
            })
          }
        },
      ),
      { numRuns: 200 },
    )
    expect(Math.min(count.low, count.high)).toBeGreaterThan(10)
  })

  test('how far it is from shutting is the difference of its sides', () => {
    const bar = (branch: 1 | -1, outside: boolean) =>
      shutGap(fourBar(form, { base: 40, facet: 33 }, { base: 30, facet: 25 }, branch, outside))
    const unit = form === 'planar' ? 'mm' : 'deg'
    // Popped inside, or back on the outside, sums count: 73 and 55; the other way differences: 7 and 5.
    for (const [branch, outside, gap] of [
      [1, false, 18],
      [-1, true, 18],
      [-1, false, 2],
      [1, true, 2],
    ] as const) {
      expect(bar(branch, outside).gap).toBeCloseTo(gap, 9)
      expect(bar(branch, outside).unit).toBe(unit)
    }
  })
})
