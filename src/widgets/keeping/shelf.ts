/** Where dummies lie: what is kept of each, and the few things that can be done with it, each all or nothing. */
import type { Art, Design } from '../../paper/index.ts'
import type { PackedStep } from './packing.ts'

/** What a list shows of one dummy. */
export interface Entry {
  readonly id: string
  /** The title of its design. */
  readonly name: string
  /** When it was made and last changed, milliseconds since 1970. */
  readonly made: number
  readonly changed: number
  /** Counts every saving: whoever saves must know the last one. */
  readonly rev: number
  /** A small picture, SVG text. */
  readonly picture: string | null
  /** When it was deleted; null while it is there. */
  readonly gone: number | null
}

/** The form in which a site of today stores a dummy. Later sites count on, and still read this one. */
export const WORK_VERSION = 1

/** The dummy itself but for what is drawn on it, and which of its steps is shown. */
export interface Work {
  readonly id: string
  readonly v: number
  readonly design: Omit<Design, 'art'>
  /** Numbers of steps, counted from the very first: which is shown, which is the oldest kept. */
  readonly at: number
  readonly first: number
}

/** How a dummy was at some time. */
export interface EarlierState {
  readonly id: string
  readonly when: number
  /** What was done last. */
  readonly label: string
  readonly design: Design
}

/** One saving. */
export interface Writing {
  readonly entry: Entry
  readonly work: Work
  /** What is drawn on it, null for nothing; left out, it is as it was: it may be large, and a drag saves often. */
  readonly art?: readonly Art[] | null
  /** The number of the saving that this one follows; 0 for a new dummy. */
  readonly follows: number
  /** Steps to write, by number; those below `work.first` and above `last` go. */
  readonly steps: readonly (readonly [number: number, step: PackedStep])[]
  readonly last: number
  /** States to keep beside it. */
  readonly earlier: readonly EarlierState[]
  /** Of the times at which there are states: those to forget. */
  readonly thin: (times: readonly number[]) => readonly number[]
}

/** Not written: another saving follows the same one already. `isGone`: it deleted the dummy. */
export type Written = { readonly written: true } | { readonly written: false; readonly isGone: boolean }

/** One dummy as it lies there, whoever laid it there. */
export interface Lying {
  readonly entry: Entry
  readonly work: unknown
  readonly art: unknown
  readonly steps: readonly (readonly [number: number, step: unknown])[]
}

export interface Shelf {
  entries(): Promise<readonly Entry[]>
  entry(id: string): Promise<Entry | undefined>
  /** What lies there under an id, as it lies there: undefined if nothing does. The art is null where there is none. */
  work(id: string): Promise<Lying | undefined>
  /** Asks for all of it before it returns: a page that is being left has no second moment. */
  write(writing: Writing): Promise<Written>
  /** Changes the entry alone. */
  mark(id: string, mark: (entry: Entry) => Entry): Promise<Entry | undefined>
  earlier(id: string): Promise<readonly EarlierState[]>
  /** Takes it off the shelf for good. */
  erase(id: string): Promise<void>
  close(): void
}

/** A shelf that lasts as long as the page. */
export function memoryShelf(): Shelf {
  const all = new Map<
    string,
    {
      entry: Entry
      work: Work
      art: readonly Art[] | null
      steps: Map<number, PackedStep>
      earlier: Map<number, EarlierState>
    }
  >()
  return {
    entries: async () => [...all.values()].map(({ entry }) => entry),
    entry: async (id) => all.get(id)?.entry,
    async work(id) {
      const one = all.get(id)
      const { entry, work, art, steps } = one ?? {}
      return entry && { entry, work, art, steps: [...(steps ?? [])].sort(([a], [b]) => a - b) }
    },
    async write({ entry, work, art, follows, steps, last, earlier, thin }) {
      const before = all.get(entry.id)
      const rev = before?.entry.rev ?? 0
      if (rev !== follows) return { written: false, isGone: before?.entry.gone !== null }
      const kept = new Map([...(before?.steps ?? []), ...steps])
      for (const n of kept.keys()) if (n < work.first || n > last) kept.delete(n)
      const states = new Map([...(before?.earlier ?? []), ...earlier.map((one) => [one.when, one] as const)])
      for (const when of thin([...states.keys()])) states.delete(when)
      const drawn = art === undefined ? (before?.art ?? null) : art
      all.set(entry.id, { entry, work, art: drawn, steps: kept, earlier: states })
      return { written: true }
    },
    async mark(id, mark) {
      const one = all.get(id)
      if (!one) return undefined
      one.entry = mark(one.entry)
      return one.entry
    },
    earlier: async (id) => [...(all.get(id)?.earlier.values() ?? [])].sort((a, b) => a.when - b.when),
    async erase(id) {
      all.delete(id)
    },
    close: () => {},
  }
}
