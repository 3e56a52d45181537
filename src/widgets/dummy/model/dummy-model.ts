import type { ReadonlySignal, Signal } from '@preact/signals'
import { batch, computed, signal } from '@preact/signals'
import * as says from '../../../../content/words/dummy/model.ts'
import type { Design, Wish } from '../../../paper/index.ts'
import { nameOf } from '../../../paper/index.ts'
import { asideThere, asideWith, NOTHING_ASIDE, pinsOf, sameAside, touchedLock } from '../../keeping/aside.ts'
import type { History } from '../../keeping/history.ts'
import { present } from '../../keeping/history.ts'
import { asideWords, stepWords } from '../../keeping/words.ts'
import type { Bench } from '../../model/bench-model.ts'
import { benchOn } from '../../model/bench-model.ts'
import type { Frames } from '../../model/frames.ts'
import type { FigureName } from '../../state/config.ts'
import { large } from '../../state/format.ts'
import { withinReach } from '../../state/opening.ts'
import type { Past } from '../../state/past.ts'
import { NO_PAST } from '../../state/past.ts'
import type { Aside, BenchState } from '../../state/state.ts'
import { startState } from '../../state/state.ts'
import { benchInSight, withPick } from './bench-in-sight.ts'
import type { Chosen } from './chosen.ts'
import { configFor, isThere, ownerOf } from './chosen.ts'
import { pastOf } from './follow.ts'
import { firstWish } from './wishes.ts'

/** The slip of paper that lies beside the card: one at a time. */
export type SlipName = 'begin' | 'offers' | 'pieces' | 'wish' | 'mend' | 'card' | 'keys' | 'saved'

/** A white dummy on the table: the card, what is taken up of it, and what is asked about it. */
export interface Dummy {
  readonly bench: Bench
  /** What can be undone. */
  readonly past: ReadonlySignal<Past>
  /** What is taken up; null: nothing, or it is no longer there. */
  readonly chosen: ReadonlySignal<Chosen | null>
  readonly slip: Signal<SlipName | null>
  /** The figure that is large; the others stand small beside it. */
  readonly large: Signal<FigureName>
  /** What is hidden, locked and kept on this table: no part of the design, but of the steps that can be undone. */
  readonly aside: ReadonlySignal<Aside>
  /** What a mend may not change: `<id>.<field>`. */
  readonly pins: ReadonlySignal<readonly string[]>
  /** The bench as the pictures show it: without what is hidden, and without handles on what is locked. */
  readonly shown: ReadonlySignal<Bench>
  /** Where a tip is wished for while the slip of the wish lies there. */
  readonly wish: Signal<Wish>
  /** Whether the next stroke on the card draws the way of the wished tip. */
  readonly draws: Signal<boolean>
  /** A design shown dashed over the card before it is taken. */
  readonly trying: Signal<Design | null>
  /** Said politely once: what was done. */
  readonly told: Signal<string>
  /** Takes a thing up, and offers what can be built on it if that is a fold or a face. */
  choose(thing: Chosen | null): void
  /** Puts another design on the table, as one step to undo, and says what was done. */
  put(design: Design, told: string, chosen?: Chosen, aside?: Aside): void
  /** One step back or forward, and says what that was. */
  undo(): void
  redo(): void
  pin(keys: readonly string[], kept: boolean): void
  /** Takes a part out of sight, or out of reach, or brings it back. */
  set(list: 'hidden' | 'locked', id: string, on: boolean): void
  /** Brings all that is hidden back into sight, in one step. */
  showAll(): void
  /** What stands against another design in this one's place: a locked part that it changes; null: nothing. */
  against(design: Design): string | null
  /** Puts a dummy on the table that was kept, with all that was done to it. */
  lay(history: History): void
}

/** What came of hiding or locking a part, to be said aloud. */
function asideSays(list: 'hidden' | 'locked', id: string, on: boolean): string {
  const name = large(nameOf(id))
  if (list === 'hidden') return on ? says.hidden(name) : says.shownAgain(name)
  return on ? says.locked(name) : says.unlocked(name)
}

/** What was done between two states, as the list of steps says it. */
const stepOf = (before: BenchState, after: BenchState): string =>
  large(
    before.design === after.design
      ? asideWords(before.aside, after.aside)
      : stepWords(before.design, after.design),
  )

/** A dummy that begins with a design. */
export function dummyModel(design: Design, frames: Frames): Dummy {
  const raw = signal<Chosen | null>(null)
  const state = signal(withinReach(startState(design, configFor(design, null))))
  const past = signal<Past>(NO_PAST)
  /** Changes when mechanisms come, go, or move to another fold; not while a size is dragged. */
  const build = computed(() =>
    state.value.design.mechanisms.map((m) => `${m.id} ${m.kind} ${m.on}`).join('\n'),
  )
  const chosen = computed(() => {
    build.value
    return raw.value && isThere(state.peek().design, raw.value) ? raw.value : null
  })
  const config = computed(() => {
    build.value
    return configFor(state.peek().design, chosen.value)
  })
  const whole = computed(() => {
    build.value
    return state.peek().design
  })
  const taken = computed(() => ownerOf(whole.value, chosen.value)?.id)
  const plain = benchOn(state, config, {
    frames,
    past,
    // Opening the card changes nothing of it.
    counts: (before, after) => before.design !== after.design || !sameAside(before.aside, after.aside),
  })
  const bench = withPick(plain, whole, taken)
  const aside = computed(() => state.value.aside ?? NOTHING_ASIDE)
  const setAside = (next: (now: Aside) => Aside) => {
    bench.release()
    bench.step('aside', (now) => ({ ...now, aside: next(now.aside ?? NOTHING_ASIDE) }))
    bench.release()
  }
  const slip = signal<SlipName | null>(design.mechanisms.length === 0 ? 'begin' : null)
  const wish = signal(firstWish(design.card))
  const trying = signal<Design | null>(null)
  const told = signal('')
  /** Back or forward, and said aloud: what was done is seen by those alone who see the card. */
  const walk = (go: () => void, says: (before: BenchState, after: BenchState) => string) => () => {
    const before = state.peek()
    batch(() => {
      go()
      if (state.peek() !== before) told.value = says(before, state.peek())
    })
  }
  return {
    bench,
    past,
    chosen,
    slip,
    large: signal<FigureName>('view'),
    aside,
    pins: computed(() => pinsOf(bench.design.value, aside.value)),
    shown: computed(() => benchInSight(bench, aside.value)),
    wish,
    draws: signal(false),
    trying,
    told,
    choose(thing) {
      batch(() => {
        raw.value = thing
        trying.value = null
        // Who sticks pieces on goes on doing so from face to face.
        const sticks = slip.peek() === 'pieces'
        if (thing && thing.what !== 'part') slip.value = sticks && thing.what === 'face' ? 'pieces' : 'offers'
        else if (slip.peek() === 'offers' || (sticks && !thing)) slip.value = null
      })
    },
    put(next, sentence, thing, beside) {
      batch(() => {
        bench.release()
        bench.step('put', (now) => ({
          ...now,
          design: next,
          aside: asideThere(next, beside ?? now.aside ?? NOTHING_ASIDE),
        }))
        // It is there at once, and no later move joins this step.
        bench.release()
        trying.value = null
        told.value = sentence
        if (thing) raw.value = thing
        if (slip.peek() === 'begin' || slip.peek() === 'offers') slip.value = null
      })
    },
    lay(history) {
      batch(() => {
        bench.pause()
        bench.release()
        const { design: laid, aside: beside } = present(history)
        state.value = withinReach({ ...state.peek(), design: laid, aside: beside, station: null })
        past.value = pastOf(history, state.peek())
        raw.value = null
        trying.value = null
        slip.value = state.peek().design.mechanisms.length === 0 ? 'begin' : null
      })
    },
    undo: walk(bench.undo, (before, after) => says.undone(stepOf(after, before))),
    redo: walk(bench.redo, (before, after) => says.redone(stepOf(before, after))),
    pin: (keys, kept) =>
      setAside((now) => keys.reduce((next, key) => asideWith(next, 'kept', key, kept), now)),
    set(list, id, on) {
      setAside((now) => asideWith(now, list, id, on))
      told.value = asideSays(list, id, on)
    },
    showAll() {
      setAside((now) => ({ ...now, hidden: [] }))
      told.value = says.allShown
    },
    against(next) {
      const id = touchedLock(bench.design.peek(), next, aside.peek())
      return id === null ? null : says.isLocked(nameOf(id))
    },
  }
}
