// The database is that of the Indexed Database API 3.0 as the package fake-indexeddb has it.
import { IDBFactory, IDBObjectStore } from 'fake-indexeddb'
import 'fake-indexeddb/auto'
import fc from 'fast-check'
import { openDB } from 'idb'
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { parseDesign } from '../../../src/paper/index.ts'
import { nearest, setArt, setTitle } from '../../../src/widgets/keeping/edits.ts'
import { readFileText } from '../../../src/widgets/keeping/file.ts'
import type { History } from '../../../src/widgets/keeping/history.ts'
import { begun, done, present, undone } from '../../../src/widgets/keeping/history.ts'
import { DATABASE, DATABASE_VERSION } from '../../../src/widgets/keeping/idb-shelf.ts'
import type { Clock, Saved, Session } from '../../../src/widgets/keeping/session.ts'
import { looseEntry, SAVE_AFTER, saveOnLeaving, startSession } from '../../../src/widgets/keeping/session.ts'
import type { Outside, Store, TabWord } from '../../../src/widgets/keeping/store.ts'
import { openStore, troubleOf, workText } from '../../../src/widgets/keeping/store.ts'
import { MOST_STATES, STATE_EVERY, thinned } from '../../../src/widgets/keeping/thinning.ts'
import { design, gluedPond, vFold } from '../../paper/shared/designs.ts'
import { kept } from './designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const heron = design([beak, gluedPond])

const slit = (made: Design, cut: number): Design => nearest(made, 'beak', { cut })

const cutTo = (history: History, cut: number, gesture?: string): History =>
  done(history, slit(present(history).design, cut), gesture === undefined ? {} : { gesture })

/** A clock that stands until it is wound on. */
function windable() {
  let now = 1_790_000_000_000
  let due: { at: number; run: () => void }[] = []
  const clock: Clock = {
    now: () => now,
    later(ms, run) {
      const one = { at: now + ms, run }
      due.push(one)
      return () => {
        due = due.filter((other) => other !== one)
      }
    },
  }
  return {
    clock,
    /** Lets so much time go by, and all that falls due in it happen. */
    async wind(ms: number) {
      now += ms
      const ready = due.filter(({ at }) => at <= now)
      due = due.filter(({ at }) => at > now)
      for (const { run } of ready) run()
      await settled()
    },
  }
}

/** Lets the database do all that was asked of it. */
const settled = async (): Promise<void> => {
  for (let k = 0; k < 12; k++) await new Promise((resolve) => setTimeout(resolve, 0))
}

let names = 0
let hearers: ((word: TabWord) => void)[] = []

/** What one tab has around it. Tabs hear one another at once. */
const outside = (clock: Clock): Outside => ({
  now: clock.now,
  id: () => `d${names++}`,
  tabs: {
    say: (word) => {
      for (const hear of [...hearers]) hear(word)
    },
    hear(listen) {
      hearers.push(listen)
      return () => {
        hearers = hearers.filter((one) => one !== listen)
      }
    },
    close: () => {},
  },
})

const { clock, wind } = windable()

const stores: Store[] = []

async function tab(): Promise<Store> {
  const store = await openStore(outside(clock))
  stores.push(store)
  return store
}

beforeEach(() => {
  globalThis.indexedDB = new IDBFactory()
  hearers = []
})

afterEach(() => {
  vi.restoreAllMocks()
  for (const store of stores.splice(0)) store.close()
})

const value = <T>(told: { ok: true; value: T } | { ok: false }): T => {
  if (!told.ok) throw new Error('it was not done')
  return told.value
}

async function opened(store: Store, id: string) {
  const one = await store.open(id)
  if (!one.ok) throw new Error(one.sentence)
  return one
}

async function atWork(store: Store, id: string, seen: Saved[] = []): Promise<Session & { history: History }> {
  const one = await opened(store, id)
  return Object.assign(
    startSession(store, one, clock, (saved) => seen.push(saved)),
    { history: one.history },
  )
}

const full = () => {
  vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(() => {
    throw new DOMException('no room', 'QuotaExceededError')
  })
}

describe('dummies on the shelf', () => {
  test('come back with all that was done to them, from another visit', async () => {
    await fc.assert(
      fc.asyncProperty(
        kept,
        fc.array(fc.integer({ min: 1, max: 90 }), { maxLength: 5 }),
        fc.boolean(),
        async (made, cuts, back) => {
          const store = await tab()
          const { id } = value(await store.create(made, '<svg/>'))
          let history = begun(made)
          for (const cut of cuts)
            history = done(
              history,
              nearest(present(history).design, made.mechanisms[0]?.id ?? '', {
                cut,
                start: cut,
                across: cut,
              }),
            )
          if (back) history = undone(history)
          const session = await atWork(store, id)
          session.put(history)
          await session.close()
          store.close()
          const again = await opened(await tab(), id)
          expect(again.note).toBeUndefined()
          expect(again.history.at).toBe(history.at)
          expect(again.history.steps.map((step) => step.design)).toEqual(
            history.steps.map((step) => step.design),
          )
          expect(again.entry).toMatchObject({ name: made.title, picture: '<svg/>' })
        },
      ),
      { numRuns: 25 },
    )
  })

  test('are listed last changed first, copied, deleted and had back', async () => {
    const store = await tab()
    const first = value(await store.create(heron))
    await wind(1000)
    const second = value(await store.create(setTitle(heron, 'Owl').design))
    expect(value(await store.list()).map(({ name }) => name)).toEqual(['Owl', 'Night garden'])
    await wind(1000)
    const copy = value(await store.duplicate(first.id))
    expect(copy.name).toBe('Night garden, copy')
    expect((await opened(store, copy.id)).history.steps.map(({ label }) => label)).toEqual([
      'begun',
      'copied',
    ])
    await store.remove(second.id)
    expect(value(await store.list()).map(({ id }) => id)).toEqual([copy.id, first.id])
    expect(value(await store.deleted()).map(({ id }) => id)).toEqual([second.id])
    expect(await store.open(second.id)).toEqual({
      ok: false,
      sentence: 'This dummy is not here: it was deleted, or made in another browser.',
    })
    await store.restore(second.id)
    expect((await opened(store, second.id)).entry.name).toBe('Owl')
    await store.remove(second.id)
    await wind(31 * 24 * 3_600_000)
    expect(value(await store.list())).toHaveLength(2)
    expect(value(await store.deleted())).toEqual([])
  })

  test('a long title can be copied', async () => {
    const store = await tab()
    const { id } = value(await store.create({ ...heron, title: '🦉'.repeat(60) }))
    const copy = value(await store.duplicate(id))
    expect((await store.open(copy.id)).ok).toBe(true)
  })

  test('only what is new is written, and what was undone goes', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    let history = session.history
    for (let k = 0; k < 40; k++) history = cutTo(history, 10 + k)
    session.put(history)
    await session.flush()
    const put = vi.spyOn(IDBObjectStore.prototype, 'put')
    history = cutTo(history, 3)
    session.put(history)
    await session.flush()
    // The entry, the dummy and one step.
    expect(put).toHaveBeenCalledTimes(3)
    for (let k = 0; k < 30; k++) history = undone(history)
    history = cutTo(history, 77)
    session.put(history)
    await session.flush()
    const again = await opened(store, id)
    expect(again.history.steps).toHaveLength(13)
    expect(again.history.steps.map((step) => step.design)).toEqual(history.steps.map((step) => step.design))
  })

  test('what is drawn is written when it changes, and gone when it goes', async () => {
    const shape = {
      on: 'page/left',
      shape: [
        [1, 2],
        [3, 4],
        [5, 1],
      ],
      fill: 'rust',
    }
    const drawn = parseDesign({ ...heron, art: [shape] })
    const store = await tab()
    const { id } = value(await store.create(drawn))
    const session = await atWork(store, id)
    const put = vi.spyOn(IDBObjectStore.prototype, 'put')
    const artCalls = () => put.mock.calls.filter(([what]) => Array.isArray(what)).length
    let history = cutTo(session.history, 3)
    session.put(history)
    await session.flush()
    expect(artCalls()).toBe(0)
    expect(present((await opened(store, id)).history).design).toEqual(slit(drawn, 3))
    for (const art of [[...(drawn.art ?? []), ...(drawn.art ?? [])], []]) {
      history = done(history, setArt(present(history).design, art).design)
      session.put(history)
      await session.flush()
      expect(present((await opened(store, id)).history).design.art).toEqual(art)
    }
    expect(artCalls()).toBe(2)
    history = undone(undone(history))
    const { art: _gone, ...bare } = present(history).design
    session.put(done(history, bare, { says: 'bare' }))
    await session.flush()
    expect(present((await opened(store, id)).history).design).toEqual(slit(heron, 3))
  })

  test('the oldest steps may go, and the rest stays whole', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    let history = session.history
    for (let k = 0; k < 60; k++) {
      history = done(history, slit(heron, 10 + k / 2), { most: 3000 })
      session.put(history)
      if (k % 7 === 0) await session.flush()
    }
    await session.close()
    expect(history.dropped).toBeGreaterThan(20)
    const again = await opened(store, id)
    expect(again.note).toBeUndefined()
    expect(again.history.dropped).toBe(history.dropped)
    expect(again.history.steps.map((step) => step.design)).toEqual(history.steps.map((step) => step.design))
  })
})

describe('work at hand', () => {
  test('is saved a quarter of a second after a change, while a drag goes on too', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const seen: Saved[] = []
    const session = await atWork(store, id, seen)
    let history = session.history
    for (let ms = 0; ms < 1000; ms += 50) {
      history = cutTo(history, 20 + ms / 100, 'slit-end')
      session.put(history)
      await wind(50)
    }
    // A tab that is killed here has lost no more than the last stretch of the drag.
    const lost = await opened(await tab(), id)
    const there = (present(lost.history).design.mechanisms[0] as { cut: number }).cut
    expect(there).toBeGreaterThanOrEqual(20 + (950 - SAVE_AFTER) / 100)
    expect(lost.history.steps).toHaveLength(2)
    await wind(SAVE_AFTER)
    expect(session.saved().state).toBe('saved')
    expect(seen[0]).toEqual({ state: 'waiting' })
  })

  test('is saved at once when the page is hidden or left', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    const page = new EventTarget()
    const leaves = Object.assign(new EventTarget(), { visibilityState: 'visible' })
    const stop = saveOnLeaving(session, page, leaves)
    const cutNow = async () =>
      (present((await opened(store, id)).history).design.mechanisms[0] as { cut: number }).cut
    session.put(cutTo(session.history, 11))
    leaves.dispatchEvent(new Event('visibilitychange'))
    await settled()
    expect(await cutNow()).not.toBe(11)
    leaves.visibilityState = 'hidden'
    leaves.dispatchEvent(new Event('visibilitychange'))
    await settled()
    expect(await cutNow()).toBe(11)
    session.put(cutTo(session.history, 12))
    page.dispatchEvent(new Event('pagehide'))
    await settled()
    expect(await cutNow()).toBe(12)
    stop()
    session.put(cutTo(session.history, 13))
    page.dispatchEvent(new Event('pagehide'))
    await settled()
    expect(await cutNow()).toBe(12)
  })

  test('what is saved on leaving is asked for at once, with no answer waited for', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    const put = vi.spyOn(IDBObjectStore.prototype, 'put')
    const commit = vi.spyOn(IDBTransaction.prototype, 'commit')
    session.put(cutTo(session.history, 11))
    void session.flush()
    expect(put).toHaveBeenCalledTimes(4)
    expect(commit).toHaveBeenCalledTimes(1)
    await settled()
  })

  test('on a dummy that is on no shelf yet is saved with its first change, and not before', async () => {
    const store = await tab()
    const session = startSession(store, looseEntry('new', heron, clock.now()), clock)
    await session.flush()
    expect(value(await store.list())).toEqual([])
    session.put(cutTo(begun(heron), 11))
    await wind(SAVE_AFTER)
    const again = await opened(store, 'new')
    expect(again.note).toBeUndefined()
    expect(again.history.steps.map(({ label }) => label)).toEqual(['begun', 'beak: slit 40 to 11'])
    expect(value(await store.earlier('new'))).toEqual([])
  })

  test('its picture is saved along', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    session.draw('<svg id="a"/>')
    await wind(SAVE_AFTER)
    expect(value(await store.list())[0]?.picture).toBe('<svg id="a"/>')
  })

  test('states of before are kept: the one it was opened in, and one every two minutes', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    let history = session.history
    for (let k = 1; k <= 5; k++) {
      await wind(STATE_EVERY / 2)
      history = cutTo(history, 10 + k)
      session.put(history)
      await wind(SAVE_AFTER)
    }
    const states = value(await store.earlier(id))
    expect(states.map((state) => (state.design.mechanisms[0] as { cut: number }).cut)).toEqual([
      14,
      12,
      (heron.mechanisms[0] as { cut: number }).cut,
    ])
    expect(states[0]?.label).toBe('beak: slit 13 to 14')
  })
})

describe('states of before', () => {
  const minute = 60_000
  const day = 24 * 60 * minute

  test('lie farther apart the older they are, and never more than a few', () => {
    let times: number[] = []
    let now = 1_790_000_000_000
    // Three months, two hours of work a day.
    for (let d = 0; d < 90; d++) {
      for (let k = 0; k < 60; k++) {
        now += 2 * minute
        times.push(now)
        const drop = new Set(thinned(times, now))
        times = times.filter((when) => !drop.has(when))
      }
      now += 22 * 60 * minute
    }
    expect(times.length).toBeLessThanOrEqual(MOST_STATES)
    const old = times.filter((when) => now - when > 3 * day && now - when < 59 * day)
    expect(old.length).toBeGreaterThan(50)
    expect(old.length).toBeLessThan(60)
    expect(thinned(times, now + 1)).toEqual(thinned(times, now + 1))
  })

  test('the newest and the oldest stay', () => {
    fc.assert(
      fc.property(fc.array(fc.nat({ max: 100 * day }), { minLength: 1, maxLength: 600 }), (ages) => {
        const now = 1_790_000_000_000
        const times = [...new Set(ages)].map((age) => now - age)
        const drop = new Set(thinned(times, now))
        const stay = times.filter((when) => !drop.has(when))
        expect(stay).toContain(Math.max(...times))
        expect(stay).toContain(Math.min(...times))
        expect(stay.length).toBeLessThanOrEqual(MOST_STATES)
        expect(thinned(stay, now)).toEqual([])
      }),
    )
  })
})

describe('two tabs on one dummy', () => {
  async function both() {
    const one = await tab()
    const two = await tab()
    const { id } = value(await one.create(heron))
    return { id, one, two, first: await atWork(one, id), second: await atWork(two, id) }
  }

  test('the second is told, and writes nothing over the first', async () => {
    const { id, one, first, second } = await both()
    first.put(cutTo(first.history, 11))
    await first.flush()
    expect(second.saved()).toEqual({ state: 'elsewhere', isGone: false, hasMine: false })
    second.put(cutTo(second.history, 22))
    expect(second.saved()).toEqual({ state: 'elsewhere', isGone: false, hasMine: true })
    await second.flush()
    await wind(10_000)
    expect(present((await opened(one, id)).history).label).toBe('beak: slit 40 to 11')
  })

  test('it is so without a way from tab to tab: the saving itself tells', async () => {
    const { first, second } = await both()
    hearers = []
    first.put(cutTo(first.history, 11))
    second.put(cutTo(second.history, 22))
    const [a, b] = await Promise.all([first.flush(), second.flush()])
    expect(a.state).toBe('saved')
    expect(b).toEqual({ state: 'elsewhere', isGone: false, hasMine: true })
  })

  test('a tab that was asleep is told when it is looked at again', async () => {
    const { first, second } = await both()
    hearers = []
    first.put(cutTo(first.history, 11))
    await first.flush()
    expect(second.saved().state).toBe('saved')
    expect((await second.look()).state).toBe('elsewhere')
    expect((await first.look()).state).toBe('saved')
  })

  test('mine can be kept as a dummy of its own', async () => {
    const { id, one, first, second } = await both()
    first.put(cutTo(first.history, 11))
    await first.flush()
    second.put(cutTo(second.history, 22))
    expect((await second.keepMine()).state).toBe('saved')
    expect(second.id()).not.toBe(id)
    expect(present((await opened(one, second.id())).history).label).toBe('beak: slit 40 to 22')
    second.put(cutTo(second.history, 23))
    expect((await second.flush()).state).toBe('saved')
    expect(present((await opened(one, id)).history).label).toBe('beak: slit 40 to 11')
  })

  test('where nobody chose before the page was left, mine becomes a dummy of its own', async () => {
    const { id, one, first, second } = await both()
    const page = new EventTarget()
    saveOnLeaving(second, page, new EventTarget())
    first.put(cutTo(first.history, 11))
    await first.flush()
    page.dispatchEvent(new Event('pagehide'))
    await settled()
    // There was nothing of its own to keep yet.
    expect(value(await one.list())).toHaveLength(1)
    second.put(cutTo(second.history, 22))
    page.dispatchEvent(new Event('pagehide'))
    await settled()
    const all = value(await one.list())
    expect(all).toHaveLength(2)
    const copy = all.find((entry) => entry.id !== id)?.id ?? ''
    expect(present((await opened(one, copy)).history).label).toBe('beak: slit 40 to 22')
    expect(present((await opened(one, id)).history).label).toBe('beak: slit 40 to 11')
  })

  test('or theirs taken', async () => {
    const { id, one, first, second } = await both()
    first.put(cutTo(first.history, 11))
    await first.flush()
    const theirs = await second.takeTheirs()
    if (!theirs.ok) throw new Error(theirs.sentence)
    expect(present(theirs.history).label).toBe('beak: slit 40 to 11')
    second.put(cutTo(theirs.history, 33))
    expect((await second.flush()).state).toBe('saved')
    expect(first.saved().state).toBe('elsewhere')
    expect((await opened(one, id)).history.steps).toHaveLength(3)
  })

  test('deleted in the other tab it is not lost here', async () => {
    const { id, one, second } = await both()
    await one.remove(id)
    expect(second.saved().state).toBe('elsewhere')
    second.put(cutTo(second.history, 22))
    expect((await second.takeTheirs()).ok).toBe(false)
    expect((await second.keepMine()).state).toBe('saved')
    expect(value(await one.list()).map((entry) => entry.id)).toEqual([second.id()])
  })

  test('any saving of many tabs follows the one before it, or is refused', async () => {
    const { id, one } = await both()
    const tabs = await Promise.all(Array.from({ length: 5 }, async () => atWork(await tab(), id)))
    hearers = []
    for (const [k, session] of tabs.entries()) session.put(cutTo(session.history, 10 + k))
    const ends = await Promise.all(tabs.map((session) => session.flush()))
    expect(ends.filter(({ state }) => state === 'saved')).toHaveLength(1)
    expect((await opened(one, id)).entry.rev).toBe(2)
  })
})

describe('where nothing can be stored', () => {
  test('a full storage is told, the work stays, and is saved when there is room again', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    full()
    const history = cutTo(session.history, 11)
    session.put(history)
    await wind(SAVE_AFTER)
    expect(session.saved()).toEqual({
      state: 'unsaved',
      trouble: {
        kind: 'full',
        sentence: 'Not saved: storage is full. Keep a file, or delete dummies you no longer need.',
      },
    })
    expect(readFileText(workText(history))).toEqual({ read: true, design: present(history).design })
    expect((await store.create(heron)).ok).toBe(false)
    vi.restoreAllMocks()
    // What was there before is untouched by what failed.
    expect(present((await opened(store, id)).history).label).toBe('begun')
    await wind(6000)
    expect(session.saved().state).toBe('saved')
    expect(present((await opened(store, id)).history).label).toBe('beak: slit 40 to 11')
  })

  test('a storage that fails half way leaves nothing half written', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    const put = IDBObjectStore.prototype.put
    let count = 0
    vi.spyOn(IDBObjectStore.prototype, 'put').mockImplementation(function (this: IDBObjectStore, ...args) {
      if (++count === 2) this.transaction.abort()
      return put.apply(this, args)
    })
    session.put(cutTo(session.history, 11))
    await wind(SAVE_AFTER)
    expect(session.saved().state).toBe('unsaved')
    vi.restoreAllMocks()
    expect((await opened(store, id)).history.steps).toHaveLength(1)
  })

  test.each([
    ['SecurityError', 'refused'],
    ['InvalidStateError', 'refused'],
    ['QuotaExceededError', 'full'],
    ['VersionError', 'newer'],
  ])('%s is %s, and all goes on in memory', async (name, kind) => {
    const store = await openStore(outside(clock), async () => {
      throw new DOMException('no', name)
    })
    expect(store.memoryOnly?.kind).toBe(kind)
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    session.put(cutTo(session.history, 11))
    await wind(SAVE_AFTER)
    expect(session.saved()).toMatchObject({ state: 'unsaved', trouble: { kind } })
    expect(present((await opened(store, id)).history).label).toBe('beak: slit 40 to 11')
    session.put(cutTo((await opened(store, id)).history, 12))
    await session.close()
    expect((await opened(store, id)).history.steps).toHaveLength(3)
    expect(value(await store.list())).toHaveLength(1)
  })

  test('a browser without a database is told apart', async () => {
    Reflect.deleteProperty(globalThis, 'indexedDB')
    const store = await openStore(outside(clock))
    expect(store.memoryOnly?.kind).toBe('absent')
    expect(troubleOf('odd').kind).toBe('refused')
  })
})

describe('an update of the site', () => {
  test('a newer one that was here leaves its database alone', async () => {
    const newer = await openDB(DATABASE, DATABASE_VERSION + 1, {
      upgrade: (db) => void db.createObjectStore('later'),
    })
    newer.close()
    const store = await tab()
    expect(store.memoryOnly).toEqual({
      kind: 'newer',
      sentence:
        'Not saved: a newer version of this site runs in another tab. Keep a file, then load the page again.',
    })
  })

  test('a newer one in another tab goes first, and the work here is told to be unsaved', async () => {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const session = await atWork(store, id)
    const newer = await openDB(DATABASE, DATABASE_VERSION + 1, {
      upgrade: (db) => void db.createObjectStore('later'),
    })
    session.put(cutTo(session.history, 11))
    await wind(SAVE_AFTER)
    expect(session.saved()).toMatchObject({ state: 'unsaved', trouble: { kind: 'newer' } })
    newer.close()
  })

  /** Lays something on the shelf that this page would not have written. */
  async function overwritten(place: string, what: unknown, key?: IDBValidKey): Promise<string> {
    const store = await tab()
    const { id } = value(await store.create(heron))
    const db = await openDB(DATABASE, DATABASE_VERSION)
    await db.put(
      place,
      typeof what === 'function' ? what(id) : what,
      key === undefined ? undefined : [id, key],
    )
    db.close()
    return id
  }

  test('what a newer page saved is not read, and can be kept', async () => {
    const id = await overwritten('works', (id: string) => ({ id, v: 2, design: heron, at: 0, first: 0 }))
    expect(await (await tab()).open(id)).toEqual({
      ok: false,
      sentence: '“Night garden” was saved by a newer version of this page. Load the page again.',
      text: JSON.stringify(heron),
    })
  })

  test('what an older page left out is filled in', async () => {
    const id = await overwritten('entries', (id: string) => ({
      id,
      name: 'Owl',
      made: 1,
      changed: 1,
      rev: 1,
    }))
    const store = await tab()
    expect(value(await store.list())).toEqual([
      { id, name: 'Owl', made: 1, changed: 1, rev: 1, picture: null, gone: null },
    ])
    expect((await opened(store, id)).history.steps).toHaveLength(1)
  })

  test.each([
    null,
    { label: 'x' },
    { label: 'x', whole: { title: '__proto__' } },
    { label: 3, delta: { art: [[0, 9]] } },
  ])('a step that is spoilt (%j) costs the steps and not the dummy', async (step) => {
    const id = await overwritten('steps', step, 0)
    const again = await opened(await tab(), id)
    expect(present(again.history).design).toEqual(heron)
    expect(again.note).toMatch(/^Its earlier steps could not be read/)
  })

  test('a dummy that is spoilt is told so, and the others open', async () => {
    const id = await overwritten('works', (id: string) => ({
      id,
      v: 1,
      design: { hingebook: 1 },
      at: 0,
      first: 0,
    }))
    const store = await tab()
    expect(await store.open(id)).toMatchObject({
      ok: false,
      sentence: '“Night garden” cannot be read. title must be 1 to 120 characters, not left out.',
    })
    expect((await opened(store, value(await store.create(heron)).id)).entry.name).toBe('Night garden')
  })
})
