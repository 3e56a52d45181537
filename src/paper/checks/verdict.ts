import type { Vec3 } from '../plane/vector.ts'

/** A nearest change of one field that satisfies a check. */
export interface Repair {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly from: number
  readonly to: number
  /** The whole changed design's fields: apply these to the mechanisms named. */
  readonly change: readonly { readonly id: string; readonly fields: Readonly<Record<string, number>> }[]
  /** True if every other check that held before still holds after. */
  readonly keepsRest: boolean
}

export type CheckName =
  | 'shuts-flat'
  | 'opens-flat'
  | 'stays-inside'
  | 'cuts-inside'
  | 'bridge'
  | 'inside-fold'
  | 'cuts-apart'
  | 'clear-motion'
  | 'thickness'
  | 'glue'
  | 'narrow'

/** The verdict of one check. */
export interface Check {
  readonly name: CheckName
  readonly ok: boolean
  /** What was measured, in `unit`. */
  readonly value: number
  readonly unit: 'mm' | 'deg'
  /** What it must reach (`at-least`) or keep below (`at-most`). */
  readonly limit: number
  readonly sense: 'at-least' | 'at-most'
  /** Mechanisms and panels concerned. */
  readonly ids: readonly string[]
  /** Opening in degrees where it is worst, where that makes sense. */
  readonly opening?: number
  /** Where on the flat sheet (mm, as in `Piece`), and in space at `opening`, to point at. */
  readonly flat?: readonly (readonly [x: number, y: number])[]
  /** The piece that `flat` is on; the card itself if left out. */
  readonly piece?: string
  readonly space?: Vec3
  /** Advice from practice, not geometry: it folds all the same, but may tear or bulge. */
  readonly caution?: boolean
  /** What is known of the motion: proved clear, seen to touch, or neither. `ok` means proved. */
  readonly verdict?: 'clear' | 'touches' | 'undecided'
  /** One plain sentence, in mm and degrees. */
  readonly sentence: string
  /** It cannot be told before another check is mended, and has no repair of its own. */
  readonly waits?: boolean
  /** Absent when the check holds, waits, or repairs were not asked for; null if no single change that was tried mends it. */
  readonly repair?: Repair | null
}
