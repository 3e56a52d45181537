import type { Design } from '../design/design.ts'
import type { Model } from '../model/model.ts'
import { patchesOf } from '../model/patches.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { isInPacked } from '../plane/convex.ts'
import type { Extent } from '../plane/near.ts'
import { extentOf, nearPairs } from '../plane/near.ts'

/** A spot in the plane between the pages of the shut card: y along the gutter, z away from it, mm. */
export interface Spot {
  readonly y: number
  readonly z: number
}

export interface Layers {
  /** How many panels lie on one another at the spot. */
  readonly count: number
  readonly at: Spot
  /** Their indices. */
  readonly panels: readonly number[]
}

/**
 * How far off a corner of the arrangement we look into the regions round it, mm. A region narrower than
 * this can be missed: a hair is 0.05 mm wide.
 */
const STEP = 1e-4

/** Corners nearer than this are one, mm. */
const ONE_CORNER = 1e-7

interface Edge {
  readonly y: number
  readonly z: number
  /** Unit direction, and length. */
  readonly v: number
  readonly w: number
  readonly length: number
}

/** A convex part of a panel in the shut card: corners packed as y, z, counter-clockwise; and the box round it. */
interface Part {
  readonly panel: number
  readonly corners: Float64Array
  readonly box: Extent
}

/** The paper of the shut card, projected on the plane between the pages. */
function partsOf(poser: Poser, model: Model): Part[] {
  poser(0)
  return patchesOf(model).map(({ panel, outline }) => {
    const points = outline.map((flat) => poser.lift(panel, flat)).map(([, y, z]): Spot => ({ y, z }))
    const turn = points.reduce((sum, p, k) => {
      const q = points[(k + 1) % points.length] as Spot
      return sum + p.y * q.z - p.z * q.y
    }, 0)
    if (turn < 0) points.reverse()
    return {
      panel,
      corners: Float64Array.from(points.flatMap(({ y, z }) => [y, z])),
      box: extentOf(points.map(({ y, z }) => [y, z])),
    }
  })
}

/** Every edge once: the two pages, and the two sides of a part, lie on one another. */
function edgesOf(parts: readonly Part[]): Edge[] {
  const edges = new Map<string, Edge>()
  for (const { corners } of parts)
    for (let i = 0; i < corners.length; i += 2) {
      const j = (i + 2) % corners.length
      const [y, z, p, q] = [corners[i], corners[i + 1], corners[j], corners[j + 1]] as unknown as [
        number,
        number,
        number,
        number,
      ]
      const length = Math.hypot(p - y, q - z)
      if (!(length > ONE_CORNER)) continue
      const ends = [`${y.toFixed(6)} ${z.toFixed(6)}`, `${p.toFixed(6)} ${q.toFixed(6)}`].sort().join(' ')
      edges.set(ends, { y, z, v: (p - y) / length, w: (q - z) / length, length })
    }
  return [...edges.values()]
}

/** Where two edges meet or cross, or null; for edges that run along each other, an end of one of them. */
function meet(one: Edge, two: Edge): Spot | null {
  const [y, z] = [two.y - one.y, two.z - one.z]
  const turn = one.v * two.w - one.w * two.v
  if (Math.abs(turn) < 1e-12) return null
  const s = (y * two.w - z * two.v) / turn
  const t = (y * one.w - z * one.v) / turn
  if (s < -ONE_CORNER || s > one.length + ONE_CORNER || t < -ONE_CORNER || t > two.length + ONE_CORNER)
    return null
  return { y: one.y + s * one.v, z: one.z + s * one.w }
}

function holds({ corners, box }: Part, { y, z }: Spot): boolean {
  const [y0, y1, z0, z1] = [box[0], box[1], box[2], box[3]] as unknown as [number, number, number, number]
  return y >= y0 && y <= y1 && z >= z0 && z <= z1 && isInPacked(corners, y, z)
}

/** So many strips side by side, across the way along the gutter: a spot is held only against the parts in its own. */
const STRIPS = 64

/** Finds the parts that may lie at a spot, by its way along the gutter. */
function stripsOf(parts: readonly Part[]): (y: number) => readonly Part[] {
  const low = Math.min(...parts.map(({ box }) => box[0] as number))
  const high = Math.max(...parts.map(({ box }) => box[1] as number))
  const strip = (y: number): number =>
    Math.max(0, Math.min(STRIPS - 1, Math.floor(((y - low) / (high - low)) * STRIPS)))
  const strips: Part[][] = Array.from({ length: STRIPS }, () => [])
  for (const part of parts)
    for (let k = strip(part.box[0] as number); k <= strip(part.box[1] as number); k++) strips[k]?.push(part)
  return (y) => strips[strip(y)] ?? []
}

/**
 * The spot of the shut card where most panels lie on one another. The edges of all panels cut the plane
 * into regions of equal depth; the deepest has a corner where two edges meet, and lies there in one of the
 * four angles between them. So it is enough to look into those four for every two edges that meet. Stops
 * looking when it has found more than `enough`.
 */
export function mostLayers(poser: Poser, enough = Number.POSITIVE_INFINITY): Layers {
  const { model } = poser
  const parts = partsOf(poser, model)
  const edges = edgesOf(parts)
  const partsAt = stripsOf(parts)
  let best: Layers = { count: 0, at: { y: 0, z: 0 }, panels: [] }
  const seen = new Set<string>()
  const look = (y: number, z: number): void => {
    const key = `${Math.round((100 * y) / STEP)} ${Math.round((100 * z) / STEP)}`
    if (seen.has(key)) return
    seen.add(key)
    const at = { y, z }
    const panels = new Set<number>()
    for (const part of partsAt(y)) if (holds(part, at)) panels.add(part.panel)
    if (panels.size > best.count) best = { count: panels.size, at, panels: [...panels] }
  }
  const boxes = edges.map(({ y, z, v, w, length }) =>
    extentOf([
      [y, z],
      [y + length * v, z + length * w],
    ]),
  )
  for (const [i, j] of nearPairs(boxes, ONE_CORNER)) {
    if (best.count > enough) return best
    const [one, two] = [edges[i], edges[j]] as [Edge, Edge]
    const at = meet(one, two)
    if (!at) continue
    for (const [p, q] of [
      [1, 1],
      [1, -1],
      [-1, 1],
      [-1, -1],
    ] as const) {
      const [v, w] = [p * one.v + q * two.v, p * one.w + q * two.w]
      const size = Math.hypot(v, w)
      look(at.y + (STEP * v) / size, at.z + (STEP * w) / size)
    }
  }
  return best
}

/** How many layers lie on one another at the thickest spot of the shut card, and how thick they are, mm. */
export function thickest(design: Design): { layers: number; thickness: number } {
  const poser = compile(design)
  poser(0)
  const { count } = mostLayers(poser)
  return { layers: count, thickness: count * design.card.caliper }
}
