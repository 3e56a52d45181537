/** Opening and shutting by itself: a swing over the openings that the card reaches, slower at both ends. */

/** Seconds from one end to the other and back. */
const ROUND = 7

/** The openings between which it goes, degrees. */
type Between = readonly [least: number, most: number]

/** Where in the round (radians) a card at this opening (degrees) stands, on its way up. */
export const phaseAt = (opening: number, [least, most]: Between = [0, 180]): number =>
  most > least ? Math.acos(Math.min(1, Math.max(-1, 1 - (2 * (opening - least)) / (most - least)))) : 0

/** The opening in degrees, to a tenth, `seconds` after the phase. */
export function openingAfter(phase: number, seconds: number, [least, most]: Between = [0, 180]): number {
  const opening = least + ((most - least) / 2) * (1 - Math.cos(phase + (2 * Math.PI * seconds) / ROUND))
  return Math.min(most, Math.max(least, Math.round(opening * 10) / 10))
}

/** How far one press opens the card where motion is unwelcome, degrees. */
const STEP = 15

/** The next opening by steps: up as far as it goes, then shut again. */
export const nextStep = (opening: number, [least, most]: Between = [0, 180]): number =>
  opening >= most ? least : Math.min(most, opening + STEP)
