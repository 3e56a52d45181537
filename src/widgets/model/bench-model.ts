import type { ReadonlySignal, Signal } from '@preact/signals'
import { batch, computed, signal } from '@preact/signals'
import type { Check, Design, Poser, Repair } from '../../paper/index.ts'
import { compile } from '../../paper/index.ts'
import type { LinkRead } from '../link/read-link.ts'
import type { BenchConfig } from '../state/config.ts'
import { withinReach } from '../state/opening.ts'
import type { Past } from '../state/past.ts'
import type { Measured, Reading } from '../state/readings.ts'
import { measured, readingNames, readingsOf } from '../state/readings.ts'
import { withFields } from '../state/settings.ts'
import type { BenchState } from '../state/state.ts'
import { startState } from '../state/state.ts'
import type { BenchHandle } from './bench-handles.ts'
import { benchHandles, choosableOf, handleChoices } from './bench-handles.ts'
import type { Frames } from './frames.ts'
import { NO_FRAMES } from './frames.ts'
import type { Gestures } from './gestures.ts'
import { gestures } from './gestures.ts'
import type { Player } from './player.ts'
import { player } from './player.ts'
import type { Verdicts } from './verdicts.ts'
import { verdictsOn } from './verdicts.ts'

/** What follows from a bench's state, and from the configuration. */
export interface Shown {
  readonly design: ReadonlySignal<Design>
  /** The point of a bare card, mm. */
  readonly point: ReadonlySignal<BenchState['point']>
  /** The design's poser, put together once for each design. */
  readonly poser: ReadonlySignal<Poser>
  readonly handles: ReadonlySignal<readonly BenchHandle[]>
  /** One of them as it stands in a state: keys may come faster than pictures. Throws a RangeError if unknown. */
  handleIn(state: BenchState, key: string): BenchHandle
  readonly measured: ReadonlySignal<Measured>
  /** Where the section is cut, mm along the gutter: where the reader put it, else through the tip. */
  readonly station: ReadonlySignal<number>
  readonly readings: ReadonlySignal<readonly Reading[]>
}

/**
 * What a bench knows and can do; no page needed. A gesture is `hold`, any number of `move`, `release`:
 * it becomes one step to undo. `step` is for keys and buttons: steps with the same key in a row count
 * as one until `rest`. However many moves arrive between two pictures, they cause one new state.
 * What is held is called by a handle’s key, `opening`, `camera`, `chart` or `section`.
 */
export interface Bench extends Shown, Verdicts, Player, Omit<Gestures, 'drop'> {
  readonly config: BenchConfig
  /** The design as it was when the configuration came: what is offered to be set follows from both. */
  readonly base: Design
  /** What the page showed at first. */
  readonly start: BenchState
  readonly state: ReadonlySignal<BenchState>
  /** Sentences about the link the page was opened with. */
  readonly notes: Signal<readonly string[]>
  /** The handle that wears a ring, because the task names it and nobody has used it yet; null: none. */
  readonly ringed: ReadonlySignal<string | null>
  /** The mechanisms of which a crowded flat sheet can show one alone; none where it is not crowded. */
  readonly choosable: readonly string[]
  /** The one it shows; null: all. */
  readonly chosen: ReadonlySignal<string | null>
  /** Shows a mechanism's pieces on the flat sheet, if it can be chosen; null: all. */
  choose(id: string | null): void
  /** What could not be loaded, in a sentence; empty: nothing. */
  readonly trouble: Signal<string>
  reset(): void
  repair(repair: Repair): void
  /** Takes over what a link said. Does not count as a step unless `undoable`. */
  open(read: LinkRead, undoable?: boolean): void
  /** Lets go of everything that would still happen. */
  dispose(): void
}

/** What a bench may be given beside its design. */
export interface BenchParts {
  readonly frames?: Frames
  /** Verdicts on the first design, worked out when the page was made. */
  readonly checks?: readonly Check[]
  /** What can be undone, where it is kept beyond this page. */
  readonly past?: Signal<Past>
  /** Whether a change is a step to undo; left out, one of the card, its opening or its point is. */
  readonly counts?: (before: BenchState, after: BenchState) => boolean
}

/** All that a bench shows of its state. Throws a RangeError if the configuration names what the design does not have. */
function shownOf(state: ReadonlySignal<BenchState>, config: ReadonlySignal<BenchConfig>): Shown {
  // None of these comes or goes while something is dragged: they follow the configuration alone.
  const handles = computed(() => handleChoices(state.peek().design, config.value))
  const names = computed(() => readingNames(state.peek().design, config.value))
  // What lies flat hangs on these two alone: opening the card asks for none of it.
  const design = computed(() => state.value.design)
  const point = computed(() => state.value.point)
  const all = computed(() => measured(state.value, config.value))
  return {
    design,
    point,
    poser: computed(() => compile(design.value)),
    handles: computed(() => benchHandles({ design: design.value, point: point.value }, handles.value)),
    handleIn(now, key) {
      const handle = benchHandles(now, handles.value).find((one) => one.key === key)
      if (!handle) throw new RangeError(`there is no handle ${key}`)
      return handle
    },
    measured: all,
    station: computed(() => {
      const { station, point, design } = state.value
      const { measure, lead } = all.value
      return station ?? (lead && measure.tips[lead.id]?.reach) ?? point?.[1] ?? design.card.height / 2
    }),
    readings: computed(() => readingsOf(state.value, names.value, all.value)),
  }
}

/** A bench for a design. Throws a RangeError if the configuration names what the design does not have. */
export const benchModel = (design: Design, config: BenchConfig, parts: BenchParts = {}): Bench =>
  benchOn(signal(withinReach(startState(design, config))), signal(config), parts)

/**
 * A bench on a state, for a configuration that may change with it.
 * Throws a RangeError if the configuration names what the design does not have.
 */
export function benchOn(
  state: Signal<BenchState>,
  config: ReadonlySignal<BenchConfig>,
  { frames = NO_FRAMES, checks, past, counts }: BenchParts = {},
): Bench {
  const start = state.peek()
  const base = computed(() => {
    config.value
    return state.peek().design
  })
  base.peek()
  const notes = signal<readonly string[]>([])
  const ringed = signal(config.peek().first ?? null)
  const choosable = choosableOf(start.design, config.peek())
  const chosen = signal<string | null>(
    choosable.find((id) => config.peek().first?.startsWith(`${id}/`)) ?? choosable[0] ?? null,
  )
  const unring = (key: string) => {
    if (key === ringed.peek()) ringed.value = null
  }
  const shown = shownOf(state, config)
  const { playing, play, pause } = player(state, frames)
  const { hold, step, undo, redo, drop, ...hands } = gestures(state, frames, past, counts)
  return {
    get config() {
      return config.value
    },
    get base() {
      return base.value
    },
    start,
    state,
    notes,
    ringed,
    choosable,
    chosen,
    choose(id) {
      if (id === null || choosable.includes(id)) chosen.value = id
    },
    trouble: signal(''),
    ...shown,
    ...verdictsOn(shown.design, checks),
    ...hands,
    playing,
    pause,
    play() {
      hands.release()
      hands.against.value = ''
      play()
    },
    hold(key) {
      pause()
      unring(key)
      hold(key)
    },
    step(key, from) {
      if (key === 'opening') pause()
      unring(key)
      step(key, from)
    },
    undo() {
      pause()
      undo()
    },
    redo() {
      pause()
      redo()
    },
    reset() {
      pause()
      step('reset', () => start)
      hands.release()
      notes.value = []
    },
    repair({ change }) {
      step('repair', (now) => ({
        ...now,
        design: change.reduce((design, { id, fields }) => withFields(design, id, fields), now.design),
      }))
      hands.release()
    },
    open(read, undoable = false) {
      batch(() => {
        if (undoable) step('link', () => read.state)
        else state.value = withinReach(read.state)
        hands.release()
        notes.value = read.faults
      })
    },
    dispose() {
      pause()
      drop()
    },
  }
}
