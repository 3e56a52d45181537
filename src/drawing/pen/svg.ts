/**
 * The pen for SVG text. What its class names mean stands in `nodes.ts`.
 *
 * A figure is `<svg class="drawing" viewBox role="img" aria-label>`, with `on-table` where it stands on one.
 * Elements: `path`, `circle`, `text`, and `g`, `clipPath`, gradients for what lies on paper.
 */
import type { Drawing, Mark } from './marks.ts'
import type { SvgNode } from './nodes.ts'
import { gradientsOf, nodesOf } from './nodes.ts'
import { classOfDrawing, cut, pathData } from './svg-values.ts'

const escapes: Record<string, string> = { '&': '&amp;', '<': '&lt;', '>': '&gt;', '"': '&quot;' }

/** What XML 1.0 holds no place for, not even escaped (production 2, Char), but for tabs and line breaks. */
const FORBIDDEN = /[^\t\n\r\u{20}-\u{d7ff}\u{e000}-\u{fffd}\u{10000}-\u{10ffff}]/gu

/** Words as they stand in XML or HTML. */
export const escaped = (text: string): string =>
  text.replace(FORBIDDEN, '').replace(/[&<>"]/g, (c) => escapes[c] ?? c)

const attribute = (name: string, value: string | undefined): string =>
  value === undefined ? '' : ` ${name}="${escaped(value)}"`

/** A node as text. */
export function written({ kind: { tag, names }, values, inner }: SvgNode): string {
  const head = `<${tag}${names.map((name, k) => attribute(name, values[k])).join('')}`
  const text = typeof inner === 'string' ? escaped(inner) : inner.map(written).join('')
  return text === '' && tag !== 'g' && tag !== 'text' ? `${head}/>` : `${head}>${text}</${tag}>`
}

/** One mark as SVG text. */
export const markSvg = (mark: Mark, digits = 2, unit: Drawing['unit'] = 'px'): string =>
  nodesOf([mark], { digits, unit }, 'd').map(written).join('')

/** A name for a drawing that was given none: the same drawing always has the same. */
function nameFor({ says, marks }: Drawing): string {
  let hash = 5381
  const stir = (text: string) => {
    for (let k = 0; k < text.length; k++) hash = (hash * 33 + text.charCodeAt(k)) | 0
  }
  stir(says)
  for (const mark of marks) if (mark.mark === 'path' && mark.on) stir(pathData(mark.runs, true, 1))
  return `d${(hash >>> 0).toString(36)}`
}

export interface SvgOptions {
  /** Decimals kept; default 2. */
  readonly digits?: number
  /** A style sheet to put inside, for a picture that stands alone. */
  readonly css?: string
  /** Shown so many times as large as it is drawn; default 1. */
  readonly stretch?: number
}

/** A drawing as SVG text. In mm it has its true size. */
export function toSvg(drawing: Drawing, { digits = 2, css, stretch = 1 }: SvgOptions = {}): string {
  const [, , width, height] = drawing.box
  const mm = (length: number): string | undefined =>
    drawing.unit === 'mm' ? `${cut(length * stretch, digits)}mm` : undefined
  const head = Object.entries({
    xmlns: 'http://www.w3.org/2000/svg',
    class: classOfDrawing(drawing),
    width: mm(width),
    height: mm(height),
    viewBox: drawing.box.map((n) => cut(n, digits)).join(' '),
    role: 'img',
    'aria-label': drawing.says,
  })
    .map(([name, value]) => attribute(name, value))
    .join('')
  const style = css === undefined ? '' : `<style>${css}</style>`
  const name = nameFor(drawing)
  const nodes = [
    ...gradientsOf(drawing, name),
    ...nodesOf(drawing.marks, { digits, unit: drawing.unit }, name),
  ]
  return `<svg${head}>${style}\n${nodes.map(written).join('\n')}\n</svg>\n`
}
