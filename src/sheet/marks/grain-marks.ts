/** An arrow along the main fold of a piece: that way the paper's fibres should run. Lengths in mm. */

import type { PathMark, Point } from '../../drawing/pen/marks.ts'
import { turned } from '../../making/turn.ts'
import type { Rectangle } from './clip.ts'
import { corners, runsThrough } from './clip.ts'
import type { Stretch } from './stretches.ts'
import { edges, isIn, nearest } from './stretches.ts'

/** How long an arrow with so many gaps in its shaft is: its dashes begin and end with a dash, as its look has them. */
const longOf = (gaps: number): number => 1.5 + 2.2 * gaps

/** As long as there is room for. */
const LONG = [7, 5, 4, 2].map(longOf)

/** In the list of lines. */
export const SAMPLE_ARROW = longOf(6)

/** Its barbs, along and square to it. */
const BARB = { long: 1.5, half: 0.8 } as const

/** Free paper on all its sides. */
const CLEAR = 0.8

/** It stands beside its fold, no farther from it than this. */
const NEAR = 20

/** From place to place where it is tried. */
const STEP = 1.5

/** An arrow with two heads, its middle at a point: dashed, for solid means cut. */
export function grainArrow([x, y]: Point, way: number, long: number, of: string): PathMark {
  const at = (along: number, off: number): Point => {
    const [u, v] = turned([along, off], way)
    return [x + u, y + v]
  }
  const head = (end: number): Point[] => {
    const back = end - Math.sign(end) * BARB.long
    return [at(back, BARB.half), at(end, 0), at(back, -BARB.half)]
  }
  const half = long / 2
  const runs = [[at(-half, 0), at(half, 0)], head(-half), head(half)]
  return { mark: 'path', runs, closed: false, role: 'grain', of }
}

/** What an arrow keeps clear of, and where it may be. */
export interface GrainGround {
  /** All that is drawn on the piece. */
  readonly lines: readonly Stretch[]
  readonly taken: readonly Rectangle[]
  /** Places that are glued: hidden, or hatched. */
  readonly areas: readonly (readonly Point[])[]
  readonly outline: readonly Point[]
  readonly printable: Rectangle
}

/** The arrow of a piece beside its main fold, on free paper; null if there is none. */
export function grainMark(fold: Stretch, ground: GrainGround, of: string): PathMark | null {
  const [[ax, ay], [bx, by]] = fold
  const way = Math.atan2(by - ay, bx - ax)
  const middle: Point = [(ax + bx) / 2, (ay + by) / 2]
  // In a frame where the fold is level the arrow's paper is an upright rectangle.
  const level = (p: Point): Point => turned([p[0] - middle[0], p[1] - middle[1]], -way)
  const boxes = ground.taken.flatMap((box) => edges(corners(box)))
  const sides = [...ground.lines, ...boxes, ...ground.areas.flatMap(edges)].map(
    ([p, q]): Stretch => [level(p), level(q)],
  )
  const isCrossed = runsThrough(sides)
  const outline = ground.outline.map(level)
  const areas = ground.areas.map((area) => area.map(level))
  const [left, top, right, bottom] = ground.printable
  const reach = Math.hypot(bx - ax, by - ay) / 2
  const spots: Point[] = []
  for (let off = 0; off <= NEAR; off += STEP)
    for (let along = 0; along <= reach; along += STEP)
      for (const spot of [
        [along, off],
        [-along, off],
        [along, -off],
        [-along, -off],
      ] as const)
        spots.push(spot)
  const line: Stretch = [
    [-reach, 0],
    [reach, 0],
  ]
  spots.sort((p, q) => Math.hypot(...p) + nearest(p, line) - Math.hypot(...q) - nearest(q, line))
  for (const long of LONG)
    for (const [u, v] of spots) {
      const [half, high] = [long / 2 + CLEAR, BARB.half + CLEAR]
      const box: Rectangle = [u - half, v - high, u + half, v + high]
      if (isCrossed(box)) continue
      if (!isIn([u, v], outline) || areas.some((area) => isIn([u, v], area))) continue
      const [x, y] = turned([u, v], way)
      const at: Point = [x + middle[0], y + middle[1]]
      const mark = grainArrow(at, way, long, of)
      if (mark.runs.flat().every(([p, q]) => p >= left && p <= right && q >= top && q <= bottom)) return mark
    }
  return null
}
