import type { Model } from '../model/model.ts'
import { once } from '../plane/once.ts'
import { baseOf } from './base.ts'

/*
 * What is found out about paper is kept for as long as that paper is there: as a rule only one mechanism of a
 * design changes, and `change` leaves all others the objects that they were. So the same objects from the card up
 * to a mechanism, and the same layer where it is stuck on, are the same paper in the same motion, and whatever
 * hangs on them alone need not be found anew. All of it goes when the mechanisms go.
 */

/** Stands for the paper of one mechanism, with all that it stands on; the same object for the same paper. */
export interface Paper {
  /** What it stands on; null for the card. */
  readonly base: Paper | null
  /** How many layers it lies off its host's plane. */
  readonly lift: number
  /** What is kept about it, by whoever keeps it. Read through `keeping` and `keepingPairs` alone. */
  readonly notes: Map<object, unknown>
}

/** By card or mechanism: its papers, one for each place where it stands. */
const papers = once((_thing: object): Paper[] => [])

function paperAt(thing: object, base: Paper | null, lift: number): Paper {
  const own = papers(thing)
  let paper = own.find((one) => one.base === base && one.lift === lift)
  if (!paper) {
    paper = { base, lift, notes: new Map() }
    own.push(paper)
    if (own.length > PLACES) own.shift()
  }
  return paper
}

/** So many papers are kept of one mechanism. */
const PLACES = 8

/** The papers of a model: of the card first, then of its mechanisms. */
const papersOf = once((model: Model): readonly Paper[] => {
  const list = [paperAt(model.design.card, null, 0)]
  model.builds.forEach(({ mechanism, firstPanel }, index) => {
    const base = list[baseOf(model, index) + 1] as Paper
    list.push(paperAt(mechanism, base, model.panels[firstPanel]?.lift ?? 0))
  })
  return list
})

/** What stands for the paper of a mechanism (index; -1: the card). */
export const paperOf = (model: Model, owner: number): Paper => papersOf(model)[owner + 1] as Paper

/** So many answers are kept to questions about one paper, and about so many others that a paper meets. */
const MOST = 8

const MOST_OTHERS = 512

/** What one keeper noted about a paper. */
function notesOf<K, V>(keeper: object, { notes }: Paper): Map<K, V> {
  // Each keeper finds what it has put there itself, and nothing else.
  const own = (notes.get(keeper) as Map<K, V> | undefined) ?? new Map<K, V>()
  notes.set(keeper, own)
  return own
}

/** Puts an answer into a memory that holds so many; the oldest goes. */
function note<K, V>(own: Map<K, V>, key: K, value: V, most: number): void {
  own.set(key, value)
  for (const [oldest] of own) {
    if (own.size <= most) break
    own.delete(oldest)
  }
}

/** A memory of answers about one paper; each question has a key. */
export function keeping<T>(): (paper: Paper, key: string, make: () => T) => T {
  const keeper = {}
  return (paper, key, make) => {
    const own = notesOf<string, T>(keeper, paper)
    const found = own.get(key)
    if (found !== undefined) return found
    const made = make()
    note(own, key, made, MOST)
    return made
  }
}

/** A memory of answers about two papers: they are read by `of`, and one more is put to them by `add`. */
export function keepingPairs<T>(): {
  of(one: Paper, two: Paper): readonly T[]
  add(one: Paper, two: Paper, answer: T): void
} {
  const keeper = {}
  const none: readonly T[] = []
  const of = (one: Paper, two: Paper): readonly T[] =>
    notesOf<Paper, readonly T[]>(keeper, two).get(one) ?? none
  return {
    of,
    add: (one, two, answer) =>
      note(
        notesOf<Paper, readonly T[]>(keeper, two),
        one,
        [answer, ...of(one, two)].slice(0, MOST),
        MOST_OTHERS,
      ),
  }
}
