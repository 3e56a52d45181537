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
  matrixText,
  namesOf,
  pathData,
  pictureLook,
  ROUND,
  shapeData,
  shapeStyle,
  sheetClass,
  styleOf,
  turnOf,
} from './svg-values.ts'

export interface SvgNode {
  readonly tag: string
  /** Names and values of attributes in turn; a value that is undefined is left out. */
  readonly look: readonly (string | undefined)[]
  /** What is in it, or its words. */
  readonly inner: readonly SvgNode[] | string
  /** Its own among its neighbours, in whatever order they come; else the n-th is followed by the n-th. */
  readonly key?: string
}

/** How a mark is written: decimals kept, and the unit of the drawing, on which the size of arrow heads depends. */
export interface Writing {
  readonly digits: number
  readonly unit: Drawing['unit']
}

const NOTHING: readonly SvgNode[] = []

const node = (
  tag: string,
  look: SvgNode['look'],
  inner: SvgNode['inner'] = NOTHING,
  key?: string,
): SvgNode => (key === undefined ? { tag, look, inner } : { tag, look, inner, key })

const pairs = (look: Readonly<Record<string, string>>): string[] => Object.entries(look).flat()

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
    if (shape.picture !== undefined)
      return node('image', pictureLook(shape, turn ? `${matrixText(turn)} ` : ''))
    const [style, d] = matrix || turn ? framedLook(shape) : [shapeStyle(shape), shapeData(shape)]
    return node('path', ['style', style, 'transform', turn ? matrixText(turn) : undefined, 'd', d])
  })
  if (matrix) shapes.set(list, nodes)
  return nodes
}

const artNode = (mark: ArtMark): SvgNode =>
  node(
    'g',
    ['class', 'm-art', 'transform', mark.matrix === null ? undefined : matrixText(mark.matrix)],
    shapeNodes(mark),
  )

const fadeNode = (mark: PathMark, fade: Fade, name: string, key: string): SvgNode => {
  const { style, 'fill-opacity': opacity, transform, d } = fadeLook(mark, fade, name)
  return node(
    'path',
    ['class', classOf(mark), 'style', style, 'fill-opacity', opacity, 'transform', transform, 'd', d],
    NOTHING,
    key,
  )
}

/** What lies on a surface. */
const inlay = (one: PathMark | ArtMark, name: string, key: string): SvgNode =>
  one.mark === 'art'
    ? artNode(one)
    : one.fade
      ? fadeNode(one, one.fade, name, key)
      : node('path', ['class', classOf(one), 'style', styleOf(one), 'd', pathData(one.runs, one.closed, 1)])

/** A surface is looked at, not measured: more decimals would not be seen. */
const SURFACE = 2

/** A surface and what lies on it, clipped to it. */
function sheetNode(mark: PathMark, digits: number, own: string, name: string): SvgNode {
  const d = pathData(mark.runs, true, Math.min(digits, SURFACE))
  return node(
    'g',
    ['class', sheetClass(mark), 'style', styleOf(mark), 'data-of', mark.of],
    [
      node('path', ['class', `m-${mark.role}`, 'd', d]),
      node('clipPath', ['id', own], [node('path', ['d', d])]),
      node(
        'g',
        ['clip-path', `url(#${own})`],
        (mark.on ?? []).map((one, k) => inlay(one, name, `${k}`)),
      ),
    ],
    own,
  )
}

function pathNodes(mark: PathMark, { digits, unit }: Writing, own: string, name: string): readonly SvgNode[] {
  if (mark.on) return [sheetNode(mark, digits, own, name)]
  if (mark.fade) return [fadeNode(mark, mark.fade, name, own)]
  const d = pathData(mark.runs, mark.closed, digits)
  const line = node('path', ['class', classOf(mark), 'style', styleOf(mark), 'data-of', mark.of, 'd', d])
  const heads = headData(mark, digits, unit)
  return heads === null ? [line] : [line, node('path', ['class', `m-${mark.role} head`, 'd', heads])]
}

const dotNode = (mark: DotMark, digits: number): SvgNode => {
  const [cx, cy, r] = [mark.at[0], mark.at[1], mark.radius].map((n) => cut(n, digits))
  return node('circle', ['class', classOf(mark), 'data-of', mark.of, 'cx', cx, 'cy', cy, 'r', r])
}

const wordNode = (mark: WordMark, digits: number): SvgNode =>
  node(
    'text',
    [
      'class',
      classOf(mark),
      'data-of',
      mark.of,
      'x',
      cut(mark.at[0], digits),
      'y',
      cut(mark.at[1], digits),
      'font-size',
      cut(mark.size, digits),
      'text-anchor',
      mark.anchor,
      'transform',
      turnOf(mark, digits),
    ],
    mark.text,
  )

/** One mark. `own` names a surface's clip, `name` is the drawing's. */
export function markNodes(mark: Mark, writing: Writing, own: string, name: string): readonly SvgNode[] {
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
  of.map(([at, opacity]) => node('stop', ['offset', `${at}`, 'stop-opacity', `${opacity}`]))

/** The gradients that all fades and all lights of a drawing share: each in a frame of its own. */
export function gradientsOf(drawing: Drawing, name: string): SvgNode[] {
  const fades = fadesIn(drawing)
    ? [
        node('linearGradient', ['id', `${name}-band`, ...pairs(ALONG)], stops(FADE_STOPS)),
        node('radialGradient', ['id', `${name}-round`, 'href', `#${name}-band`, ...pairs(ROUND)]),
      ]
    : []
  return glowsIn(drawing)
    ? [
        ...fades,
        node('radialGradient', ['id', `${name}-glow`, 'class', 'glow', ...pairs(ROUND)], stops(GLOW_STOPS)),
      ]
    : fades
}
