// Single-vertex laws of flat and rigid folding, at every point of the sheet where folds meet.
import fc from 'fast-check'
import { mat3 } from 'gl-matrix'
import { describe, expect, test } from 'vitest'
import type { Design, Fold } from '../../src/paper/index.ts'
import { poseAt } from '../../src/paper/index.ts'
import { design, designs, openings, runs, vFold } from '../paper/shared/designs.ts'
import { RAD } from '../paper/shared/space.ts'
import type { Vertex } from './vertices.ts'
import { onCut, vertices } from './vertices.ts'

/** Sector angles: found on the sheet to the rounding of its points, degrees. */
const DRAWN = 1e-6

/** The alternating sum of the sectors. Kawasaki 1989, Justin 1986 [statement found: encyclopaedia article]. */
const alternating = (sectors: readonly number[]): number =>
  sectors.reduce((sum, sector, k) => sum + (k % 2 === 0 ? sector : -sector), 0)

const count = ({ rays }: Vertex, fold: Fold): number => rays.filter((ray) => ray.fold === fold).length

/** How far a fold is from flat, degrees: positive for a valley, negative for a mountain. */
const turns = (vertex: Vertex, made: Design, opening: number): number[] => {
  const { creases } = poseAt(made, opening)
  return vertex.rays.map(({ fold, crease }) => {
    const bend = 180 - (creases[crease]?.angle ?? Number.NaN)
    return fold === 'valley' ? bend : -bend
  })
}

/**
 * How far the sheet is from closing once round the vertex: the product of a turn about each crease and a
 * turn through each sector is the identity for paper that does not tear. gl-matrix (MIT).
 */
function openness(sectors: readonly number[], folds: readonly number[]): number {
  const turn = (axis: 'x' | 'z', degrees: number): mat3 => {
    const [s, c] = [Math.sin(degrees * RAD), Math.cos(degrees * RAD)]
    return axis === 'x'
      ? mat3.fromValues(1, 0, 0, 0, c, s, 0, -s, c)
      : mat3.fromValues(c, s, 0, -s, c, 0, 0, 0, 1)
  }
  const whole = mat3.create()
  sectors.forEach((sector, k) => {
    mat3.multiply(whole, whole, turn('x', folds[k] as number))
    mat3.multiply(whole, whole, turn('z', sector))
  })
  const identity = mat3.create()
  return Math.max(...Array.from(whole, (value, k) => Math.abs(value - (identity[k] as number))))
}

/** Huffman's ratio, opposite creases 1 and 3, sector i after crease i. IEEE Trans. Computers C-25 (1976) [memory]. */
const huffman = (s: readonly number[], first: 0 | 1): number => {
  const sine = (k: number) => Math.sin((s[(first + k) % 4] as number) * RAD)
  return (sine(1) * sine(2)) / (sine(3) * sine(0))
}

const single = designs({ single: true, depth: 4, most: 6 })

describe('the measuring stick itself', () => {
  // Vertices with known motions [computed by closing rotations apart from this program; formula memory].
  test.each([
    { sectors: [60, 80, 120, 100], folds: [-117.943243, 60, -117.943243, -60] },
    { sectors: [60, 80, 120, 100], folds: [-12.179702, 60, 12.179702, 60] },
    { sectors: [50, 85, 100, 125], folds: [70, -27.346304, 54.609769, 26.583499] },
    { sectors: [50, 85, 100, 125], folds: [70, 170.113196, -54.609769, -151.391539] },
  ])('$sectors folded by $folds closes', ({ sectors, folds }) => {
    expect(openness(sectors, folds)).toBeLessThan(2e-8)
    expect(
      openness(
        sectors,
        folds.map((fold, k) => (k === 1 ? fold + 0.01 : fold)),
      ),
    ).toBeGreaterThan(1e-5)
  })

  test('a vertex of the article that folds flat has the alternating sum 0 [found: encyclopaedia article]', () => {
    expect(alternating([90, 45, 22.5, 22.5, 45, 90, 22.5, 22.5])).toBe(0)
  })

  test('Huffman’s ratios of a vertex that does not fold flat [computed]', () => {
    expect(huffman([50, 85, 100, 125], 0)).toBeCloseTo(1.563425528, 8)
    expect(huffman([50, 85, 100, 125], 1)).toBeCloseTo(1.05710417, 8)
  })

  test('a beak has one vertex, its apex: a mountain ridge and three valleys', () => {
    const [apex, ...others] = vertices(design([vFold('beak', 'gutter', 110, -40, 40)]))
    expect(others).toEqual([])
    expect(apex?.at).toEqual([0, 110])
    expect(apex?.rays.map(({ crease, fold }) => `${crease} ${fold}`)).toEqual([
      'gutter valley',
      'beak/left valley',
      'beak/ridge mountain',
      'beak/right valley',
    ])
    expect(apex?.sectors.map((sector) => Math.round(sector * 1e6) / 1e6)).toEqual([140, 40, 40, 140])
  })

  test('a layer has none: all its folds end on its cuts', () => {
    expect(
      vertices(design([{ id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 10, end: 40, left: 20 }])),
    ).toEqual([])
  })
})

describe('every vertex of every sheet', () => {
  test('has one for each V-fold, at its apex, unless another cut runs through that very point', () => {
    fc.assert(
      fc.property(single, (made) => {
        const flat = poseAt(made, 180).creases
        const apexes = made.mechanisms.flatMap(({ id, kind }): [number, number][] => {
          const [x, y] = flat[`${id}/ridge`]?.start ?? [Number.NaN, Number.NaN]
          return kind === 'cut-v-fold' && !onCut(made, [x, y]) ? [[x, y]] : []
        })
        const found = vertices(made)
        expect(found).toHaveLength(apexes.length)
        for (const [x, y] of apexes)
          expect(Math.min(...found.map(({ at }) => Math.hypot(at[0] - x, at[1] - y)))).toBeLessThan(1e-6)
      }),
      runs(100),
    )
  })

  test('folds flat by Kawasaki: its alternate sectors come to the same', () => {
    fc.assert(
      fc.property(single, (made) => {
        for (const { sectors } of vertices(made)) expect(Math.abs(alternating(sectors))).toBeLessThan(DRAWN)
      }),
      runs(200),
    )
  })

  // |mountains - valleys| = 2. Maekawa and Justin, 1980s [statement found: encyclopaedia article].
  test('folds flat by Maekawa: mountains and valleys differ by two', () => {
    fc.assert(
      fc.property(single, (made) => {
        for (const vertex of vertices(made))
          expect(Math.abs(count(vertex, 'mountain') - count(vertex, 'valley'))).toBe(2)
      }),
      runs(200),
    )
  })

  test('closes at every opening: turns about its creases and through its sectors come back to the start', () => {
    fc.assert(
      fc.property(single, openings, (made, opening) => {
        for (const vertex of vertices(made))
          expect(openness(vertex.sectors, turns(vertex, made, opening))).toBeLessThan(1e-7)
      }),
      runs(200),
    )
  })

  test('keeps Huffman’s relation between opposite creases at every opening', () => {
    fc.assert(
      fc.property(single, fc.double({ min: 1, max: 175, noNaN: true }), (made, opening) => {
        for (const vertex of vertices(made)) {
          expect(vertex.sectors).toHaveLength(4)
          const bend = turns(vertex, made, opening).map((fold) => Math.sin((fold / 2) * RAD) ** 2)
          for (const first of [0, 1] as const) {
            const [one, three] = [bend[first] as number, bend[first + 2] as number]
            expect(Math.abs(one - huffman(vertex.sectors, first) * three)).toBeLessThan(1e-7)
          }
        }
      }),
      runs(200),
    )
  })
})

describe('where several folds meet in one point', () => {
  const meeting: readonly { readonly name: string; readonly made: Design; readonly folds: number }[] = [
    {
      name: 'two V-folds that share one apex',
      made: design([vFold('up', 'gutter', 70, 40, 50), vFold('down', 'gutter', 70, -40, 35)]),
      folds: 6,
    },
    {
      name: 'a V-fold on a ridge, apex on apex',
      made: design([vFold('beak', 'gutter', 110, -60, 55), vFold('crest', 'beak/ridge', 0, 30, 20)]),
      folds: 6,
    },
    {
      name: 'a V-fold on a right fold, apex on apex',
      made: design([vFold('beak', 'gutter', 110, -60, 50), vFold('fin', 'beak/right', 0, 30, 20)]),
      folds: 6,
    },
    {
      name: 'one on the ridge and one on either fold, apex on apex',
      made: design([
        vFold('beak', 'gutter', 110, -60, 60),
        vFold('crest', 'beak/ridge', 0, 30, 25),
        vFold('fin-left', 'beak/left', 0, 30, 20),
        vFold('fin-right', 'beak/right', 0, 30, 20),
      ]),
      folds: 10,
    },
    {
      name: 'a trapezoid that comes to a point',
      made: design([
        { id: 'sail', kind: 'cut-trapezoid', on: 'gutter', start: 20, end: 60, startCut: 0, endCut: 30 },
      ]),
      folds: 4,
    },
  ]

  test.each(meeting)('$name: Kawasaki, Maekawa and closure hold', ({ made, folds }) => {
    const [vertex, ...others] = vertices(made)
    expect(others).toEqual([])
    expect(vertex?.rays).toHaveLength(folds)
    if (!vertex) return
    expect(Math.abs(alternating(vertex.sectors))).toBeLessThan(DRAWN)
    expect(Math.abs(count(vertex, 'mountain') - count(vertex, 'valley'))).toBe(2)
    for (const opening of [0, 20, 70, 90, 140, 180])
      expect(openness(vertex.sectors, turns(vertex, made, opening))).toBeLessThan(1e-7)
  })
})
