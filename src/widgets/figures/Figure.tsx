import type { JSX } from 'preact'
import type { Drawing, Mark } from '../../drawing/pen/marks.ts'
import { classOf, cut, headData, pathData, styleOf, turnOf } from '../../drawing/pen/svg.ts'

/** One mark as SVG. Marks have no keys: the n-th mark of the next frame takes over the n-th element. */
function markNode(mark: Mark): JSX.Element {
  const name = classOf(mark)
  if (mark.mark === 'path') {
    const heads = headData(mark)
    const line = (
      <path class={name} style={styleOf(mark)} data-of={mark.of} d={pathData(mark.runs, mark.closed)} />
    )
    return heads === null ? (
      line
    ) : (
      <>
        {line}
        <path class={`m-${mark.role} head`} d={heads} />
      </>
    )
  }
  if (mark.mark === 'dot')
    return (
      <circle class={name} data-of={mark.of} cx={cut(mark.at[0])} cy={cut(mark.at[1])} r={cut(mark.radius)} />
    )
  return (
    <text
      class={name}
      data-of={mark.of}
      x={cut(mark.at[0])}
      y={cut(mark.at[1])}
      font-size={cut(mark.size)}
      text-anchor={mark.anchor}
      transform={turnOf(mark)}
    >
      {mark.text}
    </text>
  )
}

export interface FigureProps {
  readonly drawing: Drawing
  /** A figure beside words that say the same is left out of what is spoken. */
  readonly silent?: boolean
}

/** A drawing as an SVG picture: what the server puts into the page, a step figure shows and a bench moves. */
export function Figure({ drawing, silent = false }: FigureProps): JSX.Element {
  const [, , width, height] = drawing.box
  const size = drawing.unit === 'mm' ? { width: `${cut(width)}mm`, height: `${cut(height)}mm` } : {}
  return (
    <svg
      class="drawing"
      viewBox={drawing.box.map((n) => cut(n)).join(' ')}
      role="img"
      aria-label={drawing.says}
      aria-hidden={silent ? true : undefined}
      {...size}
    >
      {drawing.marks.map(markNode)}
    </svg>
  )
}
