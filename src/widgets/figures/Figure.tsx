import type { JSX } from 'preact'
import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import type { Drawing, Mark } from '../../drawing/pen/marks.ts'
import type { SvgNode } from '../../drawing/pen/nodes.ts'
import { gradientsOf, group, nodesOf } from '../../drawing/pen/nodes.ts'
import { classOfDrawing, cut } from '../../drawing/pen/svg-values.ts'
import { covering } from '../model/page.ts'
import type { Brush } from './brush.ts'
import { firstPicture } from './first-picture.ts'
import { livePicture } from './live.ts'
import type { Scene } from './painter.ts'
import { useKept } from './stage.ts'

/** Decimals of a pixel: what is finer nobody sees, and each frame writes it. */
const DIGITS = 1

/** What is spoken while the answer to a guess is covered: what the picture is, not what it shows. */
const firstSentence = (says: string): string => /^.*?\.(?=\s|$)/.exec(says)?.[0] ?? says

export interface FigureProps {
  readonly drawing: Drawing
  /** A figure beside words that say the same is left out of what is spoken. */
  readonly silent?: boolean
  /** What lies under the drawing's own marks and over them, and moves while they stay. */
  readonly under?: readonly Mark[]
  readonly over?: readonly Mark[]
  /** Ids of clips begin with it; left out, with one of its own. */
  readonly name?: string
  /** So many of the marks, the first of them, may be painted by the brush. */
  readonly card?: number
  readonly brush?: Brush | undefined
  /** What the brush paints now: of the drawing only what lies over it is new, and what lay there stays until then. */
  readonly scene?: Scene | undefined
}

/** A drawing as an SVG picture: what the server puts into the page, a step figure shows and a bench moves. */
export function Figure({
  drawing,
  silent = false,
  name,
  under,
  over = [],
  card = 0,
  brush,
  scene,
}: FigureProps): JSX.Element {
  const picture = useRef<SVGSVGElement>(null)
  const paint = useRef<((nodes: readonly SvgNode[]) => void) | null>(null)
  const [, , width, height] = drawing.box
  const { marks, unit } = drawing
  const size = unit === 'mm' ? { width: `${cut(width)}mm`, height: `${cut(height)}mm` } : {}
  const id = useId()
  const own = name ?? id
  const grouped = (those: readonly Mark[] = [], className?: string): SvgNode =>
    group(nodesOf(those, { digits: DIGITS, unit }, own), className)
  // Marks that were drawn before have their nodes still: nothing is touched.
  const drawn = useKept<readonly SvgNode[]>()
  // While the brush paints the card it is left as it was drawn last.
  const still = useRef<readonly SvgNode[] | null>(null)
  const left = scene ? still.current : null
  const shown = left
    ? [...left, grouped(marks)]
    : drawn([marks], () => [
        ...gradientsOf(drawing, own),
        ...(card > 0 ? [grouped(marks.slice(0, card), 'card')] : []),
        grouped(marks.slice(card)),
      ])
  if (!left) still.current = card > 0 ? shown.slice(0, -1) : null
  const nodes = [grouped(under), ...shown, grouped(over)]
  useLayoutEffect(() => {
    if (!picture.current) return
    paint.current ??= livePicture(picture.current)
    paint.current(nodes)
    brush?.paint(picture.current, scene)
  })
  return (
    <svg
      ref={picture}
      class={classOfDrawing(drawing)}
      viewBox={drawing.box.map((n) => cut(n)).join(' ')}
      role="img"
      aria-label={covering.value ? firstSentence(drawing.says) : drawing.says}
      aria-hidden={silent ? true : undefined}
      {...size}
      // Our own drawing, each value escaped. In the browser a frame touches only what has changed in it.
      dangerouslySetInnerHTML={{ __html: firstPicture(nodes) }}
    />
  )
}
