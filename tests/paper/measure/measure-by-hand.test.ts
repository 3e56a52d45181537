// What a ruler reads on small cards, in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../../src/paper/index.ts'
import { highest, measure, shutMargin, swing } from '../../../src/paper/index.ts'
import { isRead, marginOf, riseOf, toEdge, toGutter, toShutEdge } from '../../../src/paper/measure/measure.ts'
import { compile } from '../../../src/paper/motion/pose.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { A6, design, gluedMoth } from '../shared/designs.ts'

const half = Math.SQRT1_2

describe('how far a point is from the page beneath it', () => {
  // Half open, the pages stand at 45 degrees on either side: a point straight up is z sin 45 from both.
  test.each([
    ['straight up', [0, 5, 10], 90, 10 * half],
    ['on the right page', [10, 5, 10], 90, 0],
    ['on the left page', [-10, 5, 10], 90, 0],
    ['behind the right page', [10, 5, 0], 90, -10 * half],
    ['behind the left page', [-10, 5, 0], 90, -10 * half],
    ['flat, on the table', [40, 5, 0], 180, 0],
    ['flat, above it', [40, 5, 7], 180, 7],
    ['shut, beside the page', [3, 5, 40], 0, -3],
    // A third open, the page leans 30 degrees from upright: 20 sin 30.
    ['a third open', [0, 5, 20], 60, 10],
  ] as const)('%s', (_, at, opening, rise) => {
    expect(riseOf([...at], opening)).toBeCloseTo(rise, 9)
  })
})

describe('how far a point is from the edges of the card', () => {
  test.each([
    ['near', [0, 3, 50], 3],
    ['far', [0, 146, 50], 2],
    ['side', [0, 70, 101], 4],
    ['side, page turned', [-63, 70, 84], 0],
    ['past near', [0, -3, 50], -3],
    ['past far', [0, 150, 50], -2],
    ['past side', [60, 70, 88], 105 - Math.hypot(60, 88)],
  ] as const)('%s', (_, at, far) => {
    expect(toEdge(A6, [...at])).toBeCloseTo(far, 9)
  })

  test('past the gutter counts when shut, and what rounding leaves of a point on it does not', () => {
    expect(toGutter([0, 70, 40])).toBe(Number.POSITIVE_INFINITY)
    expect(toGutter([0, 70, 0])).toBe(Number.POSITIVE_INFINITY)
    expect(toGutter([0, 70, -1e-6])).toBe(Number.POSITIVE_INFINITY)
    expect(toGutter([0, 70, -2e-6])).toBe(-2e-6)
    expect(toGutter([0, 70, -2])).toBe(-2)
    expect(toShutEdge(A6, [0, 70, -2])).toBe(-2)
    expect(toShutEdge(A6, [0, 70, 40])).toBe(65)
    expect(toShutEdge(A6, [0, -5, -2])).toBe(-5)
  })
})

describe('the margin', () => {
  test('of a bare card is its half width, or half its height where that is less', () => {
    expect(shutMargin(design([])).margin).toBe(74)
    expect(shutMargin(design([], { width: 60 })).margin).toBe(60)
    expect(measure(design([], { height: 300 }), 90).margin).toBe(105)
  })

  // Base angles over a right one: the wings lie past the gutter when the card is shut, where an open card has the
  // other page. 40 mm at 120 degrees are 20 past it.
  test('counts the gutter only when the card is shut', () => {
    const back = design([gluedMoth({ base: 120, facet: 120, foot: 40, ridge: 20, apex: 90 })])
    const shut = marginOf(compile(back), 0)
    expect(shut.margin).toBeLessThan(0)
    expect(marginOf(compile(back), 1).margin).toBeGreaterThan(0)
  })

  test('is measured at the opening asked for', () => {
    // Its far end is 148 - 90 = 58 mm from the far edge at every opening, its ridge 80 cos(opening / 2) from the gutter.
    const wide = compile(design([layer('lamp', 'gutter', 60, 90, 40)]))
    expect(marginOf(wide, 0)).toMatchObject({ margin: expect.closeTo(25, 9) })
    expect(marginOf(wide, 90).margin).toBeCloseTo(105 - 80 * half, 9)
    expect(marginOf(wide, 180).margin).toBeCloseTo(58, 9)
  })
})

describe('tips', () => {
  const tip = (mechanisms: readonly object[], id: string, opening: number) =>
    measure(design(mechanisms), opening).tips[id]

  test.each([
    // Half open: its ridge is the far corner of a box on the two pages.
    ['an even layer', 30, 30, [0, 50, 60 * half], 30],
    // Deeper on the left, it leans left: as far from that page as the cut on the right is deep.
    ['a layer deeper on the left', 50, 30, [-20 * half, 50, 80 * half], 30],
    ['a layer deeper on the right', 30, 50, [20 * half, 50, 80 * half], 30],
  ] as const)('of %s', (_, left, right, at, rise) => {
    const found = tip([layer('lamp', 'gutter', 40, 60, left, right)], 'lamp', 90)
    for (const k of [0, 1, 2] as const) expect(found?.at[k]).toBeCloseTo(at[k], 9)
    expect(found?.rise).toBeCloseTo(rise, 9)
    expect(found?.standOff).toBeCloseTo(Math.hypot(at[0], at[2]), 9)
    expect(found?.reach).toBeCloseTo(50, 9)
  })

  test.each([
    ['page/right', 1],
    ['page/left', -1],
  ])('of a piece stuck on %s: its corner farthest from the gutter, on the page', (on, side) => {
    const shape = [
      [20, 10],
      [60, 35],
      [20, 40],
    ]
    const found = tip([{ id: 'moon', kind: 'rider', on, shape, glue: shape }], 'moon', 90)
    expect(found?.at[0]).toBeCloseTo(side * 60 * half, 9)
    expect(found?.at[1]).toBeCloseTo(35, 9)
    expect(found?.at[2]).toBeCloseTo(60 * half, 9)
    expect(found?.rise).toBeCloseTo(0, 9)
    expect(found?.standOff).toBeCloseTo(60, 9)
  })

  // A V-fold with equal sides, base 45 and facet 60: its ridge lies in the plane between the pages, u along the
  // gutter and v up. A joint runs (half, half * 45 degrees up and aside) when half open, so v / 2 + u half = 1 / 2.
  test('of a glued V-fold: its facet angle is the angle from joint to ridge', () => {
    const at = tip([gluedMoth()], 'moth', 90)?.at as Vec3
    const joint = [half * half, half, half * half]
    const ridge = [at[0], at[1] - 60, at[2]].map((x) => x / 40)
    expect(at[0]).toBeCloseTo(0, 9)
    expect(Math.hypot(...ridge)).toBeCloseTo(1, 9)
    expect(joint.reduce((sum, x, k) => sum + x * (ridge[k] as number), 0)).toBeCloseTo(0.5, 9)
  })

  test('past its end the card is measured there', () => {
    const made = design([gluedMoth({ base: 60, facet: 45 })])
    const stop = (Math.acos(-1 / 3) * 180) / Math.PI
    expect(measure(made, 180).opening).toBeCloseTo(stop, 6)
    expect(measure(made, 90).opening).toBe(90)
    expect(() => measure(made, 181)).toThrow(RangeError)
    expect(() => measure(made, -1)).toThrow(RangeError)
  })

  test('what fits together at no opening has none, nor has what stands on it', () => {
    // Feet of 50 and 10 mm want walls that reach over the 40 mm between them; these are 10 mm together.
    const made = design([
      {
        id: 'roof',
        kind: 'glued-tent',
        on: 'gutter',
        start: 20,
        end: 60,
        leftFoot: 50,
        rightFoot: 10,
        leftWall: 5,
        rightWall: 5,
      },
      layer('eye', 'roof/ridge', 5, 15, 3),
      layer('lamp', 'gutter', 80, 120, 20),
    ])
    expect([0, 1, 2].map((index) => isRead(made, index))).toEqual([false, false, true])
    expect(Object.keys(measure(made, 60).tips)).toEqual(['lamp'])
  })
})

describe('the way of a tip', () => {
  test('of a layer: straight out from the gutter, 2 a cos(opening / 2)', () => {
    const path = swing(design([layer('lamp', 'gutter', 40, 60, 30)]), 'lamp', 3)
    expect(path.map(({ opening }) => opening)).toEqual([0, 60, 120, 180])
    const wanted = [60, 60 * Math.cos(Math.PI / 6), 30, 0]
    path.forEach(({ at, rise }, k) => {
      expect(at[2]).toBeCloseTo(wanted[k] as number, 9)
      // Its distance from either page: 60 cos(t/2) sin(t/2) = 30 sin t.
      expect(rise).toBeCloseTo(30 * Math.sin((k * Math.PI) / 3), 9)
    })
    expect(swing(design([layer('lamp', 'gutter', 40, 60, 30)]), 'lamp')).toHaveLength(61)
  })

  test('of a layer is highest half open, as high as it is deep', () => {
    const made = design([layer('lamp', 'gutter', 40, 60, 30), layer('step', 'gutter', 80, 90, 12)])
    for (const [id, deep] of [
      ['lamp', 30],
      ['step', 12],
      ['lamp', 30],
    ] as const) {
      expect(highest(made, id).opening).toBeCloseTo(90, 3)
      expect(highest(made, id).rise).toBeCloseTo(deep, 6)
    }
  })
})

describe('a beak on one slit', () => {
  test('gapes from tip to tip', () => {
    // Shut, both ridges of 45 degrees stand square to the gutter, at 110 and at 30 along it.
    const made = design([fold('beak', 'gutter', 110, -40, 40), fold('jaw', 'gutter', 30, 40, 40)])
    expect(measure(made, 0).gapes).toMatchObject([{ between: ['beak', 'jaw'], gape: expect.closeTo(80, 9) }])
  })
})
