// What the device remembers of a class is read with care.
import { expect, test } from 'vitest'
import { begin, stateFrom } from '../../../src/widgets/class/state.ts'

const first = begin('chapter:layers')

test('what was kept comes back', () => {
  const state = {
    ...first,
    card: 'garden:owl',
    choice: { ...first.choice, pupils: 24, groups: 8, ages: '14-up', large: true, differs: 'beak.cut' },
    minutes: [5, 5, 20, 9, 6],
    readings: { A1: 19.5 },
  }
  expect(stateFrom(JSON.stringify(state), first)).toEqual(state)
})

test.each([null, '', '{', '[]', '7', '{"choice":3}'])('%j is as at first', (text) => {
  expect(stateFrom(text, first)).toBe(first)
})

test('a field that cannot be is as at first, and the others stay', () => {
  const kept = {
    card: 7,
    choice: { pupils: 900, groups: 12, ages: 'old', minutes: 45, paper: 'a3', differs: null, picture: 'yes' },
    minutes: [5, 0.5],
    readings: { A1: 'high', A2: -3, B1: 20 },
  }
  const { card, choice, minutes, readings } = stateFrom(JSON.stringify(kept), first)
  expect(card).toBe('chapter:layers')
  expect(choice).toMatchObject({
    pupils: 30,
    groups: 12,
    ages: '10-13',
    paper: 'a3',
    differs: 'first',
    picture: false,
  })
  expect(minutes).toBeNull()
  expect(readings).toEqual({ B1: 20 })
})

test('there are never more groups than pupils', () => {
  const kept = { ...first, choice: { ...first.choice, pupils: 4, groups: 10 } }
  expect(stateFrom(JSON.stringify(kept), first).choice).toMatchObject({ pupils: 4, groups: 4 })
})
