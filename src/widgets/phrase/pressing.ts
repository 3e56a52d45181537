/** Loaded when the first phrase is pressed. */
import { effect } from '@preact/signals'
import type { Bench } from '../model/bench-model.ts'
import { wantsCalm } from '../model/calm.ts'
import type { PhraseMove } from '../model/moved.ts'
import { movedOn } from '../model/moved.ts'
import type { ReadingName } from '../state/config.ts'
import type { BenchState } from '../state/state.ts'
import { onTheWay, phraseHolds, phraseState } from './phrase-state.ts'

/** How long a phrase takes to move the card, ms: slow enough to see what moves. */
const TAKES = 600

/** What is under way on each bench: ends it. */
const underWay = new WeakMap<Bench, () => void>()

/** Plays the bench from its state to another one as one step to undo, then calls back. */
function play(bench: Bench, way: (part: number) => BenchState, then: () => void): void {
  underWay.get(bench)?.()
  bench.pause()
  bench.rest()
  let ticket = 0
  let began: number | null = null
  const show = (time: number) => {
    began ??= time
    const part = wantsCalm() ? 1 : Math.min(1, (time - began) / TAKES)
    // Slow, fast, slow: a hand moves so.
    bench.step('phrase', () => way((1 - Math.cos(Math.PI * part)) / 2))
    if (part < 1) {
      ticket = requestAnimationFrame(show)
      return
    }
    underWay.delete(bench)
    bench.rest()
    then()
  }
  underWay.set(bench, () => {
    cancelAnimationFrame(ticket)
    underWay.delete(bench)
    bench.rest()
  })
  ticket = requestAnimationFrame(show)
}

const readingsNow = (bench: Bench): Readonly<Partial<Record<ReadingName, number>>> =>
  Object.fromEntries(bench.readings.peek().map(({ name, value }) => [name, value]))

/** Watches until what the phrase asked for no longer holds, because the reader moved on. */
function letGoWhenMoved(bench: Bench, slug: string, place: string, move: PhraseMove): void {
  const moved = movedOn(slug)
  const reached = bench.state.peek()
  const stop = effect(() => {
    const ours = moved.value?.phrase === place
    const holds = phraseHolds(bench.state.value, reached, move)
    if (ours && holds) return
    if (ours) queueMicrotask(() => (moved.value = null))
    queueMicrotask(() => stop())
  })
}

/** Does what a phrase says. One that was pressed before is put back first. */
export function pressPhrase(bench: Bench, slug: string, place: string, move: PhraseMove): void {
  const moved = movedOn(slug)
  underWay.get(bench)?.()
  bench.rest()
  const { before, was } = moved.peek() ?? { before: bench.state.peek(), was: readingsNow(bench) }
  const from = { ...before, camera: bench.state.peek().camera }
  const to = phraseState(from, bench.start, move)
  moved.value = { phrase: place, before, was }
  play(
    bench,
    (part) => onTheWay(from, to, bench.start, move, part),
    () => letGoWhenMoved(bench, slug, place, move),
  )
}

/** Restores the very state in which the phrase was pressed. */
export function putBack(bench: Bench, slug: string): void {
  const moved = movedOn(slug)
  const now = moved.peek()
  if (!now) return
  const from = bench.state.peek()
  moved.value = null
  play(
    bench,
    (part) =>
      part >= 1
        ? now.before
        : {
            ...now.before,
            opening: Math.round((from.opening + part * (now.before.opening - from.opening)) * 10) / 10,
          },
    () => {},
  )
}
