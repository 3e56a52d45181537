import { WORLD } from '../motion/chain.ts'
import type { Body, Still, Stretch } from '../motion/motion.ts'
import { bodyOf } from '../motion/motion.ts'
import { SAME } from '../plane/segment.ts'
import type { Vec3 } from '../plane/vector.ts'
import { mm, The, the, when } from './phrases.ts'
import type { Finding, Subject } from './subject.ts'
import { idOf } from './subject.ts'

/** The least margin is found to within this, mm. */
const WITHIN = 1e-3

/** Stretches of the motion that are looked into before we say that we cannot tell. */
const MOST = 4000

/** Stretches in which nothing at all is known of a mechanism, before we leave it at that: near a stop it takes a dozen. */
const BLIND = 100

/** Narrower than this (radians) a stretch is not split. */
const NARROWEST = 1e-5

/** Degrees to either side in which the opening of the least margin is sharpened. */
const NEAR = 1

const GOLDEN = (Math.sqrt(5) - 1) / 2

/** A point whose path bends less than this (mm per radian²) stays where it is: rounding leaves some 1e-13. */
const STILL = 1e-9

interface Part {
  readonly owner: number
  readonly name: string
  readonly body: Body
}

interface Least {
  margin: number
  space: Vec3
  edge: 'near' | 'far' | 'side'
  panel: string
  opening: number
  proved: boolean
}

/**
 * For every mechanism the least distance from its outline to the edges of the card, shut and through the
 * whole motion, and the opening where it is least. Over a stretch of the motion a corner keeps near the
 * straight line between its two places (see `motion.ts`), and all three distances are concave along a
 * line; so the two ends and a bound say how small they can get. Stretches that could still hold less than
 * the least one seen are split: branch and bound.
 */
function leastMargins(subject: Subject): ReadonlyMap<number, Least> {
  const { model, motion } = subject
  const { width, height } = model.design.card
  const parts = model.panels.flatMap(({ owner, name, outline }, panel): Part[] =>
    owner >= 0 && subject.wants([owner]) ? [{ owner, name, body: bodyOf(panel, outline) }] : [],
  )
  const least = new Map<number, Least>()
  let nearest = Number.POSITIVE_INFINITY
  const look = (still: Still, { owner, name, body }: Part): void => {
    const p = still.places(body)
    for (let i = 0; i < p.length; i += 3) {
      const [x, y, z] = [p[i], p[i + 1], p[i + 2]] as Vec3
      const out = width - Math.hypot(x, z)
      const margin = Math.min(y, height - y, out)
      const best = least.get(owner)
      if (best && !(margin < best.margin)) continue
      const edge = margin === out ? 'side' : margin === y ? 'near' : 'far'
      nearest = Math.min(nearest, margin)
      least.set(owner, { margin, space: [x, y, z], edge, panel: name, opening: still.opening, proved: true })
    }
  }
  /** No corner of the part comes nearer to an edge in this stretch than this, mm. */
  const bound = ({ from, to, width: wide, bends, bendsAlongY }: Stretch, { body }: Part): number => {
    const [p, q] = [from.places(body), to.places(body)]
    const [bend, bendY, onLeft, onRight] = [
      bends(WORLD, body),
      bendsAlongY(body),
      bends(0, body),
      bends(1, body),
    ]
    let low = Number.POSITIVE_INFINITY
    for (let k = 0; k < bend.length; k++) {
      const i = 3 * k
      const [y, v] = [p[i + 1] as number, q[i + 1] as number]
      const far = Math.max(
        Math.hypot(p[i] as number, p[i + 2] as number),
        Math.hypot(q[i] as number, q[i + 2] as number),
      )
      // A point of a page keeps its distance from all edges.
      const still = (onLeft[k] as number) < STILL || (onRight[k] as number) < STILL
      const off = still ? 0 : ((bend[k] as number) * wide * wide) / 8
      const offY = still ? 0 : ((bendY[k] as number) * wide * wide) / 8
      const here = Math.min(Math.min(y, v, height - y, height - v) - offY, width - far - off)
      if (!(here >= low)) low = here
    }
    return low
  }
  /** What a stretch must be known to stay above: of those inside, only the nearest to an edge is of interest. */
  const enough = ({ owner }: Part): number => {
    const best = least.get(owner)?.margin ?? 0
    return (best < 0 ? best : Math.max(0, nearest)) - WITHIN
  }
  let left = MOST
  const blind = new Map<number, number>()
  const giveUp = ({ owner }: Part): void => {
    const best = least.get(owner)
    if (best) best.proved = false
  }
  const walk = (from: Still, to: Still, open: readonly Part[]): void => {
    const stretch = motion.stretch(from, to)
    const still = open.filter((part) => {
      const low = bound(stretch, part)
      if (low >= enough(part)) return false
      if (Number.isFinite(low)) return true
      const times = (blind.get(part.owner) ?? 0) + 1
      blind.set(part.owner, times)
      if (times > BLIND) giveUp(part)
      return times <= BLIND
    })
    if (still.length === 0) return
    subject.effort.left -= still.length
    if (stretch.width < NARROWEST || left-- <= 0) {
      still.forEach(giveUp)
      return
    }
    const middle = motion.still((from.opening + to.opening) / 2)
    for (const part of still) look(middle, part)
    walk(from, middle, still)
    walk(middle, to, still)
  }
  // Over the openings that each mechanism's own lineage allows; one that allows none is looked at shut.
  const spans = new Map<string, { ends: [Still, Still]; of: Part[] }>()
  for (const part of parts) {
    const range = subject.range(part.owner) ?? [0, 0]
    const key = range.join(' ')
    const span = spans.get(key)
    if (span) span.of.push(part)
    else spans.set(key, { ends: [motion.still(range[0]), motion.still(range[1])], of: [part] })
  }
  for (const { ends, of } of spans.values())
    for (const still of ends) for (const part of of) look(still, part)
  for (const { ends, of } of spans.values()) walk(...ends, of)
  for (const [owner, { margin, opening }] of least) {
    const span = [...spans.values()].find(({ of }) => of.some((part) => part.owner === owner))
    if (!span) continue
    const [shut, flat] = span.ends
    if (opening === shut.opening || opening === flat.opening || margin > Math.max(0, nearest)) continue
    // The least margin is known; where it lies is sharpened by golden sections (Kiefer 1953).
    const own = parts.filter((part) => part.owner === owner)
    let [low, high] = [Math.max(shut.opening, opening - NEAR), Math.min(flat.opening, opening + NEAR)]
    const at = (angle: number): number => {
      const still = motion.still(angle)
      for (const part of own) look(still, part)
      return Math.min(...own.map((part) => bound(motion.stretch(still, still), part)))
    }
    for (let k = 0; k < 20; k++) {
      const [p, q] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
      if (at(p) < at(q)) high = q
      else low = p
    }
  }
  return least
}

/** Every mechanism stays inside the card, shut and on the way: its least margin in mm. */
export function staysInside(subject: Subject): Finding[] {
  return [...leastMargins(subject)].map(
    ([owner, { margin, space, edge, panel, opening, proved }]): Finding => {
      const inside = margin >= -SAME
      const id = idOf(subject, owner)
      return {
        name: 'stays-inside',
        ok: inside && proved,
        value: margin,
        unit: 'mm',
        limit: 0,
        sense: 'at-least',
        ids: [id, panel],
        opening,
        space,
        ...(proved ? {} : { verdict: 'undecided' as const }),
        sentence: !inside
          ? `${The(id)} sticks out ${mm(-margin)} past the ${edge} edge ${when(opening)}.`
          : proved
            ? `Nothing sticks out: ${the(id)} comes nearest, ${mm(margin)} inside the ${edge} edge ${when(opening)}.`
            : `We cannot tell for sure whether ${the(id)} stays inside the card on its way; the least margin seen is ${mm(margin)}.`,
      }
    },
  )
}
