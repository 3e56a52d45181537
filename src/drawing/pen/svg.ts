/**
 * The pen for SVG. It knows no paper, and is the only place where numbers are rounded.
 *
 * Class scheme (the look is in `marks.css`, the colours in the site's tokens):
 *
 *   m-<role>          every mark, e.g. `m-cut`, `m-facet`, `m-handle`
 *   c-<n>             a surface or slice: cut from card n (sets `--paper` to `--card-<n>`)
 *   front | back      which face of the card shows (the back is paler)
 *   style="--light:…;--sky:…" a surface: light it gets, 0 to 1; `--paper` where its paper is named
 *   style="--strength:…" a shadow or fade
 *   s-<n>             a curve among several: 0, 1, 2 …, each with a dash pattern of its own
 *   closed | open     a path
 *   quiet             a path of something else than what is looked at
 *   head              the arrow heads of a path, filled
 *   bold              a word
 *   data-of="…"       the panel, crease, mechanism, handle or check that a mark stands for
 *
 * A surface with something on it is `<g class="sheet c-<n> front">`: its path, a clip, and in a group what
 * lies on it. Clips and fades have ids that begin with the drawing's name.
 *
 * A figure is `<svg class="drawing" viewBox role="img" aria-label>`, with `on-table` where it stands on one.
 * Elements: `path`, `circle`, `text`, and `g`, `clipPath`, gradients for what lies on paper.
 */
import type { ArtMark, DotMark, Drawing, InkShape, Mark, Matrix, PathMark, Point, WordMark } from './marks.ts'
import { arrowHeads } from './marks.ts'

/** A number with at most `digits` decimals and no idle zeros. */
export const cut = (value: number, digits = 2): string => {
  const scale = 10 ** digits
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

export const matrixText = (matrix: Matrix): string => `matrix(${matrix.map((n) => cut(n, 4)).join(' ')})`

/** A name for a drawing that was given none: the same drawing always has the same. */
export function nameFor({ says, marks }: Drawing): string {
  let hash = 5381
  const stir = (text: string) => {
    for (let k = 0; k < text.length; k++) hash = (hash * 33 + text.charCodeAt(k)) | 0
  }
  stir(says)
  for (const mark of marks) if (mark.mark === 'path' && mark.on) stir(pathData(mark.runs, true, 1))
  return `d${(hash >>> 0).toString(36)}`
}

/** The inline style of a fade: its strength, and the gradient with this id. */
export const fadeStyle = (mark: PathMark, id: string): string => `${styleOf(mark) ?? ''};fill:url(#${id})`

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
    const sky = paint.sky === undefined ? '' : `;--sky:${cut(paint.sky, 3)}`
    return `--light:${cut(paint.light, 3)}${sky}${paper}`
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

const escapes: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** What XML 1.0 holds no place for, not even escaped (production 2, Char), but for tabs and line breaks. */
const FORBIDDEN = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu

const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '').replace(/[&<>"]/g, (c) => escapes[c] ?? c)

type Attributes = Readonly<Record<string, string | undefined>>

const attributes = (of: Attributes): string =>
  Object.entries(of)
    .map(([name, value]) => (value === undefined ? '' : ` ${name}="${escaped(value)}"`))
    .join('')

const art = ({ shapes, matrix, own }: ArtMark): string =>
  `<g${attributes({ class: 'm-art', transform: matrix === null ? undefined : matrixText(matrix) })}>${shapes
    .map((shape, k) => {
      const turn = own?.[k]
      return `<path${attributes({
        style: shapeStyle(shape),
        transform: turn ? matrixText(turn) : undefined,
        d: shapeData(shape, matrix || turn ? 2 : 1),
      })}/>`
    })
    .join('')}</g>`

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

/** Whether a flame burns in the drawing. */
export const glowsIn = ({ marks }: Drawing): boolean => marks.some(({ role }) => role === 'haze')

/** The stops that all fades of a drawing share, if it has any. */
export const fadesIn = ({ marks }: Drawing): boolean => marks.some((mark) => mark.mark === 'path' && mark.on)

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

const stops = (name: string, kind: 'fade' | 'glow'): string =>
  `<linearGradient id="${name}-${kind}"${kind === 'glow' ? ' class="glow"' : ''}>${(kind === 'fade'
    ? FADE_STOPS
    : GLOW_STOPS
  )
    .map(([at, opacity]) => `<stop offset="${at}" stop-opacity="${opacity}"/>`)
    .join('')}</linearGradient>`

function fade(mark: PathMark, id: string, name: string): string {
  const { kind = 'band', matrix } = mark.fade ?? {}
  const gradient = kind === 'band' ? 'linearGradient' : 'radialGradient'
  const reach = kind === 'band' ? 'x1="0" y1="0" x2="1" y2="0"' : 'cx="0" cy="0" r="1"'
  const turn = matrix ? matrixText(matrix) : ''
  return `<${gradient} id="${id}" href="#${name}-${kind === 'glow' ? 'glow' : 'fade'}" gradientUnits="userSpaceOnUse" ${reach} gradientTransform="${turn}"/><path${attributes(
    { class: classOf(mark), style: fadeStyle(mark, id), d: pathData(mark.runs, true, 1) },
  )}/>`
}

/** A surface and what lies on it. */
function sheet(mark: PathMark, own: string, name: string): string {
  const d = pathData(mark.runs, true)
  const inner = (mark.on ?? []).map((one, k) =>
    one.mark === 'art'
      ? art(one)
      : one.fade
        ? fade(one, `${own}f${k}`, name)
        : `<path${attributes({ class: classOf(one), style: styleOf(one), d: pathData(one.runs, one.closed, 1) })}/>`,
  )
  return `<g${attributes({ class: sheetClass(mark), style: styleOf(mark), 'data-of': mark.of })}><path class="m-${mark.role}" d="${d}"/><clipPath id="${own}"><path d="${d}"/></clipPath><g clip-path="url(#${own})">${inner.join('')}</g></g>`
}

/** The class names of a surface with something on it. */
export const sheetClass = ({ paint }: PathMark): string =>
  paint ? `sheet c-${paint.card} ${paint.face}${paint.dim ? ' dim' : ''}` : 'sheet'

function path(mark: PathMark, digits: number, unit: Drawing['unit'], own: string, name: string): string {
  if (mark.on) return sheet(mark, own, name)
  if (mark.fade) return fade(mark, own, name)
  const d = pathData(mark.runs, mark.closed, digits)
  const line = `<path${attributes({ class: classOf(mark), style: styleOf(mark), 'data-of': mark.of, d })}/>`
  const heads = headData(mark, digits, unit)
  return heads === null ? line : `${line}<path class="m-${mark.role} head" d="${heads}"/>`
}

const dot = (mark: DotMark, digits: number): string =>
  `<circle${attributes({
    class: classOf(mark),
    'data-of': mark.of,
    cx: cut(mark.at[0], digits),
    cy: cut(mark.at[1], digits),
    r: cut(mark.radius, digits),
  })}/>`

const word = (mark: WordMark, digits: number): string =>
  `<text${attributes({
    class: classOf(mark),
    'data-of': mark.of,
    x: cut(mark.at[0], digits),
    y: cut(mark.at[1], digits),
    'font-size': cut(mark.size, digits),
    'text-anchor': mark.anchor,
    transform: turnOf(mark, digits),
  })}>${escaped(mark.text)}</text>`

/** One mark as SVG text. `own` is for the ids of a surface's clip and fades, `name` is the drawing's. */
export function markSvg(
  mark: Mark,
  digits = 2,
  unit: Drawing['unit'] = 'px',
  own = 'd-0',
  name = 'd',
): string {
  if (mark.mark === 'path') return path(mark, digits, unit, own, name)
  return mark.mark === 'dot' ? dot(mark, digits) : word(mark, digits)
}

export interface SvgOptions {
  /** Decimals kept; default 2. */
  readonly digits?: number
  /** A style sheet to put inside, for a picture that stands alone. */
  readonly css?: string
}

export const classOfDrawing = ({ ground }: Drawing): string =>
  ground === undefined ? 'drawing' : `drawing on-${ground}`

/** A drawing as SVG text. In mm it has its true size. */
export function toSvg(drawing: Drawing, { digits = 2, css }: SvgOptions = {}): string {
  const [, , width, height] = drawing.box
  const size =
    drawing.unit === 'mm' ? { width: `${cut(width, digits)}mm`, height: `${cut(height, digits)}mm` } : {}
  const head = attributes({
    xmlns: 'http://www.w3.org/2000/svg',
    class: classOfDrawing(drawing),
    ...size,
    viewBox: drawing.box.map((n) => cut(n, digits)).join(' '),
    role: 'img',
    'aria-label': drawing.says,
  })
  const style = css === undefined ? '' : `<style>${css}</style>`
  const name = nameFor(drawing)
  const names = namesOf(drawing.marks, name)
  const marks = drawing.marks.map((mark, k) => markSvg(mark, digits, drawing.unit, names[k], name))
  if (glowsIn(drawing)) marks.unshift(stops(name, 'glow'))
  if (fadesIn(drawing)) marks.unshift(stops(name, 'fade'))
  return `<svg${head}>${style}\n${marks.join('\n')}\n</svg>\n`
}
