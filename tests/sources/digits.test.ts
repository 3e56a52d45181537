// Near shut and near flat, where plain formulas lose their digits: against the same closed forms in numbers of 64
// digits, by decimal.js (MIT). Relative errors, for what is nearly nothing must still be right.

import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measure, poseAt } from '../../src/paper/index.ts'
import { design, runs } from '../paper/shared/designs.ts'

const Long = Decimal.clone({ precision: 64 })

const PI = Long.acos(-1)

/** The very number the computer holds, not the short decimal it prints. */
const held = (x: number) => new Long(`0b${x.toString(2)}`)

/** The closed forms of a V-fold cut from the gutter, ridge `run`, slit `cut`, at an opening in degrees. */
function exact(run: number, cut: number, opening: number) {
  const half = held(opening).times(PI).div(360)
  const tangent = held(cut).div(held(run))
  // The ridge at 2 atan(tan a cos(t/2)) from the gutter; side folds by tan(w/2) = cos a tan(t/2).
  const height = tangent.times(half.cos()).atan().times(2).sin().times(held(run))
  const cosine = tangent.pow(2).plus(1).sqrt().pow(-1)
  const fold = cosine.times(half.tan()).atan().times(360).div(PI)
  return {
    height: height.toNumber(),
    rise: height.times(half.sin()).toNumber(),
    fold: fold.toNumber(),
    foldShort: new Long(180).minus(fold).toNumber(),
  }
}

const relative = (a: number, b: number): number => Math.abs(a - b) / Math.abs(b)

const size = fc.double({ min: 5, max: 200, noNaN: true })

/** From a hair's breadth to a billionth of a degree. */
const whisker = fc
  .integer({ min: 0, max: 10 })
  .chain((digits) => fc.double({ min: 1, max: 9.9, noNaN: true }).map((first) => first * 10 ** -digits))

describe.each([
  { near: 'shut', at: (off: number) => off },
  { near: 'flat', at: (off: number) => 180 - off },
])('near $near', ({ at }) => {
  test('a V-fold’s height, rise and side folds are right to the ninth digit', () => {
    fc.assert(
      fc.property(size, size, whisker, (run, cut, off) => {
        const opening = at(off)
        const made = design([{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 10, run, cut }])
        const { creases } = poseAt(made, opening)
        const wanted = exact(run, cut, opening)
        expect(relative(creases['beak/ridge']?.end[2] ?? Number.NaN, wanted.height)).toBeLessThan(1e-9)
        expect(relative(measure(made, opening).tips.beak?.rise ?? Number.NaN, wanted.rise)).toBeLessThan(1e-9)
        const fold = creases['beak/right']?.angle ?? Number.NaN
        if (opening < 90) expect(relative(fold, wanted.fold)).toBeLessThan(1e-9)
        // What is missing to 180 is a difference of two numbers near 180: it cannot be better than their last digit.
        else expect(Math.abs(180 - fold - wanted.foldShort)).toBeLessThan(1e-12)
      }),
      runs(100),
    )
  })
})
