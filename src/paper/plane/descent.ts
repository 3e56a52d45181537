/** Least squares with more unknowns than equations. */

/** Bounds of one unknown. */
export interface Bounds {
  readonly min: number
  readonly max: number
}

/** What is missed at a point, one number for each equation; null where there is nothing. */
export type Missed = (x: readonly number[]) => readonly number[] | null

/** Steps that a descent takes at most, and the steps of its differences. */
const MOST_STEPS = 14

const STEP = 1e-3

/** Better by less than this share, so many times running, is creeping towards a place that misses. */
const CREEPING = 0.9

const MOST_CREEPS = 3

const norm = (v: readonly number[]): number => Math.hypot(...v)

/** The solution of a few linear equations, by Gaussian elimination with the largest pivot; null if they have none. */
export function solution(matrix: readonly (readonly number[])[], right: readonly number[]): number[] | null {
  const rows = matrix.map((row, i) => [...row, right[i] as number])
  const n = rows.length
  for (let k = 0; k < n; k++) {
    let best = k
    for (let i = k + 1; i < n; i++)
      if (Math.abs((rows[i] as number[])[k] as number) > Math.abs((rows[best] as number[])[k] as number))
        best = i
    ;[rows[k], rows[best]] = [rows[best] as number[], rows[k] as number[]]
    const pivot = rows[k] as number[]
    if (!(Math.abs(pivot[k] as number) > 1e-12)) return null
    for (let i = k + 1; i < n; i++) {
      const row = rows[i] as number[]
      const part = (row[k] as number) / (pivot[k] as number)
      for (let j = k; j <= n; j++) row[j] = (row[j] as number) - part * (pivot[j] as number)
    }
  }
  const x: number[] = new Array(n).fill(0)
  for (let i = n - 1; i >= 0; i--) {
    const row = rows[i] as number[]
    let rest = row[n] as number
    for (let j = i + 1; j < n; j++) rest -= (row[j] as number) * (x[j] as number)
    x[i] = rest / (row[i] as number)
  }
  return x
}

/** What moves less than this over a step of the differences does not move. */
const STILL = 1e-9

/** The derivatives of what is missed by each unknown, by differences forward, or back where nothing is or moves ahead; null if neither is. */
export function slopes(missed: Missed, x: readonly number[], here: readonly number[]): number[][] | null {
  const columns: number[][] = []
  for (let k = 0; k < x.length; k++) {
    const moved = (by: number) => missed(x.map((v, i) => (i === k ? v + by : v)))
    const slope = (by: number) => moved(by)?.map((v, i) => (v - (here[i] as number)) / by)
    const ahead = slope(STEP)
    const column = ahead?.some((v) => Math.abs(v) * STEP > STILL) ? ahead : (slope(-STEP) ?? ahead)
    if (!column) return null
    columns.push(column)
  }
  return columns
}

/**
 * From a point towards one that misses nothing, as near to the first as may be: of all steps that the equations leave
 * open the shortest is taken, damped (Levenberg 1944, in its dual form), and every unknown is kept within its bounds.
 * Ends when it misses no more than `enough`, or comes no nearer. Null if nothing is at the start.
 */
export function descended(
  missed: Missed,
  start: readonly number[],
  bounds: readonly Bounds[],
  enough: number,
): { readonly x: readonly number[]; readonly miss: number } | null {
  let x = start
  let here = missed(x)
  if (!here) return null
  let damping = 1e-3
  let creeps = 0
  for (let turn = 0; turn < MOST_STEPS && norm(here) > enough; turn++) {
    const J = slopes(missed, x, here)
    if (!J) break
    // What is at its bound and would go past it stays there.
    let open = J.map(() => true)
    let next: readonly number[] | null = null
    let there: readonly number[] | null = null
    for (let tries = 0; tries < 6; tries++) {
      const now = here
      const matrix = now.map((_, i) =>
        now.map(
          (_, j) =>
            J.reduce((sum, c, k) => (open[k] ? sum + (c[i] as number) * (c[j] as number) : sum), 0) +
            (i === j ? damping : 0),
        ),
      )
      const weights = solution(matrix, now)
      if (!weights) break
      const way = J.map((c, k) =>
        open[k] ? -c.reduce((sum, v, i) => sum + v * (weights[i] as number), 0) : 0,
      )
      const wanted = x.map((v, k) => v + (way[k] as number))
      const blocked = wanted.map((v, k) => {
        const { min, max } = bounds[k] as Bounds
        return (
          open[k] === true && ((v < min && (x[k] as number) <= min) || (v > max && (x[k] as number) >= max))
        )
      })
      if (blocked.some(Boolean)) {
        open = open.map((is, k) => is && !blocked[k])
        continue
      }
      next = wanted.map((v, k) => Math.min((bounds[k] as Bounds).max, Math.max((bounds[k] as Bounds).min, v)))
      there = missed(next)
      if (there && norm(there) < norm(here)) break
      there = null
      damping = damping * 10 + 1e-3
    }
    if (!next || !there) break
    creeps = norm(there) > CREEPING * norm(here) ? creeps + 1 : 0
    x = next
    here = there
    damping = Math.max(1e-6, damping / 5)
    if (creeps > MOST_CREEPS) break
  }
  return { x, miss: norm(here) }
}
