/** Searching along one number. */

/**
 * Halves the stretch between a value at which something holds and one at which it does not, until it is
 * `near` or less long. Returns its two ends, the one at which it holds first.
 */
export function lastGood(
  holds: (x: number) => boolean,
  good: number,
  bad: number,
  near: number,
): [good: number, bad: number] {
  const work = halving(good, bad, near)
  let step = work.next(false)
  while (!step.done) step = work.next(holds(step.value))
  return step.value
}

/** The same step by step, for a caller that has more to do: it yields a value, and is told whether it holds there. */
export function* halving(
  good: number,
  bad: number,
  near: number,
): Generator<number, [good: number, bad: number], boolean> {
  let [yes, no] = [good, bad]
  while (Math.abs(no - yes) > near) {
    const middle = (yes + no) / 2
    // Two neighbours among the numbers of the machine have nothing between them.
    if (middle === yes || middle === no) break
    if (yield middle) yes = middle
    else no = middle
  }
  return [yes, no]
}

const GOLDEN = (Math.sqrt(5) - 1) / 2

/**
 * Narrows a stretch round the largest value of a function with one summit to `near` or less, by golden
 * sections (Kiefer 1953). Returns the stretch's two ends.
 */
export function summit(
  f: (x: number) => number,
  from: number,
  to: number,
  near: number,
): [low: number, high: number] {
  let [low, high] = [from, to]
  let [x1, x2] = [high - GOLDEN * (high - low), low + GOLDEN * (high - low)]
  let [f1, f2] = [f(x1), f(x2)]
  while (high - low > near) {
    if (f1 > f2) {
      ;[high, x2, f2] = [x2, x1, f1]
      x1 = high - GOLDEN * (high - low)
      f1 = f(x1)
    } else {
      ;[low, x1, f1] = [x1, x2, f2]
      x2 = low + GOLDEN * (high - low)
      f2 = f(x2)
    }
  }
  return [low, high]
}

/**
 * Largest value of a smooth function between a and b: golden sections in the bracket round the best of a
 * coarse grid.
 */
export function largest(
  f: (x: number) => number,
  a: number,
  b: number,
  grid = 45,
): { x: number; value: number } {
  const step = (b - a) / grid
  let best = a
  for (let k = 1; k <= grid; k++) if (f(a + k * step) > f(best)) best = a + k * step
  const [low, high] = summit(f, Math.max(a, best - step), Math.min(b, best + step), 1e-9 * (b - a))
  const x = (low + high) / 2
  const inner = f(x)
  return f(best) > inner ? { x: best, value: f(best) } : { x, value: inner }
}
