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
  /** By dummy and time. */
  earlier: { key: [string, number]; value: EarlierState }
}

export const DATABASE = 'hingebook.dummies'

/** The form of the database: raised when a place is added, and `upgrade` then adds it to what is there. */
export const DATABASE_VERSION = 1

const PLACES = ['entries', 'works', 'arts', 'steps', 'earlier'] as const

/** All of one dummy: every number and time, whatever it is. */
const allOf = (id: string): IDBKeyRange =>
  IDBKeyRange.bound([id, Number.NEGATIVE_INFINITY], [id, Number.POSITIVE_INFINITY])

function upgrade(db: IDBPDatabase<Places>, from: number): void {
  if (from < 1) {
    db.createObjectStore('entries', { keyPath: 'id' })
    db.createObjectStore('works', { keyPath: 'id' })
    db.createObjectStore('arts')
    db.createObjectStore('steps')
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
    const [end, ...rest] = await Promise.allSettled([tx.done, ...asked])
    const failed = rest.find((one) => one.status === 'rejected')
    // An aborted transaction often says only that it was: the part that failed says why.
    if (end?.status === 'rejected') throw failed?.status === 'rejected' ? failed.reason : end.reason
  }

  return {
    entries: () => db.getAll('entries'),

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
      const tx = db.transaction(PLACES, 'readwrite')
      const places = { steps: tx.objectStore('steps'), earlier: tx.objectStore('earlier') }
      const [there, states] = await Promise.all([
        tx.objectStore('entries').get(entry.id),
        places.earlier.getAllKeys(allOf(entry.id)),
      ])
      const rev = there?.rev ?? 0
      if (rev !== follows) {
        await tx.done
        return { written: false, rev }
      }
      const times = [...new Set([...states.map(([, when]) => when), ...earlier.map(({ when }) => when)])]
      await together(tx, [
        () => tx.objectStore('entries').put(entry),
        () => tx.objectStore('works').put(work),
        ...(art === undefined ? [] : [() => placedArt(tx.objectStore('arts'), entry.id, art)]),
        () =>
          places.steps.delete(
            IDBKeyRange.bound([entry.id, Number.NEGATIVE_INFINITY], [entry.id, work.first], false, true),
          ),
        () =>
          places.steps.delete(
            IDBKeyRange.bound([entry.id, last], [entry.id, Number.POSITIVE_INFINITY], true, false),
          ),
        ...steps.map(
          ([n, step]) =>
            () =>
              places.steps.put(step, [entry.id, n]),
        ),
        ...earlier.map((state) => () => places.earlier.put(state, [entry.id, state.when])),
        ...thin(times).map((when) => () => places.earlier.delete([entry.id, when])),
      ])
      return { written: true }
    },

    async mark(id, mark) {
      const tx = db.transaction('entries', 'readwrite')
      const entry = await tx.store.get(id)
      const marked = entry && mark(entry)
      await together(tx, marked ? [() => tx.store.put(marked)] : [])
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
}

function tryTo(act: () => void): void {
  try {
    act()
  } catch {
    // It has ended already.
  }
}
