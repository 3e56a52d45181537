/** White paper under lines that would not show on what is painted there. Lengths in mm, on the page. */
import type { Point } from '../../drawing/pen/marks.ts'
import { between } from '../../paper/plane/clip.ts'
import type { Rectangle } from './clip.ts'
import { overlap } from './clip.ts'
import type { Ground } from './ground.ts'
import { contrast, WHITE } from './ground.ts'
import { lookOf } from './looks.ts'
import { isAlong, sine } from './off-lines.ts'
import type { SheetMark, SheetPath } from './setting.ts'
import type { Stretch } from './stretches.ts'
import { edges, far, stretchesOf } from './stretches.ts'

/** Lines, or parts of them, with white paper on either side. */
export interface Band {
  readonly runs: readonly (readonly Point[])[]
  readonly closed: boolean
  /** mm. */
  readonly width: number
}

/** White paper on either side of a line that would not show on what is painted there: it stays in view. */
const BESIDE = 0.3

/** As much brighter than its line a ground has to be for the line to show: WCAG 2.2, 1.4.11. */
const SHOWS = 3

/** Where a line is looked at beside it, beyond its own half width, and how finely along it. */
const NEXT_TO = 0.2

const STEP = 0.4

/** A line of which a larger part would hide is white all along: white that comes and goes is one more dash pattern. */
const GOOD_PART = 1 / 5

/** A shorter line is white all along wherever any of it would hide. */
const SHORT = 6

/** White goes on over gaps that are shorter, and on to ends that are nearer. */
const GAP = 8

/** A line that turns by less at a corner goes on, as the cosine of the angle. */
const GOES_ON = Math.cos(Math.PI / 6)

type Span = readonly [from: number, to: number]

/** A stretch, how long it is, and where it hides, mm along it. */
interface Part {
  readonly stretch: Stretch
  readonly long: number
  readonly hidden: readonly Span[]
}

/** Parts that are one to the eye, in turn. */
type Line = readonly Part[]

const goesOn = ([a, b]: Stretch, [c, d]: Stretch): boolean => {
  const dot = (b[0] - a[0]) * (d[0] - c[0]) + (b[1] - a[1]) * (d[1] - c[1])
  return dot >= GOES_ON * far(a, b) * far(c, d)
}

/** Parts in turn, parted where one is not one with the one before. */
function linesOf(parts: readonly Part[], isOne: (a: Stretch, b: Stretch) => boolean): readonly Line[] {
  const lines: Part[][] = []
  for (const part of parts) {
    const before = lines.at(-1)?.at(-1)
    if (before && isOne(before.stretch, part.stretch)) lines.at(-1)?.push(part)
    else lines.push([part])
  }
  return lines
}

type Hides = (point: Point, across: Point) => boolean

function lookedAt(stretch: Stretch, hides: Hides): Part {
  const [a, b] = stretch
  const long = far(a, b)
  const looks = Math.max(1, Math.ceil(long / STEP))
  const across: Point = [(a[1] - b[1]) / (long || 1), (b[0] - a[0]) / (long || 1)]
  const found: [number, number][] = []
  for (let k = 0; k < looks; k++) {
    if (!hides(between(a, b, (k + 0.5) / looks), across)) continue
    const [from, to] = [(k / looks) * long, ((k + 1) / looks) * long]
    const last = found.at(-1)
    if (last && from - last[1] < STEP / 2) last[1] = to
    else found.push([from, to])
  }
  return { stretch, long, hidden: found }
}

const longOf = (line: Line): number => line.reduce((sum, { long }) => sum + long, 0)

/** Where a line hides, mm along it. */
function hiddenOn(line: Line): readonly Span[] {
  let start = 0
  return line.flatMap(({ long, hidden }) => {
    const first = start
    start += long
    return hidden.map(([from, to]): Span => [first + from, first + to])
  })
}

const isMuch = (spans: readonly Span[], long: number): boolean =>
  spans.length > 0 &&
  (long < SHORT || spans.reduce((sum, [from, to]) => sum + to - from, 0) > GOOD_PART * long)

/** What is white of a line so long that hides there: all of it, or one part as far as an end. Parts in between would be a pattern. */
function whites(spans: readonly Span[], long: number): readonly Span[] {
  const all: readonly Span[] = [[0, long]]
  if (spans.length === 0) return []
  if (isMuch(spans, long)) return all
  const joined: [number, number][] = []
  for (const [from, to] of spans) {
    const last = joined.at(-1)
    // What shows ends between two looks: the white reaches to the next one.
    const ends = [from < GAP ? 0 : from - STEP / 2, long - to < GAP ? long : to + STEP / 2] as const
    if (last && from - last[1] < GAP) last[1] = ends[1]
    else joined.push([...ends])
  }
  const [one, more] = joined
  return one && !more && (one[0] === 0 || one[1] === long) ? joined : all
}

/** The parts of a line in these spans. */
function partsIn(line: Line, spans: readonly Span[]): readonly Stretch[] {
  let start = 0
  return line.flatMap(({ stretch: [a, b], long }) => {
    const first = start
    start += long
    const share = (at: number): number => Math.min(1, Math.max(0, (at - first) / (long || 1)))
    return spans.flatMap(([from, to]): Stretch[] => {
      const [s, t] = [share(from), share(to)]
      return t > s ? [[between(a, b, s), between(a, b, t)]] : []
    })
  })
}

const whiteOn = (line: Line): readonly Stretch[] => partsIn(line, whites(hiddenOn(line), longOf(line)))

/** Strokes of tape, which are one line across their own direction. */
const areStrokes = ({ runs, closed }: SheetPath): boolean =>
  !closed && runs.length > 1 && runs.every(([a, b, more]) => a && b && !more && far(a, b) < SHORT)

/** What needs white under a mark. */
function whiteUnder(mark: SheetPath, hides: Hides): readonly Stretch[] {
  const runs = mark.runs.map((run) =>
    stretchesOf({ runs: [run], closed: mark.closed }).map((one) => lookedAt(one, hides)),
  )
  const all = runs.flat()
  if (all.every(({ hidden }) => hidden.length === 0)) return []
  // Of a small sign one half is as black on white as the other.
  if (mark.role === 'grain' || mark.role === 'care') return all.map(({ stretch }) => stretch)
  if (areStrokes(mark)) return linesOf(all, ([a], [b]) => far(a, b) < GAP).flatMap(whiteOn)
  return runs.flatMap((run) => {
    // An outline is white all round, or side by side.
    const isOutline = mark.closed && isMuch(hiddenOn(run), longOf(run))
    return isOutline ? run.map(({ stretch }) => stretch) : linesOf(run, goesOn).flatMap(whiteOn)
  })
}

/** White paper whose edges are no farther from one another is one: what is left between would be one more line. */
const JOINED = 1

/** What shorter edges leave between them is no line. */
const LONG = 3

/** How far joined white reaches under what it joins. */
const UNDER = 0.1

interface Edge {
  readonly stretch: Stretch
  readonly half: number
  readonly box: Rectangle
}

function edgeOf(stretch: Stretch, half: number): Edge {
  const [[ax, ay], [bx, by]] = stretch
  const more = half + JOINED / 2
  return {
    ...{ stretch, half },
    box: [Math.min(ax, bx) - more, Math.min(ay, by) - more, Math.max(ax, bx) + more, Math.max(ay, by) + more],
  }
}

/** The strip between two edges that run along one another, with its width; null where there is none, or a wide one. */
function stripBetween(one: Edge, other: Edge): { readonly strip: Stretch; readonly width: number } | null {
  if (sine(one.stretch, other.stretch) > 0.02) return null
  const [a, b] = one.stretch
  const long = far(a, b)
  const [u, v] = [(b[0] - a[0]) / long, (b[1] - a[1]) / long]
  const lying = ([x, y]: Point): Point => [(x - a[0]) * u + (y - a[1]) * v, (y - a[1]) * u - (x - a[0]) * v]
  const [c, d] = [lying(other.stretch[0]), lying(other.stretch[1])]
  const [from, to] = [Math.max(0, Math.min(c[0], d[0])), Math.min(long, Math.max(c[0], d[0]))]
  const off = (c[1] + d[1]) / 2
  const gap = Math.abs(off) - one.half - other.half
  if (to - from < LONG || gap <= 0 || gap > JOINED) return null
  const middle = Math.sign(off) * (one.half + gap / 2)
  const at = (t: number): Point => [a[0] + t * u - middle * v, a[1] + t * v + middle * u]
  return { strip: [at(from), at(to)], width: gap + 2 * UNDER }
}

/** Bands that fill what is left between white edges near one another. */
function joining(edgesOfWhite: readonly Edge[], ground: Ground): readonly Band[] {
  const isPainted = ([a, b]: Stretch): boolean =>
    [0.1, 0.5, 0.9].some((t) => ground(between(a, b, t)) !== WHITE)
  return edgesOfWhite.flatMap((one, k) =>
    edgesOfWhite.slice(k + 1).flatMap((other): Band[] => {
      const found = overlap(one.box, other.box) ? stripBetween(one, other) : null
      return found && isPainted(found.strip)
        ? [{ runs: [found.strip], closed: false, width: found.width }]
        : []
    }),
  )
}

/**
 * The bands under the parts of lines that would hide on a dark ground, as few as there are widths, and what joins
 * them with one another and with white areas. Along the outlines of pieces the paper beyond is white anyway.
 */
export function bandsUnder(
  marks: readonly SheetMark[],
  outlines: ReadonlyMap<string, readonly Point[]>,
  areas: readonly (readonly Point[])[],
  ground: Ground,
): readonly Band[] {
  const bands = new Map<number, Stretch[]>()
  for (const mark of marks) {
    if (mark.mark !== 'path') continue
    const outline = mark.role === 'cut' ? outlines.get(mark.of ?? '') : undefined
    if (outline && mark.closed) continue
    const { colour, width } = lookOf(mark.role)
    const off = width / 2 + NEXT_TO
    const isSeenOn = (point: Point): boolean => {
      const under = ground(point)
      return under !== null && contrast(under, colour) >= SHOWS
    }
    // With one dark side a line is the edge of a patch, and its dashes are that too.
    const hides: Hides = ([x, y], [u, v]) =>
      !isSeenOn([x + off * u, y + off * v]) || !isSeenOn([x - off * u, y - off * v])
    const sides = outline ? edges(outline) : []
    const found = whiteUnder(mark, hides).filter((line) => !sides.some((side) => isAlong(line, side)))
    if (found.length === 0) continue
    const runs = bands.get(width) ?? []
    bands.set(width, runs)
    runs.push(...found)
  }
  const under = [...bands].map(([width, runs]) => ({ runs, closed: false, width: width + 2 * BESIDE }))
  const white = [
    ...under.flatMap(({ runs, width }) => runs.map((run) => edgeOf(run, width / 2))),
    ...areas.flatMap(edges).map((side) => edgeOf(side, 0)),
  ].filter(({ stretch }) => far(...stretch) >= LONG)
  return [...under, ...joining(white, ground)]
}
