/** The strips to which tabs of other pieces are glued from behind, and how a sheet shows where they are. Lengths in mm. */
import type { Point } from '../../drawing/pen/marks.ts'
import type { JointPlace } from './joint-places.ts'
import type { Stretch } from './stretches.ts'
import { edges, far, nearest, toward } from './stretches.ts'

/** Lines that are no further from one another are one, mm. */
const NEAR = 0.2

/** A stretch shorter than this is left out. */
const SHORT = 0.8

/** What is left of a stretch beside lines that run along it; the stretch itself where none does. */
export function leftOf(side: Stretch, lines: readonly Stretch[]): readonly Stretch[] {
  const [a, b] = side
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const [u, v] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  const at = ([x, y]: Point): number => (x - a[0]) * u + (y - a[1]) * v
  const off = ([x, y]: Point): number => Math.abs((x - a[0]) * v - (y - a[1]) * u)
  let left: readonly (readonly [from: number, to: number])[] = [[0, long]]
  for (const [c, d] of lines) {
    if (off(c) > NEAR || off(d) > NEAR) continue
    const [start, end] = [Math.min(at(c), at(d)), Math.max(at(c), at(d))]
    // One that goes on where the other ends lies beside it, not on it.
    if (Math.min(long, end) - Math.max(0, start) < SHORT) continue
    const [from, to] = [start - NEAR, end + NEAR]
    left = left.flatMap(([p, q]) =>
      q <= from || p >= to
        ? [[p, q] as const]
        : [[p, from] as const, [to, q] as const].filter(([s, t]) => t - s > SHORT),
    )
  }
  const whole = left[0]
  if (whole?.[0] === 0 && whole[1] === long) return [side]
  return left.map(
    ([p, q]): Stretch => [
      [a[0] + p * u, a[1] + p * v],
      [a[0] + q * u, a[1] + q * v],
    ],
  )
}

/** Where the fold of the other piece stands, and a bar across each of its ends. */
export interface StripLines {
  readonly line: readonly Stretch[]
  readonly bars: readonly Stretch[]
}

/** How long a bar is that is to be pricked through its middle, mm. */
const BAR = 2

/** So much of its line tells where a strip ends, and so much beside it on which side it lies, mm: three dots each, shorter than the tick of a fold. */
const ALONG = 2.6
const SIDE = 2.6

/** A strip that ends at a cut has its corner so far within it, mm: what runs to the rim is the tick of a fold. */
const OFF_RIM = 2

/** Beside a fold that runs along its line the other leg begins so far off, mm. */
const OFF_FOLD = 1

/** Whether this is where a tab of another piece is glued behind. */
export const isStrip = ({ isOwn, isFlat, isTaped, isBehind }: JointPlace): boolean =>
  isBehind && !isOwn && !isFlat && !isTaped

/** A bar across the end of a line. */
function barAt([x, y]: Point, [u, v]: Point): Stretch {
  const long = Math.hypot(u - x, v - y) || 1
  const [dx, dy] = [((v - y) / long) * (BAR / 2), (-(u - x) / long) * (BAR / 2)]
  return [
    [x - dx, y - dy],
    [x + dx, y + dy],
  ]
}

/**
 * Where the fold of a piece stands that is glued behind, to be pricked through: its dots lie inside its place. The bars
 * are left out where a line along it ends there too.
 */
export function trueLine(joint: JointPlace, [a, b]: readonly Point[], drawn: readonly Stretch[]): StripLines {
  if (!isStrip(joint) || !a || !b) return { line: [], bars: [] }
  const line: Stretch = [a, b]
  const ends = drawn.filter((one) => leftOf(line, [one])[0] !== line).flat()
  const bars = [barAt(a, b), barAt(b, a)].filter(
    (_, k) => !ends.some((end) => far(end, line[k] as Point) < NEAR),
  )
  return { line: leftOf(line, drawn), bars: bars.flatMap((bar) => leftOf(bar, drawn)) }
}

/** On a good copy the ends of a strip that is glued behind: a corner each, on its line and to its side, off every cut. */
export function stripEnds(
  [a, b, ...rest]: readonly Point[],
  folds: readonly Stretch[],
  cuts: readonly Stretch[],
): readonly Stretch[] {
  const [c, d] = [rest[0], rest.at(-1)]
  if (!a || !b || !c || !d) return []
  const long = far(a, b) || 1
  const [u, v] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  const off = Math.sign((d[0] - a[0]) * -v + (d[1] - a[1]) * u)
  const aside = ([x, y]: Point, by: number): Point => [x - off * by * v, y + off * by * u]
  const cornerAt = (end: Point, to: Point): readonly Stretch[] => {
    const isCut = cuts.some((cut) => nearest(end, cut) < OFF_RIM)
    const from = isCut ? toward(end, to, Math.min(OFF_RIM, long / 4)) : end
    const leg: Stretch = [from, toward(from, to, Math.min(ALONG, long / 4))]
    // A fold that runs along it has ticks of its own.
    const left = leftOf(leg, folds)
    return [...left, [aside(from, left[0] === leg ? 0 : OFF_FOLD), aside(from, SIDE)]]
  }
  return [...cornerAt(a, b), ...cornerAt(b, a)]
}

/** The end of a strip that is nearer to the edge of its piece, the upper of two: there its letter stands beside that. */
export function nearEnd(points: readonly Point[], outline: readonly Point[]): readonly Point[] {
  const [a, b, ...rest] = points
  const [c, d] = [rest[0], rest.at(-1)]
  if (!a || !b || !c || !d) return points
  const away = (end: readonly Point[]): number =>
    Math.min(...end.flatMap((p) => edges(outline).map((side) => nearest(p, side))))
  const first = [a, toward(a, b, SIDE), toward(d, c, SIDE), d]
  const last = [b, toward(b, a, SIDE), toward(c, d, SIDE), c]
  const [upper, lower] = a[1] <= b[1] ? [first, last] : [last, first]
  return away(lower) < away(upper) - NEAR ? lower : upper
}
