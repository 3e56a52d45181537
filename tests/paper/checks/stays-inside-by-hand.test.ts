// Which edge is nearest, how near and when, in numbers worked by hand: quick, beside the random ones.
import { describe, expect, test } from 'vitest'
import type { Check } from '../../../src/paper/index.ts'
import { first, fold, layer, only } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { DEG, RAD } from '../shared/space.ts'

const said = (mechanisms: readonly object[], card = {}): Check => first('stays-inside', mechanisms, card)

describe('a layer that slides along an edge', () => {
  // Its ends keep their places along the gutter, its ridge is 2 d cos(w/2) from it.
  test.each([
    ['near', 12, 60, 12],
    ['far', 60, 141, 7],
  ] as const)('says how far it is inside the %s edge', (edge, from, to, margin) => {
    const found = said([layer('lamp', 'gutter', from, to, 20)])
    expect(found).toMatchObject({
      ok: true,
      unit: 'mm',
      limit: 0,
      sense: 'at-least',
      ids: ['lamp', expect.any(String)],
    })
    expect(found.value).toBeCloseTo(margin, 9)
    expect(found.sentence).toMatch(
      new RegExp(
        `^Nothing sticks out: the lamp comes nearest, ${margin}\\.0 mm inside the ${edge} edge when `,
      ),
    )
    expect(found.space?.[1]).toBeCloseTo(edge === 'near' ? 12 : 141, 9)
  })

  test('says how far it is past it', () => {
    const found = said([layer('lamp', 'gutter', 60, 151, 20)])
    expect(found.sentence).toMatch(/^The lamp sticks out 3\.0 mm past the far edge when /)
    expect(found.value).toBeCloseTo(-3, 9)
    expect(found.ok).toBe(false)
  })

  test('is nearest to the side where it is deep, when the card is shut', () => {
    const found = said([layer('lamp', 'gutter', 40, 80, 50)])
    expect(found.value).toBeCloseTo(5, 9)
    expect(found.opening).toBe(0)
    expect(found.sentence).toBe(
      'Nothing sticks out: the lamp comes nearest, 5.0 mm inside the side edge when the card is shut.',
    )
    expect(Math.hypot(found.space?.[0] ?? 0, found.space?.[2] ?? 0)).toBeCloseTo(100, 9)
  })
})

describe('of several', () => {
  test('all that stick out are told, each by itself', () => {
    const found = only(
      'stays-inside',
      design([
        layer('a', 'gutter', 10, 40, 54),
        layer('b', 'gutter', 60, 90, 20),
        layer('c', 'gutter', 100, 140, 53),
      ]),
    ).filter(({ ok }) => !ok)
    expect(found.map(({ ids, value }) => [ids[0], Number(value.toFixed(6))])).toEqual([
      ['a', -3],
      ['c', -1],
    ])
  })

  test('that stay inside the one that comes nearest is told', () => {
    const nearest = (...mechanisms: object[]) => said(mechanisms)
    const [a, b, c] = [
      layer('a', 'gutter', 30, 50, 40),
      layer('b', 'gutter', 60, 90, 49),
      layer('c', 'gutter', 100, 120, 47),
    ]
    for (const order of [
      [a, b, c],
      [c, b, a],
      [b, a, c],
    ]) {
      const found = nearest(...order)
      expect(found.ids[0]).toBe('b')
      expect(found.value).toBeCloseTo(7, 9)
    }
  })
})

describe('on the way', () => {
  // A ridge of 110 mm that stands upright where tan(60) cos(w/2) = 1, w = 109.47 degrees: then it reaches 110 from the
  // gutter, shut only 110 sin 120.
  const upright = 2 * Math.acos(1 / Math.sqrt(3)) * DEG
  const beak = { ...fold('beak', 'gutter', 200, -110, 40 * Math.tan(60 * RAD)), lean: 70 }

  test.each([
    [105, -5],
    [120, 10],
  ])('on a page of %d the least is found at its opening, to a thousandth of a degree', (width, margin) => {
    const [found] = only('stays-inside', design([beak], { width, height: 300 }))
    expect(found?.value).toBeCloseTo(margin, 6)
    expect(found?.opening).toBeCloseTo(upright, 3)
    expect(found?.ok).toBe(margin > 0)
  })

  test('what stops the card is judged as far as it goes', () => {
    const found = said([gluedMoth({ base: 60, facet: 45, apex: 40 })])
    expect(found.verdict).toBeUndefined()
    expect(found.ok).toBe(true)
    expect(found.opening).toBeLessThanOrEqual(Math.acos(-1 / 3) * DEG + 1e-6)
  })
})

test('a hair past an edge is past it, rounding is not', () => {
  expect(said([layer('lamp', 'gutter', 40, 148, 20)]).ok).toBe(true)
  expect(said([layer('lamp', 'gutter', 40, 148 + 1e-6, 20)]).ok).toBe(false)
  expect(said([layer('lamp', 'gutter', 0, 90, 20)]).ok).toBe(true)
})
