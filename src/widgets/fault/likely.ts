import { signal } from '@preact/signals'

/** The card that a maker's trouble is likely on, by name: what the finder found first. Null: nothing yet. */
export const likely = signal<string | null>(null)
