/** Where folds end: a dash that touched a cut would be cut, and one that touched another fold's would go on in it. Lengths in mm. */
import type { Point } from '../../drawing/pen/marks.ts'
import type { Piece, PieceLine } from '../../paper/index.ts'
import { crossing } from '../../paper/plane/gap.ts'
import type { Stretch } from './stretches.ts'
import { far, nearest, stretchesOf } from './stretches.ts'

/** How far a line keeps clear of what it meets at its start and at its end. */
export type Clear = readonly [start: number, end: number]

/** A line of a piece, and how far its first and its last dash keep clear. */
export interface ClearLine {
  readonly line: PieceLine
  readonly clear: Clear
}

const OF_CUTS = 0.9

/** Two folds that meet both keep clear: between them is then a gap as within their dashes. */
const OF_FOLDS = 0.7

/** What is no further off meets. */
const MEETS = 0.2

/** A tick at the end of a fold: long enough to show its dashes once. */
const TICK = 4

/** A shorter tick has dots and gaps that no printer shows. */
const LEAST_TICK = 3

const isFold = ({ kind }: PieceLine): boolean => kind !== 'cut' && kind !== 'glue'

/** What is left of an old fold between the cuts that cross it: its dots would close up with them. */
function between(line: PieceLine, cuts: readonly Stretch[]): readonly PieceLine[] {
  const [a, b, more] = line.points
  if (line.kind !== 'crease' || !a || !b || more) return [line]
  const stops = cuts
    .flatMap(([c, d]): Point[] => {
      const at = crossing({ a, b }, { a: c, b: d })
      return at ? [at] : []
    })
    .sort((p, q) => far(a, p) - far(a, q))
  const ends: readonly Point[] = [a, ...stops, b]
  return ends
    .slice(1)
    .map((end, k): PieceLine => ({ ...line, points: [ends[k] as Point, end] }))
    .filter(({ points: [from, to] }) => from && to && far(from, to) > MEETS)
}

/** Cuts and folds of a piece, each fold with how far it keeps clear at either end. */
export function clearLines({ lines }: Pick<Piece, 'lines'>): readonly ClearLine[] {
  const cuts = lines
    .filter(({ kind }) => kind === 'cut')
    .flatMap(({ points, closed = false }) => stretchesOf({ runs: [points], closed }))
  const drawn = lines.filter(({ kind }) => kind !== 'glue').flatMap((line) => between(line, cuts))
  const folds = drawn.filter(isFold)
  return drawn.map((line): ClearLine => {
    const [a, b, more] = line.points
    if (!isFold(line) || !a || !b || more) return { line, clear: [0, 0] }
    const clearAt = (end: Point): number => {
      if (cuts.some((cut) => nearest(end, cut) < MEETS)) return OF_CUTS
      const meets = (other: PieceLine): boolean =>
        other !== line && other.points.some((point) => far(point, end) < MEETS)
      return folds.some(meets) ? OF_FOLDS : 0
    }
    return { line, clear: [clearAt(a), clearAt(b)] }
  })
}

/** The two ends of a fold, for a sheet whose face will be seen; of a short one, whose ends would show nothing, the whole. */
export function foldTicks(
  [a, b]: Stretch,
  clear: Clear,
): readonly { readonly points: Stretch; readonly clear: Clear }[] {
  const long = far(a, b)
  const part = Math.min(TICK, (long - clear[0] - clear[1]) / 3)
  if (part < LEAST_TICK) return long > 0 ? [{ points: [a, b], clear }] : []
  const at = (t: number): Point => [a[0] + (t / long) * (b[0] - a[0]), a[1] + (t / long) * (b[1] - a[1])]
  const [from, to] = [clear[0], long - clear[1]]
  return [
    { points: [at(from), at(from + part)], clear: [0, 0] },
    { points: [at(to - part), at(to)], clear: [0, 0] },
  ]
}
