// A cover that lies round a thick stack is scored twice. Layers counted by hand; the rule itself is common practice,
// no source.
import { expect, test } from 'vitest'
import { spineOf, spineSays } from '../../src/making/spine.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { dummy } from '../sheet/designs.ts'

/** A folded card of this caliper, mm: its two pages lie in the cover. */
const plain = (caliper: number, cover = true) =>
  parseDesign({
    hingebook: 1,
    title: 'Moon',
    card: { width: 70, height: 100, caliper, ...(cover ? { cover: true } : {}) },
    mechanisms: [],
  })

test('by what lies in it, to the next half millimetre', () => {
  expect(spineOf(plain(0.3))).toBe(0)
  // Two pages of 0.4: 0.8 mm.
  expect(spineOf(plain(0.4))).toBe(1)
  expect(spineOf(plain(0.5))).toBe(1)
  expect(spineOf(plain(0.39))).toBe(0)
})

test('not where there is no cover', () => {
  expect(spineOf(plain(0.5, false))).toBe(0)
  expect(spineSays(plain(0.5, false))).toBe('')
})

test('and says so as a maker reads it', () => {
  expect(spineSays(plain(0.5))).toBe(
    'Score the cover twice, 1\u00a0mm apart, its middle between the two: the shut card needs room. ',
  )
})

test('of the owl, whose body and wings lie in it too', () => {
  const owl = dummy('owl')
  // Two pages, the body's two halves and a wing folded once on each: more than one and a half times the pages.
  expect(spineOf(owl)).toBeGreaterThan(4 * owl.card.caliper)
})
