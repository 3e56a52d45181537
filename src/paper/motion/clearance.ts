import type { Model } from '../model/model.ts'
import type { Flat } from '../plane/lay.ts'
import { areNear, nearPairs } from '../plane/near.ts'
import { TOUCH } from '../plane/parting.ts'
import type { Vec3 } from '../plane/vector.ts'
import { RADIANS } from '../plane/vector.ts'
import { liftsOf } from './lift.ts'
import type { Motion, Still, Stretch } from './motion.ts'
import type { Doubt, Proofs } from './parted.ts'
import { FIRST, proofsIn } from './parted.ts'
import { sweptBox } from './paths.ts'
import type { Sheet } from './sheets.ts'
import { sheetsOf } from './sheets.ts'

/*
 * Do two panels meet on the way? Proved, not sampled.
 *
 * Two convex bodies are apart if a plane lies between them. Over a stretch of the motion we look from the
 * frame of the second panel, where it stands still. Take a direction fixed in that frame; let v_i(t) be how
 * far corner i of the first is beyond the second along it. With v_i = a at one end, b at the other and
 * |v_i''| <= bend (see `motion.ts`), v_i(t) >= line - bend/2 (t - t0)(t1 - t), and that is above 0 in the
 * whole stretch, ends aside, exactly if
 *
 *   (sqrt a + sqrt b)^2 > M,   M = bend (t1 - t0)^2 / 2.
 *
 * So a and b may be 0 at an end: panels that lie in one plane when the card is flat are proved apart up to
 * that very moment. A corner with v_i = 0 that bends by 0 is pinned: it is a joint of the two panels (on
 * their common crease, or the apex they share), and may touch. Panels joined by a crease are proved apart
 * in this way too: all corners off the crease stay above the other's plane as long as the crease's angle
 * keeps its sign; and so are panels that share one point: the cones there do not cross.
 *
 * If no plane is found the stretch is halved. If the two do cross at its middle, they touch. If it gets too
 * narrow to halve, we say that we cannot tell.
 *
 * Shut, all paper lies in one plane, and no plane that stands still goes between two sheets of the stack.
 * But heights over it that grow with the opening t look alike at every t once they are divided by t, and
 * bodies are apart exactly if they are so with one direction stretched. There a plane
 * x a + y l + z h / t = edge does stand still; times t it reads
 *
 *   v_i(t) = z h_i + t (x a_i + y l_i - edge),   |v_i''| <= bend (hypot(z, g) + g) + 2 |u| / t1²
 *
 * with g = t1 hypot(x, y) and u the corner's way along (x, y) from shut to t1, times t1 (a rate is within
 * bend t1 / 2 of the mean). So the stretch from shut to the first opening is proved like all others: the
 * stack has an order, the one in which its sheets lie just before, and none passes through another. The same
 * holds at the other end, with t counted back from there: what lies down on the page when the card is flat lies
 * down on what is stuck to the page.
 *
 * Paper that is stuck on a panel lies on one side of it: see `lift.ts`.
 *
 * `sheets.ts` says what paper is looked at, `paths.ts` how it moves as seen from a panel, `parted.ts` how two sheets
 * are proved apart in a stretch; here the stretches are gone through.
 */

/** The narrowest stretch of the motion, degrees. */
const NARROWEST = 0.005

/** Farther than any point of a card, mm. */
const FAR = 1e6

/** Below this opening, degrees, heights over the shut stack are looked at in the measure of the opening. */
const NEARLY_SHUT = 1

/** So often we cannot tell of two parts, in hope of seeing them touch elsewhere, before we leave it at that. */
const DOUBTS = 8

/** Looks that every name gets in the first round, and how many times as many in each that follows. */
const SHARE = 64

const GROWTH = 4

/** What is known of two panels (indices) that are not proved clear of each other. */
export interface Meeting {
  readonly panels: readonly [number, number]
  readonly verdict: 'touches' | 'undecided'
  /** The first opening at which they touch as the card shuts, or where we cannot tell; degrees. */
  readonly opening: number
  readonly at: Vec3
  /** In the coordinates of the second panel. */
  readonly flat: Flat
  /** How far one was seen to pass into the other, mm, or the gap that could not be proved. */
  readonly depth: number
}

/** Openings from the one to the other, degrees. */
type Span = readonly [least: number, most: number]

export interface Search {
  readonly motion: Motion
  /** The openings, degrees, over which a pair of panels (indices) is to be looked at; null: at none. */
  readonly range: (one: number, two: number) => Span | null
  /** Whether a panel (index) is to be looked at with any other: left out, every one is. */
  readonly among?: (panel: number) => boolean
  /** Pairs with the same name are one: when one of them touches, the others are left alone. */
  readonly name: (one: number, two: number) => string
  /** Looks at two panels, or two parts of them, in a stretch that are left before we say that we cannot tell; counted down. */
  readonly effort: { left: number }
}

/** What is known so far of all pairs of one name. */
interface Known {
  meeting: Meeting | null
  /** How often we could not tell. */
  doubts: number
  /** Looks of this round. */
  spent: number
  /** Where it ran out of looks, if it did. */
  out: (() => Meeting | null) | null
}

interface Pair {
  readonly one: Sheet
  readonly two: Sheet
  readonly known: Known
  readonly span: Span
  readonly proofs: Proofs
}

const settled = ({ meeting, doubts, out }: Known): boolean =>
  meeting?.verdict === 'touches' || doubts >= DOUBTS || out !== null

/** By mechanism, all that it stands on, itself and the card (-1) among them. */
function standings({ builds, creases, panels }: Model): ReadonlyMap<number, readonly number[]> {
  const known = new Map<number, readonly number[]>([[-1, [-1]]])
  builds.forEach(({ host, hostPanel }, owner) => {
    const under = (hostPanel === undefined ? creases[host]?.owner : panels[hostPanel]?.owner) ?? -1
    known.set(owner, [...(known.get(under) ?? [-1]), owner])
  })
  return known
}

/** The pairs of panels, by index: those of one mechanism and of what it stands on at once, the others where they come near. */
function pairsIn(search: Search, sheets: readonly Sheet[]) {
  const { model } = search.motion
  const standing = standings(model)
  const names = new Map<string, Known>()
  const pairs = new Map<number, Pair | null>()
  const active = sheets.filter(({ panel }) => search.among?.(panel) ?? true)
  const ownerOf = (panel: number): number => model.panels[panel]?.owner ?? -1
  const bySpan = new Map<string, Proofs>()
  const proofsOver = (span: Span): Proofs => {
    const key = span.join(' ')
    const proofs = bySpan.get(key) ?? proofsIn({ motion: search.motion, lifts: liftsOf(model, span) }, span)
    bySpan.set(key, proofs)
    return proofs
  }
  const pairOf = (i: number, j: number): Pair | null => {
    const index = i * sheets.length + j
    const found = pairs.get(index)
    if (found !== undefined) return found
    const [one, two] = [sheets[i], sheets[j]]
    let pair: Pair | null = null
    const span = one && two && search.range(i, j)
    if (one && two && span) {
      const name = search.name(i, j)
      const known = names.get(name) ?? { meeting: null, doubts: 0, spent: 0, out: null }
      names.set(name, known)
      pair = { one, two, known, span, proofs: proofsOver(span) }
    }
    pairs.set(index, pair)
    return pair
  }
  const byOwner = new Map<number, Sheet[]>()
  for (const sheet of active) {
    const owner = ownerOf(sheet.panel)
    byOwner.set(owner, [...(byOwner.get(owner) ?? []), sheet])
  }
  const isRelated = (one: number, two: number): boolean =>
    standing.get(one)?.includes(two) || standing.get(two)?.includes(one) || false
  return {
    names,
    related: active.flatMap((two) =>
      (standing.get(ownerOf(two.panel)) ?? [])
        .flatMap((owner) => byOwner.get(owner) ?? [])
        .flatMap((one) => (one.panel < two.panel ? (pairOf(one.panel, two.panel) ?? []) : [])),
    ),
    /** All others that may meet in a stretch. */
    near: (boxOf: (sheet: Sheet) => Float64Array): Pair[] => {
      const free = active.filter(({ panel }) => ownerOf(panel) >= 0)
      return nearPairs(free.map(boxOf)).flatMap(([i, j]) => {
        const [one, two] = [free[i], free[j]] as [Sheet, Sheet]
        return isRelated(ownerOf(one.panel), ownerOf(two.panel)) ? [] : (pairOf(one.panel, two.panel) ?? [])
      })
    },
  }
}

/**
 * Every pair of panels that touches, or is not proved clear, over the openings that are its own. At most
 * one meeting for each name.
 *
 * All names get the same share of looks. Those that it is too small for are gone through once more with a
 * greater one, as long as there are looks enough for all of them.
 */
export function meetings(search: Search): readonly Meeting[] {
  const { motion, effort } = search
  const lifts = liftsOf(motion.model, [0, 180])
  const { names, related, near } = pairsIn(search, sheetsOf(motion.model))
  const middleOf = ({ from, to }: Stretch): number => (from.opening + to.opening) / 2

  const meetingAt = (
    proofs: Proofs,
    pair: Doubt,
    opening: number,
    verdict: Meeting['verdict'],
    depth: number,
  ): Meeting => {
    const still = motion.still(opening)
    const { panel } = pair.two.body
    const flat = proofs.spot(pair, still)
    const at = still.places({ panel, flat: Float64Array.from(flat) })
    return {
      panels: [pair.one.body.panel, panel],
      verdict,
      opening,
      at: [at[0] as number, at[1] as number, at[2] as number],
      flat,
      depth,
    }
  }

  /** The meeting of two facets that cross in the middle of a stretch: the opening up to its end at which they first touch as the card shuts. */
  const touching = (proofs: Proofs, pair: Doubt, stretch: Stretch): Meeting => {
    const crossAt = (opening: number): boolean => proofs.gapAt(pair, motion.still(opening)) < -TOUCH
    let [inside, outside] = [middleOf(stretch), stretch.to.opening]
    if (crossAt(outside)) inside = outside
    else
      for (let k = 0; k < 16; k++) {
        const middle = (inside + outside) / 2
        if (crossAt(middle)) inside = middle
        else outside = middle
      }
    return meetingAt(proofs, pair, inside, 'touches', -pair.gap)
  }

  /** That nothing can be told of a pair in a stretch; null where there is no paper. */
  const undecided = ({ one, two, proofs }: Pair, what: Doubt | true, stretch: Stretch): Meeting | null => {
    const [a, b] = [one.facets()[0], two.facets()[0]]
    const pair = what !== true ? what : a && b ? { one: a, two: b, gap: 0 } : null
    return pair && meetingAt(proofs, pair, middleOf(stretch), 'undecided', Math.max(0, pair.gap))
  }

  /** Whether a pair must be looked at in the halves of a stretch. */
  const staysOpen = (pair: Pair, stretch: Stretch, share: number): boolean => {
    const { one, two, known, proofs } = pair
    const before = effort.left--
    const what = proofs.doubt(one, two, stretch, effort)
    known.spent += before - effort.left
    if (what === null) return false
    if (what !== true && what.gap < -TOUCH) {
      known.meeting = touching(proofs, what, stretch)
      return false
    }
    // Paper that lies in one plane all the time is never seen to cross, nor proved apart, however narrow the stretch.
    const hopeless = what !== true && proofs.inOnePlane(one, two, stretch)
    if (hopeless || stretch.to.opening - stretch.from.opening < NARROWEST) {
      known.doubts += hopeless ? DOUBTS : 1
      known.meeting ??= undecided(pair, what, stretch)
      return false
    }
    if (known.spent < share && effort.left > 0) return true
    known.out = () => undecided(pair, what, stretch)
    return false
  }

  /** Looks at a stretch, and into its halves where need be; `swept` once the pairs that come near are among them. */
  const walk = (from: Still, to: Still, pairs: readonly Pair[], swept: boolean, share: number): void => {
    const stretch = motion.stretch(from, to)
    const boxes = new Map<number, Float64Array>()
    const boxOf = (sheet: Sheet): Float64Array => {
      let box = boxes.get(sheet.panel)
      if (!box) {
        // Where a stop is passed nothing is known, and the box has no end.
        box = sweptBox(stretch, sheet.outline, lifts.most(sheet.panel)).map((at, k) =>
          Math.abs(at) < FAR ? at : k % 2 === 0 ? -FAR : FAR,
        )
        boxes.set(sheet.panel, box)
      }
      return box
    }
    const sweeps = !swept && stretch.width <= FIRST * RADIANS * 1.01
    const done = swept || sweeps
    const all = sweeps ? [...pairs, ...near(boxOf)] : pairs
    // What moves together for a part of the stretch only is looked at in that part.
    const parts = new Map<string, { span: Span; of: Pair[] }>()
    const open = all.filter((pair) => {
      if (settled(pair.known)) return false
      const low = Math.max(from.opening, pair.span[0])
      const high = Math.min(to.opening, pair.span[1])
      if (!(low < high)) return false
      if (low === from.opening && high === to.opening)
        return areNear(boxOf(pair.one), boxOf(pair.two), 0) && staysOpen(pair, stretch, share)
      if (!done) return true
      const key = `${low} ${high}`
      const part = parts.get(key)
      if (part) part.of.push(pair)
      else parts.set(key, { span: [low, high], of: [pair] })
      return false
    })
    for (const { span, of } of parts.values())
      walk(motion.still(span[0]), motion.still(span[1]), of, true, share)
    if (done && open.length === 0) return
    const middle = motion.still((from.opening + to.opening) / 2)
    // From flat towards shut, as the card is made: the first touch found is the first one felt.
    walk(middle, to, open, done, share)
    walk(from, middle, open, done, share)
  }

  // Where most pairs end together no stretch goes across.
  const low = Math.min(180, ...related.map(({ span }) => span[0]))
  const high = Math.max(0, ...related.map(({ span }) => span[1]))
  const marks = [...new Set([0, NEARLY_SHUT, low, high, 180])].sort((a, b) => b - a)
  const walkAll = (share: number): void => {
    marks.slice(1).forEach((from, k) => {
      walk(motion.still(from), motion.still(marks[k] as number), related, false, share)
    })
  }
  let share = SHARE
  walkAll(share)
  for (;;) {
    const out = [...names.values()].filter((known) => known.out && !known.meeting)
    share *= GROWTH
    if (out.length === 0 || out.length * share > effort.left) break
    for (const known of out) Object.assign(known, { out: null, doubts: 0, spent: 0 })
    for (const known of names.values()) if (!out.includes(known)) known.doubts = DOUBTS
    walkAll(share)
  }
  return [...names.values()].flatMap(({ meeting, out }) => meeting ?? out?.() ?? [])
}
