// A cut layer is a planar four-bar across the crease: page, facet, facet, page, opposite links equal.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../src/paper/index.ts'
import { measure, poseAt } from '../../src/paper/index.ts'
import { design, openings, runs } from '../paper/shared/designs.ts'
import { apart, between, minus } from '../paper/shared/space.ts'

const layer = (left: number, right: number) =>
  design([{ id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 20, end: 60, left, right }], {
    width: 297,
    height: 420,
  })

interface Bars {
  /** Angles from the ground line (the right page), degrees: left page, left facet, right facet. */
  readonly crank: number
  readonly coupler: number
  readonly rocker: number
  /** The links' lengths in space, mm. */
  readonly links: readonly [ground: number, crank: number, coupler: number, rocker: number]
}

/** The section of the layer as four links: right page, left page, left facet, right facet. */
function barsOf(left: number, right: number, opening: number): Bars {
  const { creases } = poseAt(layer(left, right), opening)
  const at = (name: string): Vec3 => creases[name]?.start ?? [Number.NaN, 0, 0]
  const host: Vec3 = [0, 20, 0]
  const [l, r, ridge] = [at('lantern/left'), at('lantern/right'), at('lantern/ridge')]
  const ground = minus(r, host)
  // Turning from the right page towards the left one counts as positive.
  const turned = (v: Vec3): number => {
    const across = ground[2] * v[0] - ground[0] * v[2]
    return across <= 0 ? between(ground, v) : -between(ground, v)
  }
  return {
    crank: turned(minus(l, host)),
    coupler: turned(minus(ridge, l)),
    rocker: turned(minus(ridge, r)),
    links: [apart(host, r), apart(host, l), apart(l, ridge), apart(r, ridge)],
  }
}

const depth = fc.double({ min: 2, max: 140, noNaN: true })

const open = fc.double({ min: 0.5, max: 179.5, noNaN: true })

describe('a layer as a parallelogram', () => {
  test('its links are as long as its cuts are deep: each facet as wide as the other page’s cut', () => {
    fc.assert(
      fc.property(depth, depth, openings, (left, right, opening) => {
        const { links } = barsOf(left, right, opening)
        for (const [k, long] of [right, left, right, left].entries())
          expect(Math.abs((links[k] as number) - long)).toBeLessThan(1e-9)
      }),
      runs(200),
    )
  })

  // Freudenstein, Trans. ASME 76 (1954) 483-492 [memory]; A. Ghosal, The Freudenstein Equation, Resonance 15,
  // August 2010 [found: title page and introduction]: K1 cos t4 - K2 cos t2 + K3 = cos(t2 - t4).
  test('Freudenstein’s equation closes at every opening', () => {
    fc.assert(
      fc.property(depth, depth, open, (left, right, opening) => {
        const bars = barsOf(left, right, opening)
        const [d, a, b, c] = bars.links
        const [K1, K2, K3] = [d / a, d / c, (a * a - b * b + c * c + d * d) / (2 * a * c)]
        const [t2, t4] = [bars.crank, bars.rocker].map((angle) => (angle * Math.PI) / 180) as [number, number]
        expect(Math.abs(t2 - (opening * Math.PI) / 180)).toBeLessThan(1e-11)
        const closed = K1 * Math.cos(t4) - K2 * Math.cos(t2) + K3 - Math.cos(t2 - t4)
        expect(Math.abs(closed)).toBeLessThan(1e-9)
      }),
      runs(200),
    )
  })

  // Grashof 1883, change point, s + l = p + q: Chang, Lin, Wu, J. Marine Sci. Tech. 13(4) (2005) 239-248
  // [found: abstract and introduction]. Cranks stay parallel and the coupler keeps its direction [memory].
  test('its cranks stay parallel and its coupler lies along the ground: the other branch is never taken', () => {
    fc.assert(
      fc.property(depth, depth, open, (left, right, opening) => {
        const { crank, coupler, rocker } = barsOf(left, right, opening)
        expect(Math.abs(coupler)).toBeLessThan(1e-9)
        expect(Math.abs(rocker - crank)).toBeLessThan(1e-9)
      }),
      runs(200),
    )
  })

  test('links 5, 3, 5, 3 at 70 degrees: coupler at 0, rocker at 70, not crossed at -140.703110 [computed]', () => {
    const { coupler, rocker } = barsOf(3, 5, 70)
    expect(coupler).toBeCloseTo(0, 10)
    expect(rocker).toBeCloseTo(70, 10)
  })

  test('cut 30 on the right and 40 on the left, at 90 degrees, the ridge is the sum of both pages’ cuts', () => {
    // Circle-circle intersection [computed].
    const ridge = poseAt(layer(40, 30), 90).creases['lantern/ridge']?.start
    expect(ridge?.[0]).toBeCloseTo(-7.071067812, 9)
    expect(ridge?.[2]).toBeCloseTo(49.497474683, 9)
  })
})

describe('how high a layer stands', () => {
  const rise = (left: number, right: number, opening: number): number =>
    measure(layer(left, right), opening).tips.lantern?.rise ?? Number.NaN

  test('in a card at right angles an even layer rises just as high as its cuts are deep', () => {
    fc.assert(
      fc.property(depth, (deep) => {
        expect(Math.abs(rise(deep, deep, 90) - deep)).toBeLessThan(1e-9)
      }),
      runs(100),
    )
  })

  test('at every other opening it rises depth times the sine of the opening', () => {
    fc.assert(
      fc.property(depth, openings, (deep, opening) => {
        expect(Math.abs(rise(deep, deep, opening) - deep * Math.sin((opening * Math.PI) / 180))).toBeLessThan(
          1e-9,
        )
      }),
      runs(200),
    )
  })

  test('over a page it rises as high as the cut in the other page is deep, times the sine', () => {
    // Left 40, right 30: the ridge lies over the left page, 30 above it.
    const ridge = poseAt(layer(40, 30), 90).creases['lantern/ridge']?.start ?? [0, 0, 0]
    expect(ridge[0]).toBeLessThan(0)
    expect(rise(40, 30, 90)).toBeCloseTo(30, 9)
    expect(rise(30, 40, 90)).toBeCloseTo(30, 9)
  })

  test('a trapezoid with equal cuts is a layer', () => {
    const strip = { id: 'lantern', on: 'gutter', start: 20, end: 60 }
    const trapezoid = design([{ ...strip, kind: 'cut-trapezoid', startCut: 25, endCut: 25 }])
    const even = design([{ ...strip, kind: 'cut-layer', left: 25 }])
    fc.assert(
      fc.property(openings, (opening) => {
        const [a, b] = [poseAt(trapezoid, opening), poseAt(even, opening)]
        for (const [name, points] of Object.entries(a.panels))
          points.forEach((p, k) => {
            expect(apart(p, b.panels[name]?.[k] as Vec3)).toBeLessThan(1e-9)
          })
        for (const [name, { angle }] of Object.entries(a.creases))
          expect(angle).toBeCloseTo(b.creases[name]?.angle ?? Number.NaN, 10)
      }),
      runs(100),
    )
  })

  test('a trapezoid with one cut of 0 is a V-fold', () => {
    const trapezoid = design([
      { id: 'sail', kind: 'cut-trapezoid', on: 'gutter', start: 20, end: 60, startCut: 0, endCut: 30 },
    ])
    const vFold = design([{ id: 'sail', kind: 'cut-v-fold', on: 'gutter', apex: 20, run: 40, cut: 30 }])
    fc.assert(
      fc.property(openings, (opening) => {
        const [a, b] = [poseAt(trapezoid, opening), poseAt(vFold, opening)]
        for (const part of ['ridge', 'left', 'right']) {
          const [p, q] = [a.creases[`sail/${part}`], b.creases[`sail/${part}`]]
          expect(apart(p?.start as Vec3, q?.start as Vec3)).toBeLessThan(1e-9)
          expect(apart(p?.end as Vec3, q?.end as Vec3)).toBeLessThan(1e-9)
          expect(p?.angle).toBeCloseTo(q?.angle ?? Number.NaN, 10)
        }
      }),
      runs(100),
    )
  })

  test('the fold lines of a trapezoid run to one point of the gutter: a V-fold whose apex is off the piece', () => {
    // From 20 to 30 deep on 40: the lines meet 80 before the start, at 0.
    const trapezoid = design([
      { id: 'sail', kind: 'cut-trapezoid', on: 'gutter', start: 80, end: 120, startCut: 20, endCut: 30 },
    ])
    const vFold = design([{ id: 'sail', kind: 'cut-v-fold', on: 'gutter', apex: 0, run: 120, cut: 30 }])
    for (const opening of [0, 40, 90, 150, 180]) {
      const [a, b] = [poseAt(trapezoid, opening).creases, poseAt(vFold, opening).creases]
      for (const side of ['left', 'right'])
        expect(a[`sail/${side}`]?.angle).toBeCloseTo(b[`sail/${side}`]?.angle ?? Number.NaN, 9)
      expect(apart(a['sail/ridge']?.end as Vec3, b['sail/ridge']?.end as Vec3)).toBeLessThan(1e-9)
    }
  })
})
