import type { Signal } from '@preact/signals'
import { effect, signal } from '@preact/signals'
import * as says from '../../../../content/words/dummy/model.ts'
import { toSvg } from '../../../drawing/pen/svg.ts'
import { view } from '../../../drawing/view/view.ts'
import type { Design } from '../../../paper/index.ts'
import type { FileRead } from '../../keeping/file.ts'
import { openDropped, openPasted } from '../../keeping/file.ts'
import { fromGarden } from '../../keeping/from-garden.ts'
import type { History } from '../../keeping/history.ts'
import { begun, present } from '../../keeping/history.ts'
import { carriesDesign, readLink } from '../../keeping/link.ts'
import { browserClock, browserOutside } from '../../keeping/outside.ts'
import type { Saved, Session } from '../../keeping/session.ts'
import { looseEntry, saveOnLeaving, startSession } from '../../keeping/session.ts'
import type { EarlierState, Entry } from '../../keeping/shelf.ts'
import type { Store } from '../../keeping/store.ts'
import { openStore } from '../../keeping/store.ts'
import { wayBack } from '../../keeping/take.ts'
import { keepWord, recall } from '../../model/page.ts'
import type { Dummy } from './dummy-model.ts'
import { EMPTY, emptyBeside } from './empty.ts'
import { depthsOf, followed } from './follow.ts'

/** What the device remembers of which dummy was on the table last. */
const LAST = 'dummy'

/** The card has rested so long when its small picture is drawn, ms. */
const DRAWN_AFTER = 1500

const PICTURE = { width: 240, height: 160 } as const

/** The shelf with all dummies, and the one on the table. */
export interface Work {
  readonly saved: Signal<Saved | null>
  readonly history: Signal<History>
  /** Everything on the shelf, and what was deleted and can be had back; null until it was looked at. */
  readonly entries: Signal<readonly Entry[] | null>
  readonly deleted: Signal<readonly Entry[]>
  /** The one deleted last on this visit, until it is brought back. */
  readonly gone: Signal<Entry | null>
  readonly earlier: Signal<readonly EarlierState[]>
  /** A sentence about what could not be done; empty: nothing. */
  readonly trouble: Signal<string>
  /** Where the design on the table was taken from; null: it was begun here. */
  readonly back: Signal<string | null>
  id(): string
  look(): Promise<void>
  open(id: string): Promise<void>
  /** A new dummy that begins with an empty card; the one on the table stays on the shelf. */
  beginEmpty(): Promise<void>
  take(read: FileRead): Promise<void>
  duplicate(id: string): Promise<void>
  remove(id: string): Promise<void>
  restore(id: string): Promise<void>
  keepMine(): Promise<void>
  takeTheirs(): Promise<void>
  end(): void
}

/** A dummy's small picture for the shelf. */
const pictureOf = (design: Design): string =>
  toSvg(view(design, 100, { turn: -24, tilt: 34, far: 1.7 }, PICTURE, { moving: true, frame: [94, 106] }), {
    digits: 1,
  })

/** Takes care of the work on a dummy: nothing is lost when the page is left, and other dummies can be had. */
export async function workOn(dummy: Dummy): Promise<Work> {
  const { bench } = dummy
  const store: Store = await openStore(browserOutside())
  const saved = signal<Saved | null>(null)
  const history = signal<History>(begun(EMPTY))
  const entries = signal<readonly Entry[] | null>(null)
  const deleted = signal<readonly Entry[]>([])
  const gone = signal<Entry | null>(null)
  const earlier = signal<readonly EarlierState[]>([])
  const trouble = signal('')
  const back = signal<string | null>(null)
  let session: Session | null = null
  let stopLeaving = () => {}
  let drawing: ReturnType<typeof setTimeout> | undefined

  const sit = async (opened: { readonly entry: Entry; readonly history: History }) => {
    stopLeaving()
    // A small picture of what lay there must not come to what lies there next.
    clearTimeout(drawing)
    const before = session
    // What is on the table goes on the shelf first.
    if (before) await before.close()
    session = startSession(store, opened, browserClock, (next) => {
      saved.value = next
      // Who looks at the shelf sees what comes on it.
      if (next.state === 'saved' && dummy.slip.peek() === 'saved') void look()
    })
    stopLeaving = saveOnLeaving(session, window, document)
    keepWord(LAST, opened.entry.id)
    saved.value = opened.entry.rev === 0 ? null : session.saved()
    history.value = opened.history
    // Who asked for the shelf before it was known what lies there wants it still.
    const asked = before === null && dummy.slip.peek() === 'saved'
    dummy.lay(opened.history)
    if (asked) dummy.slip.value = 'saved'
  }

  const open = async (id: string): Promise<boolean> => {
    const opened = await store.open(id)
    if (!opened.ok) {
      trouble.value = opened.sentence
      return false
    }
    trouble.value = opened.note ?? ''
    await sit(opened)
    return true
  }

  const begin = async (design: Design) => {
    const made = await store.create(design)
    if (made.ok) return void (await open(made.value.id))
    trouble.value = made.trouble.sentence
    await sit(looseEntry(crypto.randomUUID(), design, Date.now()))
  }

  const look = async () => {
    const [all, gone] = await Promise.all([store.list(), store.deleted()])
    if (all.ok) entries.value = all.value
    else trouble.value = all.trouble.sentence
    if (gone.ok) deleted.value = gone.value
    const states = session ? await store.earlier(session.id()) : null
    if (states?.ok) earlier.value = states.value
  }

  /** An empty card that is called as no other here, nor as what can be had back. */
  const anotherEmpty = async (): Promise<Design> => {
    const lists = await Promise.all([store.list(), store.deleted()])
    return emptyBeside(lists.flatMap((list) => (list.ok ? list.value.map(({ name }) => name) : [])))
  }

  const take = async (read: FileRead) => {
    // What is on the table stays as it is where a file cannot be read.
    if (!read.read) {
      trouble.value = read.sentence
      dummy.told.value = read.sentence
      return
    }
    trouble.value = ''
    await begin(read.design)
    dummy.told.value = says.onTable(read.design.title)
  }

  /** The address is taken over once: what is done then belongs to the dummy, not to the link. */
  const openLink = async (): Promise<boolean> => {
    const { hash, pathname, search } = location
    const asked = carriesDesign(hash)
      ? { read: await readLink(hash), back: wayBack(hash) }
      : await fromGarden(search)
    if (!asked) return false
    back.value = asked.back
    window.history.replaceState(window.history.state, '', pathname)
    await take(asked.read)
    return asked.read.read
  }

  const start = async () => {
    if (await openLink()) return
    // What could not be taken is told, whatever comes on the table in its place.
    const refused = trouble.peek()
    const last = recall(LAST)
    const all = await store.list()
    if (all.ok) entries.value = all.value
    const there = all.ok ? (all.value.find(({ id }) => id === last) ?? all.value[0]) : undefined
    if (there && (await open(there.id))) {
      if (refused !== '') trouble.value = refused
      return
    }
    await sit(looseEntry(crypto.randomUUID(), await anotherEmpty(), Date.now()))
    if (store.memoryOnly) trouble.value = store.memoryOnly.sentence
  }
  await start()

  let depths = depthsOf(dummy.past.peek())
  const stops = [
    effect(() => {
      const past = dummy.past.value
      const { aside } = dummy
      const state = { design: bench.design.value, aside: aside.value }
      const now = depthsOf(past)
      const next = followed(history.peek(), depths, now, state)
      depths = now
      if (next === history.peek()) return
      history.value = next
      session?.put(next)
      clearTimeout(drawing)
      drawing = setTimeout(() => session?.draw(pictureOf(present(history.peek()).design)), DRAWN_AFTER)
    }),
    openDropped(document, (read) => void take(read)),
    openPasted(document, (read) => void take(read)),
  ]
  const onHash = () => void openLink()
  addEventListener('hashchange', onHash)

  const act = async (
    told: Promise<{ readonly ok: boolean; readonly trouble?: { readonly sentence: string } }>,
  ) => {
    const { ok, trouble: why } = await told
    if (!ok) trouble.value = why?.sentence ?? ''
    await look()
  }

  return {
    saved,
    history,
    entries,
    deleted,
    gone,
    earlier,
    trouble,
    back,
    id: () => session?.id() ?? '',
    look,
    open: async (id) => void (await open(id)),
    beginEmpty: async () => begin(await anotherEmpty()),
    take,
    duplicate: (id) => act(store.duplicate(id)),
    async remove(id) {
      const onTable = id === session?.id()
      if (onTable) await session?.flush()
      await act(store.remove(id))
      gone.value = deleted.peek().find((entry) => entry.id === id) ?? null
      if (!onTable) return
      const other = entries.peek()?.[0]
      if (other) await open(other.id)
      // An empty card that nobody asked for comes on the shelf with its first part.
      else await sit(looseEntry(crypto.randomUUID(), await anotherEmpty(), Date.now()))
      // Another card lies there all at once: what happened, and the way back, stay in sight.
      dummy.slip.value = 'saved'
      await look()
    },
    async restore(id) {
      await act(store.restore(id))
      if (gone.peek()?.id === id) gone.value = null
    },
    async keepMine() {
      if (session) saved.value = await session.keepMine()
    },
    async takeTheirs() {
      const opened = await session?.takeTheirs()
      if (!opened) return
      if (!opened.ok) {
        trouble.value = opened.sentence
        return
      }
      history.value = opened.history
      dummy.lay(opened.history)
    },
    end() {
      clearTimeout(drawing)
      for (const stop of stops) stop()
      removeEventListener('hashchange', onHash)
      stopLeaving()
      void session?.close()
      store.close()
    },
  }
}
