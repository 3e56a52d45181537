/** A card whose gutter was folded crooked: its corners miss each other. The kernel knows straight gutters alone. */
import type { Mark, Point } from '../drawing/pen/marks.ts'
import { sceneMarks } from '../drawing/steps/steps.ts'
import type { Camera, Size, Stand } from '../drawing/view/camera.ts'
import type { Design, Flat, Surface, Vec3 } from '../paper/index.ts'
import { compile, SHUT, surfaces } from '../paper/index.ts'
import { RADIANS } from '../paper/plane/vector.ts'
import { ringAt } from './fault-marks.ts'

/** The two pages of a sheet that is folded so many degrees off its middle line: x from the fold, y from the near edge. */
function halves({ width, height }: Design['card'], off: number): Record<'left' | 'right', readonly Flat[]> {
  const [sin, cos] = [Math.sin(off * RADIANS), Math.cos(off * RADIANS)]
  const turned = (x: number, y: number): Flat => [cos * x - sin * y, sin * x + cos * y + height / 2]
  const end = height / 2 / cos
  const fold: readonly Flat[] = [
    [0, height / 2 + end],
    [0, height / 2 - end],
  ]
  const page = (side: 1 | -1): readonly Flat[] => [
    turned(side * width, -height / 2),
    turned(side * width, height / 2),
    ...fold,
  ]
  return { left: page(-1), right: page(1) }
}

/** Which corners of `halves` should meet: those at the far end. */
const FAR = 1

export interface Crooked {
  /** Degrees. */
  readonly opening: number
  readonly off: number
  readonly camera: Camera
  readonly stand: Stand
  readonly size: Size
  readonly text: number
}

/** Its marks, the corners ringed. */
export function crookedMarks(
  design: Design,
  { opening, off, camera, stand, size, text }: Crooked,
): readonly Mark[] {
  const half = (Math.max(SHUT, opening) / 2) * RADIANS
  const poser = compile(design)
  poser(Math.max(SHUT, opening))
  const pages = halves(design.card, off)
  const lift = ([x, y]: Flat): Vec3 => [x * Math.sin(half), y, Math.abs(x) * Math.cos(half)]
  const paper = surfaces(poser).map(({ flat: _, ...surface }): Surface => {
    const points = pages[surface.panel === 'page/left' ? 'left' : 'right'].map(lift)
    return { ...surface, points, drawn: points.map(() => true) }
  })
  const marks = sceneMarks({ paper, ink: [], stand, opening, over: [], says: '' }, design, size, {
    scale: 1,
    centre: size.width / 2,
    text,
    pictured: false,
    camera,
  })
  const corner = (panel: string): Point | undefined => {
    const page = marks.find((mark) => mark.mark === 'path' && mark.role === 'facet' && mark.of === panel)
    return page?.mark === 'path' ? page.runs[0]?.[FAR] : undefined
  }
  const missed = ['page/left', 'page/right'].flatMap((panel) => {
    const at = corner(panel)
    return at ? [ringAt(at, panel)] : []
  })
  return [...marks, ...missed]
}
