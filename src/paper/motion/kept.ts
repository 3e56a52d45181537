import type { Model } from '../model/model.ts'

/*
 * What is found out about paper is kept for as long as that paper is there: as a rule only one mechanism of a
 * design changes, and `change` leaves all others the objects that they were. So the same objects from the card up
 * to a mechanism, and the same layer where it is stuck on, are the same paper in the same motion, and whatever
 * hangs on them alone need not be found anew. All of it goes when the mechanisms go.
 */

/** Stands for the paper of one mechanism, with all that it stands on; the same object for the same paper. */
export interface Paper {
  readonly guests: WeakMap<object, Map<number, Paper>>
}

const newPaper = (): Paper => ({ guests: new WeakMap() })

const cards = new WeakMap<object, Paper>()

const known = new WeakMap<Model, readonly Paper[]>()

/** By mechanism (index), the one that it stands on; -1: the card. */
export function baseOf({ builds, creases, panels }: Model, owner: number): number {
  const { host = 0, hostPanel } = builds[owner] ?? {}
  return (hostPanel === undefined ? creases[host]?.owner : panels[hostPanel]?.owner) ?? -1
}

/** What stands for the paper of a mechanism (index; -1: the card). */
export function paperOf(model: Model, owner: number): Paper {
  const { card } = model.design
  let bare = cards.get(card)
  if (!bare) {
    bare = newPaper()
    cards.set(card, bare)
  }
  if (owner < 0) return bare
  let all = known.get(model)
  if (!all) {
    const list: Paper[] = []
    model.builds.forEach(({ mechanism, firstPanel }, index) => {
      const { guests } = list[baseOf(model, index)] ?? (bare as Paper)
      const byLift = guests.get(mechanism) ?? new Map<number, Paper>()
      guests.set(mechanism, byLift)
      const lift = model.panels[firstPanel]?.lift ?? 0
      const paper = byLift.get(lift) ?? newPaper()
      byLift.set(lift, paper)
      list.push(paper)
    })
    all = list
    known.set(model, all)
  }
  return all[owner] as Paper
}

/** So many answers are kept to questions about one paper, or two. */
const MOST = 8

/** A memory of answers about one paper; each question has a key. */
export function keeping<T>(): (paper: Paper, key: string, make: () => T) => T {
  const answers = new WeakMap<Paper, Map<string, T>>()
  return (paper, key, make) => {
    const own = answers.get(paper) ?? new Map<string, T>()
    answers.set(paper, own)
    const found = own.get(key)
    if (found !== undefined) return found
    const made = make()
    for (const [oldest] of own) {
      if (own.size < MOST) break
      own.delete(oldest)
    }
    own.set(key, made)
    return made
  }
}

/** A memory of answers about two papers: the list of them, to be read and added to by `add`. */
export function keepingPairs<T>(): {
  of(one: Paper, two: Paper): readonly T[]
  add(one: Paper, two: Paper, answer: T): void
} {
  const answers = new WeakMap<Paper, WeakMap<Paper, readonly T[]>>()
  const none: readonly T[] = []
  return {
    of: (one, two) => answers.get(one)?.get(two) ?? none,
    add: (one, two, answer) => {
      const own = answers.get(one) ?? new WeakMap<Paper, readonly T[]>()
      answers.set(one, own)
      own.set(two, [answer, ...(own.get(two) ?? none)].slice(0, MOST))
    },
  }
}
