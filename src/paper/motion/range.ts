import type { Design } from '../design/design.ts'
import { alignments } from '../mechanisms/shared/four-bar.ts'
import type { Model, ModelBuild } from '../model/model.ts'
import { modelOf } from '../model/model.ts'
import type { Frame } from '../plane/frame.ts'
import { emptyFrame, uprightFrame } from '../plane/frame.ts'
import { once } from '../plane/once.ts'
import { lastGood } from '../plane/search.ts'
import { DEGREES, halfAngleInto } from '../plane/vector.ts'
import { baseOf } from './base.ts'

/*
 * How far a card opens and shuts, told from closed forms and not from looking.
 *
 * What a mechanism does hangs on one number, the inside angle w of its host crease. It goes along while its
 * four-bar closes (its stops, `Build.range`) and while none of its creases is past shut, for there a facet
 * would have gone through the page it is joined to. Stops are ends of one stretch of w, and a crease's angle
 * changes its sign once at most (`alignments`), so what a mechanism allows is one stretch of w.
 *
 * Within that stretch each of its creases turns one way only, as its host opens: cut folds have
 * tan(f/2) = cos a tan(w/2), a ridge follows the diagonal of its four-bar, and a joint stands still only
 * where the other facet is in line with its page, which is at an end of the stretch. So what a guest allows
 * of its crease is one stretch of the host's w as well, its ends found by halving; and so on down
 * to the gutter, where the stretches of all mechanisms have one stretch in common. No second one can exist.
 */

/** What stops the card: a four-bar pulled tight, or a facet that has come into its own page's plane. */
export interface Why {
  /** Index of the mechanism. */
  readonly owner: number
  readonly how: 'stop' | 'through'
  /** Index of the crease that shuts there, if it is one. */
  readonly crease?: number
}

/** One end of a stretch, degrees; null: the crease itself is shut, or flat. */
export interface End {
  readonly at: number
  readonly why: Why | null
}

/** A stretch of a crease's inside angles. */
export interface Span {
  readonly low: End
  readonly high: End
}

const TENTH = 10

/** Far above what rounding leaves of an angle that is nought, degrees. */
const ROUNDING = 1e-6

/** An end of a range as a reader is told it, degrees: to a tenth and rounded inwards, for what is told must be reached. */
export const toldEnd = (at: number, end: 'least' | 'most'): number =>
  (end === 'least' ? Math.max(0, Math.ceil(at * TENTH - ROUNDING)) : Math.floor(at * TENTH + ROUNDING)) /
  TENTH

const WHOLE: Span = { low: { at: 0, why: null }, high: { at: 180, why: null } }

const widest = (one: Span, two: Span): Span | null => {
  const low = two.low.at > one.low.at ? two.low : one.low
  const high = two.high.at < one.high.at ? two.high : one.high
  return low.at <= high.at ? { low, high } : null
}

/** The inside angles of a mechanism's creases, degrees, for a host crease at `w` degrees; overwritten by the next call. */
type Turner = (w: number) => Float64Array

function turnerOf({ build }: ModelBuild): Turner {
  const host = uprightFrame()
  const out = build.creases.map(() => emptyFrame())
  const angles = new Float64Array(out.length)
  return (w) => {
    halfAngleInto(host, 12, w)
    build.place(host, out)
    for (let k = 0; k < out.length; k++) {
      const frame = out[k] as Frame
      angles[k] = 2 * DEGREES * Math.atan2(frame[12] as number, frame[13] as number)
    }
    return angles
  }
}

/** The crease that is farthest past shut; -1: none is. */
function pastShut(angles: Float64Array): number {
  let worst = -1
  for (let k = 0; k < angles.length; k++)
    if ((angles[k] as number) < (worst < 0 ? -ROUNDING : (angles[worst] as number))) worst = k
  return worst
}

/** What a mechanism allows of its host crease; null: it fits at no angle. */
function allowed({ build, firstCrease }: ModelBuild, owner: number, turn: Turner): Span | null {
  const [least, most] = build.range ?? [0, 180]
  if (least > most) return null
  const stop: Why = { owner, how: 'stop' }
  const ends: Span = {
    low: { at: least, why: least > 0 ? stop : null },
    high: { at: most, why: most < 180 ? stop : null },
  }
  if (!build.linkage) return ends
  const cuts = alignments(build.linkage)
    .filter((at) => at > least && at < most)
    .sort((a, b) => a - b)
  const marks = [least, ...cuts, most]
  const shut = (from: number, to: number): number => pastShut(turn((from + to) / 2))
  const through = (k: number): Why => ({ owner, how: 'through', crease: firstCrease + k })
  let best: Span | null = null
  let low: End | null = null
  let last: Why | null = null
  for (let i = 1; i < marks.length; i++) {
    const [from, to] = [marks[i - 1] as number, marks[i] as number]
    const past = shut(from, to)
    if (past < 0) {
      low ??= i === 1 ? ends.low : { at: from, why: last }
      if (i === marks.length - 1) best = longer(best, { low, high: ends.high })
    } else {
      last = through(past)
      if (low) best = longer(best, { low, high: { at: from, why: last } })
      low = null
    }
  }
  if (best) return best
  // Nowhere for a while: at a single angle at most, as a piece that must go through its page from shut on.
  const only = marks.find((at) => pastShut(turn(at)) < 0)
  if (only === undefined) return null
  return {
    low: only === least ? ends.low : { at: only, why: last },
    high: only === most ? ends.high : { at: only, why: last },
  }
}

const longer = (one: Span | null, two: Span): Span =>
  one && one.high.at - one.low.at >= two.high.at - two.low.at ? one : two

/** To which an end is found, degrees; far finer than anybody can fold. */
const FINEST = 1e-11

/** The host angles of `own` at which the crease, of angle `f`, is within `span`; null: none. */
function pulled(span: Span, own: Span, f: (w: number) => number): Span | null {
  const [a, b] = [own.low.at, own.high.at]
  const [fa, fb] = [f(a), f(b)]
  let [low, high] = [own.low, own.high]
  // An end of the span cuts off that end of `own` at which the crease is beyond it.
  for (const [end, sign] of [
    [span.low, 1],
    [span.high, -1],
  ] as const) {
    if (end.why === null) continue
    const beyond = (value: number): boolean => sign * (value - end.at) < -ROUNDING
    if (beyond(fa) && beyond(fb)) return null
    const isPast = (w: number): boolean => sign * (f(w) - end.at) < 0
    if (beyond(fa)) low = { at: lastGood(isPast, a, b, FINEST)[1], why: end.why }
    else if (beyond(fb)) high = { at: lastGood(isPast, b, a, FINEST)[1], why: end.why }
  }
  return low.at <= high.at ? { low, high } : null
}

/** The ranges of one design. */
export interface Ranges {
  /** The card's: what all mechanisms allow that fit at all. */
  readonly card: Span
  /** Mechanisms (indices) that fit at no opening which the others allow: nothing is told of them. */
  readonly nowhere: readonly number[]
  /** What a mechanism (index; -1: the pages) and all that it stands on allow; null: it fits at no opening. */
  lineage(owner: number): Span | null
}

function ranges(model: Model): Ranges {
  const { builds, creases } = model
  const turners = builds.map(turnerOf)
  const own = builds.map((build, owner) => allowed(build, owner, turners[owner] as Turner))
  /** Down from the creases of a mechanism to its own host crease. */
  const down = (owner: number, crease: number, span: Span): Span | null => {
    const base = own[owner]
    const build = builds[owner]
    if (!base || !build) return null
    if (span === WHOLE) return base
    const k = crease - build.firstCrease
    return pulled(span, base, (w) => (turners[owner] as Turner)(w)[k] as number)
  }
  const known = new Map<number, Span | null>()
  const lineage = (owner: number): Span | null => {
    const build = builds[owner]
    if (!build) return WHOLE
    let span = known.get(owner)
    if (span !== undefined) return span
    const base = own[owner] ?? null
    if (base && base.low.why === null && base.high.why === null) span = lineage(baseOf(model, owner))
    else {
      span = base
      for (let crease = build.host; span; ) {
        const under = creases[crease]?.owner ?? -1
        if (under < 0) break
        span = down(under, crease, span)
        crease = builds[under]?.host ?? 0
      }
    }
    known.set(owner, span)
    return span
  }
  // From the last guest to the gutter: what all that stands on a crease allows of it.
  const demands: Span[] = creases.map(() => WHOLE)
  const nowhere: number[] = []
  for (let owner = builds.length - 1; owner >= 0; owner--) {
    const build = builds[owner] as ModelBuild
    let span: Span | null = own[owner] ?? null
    for (let k = 0; span && k < build.build.creases.length; k++) {
      const demand = demands[build.firstCrease + k] as Span
      if (demand === WHOLE) continue
      const guests = down(owner, build.firstCrease + k, demand)
      const both: Span | null = guests && widest(span, guests)
      if (both) span = both
      else nowhere.push(...[demand.low.why, demand.high.why].flatMap((why) => (why ? [why.owner] : [])))
    }
    if (!span) nowhere.push(owner)
    if (!span || (span.low.why === null && span.high.why === null)) continue
    const both = widest(demands[build.host] as Span, span)
    if (both) demands[build.host] = both
    else nowhere.push(owner)
  }
  return { card: demands[0] as Span, nowhere: [...new Set(nowhere)].sort((a, b) => a - b), lineage }
}

/** How far a design and each of its mechanisms go; worked out once for each design object. */
export const rangesOf: (design: Design) => Ranges = once((design: Design) => ranges(modelOf(design)))

/**
 * The openings, degrees, between which the card moves: no mechanism is stopped, no crease is past shut and
 * no facet has to go through its page. One stretch, see above; [0, 180] for a card that shuts and opens
 * flat. The ends are the same if it fits together at one opening only. What fits at no opening that the
 * others allow is left out: it cannot be put into the card at all, and says nothing of how that opens.
 */
export function openingRange(design: Design): [least: number, most: number] {
  const { low, high } = rangesOf(design).card
  return [low.at, high.at]
}

/** The opening in the card's range that is nearest to the one given, degrees. */
export function broughtIn(design: Design, opening: number): number {
  const [least, most] = openingRange(design)
  return Math.min(most, Math.max(least, opening))
}
