/** An outline that is being drawn on a face, and what comes of it on the card. */

import * as says from '../../../content/words/pieces.ts'
import { PAPERS } from '../../drawing/pen/papers.ts'
import type { Art, Design, Flat, Mechanism, PaperColour, Stuck } from '../../paper/index.ts'
import { freeId, glueArea, modelOf, nameOf, otherSide, ownerOf, pieceOn } from '../../paper/index.ts'
import { laid } from '../../paper/plane/lay.ts'
import type { Edit } from '../keeping/edits.ts'
import { setArt, setPaper, take } from '../keeping/edits.ts'
import { cutLine, flattened, MOST_CORNERS, rounded, simplified } from './outline.ts'
import type { Shape } from './shelf.ts'

/** One point of a sketch, in the flat coordinates of its panel, mm. */
export interface Point {
  readonly at: Flat
  /** A smooth line has a corner here. */
  readonly sharp?: boolean
}

export interface Sketch {
  readonly points: readonly Point[]
  readonly curve: boolean
  readonly closed: boolean
}

/** The points as a file holds them: a corner of a smooth line is given twice. */
export const pointsOf = ({ points, curve }: Sketch): readonly Flat[] =>
  rounded(points.flatMap(({ at, sharp }) => (curve && sharp ? [at, at] : [at])))

/** The corners that scissors follow; null where nothing is enclosed. */
export const ringOf = (sketch: Sketch): readonly Flat[] | null =>
  sketch.points.length < 3 ? null : cutLine(pointsOf(sketch), sketch.curve)

/** Two rings are one where no corner differs by more, mm: a file holds hundredths. */
const ALIKE = 0.02

/** Whether two outlines are the same, corner by corner. */
export const sameRing = (a: readonly Flat[], b: readonly Flat[]): boolean =>
  a.length === b.length &&
  a.every(([x, y], k) => Math.abs(x - (b[k]?.[0] ?? 0)) < ALIKE && Math.abs(y - (b[k]?.[1] ?? 0)) < ALIKE)

/** An edge that turns by more than this at a point makes it a corner, degrees. */
const SHARP = 40

/** A turn in degrees, either way. */
function turnAt([p, q, r]: readonly [Flat, Flat, Flat]): number {
  const [ax, ay, bx, by] = [q[0] - p[0], q[1] - p[1], r[0] - q[0], r[1] - q[1]]
  return Math.abs((Math.atan2(ax * by - ay * bx, ax * bx + ay * by) * 180) / Math.PI)
}

/** The least that an outline is taken apart to, mm, and as a share of its longest way across. */
const ROUGH = 0.15

const ROUGHLY = 1 / 160

/** An outline that is cut already, as a sketch to change: few points, smooth between its corners. */
export function sketchOf(outline: readonly Flat[]): Sketch {
  const at = (ring: readonly Flat[], k: number): Flat => ring[(k + ring.length) % ring.length] as Flat
  const size = Math.max(
    0,
    ...([0, 1] as const).map(
      (k) => Math.max(...outline.map((p) => p[k])) - Math.min(...outline.map((p) => p[k])),
    ),
  )
  const few = simplified(outline, Math.max(ROUGH, size * ROUGHLY), true)
  const points = few.map((p): Point => {
    const k = outline.findIndex((q) => q[0] === p[0] && q[1] === p[1])
    const turn = turnAt([at(outline, k - 1), p, at(outline, k + 1)])
    return turn > SHARP ? { at: p, sharp: true } : { at: p }
  })
  const isSmooth = points.some(({ sharp }) => !sharp)
  return { points: isSmooth ? points : points.map(({ at: p }) => ({ at: p })), curve: isSmooth, closed: true }
}

const refused = (design: Design, sentence: string): Edit => ({ done: false, design, sentence })

/** The panel on the other side of its ridge or gutter, if there is one. */
export function twinOf(design: Design, panel: string): string | null {
  const other = otherSide(panel)
  return other !== panel && modelOf(design).panels.some(({ name }) => name === other) ? other : null
}

/** A shape of the shelf, stuck: with its paper and what is drawn on it, if it is to be coloured. */
export function coloured(stuck: Stuck, { paper, drawn }: Shape): Design {
  const { design, id, lay } = stuck
  const place = ([x, y]: Flat): Flat => [
    lay.at[0] + lay.size * (x * lay.right[0] + y * lay.up[0]),
    lay.at[1] + lay.size * (x * lay.right[1] + y * lay.up[1]),
  ]
  const art = drawn.map(
    ({ shape, fill = null, line, curve = false, open = false, glows = false }): Art => ({
      on: `${id}/face`,
      also: [],
      face: 'front',
      shape: shape.map(place).map(([a, l]): Flat => [hundredth(a), hundredth(l)]),
      closed: !open,
      curve,
      fill,
      line: fill === null,
      lineColour: line ?? 'ink',
      lineWidth: Math.min(1.2, Math.max(0.3, hundredth(1.6 * lay.size))),
      glows,
    }),
  )
  return {
    ...design,
    papers: { ...design.papers, [id]: paper },
    art: [...(design.art ?? []), ...art],
  }
}

const hundredth = (x: number): number => Math.round(x * 100) / 100 + 0

/** A piece of this outline stuck on a face, and if asked its mirror image on the face beyond the ridge. */
export function addPiece(design: Design, panel: string, sketch: Sketch, both: boolean): Edit {
  const shape = ringOf(sketch)
  if (!shape) return refused(design, says.noOutline)
  const twin = both ? twinOf(design, panel) : null
  let next = design
  let first: string | undefined
  for (const on of twin === null ? [panel] : [panel, twin]) {
    const id = freeId(next, 'cut-out')
    const piece = pieceOn(next, on, { id, shape })
    if (!piece) return refused(design, says.noGlue)
    first ??= id
    next = { ...next, mechanisms: [...next.mechanisms, piece] }
  }
  return take(design, next, first)
}

/** Another outline for a piece. It keeps its glue where that still lies under it. */
export function reshape(design: Design, id: string, sketch: Sketch): Edit {
  const shape = ringOf(sketch)
  if (!shape) return refused(design, says.noOutline)
  const { builds, panels } = modelOf(design)
  const build = builds.find(({ mechanism }) => mechanism.id === id && mechanism.kind === 'rider')
  if (!build || build.hostPanel === undefined || build.mechanism.kind !== 'rider')
    return refused(design, says.noSuchPiece(nameOf(id)))
  const glue = glueArea(modelOf(design), build.hostPanel, shape)
  if (!glue) return refused(design, says.noGlue)
  const on = panels[build.hostPanel]?.name ?? build.mechanism.on
  const { size: _size, ...rest } = build.mechanism
  const cut: Mechanism = { ...rest, on, shape, glue, across: 0, along: 0, turn: 0 }
  return take(design, { ...design, mechanisms: design.mechanisms.map((m) => (m.id === id ? cut : m)) }, id)
}

export interface Ink {
  readonly fill: PaperColour | null
  readonly line: boolean
  readonly lineColour: PaperColour
  readonly lineWidth: number
}

/** A line or filled shape drawn on a panel, and if asked on the one beyond the ridge. */
export function draw(design: Design, panel: string, sketch: Sketch, ink: Ink, both: boolean): Edit {
  const least = sketch.closed ? 3 : 2
  const shape = pointsOf(sketch)
  const count = sketch.points.length
  if (count < least)
    return refused(design, sketch.closed ? says.shapeNeeds(least, count) : says.lineNeeds(least, count))
  if (shape.length > MOST_CORNERS) return refused(design, says.tooManyPoints(MOST_CORNERS))
  const twin = both ? twinOf(design, panel) : null
  const fill = sketch.closed ? ink.fill : null
  const one: Art = {
    on: panel,
    also: twin === null ? [] : [twin],
    face: 'front',
    shape,
    closed: sketch.closed,
    curve: sketch.curve,
    fill,
    line: ink.line || fill === null,
    lineColour: ink.lineColour,
    lineWidth: ink.lineWidth,
    glows: false,
  }
  return setArt(design, [...(design.art ?? []), one])
}

const carries = (one: Art, panel: string): boolean => one.on === panel || one.also.includes(panel)

/** Drawn, not laid there as a picture. */
const isDrawn = (one: Art, panel: string): boolean => one.picture === undefined && carries(one, panel)

/** How many shapes are drawn on a panel. */
export const drawnOn = ({ art = [] }: Design, panel: string): number =>
  art.filter((one) => isDrawn(one, panel)).length

/** The pictures that lie on the front of a panel. */
export const picturesOn = ({ art = [] }: Design, panel: string): readonly Art[] =>
  art.filter((one) => one.picture !== undefined && carries(one, panel) && one.face === 'front')

/** What is drawn on the front of a panel already, in its order: lines and their colours. */
export const artLines = ({ art = [] }: Design, panel: string) =>
  art
    .filter((one) => isDrawn(one, panel) && one.face === 'front')
    .map(({ shape, curve, closed, fill, line, lineColour }) => ({
      points: curve ? flattened(shape, closed) : shape,
      closed,
      fill: fill === null ? null : PAPERS[fill],
      line: line ? PAPERS[lineColour] : null,
    }))

/** Takes away what was drawn on a panel: the last shape of it, or all. On other panels it stays. */
export function rub(design: Design, panel: string, what: 'last' | 'all'): Edit {
  const art = design.art ?? []
  const last = art.findLastIndex((one) => isDrawn(one, panel))
  const left = art.flatMap((one, k): Art[] => {
    if (!isDrawn(one, panel) || (what === 'last' && k !== last)) return [one]
    const [on, ...also] = [one.on, ...one.also].filter((name) => name !== panel)
    return on === undefined ? [] : [{ ...one, on, also }]
  })
  return setArt(design, left)
}

/** What the paper of a panel is kept by: the page, the cover, or the id of its mechanism. */
export const paperOwner = (panel: string): string => ownerOf(panel)

export const paper = (design: Design, panel: string, colour: PaperColour | null): Edit =>
  setPaper(design, paperOwner(panel), colour)

/** A fold along a panel's edge or within it, where it lies on the panel. */
export interface Edge {
  readonly name: string
  readonly fold: 'mountain' | 'valley'
  readonly ends: readonly [Flat, Flat]
}

/** The folds that bound a panel. */
export function edgesOn(design: Design, panel: string): readonly Edge[] {
  const { creases, panels } = modelOf(design)
  const index = panels.findIndex(({ name }) => name === panel)
  return creases.flatMap(({ name, fold, length, hidden, left, right }): Edge[] => {
    const side = [left, right].find((one) => one.panel === index)
    if (hidden || !side) return []
    return [{ name, fold, ends: [laid(side.lay, [0, 0]), laid(side.lay, [0, length])] }]
  })
}
