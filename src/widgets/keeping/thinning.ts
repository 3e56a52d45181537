/** Earlier states are kept close together in the last minutes, and farther apart the older they are. */

const MINUTE = 60_000
const HOUR = 60 * MINUTE
const DAY = 24 * HOUR

/** While a maker works, a state is kept this often. */
export const STATE_EVERY = 2 * MINUTE

/** Up to which age one state is kept out of each stretch of time. */
const STRETCHES: readonly (readonly [age: number, each: number])[] = [
  [30 * MINUTE, STATE_EVERY / 2],
  [6 * HOUR, 10 * MINUTE],
  [2 * DAY, HOUR],
  [60 * DAY, DAY],
  [Number.POSITIVE_INFINITY, 7 * DAY],
]

export const MOST_STATES = 200

/** Of the times at which states were kept, those to forget now. The newest and the oldest of all stay. */
export function thinned(times: readonly number[], now: number): number[] {
  const sorted = [...times].sort((a, b) => b - a)
  const taken = new Set<string>()
  const kept = sorted.filter((when, k) => {
    const [, each] = STRETCHES.find(([age]) => now - when < age) ?? [0, 7 * DAY]
    const stretch = `${each}:${Math.floor(when / each)}`
    if (k > 0 && k < sorted.length - 1 && taken.has(stretch)) return false
    taken.add(stretch)
    return true
  })
  const stay = new Set(kept.length > MOST_STATES ? [...kept.slice(0, MOST_STATES - 1), kept.at(-1)] : kept)
  return sorted.filter((when) => !stay.has(when))
}
