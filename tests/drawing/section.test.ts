import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { PathMark, WordMark } from '../../src/drawing/pen/marks.ts'
import { section } from '../../src/drawing/section/section.ts'
import { slices } from '../../src/drawing/section/slices.ts'
import { compile, surfaces } from '../../src/paper/index.ts'
import { design, designs, runs, vFold } from '../paper/shared/designs.ts'
import { apart, dotOf, minus, RAD } from '../paper/shared/space.ts'
import { bare, lantern, pond } from './garden.ts'

const size = { width: 340, height: 280 }

describe('slices', () => {
  it('lie in the plane that cuts and in the panel that is cut', () => {
    fc.assert(
      fc.property(
        designs(),
        fc.double({ min: 0, max: 180, noNaN: true }),
        fc.double({ min: 0.01, max: 0.99, noNaN: true }),
        (one, opening, part) => {
          const poser = compile(one)
          poser(opening)
          const paper = surfaces(poser)
          const station = part * one.card.height
          for (const { leaf, from, to } of slices(paper, station)) {
            const panel = paper.find((surface) => surface.leaf === leaf)
            if (!panel) throw new Error('a slice of nothing')
            for (const p of [from, to]) {
              expect(p[1]).toBe(station)
              expect(Math.abs(dotOf(panel.front, minus(p, panel.points[0] ?? p)))).toBeLessThan(1e-8)
            }
          }
        },
      ),
      runs(100),
    )
  })

  it('of a bare card are its two pages', () => {
    const poser = compile(bare)
    poser(70)
    const found = slices(surfaces(poser), 40)
    expect(found.map(({ panel }) => panel)).toEqual(['page/left', 'page/right'])
    for (const { from, to } of found) expect(apart(from, to)).toBeCloseTo(105, 9)
  })

  // Source: the four-bar linkage with equal opposite links. Each wall is as wide as the other side's cut is deep.
  it('of a layer are a parallelogram at every opening', () => {
    const one = design([
      { id: 'step', kind: 'cut-layer', on: 'gutter', start: 60, end: 90, left: 30, right: 18 },
    ])
    const poser = compile(one)
    for (const opening of [1, 60, 90, 140, 180]) {
      poser(opening)
      const long = Object.fromEntries(
        slices(surfaces(poser), 70).map(({ panel, from, to }) => [panel, apart(from, to)]),
      )
      expect(long['step/left']).toBeCloseTo(18, 9)
      expect(long['step/right']).toBeCloseTo(30, 9)
      expect(long['page/left']).toBeCloseTo(75, 9)
      expect(long['page/right']).toBeCloseTo(87, 9)
    }
  })

  // Source: plane geometry of the gutter, two feet of 26 mm and two walls of 44 mm: a kite, its tip by Pythagoras.
  it('of a tent of its own card are its two walls, and its tip where they meet', () => {
    const poser = compile(pond)
    for (const opening of [30, 90, 150, 180]) {
      poser(opening)
      const cut = slices(surfaces(poser), 30)
      for (const wall of ['back/left', 'back/right']) {
        const found = cut.find(({ panel }) => panel === wall)
        expect(found && apart(found.from, found.to)).toBeCloseTo(44, 9)
      }
      const half = (opening / 2) * RAD
      const tip = 26 * Math.cos(half) + Math.sqrt(44 ** 2 - (26 * Math.sin(half)) ** 2)
      const ends = cut
        .filter(({ panel }) => panel === 'back/left')
        .flatMap(({ from, to }) => [from[2], to[2]])
      expect(Math.max(...ends)).toBeCloseTo(tip, 9)
    }
  })

  // Source: the floating layer's walls stand parallel to the plane between the pages, 22 mm high.
  it('of a floating layer are its platform and its walls', () => {
    const poser = compile(pond)
    for (const opening of [40, 120, 180]) {
      poser(opening)
      const cut = slices(surfaces(poser), 75)
      for (const wall of ['pond/wall-1', 'pond/wall-2', 'pond/wall-3']) {
        const found = cut.find(({ panel }) => panel === wall)
        expect(found && Math.abs(found.from[2] - found.to[2])).toBeCloseTo(22, 9)
        expect(found && Math.abs(found.from[0] - found.to[0])).toBeCloseTo(0, 9)
      }
      expect(cut.filter(({ panel }) => panel === 'pond/left' || panel === 'pond/right')).toHaveLength(2)
    }
  })
})

describe('section', () => {
  it('puts what is stuck on a face beside it, not over it', () => {
    const drawn = section(pond, 100, 30, size)
    const runOf = (name: string) =>
      drawn.marks.find((mark): mark is PathMark => mark.mark === 'path' && mark.of === name)?.runs[0] ?? []
    const [[ax = 0, ay = 0] = [], [bx = 0, by = 0] = []] = runOf('back/left')
    for (const [x, y] of runOf('spines/face')) {
      const off = ((bx - ax) * (y - ay) - (by - ay) * (x - ax)) / Math.hypot(bx - ax, by - ay)
      expect(Math.abs(off)).toBeCloseTo(5, 6)
    }
  })

  const rise = (drawing: { marks: readonly unknown[] }): string =>
    (drawing.marks as readonly WordMark[]).find((mark) => mark.mark === 'word' && mark.role === 'dimension')
      ?.text ?? ''

  // Source: the parallelogram's height, depth x sin(opening): 32 at 90 degrees, 27.7 at 60.
  it('measures a layer as high as its cut is deep at 90 degrees', () => {
    expect(rise(section(lantern, 90, 'body', size))).toBe('32.0 mm')
    expect(rise(section(lantern, 60, 'body', size))).toBe('27.7 mm')
    expect(rise(section(lantern, 120, 70, size, { of: 'body' }))).toBe('27.7 mm')
  })

  // Source: worked example, 45/45 V-fold at 90 degrees: the tip rises two thirds of the ridge.
  it('measures a 45 degree V-fold two thirds of its ridge high at 90 degrees', () => {
    const one = design([vFold('beak', 'gutter', 110, -60, 45)])
    expect(rise(section(one, 90, 'beak', size))).toBe('40.0 mm')
  })

  it('draws one square for 10 mm', () => {
    const drawn = section(lantern, 90, 'body', size)
    const squares = drawn.marks.find((mark) => mark.role === 'square') as PathMark
    const columns = squares.runs.filter(([a, b]) => a?.[0] === b?.[0]).map(([a]) => a?.[0] ?? 0)
    const step = (columns[1] ?? 0) - (columns[0] ?? 0)
    expect(step).toBeCloseTo(drawn.toScreen([10, 0])[0] - drawn.toScreen([0, 0])[0], 9)
    expect(Math.min(...columns.map((x) => Math.abs(x - drawn.toScreen([0, 0])[0])))).toBeLessThan(1e-9)
  })

  it('keeps its scale through the whole motion', () => {
    const at = (opening: number) => section(lantern, opening, 'body', size).toScreen([30, 40])
    for (const opening of [0, 45, 180]) expect(at(opening)).toEqual(at(90))
  })

  it('follows the tip when it is asked for by name', () => {
    const one = design([vFold('beak', 'gutter', 110, -60, 45)])
    // Flat, the tip lies at the slit; shut, beyond the apex by as much as it lay before it times cos 2a: on the apex.
    expect(section(one, 180, 'beak', size).station).toBeCloseTo(50, 9)
    expect(section(one, 0, 'beak', size).station).toBeCloseTo(110, 9)
  })

  it('throws for a mechanism that is not there', () => {
    expect(() => section(lantern, 90, 'owl', size)).toThrow(RangeError)
  })
})
