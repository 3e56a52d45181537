/** Which colour lies uppermost where, on the painted pieces of a page. Lengths in mm, on the page. */
import type { PaintedPanel } from '../../drawing/art/colours.ts'
import { straight } from '../../drawing/art/outlines.ts'
import type { InkShape, Point } from '../../drawing/pen/marks.ts'
import { luminance } from '../../drawing/pen/mix.ts'
import type { Hex } from '../../drawing/pen/papers.ts'
import type { Rectangle } from './clip.ts'
import { isWithin } from './clip.ts'
import { isIn, nearest } from './stretches.ts'

/** The sheet. */
export const WHITE: Hex = '#ffffff'

/** A colour; null where a picture lies, which may have any. */
export type Ground = (point: Point) => Hex | null

/** Something painted, as straight lines. */
interface Layer {
  readonly box: Rectangle
  readonly covers: (point: Point) => boolean
  readonly colour: Hex | null
}

function boxOf(runs: readonly (readonly Point[])[], more = 0): Rectangle {
  const all = runs.flat()
  const [xs, ys] = [all.map(([x]) => x), all.map(([, y]) => y)]
  return [Math.min(...xs) - more, Math.min(...ys) - more, Math.max(...xs) + more, Math.max(...ys) + more]
}

/** How often a line goes round a point: pens fill where that is not 0. */
function turnsRound([x, y]: Point, run: readonly Point[]): number {
  let turns = 0
  for (let k = 0; k < run.length; k++) {
    const [ax, ay] = run[k] as Point
    const [bx, by] = run[(k + 1) % run.length] as Point
    if (ay > y === by > y) continue
    if (x < ax + ((y - ay) / (by - ay)) * (bx - ax)) turns += by > ay ? 1 : -1
  }
  return turns
}

/** The fill and over it the line of a shape, the upper one first. */
function layersOf(shape: InkShape): readonly Layer[] {
  if (shape.picture !== undefined)
    return shape.runs.map((run) => ({ box: boxOf([run]), covers: (p) => isIn(p, run), colour: null }))
  const runs = shape.runs.map((run) => straight(run, shape))
  const layers: Layer[] = []
  if (shape.line !== null) {
    const half = shape.width / 2
    const lines = runs.flatMap((run) => run.slice(1).map((b, k) => [run[k] as Point, b] as const))
    const covers = (p: Point): boolean => lines.some((line) => nearest(p, line) <= half)
    layers.push({ box: boxOf(runs, half), covers, colour: shape.line as Hex })
  }
  if (shape.fill !== null) {
    const covers = (p: Point): boolean => runs.reduce((sum, run) => sum + turnsRound(p, run), 0) !== 0
    layers.push({ box: boxOf(runs), covers, colour: shape.fill as Hex })
  }
  return layers
}

/** What lies uppermost at a point: white areas, then panels, the last one first; else the sheet. */
export function groundOf(panels: readonly PaintedPanel[], areas: readonly (readonly Point[])[] = []): Ground {
  const white = areas.map((area) => ({ area, box: boxOf([area]) }))
  const painted = [...panels].reverse().map(({ outline, paper, shapes }) => ({
    ...{ outline, paper, box: boxOf([outline]) },
    layers: [...shapes].reverse().flatMap(layersOf),
  }))
  return (point) => {
    if (white.some(({ area, box }) => isWithin(point, box) && isIn(point, area))) return WHITE
    for (const { outline, paper, box, layers } of painted) {
      if (!isWithin(point, box) || !isIn(point, outline)) continue
      const found = layers.find((layer) => isWithin(point, layer.box) && layer.covers(point))
      if (found) return found.colour
      if (paper !== null) return paper
    }
    return WHITE
  }
}

/** How much brighter one colour is than another, 1 to 21: WCAG 2.2, contrast ratio. */
export function contrast(a: Hex, b: Hex): number {
  const [one, other] = [luminance(a) + 0.05, luminance(b) + 0.05]
  return Math.max(one, other) / Math.min(one, other)
}
