import * as says from '../../../content/words/drawing/pattern.ts'
import type { Check, Design, JointSide, LineKind } from '../../paper/index.ts'
import { flatCreases, flatParts, handlesOf, jointsOf, ownerOf, pieces } from '../../paper/index.ts'
import { faultMarks } from '../pen/faults.ts'
import { gridMark } from '../pen/grid.ts'
import { hatch, strokes } from '../pen/hatch.ts'
import { inset } from '../pen/inset.ts'
import type { Line, Wish } from '../pen/lettering.ts'
import { meet, placeWords, wordRect } from '../pen/lettering.ts'
import type { Drawing, Mark, PathMark, Point, Role, WordMark } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { lengthText } from '../pen/numbers.ts'
import type { Size } from '../view/camera.ts'
import { cardOf } from '../view/paper.ts'
import type { Board } from './drags.ts'
import { arcs, dots, ridingRect } from './drags.ts'
import type { Ground, SheetPoint } from './ground.ts'
import { groundFor } from './ground.ts'
import type { Layout } from './layout.ts'
import { legendMarks, legendPlan } from './legend.ts'
import type { Shown } from './shown.ts'
import { belongs, gluedOn, pieceName, samePoints, shownPieces } from './shown.ts'

export type { SheetPoint } from './ground.ts'

type PaperSide = 'inside' | 'outside'

export interface PatternOptions {
  /** Which side of the paper is seen; from outside the sheet is mirrored and folds run the other way. Default inside. */
  readonly face?: PaperSide
  /** Points that can be dragged: ids for all of theirs, or single ones as `id/name`; true for all. */
  readonly handles?: boolean | readonly string[]
  /** A mechanism by id: its pieces alone are shown, with the card and what it sits on, and lines of others are quiet. */
  readonly only?: string
  /** What a chapter calls a handle, by `id/name`: said where two would be called the same. */
  readonly called?: Readonly<Record<string, string>>
  /** The one that is being dragged, as `id/name`, and the words that ride above it: its own label is left out. */
  readonly held?: { readonly handle: string; readonly words: string }
  /** Where the pieces lay in the picture before: so they stay, if there is room for all. */
  readonly stay?: Layout
  /** Names of the line kinds that are there; default true. */
  readonly legend?: boolean
  readonly faults?: readonly Check[]
  /** Height of the type, px; default 15. */
  readonly text?: number
  readonly unit?: LengthUnit
}

export interface Pattern extends Drawing {
  /** How the pieces lie: to be given to the next picture as `stay` while a hand drags. */
  readonly layout: Layout
  /** From a point of the drawing to a flat piece (the card if left out), mm, and back. */
  toSheet(p: Point, piece?: string): SheetPoint
  fromSheet(p: SheetPoint, piece?: string): Point
}

const flipped: Partial<Record<LineKind, LineKind>> = { mountain: 'valley', valley: 'mountain' }

/** A kind of line as it is seen: from outside, folds run the other way. */
const seenAs = (kind: LineKind, face: PaperSide): LineKind =>
  face === 'inside' ? kind : (flipped[kind] ?? kind)

/** Spacing of hatches, and the length of strokes across a line that is taped, px. */
const HATCH = 7

const STROKE = 6

/** Radius of the ring round a fault, px. */
const FAULT = 14

/** The flat sheet with its pieces: cuts, folds, glue and what can be dragged, in a box of `size` px. */
export function pattern(design: Design, size: Size, options: PatternOptions = {}): Pattern {
  const { face = 'inside', unit = 'mm', text = 15, legend = true, held } = options
  const { only } = options
  const all = pieces(design)
  const shown = shownPieces(only === undefined ? all : all.filter(({ id }) => belongs(design, only)(id)))
  const drawn = new Set([...shown.parts.map(({ id }) => id), ...shown.twins.keys()])
  const draggable = handlesOf(design).filter(({ piece }) => drawn.has(piece))
  const handles = draggable.filter(({ id, name }) => isWanted(options.handles, id, name))
  const kinds = new Set<Role>(shown.parts.flatMap(({ lines }) => lines.map(({ kind }) => seenAs(kind, face))))
  const seen = face === 'inside' ? 'front' : 'back'
  if (gluedPlaces(design).some(({ face }) => face !== seen)) kinds.add('behind')
  const plan = legend ? legendPlan(kinds, size.width, text) : null
  const hand = face === 'inside' ? 1 : -1
  const ground = groundFor(design.card, shown, {
    ...{ size, foot: plan?.height ?? 0, hand, text, handles, stay: options.stay },
  })
  const creases = flatCreases(design).filter(({ piece }) => drawn.has(piece))
  const board: Board = {
    design,
    creases,
    ground,
    text,
    unit,
    held: held?.handle,
    called: options.called ?? {},
  }
  const [angles, drags] = [arcs(handles, board), dots(handles, board)]
  const taken = draggable.find(({ id, name }) => held?.handle === `${id}/${name}`)
  const riding =
    taken && held ? [ridingRect(held.words, ground.fromSheet(taken.at, taken.piece), size, text)] : []
  const names = nameMarks(shown, ground, text)
  const wishes = [...angles.wishes, ...drags.wishes]
  const placed = (wishes: readonly Wish[]): readonly WordMark[] =>
    placeWords(wishes, ground.drawable, {
      words: names.map(wordRect),
      rects: [...riding, ...drags.rects],
      lines: lineSegments(shown, ground),
    })
  const named = placed(wishes)
  // Where one number has no room for its name, the others have none either: it would be taken for one of theirs.
  const words = named.some(({ text }) => wishes.some(({ brief }) => brief === text))
    ? placed(wishes.map((wish) => ({ ...wish, text: wish.brief ?? wish.text })))
    : named
  return {
    box: [0, 0, size.width, size.height],
    unit: 'px',
    marks: [
      squareMark(ground),
      ...tints(design, shown, face, ground, only),
      ...lineMarks(design, shown, face, ground, only),
      ...angles.marks,
      ...drags.marks,
      ...faultsOn(options.faults ?? [], drawn, ground),
      // A name that the riding words would hide is left out as long.
      ...names.filter((name) => !riding.some((rect) => meet(wordRect(name), rect))),
      ...words,
      ...(plan ? legendMarks(plan, size.height - plan.height + 2, text) : []),
    ],
    says: saysOf(design, shown, face, unit),
    layout: ground.layout,
    toSheet: ground.toSheet,
    fromSheet: ground.fromSheet,
  }
}

const isWanted = (which: PatternOptions['handles'], id: string, name: string): boolean =>
  which === true || (Array.isArray(which) && (which.includes(id) || which.includes(`${id}/${name}`)))

/** The 10 mm squares that fill the drawing, true to the sheet. */
function squareMark({ drawable: rect, fromSheet, toSheet }: Ground): Mark {
  const [a, b] = [toSheet([rect[0], rect[1]]), toSheet([rect[0] + rect[2], rect[1] + rect[3]])]
  const tens = (from: number, to: number): readonly number[] => {
    const first = Math.ceil(Math.min(from, to) / 10)
    return Array.from({ length: Math.floor(Math.max(from, to) / 10) - first + 1 }, (_, k) => 10 * (first + k))
  }
  return gridMark(
    tens(a[0], b[0]).map((x) => fromSheet([x, 0])[0]),
    tens(a[1], b[1]).map((y) => fromSheet([0, y])[1]),
    rect,
  )
}

/** The mechanisms' paper in a tint of its card, each where it is cut from. */
function tints(
  design: Design,
  { parts }: Shown,
  face: PaperSide,
  { fromSheet }: Ground,
  only: string | undefined,
): readonly Mark[] {
  const side = face === 'inside' ? 'front' : 'back'
  const marks = new Map<number, PathMark & { runs: Point[][] }>()
  for (const { index, owner, panel, piece, points } of flatParts(design)) {
    if (owner < 0 || !parts.some(({ id }) => id === piece) || isOther(panel, piece, only)) continue
    const run = points.map((p) => fromSheet(p, piece))
    const mark = marks.get(index)
    if (mark) mark.runs.push(run)
    else {
      const paint = { card: cardOf(design, owner), light: 1, face: side } as const
      marks.set(index, { mark: 'path', runs: [run], closed: true, role: 'paper', of: panel, paint })
    }
  }
  return [...marks.values()]
}

/**
 * The two places of a joint on the pieces that are drawn: their points, the face that is glued, and whether it is
 * what is stuck on.
 */
const gluedPlaces = (design: Design): readonly (JointSide & { readonly isOwn: boolean })[] =>
  jointsOf(design).flatMap(({ host, own }) =>
    host.piece === 'cover'
      ? []
      : [
          { ...host, isOwn: false },
          { ...own, isOwn: true },
        ],
  )

/**
 * Every line of the pieces. Glue is hatched where it is on the face that is seen, with dots inside where it is on the
 * other; a line to tape along is struck across. A tab's own edges are drawn already: three cuts and a fold.
 */
function lineMarks(
  design: Design,
  { parts }: Shown,
  face: PaperSide,
  { fromSheet }: Ground,
  only: string | undefined,
): readonly Mark[] {
  const places = gluedPlaces(design)
  const seen = face === 'inside' ? 'front' : 'back'
  return parts.flatMap(({ id, lines }) =>
    lines.flatMap(({ kind, points, closed = false, of }): Mark[] => {
      const role: Role = of === 'page' ? 'edge' : seenAs(kind, face)
      const run = points.map((p) => fromSheet(p, id))
      const path = { mark: 'path', of, ...(isOther(of, id, only) ? { quiet: true } : {}) } as const
      if (kind !== 'glue') return [{ ...path, runs: [run], closed, role }]
      const place = places.find((one) => one.piece === id && samePoints(one.points, points))
      if (place && place.face !== seen)
        return [{ ...path, runs: [closed ? inset(run, DRAWN_IN) : run], closed, role: 'behind' }]
      const runs = closed ? hatch(run, HATCH) : strokes(run, HATCH, STROKE)
      const hatched: Mark = { ...path, runs, closed: false, role: 'glue', of: `${of}-hatch` }
      return place?.isOwn ? [hatched] : [{ ...path, runs: [run], closed, role: 'place' }, hatched]
    }),
  )
}

/** Whether a line or panel of a piece is another mechanism's than the one that is looked at. */
const isOther = (of: string, piece: string, only: string | undefined): boolean =>
  only !== undefined && ![only, 'page', 'gutter'].includes(ownerOf(of)) && ownerOf(of) !== ownerOf(piece)

/** How far the dots of a place that is glued behind lie inside it, px: they touch no fold. */
const DRAWN_IN = 3

/** Every stretch of every line: words stand astride none. */
const lineSegments = ({ parts }: Shown, { fromSheet }: Ground): readonly Line[] =>
  parts.flatMap(({ id, lines }) =>
    lines.flatMap(({ points, closed }) => {
      const run = points.map((p) => fromSheet(p, id))
      // The first one closes the outline, if it is one.
      return run.map((p, k): Line => [run.at(k - 1) as Point, p]).slice(closed ? 0 : 1)
    }),
  )

/** The glued pieces' names, each above its piece. */
const nameMarks = (shown: Shown, { fromSheet, liftOf }: Ground, text: number): readonly WordMark[] =>
  shown.parts
    .filter(({ id }) => id !== 'card')
    .map(({ id, outline }): WordMark => {
      const at = outline.map((p) => fromSheet(p, id))
      const xs = at.map(([x]) => x)
      const top = Math.min(...at.map(([, y]) => y))
      return {
        mark: 'word',
        at: [(Math.min(...xs) + Math.max(...xs)) / 2, top - 0.4 * text - liftOf(id)],
        text: pieceName(id, shown),
        role: 'note',
        anchor: 'middle',
        size: text,
        of: id,
      }
    })

/** Failed checks that have a place on a piece. */
const faultsOn = (
  faults: readonly Check[],
  drawn: ReadonlySet<string>,
  { fromSheet }: Ground,
): readonly Mark[] =>
  faults.flatMap(({ ok, name, flat, piece = 'card' }) =>
    ok || !flat || !drawn.has(piece)
      ? []
      : faultMarks(
          flat.map((p) => fromSheet(p, piece)),
          name,
          FAULT,
        ),
  )

function saysOf(
  { title, card: { width, height } }: Design,
  shown: Shown,
  face: PaperSide,
  unit: LengthUnit,
): string {
  const length = (mm: number): string => lengthText(mm, unit)
  return says.sheet(title, length(2 * width), length(height), face, gluedOn(shown))
}
