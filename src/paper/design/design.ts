import type { Mechanism } from '../mechanisms/registry.ts'

/** A design as read from a file: every id is unique and every host stands before its guests. */
export interface Design {
  readonly hingebook: 1
  readonly title: string
  readonly card: Card
  readonly mechanisms: readonly Mechanism[]
}

export interface Card {
  /** One page, gutter to edge, mm. */
  readonly width: number
  /** Along the gutter, mm. */
  readonly height: number
  /** Thickness of the card, mm. */
  readonly caliper: number
}
