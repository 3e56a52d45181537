/** The shelf in the browser’s own database, which survives a reload, a killed tab and an update of the site. */
import type { DBSchema, IDBPDatabase } from 'idb'
import { openDB } from 'idb'
import type { Art } from '../../paper/index.ts'
import type { PackedStep } from './packing.ts'
import type { EarlierState, Entry, Shelf, Work, Written } from './shelf.ts'

interface Places extends DBSchema {
  entries: { key: string; value: Entry }
  works: { key: string; value: Work }
  /** By dummy. */
  arts: { key: string; value: readonly Art[] }
  /** By dummy and number. */
  steps: { key: [string, number]; value: PackedStep }
  /**
   * By dummy and number of the saving. Each number can be added once: of two tabs that both follow one saving, the second
   * fails as a whole, without a question first that a page which is being left could not wait for.
   */
  savings: { key: [string, number]; value: 1 }
  /** By dummy and time. */
  earlier: { key: [string, number]; value: EarlierState }
}

export const DATABASE = 'hingebook.dummies'

/** The form of the database: raised when a place is added, and `upgrade` then adds it to what is there. */
export const DATABASE_VERSION = 1

const PLACES = ['entries', 'works', 'arts', 'steps', 'savings', 'earlier'] as const

/** So many savings are remembered: a tab that missed more has been told of them. */
const SAVINGS = 5000

/** All of one dummy: every number and time, whatever it is. */
const allOf = (id: string): IDBKeyRange =>
  IDBKeyRange.bound([id, Number.NEGATIVE_INFINITY], [id, Number.POSITIVE_INFINITY])

/** Those of one dummy below a number. */
const below = (id: string, number: number): IDBKeyRange =>
  IDBKeyRange.bound([id, Number.NEGATIVE_INFINITY], [id, number], false, true)

function upgrade(db: IDBPDatabase<Places>, from: number): void {
  if (from < 1) {
    db.createObjectStore('entries', { keyPath: 'id' })
    db.createObjectStore('works', { keyPath: 'id' })
    db.createObjectStore('arts')
    db.createObjectStore('steps')
    db.createObjectStore('savings')
    db.createObjectStore('earlier')
  }
}

/**
 * Opens the database. Rejects with the browser’s own error where there is none, or it may not be used.
 * @param onGone called when the browser, or a newer version of the site in another tab, takes it away
 */
export async function idbShelf(onGone: () => void): Promise<Shelf> {
  const db = await openDB<Places>(DATABASE, DATABASE_VERSION, {
    upgrade: (made, from) => upgrade(made, from),
    blocking() {
      // A newer version of the site waits in another tab: it goes first.
      db.close()
      onGone()
    },
    terminated: onGone,
  })

  /** Asks for all parts of a transaction, and waits for its end: all of them are done, or none. */
  async function together(tx: Ending, parts: readonly (() => Promise<unknown>)[]): Promise<void> {
    const asked = parts.map(async (part) => {
      try {
        await part()
      } catch (error) {
        // What cannot even be asked for does not undo the rest by itself.
        tryTo(() => tx.abort())
        throw error
      }
    })
    // All is asked for: it is done even if the page goes now.
    tryTo(() => tx.commit())
    const ends = await Promise.allSettled([tx.done, ...asked])
    if (ends[0]?.status !== 'rejected') return
    // An aborted transaction often says only that it was: the part that failed says why.
    const reasons = ends.flatMap((end): unknown[] => (end.status === 'rejected' ? [end.reason] : []))
    throw reasons.find((one) => !(one instanceof Error) || one.name !== 'AbortError') ?? reasons[0]
  }

  async function thinOut(id: string, thin: (times: readonly number[]) => readonly number[]): Promise<void> {
    const tx = db.transaction('earlier', 'readwrite')
    const times = (await tx.store.getAllKeys(allOf(id))).map(([, when]) => when)
    await together(
      tx,
      thin(times).map((when) => () => tx.store.delete([id, when])),
    )
  }

  return {
    entries: () => db.getAll('entries'),

    entry: (id) => db.get('entries', id),

    async work(id) {
      const tx = db.transaction(['entries', 'works', 'arts', 'steps'])
      const steps = tx.objectStore('steps')
      const [entry, work, art, keys, values] = await Promise.all([
        tx.objectStore('entries').get(id),
        tx.objectStore('works').get(id),
        tx.objectStore('arts').get(id),
        steps.getAllKeys(allOf(id)),
        steps.getAll(allOf(id)),
        tx.done,
      ])
      return (
        entry && { entry, work, art: art ?? null, steps: keys.map(([, n], k) => [n, values[k]] as const) }
      )
    },

    async write({ entry, work, art, follows, steps, last, earlier, thin }): Promise<Written> {
      const { id } = entry
      const tx = db.transaction(PLACES, 'readwrite')
      const places = {
        steps: tx.objectStore('steps'),
        savings: tx.objectStore('savings'),
        earlier: tx.objectStore('earlier'),
      }
      try {
        await together(tx, [
          () => places.savings.add(1, [id, follows + 1]),
          () => tx.objectStore('entries').put(entry),
          () => tx.objectStore('works').put(work),
          ...(art === undefined ? [] : [() => placedArt(tx.objectStore('arts'), id, art)]),
          () => places.steps.delete(below(id, work.first)),
          () =>
            places.steps.delete(IDBKeyRange.bound([id, last], [id, Number.POSITIVE_INFINITY], true, false)),
          ...steps.map(
            ([n, step]) =>
              () =>
                places.steps.put(step, [id, n]),
          ),
          ...earlier.map((state) => () => places.earlier.put(state, [id, state.when])),
          () => places.savings.delete(below(id, follows - SAVINGS)),
        ])
      } catch (error) {
        if (!(error instanceof Error || error instanceof DOMException) || error.name !== 'ConstraintError')
          throw error
        const there = await db.get('entries', id)
        return { written: false, isGone: !there || (there.gone ?? null) !== null }
      }
      // It is saved: that old states are not yet thinned out is no reason to say otherwise.
      if (earlier.length > 0) await thinOut(id, thin).catch(() => {})
      return { written: true }
    },

    async mark(id, mark) {
      const tx = db.transaction(['entries', 'savings'], 'readwrite')
      const entry = await tx.objectStore('entries').get(id)
      const marked = entry && mark(entry)
      const parts = marked
        ? [
            () => tx.objectStore('entries').put(marked),
            () => tx.objectStore('savings').put(1, [id, marked.rev]),
          ]
        : []
      await together(tx, parts)
      return marked
    },

    earlier: (id) => db.getAll('earlier', allOf(id)),

    async erase(id) {
      const tx = db.transaction(PLACES, 'readwrite')
      await together(tx, [
        () => tx.objectStore('entries').delete(id),
        () => tx.objectStore('works').delete(id),
        () => tx.objectStore('arts').delete(id),
        () => tx.objectStore('steps').delete(allOf(id)),
        () => tx.objectStore('earlier').delete(allOf(id)),
      ])
    },

    close: () => db.close(),
  }
}

/** A place for art, as a transaction has it. */
interface ArtPlace {
  put(art: readonly Art[], id: string): Promise<unknown>
  delete(id: string): Promise<unknown>
}

const placedArt = (place: ArtPlace, id: string, art: readonly Art[] | null): Promise<unknown> =>
  art ? place.put(art, id) : place.delete(id)

/** What a transaction’s end is told by. */
interface Ending {
  readonly done: Promise<void>
  abort(): void
  commit(): void
}

function tryTo(act: () => void): void {
  try {
    act()
  } catch {
    // It has ended already.
  }
}
