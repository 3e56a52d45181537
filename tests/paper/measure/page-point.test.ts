// Two pencil marks on the pages of a bare card, in numbers worked by hand.
import { expect, test } from 'vitest'
import { pagePoint } from '../../../src/paper/measure/page-point.ts'

// A mark 30 mm from the gutter and 40 mm along it. At 60 degrees it, its twin and the gutter make an equilateral
// triangle of 30 mm, whose height is 30 sin 60; at 90 degrees a right one with legs of 30 mm.
test.each([
  ['shut', 0, [0, 40, 30], 0],
  ['a third open', 60, [15, 40, 30 * Math.sin(Math.PI / 3)], 30],
  ['half open', 90, [30 / Math.SQRT2, 40, 30 / Math.SQRT2], 30 * Math.SQRT2],
  ['flat', 180, [30, 40, 0], 60],
] as const)('a mark and its twin, %s', (_, opening, [x, y, z], gape) => {
  const mark = pagePoint([30, 40], opening)
  for (const [found, side] of [
    [mark.at, 1],
    [mark.twin, -1],
  ] as const) {
    expect(found[0]).toBeCloseTo(side * x, 9)
    expect(found[1]).toBe(y)
    expect(found[2]).toBeCloseTo(z, 9)
  }
  expect(mark.gape).toBeCloseTo(gape, 9)
  expect(mark).toMatchObject({ standOff: 30, reach: 40 })
})
