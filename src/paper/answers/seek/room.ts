import type { Room } from '../../mechanisms/kind.ts'
import type { Model, ModelCrease, PanelLay } from '../../model/model.ts'
import type { Poser } from '../../motion/pose.ts'
import { openingRange } from '../../motion/range.ts'
import type { Flat } from '../../plane/lay.ts'
import { unlaid } from '../../plane/lay.ts'
import { roundest } from '../../plane/roundest.ts'
import { edgesOf } from '../../plane/segment.ts'

/** Kept from what is cut or glued on the same crease, mm: the bridge that is asked for. */
const APART = 5

/** A shorter stretch has no room, mm. */
const SHORTEST = 8

/** So many of the longest free stretches of a crease are looked at, and the whole of it. */
const MOST_STRETCHES = 3

/** Looked at along a stretch, and left out at either end of it, as a share. */
const LOOKS = 5

const INSET = 0.02

/** Off a crease, mm: there the paper on this side of it is met, and not the crease. */
const OFF = 1e-3

/** How far free paper reaches square to a crease, on one side of it, at a place along it; mm. */
function reachOn(model: Model, { panel, lay }: PanelLay): (along: number) => number {
  const { outline, notches } = model.panels[panel] ?? { outline: [], notches: [] }
  // Packed as across and along of both ends, seen from the crease: it is asked often.
  const ringOf = (ring: readonly Flat[]): Float64Array =>
    Float64Array.from(edgesOf(ring).flatMap(({ a, b }) => [...unlaid(lay, a), ...unlaid(lay, b)]))
  const rings = [outline, ...notches.map((notch) => notch.outline)].map(ringOf)
  return (along) => {
    let least = Number.POSITIVE_INFINITY
    // Inside by the even-odd rule: of the outline, and of no hole.
    let isPaper = true
    for (let r = 0; r < rings.length; r++) {
      const ring = rings[r] as Float64Array
      let within = false
      for (let i = 0; i < ring.length; i += 4) {
        const [p, q] = [ring[i + 1] as number, ring[i + 3] as number]
        if (p > along === q > along) continue
        const from = ring[i] as number
        const across = from + ((along - p) / (q - p)) * ((ring[i + 2] as number) - from)
        if (across <= OFF) continue
        within = !within
        if (across < least) least = across
      }
      if (within !== (r === 0)) isPaper = false
    }
    return isPaper && Number.isFinite(least) ? least : 0
  }
}

/** What each guest of a crease takes of it, as stretches, mm. */
function taken(model: Model, crease: number): [number, number][] {
  const { guests, left, right } = model.creases[crease] as ModelCrease
  return guests.map((owner): [number, number] => {
    const [from, to] = model.builds[owner]?.build.span ?? [0, 0]
    const places = [from, to]
    for (const glue of model.glue)
      for (const { panel, lay } of [left, right])
        if (glue.owner === owner && glue.panel === panel)
          places.push(...glue.outline.map((p) => unlaid(lay, p)[1]))
    return [Math.min(...places), Math.max(...places)]
  })
}

/** What is left of a crease between its guests, longest first. */
function freeStretches(model: Model, crease: number): [number, number][] {
  const { length } = model.creases[crease] as ModelCrease
  const free: [number, number][] = []
  let from = 0
  for (const [a, b] of taken(model, crease).sort((p, q) => p[0] - q[0])) {
    free.push([from, Math.min(length, a) - APART])
    from = Math.max(from, b + APART)
  }
  free.push([from, length])
  return free.filter(([a, b]) => b - a >= SHORTEST).sort((p, q) => q[1] - q[0] - (p[1] - p[0]))
}

/** How far the card reaches from a point of the shut card in a direction of its plane, mm. */
function toRim(card: { width: number; height: number }, [y, z]: Flat, [dy, dz]: Flat): number {
  const past = (x: number, d: number, size: number): number =>
    Math.abs(d) < 1e-9 ? Number.POSITIVE_INFINITY : d > 0 ? (size - x) / d : -x / d
  return Math.max(0, Math.min(past(y, dy, card.height), past(z, dz, card.width)))
}

/** The rooms on a crease, by index: its longest free stretches first, then the whole of it, guests and all. */
export function roomsOn(poser: Poser, crease: number): readonly Room[] {
  const { model } = poser
  const { length, left, right } = model.creases[crease] as ModelCrease
  const sides = [left, right].map((side) => reachOn(model, side))
  const [shut] = openingRange(model.design)
  poser(shut)
  const frame = Float64Array.from(poser.frames[crease] ?? [])
  const at = (from: number, k: number) => frame[from + k] as number
  const depth: Room['depth'] = (from, to) => {
    let least = Number.POSITIVE_INFINITY
    for (let k = 0; k < LOOKS; k++) {
      const along = from + (to - from) * (INSET + ((1 - 2 * INSET) * k) / (LOOKS - 1))
      for (const reach of sides) least = Math.min(least, reach(along))
    }
    return least
  }
  const beyond: Room['beyond'] = (along) =>
    toRim(model.design.card, [at(0, 1) + along * at(6, 1), at(0, 2) + along * at(6, 2)], [at(9, 1), at(9, 2)])
  const stretches = freeStretches(model, crease).slice(0, MOST_STRETCHES)
  const whole = stretches.some(([a, b]) => b - a >= length) || length < SHORTEST
  return [...stretches, ...(whole ? [] : [[0, length] as const])].map(([from, to]) => ({
    from,
    to,
    depth,
    beyond,
    caliper: model.design.card.caliper,
    isGutter: crease === 0,
  }))
}

const spotted = (spot: NonNullable<Room['spot']>): Room => ({
  from: spot.at[1] - spot.radius,
  to: spot.at[1] + spot.radius,
  depth: () => spot.radius,
  beyond: () => Number.POSITIVE_INFINITY,
  spot,
})

/** What is looked for about a place is so large, mm. */
const ABOUT = 12

/** The room on a panel whose far side is at a place of it: a piece that is to end there lies this side of it. */
export const roomBefore = ([across, along]: Flat): Room =>
  spotted({ at: [across - (2 * ABOUT) / 3, along], radius: ABOUT })

/** The rooms on a panel, by index: beside what is stuck or glued on it already, then with that left out of account. */
export function roomsOf(model: Model, panel: number): readonly Room[] {
  const { outline = [], notches = [] } = model.panels[panel] ?? {}
  const holes = notches.map((notch) => notch.outline)
  const covered = model.panels.flatMap(({ stuckOn, outline: on }) => (stuckOn === panel ? [on] : []))
  const glued = model.glue.flatMap((glue) => (glue.panel === panel ? edgesOf(glue.outline) : []))
  const isBare = covered.length + glued.length === 0
  return [
    spotted(roundest([outline], [...holes, ...covered], glued)),
    ...(isBare ? [] : [spotted(roundest([outline], holes))]),
  ]
}
