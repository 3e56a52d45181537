/** A piece cut clear of the paper that goes through it as the card moves. */
import { check } from '../checks/check.ts'
import type { Design } from '../design/design.ts'
import { withGuests } from '../design/tree.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { signedArea } from '../plane/convex.ts'
import type { Half } from '../plane/halves.ts'
import type { Flat } from '../plane/lay.ts'
import { roundest } from '../plane/roundest.ts'
import { edgesOf, isWithin } from '../plane/segment.ts'
import type { Vec3 } from '../plane/vector.ts'
import { cross, dot, subtract } from '../plane/vector.ts'
import * as says from '../words/stuck.ts'
import type { Rings, Trim } from './trim.ts'
import { cutTo, INSIDE, LOST, MOST_CUTS, pieceIn, withRings } from './trim.ts'

/** Paper that lies in the piece's own plane by less than this goes along it, and not through it, mm. */
const LEVEL = 0.01

/** A crossing shorter than this is a touch of two corners, mm. */
const SHORT = 0.05

/** Where a piece lies in space: a point of it and its two ways. */
interface Plane {
  readonly origin: Vec3
  readonly across: Vec3
  readonly along: Vec3
}

function planeOf(poser: Poser, panel: number): Plane {
  const origin = poser.lift(panel, [0, 0])
  return {
    origin,
    across: subtract(poser.lift(panel, [1, 0]), origin),
    along: subtract(poser.lift(panel, [0, 1]), origin),
  }
}

/** Where an outline in space goes through a plane, in the plane's own coordinates: points in pairs along one line. */
function crossings({ origin, across, along }: Plane, outline: readonly Vec3[]): readonly Flat[] {
  const normal = cross(across, along)
  const height = outline.map((p) => dot(subtract(p, origin), normal))
  if (height.every((h) => Math.abs(h) < LEVEL)) return []
  const through = outline.flatMap((p, k): Flat[] => {
    const next = (k + 1) % outline.length
    const [a, b] = [height[k] as number, height[next] as number]
    if (a > 0 === b > 0) return []
    const [q, t] = [outline[next] as Vec3, a / (a - b)]
    const off = subtract(
      [0, 1, 2].map((i) => (p[i] as number) + t * ((q[i] as number) - (p[i] as number))) as Vec3,
      origin,
    )
    return [[dot(off, across), dot(off, along)]]
  })
  const [first, last] = [through[0], through.at(-1)]
  if (!first || !last) return []
  const way: Flat = [last[0] - first[0], last[1] - first[1]]
  const at = (p: Flat): number => p[0] * way[0] + p[1] * way[1]
  return through.toSorted((one, two) => at(one) - at(two))
}

/** So many places of a crossing are looked at: whether paper of the piece lies there. */
const LOOKS = 24

/** Whether a stretch goes through the inside of a ring, by places evenly on it. */
function runsWithin(ring: readonly Flat[], a: Flat, b: Flat): boolean {
  const edges = edgesOf(ring)
  return Array.from({ length: LOOKS }, (_, k) => (k + 0.5) / LOOKS).some((t) =>
    isWithin(edges, [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]),
  )
}

/** The side of a line on which the glue lies, half a millimetre off the line. */
function sideOf({ glue }: Rings, a: Flat, b: Flat): Half {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const way: Flat = [(b[1] - a[1]) / long, (a[0] - b[0]) / long]
  const { at } = roundest([glue])
  const [from, line] = [way[0] * at[0] + way[1] * at[1], way[0] * a[0] + way[1] * a[1]]
  return from <= line ? { way, upTo: line - INSIDE } : { way: [-way[0], -way[1]], upTo: -line - INSIDE }
}

/**
 * Cuts a piece stuck on a face straight along where other paper goes through it as the card moves, and keeps the side
 * of its glue; as many cuts as it takes, at the openings that the check names. What it carries is not cut, and where
 * paper only slides over it nothing is to be cut. Throws a RangeError if there is no such piece.
 */
export function trimHits(design: Design, id: string): Trim {
  const { panel, before, glue } = pieceIn(design, id)
  const carried = new Set(withGuests(design, id))
  let rings: Rings = { shape: before, glue }
  let tried = design
  let off = 0
  for (let k = 0; k < MOST_CUTS; k++) {
    const fault = check(tried, { names: ['clear-motion'], repairs: false }).find(
      ({ ok, ids }) => !ok && ids.some((one) => one.split('/')[0] === id),
    )
    if (!fault) break
    const poser = compile(tried)
    poser(fault.opening ?? 0)
    const plane = planeOf(poser, panel)
    const was = rings
    for (const [index, other] of poser.model.panels.entries()) {
      if (carried.has(other.name.split('/')[0] ?? '')) continue
      const through = crossings(
        plane,
        other.outline.map((p) => poser.lift(index, p)),
      )
      for (let n = 0; n + 1 < through.length; n += 2) {
        const [a, b] = [through[n] as Flat, through[n + 1] as Flat]
        if (Math.hypot(b[0] - a[0], b[1] - a[1]) < SHORT || !runsWithin(rings.shape, a, b)) continue
        const half = sideOf(rings, a, b)
        const far = Math.max(...rings.shape.map((p) => half.way[0] * p[0] + half.way[1] * p[1])) - half.upTo
        const cut = cutTo(rings, half)
        if (!cut) return LOST
        off = Math.max(off, far)
        rings = cut
      }
    }
    if (rings === was) return { done: false, sentence: says.noStraightCut }
    tried = withRings(design, id, rings)
  }
  const left = Math.abs(signedArea(rings.shape) / signedArea(before))
  return { done: true, design: tried, off, left }
}
