// What is offered on a fold or face: sound by all checks, and by dense looks that share no code with them.
import { readFileSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Design, Offer } from '../../../src/paper/index.ts'
import { check, kinds, measure, modelOf, noOffer, offers, parseDesign } from '../../../src/paper/index.ts'
import { design, gluedMoth, gluedPond, vFold } from '../shared/designs.ts'
import { seenToWork, soundDesigns } from '../shared/sound.ts'

const PATIENCE = 120_000

const bare = design([])

const beak = design([vFold('beak', 'gutter', 110, -60, 45)])

const fromBook = (name: string): Design =>
  parseDesign(
    JSON.parse(
      readFileSync(new URL(`../../../content/dummies/${name}.hingebook.json`, import.meta.url), 'utf8'),
    ),
  )

/** Every place that something can be built on. */
const placesOf = (made: Design) => {
  const { creases, panels } = modelOf(made)
  return [
    ...creases.flatMap(({ name, hidden }) => (hidden ? [] : [{ on: name, sitsOn: 'crease' as const }])),
    ...panels.map(({ name }) => ({ on: name, sitsOn: 'panel' as const })),
  ]
}

const allOffers = (made: Design): Offer[] =>
  placesOf(made).flatMap(({ on, sitsOn }) => [...offers(made, on, { sitsOn })])

const failing = (made: Design): string[] =>
  check(made, { repairs: false }).flatMap(({ name, ok, ids }) => (ok ? [] : [`${name} ${ids.join(' ')}`]))

describe('on a bare card', () => {
  test('every kind is offered, in the order of the kinds', () => {
    const all = [...offers(bare, 'gutter'), ...offers(bare, 'page/left')]
    expect([...new Set(all.map(({ kind }) => kind))]).toEqual(kinds.map(({ kind }) => kind))
  })

  test('a V-fold takes two thirds of the gutter, in whole millimetres', () => {
    // Two thirds of 148 mm, rounded down by a nicety: 0.65 times 148 is 96.2.
    const [first] = offers(bare, 'gutter')
    expect(first?.design.mechanisms[0]).toMatchObject({ kind: 'cut-v-fold', on: 'gutter', run: 96, apex: 26 })
    for (const { design: made } of offers(bare, 'gutter'))
      for (const value of Object.values(made.mechanisms[0] ?? {}))
        if (typeof value === 'number') expect(Number.isInteger(value)).toBe(true)
  })

  test('a V-fold is offered both ways along the fold', () => {
    const runs = offers(bare, 'gutter').flatMap(({ design: { mechanisms } }) =>
      mechanisms[0]?.kind === 'cut-v-fold' ? [Math.sign(mechanisms[0].run)] : [],
    )
    expect(runs).toEqual([1, -1])
  })

  test('the tip is told where a ruler finds it', () => {
    for (const offer of offers(bare, 'gutter', { opening: 70 })) {
      const { at } = measure(offer.design, 70).tips[offer.id] ?? { at: [Number.NaN] }
      offer.tip.forEach((x, k) => expect(x).toBeCloseTo(at[k] as number, 9))
    }
  })
})

test('a piece that is offered on a ridge may ride on its back', () => {
  const variants = offers(beak, 'beak/ridge').map(({ variant }) => variant)
  expect(variants.some((variant) => variant.startsWith('outside'))).toBe(true)
})

describe.each([
  ['a bare card', bare],
  ['a beak', beak],
  ['a pond', design([gluedPond])],
  ['a moth', design([gluedMoth()])],
  ['the heron', fromBook('heron')],
])('what is offered on %s', (_, made) => {
  const all = allOffers(made)

  test('adds one mechanism with a name of its own, and leaves the rest as it is', () => {
    expect(all.length).toBeGreaterThan(10)
    for (const { id, kind, design: next } of all) {
      expect(next.mechanisms.slice(0, -1)).toEqual(made.mechanisms)
      expect(next.mechanisms.at(-1)).toMatchObject({ id, kind })
      expect(made.mechanisms.some((m) => m.id === id)).toBe(false)
      // A file holds it as it is.
      expect(parseDesign(JSON.parse(JSON.stringify(next))).mechanisms).toEqual(next.mechanisms)
    }
  })

  test('fails no check', () => {
    for (const { design: next } of all) expect(failing(next)).toEqual([])
  })

  test(
    'is seen to work',
    () => {
      for (const { design: next } of all.filter((_, k) => k % 3 === 0)) seenToWork(next, 9)
    },
    PATIENCE,
  )

  test('is the same when asked again', () => {
    expect(JSON.stringify(allOffers(made))).toBe(JSON.stringify(all))
  })
})

test(
  'of random sound designs nothing is spoiled by an offer',
  () => {
    let count = 0
    for (const made of soundDesigns(2, 3, 2))
      for (const { design: next } of allOffers(made)) {
        count++
        expect(failing(next)).toEqual([])
      }
    expect(count).toBeGreaterThan(20)
  },
  PATIENCE,
)

test('what fails already is no hindrance, and nothing more fails', () => {
  // Shut, its tip leans out of the card.
  const outside = design([vFold('beak', 'gutter', 140, -60, 70)])
  const before = new Set(failing(outside).map((one) => one.split(' ')[0]))
  expect(before.size).toBeGreaterThan(0)
  const found = offers(outside, 'gutter')
  expect(found.length).toBeGreaterThan(0)
  for (const { id, design: next } of found) {
    const after = failing(next)
    expect(after.some((one) => one.includes(id))).toBe(false)
    for (const one of after) expect(before).toContain(one.split(' ')[0])
  }
})

test('where there is no room nothing is offered, and it is said why', () => {
  const tiny = design([vFold('beak', 'gutter', 60, 6, 40)])
  expect(offers(tiny, 'beak/ridge')).toEqual([])
  const { free, needed, sentence } = noOffer(tiny, 'beak/ridge')
  expect(free).toBeLessThan(needed)
  expect(sentence).toMatch(
    /^There is no room on the beak’s ridge: \d+ mm are free, and the smallest piece needs \d+ mm\.$/,
  )
})

test('a place that is not there is refused by its name', () => {
  expect(() => offers(bare, 'beak/ridge')).toThrow(new RangeError('there is no crease or panel beak/ridge'))
})
