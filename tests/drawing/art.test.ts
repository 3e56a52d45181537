// What a design draws on its panels, and its outlines to colour in, in numbers worked by hand.
import { describe, expect, it } from 'vitest'
import { artOutlines } from '../../src/drawing/art/outlines.ts'
import { artOn, smooth } from '../../src/drawing/art/shapes.ts'
import { PAPERS } from '../../src/drawing/pen/papers.ts'
import type { Flat } from '../../src/paper/index.ts'
import { parseDesign } from '../../src/paper/index.ts'
import { A6 } from '../paper/shared/designs.ts'

const read = (art: readonly object[], mechanisms: readonly object[] = []) =>
  parseDesign({ hingebook: 1, title: 'Moon', card: A6, mechanisms, art })

const box = (left: number, low: number, right: number, high: number): Flat[] => [
  [left, low],
  [right, low],
  [right, high],
  [left, high],
]

const near = (found: readonly (readonly number[])[], wanted: readonly (readonly number[])[]): void => {
  expect(found).toHaveLength(wanted.length)
  found.forEach((p, k) => {
    p.forEach((value, i) => {
      expect(value, `point ${k}`).toBeCloseTo(wanted[k]?.[i] ?? Number.NaN, 9)
    })
  })
}

// Source: a uniform Catmull-Rom spline in Bezier form (Catmull and Rom 1974): handles are a sixth of the chord
// between the neighbours; at an open end the end is its own neighbour.
describe('a smooth line', () => {
  it('that is open, through three points', () => {
    near(
      smooth(
        [
          [0, 0],
          [6, 0],
          [6, 12],
        ],
        false,
      ),
      [
        [0, 0],
        [1, 0],
        [5, -2],
        [6, 0],
        [7, 2],
        [6, 10],
        [6, 12],
      ],
    )
  })

  it('that is closed comes back to its start, every corner alike', () => {
    near(smooth(box(0, 0, 6, 6), true), [
      [0, 0],
      [1, -1],
      [5, -1],
      [6, 0],
      [7, 1],
      [7, 5],
      [6, 6],
      [5, 7],
      [1, 7],
      [0, 6],
      [-1, 5],
      [-1, 1],
      [0, 0],
    ])
  })

  it('stops at a point given twice, and sets out anew: a corner', () => {
    near(
      smooth(
        [
          [0, 0],
          [6, 0],
          [6, 0],
          [6, 12],
        ],
        false,
      ),
      [
        [0, 0],
        [1, 0],
        [5, 0],
        [6, 0],
        [6, 2],
        [6, 10],
        [6, 12],
      ],
    )
    // Two points that are level in one way only are no corner.
    expect(
      smooth(
        [
          [0, 0],
          [0, 6],
        ],
        false,
      ),
    ).toHaveLength(4)
  })
})

describe('the art of a face', () => {
  const fill = (more: object = {}) => ({
    on: 'page/right',
    shape: box(10, 10, 20, 20),
    fill: 'amber',
    ...more,
  })

  it('goes round one way, however it was written', () => {
    const there = artOn(read([fill()]), 'page/right', 'front')?.shapes[0]
    const back = artOn(read([fill({ shape: box(10, 10, 20, 20).reverse() })]), 'page/right', 'front')
      ?.shapes[0]
    expect(there?.runs[0]).toEqual(box(10, 10, 20, 20))
    const turn = (run: readonly Flat[] = []) =>
      run.reduce((sum, [x, y], k) => {
        const [u = 0, v = 0] = run[(k + 1) % run.length] ?? []
        return sum + (x * v - u * y) / 2
      }, 0)
    expect(turn(back?.runs[0])).toBeCloseTo(100, 9)
    // A line that is open keeps the way in which it was drawn.
    const line = fill({ shape: box(10, 10, 20, 20).reverse(), fill: null, closed: false })
    expect(artOn(read([line]), 'page/right', 'front')?.shapes[0]?.runs[0]).toEqual(
      box(10, 10, 20, 20).reverse(),
    )
  })

  it('is told by its colours, what glows apart from the rest', () => {
    const found = artOn(
      read([fill({ line: true, lineColour: 'rust', lineWidth: 1 }), fill({ glows: true })]),
      'page/right',
      'front',
    )
    expect(found?.shapes).toMatchObject([
      { fill: PAPERS.amber, line: PAPERS.rust, width: 1, bends: false, closed: true },
    ])
    expect(found?.lit).toMatchObject([{ fill: PAPERS.amber, line: null }])
    expect(artOn(read([fill()]), 'page/left', 'front')).toBeNull()
    expect(artOn(read([fill()]), 'page/right', 'back')).toBeNull()
    expect(artOn(read([]), 'page/right', 'front')).toBeNull()
  })

  it('is drawn on every panel that it names', () => {
    const made = read([fill({ also: ['page/left'] })])
    expect(artOn(made, 'page/left', 'front')?.shapes).toEqual(artOn(made, 'page/right', 'front')?.shapes)
  })

  it('joins neighbours that look alike, unless their lines would be covered', () => {
    const count = (...art: object[]) =>
      artOn(read(art), 'page/right', 'front')?.shapes.map(({ runs }) => runs.length)
    expect(count(fill(), fill(), fill())).toEqual([3])
    expect(count(fill(), fill({ fill: 'moon' }), fill())).toEqual([1, 1, 1])
    expect(count(fill(), fill({ curve: true }))).toEqual([1, 1])
    expect(count(fill({ line: true }), fill({ line: true }))).toEqual([1, 1])
    const line = { fill: null, closed: false }
    expect(count(fill(line), fill(line))).toEqual([2])
    expect(count(fill(line), fill({ fill: null }))).toEqual([1, 1])
    expect(count(fill(line), fill({ ...line, lineWidth: 1 }))).toEqual([1, 1])
    expect(count(fill(line), fill({ ...line, lineColour: 'rust' }))).toEqual([1, 1])
  })
})

describe('outlines to colour in', () => {
  const on = (...art: object[]) =>
    artOutlines(read(art.map((one) => ({ on: 'page/right', fill: 'amber', ...one }))), 'card', 'front')

  it('of one square are one line round it, back to its start', () => {
    const [run, ...more] = on({ shape: box(10, 10, 20, 20) })
    expect(more).toEqual([])
    near(
      [run?.[0] ?? [], run?.at(-1) ?? []],
      [
        [10, 10],
        [10, 10],
      ],
    )
    for (const corner of box(10, 10, 20, 20)) expect(run).toContainEqual(corner)
    // Looked at every 1.2 mm at the most: nine pieces a side.
    expect(run).toHaveLength(1 + 4 * 9)
  })

  it('of an open line are that line, and do not close', () => {
    const [run] = on({ shape: box(10, 10, 20, 20), fill: null, closed: false })
    near(
      [run?.[0] ?? [], run?.at(-1) ?? []],
      [
        [10, 10],
        [10, 20],
      ],
    )
    expect(run).toHaveLength(1 + 3 * 9)
  })

  // Five straight pieces for a cubic: Bernstein's polynomials at fifths. From (0, 0) to (30, 0) by (10, 0) and (20, 0)
  // of a straight spline they are even steps; round a square of 6 the middle of a side stands out by 3/4 of 1 mm.
  it('of a curve run along its cubics', () => {
    const [run = []] = on({ shape: box(40, 40, 46, 46), curve: true })
    const lows = run.map(([, y]) => y)
    // At 2/5 and 3/5 of the way 3 u u t + 3 u t t = 0.72 of the handles' 1 mm.
    expect(Math.min(...lows)).toBeCloseTo(40 - 0.72, 9)
    const xs = run.filter(([, y]) => Math.abs(y - (40 - 0.72)) < 1e-9).map(([x]) => x)
    // At 2/5: 3 u u t (1) + 3 u t t (5) + t t t (6) = 0.432 + 1.44 + 0.384.
    expect(Math.min(...xs)).toBeCloseTo(42.256, 9)
    expect(Math.max(...xs)).toBeCloseTo(43.744, 9)
    near(
      [run[0] ?? [], run.at(-1) ?? []],
      [
        [40, 40],
        [40, 40],
      ],
    )
  })

  it('break where something that is drawn later lies over them', () => {
    // A bar across the line from 30 to 60 hides its middle from 40 to 50, looked at every 1.2 mm.
    const line = {
      shape: [
        [30, 60],
        [60, 60],
      ],
      fill: null,
      closed: false,
    }
    const bar = (more: object = {}) => ({ shape: box(40, 55, 50, 65), ...more })
    const ends = (runs: readonly (readonly Flat[])[]) =>
      runs.filter((run) => run.every(([, y]) => y === 60)).map((run) => [run[0]?.[0], run.at(-1)?.[0]])
    const [left, right, ...more] = ends(on(line, bar()))
    expect(more).toEqual([])
    expect(left?.[0]).toBe(30)
    expect(Math.abs((left?.[1] ?? 0) - 40)).toBeLessThanOrEqual(0.6)
    expect(Math.abs((right?.[0] ?? 0) - 50)).toBeLessThanOrEqual(0.6)
    expect(right?.[1]).toBe(60)
    // Drawn before it, or beside it, or with no fill, it hides nothing.
    expect(ends(on(bar(), line))).toEqual([[30, 60]])
    for (const beside of [box(40, 61, 50, 65), box(40, 55, 50, 59), box(61, 55, 70, 65), box(20, 55, 29, 65)])
      expect(ends(on(line, bar({ shape: beside })))).toEqual([[30, 60]])
    expect(ends(on(line, bar({ fill: null })))).toEqual([[30, 60]])
  })

  it('are hidden by an outline with a dent only where it has paper', () => {
    // A U of 10 mm arms round the line at x from 45 to 55.
    const u = [
      [35, 50],
      [65, 50],
      [65, 80],
      [55, 80],
      [55, 60],
      [45, 60],
      [45, 80],
      [35, 80],
    ]
    const upright = {
      shape: [
        [50, 45],
        [50, 85],
      ],
      fill: null,
      closed: false,
    }
    const runs = on(upright, { shape: u }).filter((run) => run.every(([x]) => x === 50))
    expect(runs.map((run) => [run[0]?.[1], run.at(-1)?.[1]].map((y) => Math.round(y ?? 0)))).toEqual([
      [45, 50],
      [60, 85],
    ])
  })

  it('lie on the piece and the face that are asked for', () => {
    const made = read(
      [
        { on: 'moon/face', shape: box(22, 22, 28, 28), fill: 'moon' },
        { on: 'page/right', shape: box(22, 22, 28, 28), fill: 'moon' },
      ],
      [
        {
          id: 'moon',
          kind: 'rider',
          on: 'page/right',
          shape: box(20, 20, 50, 50),
          glue: box(30, 30, 40, 40),
        },
      ],
    )
    const card = artOutlines(made, 'card', 'front')
    const moon = artOutlines(made, 'moon/piece', 'front')
    expect(moon.length).toBeGreaterThan(0)
    expect(artOutlines(made, 'owl', 'front')).toEqual([])
    expect(artOutlines(made, 'moon/piece', 'back')).toEqual([])
    const xs = card.flat().map(([x]) => x)
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([22, 28])
  })
})
