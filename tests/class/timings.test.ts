import { expect, test } from 'vitest'
import { shifted, startsOf } from '../../src/class/timings.ts'

test('a minute goes from one part to its neighbour, and the whole stays as long', () => {
  expect(shifted([5, 5, 20], 0, 1)).toEqual([6, 4, 20])
  expect(shifted([5, 5, 20], 1, -3)).toEqual([5, 2, 23])
  expect(shifted([5, 5, 20], 1, 2.4)).toEqual([5, 7, 18])
})

test('no part becomes shorter than a minute', () => {
  expect(shifted([5, 5, 20], 0, 40)).toEqual([9, 1, 20])
  expect(shifted([5, 5, 20], 0, -40)).toEqual([1, 9, 20])
  expect(shifted([1, 1], 0, 1)).toEqual([1, 1])
})

test('the last part has no neighbour to take from', () => {
  const minutes = [5, 5]
  expect(shifted(minutes, 1, 1)).toBe(minutes)
})

test('each part begins where those before it end', () => {
  expect(startsOf([5, 7, 20])).toEqual([0, 5, 12])
})
