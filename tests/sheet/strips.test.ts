// Strips that are glued from behind: what is pricked through, or felt for, is where the kernel has the joint, not where
// the dots of the glue are. The joint's own line is asked of the kernel; where it lies on the page by the page's outline.
import { describe, expect, test } from 'vitest'
import type { PathMark, Point } from '../../src/drawing/pen/marks.ts'
import { jointsOf, pieces } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { EVERYWHERE } from '../../src/sheet/marks/clip.ts'
import { faceOf } from '../../src/sheet/marks/instructions.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import { pieceMarks } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummies, dummy } from './designs.ts'

const far = (a: Point, b: Point): number => Math.hypot(b[0] - a[0], b[1] - a[1])

/** How far a point is from a stretch. */
function off(p: Point, [a, b]: readonly [Point, Point]): number {
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.max(0, Math.min(1, ((p[0] - a[0]) * u + (p[1] - a[1]) * v) / (u * u + v * v || 1)))
  return far(p, [a[0] + t * u, a[1] + t * v])
}

/** A piece with the strips on it to which tabs are glued from behind, each by its true line on the page. */
const hosts = (lines: SheetLines) =>
  dummies.flatMap(([file, design]) =>
    pieces(design).flatMap((piece) => {
      const isMirrored = faceOf(lines) === 'outside'
      const at = ([x, y]: Point): Point => [isMirrored ? -x : x, -y]
      const strips = jointsOf(design).flatMap(({ of, line, host, isTaped, isThrough }) =>
        host.piece === piece.id &&
        line &&
        !isTaped &&
        !isThrough &&
        host.face !== (isMirrored ? 'back' : 'front')
          ? [
              {
                of,
                ends: line.host.map(([x, y]) => at([x, y])) as [Point, Point],
                glued: host.points.map(at),
              },
            ]
          : [],
      )
      if (strips.length === 0) return []
      const place = { origin: [0, 0], mirrored: isMirrored } as const
      const { lines: marks, words } = pieceMarks(
        piece,
        placesOn(design, piece.id, faceOf(lines)),
        place,
        lines,
        EVERYWHERE,
      )
      const drawn = marks.filter(({ role }) => /^(cut|valley|mountain)$/.test(role))
      const sides = drawn.flatMap(({ runs, closed }) =>
        runs.flatMap((run) =>
          (closed ? [...run, run[0] as Point] : run)
            .slice(1)
            .map((b, k): readonly [Point, Point] => [run[k] as Point, b]),
        ),
      )
      const ring = piece.outline.map(at)
      const outline = ring.map((p, k): readonly [Point, Point] => [p, ring[(k + 1) % ring.length] as Point])
      return [{ name: `${file} ${piece.id}`, strips, marks, words, sides, outline }]
    }),
  )

const runsOf = (marks: readonly PathMark[], of: string): readonly (readonly [Point, Point])[] =>
  marks.filter((mark) => mark.of === of).flatMap(({ runs }) => runs as unknown as [Point, Point][])

describe.each(['front', 'back'] as const)('printed as %s', (lines) => {
  const all = hosts(lines)

  test('there are some, and some run along a fold', () => {
    const strips = all.flatMap(({ strips, marks }) =>
      strips.map(({ of }) => runsOf(marks, `${of}-line`).length),
    )
    expect(strips.filter((count) => count > 0).length).toBeGreaterThan(3)
    expect(strips.filter((count) => count === 0).length).toBeGreaterThan(0)
  })

  test('both true ends are there to be pricked: by a line of their own, or by one that runs along', () => {
    for (const { name, strips, marks, sides } of all)
      for (const { of, ends } of strips) {
        const own = runsOf(marks, `${of}-line`)
        const bars = runsOf(marks, `${of}-end`)
        for (const end of ends) {
          const isDrawn = own.some((run) => run.some((p) => far(p, end) < 0.01))
          const isAlong = sides.some(
            (side) =>
              off(end, side) < 0.2 &&
              off([(ends[0][0] + ends[1][0]) / 2, (ends[0][1] + ends[1][1]) / 2], side) < 0.2,
          )
          expect(isDrawn || isAlong, `${name} ${of}`).toBe(true)
          // The bar's middle is the end, unless another line meets it there.
          const isBarred = bars.some(([a, b]) => far([(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], end) < 0.01)
          expect(isBarred || sides.some((side) => off(end, side) < 0.2), `${name} ${of}`).toBe(true)
        }
      }
  })
})

test('the walls of the night garden stand 44 mm from the gutter, and one on it', () => {
  const found = hosts('back').find(({ name }) => name.startsWith('night-garden') && name.endsWith(' card'))
  const walls = found?.strips.filter(({ of }) => of.startsWith('lawn/')) ?? []
  const lines = walls.flatMap(({ of }) => runsOf(found?.marks ?? [], `${of}-line`))
  expect(lines.map(([[x]]) => Number(x.toFixed(6))).sort((a, b) => a - b)).toEqual([-44, 44])
  expect(walls).toHaveLength(3)
  for (const { of } of walls) expect(runsOf(found?.marks ?? [], `${of}-end`)).toHaveLength(2)
})

describe('on a good copy', () => {
  const all = hosts('ticks')

  test('near both ends of a strip a corner says where its line is and on which side it lies', () => {
    let count = 0
    for (const { name, strips, marks } of all)
      for (const { of, ends, glued } of strips) {
        const runs = runsOf(marks, of)
        const middle = glued.reduce(
          ([x, y], [u, v]): Point => [x + u / glued.length, y + v / glued.length],
          [0, 0],
        )
        const sideOf = ([x, y]: Point): number =>
          Math.sign(
            (ends[1][0] - ends[0][0]) * (y - ends[0][1]) - (ends[1][1] - ends[0][1]) * (x - ends[0][0]),
          )
        for (const end of ends) {
          const legs = runs.filter(([a]) => far(a, end) < 2.3)
          const short = legs.filter(([, b]) => off(b, ends) > 0.5)
          expect(short, `${name} ${of}`).toHaveLength(1)
          expect(sideOf(short[0]?.[1] as Point), `${name} ${of}`).toBe(sideOf(middle as Point))
          for (const [a] of legs) expect(off(a, ends)).toBeLessThan(1.01)
        }
        count += 1
      }
    expect(count).toBeGreaterThan(8)
  })

  test('none of its dots runs to a cut, as the ticks of folds do, and none of its lines is as long', () => {
    for (const { name, strips, marks, outline } of all)
      for (const { of } of strips)
        for (const run of runsOf(marks, of)) {
          expect(far(...run), `${name} ${of}`).toBeLessThan(3)
          for (const p of run)
            expect(Math.min(...outline.map((side) => off(p, side))), `${name} ${of}`).toBeGreaterThan(1)
        }
  })

  test('its letter stands above or below its own strip, outside its piece', () => {
    const found = all.find(({ name }) => name === 'garden.hingebook.json lawn/platform')
    expect(found?.strips.length).toBe(3)
    for (const { of, ends } of found?.strips ?? []) {
      const letter = found?.words.find((word) => word.of === of && word.bold)
      if (!letter) throw new Error(`${of} has no letter`)
      const [left, top, right, bottom] = extent(letter)
      const at: Point = [(left + right) / 2, (top + bottom) / 2]
      expect(Math.min(...ends.map((end) => far(at, end)))).toBeLessThan(9)
      const ys = ends.map(([, y]) => y)
      expect(bottom < Math.min(...ys) || top > Math.max(...ys)).toBe(true)
    }
  })
})

test('where nothing is printed on the face that is glued, the step says to prick the ends of the line', async () => {
  const { stepsFor } = await import('../../src/sheet/marks/instructions.ts')
  expect(stepsFor(dummy('night-garden'), 'back').join(' ')).toContain('prick both ends of its line through')
})

test('no dots of one place lie on those of another', () => {
  const design = dummy('moth')
  const [card] = pieces(design)
  if (!card) throw new Error('there is no card')
  const { lines: marks } = pieceMarks(
    card,
    placesOn(design, 'card', 'inside'),
    { origin: [0, 0], mirrored: false },
    'front',
    EVERYWHERE,
  )
  const sides = marks
    .filter(({ role }) => role === 'behind')
    .flatMap(({ runs, closed }) =>
      runs.flatMap((run) =>
        (closed ? [...run, run[0] as Point] : run)
          .slice(1)
          .map((b, k): readonly [Point, Point] => [run[k] as Point, b]),
      ),
    )
  expect(sides.length).toBeGreaterThan(12)
  for (const [k, [a, b]] of sides.entries()) {
    const middle: Point = [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
    for (const other of sides.filter((_, n) => n !== k)) expect(off(middle, other)).toBeGreaterThan(0.3)
  }
})
