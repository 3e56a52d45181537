import type { Flat } from './lay.ts'
import type { Segment } from './segment.ts'
import { nearestOn, sideOf } from './segment.ts'

/** Where two segments cross, both ends included; null if they do not, or run along each other. */
export function crossing(s: Segment, t: Segment): Flat | null {
  const [a, b] = [sideOf(t.a, t.b, s.a), sideOf(t.a, t.b, s.b)]
  if (a * b > 0 || a === b) return null
  if (sideOf(s.a, s.b, t.a) * sideOf(s.a, s.b, t.b) > 0) return null
  const k = a / (a - b)
  return [s.a[0] + k * (s.b[0] - s.a[0]), s.a[1] + k * (s.b[1] - s.a[1])]
}

export interface Gap {
  readonly distance: number
  readonly from: Flat
  readonly to: Flat
}

/** The least distance of two segments, mm, and the two points it lies between. */
export function gapOf(s: Segment, t: Segment): Gap {
  const meet = crossing(s, t)
  if (meet) return { distance: 0, from: meet, to: meet }
  let best: Gap = { distance: Number.POSITIVE_INFINITY, from: s.a, to: t.a }
  for (const p of [s.a, s.b]) {
    const { distance, at } = nearestOn(t, p)
    if (distance < best.distance) best = { distance, from: p, to: at }
  }
  for (const p of [t.a, t.b]) {
    const { distance, at } = nearestOn(s, p)
    if (distance < best.distance) best = { distance, from: at, to: p }
  }
  return best
}

export const middleOf = ({ a, b }: Segment): Flat => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]
