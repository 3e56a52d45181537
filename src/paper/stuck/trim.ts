/** A piece cut to what stays inside the card. */
import { check } from '../checks/check.ts'
import type { Design } from '../design/design.ts'
import { toEdge, toGutter } from '../measure/measure.ts'
import type { Rider } from '../mechanisms/rider.ts'
import { modelOf } from '../model/model.ts'
import type { Poser } from '../motion/pose.ts'
import { compile } from '../motion/pose.ts'
import { openingRange } from '../motion/range.ts'
import { convexParts, signedArea } from '../plane/convex.ts'
import type { Half } from '../plane/halves.ts'
import { inHalf } from '../plane/halves.ts'
import type { Flat } from '../plane/lay.ts'
import { overshoot } from '../plane/outline.ts'
import { roundest } from '../plane/roundest.ts'
import { edgesOf, isWithin } from '../plane/segment.ts'
import type { Vec3 } from '../plane/vector.ts'
import * as says from '../words/stuck.ts'
import { hundredths } from './glue-area.ts'

/** What is cut ends so far inside the card, mm: a hand cuts no truer. Common practice, no source. */
export const INSIDE = 0.5

/** Sticking out by less is rounding, mm. */
const HAIR = 1e-6

/** Openings looked at before the check is asked, degrees apart. */
const STEP = 4

/** So many cuts are made at the word of the check, which looks at every opening there is. */
export const MOST_CUTS = 40

/** Less glue than this holds nothing, mm². */
const LEAST_GLUE = 9

/** What came of it. */
export type Trim =
  | {
      readonly done: true
      readonly design: Design
      /** How far it stuck out at worst, mm; 0: nothing was to be cut. */
      readonly off: number
      /** What share of its paper is left. */
      readonly left: number
    }
  | { readonly done: false; readonly sentence: string }

export interface Rings {
  readonly shape: readonly Flat[]
  readonly glue: readonly Flat[]
}

/** One end of the card, as a limit of a panel at the opening posed last: `way` of length 1 in space. */
interface Limit {
  readonly way: Vec3
  readonly upTo: number
}

/** The ends of the card that a point lies beyond. From the gutter a card reaches as far at every opening: round it is a tube. */
function passed({ width, height }: Design['card'], p: Vec3, isShut: boolean): readonly Limit[] {
  const [x, y, z] = p
  const far = Math.hypot(x, z)
  const limits: Limit[] = []
  if (y < -HAIR) limits.push({ way: [0, -1, 0], upTo: -INSIDE })
  if (y > height + HAIR) limits.push({ way: [0, 1, 0], upTo: height - INSIDE })
  // Square to the tube where the point is: that cuts off nothing of what lies within it.
  if (far > width + HAIR) limits.push({ way: [x / far, 0, z / far], upTo: width - INSIDE })
  if (isShut && z < -HAIR) limits.push({ way: [0, 0, -1], upTo: -INSIDE })
  return limits
}

/** The same limit on the panel itself; null where the whole panel is as far out. */
function onPanel(poser: Poser, panel: number, { way, upTo }: Limit): Half | null {
  const origin = poser.lift(panel, [0, 0])
  const [a, l] = [poser.lift(panel, [1, 0]), poser.lift(panel, [0, 1])]
  const along = (p: Vec3): number => way[0] * p[0] + way[1] * p[1] + way[2] * p[2]
  const off = along(origin)
  const half: Half = { way: [along(a) - off, along(l) - off], upTo: upTo - off }
  return Math.hypot(...half.way) < 1e-9 ? null : half
}

/** Both rings cut; the shape keeps the part that is still glued. Null where no glue is left. */
export function cutTo({ shape, glue }: Rings, half: Half): Rings | null {
  const area = (ring: readonly Flat[]): number => Math.abs(signedArea(ring))
  const stuck = inHalf(glue, half).toSorted((one, two) => area(two) - area(one))[0]
  if (!stuck || area(stuck) < LEAST_GLUE) return null
  const { at } = roundest([stuck])
  const left = inHalf(shape, half).find((ring) => isWithin(edgesOf(ring), at))
  return left ? { shape: left, glue: stuck } : null
}

export const withRings = (design: Design, id: string, { shape, glue }: Rings): Design => ({
  ...design,
  mechanisms: design.mechanisms.map((m) => {
    if (m.id !== id || m.kind !== 'rider') return m
    // It lies where it lay: what shifted, turned and sized it is in the points now.
    const { size: _size, ...rest } = m
    const round = (ring: readonly Flat[]): readonly Flat[] =>
      ring.map(([a, l]): Flat => [hundredths(a), hundredths(l)])
    return { ...rest, shape: round(shape), glue: round(glue), across: 0, along: 0, turn: 0 } as Rider
  }),
})

/**
 * The openings at which the piece is looked at, degrees: from shut to flat as far as the card goes. Between them the
 * check finds what is left.
 */
function openingsFor(design: Design): readonly number[] {
  const [least, most] = openingRange(design)
  const count = Math.max(1, Math.ceil((most - least) / STEP))
  return Array.from({ length: count + 1 }, (_, k) => least + ((most - least) * k) / count)
}

export const LOST: Trim = {
  done: false,
  sentence: says.noGlueLeft,
}

/** Where a piece lies on its panel, and its glue. Throws a RangeError if there is no such piece. */
export function pieceIn(design: Design, id: string) {
  const { builds, panels, glue: glued } = modelOf(design)
  const owner = builds.findIndex(({ mechanism }) => mechanism.id === id && mechanism.kind === 'rider')
  const panel = builds[owner]?.firstPanel ?? -1
  const before = panels[panel]?.outline
  const glue = glued.find((one) => one.owner === owner)?.outline
  if (!before || !glue) throw new RangeError(`there is no piece ${id}`)
  return { panels, panel, before, glue }
}

/**
 * Cuts a piece stuck on a face to the part of it that stays inside the card, shut and on the whole way: no more is cut
 * off than reaches out, but for half a millimetre. At every opening what may stay is convex, so straight cuts do it,
 * as many as it takes. What it carries is not cut. Throws a RangeError if there is no such piece.
 */
export function trim(design: Design, id: string): Trim {
  const { panel, before, glue } = pieceIn(design, id)
  const poser = compile(design)
  let rings: Rings = { shape: before, glue }
  let off = 0
  /** Cuts what lies beyond an end of the card at one opening, until nothing does. */
  const cutAt = (opening: number): boolean => {
    poser(opening)
    for (let cuts = 0; cuts < MOST_CUTS; cuts++) {
      let worst: { readonly by: number; readonly at: Vec3 } = { by: HAIR, at: [0, 0, 0] }
      for (const p of rings.shape) {
        const at = poser.lift(panel, p)
        const by = -Math.min(toEdge(design.card, at), opening === 0 ? toGutter(at) : Number.POSITIVE_INFINITY)
        if (by > worst.by) worst = { by, at }
      }
      if (worst.by <= HAIR) return true
      off = Math.max(off, worst.by)
      for (const limit of passed(design.card, worst.at, opening === 0)) {
        const half = onPanel(poser, panel, limit)
        const cut = half && cutTo(rings, half)
        if (!cut) return false
        rings = cut
      }
    }
    return true
  }
  for (const opening of openingsFor(design)) if (!cutAt(opening)) return LOST
  for (let k = 0; k < MOST_CUTS; k++) {
    const tried = off > 0 ? withRings(design, id, rings) : design
    const fault = check(tried, { names: ['stays-inside'], repairs: false }).find(
      ({ ok, ids, value }) => !ok && ids[0] === id && value < 0,
    )
    if (!fault) break
    const was = rings
    if (!cutAt(fault.opening ?? 0)) return LOST
    if (rings === was) break
  }
  if (off === 0) return { done: true, design, off: 0, left: 1 }
  const left = Math.abs(signedArea(rings.shape) / signedArea(before))
  return { done: true, design: withRings(design, id, rings), off, left }
}

/**
 * Cuts a piece to the outline of the face that it is stuck on, where that has no dents: then it goes where the face
 * goes. Throws a RangeError if there is no such piece.
 */
export function trimToFace(design: Design, id: string): Trim {
  const { panels, before, glue } = pieceIn(design, id)
  const face = panels[panels.find(({ name }) => name === `${id}/face`)?.stuckOn ?? -1]?.outline ?? []
  const ring = signedArea(face) < 0 ? [...face].reverse() : face
  const isConvex = convexParts(ring).length === 1
  if (!isConvex) return { done: false, sentence: says.faceHasDents }
  let rings: Rings = { shape: before, glue }
  for (const { a, b } of edgesOf(ring)) {
    const long = Math.hypot(b[0] - a[0], b[1] - a[1])
    if (long < HAIR) continue
    // Paper lies to the left of each edge.
    const way: Flat = [(b[1] - a[1]) / long, (a[0] - b[0]) / long]
    const cut = cutTo(rings, { way, upTo: way[0] * a[0] + way[1] * a[1] })
    if (!cut) return LOST
    rings = cut
  }
  const left = Math.abs(signedArea(rings.shape) / signedArea(before))
  const off = overshoot(before, face).distance
  return off === 0
    ? { done: true, design, off, left: 1 }
    : { done: true, design: withRings(design, id, rings), off, left }
}
