import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { change, hands, measure, modelOf, settingOf } from '../../../src/paper/index.ts'
import { design, gluedMoth, vFold } from '../shared/designs.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'

const gap = (made: Design): number =>
  Math.max(0, ...modelOf(made).builds.map(({ build }) => Math.abs(build.shutGap?.gap ?? 0)))

const beak = design([vFold('beak', 'gutter', 110, -40, 42)])

const moth = design([gluedMoth()])

describe('what a slip of the hand does', () => {
  test('every number is what changes when that setting is made one millimetre or degree off', () => {
    let moved = 0
    fc.assert(
      fc.property(gluedDesigns({ most: 4 }), fc.integer({ min: 30, max: 150 }), (made, opening) => {
        const now = measure(made, opening)
        for (const { id, field, less, more } of hands(made, opening).hands) {
          const m = made.mechanisms.find((one) => one.id === id)
          if (!m) throw new Error(id)
          for (const [by, told] of [
            [-1, less],
            [1, more],
          ] as const) {
            if (!told) continue
            const slipped = change(made, id, { [field]: settingOf(m, field) + by })
            const then = measure(slipped, opening)
            expect(told.rise).toBeCloseTo((then.tips[id]?.rise ?? 0) - (now.tips[id]?.rise ?? 0), 9)
            expect(told.reach).toBeCloseTo((then.tips[id]?.reach ?? 0) - (now.tips[id]?.reach ?? 0), 9)
            expect(told.margin).toBeCloseTo(then.margin - now.margin, 9)
            expect(told.shut).toBeCloseTo(gap(slipped) - gap(made), 9)
            if (Math.abs(told.rise) > 0.1) moved++
          }
        }
      }),
      { numRuns: 30 },
    )
    expect(moved).toBeGreaterThan(30)
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

  test('nothing to make, nothing to say', () => {
    expect(hands(design([]))).toMatchObject({ hands: [], sentence: null })
  })
})
