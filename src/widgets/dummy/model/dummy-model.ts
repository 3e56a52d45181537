import type { ReadonlySignal, Signal } from '@preact/signals'
import { batch, computed, signal } from '@preact/signals'
import type { Design, Wish } from '../../../paper/index.ts'
import type { History } from '../../keeping/history.ts'
import { present } from '../../keeping/history.ts'
import type { Bench } from '../../model/bench-model.ts'
import { benchOn } from '../../model/bench-model.ts'
import type { Frames } from '../../model/frames.ts'
import type { FigureName } from '../../state/config.ts'
import { withinReach } from '../../state/opening.ts'
import type { Past } from '../../state/past.ts'
import { NO_PAST } from '../../state/past.ts'
import { startState } from '../../state/state.ts'
import type { Chosen } from './chosen.ts'
import { configFor, isThere } from './chosen.ts'
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
  /** What a mend may not change: `<id>.<field>`. */
  readonly pins: Signal<readonly string[]>
  /** Where a tip is wished for while the slip of the wish lies there. */
  readonly wish: Signal<Wish>
  /** A design shown dashed over the card before it is taken. */
  readonly trying: Signal<Design | null>
  /** Said politely once: what was done. */
  readonly told: Signal<string>
  /** Takes a thing up, and offers what can be built on it if that is a fold or a face. */
  choose(thing: Chosen | null): void
  /** Puts another design on the table, as one step to undo, and says what was done. */
  put(design: Design, told: string, chosen?: Chosen): void
  pin(key: string, kept: boolean): void
  /** Puts a dummy on the table that was kept, with all that was done to it. */
  lay(history: History): void
}

/** Part of each field's key that stands before its name: what is kept goes when its mechanism goes. */
const pinnedThere = (design: Design, pins: readonly string[]): readonly string[] =>
  pins.filter((pin) => design.mechanisms.some(({ id }) => pin.startsWith(`${id}.`)))

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
  const bench = benchOn(state, config, {
    frames,
    past,
    // Opening the card changes nothing of it.
    counts: (before, after) => before.design !== after.design,
  })
  const slip = signal<SlipName | null>(design.mechanisms.length === 0 ? 'begin' : null)
  const pins = signal<readonly string[]>([])
  const wish = signal(firstWish(design.card))
  const trying = signal<Design | null>(null)
  const told = signal('')
  return {
    bench,
    past,
    chosen,
    slip,
    large: signal<FigureName>('view'),
    pins,
    wish,
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
    put(next, says, thing) {
      batch(() => {
        bench.release()
        bench.step('put', (now) => ({ ...now, design: next }))
        // It is there at once, and no later move joins this step.
        bench.release()
        pins.value = pinnedThere(next, pins.peek())
        trying.value = null
        told.value = says
        if (thing) raw.value = thing
        if (slip.peek() === 'begin' || slip.peek() === 'offers') slip.value = null
      })
    },
    lay(history) {
      batch(() => {
        bench.pause()
        bench.release()
        state.value = withinReach({ ...state.peek(), design: present(history).design, station: null })
        past.value = pastOf(history, state.peek())
        raw.value = null
        pins.value = []
        trying.value = null
        slip.value = state.peek().design.mechanisms.length === 0 ? 'begin' : null
      })
    },
    pin(key, kept) {
      const others = pins.peek().filter((one) => one !== key)
      pins.value = kept ? [...others, key] : others
    },
  }
}
