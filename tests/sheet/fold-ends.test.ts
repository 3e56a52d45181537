// Solid means cut: the ink of a fold touches no cut, and that of one fold none of another's, or scissors would follow it
// there. Where ink lies along a line is worked out here from its dashes, and so are distances.
import { describe, expect, test } from 'vitest'
import type { PieceLine } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { clearLines, foldTicks } from '../../src/sheet/marks/fold-ends.ts'
import { dashesOf } from '../../src/sheet/marks/looks.ts'
import { dummies, laid } from './designs.ts'

type Point = readonly [number, number]
type Stretch = readonly [Point, Point]

const along = ([a, b]: Stretch, t: number): Point => {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  return [a[0] + ((b[0] - a[0]) * t) / long, a[1] + ((b[1] - a[1]) * t) / long]
}

/** The stretches of a straight line that are inked. */
function inkOf(line: Stretch, { dash, phase }: ReturnType<typeof dashesOf>): readonly Stretch[] {
  const [a, b] = line
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const inked: Stretch[] = []
  let at = -phase
  for (let k = 0; at < long - 1e-9; k++) {
    const to = at + (dash[k % dash.length] as number)
    const [start, end] = [Math.max(0, at), Math.min(long, to)]
    if (k % 2 === 0 && end - start > 1e-9) inked.push([along(line, start), along(line, end)])
    at = to
  }
  return inked
}

const off = ([x, y]: Point, [a, b]: Stretch): number => {
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.min(1, Math.max(0, ((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v || 1)))
  return Math.hypot(x - a[0] - t * u, y - a[1] - t * v)
}

const cross = ([a, b]: Stretch, [x, y]: Point): number =>
  (b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])

const apart = (one: Stretch, other: Stretch): number => {
  const isCrossed =
    cross(one, other[0]) * cross(one, other[1]) < 0 && cross(other, one[0]) * cross(other, one[1]) < 0
  return isCrossed
    ? 0
    : Math.min(off(one[0], other), off(one[1], other), off(other[0], one), off(other[1], one))
}

/** Every fold and cut of a design's first page, in stretches; of folds the ink alone. */
function drawnOn(design: (typeof dummies)[number][1], lines: SheetLines) {
  const paper = fitOn(design, paperOf('a4')).ok ? 'a4' : 'a3'
  const [page] = laid(design, { paper, lines, care: [] })
  const paths = (page?.marks ?? []).flatMap((mark) =>
    mark.mark === 'path' && mark.of !== 'legend' ? [mark] : [],
  )
  const cuts = paths.flatMap(({ role, runs, closed }) =>
    role === 'cut'
      ? runs.flatMap((run): Stretch[] => {
          const ends = closed ? [...run, run[0] as Point] : run
          return ends.slice(1).map((b, k): Stretch => [ends[k] as Point, b])
        })
      : [],
  )
  const folds = paths.flatMap((mark) => {
    const [[a, b, more] = []] = mark.runs
    const isFold = ['valley', 'mountain', 'crease'].includes(mark.role)
    return isFold && a && b && !more ? [{ of: mark.of, ink: inkOf([a, b], dashesOf(mark)) }] : []
  })
  return { cuts, folds }
}

describe.each(['front', 'ticks', 'back'] as const)('lines %s: of every card of the garden', (lines) => {
  test.each(dummies)('%s', (_, design) => {
    const { cuts, folds } = drawnOn(design, lines)
    expect(folds.length).toBeGreaterThan(0)
    // Folds run into cuts at slants: what is seen of the gap is less than it is along the fold.
    for (const { of, ink } of folds)
      for (const one of ink) for (const cut of cuts) expect(apart(one, cut), of).toBeGreaterThan(0.3)
    folds.forEach(({ of, ink }, k) => {
      for (const other of folds.slice(k + 1))
        for (const one of ink)
          for (const two of other.ink) expect(apart(one, two), `${of} ${other.of}`).toBeGreaterThan(0.3)
    })
  })
})

const fold = (kind: PieceLine['kind'], ...points: readonly Point[]): PieceLine => ({ kind, points, of: kind })

describe('a fold keeps clear', () => {
  const cut = fold('cut', [0, 0], [10, 0])

  test('of a cut that it ends on, of one that it ends with, and of the fold that goes on', () => {
    const lines = [
      cut,
      fold('valley', [5, 0], [5, 30]),
      fold('mountain', [5, 30], [5, 60]),
      fold('valley', [10, 0], [30, 0]),
    ]
    expect(clearLines({ lines }).map(({ clear }) => clear)).toEqual([
      [0, 0],
      [0.9, 0.7],
      [0.7, 0],
      [0.9, 0],
    ])
  })

  test('and an old one of all that cross it', () => {
    const lines = [cut, fold('cut', [0, 6], [10, 6]), fold('crease', [5, -10], [5, 20])]
    expect(
      clearLines({ lines }).flatMap(({ line }) => (line.kind === 'crease' ? [line.points] : [])),
    ).toEqual([
      [
        [5, -10],
        [5, 0],
      ],
      [
        [5, 0],
        [5, 6],
      ],
      [
        [5, 6],
        [5, 20],
      ],
    ])
  })
})

describe('on a good copy', () => {
  const marked = (long: number) =>
    foldTicks(
      [
        [0, 0],
        [long, 0],
      ],
      [0.9, 0.5],
    ).map(({ points: [[from], [to]] }) => [from, to])

  test('a long fold has a tick at either end, clear of what it meets', () => {
    const [[a, b] = [], [c, d] = []] = marked(60) as [number, number][]
    for (const [is, wanted] of [
      [a, 0.9],
      [b, 4.9],
      [c, 55.5],
      [d, 59.5],
    ] as const)
      expect(is).toBeCloseTo(wanted, 9)
  })

  test('a short one is drawn whole: its ticks would show no pattern', () => {
    for (const long of [2, 5, 8]) expect(marked(long)).toEqual([[0, long]])
    expect(marked(12)).toHaveLength(2)
  })
})
