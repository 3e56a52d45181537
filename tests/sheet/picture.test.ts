// What is drawn on a design, printed as lines to colour in.
import { describe, expect, test } from 'vitest'
import { artOutlines } from '../../src/drawing/art/outlines.ts'
import type { Point } from '../../src/drawing/pen/marks.ts'
import { parseDesign, pieces } from '../../src/paper/index.ts'
import { looks } from '../../src/sheet/marks/looks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { A6, gluedMoth, vFold } from '../paper/shared/designs.ts'
import { dummy, laid } from './designs.ts'

const square = (on: string, from: number, to: number, more: object = {}) => ({
  on,
  shape: [
    [from, from],
    [to, from],
    [to, to],
    [from, to],
  ],
  fill: 'amber',
  ...more,
})

const read = (art: readonly object[], mechanisms: readonly object[] = []) =>
  parseDesign({ hingebook: 1, title: 'Card', card: A6, mechanisms, art })

const long = (runs: readonly (readonly (readonly [number, number])[])[]): number =>
  runs.reduce(
    (sum, run) =>
      sum +
      run.slice(1).reduce((part, [x, y], k) => {
        const [u, v] = run[k] as readonly [number, number]
        return part + Math.hypot(x - u, y - v)
      }, 0),
    0,
  )

describe('outlines to colour in', () => {
  test('lie where the panel lies on its piece: the left page is the mirror of the right', () => {
    const runs = (on: string) => artOutlines(read([square(on, 20, 30)]), 'card', 'front').flat()
    expect(Math.min(...runs('page/right').map(([x]) => x))).toBeCloseTo(20, 9)
    expect(Math.max(...runs('page/left').map(([x]) => x))).toBeCloseTo(-20, 9)
    expect(long(artOutlines(read([square('page/left', 20, 30)]), 'card', 'front'))).toBeCloseTo(40, 9)
  })
  test('are cut to the paper', () => {
    // Half of a 20 mm square hangs over the page's corner: two sides of 10 mm are left.
    const over = artOutlines(read([square('page/right', -10, 10)]), 'card', 'front')
    expect(long(over)).toBeCloseTo(20, 6)
    for (const [x, y] of over.flat()) {
      expect(x).toBeGreaterThanOrEqual(-1e-9)
      expect(y).toBeGreaterThanOrEqual(-1e-9)
    }
  })
  test('are left out where something drawn later lies over them, and only there', () => {
    const both = artOutlines(
      read([square('page/right', 20, 30), square('page/right', 25, 35)]),
      'card',
      'front',
    )
    // The earlier square loses 5 mm of two sides, to within the 1.2 mm as finely as it is looked at.
    expect(Math.abs(long(both) - 70)).toBeLessThan(2.5)
    const line = artOutlines(
      read([square('page/right', 20, 30), square('page/right', 25, 35, { fill: null })]),
      'card',
      'front',
    )
    expect(long(line)).toBeCloseTo(80, 6)
  })
  test('are those of the face that is asked for', () => {
    const one = read([square('page/right', 20, 30, { face: 'back' })])
    expect(artOutlines(one, 'card', 'front')).toEqual([])
    expect(long(artOutlines(one, 'card', 'back'))).toBeCloseTo(40, 9)
  })
  test('of a glued piece lie within its outline', () => {
    const one = read([square('moth/left', -30, 60), square('moth/right', 4, 12)], [gluedMoth()])
    const piece = pieces(one).find(({ id }) => id.startsWith('moth'))
    const xs = piece?.outline.map(([x]) => x) ?? []
    const found = artOutlines(one, piece?.id ?? '', 'front')
    expect(long(found)).toBeGreaterThan(20)
    for (const [x] of found.flat()) {
      expect(x).toBeGreaterThanOrEqual(Math.min(...xs) - 1e-9)
      expect(x).toBeLessThanOrEqual(Math.max(...xs) + 1e-9)
    }
  })
})

describe('on a sheet', () => {
  const one = read([square('page/right', 20, 30)], [vFold('beak', 'gutter', 110, -40, 45)])
  const roles = (art?: 'lines' | 'none') =>
    laid(one, { paper: 'a4', ...(art ? { art } : {}) }).flatMap(({ marks }) => marks.map(({ role }) => role))

  test('the picture is printed only where it is asked for', () => {
    expect(roles()).not.toContain('picture')
    expect(roles('none')).toEqual(roles())
    expect(roles('lines')).toContain('picture')
  })
  test('it lies under every other line, is never solid, and the key says what it is', () => {
    const all = roles('lines')
    expect(all[0]).toBe('picture')
    expect(looks.picture.dash.length).toBeGreaterThan(0)
    expect(all.filter((role) => role === 'picture')).toHaveLength(2)
    const words = laid(one, { paper: 'a4', art: 'lines' })
      .flatMap(({ marks }) => marks.flatMap((mark) => (mark.mark === 'word' ? [mark.text] : [])))
      .join(' ')
    expect(words).toContain('fine grey dots')
  })
})

describe('lines that lie on one another', () => {
  /** From one corner to the other, so that an edge is shared with the square at 20 to 30, or lies beside it. */
  const beside = (from: number) => ({
    on: 'page/right',
    shape: [
      [from, 20],
      [from + 10, 20],
      [from + 10, 30],
      [from, 30],
    ],
    fill: 'rust',
  })
  const picture = (art: readonly object[]): readonly (readonly Point[])[] =>
    laid(read(art), { paper: 'a4', art: 'lines' }).flatMap(({ marks }) =>
      marks.flatMap((mark) => (mark.mark === 'path' && mark.of === 'card' ? mark.runs : [])),
    )
  const one = square('page/right', 20, 30)

  test('are drawn once, and those beside one another are two', () => {
    // Seven sides of 10 mm, not eight; what meets the shared one may lose a look's 1.2 mm.
    expect(Math.abs(long(picture([one, beside(30)])) - 70)).toBeLessThan(1.3)
    expect(Math.abs(long(picture([one, beside(30.2)])) - 70)).toBeLessThan(1.3)
    expect(long(picture([one, beside(31)]))).toBeCloseTo(80, 6)
  })

  test('go on where one takes over from another: each part would begin with a dot of its own', () => {
    const line = (points: readonly (readonly number[])[]) => ({
      ...{ on: 'page/right', closed: false, fill: null },
      shape: points,
    })
    const runs = picture([
      line([
        [20, 20],
        [30, 20],
      ]),
      line([
        [40, 20],
        [30, 20],
      ]),
      line([
        [30, 20],
        [30, 30],
      ]),
    ])
    expect(runs.map((run) => Math.round(long([run]))).toSorted()).toEqual([10, 20])
  })

  test('a narrow shape is a line where its sides are one, and a small one stays whole', () => {
    const strip = (wide: number) => ({
      on: 'page/right',
      shape: [
        [20, 20],
        [60, 20],
        [60, 20 + wide],
        [20, 20 + wide],
      ],
      fill: 'rust',
    })
    expect(long(picture([strip(0.2)]))).toBeLessThan(43)
    expect(long(picture([strip(0.5)]))).toBeCloseTo(81, 6)
    expect(long(picture([square('page/right', 50, 50.1)]))).toBeCloseTo(0.4, 6)
  })
})

describe('along folds', () => {
  /** How much of the picture's lines lies on the gutter, mm, between 8 mm from its ends. */
  const onGutter = (art: readonly object[], lines: 'front' | 'ticks', papers: object): number => {
    const one = parseDesign({ hingebook: 1, title: 'Card', card: A6, mechanisms: [], art, papers })
    const [page] = laid(one, { paper: 'a4', lines, art: 'lines' })
    const gutter = page?.placed[0]?.place.origin[0] ?? Number.NaN
    const runs = (page?.marks ?? []).flatMap((mark) =>
      mark.mark === 'path' && mark.role === 'picture' ? mark.runs : [],
    )
    return runs
      .flatMap((run) => run.slice(1).map((end, k) => [run[k] ?? end, end] as const))
      .filter((ends) => ends.every(([x]) => Math.abs(x - gutter) < 0.2))
      .reduce((sum, [[, from], [, to]]) => sum + Math.abs(to - from), 0)
  }
  const left = square('page/left', 0, 60)

  test('no dots lie on the dashes of a fold', () => {
    expect(onGutter([left, square('page/right', 0, 60)], 'front', { page: 'dusk' })).toBe(0)
    expect(onGutter([left], 'front', { page: 'dusk' })).toBe(0)
  })
  test('a good copy has them between the ticks, where two colours meet, and only there', () => {
    expect(onGutter([left, square('page/right', 0, 60)], 'ticks', { page: 'dusk' })).toBe(0)
    // 60 mm of amber beside dusk, 4 mm of them under a tick, which begins 1 mm off the edge.
    expect(onGutter([left], 'ticks', { page: 'dusk' })).toBeCloseTo(55, 0)
  })
})

test.each(['heron', 'owl', 'garden'])('%s: no letter lies on a line of the picture', (name) => {
  for (const lines of ['front', 'ticks', 'back'] as const)
    for (const { marks } of laid(dummy(name), { paper: 'a4', lines, art: 'lines' })) {
      const picture = marks.flatMap((mark) =>
        mark.mark === 'path' && mark.role === 'picture' ? mark.runs : [],
      )
      // Fine steps along every run: no outline passes through a word between two of them.
      const points = picture.flatMap((run) =>
        run.slice(1).flatMap(([x, y], k) => {
          const [u, v] = run[k] ?? [x, y]
          return Array.from({ length: 6 }, (_, n) => [u + (n / 5) * (x - u), v + (n / 5) * (y - v)] as const)
        }),
      )
      for (const mark of marks) {
        if (mark.mark !== 'word') continue
        const [l, t, r, b] = extent(mark)
        expect(
          points.filter(([x, y]) => x > l && x < r && y > t && y < b),
          mark.text,
        ).toEqual([])
      }
    }
})
