// A piece stuck on a face: where it lies when it is shifted, turned and scaled, in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { kindOf, parseDesign, settingOf } from '../../../src/paper/index.ts'
import type { Rider } from '../../../src/paper/mechanisms/rider.ts'
import { rider } from '../../../src/paper/mechanisms/rider.ts'

/** A right triangle of 30, 40 and 50 mm; the middle of its glue is at (12, 6). */
const star: Rider = {
  id: 'star',
  kind: 'rider',
  on: 'page/right',
  shape: [
    [0, 0],
    [30, 0],
    [30, 40],
  ],
  glue: [
    [10, 4],
    [14, 4],
    [14, 8],
    [10, 8],
  ],
}

const near = (found: readonly Flat[] | undefined, wanted: readonly Flat[]): void => {
  expect(found).toHaveLength(wanted.length)
  found?.forEach((p, k) => {
    expect(p[0]).toBeCloseTo(wanted[k]?.[0] ?? Number.NaN, 9)
    expect(p[1]).toBeCloseTo(wanted[k]?.[1] ?? Number.NaN, 9)
  })
}

const lies = (more: Partial<Rider> = {}) => {
  const { panels, glue, pieces, tip, fromBack } = rider.build({ ...star, ...more })
  return { shape: panels[0]?.outline, glue: glue?.[0]?.outline, piece: pieces?.[0]?.outline, tip, fromBack }
}

describe('a piece stuck on a face', () => {
  test('lies where it is drawn', () => {
    near(lies().shape, star.shape)
    near(lies().glue, star.glue)
    near(lies().piece, star.shape)
  })

  test('is shifted with its glue', () => {
    const { shape, glue } = lies({ across: 5, along: -2 })
    near(shape, [
      [5, -2],
      [35, -2],
      [35, 38],
    ])
    near(glue?.slice(0, 1), [[15, 2]])
  })

  test('is turned about the middle of its glue, from across to along', () => {
    // (0, 0) is (-12, -6) from the middle: a quarter turn takes that to (6, -12).
    const { shape, glue } = lies({ turn: 90 })
    near(shape, [
      [18, -6],
      [18, 24],
      [-22, 24],
    ])
    near(glue, [
      [14, 4],
      [14, 8],
      [10, 8],
      [10, 4],
    ])
  })

  test('is scaled to its longest way across, and its glue keeps its size', () => {
    const { shape, glue } = lies({ size: 100 })
    near(shape, [
      [-12, -6],
      [48, -6],
      [48, 74],
    ])
    near(glue, star.glue)
    near(lies({ size: 50 }).shape, star.shape)
    expect(settingOf({ ...star }, 'size')).toBeCloseTo(50, 9)
    // The longest way may be between any two corners.
    const square: Partial<Rider> = {
      shape: [
        [0, 0],
        [6, 0],
        [6, 8],
        [0, 8],
      ],
    }
    expect(settingOf({ ...star, ...square } as Rider, 'size')).toBeCloseTo(10, 9)
    // A piece of no size cannot be scaled, and says at least a millimetre.
    const dot: Partial<Rider> = {
      shape: [
        [3, 3],
        [3, 3],
        [3, 3],
      ],
    }
    near(lies({ ...dot, size: 10 }).shape, [
      [3, 3],
      [3, 3],
      [3, 3],
    ])
    expect(settingOf({ ...star, ...dot } as Rider, 'size')).toBe(1)
  })

  test('has its tip farthest from the crease as it is drawn, however it is turned', () => {
    expect(lies().tip).toEqual({ crease: 'host', along: 0, across: 30 })
    // The first of two as far: corner (30, 0), turned to (18, 24).
    const { tip } = lies({ turn: 90 })
    expect(tip.across).toBeCloseTo(18, 9)
    expect(tip.along).toBeCloseTo(24, 9)
  })

  test('carries what is drawn on it along', () => {
    const whole = { across: 0, along: 0, turn: 0, size: 50, ...star }
    const at = (more: Partial<Rider>, p: Flat) => rider.carries?.(whole, { ...whole, ...more })?.(p)
    expect(rider.carries?.(whole, { ...whole })).toBeNull()
    expect(rider.carries?.(whole, { ...whole, face: 'back' })).toBeNull()
    expect(at({ across: 5, along: -2 }, [1, 2])).toEqual([6, 0])
    // About (12, 6): (0, 0) is (-12, -6) off it, and a quarter turn takes that to (6, -12).
    expect(at({ turn: 90 }, [0, 0])).toEqual([18, -6])
    expect(at({ turn: -90 }, [0, 0])).toEqual([6, 18])
    expect(at({ size: 100 }, [0, 0])).toEqual([-12, -6])
    expect(at({ size: 25 }, [0, 0])).toEqual([6, 3])
    expect(at({ size: 100, turn: 90, along: 1 }, [0, 0])).toEqual([24, -17])
    // Kept to a ten-thousandth: 1/3 across.
    expect(at({ across: 1 / 3 }, [0, 0])).toEqual([0.3333, 0])
    expect(at({ across: 2 / 3 }, [0, 0])).toEqual([0.6667, 0])
  })

  test('is stuck on the front unless it says the back', () => {
    expect(lies().fromBack).toBe(false)
    expect(lies({ face: 'back' }).fromBack).toBe(true)
    expect(rider.build(star).glue?.[0]?.face).toBe('front')
    expect(rider.build({ ...star, face: 'back' }).glue?.[0]?.face).toBe('back')
  })

  test('is dragged by the middle of its glue', () => {
    const [handle] = rider.handles
    expect(handle?.at(star)).toEqual([12, 6])
    expect(handle?.at({ ...star, across: 3, along: 4 })).toEqual([15, 10])
    expect(handle?.drag(star, [15, 10])).toEqual({ across: 3, along: 4 })
  })

  test('needs three corners, and its glue as many', () => {
    const file = (more: object) => () =>
      parseDesign({
        hingebook: 1,
        title: 'Star',
        card: { width: 105, height: 148 },
        mechanisms: [{ ...star, ...more }],
      })
    expect(file({})).not.toThrow()
    const two = star.shape.slice(0, 2)
    expect(file({ shape: two })).toThrow('must hold at least 3 points, not 2')
    expect(file({ glue: two })).toThrow('must hold at least 3 points, not 2')
    expect(kindOf(star).limits?.(star)).toBeNull()
  })
})
