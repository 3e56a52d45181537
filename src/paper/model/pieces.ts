import type { Design } from '../design/design.ts'
import type { LineKind, PieceLine } from '../mechanisms/build.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import { compose, laid } from '../plane/lay.ts'
import { nearestOn } from '../plane/segment.ts'
import { coverOutline } from './cover.ts'
import { jointsOf } from './joints.ts'
import type { Model, ModelBuild, ModelCrease, ModelPanel, PanelLay } from './model.ts'
import { modelOf } from './model.ts'
import { patchesOf } from './patches.ts'

/** A point of a flat piece, mm. */
type PiecePoint = readonly [x: number, y: number]

/** Two flat points nearer than this are one when lines are joined, mm. */
const JOINED = 1e-7

const same = (a: PiecePoint, b: PiecePoint): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < JOINED

const sameLine = (a: readonly PiecePoint[], b: readonly PiecePoint[]): boolean =>
  a.length === b.length && a.every((p, k) => same(p, b[k] as PiecePoint))

/** What is left of 0 to `length` when the spans are taken out. */
export function stretches(length: number, spans: readonly (readonly [number, number])[]): [number, number][] {
  const left: [number, number][] = []
  let from = 0
  for (const [a, b] of [...spans].sort((p, q) => p[0] - q[0])) {
    if (b - a < JOINED) continue
    if (a - from > JOINED) left.push([from, Math.min(a, length)])
    from = Math.max(from, b)
  }
  if (length - from > JOINED) left.push([from, length])
  return left
}

/** Where one side of a crease lies: on which flat piece, and how. */
function layOf(model: Model, { panel, lay }: PanelLay): { piece: number; lay: Lay } {
  const { piece, onPiece } = model.panels[panel] as ModelPanel
  return { piece, lay: compose(onPiece, lay) }
}

/** The flat pieces a crease lies on: one, or two where it joins a glued piece to its host. */
export function laysOf(model: Model, crease: ModelCrease): readonly { piece: number; lay: Lay }[] {
  const left = layOf(model, crease.left)
  const right = layOf(model, crease.right)
  return left.piece === right.piece ? [right] : [left, right]
}

/** A crease as it lies on a flat piece, mm. */
export interface FlatCrease {
  readonly name: string
  /** Id of the piece. */
  readonly piece: string
  readonly start: PiecePoint
  readonly end: PiecePoint
}

/** Where the creases lie on the flat pieces; one that joins two pieces lies on both. */
export function flatCreases(design: Design): readonly FlatCrease[] {
  const model = modelOf(design)
  return model.creases.flatMap((crease) =>
    laysOf(model, crease).map(
      ({ piece, lay }): FlatCrease => ({
        name: crease.name,
        piece: model.pieces[piece]?.id ?? 'card',
        start: laid(lay, [0, 0]),
        end: laid(lay, [0, crease.length]),
      }),
    ),
  )
}

/** A part of a panel as it lies on a flat piece, mm. */
export interface FlatPart {
  readonly panel: string
  /** Index of the panel, and of the mechanism that owns it; -1 for the card's own pages. */
  readonly index: number
  readonly owner: number
  /** Id of the piece. */
  readonly piece: string
  readonly points: readonly PiecePoint[]
  readonly drawn: readonly boolean[]
}

/** The paper of the flat pieces, in convex parts, panel by panel. */
export function flatParts(design: Design): readonly FlatPart[] {
  const model = modelOf(design)
  return patchesOf(model).map(({ panel, outline, drawn }): FlatPart => {
    const { name, owner, piece, onPiece } = model.panels[panel] as ModelPanel
    return {
      panel: name,
      index: panel,
      owner,
      piece: model.pieces[piece]?.id ?? 'card',
      points: outline.map((flat) => laid(onPiece, flat)),
      drawn,
    }
  })
}

/** The folds along a crease, and the old folds that a guest's strip presses flat again. */
function foldLines(model: Model, crease: ModelCrease, add: (piece: number, line: PieceLine) => void): void {
  if (crease.hidden || crease.length < JOINED) return
  const lays = laysOf(model, crease)
  const guests = crease.guests.flatMap((index) => model.builds[index] ?? [])
  for (const { piece, lay } of lays) {
    // A joint is drawn by its own piece as a tab or an edge, and on its host as a glue line.
    if (lays.length > 1 && lays.some((one) => model.pieces[one.piece]?.owner === crease.owner)) continue
    const at = (along: number): PiecePoint => laid(lay, [0, along])
    const line = (kind: LineKind, from: number, to: number) =>
      add(piece, { kind, points: [at(from), at(to)], of: crease.name })
    const spans = guests.map(({ build }) => build.span)
    for (const [from, to] of stretches(crease.length, spans)) line(crease.fold, from, to)
    for (const { build, firstCrease } of guests) {
      if (!build.notch) continue
      const [from, to] = build.span
      const old = { a: at(from), b: at(to) }
      // Where no new fold takes its place, the old fold inside the strip is pressed flat again.
      const kept = model.creases
        .slice(firstCrease, firstCrease + build.creases.length)
        .some((own) =>
          laysOf(model, own).some(
            (there) =>
              there.piece === piece &&
              [0, own.length].every((s) => nearestOn(old, laid(there.lay, [0, s])).distance < JOINED),
          ),
        )
      if (!kept) line('crease', from, to)
    }
  }
}

/** Adds the cuts of a mechanism, the halves on either side of the crease joined where they meet. */
function cutLines(model: Model, index: number, add: (piece: number, line: PieceLine) => void): void {
  const guest = model.builds[index] as ModelBuild
  const host = model.creases[guest.host] as ModelCrease
  const of = guest.mechanism.id
  const half = (side: 'left' | 'right') => {
    const { piece, lay } = layOf(model, host[side])
    const spots = (line: readonly Flat[]): PiecePoint[] => line.map((flat) => laid(lay, flat))
    return { piece, lines: guest.build.cuts[side].map(spots) }
  }
  const left = half('left')
  const right = half('right')
  for (const line of left.lines) {
    const twin = right.lines.findIndex((other) => same(other[0] as PiecePoint, line[0] as PiecePoint))
    if (twin < 0 || left.piece !== right.piece) add(left.piece, { kind: 'cut', points: line, of })
    else
      add(left.piece, {
        kind: 'cut',
        points: [...line.slice(1).reverse(), ...(right.lines.splice(twin, 1)[0] ?? [])],
        of,
      })
  }
  for (const line of right.lines) add(right.piece, { kind: 'cut', points: line, of })
}

/**
 * The flat pieces to print, mm: the card itself, lying open and seen from inside with its gutter on
 * x = 0, then every piece of card that is glued on, seen from its front, and the cover last.
 */
export function pieces(design: Design): readonly Piece[] {
  const model = modelOf(design)
  const lines: PieceLine[][] = model.pieces.map(({ id, outline, lines: own }) => [
    { kind: 'cut', points: outline, closed: true, of: id === 'card' ? 'page' : id },
    ...own,
  ])
  const add = (piece: number, line: PieceLine): void => {
    const list = lines[piece] as PieceLine[]
    // Two V-folds may share one slit: it is cut once.
    if (
      line.kind !== 'cut' ||
      !list.some((other) => other.kind === 'cut' && sameLine(other.points, line.points))
    )
      list.push(line)
  }
  for (const crease of model.creases) foldLines(model, crease, add)
  model.builds.forEach((_, index) => {
    cutLines(model, index, add)
  })
  for (const { owner, panel, outline, closed, slit } of model.glue) {
    const { piece, onPiece } = model.panels[panel] as ModelPanel
    const of = model.builds[owner]?.mechanism.id ?? ''
    const onIt = (line: readonly Flat[]): PiecePoint[] => line.map((flat) => laid(onPiece, flat))
    if (slit) add(piece, { kind: 'cut', points: onIt(slit), of })
    add(piece, { kind: 'glue', points: onIt(outline), closed, of })
  }
  const all = model.pieces.map(({ id, outline }, k) => ({ id, outline, lines: lines[k] as PieceLine[] }))
  return design.card.cover ? withCover(design, all) : all
}

/** The cover beside the other pieces: its edge, its fold along the card's gutter, and the rim that is glued, on both. */
function withCover(design: Design, [card, ...others]: readonly Piece[]): readonly Piece[] {
  const rim = jointsOf(design)
    .filter(({ host }) => host.piece === 'cover')
    .map(({ of, host }): PieceLine => ({ kind: 'glue', points: host.points, closed: true, of }))
  const outline = coverOutline(design)
  const [low, , high] = outline.map(([, y]) => y) as [number, number, number]
  const fold: PieceLine = {
    kind: 'valley',
    points: [
      [0, low],
      [0, high],
    ],
    of: 'cover/gutter',
  }
  const edge: PieceLine = { kind: 'cut', points: outline, closed: true, of: 'cover' }
  const cover: Piece = { id: 'cover', outline, lines: [edge, fold, ...rim] }
  return card ? [{ ...card, lines: [...card.lines, ...rim] }, ...others, cover] : [cover]
}

/**
 * A flat piece to print. The card itself lies with its gutter on x = 0, right page at x > 0,
 * the reader's end at y = 0, seen from inside.
 */
export interface Piece {
  readonly id: string
  /** The outer edge, also present among the lines as a cut. */
  readonly outline: readonly (readonly [x: number, y: number])[]
  readonly lines: readonly PieceLine[]
}
