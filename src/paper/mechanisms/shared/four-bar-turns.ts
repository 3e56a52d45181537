import type { FourBar } from './four-bar.ts'
import type { Jet } from './jet.ts'
import {
  addRates,
  angleRates,
  constant,
  halfSineCosine,
  largestOf,
  product,
  quotient,
  root,
  scaled,
  sum,
} from './jet.ts'

/** Far more than rounding can take away. */
const SPARE = 1 + 1e-9

/**
 * Bounds on how ridge, left and right joint turn with the host, see `Build.turns`: the closure of
 * `four-bar.ts`, carried as intervals with two derivatives. Roots that vanish when the card shuts are
 * taken out first (sin((g - d)/2) sin((g + d)/2) = weight S^2), so that the bounds hold down to shut.
 * At a stop the four-bar's links are in line and it turns infinitely fast: no bound there.
 */
export function fourBarTurns(
  bar: FourBar,
  range: readonly [number, number],
  from: number,
  to: number,
  out: Float64Array,
): void {
  const [least, most] = [(range[0] * Math.PI) / 180, (range[1] * Math.PI) / 180]
  if (to < least || from > most || least > most) {
    // Held at its stop, or where it comes nearest to closing: nothing turns.
    out.fill(0, 0, 6)
    return
  }
  if ((from < least && least > 0) || (to > most && range[1] < 180)) {
    out.fill(Number.POSITIVE_INFINITY, 0, 6)
    return
  }
  const spherical = bar.form === 'spherical'
  const sin = (x: number) => (spherical ? Math.sin(x) : x)
  const cos = (x: number) => (spherical ? Math.cos(x) : 1)
  const { sine: S, cosine: C } = halfSineCosine(from, to)
  const S2 = product(S, S)
  const weight = sin(bar.b1) * sin(bar.b2)
  const d = Math.abs(bar.db)
  const shuts = Math.abs(bar.da) === d || bar.dUp === 0 || bar.dDown === 0
  const rootOfWeight = Math.sqrt(weight)
  const sg = d === 0 ? scaled(S, rootOfWeight) : root(sum(constant(sin(d / 2) ** 2), scaled(S2, weight)))
  const cg = spherical
    ? root(sum(scaled(product(C, C), cos(d / 2) ** 2), scaled(S2, cos((bar.b1 + bar.b2) / 2) ** 2)))
    : constant(1)
  const sigma = (bar.a1 + bar.a2) / 2
  const s0 = sum(scaled(cg, sin(sigma)), scaled(sg, cos(sigma)))
  // The root of s3 alone; where the stop is exactly flat, s3 = weight C^2 / s0.
  const root3 =
    bar.full && !(spherical && sigma > Math.PI / 2 - 1e-12)
      ? product(C, root(quotient(constant(weight), s0)))
      : root(sum(scaled(cg, sin(sigma)), scaled(sg, -cos(sigma))))
  const ridge = { y: constant(0), x: constant(0) }
  const v: { right: { y: Jet; x: Jet }; left: { y: Jet; x: Jet } } = { right: ridge, left: ridge }
  if (shuts && d === 0) {
    v.right = v.left = { y: root3, x: root(s0) }
  } else if (shuts) {
    const big = sum(scaled(sg, cos(d / 2)), scaled(cg, sin(d / 2)))
    const small = {
      y: product(S, product(root3, root(quotient(constant(weight), big)))),
      x: root(product(s0, big)),
    }
    const wide = { y: product(root3, root(big)), x: product(S, root(scaled(quotient(s0, big), weight))) }
    // The joint whose half-sum difference vanishes is the one with the longer base or facet.
    v.right = bar.da > 0 ? small : wide
    v.left = bar.da > 0 ? wide : small
  } else {
    const s1 = sum(scaled(sg, cos(bar.da / 2)), scaled(cg, -sin(bar.da / 2)))
    const s2 = sum(scaled(sg, cos(bar.da / 2)), scaled(cg, sin(bar.da / 2)))
    v.right = { y: product(root(s1), root3), x: root(product(s0, s2)) }
    v.left = { y: product(root(s2), root3), x: root(product(s0, s1)) }
    ridge.y = root(product(s1, s2))
  }
  if (shuts) ridge.y = scaled(S, rootOfWeight)
  ridge.x = product(root(s0), root3)
  const inner = (own: number, other: number, diff: number) =>
    diff === 0
      ? angleRates(C, scaled(S, cos(own)))
      : angleRates(
          scaled(product(S, C), 2 * sin(other)),
          sum(constant(sin(diff)), scaled(S2, 2 * sin(other) * cos(own))),
        )
  // Seen from the outside the page angle is 360 less, and the inner angle changes its sign.
  const sign = (bar.outside ? -1 : 1) * bar.branch * 2
  const joint = (own: number, other: number, diff: number, { y, x }: { y: Jet; x: Jet }) =>
    addRates(inner(own, other, diff), angleRates(y, x), sign)
  const folds = [
    addRates({ first: [0, 0], second: [0, 0] }, angleRates(ridge.y, ridge.x), 2),
    joint(bar.b2, bar.b1, -bar.db, v.left),
    joint(bar.b1, bar.b2, bar.db, v.right),
  ]
  folds.forEach(({ first, second }, k) => {
    out[2 * k] = largestOf(first) * SPARE
    out[2 * k + 1] = largestOf(second) * SPARE
  })
}
