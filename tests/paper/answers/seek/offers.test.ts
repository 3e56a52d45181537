// Names, places and reasons of offers, by hand: quick, beside the slow tests of what is offered.
import { describe, expect, test } from 'vitest'
import {
  lastTip,
  newId,
  noOffer,
  offers,
  sitsOnOf,
  variantsOf,
  withMechanism,
} from '../../../../src/paper/answers/seek/offers.ts'
import type { Mechanism } from '../../../../src/paper/index.ts'
import { kindNamed } from '../../../../src/paper/index.ts'
import type { AnyKind } from '../../../../src/paper/mechanisms/registry.ts'
import { fold, layer } from '../../shared/check-designs.ts'
import { design, gluedMoth } from '../../shared/designs.ts'

const kind = (name: string) => kindNamed(name) as AnyKind

test('a new name is the first number that is free', () => {
  const made = (...ids: string[]) => design(ids.map((id, k) => layer(id, 'gutter', 20 * k, 20 * k + 10, 5)))
  expect(newId(made(), kind('cut-layer'))).toBe('layer-1')
  expect(newId(made('layer-1', 'layer-2', 'layer-4'), kind('cut-layer'))).toBe('layer-3')
  expect(newId(made('layer-2'), kind('cut-layer'))).toBe('layer-1')
  expect(newId(made('layer-1'), kind('glued-tent'))).toBe('tent-1')
})

test('every variant of a kind has its number', () => {
  expect(variantsOf(kind('cut-layer'))).toEqual([0])
  expect(variantsOf(kind('cut-v-fold'))).toEqual([0, 1])
  expect(variantsOf(kind('glued-v-fold'))).toEqual([0, 1, 2, 3])
  expect(['cut-layer', 'rider'].map((name) => sitsOnOf(kind(name)))).toEqual(['crease', 'panel'])
})

test('one more stands last, and the rest as it was', () => {
  const made = design([layer('step', 'gutter', 40, 80, 20)])
  const tent = design([gluedMoth()]).mechanisms[0] as Mechanism
  const next = withMechanism(made, tent)
  expect(next).toEqual({ ...made, mechanisms: [made.mechanisms[0], tent] })
  expect(made.mechanisms).toHaveLength(1)
})

test('the tip of the last is told where the card goes', () => {
  // A layer of 20: 40 cos 45 over the gutter.
  const made = design([gluedMoth({ base: 60, facet: 45, apex: 90 }), layer('step', 'gutter', 20, 60, 20)])
  expect(lastTip(made, 90).tip[2]).toBeCloseTo(40 * Math.SQRT1_2, 9)
  expect(lastTip(made, 90).opening).toBe(90)
  expect(lastTip(made, 180).opening).toBeCloseTo((Math.acos(-1 / 3) * 180) / Math.PI, 9)
})

describe('what is offered on a small card', () => {
  // 40 by 60: the gutter is 60 long, with 40 of paper on either side.
  const small = design([], { width: 40, height: 60 })

  const found = offers(small, 'gutter')

  test('is two thirds of the gutter, or the largest that works', () => {
    const of = (name: string) =>
      found.filter((one) => one.kind === name).map((one) => one.design.mechanisms[0])
    // 0.65 of 60 is 39, in the middle: from 10.5. A wedge with a slit of 0.65 x 40 = 26.
    expect(of('cut-v-fold')).toMatchObject([
      { apex: 11, run: 39, cut: 26, lean: 0 },
      { apex: 50, run: -39, cut: 26, lean: 0 },
    ])
    // 0.65 of 40 deep, half of it: 13.
    expect(of('cut-layer')).toMatchObject([{ start: 11, end: 50, left: 13, right: 13 }])
    expect(found.map(({ id }) => id)).toContain('v-fold-1')
    expect(found.every(({ opening }) => opening === 90)).toBe(true)
    expect(new Set(found.map(({ kind: name }) => name)).has('rider')).toBe(false)
    for (const { kind: name, label } of found) expect(label).toBe(kind(name).label)
  })

  test('tells for how much room it was sized: the gutter is longer than the pages are wide', () => {
    expect(found.filter(({ room }) => room === 40)).toEqual(found)
    // Beside a layer from 20 to 60 there are 15 mm of gutter, less deep by far than the page.
    const beside = design([layer('step', 'gutter', 20, 60, 8)], { width: 40, height: 60 })
    const [first] = offers(beside, 'gutter', { sitsOn: 'crease' })
    expect(first).toMatchObject({ kind: 'cut-layer', room: 15 })
  })

  test('says on the gutter from whose end it goes', () => {
    const ways = found.flatMap((one) => (one.kind === 'cut-v-fold' ? [one.variant] : []))
    expect(ways).toEqual(['away from your end', 'back to your end'])
  })

  test('is of that kind which is asked for', () => {
    expect(offers(small, 'gutter', { sitsOn: 'panel' })).toEqual([])
    const [piece] = offers(small, 'page/left', { sitsOn: 'panel', opening: 60 })
    expect(piece).toMatchObject({ kind: 'rider', opening: 60, id: 'piece-1' })
    // 40 wide: a circle of radius 20, and of that 0.65: 13; from corner to corner, in tenths, twice 9.2 either way.
    const size = expect.closeTo(18.4 * Math.SQRT2, 9)
    expect(piece?.design.mechanisms[0]).toMatchObject({ size, across: 0, on: 'page/left' })
  })

  test('is nothing where all is full, and nothing where there is no such place', () => {
    expect(() => offers(small, 'owl/ridge')).toThrow(new RangeError('there is no crease or panel owl/ridge'))
    expect(offers(design([fold('beak', 'gutter', 60, 6, 6)]), 'beak/ridge')).toEqual([])
  })
})

describe('why nothing is offered', () => {
  test('there is no room: what is free and what is needed', () => {
    // A ridge of 9 in a wedge of 45: the widest of it, 2 % in, has 0.18 mm.
    const beak = design([fold('beak', 'gutter', 60, 9, 9)])
    const { free, needed, sentence } = noOffer(beak, 'beak/ridge')
    expect(free).toBeCloseTo(0.18, 9)
    expect(needed).toBe(10)
    expect(sentence).toBe(
      'There is no room on the beak’s ridge: 0 mm are free, and the smallest piece needs 10 mm.',
    )
    // The wedge itself: its inscribed circle has a radius of 9 (1 - 1/sqrt 2).
    const face = noOffer(beak, 'beak/left', { sitsOn: 'panel' })
    expect(face.free).toBeCloseTo(18 * (1 - Math.SQRT1_2), 1)
    expect(face.sentence).toMatch(/^There is no room on the beak’s left side: 5 mm are free/)
    // Its fold is of the same name: what is asked for counts.
    expect(noOffer(beak, 'beak/left').sentence).toContain('beak’s left fold')
  })

  test('there is room, but it does not work', () => {
    const { free, sentence } = noOffer(design([]), 'gutter')
    expect(free).toBe(105)
    expect(sentence).toBe(
      'There is room on the gutter, but whatever is put there runs into its neighbours, sticks out or tears.',
    )
    expect(noOffer(design([], { width: 10, height: 30 }), 'gutter')).toMatchObject({ free: 10, needed: 10 })
    expect(noOffer(design([]), 'page/left').free).toBeCloseTo(105, 0)
    expect(noOffer(design([], { height: 50 }), 'gutter').free).toBe(50)
  })
})
