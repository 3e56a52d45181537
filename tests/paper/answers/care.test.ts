// Sizes that ask for more care than all others: what is left to the edge of the card, in tenths of a millimetre.
import { describe, expect, test } from 'vitest'
import { tightest } from '../../../src/paper/answers/care.ts'
import { handlesOf } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

/** Shut it reaches both its depths from the gutter, on a page of 105 mm. */
const lamp = (deep: number, id = 'lamp', start = 40, right = deep) =>
  layer(id, 'gutter', start, start + 30, deep, right)

const told = (...mechanisms: object[]) =>
  tightest(design(mechanisms)).map(({ id, field, spoilt }) => `${id}.${field} ${spoilt.toFixed(1)}`)

describe('a layer that all but reaches the edge', () => {
  test('must be cut no deeper: 0.4 mm hold, 0.5 do not', () => {
    expect(told(lamp(52.3))).toEqual(['lamp.left 0.5', 'lamp.right 0.5'])
    expect(told(lamp(51, 'lamp', 40, 53.6))).toEqual(['lamp.left 0.5', 'lamp.right 0.5'])
    expect(told(lamp(52.45))).toEqual(['lamp.left 0.2', 'lamp.right 0.2'])
  })

  test('is told with its words and where it is cut', () => {
    const made = design([lamp(52.3)])
    const [left] = tightest(made)
    expect(left).toMatchObject({ label: 'Left depth', unit: 'mm', piece: 'card' })
    const handle = handlesOf(made).find(({ id, name }) => id === 'lamp' && name === left?.handle)
    expect(left?.at).toEqual(handle?.at)
    expect(handle?.piece).toBe('card')
    expect(tightest(made)).toBe(tightest(made))
  })

  test('with a millimetre to spare is none of it', () => {
    expect(told(lamp(51.9))).toEqual([])
    expect(told(lamp(30))).toEqual([])
    expect(told()).toEqual([])
  })
})

test('a beak that all but leans out: its apex first, which moves its tip most', () => {
  // Shut its tip leans 20 mm past the apex: 128 is the farthest.
  const beak = told(fold('beak', 'gutter', 127.6, -40, 40 * Math.sqrt(3)))
  expect(beak[0]).toBe('beak.apex 0.5')
  expect(beak.length).toBeLessThanOrEqual(3)
})

test('more than three are no exception any more', () => {
  expect(told(lamp(52.3, 'a', 20), lamp(20, 'b', 80))).toEqual(['a.left 0.5', 'a.right 0.5'])
  expect(told(lamp(52.3, 'a', 20), lamp(52.3, 'b', 80))).toEqual([])
})

test('what fails already has none', () => {
  expect(told(lamp(60))).toEqual([])
  // A rule of thumb that is broken is no failure: a bridge of 3 mm.
  expect(told(lamp(52.3, 'lamp', 3))).toEqual(['lamp.left 0.5', 'lamp.right 0.5'])
})
