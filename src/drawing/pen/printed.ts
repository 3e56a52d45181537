/**
 * A drawing as it comes to paper, for pens without a style sheet: each mark with its own colour, width and dashes.
 * The look is that of `marks.css` by day and in print; lengths are the drawing's own.
 */
import { DAY, darkOf, shadowOf } from './lit.ts'
import type { ArtMark, Drawing, Fade, InkShape, Mark, Matrix, Paint, PathMark, Point, Role } from './marks.ts'
import { arrowHeads } from './marks.ts'
import { blended, mixed } from './mix.ts'
import type { Hex } from './papers.ts'
import { CARDS } from './papers.ts'

export interface Line {
  readonly colour: Hex
  readonly alpha: number
  readonly width: number
  readonly dash: readonly number[]
  readonly cap: 'round' | 'butt'
}

/** Something painted. Later ones lie over those before. */
export type Printed =
  | {
      readonly what: 'shape'
      readonly shape: Pick<InkShape, 'runs' | 'bends' | 'closed'>
      readonly fill: { readonly colour: Hex; readonly alpha: number } | null
      readonly line: Line | null
      /** The frame of its points; the drawing's own if null. */
      readonly matrix: Matrix | null
    }
  | { readonly what: 'clip'; readonly runs: PathMark['runs']; readonly inner: readonly Printed[] }
  | { readonly what: 'fade'; readonly fade: Fade; readonly alpha: number }
  | { readonly what: 'picture'; readonly shape: InkShape; readonly matrix: Matrix | null }

/** What fades are made of. */
export const HOLLOW: Hex = '#14123a'

/** The site's tokens by day. */
const INK: Hex = '#1a1d33'
const SOFT: Hex = '#555b78'
const RED: Hex = '#c8102e'
const WHITE: Hex = '#ffffff'
const SHADE: Hex = '#001153'
const RIM: Hex = '#fffdf2'
const TABLE_SHADE: Hex = '#2a1c33'
const BACK: Hex = '#f0e4c9'
const DARKEST: Hex = '#0b0c1c'
const TAPE_GLUE: Hex = '#6b6338'

const TAPE = 5

/** How dark a shadow on the table is: on paper that takes ink, less than on the screen. */
const ON_TABLE = 0.32

const paperOf = ({ paper, card }: Paint): Hex => (paper as Hex | undefined) ?? CARDS[card] ?? INK

const faceOf = (paint: Paint): Hex =>
  paint.face === 'front' ? paperOf(paint) : blended(paperOf(paint), 0.24, BACK)

/** How a line of a role is drawn where nothing else is said. */
const LINES: Partial<Record<Role, Partial<Line>>> = {
  cut: { width: 2.4, cap: 'butt' },
  valley: { dash: [6, 3], cap: 'butt' },
  mountain: { dash: [8, 3, 1.5, 3], cap: 'butt' },
  glue: { width: 0.9 },
  place: { width: 0.9, dash: [3, 2.5], cap: 'butt' },
  behind: { width: 1.7, dash: [0.01, 4.5] },
  crease: { colour: SOFT, width: 0.9, dash: [1, 3] },
  edge: { width: 1.1 },
  dimension: { colour: RED, width: 2 },
  guide: { colour: SOFT, width: 1 },
  axis: { colour: SOFT, width: 1 },
  curve: { width: 2.4 },
  swing: { colour: RED, width: 1.2, dash: [2, 4] },
  ghost: { colour: SOFT, width: 1.2, dash: [3, 3] },
  fault: { colour: RED, width: 2, dash: [4, 3], cap: 'butt' },
  hand: { width: 2.6 },
}

/** On the table under a card. */
const SQUARE: Line = { colour: '#8d6f45', alpha: 0.22, width: 1, dash: [], cap: 'round' }

const lineOf = (role: Role, more: Partial<Line> = {}): Line => ({
  ...{ colour: INK, alpha: 1, width: 1.4, dash: [], cap: 'round' },
  ...LINES[role],
  ...more,
})

/** What is drawn on a standing card: pale on its dark pages, dark on its lighter pieces. */
const ON_CARD: ReadonlySet<Role> = new Set([
  'cut',
  'valley',
  'mountain',
  'crease',
  'guide',
  'glue',
  'place',
  'behind',
])

function onCard(role: Role, paint: Paint): Line {
  const isPage = paint.card === 0 && paint.face === 'front'
  const colour = isPage ? blended(paperOf(paint), 0.08, WHITE) : blended(paperOf(paint), 0.26, DARKEST)
  if (role === 'guide') return lineOf(role, { colour, width: 1.6, dash: [5, 3] })
  if (role !== 'glue') return lineOf(role, { colour })
  return lineOf(role, { colour: paint.card === TAPE ? TAPE_GLUE : colour, width: 0.8 })
}

const shape = (
  { runs, closed }: Pick<PathMark, 'runs' | 'closed'>,
  fill: Hex | null,
  line: Line | null,
  alpha = 1,
): Printed => ({
  what: 'shape',
  shape: { runs, bends: false, closed },
  fill: fill === null ? null : { colour: fill, alpha },
  line,
  matrix: null,
})

const artPrinted = ({ shapes, matrix, own }: ArtMark): Printed[] =>
  shapes.map((one, k): Printed => {
    const frame = matrix ?? own?.[k] ?? null
    if (one.picture !== undefined) return { what: 'picture', shape: one, matrix: frame }
    return {
      what: 'shape',
      shape: one,
      fill: one.fill === null ? null : { colour: one.fill as Hex, alpha: 1 },
      line:
        one.line === null
          ? null
          : { colour: one.line as Hex, alpha: 1, width: one.width, dash: [], cap: 'round' },
      matrix: frame,
    }
  })

const shadow = (mark: PathMark, paint?: Paint): Printed =>
  shape(mark, SHADE, null, shadowOf(mark.strength ?? 1, paint, DAY))

/** An edge, a hollow or the back of a fold of a surface. */
function edgeLine(role: Role, dim: boolean): Line {
  const alpha = (usual: number): number => (dim ? 0.22 : usual)
  if (role === 'brow') return lineOf(role, { colour: RIM, alpha: alpha(0.42) })
  if (role === 'dip') return lineOf(role, { colour: HOLLOW, alpha: alpha(0.4) })
  return lineOf(role, { width: 1, alpha: alpha(1) })
}

/** What lies on a surface. */
function inlay(mark: PathMark | ArtMark, paint: Paint): Printed[] {
  if (mark.mark === 'art') return artPrinted(mark)
  const { role, fade, strength = 1 } = mark
  // What burns by night is not seen by day.
  if (role === 'glow' || role === 'haze') return []
  if (fade) return [{ what: 'fade', fade, alpha: strength }]
  if (role === 'bare') return [shape(mark, faceOf(paint), null)]
  if (role === 'shade') return [shape(mark, SHADE, null, darkOf(paint, DAY))]
  if (role === 'shadow') return [shadow(mark, paint)]
  return [shape(mark, null, edgeLine(role, paint.dim ?? false))]
}

function facet(mark: PathMark, paint: Paint): Printed[] {
  const lit = mixed(SHADE, darkOf(paint, DAY), faceOf(paint))
  const ground = shape({ ...mark, closed: true }, lit, lineOf('facet', { colour: lit, width: 0.6 }))
  if (!mark.on) return [ground]
  return [ground, { what: 'clip', runs: mark.runs, inner: mark.on.flatMap((one) => inlay(one, paint)) }]
}

function pathPrinted(mark: PathMark): Printed[] {
  const { role, paint, closed } = mark
  if (role === 'glow' || role === 'haze') return []
  if (role === 'facet' && paint) return facet(mark, paint)
  if (role === 'paper') return [shape(mark, paint ? paperOf(paint) : CARDS[0], null, 0.2)]
  if (role === 'shadow')
    return [
      mark.of === 'table' ? shape(mark, TABLE_SHADE, null, ON_TABLE * (mark.strength ?? 1)) : shadow(mark),
    ]
  if (role === 'halo')
    return [
      shape(mark, null, lineOf(role, { colour: WHITE, width: closed ? 3 : 5.5 })),
      ...heads(mark, WHITE, 4),
    ]
  if (role === 'square') return [shape(mark, null, SQUARE)]
  if (role === 'slice')
    return [shape(mark, null, lineOf(role, { colour: paint ? paperOf(paint) : INK, width: 4.5 }))]
  const line = paint && ON_CARD.has(role) ? onCard(role, paint) : lineOf(role)
  return [shape(mark, null, line), ...heads(mark, line.colour, 1)]
}

/** Arrow heads, filled. */
function heads(mark: PathMark, colour: Hex, width: number): Printed[] {
  const runs = arrowHeads(mark)
  return runs.length === 0
    ? []
    : [shape({ runs, closed: true }, colour, lineOf(mark.role, { colour, width, dash: [] }))]
}

/** A small round as four cubics, whose handles are 4/3 (√2 - 1) of the radius long. */
const ROUND = (4 / 3) * (Math.SQRT2 - 1)

const ring = ([x, y]: Point, r: number): readonly Point[] => {
  const k = r * ROUND
  return (
    [
      [r, 0, r, k, k, r],
      [0, r, -k, r, -r, k],
      [-r, 0, -r, -k, -k, -r],
      [0, -r, k, -r, r, -k],
      [r, 0],
    ] as const
  ).flatMap((at) =>
    Array.from(
      { length: at.length / 2 },
      (_, n): Point => [x + (at[2 * n] as number), y + (at[2 * n + 1] as number)],
    ),
  )
}

function dotPrinted({ at, radius, role }: Extract<Mark, { mark: 'dot' }>): Printed {
  const solid = role === 'edge' || role === 'guide' || role === 'curve'
  return {
    what: 'shape',
    shape: { runs: [ring(at, radius)], bends: true, closed: true },
    fill: { colour: solid ? INK : WHITE, alpha: 1 },
    line: solid ? null : lineOf(role, { width: 2, dash: [] }),
    matrix: null,
  }
}

/** All of a drawing but its words, in the painter's order. */
export const printed = ({ marks }: Pick<Drawing, 'marks'>): Printed[] =>
  marks.flatMap((mark): Printed[] =>
    mark.mark === 'word' ? [] : mark.mark === 'dot' ? [dotPrinted(mark)] : pathPrinted(mark),
  )

const PAPER_QUIET: Hex = '#4e5470'

/** The colour of a word on paper. */
export const wordInk = (role: Role): Hex =>
  role === 'dimension' || role === 'fault'
    ? RED
    : role === 'axis' || role === 'note' || role === 'guide'
      ? PAPER_QUIET
      : INK
