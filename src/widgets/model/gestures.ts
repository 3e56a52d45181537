import type { ReadonlySignal, Signal } from '@preact/signals'
import { batch, computed, signal } from '@preact/signals'
import { stopOnWay, withinReach } from '../state/opening.ts'
import type { Past } from '../state/past.ts'
import { back, differs, forward, NO_PAST, remember } from '../state/past.ts'
import type { BenchState } from '../state/state.ts'
import type { Frames } from './frames.ts'
import { pending } from './frames.ts'

export type Move = (state: BenchState) => BenchState

/** How hands change a state, and how a change is taken back. */
export interface Gestures {
  /** What is being dragged; null: nothing. */
  readonly held: ReadonlySignal<string | null>
  readonly canUndo: ReadonlySignal<boolean>
  readonly canRedo: ReadonlySignal<boolean>
  /** What stops the card, in a sentence, where a hand pressed against the end of its range last; else empty. */
  readonly against: Signal<string>
  hold(key: string): void
  /** A new state from the one in which the gesture began. */
  move(from: Move): void
  /** Ends the gesture or the run of steps. */
  release(): void
  /** Ends the gesture as if it had not been. */
  cancel(): void
  step(key: string, from: Move): void
  /** Ends a run of steps, but no gesture. */
  rest(): void
  undo(): void
  redo(): void
  /** Lets go of everything that would still happen. */
  drop(): void
}

/** A gesture or run of steps under way: the state it began in, and whether that is remembered yet. */
interface Run {
  readonly key: string
  readonly base: BenchState
  readonly remembered: boolean
}

/**
 * Hands over a state. However many moves arrive between two pictures, they cause one new state.
 * @param counts whether a change from one state to another is a step to undo
 */
export function gestures(
  state: Signal<BenchState>,
  frames: Frames,
  past: Signal<Past> = signal(NO_PAST),
  counts: (before: BenchState, after: BenchState) => boolean = differs,
): Gestures {
  const held = signal<string | null>(null)
  const against = signal('')
  let run: Run | null = null

  const take = (wanted: BenchState): void => {
    if (wanted === state.peek()) return
    // Where the card stops it stays, and where a size makes it stop sooner the opening follows.
    const next = withinReach(wanted)
    batch(() => {
      against.value = stopOnWay(wanted.design, wanted.opening)?.sentence ?? ''
      if (run && !run.remembered && counts(run.base, next)) {
        past.value = remember(past.peek(), run.base)
        run = { ...run, remembered: true }
      }
      state.value = next
    })
  }
  const moves = pending<Move>(frames, (move) => take(move(state.peek())))

  const release = (): void => {
    moves.settle()
    run = null
    held.value = null
  }
  const begin = (key: string): void => {
    release()
    run = { key, base: state.peek(), remembered: false }
  }
  const go = (walk: typeof back): void => {
    release()
    const found = walk(past.peek(), state.peek())
    if (!found) return
    batch(() => {
      past.value = found.past
      state.value = found.state
      against.value = ''
    })
  }

  return {
    held,
    against,
    canUndo: computed(() => past.value.before.length > 0),
    canRedo: computed(() => past.value.after.length > 0),
    hold(key) {
      begin(key)
      held.value = key
    },
    move(from) {
      const base = run?.base
      if (base && held.peek() !== null) moves.ask(() => from(base))
    },
    release,
    cancel() {
      if (!run || held.peek() === null) return
      moves.forget()
      const { base, remembered } = run
      batch(() => {
        state.value = base
        against.value = ''
        if (remembered) past.value = { before: past.peek().before.slice(0, -1), after: [] }
      })
      release()
    },
    step(key, from) {
      if (run?.key !== key || held.peek() !== null) begin(key)
      const before = moves.waiting
      moves.ask((now) => from(before ? before(now) : now))
    },
    /** A field that loses the focus to a drag elsewhere must not end that drag. */
    rest() {
      if (held.peek() === null) release()
    },
    undo: () => go(back),
    redo: () => go(forward),
    drop() {
      moves.forget()
      run = null
      held.value = null
    },
  }
}
