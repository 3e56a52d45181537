import type { JSX } from 'preact'
import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import type { Drawing, Mark } from '../../drawing/pen/marks.ts'
import type { SvgNode } from '../../drawing/pen/nodes.ts'
import { away, gradientsOf, group, nodesOf } from '../../drawing/pen/nodes.ts'
import { classOfDrawing, cut } from '../../drawing/pen/svg-values.ts'
import { covering } from '../model/page.ts'
import type { Brush } from './brush.ts'
import { firstPicture } from './first-picture.ts'
import { livePicture } from './live.ts'

/** Decimals of a pixel: what is finer nobody sees, and each frame writes it. */
const DIGITS = 1

/** What is spoken while the answer to a guess is covered: what the picture is, not what it shows. */
const firstSentence = (says: string): string => /^.*?\.(?=\s|$)/.exec(says)?.[0] ?? says

const drawn = new WeakMap<readonly Mark[], { readonly name: string; readonly node: SvgNode }>()

/** Marks that were drawn before have their node still: nothing is touched. */
function keptNode({ marks, unit }: Drawing, name: string): SvgNode {
  const known = drawn.get(marks)
  if (known?.name === name) return known.node
  const node = group(nodesOf(marks, { digits: DIGITS, unit }, name))
  drawn.set(marks, { name, node })
  return node
}

export interface FigureProps {
  readonly drawing: Drawing
  /** A figure beside words that say the same is left out of what is spoken. */
  readonly silent?: boolean
  /** What lies under the drawing's own marks and over them, and moves while they stay. */
  readonly under?: readonly Mark[]
  readonly over?: readonly Mark[]
  /** Ids of clips begin with it; left out, with one of its own. */
  readonly name?: string
  /** Paints the surfaces while the picture moves. */
  readonly brush?: Brush | undefined
  readonly moving?: boolean
}

/** A drawing as an SVG picture: what the server puts into the page, a step figure shows and a bench moves. */
export function Figure({
  drawing,
  silent = false,
  name,
  under,
  over = [],
  brush,
  moving,
}: FigureProps): JSX.Element {
  const picture = useRef<SVGSVGElement>(null)
  const paint = useRef<((nodes: readonly SvgNode[]) => void) | null>(null)
  const still = useRef<SvgNode | null>(null)
  const [, , width, height] = drawing.box
  const { marks, unit } = drawing
  const size = unit === 'mm' ? { width: `${cut(width)}mm`, height: `${cut(height)}mm` } : {}
  const id = useId()
  const own = name ?? id
  const beside = (those: readonly Mark[] = []): SvgNode =>
    group(nodesOf(those, { digits: DIGITS, unit }, own))
  // The brush takes over all up to the last surface; the rest stands before it.
  const taken = brush && moving ? marks.findLastIndex((mark) => mark.mark === 'path' && mark.on) + 1 : 0
  if (taken === 0 || !still.current) still.current = keptNode(drawing, own)
  const nodes = [
    ...gradientsOf(drawing, own),
    beside(under),
    taken ? away(still.current) : still.current,
    beside(taken ? [...marks.slice(taken), ...over] : over),
  ]
  useLayoutEffect(() => {
    if (!picture.current) return
    paint.current ??= livePicture(picture.current)
    paint.current(nodes)
    brush?.(picture.current, marks.slice(0, taken))
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
