import type { Design } from '../../design/design.ts'
import { modelOf } from '../../model/model.ts'
import { patchesOf } from '../../model/patches.ts'
import { compile } from '../../motion/pose.ts'
import { broughtIn, openingRange } from '../../motion/range.ts'
import { frontOf } from '../../motion/surface.ts'
import type { Flat } from '../../plane/lay.ts'
import { extentOf } from '../../plane/near.ts'
import { metAt } from '../../plane/ray.ts'
import { edgesOf, isWithin } from '../../plane/segment.ts'
import type { Vec3 } from '../../plane/vector.ts'
import { scale } from '../../plane/vector.ts'

/** One cell of a panel. */
export interface Free {
  /** Its middle, in the panel's flat coordinates, mm. */
  readonly at: Flat
  /** Nothing is cut, glued or stuck there: a flat piece may be. */
  readonly bare: boolean
  /** How high something may stand there off the panel, mm; infinite where nothing is over it. */
  readonly height: number
}

export interface FreeRoom {
  readonly panel: string
  readonly face: 'front' | 'back'
  /** A cell's size, mm. */
  readonly cell: number
  readonly cells: readonly Free[]
  /** The openings looked at, degrees. */
  readonly openings: readonly number[]
}

/** Which side, and from which opening on. */
export interface Sight {
  readonly face?: 'front' | 'back'
  /** Degrees; 90 if left out. */
  readonly opening?: number
}

/** Cells along a panel's longer side. */
const CELLS = 16

/** Openings that are looked at, from the one asked for to flat. */
const LOOKS = 10

/** Nearer than this is the panel itself or what is stuck on it, mm. */
const OFF = 0.01

/**
 * Where on a panel something may still go: cell by cell, whether it is bare, and how high over it the next paper is,
 * square to the panel, at the least of some openings from the one asked for to flat (as far as the card goes). Looked
 * at cell by cell and opening by opening, so what is thinner than a cell, or passes between two openings, is missed: it
 * shows where to try, and the checks tell. Throws a RangeError for an unknown panel.
 */
export function room(design: Design, panel: string, { face = 'front', opening = 90 }: Sight = {}): FreeRoom {
  const model = modelOf(design)
  const index = model.panels.findIndex(({ name }) => name === panel)
  const own = model.panels[index]
  if (!own) throw new RangeError(`there is no panel ${panel}`)
  const [x0, x1, y0, y1] = extentOf(own.outline)
  const cell = Math.max(x1 - x0, y1 - y0) / CELLS
  const outline = edgesOf(own.outline)
  const holes = own.notches.map((notch) => edgesOf(notch.outline))
  const taken = [
    ...model.glue.flatMap((glue) => (glue.panel === index && glue.closed ? [edgesOf(glue.outline)] : [])),
    ...model.panels.flatMap(({ stuckOn, outline: on }) => (stuckOn === index ? [edgesOf(on)] : [])),
  ]
  const spots: { readonly at: Flat; readonly bare: boolean }[] = []
  for (let a = x0 + cell / 2; a < x1; a += cell)
    for (let l = y0 + cell / 2; l < y1; l += cell) {
      const at: Flat = [a, l]
      if (!isWithin(outline, at) || holes.some((hole) => isWithin(hole, at))) continue
      spots.push({ at, bare: !taken.some((place) => isWithin(place, at)) })
    }
  const poser = compile(design)
  const [, most] = openingRange(design)
  const from = broughtIn(design, opening)
  const openings = Array.from({ length: LOOKS + 1 }, (_, k) =>
    k === LOOKS ? most : from + ((most - from) * k) / LOOKS,
  )
  const heights = spots.map(() => Number.POSITIVE_INFINITY)
  const others = patchesOf(model).filter((patch) => patch.panel !== index)
  for (const at of openings) {
    poser(at)
    const way = scale(frontOf(model, poser.frames, index), face === 'front' ? 1 : -1)
    const triangles = others.flatMap(({ panel: other, outline: points }) => {
      const lifted = points.map((p) => poser.lift(other, p))
      return lifted
        .slice(2)
        .map((c, k): readonly [Vec3, Vec3, Vec3] => [lifted[0] as Vec3, lifted[k + 1] as Vec3, c])
    })
    spots.forEach((spot, k) => {
      const p = poser.lift(index, spot.at)
      for (const triangle of triangles) {
        const far = metAt(p, way, triangle)
        if (far > OFF) heights[k] = Math.min(heights[k] as number, far)
      }
    })
  }
  return {
    panel,
    face,
    cell,
    cells: spots.map((spot, k) => ({ ...spot, height: heights[k] as number })),
    openings,
  }
}
