import type { Design } from '../design/design.ts'
import { coverLayers } from '../model/cover.ts'
import type { Model } from '../model/model.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { convexParts } from '../plane/convex.ts'
import { isInPacked } from '../plane/in-convex.ts'
import type { Flat } from '../plane/lay.ts'
import type { Extent } from '../plane/near.ts'
import { extentOf, nearPairs } from '../plane/near.ts'

/** A spot in the plane between the pages of the shut card: y along the gutter, z away from it, mm. */
export interface Spot {
  readonly y: number
  readonly z: number
}

export interface Layers {
  /** How many panels lie on one another at the spot; the cover is no panel. */
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

/** A convex part of a panel or of a hole in it, in the shut card: corners packed as y, z, counter-clockwise; and the box round it. */
interface Part {
  readonly panel: number
  readonly isHole: boolean
  readonly corners: Float64Array
  readonly box: Extent
}

/** An outline of paper or of a hole, in the plane between the pages. */
type Ring = readonly Spot[]

/** The paper of the shut card, projected on the plane between the pages: its outlines, and it and its holes in convex parts. */
function paperOf(
  poser: Poser,
  model: Model,
): { readonly rings: readonly Ring[]; readonly parts: readonly Part[] } {
  poser(0)
  const rings: Ring[] = []
  const parts: Part[] = []
  model.panels.forEach(({ outline, notches }, panel) => {
    const lie = (points: readonly Flat[]): Spot[] =>
      points.map((flat) => poser.lift(panel, flat)).map(([, y, z]): Spot => ({ y, z }))
    const add = (of: readonly Flat[], isHole: boolean): void => {
      rings.push(lie(of))
      for (const { points } of convexParts(of)) {
        const corners = lie(points)
        const turn = corners.reduce((sum, p, k) => {
          const q = corners[(k + 1) % corners.length] as Spot
          return sum + p.y * q.z - p.z * q.y
        }, 0)
        if (turn < 0) corners.reverse()
        parts.push({
          panel,
          isHole,
          corners: Float64Array.from(corners.flatMap(({ y, z }) => [y, z])),
          box: extentOf(corners.map(({ y, z }) => [y, z])),
        })
      }
    }
    add(outline, false)
    for (const notch of notches) add(notch.outline, true)
  })
  return { rings, parts }
}

/** Every edge once: the two pages, and the two sides of a part, lie on one another. */
function edgesOf(rings: readonly Ring[]): Edge[] {
  const edges = new Map<string, Edge>()
  for (const ring of rings)
    ring.forEach(({ y, z }, k) => {
      const { y: p, z: q } = ring[(k + 1) % ring.length] as Spot
      const length = Math.hypot(p - y, q - z)
      if (!(length > ONE_CORNER)) return
      const ends = [`${y.toFixed(6)} ${z.toFixed(6)}`, `${p.toFixed(6)} ${q.toFixed(6)}`].sort().join(' ')
      edges.set(ends, { y, z, v: (p - y) / length, w: (q - z) / length, length })
    })
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

/** A rectangle of the plane: what may lie in it, and how many panels that is. */
interface Cell {
  readonly box: Extent
  readonly parts: Part[]
  readonly edges: Edge[]
  most: number
}

/** At most so many cells along either axis. */
const CELLS = 64

/** Whether a part lies under the whole of a cell, and a little more. */
const isFilled = ({ box }: Cell, part: Part): boolean => {
  const [y0, y1, z0, z1] = box as unknown as [number, number, number, number]
  return [y0 - 2 * STEP, y1 + 2 * STEP].every((y) =>
    [z0 - 2 * STEP, z1 + 2 * STEP].every((z) => holds(part, { y, z })),
  )
}

/** The plane in cells, those first in which most panels may lie on one another. */
function cellsOf(parts: readonly Part[], edges: readonly Edge[]): readonly Cell[] {
  const count = Math.min(CELLS, Math.ceil(2 * Math.sqrt(parts.length)))
  const [low, high] = [0, 2].map((k) => ({
    from: parts.reduce((least, { box }) => Math.min(least, box[k] as number), Number.POSITIVE_INFINITY),
    to: parts.reduce((most, { box }) => Math.max(most, box[k + 1] as number), Number.NEGATIVE_INFINITY),
  })) as [{ from: number; to: number }, { from: number; to: number }]
  const at = ({ from, to }: typeof low, k: number): number => from + ((to - from) * k) / count
  const cells = Array.from({ length: count * count }, (_, index): Cell => {
    const [i, j] = [Math.floor(index / count), index % count]
    return { box: [at(low, i), at(low, i + 1), at(high, j), at(high, j + 1)], parts: [], edges: [], most: 0 }
  })
  /** Every cell that a box comes near. */
  const under = (box: Extent): Cell[] => {
    const cell = ({ from, to }: typeof low, value: number): number =>
      to > from ? Math.max(0, Math.min(count - 1, Math.floor((count * (value - from)) / (to - from)))) : 0
    const [i0, i1] = [cell(low, (box[0] as number) - 2 * STEP), cell(low, (box[1] as number) + 2 * STEP)]
    const [j0, j1] = [cell(high, (box[2] as number) - 2 * STEP), cell(high, (box[3] as number) + 2 * STEP)]
    return Array.from({ length: i1 - i0 + 1 }, (_, i) =>
      cells.slice((i0 + i) * count + j0, (i0 + i) * count + j1 + 1),
    ).flat()
  }
  for (const part of parts) for (const { parts: here } of under(part.box)) here.push(part)
  for (const edge of edges) for (const { edges: here } of under(boxOf(edge))) here.push(edge)
  for (const cell of cells) {
    const panels = new Set<number>()
    for (const { panel, isHole } of cell.parts) if (!isHole) panels.add(panel)
    // A hole that is as wide as the cell leaves nothing of its panel there.
    for (const part of cell.parts) if (part.isHole && isFilled(cell, part)) panels.delete(part.panel)
    cell.most = panels.size
  }
  return cells.filter(({ most }) => most > 0).sort((one, two) => two.most - one.most)
}

const boxOf = ({ y, z, v, w, length }: Edge): Extent =>
  extentOf([
    [y, z],
    [y + length * v, z + length * w],
  ])

/**
 * The spot of the shut card where most panels lie on one another. The edges of all panels cut the plane
 * into regions of equal depth; the deepest has a corner where two edges meet, and lies there in one of the
 * four angles between them. So it is enough to look into those four for every two edges that meet, cell by cell of
 * the plane as long as there may be more panels in a cell than were found. Stops looking when it has found more than
 * `enough`.
 */
export function mostLayers(poser: Poser, enough = Number.POSITIVE_INFINITY): Layers {
  const { model } = poser
  const { rings, parts } = paperOf(poser, model)
  let best: Layers = { count: 0, at: { y: 0, z: 0 }, panels: [] }
  const look = ({ parts: here }: Cell, y: number, z: number): void => {
    const at = { y, z }
    const panels = new Set<number>()
    for (const part of here) if (!part.isHole && holds(part, at)) panels.add(part.panel)
    if (panels.size <= best.count) return
    for (const part of here)
      if (part.isHole && panels.has(part.panel) && holds(part, at)) panels.delete(part.panel)
    if (panels.size > best.count) best = { count: panels.size, at, panels: [...panels] }
  }
  for (const cell of cellsOf(parts, edgesOf(rings))) {
    const [y0, y1, z0, z1] = cell.box as unknown as [number, number, number, number]
    const seen = new Set<string>()
    for (const [i, j] of nearPairs(cell.edges.map(boxOf), ONE_CORNER)) {
      if (best.count >= cell.most || best.count > enough) return best
      const [one, two] = [cell.edges[i], cell.edges[j]] as [Edge, Edge]
      const at = meet(one, two)
      if (!at || at.y < y0 - STEP || at.y > y1 + STEP || at.z < z0 - STEP || at.z > z1 + STEP) continue
      for (const [p, q] of [
        [1, 1],
        [1, -1],
        [-1, 1],
        [-1, -1],
      ] as const) {
        const [v, w] = [p * one.v + q * two.v, p * one.w + q * two.w]
        const size = Math.hypot(v, w)
        const [y, z] = [at.y + (STEP * v) / size, at.z + (STEP * w) / size]
        const key = `${Math.round((100 * y) / STEP)} ${Math.round((100 * z) / STEP)}`
        if (seen.has(key)) continue
        seen.add(key)
        look(cell, y, z)
      }
    }
  }
  return best
}

/** How many layers lie on one another at the thickest spot of the shut card, its cover among them, and how thick they are, mm. */
export function thickest(design: Design): { layers: number; thickness: number } {
  const layers = mostLayers(compile(design)).count + coverLayers(design)
  return { layers, thickness: layers * design.card.caliper }
}
