// How much may be off: sums and differences of millimetres, by hand.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { forgives } from '../../../src/paper/index.ts'
import { layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const told = new Map<string, ReturnType<typeof forgives>>()

/** What is slow to tell has tests of its own: here it does not count. */
const SLOW = ['clear-motion', 'opens-flat', 'thickness'] as const

const slackOf = (
  made: Design,
  id: string,
  field: string,
  { but = [], ...rest }: Parameters<typeof forgives>[1] = {},
) => {
  const options = { ...rest, but: [...SLOW, ...but], ids: [id] }
  const key = JSON.stringify([made, options])
  const all = told.get(key) ?? forgives(made, options)
  told.set(key, all)
  const found = all.find((one) => one.id === id && one.field === field)
  if (!found) throw new Error(`nothing is told of ${id}.${field}`)
  return found
}

describe('a layer cut 50 and 51 deep on a page of 105', () => {
  const made = design([layer('step', 'gutter', 10, 137, 50, 51)])

  test('may be 4 mm deeper on either side, and shallower as far as is looked', () => {
    // Shut its ridge is 101 from the gutter.
    for (const field of ['left', 'right']) {
      const { less, more, unit } = slackOf(made, 'step', field)
      expect(unit).toBe('mm')
      expect(more).toMatchObject({ by: 4, fails: 'stays-inside' })
      expect(more.spoilt).toBeCloseTo(4.1)
      expect(more.sentence).toMatch(/^The step sticks out/)
      expect(less).toEqual({ by: 8, spoilt: null, fails: null, sentence: null })
    }
  })

  test('may come 5 mm nearer to either end of the card: a bridge of 5 mm is asked for', () => {
    expect(slackOf(made, 'step', 'start').less).toMatchObject({ by: 5, fails: 'bridge' })
    expect(slackOf(made, 'step', 'start').more).toMatchObject({ by: 8, fails: null })
    // 137 and 5 are 142 of 148: 6 more.
    expect(slackOf(made, 'step', 'end').more).toMatchObject({ by: 6, fails: 'bridge' })
  })

  test('no farther than asked is looked, and what does not count is passed over', () => {
    expect(slackOf(made, 'step', 'left', { most: 3 }).more).toEqual({
      by: 3,
      spoilt: null,
      fails: null,
      sentence: null,
    })
    expect(slackOf(made, 'step', 'left', { most: 4.5 }).more).toMatchObject({ by: 4, fails: 'stays-inside' })
    const but = slackOf(made, 'step', 'start', { but: ['bridge'] }).less
    expect(but).toMatchObject({ by: 8, fails: null })
    // Then it may not leave the card.
    expect(slackOf(made, 'step', 'start', { but: ['bridge'], most: 16 }).less.by).toBeLessThanOrEqual(10)
  })
})

test('tenths are found, and told downwards', () => {
  // 105 - 101.27 = 3.73: 3.7 is told; found to a tenth, it may come out a tenth less.
  const { more } = slackOf(design([layer('step', 'gutter', 40, 80, 50, 51.27)]), 'step', 'left')
  expect(more.by).toBeGreaterThan(3.55)
  expect(more.by).toBeLessThanOrEqual(3.7 + 1e-9)
  expect(Math.abs(more.by * 10 - Math.round(more.by * 10))).toBeLessThan(1e-9)
})

test('sides that must match may not be off at all', () => {
  const made = design([gluedMoth()])
  for (const field of ['left.base', 'right.facet']) {
    const { less, more, unit } = slackOf(made, 'moth', field)
    expect(unit).toBe('deg')
    expect(less).toMatchObject({ by: 0, fails: 'shuts-flat' })
    expect(more).toMatchObject({ by: 0, fails: 'shuts-flat' })
  }
})

test('sizes that would not fit together end it', () => {
  // 2 mm long: the start may be no more than 2 later.
  const made = design([layer('step', 'gutter', 40, 42, 20)])
  const { more } = slackOf(made, 'step', 'start', { but: ['narrow', 'bridge', 'cuts-apart', 'cuts-inside'] })
  expect(more).toMatchObject({ by: 2, fails: 'limits', sentence: 'Its sizes would not fit together.' })
})

test('only what is asked for is told, in the order of the file', () => {
  const made = design([layer('a', 'gutter', 20, 50, 20), layer('b', 'gutter', 90, 120, 20)])
  const fields = ['start', 'end', 'left', 'right']
  const names = (ids?: readonly string[]) =>
    forgives(made, { but: SLOW, most: 0.5, ...(ids ? { ids } : {}) }).map(({ id, field }) => `${id}.${field}`)
  expect(names()).toEqual([...fields.map((one) => `a.${one}`), ...fields.map((one) => `b.${one}`)])
  expect(names(['b'])).toEqual(fields.map((one) => `b.${one}`))
})

test('what fails already does not count', () => {
  // It sticks out, 120 of 105, and is as free to be deeper as it was.
  const made = design([layer('step', 'gutter', 40, 80, 60)])
  expect(slackOf(made, 'step', 'left').more.fails).not.toBe('stays-inside')
})

test('the glue of others counts', () => {
  // The joint begins at 100 on the gutter; a slit 7 mm nearer runs through the tab there.
  const made = design([
    layer('step', 'gutter', 40, 90, 20),
    gluedMoth({ apex: 100, tab: 8, foot: 30, ridge: 30 }),
  ])
  expect(slackOf(made, 'step', 'end', { most: 16, but: ['bridge', 'cuts-apart'] }).more.fails).toBe('glue')
})
