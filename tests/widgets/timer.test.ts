// The time at the wall, by hand-worked moments.
import { expect, test } from 'vitest'
import { clockText, leftOf, minutesIn, resting, turned } from '../../src/widgets/wall/timer.ts'

test('a time runs down, rests, goes on and ends at nothing', () => {
  const five = resting(5)
  expect(leftOf(five, 1234)).toBe(300_000)
  const running = turned(five, 1000)
  expect(leftOf(running, 1000)).toBe(300_000)
  expect(leftOf(running, 61_000)).toBe(240_000)
  const stopped = turned(running, 61_000)
  expect(leftOf(stopped, 999_000)).toBe(240_000)
  const again = turned(stopped, 100_000)
  expect(leftOf(again, 339_999)).toBe(1)
  expect(leftOf(again, 340_000)).toBe(0)
  expect(leftOf(again, 500_000)).toBe(0)
  expect(turned(again, 500_000)).toEqual({ runs: false, left: 0 })
  expect(turned({ runs: false, left: 0 }, 5)).toEqual({ runs: false, left: 0 })
})

test('a second that has begun is shown whole', () => {
  expect(clockText(300_000)).toBe('5:00')
  expect(clockText(299_001)).toBe('5:00')
  expect(clockText(299_000)).toBe('4:59')
  expect(clockText(9_000)).toBe('0:09')
  expect(clockText(1)).toBe('0:01')
  expect(clockText(0)).toBe('0:00')
})

test('minutes are 1 to 90, and a comma will do', () => {
  expect(minutesIn('1,5')).toBe(1.5)
  expect(minutesIn('90')).toBe(90)
  expect(minutesIn('1')).toBe(1)
  for (const text of ['', ' ', '0', '0.9', '90.1', 'five', '-3', 'NaN', '1e9'])
    expect(minutesIn(text)).toBeNull()
})
