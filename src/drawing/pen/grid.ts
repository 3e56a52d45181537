import type { Rect } from './lettering.ts'
import type { Mark, PathMark, Point } from './marks.ts'

/** Thin lines across a rectangle at the places given. */
export const gridMark = (xs: readonly number[], ys: readonly number[], [x, y, w, h]: Rect): Mark => {
  const upright = xs.map((at): Point[] => [
    [at, y],
    [at, y + h],
  ])
  const level = ys.map((at): Point[] => [
    [x, at],
    [x + w, at],
  ])
  return { mark: 'path', runs: [...upright, ...level], closed: false, role: 'square' }
}

/** The sample of a 10 mm square beside its words: its left edge, its middle's height and its side. */
export const squareSample = (x: number, y: number, side: number): PathMark => ({
  mark: 'path',
  runs: [
    [
      [x, y - side / 2],
      [x + side, y - side / 2],
      [x + side, y + side / 2],
      [x, y + side / 2],
    ],
  ],
  closed: true,
  role: 'guide',
})
