// A good copy, whose face is seen: where a piece that is stuck flat goes is told by marks that it covers. The numbers
// are the designs' own shapes; a point is known by how far it is from the corners of the glued place beside it.
import { describe, expect, test } from 'vitest'
import type { PathMark, Point } from '../../src/drawing/pen/marks.ts'
import type { Design } from '../../src/paper/index.ts'
import { layOut } from '../../src/sheet/index.ts'
import { card, dummy, MOTH } from './designs.ts'

const SHAPE: readonly Point[] = [
  [5, 20],
  [25, 20],
  [25, 40],
  [5, 40],
]

/** No two of its sides are alike: how far a point is from its corners, in any order, tells where it lies. */
const GLUE: readonly Point[] = [
  [8, 22],
  [20, 22],
  [20, 30],
  [8, 27],
]

const withStar = (star: object): Design =>
  card(105, 148, [MOTH, { id: 'star', kind: 'rider', on: 'moth/left', shape: SHAPE, glue: GLUE, ...star }])

const ofStar = (design: Design, lines: 'front' | 'ticks' = 'ticks'): readonly PathMark[] =>
  layOut(design, { paper: 'a4', lines, care: [] })
    .flatMap(({ marks }) => marks)
    .filter((mark) => mark.mark === 'path' && mark.of === 'star') as PathMark[]

const far = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** How far a point is from the corners of a ring. */
const awayFrom = (p: Point, ring: readonly Point[]): string =>
  ring
    .map((q) => far(p, q).toFixed(3))
    .sort()
    .join(' ')

/** Every corner of the marks once. */
const cornersOf = (marks: readonly PathMark[], ring: readonly Point[]): readonly string[] => [
  ...new Set(marks.flatMap(({ runs }) => runs.map(([corner]) => awayFrom(corner as Point, ring)))),
]

/** The square drawn in by so much: its corners as they lie about the glue. */
const drawnIn = ([l, b, r, t]: readonly [number, number, number, number], by: number): readonly Point[] => [
  [l + by, b + by],
  [r - by, b + by],
  [r - by, t - by],
  [l + by, t - by],
]

const placesOf = (design: Design, lines?: 'front') => {
  const marks = ofStar(design, lines).filter(({ role }) => role === 'place')
  const glued = marks.find(({ closed }) => closed)?.runs[0] ?? []
  return { glued, corners: marks.filter(({ closed }) => !closed) }
}

describe('on the face that is printed', () => {
  test.each(['moth/left', 'moth/right', 'page/left', 'page/right'])(
    'its corners are marked on %s a millimetre within its edge',
    (on) => {
      const { glued, corners } = placesOf(withStar({ on }))
      expect(glued).toHaveLength(4)
      expect(ofStar(withStar({ on })).every(({ role }) => role !== 'behind')).toBe(true)
      expect(new Set(cornersOf(corners, glued))).toEqual(
        new Set(drawnIn([5, 20, 25, 40], 1).map((p) => awayFrom(p, GLUE))),
      )
    },
  )

  test('turned, they are turned with it; where every line is printed there is no need of them', () => {
    const turned = placesOf(withStar({ on: 'page/right', turn: 30 }))
    expect(new Set(cornersOf(turned.corners, turned.glued))).toEqual(
      new Set(drawnIn([5, 20, 25, 40], 1).map((p) => awayFrom(p, GLUE))),
    )
    expect(placesOf(withStar({}), 'front').corners).toEqual([])
  })

  test('a leg is short: 4 mm at most', () => {
    for (const { runs } of placesOf(withStar({})).corners)
      for (const [a, b] of runs) expect(far(a as Point, b as Point)).toBeLessThan(4.001)
  })

  test('none is on the other side of a fold, where the piece does not stay', () => {
    const shape: readonly Point[] = SHAPE.map(([x, y]) => [x < 10 ? -15 : x, y])
    const design = withStar({ on: 'page/right', shape })
    const { glued, corners } = placesOf(design)
    const lefts = glued.map(([x]) => x)
    // The glue begins 8 mm to the right of the gutter.
    const gutter = Math.min(...lefts) - 8
    expect(corners.length).toBeGreaterThan(0)
    for (const [x] of corners.flatMap(({ runs }) => runs.flat())) expect(x).toBeGreaterThan(gutter + 0.5)
  })

  test('glued all over, its glued place says where it goes', () => {
    expect(placesOf(withStar({ glue: SHAPE })).corners).toEqual([])
  })
})

test('behind a face both places have dots at their corners, and neither has more', () => {
  const marks = ofStar(withStar({ face: 'back', glue: drawnIn([8, 22, 20, 30], 0) })).filter(
    ({ role }) => role !== 'cut',
  )
  expect(new Set(marks.map(({ role }) => role))).toEqual(new Set(['behind']))
  // Two places, four corners each, two legs a corner; drawn in as dots always are.
  expect(marks).toHaveLength(16)
  const legs = marks.flatMap(({ runs }) => runs)
  for (const half of [legs.slice(0, 8), legs.slice(8)]) {
    const spots = half.map(([corner]) => corner as Point)
    const apart = spots.flatMap((p) => spots.map((q) => Number(far(p, q).toFixed(2))))
    expect(new Set(apart)).toEqual(new Set([0, 9.4, 5.4, Number(Math.hypot(9.4, 5.4).toFixed(2))]))
  }
})

describe('what is taped, on a good copy', () => {
  const pages = layOut(dummy('owl'), { paper: 'a4', lines: 'ticks', care: [] })
  const paths = pages.flatMap(({ marks }) => marks).filter((mark) => mark.mark === 'path') as PathMark[]

  test('its line has a tick at each end, and strokes that tell it from a fold', () => {
    const ticks = paths
      .filter(({ role, of }) => role === 'place' && of === 'body/left')
      .flatMap(({ runs }) => runs)
    expect(ticks).toHaveLength(2)
    const strokes = paths
      .filter(({ role, of }) => role === 'glue' && of === 'body/left-hatch')
      .flatMap(({ runs }) => runs)
    const middles = (strokes as unknown as [Point, Point][]).map(
      ([a, b]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2],
    )
    for (const [a, b] of ticks as unknown as [Point, Point][]) {
      expect(far(a, b)).toBeLessThan(4.001)
      const on = middles.filter((p) => Math.abs(far(a, p) + far(p, b) - far(a, b)) < 1e-6)
      expect(on.length).toBeGreaterThan(1)
    }
    // As many at the ends of the edge that is taped on it, and none between.
    expect(strokes).toHaveLength(8)
  })

  test('the key names the tape, and on a sheet without it does not', () => {
    const said = (design: Design) =>
      layOut(design, { paper: 'a4', lines: 'ticks', care: [] })
        .flatMap(({ marks }) => marks)
        .flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    expect(said(dummy('owl'))).toContain('Tape')
    expect(said(withStar({}))).not.toContain('Tape')
  })
})
