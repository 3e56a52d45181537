import type { PaperColour } from '../../paper/index.ts'

/** A colour as `#rrggbb`. */
export type Hex = `#${string}`

/** The papers by full light. Night keeps the papers and changes the light. */
export const PAPERS: Readonly<Record<PaperColour, Hex>> = {
  dusk: '#33477c',
  hedge: '#2b5068',
  meadow: '#3c6b5a',
  moss: '#2f7a55',
  night: '#262c55',
  paper: '#fbf6e8',
  cream: '#f6e3bd',
  oat: '#e9dcc0',
  amber: '#f5b83d',
  ochre: '#c97b1e',
  clay: '#b0763f',
  bark: '#6d4530',
  fern: '#6bb06a',
  leaf: '#a6d48c',
  pond: '#3f9aa6',
  water: '#a4dcd8',
  lilac: '#bda4dc',
  plum: '#5d3f78',
  rose: '#dd8f8c',
  blush: '#f2aa9d',
  rust: '#bd5233',
  heron: '#a9bdd2',
  moon: '#fbe7a8',
  flame: '#f59a2a',
  ink: '#1a1d33',
}

/** Plain card by its number, 0 to 4, and sticky tape: as the style sheet of drawings has them. */
export const CARDS: readonly [Hex, ...Hex[]] = [
  '#39437f',
  '#f4b942',
  '#b695d6',
  '#5da577',
  '#93a3b8',
  '#f6f0da',
]
