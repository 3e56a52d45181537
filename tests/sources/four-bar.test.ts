// A cut layer is a planar four-bar across the crease: page, facet, facet, page, opposite links equal.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Vec3 } from '../../src/paper/index.ts'
import { measure, poseAt } from '../../src/paper/index.ts'
import { design, openings, runs } from '../paper/shared/designs.ts'
import { apart, between, minus, RAD } from '../paper/shared/space.ts'

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

/** Ridge, left and right fold of the one mechanism of a design. */
function creasesOf(made: Design, opening: number) {
  const { creases } = poseAt(made, opening)
  const of = (part: string) => {
    const found = creases[`sail/${part}`]
    if (!found) throw new Error(part)
    return found
  }
  return { ridge: of('ridge'), left: of('left'), right: of('right') }
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
})

describe('a trapezoid', () => {
  const trapezoid = (start: number, end: number, startCut: number, endCut: number) =>
    design([{ id: 'sail', kind: 'cut-trapezoid', on: 'gutter', start, end, startCut, endCut }], {
      width: 297,
      height: 420,
    })

  // The parallelogram's closed form: the new ridge is the sum of both page vectors (vector addition).
  test('with equal cuts is a parallelogram: its ridge is the sum of both pages’ cuts', () => {
    fc.assert(
      fc.property(depth, openings, (cut, opening) => {
        const { ridge, left, right } = creasesOf(trapezoid(20, 60, cut, cut), opening)
        const out = 2 * cut * Math.cos((opening * RAD) / 2)
        for (const [end, along] of [
          [ridge.start, 20],
          [ridge.end, 60],
        ] as const)
          expect(apart(end, [0, along, out])).toBeLessThan(1e-9)
        for (const { angle } of [ridge, left, right]) expect(Math.abs(angle - opening)).toBeLessThan(1e-9)
      }),
      runs(100),
    )
  })

  // Its fold lines meet in one point of the gutter, as two lines do (similar triangles). Round that point it is the
  // degree-4 vertex with sectors a, 180 - a: Tachi 2009; Evans, Lang, Magleby, Howell 2015; Lang and Howell, J. Mech.
  // Robotics 10 (2018) 021004 [paper found, formula memory]; the ridge is the gutter mirrored in the folds' plane.
  test('of any two cuts, also of none: it folds round the point of the gutter where its fold lines meet', () => {
    const cut = fc.oneof(fc.constant(0), fc.double({ min: 2, max: 60, noNaN: true }))
    fc.assert(
      fc.property(cut, cut, openings, (startCut, endCut, opening) => {
        fc.pre(Math.abs(endCut - startCut) > 1)
        const { ridge, left, right } = creasesOf(trapezoid(100, 140, startCut, endCut), opening)
        const apex = 100 - (startCut * 40) / (endCut - startCut)
        const wedge = Math.atan2(Math.abs(endCut - startCut), 40)
        const [S, C] = [Math.sin((opening * RAD) / 2), Math.cos((opening * RAD) / 2)]
        const fold = 2 * Math.atan2(Math.cos(wedge) * S, C)
        for (const { angle } of [left, right]) expect(Math.abs(angle * RAD - fold)).toBeLessThan(1e-9)
        expect(Math.abs(ridge.angle - opening)).toBeLessThan(1e-9)
        const turn = 2 * Math.atan2(Math.sin(wedge) * C, Math.cos(wedge))
        for (const [end, along] of [
          [ridge.start, 100 - apex],
          [ridge.end, 140 - apex],
        ] as const)
          expect(
            apart(end, [0, apex + along * Math.cos(turn), Math.abs(along) * Math.sin(turn)]),
          ).toBeLessThan(1e-6)
      }),
      runs(300),
    )
  })
})

describe('a platform on walls', () => {
  const pond = design(
    [
      {
        id: 'pond',
        kind: 'floating-layer',
        on: 'gutter',
        start: 40,
        end: 90,
        height: 22,
        left: 30,
        right: 45,
        walls: [-25, 0, 17, 40],
      },
    ],
    { width: 297, height: 420 },
  )

  // Each wall with its page, the platform and the next wall is a parallelogram (Euclid I 33): what stands on walls of
  // one height has moved straight out from the pages, without a turn.
  test('lies as the pages do, one wall’s height farther out, and its walls stand straight out from their feet', () => {
    fc.assert(
      fc.property(openings, (opening) => {
        const [S, C] = [Math.sin((opening * RAD) / 2), Math.cos((opening * RAD) / 2)]
        const onPage = (across: number, along: number, out: number): Vec3 => [
          across * S,
          along,
          Math.abs(across) * C + out,
        ]
        const { panels, creases } = poseAt(pond, opening)
        const same = (found: readonly Vec3[] | undefined, wanted: readonly Vec3[]): void => {
          expect(found).toHaveLength(wanted.length)
          for (const p of wanted)
            expect(Math.min(...(found ?? []).map((q) => apart(p, q)))).toBeLessThan(1e-9)
        }
        for (const [side, reach] of [
          ['left', -30],
          ['right', 45],
        ] as const)
          same(
            panels[`pond/${side}`],
            [0, reach].flatMap((across) => [onPage(across, 40, 22), onPage(across, 90, 22)]),
          )
        for (const [k, foot] of [-25, 0, 17, 40].entries())
          same(
            panels[`pond/wall-${k + 1}`],
            [0, 22].flatMap((out) => [onPage(foot, 40, out), onPage(foot, 90, out)]),
          )
        const ridge = creases['pond/ridge']
        expect(apart(ridge?.start ?? [9, 9, 9], [0, 40, 22])).toBeLessThan(1e-9)
        expect(apart(ridge?.end ?? [9, 9, 9], [0, 90, 22])).toBeLessThan(1e-9)
        expect(Math.abs((ridge?.angle ?? 0) - opening)).toBeLessThan(1e-9)
      }),
      runs(100),
    )
  })
})
