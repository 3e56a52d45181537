import type { Vec3 } from '../../paper/index.ts'
import { betweenInSpace, clip } from '../../paper/plane/clip.ts'

/** A convex flat part in space. Parts of one `leaf` lie in one plane, whose unit normal is `normal`: that way layers count up. */
export interface Part {
  readonly leaf: number
  readonly points: readonly Vec3[]
  /** Edge k, from points[k] to points[k + 1], is to be drawn. */
  readonly drawn: readonly boolean[]
  readonly normal: Vec3
  /** Which part it was before any splitting: an index into the list given to `paintOrder`. */
  readonly from: number
  /** A line drawn on the leaf rather than a piece of it: two points, painted after the leaf's pieces. */
  readonly line?: boolean
  /** How many layers lie under it where it lies flat on others; default 0. */
  readonly layer?: number
}

interface Group {
  readonly normal: Vec3
  readonly offset: number
  readonly parts: Part[]
}

/** A point nearer than this to a plane lies on it, mm: a thousandth of a pencil line, far above rounding. */
export const ON_PLANE = 1e-6

/** How many planes are tried at each step of the search for one that splits least. */
const TRIED = 20

const height = (plane: Group, p: Vec3): number =>
  plane.normal[0] * p[0] + plane.normal[1] * p[1] + plane.normal[2] * p[2] - plane.offset

/** Bits: 1 some of it lies above the plane, 2 some below. */
function sides(plane: Group, points: readonly Vec3[]): number {
  let bits = 0
  for (const p of points) {
    const h = height(plane, p)
    if (h > ON_PLANE) bits |= 1
    else if (h < -ON_PLANE) bits |= 2
  }
  return bits
}

/** What lies on one side of the plane (`way` 1 above, -1 below); the cut itself is not drawn. */
function half(plane: Group, part: Part, way: 1 | -1): Part | null {
  const off = part.points.map((p) => way * height(plane, p))
  const { points, edges } = clip(part.points, off, betweenInSpace, ON_PLANE, !part.line)
  const drawn = edges.map((k) => part.drawn[k] === true)
  return points.length < (part.line ? 2 : 3) ? null : { ...part, points, drawn }
}

/** The group whose plane splits the fewest others, among those tried. */
function leastSplitting(groups: readonly Group[]): number {
  let best = 0
  let fewest = Number.POSITIVE_INFINITY
  const step = Math.max(1, groups.length / TRIED)
  for (let at = 0; at < groups.length; at += step) {
    const index = Math.floor(at)
    const plane = groups[index] as Group
    let splits = 0
    for (const other of groups) {
      if (other === plane) continue
      for (const part of other.parts) if (sides(plane, part.points) === 3) splits++
      if (splits >= fewest) break
    }
    if (splits < fewest) {
      fewest = splits
      best = index
      if (splits === 0) break
    }
  }
  return best
}

/** Parts in one plane as they lie on one another, seen from the eye: by layers, each with its lines on top. */
function stacked(on: readonly Part[], eye: Vec3): readonly Part[] {
  const rank = ({ layer = 0, line = false }: Part, way: number): number => 2 * layer * way + (line ? 1 : 0)
  const [{ points, normal: n }] = on as [Part]
  const p = points[0] as Vec3
  const front = n[0] * (eye[0] - p[0]) + n[1] * (eye[1] - p[1]) + n[2] * (eye[2] - p[2]) > 0
  const way = front ? 1 : -1
  return (front ? [...on] : [...on].reverse()).sort((a, b) => rank(a, way) - rank(b, way))
}

function walk(groups: readonly Group[], eye: Vec3, out: Part[]): void {
  if (groups.length === 0) return
  const index = leastSplitting(groups)
  const plane = groups[index] as Group
  const on: Part[] = [...plane.parts]
  const above: Group[] = []
  const below: Group[] = []
  for (const group of groups) {
    if (group === plane) continue
    const up: Part[] = []
    const down: Part[] = []
    for (const part of group.parts) {
      const bits = sides(plane, part.points)
      if (bits === 0) on.push(part)
      else if (bits === 1) up.push(part)
      else if (bits === 2) down.push(part)
      else {
        const a = half(plane, part, 1)
        const b = half(plane, part, -1)
        if (a) up.push(a)
        if (b) down.push(b)
      }
    }
    if (up.length > 0) above.push({ ...group, parts: up })
    if (down.length > 0) below.push({ ...group, parts: down })
  }
  const eyeAbove = height(plane, eye) > 0
  walk(eyeAbove ? below : above, eye, out)
  out.push(...stacked(on, eye))
  walk(eyeAbove ? above : below, eye, out)
}

/**
 * The parts in the order in which a painter at `eye` paints them, farthest first: what is painted later
 * is never behind what was painted earlier. Parts that pass through one another are split.
 * Source: binary space partition, Fuchs, Kedem and Naylor 1980; here the planes are those of the leaves.
 * Parts that lie in one plane go by their layers and keep the order given where these count up towards the eye (a
 * later one lies on an earlier one), and the reverse where they count down; lines come after the
 * pieces of their layer.
 */
export function paintOrder(parts: readonly Part[], eye: Vec3): readonly Part[] {
  const groups = new Map<number, Group>()
  for (const part of parts) {
    const group = groups.get(part.leaf)
    if (group) {
      group.parts.push(part)
      continue
    }
    const p = part.points[0]
    if (!p) continue
    const n = part.normal
    groups.set(part.leaf, { normal: n, offset: n[0] * p[0] + n[1] * p[1] + n[2] * p[2], parts: [part] })
  }
  const out: Part[] = []
  walk([...groups.values()], eye, out)
  return out
}
