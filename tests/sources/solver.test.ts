// Poses found from lengths alone, by a solver that knows nothing of folds: Levenberg-Marquardt least squares,
// ml-levenberg-marquardt (MIT). Each panel is rigid because its corners keep their distances; that is all.
import fc from 'fast-check'
import { levenbergMarquardt } from 'ml-levenberg-marquardt'
import { expect, test } from 'vitest'
import type { Design, Vec3 } from '../../src/paper/index.ts'
import { poseAt } from '../../src/paper/index.ts'
import { designs, ladder, runs } from '../paper/shared/designs.ts'
import { apart } from '../paper/shared/space.ts'
import { placeOf, strung } from './strings.ts'

/** Two methods agree to this, mm. */
const AGREED = 1e-6

/** The corners of the open pages: trigonometry of one angle, no more. */
function pagesAt({ width, height }: { width: number; height: number }, opening: number): Vec3[] {
  const half = (opening * Math.PI) / 360
  const [x, z] = [width * Math.sin(half), width * Math.cos(half)]
  return [
    [0, 0, 0],
    [0, height, 0],
    [-x, 0, z],
    [x, 0, z],
  ]
}

/** Solves for the free knots from a start that is off by up to a tenth of the smallest part. */
function solved(made: Design, opening: number, push: readonly number[]) {
  const net = strung(made.card, made.mechanisms)
  const pages = pagesAt(made.card, opening)
  const kernel = poseAt(made, opening)
  const knotsFrom = (flat: readonly number[]): Vec3[] => [
    ...pages,
    ...net.free.map((_, k): Vec3 => flat.slice(3 * k, 3 * k + 3) as Vec3),
  ]
  // The smallest part decides: a larger push could turn it over, and the other branch solves as well.
  const size = Math.min(
    ...made.mechanisms.flatMap(({ id }) => {
      const [ridge, fold] = [kernel.creases[`${id}/ridge`], kernel.creases[`${id}/right`]]
      const tip = ridge?.end as Vec3
      return [apart(tip, fold?.end as Vec3), apart(tip, ridge?.start as Vec3)]
    }),
  )
  const start = net.free.flatMap(({ crease, end }, k) =>
    (kernel.creases[crease]?.[end] ?? []).map(
      (value, i) => value + 0.1 * size * (push[(3 * k + i) % push.length] as number),
    ),
  )
  const { parameterValues } = levenbergMarquardt(
    { x: net.strings.map((_, k) => k), y: net.strings.map(({ length }) => length) },
    (flat) => {
      const knots = knotsFrom(flat)
      const lengths = net.strings.map(({ a, b }) => apart(placeOf(a, knots), placeOf(b, knots)))
      return (k) => lengths[k] as number
    },
    {
      initialValues: start,
      centralDifference: true,
      gradientDifference: 1e-5,
      improvementThreshold: 1e-15,
      errorTolerance: 1e-20,
      maxIterations: 60,
    },
  )
  const knots = knotsFrom(parameterValues)
  const off = Object.entries(net.ends).flatMap(([name, ends]) =>
    ends.map((end, k) => {
      const record = kernel.creases[name]
      return apart(placeOf(end, knots), (k === 0 ? record?.start : record?.end) ?? [Number.NaN, 0, 0])
    }),
  )
  const moved = Math.max(0, ...start.map((value, k) => Math.abs(value - (parameterValues[k] as number))))
  return { off: Math.max(...off), moved }
}

const push = fc.array(fc.double({ min: -1, max: 1, noNaN: true }), { minLength: 18, maxLength: 18 })

const sizes = fc.constantFrom(
  { width: 297, height: 420, caliper: 0.25 },
  { width: 420, height: 297, caliper: 0.25 },
  { width: 105, height: 148, caliper: 0.25 },
)

const open = fc.double({ min: 25, max: 150, noNaN: true })

test('the solver, pushed off by a tenth, comes back to the pose of every rung of the ladder', () => {
  const pushed = Array.from({ length: 18 }, (_, k) => Math.sin(3 * k + 1))
  for (const { design: made } of ladder.slice(1)) {
    const { off, moved } = solved(made, 80, pushed)
    expect(off).toBeLessThan(AGREED)
    expect(moved).toBeGreaterThan(0.1)
  }
})

test('one mechanism of any kind on the gutter stands where the solver puts it', () => {
  fc.assert(
    fc.property(
      designs({ most: 1, steepest: 60, parts: [0.2, 0.7], card: sizes }),
      open,
      push,
      (made, opening, off) => {
        expect(solved(made, opening, off).off).toBeLessThan(AGREED)
      },
    ),
    runs(300),
  )
})

test('so do three, on one another’s creases', () => {
  fc.assert(
    fc.property(
      designs({ chain: true, depth: 3, steepest: 55, parts: [0.25, 0.7], card: sizes }),
      open,
      push,
      (made, opening, off) => {
        expect(solved(made, opening, off).off).toBeLessThan(AGREED)
      },
    ),
    runs(200),
  )
})
