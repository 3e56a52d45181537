/** Opening and shutting by itself: a swing between 0 and 180 degrees that slows at both ends. */

/** Seconds from shut to flat and back. */
const ROUND = 7

/** Where in the round (radians) a card at this opening (degrees) stands, on its way up. */
export const phaseAt = (opening: number): number => Math.acos(1 - opening / 90)

/** The opening in degrees, to a tenth, `seconds` after the phase. */
export function openingAfter(phase: number, seconds: number): number {
  const opening = 90 - 90 * Math.cos(phase + (2 * Math.PI * seconds) / ROUND)
  return Math.min(180, Math.max(0, Math.round(opening * 10) / 10))
}

/** How far one press opens the card where motion is unwelcome, degrees. */
const STEP = 15

/** The next opening by steps: up to flat, then shut again. */
export const nextStep = (opening: number): number => (opening >= 180 ? 0 : Math.min(180, opening + STEP))
