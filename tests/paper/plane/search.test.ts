import { expect, test } from 'vitest'
import { halving, largest, lastGood, summit } from '../../../src/paper/plane/search.ts'
import { lastWhole } from '../../../src/paper/plane/whole.ts'

test('halving finds √2 as the last number whose square is at most 2, from below and from above', () => {
  // Source: the square root of the machine's own arithmetic, IEEE 754.
  const [good, bad] = lastGood((x) => x * x <= 2, 0, 2, 1e-12)
  expect(good).toBeLessThanOrEqual(Math.SQRT2)
  expect(bad).toBeGreaterThanOrEqual(Math.SQRT2)
  expect(bad - good).toBeLessThanOrEqual(1e-12)
  const [above, below] = lastGood((x) => x * x >= 2, 2, 0, 1e-12)
  expect(above).toBeGreaterThanOrEqual(Math.SQRT2)
  expect(above - below).toBeLessThanOrEqual(1e-12)
})

test('halving ends where numbers have no middle any more', () => {
  const [good, bad] = lastGood((x) => x < 1 / 3, 0, 1, 0)
  expect(bad - good).toBeGreaterThan(0)
  expect(bad - good).toBeLessThanOrEqual(Number.EPSILON)
})

test('halving step by step asks about the same places', () => {
  const asked: number[] = []
  const ends = lastGood((x) => asked.push(x) > 0 && x * x <= 2, 0, 2, 1e-3)
  const work = halving(0, 2, 1e-3)
  const yielded: number[] = []
  let step = work.next(false)
  while (!step.done) {
    yielded.push(step.value)
    step = work.next(step.value * step.value <= 2)
  }
  expect(yielded).toEqual(asked)
  expect(step.value).toEqual(ends)
  // Each step halves what is left: 2 / 2^11 is the first below a thousandth.
  expect(yielded).toHaveLength(11)
})

test('the last whole number whose square is at most 1000 is 31, and from above the first whose square is more is 32', () => {
  expect(lastWhole((k) => k * k <= 1000, 0, 1000)).toBe(31)
  expect(lastWhole((k) => k * k > 1000, 1000, 0)).toBe(32)
  expect(lastWhole(() => true, 4, 5)).toBe(4)
  expect(lastWhole(() => false, 4, 9)).toBe(4)
  expect(lastWhole(() => true, 4, 9)).toBe(8)
})

test('a golden section narrows to the summit of x e^-x at 1, of the sine at π/2, and to an end', () => {
  const near = 1e-6
  for (const [f, from, to, at] of [
    [(x: number) => x * Math.exp(-x), 0, 5, 1],
    [Math.sin, 0, Math.PI, Math.PI / 2],
    [Math.exp, 0, 2, 2],
    [(x: number) => -x, 0, 2, 0],
  ] as const) {
    const [low, high] = summit(f, from, to, near)
    expect(high - low).toBeLessThanOrEqual(near)
    // Near a summit a function is flat: its argument is known to half the digits.
    expect(Math.abs((low + high) / 2 - at)).toBeLessThan(1e-6)
  }
})

test('each golden section asks for one value only, and leaves 0.618 of the stretch', () => {
  let asked = 0
  const f = (x: number): number => {
    asked++
    return -((x - 0.3) ** 2)
  }
  summit(f, 0, 1, 1e-3)
  // Source: Kiefer 1953: 0.618034 to the 15th is below a thousandth, to the 14th is not; two values begin it.
  expect(asked).toBe(2 + 15)
})

test('the largest of several summits is found, and the value of an end where none is larger', () => {
  // cos x + cos 3x over -1 to 4: 2 at 0; a lower summit lies at the other end.
  const two = largest((x) => Math.cos(x) + Math.cos(3 * x), -1, 4)
  expect(two.x).toBeCloseTo(0, 6)
  expect(two.value).toBeCloseTo(2, 12)
  expect(largest((x) => x * x, -1, 2)).toEqual({ x: 2, value: 4 })
})
