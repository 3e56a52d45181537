import { intersection } from 'polyclip-ts'
import { hatch, strokes } from '../../drawing/pen/hatch.ts'
import type { PathMark, Point, Role, WordMark } from '../../drawing/pen/marks.ts'
import type { LineKind, Piece, PieceLine } from '../../paper/index.ts'
import type { Rectangle } from './clip.ts'
import { clipped } from './clip.ts'
import type { SheetFace, SheetLines } from './instructions.ts'
import { faceOf } from './instructions.ts'
import type { JointPlace } from './joint-places.ts'
import type { Stretch, Wish } from './lettering.ts'
import { edges, lettered } from './lettering.ts'

/** Where a piece lies on its page: the page's own coordinates of the piece's 0, 0; y of the piece runs up. */
export interface Place {
  readonly origin: Point
  /** Printed for the outside: left and right swapped. */
  readonly mirrored: boolean
}

const turned: Partial<Record<LineKind, LineKind>> = { mountain: 'valley', valley: 'mountain' }

/** What a fold is as seen on the printed side. */
export const seen = (kind: LineKind, face: SheetFace): LineKind =>
  face === 'inside' ? kind : (turned[kind] ?? kind)

/** A point of a piece, on the page. */
export const onPage = ({ origin, mirrored }: Place, [x, y]: Point): Point => [
  origin[0] + (mirrored ? -x : x),
  origin[1] - y,
]

const inside = ([x, y]: Point, [left, top, right, bottom]: Rectangle): boolean =>
  x >= left && x <= right && y >= top && y <= bottom

/** A line of points as a mark; what lies beyond the printable rectangle is left out. */
function lineMark(
  points: readonly Point[],
  closed: boolean,
  { role, of }: { readonly role: Role; readonly of: string },
  printable: Rectangle,
): PathMark | null {
  const mark = { mark: 'path', role, of } as const
  if (points.every((point) => inside(point, printable))) return { ...mark, runs: [points], closed }
  const ends = closed ? [...points, points[0] as Point] : points
  const runs = ends
    .slice(1)
    .flatMap((point, k) => [clipped(ends[k] as Point, point, printable)])
    .filter((run) => run !== null)
  return runs.length === 0 ? null : { ...mark, runs, closed: false }
}

/** A tick at the end of a fold, mm: long enough to show its dashes once. */
const TICK = 4

/** The two ends of a fold, for a sheet whose face will be seen. */
function ticks([a, b]: readonly [Point, Point]): readonly (readonly [Point, Point])[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  const part = Math.min(TICK, long / 3)
  if (!(part > 0)) return []
  const at = (t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  return [
    [a, at(part / long)],
    [at(1 - part / long), b],
  ]
}

/** Cuts and folds of a piece. */
function plainMarks(line: PieceLine, place: Place, lines: SheetLines, printable: Rectangle): PathMark[] {
  const face = faceOf(lines)
  const points = line.points.map((point) => onPage(place, point))
  const look = { role: seen(line.kind, face), of: line.of }
  const [a, b, more] = points
  const parts =
    lines === 'ticks' && line.kind !== 'cut' && a && b && !more
      ? line.kind === 'crease'
        ? []
        : ticks([a, b])
      : [points]
  return parts.flatMap((part) => lineMark(part, line.closed ?? false, look, printable) ?? [])
}

/** Between the strokes of a hatch and the edge of its area: they touch no fold and no cut, mm. */
const INSET = 0.7

/** Strokes shorter than this are left out, mm. */
const SHORT = 0.8

function shortened([a, b]: Stretch): Stretch | null {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (long < 2 * INSET + SHORT) return null
  const at = (t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
  return [at(INSET / long), at(1 - INSET / long)]
}

/** What is left of a stroke outside some rectangles. */
function beside(stroke: Stretch, boxes: readonly Rectangle[]): readonly Stretch[] {
  let left: Stretch[] = [stroke]
  for (const box of boxes)
    left = left.flatMap(([a, b]) => {
      const covered = clipped(a, b, box)
      return covered ? [[a, covered[0]] as const, [covered[1], b] as const] : [[a, b] as const]
    })
  return left.filter(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]) >= SHORT)
}

/** The hatching of an area that is glued. It keeps clear of the letters in it. */
export const glueHatch = (
  areas: readonly (readonly Point[])[],
  of: string,
  letters: readonly Rectangle[] = [],
): PathMark => ({
  mark: 'path',
  runs: areas.flatMap((area) =>
    hatch(area).flatMap((stroke) => {
      const short = shortened(stroke as unknown as Stretch)
      return short ? beside(short, letters).map((part): Point[] => [...part]) : []
    }),
  ),
  closed: false,
  role: 'glue',
  of: `${of}-hatch`,
})

/** The part of an area that lies on its piece: glue beside the piece would be glue on the table. */
function onPiece(area: readonly Point[], outline: readonly Point[]): readonly (readonly Point[])[] {
  const ring = (points: readonly Point[]): [number, number][] => points.map(([x, y]) => [x, y])
  const isOn = area.every((point) => outline.some((corner) => Math.hypot(corner[0] - point[0], corner[1] - point[1]) < 1e-9))
  if (isOn) return [area]
  try {
    return intersection([ring(area)], [ring(outline)]).flatMap(([outer]) =>
      outer ? [outer.slice(0, -1).map(([x, y]): Point => [x, y])] : [],
    )
  } catch {
    // An outline that crosses itself: it is drawn as it is.
    return [area]
  }
}

interface PlacedJoint {
  readonly joint: JointPlace
  readonly points: readonly Point[]
  /** Its parts on the piece; of a line that is taped none. */
  readonly areas: readonly (readonly Point[])[]
}

/** The marks of a place that is glued or taped, but for its letter. */
function jointMarks(
  { joint, points, areas }: PlacedJoint,
  lines: SheetLines,
  printable: Rectangle,
  letters: readonly Rectangle[],
): PathMark[] {
  const { of, isTaped, isBehind, isOwn } = joint
  const fit = (runs: readonly (readonly Point[])[], closed: boolean, role: Role): PathMark[] =>
    runs.flatMap((run) => lineMark(run, closed, { role, of }, printable) ?? [])
  const within = (mark: PathMark): PathMark => ({
    ...mark,
    runs: mark.runs.flatMap(([a, b]) => (a && b ? [clipped(a, b, printable)] : [])).filter((run) => run !== null),
  })
  if (isTaped) {
    if (isBehind) return fit([points], false, 'behind')
    // What is stuck on is taped along its edge, which is cut: there the strokes say it alone.
    const line = lines === 'ticks' ? ticks(points as unknown as Stretch) : [points]
    const across: PathMark = { ...glueHatch([], of), runs: strokes(points) }
    return [...(isOwn ? [] : fit(line, false, 'place')), ...(lines === 'ticks' ? [] : [within(across)])]
  }
  if (isBehind) return lines === 'ticks' ? [] : fit(areas, true, 'behind')
  // A tab's own edges are drawn already: three cuts and a fold.
  const isTab = isOwn && areas[0] === points
  return [...(isTab ? [] : fit(areas, true, 'place')), within(glueHatch(areas, of, letters))]
}

/** A piece on its page. */
export interface DrawnPiece {
  readonly lines: readonly PathMark[]
  readonly words: readonly WordMark[]
  /** The paper that the letters take. */
  readonly taken: readonly Rectangle[]
  /** Letters that found no free paper: they stand in the list of joints alone. */
  readonly lost: readonly string[]
}

/**
 * A piece's lines as marks of the page: the kernel's own points, moved, never scaled. Its glued places are
 * hatched where they are glued on the printed face, and outlined with dots where it is the other one.
 */
export function pieceMarks(
  piece: Piece,
  joints: readonly JointPlace[],
  place: Place,
  lines: SheetLines,
  printable: Rectangle,
): DrawnPiece {
  const outline = piece.outline.map((point) => onPage(place, point))
  const plain = piece.lines
    .filter(({ kind }) => kind !== 'glue')
    .flatMap((line) => plainMarks(line, place, lines, printable))
  const placed = joints.map((joint): PlacedJoint => {
    const points = joint.points.map((point) => onPage(place, point))
    return { joint, points, areas: joint.isTaped ? [] : onPiece(points, outline) }
  })
  const isCard = piece.id === 'card'
  const allFolds = piece.lines
    .filter(({ kind }) => kind !== 'glue')
    .flatMap(({ points, closed }): Stretch[] => {
      const at = points.map((point) => onPage(place, point))
      return closed ? edges(at) : at.slice(1).map((b, k): Stretch => [at[k] as Point, b])
    })
  const drawnStrokes = placed.flatMap((one) =>
    one.joint.isTaped ? jointMarks(one, lines, printable, []).flatMap(({ runs }) => runs.flatMap((run) => run.slice(1).map((b, k): Stretch => [run[k] as Point, b]))) : [],
  )
  const wishes = placed.map(({ joint, points, areas }): Wish => ({
    letter: joint.letter,
    partner: joint.partner,
    points: joint.isTaped ? points : (areas[0] ?? points),
    isLine: joint.isTaped,
    of: joint.of,
    // On a face that will be seen a letter may stand only where it will be covered.
    mayBeInside: lines !== 'ticks' || !joint.isBehind,
  }))
  const { marks: words, taken, lost } = lettered(wishes, {
    lines: [...allFolds, ...placed.flatMap(({ areas }) => areas.flatMap(edges)), ...drawnStrokes],
    printable,
    outline,
    stay: isCard ? 'inside' : lines === 'ticks' ? 'outside' : 'anywhere',
  })
  return {
    lines: [...plain, ...placed.flatMap((one) => jointMarks(one, lines, printable, taken))],
    words,
    taken,
    lost: lost.map(({ letter }) => letter),
  }
}
