/** Several dummies, kept by the browser; where it does not keep them, in memory, and that is said. */
import * as stepSays from '../../../content/words/keeping/steps.ts'
import * as says from '../../../content/words/keeping/store.ts'
import type { Design } from '../../paper/index.ts'
import { parseDesign } from '../../paper/index.ts'
import { fileText } from './file-text.ts'
import type { History } from './history.ts'
import { begun, done, present } from './history.ts'
import { idbShelf } from './idb-shelf.ts'
import { PACKED, packedStep, unpacked } from './packing.ts'
import type { EarlierState, Entry, Lying, Shelf, Work, Writing } from './shelf.ts'
import { memoryShelf, WORK_VERSION } from './shelf.ts'
import { thinned } from './thinning.ts'

/** Why nothing could be saved. The work goes on in memory, and can be kept as a file. */
export interface Trouble {
  readonly kind: 'full' | 'refused' | 'absent' | 'newer'
  readonly sentence: string
}

const trouble = (kind: Trouble['kind']): Trouble => ({ kind, sentence: says.notSaved[kind] })

/** What a browser’s error means for the maker. Names by the Indexed Database API 3.0 and Web IDL. */
export function troubleOf(error: unknown): Trouble {
  const name = error instanceof Error || error instanceof DOMException ? error.name : ''
  if (name === 'QuotaExceededError') return trouble('full')
  if (name === 'VersionError') return trouble('newer')
  return trouble(name === 'ReferenceError' || name === 'TypeError' ? 'absent' : 'refused')
}

export type Told<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly trouble: Trouble }

/** What the store takes from outside. */
export interface Outside {
  /** Milliseconds since 1970. */
  now(): number
  /** A name that nothing else has. */
  id(): string
  /** To and from the other tabs; null where there is no such thing. */
  readonly tabs: Tabs | null
}

/** What tabs say to one another: which dummy was saved, for which time, by whom. */
export interface TabWord {
  readonly id: string
  readonly rev: number
  readonly tab: string
}

export interface Tabs {
  say(word: TabWord): void
  /** Returns what ends it. */
  hear(listen: (word: TabWord) => void): () => void
  close(): void
}

export type Opened =
  | {
      readonly ok: true
      readonly entry: Entry
      readonly history: History
      /** What the maker should know: that older steps could not be read. */
      readonly note?: string
    }
  /** `text`: what lies there, to be kept as a file. */
  | { readonly ok: false; readonly sentence: string; readonly text?: string }

export interface Saving {
  readonly id: string
  readonly history: History
  /** What was last saved: only what is new since then is written. */
  readonly saved: History | null
  readonly entry: Entry | null
  readonly picture?: string | undefined
  readonly earlier?: readonly EarlierState[]
}

/** `elsewhere`: another tab saved it in between, and nothing was written. */
export type Save =
  | { readonly kind: 'saved'; readonly entry: Entry }
  | { readonly kind: 'elsewhere'; readonly isGone: boolean }
  /** `entry`: it is kept as long as the page is. */
  | { readonly kind: 'unsaved'; readonly trouble: Trouble; readonly entry?: Entry }

export interface Store {
  /** Why all of this lasts only as long as the page; null if it is kept. */
  readonly memoryOnly: Trouble | null
  /** What is there, last changed first. */
  list(): Promise<Told<readonly Entry[]>>
  /** What was deleted and can be had back, last deleted first. */
  deleted(): Promise<Told<readonly Entry[]>>
  open(id: string): Promise<Opened>
  /** The number of its last saving; null where it is not there. */
  revOf(id: string): Promise<Told<number | null>>
  save(saving: Saving): Promise<Save>
  /** A new dummy that begins with this design, or with these steps. */
  create(from: Design | History, picture?: string): Promise<Told<Entry>>
  duplicate(id: string): Promise<Told<Entry>>
  /** Takes it off the list; `restore` brings it back for 30 days. */
  remove(id: string): Promise<Told<Entry | undefined>>
  restore(id: string): Promise<Told<Entry | undefined>>
  /** States of before, newest first. */
  earlier(id: string): Promise<Told<readonly EarlierState[]>>
  /** What other tabs save. Returns what ends it. */
  hear(listen: (word: TabWord) => void): () => void
  close(): void
}

/** What was deleted can be had back for so long, ms. */
const KEPT_DELETED = 30 * 24 * 3_600_000

const MOST_TITLE = 120

/** What the browser holds may be of an older page, or half written: read as a file is. */
const whole = (entry: Entry): Entry => ({
  ...entry,
  picture: entry.picture ?? null,
  gone: entry.gone ?? null,
})

function isWork(value: unknown): value is Work {
  return typeof value === 'object' && value !== null && 'design' in value && 'v' in value
}

function openedFrom({ entry, work, art, steps }: Lying): Opened {
  if (!isWork(work)) return { ok: false, sentence: says.notWhole(entry.name) }
  const lying = { ...work.design, ...(art ? { art } : {}) }
  if (work.v > WORK_VERSION)
    return {
      ok: false,
      sentence: says.savedByNewer(entry.name),
      text: JSON.stringify(lying),
    }
  let design: Design
  try {
    design = parseDesign(lying)
  } catch (error) {
    const reason = error instanceof Error ? error.message : ''
    return {
      ok: false,
      sentence: says.cannotRead(entry.name, reason),
      text: JSON.stringify(lying),
    }
  }
  const kept = steps.filter(([n]) => n >= work.first)
  const isUnbroken = kept.every(([n], k) => n === work.first + k)
  const history = isUnbroken
    ? unpacked({
        v: PACKED,
        at: work.at - work.first,
        dropped: work.first,
        steps: kept.map(([, step]) => step),
      })
    : null
  if (history && JSON.stringify(parseDesign(present(history).design)) === JSON.stringify(design))
    return { ok: true, entry: whole(entry), history }
  return {
    ok: true,
    entry: whole(entry),
    history: begun(design, stepSays.opened),
    note: says.stepsLost,
  }
}

/** The first step that was not written as it is now, by its place in the history. */
function firstNew(history: History, saved: History | null): number {
  if (!saved) return 0
  const shift = history.dropped - saved.dropped
  const k = history.steps.findIndex((step, at) => {
    const was = saved.steps[at + shift]
    return was?.design !== step.design || was.label !== step.label || was.aside !== step.aside
  })
  return k < 0 ? history.steps.length : k
}

function writingOf(saving: Saving, outside: Outside): Writing {
  const { id, history, saved, entry, picture, earlier = [] } = saving
  const { design } = present(history)
  const { art, ...plain } = design
  const now = outside.now()
  const from = firstNew(history, saved)
  const places = history.steps.map((_, k) => k).filter((k) => k >= from)
  // The oldest step holds its whole design: it is written again when the ones before it go.
  if (saved && saved.dropped !== history.dropped && from > 0) places.unshift(0)
  return {
    entry: {
      id,
      name: design.title,
      made: entry?.made ?? now,
      changed: now,
      rev: (entry?.rev ?? 0) + 1,
      picture: picture ?? entry?.picture ?? null,
      gone: null,
    },
    ...(saved && present(saved).design.art === art ? {} : { art: art ?? null }),
    work: { id, v: WORK_VERSION, design: plain, at: history.dropped + history.at, first: history.dropped },
    follows: entry?.rev ?? 0,
    steps: places.map((k) => {
      const step = history.steps[k] as History['steps'][number]
      return [history.dropped + k, packedStep(step, history.steps[k - 1])] as const
    }),
    last: history.dropped + history.steps.length - 1,
    earlier,
    thin: (times) => thinned(times, now),
  }
}

/** A copy’s title: told apart, and no longer than a title may be. */
const copyTitle = (title: string): string =>
  stepSays.copyOf(
    [...title]
      .slice(0, MOST_TITLE - 20)
      .join('')
      .slice(0, MOST_TITLE - 6),
  )

/** Opens the store. It never rejects: without storage it holds all in memory, and says why. */
export async function openStore(
  outside: Outside,
  openShelf: (onGone: () => void) => Promise<Shelf> = idbShelf,
): Promise<Store> {
  let shelf: Shelf
  let memoryOnly: Trouble | null = null
  /** Set when the browser takes an opened shelf away. */
  let lost: Trouble | null = null
  try {
    shelf = await openShelf(() => {
      lost = trouble('newer')
    })
  } catch (error) {
    shelf = memoryShelf()
    memoryOnly = troubleOf(error)
  }
  const tab = outside.id()
  const listeners = new Set<(word: TabWord) => void>()
  const deaf = outside.tabs?.hear((word) => {
    if (word.tab !== tab) for (const listen of listeners) listen(word)
  })
  const say = ({ id, rev }: Entry): void => outside.tabs?.say({ id, rev, tab })

  const told = async <T>(act: () => Promise<T>): Promise<Told<T>> => {
    try {
      return { ok: true, value: await act() }
    } catch (error) {
      return { ok: false, trouble: lost ?? troubleOf(error) }
    }
  }

  const marked = (id: string, gone: number | null): Promise<Told<Entry | undefined>> =>
    told(async () => {
      const entry = await shelf.mark(id, (one) => ({ ...whole(one), gone, rev: one.rev + 1 }))
      if (entry) say(entry)
      return entry
    })

  async function save(saving: Saving): Promise<Save> {
    const writing = writingOf(saving, outside)
    const result = await told(() => shelf.write(writing))
    if (!result.ok) return { kind: 'unsaved', trouble: result.trouble }
    if (!result.value.written) return { kind: 'elsewhere', isGone: result.value.isGone }
    say(writing.entry)
    const { entry } = writing
    return memoryOnly ? { kind: 'unsaved', trouble: memoryOnly, entry } : { kind: 'saved', entry }
  }

  async function create(from: Design | History, picture?: string): Promise<Told<Entry>> {
    const history = 'steps' in from ? from : begun(from)
    const writing = writingOf({ id: outside.id(), history, saved: null, entry: null, picture }, outside)
    return told(async () => {
      await shelf.write(writing)
      say(writing.entry)
      return writing.entry
    })
  }

  async function open(id: string): Promise<Opened> {
    const found = await told(() => shelf.work(id))
    if (!found.ok) return { ok: false, sentence: found.trouble.sentence }
    if (!found.value || found.value.entry.gone) return { ok: false, sentence: says.notHere }
    return openedFrom(found.value)
  }

  return {
    memoryOnly,
    save,
    create,
    open,
    revOf: (id) => told(async () => (await shelf.entry(id))?.rev ?? null),
    list: () =>
      told(async () => {
        const all = (await shelf.entries()).map(whole)
        const late = all.filter(({ gone }) => gone !== null && outside.now() - gone > KEPT_DELETED)
        for (const { id } of late) await shelf.erase(id)
        return all.filter(({ gone }) => gone === null).sort((a, b) => b.changed - a.changed)
      }),
    deleted: () =>
      told(async () =>
        (await shelf.entries())
          .map(whole)
          .filter(({ gone }) => gone !== null)
          .sort((a, b) => (b.gone ?? 0) - (a.gone ?? 0)),
      ),
    async duplicate(id) {
      const opened = await open(id)
      if (!opened.ok) return { ok: false, trouble: { kind: 'refused', sentence: opened.sentence } }
      const { design } = present(opened.history)
      const copy = done(
        opened.history,
        { ...design, title: copyTitle(design.title) },
        { says: stepSays.dummyCopied },
      )
      return create(copy, opened.entry.picture ?? undefined)
    },
    remove: (id) => marked(id, outside.now()),
    restore: (id) => marked(id, null),
    earlier: (id) => told(async () => [...(await shelf.earlier(id))].sort((a, b) => b.when - a.when)),
    hear(listen) {
      listeners.add(listen)
      return () => void listeners.delete(listen)
    },
    close() {
      deaf?.()
      outside.tabs?.close()
      shelf.close()
    },
  }
}

/** The text of a dummy’s file: what is kept where nothing can be saved. */
export const workText = (history: History): string => fileText(present(history).design)
