// A card put together: what sits on what, which way it folds, and what is stuck over what; by hand.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { frontSign, modelOf, ridgeOf } from '../../../src/paper/model/model.ts'
import { stackingOf } from '../../../src/paper/model/patches.ts'
import { flatCreases, stretches } from '../../../src/paper/model/pieces.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const square = (a: number, l: number, size: number) => [
  [a, l],
  [a + size, l],
  [a + size, l + size],
  [a, l + size],
]

const star = (id: string, on: string, a: number, l: number, more: object = {}) => ({
  id,
  kind: 'rider',
  on,
  shape: square(a, l, 20),
  glue: square(a + 5, l + 5, 10),
  ...more,
})

const panelsOf = (mechanisms: readonly object[]) =>
  Object.fromEntries(modelOf(design(mechanisms)).panels.map((panel) => [panel.name, panel]))

describe('a bare card', () => {
  test('is a gutter that folds to a valley, two pages, and one piece', () => {
    const { creases, panels, pieces, builds, glue } = modelOf(design([]))
    expect(creases).toMatchObject([{ name: 'gutter', owner: -1, length: 148, fold: 'valley', hidden: false }])
    expect(panels.map(({ name, side, outline, piece }) => [name, side, outline[2], piece])).toEqual([
      ['page/left', 'left', [105, 148], 0],
      ['page/right', 'right', [105, 148], 0],
    ])
    expect(pieces[0]?.outline).toEqual([
      [-105, 0],
      [105, 0],
      [105, 148],
      [-105, 148],
    ])
    expect([builds, glue]).toEqual([[], []])
  })
})

describe('which way it folds', () => {
  // Cut from the card, a strip pops towards the reader: its ridge is a mountain on the gutter's valley, its folds
  // are valleys; on a mountain all is turned.
  test('hangs on what it sits on', () => {
    const { creases } = modelOf(
      design([layer('lamp', 'gutter', 20, 80, 30), layer('eye', 'lamp/ridge', 10, 40, 9)]),
    )
    expect(Object.fromEntries(creases.map(({ name, fold: way }) => [name, way]))).toEqual({
      gutter: 'valley',
      'lamp/ridge': 'mountain',
      'lamp/left': 'valley',
      'lamp/right': 'valley',
      'eye/ridge': 'valley',
      'eye/left': 'mountain',
      'eye/right': 'mountain',
    })
    expect(creases.map(({ guests }) => guests)).toEqual([[0], [1], [], [], [], [], []])
  })

  test('says where a panel’s front lies', () => {
    const panel = (side: 'left' | 'right', turned: boolean) =>
      ({ crease: 0, side, turned }) as Parameters<typeof frontSign>[1]
    for (const [way, side, turned, sign] of [
      ['valley', 'left', false, 1],
      ['valley', 'right', false, -1],
      ['mountain', 'left', false, -1],
      ['mountain', 'right', false, 1],
      ['valley', 'left', true, -1],
      ['mountain', 'left', true, 1],
    ] as const) {
      const creases = [{ ...modelOf(design([])).creases[0], fold: way }] as never
      expect(frontSign({ creases }, panel(side, turned))).toBe(sign)
    }
  })
})

describe('what carries a tip', () => {
  test('is its own ridge; what is stuck on has none, and what is not there neither', () => {
    const made = design([gluedMoth(), star('star', 'page/right', 60, 20)])
    expect(ridgeOf(made, 'moth')).toBe('moth/ridge')
    expect(ridgeOf(made, 'star')).toBeUndefined()
    expect(ridgeOf(made, 'owl')).toBeUndefined()
  })
})

describe('what is stuck on a panel', () => {
  test('lies on that panel’s side of its crease', () => {
    const found = panelsOf([
      gluedMoth(),
      star('one', 'page/left', 60, 20),
      star('two', 'page/right', 60, 20),
      star('three', 'moth/left', 5, 5),
      star('four', 'moth/right', 5, 5),
    ])
    expect(['one', 'two', 'three', 'four'].map((id) => found[`${id}/face`]?.side)).toEqual([
      'left',
      'right',
      'left',
      'right',
    ])
  })

  const lifts = (...stars: readonly object[]) => stars.map((_, k) => panelsOf(stars)[`s${k}/face`]?.lift)

  test('lies one layer over what it overlaps, and beside the rest', () => {
    const page = 'page/right'
    expect(lifts(star('s0', page, 20, 20), star('s1', page, 30, 30), star('s2', page, 70, 20))).toEqual([
      1, 2, 1,
    ])
    // Edge to edge they have no paper in common.
    expect(lifts(star('s0', page, 20, 20), star('s1', page, 40, 20))).toEqual([1, 1])
    expect(lifts(star('s0', page, 20, 20), star('s1', page, 20, 40))).toEqual([1, 1])
    expect(lifts(star('s0', page, 20, 20), star('s1', page, 39.9, 39.9))).toEqual([1, 2])
    // Of one on the other page nothing is known here.
    expect(lifts(star('s0', page, 20, 20), star('s1', 'page/left', 20, 20))).toEqual([1, 1])
  })

  test('lies behind on the back', () => {
    const page = 'page/right'
    const back = { face: 'back' }
    expect(
      lifts(star('s0', page, 20, 20), star('s1', page, 20, 20, back), star('s2', page, 25, 25, back)),
    ).toEqual([1, -1, -2])
  })

  test('on a stuck piece lies a quarter of a layer over it', () => {
    expect(lifts(star('s0', 'page/right', 20, 20), star('s1', 's0/face', 25, 25))).toEqual([1, 1.25])
  })

  test('counts one layer of card after another', () => {
    const made = design([
      star('s0', 'page/right', 20, 20),
      star('s1', 's0/face', 25, 25),
      star('s2', 'page/left', 20, 20, { face: 'back' }),
    ])
    const layers = (one: Design) => stackingOf(modelOf(one)).map(({ layer }) => layer)
    expect(layers(made)).toEqual([0, 1, 2, -1])
    expect(layers(design([gluedMoth()]))).toEqual([0, 1])
    // On the gutter, a valley, the outside is behind; on a ridge, a mountain, the inside is.
    expect(layers(design([gluedMoth({ side: 'outside' })]))).toEqual([0, -1])
    const on = (more: object) =>
      gluedMoth({ id: 'owl', on: 'moth/ridge', apex: 4, foot: 9, ridge: 9, ...more })
    expect(layers(design([gluedMoth(), on({})]))).toEqual([0, 1, 0])
    expect(layers(design([gluedMoth(), on({ side: 'outside' })]))).toEqual([0, 1, 2])
    // On the back of what lies behind one looks from the other side: its own back is the front's side again.
    const behind = star('s0', 'page/right', 20, 20, { face: 'back' })
    expect(layers(design([behind, star('s1', 's0/face', 25, 25, { face: 'back' })]))).toEqual([0, -1, 0])
    expect(layers(design([behind, star('s1', 's0/face', 25, 25)]))).toEqual([0, -1, -2])
  })
})

describe('what is left of a crease', () => {
  test.each([
    [[], [[0, 50]]],
    [
      [[10, 20]],
      [
        [0, 10],
        [20, 50],
      ],
    ],
    [
      [
        [30, 40],
        [10, 20],
      ],
      [
        [0, 10],
        [20, 30],
        [40, 50],
      ],
    ],
    [[[0, 20]], [[20, 50]]],
    [[[20, 50]], [[0, 20]]],
    [[[0, 50]], []],
    [[[40, 60]], [[0, 40]]],
    [
      [
        [10, 30],
        [15, 20],
      ],
      [
        [0, 10],
        [30, 50],
      ],
    ],
    [[[20, 20]], [[0, 50]]],
  ] as [[number, number][], [number, number][]][])('of 50 mm when %j are taken out', (spans, left) => {
    expect(stretches(50, spans)).toEqual(left)
  })
})

describe('creases on flat pieces', () => {
  test('of what is cut lie on the card, of what is glued on both', () => {
    const made = design([fold('beak', 'gutter', 110, -40, 30), gluedMoth({ apex: 20, foot: 30, ridge: 20 })])
    const flat = flatCreases(made).map(({ name, piece }) => `${name} ${piece}`)
    expect(flat).toEqual([
      'gutter card',
      'beak/ridge card',
      'beak/left card',
      'beak/right card',
      'moth/ridge moth/piece',
      expect.stringMatching(/^moth\/left /),
      expect.stringMatching(/^moth\/left /),
      expect.stringMatching(/^moth\/right /),
      expect.stringMatching(/^moth\/right /),
    ])
    const beak = flatCreases(made).find(({ name }) => name === 'beak/right')
    // From the apex, 110 up the gutter, to the slit's end, 30 across and 40 down.
    expect(beak?.start).toEqual([0, 110])
    expect(beak?.end[0]).toBeCloseTo(30, 9)
    expect(beak?.end[1]).toBeCloseTo(70, 9)
  })
})
