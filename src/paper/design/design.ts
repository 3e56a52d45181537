import type { Mechanism } from '../mechanisms/registry.ts'
import type { Art, Papers } from './art.ts'

/** A design as read from a file: every id is unique and every host stands before its guests. */
export interface Design {
  readonly hingebook: 1
  readonly title: string
  readonly card: Card
  readonly mechanisms: readonly Mechanism[]
  /** What the pieces are cut from, where the design says so. */
  readonly papers?: Papers
  /** What is drawn on the panels. */
  readonly art?: readonly Art[]
}

export interface Card {
  /** One page, gutter to edge, mm. */
  readonly width: number
  /** Along the gutter, mm. */
  readonly height: number
  /** Thickness of the card, mm. */
  readonly caliper: number
  /** A second folded card behind the first, `COVER_RIM` mm larger all round: holes show it. */
  readonly cover?: boolean
}

/** How far a cover stands out beyond the card, mm. */
export const COVER_RIM = 3
