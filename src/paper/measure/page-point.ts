import type { Flat } from '../plane/lay.ts'
import type { Vec3 } from '../plane/vector.ts'
import { halfAngle } from '../plane/vector.ts'

/** A point drawn on the right page of a bare card, and its twin on the left page, at one opening; mm. */
export interface PagePoint {
  readonly at: Vec3
  readonly twin: Vec3
  /** Between the two, in a straight line through the air. */
  readonly gape: number
  /** Distance from the gutter: the same at every opening. */
  readonly standOff: number
  /** Position along the gutter. */
  readonly reach: number
}

/**
 * Where a point of the right page, `[across, along]` in mm, stands at an opening in degrees.
 * It turns about the gutter on a circle, so it is the chord 2 r sin(opening / 2) away from its twin.
 */
export function pagePoint([across, along]: Flat, opening: number): PagePoint {
  const [sine, cosine] = halfAngle(opening)
  return {
    at: [across * sine, along, across * cosine],
    twin: [-across * sine, along, across * cosine],
    gape: 2 * across * sine,
    standOff: across,
    reach: along,
  }
}
