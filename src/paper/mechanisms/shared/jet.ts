/**
 * Bounds on a function of one variable, its first and its second derivative over a stretch of that
 * variable: three intervals, carried through sums, products, roots and angles by interval arithmetic
 * (R. E. Moore, Interval Analysis, 1966) and the chain rule. Where a bound cannot be had (a root at
 * nought) it is infinite. Rounding is not directed: callers widen the last answer by far more than the
 * few last digits that can be lost.
 */
export interface Jet {
  readonly value: Interval
  readonly first: Interval
  readonly second: Interval
}

type Interval = readonly [low: number, high: number]

const WHOLE: Interval = [Number.NEGATIVE_INFINITY, Number.POSITIVE_INFINITY]

const plus = (a: Interval, b: Interval): Interval => [a[0] + b[0], a[1] + b[1]]

const minus = (a: Interval, b: Interval): Interval => [a[0] - b[1], a[1] - b[0]]

const by = (a: Interval, k: number): Interval => (k >= 0 ? [a[0] * k, a[1] * k] : [a[1] * k, a[0] * k])

function times(a: Interval, b: Interval): Interval {
  const [p, q, r, s] = [a[0] * b[0], a[0] * b[1], a[1] * b[0], a[1] * b[1]]
  const low = Math.min(p, q, r, s)
  // Nought times infinity is NaN: nothing is known.
  return Number.isNaN(low) ? WHOLE : [low, Math.max(p, q, r, s)]
}

function square(a: Interval): Interval {
  const [p, q] = [a[0] * a[0], a[1] * a[1]]
  return a[0] <= 0 && a[1] >= 0 ? [0, Math.max(p, q)] : [Math.min(p, q), Math.max(p, q)]
}

const over = (a: Interval, b: Interval): Interval => (b[0] > 0 ? times(a, [1 / b[1], 1 / b[0]]) : WHOLE)

export const constant = (k: number): Jet => ({ value: [k, k], first: [0, 0], second: [0, 0] })

export const sum = (a: Jet, b: Jet): Jet => ({
  value: plus(a.value, b.value),
  first: plus(a.first, b.first),
  second: plus(a.second, b.second),
})

export const scaled = (a: Jet, k: number): Jet => ({
  value: by(a.value, k),
  first: by(a.first, k),
  second: by(a.second, k),
})

export const product = (a: Jet, b: Jet): Jet => ({
  value: times(a.value, b.value),
  first: plus(times(a.first, b.value), times(a.value, b.first)),
  second: plus(plus(times(a.second, b.value), by(times(a.first, b.first), 2)), times(a.value, b.second)),
})

/** a / b; b must stay above nought. */
export function quotient(a: Jet, b: Jet): Jet {
  const value = over(a.value, b.value)
  const first = over(minus(a.first, times(value, b.first)), b.value)
  const second = over(minus(minus(a.second, by(times(first, b.first), 2)), times(value, b.second)), b.value)
  return { value, first, second }
}

/** The root; what is under it must stay above nought for its derivatives to be bounded. */
export function root(a: Jet): Jet {
  const value: Interval = [Math.sqrt(Math.max(0, a.value[0])), Math.sqrt(Math.max(0, a.value[1]))]
  const first = over(a.first, by(value, 2))
  const second = over(minus(a.second, by(square(first), 2)), by(value, 2))
  return { value, first, second }
}

/** First and second derivative of the angle whose sine is as y and cosine as x. */
export function angleRates(y: Jet, x: Jet): { first: Interval; second: Interval } {
  const r2 = plus(square(x.value), square(y.value))
  const first = over(minus(times(x.value, y.first), times(y.value, x.first)), r2)
  const turn = minus(times(x.value, y.second), times(y.value, x.second))
  const stretch = plus(times(x.value, x.first), times(y.value, y.first))
  return { first, second: over(minus(turn, by(times(first, stretch), 2)), r2) }
}

/** Sine and cosine of half the variable, over `from` to `to` radians within 0 to 2 pi. */
export function halfSineCosine(from: number, to: number): { sine: Jet; cosine: Jet } {
  const [a, b] = [from / 2, to / 2]
  const top = a <= Math.PI / 2 && b >= Math.PI / 2
  const [p, q] = [Math.sin(a), Math.sin(b)]
  const S: Interval = [Math.min(p, q), top ? 1 : Math.max(p, q)]
  const C: Interval = [Math.cos(b), Math.cos(a)]
  return {
    sine: { value: S, first: by(C, 0.5), second: by(S, -0.25) },
    cosine: { value: C, first: by(S, -0.5), second: by(C, -0.25) },
  }
}

/** The largest size in an interval. */
export const largestOf = (a: Interval): number => Math.max(Math.abs(a[0]), Math.abs(a[1]))

export const addRates = (
  a: { first: Interval; second: Interval },
  b: { first: Interval; second: Interval },
  k: number,
): { first: Interval; second: Interval } => ({
  first: plus(a.first, by(b.first, k)),
  second: plus(a.second, by(b.second, k)),
})
