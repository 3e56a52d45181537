// Where along its host a mechanism lies: lengths added up by hand.
import { describe, expect, test } from 'vitest'
import { runOf, shiftedAlong, sizedBy, stretchOf, wayToRoom } from '../../../src/paper/design/room.ts'
import type { Mechanism } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth, gluedPond } from '../shared/designs.ts'
import { RAD } from '../shared/space.ts'

const card = { height: 148, width: 105 }

/** The last of some mechanisms, as the file gives it. */
const last = (...mechanisms: object[]): Mechanism => design(mechanisms).mechanisms.at(-1) as Mechanism

const disc = (more: object = {}) => ({
  id: 'disc',
  kind: 'rider',
  on: 'page/left',
  shape: [
    [10, 20],
    [40, 20],
    [40, 50],
  ],
  glue: [
    [20, 25],
    [35, 25],
    [35, 40],
  ],
  ...more,
})

/** A pond on three walls, with tabs. */
const pond = { ...gluedPond, tab: 5 }

describe('the stretch that a mechanism takes', () => {
  test('of a cut reaches from apex to slit, and as far as the slit leans or bends', () => {
    expect(stretchOf(last(fold('beak', 'gutter', 60, 30, 20)))).toEqual([60, 90])
    expect(stretchOf(last(fold('beak', 'gutter', 60, -30, 20)))).toEqual([30, 60])
    expect(stretchOf(last(fold('beak', 'gutter', 60, 30, 20, { lean: 12 })))).toEqual([60, 102])
    const bent = {
      outline: [
        [5, 96],
        [12, 93],
      ],
    }
    expect(stretchOf(last(fold('beak', 'gutter', 60, 30, 20, bent)))).toEqual([60, 96])
    expect(stretchOf(last(layer('step', 'gutter', 40, 80, 20)))).toEqual([40, 80])
    // Its cuts have no depth, so they cut nothing, and its fold is there all the same.
    expect(stretchOf(last(layer('step', 'gutter', 40, 80, 0)))).toEqual([40, 80])
  })

  test('of a glued V-fold reaches from its apex to the ends of its joints, tabs and all', () => {
    const [from, to] = stretchOf(last(gluedMoth({ base: 60 })))
    expect(from).toBe(60)
    // A joint of 40 at 60 degrees to the gutter: 40 cos 60 along it.
    expect(to).toBeCloseTo(80, 9)
    const [back, front] = stretchOf(last(gluedMoth({ base: 60, toward: -1 })))
    expect(back).toBeCloseTo(40, 9)
    expect(front).toBe(60)
  })

  test('of a platform is that of its walls', () => {
    expect(stretchOf(last(gluedPond))).toEqual([40, 90])
    expect(stretchOf(last(pond))).toEqual([40, 90])
  })

  test('of a piece is its outline, not its crease', () => {
    expect(stretchOf(last(disc()))).toEqual([20, 50])
    expect(stretchOf(last(disc({ along: 7 })))).toEqual([27, 57])
    expect(stretchOf(last(disc({ along: -30 })))).toEqual([-10, 20])
  })
})

describe('the same mechanism farther along', () => {
  test.each([
    ['a cut V-fold', fold('beak', 'gutter', 60, 30, 20, { outline: [[5, 96]] }), 5],
    ['a layer', layer('step', 'gutter', 40, 80, 20), -13],
    ['a glued V-fold', gluedMoth(), 8],
    ['a platform', gluedPond, 3],
    ['a piece', disc({ along: 2 }), 11],
  ])('%s takes as long a stretch, so much farther', (_, m, by) => {
    const before = last(m)
    const after = shiftedAlong(before, by)
    const [a, b] = stretchOf(before)
    const [c, d] = stretchOf(after)
    expect(c).toBeCloseTo(a + by, 9)
    expect(d).toBeCloseTo(b + by, 9)
    // There and back again.
    expect(shiftedAlong(after, -by)).toEqual(before)
  })

  test('only its place has changed', () => {
    const beak = last(fold('beak', 'gutter', 60, 30, 20, { outline: [[5, 96]] }))
    expect(shiftedAlong(beak, 5)).toEqual({ ...beak, apex: 65, outline: [[5, 101]] })
    const moth = last(gluedMoth({ outline: [[20, 44]] }))
    // Its outline is measured from its own ridge, and goes along by itself.
    expect(shiftedAlong(moth, 5)).toEqual({ ...moth, apex: 65 })
    const step = last(layer('step', 'gutter', 40, 80, 20))
    expect(shiftedAlong(step, 5)).toEqual({ ...step, start: 45, end: 85 })
    // Of a piece that no file has completed: where it lies along counts from nought.
    const bare = { ...last(disc()), along: undefined } as unknown as Mechanism
    expect(shiftedAlong(bare, 5)).toMatchObject({ along: 5, across: 0 })
  })
})

describe('the same mechanism larger', () => {
  test('every length is so much longer, angles and tabs are not', () => {
    const moth = last(gluedMoth({ tab: 6, outline: [[20, 44]] }))
    expect(sizedBy(moth, 1.5)).toEqual({
      ...moth,
      apex: 90,
      foot: 60,
      ridge: 60,
      outline: [[30, 66]],
      tab: 6,
    })
    expect(sizedBy(last(pond), 0.5)).toMatchObject({
      start: 20,
      end: 45,
      height: 10,
      left: 15,
      right: 15,
      walls: [-15, 0, 15],
      tab: 5,
    })
    const beak = last(fold('beak', 'gutter', 60, -30, 20, { lean: -4, outline: [[5, 26]] }))
    expect(sizedBy(beak, 2)).toMatchObject({ apex: 120, run: -60, cut: 40, lean: -8, outline: [[10, 52]] })
    expect(sizedBy(last(fold('beak', 'gutter', 60, -30, 20)), 2)).not.toHaveProperty('outline')
  })

  test('its area grows with the square', () => {
    // Half base times height: 30 30 / 2 = 450, and 4 times as much.
    const { shape } = sizedBy(last(disc()), 2) as unknown as { shape: [number, number][] }
    const [a, b, c] = shape as [[number, number], [number, number], [number, number]]
    expect(Math.abs((b[0] - a[0]) * (c[1] - a[1]) - (c[0] - a[0]) * (b[1] - a[1])) / 2).toBe(1800)
  })
})

describe('where a crease or panel runs', () => {
  const made = design(
    [layer('step', 'gutter', 40, 80, 20), gluedMoth({ apex: 90, ridge: 33, foot: 25 })],
    card,
  )

  test('along the card, a mechanism’s crease, or the outline of its panel', () => {
    expect(runOf(made, 'gutter')).toEqual([0, 148])
    expect(runOf(made, 'page/left')).toEqual([0, 148])
    expect(runOf(made, 'step/ridge')).toEqual([0, 40])
    expect(runOf(made, 'moth/ridge')).toEqual([0, 33])
    expect(runOf(made, 'moth/left')).toEqual([0, 25])
    // A platform's halves have no crease of their name: their outline runs as far as they are long.
    expect(runOf(design([gluedPond]), 'pond/left')).toEqual([0, 50])
  })

  test('is nothing where there is none', () => {
    for (const place of ['owl/ridge', 'step/tip', 'step', '']) expect(runOf(made, place)).toBeNull()
  })
})

describe('the shortest way to a free place', () => {
  const at = (start: number, end: number, id = 'step') => layer(id, 'gutter', start, end, 10)
  const way = (m: object, ...others: object[]): number | null => wayToRoom(design(others), last(m))

  test('is none where it is free already', () => {
    expect(way(at(40, 60))).toBe(0)
    expect(way(at(40, 60), at(62, 90, 'other'), at(10, 38, 'third'))).toBe(0)
    // Right from one end of the card to the other.
    expect(way(at(0, 148))).toBe(0)
  })

  test('leaves 2 mm to a neighbour, on the nearer side', () => {
    expect(way(at(40, 60), at(50, 90, 'other'))).toBe(-12)
    expect(way(at(80, 100), at(50, 90, 'other'))).toBe(12)
    expect(way(at(40, 60), at(61, 90, 'other'))).toBe(-1)
    // Both are as far: to end at 48 it goes 12 back, to begin at 72 it goes 32.
    expect(way(at(40, 60), at(50, 70, 'other'))).toBe(-12)
  })

  test('goes past a neighbour where there is no room on this side', () => {
    // Before 30 only 28 are left; behind 70 it begins at 72.
    expect(way(at(25, 55), at(30, 70, 'other'))).toBe(47)
  })

  test('comes back to the card', () => {
    expect(way(at(140, 160))).toBe(-12)
    expect(way({ ...disc(), along: -30 })).toBe(10)
  })

  test('is sought on the same host alone, and not round itself', () => {
    const beak = fold('beak', 'gutter', 30, 80, 40)
    expect(way(at(10, 30), beak, { ...at(5, 20, 'other'), on: 'beak/ridge' })).toBe(-2 - 0)
    const made = design([at(40, 60)])
    expect(wayToRoom(made, made.mechanisms[0] as Mechanism)).toBe(0)
  })

  test('is nothing on a full host, or on none', () => {
    expect(way(at(40, 60), at(10, 138, 'other'))).toBeNull()
    expect(wayToRoom(design([]), { ...last(at(40, 60)), on: 'owl/ridge' })).toBeNull()
    expect(way(at(0, 149))).toBeNull()
  })

  test('on a ridge its own length counts', () => {
    // A wedge of 45 degrees that runs 60: its ridge is as long.
    const beak = fold('beak', 'gutter', 20, 60, 60 * Math.tan(45 * RAD))
    const on = (start: number, end: number) => last(beak, { ...at(start, end), on: 'beak/ridge' })
    expect(wayToRoom(design([beak]), on(50, 65))).toBe(-5)
    expect(wayToRoom(design([beak]), on(30, 60))).toBe(0)
  })
})
