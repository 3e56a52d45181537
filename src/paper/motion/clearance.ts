import type { Model } from '../model/model.ts'
import type { Flat } from '../plane/lay.ts'
import type { Extent } from '../plane/near.ts'
import { areNear, nearPairs } from '../plane/near.ts'
import { TOUCH } from '../plane/parting.ts'
import { lastGood } from '../plane/search.ts'
import type { Vec3 } from '../plane/vector.ts'
import { baseOf } from './base.ts'
import type { Paper } from './kept.ts'
import { keeping, keepingPairs, paperOf } from './kept.ts'
import type { Facet, Leaf } from './leaves.ts'
import { leavesOf } from './leaves.ts'
import type { Lifts } from './lift.ts'
import { liftsOf } from './lift.ts'
import type { Body, Motion, Stretch } from './motion.ts'
import { bodyOf } from './motion.ts'
import type { Doubt, Proofs } from './parted.ts'
import { FIRST, proofsIn } from './parted.ts'
import { NOWHERE, sweptBox } from './paths.ts'

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
 * Shut, all paper lies in one plane, and no plane that stands still goes between two leaves of the stack.
 * But heights over it that grow with the opening t look alike at every t once they are divided by t, and
 * bodies are apart exactly if they are so with one direction stretched. There a plane
 * x a + y l + z h / t = edge does stand still; times t it reads
 *
 *   v_i(t) = z h_i + t (x a_i + y l_i - edge),   |v_i''| <= bend (hypot(z, g) + g) + 2 |u| / t1²
 *
 * with g = t1 hypot(x, y) and u the corner's way along (x, y) from shut to t1, times t1 (a rate is within
 * bend t1 / 2 of the mean). So the stretch from shut to the first opening is proved like all others: the
 * stack has an order, the one in which its leaves lie just before, and none passes through another. The same
 * holds at the other end, with t counted back from there: what lies down on the page when the card is flat lies
 * down on what is stuck to the page.
 *
 * Paper that is stuck on a panel lies on one side of it: see `lift.ts`.
 *
 * Two mechanisms are looked at by themselves, whatever else stands on the card: how they move hangs on what they
 * stand on alone, and of the holes in their paper only those count that come near the other one. So what was found
 * about two mechanisms holds for as long as they, those holes and the openings stay the same (see `kept.ts`).
 *
 * `leaves.ts` says what paper is looked at, `paths.ts` how it moves as seen from a panel, `parted.ts` how two leaves
 * are proved apart in a stretch; here the stretches are gone through.
 */

/** The narrowest stretch of the motion, degrees. */
const NARROWEST = 0.005

/** To so much is told where two first touch, degrees. */
const FINE = 1e-4

/** Below this opening, degrees, heights over the shut stack are looked at in the measure of the opening. */
const NEARLY_SHUT = 1

/** So often we cannot tell of two parts, in hope of seeing them touch elsewhere, before we leave it at that. */
const DOUBTS = 8

/** Looks that every two mechanisms get in the first round, and how many times as many in each that follows. */
const SHARE = 64

const GROWTH = 4

/** Openings, degrees, between which the boxes are worked out that say what may come near what. */
const GRID = [0, NEARLY_SHUT, ...Array.from({ length: 180 / FIRST }, (_, k) => (k + 1) * FIRST)]

/** Holes this near to what moves count, mm: more than any lift. */
const HOLE = 1

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
  /** The openings, degrees, over which two mechanisms (indices, in order; -1: the card) are to be looked at; null: at none. */
  readonly range: (one: number, two: number) => Span | null
  /** The openings that a mechanism and what it stands on allow, if nothing else stops the card; null: none. */
  readonly alone: (owner: number) => Span | null
  /** Whether two panels (indices) need not be looked at; it may hang on their mechanisms and what these stand on alone. */
  readonly skips?: (one: number, two: number) => boolean
  /** Whether two mechanisms (indices) are to be looked at; all are if left out. */
  readonly wants?: (one: number, two: number) => boolean
  /** Looks at two panels, or two parts of them, in a stretch that are left before we say that we cannot tell; counted down. */
  readonly effort: { left: number }
  /** Whether looks at these papers count as effort, over these openings; all do if left out. */
  readonly counts?: (papers: readonly Paper[], span: Span) => boolean
}

/** What is known so far of two mechanisms. */
interface Known {
  meeting: Meeting | null
  /** How often we could not tell. */
  doubts: number
  spent: number
  /** Where it ran out of looks, if it did. */
  out: (() => Meeting | null) | null
}

/** Two panels. */
interface Pair {
  readonly one: Leaf
  readonly two: Leaf
  readonly paper: () => readonly [readonly Facet[], readonly Facet[]]
}

/** Two mechanisms, one of which may stand on the other, to be looked at over a span. */
interface Couple {
  readonly owners: readonly [number, number]
  readonly papers: readonly [Paper, Paper]
  readonly span: Span
  /** One of them stands on the other, or they are one. */
  readonly related: boolean
}

/** What came of looking at two mechanisms; panels are counted from the first of each. */
interface Outcome {
  readonly span: Span
  /** The looks that they were allowed, and those that it took. */
  readonly share: number
  readonly cost: number
  readonly meeting: Meeting | null
  /** There were too few, and it was left at that; or nothing at all was seen before. */
  readonly isCut: boolean
  readonly isOut: boolean
  /** Whose holes were seen; null where no hole was looked at. */
  readonly holes: readonly Paper[] | null
}

const settled = ({ meeting, doubts, out }: Known): boolean =>
  meeting?.verdict === 'touches' || doubts >= DOUBTS || out !== null

/** By mechanism, all that it stands on, itself and the card (-1) among them. */
function standings(model: Model): ReadonlyMap<number, ReadonlySet<number>> {
  const known = new Map<number, ReadonlySet<number>>([[-1, new Set([-1])]])
  model.builds.forEach((_, owner) => {
    known.set(owner, new Set([...(known.get(baseOf(model, owner)) ?? []), owner]))
  })
  return known
}

/** For each stretch of the grid the box of some paper in it, null where there is none; and the box round all. */
interface Trace {
  readonly parts: readonly (Extent | null)[]
  readonly whole: Extent
}

const joined = (boxes: readonly Extent[]): Extent =>
  NOWHERE.map((nowhere, k) =>
    boxes.reduce<number>((at, box) => (k % 2 === 0 ? Math.min : Math.max)(at, box[k] as number), nowhere),
  )

const nearIn = (one: Trace, two: Trace, k: number, reach: number): boolean => {
  const [a, b] = [one.parts[k], two.parts[k]]
  return a !== null && b !== null && a !== undefined && b !== undefined && areNear(a, b, reach)
}

const areTracesNear = (one: Trace, two: Trace, reach: number): boolean =>
  areNear(one.whole, two.whole, reach) && one.parts.some((_, k) => nearIn(one, two, k, reach))

const traces = keeping<Trace>()

const outcomes = keepingPairs<Outcome>()

/** What one search needs, worked out when it is first asked for. */
interface Scene {
  readonly motion: Motion
  /** The panels of a mechanism. */
  owned(owner: number): readonly Leaf[]
  readonly standing: ReturnType<typeof standings>
  stretch(from: number, to: number): Stretch
  boxOf(stretch: Stretch, leaf: Leaf): Extent
  proofs(span: Span): Proofs
  /** The paper of a mechanism on its way, and what it takes out of its host. */
  trace(owner: number): Trace
  notchTrace(owner: number): Trace
}

function sceneOf({ motion, alone }: Search): Scene {
  const { model } = motion
  const lifts: Lifts = liftsOf(model, [0, 180])
  const stretches = new Map<string, Stretch>()
  const stretch = (from: number, to: number): Stretch => {
    const key = `${from} ${to}`
    const found = stretches.get(key) ?? motion.stretch(motion.still(from), motion.still(to))
    stretches.set(key, found)
    return found
  }
  const boxes = new Map<Stretch, Map<number, Extent>>()
  const bySpan = new Map<string, Proofs>()
  const traceOf = (bodies: readonly Body[], span: Span | null): Trace => {
    const parts = GRID.slice(1).map((end, k) => {
      const low = Math.max(GRID[k] as number, span?.[0] ?? 0)
      const high = Math.min(end, span?.[1] ?? 180)
      if (!span || bodies.length === 0 || !(low < high)) return null
      return joined(bodies.map((body) => sweptBox(stretch(low, high), body, lifts.most(body.panel))))
    })
    return { parts, whole: joined(parts.filter((part) => part !== null)) }
  }
  const told = (owner: number): string => alone(owner)?.join(' ') ?? 'nowhere'
  const all: Leaf[][] = [[], ...model.builds.map(() => [])]
  for (const leaf of leavesOf(model)) all[(model.panels[leaf.panel]?.owner ?? -1) + 1]?.push(leaf)
  const owned = (owner: number): readonly Leaf[] => all[owner + 1] ?? []
  return {
    motion,
    owned,
    standing: standings(model),
    stretch,
    boxOf: (at, { panel, outline }) => {
      const own = boxes.get(at) ?? new Map<number, Extent>()
      boxes.set(at, own)
      const found = own.get(panel) ?? sweptBox(at, outline, lifts.most(panel))
      own.set(panel, found)
      return found
    },
    proofs: (span) => {
      const key = span.join(' ')
      const found = bySpan.get(key) ?? proofsIn({ motion, lifts: liftsOf(model, span) }, span)
      bySpan.set(key, found)
      return found
    },
    trace: (owner) =>
      traces(paperOf(model, owner), `own ${told(owner)}`, () =>
        traceOf(
          owned(owner).map(({ outline }) => outline),
          alone(owner),
        ),
      ),
    notchTrace: (owner) => {
      const base = baseOf(model, owner)
      return traces(paperOf(model, owner), `holes ${told(base)}`, () => {
        const { left, right } = model.creases[model.builds[owner]?.host ?? 0] as Model['creases'][number]
        const bodies = [...new Set([left.panel, right.panel])].flatMap((panel) =>
          (model.panels[panel]?.notches ?? []).flatMap((notch) =>
            notch.owner === owner ? bodyOf(panel, notch.outline) : [],
          ),
        )
        return traceOf(bodies, alone(base))
      })
    },
  }
}

/** The couples that have to be looked at: of every mechanism with what it stands on, and of others that come near. */
function couplesIn(search: Search, scene: Scene): readonly Couple[] {
  const { model } = search.motion
  const owners = model.builds.map((_, owner) => owner)
  const wants = search.wants ?? (() => true)
  const couple = (one: number, two: number, related: boolean): Couple[] => {
    if (!wants(one, two)) return []
    const span = search.range(one, two)
    return span
      ? [{ owners: [one, two], papers: [paperOf(model, one), paperOf(model, two)], span, related }]
      : []
  }
  const related = [-1, ...owners].flatMap((two) =>
    [...(scene.standing.get(two) ?? [])].flatMap((one) => couple(one, two, true)),
  )
  const free = nearPairs(owners.map((owner) => scene.trace(owner).whole)).flatMap(([one, two]) =>
    !scene.standing.get(two)?.has(one) &&
    wants(one, two) &&
    areTracesNear(scene.trace(one), scene.trace(two), 0)
      ? couple(one, two, false)
      : [],
  )
  return [...related, ...free]
}

/** Mechanisms whose holes in a panel of one come near another. */
function holesNear({ model }: Motion, scene: Scene, panel: number, other: number): readonly number[] {
  const { notches = [], owner = -1 } = model.panels[panel] ?? {}
  const guests = [...new Set(notches.map((notch) => notch.owner))]
  if (other === owner || other < 0) return guests
  const trace = scene.trace(other)
  return guests.filter(
    (guest) => scene.standing.get(other)?.has(guest) || areTracesNear(scene.notchTrace(guest), trace, HOLE),
  )
}

const firstOf = ({ builds }: Model, owner: number): number => builds[owner]?.firstPanel ?? 0

/** Looks at two mechanisms, from flat to shut. */
function lookedAt(search: Search, scene: Scene, couple: Couple, share: number): Outcome {
  const { owners, span, related } = couple
  const { motion, skips = () => false } = search
  const { model } = motion
  const { boxOf, stretch } = scene
  const proofs = scene.proofs(span)
  const known: Known = { meeting: null, doubts: 0, spent: 0, out: null }
  const effort = { left: Number.MAX_SAFE_INTEGER }
  let isPaperSeen = false

  const facetsOf = (leaf: Leaf, other: number): readonly Facet[] => {
    isPaperSeen = true
    const seen = new Set(holesNear(motion, scene, leaf.panel, other))
    return leaf.facets(
      (owner) => seen.has(owner) || owners.some((one) => scene.standing.get(one)?.has(owner)),
    )
  }
  const pairs = scene.owned(owners[0]).flatMap((one) =>
    scene.owned(owners[1]).flatMap((two): Pair[] => {
      if (one.panel >= two.panel) return []
      if (skips(one.panel, two.panel)) return []
      let paper: readonly [readonly Facet[], readonly Facet[]] | null = null
      return [
        {
          one,
          two,
          paper: () => {
            paper ??= [facetsOf(one, owners[1]), facetsOf(two, owners[0])]
            return paper
          },
        },
      ]
    }),
  )
  const middleOf = ({ from, to }: Stretch): number => (from.opening + to.opening) / 2

  const meetingAt = (pair: Doubt, opening: number, verdict: Meeting['verdict'], depth: number): Meeting => {
    const still = motion.still(opening)
    const { panel } = pair.two.body
    const flat = proofs.spot(pair, still)
    const at = still.places({ panel, flat: Float64Array.from(flat) })
    return {
      panels: [pair.one.body.panel - firstOf(model, owners[0]), panel - firstOf(model, owners[1])],
      verdict,
      opening,
      at: [at[0] as number, at[1] as number, at[2] as number],
      flat,
      depth,
    }
  }

  /** The meeting of two facets that cross in the middle of a stretch: the opening up to its end at which they first touch as the card shuts. */
  const touching = (pair: Doubt, at: Stretch): Meeting => {
    const crossAt = (opening: number): boolean => proofs.gapAt(pair, motion.still(opening)) < -TOUCH
    const most = at.to.opening
    const [first] = crossAt(most) ? [most] : lastGood(crossAt, middleOf(at), most, FINE)
    return meetingAt(pair, first, 'touches', -pair.gap)
  }

  /** That nothing can be told of a pair in a stretch; null where there is no paper. */
  const undecided = ({ paper }: Pair, what: Doubt | true, at: Stretch): Meeting | null => {
    const [[a], [b]] = what === true ? paper() : [[], []]
    const pair = what !== true ? what : a && b ? { one: a, two: b, gap: 0 } : null
    return pair && meetingAt(pair, middleOf(at), 'undecided', Math.max(0, pair.gap))
  }

  /** Whether a pair must be looked at in the halves of a stretch. */
  const staysOpen = (pair: Pair, at: Stretch): boolean => {
    const before = effort.left--
    const what = proofs.doubt(pair.one, pair.two, pair.paper, at, effort)
    known.spent += before - effort.left
    if (what === null) return false
    if (what !== true && what.gap < -TOUCH) {
      known.meeting = touching(what, at)
      return false
    }
    // Paper that lies on other paper in one plane all the time is never seen to cross, nor proved apart, however narrow the stretch.
    const hopeless = what !== true && proofs.coincide(what, at)
    if (hopeless || at.to.opening - at.from.opening < NARROWEST) {
      known.doubts += hopeless ? DOUBTS : 1
      known.meeting ??= undecided(pair, what, at)
      return false
    }
    if (known.spent < share) return true
    known.out = () => undecided(pair, what, at)
    return false
  }

  /** Looks at a stretch, and into its halves where need be. */
  const walk = (from: number, to: number, line: readonly Pair[]): void => {
    const at = stretch(from, to)
    const open = line.filter(
      (pair) =>
        !settled(known) && areNear(boxOf(at, pair.one), boxOf(at, pair.two), 0) && staysOpen(pair, at),
    )
    if (open.length === 0 || settled(known)) return
    const middle = (from + to) / 2
    // From flat towards shut, as the card is made: the first touch found is the first one felt.
    walk(middle, to, open)
    walk(from, middle, open)
  }
  const marks = related
    ? [span[0], ...(span[0] < NEARLY_SHUT && NEARLY_SHUT < span[1] ? [NEARLY_SHUT] : []), span[1]]
    : GRID
  for (let k = marks.length - 1; k > 0; k--) {
    const [low, high] = [Math.max(marks[k - 1] as number, span[0]), Math.min(marks[k] as number, span[1])]
    const isNear = related || nearIn(scene.trace(owners[0]), scene.trace(owners[1]), k - 1, 0)
    if (isNear && low < high) walk(low, high, pairs)
  }
  return {
    span,
    share,
    cost: known.spent,
    meeting: known.meeting ?? known.out?.() ?? null,
    isCut: known.out !== null,
    isOut: known.out !== null && known.meeting === null,
    holes: isPaperSeen ? holesOf(scene, couple) : null,
  }
}

/** All whose holes two mechanisms would see in each other. */
function holesOf(scene: Scene, { owners: [one, two] }: Couple): readonly Paper[] {
  const { motion, owned } = scene
  const all = [
    ...owned(one).flatMap(({ panel }) => holesNear(motion, scene, panel, two)),
    ...owned(two).flatMap(({ panel }) => holesNear(motion, scene, panel, one)),
  ]
  return [...new Set(all)].sort((a, b) => a - b).map((owner) => paperOf(motion.model, owner))
}

const isSame = (one: readonly Paper[], two: readonly Paper[]): boolean =>
  one.length === two.length && one.every((paper, k) => paper === two[k])

/**
 * Every two mechanisms that touch, or are not proved clear of each other, over the openings that are their own. At
 * most one meeting for each two.
 *
 * All get the same share of looks. Those for which it is too small are gone through once more with a greater one,
 * as long as there are looks enough for all of them. What is kept counts as if it were found anew, so that the
 * verdict is the same.
 */
export function meetings(search: Search): readonly Meeting[] {
  const { motion, effort, counts = () => true } = search
  const { model } = motion
  const scene = sceneOf(search)
  const couples = couplesIn(search, scene)
  const most = effort.left

  const look = (couple: Couple, share: number): Outcome => {
    const [one, two] = couple.papers
    let holes: readonly Paper[] | null = null
    const isKept = (found: Outcome): boolean => {
      if (found.span[0] !== couple.span[0] || found.span[1] !== couple.span[1]) return false
      if (found.share !== share && (found.isCut || found.share > share)) return false
      if (!found.holes) return true
      holes ??= holesOf(scene, couple)
      return isSame(found.holes, holes)
    }
    let found = outcomes.of(one, two).find(isKept)
    if (!found) {
      found = lookedAt(search, scene, couple, share)
      outcomes.add(one, two, found)
    }
    if (counts([one, two, ...(found.holes ?? [])], couple.span)) effort.left -= found.cost
    return found
  }
  const told = ({ owners }: Couple, { panels, ...meeting }: Meeting): Meeting => ({
    ...meeting,
    panels: [panels[0] + firstOf(model, owners[0]), panels[1] + firstOf(model, owners[1])],
  })

  let share = SHARE
  while (share > 1 && couples.length * share > most) share /= GROWTH
  const known = new Map<Couple, Outcome>()
  let line = couples
  let spent = 0
  while (line.length > 0) {
    for (const couple of line) {
      if (effort.left <= 0) break
      const found = look(couple, share)
      known.set(couple, found)
      spent += found.cost
    }
    line = line.filter((couple) => known.get(couple)?.isOut)
    share *= GROWTH
    if (effort.left <= 0 || spent + line.length * share > most) break
  }
  return couples.flatMap((couple) => {
    const found = known.get(couple)
    // Not looked at: the whole search was cut off.
    if (!found)
      return told(couple, {
        panels: [0, 0],
        verdict: 'undecided',
        opening: couple.span[1],
        at: [0, 0, 0],
        flat: [0, 0],
        depth: 0,
      })
    return found.meeting ? told(couple, found.meeting) : []
  })
}
