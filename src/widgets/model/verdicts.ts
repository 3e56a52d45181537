import type { ReadonlySignal } from '@preact/signals'
import { computed, signal } from '@preact/signals'
import type { Check, Design } from '../../paper/index.ts'

/** The kernel's `check`. It weighs too much for a page at rest and is brought when a hand comes near. */
export type Checker = (design: Design, options?: { readonly repairs?: boolean }) => readonly Check[]

/** What was found of the design that was examined last. */
export interface Verdicts {
  /** Null: none has been examined yet. */
  readonly checks: ReadonlySignal<readonly Check[] | null>
  /**
   * Takes verdicts on the design as it is now, unless they are there. They are slow beside a frame, and with
   * repairs slower still, so they are asked for between frames and when hands rest.
   */
  examine(checker: Checker, repairs: boolean): void
  /** Shows verdicts on the design as it was a moment ago, until those on the present one are there. */
  glance(checks: readonly Check[]): void
  /** Whether the verdicts on the design as it is now are there. */
  knows(repairs: boolean): boolean
}

/** Verdicts, and the design that they are on; null: one that has changed since. */
interface Known {
  readonly design: Design | null
  readonly checks: readonly Check[]
  readonly repairs: boolean
}

/** Verdicts on a design that changes; those on the first one may be there from the start, without repairs. */
export function verdictsOn(design: ReadonlySignal<Design>, first?: readonly Check[]): Verdicts {
  const last = signal<Known | null>(first ? { design: design.peek(), checks: first, repairs: false } : null)
  const knows = (repairs: boolean): boolean => {
    const known = last.peek()
    return known?.design === design.peek() && (known.repairs || !repairs)
  }
  return {
    checks: computed(() => last.value?.checks ?? null),
    examine(checker, repairs) {
      const now = design.peek()
      if (!knows(repairs)) last.value = { design: now, checks: checker(now, { repairs }), repairs }
    },
    glance(checks) {
      last.value = { design: null, checks, repairs: false }
    },
    knows,
  }
}
