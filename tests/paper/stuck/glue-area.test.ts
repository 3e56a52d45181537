// Glue under pieces with dents and over panels with holes: what of it lies off the paper, by polyclip-ts (MIT).
import * as polyclip from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { modelOf } from '../../../src/paper/index.ts'
import { glueArea } from '../../../src/paper/stuck/glue-area.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'

type Ring = [number, number][]

const ring = (points: readonly Flat[]): Ring => points.map(([x, y]) => [x, y])

const areaOf = (polygons: readonly (readonly Ring[])[]): number =>
  polygons.flat().reduce(
    (sum, points) =>
      sum +
      points.reduce((all, [x, y], k) => {
        const [u, v] = points[(k + 1) % points.length] ?? [x, y]
        return all + (x * v - u * y) / 2
      }, 0),
    0,
  )

const off = (glue: readonly Flat[], paper: readonly Flat[]): number =>
  areaOf(polyclip.difference([ring(glue)], [ring(paper)]))

const over = (glue: readonly Flat[], hole: readonly Flat[]): number =>
  areaOf(polyclip.intersection([ring(glue)], [ring(hole)]))

const star = (points: number, long: number, short: number, [x, y]: Flat): Flat[] =>
  Array.from({ length: 2 * points }, (_, k): Flat => {
    const [turn, far] = [(Math.PI * k) / points, k % 2 === 0 ? long : short]
    return [x + far * Math.cos(turn), y + far * Math.sin(turn)]
  })

const box = (a0: number, l0: number, a1: number, l1: number): Flat[] => [
  [a0, l0],
  [a1, l0],
  [a1, l1],
  [a0, l1],
]

/** A square with narrow slits from its edges towards its middle. */
const slit = (...slits: readonly (readonly [Flat, Flat, Flat])[]): Flat[] => {
  const square = box(30, 50, 70, 90)
  return [square[0] as Flat, square[1] as Flat, ...slits.flat(), square[2] as Flat, square[3] as Flat]
}

const SHAPES: Readonly<Record<string, readonly Flat[]>> = {
  'a star of five': star(5, 30, 12, [50, 70]),
  'a star of nine': star(9, 32, 22, [50, 70]),
  'a star of seventeen': star(17, 32, 26, [50, 70]),
  'a slit square': slit([
    [70, 76],
    [60, 74],
    [70, 77],
  ]),
  'a square slit twice': slit(
    [
      [70, 62],
      [57, 66],
      [70, 63],
    ],
    [
      [70, 79],
      [57, 75],
      [70, 80],
    ],
  ),
  'a bow': [
    [20, 60],
    [50, 68],
    [80, 60],
    [80, 84],
    [50, 76],
    [20, 84],
  ],
}

describe.each(Object.entries(SHAPES))('under %s', (_, shape) => {
  const bare = modelOf(design([]))
  const page = bare.panels.findIndex(({ name }) => name === 'page/right')
  const glue = glueArea(bare, page, shape)

  test('no glue shows beside it', () => {
    expect(glue).not.toBeNull()
    expect(off(glue ?? [], shape)).toBeLessThan(1e-6)
    expect(areaOf([[ring(glue ?? [])]])).toBeGreaterThan(10)
  })

  test('nor beside the page', () => {
    const moved = shape.map(([a, l]): Flat => [a + 40, l])
    const found = glueArea(bare, page, moved)
    if (found) expect(off(found, box(0, 0, 105, 148))).toBeLessThan(1e-6)
    // Most of it still lies on the page.
    expect(found).not.toBeNull()
  })

  test.each([
    ['a layer’s hole', [layer('step', 'gutter', 60, 80, 44)]],
    ['the hole of a V-fold', [fold('beak', 'gutter', 110, -60, 52)]],
    ['a narrow strip', [layer('reed', 'gutter', 71, 76, 56)]],
  ] as const)('nor over %s', (_name, mechanisms) => {
    const model = modelOf(design(mechanisms))
    const index = model.panels.findIndex(({ name }) => name === 'page/right')
    const found = glueArea(model, index, shape)
    for (const { outline } of model.panels[index]?.notches ?? [])
      if (found) expect(over(found, outline)).toBeLessThan(1e-6)
    if (found) expect(off(found, shape)).toBeLessThan(1e-6)
  })
})

test('as much is glued as lies free: a square to nine tenths, and less far where its edges would not stay on it', () => {
  const bare = modelOf(design([]))
  const page = bare.panels.findIndex(({ name }) => name === 'page/right')
  const area = (shape: readonly Flat[]) => areaOf([[ring(glueArea(bare, page, shape) ?? [])]])
  // Nine tenths of 40 either way, its corners kept: 36², less nothing.
  expect(area(box(30, 50, 70, 90))).toBeGreaterThan(0.97 * 36 ** 2)
  expect(area(box(30, 50, 70, 90))).toBeLessThanOrEqual(36 ** 2 + 1)
  // A slit takes some of it.
  expect(area(SHAPES['a slit square'] ?? [])).toBeLessThan(area(box(30, 50, 70, 90)))
})
