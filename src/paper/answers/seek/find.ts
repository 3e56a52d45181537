import type { Design } from '../../design/design.ts'
import { nameOf, ownerOf } from '../../design/name.ts'
import { freeId } from '../../design/tree.ts'
import type { Side } from '../../mechanisms/build.ts'
import { fitsOf } from '../../mechanisms/fits.ts'
import type { Room } from '../../mechanisms/kind.ts'
import type { AnyKind, Mechanism } from '../../mechanisms/registry.ts'
import { kindOf, kinds } from '../../mechanisms/registry.ts'
import type { Model } from '../../model/model.ts'
import { modelOf } from '../../model/model.ts'
import type { Poser } from '../../motion/pose.ts'
import { compile } from '../../motion/pose.ts'
import { openingRange } from '../../motion/range.ts'
import type { Frame } from '../../plane/frame.ts'
import { emptyFrame, partOf } from '../../plane/frame.ts'
import type { Flat } from '../../plane/lay.ts'
import type { Vec3 } from '../../plane/vector.ts'
import { add, distance, dot, subtract } from '../../plane/vector.ts'
import * as says from '../../words/answers.ts'
import type { Facts } from './facts.ts'
import { factsOf } from './facts.ts'
import { newId, PLACES, SIZES, sitsOnOf, variantsOf } from './offers.ts'
import type { Brought, Link, Seat } from './reach.ts'
import { bring, resized, swayOf, tipOfChain } from './reach.ts'
import { roomBefore, roomsOf, roomsOn } from './room.ts'
import type { Against, Effort, Judge } from './sound.ts'
import { additionsTo } from './sound.ts'
import type { Wish } from './wish.ts'
import { checkWish, isNear, marksOf, missOf, movesAsWished, NEAR, straysOf } from './wish.ts'

/** One way of giving a wish. */
export interface Find {
  /** The given design with one or two mechanisms more, which fail no check. */
  readonly design: Design
  /** The new mechanisms; the last one carries the tip. */
  readonly ids: readonly string[]
  /** Where the new tip is at the wished opening, and how far from the wished place, mm. */
  readonly tip: Vec3
  readonly miss: number
  /** How far its tip is from the farthest mark of the wished path, mm; 0 where no path is wished for. */
  readonly strays: number
  /** How far one millimetre or degree off in any one number moves the tip, mm. */
  readonly sway: number
  readonly facts: Facts
}

/** Why there is no way. */
export interface Missed {
  /**
   * How far off the wished place, or the farthest mark of its path, the nearest sound one leaves its tip, mm; infinite
   * if there is none at all.
   */
  readonly miss: number
  /** That one. */
  readonly nearest: Pick<Find, 'design' | 'ids' | 'tip'> | null
  readonly sentence: string
}

/** So many ways are given. */
const MOST = 6

/** So many are looked for, to choose from. */
const ENOUGH = 12

/** What a search may cost, in looks at two moving panels: about four seconds; and how much of that for single mechanisms. */
const EFFORT = 2.4e5

const FOR_SINGLES = 0.65

/** What it costs to bring one tip to its place, and to look where a tip is, in looks. */
const BRINGING = 150

/** What it costs to put a design together and ask what is quick to tell of it, for each of its mechanisms, in looks. */
const JUDGING = 8

/** So many seeds of one kind and variant on one crease are tried; each next one as late as if it were so far off, mm. */
const MOST_SEEDS = 4

const LATER = 20

/** How much larger or smaller what does not move the tip is tried, where the first is not sound. */
const OTHER_SIZES = [1, 0.7, 1.5, 0.4] as const

/** So many creases that a first link would bring are looked at for a second one. */
const MOST_PARENTS = 32

/** A chain that is to be brought to the wished place. */
interface Seed {
  readonly links: readonly Link[]
  readonly seat: Seat
  /** How far its tip is from the place before, mm. */
  readonly off: number
  /** Of seeds of one slot, one find is enough. */
  readonly slot: string
}

/** What a search knows and what it may still spend. */
interface Search {
  readonly design: Design
  readonly wish: Wish
  readonly judge: Judge
  readonly effort: Effort
}

/** The frames of a crease at each of some openings, by a poser. */
const framesAt = (poser: Poser, crease: number, openings: readonly number[]): Frame[] =>
  openings.map((opening) => {
    poser(opening)
    return Float64Array.from(poser.frames[crease] ?? [])
  })

/** A place where a chain may begin, or go on. */
interface Place {
  readonly on: string
  readonly sitsOn: 'crease' | 'panel'
  /** Index of the crease, or of the one that the panel hangs on. */
  readonly crease: number
  readonly side: Side
  rooms(): readonly Room[]
}

/** The creases and panels of a model whose owner is asked for. On a panel a piece may also end where it is wished for. */
function placesOf(
  poser: Poser,
  { opening, at }: Wish,
  asked: (name: string, owner: number) => boolean,
): readonly Place[] {
  const { model } = poser
  const below = (panel: number): Flat => {
    poser(opening)
    const [o, a, l] = [poser.lift(panel, [0, 0]), poser.lift(panel, [1, 0]), poser.lift(panel, [0, 1])]
    const off = subtract(at, o)
    return [dot(off, subtract(a, o)), dot(off, subtract(l, o))]
  }
  return [
    ...model.creases.flatMap(({ name, owner, hidden }, crease): Place[] =>
      hidden || !asked(name, owner)
        ? []
        : [{ on: name, sitsOn: 'crease', crease, side: 'right', rooms: () => roomsOn(poser, crease) }],
    ),
    ...model.panels.flatMap(({ name, owner, crease, side }, panel): Place[] =>
      asked(name, owner)
        ? [
            {
              on: name,
              sitsOn: 'panel',
              crease,
              side,
              rooms: () => [...roomsOf(model, panel), roomBefore(below(panel))],
            },
          ]
        : [],
    ),
  ]
}

/** Sizes and places that are tried, as `SIZES` and `PLACES` have them. */
interface Tried {
  readonly sizes: readonly (readonly [long: number, deep: number])[]
  readonly places: readonly number[]
}

const ALL: Tried = { sizes: SIZES, places: PLACES }

/** Of a chain every second size will do: both its links are brought to fit. */
const FEW: Tried = { sizes: SIZES.filter((_, k) => k % 2 === 0), places: PLACES.slice(0, 2) }

/** What each kind would be at a place, in these sizes: as mechanisms by slot. */
function* fitsAt(
  place: Place,
  design: Design,
  allowed: (kind: AnyKind) => boolean,
  { sizes, places }: Tried,
) {
  const rooms = place.rooms()
  for (const kind of kinds) {
    if (sitsOnOf(kind) !== place.sitsOn || !allowed(kind)) continue
    const id = newId(design, kind)
    for (const variant of variantsOf(kind)) {
      const slot = `${place.on} ${kind.kind} ${variant}`
      for (const room of rooms)
        for (const [long, deep] of sizes)
          for (const at of places) {
            const fit = fitsOf(kind)(room, { long, deep, at })[variant]
            if (fit) yield { slot, m: { id, kind: kind.kind, on: place.on, ...fit.fields } as Mechanism }
          }
    }
  }
}

/** The nearest seeds of each slot, then all by how near they are. */
function nearestSeeds(seeds: readonly Seed[], most: number): readonly Seed[] {
  const bySlot = new Map<string, Seed[]>()
  for (const seed of [...seeds].sort((a, b) => a.off - b.off)) {
    const own = bySlot.get(seed.slot) ?? []
    bySlot.set(seed.slot, own)
    own.push(seed)
  }
  return [...bySlot.values()]
    .flatMap((own) =>
      // The nearest, and others spread over what is farther off: they come to other sizes.
      Array.from({ length: Math.min(most, own.length) }, (_, k) => {
        const seed = own[Math.floor((k * own.length) / Math.min(most, own.length) / 1.5)] as Seed
        return { seed, late: seed.off + LATER * k }
      }),
    )
    .sort((a, b) => a.late - b.late)
    .map(({ seed }) => seed)
}

const offOf = (links: readonly Link[], seat: Seat, at: Vec3): number => {
  const tip = tipOfChain(links, seat)
  return tip ? distance(tip, at) : Number.POSITIVE_INFINITY
}

/** Single mechanisms on everything that there is. */
function* singles({ design, wish }: Search, poser: Poser): Generator<null, readonly Seed[]> {
  const marks = marksOf(wish)
  const openings = marks.map(({ opening }) => opening)
  const seeds: Seed[] = []
  const places = placesOf(poser, wish, (name) => !wish.on || wish.on.includes(name))
  for (const place of places) {
    const seat: Seat = { card: design.card, frames: framesAt(poser, place.crease, openings) }
    for (const { slot, m } of fitsAt(place, design, allowedBy(wish), ALL)) {
      const links: readonly Link[] = [{ m, crease: 0, side: place.side }]
      seeds.push({ links, seat, off: offOf(links, seat, wish.at), slot })
    }
    yield null
  }
  return nearestSeeds(seeds, MOST_SEEDS)
}

const allowedBy =
  ({ made }: Wish) =>
  ({ stock }: AnyKind): boolean =>
    made === undefined || (made === 'card') === (stock.from === 'host')

/** How far a point is from a stretch of a frame's crease, mm. */
function fromCrease(frame: Frame, long: number, at: Vec3): number {
  const [o, d] = [partOf(frame, 0), partOf(frame, 6)]
  const along = Math.min(long, Math.max(0, dot(subtract(at, o), d)))
  return distance(at, add(o, d, along))
}

/** Sizes of a first link: a second one does the rest. */
const PARENT_SIZES = [0, 2, 4] as const

/** Chains of two: a first link as it would be offered, and a second on one of its creases or panels. */
function* chains({ design, wish, judge, effort }: Search, poser: Poser): Generator<null, readonly Seed[]> {
  const marks = marksOf(wish)
  const openings = marks.map(({ opening }) => opening)
  const parents: { m: Mechanism; seat: Seat; near: number; part: number; slot: string }[] = []
  const allowed = allowedBy(wish)
  for (const place of placesOf(poser, wish, (name) => !wish.on || wish.on.includes(name))) {
    if (place.sitsOn === 'panel') continue
    const seat: Seat = { card: design.card, frames: framesAt(poser, place.crease, openings) }
    const rooms = place.rooms()
    for (const kind of kinds) {
      if (sitsOnOf(kind) === 'panel' || !allowed(kind)) continue
      for (const variant of variantsOf(kind))
        for (const room of rooms)
          for (const size of PARENT_SIZES) {
            const [long, deep] = SIZES[size] as (typeof SIZES)[number]
            for (const at of PLACES) {
              const fit = fitsOf(kind)(room, { long, deep, at })[variant]
              if (!fit) continue
              const m = { id: newId(design, kind), kind: kind.kind, on: place.on, ...fit.fields } as Mechanism
              const build = kind.build(m)
              const out = build.creases.map(() => emptyFrame())
              if (!build.place(seat.frames[0] as Frame, out)) continue
              build.creases.forEach(({ length, hidden }, part) => {
                if (hidden) return
                const near = fromCrease(out[part] as Frame, length, wish.at)
                parents.push({ m, seat, near, part, slot: `${place.on} ${kind.kind} ${variant} ${part}` })
              })
            }
          }
    }
    yield null
  }
  parents.sort((a, b) => a.near - b.near)
  const seeds: Seed[] = []
  const seen = new Map<string, number>()
  let left = MOST_PARENTS
  for (const { m, seat, part, slot } of parents) {
    if (left <= 0 || effort.left <= 0) break
    const times = seen.get(slot) ?? 0
    if (times >= 2) continue
    const next: Design = { ...design, mechanisms: [...design.mechanisms, m] }
    // Only what stands by itself can carry another.
    if (judge.quick(next, new Set([m.id]))) continue
    seen.set(slot, times + 1)
    left--
    const model: Model = modelOf(next)
    const own = compile(next)
    const owner = next.mechanisms.length - 1
    const first = model.builds[owner]?.firstCrease ?? 0
    const places = placesOf(own, wish, (_, of) => of === owner).filter(
      ({ crease, sitsOn }) => crease === first + part || (sitsOn === 'panel' && part === 0),
    )
    for (const place of places) {
      // Where the second link's own crease is once the first is in place.
      const there: Seat = { card: design.card, frames: framesAt(own, place.crease, openings) }
      for (const fit of fitsAt(place, next, allowed, FEW)) {
        const child: Link = { m: fit.m, crease: place.crease - first, side: place.side }
        const off = offOf([child], there, wish.at)
        const links: readonly Link[] = [{ m, crease: 0, side: 'right' }, child]
        seeds.push({ links, seat, off, slot: `${slot} ${fit.slot}` })
      }
    }
    yield null
  }
  return nearestSeeds(seeds, 1)
}

/** What came of a seed: nothing, or the nearest that it gives. */
interface Try {
  readonly brought: Brought
  readonly seed: Seed
  readonly against: Against | null
}

const withLinks = (design: Design, links: readonly Link[]): Design => ({
  ...design,
  mechanisms: [...design.mechanisms, ...links.map(({ m }) => m)],
})

const idsOf = (links: readonly Link[]): readonly string[] => links.map(({ m }) => m.id)

const UNLIKE: Against = {
  name: 'limits',
  sentence: says.otherMotion,
  by: Number.POSITIVE_INFINITY,
}

/** What stands against a chain: null if nothing does. */
function againstLinks({ design, wish, judge, effort }: Search, links: readonly Link[]): Against | null {
  const next = withLinks(design, links)
  effort.left -= JUDGING * next.mechanisms.length
  const added = new Set(idsOf(links))
  const quick = judge.quick(next, added)
  if (quick) return quick
  if (!movesAsWished(next, wish)) return UNLIKE
  return judge.slow(next, added)
}

/** The first sound chain that a seed gives near the wished place; or what stands against it. */
function tried(search: Search, seed: Seed): { find: Find | null; attempt: Try | null } {
  const { design, wish, effort } = search
  const marks = marksOf(wish)
  const { within = 1, near = NEAR } = wish
  effort.left -= BRINGING * seed.links.length
  // What may be missed by more counts for less: the tip's own place is met first.
  const brought = bring(seed.links, seed.seat, marks, within, Math.min(1, within / near))
  if (!brought) return { find: null, attempt: null }
  if (!isNear(wish, brought.miss, brought.worst))
    return { find: null, attempt: { brought, seed, against: null } }
  let first: Against | null = null
  const seen = new Set<string>()
  for (const by of OTHER_SIZES) {
    const links = by === 1 ? brought.links : resized(brought.links, seed.seat, marks, by)
    const key = JSON.stringify(links)
    if (seen.has(key)) continue
    seen.add(key)
    const against = againstLinks(search, links)
    first ??= against
    if (against) {
      if (effort.left <= 0) break
      continue
    }
    const next = withLinks(design, links)
    const tip = tipOfChain(links, seed.seat) ?? wish.at
    const find: Find = {
      design: next,
      ids: idsOf(links),
      tip,
      miss: missOf(next, wish),
      strays: straysOf(next, wish),
      sway: swayOf(links, seed.seat),
      facts: factsOf(next, new Set(idsOf(links))),
    }
    return { find, attempt: null }
  }
  return { find: null, attempt: { brought, seed, against: first } }
}

/** Of the tries that came to nothing, so many are walked back to where they are sound. */
const MOST_WALKS = 8

/** Of so many single mechanisms, and half as many chains, is asked how high they reach. */
const MOST_LOWERED = 16

/** Halvings of such a walk, and of how high any of them reaches. */
const HALVINGS = 6

const HEIGHT_HALVINGS = 8

const between = (one: Mechanism, two: Mechanism, t: number): Mechanism => {
  const mix = (a: unknown, b: unknown): unknown => {
    if (typeof a === 'number' && typeof b === 'number') return Number((a + t * (b - a)).toFixed(1))
    if (typeof a === 'object' && a !== null && !Array.isArray(a))
      return Object.fromEntries(
        Object.entries(a).map(([key, value]) => [key, mix(value, (b as Record<string, unknown>)[key])]),
      )
    return b
  }
  return mix(one, two) as Mechanism
}

/** A sound one near the wished place, and how far off it is, mm. */
type Near = NonNullable<Missed['nearest']> & { readonly miss: number }

const nearer = (one: Near | null, two: Near | null): Near | null =>
  !one || (two && two.miss < one.miss) ? two : one

/** How far a try is from granting its wish: what it misses of the place, and by how much it fails there. */
const offBy = ({ wish }: Search, { brought, against }: Try): number =>
  (wish.path ? brought.worst : brought.miss) + (against?.by ?? 0)

/** The same wish with all its places so much lower over the gutter's line: 1 is the wish itself, 0 lies flat. */
const lowered = (wish: Wish, t: number): Wish => ({
  ...wish,
  at: [wish.at[0], wish.at[1], t * wish.at[2]],
  ...(wish.path
    ? { path: wish.path.map(({ opening, at: [x, y, z] }) => ({ opening, at: [x, y, t * z] as const })) }
    : {}),
})

/** The first try of each slot, of single mechanisms or of chains. */
function firstOfSlots(tries: readonly Try[], single: boolean): readonly Try[] {
  const slots = new Map<string, Try>()
  for (const one of tries)
    if ((one.seed.links.length === 1) === single && !slots.has(one.seed.slot)) slots.set(one.seed.slot, one)
  return [...slots.values()]
}

/** What the tries give of the same wish made lower, as high as any of them can: a lower wish is mostly granted. */
function belowOf(search: Search, sorted: readonly Try[]): Near | null {
  const { wish, effort } = search
  let seeds = [
    ...firstOfSlots(sorted, true).slice(0, MOST_LOWERED),
    ...firstOfSlots(sorted, false).slice(0, MOST_LOWERED / 2),
  ].map(({ seed }) => seed)
  let best: Near | null = null
  let [low, high] = [0, 1]
  for (let k = 0; k < HEIGHT_HALVINGS && effort.left > 0; k++) {
    const middle = (low + high) / 2
    const lower = { ...search, wish: lowered(wish, middle) }
    let granted: Find | null = null
    for (const seed of seeds) {
      granted = effort.left > 0 ? tried(lower, seed).find : null
      if (!granted) continue
      // What granted one is asked first about the next, as it came out and as it was.
      const made = granted.design.mechanisms.slice(-seed.links.length)
      const links = seed.links.map((link, n): Link => ({ ...link, m: made[n] ?? link.m }))
      seeds = [{ ...seed, links }, seed, ...seeds.filter((other) => other !== seed)]
      break
    }
    if (granted) low = middle
    else high = middle
    if (!granted) continue
    const { design, ids, tip } = granted
    best = nearer(best, { design, ids, tip, miss: Math.max(missOf(design, wish), straysOf(design, wish)) })
  }
  return best
}

/** The nearest sound one that a try leads to: itself, or as far as its seed can be moved towards it. */
function walkedOf(search: Search, { brought, seed }: Try): Near | null {
  const { design, wish } = search
  let best: Near | null = null
  const along = (t: number): readonly Link[] =>
    brought.links.map(
      (link, k): Link => ({
        ...link,
        m: between((seed.links[k] as Link).m, link.m, t),
      }),
    )
  const take = (links: readonly Link[]): boolean => {
    if (againstLinks(search, links)) return false
    const next = withLinks(design, links)
    const miss = Math.max(missOf(next, wish), straysOf(next, wish))
    const tip = tipOfChain(links, seed.seat)
    if (tip) best = nearer(best, { design: next, ids: idsOf(links), tip, miss })
    return true
  }
  if (take(brought.links)) return best
  let [low, high] = [0, 1]
  if (!take(along(0))) return best
  for (let k = 0; k < HALVINGS; k++) {
    const middle = (low + high) / 2
    if (take(along(middle))) low = middle
    else high = middle
  }
  return best
}

/** The nearest sound one that the tries lead to, those first that come nearest to granting the wish. */
function nearestOf(search: Search, tries: readonly Try[]): Near | null {
  const sorted = [...tries].sort((a, b) => offBy(search, a) - offBy(search, b))
  let best = belowOf(search, sorted)
  for (const one of sorted.slice(0, MOST_WALKS)) best = nearer(best, walkedOf(search, one))
  return best
}

/** The links under names that say that they are new, and which is which: no part of theirs is on the card yet. */
function calledNew(design: Design, links: readonly Link[]): readonly Link[] {
  const words = links.map(({ m }) => kindOf(m).word)
  const isAlike = new Set(words).size < words.length
  const ids = words.map((word, k) =>
    freeId(design, says.newPart(word, !isAlike ? 'only' : k === 0 ? 'first' : 'second')),
  )
  return links.map((link, k): Link => {
    const { m } = link
    const on = k === 0 ? m.on : `${ids[k - 1]}${m.on.slice(ownerOf(m.on).length)}`
    return { ...link, m: { ...m, id: ids[k] as string, on } }
  })
}

/** What stands against a try, in words that name nothing that is not there. */
function reasonOf(search: Search, { brought }: Try, against: Against): string {
  search.effort.left = Math.max(search.effort.left, EFFORT / 8)
  const again = againstLinks(search, calledNew(search.design, brought.links))
  return again?.name === against.name ? again.sentence : against.sentence
}

/** What lies nearer than this to working is told, mm or degrees: what is farther off never reached. */
const WORKS_NEARLY = 40

/** Why nothing was found. */
function missed(search: Search, tries: readonly Try[]): Missed {
  const { wish } = search
  const walk: Search = { ...search, judge: search.judge }
  search.effort.left += EFFORT / 4
  const found = nearestOf(walk, tries)
  const reached = tries.filter(
    ({ brought: { miss, worst }, against }) => against && isNear(wish, miss, worst),
  )
  const [most] = reached
    .flatMap((one) => (one.against && one.against.by < WORKS_NEARLY ? [{ one, against: one.against }] : []))
    .sort((one, two) => one.against.by - two.against.by)
  const nearest = found ? { design: found.design, ids: found.ids, tip: found.tip } : null
  const miss = found?.miss ?? Number.POSITIVE_INFINITY
  const leaves = found ? says.nearestLeaves(`${miss.toFixed(miss < 10 ? 1 : 0)} mm`) : says.nothingNear
  const sentence = most
    ? says.reachedButFails(
        leaves,
        most.one.brought.links.map(({ m }) => nameOf(kindOf(m).word)),
        reasonOf(search, most.one, most.against),
      )
    : wish.path
      ? says.noWayAlong(leaves)
      : says.noFoldReaches(leaves)
  return { miss, nearest, sentence }
}

/**
 * Looks for ways to bring a new tip to a wished place: every kind on every crease and panel that may be built on, and
 * chains of two. Each way comes as it is found, sound by all checks but those that the design fails already; null in
 * between, where nothing was found yet: a caller may stop at any step. Ends with why there is none, or null.
 * Throws a RangeError for a wish that cannot be.
 */
export function* finding(design: Design, wish: Wish): Generator<Find | null, Missed | null> {
  checkWish(wish)
  const { creases, panels } = modelOf(design)
  const names = new Set([...creases, ...panels].map(({ name }) => name))
  const stray = wish.on?.find((name) => !names.has(name))
  if (stray !== undefined) throw new RangeError(says.notBuiltOn(stray))
  const [least, most] = openingRange(design)
  const beyond = marksOf(wish).find(({ opening }) => opening < least - 1e-6 || opening > most + 1e-6)
  if (beyond) {
    const sentence = says.opensOnly(`${least.toFixed(0)}°`, `${most.toFixed(0)}°`, `${beyond.opening}°`)
    return { miss: Number.POSITIVE_INFINITY, nearest: null, sentence }
  }
  const effort: Effort = { left: EFFORT * FOR_SINGLES }
  const judge = additionsTo(design, effort, wish.hidden === false ? ['stays-inside'] : [])
  const search: Search = { design, wish, judge, effort }
  const poser = compile(design)
  yield null
  const tries: Try[] = []
  const slots = new Set<string>()
  for (const seedsOf of [singles, chains]) {
    const seeds = yield* seedsOf(search, poser)
    for (const seed of seeds) {
      if (effort.left <= 0 || slots.size >= ENOUGH) break
      if (slots.has(seed.slot)) continue
      const { find, attempt } = tried(search, seed)
      if (attempt) tries.push(attempt)
      if (find) slots.add(seed.slot)
      yield find
    }
    if (slots.size >= MOST) break
    effort.left += EFFORT * (1 - FOR_SINGLES)
  }
  return slots.size > 0 ? null : missed(search, tries)
}

/** What is better in a find, most telling first: fewer new mechanisms, a tip that stays where it is, fewer joints, less card. */
const merit = ({ ids, sway, facts, miss, strays }: Find): number =>
  10 * (ids.length - 1) + 2 * Math.min(5, sway) + 0.5 * facts.joints + facts.area / 1e4 + miss + 4 * strays

const kindsOf = ({ design, ids }: Find): string =>
  design.mechanisms.flatMap(({ id, kind, on }) => (ids.includes(id) ? [`${kind} ${on}`] : [])).join(', ')

/** Ways that stray from a path by less than so much of each other go it as well, mm. */
const AS_NEAR = 0.5

/**
 * The best few, unlike each other: of each kind on one crease the best comes before the second best of any. Where a
 * path is wished for, those few are given by how near they go to it.
 */
export function bestOf(finds: readonly Find[]): readonly Find[] {
  const sorted = [...finds].sort((a, b) => merit(a) - merit(b))
  const rank = new Map<Find, number>()
  const times = new Map<string, number>()
  for (const find of sorted) {
    const key = kindsOf(find)
    rank.set(find, times.get(key) ?? 0)
    times.set(key, (times.get(key) ?? 0) + 1)
  }
  const few = sorted.sort((a, b) => (rank.get(a) as number) - (rank.get(b) as number)).slice(0, MOST)
  const off = ({ strays }: Find): number => Math.floor(strays / AS_NEAR)
  return few.sort((a, b) => off(a) - off(b))
}

/** All that was sought, at once: the best few ways, and why there is none. */
export function sought(
  design: Design,
  wish: Wish,
): { readonly finds: readonly Find[]; readonly missed: Missed | null } {
  const work = finding(design, wish)
  const finds: Find[] = []
  for (;;) {
    const { done, value } = work.next()
    if (done) return { finds: bestOf(finds), missed: value }
    if (value) finds.push(value)
  }
}

/** The best few ways to bring a new tip to a wished place, best first, unlike each other; empty if there is none. */
export const find = (design: Design, wish: Wish): readonly Find[] => sought(design, wish).finds
