import type { Signal } from '@preact/signals'
import { signal } from '@preact/signals'
import type { BenchConfig } from '../state/config.ts'
import type { LengthUnit } from '../state/format.ts'
import type { Bench } from './bench-model.ts'

/** What the islands of one page share. */

/** Put in front of everything the device remembers. */
const KEY = 'hingebook.'

/** What the device remembers under a name; null if nothing, or if it may not. */
export function recall(name: string): string | null {
  try {
    return localStorage.getItem(KEY + name)
  } catch {
    return null
  }
}

/** Remembers a word under a name, where the device allows it. */
export function keepWord(name: string, value: string): void {
  try {
    localStorage.setItem(KEY + name, value)
  } catch {
    // Storage may be forbidden or full: then the choice holds for this page alone.
  }
}

/** The unit in which lengths are shown, on every widget of the page. */
export const lengthUnit: Signal<LengthUnit> = signal('mm')

/** Takes over the unit which the device remembers. */
export function recallUnit(): void {
  if (recall('unit') === 'in') lengthUnit.value = 'in'
}

export function chooseUnit(unit: LengthUnit): void {
  lengthUnit.value = unit
  keepWord('unit', unit)
}

const benches = new Map<string, Signal<Bench | null>>()

/** The bench of a chapter, as soon as it is awake; null before. On the server it never is. */
export function benchOf(slug: string): Signal<Bench | null> {
  let bench = benches.get(slug)
  if (!bench) {
    bench = signal<Bench | null>(null)
    benches.set(slug, bench)
  }
  return bench
}

/** The size that is being set by its field, as `beak.apex`: the flat sheet shows from where it is measured. */
export const sizeInHand: Signal<string | null> = signal(null)

/** Whether the answers to the chapter's guess are covered: until the reader has guessed or asked to be shown. */
export const covering: Signal<boolean> = signal(false)

/** What the server has spoken of a bench is read before anyone has guessed; a bench that wakes begins with the same. */
export function coverAtFirst({ covers = [] }: BenchConfig): void {
  covering.value = covers.length > 0
}

/** Told to the page when the reader has guessed. */
const GUESSED = 'hingebook-guess'

/** Covers the answers or shows them, for now: what the reader guessed is not forgotten. */
export function coverAnswers(covered: boolean): void {
  document.documentElement.dataset.guess = covered ? 'covered' : 'open'
  dispatchEvent(new Event(GUESSED))
}

/** Takes over what the page says of its guess, now and later. Returns what ends it. */
export function followGuess(): () => void {
  const look = () => {
    covering.value = document.documentElement.dataset.guess === 'covered'
  }
  look()
  addEventListener(GUESSED, look)
  return () => removeEventListener(GUESSED, look)
}
