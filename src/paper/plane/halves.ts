import { signedArea } from './convex.ts'
import type { Flat } from './lay.ts'

/** Corners nearer than this are one, mm. */
const ONE = 1e-6

/** Smaller than this a part is not paper, mm². */
const NOTHING = 1e-3

/** An outline without points that stand on the one before. */
const tidy = (points: readonly Flat[]): Flat[] =>
  points.filter((p, k) => {
    const q = points[(k + points.length - 1) % points.length] as Flat
    return points.length === 1 || Math.hypot(p[0] - q[0], p[1] - q[1]) > ONE
  })

/** The half of the plane where `way[0] * across + way[1] * along <= upTo`. */
export interface Half {
  readonly way: Flat
  readonly upTo: number
}

/** How far a point lies within a half; below 0 outside. In mm where `way` is of length 1. */
export const depthIn = ({ way, upTo }: Half, [a, l]: Flat): number => upTo - way[0] * a - way[1] * l

/**
 * The parts of a simple outline, which may have dents, that lie in a half of the plane: none, one or several. What
 * is left goes along the cut from one crossing to the next one that is joined to it by paper.
 */
export function inHalf(outline: readonly Flat[], half: Half): readonly (readonly Flat[])[] {
  const off = outline.map((p) => depthIn(half, p))
  if (off.every((x) => x >= 0)) return [outline]
  if (off.every((x) => x < 0)) return []
  // Every stretch of the outline that stays, from where it comes in to where it goes out.
  const runs: { readonly points: Flat[]; readonly from: number; readonly to: number }[] = []
  const along = ([a, l]: Flat): number => a * half.way[1] - l * half.way[0]
  const meet = (i: number, j: number): Flat => {
    const [p, q] = [outline[i] as Flat, outline[j] as Flat]
    const t = (off[i] as number) / ((off[i] as number) - (off[j] as number))
    return [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
  }
  const n = outline.length
  for (let k = 0; k < n; k++) {
    const before = (k + n - 1) % n
    if ((off[k] as number) < 0 || (off[before] as number) >= 0) continue
    const comesIn = meet(before, k)
    const points: Flat[] = [comesIn]
    let at = k
    while ((off[at] as number) >= 0) {
      points.push(outline[at] as Flat)
      at = (at + 1) % n
    }
    const goesOut = meet((at + n - 1) % n, at)
    points.push(goesOut)
    runs.push({ points, from: along(comesIn), to: along(goesOut) })
  }
  // Along the cut, paper lies between the first crossing and the second, the third and the fourth, and so on.
  const crossings = runs
    .flatMap(({ from, to }, run) => [
      { run, isEnd: false, at: from },
      { run, isEnd: true, at: to },
    ])
    .sort((one, two) => one.at - two.at)
  const next = new Map<number, number>()
  for (let k = 0; k + 1 < crossings.length; k += 2) {
    const [one, two] = crossings.slice(k, k + 2) as [(typeof crossings)[number], (typeof crossings)[number]]
    if (one.isEnd === two.isEnd) continue
    next.set(one.isEnd ? one.run : two.run, one.isEnd ? two.run : one.run)
  }
  const left = new Set(runs.keys())
  const parts: Flat[][] = []
  while (left.size > 0) {
    const first = Math.min(...left)
    const points: Flat[] = []
    for (let run: number | undefined = first; run !== undefined && left.delete(run); run = next.get(run))
      points.push(...(runs[run]?.points ?? []))
    parts.push(tidy(points))
  }
  return parts.filter((part) => part.length > 2 && Math.abs(signedArea(part)) > NOTHING)
}
