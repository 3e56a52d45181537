import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../../src/paper/index.ts'
import { hands } from '../../../src/paper/index.ts'
import { floats, fromLengths } from '../../sources/lengths.ts'
import { design, gluedMoth, vFold } from '../shared/designs.ts'
import { RAD } from '../shared/space.ts'

const beak = design([vFold('beak', 'gutter', 110, -40, 42)])

const moth = design([gluedMoth()])

describe('what a slip of the hand does', () => {
  /** What a ruler stood on the page beneath reads for a point, mm: its distance from that page's plane. */
  const ruled = ([x, , z]: Vec3, opening: number): number => {
    const half = (opening / 2) * RAD
    return z * Math.sin(half) - Math.abs(x) * Math.cos(half)
  }

  // The slipped piece is built anew from its lengths (`lengths.ts`: three spheres, and no part of the kernel).
  test('the tip moves as it does on a piece that is built with that setting one millimetre or degree off', () => {
    const slips: readonly (readonly [field: string, by: number, m: object])[] = [
      ['apex', 1, { apex: 61 }],
      ['foot', 1, { foot: 41 }],
      ['ridge', -1, { ridge: 39 }],
      ['ridge', 1, { ridge: 41 }],
      ['right.base', 1, { right: { base: 46, facet: 60 }, left: { base: 45, facet: 60 } }],
      ['right.base', -1, { right: { base: 44, facet: 60 }, left: { base: 45, facet: 60 } }],
      ['left.facet', 1, { right: { base: 45, facet: 60 }, left: { base: 45, facet: 61 } }],
      ['left.facet', -1, { right: { base: 45, facet: 60 }, left: { base: 45, facet: 59 } }],
    ]
    const tipOf = (more: object, opening: number): Vec3 => {
      const made = design([gluedMoth(more)])
      const [m] = made.mechanisms
      if (m?.kind !== 'glued-v-fold') throw new Error('a moth')
      const tip = fromLengths(floats, made, { open: opening }).lift('moth/right', [0, m.ridge])
      if (!tip) throw new Error('it cannot stand')
      return tip
    }
    let moved = 0
    for (const opening of [40, 90, 130]) {
      const now = tipOf({}, opening)
      const told = hands(moth, opening).hands
      for (const [field, by, more] of slips) {
        const row = told.find((one) => one.field === field)
        const said = by < 0 ? row?.less : row?.more
        const then = tipOf(more, opening)
        expect(said?.rise).toBeCloseTo(ruled(then, opening) - ruled(now, opening), 6)
        expect(said?.reach).toBeCloseTo(then[1] - now[1], 6)
        // Both sides must add up alike (Kawasaki-Justin): an angle of one side is all that is missing.
        expect(Math.abs(said?.shut ?? 9)).toBeCloseTo(field.includes('.') ? 1 : 0, 9)
        moved += Math.abs(said?.rise ?? 0) > 0.1 ? 1 : 0
      }
    }
    expect(moved).toBeGreaterThan(10)
  })

  // Ridge at twice atan(tan a cos(t/2)) from the gutter: the gutter mirrored in the folds' plane (plane geometry).
  test('so does the tip of a beak, and what sticks out when it is shut', () => {
    const beakAt = (apex: number, run: number, cut: number, opening: number) => {
      const turn = (t: number) => 2 * Math.atan((cut / Math.abs(run)) * Math.cos((t / 2) * RAD))
      const out = Math.abs(run) * Math.sin(turn(opening))
      const shut = turn(0)
      return {
        rise: out * Math.sin((opening / 2) * RAD),
        reach: apex + run * Math.cos(turn(opening)),
        // Shut, so far are tip and apex from the edges of an A6 page of 105 by 148.
        margin: Math.min(
          105 - Math.abs(run) * Math.sin(shut),
          apex + run * Math.cos(shut),
          148 - apex - run * Math.cos(shut),
          148 - apex,
        ),
      }
    }
    for (const opening of [30, 90, 150]) {
      for (const { field, less, more } of hands(beak, opening).hands)
        for (const [by, told] of [
          [-1, less],
          [1, more],
        ] as const) {
          if (!['apex', 'run', 'cut'].includes(field)) continue
          const at = { apex: 110, run: -40, cut: 40 * Math.tan(42 * RAD) }
          const base = beakAt(at.apex, at.run, at.cut, opening)
          const slipped = { ...at, [field]: at[field as keyof typeof at] + by }
          const then = beakAt(slipped.apex, slipped.run, slipped.cut, opening)
          expect(told?.rise).toBeCloseTo(then.rise - base.rise, 9)
          expect(told?.reach).toBeCloseTo(then.reach - base.reach, 9)
          expect(told?.margin).toBeCloseTo(then.margin - base.margin, 9)
        }
    }
  })

  // What a maker marks, cuts or folds, by hand: not the width of a tab, which moves nothing, nor `base` and `facet`,
  // which only write two sides at once.
  test.each([
    ['beak', beak, ['apex', 'cut', 'lean', 'run']],
    ['moth', moth, ['apex', 'foot', 'left.base', 'left.facet', 'ridge', 'right.base', 'right.facet']],
  ])('every number of the %s that is made by hand is there once', (_, made, fields) => {
    const found = hands(made).hands.map(({ field }) => field)
    expect(found.sort()).toEqual(fields)
  })

  test('an apex off by one moves the tip by one along the gutter and nowhere else', () => {
    const apex = hands(beak).hands.find(({ field }) => field === 'apex')
    expect(apex?.more).toMatchObject({ reach: expect.closeTo(1, 9), rise: expect.closeTo(0, 9), shut: 0 })
    expect(apex?.less).toMatchObject({ reach: expect.closeTo(-1, 9), rise: expect.closeTo(0, 9), shut: 0 })
  })

  test('a layer has a ridge to hold a ruler to, a V-fold a tip', () => {
    const strip = (id: string, start: number, end: number, left: number) => ({
      id,
      kind: 'cut-layer',
      on: 'gutter',
      start,
      end,
      left,
    })
    // At 90 degrees the ridge stands as high as the cut is deep; the margin is the ledge's.
    const lantern = design([strip('body', 50, 70, 20), strip('ledge', 8, 30, 10)])
    expect(hands(lantern).sentence).toMatch(/One millimetre off changes the rise of the ridge by 1\.0 mm/)
    expect(hands(beak).sentence).toMatch(/ changes the (rise|place) of the tip /)
  })

  test('an angle that keeps the card from shutting comes first, and the sentence says that it does', () => {
    const { hands: rows, sentence } = hands(moth)
    expect(rows[0]?.unit).toBe('deg')
    expect(Math.abs(rows[0]?.more?.shut ?? 0)).toBeCloseTo(1, 9)
    // All four angles weigh the same here.
    expect(sentence).toMatch(
      /^Make this most carefully: the (left|right) (base|facet) angle of the moth\. One degree off, and the card no longer shuts flat\.$/,
    )
  })

  test('a slip that mends what is unlike already brings the card nearer to shutting', () => {
    const unlike = design([gluedMoth({ left: { base: 45, facet: 61 }, right: { base: 45, facet: 60 } })])
    const facet = hands(unlike).hands.find(({ field }) => field === 'right.facet')
    expect(facet?.more?.shut).toBeCloseTo(-1, 9)
    expect(facet?.less?.shut).toBeCloseTo(1, 9)
  })

  test('nothing to make, nothing to say', () => {
    expect(hands(design([]))).toMatchObject({ hands: [], sentence: null })
  })
})
