import type { JSX } from 'preact'
import { useId, useLayoutEffect, useRef } from 'preact/hooks'
import type { Drawing, Mark } from '../../drawing/pen/marks.ts'
import type { SvgNode } from '../../drawing/pen/nodes.ts'
import { gradientsOf, group, nodesOf } from '../../drawing/pen/nodes.ts'
import { classOfDrawing, cut } from '../../drawing/pen/svg-values.ts'
import { covering } from '../model/page.ts'
import { firstPicture } from './first-picture.ts'
import { livePicture } from './live.ts'

/** Decimals of a pixel: what is finer nobody sees, and each frame writes it. */
const DIGITS = 1

/** What is spoken while the answer to a guess is covered: what the picture is, not what it shows. */
const firstSentence = (says: string): string => /^.*?\.(?=\s|$)/.exec(says)?.[0] ?? says

const drawn = new WeakMap<readonly Mark[], { readonly name: string; readonly nodes: readonly SvgNode[] }>()

/** Marks that were drawn before have their nodes still: nothing is touched. */
function keptNodes({ marks, unit }: Drawing, name: string): readonly SvgNode[] {
  const known = drawn.get(marks)
  if (known?.name === name) return known.nodes
  const nodes = nodesOf(marks, { digits: DIGITS, unit }, name)
  drawn.set(marks, { name, nodes })
  return nodes
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
}

/** A drawing as an SVG picture: what the server puts into the page, a step figure shows and a bench moves. */
export function Figure({ drawing, silent = false, name, under, over }: FigureProps): JSX.Element {
  const picture = useRef<SVGSVGElement>(null)
  const paint = useRef<((nodes: readonly SvgNode[]) => void) | null>(null)
  const [, , width, height] = drawing.box
  const { unit } = drawing
  const size = unit === 'mm' ? { width: `${cut(width)}mm`, height: `${cut(height)}mm` } : {}
  const id = useId()
  const own = name ?? id
  const beside = (marks: readonly Mark[] = []): SvgNode =>
    group(nodesOf(marks, { digits: DIGITS, unit }, own))
  const nodes = [...gradientsOf(drawing, own), beside(under), group(keptNodes(drawing, own)), beside(over)]
  useLayoutEffect(() => {
    if (!picture.current) return
    paint.current ??= livePicture(picture.current)
    paint.current(nodes)
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
