// Two folds that are each other's mirror images, by mirroring: the ridge is the host mirrored in the plane of both folds.
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../../../src/paper/index.ts'
import { mirroredShape, placeMirrored } from '../../../../src/paper/mechanisms/shared/mirrored.ts'
import { mirroredTurns } from '../../../../src/paper/mechanisms/shared/mirrored-turns.ts'
import { uprightFrame } from '../../../../src/paper/plane/frame.ts'
import { apart, crossOf, dotOf, minus, plus, RAD, times, unit } from '../../shared/space.ts'

const hostAt = (w: number): Float64Array => {
  const frame = uprightFrame()
  frame[12] = Math.sin((w / 2) * RAD)
  frame[13] = w === 180 ? 0 : Math.cos((w / 2) * RAD)
  return frame
}

const part = (f: Float64Array, k: number): Vec3 => [f[k] as number, f[k + 1] as number, f[k + 2] as number]

const place = (shape: Parameters<typeof placeMirrored>[0], w: number) => {
  const out = [0, 1, 2].map(() => new Float64Array(14))
  expect(placeMirrored(shape, hostAt(w), out)).toBe(true)
  return out as [Float64Array, Float64Array, Float64Array]
}

describe('the shape', () => {
  test('has the direction of its fold line, of length 1', () => {
    expect(mirroredShape(10, 1, 5, 3, 4)).toEqual({ from: 10, toward: 1, cut0: 5, cos: 0.6, sin: 0.8 })
    expect(mirroredShape(10, -1, 0, -30, 40)).toMatchObject({ toward: -1, cut0: 0, cos: -0.6, sin: 0.8 })
    expect(mirroredShape(0, 1, 5, 7, 0)).toMatchObject({ cos: 1, sin: 0 })
  })

  test('of no length runs along the host, and square to it is square to the last digit', () => {
    expect(mirroredShape(0, 1, 5, 0, 0)).toMatchObject({ cos: 1, sin: 0 })
    expect(mirroredShape(0, 1, 5, 0, 7)).toMatchObject({ cos: 0, sin: 1 })
    expect(mirroredShape(0, 1, 5, 1e-200, 7)).toMatchObject({ cos: 0, sin: 1 })
    expect(mirroredShape(0, 1, 5, 1e-100, 7).cos).toBeGreaterThan(0)
    // The smallest floats keep their direction.
    const tiny = mirroredShape(0, 1, 5, 3e-310, 4e-310)
    expect(tiny.cos).toBeCloseTo(0.6, 9)
    expect(tiny.sin).toBeCloseTo(0.8, 9)
  })
})

describe.each([
  [10, 1, 6, 3, 4],
  [10, -1, 6, 3, 4],
  [20, 1, 0, 1, 2],
  [20, 1, 15, 5, 0],
  [5, -1, 8, -2, 3],
] as const)('from %d on, toward %d, cut %d, by (%d, %d)', (from, toward, cut0, outward, across) => {
  const shape = mirroredShape(from, toward, cut0, outward, across)

  test.each([40, 90, 150])(
    'folds lie on their panels and the ridge is the host mirrored, at %d degrees',
    (w) => {
      const [ridge, left, right] = place(shape, w)
      const [s, c] = [Math.sin((w / 2) * RAD), Math.cos((w / 2) * RAD)]
      const along: Vec3 = [0, toward, 0]
      const fold = (side: 1 | -1) => {
        const page: Vec3 = [side * s, 0, c]
        return {
          at: plus([0, from, 0], times(page, cut0)),
          way: unit(plus(times(along, shape.cos), times(page, shape.sin))),
        }
      }
      for (const [found, side] of [
        [left, -1],
        [right, 1],
      ] as const) {
        const { at, way } = fold(side)
        expect(apart(part(found, 0), at)).toBeLessThan(1e-9)
        expect(apart(part(found, 6), way)).toBeLessThan(1e-9)
        for (const k of [3, 9]) {
          expect(Math.hypot(...part(found, k))).toBeCloseTo(1, 9)
          expect(dotOf(part(found, k), way)).toBeCloseTo(0, 9)
        }
        expect(dotOf(part(found, 3), part(found, 9))).toBeCloseTo(0, 9)
      }
      // The plane through both folds, its normal along the middle plane x = 0.
      const [a, b] = [fold(1), fold(-1)]
      const across2: Vec3 = cut0 === 0 ? crossOf(a.way, b.way) : crossOf(a.way, minus(a.at, b.at))
      const normal = unit(across2)
      const mirror = (p: Vec3): Vec3 => minus(p, times(normal, 2 * dotOf(minus(p, a.at), normal)))
      const turned = (v: Vec3): Vec3 => minus(v, times(normal, 2 * dotOf(v, normal)))
      expect(apart(part(ridge, 0), mirror([0, from, 0]))).toBeLessThan(1e-9)
      expect(apart(part(ridge, 6), turned(along))).toBeLessThan(1e-9)
      // As open as the host, and the folds by the multiplier of a degree-4 vertex.
      expect([ridge[12], ridge[13]]).toEqual([hostAt(w)[12], hostAt(w)[13]])
      for (const found of [left, right])
        expect(Math.atan2(found[12] as number, found[13] as number)).toBeCloseTo(
          Math.atan(Math.tan((w / 2) * RAD) * shape.cos),
          9,
        )
    },
  )
})

test('folds square to their host never turn, flat as at any other opening', () => {
  const shape = mirroredShape(10, 1, 6, 0, 4)
  const [nearly, flat] = [place(shape, 180 - 1e-7), place(shape, 180)]
  flat.forEach((frame, k) => {
    for (let i = 0; i < 14; i++) expect(frame[i]).toBeCloseTo(nearly[k]?.[i] as number, 6)
  })
  expect([flat[1][12], flat[1][13]]).toEqual([0, 1])
  const out = new Float64Array(6).fill(9)
  mirroredTurns(shape.cos, 0, Math.PI, out)
  expect([...out]).toEqual([1, 0, 0, 0, 0, 0])
})

test('how fast folds turn at one opening is the derivative of their angle', () => {
  // w = 2 atan(c tan(t/2)): dw/dt = c / q, and its derivative c (1 - c²) sin t / (2 q²), q = cos² + c² sin² of half.
  const shape = mirroredShape(0, 1, 0, 3, 4)
  for (const t of [0.2, 1, 2, 3]) {
    const out = new Float64Array(6)
    mirroredTurns(shape.cos, t, t, out)
    const angle = (x: number) => 2 * Math.atan(0.6 * Math.tan(x / 2))
    const h = 1e-4
    expect(out[2]).toBeCloseTo((angle(t + h) - angle(t - h)) / (2 * h), 6)
    expect(out[3]).toBeCloseTo(Math.abs((angle(t + h) - 2 * angle(t) + angle(t - h)) / (h * h)), 4)
    expect([out[4], out[5]]).toEqual([out[2], out[3]])
    expect([out[0], out[1]]).toEqual([1, 0])
  }
  // Over a stretch both are taken where they are largest: the rate at its end, the change between.
  const out = new Float64Array(6)
  mirroredTurns(shape.cos, 0.5, 2.5, out)
  const q = Math.cos(1.25) ** 2 + (0.6 * Math.sin(1.25)) ** 2
  expect(out[2]).toBeCloseTo(0.6 / q, 9)
  expect(out[3]).toBeCloseTo((0.6 * 0.64) / (2 * q * q), 9)
})
