// What is free on a fold or face, measured on paper by hand.
import { describe, expect, test } from 'vitest'
import { roomBefore, roomsOf, roomsOn } from '../../../../src/paper/answers/seek/room.ts'
import type { Design } from '../../../../src/paper/index.ts'
import { compile, modelOf } from '../../../../src/paper/index.ts'
import { fold, layer } from '../../shared/check-designs.ts'
import { A6, design, gluedMoth } from '../../shared/designs.ts'
import { RAD } from '../../shared/space.ts'

const on = (made: Design, name: string) => {
  const poser = compile(made)
  return roomsOn(
    poser,
    poser.model.creases.findIndex((crease) => crease.name === name),
  )
}

const stretches = (made: Design, name = 'gutter') => on(made, name).map(({ from, to }) => [from, to])

const spots = (made: Design, name: string) => {
  const model = modelOf(made)
  return roomsOf(
    model,
    model.panels.findIndex((panel) => panel.name === name),
  )
}

const square = (a: number, l: number, half: number) => [
  [a - half, l - half],
  [a + half, l - half],
  [a + half, l + half],
  [a - half, l + half],
]

const sticker = (a: number, l: number, half: number, more: object = {}) => ({
  id: 'star',
  kind: 'rider',
  on: 'page/right',
  shape: square(a, l, half),
  glue: square(a, l, half / 2),
  ...more,
})

describe('the free stretches of a fold', () => {
  test('are all of it where nothing sits on it', () => {
    expect(stretches(design([]))).toEqual([[0, 148]])
    expect(stretches(design([], { height: 90 }))).toEqual([[0, 90]])
  })

  test('keep a bridge of 5 mm from what is there, longest first, and then the whole', () => {
    // 40 less 5, and 80 and 5: 35 mm on this side, 63 on that.
    expect(stretches(design([layer('step', 'gutter', 40, 80, 20)]))).toEqual([
      [85, 148],
      [0, 35],
      [0, 148],
    ])
    // A joint of 40 at 45 degrees takes 40 cos 45 of the gutter.
    const reach = 60 + 40 * Math.SQRT1_2
    const [long, short, whole] = stretches(design([gluedMoth()]))
    expect(long).toEqual([0, 55])
    expect(short?.[0]).toBeCloseTo(reach + 5, 9)
    expect(short?.[1]).toBe(148)
    expect(whole).toEqual([0, 148])
    // Back along the gutter: from 60 - 28.3.
    expect(stretches(design([gluedMoth({ toward: -1 })]))[1]?.[1]).toBeCloseTo(60 - 40 * Math.SQRT1_2 - 5, 9)
  })

  test('are told of the gutter, whose start is the reader’s end of the card, and of no other fold', () => {
    const made = design([layer('step', 'gutter', 40, 80, 20)])
    expect(on(made, 'gutter').map(({ isGutter }) => isGutter)).toEqual([true, true, true])
    expect(on(made, 'step/ridge').map(({ isGutter }) => isGutter)).toEqual([false])
  })

  test('count from 8 mm on', () => {
    expect(stretches(design([layer('step', 'gutter', 13, 148, 20)]))).toEqual([
      [0, 8],
      [0, 148],
    ])
    expect(stretches(design([layer('step', 'gutter', 12.9, 148, 20)]))).toEqual([[0, 148]])
    // A ridge of 6 has no room at all, one of 8 has.
    expect(stretches(design([fold('beak', 'gutter', 60, 6, 6)]), 'beak/ridge')).toEqual([])
    expect(stretches(design([fold('beak', 'gutter', 60, 8, 8)]), 'beak/ridge')).toEqual([[0, 8]])
  })

  test('are three at most, the longest ones', () => {
    const steps = [
      [20, 22],
      [50, 52],
      [90, 92],
      [110, 112],
    ].map(([from = 0, to = 0], k) => layer(`step-${k}`, 'gutter', from, to, 10))
    // Free: 0 to 15, 27 to 45, 57 to 85, 97 to 105, 117 to 148.
    expect(stretches(design(steps))).toEqual([
      [117, 148],
      [57, 85],
      [27, 45],
      [0, 148],
    ])
    expect(stretches(design(steps.reverse()))).toHaveLength(4)
  })

  test('of what lies over each other none is left between', () => {
    const made = design([layer('a', 'gutter', 30, 100, 20), gluedMoth({ apex: 50, foot: 20 })])
    expect(stretches(made)).toEqual([
      [105, 148],
      [0, 25],
      [0, 148],
    ])
  })
})

describe('how deep there is paper beside a fold', () => {
  test('is the page beside the gutter', () => {
    const [room] = on(design([]), 'gutter')
    expect(room?.depth(0, 148)).toBe(105)
    expect(room?.depth(60, 70)).toBe(105)
    expect(on(design([], { width: 80 }), 'gutter')[0]?.depth(10, 20)).toBe(80)
  })

  test('is nought where a hole lies in the stretch that is asked for', () => {
    const whole = on(design([layer('step', 'gutter', 40, 80, 20)]), 'gutter').at(-1)
    expect(whole?.depth(0, 148)).toBe(0)
    expect(whole?.depth(0, 38)).toBe(105)
    expect(whole?.depth(82, 148)).toBe(105)
  })

  test('ends at a hole that does not reach the fold', () => {
    // On the ridge of a layer 30 deep a second one, 40 to 80 by 12: its own ridge's sides are 12 deep.
    const made = design([layer('step', 'gutter', 20, 120, 30), layer('top', 'step/ridge', 30, 70, 12)])
    expect(on(made, 'step/ridge').at(-1)?.depth(0, 24)).toBeCloseTo(30, 9)
    expect(on(made, 'top/ridge')[0]?.depth(0, 40)).toBeCloseTo(12, 9)
    // Seen from the layer's right fold: all 30 of its wall beside the hole, 30 - 12 where the hole is.
    const right = on(made, 'step/right')[0]
    expect(right?.depth(2, 28)).toBeCloseTo(30, 9)
    expect(right?.depth(32, 68)).toBeCloseTo(18, 9)
  })

  test('is the lesser of both sides', () => {
    // Cut 20 deep on the left and 30 on the right: the left wall is as deep as the right cut, and the right as the left.
    const made = design([layer('step', 'gutter', 40, 80, 20, 30)])
    expect(on(made, 'step/ridge')[0]?.depth(0, 40)).toBeCloseTo(20, 9)
    expect(on(design([layer('step', 'gutter', 40, 80, 30, 20)]), 'step/ridge')[0]?.depth(0, 40)).toBeCloseTo(
      20,
      9,
    )
  })

  test('of a wedge grows from its apex, and the narrowest place counts', () => {
    // 45 degrees: t mm from the apex there are t mm of facet. The first look is 2 % into the stretch.
    const [room] = on(design([fold('beak', 'gutter', 100, -40, 40)]), 'beak/ridge')
    expect([room?.from, room?.to]).toEqual([0, 40])
    expect(room?.depth(0, 40)).toBeCloseTo(0.8, 9)
    expect(room?.depth(10, 40)).toBeCloseTo(10.6, 9)
    // 30 degrees: t tan 30.
    const [flat] = on(design([fold('beak', 'gutter', 100, -40, 40 * Math.tan(30 * RAD))]), 'beak/ridge')
    expect(flat?.depth(10, 40)).toBeCloseTo(10.6 * Math.tan(30 * RAD), 9)
    // A slit that leans back to the apex by 20 of 40: from there on the wedge's end is the slit, and narrows.
    const [back] = on(design([fold('beak', 'gutter', 60, 40, 20, { lean: -20 })]), 'beak/ridge')
    expect(back?.depth(20, 40)).toBeCloseTo(20 - 0.98 * 20, 6)
  })
})

describe('how far the shut card reaches beyond a place of a fold', () => {
  test('of the gutter to the side edge', () => {
    const [room] = on(design([]), 'gutter')
    for (const along of [0, 70, 148]) expect(room?.beyond(along)).toBeCloseTo(105, 9)
  })

  test('of a ridge that stands square to the gutter to the end on the facets’ side', () => {
    // A wedge of 45: shut, its ridge stands at 2 x 45 from the gutter, and its facets lie towards the slit.
    const back = on(design([fold('beak', 'gutter', 100, -40, 40)]), 'beak/ridge')[0]
    for (const along of [0, 10, 40]) expect(back?.beyond(along)).toBeCloseTo(100, 6)
    const away = on(design([fold('beak', 'gutter', 100, 40, 40)]), 'beak/ridge')[0]
    for (const along of [0, 10, 40]) expect(away?.beyond(along)).toBeCloseTo(A6.height - 100, 6)
  })

  test('of a ridge that leans on to whichever edge comes first', () => {
    // A wedge of 60 with its apex at 90, run back by 90: shut, its ridge is at 120 degrees to the gutter, and so it
    // leads (1/2, sin 60) outwards; square to it, towards the slit, (-sin 60, 1/2).
    const sine = Math.sin(60 * RAD)
    const [room] = on(design([fold('beak', 'gutter', 90, -90, 90 * Math.tan(60 * RAD))]), 'beak/ridge')
    // From (90 + t/2, t sin 60): near end after (90 + t/2) / sin 60, side edge after (105 - t sin 60) / (1/2).
    for (const t of [0, 20, 90])
      expect(room?.beyond(t)).toBeCloseTo(Math.min((90 + t / 2) / sine, 2 * (105 - t * sine)), 6)
    expect((90 + 45) / sine).toBeGreaterThan(2 * (105 - 90 * sine))
  })

  test('of one that sticks out is nought', () => {
    // A ridge of 120 square to the gutter on a page of 105: past the edge no card is left, and to the end there is.
    const [room] = on(design([fold('beak', 'gutter', 140, -120, 120 * Math.tan(60 * RAD))]), 'beak/ridge')
    // Where it has left the card, 140 + t/2 > 148 or t sin 60 > 105.
    expect(room?.beyond(122)).toBe(0)
  })
})

describe('the free place of a face', () => {
  test('is the largest circle in a page: half as wide as the page', () => {
    const [room, more] = spots(design([]), 'page/right')
    expect(more).toBeUndefined()
    expect(room?.spot?.radius).toBeGreaterThan(52.4)
    expect(room?.spot?.radius).toBeLessThanOrEqual(52.5)
    expect(room?.spot?.at[0]).toBeCloseTo(52.5, 0)
  })

  test('is a stretch and a depth as well: as far as the circle goes', () => {
    const [room] = spots(design([]), 'page/right')
    const { at = [0, 0], radius = 0 } = room?.spot ?? {}
    expect(room?.from).toBeCloseTo(at[1] - radius, 9)
    expect(room?.to).toBeCloseTo(at[1] + radius, 9)
    expect(room?.depth(0, 1)).toBe(radius)
    expect(room?.beyond(0)).toBe(Number.POSITIVE_INFINITY)
  })

  test('of a triangle is its inscribed circle', () => {
    // Legs of 40 and 40: radius (40 + 40 - 40 sqrt 2) / 2 = 11.716, its middle as far from either leg.
    const [room] = spots(design([fold('beak', 'gutter', 100, -40, 40)]), 'beak/right')
    const radius = 20 * (2 - Math.SQRT2)
    expect(room?.spot?.radius).toBeGreaterThan(radius - 0.02)
    expect(room?.spot?.radius).toBeLessThanOrEqual(radius + 1e-9)
    expect(room?.spot?.at[0]).toBeCloseTo(radius, 1)
  })

  test('keeps off holes', () => {
    // The page's lower 100 mm are taken to a depth of 60: what is left is 45 wide beside it, or 48 high above.
    const [room] = spots(design([layer('step', 'gutter', 0, 100, 60)]), 'page/right')
    const { at = [0, 0], radius = 0 } = room?.spot ?? {}
    // No nearer than its radius to the corner of the hole, (60, 100), nor to the edges of the page.
    const most = Math.min(105 - at[0], 148 - at[1], Math.hypot(at[0] - 60, at[1] - 100))
    expect(radius).toBeCloseTo(most, 6)
    // Tangent to both edges and the corner: 45 - r and 48 - r away, (45 - r)² + (48 - r)² = r².
    expect(radius).toBeCloseTo(93 - Math.sqrt(93 ** 2 - 45 ** 2 - 48 ** 2), 0)
  })

  test('is beside what is stuck there, and then without it', () => {
    const made = design([sticker(52.5, 40, 30)])
    const [beside, whole] = spots(made, 'page/right')
    expect(whole?.spot?.radius).toBeGreaterThan(52.4)
    // Above the sticker 148 - 70 = 78 are left, so half of that; 52.5 at most.
    const { at = [0, 0], radius = 0 } = beside?.spot ?? {}
    expect(radius).toBeGreaterThan(38.8)
    expect(at[1] - radius).toBeGreaterThanOrEqual(70 - 1e-6)
    // The other page has nothing on it, and one place.
    expect(spots(made, 'page/left')).toHaveLength(1)
  })

  test('is beside glue as well', () => {
    const made = design([gluedMoth({ apex: 40, foot: 100, base: 60, tab: 10 })])
    const [beside, whole] = spots(made, 'page/right')
    expect(beside?.spot?.radius).toBeLessThan(52)
    expect(whole?.spot?.radius).toBeGreaterThan(52.4)
    const { at = [0, 0], radius = 0 } = beside?.spot ?? {}
    // No nearer to the joint, a line at 60 degrees to the gutter, than its radius.
    const up = at[1] - 40
    const along = Math.max(0, Math.min(100, at[0] * Math.sin(60 * RAD) + up * Math.cos(60 * RAD)))
    const off = Math.hypot(at[0] - along * Math.sin(60 * RAD), up - along * Math.cos(60 * RAD))
    expect(off).toBeGreaterThanOrEqual(radius - 1e-6)
  })

  test('before a place lies nearer to the fold, with the place on its rim', () => {
    const { spot, from, to } = roomBefore([50, 70])
    expect(spot).toEqual({ at: [42, 70], radius: 12 })
    expect([from, to]).toEqual([58, 82])
  })
})
