/**
 * The order of work for any design: what is cut from the card first, hosts before what is cut on their folds; then
 * piece by piece what is glued on, each with what is cut on its folds and what is stuck on its faces; the cover last.
 */
import { heldBy } from '../making/gluing.ts'
import { foldsTogether } from '../making/making.ts'
import type { Design } from '../paper/index.ts'
import { jointsOf, kindOf, ownerOf, threaded } from '../paper/index.ts'

/** One piece of work. `of` are the mechanisms that it is about, `there` what is in its place before it. */
export interface Work {
  readonly does:
    | 'cut-out' // the card's outline, and scoring
    | 'slits' // for tabs, in the flat card
    | 'colour' // what is drawn, while all lies flat
    | 'cut' // strips cut from a fold
    | 'crease' // folded both ways, those of them whose layers fold together
    | 'push' // pushed through
    | 'pieces' // cut out, scored, folded
    | 'thread' // tabs pushed through their slits and glued behind
    | 'lay' // one joint stuck, folded to one side
    | 'close' // the card shut on the other one
    | 'tape' // joints taped along their whole length
    | 'pop' // pushed up from its lower state
    | 'stand' // walls, then what they carry
    | 'stick' // on a face
    | 'press' // shut and pressed
    | 'open' // opened and looked at
    | 'cover' // glued behind
  readonly of: readonly string[]
  readonly there: readonly string[]
  /** Platforms on which it is done before they are set on their walls, each on the one before it. */
  readonly inHand?: readonly string[]
}

type Mechanism = Design['mechanisms'][number]

/** Mechanisms whose joints are taped, not glued by tabs. */
export function tapedOf(design: Design): ReadonlySet<string> {
  const owners = jointsOf(design).flatMap(({ of, isTaped }) => (isTaped ? [ownerOf(of)] : []))
  return new Set(owners)
}

/** What goes through slits in the pieces of a mechanism. */
function throughPieces(design: Design, id: string): readonly string[] {
  const through = jointsOf(design).filter(({ isThrough, host }) => isThrough && ownerOf(host.piece) === id)
  return [...new Set(through.map(({ of }) => ownerOf(of)))]
}

/** Cutting, creasing and pushing through of strips that lie on folds alike: on the gutter, or on what stands. */
function cutting(design: Design, strips: readonly Mechanism[], so: Pick<Work, 'there' | 'inHand'>): Work[] {
  const of = strips.map(({ id }) => id)
  const onGutter = strips.every(({ on }) => on === 'gutter')
  // Strips whose two layers fold about different lines are creased when they are pushed, all others before.
  const isCreased = onGutter && of.some((id) => foldsTogether(design, id))
  return [
    { does: 'cut', of, ...so },
    ...(isCreased ? [{ does: 'crease', of, ...so } as const] : []),
    { does: 'push', of, ...so },
  ]
}

/** The work, in order. Every mechanism is made once, after its host. */
export function orderOf(design: Design): readonly Work[] {
  const { mechanisms } = design
  const held = ({ id }: Mechanism) => heldBy(design, id)
  const isCut = (m: Mechanism): boolean => held(m) === null
  const done = new Set<string>()
  const works: Work[] = [{ does: 'cut-out', of: [], there: [] }]
  if (design.art) works.push({ does: 'colour', of: [], there: [] })
  const slit = threaded(design, 'card')
  if (slit.length > 0) works.push({ does: 'slits', of: slit, there: [] })
  /** Platforms that are worked on and do not stand yet. */
  const inHand: string[] = []
  const there = (): string[] => mechanisms.flatMap(({ id }) => (done.has(id) ? [id] : []))
  const isReady = ({ on }: Mechanism): boolean => {
    const host = ownerOf(on)
    return done.has(host) || inHand.includes(host) || !mechanisms.some(({ id }) => id === host)
  }
  /** How far it is, and on what it is done. */
  const sofar = (): Pick<Work, 'there' | 'inHand'> => ({
    there: there(),
    ...(inHand.length > 0 ? { inHand: [...inHand] } : {}),
  })
  const finish = (made: readonly Mechanism[]): void => {
    for (const { id } of made) done.add(id)
  }
  /** What can be cut from what is there, fold by fold outwards. */
  const cutAll = (): void => {
    for (;;) {
      const strips = mechanisms.filter((m) => isCut(m) && !done.has(m.id) && isReady(m))
      if (strips.length === 0) return
      works.push(...cutting(design, strips, sofar()))
      finish(strips)
    }
  }
  cutAll()
  const glued = mechanisms.filter((m) => !isCut(m))
  if (glued.length > 0) works.push({ does: 'pieces', of: glued.map(({ id }) => id), there: there() })
  const taped = tapedOf(design)
  const through = threaded(design)
  const popped = (of: readonly string[]): void => {
    const before = there().filter((id) => !of.includes(id))
    works.push({ does: 'pop', of, there: before })
  }
  /** What goes through a platform is glued beneath it, where no hand reaches once that stands. */
  const throughFirst = (platform: Mechanism): readonly Mechanism[] => {
    const goesThrough = throughPieces(design, platform.id)
    if (!goesThrough.some((id) => !done.has(id))) return []
    const made: Mechanism[] = []
    inHand.push(platform.id)
    cutAll()
    for (;;) {
      const next = glued.find((m) => goesThrough.includes(m.id) && !done.has(m.id) && isReady(m))
      if (!next) break
      const guests = held(next) === 'walls' ? throughFirst(next) : []
      works.push({ does: held(next) === 'walls' ? 'stand' : 'thread', of: [next.id], ...sofar() })
      finish([next])
      made.push(...guests, next)
      cutAll()
    }
    inHand.pop()
    return made
  }
  for (;;) {
    const next = glued.find((m) => !done.has(m.id) && isReady(m))
    if (!next) break
    const how = held(next)
    const faces = glued.filter(
      (m) => held(m) === 'face' && !done.has(m.id) && isReady(m) && ownerOf(m.on) === ownerOf(next.on),
    )
    const made = how === 'face' ? faces : [next]
    const of = made.map(({ id }) => id)
    const guests = how === 'walls' ? throughFirst(next) : []
    const before = there()
    if (how === 'joints') {
      if (through.includes(next.id)) works.push({ does: 'thread', of, there: before })
      else works.push({ does: 'lay', of, there: before }, { does: 'close', of, there: before })
      if (taped.has(next.id)) works.push({ does: 'tape', of, there: before })
    } else works.push({ does: how === 'walls' ? 'stand' : 'stick', of, there: before })
    finish(made)
    for (const one of how === 'joints' ? made : guests) if (kindOf(one).pops) popped([one.id])
    cutAll()
  }
  const all = there()
  works.push({ does: 'press', of: [], there: all }, { does: 'open', of: [], there: all })
  if (design.card.cover) works.push({ does: 'cover', of: [], there: all })
  return works
}
