import type { Flat } from '../../paper/index.ts'

export type ReadingName =
  | 'rise'
  | 'reach'
  | 'stand-off'
  | 'gape'
  | 'wedge'
  | 'slit'
  | 'lean'
  | 'depth'
  | 'margin'
  | 'opening'
  | 'highest'
  | 'stop'

export type FigureName = 'view' | 'sheet' | 'section' | 'chart'

/** What may answer a chapter's guess: a reading, a figure, the measure in the picture, the sentences on ways. */
export type Coverable = ReadingName | 'section' | 'chart' | 'dimension' | 'ways'

/** What the reader may set: a field, derived number or choice of a mechanism, or a coordinate of the point. */
export interface FieldChoice {
  /** A mechanism's id, or `point`. */
  readonly id: string
  /** The field's name in the design file, or a derived number's; `across` or `along` for the point. */
  readonly field: string
  /** What the reader sees, if the kernel's own label does not say which of two it is. */
  readonly label?: string
  /** From where it is measured, in a few words: `from your end`. */
  readonly from?: string
  /** Range offered; the card's size sets it if left out. */
  readonly min?: number
  readonly max?: number
}

/** A point of the flat sheet that the reader may drag. */
export interface HandleChoice {
  /** A mechanism's id, or `point`. */
  readonly id: string
  /** The kernel's name of the handle; `point` for the point. */
  readonly handle: string
  readonly label?: string
}

export interface CameraChoice {
  /** Degrees: round the card, positive to the right; above the table. */
  readonly turn: number
  readonly tilt: number
}

/** What a chapter says of its bench: plain JSON, and all of it may be left out. */
export interface BenchConfig {
  /** The mechanism whose rise is read; the first one if left out. */
  readonly lead?: string
  /** A point of the right page, `[across, along]` in mm: for a bare card, whose gape is read then. */
  readonly point?: Flat
  /** Degrees; 90 if left out. */
  readonly opening?: number
  readonly camera?: CameraChoice
  /** How the card rests on the table: on its gutter (if left out), or upright on its lower edge. */
  readonly stand?: 'gutter' | 'edge'
  /** In the order in which they are offered; those of the lead if left out. */
  readonly fields?: readonly FieldChoice[]
  /** In the order in which the keyboard meets them; every one of the sheet if left out. */
  readonly handles?: readonly HandleChoice[]
  /** The handle that the task names, as `id/handle`: it wears a ring until it is used. */
  readonly first?: string
  /** The first one is red; what suits the lead if left out. */
  readonly readings?: readonly ReadingName[]
  /** Mechanisms of which the bench says in words which way they go as the card opens. */
  readonly ways?: readonly string[]
  /** What is covered until the reader has guessed. */
  readonly covers?: readonly Coverable[]
  /** All four if left out. */
  readonly figures?: readonly FigureName[]
  /** Figures that are folded away until they are asked for. */
  readonly folds?: readonly FigureName[]
  /** How many of the sizes are seen at once; the others are folded away. */
  readonly sizes?: number
}

export const EVERY_FIGURE: readonly FigureName[] = ['view', 'sheet', 'section', 'chart']

export const DEFAULT_FOLDS: readonly FigureName[] = ['chart']

/** The figures of a bench that are folded away at first. */
export const foldsOf = ({
  figures = EVERY_FIGURE,
  folds = DEFAULT_FOLDS,
}: BenchConfig): readonly FigureName[] => folds.filter((name) => figures.includes(name))

export const FIRST_SIZES = 3

export const DEFAULT_OPENING = 90

export const DEFAULT_CAMERA: CameraChoice = { turn: 24, tilt: 34 }
