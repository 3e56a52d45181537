// Faults of one or two parts, and the least change that mends them: differences of lengths. Quick, beside the random ones.
import { describe, expect, test } from 'vitest'
import type { Design, Mended } from '../../../src/paper/index.ts'
import { check, mend } from '../../../src/paper/index.ts'
import { fold, layer, tent } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const told = ({ changes }: Mended) => changes.map(({ id, field, from, to }) => [`${id}.${field}`, from, to])

/** How much was changed in all, mm. */
const total = ({ changes }: Mended): number =>
  changes.reduce((sum, { from, to }) => sum + Math.abs(to - from), 0)

const square = (a: number, l: number, half: number) => [
  [a - half, l - half],
  [a + half, l - half],
  [a + half, l + half],
  [a - half, l + half],
]

/** What mending leaves is what checks say of the design, here nothing. */
function mended(made: Design, pins: readonly string[] = []): Mended {
  const found = mend(made, { pins })
  expect(found.left).toEqual([])
  expect(check(found.design, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
  return found
}

describe('a layer that reaches 110 mm, on a page of 105', () => {
  test('is cut less deep, on both sides alike', () => {
    expect(told(mended(design([layer('step', 'gutter', 40, 80, 55)])))).toEqual([
      ['step.left', 55, 52.5],
      ['step.right', 55, 52.5],
    ])
  })

  test('and any that sticks out: what was alike on both sides stays alike, where that is no more change', () => {
    // Shut, both depths lie behind one another: together no more than 105.
    for (const deep of [60, 110]) {
      const found = mended(design([layer('step', 'gutter', 40, 80, deep)]))
      expect(told(found)).toEqual([
        ['step.left', deep, 52.5],
        ['step.right', deep, 52.5],
      ])
      expect(total(found)).toBe(2 * deep - 105)
    }
  })

  test('is cut less deep on one side alone where the other is pinned', () => {
    const found = mended(design([layer('step', 'gutter', 40, 80, 55)]), ['step.left', 'step.depth'])
    expect(told(found)).toEqual([['step.right', 55, 50]])
  })

  test('says what it changed', () => {
    const [one] = mended(design([layer('step', 'gutter', 40, 80, 55)])).changes
    expect(one).toEqual({ id: 'step', field: 'left', label: 'Left depth', unit: 'mm', from: 55, to: 52.5 })
  })
})

test('a cut 2 mm from the end of the card goes 3 mm inwards: a bridge of 5 is asked for', () => {
  expect(told(mended(design([layer('step', 'gutter', 2, 40, 20)])))).toEqual([['step.start', 2, 5]])
})

test('a cut past the end of its fold comes back to where a bridge is left', () => {
  // 148 - 5 = 143.
  expect(told(mended(design([layer('step', 'gutter', 130, 160, 20)])))).toEqual([['step.end', 160, 143]])
  // On a ridge of 60: 55.
  const guest = mended(design([layer('a', 'gutter', 30, 90, 20), layer('b', 'a/ridge', 40, 62, 10)]))
  expect(told(guest)).toEqual([['b.end', 62, 55]])
})

test('of two cuts that overlap by 4 mm one gives way by 9', () => {
  const found = mended(design([layer('a', 'gutter', 30, 70, 20), layer('b', 'gutter', 66, 110, 20)]))
  expect(total(found)).toBeCloseTo(9, 6)
  expect(found.changes).toHaveLength(1)
  expect([
    ['a.end', 61],
    ['b.start', 75],
  ]).toContainEqual([`${found.changes[0]?.id}.${found.changes[0]?.field}`, found.changes[0]?.to])
  // With that one pinned the other does.
  const [first] = found.changes
  const again = mended(design([layer('a', 'gutter', 30, 70, 20), layer('b', 'gutter', 66, 110, 20)]), [
    `${first?.id}.${first?.field}`,
  ])
  expect(again.changes.some(({ id, field }) => id === first?.id && field === first?.field)).toBe(false)
})

test('sides that differ by 4 mm are made to match by 4 mm', () => {
  const found = mended(design([tent({ leftWall: 44 })]))
  expect(found.changes).toHaveLength(1)
  expect(total(found)).toBeCloseTo(4, 9)
})

test('a layer that cuts through glue on one side gives way there alone: both sides alike would be twice the change', () => {
  // Glue from 44 to 56 mm off the gutter stays; the layer is 52 deep.
  const disc = {
    id: 'disc',
    kind: 'rider',
    on: 'page/right',
    shape: square(50, 60, 6),
    glue: square(50, 60, 6),
  }
  const kept = ['disc.across', 'disc.along', 'disc.turn', 'disc.size', 'step.start', 'step.end']
  const found = mended(design([layer('step', 'gutter', 40, 80, 52), disc]), kept)
  expect(told(found)).toEqual([['step.right', 52, 44]])
})

test('a sticker that hangs over by 3 mm is shifted by 3 mm', () => {
  const disc = {
    id: 'disc',
    kind: 'rider',
    on: 'page/right',
    shape: square(94, 75, 14),
    glue: square(90, 75, 5),
  }
  expect(told(mended(design([disc])))).toEqual([['disc.across', 0, -3]])
})

test('two faults far apart are mended each by itself, and what is sound stays', () => {
  const sound = fold('beak', 'gutter', 140, -10, 6)
  const made = design([layer('a', 'gutter', 20, 50, 55), tent({ start: 70, end: 90, leftWall: 44 }), sound])
  const found = mended(made)
  expect(new Set(found.changes.map(({ id }) => id))).toEqual(new Set(['a', 'tent']))
  expect(found.design.mechanisms[2]).toEqual(made.mechanisms[2])
  expect(total(found)).toBeCloseTo(2.5 + 2.5 + 4, 6)
})

test('what cannot be mended is left and told', () => {
  const made = design([layer('step', 'gutter', 2, 40, 20)])
  const pins = ['start', 'end', 'left', 'right', 'depth'].map((field) => `step.${field}`)
  const found = mend(made, { pins })
  expect(found.design).toBe(made)
  expect(found.changes).toEqual([])
  expect(new Set(found.left.map(({ name }) => name))).toEqual(new Set(['bridge']))
})
