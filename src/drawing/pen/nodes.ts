/**
 * What a drawing is in SVG: a tree that the pen for text writes out, and that the page keeps up to date. It knows no
 * paper; numbers are rounded in `svg-values.ts` alone.
 *
 * Class scheme (the look is in `marks.css`, the colours in the site's tokens):
 *
 *   m-<role>          every mark, e.g. `m-cut`, `m-facet`, `m-handle`
 *   c-<n>             a surface or slice: cut from card n (sets `--paper` to `--card-<n>`)
 *   front | back      which face of the card shows (the back is paler)
 *   style="--light:…;--sky:…" a surface: light it gets, 0 to 1; `--paper` where its paper is named
 *   style="--strength:…" a shadow
 *   s-<n>             a curve among several: 0, 1, 2 …, each with a dash pattern of its own
 *   closed | open     a path
 *   quiet             a path of something else than what is looked at
 *   head              the arrow heads of a path, filled
 *   bold              a word
 *   data-of="…"       the panel, crease, mechanism, handle or check that a mark stands for
 *
 * A surface with something on it is `<g class="sheet c-<n> front">`: its path, a clip, and in a group what
 * lies on it. A fade is a path in a frame of its own, filled with one of the drawing's gradients. Ids of clips and
 * gradients begin with the drawing's name.
 */
import type { ArtMark, DotMark, Drawing, Fade, InkShape, Mark, PathMark, WordMark } from './marks.ts'
import {
  ALONG,
  classOf,
  cut,
  FADE_STOPS,
  fadeLook,
  fadesIn,
  GLOW_STOPS,
  glowsIn,
  headData,
  matrixOf,
  matrixText,
  namesOf,
  pathData,
  ROUND,
  shapeData,
  shapeStyle,
  sheetClass,
  styleOf,
  turnOf,
} from './svg-values.ts'

/** A tag with the names of the attributes that it may have, in their order. */
export interface SvgKind {
  readonly tag: string
  readonly names: readonly string[]
}

export interface SvgNode {
  readonly kind: SvgKind
  /** Of the attributes, in the order of their names; a value that is undefined is left out. */
  readonly values: readonly (string | undefined)[]
  /** What is in it, or its words. */
  readonly inner: readonly SvgNode[] | string
  /** Its own among its neighbours, in whatever order they come; else the n-th is followed by the n-th. */
  readonly key?: string
}

const kind = (tag: string, ...names: readonly string[]): SvgKind => ({ tag, names })

const PATH = kind('path', 'class', 'style', 'data-of', 'd')
const SHAPE = kind('path', 'style', 'transform', 'd')
const FADE = kind('path', 'class', 'style', 'fill-opacity', 'transform', 'd')
const GROUP = kind('g', 'class', 'style', 'data-of', 'transform', 'clip-path')
const CLIP = kind('clipPath', 'id')
const DOT = kind('circle', 'class', 'data-of', 'cx', 'cy', 'r')
const WORD = kind('text', 'class', 'data-of', 'x', 'y', 'font-size', 'text-anchor', 'transform')
const IMAGE = kind('image', 'transform', 'href', 'width', 'height', 'preserveAspectRatio')
const BAND = kind('linearGradient', 'id', ...Object.keys(ALONG))
const ROUNDED = kind('radialGradient', 'id', 'class', 'href', ...Object.keys(ROUND))
const STOP = kind('stop', 'offset', 'stop-opacity')

/** How a mark is written: decimals kept, and the unit of the drawing, on which the size of arrow heads depends. */
export interface Writing {
  readonly digits: number
  readonly unit: Drawing['unit']
}

const NOTHING: readonly SvgNode[] = []

const node = (
  of: SvgKind,
  values: SvgNode['values'],
  inner: SvgNode['inner'] = NOTHING,
  key?: string,
): SvgNode => (key === undefined ? { kind: of, values, inner } : { kind: of, values, inner, key })

/** What is drawn together, with no look of its own but for a class. */
export const group = (inner: readonly SvgNode[], className?: string): SvgNode =>
  node(GROUP, [className], inner)

/** A picture made of dots, moved by `before`. */
export const imageNode = (shape: InkShape, before = ''): SvgNode =>
  node(IMAGE, [`${before}${matrixOf(shape.runs[0] ?? [])}`, shape.picture, '1', '1', 'none'])

const looks = new WeakMap<InkShape, readonly string[]>()

/** A shape in a frame of its own looks the same in every frame: only the frame is written anew. */
function framedLook(shape: InkShape): readonly string[] {
  let look = looks.get(shape)
  if (!look) {
    look = [shapeStyle(shape), shapeData(shape, 2)]
    looks.set(shape, look)
  }
  return look
}

const shapes = new WeakMap<ArtMark['shapes'], readonly SvgNode[]>()

/** Shapes in the frame of a panel are the same in every frame: so are their nodes. */
function shapeNodes({ shapes: list, matrix, own }: ArtMark): readonly SvgNode[] {
  const known = matrix && shapes.get(list)
  if (known) return known
  const nodes = list.map((shape, k) => {
    const turn = own?.[k]
    if (shape.picture !== undefined) return imageNode(shape, turn ? `${matrixText(turn)} ` : '')
    const [style, d] = matrix || turn ? framedLook(shape) : [shapeStyle(shape), shapeData(shape)]
    return node(SHAPE, [style, turn ? matrixText(turn) : undefined, d])
  })
  if (matrix) shapes.set(list, nodes)
  return nodes
}

const artNode = (mark: ArtMark): SvgNode =>
  node(
    GROUP,
    ['m-art', undefined, undefined, mark.matrix === null ? undefined : matrixText(mark.matrix)],
    shapeNodes(mark),
  )

const fadeNode = (mark: PathMark, fade: Fade, name: string, key: string): SvgNode => {
  const { style, 'fill-opacity': opacity, transform, d } = fadeLook(mark, fade, name)
  return node(FADE, [classOf(mark), style, opacity, transform, d], NOTHING, key)
}

const pathNode = (className: string, d: string, style?: string, of?: string): SvgNode =>
  node(PATH, [className, style, of, d])

/** What lies on a surface. */
const inlay = (one: PathMark | ArtMark, name: string, key: string): SvgNode =>
  one.mark === 'art'
    ? artNode(one)
    : one.fade
      ? fadeNode(one, one.fade, name, key)
      : pathNode(classOf(one), pathData(one.runs, one.closed, 1), styleOf(one))

/** A surface is looked at, not measured: more decimals would not be seen. */
const SURFACE = 2

/** A surface and what lies on it, clipped to it. */
function sheetNode(mark: PathMark, digits: number, own: string, name: string): SvgNode {
  const d = pathData(mark.runs, true, Math.min(digits, SURFACE))
  const on = (mark.on ?? []).map((one, k) => inlay(one, name, `${k}`))
  return node(
    GROUP,
    [sheetClass(mark), styleOf(mark), mark.of],
    [
      pathNode(`m-${mark.role}`, d),
      node(CLIP, [own], [node(SHAPE, [undefined, undefined, d])]),
      node(GROUP, [undefined, undefined, undefined, undefined, `url(#${own})`], on),
    ],
    own,
  )
}

function pathNodes(mark: PathMark, { digits, unit }: Writing, own: string, name: string): readonly SvgNode[] {
  if (mark.on) return [sheetNode(mark, digits, own, name)]
  if (mark.fade) return [fadeNode(mark, mark.fade, name, own)]
  const d = pathData(mark.runs, mark.closed, digits)
  const line = pathNode(classOf(mark), d, styleOf(mark), mark.of)
  const heads = headData(mark, digits, unit)
  return heads === null ? [line] : [line, pathNode(`m-${mark.role} head`, heads)]
}

const dotNode = (mark: DotMark, digits: number): SvgNode =>
  node(DOT, [classOf(mark), mark.of, ...[mark.at[0], mark.at[1], mark.radius].map((n) => cut(n, digits))])

const wordNode = (mark: WordMark, digits: number): SvgNode =>
  node(
    WORD,
    [
      classOf(mark),
      mark.of,
      ...[mark.at[0], mark.at[1], mark.size].map((n) => cut(n, digits)),
      mark.anchor,
      turnOf(mark, digits),
    ],
    mark.text,
  )

/** One mark. `own` names a surface's clip, `name` is the drawing's. */
function markNodes(mark: Mark, writing: Writing, own: string, name: string): readonly SvgNode[] {
  if (mark.mark === 'path') return pathNodes(mark, writing, own, name)
  return [mark.mark === 'dot' ? dotNode(mark, writing.digits) : wordNode(mark, writing.digits)]
}

/** All marks of a drawing, in the painter's order. */
export function nodesOf(marks: readonly Mark[], writing: Writing, name: string): SvgNode[] {
  const names = namesOf(marks, name)
  const nodes: SvgNode[] = []
  for (let k = 0; k < marks.length; k++)
    nodes.push(...markNodes(marks[k] as Mark, writing, names[k] ?? name, name))
  return nodes
}

const stops = (of: readonly (readonly [at: number, left: number])[]): SvgNode[] =>
  of.map((values) => node(STOP, values.map(String)))

/** The gradients that all fades and all lights of a drawing share: each in a frame of its own. */
export function gradientsOf(drawing: Drawing, name: string): SvgNode[] {
  const round = (id: string, className?: string, href?: string, inner?: SvgNode[]): SvgNode =>
    node(ROUNDED, [`${name}-${id}`, className, href, ...Object.values(ROUND)], inner)
  return [
    ...(fadesIn(drawing)
      ? [
          node(BAND, [`${name}-band`, ...Object.values(ALONG)], stops(FADE_STOPS)),
          round('round', undefined, `#${name}-band`),
        ]
      : []),
    ...(glowsIn(drawing) ? [round('glow', 'glow', undefined, stops(GLOW_STOPS))] : []),
  ]
}
