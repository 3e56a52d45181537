/** A drawing of the screen on a page as SVG: as the PDF has it, each shape with its own look. */
import type { Drawing } from '../../drawing/pen/marks.ts'
import { imageNode } from '../../drawing/pen/nodes.ts'
import type { Printed } from '../../drawing/pen/printed.ts'
import { HOLLOW, printed } from '../../drawing/pen/printed.ts'
import { markSvg, written } from '../../drawing/pen/svg.ts'
import { cut, FADE_STOPS, matrixText, pathData, shapeData } from '../../drawing/pen/svg-values.ts'
import type { SheetPath } from '../marks/setting.ts'
import { pictureWords } from '../marks/setting.ts'

const stops = FADE_STOPS.map(
  ([at, left]) => `<stop offset="${at}" stop-color="${HOLLOW}" stop-opacity="${left}"/>`,
).join('')

const gradients = (name: string): string =>
  `<linearGradient id="${name}-band" gradientUnits="userSpaceOnUse" x1="0" y1="0" x2="1" y2="0">${stops}</linearGradient>` +
  `<radialGradient id="${name}-round" gradientUnits="userSpaceOnUse" cx="0" cy="0" r="1">${stops}</radialGradient>`

const FADES = { band: 'M0 0H1V1H0Z', corner: 'M0 0H1V1H0Z', round: 'M-1 0H1V1H-1Z', glow: '' } as const

function styleOf({ fill, line }: Extract<Printed, { what: 'shape' }>): string {
  const opacity = (name: string, alpha: number): string => (alpha < 1 ? `;${name}-opacity:${cut(alpha)}` : '')
  const inner = fill ? `fill:${fill.colour}${opacity('fill', fill.alpha)}` : 'fill:none'
  if (!line) return `${inner};stroke:none`
  const dash = line.dash.length > 0 ? `;stroke-dasharray:${line.dash.join(' ')}` : ''
  return `${inner};stroke:${line.colour};stroke-width:${cut(line.width)}px;stroke-linecap:${line.cap}${dash}${opacity('stroke', line.alpha)}`
}

/** The picture in the frame that its mark tells. Ids begin with `name`. */
export function pictureSvg(mark: SheetPath, drawing: Drawing, name: string): string {
  let clips = 0
  const drawn = (one: Printed): string => {
    switch (one.what) {
      case 'shape':
        return `<path style="${styleOf(one)}"${one.matrix ? ` transform="${matrixText(one.matrix)}"` : ''} d="${shapeData({ ...NO_SHAPE, ...one.shape }, one.matrix ? 2 : 1)}"/>`
      case 'clip': {
        const id = `${name}-${clips++}`
        return `<clipPath id="${id}"><path d="${pathData(one.runs, true, 1)}"/></clipPath><g clip-path="url(#${id})">${one.inner.map(drawn).join('')}</g>`
      }
      case 'fade': {
        const { kind, matrix } = one.fade
        const of = kind === 'corner' ? 'round' : kind
        return `<path style="fill:url(#${name}-${of});stroke:none" fill-opacity="${cut(one.alpha)}" transform="matrix(${matrix.map((n) => cut(n, 1)).join(' ')})" d="${FADES[kind]}"/>`
      }
      case 'picture':
        return written(imageNode(one.shape, one.matrix ? `${matrixText(one.matrix)} ` : ''))
    }
  }
  const [[left, top] = [0, 0], [right] = [0, 0]] = mark.runs[0] ?? []
  const [x, y, wide, high] = drawing.box
  const scale = (right - left) / wide
  const place = [scale, 0, 0, scale, left - scale * x, top - scale * y].map((n) => cut(n, 6)).join(' ')
  const inner = printed(drawing).map(drawn).join('')
  return [
    gradients(name),
    `<clipPath id="${name}"><path d="M${x} ${cut(y)}h${wide}v${cut(high)}h${-wide}Z"/></clipPath>`,
    `<g transform="matrix(${place})" clip-path="url(#${name})">${inner}</g>`,
    ...pictureWords(mark).map((word) => markSvg(word)),
  ].join('')
}

const NO_SHAPE = { fill: null, line: null, width: 0 } as const
