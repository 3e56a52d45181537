import type { Vec3 } from './vector.ts'

/**
 * A crease at one opening: 14 numbers.
 *   0-2 origin, 3-5 x, 6-8 d (direction), 9-11 n (half-way between the two panels, inside),
 *   12 sine and 13 cosine of half the inside angle.
 * Across the right panel = S x + C n; across the left one = -S x + C n. All of x, d, n are unit and square.
 *
 *        l \  n  / r        looking along d
 *           \ ^ /
 *            \|/
 *             o---> x
 */
export type Frame = Float64Array

/** A frame to be written. */
export const emptyFrame = (): Frame => new Float64Array(14)

/** A crease along y at the origin, its panels on either side of z, shut: as the gutter lies in the world. */
export const uprightFrame = (): Frame => Float64Array.of(0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 1)

/** A point or direction of a frame: its origin (0), x (3), direction (6) or n (9). */
export const partOf = (f: Frame, from: 0 | 3 | 6 | 9): Vec3 =>
  [f[from], f[from + 1], f[from + 2]] as unknown as Vec3
