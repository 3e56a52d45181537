// A good copy, whose face is seen: where a piece that is stuck flat goes is told by marks that it covers. The numbers
// are the designs' own shapes; a point is known by how far it is from the corners of the glued place beside it.
import { describe, expect, test } from 'vitest'
import type { PathMark, Point } from '../../src/drawing/pen/marks.ts'
import type { Design } from '../../src/paper/index.ts'
import { fitOn, paperOf } from '../../src/sheet/index.ts'
import { card, dummies, dummy, laid, MOTH } from './designs.ts'

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

/** The moth stands where its own joints are not in the star's way. */
const withStar = (star: object): Design =>
  card(105, 148, [
    { ...MOTH, apex: 80 },
    { id: 'star', kind: 'rider', on: 'moth/left', shape: SHAPE, glue: GLUE, ...star },
  ])

type Lines = 'front' | 'ticks' | 'back'

const pathsOf = (design: Design, lines: Lines): readonly PathMark[] =>
  laid(design, { paper: 'a4', lines, care: [] })
    .flatMap(({ marks }) => marks)
    .filter((mark) => mark.mark === 'path')

const ofStar = (design: Design, lines: Lines = 'ticks'): readonly PathMark[] =>
  pathsOf(design, lines).filter(({ of }) => of === 'star' || of === 'star-corner')

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

const placesOf = (design: Design, lines?: Lines) => {
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

  test('turned, they are turned with it; where every line is printed they are too, and from behind not', () => {
    const turned = placesOf(withStar({ on: 'page/right', turn: 10 }))
    expect(new Set(cornersOf(turned.corners, turned.glued))).toEqual(
      new Set(drawnIn([5, 20, 25, 40], 1).map((p) => awayFrom(p, GLUE))),
    )
    const printed = placesOf(withStar({}), 'front')
    expect(new Set(cornersOf(printed.corners, printed.glued))).toEqual(
      new Set(drawnIn([5, 20, 25, 40], 1).map((p) => awayFrom(p, GLUE))),
    )
    expect(ofStar(withStar({}), 'back').filter(({ of }) => of === 'star-corner')).toEqual([])
  })

  test('a leg is 2.5 mm long, and each corner has two', () => {
    const legs = placesOf(withStar({})).corners.flatMap(({ runs }) => runs)
    expect(legs).toHaveLength(8)
    for (const [a, b] of legs) expect(far(a as Point, b as Point)).toBeCloseTo(2.5, 6)
  })

  test('of a corner beside the glue nothing is drawn, not even one leg', () => {
    // The lower left corner, 1 mm within the edge, is 0.8 mm from the glue.
    const near: readonly Point[] = [[6.8, 21.8], ...GLUE.slice(1)]
    const { glued, corners } = placesOf(withStar({ glue: near }))
    expect(new Set(cornersOf(corners, glued))).toEqual(
      new Set(
        drawnIn([5, 20, 25, 40], 1)
          .slice(1)
          .map((p) => awayFrom(p, near)),
      ),
    )
    expect(corners).toHaveLength(6)
  })

  test.each(['front', 'ticks'] as const)(
    '%s: all over the garden corners come in twos that meet, four at most',
    (lines) => {
      let count = 0
      for (const [name, design] of dummies) {
        const paper = fitOn(design, paperOf('a4')).ok ? 'a4' : 'a3'
        const marks = laid(design, { paper, lines, care: [] }).flatMap((page) => page.marks)
        const paths = marks.filter((mark) => mark.mark === 'path')
        const legs = paths.filter(({ of }) => of?.endsWith('-corner'))
        const byPiece = new Map<string, PathMark[]>()
        for (const leg of legs) byPiece.set(leg.of ?? '', [...(byPiece.get(leg.of ?? '') ?? []), leg])
        for (const [of, own] of byPiece) {
          expect(own.length, `${name} ${of}`).toBeLessThanOrEqual(8)
          const starts = own.map(({ runs }) => runs[0]?.[0] as Point)
          for (const p of starts)
            expect(
              starts.filter((q) => far(p, q) < 1e-9),
              `${name} ${of}`,
            ).toHaveLength(2)
        }
        count += byPiece.size
      }
      expect(count).toBeGreaterThan(10)
    },
  )

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
  const pages = laid(dummy('owl'), { paper: 'a4', lines: 'ticks', care: [] })
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
      laid(design, { paper: 'a4', lines: 'ticks', care: [] })
        .flatMap(({ marks }) => marks)
        .flatMap((mark) => (mark.mark === 'word' ? [mark.text] : []))
    expect(said(dummy('owl'))).toContain('Tape')
    expect(said(withStar({}))).not.toContain('Tape')
  })
})
