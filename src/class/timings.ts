/** The minutes of a lesson's parts. */

/** A part is never shorter, minutes. */
export const SHORTEST = 1

/** Minutes moved from one part to the next (`by` below nought) or the other way; unchanged where a part would be too short. */
export function shifted(minutes: readonly number[], after: number, by: number): readonly number[] {
  const [one, next] = [minutes[after], minutes[after + 1]]
  if (one === undefined || next === undefined) return minutes
  const moved = Math.max(SHORTEST - one, Math.min(next - SHORTEST, Math.round(by)))
  if (moved === 0) return minutes
  return minutes.map((m, k) => (k === after ? m + moved : k === after + 1 ? m - moved : m))
}

/** When each part begins, minutes from the start. */
export const startsOf = (minutes: readonly number[]): readonly number[] =>
  minutes.map((_, k) => minutes.slice(0, k).reduce((sum, m) => sum + m, 0))
