// How fine a moving picture is painted, by frames counted by hand.
import { expect, test } from 'vitest'
import { FULL, paceAfter } from '../../src/widgets/figures/pace.ts'

const after = (...frames: readonly number[]) => frames.reduce(paceAfter, FULL)

test('a machine that keeps up paints every dot', () => {
  expect(after(...new Array<number>(200).fill(16)).fine).toBe(1)
  expect(after(...new Array<number>(200).fill(24)).fine).toBe(1)
})

test('one slow frame now and then is let pass', () => {
  expect(after(200, 8, 8, 200, 8, 90, 90, 90, 8, 90).fine).toBe(1)
})

test('four slow frames in a row make it coarser, four more once more, and no coarser than half', () => {
  expect(after(25, 25, 25).fine).toBe(1)
  expect(after(25, 25, 25, 25).fine).toBe(0.7)
  expect(after(25, 25, 25, 25, 25, 25, 25).fine).toBe(0.7)
  expect(after(25, 25, 25, 25, 25, 25, 25, 25).fine).toBe(0.5)
  expect(after(...new Array<number>(200).fill(90)).fine).toBe(0.5)
})

test('it does not go to and fro: what is quick again stays as it is', () => {
  expect(after(40, 40, 40, 40, ...new Array<number>(200).fill(5)).fine).toBe(0.7)
})

test('a clock that jumps back changes nothing', () => {
  expect(after(-50, Number.NaN, -50, -50, -50).fine).toBe(1)
})
