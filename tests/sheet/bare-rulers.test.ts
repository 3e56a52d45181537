// Where the check lines stand that no cell holds: below the card, above it, at its right, at its left, or nowhere. By hand.
import { expect, test } from 'vitest'
import { rulers, upright } from '../../src/sheet/marks/rulers.ts'
import { bareRulers } from '../../src/sheet/pages/bare-rulers.ts'
import type { Bed } from '../../src/sheet/pages/bed.ts'

const { width: W, height: H } = rulers()

const PRINTABLE = [6, 6, 204, 291] as const

/** A card in its box on a page of A4; 2.2 mm round it stay free. */
const bed = (card: readonly [number, number, number, number], more: Partial<Bed> = {}): Bed => ({
  turn: { width: 210, height: 297 },
  place: { origin: [0, 0], mirrored: false },
  card,
  printable: PRINTABLE,
  column: null,
  top: null,
  strip: [],
  ...more,
})

const cell = { x: 0, y: 0, width: 1, bottom: 1 }

const at = (one: Bed): readonly number[] | undefined =>
  bareRulers(one)?.taken.map((n) => Math.round(n * 1e6) / 1e6)

const box = (x: number, y: number, wide: number, high: number): readonly number[] =>
  [x, y, x + wide, y + high].map((n) => Math.round(n * 1e6) / 1e6)

test('below the card where there is room to the last hair', () => {
  const low = 291 - H - 2.2
  expect(at(bed([20, 10, 190, low - 0.01]))).toEqual(box(20, low - 0.01 + 2.2, W, H))
  expect(at(bed([20, 10, 190, low]))).toEqual(box(20, 291 - H, W, H))
  // A card that begins left of what can be printed: from there.
  expect(at(bed([2, 10, 190, 200]))).toEqual(box(6, 202.2, W, H))
  // To the right of where the card begins they must end on the page.
  expect(at(bed([204 - W + 0.01, 150, 204, 200]))?.[1]).not.toBe(202.2)
})

test('above it where there is none below, unless cells stand there', () => {
  const high = 6 + H + 2.2
  expect(at(bed([20, high, 190, 290]))).toEqual(box(20, 6, W, H))
  expect(at(bed([20, high + 5, 190, 290]))).toEqual(box(20, 11, W, H))
  expect(at(bed([20, high - 0.01, 190, 290]))).not.toEqual(box(20, 6, W, H))
  expect(at(bed([8, high + 5, 200, 290], { top: [cell, cell] }))).toBeUndefined()
})

test('upright at its right, else at its left, unless the margin stands there', () => {
  const { width: w, height: h } = upright(rulers())
  expect([w, h]).toEqual([H, W])
  // A hair more than room enough.
  const right = 204 - w - 2.2 - 1e-3
  const x = right + 2.2
  expect(at(bed([8, 8, right, 290]))).toEqual(box(x, 8, w, h))
  expect(at(bed([8, 2, right, 290]))).toEqual(box(x, 6, w, h))
  const left = 6 + w + 2.2 + 1e-3
  expect(at(bed([left, 8, right + 0.01, 290]))).toEqual(box(6.001, 8, w, h))
  expect(at(bed([left + 3, 8, 200, 290]))).toEqual(box(9.001, 8, w, h))
  expect(at(bed([left + 3, 8, 200, 290], { column: cell }))).toBeUndefined()
  expect(at(bed([left - 0.01, 8, 200, 290]))).toBeUndefined()
  // No taller than what can be printed below the card's upper edge.
  expect(at(bed([8, 291 - h - 1e-3, right, 290], { top: [cell, cell] }))).toEqual(
    box(x, 291 - h - 1e-3, w, h),
  )
  expect(at(bed([8, 291 - h + 0.01, right, 290], { top: [cell, cell] }))).toBeUndefined()
})

test('the marks stand in the place that is taken', () => {
  const { marks, taken } = bareRulers(bed([20, 10, 190, 200])) ?? { marks: [], taken: [0, 0, 0, 0] }
  const xs = marks.flatMap((mark) => (mark.mark === 'path' ? mark.runs.flat().map(([x]) => x) : [mark.at[0]]))
  const ys = marks.flatMap((mark) =>
    mark.mark === 'path' ? mark.runs.flat().map(([, y]) => y) : [mark.at[1]],
  )
  expect(Math.min(...xs)).toBeGreaterThanOrEqual(taken[0])
  expect(Math.max(...xs)).toBeLessThanOrEqual(taken[2])
  expect(Math.min(...ys)).toBeGreaterThanOrEqual(taken[1])
  expect(Math.max(...ys)).toBeLessThanOrEqual(taken[3])
})
