/** Pieces side by side by their true outlines, and the free paper that they leave. Lengths in mm. */
import type { Shape, Shaped, Stamp } from '../../making/nest.ts'
import { nestShapes } from '../../making/nest.ts'
import { largestFree } from '../../making/raster.ts'
import { signedArea } from '../../paper/plane/convex.ts'
import type { Rectangle } from '../marks/clip.ts'
import { GAP, MARGIN } from './bed.ts'
import type { Turned } from './fit.ts'
import type { Cut } from './named-piece.ts'
import type { Spot } from './rows.ts'
import { LEAST } from './rows.ts'

/** Between a piece with all that is written at it and the next: its name is nearer to it than to any other. */
const BETWEEN = 2

/** What was worked out of pieces before: they are laid out on several papers and in several ways. */
export interface Known {
  readonly shapes: Map<Cut, Shape>
  readonly stamps: Map<Shape, Stamp>
}

export const nothingKnown = (): Known => ({ shapes: new Map(), stamps: new Map() })

/** The pieces on as few pages as they take; each in one of the ways in which it may lie. */
export function nestedIn(
  all: readonly (readonly Cut[])[],
  width: number,
  height: number,
  { shapes, stamps }: Known,
): readonly (readonly Spot[])[] {
  const cutOf = new Map<Shape, Cut>()
  const shaped = all.map((ways): Shaped => {
    const [cut] = ways as readonly [Cut]
    return {
      id: cut.piece.id,
      size: Math.abs(signedArea(cut.piece.outline)),
      shapes: ways.map((way): Shape => {
        const turn = way.place.turn ?? 0
        const shape = shapes.get(way) ?? { areas: way.areas, turn, acrossGrain: false }
        shapes.set(way, shape)
        cutOf.set(shape, way)
        return shape
      }),
    }
  })
  return nestShapes(shaped, { width, height, margin: 0 }, BETWEEN, stamps).map(({ nested }) =>
    nested.map(({ shape, at: [x, y] }): Spot => ({ cut: cutOf.get(shape) as Cut, x, y })),
  )
}

/** So many rectangles of a page are looked for, and none is lower than this. */
const MOST = 3

const LOW = 18

/** The free paper round the pieces of a page from one height to another: the largest rectangles first. */
export function roundNested(
  spots: readonly Spot[],
  { width }: Turned,
  top: number,
  foot: number,
): readonly Rectangle[] {
  const taken = spots.flatMap(({ cut, x, y }) =>
    cut.areas.map((area) => area.map(([p, q]): readonly [number, number] => [p + x - MARGIN, q + y - top])),
  )
  const room = { width: width - 2 * MARGIN, height: foot - top }
  const found: Rectangle[] = []
  for (let k = 0; k < MOST; k++) {
    const free = largestFree(taken, room, GAP - 1, { width: LEAST, height: LOW })
    if (!free) break
    const [x, y] = [free.x + MARGIN, free.y + top]
    found.push([x, y, x + free.width, y + free.height])
    const right = free.x + free.width
    const low = free.y + free.height
    taken.push([
      [free.x, free.y],
      [right, free.y],
      [right, low],
      [free.x, low],
    ])
  }
  return found
}
