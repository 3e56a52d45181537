// Paths told from point to point, read again by svg-path-properties, a reader of the whole grammar of SVG 2 paths.
import fc from 'fast-check'
import { svgPathProperties } from 'svg-path-properties'
import { expect, test } from 'vitest'
import { shorter, shorterPath } from '../../src/drawing/pen/shorter.ts'
import { bentData, pathData } from '../../src/drawing/pen/svg-values.ts'

/** So many points, no two of them one: what has no length has no direction either. */
const points = (least: number, most = least) =>
  fc
    .uniqueArray(fc.tuple(fc.integer({ min: -9999, max: 9999 }), fc.integer({ min: -9999, max: 9999 })), {
      minLength: least,
      maxLength: most,
      selector: String,
    })
    .map((list) => list.map(([x, y]): [number, number] => [x / 100, y / 100]))

/** Where a reader comes to at the end of each part of a path. */
const ends = (d: string) =>
  new svgPathProperties(d)
    .getParts()
    .flatMap(({ start, end }) => [start.x, start.y, end.x, end.y].map((n) => Math.round(1e6 * n) + 0))

const length = (d: string): number => new svgPathProperties(d).getTotalLength()

test('a worked one: from the first point on, each from the one before; closed, on from where it began', () => {
  expect(shorterPath('M10 20L12.5 19L12.5 30ZM0 0L1 1')).toBe('m10 20 2.5-1 0 11zm-10-20 1 1')
  expect(shorterPath('M100 100C101 102 103 99 104 100')).toBe('m100 100c1 2 3-1 4 0')
  expect(shorterPath('M0.5 -0.25L0 0L-0.1 0.35')).toBe('m.5-.25-.5.25-.1.35')
})

test('what it does not know it leaves as it is', () => {
  for (const d of ['M0 0A5 5 0 0 1 10 0', 'M0 0H10', 'm1 1 2 2', '', 'L1', 'M1'])
    expect(shorterPath(d)).toBe(d)
})

test('a reader comes to the very same points', () => {
  fc.assert(
    fc.property(fc.array(points(2, 12), { minLength: 1, maxLength: 4 }), fc.boolean(), (runs, closed) => {
      const d = pathData(runs, closed)
      expect(ends(shorterPath(d))).toEqual(ends(d))
    }),
  )
})

test('and curves bend the same', () => {
  fc.assert(
    fc.property(points(7), points(4), fc.boolean(), (first, second, closed) => {
      const d = bentData([first, second], closed)
      expect(ends(shorterPath(d))).toEqual(ends(d))
      expect(length(shorterPath(d))).toBeCloseTo(length(d), 6)
    }),
  )
})

test('of a picture nothing else is touched', () => {
  const svg = '<path class="m-cut" data-of="M1 1L2 2" d="M1 1L2 2"/><text d2="M1 1L2 2">M1 1L2 2</text>'
  expect(shorter(svg)).toBe(
    '<path class="m-cut" data-of="M1 1L2 2" d="m1 1 1 1"/><text d2="M1 1L2 2">M1 1L2 2</text>',
  )
})
