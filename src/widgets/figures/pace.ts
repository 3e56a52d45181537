/**
 * How fine a picture in motion is painted. A machine that cannot keep up with all its dots, most often one without a
 * graphics card, gets fewer of them while the hand moves; at rest the picture is sharp.
 */
export interface Pace {
  /** Dots for each dot of the screen, along an edge. */
  readonly fine: number
  /** So many frames in a row took too long. */
  readonly slow: number
}

/** From all dots to a quarter of them. What was too fine once is not tried again while the page stands. */
const STEPS = [1, 0.7, 0.5] as const

/** A card that takes longer than this is seen to lag, ms: thirty in a second look like motion. From memory. */
const LAG = 33

/** So many such frames in a row: one alone may be anything, and the first are slow on every machine. */
const PATIENCE = 8

export const FULL: Pace = { fine: STEPS[0], slow: 0 }

/** The pace after a frame that took so long to paint, ms. */
export function paceAfter({ fine, slow }: Pace, took: number): Pace {
  if (!(took > LAG)) return { fine, slow: 0 }
  if (slow + 1 < PATIENCE) return { fine, slow: slow + 1 }
  return { fine: STEPS.find((step) => step < fine) ?? fine, slow: 0 }
}
