import { intersection } from 'polyclip-ts'
import { hatch } from '../../drawing/pen/hatch.ts'
import { inset } from '../../drawing/pen/inset.ts'
import type { PathMark, Point, Role, WordMark } from '../../drawing/pen/marks.ts'
import { longestFold } from '../../making/grain.ts'
import { turned } from '../../making/turn.ts'
import type { LineKind, Piece, Tight } from '../../paper/index.ts'
import { careMarks, careOf } from './care-marks.ts'
import type { Rectangle } from './clip.ts'
import { beside, clipped, EVERYWHERE, isWithin } from './clip.ts'
import type { Clear, ClearLine } from './fold-ends.ts'
import { clearLines, foldTicks } from './fold-ends.ts'
import { grainMark } from './grain-marks.ts'
import type { SheetFace, SheetLines } from './instructions.ts'
import { faceOf } from './instructions.ts'
import type { JointPlace } from './joint-places.ts'
import type { Wish } from './lettering.ts'
import { lettered } from './lettering.ts'
import { partNames } from './part-names.ts'
import type { SheetPath } from './setting.ts'
import { extent } from './setting.ts'
import type { Stretch } from './stretches.ts'
import { edges, far, stretchesOf } from './stretches.ts'
import type { StripLines } from './strips.ts'
import { isStrip, leftOf, nearEnd, stripEnds, trueLine } from './strips.ts'
import { cornersOf, cornersUnder, outlineUnder, pricksUnder } from './stuck-marks.ts'
import { inwardFrom, strokesAcross, strokesAtEnds, strokesWithin, tapeCorners } from './tape-marks.ts'

/** Where a piece lies on its page: the page's own coordinates of the piece's 0, 0; y of the piece runs up. */
export interface Place {
  readonly origin: Point
  /** Printed for the outside: left and right swapped. */
  readonly mirrored: boolean
  /** Turned first about the piece's 0, 0, radians, counter-clockwise as seen from its front; not turned unless said. */
  readonly turn?: number
}

const otherWay: Partial<Record<LineKind, LineKind>> = { mountain: 'valley', valley: 'mountain' }

/** What a fold is as seen on the printed side. */
export const seen = (kind: LineKind, face: SheetFace): LineKind =>
  face === 'inside' ? kind : (otherWay[kind] ?? kind)

/** A point of a piece, on the page. */
export function onPage({ origin, mirrored, turn = 0 }: Place, point: Point): Point {
  const [x, y] = turned(point, turn)
  return [origin[0] + (mirrored ? -x : x), origin[1] - y]
}

/** Where a line runs off what can be printed it meets nothing. */
const clearIn = (clear: Clear, ends: readonly (Point | undefined)[], printable: Rectangle): Clear => {
  const at = (k: 0 | 1): number => {
    const end = ends[k]
    return end && isWithin(end, printable) ? clear[k] : 0
  }
  return [at(0), at(1)]
}

/** A line of points as a mark; what lies beyond the printable rectangle is left out. */
function lineMark(
  points: readonly Point[],
  closed: boolean,
  { role, of, clear = [0, 0] }: { readonly role: Role; readonly of: string; readonly clear?: Clear },
  printable: Rectangle,
): SheetPath | null {
  const kept = clearIn(clear, [points[0], points.at(-1)], printable)
  const mark = { mark: 'path', role, of, ...(kept.some((off) => off > 0) ? { clear: kept } : {}) } as const
  if (points.every((point) => isWithin(point, printable))) return { ...mark, runs: [points], closed }
  const ends = closed ? [...points, points[0] as Point] : points
  const runs = ends
    .slice(1)
    .flatMap((point, k) => [clipped(ends[k] as Point, point, printable)])
    .filter((run) => run !== null)
  return runs.length === 0 ? null : { ...mark, runs, closed: false }
}

/** A cut or a fold of a piece. */
function plainMarks(
  { line, clear }: ClearLine,
  place: Place,
  lines: SheetLines,
  printable: Rectangle,
): SheetPath[] {
  const face = faceOf(lines)
  const points = line.points.map((point) => onPage(place, point))
  const look = { role: seen(line.kind, face), of: line.of }
  const [a, b, more] = points
  if (lines !== 'ticks' || line.kind === 'cut' || !a || !b || more) {
    const whole = lineMark(points, line.closed ?? false, { ...look, clear }, printable)
    return whole ? [whole] : []
  }
  // A fold that runs off what can be printed has its ticks where that ends.
  const seenPart = line.kind === 'crease' ? null : clipped(a, b, printable)
  const parts = seenPart ? foldTicks(seenPart, clearIn(clear, [a, b], printable)) : []
  return parts.flatMap(
    (part) => lineMark(part.points, false, { ...look, clear: part.clear }, printable) ?? [],
  )
}

/** How far the dots of a place that is glued behind lie inside it, all round: they touch no fold and no cut, mm. */
const DRAWN_IN = 0.9

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
      return short ? beside(short, letters, SHORT).map((part): Point[] => [...part]) : []
    }),
  ),
  closed: false,
  role: 'glue',
  of: `${of}-hatch`,
})

/** The part of an area that lies on its piece: glue beside the piece would be glue on the table. */
export function onPiece(area: readonly Point[], outline: readonly Point[]): readonly (readonly Point[])[] {
  const ring = (points: readonly Point[]): [number, number][] => points.map(([x, y]) => [x, y])
  const isOn = area.every((point) =>
    outline.some((corner) => Math.hypot(corner[0] - point[0], corner[1] - point[1]) < 1e-9),
  )
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

interface Parts {
  readonly outline: readonly Point[]
  readonly areas: readonly (readonly Point[])[]
}

/** By a place's points: a piece is drawn in many turns, and its places are the same in each. */
const known = new WeakMap<readonly Point[], Parts>()

function partsOn(points: readonly Point[], outline: readonly Point[]): Parts['areas'] {
  const found = known.get(points)
  if (found?.outline === outline) return found.areas
  const areas = onPiece(points, outline)
  known.set(points, { outline, areas })
  return areas
}

interface PlacedJoint extends StripLines {
  readonly joint: JointPlace
  readonly points: readonly Point[]
  /** Its parts on the piece; of a line that is taped none. */
  readonly areas: readonly (readonly Point[])[]
  /** What lies on the piece of the strip beside a slit that will be screened. */
  readonly screened: readonly Point[]
  /** The corners of what is stuck flat here, in pairs of lines. */
  readonly corners: readonly Stretch[]
  /** Where every line is printed, its outline as far as there is paper. */
  readonly place: readonly (readonly Point[])[]
  /** On a good copy the ends of a strip that is glued behind, or of a line on which another piece is taped. */
  readonly ends: readonly Stretch[]
  /** What says that it is taped. */
  readonly strokes: readonly Stretch[]
  /** Of a line on which another piece is taped: the way to the side that this hides. */
  readonly hidden: Point | null
}

/** The marks of a place that is glued or taped, but for its letter. */
function jointMarks(
  { joint, points, areas, corners, place, ends, line, bars, strokes }: PlacedJoint,
  lines: SheetLines,
  printable: Rectangle,
  letters: readonly Rectangle[],
  drawn: readonly Stretch[],
  outlined: readonly Stretch[] = [],
): PathMark[] {
  const { of, isTaped, isBehind, isAllBehind, isOwn, isFlat, isRim } = joint
  const seenPart = (
    runs: readonly (readonly Point[])[],
    closed: boolean,
    role: Role,
    part = '',
  ): PathMark[] => runs.flatMap((run) => lineMark(run, closed, { role, of: `${of}${part}` }, printable) ?? [])
  const within = (mark: PathMark): PathMark => ({
    ...mark,
    runs: mark.runs
      .flatMap(([a, b]) => (a && b ? [clipped(a, b, printable)] : []))
      .filter((run) => run !== null),
  })
  if (isTaped) {
    // What is stuck on is taped along its edge, which is cut: there the strokes say it alone.
    const across: PathMark = { ...glueHatch([], of), runs: strokes.map((one) => [...one]) }
    if (isOwn) return [within(isBehind ? { ...across, role: 'behind' } : across)]
    const line = seenPart(lines === 'ticks' ? ends : [points], false, isBehind ? 'behind' : 'place')
    return isBehind ? line : [...line, within(across)]
  }
  if (isBehind && lines === 'ticks' && isFlat) {
    // What is stuck on a face covers the marks there. Behind a face nothing covers any: both places have their corners.
    return isAllBehind && !isRim ? seenPart(areas.flatMap(cornersOf), false, 'behind') : []
  }
  if (isBehind && lines === 'ticks') return seenPart(ends, false, 'behind')
  if (isBehind)
    return [
      ...seenPart(areas, true, 'behind'),
      ...seenPart(corners, false, 'behind', '-corner'),
      ...seenPart(
        line.flatMap((one) => leftOf(one, outlined)),
        false,
        'place',
        '-line',
      ),
      ...seenPart(bars, false, 'place', '-end'),
    ]
  // Where another line runs along its edge, that alone is drawn: dashes on dashes would say something else.
  const edge = areas.flatMap((area) => {
    const sides = edges(area)
    const left = sides.map((side) => leftOf(side, [...drawn, ...outlined]))
    const isWhole = left.every(([one], k) => one === sides[k])
    return isWhole ? seenPart([area], true, 'place') : seenPart(left.flat(), false, 'place')
  })
  return [
    ...edge,
    ...seenPart(corners, false, 'place', '-corner'),
    ...seenPart(place, false, 'place', '-place'),
    // Of the two that are glued together last the cover has the glue.
    ...(isOwn && isRim ? [] : [within(glueHatch(areas, of, letters))]),
  ]
}

function placedOn(
  piece: Piece,
  joints: readonly JointPlace[],
  place: Place,
  lines: SheetLines,
  drawn: readonly Stretch[],
): readonly PlacedJoint[] {
  const at = (points: readonly Point[]): readonly Point[] => points.map((point) => onPage(place, point))
  const isSeen = lines === 'ticks'
  const folds = foldsOf(piece, place)
  const cuts = cutsOf(piece, place)
  const outline = at(piece.outline)
  const way = (aside: Point): Point => {
    const [[x, y] = [0, 0], [u, v] = [0, 0]] = at([[0, 0], aside])
    return [u - x, v - y]
  }
  const taped = joints.flatMap(({ hidden, points }): Stretch[] =>
    hidden ? [at(points) as unknown as Stretch] : [],
  )
  const tapeOf = (
    { isTaped, isOwn, isBehind }: JointPlace,
    line: Stretch,
    hidden: Point | null,
  ): Pick<PlacedJoint, 'ends' | 'strokes'> => {
    if (!isTaped) return { ends: [], strokes: [] }
    if (isOwn || !hidden) return { ends: [], strokes: strokesWithin(line, outline, folds, isSeen) }
    const others = taped.filter(([a, b]) => far(a, line[0]) + far(b, line[1]) > 1e-6)
    return {
      ends: isSeen ? tapeCorners(line, hidden, others) : [],
      strokes: isBehind ? [] : isSeen ? strokesAtEnds(line, hidden, others) : strokesAcross(line, hidden),
    }
  }
  const alone = joints.map((joint) => {
    const points = at(joint.points)
    const areas = joint.isTaped ? [] : partsOn(joint.points, piece.outline).map(at)
    const hidden = joint.hidden && way(joint.hidden)
    const tape = tapeOf(joint, points as unknown as Stretch, hidden)
    const isBareStrip = isSeen && isStrip(joint) && joint.screened.length === 0
    const own = isSeen ? { line: [], bars: [] } : trueLine(joint, points, drawn)
    return {
      joint,
      points,
      areas: joint.isBehind ? areas.map((area) => inset(area, DRAWN_IN)) : areas,
      ...tape,
      // Behind a slit the slit says it, on a tab its fold does.
      ends: isBareStrip ? stripEnds(points, folds, cuts) : tape.ends,
      ...own,
      screened: joint.screened.length > 0 ? (partsOn(joint.screened, piece.outline).map(at)[0] ?? []) : [],
      hidden,
      corners: [],
      place: [],
    }
  })
  // Of two strips that meet, a bar of one may run along the line of the other, or along its bar.
  const placed = alone.map((one, k): PlacedJoint => {
    const others = [...alone.flatMap(({ line }) => line), ...alone.slice(0, k).flatMap(({ bars }) => bars)]
    return { ...one, bars: one.bars.flatMap((bar) => leftOf(bar, others)) }
  })
  const busy = placed.flatMap(({ joint, points, areas, ends, line, bars }): readonly Stretch[] => {
    if (joint.isTaped) return [points as unknown as Stretch]
    return isSeen && joint.isBehind ? ends : [...areas.flatMap(edges), ...line, ...bars]
  })
  const under = { outline, cuts, folds, busy, down: way([0, -1]) }
  return placed.map((one) => {
    const stuck = { outline: at(one.joint.under), glue: one.points }
    if (stuck.outline.length === 0) return one
    // Every line is printed, or marks that will be covered, or on the other face dots to be pricked through.
    if (lines === 'front') return { ...one, place: outlineUnder(stuck, under) }
    return { ...one, corners: isSeen ? cornersUnder(stuck, under) : pricksUnder(stuck, under) }
  })
}

/** Of places that are drawn with dashes: two that meet share one line, since dashes on dashes close up to a cut. */
const edgesOf = (placed: readonly PlacedJoint[]): readonly Stretch[] =>
  placed.flatMap(({ joint, areas, line }) => [
    ...(joint.isTaped || joint.isBehind ? [] : areas.flatMap(edges)),
    ...line,
  ])

const linesOn = (piece: Piece, place: Place, isMeant: (kind: LineKind) => boolean): readonly Stretch[] =>
  piece.lines
    .filter(({ kind }) => isMeant(kind))
    .flatMap(({ points, closed = false }) =>
      stretchesOf({ runs: [points.map((point) => onPage(place, point))], closed }),
    )

/** The folds and cuts of a piece as they lie on its page. */
export const foldsAndCuts = (piece: Piece, place: Place): readonly Stretch[] =>
  linesOn(piece, place, (kind) => kind !== 'glue')

/** The folds of a piece as they lie on its page. */
export const foldsOf = (piece: Piece, place: Place): readonly Stretch[] =>
  linesOn(piece, place, (kind) => kind !== 'glue' && kind !== 'cut')

const cutsOf = (piece: Piece, place: Place): readonly Stretch[] =>
  linesOn(piece, place, (kind) => kind === 'cut')

/** What says on a printed piece where it is glued: hatching, strokes of tape, dots, dashes; corners are dashes too. */
export function jointSigns(
  piece: Piece,
  joints: readonly JointPlace[],
  lines: SheetLines,
): ReadonlySet<'glue' | 'tape' | 'behind' | 'place' | 'corner'> {
  const place: Place = { origin: [0, 0], mirrored: false }
  const drawn = foldsAndCuts(piece, place)
  return new Set(
    placedOn(piece, joints, place, lines, drawn).flatMap((one) => [
      ...(one.corners.length > 0 ? (['corner'] as const) : []),
      ...jointMarks(one, lines, EVERYWHERE, [], drawn)
        .filter(({ runs }) => runs.length > 0)
        .flatMap(({ role }) => {
          if (role === 'glue') return one.joint.isTaped ? 'tape' : 'glue'
          if (role === 'place') return one.joint.isOwn && !one.joint.isRim ? [] : 'place'
          return role === 'behind' ? role : []
        }),
    ]),
  )
}

/** Whether it is how a fold is drawn. */
export const isFold = (role: Role): boolean => role === 'valley' || role === 'mountain' || role === 'crease'

/**
 * On which side of its line the letter of a place stands: of two that go together both then stand within or both
 * without. Beside a taped line it is the side that the piece will hide, or that of the piece itself; else that of the tab.
 */
function asideOf(
  { isOwn, isFlat }: JointPlace,
  [a, b, c]: readonly Point[],
  hidden: Point | null,
): Pick<Wish, 'aside'> {
  if (a && hidden) return { aside: [a, hidden] }
  if (!a || !b || isOwn || isFlat) return {}
  if (!c) return {}
  const off = (b[0] - a[0]) * (c[1] - a[1]) - (b[1] - a[1]) * (c[0] - a[0])
  return { aside: [a, off > 0 ? [a[1] - b[1], b[0] - a[0]] : [b[1] - a[1], a[0] - b[0]]] }
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
  care: readonly Tight[] = [],
  /** Small shapes of the picture, in the piece's own coordinates: names of parts leave them free. */
  small: readonly (readonly Point[])[] = [],
): DrawnPiece {
  const outline = piece.outline.map((point) => onPage(place, point))
  const plain = clearLines(piece).flatMap((line) => plainMarks(line, place, lines, printable))
  const isCard = piece.id === 'card'
  const allFolds = foldsAndCuts(piece, place)
  const placed = placedOn(piece, joints, place, lines, allFolds)
  const drawnStrokes = placed.flatMap((one) =>
    one.joint.isTaped
      ? jointMarks(one, lines, printable, [], []).flatMap(({ runs }) =>
          runs.flatMap((run) => run.slice(1).map((b, k): Stretch => [run[k] as Point, b])),
        )
      : [],
  )
  const strokesDrawn = [
    ...drawnStrokes,
    ...placed.flatMap(({ corners, place: around, ends, line, bars }) => [
      ...corners,
      ...stretchesOf({ runs: around, closed: false }),
      ...ends,
      ...line,
      ...bars,
    ]),
  ]
  // Of a good copy the card's own face stays clean: the rim of its back is told by the cover.
  const named = placed.filter(({ joint }) => !(lines === 'ticks' && isCard && joint.isRim && joint.isBehind))
  const wishes = named.map(({ joint, points, areas, screened, ends, line, bars, hidden }): Wish => {
    const isSeen = lines === 'ticks'
    const strip =
      joint.isTaped || ends.length === 0
        ? joint.isTaped
          ? points
          : (areas[0] ?? points)
        : nearEnd(points, outline)
    const isScreened = isSeen && screened.length > 0
    const isHatched = !joint.isTaped && !joint.isBehind && !(joint.isOwn && joint.isRim)
    return {
      letter: joint.letter,
      partner: joint.partner,
      points: isScreened ? screened : strip,
      ...(line.length + bars.length > 0 ? { round: points } : {}),
      isLine: joint.isTaped,
      isTab: joint.isOwn && !joint.isTaped && !joint.isFlat,
      of: joint.of,
      pair: joint.isFlat ? joint.of : `${joint.of.slice(0, joint.of.lastIndexOf('/'))} ${joint.isOwn}`,
      ...asideOf(
        joint,
        points,
        hidden ?? (isSeen || !joint.isTaped ? null : inwardFrom(points as unknown as Stretch, outline)),
      ),
      ...(joint.isFlat && !joint.isRim ? { isLevel: true } : {}),
      ...(isHatched ? { isHatched } : {}),
      // On a face that will be seen a letter stands only where paper or tape will cover it.
      mayBeInside: !isSeen || !joint.isBehind || isScreened,
      isQuiet: isSeen && !joint.isOwn && (!joint.isBehind || isScreened),
      stay: isCard
        ? 'inside'
        : isSeen && !isScreened && !(joint.isTaped && !joint.isOwn && !joint.isBehind)
          ? 'outside'
          : 'anywhere',
    }
  })
  // A good copy does not show the line on which another piece is taped, but its edge will lie there.
  const unseen = placed.flatMap(({ hidden, points }) => (hidden ? [points as unknown as Stretch] : []))
  const {
    marks: words,
    taken,
    lost,
  } = lettered(wishes, {
    lines: [...allFolds, ...placed.flatMap(({ areas }) => areas.flatMap(edges)), ...strokesDrawn, ...unseen],
    printable,
    outline,
  })
  const joined = (letters: readonly Rectangle[]): PathMark[] =>
    placed.flatMap((one, k) =>
      jointMarks(one, lines, printable, letters, allFolds, edgesOf(placed.slice(0, k))),
    )
  const ground = [...plain, ...joined(taken)]
  const wanted = new Map(
    care
      .filter((one) => one.piece === piece.id)
      .map((one) => [careOf(one), { id: one.id, of: careOf(one), at: onPage(place, one.at) }]),
  )
  const marked = careMarks([...wanted.values()], {
    drawn: ground,
    lines: [...allFolds, ...strokesDrawn],
    taken,
    printable,
    outline,
  })
  const besides = [...taken, ...marked.map(({ box }) => box)]
  const at = (point: Point): Point => onPage(place, point)
  // A good copy is seen, and has no words.
  const called =
    isCard && lines !== 'ticks'
      ? partNames(piece, at, {
          folds: ground.filter(({ role }) => isFold(role)).flatMap(stretchesOf),
          cuts: ground.filter(({ role }) => role === 'cut').flatMap(stretchesOf),
          lines: ground.filter(({ role }) => role !== 'cut' && !isFold(role)).flatMap(stretchesOf),
          taken: besides,
          printable,
          small: small.map((run) =>
            extent({ mark: 'path', runs: [run.map(at)], closed: true, role: 'picture' }),
          ),
        })
      : { marks: [], boxes: [] }
  const kept = [...besides, ...called.boxes]
  // A good copy is seen: there the list of lines says it in words.
  const fold = lines === 'ticks' ? null : longestFold(piece)
  const arrow =
    fold &&
    grainMark(
      [onPage(place, fold[0]), onPage(place, fold[1])],
      {
        lines: [...allFolds, ...strokesDrawn],
        ...{ taken: kept, areas: placed.flatMap(({ areas }) => areas), outline, printable },
      },
      `${piece.id}-grain`,
    )
  // The hatching keeps clear of them as it does of letters.
  const hatched = kept.length === taken.length ? ground : [...plain, ...joined(kept)]
  return {
    lines: [...hatched, ...marked.map(({ mark }) => mark), ...(arrow ? [arrow] : [])],
    words: [...words, ...called.marks],
    taken: kept,
    lost: lost.map(({ letter }) => letter),
  }
}
