/** What a mark is in SVG: its class names, its styles, the data of its paths. The pen for text and the page's own elements share it. */
import type { Drawing, Fade, InkShape, Mark, Matrix, PathMark, Point, WordMark } from './marks.ts'
import { arrowHeads } from './marks.ts'

const SCALES: readonly number[] = [1, 10, 100, 1000]

/** A number with at most `digits` decimals and no idle zeros. */
export const cut = (value: number, digits = 2): string => {
  const scale = SCALES[digits] ?? 10 ** digits
  const rounded = Math.round(value * scale) / scale
  return `${rounded === 0 ? 0 : rounded}`
}

/** Runs of points as the `d` of a path. */
export function pathData(runs: readonly (readonly Point[])[], closed: boolean, digits = 2): string {
  let d = ''
  for (const run of runs) {
    for (let k = 0; k < run.length; k++) {
      const p = run[k] as Point
      d += `${k === 0 ? 'M' : 'L'}${cut(p[0], digits)} ${cut(p[1], digits)}`
    }
    if (closed && run.length > 0) d += 'Z'
  }
  return d
}

/** Smooth runs as the `d` of a path: a start, then three points for each cubic. */
export function bentData(runs: readonly (readonly Point[])[], closed: boolean, digits = 2): string {
  let d = ''
  for (const run of runs) {
    for (let k = 0; k < run.length; k++) {
      const p = run[k] as Point
      const lead = k === 0 ? 'M' : k % 3 === 1 ? 'C' : ' '
      d += `${lead}${cut(p[0], digits)} ${cut(p[1], digits)}`
    }
    if (closed && run.length > 0) d += 'Z'
  }
  return d
}

/** The `d` of a shape drawn on paper. */
export const shapeData = ({ runs, bends, closed }: InkShape, digits = 1): string =>
  bends ? bentData(runs, closed, digits) : pathData(runs, closed, digits)

/** The inline style of a shape drawn on paper. */
export const shapeStyle = ({ fill, line, width }: InkShape): string =>
  `fill:${fill ?? 'none'}${line === null ? '' : `;stroke:${line};stroke-width:${cut(width)}px`}`

/** A matrix for a frame in mm: a thousandth of a pixel for each of them. */
export const matrixText = (matrix: Matrix): string =>
  `matrix(${matrix.map((n, k) => cut(n, k < 4 ? 3 : 1)).join(' ')})`

/**
 * Where a picture lies, from the square in which it is 1 wide and 1 high, y downwards: by its lower left, lower right,
 * upper right and upper left corner, and by their middle where the eye sees them as no quite even frame.
 */
export function pictureMatrix(corners: readonly Point[]): Matrix {
  const [a, b, c, d] = corners as readonly [Point, Point, Point, Point]
  const along = (k: 0 | 1): number => (b[k] - a[k] + c[k] - d[k]) / 2
  const down = (k: 0 | 1): number => (a[k] - d[k] + b[k] - c[k]) / 2
  const from = (k: 0 | 1): number => (a[k] + b[k] + c[k] + d[k]) / 4 - (along(k) + down(k)) / 2
  return [along(0), along(1), down(0), down(1), from(0), from(1)]
}

/** The same as text. */
export const matrixOf = (corners: readonly Point[]): string =>
  `matrix(${pictureMatrix(corners)
    .map((n) => cut(n, 3))
    .join(' ')})`

/** What a fade covers of its own frame: the same in every picture, so that a frame moves it and no more. */
const FADE_SHAPES: Readonly<Record<Fade['kind'], string>> = {
  band: 'M0 0H1V1H0Z',
  corner: 'M0 0H1V1H0Z',
  round: 'M-1 0H1V1H-1Z',
  glow: 'M-1-1H1V1H-1Z',
}

/** A fade as attributes of a path, in the drawing of this name, whose fades share their gradients. */
export const fadeLook = ({ strength = 1 }: PathMark, { kind, matrix }: Fade, name: string) => ({
  style: `fill:url(#${name}-${kind === 'corner' ? 'round' : kind})`,
  'fill-opacity': cut(strength),
  // Its frame is as large as it is on the screen: a tenth of a pixel is fine enough.
  transform: `matrix(${matrix.map((n) => cut(n, 1)).join(' ')})`,
  d: FADE_SHAPES[kind],
})

/** The class names of a mark. */
export function classOf(mark: Mark): string {
  let name = `m-${mark.role}`
  if (mark.mark === 'path') {
    if (mark.series !== undefined) name += ` s-${mark.series}`
    if (mark.paint) name += ` c-${mark.paint.card} ${mark.paint.face}`
    name += mark.closed ? ' closed' : ' open'
    if (mark.quiet) name += ' quiet'
  }
  if (mark.mark === 'word' && mark.bold) name += ' bold'
  return name
}

/** The inline style of a mark: how much light a surface gets, how strong a shadow is. */
export function styleOf(mark: Mark): string | undefined {
  if (mark.mark !== 'path') return undefined
  const { paint, strength } = mark
  if (paint) {
    const paper = paint.paper === undefined ? '' : `;--paper:${paint.paper}`
    const sky = paint.sky === undefined ? '' : `;--sky:${cut(paint.sky)}`
    return `--light:${cut(paint.light)}${sky}${paper}`
  }
  return strength === undefined ? undefined : `--strength:${cut(strength, 3)}`
}

/** The arrow heads of a path as the `d` of a filled path; null if it has none. */
export function headData(mark: PathMark, digits = 2, unit: Drawing['unit'] = 'px'): string | null {
  const heads = arrowHeads(mark, unit)
  return heads.length > 0 ? pathData(heads, true, digits) : null
}

/** The `transform` of a turned word. */
export const turnOf = (mark: WordMark, digits = 2): string | undefined =>
  mark.turn
    ? `rotate(${cut(mark.turn, digits)} ${cut(mark.at[0], digits)} ${cut(mark.at[1], digits)})`
    : undefined

/** How a fade thins out: where, and how much of it is left. */
export const FADE_STOPS = [
  [0, 1],
  [0.35, 0.36],
  [1, 0],
] as const

/**
 * How the light of a flame thins out over a flat surface from the foot of the perpendicular on it, to three of its
 * heights: (1 + (r/h)^2)^(-3/2), by the inverse square and the cosine law (Lambert, Photometria, 1760).
 */
export const GLOW_REACH = 3
export const GLOW_STOPS: readonly (readonly [at: number, left: number])[] = [
  0, 0.12, 0.24, 0.36, 0.5, 0.7, 1,
].map((at) => [at, at === 1 ? 0 : Math.round(1000 * (1 + (GLOW_REACH * at) ** 2) ** -1.5) / 1000] as const)

/** The frames of gradients that all fades share. */
export const ALONG = { gradientUnits: 'userSpaceOnUse', x1: '0', y1: '0', x2: '1', y2: '0' } as const
export const ROUND = { gradientUnits: 'userSpaceOnUse', cx: '0', cy: '0', r: '1' } as const

/** Whether a flame burns in the drawing. */
export const glowsIn = ({ marks }: Drawing): boolean => marks.some(({ role }) => role === 'haze')

/** Whether anything in the drawing fades into the dark. */
export const fadesIn = ({ marks }: Drawing): boolean =>
  marks.some(
    (mark) => mark.mark === 'path' && mark.on?.some((one) => one.mark === 'path' && one.role === 'fade'),
  )

/** A name for each mark of a drawing: of a surface its own, however the painter's order changes. */
export function namesOf(marks: readonly Mark[], name: string): readonly string[] {
  const seen = new Map<string, number>()
  return marks.map((mark, k) => {
    if (mark.mark !== 'path' || !mark.on) return `${name}-${k}`
    const of = (mark.of ?? '').replace('/', '-')
    const times = seen.get(of) ?? 0
    seen.set(of, times + 1)
    return `${name}-${of}${times === 0 ? '' : `-${times}`}`
  })
}

/** The class names of a surface with something on it. */
export const sheetClass = ({ paint }: PathMark): string =>
  paint ? `sheet c-${paint.card} ${paint.face}${paint.dim ? ' dim' : ''}` : 'sheet'

export const classOfDrawing = ({ ground }: Drawing): string =>
  ground === undefined ? 'drawing' : `drawing on-${ground}`
