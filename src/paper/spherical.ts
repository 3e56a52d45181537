/**
 * Triangles of directions round an apex: sides are the angles between two creases, angles the
 * inside angles between two panels. All in radians, sides and angles from 0 to pi.
 *
 *            C
 *           / \          a, b, c lie opposite A, B, C
 *        b /   \ a
 *         A-----B
 *            c
 *
 * The plain rule cos a = cos b cos c + sin b sin c cos A (Todhunter, Spherical Trigonometry, ch. IV)
 * loses half its digits near 0 and pi. The forms below are the same rule in half angles: sums of terms
 * that are never negative, so that nothing cancels.
 */

/** How far sides may miss a triangle by rounding alone, radians: a few units in the last place of pi. */
const ROUNDING = 4e-15

/** The side opposite the angle A, given the two sides that enclose it. */
export function sideFromSidesAngle(b: number, c: number, A: number): number {
  const both = Math.sin(b) * Math.sin(c)
  return (
    2 *
    Math.atan2(
      Math.hypot(Math.sin((b - c) / 2), Math.sqrt(both) * Math.sin(A / 2)),
      Math.hypot(Math.cos((b + c) / 2), Math.sqrt(both) * Math.cos(A / 2)),
    )
  )
}

/**
 * The angle opposite the side a (Todhunter, art. 49), or null if the three sides close no triangle:
 * one is longer than the other two together, or all three are longer than a great circle.
 */
export function angleFromSides(a: number, b: number, c: number): number | null {
  const spare = [(b + c - a) / 2, (c + a - b) / 2, (a + b - c) / 2, Math.PI - (a + b + c) / 2]
  if (!spare.every((part) => part >= -ROUNDING)) return null
  const [sa, sb, sc, round] = spare.map((part) => Math.sin(Math.max(0, part))) as [number, number, number, number]
  return 2 * Math.atan2(Math.sqrt(sb * sc), Math.sqrt(sa * round))
}

/**
 * The two places of the ridge of a V-fold, as angles from the host crease in the mirror plane, given
 * the base angle (crease to fold), the facet angle (fold to ridge) and the cosine of half the
 * host's inside angle. `popped` stands up, `lying` is the one back in the gutter (negative: behind the
 * page); both are real. Null if the host cannot open that far.
 *
 * With the foot of the perpendicular from the fold on the mirror plane at `foot` from the crease, the
 * ridge lies `reach` to either side of it: cos facet = cos reach · cos (perpendicular). That is
 * foot ± arccos(cos facet / R) with the root of R² − cos² facet written so that it keeps its digits:
 * sin(facet − base) sin(facet + base) + (sin base · cosine)². A mechanism cut from its host has equal
 * angles, and the root is exact.
 */
export function ridgePlaces(
  base: number,
  facet: number,
  cosine: number,
): { readonly popped: number; readonly lying: number } | null {
  const low = Math.sin(base) * cosine
  const square = Math.sin(facet - base) * Math.sin(facet + base) + low * low
  if (square < -ROUNDING) return null
  const foot = Math.atan2(low, Math.cos(base))
  const reach = Math.atan2(Math.sqrt(Math.max(0, square)), Math.cos(facet))
  return { popped: foot + reach, lying: foot - reach }
}
