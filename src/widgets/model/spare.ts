import { effect } from '@preact/signals'
import type { Bench } from './bench-model.ts'
import { SPARE } from './spare-sign.ts'

/** A page that nobody is at work on has time when no hand has held anything for so long, ms. */
const REST = 1500

/** Runs something when the next frame has been painted. */
export const afterPaint = (run: () => void): void => void requestAnimationFrame(() => setTimeout(run))

/** Runs something when a bench has been left alone for a while. Returns what ends it. */
export function atRest(bench: Bench, run: () => void, rest = REST): () => void {
  let wait: ReturnType<typeof setTimeout>
  const look = () => {
    if (bench.held.peek() === null) run()
    else wait = setTimeout(look, rest)
  }
  wait = setTimeout(look, rest)
  return () => clearTimeout(wait)
}

/** Fingers do not come near before they press, and an address that tells a state is to be read at once. */
const isWanted = (): boolean => matchMedia('(any-pointer: coarse)').matches || location.hash.includes('=')

/**
 * Tells what stands within a bench that it may come: when the first change has been painted, else at rest. Returns
 * what ends it.
 */
export function tellSpare(bench: Bench, root: HTMLElement | null): () => void {
  let told = false
  const tell = () => {
    if (told) return
    told = true
    root?.dispatchEvent(new Event(SPARE))
  }
  const forget = atRest(bench, tell, isWanted() ? 0 : REST)
  const stop = effect(() => {
    if (bench.state.value !== bench.start) afterPaint(tell)
  })
  return () => {
    told = true
    forget()
    stop()
  }
}
