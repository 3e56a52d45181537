import type { Signal } from '@preact/signals'
import { signal } from '@preact/signals'
import { keepWord, recall } from './page.ts'

/** A challenge that has just been met. */
export interface Met {
  readonly key: string
  /** What the chapter calls it. */
  readonly name: string
}

const benches = new Map<string, Signal<Met | null>>()

/** Which challenge of a chapter the bench meets as it stands; null: none. */
export function metOn(slug: string): Signal<Met | null> {
  let met = benches.get(slug)
  if (!met) {
    met = signal<Met | null>(null)
    benches.set(slug, met)
  }
  return met
}

const nameOf = (slug: string, key: string): string => `goal.${slug}.${key}`

/** The link of the state that met a challenge once, on this device; null: never yet. */
export const solvedBy = (slug: string, key: string): string | null => recall(nameOf(slug, key))

/** Remembers the state that met a challenge. */
export const keepSolved = (slug: string, key: string, link: string): void => keepWord(nameOf(slug, key), link)
