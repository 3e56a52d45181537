import type { Build } from '../mechanisms/build.ts'
import { fourBarTurns } from '../mechanisms/shared/four-bar-turns.ts'

/**
 * The bounds of `Build.turns`, for whatever kind; undefined where they are not known. Interval arithmetic
 * weighs more than the poses themselves, so it comes with the checks and not with every page.
 */
export function turnsOf({ turns, linkage, range = [0, 180] }: Build): Build['turns'] {
  if (turns || !linkage) return turns
  return (from, to, out) => fourBarTurns(linkage, range, from, to, out)
}
