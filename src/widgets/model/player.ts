import type { ReadonlySignal, Signal } from '@preact/signals'
import { signal } from '@preact/signals'
import { openingsOf } from '../state/opening.ts'
import { openingAfter, phaseAt } from '../state/play.ts'
import type { BenchState } from '../state/state.ts'
import { opened } from '../state/state.ts'
import type { Frames } from './frames.ts'
import { NO_FRAMES } from './frames.ts'

/** A card that opens and shuts by itself. */
export interface Player {
  readonly playing: ReadonlySignal<boolean>
  play(): void
  pause(): void
}

export function player(state: Signal<BenchState>, frames: Frames): Player {
  const playing = signal(false)
  let ticket: number | null = null
  return {
    playing,
    play() {
      if (playing.peek() || frames === NO_FRAMES) return
      playing.value = true
      const between = openingsOf(state.peek().design)
      const phase = phaseAt(state.peek().opening, between)
      let began: number | null = null
      const show = (time: number): void => {
        began ??= time
        state.value = opened(state.peek(), openingAfter(phase, (time - began) / 1000, between))
        ticket = frames.ask(show)
      }
      ticket = frames.ask(show)
    },
    pause() {
      if (ticket !== null) frames.drop(ticket)
      ticket = null
      playing.value = false
    },
  }
}
