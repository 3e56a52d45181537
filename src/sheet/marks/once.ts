/** Lines of a picture that lie on one another are drawn once: dots on dots close up to dashes, and say fold. */

import type { Point } from '../../drawing/pen/marks.ts'
import { between } from '../../paper/plane/clip.ts'
import { once } from '../../paper/plane/once.ts'
import { sine } from './off-lines.ts'
import type { Stretch } from './stretches.ts'
import { far, nearest } from './stretches.ts'

/** Lines that are no farther from one another are one, mm. */
const SAME = 0.3

/** Lines that differ by less in direction, as the sine of the angle, run along one another. */
const ALONG = 0.3

/** Along one line so much farther on it is another, mm: a narrow shape comes back beside itself. */
const FARTHER = 1.5

/** What is left of a line between others is no line below this, mm: it would be a dot in a gap of theirs. */
const LEAST = 0.6

/** A line that turns by more at a corner ends there, as the cosine of the angle. */
const GOES_ON = 0.8

type Run = readonly Point[]

interface Drawn {
  readonly side: Stretch
  /** Which run it is of, and how far along that it begins, mm. */
  readonly run: number
  readonly at: number
}

/** Drawn lines by where their middle lies. Those that are asked about are no longer than a cell. */
const CELL = 2

const cellOf = (x: number, y: number): number => Math.floor(x / CELL) * 4096 + Math.floor(y / CELL)

/** What is left of a run where no line lies along it that was drawn before; and it is one from then on. */
function leftOfRun(points: readonly Point[], run: number, cells: Map<number, Drawn[]>): readonly Run[] {
  const left: Point[][] = []
  let at = 0
  for (const [k, to] of points.entries()) {
    const from = points[k - 1]
    if (!from) continue
    const one: Drawn = { side: [from, to], run, at }
    at += far(from, to)
    const middle = between(from, to, 0.5)
    if (isDrawn(one, middle, cells)) continue
    const cell = cellOf(...middle)
    const others = cells.get(cell)
    if (others) others.push(one)
    else cells.set(cell, [one])
    if (left.at(-1)?.at(-1) === from) left.at(-1)?.push(to)
    else left.push([from, to])
  }
  const [all, more] = left
  return all && !more && all.length === points.length ? [points] : left
}

const isDrawn = (
  { side, run, at }: Drawn,
  [x, y]: Point,
  cells: ReadonlyMap<number, readonly Drawn[]>,
): boolean =>
  [-CELL, 0, CELL].some((dx) =>
    [-CELL, 0, CELL].some((dy) =>
      cells
        .get(cellOf(x + dx, y + dy))
        ?.some(
          (one) =>
            (one.run !== run || at - one.at > FARTHER) &&
            nearest([x, y], one.side) < SAME &&
            sine(side, one.side) < ALONG,
        ),
    ),
  )

/** Ends that differ by less are one, mm. */
const MEET = 0.01

const endOf = ([x, y]: Point): string => `${Math.round(x / MEET)} ${Math.round(y / MEET)}`

/** Whether one run goes on with another that begins where it ends. */
function goesOn(one: Run, other: Run): boolean {
  const [a, b] = [one.at(-2), one.at(-1)]
  const [c, d] = other
  if (!a || !b || !c || !d) return false
  const dot = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
  return dot > GOES_ON * far(a, b) * far(c, d)
}

/** Runs that go on from one another as one: dots begin anew with each, and would lie beside the last. */
function joined(runs: readonly Run[]): readonly Run[] {
  const chains = new Set<Run>()
  const byEnd = new Map<string, Set<Run>>()
  const ends = (run: Run): readonly string[] => [run[0], run.at(-1)].map((end) => endOf(end as Point))
  const change = (run: Run, isThere: boolean): void => {
    if (isThere) chains.add(run)
    else chains.delete(run)
    for (const end of ends(run)) {
      const there = byEnd.get(end) ?? new Set<Run>()
      byEnd.set(end, there)
      if (isThere) there.add(run)
      else there.delete(run)
    }
  }
  /** With what goes on from its end. */
  const goneOn = (run: Run): Run => {
    const end = endOf(run.at(-1) as Point)
    for (const other of byEnd.get(end) ?? []) {
      const next = endOf(other[0] as Point) === end ? other : other.toReversed()
      if (!goesOn(run, next)) continue
      change(other, false)
      return [...run, ...next.slice(1)]
    }
    return run
  }
  for (const run of runs) {
    const on = goneOn(run)
    const back = goneOn(on.toReversed())
    change(back.length === run.length ? run : back.toReversed(), true)
  }
  return [...chains]
}

/** The same runs, each line of theirs once. Their sides are no longer than a cell. A sheet asks for the same again and again. */
export const drawnOnce = once((runs: readonly Run[]): readonly Run[] => {
  const cells = new Map<number, Drawn[]>()
  const left = joined(runs.flatMap((points, run) => leftOfRun(points, run, cells)))
  // A run that is whole is drawn, however small: a star of the sky.
  const whole = new Set(runs)
  return left.filter((run) => whole.has(run) || longOf(run) >= LEAST)
})

const longOf = (run: Run): number => run.slice(1).reduce((sum, to, k) => sum + far(run[k] as Point, to), 0)
