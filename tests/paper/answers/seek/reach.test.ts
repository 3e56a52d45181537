// Chains brought to a place: layers, tents and pieces whose tips school geometry tells.
import { describe, expect, test } from 'vitest'
import type { Link, Mark, Seat } from '../../../../src/paper/answers/seek/reach.ts'
import { bring, resized, swayOf, tipOfChain } from '../../../../src/paper/answers/seek/reach.ts'
import type { Mechanism, Vec3 } from '../../../../src/paper/index.ts'
import { fold, layer, tent } from '../../shared/check-designs.ts'
import { A6, design, gluedMoth } from '../../shared/designs.ts'
import { apart, RAD } from '../../shared/space.ts'

/** The gutter's frame at an opening, as the world is defined: the origin at the reader's end, z out of the card. */
const gutterAt = (opening: number): Float64Array => {
  const [s, c] = [Math.sin((opening / 2) * RAD), Math.cos((opening / 2) * RAD)]
  return Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, s, c)
}

const seatAt = (...openings: number[]): Seat => ({ card: A6, frames: openings.map(gutterAt) })

const link = (m: object, more: Partial<Link> = {}): Link => ({
  m: design([m]).mechanisms[0] as Mechanism,
  crease: 0,
  side: 'right',
  ...more,
})

const step = layer('step', 'gutter', 40, 80, 20)

const close = (found: Vec3 | null | undefined, wanted: Vec3, near = 1e-9) =>
  expect(apart(found ?? [Number.NaN, 0, 0], wanted)).toBeLessThan(near)

describe('the tip of a chain', () => {
  test('of a layer is as far out as both its walls lead', () => {
    // 20 along either page: 2 x 20 cos(t/2) over the gutter, half way between its ends.
    for (const t of [0, 60, 90, 150])
      close(tipOfChain([link(step)], seatAt(t)), [0, 60, 40 * Math.cos((t / 2) * RAD)])
    // 10 along the left page and 30 along the right one.
    const uneven = link(layer('step', 'gutter', 40, 80, 10, 30))
    close(tipOfChain([uneven], seatAt(90)), [20 * Math.SQRT1_2, 60, 40 * Math.SQRT1_2])
  })

  test('of a layer on a layer leads back, or on beside it', () => {
    // The ridge of a layer is open as far as the gutter is, from the other side: what is cut on it leads back.
    const top = link(layer('top', 'gutter', 5, 25, 8))
    close(tipOfChain([link(step), top], seatAt(90)), [0, 40 + 15, (40 - 16) * Math.SQRT1_2])
    // On its right fold (the third of ridge, left, right), which lies 20 along the right page: between wall and page beyond.
    const side = link(layer('top', 'gutter', 5, 25, 8), { crease: 2 })
    const [x, y, z] = tipOfChain([link(step), side], seatAt(90)) as Vec3
    // The wall leads to the left page's way, (-1, 1)/sqrt 2, and the page on, (1, 1)/sqrt 2: 8 along both.
    close([x, y, z], [20 * Math.SQRT1_2, 55, (20 + 16) * Math.SQRT1_2])
  })

  test('of a piece is its farthest corner, on the panel of the side that is asked for', () => {
    const disc = {
      id: 'disc',
      kind: 'rider',
      on: 'page/right',
      shape: [
        [10, 20],
        [50, 30],
        [10, 40],
      ],
      glue: [
        [15, 25],
        [25, 28],
        [15, 35],
      ],
    }
    const at = (side: 'left' | 'right', t: number) => tipOfChain([link(disc, { side })], seatAt(t))
    close(at('right', 90), [50 * Math.SQRT1_2, 30, 50 * Math.SQRT1_2])
    close(at('left', 90), [-50 * Math.SQRT1_2, 30, 50 * Math.SQRT1_2])
    close(at('left', 180), [-50, 30, 0])
    close(at('right', 60), [25, 30, 50 * Math.cos(30 * RAD)])
  })

  test('is none past a stop, nor of sizes that cannot be', () => {
    // Feet of 30 and walls of 20 are in one line at 83.6 degrees.
    const tight = link(tent({ leftWall: 20, rightWall: 20 }))
    close(tipOfChain([tight], seatAt(0)), [0, 60, 50])
    expect(tipOfChain([tight], seatAt(84))).toBeNull()
    expect(tipOfChain([tight], seatAt(83))).not.toBeNull()
    const backwards = { ...link(step).m, start: 90 } as unknown as Mechanism
    expect(tipOfChain([{ m: backwards, crease: 0, side: 'right' }], seatAt(90))).toBeNull()
  })
})

describe('bringing a tip to its place', () => {
  const mark = (at: Vec3, opening = 90): Mark => ({ opening, at })

  test('a layer becomes as deep as its height over the gutter asks, in whole mm', () => {
    // 2 d cos 45 = 30 sqrt 2: d = 30; its middle from 60 to 67: both ends go 7 along.
    const found = bring([link(step)], seatAt(90), [mark([0, 67, 30 * Math.SQRT2])], 1)
    expect(found?.links[0]?.m).toMatchObject({ start: 47, end: 87, left: 30, right: 30 })
    expect(found?.miss).toBeLessThan(0.05)
    expect(found?.worst).toBe(found?.miss)
  })

  test('it is made uneven for a place to one side', () => {
    // a left and b right: x = (b - a)/sqrt 2, z = (a + b)/sqrt 2: b - a = 10, a + b = 50.
    const found = bring([link(step)], seatAt(90), [mark([10 / Math.SQRT2, 60, 50 / Math.SQRT2])], 1)
    expect(found?.links[0]?.m).toMatchObject({ left: 20, right: 30, start: 40, end: 80 })
  })

  test('sizes are as coarse as the place allows', () => {
    // 2 d cos 45 for d = 24.3: whole mm are 0.3 off in d, 0.42 in height; halves 0.2 and 0.28; tenths none.
    const at = mark([0, 60, 24.3 * Math.SQRT2])
    const depth = (within: number) => {
      const m = bring([link(step)], seatAt(90), [at], within)?.links[0]?.m as unknown as { left: number }
      return m.left
    }
    expect(depth(0.5)).toBe(24)
    expect(depth(0.3)).toBe(24.5)
    expect(depth(0.1)).toBe(24.3)
    // Nearer than a tenth it is not: then that is given, with its miss.
    expect(depth(1e-6)).toBe(24.3)
  })

  test('sides that must match keep matching', () => {
    // Feet and walls: feet 30, walls w: z = 30 cos 45 + sqrt(w² - 30² sin² 45); w = 44: 21.2 + 38.5.
    const z = 30 * Math.SQRT1_2 + Math.sqrt(44 ** 2 - 450)
    const found = bring([link(tent())], seatAt(90), [mark([0, 60, z])], 1)
    const m = found?.links[0]?.m as unknown as Record<string, number>
    const side = (name: 'left' | 'right') => (m[`${name}Foot`] ?? 0) + (m[`${name}Wall`] ?? 0)
    expect(side('left')).toBeCloseTo(side('right'), 9)
    expect(found?.miss).toBeLessThanOrEqual(1)
    for (const name of ['leftFoot', 'rightFoot', 'leftWall', 'rightWall'])
      expect(Math.abs(Math.round(m[name] as number) - (m[name] as number))).toBeLessThan(1e-9)
    // Also to a place where its halves are unlike.
    const aside = bring([link(tent())], seatAt(90), [mark([8, 60, 55])], 1)
    const n = aside?.links[0]?.m as unknown as Record<string, number>
    expect((n.leftFoot ?? 0) + (n.leftWall ?? 0)).toBeCloseTo((n.rightFoot ?? 0) + (n.rightWall ?? 0), 6)
    expect(aside?.miss).toBeLessThanOrEqual(1)
  })

  test('no length goes beyond the card, and then the place is missed', () => {
    const found = bring([link(step)], seatAt(90), [mark([0, 60, 400])], 1)
    const m = found?.links[0]?.m
    // As long as the card is high, 148: 2 x 148 cos 45 = 209.3 of 400.
    expect(m).toMatchObject({ left: 148, right: 148 })
    expect(found?.miss).toBeCloseTo(400 - 296 * Math.SQRT1_2, 1)
  })

  test('of several places the worst is told, and all are come near to', () => {
    // 40 cos(t/2) over the gutter at 60 and 120 degrees: 34.6 and 20 for a depth of 20; 26 and 15 for 15.
    const marks = [mark([0, 60, 30 * Math.cos(30 * RAD)], 60), mark([0, 60, 15], 120)]
    const found = bring([link(step)], seatAt(60, 120), marks, 1)
    expect(found?.links[0]?.m).toMatchObject({ left: 15, right: 15 })
    expect(found?.worst).toBeLessThan(0.1)
    // Places that no layer goes through: 30 at both. The nearer it comes to one, the farther off the other.
    const both = bring([link(step)], seatAt(60, 120), [mark([0, 60, 30], 60), mark([0, 60, 30], 120)], 1)
    expect(both?.worst).toBeGreaterThan(5)
    expect(both?.worst).toBeGreaterThanOrEqual(both?.miss ?? 0)
    expect(both?.miss).toBeGreaterThan(1)
  })

  test('what is stopped before its place gives nothing', () => {
    const tight = link(tent({ leftWall: 20, rightWall: 20 }))
    expect(bring([tight], seatAt(120), [mark([0, 60, 20], 120)], 1)).toBeNull()
  })
})

describe('the same tip with other sizes', () => {
  const mark: Mark = { opening: 90, at: [0, 0, 0] }

  test('what does not move it is scaled, in whole mm, and the rest stays', () => {
    // A V-fold's joints may be longer or shorter: its tip is on the ridge.
    const moth = link(gluedMoth({ foot: 41, tab: 6 }))
    const found = resized([moth], seatAt(90), [mark], 0.7)[0]?.m
    // 41 x 0.7 = 28.7, and so 29. The tab is no size of the piece.
    expect(found).toEqual({ ...moth.m, foot: 29 })
    close(
      tipOfChain(resized([moth], seatAt(90), [mark], 1.5), seatAt(90)),
      tipOfChain([moth], seatAt(90)) as Vec3,
    )
    // No longer than the card: 148.
    expect(resized([link(gluedMoth({ foot: 120 }))], seatAt(90), [mark], 1.5)[0]?.m).toMatchObject({
      foot: 148,
    })
    // The slit of a cut V-fold turns its ridge: nothing is free but how far the slit leans, which is nothing here.
    const beak = link(fold('beak', 'gutter', 100, -40, 30))
    expect(resized([beak], seatAt(90), [mark], 1.5)[0]?.m).toEqual(beak.m)
    // A stopped one stays as it is.
    const tight = [link(tent({ leftWall: 20, rightWall: 20 }))]
    expect(resized(tight, seatAt(120), [mark], 1.5)).toEqual(tight)
  })
})

describe('how far a millimetre moves a tip', () => {
  test('of a layer: as far as its depth is off, along the page', () => {
    expect(swayOf([link(step)], seatAt(90))).toBeCloseTo(1, 9)
    expect(swayOf([link(step)], seatAt(30))).toBeCloseTo(1, 9)
  })

  test('of a piece turned about its glue: by a degree at the length of its arm', () => {
    const far = {
      id: 'arm',
      kind: 'rider',
      on: 'page/right',
      shape: [
        [0, 60],
        [100, 70],
        [0, 80],
      ],
      glue: [
        [-1, 69],
        [1, 69],
        [1, 71],
        [-1, 71],
      ],
      size: 101,
    }
    // 1 mm across or along, or 1 degree about (0, 70): the corner is 100 off,
    // drawn 101 long instead of sqrt(100² + 10²): it goes 2 x 100 x 101 / 100.5 sin(1/2 degree).
    expect(swayOf([link(far)], seatAt(90))).toBeCloseTo(
      (200 * 101 * Math.sin(0.5 * RAD)) / Math.hypot(100, 10),
      4,
    )
  })

  test('of what is stopped is not told', () => {
    expect(swayOf([link(tent({ leftWall: 20, rightWall: 20 }))], seatAt(120))).toBe(0)
  })
})
