// Near shut and near flat, where plain formulas lose their digits. The height and the rise: against three spheres in
// sixty digits (`lengths.ts`; trilateration, any textbook). The side folds: the degree-4 rule that `v-fold.test.ts`
// holds to other methods, in numbers of 64 digits by decimal.js (MIT); that guards the digits, not the rule.
// Relative errors, for what is nearly nothing must still be right.

import { Decimal } from 'decimal.js'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { measure, poseAt } from '../../src/paper/index.ts'
import { design, runs } from '../paper/shared/designs.ts'
import { fromLengths, sixtyDigits } from './lengths.ts'

const Long = Decimal.clone({ precision: 64 })

const PI = Long.acos(-1)

/** The very number the computer holds, not the short decimal it prints. */
const held = (x: number) => new Long(`0b${x.toString(2)}`)

/** The side folds of a V-fold cut from the gutter, ridge `run`, slit `cut`: tan(w/2) = cos a tan(t/2). Degrees. */
function foldOf(run: number, cut: number, opening: number) {
  const half = held(opening).times(PI).div(360)
  const tangent = held(cut).div(held(run))
  const cosine = tangent.pow(2).plus(1).sqrt().pow(-1)
  const fold = cosine.times(half.tan()).atan().times(360).div(PI)
  return { fold: fold.toNumber(), short: new Long(180).minus(fold).toNumber() }
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
        const wanted = foldOf(run, cut, opening)
        // What is missing to 180 is a float without rounding (Sterbenz 1974).
        const lack = opening < 90 ? { open: opening } : { missing: 180 - opening }
        const spheres = fromLengths(sixtyDigits, made, lack)
        const height = spheres.lift('beak/right', [0, run])?.[2] ?? Number.NaN
        expect(relative(creases['beak/ridge']?.end[2] ?? Number.NaN, height)).toBeLessThan(1e-9)
        const ruled = height * Math.sin((opening * Math.PI) / 360)
        expect(relative(measure(made, opening).tips.beak?.rise ?? Number.NaN, ruled)).toBeLessThan(1e-9)
        const fold = creases['beak/right']?.angle ?? Number.NaN
        if (opening < 90) expect(relative(fold, wanted.fold)).toBeLessThan(1e-9)
        // What is missing to 180 is a difference of two numbers near 180: it cannot be better than their last digit.
        else expect(Math.abs(180 - fold - wanted.short)).toBeLessThan(1e-12)
      }),
      runs(60),
    )
  })
})
