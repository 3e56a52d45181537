// What a file may hold, and how a hand's numbers are brought back to it.
import { expect, test } from 'vitest'
import { change, held, settable, settled } from '../../../src/paper/design/change.ts'
import { fieldsFor, isHoldable, isSetTo } from '../../../src/paper/design/setting.ts'
import type { Design } from '../../../src/paper/index.ts'
import { settingOf } from '../../../src/paper/index.ts'
import { layer } from '../shared/check-designs.ts'
import { design, gluedMoth, vFold } from '../shared/designs.ts'

const beak = design([vFold('beak', 'gutter', 110, -40, 45)])
const moth = design([gluedMoth()])
const strip = design([layer('reed', 'gutter', 40, 90, 20)])

const of = ({ mechanisms }: Design, name: string): number => {
  const [m] = mechanisms
  return m ? settingOf(m, name) : Number.NaN
}

/** With a field as it is given, be it what no file may hold. */
const raw = (made: Design, fields: object): Design =>
  ({ ...made, mechanisms: made.mechanisms.map((m) => ({ ...m, ...fields })) }) as Design

test('a number past either end of its range is brought back to it', () => {
  expect([beak, moth, strip].map(isHoldable)).toEqual([true, true, true])
  for (const [past, back] of [
    [2000, 2000],
    [2000.001, 2000],
    [0, 0],
    [-0.001, 0],
  ] as const) {
    const made = raw(beak, { cut: past })
    expect(isHoldable(made)).toBe(past === back)
    expect(of(settled(made) ?? made, 'cut')).toBe(back)
  }
})

test('what is sound stays the very design', () => {
  for (const made of [beak, moth, strip]) expect(settled(made)).toBe(made)
})

test('a rule that ties two numbers together is kept', () => {
  const made = raw(strip, { end: 30 })
  expect(isHoldable(made)).toBe(false)
  expect(of(settled(made) ?? made, 'end')).toBe(40)
})

test('what is no number cannot be brought back', () => {
  expect(isHoldable(raw(beak, { cut: Number.NaN }))).toBe(false)
  expect(settled(raw(beak, { cut: Number.NaN }))).toBeNull()
})

test('a number that only writes two others at once is not held to its range', () => {
  expect(isHoldable(raw(moth, { base: 400 }))).toBe(true)
  expect(isHoldable(raw(moth, { left: { base: 400, facet: 60 } }))).toBe(false)
})

test('fields are held to their range; no number stays as it was; words go through', () => {
  const [m] = beak.mechanisms
  if (!m) throw new Error('no beak')
  expect(held(m, { cut: 5000, apex: -3, run: 12, title: 'x' })).toEqual({
    cut: 2000,
    apex: 0,
    run: 12,
    title: 'x',
  })
  expect(held(m, { cut: Number.NaN })).toEqual({})
  expect(held(m, { cut: Number.POSITIVE_INFINITY })).toEqual({ cut: 2000 })
  expect(fieldsFor(m, 'cut', Number.NaN)).toEqual({})
  // A wedge of 45 degrees: as long a slit as the run.
  expect(fieldsFor(m, 'wedge', 45).cut).toBeCloseTo(40, 9)
})

test('a setting counts as set but for rounding', () => {
  const [m] = beak.mechanisms
  if (!m) throw new Error('no beak')
  expect(isSetTo(m, 'apex', 110)).toBe(true)
  expect(isSetTo(m, 'apex', 110 + 1e-8)).toBe(true)
  expect(isSetTo(m, 'apex', 110 + 1e-6)).toBe(false)
  expect(() => settingOf(m, 'wing')).toThrow('beak has no wing')
  expect(() => change(beak, 'owl', {})).toThrow('there is no mechanism owl')
  expect(settable(m).map(({ name }) => name)).toEqual(['apex', 'run', 'cut', 'lean', 'wedge'])
})
