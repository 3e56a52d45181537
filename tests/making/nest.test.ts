// Pieces side by side: areas by polyclip-ts, gaps by looking at all pairs of sides. Counts of rectangles by hand.
import fc from 'fast-check'
import { intersection } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { NestedSheet } from '../../src/making/nest.ts'
import { NoRoomError, nest } from '../../src/making/nest.ts'
import { turned } from '../../src/making/turn.ts'
import type { Flat } from '../../src/paper/index.ts'
import { signedArea } from '../../src/paper/plane/convex.ts'
import { runs } from '../paper/shared/designs.ts'
import { between } from '../paper/shared/gardens.ts'

const A4 = { width: 210, height: 297, margin: 5 } as const

const rectangle = (id: string, wide: number, high: number, fold: number | null = null) => ({
  id,
  outline: [
    [0, 0],
    [wide, 0],
    [wide, high],
    [0, high],
  ] as Flat[],
  fold,
})

const laidOut = (sheet: NestedSheet, outlines: ReadonlyMap<string, readonly Flat[]>): Flat[][] =>
  sheet.nested.map(({ id, turn, at }) =>
    (outlines.get(id) ?? []).map((p): Flat => {
      const [x, y] = turned(p, turn)
      return [x + at[0], y + at[1]]
    }),
  )

const fromSide = ([x, y]: Flat, a: Flat, b: Flat): number => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy)))
  return Math.hypot(x - a[0] - t * dx, y - a[1] - t * dy)
}

/** Least distance between two outlines that do not cross: a corner of one is nearest to a side of the other. */
const gapBetween = (one: readonly Flat[], two: readonly Flat[]): number =>
  Math.min(
    ...[
      [one, two],
      [two, one],
    ].flatMap(([ps = [], qs = []]) =>
      ps.flatMap((p) => qs.map((q, k) => fromSide(p, q, qs[(k + 1) % qs.length] as Flat))),
    ),
  )

const kept = { gap: 2, keepsGrain: true } as const

describe('rectangles', () => {
  // 200 by 287 mm of room. Squares of 48 with 2 mm and whole squares of raster between them: by hand 3 in a row
  // (3 * 48 + 2 * 4 = 152, a fourth would need 204), 5 rows (5 * 48 + 4 * 4 = 256, a sixth would need 308).
  test('lie in rows, as many as go beside and over one another', () => {
    const sheets = nest([rectangle('a', 48, 48)], 16, A4, kept)
    expect(sheets.map(({ nested }) => nested.length)).toEqual([15, 1])
    expect(sheets[0]?.full).toBeCloseTo((15 * 48 * 48) / (210 * 297), 9)
  })

  test('as large as the room lie in it; a hair larger on its margin; larger than the sheet nowhere', () => {
    const at = (wide: number, high: number) =>
      nest([rectangle('a', wide, high)], 1, A4, kept)[0]?.nested[0]?.at
    expect(at(200, 287)).toEqual([5, 5])
    expect(at(200.1, 287)).toEqual([0, 0])
    expect(at(210, 297)).toEqual([0, 0])
    expect(() => at(210.1, 297)).toThrow(NoRoomError)
    expect(() => at(210, 297.1)).toThrow(NoRoomError)
    // Turned it goes on.
    expect(at(297, 210)?.map((n) => Math.abs(n))).toEqual([210, 0])
  })

  // Under 200 mm of the 287 there are 85: room for one of 80 mm, and for no second beside or under it.
  test('of many copies small ones lie in what the large ones left, on the first sheet as on the last', () => {
    const sheets = nest([rectangle('large', 195, 200), rectangle('small', 150, 80)], 20, A4, kept)
    expect(sheets.map(({ nested }) => nested.map(({ id }) => id))).toEqual(Array(20).fill(['large', 'small']))
  })

  test('of a roll no more is used than is needed', () => {
    const roll = { width: 300, height: Number.POSITIVE_INFINITY, margin: 5 }
    const [sheet, more] = nest([rectangle('a', 100, 40)], 4, roll, kept)
    expect(more).toBeUndefined()
    expect(sheet?.width).toBe(300)
    // Turned to lie lowest: two beside each other at most, so two rows of 40 with a gap.
    expect(sheet?.height).toBeGreaterThanOrEqual(5 + 40 + 2 + 40 + 5)
    expect(sheet?.height).toBeLessThan(100)
  })
})

describe('grain', () => {
  test('main folds lie along the height, whichever way they were drawn', () => {
    for (const fold of [0, 0.3, Math.PI / 2, 2, -1]) {
      const [sheet] = nest([rectangle('a', 60, 40, fold)], 3, A4, kept)
      for (const { turn, acrossGrain } of sheet?.nested ?? []) {
        expect(Math.abs(Math.cos(fold + turn))).toBeLessThan(1e-9)
        expect(acrossGrain).toBe(false)
      }
    }
  })

  test('where a piece fits across it alone it lies so, and that is told', () => {
    // 250 mm do not go across 200: the fold along them must lie along the height, and one across them cannot.
    const [along] = nest([rectangle('a', 250, 100, 0)], 1, A4, kept)
    expect(along?.nested[0]?.acrossGrain).toBe(false)
    const [across] = nest([rectangle('a', 250, 100, Math.PI / 2)], 1, A4, kept)
    expect(across?.nested[0]?.acrossGrain).toBe(true)
  })

  test('left free it does not matter', () => {
    const [sheet] = nest([rectangle('a', 190, 60, Math.PI / 2)], 4, A4, { ...kept, keepsGrain: false })
    expect(sheet?.nested).toHaveLength(4)
    expect(
      sheet?.nested.every(({ acrossGrain, turn }) => acrossGrain === Math.abs(Math.sin(turn)) > 0.5),
    ).toBe(true)
  })
})

describe('any outlines', () => {
  const star = fc.array(between(4, 45), { minLength: 3, maxLength: 8 }).map((arms) =>
    arms.map((arm, k): Flat => {
      const turn = (2 * Math.PI * k) / arms.length
      return [arm * Math.cos(turn), arm * Math.sin(turn)]
    }),
  )

  test('never overlap, keep their gap and the margin, and none is lost', () => {
    fc.assert(
      fc.property(
        fc.array(fc.tuple(star, fc.option(between(0, 3))), { minLength: 2, maxLength: 6 }),
        fc.integer({ min: 1, max: 3 }),
        between(0, 5),
        fc.boolean(),
        (stars, copies, gap, keepsGrain) => {
          const blanks = stars.map(([outline, fold], k) => ({ id: `p${k}`, outline, fold }))
          const outlines = new Map(blanks.map(({ id, outline }) => [id, outline]))
          const sheets = nest(blanks, copies, A4, { gap, keepsGrain })
          const ids = sheets.flatMap(({ nested }) => nested.map(({ id }) => id)).sort()
          expect(ids).toEqual(blanks.flatMap(({ id }) => Array.from({ length: copies }, () => id)).sort())
          for (const sheet of sheets) {
            const all = laidOut(sheet, outlines)
            const area = all.reduce((sum, outline) => sum + Math.abs(signedArea(outline)), 0)
            expect(sheet.full).toBeCloseTo(area / (210 * 297), 9)
            all.forEach((one, k) => {
              for (const [x, y] of one) {
                expect(Math.min(x, 210 - x, y, 297 - y)).toBeGreaterThanOrEqual(5 - 1e-6)
              }
              for (const two of all.slice(k + 1)) {
                const ring = (points: readonly Flat[]): [[number, number][]] => [
                  points.map(([x, y]) => [x, y]),
                ]
                expect(intersection(ring(one), ring(two))).toEqual([])
                expect(gapBetween(one, two)).toBeGreaterThanOrEqual(gap - 1e-9)
              }
            })
          }
        },
      ),
      runs(60),
    )
  })
})
