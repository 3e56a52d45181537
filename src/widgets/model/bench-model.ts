import type { ReadonlySignal, Signal } from '@preact/signals'
import { batch, computed, signal } from '@preact/signals'
import type { Check, Design, Poser, Repair } from '../../paper/index.ts'
import { compile } from '../../paper/index.ts'
import { linkOf } from '../link/link.ts'
import type { LinkRead } from '../link/read-link.ts'
import type { BenchConfig, CameraChoice } from '../state/config.ts'
import type { BenchChoice, BenchField } from '../state/fields.ts'
import { benchChoices, benchFields, withFields } from '../state/fields.ts'
import { openingsOf, stopOnWay, withinReach } from '../state/opening.ts'
import type { Past } from '../state/past.ts'
import { back, differs, forward, NO_PAST, remember } from '../state/past.ts'
import { openingAfter, phaseAt } from '../state/play.ts'
import type { Measured, Reading } from '../state/readings.ts'
import { measured, readingNames, readingsOf } from '../state/readings.ts'
import type { BenchState } from '../state/state.ts'
import { kept, startState, within } from '../state/state.ts'
import type { BenchHandle } from './bench-handles.ts'
import { benchHandles, handleChoices } from './bench-handles.ts'

/** The screen's frames: `ask` calls back once before the next picture, with the time in milliseconds. */
export interface Frames {
  ask(run: (time: number) => void): number
  drop(ticket: number): void
}

/** Without a screen every change happens at once, and nothing plays. */
export const NO_FRAMES: Frames = {
  ask(run) {
    run(0)
    return 0
  },
  drop() {},
}

/** The kernel's `check`. It weighs too much for a page at rest and is brought when a hand comes near. */
export type Checker = (design: Design, options?: { readonly repairs?: boolean }) => readonly Check[]

type Move = (state: BenchState) => BenchState

/**
 * What a bench knows and can do; no page needed. A gesture is `hold`, any number of `move`, `release`:
 * it becomes one step to undo. `step` is for keys and buttons: steps with the same key in a row count
 * as one until `rest`. However many moves arrive between two pictures, they cause one new state.
 */
export interface Bench {
  readonly config: BenchConfig
  /** What the page showed at first. */
  readonly start: BenchState
  readonly fields: readonly BenchField[]
  readonly choices: readonly BenchChoice[]
  readonly state: ReadonlySignal<BenchState>
  readonly design: ReadonlySignal<Design>
  /** The design's poser, put together once for each design. */
  readonly poser: ReadonlySignal<Poser>
  readonly handles: ReadonlySignal<readonly BenchHandle[]>
  /** One of them as it stands in a state: keys may come faster than pictures. Throws a RangeError if unknown. */
  handleIn(state: BenchState, key: string): BenchHandle
  readonly measured: ReadonlySignal<Measured>
  /** Where the section is cut, mm along the gutter: where the reader put it, else through the tip. */
  readonly station: ReadonlySignal<number>
  readonly readings: ReadonlySignal<readonly Reading[]>
  /** Verdicts on the design that was examined last; null: none has been yet. */
  readonly checks: ReadonlySignal<readonly Check[] | null>
  /** The part of an address that brings this state back; empty for the first one. */
  readonly link: ReadonlySignal<string>
  /** What is being dragged: a handle's key, `opening`, `camera`, `section`; null: nothing. */
  readonly held: ReadonlySignal<string | null>
  readonly playing: ReadonlySignal<boolean>
  readonly canUndo: ReadonlySignal<boolean>
  readonly canRedo: ReadonlySignal<boolean>
  /** What stops the card, in a sentence, where a hand pressed against the end of its range last; else empty. */
  readonly against: ReadonlySignal<string>
  /** Sentences about the link the page was opened with. */
  readonly notes: Signal<readonly string[]>
  hold(key: string): void
  /** A new state from the one in which the gesture began. */
  move(from: Move): void
  release(): void
  /** Ends the gesture as if it had not been. */
  cancel(): void
  step(key: string, from: Move): void
  /** Ends a run of steps, but no gesture. */
  rest(): void
  undo(): void
  redo(): void
  reset(): void
  repair(repair: Repair): void
  /**
   * Takes verdicts on the design as it is now, unless they are there. They are slow beside a frame, and with
   * repairs slower still, so they are asked for between frames and when hands rest.
   */
  examine(checker: Checker, repairs: boolean): void
  /** Whether the verdicts on the design as it is now are there. */
  knows(repairs: boolean): boolean
  /** Takes over what a link said. Does not count as a step unless `undoable`. */
  open(read: LinkRead, undoable?: boolean): void
  play(): void
  pause(): void
  /** Lets go of everything that would still happen. */
  dispose(): void
}

/** The state at another opening, in degrees, to a tenth. The bench brings it into the card's range, and says so. */
export const opened = (state: BenchState, opening: number): BenchState => ({
  ...state,
  opening: Math.round(within(opening, 0, 180) * 10) / 10,
})

/** The state seen from elsewhere. The turn goes round, the tilt stops at the table and overhead. */
export const seenFrom = (state: BenchState, { turn, tilt }: CameraChoice): BenchState => ({
  ...state,
  camera: { turn: kept(((((turn + 180) % 360) + 360) % 360) - 180), tilt: kept(within(tilt, 0, 90)) },
})

/** The section cut elsewhere, mm along the gutter; null: through the tip. */
export const cutAt = (state: BenchState, station: number | null): BenchState => ({
  ...state,
  station: station === null ? null : kept(within(Math.round(station * 10) / 10, 0, state.design.card.height)),
})

/** What a bench may be given beside its design. */
export interface BenchParts {
  readonly frames?: Frames
  /** Verdicts on the first design, worked out when the page was made. */
  readonly checks?: readonly Check[]
}

/** A bench for a design. Throws a RangeError if the configuration names what the design does not have. */
export function benchModel(design: Design, config: BenchConfig, parts: BenchParts = {}): Bench {
  const { frames = NO_FRAMES } = parts
  const start = withinReach(startState(design, config))
  const fields = benchFields(design, config)
  const choices = handleChoices(design, config)
  const names = readingNames(design, config)
  const state = signal(start)
  const past = signal<Past>(NO_PAST)
  const held = signal<string | null>(null)
  const playing = signal(false)
  const notes = signal<readonly string[]>([])
  const against = signal('')
  const examined = signal<{ design: Design; checks: readonly Check[]; repairs: boolean } | null>(
    parts.checks ? { design, checks: parts.checks, repairs: false } : null,
  )

  const designNow = computed(() => state.value.design)
  const all = computed(() => measured(state.value, config))

  /** The gesture or run of steps under way: the state it began in, and whether that is remembered yet. */
  let run: { key: string; base: BenchState; remembered: boolean } | null = null
  let waiting: Move | null = null
  let ticket: number | null = null
  let playTicket: number | null = null

  const settle = (): void => {
    if (ticket !== null) frames.drop(ticket)
    ticket = null
    const wanted = waiting?.(state.peek())
    waiting = null
    if (!wanted || wanted === state.peek()) return
    // Where the card stops it stays, and where a size makes it stop sooner the opening follows.
    const next = withinReach(wanted)
    batch(() => {
      against.value = stopOnWay(wanted.design, wanted.opening)?.sentence ?? ''
      if (run && !run.remembered && differs(run.base, next)) {
        past.value = remember(past.peek(), run.base)
        run.remembered = true
      }
      state.value = next
    })
  }
  const soon = (from: Move): void => {
    waiting = from
    if (ticket !== null) return
    let ran = false
    const asked = frames.ask(() => {
      ran = true
      ticket = null
      settle()
    })
    if (!ran) ticket = asked
  }
  const end = (): void => {
    settle()
    run = null
    held.value = null
  }
  /** A field that loses the focus to a drag elsewhere must not end that drag. */
  const rest = (): void => {
    if (held.peek() === null) end()
  }
  const begin = (key: string): void => {
    end()
    run = { key, base: state.peek(), remembered: false }
  }
  const pause = (): void => {
    if (playTicket !== null) frames.drop(playTicket)
    playTicket = null
    playing.value = false
  }
  const step = (key: string, from: Move): void => {
    if (run?.key !== key || held.peek() !== null) begin(key)
    const before = waiting
    soon((now) => from(before ? before(now) : now))
  }
  const go = (found: { past: Past; state: BenchState } | null): void => {
    if (!found) return
    batch(() => {
      past.value = found.past
      state.value = found.state
      against.value = ''
    })
  }

  const knows = (repairs: boolean): boolean => {
    const last = examined.peek()
    return last?.design === designNow.peek() && (last.repairs || !repairs)
  }

  return {
    config,
    start,
    fields,
    choices: benchChoices(design, config),
    state,
    design: designNow,
    poser: computed(() => compile(designNow.value)),
    station: computed(() => {
      const { station, point, design } = state.value
      const { measure, lead } = all.value
      return station ?? (lead && measure.tips[lead.id]?.reach) ?? point?.[1] ?? design.card.height / 2
    }),
    handles: computed(() => benchHandles(state.value, choices)),
    handleIn(now, key) {
      const handle = benchHandles(now, choices).find((one) => one.key === key)
      if (!handle) throw new RangeError(`the bench has no handle ${key}`)
      return handle
    },
    measured: all,
    readings: computed(() => readingsOf(state.value, names, all.value)),
    checks: computed(() => examined.value?.checks ?? null),
    link: computed(() => linkOf(state.value, start)),
    held,
    playing,
    canUndo: computed(() => past.value.before.length > 0),
    canRedo: computed(() => past.value.after.length > 0),
    notes,
    against,
    hold(key) {
      pause()
      begin(key)
      held.value = key
    },
    move(from) {
      const base = run?.base
      if (base && held.peek() !== null) soon(() => from(base))
    },
    release: end,
    cancel() {
      if (!run || held.peek() === null) return
      waiting = null
      const { base, remembered } = run
      batch(() => {
        state.value = base
        against.value = ''
        if (remembered) past.value = { before: past.peek().before.slice(0, -1), after: [] }
      })
      end()
    },
    step(key, from) {
      if (key === 'opening') pause()
      step(key, from)
    },
    rest,
    undo() {
      pause()
      end()
      go(back(past.peek(), state.peek()))
    },
    redo() {
      pause()
      end()
      go(forward(past.peek(), state.peek()))
    },
    reset() {
      pause()
      step('reset', () => start)
      end()
      notes.value = []
    },
    repair({ change }) {
      step('repair', (now) => ({
        ...now,
        design: change.reduce((design, { id, fields }) => withFields(design, id, fields), now.design),
      }))
      end()
    },
    examine(checker, repairs) {
      const design = designNow.peek()
      if (!knows(repairs)) examined.value = { design, checks: checker(design, { repairs }), repairs }
    },
    knows,
    open(read, undoable = false) {
      batch(() => {
        if (undoable) step('link', () => read.state)
        else state.value = withinReach(read.state)
        end()
        notes.value = read.faults
      })
    },
    play() {
      if (playing.peek() || frames === NO_FRAMES) return
      end()
      playing.value = true
      const between = openingsOf(designNow.peek())
      const phase = phaseAt(state.peek().opening, between)
      against.value = ''
      let began: number | null = null
      const show = (time: number): void => {
        began ??= time
        state.value = opened(state.peek(), openingAfter(phase, (time - began) / 1000, between))
        playTicket = frames.ask(show)
      }
      playTicket = frames.ask(show)
    },
    pause,
    dispose() {
      pause()
      if (ticket !== null) frames.drop(ticket)
      ticket = null
      waiting = null
      run = null
      held.value = null
    },
  }
}
