// How a clicker walks a page: nothing of it is left out, and no stop is passed by.
import fc from 'fast-check'
import { expect, test } from 'vitest'
import { scrolledTo } from '../../src/site/wall-way.ts'

test('the next press goes to the next stop, or by less than a screen', () => {
  expect(scrolledTo([0, 300, 2000], 0, 600, 1)).toBe(300)
  expect(scrolledTo([0, 300, 2000], 300, 600, 1)).toBe(810)
  // A hair beside its place is at its place.
  expect(scrolledTo([0, 300, 2000], 298, 600, 1)).toBe(808)
})

test('back goes to the stop before, or by less than a screen, and never above the page', () => {
  expect(scrolledTo([0, 300, 2000], 300, 600, -1)).toBe(0)
  expect(scrolledTo([0, 300, 2000], 2000, 600, -1)).toBe(1490)
  expect(scrolledTo([100], 100, 600, -1)).toBe(0)
})

test('going on comes by every stop and leaves no line of the page unseen', () => {
  const stops = fc.uniqueArray(fc.integer({ min: 0, max: 9000 }), { minLength: 1, maxLength: 30 })
  fc.assert(
    fc.property(stops, fc.integer({ min: 200, max: 1100 }), (tops, seen) => {
      const last = Math.max(...tops)
      const stood = [0]
      while ((stood.at(-1) as number) < last - 4) {
        const at = stood.at(-1) as number
        const to = scrolledTo(tops, at, seen, 1)
        // What was at the lower edge is still seen.
        expect(to - at).toBeLessThan(seen)
        expect(to).toBeGreaterThan(at)
        stood.push(to)
      }
      for (const top of tops) expect(stood.some((at) => Math.abs(at - top) <= 4)).toBe(true)
    }),
  )
})
