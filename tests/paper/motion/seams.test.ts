// Rhombs over the seams of a panel that is cut into convex parts: two squares side by side, by hand.
import { describe, expect, test } from 'vitest'
import type { Patch } from '../../../src/paper/model/patches.ts'
import { seamsAlong } from '../../../src/paper/motion/seams.ts'
import type { Flat } from '../../../src/paper/plane/lay.ts'

/** A rectangle, counter-clockwise, from its lower left corner; the seam is named by its edge. */
const part = (x0: number, x1: number, y0: number, y1: number, seam: number | null): Patch => {
  const outline: readonly Flat[] = [
    [x0, y0],
    [x1, y0],
    [x1, y1],
    [x0, y1],
  ]
  return { panel: 0, outline, drawn: outline.map((_, k) => k !== seam) }
}

/** Edge 1 is a rectangle's right one, 3 its left one. */
const left = (wide: number, y0 = 0, y1 = 10, seam: number | null = 1) => part(-wide, 0, y0, y1, seam)

const right = (wide: number, y0 = 0, y1 = 10, seam: number | null = 3) => part(0, wide, y0, y1, seam)

const fold = (x: number) => [{ a: [x, -20] as Flat, b: [x, 90] as Flat }]

const sorted = (points: readonly Flat[]): string[] => points.map(([x, y]) => `${x + 0} ${y + 0}`).sort()

describe('a seam in line with a fold', () => {
  test('has a rhomb from end to end, a millimetre to either side', () => {
    const [found, ...more] = seamsAlong([left(8), right(6)], fold(0))
    expect(more).toEqual([])
    expect(sorted(found ?? [])).toEqual(['-1 5', '0 0', '0 10', '1 5'])
    // Its ends are the first and the third corner.
    expect([found?.[0], found?.[2]].map((p) => p?.[0])).toEqual([0, 0])
  })

  test('runs only where both parts lie', () => {
    const [found] = seamsAlong([left(8), right(6, 4, 30)], fold(0))
    expect(sorted(found ?? [])).toEqual(['-1 7', '0 10', '0 4', '1 7'])
  })

  test('is halved until it fits into narrow parts', () => {
    expect(sorted(seamsAlong([left(0.6), right(6)], fold(0))[0] ?? [])).toEqual([
      '-0.5 5',
      '0 0',
      '0 10',
      '0.5 5',
    ])
    expect(sorted(seamsAlong([left(6), right(0.3)], fold(0))[0] ?? [])[0]).toBe('-0.25 5')
  })
})

describe('there is none', () => {
  test.each([
    ['off every fold', [left(8), right(6)], fold(1)],
    ['without folds', [left(8), right(6)], []],
    ['along a real edge of the one', [left(8, 0, 10, null), right(6)], fold(0)],
    ['along a real edge of the other', [left(8), right(6, 0, 10, null)], fold(0)],
    ['between parts that only share a corner', [left(8), right(6, 10, 20)], fold(0)],
    ['shorter than a tenth of a millimetre', [left(8, 0, 0.09), right(6, 0, 0.09)], fold(0)],
    ['on a stretch shorter than that', [left(8), right(6, 9.91, 20)], fold(0)],
    ['of one part alone', [left(8)], fold(0)],
  ] as const)('%s', (_, parts, folds) => {
    expect(seamsAlong(parts, folds)).toEqual([])
  })

  test('but just longer there is', () => {
    expect(seamsAlong([left(8, 0, 0.11), right(6, 0, 0.11)], fold(0))).toHaveLength(1)
    expect(seamsAlong([left(8), right(6, 9.89, 20)], fold(0))).toHaveLength(1)
  })
})
