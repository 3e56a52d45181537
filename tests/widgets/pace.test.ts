// How fine a moving picture is painted, by frames counted by hand.
import { expect, test } from 'vitest'
import { FULL, paceAfter } from '../../src/widgets/figures/pace.ts'

const after = (...frames: readonly number[]) => frames.reduce(paceAfter, FULL)

const times = (count: number, took: number): readonly number[] => new Array<number>(count).fill(took)

test('a machine that keeps up paints every dot', () => {
  expect(after(...times(200, 16)).fine).toBe(1)
  expect(after(...times(200, 33)).fine).toBe(1)
})

test('slow frames now and then are let pass', () => {
  expect(after(200, 8, 8, 200, 8, ...times(7, 90), 8, 90).fine).toBe(1)
})

test('eight slow frames in a row make it coarser, eight more once more, and no coarser than half', () => {
  expect(after(...times(7, 34)).fine).toBe(1)
  expect(after(...times(8, 34)).fine).toBe(0.7)
  expect(after(...times(15, 34)).fine).toBe(0.7)
  expect(after(...times(16, 34)).fine).toBe(0.5)
  expect(after(...times(200, 90)).fine).toBe(0.5)
})

test('it does not go to and fro: what is quick again stays as it is', () => {
  expect(after(...times(8, 40), ...times(200, 5)).fine).toBe(0.7)
})

test('a clock that jumps back changes nothing', () => {
  expect(after(...times(9, -50), ...times(9, Number.NaN)).fine).toBe(1)
})
