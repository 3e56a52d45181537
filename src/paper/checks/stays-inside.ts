import type { Card } from '../design/design.ts'
import { toEdge, toGutter } from '../measure/measure.ts'
import { WORLD } from '../motion/chain.ts'
import { keeping } from '../motion/kept.ts'
import type { Body, Still, Stretch } from '../motion/motion.ts'
import { bodyOf } from '../motion/motion.ts'
import { summit } from '../plane/search.ts'
import { SAME } from '../plane/segment.ts'
import type { Vec3 } from '../plane/vector.ts'
import * as says from '../words/checks.ts'
import { The, the } from './names.ts'
import { mm, when } from './phrases.ts'
import type { Finding, Range, Subject } from './subject.ts'
import { idOf } from './subject.ts'

/** The least margin is found to within this, mm. */
const WITHIN = 1e-3

/** Of a mechanism that stays inside, so much of the least margin seen is proved before it is known to be the nearest to an edge. */
const ROUGHLY = 0.5

/** Nothing but whether it stays inside. */
const VERDICT = 0

/** What a look at a part in a stretch weighs beside one at two panels. */
const WEIGHT = 0.3

/** Stretches of the motion that are looked into for each mechanism before we say that we cannot tell. */
const MOST = 1500

/** Stretches in which nothing at all is known of a mechanism, before we leave it at that: near a stop it takes a dozen. */
const BLIND = 100

/** Narrower than this (radians) a stretch is not split. */
const NARROWEST = 1e-5

/** Degrees to either side in which the opening of the least margin is sharpened. */
const NEAR = 1

/** And to how much, degrees. */
const SHARP = 1e-4

/** A point whose path bends less than this (mm per radian²) stays where it is: rounding leaves some 1e-13. */
const STILL = 1e-9

interface Part {
  readonly name: string
  readonly body: Body
}

/** Which edge of a page. */
type Edge = 'near' | 'far' | 'side' | 'gutter'

interface Least {
  readonly margin: number
  readonly space: Vec3
  readonly edge: Edge
  readonly panel: string
  readonly opening: number
  readonly proved: boolean
  /** What is proved: nowhere less than this, mm. */
  readonly low: number
  /** Looks at a part in a stretch. */
  readonly cost: number
}

/** The edge of the card that a point within it is nearest to. */
function edgeAt(card: Card, p: Vec3, margin: number): Edge {
  if (margin === p[1]) return 'near'
  return margin === card.height - p[1] ? 'far' : 'side'
}

/** No corner of a body comes nearer to an edge in a stretch than this, mm. */
function boundIn({ width, height }: Card, stretch: Stretch, body: Body): number {
  const { from, to, width: wide, bends, bendsAlongY } = stretch
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

/**
 * The least distance from the outline of one mechanism to the edges of the card, shut and through its whole motion,
 * and the opening where it is least. Over a stretch of the motion a corner keeps near the straight line between its
 * two places (see `motion.ts`), and all three distances are concave along a line; so the two ends and a bound say how
 * small they can get. Stretches that could still hold less than `share` of the least one seen are split: branch and
 * bound. The shut card ends at the gutter as well.
 */
function leastMargin({ model, motion }: Subject, owner: number, ends: Range, share: number): Least {
  const { card } = model.design
  const parts = model.panels.flatMap((panel, index): Part[] =>
    panel.owner === owner ? [{ name: panel.name, body: bodyOf(index, panel.outline) }] : [],
  )
  let best: Omit<Least, 'proved' | 'low' | 'cost'> = {
    margin: Number.POSITIVE_INFINITY,
    space: [0, 0, 0],
    edge: 'side',
    panel: '',
    opening: ends[0],
  }
  let [proved, low, cost] = [true, Number.POSITIVE_INFINITY, 0]
  const look = (still: Still, { name, body }: Part): void => {
    const p = still.places(body)
    for (let i = 0; i < p.length; i += 3) {
      const space = [p[i], p[i + 1], p[i + 2]] as unknown as Vec3
      const margin = toEdge(card, space)
      if (margin < best.margin)
        best = { margin, space, edge: edgeAt(card, space, margin), panel: name, opening: still.opening }
    }
  }
  const enough = (): number => (best.margin < 0 ? 1 : share) * best.margin - WITHIN
  let left = MOST
  let blind = 0
  const walk = (from: Still, to: Still, open: readonly Part[]): void => {
    // Where only a verdict is asked for, it is told.
    if (share === VERDICT && best.margin < -SAME) return
    const stretch = motion.stretch(from, to)
    const still = open.filter(({ body }) => {
      cost++
      const bound = boundIn(card, stretch, body)
      if (bound >= enough()) low = Math.min(low, bound)
      else if (Number.isFinite(bound)) return true
      else if (++blind > BLIND) proved = false
      else return true
      return false
    })
    if (still.length === 0) return
    if (stretch.width < NARROWEST || left-- <= 0) {
      proved = false
      return
    }
    const middle = motion.still((from.opening + to.opening) / 2)
    for (const part of still) look(middle, part)
    walk(from, middle, still)
    walk(middle, to, still)
  }
  const [first, last] = [motion.still(ends[0]), motion.still(ends[1])]
  for (const still of [first, last]) for (const part of parts) look(still, part)
  walk(first, last, parts)
  // The least margin is known; where it lies is sharpened; each look keeps the least.
  if (best.opening !== ends[0] && best.opening !== ends[1] && (best.margin < 0 || share === 1)) {
    const at = (opening: number): number => {
      const still = motion.still(opening)
      for (const part of parts) look(still, part)
      return Math.min(...parts.map(({ body }) => boundIn(card, motion.stretch(still, still), body)))
    }
    const [from, to] = [Math.max(ends[0], best.opening - NEAR), Math.min(ends[1], best.opening + NEAR)]
    summit((opening) => -at(opening), from, to, SHARP)
  }
  if (first.opening === 0)
    for (const { name, body } of parts) {
      const p = first.places(body)
      for (let i = 0; i < p.length; i += 3) {
        const space = [p[i], p[i + 1], p[i + 2]] as unknown as Vec3
        const margin = toGutter(space)
        if (margin < best.margin) best = { margin, space, edge: 'gutter', panel: name, opening: 0 }
      }
    }
  return { ...best, proved, low: Math.min(low, best.margin), cost }
}

const kept = keeping<Least>()

/** For every mechanism its least margin: to within a hair where it sticks out, and of those that do not for the one that comes nearest to an edge. */
function leastMargins(subject: Subject): ReadonlyMap<number, Least> {
  const least = (owner: number, share: number): Least => {
    // Over the openings that its own lineage allows; one that allows none is looked at shut.
    const range = subject.range(owner) ?? ([0, 0] as const)
    const paper = subject.paper(owner)
    const found = kept(paper, `${range.join(' ')} ${share}`, () => leastMargin(subject, owner, range, share))
    if (subject.counts([paper], range)) subject.effort.left -= WEIGHT * found.cost
    return found
  }
  const all = new Map<number, Least>()
  subject.model.builds.forEach((_, owner) => {
    if (subject.wants([owner])) all.set(owner, least(owner, subject.hasty ? VERDICT : ROUGHLY))
  })
  if (subject.hasty || [...all.values()].some(({ margin }) => margin < -SAME)) return all
  let nearest = Number.POSITIVE_INFINITY
  for (const [owner, { low }] of [...all].sort(([, one], [, two]) => one.margin - two.margin)) {
    if (low >= nearest) continue
    const exact = least(owner, 1)
    all.set(owner, exact)
    nearest = Math.min(nearest, exact.margin)
  }
  return all
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
          ? says.sticksOut(The(id), mm(-margin), says.edges[edge], when(opening))
          : proved
            ? says.nothingSticksOut(the(id), mm(margin), says.edges[edge], when(opening))
            : says.insideUntold(the(id), mm(margin)),
      }
    },
  )
}
