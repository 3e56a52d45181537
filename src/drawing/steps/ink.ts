/** Lines on paper as steps draw them: a solid line is a cut, always; what is stuck is hatched, struck across or dotted. */
import type { Design, Flat } from '../../paper/index.ts'
import { jointsOf } from '../../paper/index.ts'
import { hatch, strokes } from '../pen/hatch.ts'
import { inset } from '../pen/inset.ts'
import type { Light } from '../pen/lit.ts'
import { darkOf } from '../pen/lit.ts'
import type { Mark, Paint, PathMark, Role } from '../pen/marks.ts'
import { luminance, mixed } from '../pen/mix.ts'
import type { Hex } from '../pen/papers.ts'
import { CARDS } from '../pen/papers.ts'

/** Between slanting lines, and how long a stroke across a line to tape is, mm. */
export const SPACE = 4.5

const STROKE = 5

/** How far the dots of a place that is glued behind lie inside it, mm: they touch no fold and no edge. */
const DRAWN_IN = 1.6

/** The strokes across a line to tape. */
export const tapeStrokes = (line: readonly Flat[]) => strokes(line, SPACE, STROKE)

interface FlatLine {
  readonly kind: Role
  readonly points: readonly Flat[]
  readonly closed?: boolean
}

interface DrawnLine {
  readonly role: Role
  readonly points: readonly Flat[]
}

const ringOf = <P>(points: readonly P[]): readonly P[] => [...points, ...points.slice(0, 1)]

/** The same shape, wherever it lies: pieces on a table are shifted. */
function alike(a: readonly Flat[], b: readonly Flat[]): boolean {
  const [p, q] = [a[0], b[0]]
  if (!p || !q || a.length !== b.length) return false
  return a.every(([x, y], k) => {
    const [u, v] = b[k] as Flat
    return Math.hypot(x - p[0] - u + q[0], y - p[1] - v + q[1]) < 1e-6
  })
}

/** What is stuck at a place of a flat piece, its front up: on the back, and whether the place is a part of what is stuck on. */
function placeAt(design: Design, piece: string, points: readonly Flat[]) {
  return jointsOf(design)
    .flatMap(({ host, own }) => [
      { ...host, isOwn: false },
      { ...own, isOwn: true },
    ])
    .find((one) => one.piece === piece && alike(one.points, points))
}

/** A line of a flat piece as it is drawn on its front: of glue its dots, or its hatch within dashes; of tape its strokes. */
export function drawnLines(
  design: Design,
  piece: string,
  { kind, points, closed = false }: FlatLine,
): readonly DrawnLine[] {
  const whole = closed ? ringOf(points) : points
  if (kind !== 'glue') return [{ role: kind, points: whole }]
  const place = placeAt(design, piece, points)
  if (place?.face === 'back')
    return [{ role: 'behind', points: closed ? ringOf(inset(points, DRAWN_IN)) : points }]
  const runs = closed ? hatch(points, SPACE) : tapeStrokes(points)
  return [
    // A tab's own edges are drawn already.
    ...(place?.isOwn ? [] : [{ role: 'place' as const, points: whole }]),
    ...runs.map((run): DrawnLine => ({ role: 'glue', points: run })),
  ]
}

/** Of a line drawn on paper, not of paper. */
const INKS: ReadonlySet<Role> = new Set(['cut', 'valley', 'mountain', 'crease', 'glue', 'place', 'behind'])

const TAPE = 5

/** At this luminance black and white stand out from a ground alike. Source: WCAG 2.2, contrast ratio: (L + 0.05)² = 1.05 × 0.05. */
const EVEN = Math.sqrt(1.05 * 0.05) - 0.05

const paperOf = ({ paper, card }: Paint): Hex => (paper as Hex | undefined) ?? CARDS[card] ?? '#ffffff'

/** Whether ink on this paper has to be pale. The back of every paper is. */
export const isDark = (paint: Paint): boolean => paint.face === 'front' && luminance(paperOf(paint)) < EVEN

/** By night, and what paper turns to in its shade: as the page's style sheet has them. */
const NIGHT: Light = { air: 0.27, lamp: 0.52 }

const NIGHT_SHADE: Hex = '#00072e'

/** Whether ink has to be pale on it where the page is dark: there less light falls on the same paper. */
export const isDarkByNight = (paint: Paint): boolean =>
  paint.face === 'front' && luminance(mixed(NIGHT_SHADE, darkOf(paint, NIGHT), paperOf(paint))) < EVEN

/** What pens take for the card of ink that is dark by day and pale by night. */
const BY_LIGHT = 6

/** The paint by which a pen gives ink the colour that its ground wants: pale as on the dark base card, or dark as on all others. */
const inkOf = (paint: Paint): Paint =>
  paint.card === TAPE
    ? paint
    : isDark(paint)
      ? { card: 0, light: paint.light, face: 'front' }
      : isDarkByNight(paint)
        ? { ...paint, card: BY_LIGHT, paper: paperOf(paint) }
        : { ...paint, card: Math.max(1, paint.card) }

const isInk = (mark: Mark): mark is PathMark & { readonly paint: Paint } =>
  mark.mark === 'path' && mark.paint !== undefined && INKS.has(mark.role)

/**
 * Lines drawn on paper, each in the ink that its ground wants. Cuts that are made in this very step stand out by a
 * rim of their own: all rims of one run come first, so that none covers the line beside it.
 */
export function inInk(marks: readonly Mark[], areCutNow: boolean): readonly Mark[] {
  const out: Mark[] = []
  let lines: Mark[] = []
  const put = (): void => {
    out.push(...lines)
    lines = []
  }
  for (const mark of marks) {
    if (!isInk(mark)) {
      put()
      out.push(mark)
      continue
    }
    if (areCutNow && mark.role === 'cut') {
      const { paint: _, ...bold } = mark
      out.push({ ...bold, role: 'halo' })
      lines.push(bold)
    } else lines.push({ ...mark, paint: inkOf(mark.paint) })
  }
  put()
  return out
}
