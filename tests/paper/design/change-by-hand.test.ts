// What a change of one number moves along, and what it leaves: shared slits, choices and letters that cannot be shown.
import { describe, expect, test } from 'vitest'
import { change, settled } from '../../../src/paper/design/change.ts'
import { isSetTo } from '../../../src/paper/design/setting.ts'
import { plainText, strayIn, visibleText } from '../../../src/paper/design/text.ts'
import type { Mechanism } from '../../../src/paper/index.ts'
import { jointsOf, modelOf } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

describe('of two beaks', () => {
  // Each on one slit: apexes at 10 and 60 with a slit at 40, and at 90 and 140 with one at 120.
  const made = design([
    fold('a', 'gutter', 60, -20, 25),
    fold('b', 'gutter', 10, 30, 25),
    fold('c', 'gutter', 140, -20, 25),
    fold('d', 'gutter', 90, 30, 25),
  ])

  test.each([
    ['a', 'b'],
    ['b', 'a'],
    ['c', 'd'],
    ['d', 'c'],
  ])('a longer slit of %s is one of %s, and of nobody else', (id, twin) => {
    const next = change(made, id, { cut: 30 })
    for (const m of next.mechanisms) {
      const before = made.mechanisms.find((one) => one.id === m.id)
      if (m.id === id || m.id === twin) expect(m).toEqual({ ...before, cut: 30 })
      else expect(m).toBe(before)
    }
  })

  test('a slit that goes up the gutter takes the other half’s run along, and leaves its apex', () => {
    const next = change(made, 'a', { run: -15 })
    expect(next.mechanisms[0]).toMatchObject({ apex: 60, run: -15 })
    expect(next.mechanisms[1]).toMatchObject({ apex: 10, run: 35 })
  })
})

test('a number is set where it is so but for rounding, in its last digits', () => {
  const [m] = design([layer('lamp', 'gutter', 20, 60, 30)]).mechanisms as unknown as [Mechanism]
  expect(isSetTo(m, 'end', 60)).toBe(true)
  expect(isSetTo(m, 'end', 60 + 5e-8)).toBe(true)
  expect(isSetTo(m, 'end', 60 + 7e-8)).toBe(false)
  expect(isSetTo(m, 'end', 60 - 7e-8)).toBe(false)
  expect(isSetTo(m, 'left', 30)).toBe(true)
  expect(isSetTo(m, 'left', -30)).toBe(false)
})

test('what is past its range is brought back to its end', () => {
  const made = design([layer('lamp', 'gutter', 20, 60, 30)])
  expect(settled(change(made, 'lamp', { left: -5 }))?.mechanisms[0]).toMatchObject({ left: 0, right: 30 })
  expect(settled(made)).toBe(made)
  // An end before its start comes to it.
  expect(settled(change(made, 'lamp', { end: 10 }))?.mechanisms[0]).toMatchObject({ start: 20, end: 20 })
  expect(settled(change(made, 'lamp', { left: Number.NaN }))).toBeNull()
})

test('what sits on nothing has no model', () => {
  const made = design([layer('lamp', 'gutter', 20, 60, 30)])
  const lost = { ...made, mechanisms: made.mechanisms.map((m) => ({ ...m, on: 'owl/ridge' })) }
  expect(() => modelOf(lost as never)).toThrow(
    new RangeError('lamp sits on owl/ridge, and there is no crease or panel owl/ridge'),
  )
})

test('a taped joint has no fold between, a glued one has', () => {
  const joints = (tab: number) => jointsOf(design([gluedMoth({ tab })]))
  expect(joints(0).map(({ isTaped, fold: way }) => [isTaped, way])).toEqual([
    [true, null],
    [true, null],
  ])
  for (const { isTaped, fold: way } of joints(8)) {
    expect(isTaped).toBe(false)
    expect(way).toMatch(/^(valley|mountain)$/)
  }
})

test('letters that cannot be shown are told by their numbers in hexadecimal', () => {
  expect(visibleText('a\u0007b\u202ec')).toBe('a\\u{7}b\\u{202e}c')
  expect(plainText('a\u0007b\u202ec')).toBe('abc')
  expect(strayIn('ab\u202ec')).toEqual({ name: 'U+202E', place: 3 })
  expect(strayIn('ab\u0007c')).toEqual({ name: 'U+0007', place: 3 })
  expect(strayIn('heron')).toBeNull()
})
