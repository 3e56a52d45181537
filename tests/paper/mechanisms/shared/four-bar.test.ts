import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { aim, check, measure, openingRange, openingStops, poseAt } from '../../../../src/paper/index.ts'
import { closesNowhere } from '../../../../src/paper/mechanisms/build.ts'
import { fourBar, rangeOf } from '../../../../src/paper/mechanisms/shared/four-bar.ts'
import { fourBarTurns } from '../../../../src/paper/mechanisms/shared/four-bar-turns.ts'
import { design, gluedMoth, runs } from '../../shared/designs.ts'
import { RAD } from '../../shared/space.ts'

const tent = (more: object = {}) =>
  design([
    {
      id: 'tent',
      kind: 'glued-tent',
      on: 'gutter',
      start: 20,
      end: 70,
      leftFoot: 30,
      rightFoot: 30,
      leftWall: 40,
      rightWall: 40,
      ...more,
    },
  ])

const moth = (b1: number, a1: number, b2: number, a2: number) => {
  const { base: _base, facet: _facet, ...rest } = gluedMoth() as Record<string, unknown>
  return design([{ ...rest, right: { base: b1, facet: a1 }, left: { base: b2, facet: a2 } }])
}

/**
 * Both joints as far apart as the pages hold them, at an opening of `w` degrees: in the plane across the crease, mm,
 * or as an angle seen from the apex, degrees. From coordinates alone.
 */
function apart(form: 'planar' | 'spherical', b1: number, b2: number, w: number): number {
  const [s, c] = [Math.sin((w / 2) * RAD), Math.cos((w / 2) * RAD)]
  if (form === 'planar') return Math.hypot((b1 + b2) * s, (b1 - b2) * c)
  const at = (b: number, side: number) => [
    side * s * Math.sin(b * RAD),
    Math.cos(b * RAD),
    c * Math.sin(b * RAD),
  ]
  const [p, q] = [at(b1, 1), at(b2, -1)]
  const [x, y, z] = [0, 1, 2].map((k) => (p[k] as number) - (q[k] as number)) as [number, number, number]
  return (2 * Math.asin(Math.min(1, Math.hypot(x, y, z) / 2))) / RAD
}

/** How far three sides are from making a triangle: above 0 they do (triangle inequality; on the sphere no more than 360 degrees round). */
const spare = (form: 'planar' | 'spherical', g: number, a1: number, a2: number): number =>
  Math.min(
    a1 + a2 - g,
    g - Math.abs(a1 - a2),
    form === 'spherical' ? 360 - a1 - a2 - g : Number.POSITIVE_INFINITY,
  )

describe('a four-bar closes', () => {
  test.each(['planar', 'spherical'] as const)('%s: nowhere exactly where no triangle can be made', (form) => {
    const side = fc.double({ min: 1, max: form === 'planar' ? 90 : 179, noNaN: true })
    const seen = { some: 0, none: 0 }
    fc.assert(
      fc.property(side, side, side, side, (b1, a1, b2, a2) => {
        const [least, most] = rangeOf(
          fourBar(form, { base: b1, facet: a1 }, { base: b2, facet: a2 }, 1, false),
        )
        let best = Number.NEGATIVE_INFINITY
        for (let w = 0; w <= 180; w += 1) best = Math.max(best, spare(form, apart(form, b1, b2, w), a1, a2))
        // Looked at by whole degrees: a joint moves no farther than 3 mm, or a degree, from one to the next.
        if (best > 0) {
          seen.some++
          expect(least).toBeLessThanOrEqual(most)
          for (const end of [least, most])
            expect(spare(form, apart(form, b1, b2, end), a1, a2)).toBeGreaterThan(-1e-5)
        } else if (best < -3) {
          seen.none++
          expect(least).toBeGreaterThan(most)
        }
      }),
      runs(300),
    )
    expect(Math.min(seen.some, seen.none)).toBeGreaterThan(20)
  })

  test('at one opening alone where a side is just as long as it must be', () => {
    const at = (form: 'planar' | 'spherical', b1: number, a1: number, b2: number, a2: number) =>
      rangeOf(fourBar(form, { base: b1, facet: a1 }, { base: b2, facet: a2 }, 1, false))
    // Walls that differ by 60: the joints are so far apart when flat, 30 + 30, and nowhere else.
    expect(at('planar', 30, 70, 30, 10)).toEqual([180, 180])
    expect(at('planar', 30, 70.001, 30, 10)).toEqual([180, 0])
    // Joints 40 apart when shut, 50 - 10, and walls of 20 that just span them.
    expect(at('planar', 50, 20, 10, 20)).toEqual([0, 0])
    expect(at('planar', 50, 20, 10, 19.999)).toEqual([180, 0])
    // On the sphere the same with 50 degrees, and facets so wide that little is left of the full turn: 360 - 350 = 10.
    expect(at('spherical', 30, 60, 20, 10)).toEqual([180, 180])
    expect(at('spherical', 30, 60.001, 20, 10)).toEqual([180, 0])
    expect(at('spherical', 60, 175, 50, 175)[1]).toBeCloseTo(0, 6)
    expect(at('spherical', 60, 175.001, 50, 175)).toEqual([180, 0])
    // Bases that make 300 together leave their joints at most 60 apart: 360 - 300.
    expect(at('spherical', 150, 70, 150, 10)[1]).toBe(180)
    expect(at('spherical', 150, 70.001, 150, 10)).toEqual([180, 0])
    // No feet at all: the walls lie on each other, and must be alike.
    expect(at('planar', 0, 40, 0, 40)).toEqual([0, 180])
    expect(at('planar', 0, 40, 0, 39)).toEqual([180, 0])
  })

  test.each([
    ['walls of 90 and 10 on joints at most 60 apart', tent({ leftWall: 90, rightWall: 10 }), 'tent'],
    [
      'walls of 15 on joints at least 40 apart',
      tent({ rightFoot: 50, leftFoot: 10, leftWall: 15, rightWall: 15 }),
      'tent',
    ],
    ['facets of 20 and 100 on bases that make 50', moth(30, 20, 20, 100), 'moth'],
    ['facets of 10 on bases 60 apart', moth(100, 10, 40, 10), 'moth'],
    ['facets that leave 10 of a full turn on bases 40 apart', moth(90, 175, 50, 175), 'moth'],
  ])('%s fit nowhere, and that is said', (_, made, id) => {
    expect(openingStops(made)).toEqual({ least: null, most: null, nowhere: [id] })
    expect(openingRange(made)).toEqual([0, 180])
    const checks = check(made, { repairs: false })
    const failed = (name: string) => checks.find((one) => one.name === name && !one.ok)
    expect(failed('opens-flat')).toMatchObject({
      ids: [id],
      value: 180,
      sentence: `The ${id} fits at no opening of its fold: its two sides can never meet.`,
    })
    expect(failed('clear-motion')).toMatchObject({
      verdict: 'undecided',
      ids: [id],
      sentence: `Nothing can be told of the whole motion. The ${id} fits at no opening of its fold: its two sides can never meet.`,
    })
    for (const opening of [0, 1, 90, 179, 180]) {
      const pose = poseAt(made, opening)
      expect(pose.stopped).toEqual([id])
      expect([...Object.values(pose.panels)].flat(2).every(Number.isFinite)).toBe(true)
    }
    // It is held the same at every opening, and so turns by nothing.
    expect(poseAt(made, 180).panels[`${id}/left`]).toEqual(poseAt(made, 0).panels[`${id}/left`])
  })

  test('what fits nowhere is held still, and its rates are nought', () => {
    const bar = fourBar('planar', { base: 30, facet: 10 }, { base: 30, facet: 90 }, 1, false)
    const out = new Float64Array(6).fill(Number.NaN)
    for (const [from, to] of [
      [0, Math.PI],
      [1, 2],
      [Math.PI, Math.PI],
    ] as const) {
      fourBarTurns(bar, rangeOf(bar), from, to, out)
      expect([...out]).toEqual([0, 0, 0, 0, 0, 0])
    }
  })

  test('there is no way of setting what fits nowhere, but the way to where it fits', () => {
    // 90 and 10 cannot be; nothing that is found to bring the ridge 20 mm up is such a tent.
    const found = aim(tent({ leftWall: 90, rightWall: 10 }), 'tent', { opening: 90, rise: 20 })
    for (const way of found.ways) expect(openingStops(way.design).nowhere).toEqual([])
    expect(measure(tent(), 90).opening).toBe(90)
  })
})

test('what closes at one opening alone closes somewhere: all four in one line when the card is flat', () => {
  // The triangle of facets and diagonal is flat where 90 - 30 = 30 + 30 (Euclid I.20, with equality).
  const range = rangeOf(fourBar('planar', { base: 30, facet: 90 }, { base: 30, facet: 30 }, 1, false))
  expect(range[0]).toBeCloseTo(180, 4)
  expect(range[1]).toBe(180)
  expect(closesNowhere({ range: [180, 180] })).toBe(false)
  expect(closesNowhere({ range })).toBe(false)
})
