import { overlapOf } from '../plane/convex.ts'
import type { Flat } from '../plane/lay.ts'
import { parting, piercings, ROUNDING, TOUCH } from '../plane/parting.ts'
import { RADIANS } from '../plane/vector.ts'
import type { Facet, Leaf } from './leaves.ts'
import type { Body, Still, Stretch } from './motion.ts'
import type { Path, Scene } from './paths.ts'
import { beyond, beyondNear, clearOfBox, follow, roomFor, seen } from './paths.ts'

/** The widest stretches in which the paper itself is looked at, and not outlines alone; degrees. */
export const FIRST = 11.25

/** Two facets that were not proved apart. */
export interface Doubt {
  readonly one: Facet
  readonly two: Facet
  readonly gap: number
}

const pinnedIn = ({ M, corners }: Path): boolean[] => Array.from(M.subarray(0, corners), (m) => m < ROUNDING)

/** The convex parts of two leaves. */
export type Paper = () => readonly [readonly Facet[], readonly Facet[]]

/** Proofs about two leaves in one motion, between its least and its widest opening; they share their memory. */
export interface Proofs {
  /**
   * What keeps two leaves from being proved apart in a stretch: null if nothing, true if the stretch is only
   * too wide. Their paper is asked for only where their outlines will not do. Counts each look at two facets.
   */
  doubt(one: Leaf, two: Leaf, paper: Paper, stretch: Stretch, effort: { left: number }): Doubt | true | null
  /** How far two facets are apart at an opening, mm; below 0: they cross by so much. */
  gapAt(pair: Doubt, still: Still): number
  /** Where two facets meet, or where the first is nearest to the second's panel, in the coordinates of that panel. */
  spot(pair: Doubt, still: Still): Flat
  /** Whether two facets lie in one plane, one over the other, at both ends of a stretch and in its middle. */
  coincide(pair: Doubt, stretch: Stretch): boolean
}

export function proofsIn(scene: Scene, [least, most]: readonly [number, number]): Proofs {
  const { motion } = scene
  const [path, back, joined] = [roomFor(0), roomFor(0), roomFor(0)]
  const middleOf = ({ from, to }: Stretch): Still => motion.still((from.opening + to.opening) / 2)

  /** Whether the outline of one leaf passes clear of the other's plane or box. The host's frame is tried first. */
  const outlinesApart = (one: Leaf, two: Leaf, stretch: Stretch): boolean =>
    clearOfBox(follow(path, scene, stretch, two.outline, one.panel), one.box) ||
    clearOfBox(follow(path, scene, stretch, one.outline, two.panel), two.box)

  /**
   * Whether two facets are parted as seen from the first one's panel. A guest's apex lies in the middle of
   * its host's ridge: only from the host does that ridge stand still, so that a direction square to it can
   * keep the guest beyond both its ends.
   */
  const partedBackward = (a: Facet, b: Facet, stretch: Stretch, middle: Still): boolean => {
    follow(back, scene, stretch, b.body, a.body.panel)
    const points = seen(scene, middle, b.body, a.body.panel)
    const { x, y, z, edge, gap } = parting(points, pinnedIn(back), a.body.flat)
    return gap >= 0 && beyond(back, x, y, z, edge)
  }

  /**
   * Whether two facets that share a point are parted by a plane through it, rim and all: the cones there
   * do not cross. It takes far wider stretches than to follow the hair's breadth between their rims.
   */
  const partedAtPoint = (a: Facet, b: Facet, stretch: Stretch, middle: Still): boolean => {
    follow(joined, scene, stretch, a.whole, b.body.panel)
    const pinned = pinnedIn(joined)
    if (!pinned.includes(true)) return false
    const points = seen(scene, middle, a.whole, b.body.panel)
    const { x, y, z, edge, gap } = parting(points, pinned, b.whole.flat)
    return gap >= 0 && beyond(joined, x, y, z, edge)
  }

  /** Whether two bodies are parted in a stretch at an end of the motion, with heights in the measure of the way from there. */
  const partedNear = (end: 'from' | 'to', a: Body, b: Body, stretch: Stretch): boolean => {
    follow(joined, scene, stretch, a, b.panel)
    const points = (end === 'from' ? joined.to : joined.from).slice(0, 3 * joined.corners)
    for (let i = 2; i < points.length; i += 3) points[i] = (points[i] as number) / stretch.width
    const found = parting(points, pinnedIn(joined), b.flat)
    return found.gap >= 0 && beyondNear(joined, end, found, stretch.width)
  }
  const ordered = (end: 'from' | 'to', a: Facet, b: Facet, stretch: Stretch): boolean =>
    stretch[end].opening === (end === 'from' ? least : most) &&
    (partedNear(end, a.body, b.body, stretch) ||
      partedNear(end, b.body, a.body, stretch) ||
      partedNear(end, a.whole, b.whole, stretch) ||
      partedNear(end, b.whole, a.whole, stretch))

  /** The two facets of two leaves that are least apart, of those that no proof parts. */
  const worstFacets = (paper: Paper, stretch: Stretch, effort: { left: number }): Doubt | null => {
    const [ones, twos] = paper()
    const middle = middleOf(stretch)
    let worst: Doubt | null = null
    for (const a of ones) {
      const seenFrom = twos[0]?.body.panel
      if (seenFrom === undefined) return null
      follow(path, scene, stretch, a.body, seenFrom)
      let points: Float64Array | undefined
      let pinned: boolean[] = []
      for (const b of twos) {
        if (clearOfBox(path, b.box)) continue
        effort.left--
        if (partedAtPoint(a, b, stretch, middle)) continue
        if (!points) {
          points = seen(scene, middle, a.body, seenFrom)
          pinned = pinnedIn(path)
        }
        const { x, y, z, edge, gap: found } = parting(points, pinned, b.body.flat)
        if (found >= 0 && beyond(path, x, y, z, edge)) continue
        if (found >= -TOUCH && partedBackward(a, b, stretch, middle)) continue
        if (ordered('from', a, b, stretch) || ordered('to', a, b, stretch)) continue
        // No direction at all: bodies without size.
        const gap = Number.isFinite(found) ? found : 0
        if (!worst || gap < worst.gap) worst = { one: a, two: b, gap }
        if (gap < -TOUCH) return worst
      }
    }
    return worst
  }

  /** Where the edges of each of two facets pierce the other, in the coordinates of the second's panel. */
  const marksOf = ({ one, two }: Doubt, still: Still, points: Float64Array): Flat[] => {
    const behind = seen(scene, still, two.body, one.body.panel)
    const there = piercings(behind, one.body.flat).map(([a, l]): Flat => {
      const mark = { panel: one.body.panel, flat: Float64Array.of(a, l) }
      const at = seen(scene, still, mark, two.body.panel)
      return [at[0] as number, at[1] as number]
    })
    return [...piercings(points, two.body.flat), ...there]
  }

  const liesOver = ({ one, two }: Doubt, still: Still): boolean => {
    const points = seen(scene, still, one.body, two.body.panel)
    for (let i = 2; i < points.length; i += 3) if (Math.abs(points[i] as number) > TOUCH) return false
    const flat = (packed: Float64Array, step: number): Flat[] =>
      Array.from({ length: packed.length / step }, (_, k) => [
        packed[step * k] as number,
        packed[step * k + 1] as number,
      ])
    return overlapOf({ points: flat(points, 3) }, { points: flat(two.body.flat, 2) }) > TOUCH
  }

  return {
    doubt: (one, two, paper, stretch, effort) => {
      if (outlinesApart(one, two, stretch)) return null
      return stretch.width > FIRST * RADIANS * 1.01 ? true : worstFacets(paper, stretch, effort)
    },
    gapAt: ({ one, two }, still) => {
      const bends = motion.stretch(still, still).bends(two.body.panel, one.body)
      const pinned = Array.from(bends, (bend) => bend < ROUNDING)
      return parting(seen(scene, still, one.body, two.body.panel), pinned, two.body.flat).gap
    },
    spot: (pair, still) => {
      const points = seen(scene, still, pair.one.body, pair.two.body.panel)
      const marks = marksOf(pair, still, points)
      if (marks.length === 0) {
        const nearest = Array.from({ length: points.length / 3 }, (_, k) => 3 * k).reduce((p, q) =>
          Math.abs(points[q + 2] as number) < Math.abs(points[p + 2] as number) ? q : p,
        )
        return [points[nearest] as number, points[nearest + 1] as number]
      }
      return [
        marks.reduce((sum, [a]) => sum + a, 0) / marks.length,
        marks.reduce((sum, [, l]) => sum + l, 0) / marks.length,
      ]
    },
    coincide: (pair, stretch) =>
      [middleOf(stretch), stretch.from, stretch.to].every((still) => liesOver(pair, still)),
  }
}
