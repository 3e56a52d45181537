// What faults weigh, by fractions.
import { expect, test } from 'vitest'
import {
  isLess,
  isQuick,
  weighOne,
  weighQuick,
  weighSlow,
  weightOf,
  weightOfAll,
} from '../../../src/paper/answers/merit.ts'
import type { Finding } from '../../../src/paper/checks/subject.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const finding = (more: Partial<Finding>): Finding => ({
  name: 'bridge',
  ok: false,
  value: 2,
  unit: 'mm',
  limit: 5,
  sense: 'at-least',
  ids: ['step'],
  sentence: '',
  ...more,
})

test('a fault weighs half at once, and half of the rest when it is 10 mm deep', () => {
  // 3 of 13: 1/2 + 3/26; 10 of 20: 1/2 + 1/4.
  expect(weightOf(finding({}))).toBeCloseTo(0.5 + 3 / 26, 12)
  expect(weightOf(finding({ value: -5 }))).toBeCloseTo(0.75, 12)
  expect(weightOf(finding({ value: 15 }))).toBeCloseTo(0.75, 12)
  expect(weightOf(finding({ value: 5 }))).toBeCloseTo(0.5, 12)
  // No end to it: all of it, or nearly.
  expect(weightOf(finding({ value: Number.POSITIVE_INFINITY }))).toBeCloseTo(1, 4)
  expect(weightOf(finding({ value: Number.POSITIVE_INFINITY }))).toBeLessThan(1)
  expect(weightOf(finding({ waits: true }))).toBe(0)
})

test('what hides more weighs more', () => {
  const at = (name: Finding['name']) => weightOf(finding({ name, value: -5 })) / 0.75
  expect(at('cuts-apart')).toBeCloseTo(16, 9)
  expect(at('shuts-flat')).toBeCloseTo(4, 9)
  expect(at('clear-motion')).toBeCloseTo(3, 9)
  expect(at('stays-inside')).toBeCloseTo(2, 9)
  expect(at('thickness')).toBeCloseTo(1.5, 9)
})

test('what is quick to tell is summed by itself', () => {
  expect(isQuick(finding({}))).toBe(true)
  expect(isQuick(finding({ name: 'clear-motion' }))).toBe(false)
  const all = weightOfAll([finding({}), finding({ value: -5 }), finding({ name: 'clear-motion', value: -5 })])
  expect(all.quick).toBeCloseTo(0.5 + 3 / 26 + 0.75, 12)
  expect(all.slow).toBeCloseTo(2.25, 12)
  expect(weightOfAll([])).toEqual({ quick: 0, slow: 0 })
})

test('one is less than another by what is quick, and where that is even by the rest', () => {
  expect(isLess({ quick: 1, slow: 9 }, { quick: 2, slow: 0 })).toBe(true)
  expect(isLess({ quick: 2, slow: 0 }, { quick: 1, slow: 9 })).toBe(false)
  expect(isLess({ quick: 1, slow: 1 }, { quick: 1, slow: 2 })).toBe(true)
  expect(isLess({ quick: 1, slow: 2 }, { quick: 1, slow: 1 })).toBe(false)
  // No less by rounding.
  expect(isLess({ quick: 1, slow: 1 }, { quick: 1, slow: 1 })).toBe(false)
  expect(isLess({ quick: 1 - 1e-12, slow: 1 }, { quick: 1, slow: 1 })).toBe(false)
  expect(isLess({ quick: 1 + 1e-12, slow: 0.5 }, { quick: 1, slow: 1 })).toBe(true)
})

test('a design is weighed by what fails in it, each thing once', () => {
  const effort = () => ({ left: 1e5 })
  // 120 of 105: 15 mm out weigh 2 (1/2 + 15/50).
  const out = design([layer('step', 'gutter', 40, 80, 60)])
  expect(weighOne(out, 'stays-inside', { effort: effort() })).toBeCloseTo(2 * (0.5 + 15 / 50), 6)
  expect(weighQuick(out, { effort: effort() })).toBeCloseTo(2 * (0.5 + 15 / 50), 6)
  expect(weighOne(out, 'bridge', { effort: effort() })).toBe(0)
  expect(weighSlow(out, { effort: effort() })).toBe(0)
  // What is known, or about others, does not count.
  expect(weighQuick(out, { effort: effort(), known: new Set(['stays-inside step']) })).toBe(0)
  const both = design([layer('step', 'gutter', 40, 80, 60), fold('beak', 'gutter', 140, -20, 10)])
  expect(weighQuick(both, { effort: effort(), ids: new Set(['beak']) })).toBe(0)
  expect(weighQuick(both, { effort: effort(), ids: new Set(['step']) })).toBeCloseTo(1.6, 6)
  expect(weighQuick(out, { effort: { left: 0 } })).toBe(Number.POSITIVE_INFINITY)
})

test('cuts that cannot be made weigh alike and most, what keeps a card from shutting more than what only tears', () => {
  const at = (name: Finding['name']) => weightOf(finding({ name, value: -5 }))
  expect([at('inside-fold'), at('cuts-inside')]).toEqual([at('cuts-apart'), at('cuts-apart')])
  expect(at('opens-flat')).toBe(at('clear-motion'))
  expect(at('stays-inside')).toBe(at('glue'))
  expect(at('bridge')).toBe(at('narrow'))
  const order = ['cuts-apart', 'shuts-flat', 'opens-flat', 'glue', 'thickness', 'narrow'] as const
  order.slice(1).forEach((name, k) => {
    expect(at(name)).toBeLessThan(at(order[k] as Finding['name']))
  })
})
