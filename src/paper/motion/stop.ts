import type { Poser } from './pose.ts'

/** Mechanisms whose whole motion takes less than this are missed, degrees. */
const FINEST = 180 / 128

/**
 * An opening in degrees that a mechanism lets the card reach, or null if there is none: the end first, then
 * halves, quarters, eighths of the whole motion.
 */
function reachable(poser: Poser, id: string, end: 0 | 180): number | null {
  const reached = (opening: number) => !poser(opening).stopped.includes(id)
  if (reached(end)) return end
  for (let step = 180; step >= FINEST; step /= 2)
    for (let opening = step / 2; opening < 180; opening += step) if (reached(opening)) return opening
  return null
}

/**
 * The opening in degrees at which a mechanism stops, given that it cannot reach `end`, shut or flat; the
 * other end if it lets the card reach no opening at all.
 */
export function stopOf(poser: Poser, id: string, end: 0 | 180): number {
  const other = end === 0 ? 180 : 0
  let reached = reachable(poser, id, other)
  if (reached === null) return other
  let stopped: number = end
  while (Math.abs(stopped - reached) > 1e-9) {
    const middle: number = (reached + stopped) / 2
    if (poser(middle).stopped.includes(id)) stopped = middle
    else reached = middle
  }
  return reached
}
