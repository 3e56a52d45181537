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
