/**
 * The pen for SVG. It knows no paper, and is the only place where numbers are rounded.
 *
 * Class scheme (the look is in `marks.css`, the colours in the site's tokens):
 *
 *   m-<role>          every mark, e.g. `m-cut`, `m-facet`, `m-handle`
 *   c-<n>             a surface or slice: cut from card n (sets `--paper` to `--card-<n>`)
 *   front | back      which face of the card shows (the back is paler)
 *   style="--light:…" a surface: light it gets, 0 to 1
 *   s-<n>             a curve among several: 0, 1, 2 …, each with a dash pattern of its own
 *   closed | open     a path
 *   head              the arrow heads of a path, filled
 *   bold              a word
 *   data-of="…"       the panel, crease, mechanism, handle or check that a mark stands for
 *
 * A figure is `<svg class="drawing" viewBox role="img" aria-label>`. Elements: `path`, `circle`, `text`.
 */
import type { DotMark, Drawing, Mark, PathMark, Point, WordMark } from './marks.ts'
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

/** The class names of a mark. */
export function classOf(mark: Mark): string {
  let name = `m-${mark.role}`
  if (mark.mark === 'path') {
    if (mark.series !== undefined) name += ` s-${mark.series}`
    if (mark.paint) name += ` c-${mark.paint.card} ${mark.paint.face}`
    name += mark.closed ? ' closed' : ' open'
  }
  if (mark.mark === 'word' && mark.bold) name += ' bold'
  return name
}

/** The inline style of a mark: how much light a surface gets. */
export const styleOf = (mark: Mark): string | undefined =>
  mark.mark === 'path' && mark.paint ? `--light:${cut(mark.paint.light, 3)}` : undefined

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

function path(mark: PathMark, digits: number, unit: Drawing['unit']): string {
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

/** One mark as SVG text. */
export function markSvg(mark: Mark, digits = 2, unit: Drawing['unit'] = 'px'): string {
  if (mark.mark === 'path') return path(mark, digits, unit)
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
    class: 'drawing',
    ...size,
    viewBox: drawing.box.map((n) => cut(n, digits)).join(' '),
    role: 'img',
    'aria-label': drawing.says,
  })
  const style = css === undefined ? '' : `<style>${css}</style>`
  return `<svg${head}>${style}\n${drawing.marks.map((mark) => markSvg(mark, digits, drawing.unit)).join('\n')}\n</svg>\n`
}
