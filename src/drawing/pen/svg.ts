/**
 * The pen for SVG. It knows no paper; numbers are rounded in `svg-values.ts` alone.
 *
 * Class scheme (the look is in `marks.css`, the colours in the site's tokens):
 *
 *   m-<role>          every mark, e.g. `m-cut`, `m-facet`, `m-handle`
 *   c-<n>             a surface or slice: cut from card n (sets `--paper` to `--card-<n>`)
 *   front | back      which face of the card shows (the back is paler)
 *   style="--light:…;--sky:…" a surface: light it gets, 0 to 1; `--paper` where its paper is named
 *   style="--strength:…" a shadow
 *   s-<n>             a curve among several: 0, 1, 2 …, each with a dash pattern of its own
 *   closed | open     a path
 *   quiet             a path of something else than what is looked at
 *   head              the arrow heads of a path, filled
 *   bold              a word
 *   data-of="…"       the panel, crease, mechanism, handle or check that a mark stands for
 *
 * A surface with something on it is `<g class="sheet c-<n> front">`: its path, a clip, and in a group what
 * lies on it. A fade is a path in a frame of its own, filled with one of the drawing's gradients. Ids of clips and
 * gradients begin with the drawing's name.
 *
 * A figure is `<svg class="drawing" viewBox role="img" aria-label>`, with `on-table` where it stands on one.
 * Elements: `path`, `circle`, `text`, and `g`, `clipPath`, gradients for what lies on paper.
 */
import type { ArtMark, DotMark, Drawing, Fade, Mark, PathMark, WordMark } from './marks.ts'
import {
  ALONG,
  classOf,
  classOfDrawing,
  cut,
  FADE_STOPS,
  fadeLook,
  fadesIn,
  GLOW_STOPS,
  glowsIn,
  headData,
  matrixText,
  nameFor,
  namesOf,
  pathData,
  ROUND,
  shapeData,
  shapeStyle,
  sheetClass,
  styleOf,
  turnOf,
} from './svg-values.ts'

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

const stops = (of: readonly (readonly [at: number, left: number])[]): string =>
  of.map(([at, opacity]) => `<stop offset="${at}" stop-opacity="${opacity}"/>`).join('')

/** The gradients that all fades of a drawing share: each in a frame of its own. */
const fades = (name: string): string =>
  `<linearGradient${attributes({ id: `${name}-band`, ...ALONG })}>${stops(FADE_STOPS)}</linearGradient><radialGradient${attributes({ id: `${name}-round`, href: `#${name}-band`, ...ROUND })}/>`

const glow = (name: string): string =>
  `<radialGradient${attributes({ id: `${name}-glow`, class: 'glow', ...ROUND })}>${stops(GLOW_STOPS)}</radialGradient>`

const fade = (mark: PathMark, one: Fade, name: string): string =>
  `<path${attributes({ class: classOf(mark), ...fadeLook(mark, one, name) })}/>`

/** A surface and what lies on it. */
function sheet(mark: PathMark, own: string, name: string): string {
  const d = pathData(mark.runs, true)
  const inner = (mark.on ?? []).map((one) =>
    one.mark === 'art'
      ? art(one)
      : one.fade
        ? fade(one, one.fade, name)
        : `<path${attributes({ class: classOf(one), style: styleOf(one), d: pathData(one.runs, one.closed, 1) })}/>`,
  )
  return `<g${attributes({ class: sheetClass(mark), style: styleOf(mark), 'data-of': mark.of })}><path class="m-${mark.role}" d="${d}"/><clipPath id="${own}"><path d="${d}"/></clipPath><g clip-path="url(#${own})">${inner.join('')}</g></g>`
}

function path(mark: PathMark, digits: number, unit: Drawing['unit'], own: string, name: string): string {
  if (mark.on) return sheet(mark, own, name)
  if (mark.fade) return fade(mark, mark.fade, name)
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
  if (glowsIn(drawing)) marks.unshift(glow(name))
  if (fadesIn(drawing)) marks.unshift(fades(name))
  return `<svg${head}>${style}\n${marks.join('\n')}\n</svg>\n`
}
