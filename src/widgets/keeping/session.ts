/** One dummy that is being worked on: saved a moment after each change, and at once when the page is left. */
import type { Design } from '../../paper/index.ts'
import type { History } from './history.ts'
import { begun, present } from './history.ts'
import type { EarlierState, Entry } from './shelf.ts'
import type { Opened, Store, Trouble } from './store.ts'
import { STATE_EVERY } from './thinning.ts'

/** How it stands with the work. */
export type Saved =
  | { readonly state: 'saved'; readonly when: number }
  /** Changed, and not yet saved. */
  | { readonly state: 'waiting' }
  /** It could not be saved; it is here as long as the page is. */
  | { readonly state: 'unsaved'; readonly trouble: Trouble }
  /**
   * Another tab saved or deleted it: nothing more is written until the maker has chosen. `hasMine`: there are changes
   * of this tab that the other does not have.
   */
  | { readonly state: 'elsewhere'; readonly isGone: boolean; readonly hasMine: boolean }

/** What a session takes from outside. */
export interface Clock {
  now(): number
  /** Runs something later. Returns what calls it off. */
  later(ms: number, run: () => void): () => void
}

export interface Session {
  /** It changes when mine is kept as a copy. */
  id(): string
  saved(): Saved
  /** Takes over what was done; it is saved within a quarter of a second. */
  put(history: History): void
  /** Takes over a small picture, SVG text, which is saved along with the next change. */
  draw(picture: string): void
  /** Asks whether another tab saved it meanwhile: when the page is looked at again. */
  look(): Promise<Saved>
  /** Saves now what is not saved. Where nothing is being saved, all is asked for before it returns. */
  flush(): Promise<Saved>
  /** Where it was changed elsewhere: goes on with mine as a dummy of its own. */
  keepMine(): Promise<Saved>
  /** Where it was changed elsewhere: gives theirs, and goes on with it. */
  takeTheirs(): Promise<Opened>
  /** Saves now, for good: where it was changed elsewhere and nobody chose, mine becomes a dummy of its own. */
  leave(): Promise<Saved>
  /** The same, and hears no more of other tabs. */
  close(): Promise<Saved>
}

/** A change is saved so soon after it, ms; a drag that goes on is saved so often. */
export const SAVE_AFTER = 250

/** After a saving that failed the next try comes so much later, ms. */
const TRY_AGAIN = 5000

/** Works on a dummy that was opened. `onSaved` is called whenever it stands otherwise with it. */
export function startSession(
  store: Store,
  { entry: first, history: begin }: { readonly entry: Entry; readonly history: History },
  clock: Clock,
  onSaved: (saved: Saved) => void = () => {},
): Session {
  let entry: Entry = first
  let history = begin
  /** What lies on the shelf; null for a dummy that is on none yet. */
  let written: History | null = first.rev === 0 ? null : begin
  let picture: string | undefined
  let wanted = false
  let saved: Saved = { state: 'saved', when: first.changed }
  let running: Promise<void> | null = null
  let callOff: (() => void) | null = null
  /** Since when there was no state to go back to. */
  let lastState = first.changed
  /** The dummy as it was before this session, kept with its first change. */
  let before: EarlierState | null = first.rev === 0 ? null : stateOf(first.id, begin, first.changed)

  const set = (next: Saved): void => {
    saved = next
    onSaved(next)
  }

  const hasMine = (): boolean => history !== (written ?? begin)

  const cancel = (): void => {
    callOff?.()
    callOff = null
  }

  function plan(ms: number): void {
    if (callOff || saved.state === 'elsewhere') return
    callOff = clock.later(ms, () => {
      callOff = null
      void flush()
    })
  }

  /** States to keep beside this saving. */
  function states(now: number): EarlierState[] {
    const due = now - lastState >= STATE_EVERY ? [stateOf(entry.id, history, now)] : []
    return [...(before ? [before] : []), ...due]
  }

  async function write(): Promise<void> {
    const [mine, drawn, now] = [history, picture, clock.now()]
    const earlier = states(now)
    wanted = false
    const result = await store.save({
      id: entry.id,
      history: mine,
      saved: written,
      entry,
      picture: drawn,
      earlier,
    })
    if (result.kind === 'elsewhere') {
      set({ state: 'elsewhere', isGone: result.isGone, hasMine: hasMine() })
      return
    }
    if (result.entry) {
      entry = result.entry
      written = mine
      before = null
      if (picture === drawn) picture = undefined
      if (earlier.some(({ when }) => when === now)) lastState = now
    }
    if (result.kind === 'unsaved') {
      set({ state: 'unsaved', trouble: result.trouble })
      if (!result.entry) {
        wanted = true
        plan(TRY_AGAIN)
      }
    } else set(hasMine() ? { state: 'waiting' } : { state: 'saved', when: entry.changed })
  }

  /** One saving after the other: each must know the one before. */
  async function flush(): Promise<Saved> {
    cancel()
    while (running) await running
    if (saved.state !== 'elsewhere' && (wanted || hasMine())) {
      running = write().finally(() => {
        running = null
      })
      await running
    }
    return saved
  }

  async function keepMine(): Promise<Saved> {
    cancel()
    while (running) await running
    const made = await store.create(history, picture ?? entry.picture ?? undefined)
    if (!made.ok) {
      onSaved({ state: 'unsaved', trouble: made.trouble })
      return { state: 'unsaved', trouble: made.trouble }
    }
    entry = made.value
    written = history
    before = null
    lastState = entry.changed
    set({ state: 'saved', when: entry.changed })
    return saved
  }

  /** Saves what there is; where another tab has the dummy, mine as one of its own: nobody is left to ask. */
  const leave = (): Promise<Saved> => (saved.state === 'elsewhere' && hasMine() ? keepMine() : flush())

  /** Takes note of a saving that is not ours. */
  function overtaken(rev: number | null): void {
    if (rev === null || rev <= entry.rev || saved.state === 'elsewhere') return
    cancel()
    set({ state: 'elsewhere', isGone: false, hasMine: hasMine() })
  }

  const deaf = store.hear(({ id, rev }) => {
    if (id === entry.id) overtaken(rev)
  })

  return {
    id: () => entry.id,
    saved: () => saved,
    put(next) {
      if (next === history) return
      history = next
      if (saved.state === 'elsewhere') {
        if (!saved.hasMine) set({ ...saved, hasMine: true })
        return
      }
      if (saved.state === 'saved') set({ state: 'waiting' })
      plan(SAVE_AFTER)
    },
    draw(next) {
      picture = next
      wanted = true
      plan(SAVE_AFTER)
    },
    flush,
    async look() {
      while (running) await running
      const { id } = entry
      const there = await store.revOf(id)
      if (there.ok && id === entry.id && !running) overtaken(there.value)
      return saved
    },
    keepMine,
    async takeTheirs() {
      cancel()
      if (running) await running
      const opened = await store.open(entry.id)
      if (!opened.ok) return opened
      entry = opened.entry
      history = written = opened.history
      wanted = false
      before = stateOf(entry.id, history, entry.changed)
      set({ state: 'saved', when: entry.changed })
      return opened
    },
    leave,
    async close() {
      const last = await leave()
      cancel()
      deaf()
      return last
    },
  }
}

function stateOf(id: string, history: History, when: number): EarlierState {
  const { design, label } = present(history)
  return { id, when, label, design }
}

/** A dummy that could not be put on any shelf is worked on all the same. */
export const looseEntry = (id: string, design: Design, now: number): { entry: Entry; history: History } => ({
  entry: { id, name: design.title, made: now, changed: now, rev: 0, picture: null, gone: null },
  history: begun(design),
})

/** What a page tells of being left. */
interface Leaving {
  addEventListener(type: string, listen: () => void): void
  removeEventListener(type: string, listen: () => void): void
}

/** Saves at once when the page is hidden or left, and looks for other tabs when it is seen again. Returns what ends it. */
export function saveOnLeaving(
  session: Session,
  page: Leaving,
  leaves: Leaving & { visibilityState?: string },
): () => void {
  const left = () => void session.leave()
  const hidden = () => {
    if (leaves.visibilityState === 'hidden') void session.flush()
    else void session.look()
  }
  page.addEventListener('pagehide', left)
  leaves.addEventListener('visibilitychange', hidden)
  return () => {
    page.removeEventListener('pagehide', left)
    leaves.removeEventListener('visibilitychange', hidden)
  }
}
