import type { Build } from '../mechanisms/build.ts'
import { fourBarTurns } from '../mechanisms/shared/four-bar-turns.ts'
import { mirroredTurns } from '../mechanisms/shared/mirrored-turns.ts'

/**
 * The bounds of `Build.turns`, for whatever kind; undefined where they are not known. Interval arithmetic
 * weighs more than the poses themselves, so it comes with the checks and not with every page.
 */
export function turnsOf({ turns, wedge, linkage, range = [0, 180] }: Build): Build['turns'] {
  if (wedge !== undefined) return (from, to, out) => mirroredTurns(wedge, from, to, out)
  if (linkage) return (from, to, out) => fourBarTurns(linkage, range, from, to, out)
  return turns
}
