import type { JSX } from 'preact'
import type { ArtMark, Drawing, Fade, InkShape, Mark, PathMark } from '../../drawing/pen/marks.ts'
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
} from '../../drawing/pen/svg-values.ts'
import { covering } from '../model/page.ts'

/** Decimals of a pixel: what is finer nobody sees, and each frame writes it. */
const DIGITS = 1

const shapes = new WeakMap<ArtMark['shapes'], JSX.Element[]>()

const looks = new WeakMap<InkShape, { readonly style: string; readonly d: string }>()

/** A shape in a frame of its own looks the same in every frame: only the frame is patched. */
function lookOf(shape: InkShape): { readonly style: string; readonly d: string } {
  let look = looks.get(shape)
  if (!look) {
    look = { style: shapeStyle(shape), d: shapeData(shape, 2) }
    looks.set(shape, look)
  }
  return look
}

/** Shapes in the frame of a panel are the same in every frame: so are their elements, and nothing is patched. */
function shapeNodes({ shapes: list, matrix, own }: ArtMark): JSX.Element[] {
  const known = matrix && shapes.get(list)
  if (known) return known
  const nodes = list.map((shape, k) => {
    const turn = own?.[k]
    return matrix || turn ? (
      <path key={k} {...lookOf(shape)} transform={turn ? matrixText(turn) : undefined} />
    ) : (
      <path key={k} style={shapeStyle(shape)} d={shapeData(shape)} />
    )
  })
  if (matrix) shapes.set(list, nodes)
  return nodes
}

const artNode = (mark: ArtMark): JSX.Element => (
  <g class="m-art" transform={mark.matrix === null ? undefined : matrixText(mark.matrix)}>
    {shapeNodes(mark)}
  </g>
)

const stopNodes = (stops: readonly (readonly [at: number, left: number])[]): JSX.Element[] =>
  stops.map(([at, opacity]) => <stop key={at} offset={at} stop-opacity={opacity} />)

const fadeStops = stopNodes(FADE_STOPS)

const glowStops = stopNodes(GLOW_STOPS)

/** The gradients that all fades of a drawing share: each in a frame of its own. */
const fadeDefs = (name: string): JSX.Element => (
  <>
    <linearGradient id={`${name}-band`} {...ALONG}>
      {fadeStops}
    </linearGradient>
    <radialGradient id={`${name}-round`} href={`#${name}-band`} {...ROUND} />
  </>
)

const fadeNode = (mark: PathMark, fade: Fade, key: string, name: string): JSX.Element => (
  <path key={key} class={classOf(mark)} {...fadeLook(mark, fade, name)} />
)

/** A surface and what lies on it, clipped to it. */
function sheetNode(mark: PathMark, own: string, name: string): JSX.Element {
  const d = pathData(mark.runs, true, DIGITS)
  return (
    <g key={own} class={sheetClass(mark)} style={styleOf(mark)} data-of={mark.of}>
      <path class={`m-${mark.role}`} d={d} />
      <clipPath id={own}>
        <path d={d} />
      </clipPath>
      <g clip-path={`url(#${own})`}>{(mark.on ?? []).map((one, k) => inlay(one, `${own}f${k}`, name))}</g>
    </g>
  )
}

/** What lies on a surface. Its kinds do not take one another's elements over: only what has changed is patched. */
const inlay = (one: PathMark | ArtMark, id: string, name: string): JSX.Element =>
  one.mark === 'art' ? (
    artNode(one)
  ) : one.fade ? (
    fadeNode(one, one.fade, id, name)
  ) : (
    <path class={classOf(one)} style={styleOf(one)} d={pathData(one.runs, one.closed, 1)} />
  )

/** One mark as SVG. Surfaces have keys; of the others the n-th of the next frame takes over the n-th element. */
function markNode(mark: Mark, own: string, name: string): JSX.Element | JSX.Element[] {
  const className = classOf(mark)
  if (mark.mark === 'path') {
    if (mark.on) return sheetNode(mark, own, name)
    if (mark.fade) return fadeNode(mark, mark.fade, own, name)
    const heads = headData(mark, DIGITS)
    const line = (
      <path
        class={className}
        style={styleOf(mark)}
        data-of={mark.of}
        d={pathData(mark.runs, mark.closed, DIGITS)}
      />
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
      <circle
        class={className}
        data-of={mark.of}
        cx={cut(mark.at[0])}
        cy={cut(mark.at[1])}
        r={cut(mark.radius)}
      />
    )
  return (
    <text
      class={className}
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

type Nodes = readonly (JSX.Element | JSX.Element[])[]

const drawn = new WeakMap<readonly Mark[], { readonly name: string; readonly nodes: Nodes }>()

/** Marks that were drawn before have their elements still: nothing is patched. */
function markNodes(marks: readonly Mark[], name: string): Nodes {
  const known = drawn.get(marks)
  if (known?.name === name) return known.nodes
  const names = namesOf(marks, name)
  const nodes = marks.map((mark, k) => markNode(mark, names[k] ?? name, name))
  drawn.set(marks, { name, nodes })
  return nodes
}

/** What is spoken while the answer to a guess is covered: what the picture is, not what it shows. */
const firstSentence = (says: string): string => /^.*?\.(?=\s|$)/.exec(says)?.[0] ?? says

export interface FigureProps {
  readonly drawing: Drawing
  /** A figure beside words that say the same is left out of what is spoken. */
  readonly silent?: boolean
  /** What lies under the drawing's own marks and over them, and moves while they stay. */
  readonly under?: readonly Mark[]
  readonly over?: readonly Mark[]
  /** Its own on the page, for a figure that moves: ids of clips begin with it. A still one may do without. */
  readonly name?: string
}

/** A drawing as an SVG picture: what the server puts into the page, a step figure shows and a bench moves. */
export function Figure({ drawing, silent = false, name, under, over }: FigureProps): JSX.Element {
  const [, , width, height] = drawing.box
  const size = drawing.unit === 'mm' ? { width: `${cut(width)}mm`, height: `${cut(height)}mm` } : {}
  const own = name ?? nameFor(drawing)
  return (
    <svg
      class={classOfDrawing(drawing)}
      viewBox={drawing.box.map((n) => cut(n)).join(' ')}
      role="img"
      aria-label={covering.value ? firstSentence(drawing.says) : drawing.says}
      aria-hidden={silent ? true : undefined}
      {...size}
    >
      {fadesIn(drawing) ? fadeDefs(own) : null}
      {glowsIn(drawing) ? (
        <radialGradient id={`${own}-glow`} class="glow" {...ROUND}>
          {glowStops}
        </radialGradient>
      ) : null}
      {under?.map((mark) => markNode(mark, own, own))}
      {markNodes(drawing.marks, own) as JSX.Element[]}
      {over?.map((mark) => markNode(mark, own, own))}
    </svg>
  )
}
