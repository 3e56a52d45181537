/** The standing card as a picture that stands alone: it brings its own colours and asks for nothing from elsewhere. */
import { toSvg } from '../drawing/pen/svg.ts'
import type { Camera, Size } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Poser } from '../paper/index.ts'

export interface Shot {
  /** Degrees. */
  readonly opening: number
  readonly camera: Camera
  readonly size: Size
  /** The openings that the frame has room for, degrees; of a single picture those near its own. */
  readonly frame?: readonly number[]
  /** What it stands on; a table unless said. */
  readonly ground?: 'table' | 'white'
}

/** A still picture is framed with this much room to either side, degrees. */
const NEAR = 6

/** Its lines grow with it, as on any picture. */
const GROWS = '.drawing :is(path,circle,text){vector-effect:none}'

/** What is printed wants no ground of its own. */
const WHITE = '.drawing.on-table{background:#fff}'

/** Comments and idle space do not travel, nor what is meant for a page alone: its print and its forced colours. */
const squeezed = (css: string): string =>
  css
    .replace(/\/\*[\s\S]*?\*\//g, '')
    .replace(/@media[^{]*\{(?:[^{}]*\{[^{}]*\})*[^{}]*\}/g, '')
    .replace(/\s+/g, ' ')
    .trim()

/**
 * A picture as an SVG document, its size in pixels.
 * @param css the text of `drawing/pen/marks.css`, which goes along
 */
export function pictureSvg(
  poser: Poser,
  { opening, camera, size, frame, ground }: Shot,
  css: string,
): string {
  const drawn = view(poser, opening, camera, size, {
    frame: frame ?? [Math.max(0, opening - NEAR), Math.min(180, opening + NEAR)],
  })
  return toSvg(drawn, { digits: 1, css: squeezed(css) + GROWS + (ground === 'white' ? WHITE : '') }).replace(
    '<svg ',
    `<svg width="${size.width}" height="${size.height}" `,
  )
}
