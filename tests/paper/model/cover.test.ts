// The cover behind a card and the rim it is glued by, in numbers worked by hand. 3 mm larger all round, a rim of 8 mm,
// 3 mm clear of what moves: common practice, no source.
import { describe, expect, test } from 'vitest'
import { modelOf, pieces } from '../../../src/paper/index.ts'
import { thickest } from '../../../src/paper/measure/layers.ts'
import { coverHalves, coverLayers, coverOutline, coverRim } from '../../../src/paper/model/cover.ts'
import type { Flat } from '../../../src/paper/plane/lay.ts'
import { layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

const covered = (mechanisms: readonly object[] = [], card: object = {}) =>
  design(mechanisms, { cover: true, ...card })

const box = (x0: number, x1: number, y0: number, y1: number): readonly Flat[] => [
  [x0, y0],
  [x1, y0],
  [x1, y1],
  [x0, y1],
]

/** The strips of one half as least and greatest x and y. */
const rim = (half: 'left' | 'right', made = covered(), behind: readonly (readonly Flat[])[] = []) =>
  coverRim(modelOf(made), behind)
    .filter((part) => part.half === `cover/${half}`)
    .map(({ points }) => {
      const [xs, ys] = [points.map(([x]) => x), points.map(([, y]) => y)]
      return [Math.min(...xs), Math.max(...xs), Math.min(...ys), Math.max(...ys)]
    })

test('a card without a cover has none of it', () => {
  const bare = design([])
  expect([coverHalves(bare), coverOutline(bare), coverLayers(bare)]).toEqual([[], [], 0])
  expect(coverRim(modelOf(bare), [])).toEqual([])
})

test('a cover is 3 mm larger all round', () => {
  // A page of 105 x 148.
  expect(coverOutline(covered())).toEqual(box(-108, 108, -3, 151))
  for (const { outline } of coverHalves(covered()))
    expect(outline).toEqual([
      [0, -3],
      [0, 151],
      [108, 151],
      [108, -3],
    ])
  expect(coverHalves(covered()).map(({ name, onPiece }) => [name, onPiece.off])).toEqual([
    ['cover/left', [-1, 0]],
    ['cover/right', [1, 0]],
  ])
})

test('it is a piece of its own: its edge, its fold along the gutter, and the rim, which is on the card as well', () => {
  const [card, cover, ...more] = pieces(covered())
  expect(more).toEqual([])
  expect([card?.id, cover?.id]).toEqual(['card', 'cover'])
  expect(cover?.outline).toEqual(box(-108, 108, -3, 151))
  expect(cover?.lines.find(({ kind }) => kind === 'valley')).toEqual({
    kind: 'valley',
    points: [
      [0, -3],
      [0, 151],
    ],
    of: 'cover/gutter',
  })
  // Three strips on each of two pages.
  for (const piece of [card, cover]) {
    const rims = piece?.lines.filter(({ kind, of }) => kind === 'glue' && of.startsWith('cover/'))
    expect(rims).toHaveLength(6)
    expect(rims?.every(({ closed }) => closed)).toBe(true)
  }
})

test('it adds two layers everywhere', () => {
  expect(thickest(design([]))).toEqual({ layers: 2, thickness: 0.5 })
  expect(thickest(covered())).toEqual({ layers: 4, thickness: 1 })
  expect(thickest(covered([layer('lamp', 'gutter', 40, 80, 20)], { caliper: 0.5 }))).toEqual({
    layers: 6,
    thickness: 3,
  })
})

describe('the rim', () => {
  test('runs along three edges of each page, the side from end to end, 10 mm from the gutter', () => {
    expect(rim('right')).toEqual([
      [97, 105, 0, 148],
      [10, 97, 0, 8],
      [10, 97, 140, 148],
    ])
    expect(rim('left')).toEqual([
      [-105, -97, 0, 148],
      [-97, -10, 0, 8],
      [-97, -10, 140, 148],
    ])
  })

  test('is a quarter of a small page, and a third of it from the gutter', () => {
    expect(rim('right', covered([], { width: 24, height: 60 }))).toEqual([
      [18, 24, 0, 60],
      [8, 18, 0, 6],
      [8, 18, 54, 60],
    ])
    expect(rim('right', covered([], { width: 60, height: 20 }))[0]).toEqual([55, 60, 0, 20])
  })

  test('keeps 3 mm from what is behind, on its own page', () => {
    const behind = [box(80, 100, 50, 70)]
    expect(rim('right', covered(), behind).slice(0, 2)).toEqual([
      [97, 105, 0, 47],
      [97, 105, 73, 148],
    ])
    expect(rim('left', covered(), behind)).toEqual(rim('left'))
    expect(rim('left', covered(), [box(-100, -80, 50, 70)]).slice(0, 2)).toEqual([
      [-105, -97, 0, 47],
      [-105, -97, 73, 148],
    ])
    // Up to 3 mm from the strip it is not in the way.
    expect(rim('right', covered(), [box(80, 93.9, 50, 70)])).toEqual(rim('right'))
    expect(rim('right', covered(), [box(80, 94.1, 50, 70)])).toHaveLength(4)
    expect(rim('right', covered(), [box(40, 60, 11.1, 70)])).toEqual(rim('right'))
    expect(rim('right', covered(), [box(40, 60, 10.9, 70)])).toEqual([
      [97, 105, 0, 148],
      [10, 37, 0, 8],
      [63, 97, 0, 8],
      [10, 97, 140, 148],
    ])
    expect(rim('right', covered(), [box(40, 60, 80, 137.1)])).toHaveLength(4)
  })

  test('leaves out stretches under 8 mm', () => {
    expect(rim('right', covered(), [box(95, 105, 11, 20)])[0]).toEqual([97, 105, 0, 8])
    expect(rim('right', covered(), [box(95, 105, 10.9, 20)])[0]).toEqual([97, 105, 23, 148])
  })

  test('is cut once by what overlaps, in whatever order it is told', () => {
    const parts = [box(95, 105, 100, 120), box(95, 105, 30, 60), box(95, 105, 40, 50)]
    expect(
      rim('right', covered(), parts)
        .filter(([from]) => from === 97)
        .map(([, , low, high]) => [low, high]),
    ).toEqual([
      [0, 27],
      [63, 97],
      [123, 148],
    ])
  })

  test('is free of what is cut from the card', () => {
    // The layer's hole reaches 96 mm from the gutter: within 3 mm of the strip, from 40 to 80 along.
    const made = covered([layer('lamp', 'gutter', 40, 80, 96)])
    expect(rim('right', made).slice(0, 2)).toEqual([
      [97, 105, 0, 37],
      [97, 105, 83, 148],
    ])
  })
})
