// A good copy, whose face is seen: where a piece that is stuck flat goes is told by marks that it covers. The numbers
// are the designs' own shapes; a point is known by how far it is from the corners of the glued place beside it.
import { describe, expect, test } from 'vitest'
import { inset } from '../../src/drawing/pen/inset.ts'
import type { PathMark, Point } from '../../src/drawing/pen/marks.ts'
import type { Design } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import { crossing } from '../../src/paper/plane/gap.ts'
import { corners, EVERYWHERE } from '../../src/sheet/marks/clip.ts'
import { faceOf } from '../../src/sheet/marks/instructions.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import { TAIL } from '../../src/sheet/marks/letters.ts'
import { pieceMarks } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { edges, isIn, nearest, stretchesOf } from '../../src/sheet/marks/stretches.ts'
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

  test('turned, they are turned with it', () => {
    const turned = placesOf(withStar({ on: 'page/right', turn: 10 }))
    expect(new Set(cornersOf(turned.corners, turned.glued))).toEqual(
      new Set(drawnIn([5, 20, 25, 40], 1).map((p) => awayFrom(p, GLUE))),
    )
  })

  test('where every line is printed all of its outline is drawn, and no corners', () => {
    const marks = pathsOf(withStar({ on: 'page/right' }), 'front').filter(({ of }) => of?.startsWith('star'))
    const glued = marks.find(({ closed, role }) => closed && role === 'place')?.runs[0] ?? []
    const around = marks.filter(({ of }) => of === 'star-place').flatMap(({ runs }) => runs)
    expect(around).toHaveLength(1)
    expect(around[0]).toHaveLength(5)
    expect(new Set(around[0]?.map((p) => awayFrom(p, glued)))).toEqual(
      new Set(SHAPE.map((p) => awayFrom(p, GLUE))),
    )
    expect(marks.filter(({ of }) => of === 'star-corner')).toEqual([])
  })

  test('printed from behind its corners have dots, to be pricked through', () => {
    const marks = ofStar(withStar({}), 'back').filter(({ role }) => role === 'behind')
    const glued = marks.find(({ closed }) => closed)?.runs[0] ?? []
    const corners = marks.filter(({ of }) => of === 'star-corner')
    expect(corners).toHaveLength(8)
    expect(new Set(cornersOf(corners, glued))).toEqual(
      new Set(drawnIn([5, 20, 25, 40], 1).map((p) => awayFrom(p, inset(GLUE, 0.9)))),
    )
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

/** What is stuck flat on the pieces of the garden: its marks, its outline and the host's paper, as on a page. */
const stuckOn = (lines: Lines) =>
  dummies.flatMap(([file, design]) =>
    pieces(design).flatMap((piece) => {
      const isMirrored = faceOf(lines) === 'outside'
      const at = ([x, y]: Point): Point => [isMirrored ? -x : x, -y]
      const places = placesOn(design, piece.id, faceOf(lines))
      const { lines: marks } = pieceMarks(
        piece,
        places,
        { origin: [0, 0], mirrored: isMirrored },
        lines,
        EVERYWHERE,
      )
      return places
        .filter(({ under }) => under.length > 0)
        .map(({ of, under, points }) => ({
          name: `${file} ${of}`,
          marks: marks.filter((mark) => mark.of?.startsWith(of)),
          legs: marks
            .filter((mark) => mark.of === `${of}-corner`)
            .flatMap(({ runs }) => runs as unknown as (readonly [Point, Point])[]),
          under: under.map(at),
          glue: points.map(at),
          paper: piece.outline.map(at),
          cuts: piece.lines
            .filter(({ kind }) => kind === 'cut')
            .flatMap(({ points: run, closed = false }) => stretchesOf({ runs: [run.map(at)], closed })),
        }))
    }),
  )

const least = (p: Point, sides: readonly (readonly [Point, Point])[]): number =>
  Math.min(...sides.map((side) => nearest(p, side)))

describe.each(['ticks', 'back'] as const)('all over the garden, printed as %s', (lines) => {
  const all = stuckOn(lines)

  test('there are four marks at most, and never none where a piece is larger than its glue and its host', () => {
    expect(all.length).toBeGreaterThan(10)
    for (const { name, legs } of all)
      expect(new Set(legs.map(([a]) => a.join())).size, name).toBeLessThanOrEqual(4)
    expect(all.filter(({ legs }) => legs.length > 0).length).toBeGreaterThan(all.length / 2)
  })

  test('a corner of two lines turns outwards; a single line begins where the outline comes in over the edge', () => {
    for (const { name, legs, under, cuts } of all)
      for (const [a, b] of legs) {
        const [twin, more] = legs.filter(([p, q]) => far(a, p) < 1e-9 && far(b, q) > 1e-9)
        expect(more, name).toBeUndefined()
        if (!twin) {
          expect(least(a, cuts), name).toBeLessThan(1.6)
          continue
        }
        // Half the way between two legs is paper of the piece: at a corner that turns inwards it is not.
        const [c] = [twin[1]]
        const [u, v] = [far(a, b), far(a, c)]
        const within: Point = [
          a[0] + 0.2 * ((b[0] - a[0]) / u + (c[0] - a[0]) / v),
          a[1] + 0.2 * ((b[1] - a[1]) / u + (c[1] - a[1]) / v),
        ]
        expect(least(within, edges(under)), name).toBeGreaterThan(least(a, edges(under)))
      }
  })

  test('the piece covers them, and they keep off every cut and the glued place', () => {
    for (const { name, legs, under, glue, cuts } of all)
      for (const p of legs.flat()) {
        expect(isIn(p, under), name).toBe(true)
        expect(least(p, edges(under)), name).toBeGreaterThan(0.4)
        expect(least(p, cuts), name).toBeGreaterThan(0.99)
        expect(least(p, edges(glue)), name).toBeGreaterThan(0.89)
      }
  })
})

test('the heron in the reeds has a mark at both feet', () => {
  const heron = stuckOn('ticks').find(({ name }) => name === 'scene.hingebook.json heron')
  const low = Math.max(...(heron?.under ?? []).map(([, y]) => y))
  const feet = heron?.legs.filter(([[, y]]) => low - y < 1.1) ?? []
  expect(new Set(feet.map(([[x]]) => Math.round(x))).size).toBeGreaterThanOrEqual(2)
})

test('where every line is printed, an outline is drawn as far as there is free paper', () => {
  let count = 0
  for (const { name, marks, under, glue, paper, cuts } of stuckOn('front')) {
    const drawn = marks.filter(({ role }) => role === 'place').flatMap(stretchesOf)
    for (const [a, b] of edges(under)) {
      const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
      // Where a fold lies between the two the piece does not stay: of the garden's there is none but on the hedgehog.
      if (name.includes('coat') || !isIn(middle, paper)) continue
      if (least(middle, cuts) < 1.5 || (least(middle, edges(glue)) < 1 && !isIn(middle, glue))) continue
      count += 1
      expect(least(middle, drawn), `${name} ${middle.join()}`).toBeLessThan(1)
    }
  }
  expect(count).toBeGreaterThan(60)
})

test('the dots of a place lie as far within the hatch that it goes to, all round', () => {
  const size = (piece: string, role: string): readonly number[] => {
    const design = dummy('scene')
    const flat = pieces(design).find(({ id }) => id === piece)
    if (!flat) throw new Error(`there is no ${piece}`)
    const { lines: marks } = pieceMarks(
      flat,
      placesOn(design, piece, 'inside'),
      { origin: [0, 0], mirrored: false },
      'front',
      EVERYWHERE,
    )
    const found = marks.find((mark) => mark.of === 'heron' && mark.role === role)?.runs.flat() ?? []
    return [0, 1].map(
      (k) => Math.max(...found.map((p) => p[k] ?? 0)) - Math.min(...found.map((p) => p[k] ?? 0)),
    )
  }
  const [wide, high] = size('reeds/piece', 'place')
  expect(wide).toBeGreaterThan(10)
  expect(size('heron/piece', 'behind').map((one) => one.toFixed(6))).toEqual(
    [wide, high].map((one) => ((one ?? 0) - 2 * 0.9).toFixed(6)),
  )
})

test('behind a face both places have dots at their corners, and neither has more', () => {
  const marks = ofStar(withStar({ face: 'back', glue: drawnIn([8, 22, 20, 30], 0) })).filter(
    ({ role }) => role !== 'cut',
  )
  expect(new Set(marks.map(({ role }) => role))).toEqual(new Set(['behind']))
  // Two places, four corners each, two legs a corner: both as far within the glue, of 12 by 8 mm.
  expect(marks).toHaveLength(16)
  const legs = marks.flatMap(({ runs }) => runs)
  for (const half of [legs.slice(0, 8), legs.slice(8)]) {
    const spots = half.map(([corner]) => corner as Point)
    const apart = spots.flatMap((p) => spots.map((q) => Number(far(p, q).toFixed(2))))
    expect(new Set(apart)).toEqual(new Set([0, 10.2, 6.2, Number(Math.hypot(10.2, 6.2).toFixed(2))]))
  }
})

describe('what is taped, on a good copy', () => {
  const pages = laid(dummy('owl'), { paper: 'a4', lines: 'ticks', care: [] })
  const paths = pages.flatMap(({ marks }) => marks).filter((mark) => mark.mark === 'path') as PathMark[]

  /** The marks of one joint of the owl on its card. */
  const runsOf = (role: string, of: string): readonly (readonly [Point, Point])[] =>
    paths.filter((mark) => mark.role === role && mark.of === of).flatMap(({ runs }) => runs as never)

  test('its ends are corners that are crossed: shorter than a fold’s tick, and one of two at the apex', () => {
    const legs = runsOf('place', 'body/left')
    expect(legs).toHaveLength(3)
    const strokes = runsOf('glue', 'body/left-hatch')
    const isCrossed = ([a, b]: readonly [Point, Point]): boolean =>
      strokes.some(([c, d]) => crossing({ a, b }, { a: c, b: d }) !== null)
    for (const leg of legs) expect(far(...leg)).toBeLessThan(3.001)
    // One leg stands aside, on the side that the body hides: there its other line goes up.
    expect(legs.filter(isCrossed)).toHaveLength(2)
    const [aside] = legs.filter((leg) => !isCrossed(leg))
    const apex = legs.find((leg) => isCrossed(leg) && far(leg[0], aside?.[0] as Point) > 1)?.[0] as Point
    const twin = runsOf('place', 'body/right').find(([a]) => far(a, apex) > 10)?.[0] as Point
    const side = (p: Point): number => {
      const end = aside?.[0] as Point
      return Math.sign((end[0] - apex[0]) * (p[1] - apex[1]) - (end[1] - apex[1]) * (p[0] - apex[0]))
    }
    expect(side(aside?.[1] as Point)).toBe(side(twin))
  })

  test('nothing solid crosses or touches a cut edge', () => {
    let count = 0
    for (const [file, design] of dummies)
      for (const piece of pieces(design))
        for (const lines of ['front', 'ticks'] as const) {
          const places = placesOn(design, piece.id, 'inside').filter((one) => one.isTaped && one.isOwn)
          const place = { origin: [0, 0], mirrored: false } as const
          const { lines: marks } = pieceMarks(piece, places, place, lines, EVERYWHERE)
          const ring = piece.outline.map(([x, y]): Point => [x, -y])
          for (const { of, points } of places) {
            const strokes = marks.filter((mark) => mark.of === `${of}-hatch`).flatMap(({ runs }) => runs)
            expect(strokes.length, `${file} ${of}`).toBeGreaterThan(1)
            for (const p of strokes.flat()) {
              expect(isIn(p, ring), `${file} ${of}`).toBe(true)
              expect(least(p, edges(ring)), `${file} ${of}`).toBeGreaterThan(0.45)
            }
            // They lean to the first end of the edge, so that they are alike on both edges of a piece.
            const [a, b] = points.map(([x, y]): Point => [x, -y]) as [Point, Point]
            for (const [from, to] of strokes as unknown as (readonly [Point, Point])[]) {
              const along = (p: Point): number =>
                (p[0] - a[0]) * (b[0] - a[0]) + (p[1] - a[1]) * (b[1] - a[1])
              const [near, inner] = nearest(from, [a, b]) < nearest(to, [a, b]) ? [from, to] : [to, from]
              expect(along(inner), `${file} ${of}`).toBeLessThan(along(near))
            }
            count += 1
          }
        }
    expect(count).toBeGreaterThan(40)
  })

  test('the letter beside a line stands on the side that the piece hides, and the line does not run through it', () => {
    let count = 0
    for (const [file, design] of dummies)
      for (const piece of pieces(design)) {
        const places = placesOn(design, piece.id, 'inside')
        const place = { origin: [0, 0], mirrored: false } as const
        const { words } = pieceMarks(piece, places, place, 'ticks', EVERYWHERE)
        for (const { of, points, hidden } of places) {
          const word = words.find((one) => one.of === of && one.bold)
          const [a] = points
          if (!word || !hidden || !a) continue
          // A capital has no tail.
          const [l, t, r, b] = extent(word)
          const box = corners([l, t, r, b - TAIL * word.size])
          const line = points.map(([x, y]): Point => [x, -y]) as [Point, Point]
          const away = ([x, y]: Point): number => (x - a[0]) * hidden[0] + (-y - a[1]) * hidden[1]
          expect(Math.max(...box.map(away)), `${file} ${of}`).toBeGreaterThan(1)
          expect(away([(l + r) / 2, (t + b) / 2]), `${file} ${of}`).toBeGreaterThan(0)
          for (const [p, q] of edges(box))
            expect(crossing({ a: p, b: q }, { a: line[0], b: line[1] }), `${file} ${of}`).toBeNull()
          count += 1
        }
      }
    expect(count).toBeGreaterThan(20)
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
