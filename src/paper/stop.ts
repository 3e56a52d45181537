import type { Poser } from './pose.ts'

/** The opening in degrees at which a mechanism stops, given that it cannot reach `end`, shut or flat. */
export function stopOf(poser: Poser, id: string, end: 0 | 180): number {
  let [reached, stopped] = [180 - end, end as number]
  while (Math.abs(stopped - reached) > 1e-9) {
    const middle = (reached + stopped) / 2
    if (poser(middle).stopped.includes(id)) stopped = middle
    else reached = middle
  }
  return reached
}
