import { describe, expect, test } from 'vitest'
import { lastTip } from '../../../src/paper/answers/seek/offers.ts'
import type { Forgiveness, Offer, Slack } from '../../../src/paper/index.ts'
import { riseOf } from '../../../src/paper/index.ts'
import { forgivesSays } from '../../../src/widgets/dummy/desk/forgiving.ts'
import { offerHigh } from '../../../src/widgets/dummy/model/offer-high.ts'
import {
  alongDrawn,
  firstWish,
  MOST_MARKS,
  markAt,
  placeOfWish,
  pointOver,
  wishAt,
  withMark,
  withoutMark,
} from '../../../src/widgets/dummy/model/wishes.ts'
import { layer } from '../../paper/shared/check-designs.ts'
import { design } from '../../paper/shared/designs.ts'

const slack = (by: number): Slack => ({ by, spoilt: null, fails: null, sentence: null })

const off = (less: number, more: number): Forgiveness => ({
  id: 'beak',
  field: 'cut',
  label: 'Slit',
  unit: 'mm',
  less: slack(less),
  more: slack(more),
})

describe('how far a size may be off', () => {
  test('is said as a maker would, both ways alike, unlike, not at all, or as far as one likes', () => {
    expect(forgivesSays(off(0.8, 0.8), 'mm')).toBe('may be 0.8 mm off')
    expect(forgivesSays(off(0.5, 1.2), 'mm')).toBe('may be 0.5 mm less, 1.2 mm more')
    expect(forgivesSays(off(0, 1.2), 'mm')).toBe('may be no less, 1.2 mm more')
    expect(forgivesSays(off(0.5, 8), 'mm')).toBe('may be 0.5 mm less, much more')
    expect(forgivesSays(off(0, 0), 'mm')).toBe('must be exact')
    expect(forgivesSays(off(4, 8), 'mm')).toBe('needs no care')
  })
})

describe('how high an offered part stands', () => {
  /** A layer so deep, open at 90 degrees if no other opening is told: its ridge is as high as it is deep then. */
  const offer = (deep: number, room: number, at = 90, kind = 'cut-layer'): Offer => {
    const made = design([layer('step', 'gutter', 40, 80, deep)])
    return { kind, label: '', variant: '', room, id: 'step', design: made, ...lastTip(made, at) }
  }

  test('is said plainly, and of a low one with why', () => {
    expect(offerHigh(offer(34, 105), 'mm')).toBe('34.0 mm high')
    expect(offerHigh(offer(12, 20), 'mm')).toBe('12.0 mm high')
    expect(offerHigh(offer(9.8, 21), 'mm')).toBe('only 9.8 mm high: there is little room here')
    expect(offerHigh(offer(9.8, 21), 'in')).toBe('only 0.39 in high: there is little room here')
    // Where there is room it is low by itself.
    expect(offerHigh(offer(9.8, 105), 'mm')).toBe('only 9.8 mm high')
  })

  test('is no want of room where the card is all but shut, or a piece lies flat on its page', () => {
    // 34 sin 10 degrees; and 9.8 sin 10 degrees.
    expect(offerHigh(offer(34, 21, 10), 'mm')).toBe('5.9 mm high')
    expect(offerHigh(offer(9.8, 21, 10), 'mm')).toBe('only 1.7 mm high: there is little room here')
    expect(offerHigh(offer(5, 21, 90, 'rider'), 'mm')).toBe('5.0 mm high')
  })

  test('is never less than nought', () => {
    expect(offerHigh({ ...offer(20, 42), tip: [0, 0, -7.1 * Math.SQRT2] }, 'mm')).toBe(
      '7.1 mm behind the page',
    )
  })
})

describe('a wish', () => {
  test('is as high over its page as it says: at 90° a point over the gutter by the cosine of 45°', () => {
    // A page that leans 45° away: a point z over the gutter is z cos 45° from it (Euclid I.47).
    const [x, y, z] = pointOver({ rise: 30, along: 20, aside: 0 }, 90)
    expect([x, y]).toEqual([0, 20])
    expect(z).toBeCloseTo(30 * Math.SQRT2, 9)
    expect(pointOver({ rise: 30, along: 20, aside: 0 }, 180)[2]).toBeCloseTo(30, 9)
  })

  test('comes back from its point, aside of the gutter and on either side', () => {
    for (const aside of [-25, 0, 40])
      for (const opening of [40, 90, 150]) {
        const at = pointOver({ rise: 12, along: 80, aside }, opening)
        expect(riseOf(at, opening)).toBeCloseTo(12, 9)
        expect(placeOfWish({ at, opening }).aside).toBe(aside)
      }
  })

  test('keeps its height when it is made at another opening, and its conditions when it moves', () => {
    const wish = { ...firstWish({ width: 105, height: 148, caliper: 0.25 }), hidden: false }
    const wider = wishAt(wish, {}, 140)
    expect(placeOfWish(wider).rise).toBeCloseTo(placeOfWish(wish).rise, 9)
    expect(wishAt(wish, { along: 10 })).toMatchObject({ hidden: false, opening: 90 })
    expect(placeOfWish(wishAt(wish, { along: 10 })).along).toBe(10)
  })
})

describe('the way of a wished tip', () => {
  const wish = firstWish({ width: 105, height: 148, caliper: 0.25 })

  test('is drawn in one stroke: its end is the tip, and its marks are passed evenly as the card opens', () => {
    // A straight stroke, 40 mm along the gutter at one height over the table.
    const drawn = alongDrawn(wish, [
      [0, 20, 30],
      [0, 35, 30],
      [0, 60, 30],
    ])
    expect(placeOfWish(drawn).along).toBeCloseTo(60, 6)
    // At 90 degrees 30 mm over the table are 30 cos 45° over the page.
    expect(placeOfWish(drawn).rise).toBeCloseTo(30 * Math.SQRT1_2, 1)
    expect(drawn.path?.map(({ opening }) => opening)).toEqual([23, 45, 68])
    expect(drawn.path?.map(({ at }) => at[1])).toEqual([30, 40, 50])
    for (const { at } of drawn.path ?? []) expect(at[2]).toBeCloseTo(30, 0)
  })

  test('a press that draws nothing changes nothing', () => {
    expect(alongDrawn(wish, [[0, 20, 30]])).toBe(wish)
    expect(alongDrawn(wish, [])).toBe(wish)
  })

  test('is set mark by mark, and no more of them than there is room for', () => {
    let now = wish
    for (let k = 0; k < 5; k++) now = withMark(now)
    expect(now.path).toHaveLength(MOST_MARKS)
    expect(now.path?.[0]?.opening).toBe(45)
    now = markAt(now, 0, { rise: 12, along: 33 }, 60)
    expect(now.path?.[0]?.opening).toBe(60)
    expect(placeOfWish(now.path?.[0] ?? now)).toMatchObject({ along: 33 })
    expect(placeOfWish(now.path?.[0] ?? now).rise).toBeCloseTo(12, 9)
    for (let k = 0; k < MOST_MARKS; k++) now = withoutMark(now, 0)
    expect(now).toEqual(wish)
    expect('path' in now).toBe(false)
  })
})
