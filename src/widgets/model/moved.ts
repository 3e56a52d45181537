import type { Signal } from '@preact/signals'
import { signal } from '@preact/signals'
import type { ReadingName } from '../state/config.ts'
import type { BenchState } from '../state/state.ts'

/** Numbers of a mechanism, mm or degrees, and words where the kind has a choice. */
export type Settings = Readonly<Record<string, number | string>>

/** What a phrase of the prose does to the card: plain JSON, as it stands in the page. */
export interface PhraseMove {
  /** Degrees. */
  readonly opening?: number
  /** The mechanism that is changed, and what is set of it. */
  readonly id?: string
  readonly set?: Settings
  /** How far the point of a bare card lies from the gutter, mm. */
  readonly across?: number
}

/** A change that a phrase made: what putting it back restores. */
export interface Moved {
  /** The phrase, by its place in the chapter. */
  readonly phrase: string
  readonly before: BenchState
  /** What was read before, in the readings' own units. */
  readonly was: Readonly<Partial<Record<ReadingName, number>>>
}

const benches = new Map<string, Signal<Moved | null>>()

/** Which phrase of a chapter is pressed; null: none. */
export function movedOn(slug: string): Signal<Moved | null> {
  let moved = benches.get(slug)
  if (!moved) {
    moved = signal<Moved | null>(null)
    benches.set(slug, moved)
  }
  return moved
}
