import type { Design } from '../design/design.ts'
import { coverLayers } from '../model/cover.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { convexParts } from '../plane/convex.ts'
import { isInPacked } from '../plane/in-convex.ts'
import type { Flat } from '../plane/lay.ts'
import type { Extent } from '../plane/near.ts'
import { areNear, extentOf, nearPairs } from '../plane/near.ts'

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
function paperOf(poser: Poser): {
  readonly rings: readonly Ring[]
  readonly parts: readonly Part[]
} {
  poser(0)
  const rings: Ring[] = []
  const parts: Part[] = []
  poser.model.panels.forEach(({ outline, notches }, panel) => {
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
      edges.set(ends, {
        y,
        z,
        v: (p - y) / length,
        w: (q - z) / length,
        length,
      })
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

const boxOf = ({ y, z, v, w, length }: Edge): Extent =>
  extentOf([
    [y, z],
    [y + length * v, z + length * w],
  ])

/** The panels that a spot lies in: not where they have a hole. */
function panelsAt(parts: readonly Part[], at: Spot): readonly number[] {
  const here = parts.filter((part) => holds(part, at))
  const holed = new Set(here.flatMap(({ panel, isHole }) => (isHole ? panel : [])))
  const panels = new Set(here.flatMap(({ panel, isHole }) => (isHole ? [] : panel)))
  return [...panels].filter((panel) => !holed.has(panel))
}

/** Ways into the four angles between two edges that meet. */
const ANGLES = [
  [1, 1],
  [1, -1],
  [-1, 1],
  [-1, -1],
] as const

/**
 * The spot of the shut card where most panels lie on one another. The edges of all panels cut the plane
 * into regions of equal depth; the deepest has a corner where two edges meet, and lies there in one of the
 * four angles between them. So it is enough to look into those four for every two edges that meet, as long as more
 * panels come near both than were found. Stops looking when it has found more than `enough`.
 */
export function mostLayers(poser: Poser, enough = Number.POSITIVE_INFINITY): Layers {
  const { rings, parts } = paperOf(poser)
  const edges = edgesOf(rings)
  const boxes = edges.map(boxOf)
  const near = boxes.map((box) => parts.filter((part) => areNear(part.box, box, 2 * STEP)))
  const counts = near.map((some) => new Set(some.map(({ panel }) => panel)).size)
  const pairs = nearPairs(boxes, ONE_CORNER)
    .map(([one, two]) => ({
      one,
      two,
      most: Math.min(counts[one] as number, counts[two] as number),
    }))
    .sort((a, b) => b.most - a.most)
  let best: Layers = { count: 0, at: { y: 0, z: 0 }, panels: [] }
  for (const { one, two, most } of pairs) {
    if (best.count >= most || best.count > enough) return best
    const [a, b] = [edges[one], edges[two]] as [Edge, Edge]
    const corner = meet(a, b)
    if (!corner) continue
    for (const [p, q] of ANGLES) {
      const [v, w] = [p * a.v + q * b.v, p * a.w + q * b.w]
      const far = STEP / Math.hypot(v, w)
      const at = { y: corner.y + far * v, z: corner.z + far * w }
      const panels = panelsAt(near[one] as readonly Part[], at)
      if (panels.length > best.count) best = { count: panels.length, at, panels }
    }
  }
  return best
}

/** How many layers lie on one another at the thickest spot of the shut card, its cover among them, and how thick they are, mm. */
export function thickest(design: Design): {
  layers: number
  thickness: number
} {
  const layers = mostLayers(compile(design)).count + coverLayers(design)
  return { layers, thickness: layers * design.card.caliper }
}
