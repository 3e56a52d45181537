import type { Design } from '../design/design.ts'
import type { Fold, Side } from '../mechanisms/build.ts'
import type { Frame } from '../plane/frame.ts'
import { emptyFrame, partOf, uprightFrame } from '../plane/frame.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import { compose, isMirroring, laid, unlaid } from '../plane/lay.ts'
import { once } from '../plane/once.ts'
import { nearestOn } from '../plane/segment.ts'
import { cross, dot, halfAngleInto } from '../plane/vector.ts'
import { coverRim } from './cover.ts'
import type { Model, ModelCrease, ModelGlue, ModelPanel } from './model.ts'
import { modelOf } from './model.ts'

type Spot = readonly [x: number, y: number]

/** The faces of a flat piece: the front is the one from which `pieces` shows it. */
export type PieceFace = 'front' | 'back'

/** One of the two pieces of a joint. */
export interface JointSide {
  /** Id of the flat piece. */
  readonly piece: string
  /** What is glued on it, or the open line along which it is taped; piece coordinates, mm. */
  readonly points: readonly Spot[]
  /** The face that is glued or taped. */
  readonly face: PieceFace
}

/** A place where two pieces of card are stuck together. */
export interface Joint {
  /** The crease along which they meet, the mechanism that is stuck on flat, or the half of the cover. */
  readonly of: string
  /** Index of the mechanism that is stuck on; -1 for the card, which is stuck on its cover. */
  readonly owner: number
  readonly isTaped: boolean
  /** Its tab goes through a slit in the host and is glued behind it. */
  readonly isThrough: boolean
  readonly host: JointSide
  readonly own: JointSide
  /** How the tab is folded, seen from the front of its own piece; null where there is no fold between them. */
  readonly fold: Fold | null
  /** The joint's line on either piece, its ends in the same order; null where a piece is stuck on flat. */
  readonly line: { readonly host: readonly [Spot, Spot]; readonly own: readonly [Spot, Spot] } | null
}

const SAME = 1e-6

/** Whether a glued place begins along a line: with its two ends, or within them where its tab goes through a slit. */
const isAlong = ([from, to]: readonly Flat[], a: Flat, b: Flat): boolean =>
  [from, to].every((p) => p !== undefined && nearestOn({ a, b }, p).distance < SAME)

const other = (face: PieceFace): PieceFace => (face === 'front' ? 'back' : 'front')

const sheetOf = (model: Model, panel: number, lay: Lay): Lay =>
  compose((model.panels[panel] as ModelPanel).onPiece, lay)

/** Whether a frame's sideways, along and inside directions are left-handed. */
function isLeftHanded(f: Frame): boolean {
  return dot(partOf(f, 3), cross(partOf(f, 6), partOf(f, 9))) < 0
}

/**
 * By crease: whether its frame is left-handed, as it is where a V-fold runs back along its host. The gutter's is
 * not, and a mechanism places its creases alike in any host's frame, mirrored where that is mirrored.
 */
function leftHanded(model: Model): readonly boolean[] {
  const found = [false]
  for (const { build, host, hostPanel } of model.builds) {
    if (hostPanel !== undefined || build.creases.length === 0) continue
    const [least, most] = build.range ?? [0, 180]
    const out = build.creases.map(() => emptyFrame())
    const under = uprightFrame()
    halfAngleInto(under, 12, (least + most) / 2)
    build.place(under, out)
    for (const frame of out) found.push(isLeftHanded(frame) !== found[host])
  }
  return found
}

/**
 * The face of the piece that looks into the fold on one side of a crease: the side where the angle is measured.
 * In a right-handed frame across, along and that face's normal are right-handed on the right side, left-handed
 * on the left; on a flat piece x, y and the front's normal are right-handed.
 */
function innerFace(model: Model, crease: ModelCrease, side: Side, isLeftHanded: boolean): PieceFace {
  const { panel, lay } = crease[side]
  const isTurned = isMirroring(sheetOf(model, panel, lay)) !== isLeftHanded
  return isTurned === (side === 'left') ? 'front' : 'back'
}

interface Place {
  readonly crease: ModelCrease
  readonly host: Side
}

/** The crease of the glued mechanism along which a glue place lies, and which of its sides is the host's. */
function creaseAt(model: Model, { owner, panel, outline }: ModelGlue): Place | null {
  for (const crease of model.creases) {
    if (crease.owner !== owner) continue
    for (const host of ['left', 'right'] as const) {
      const there = crease[host]
      const own = crease[host === 'left' ? 'right' : 'left']
      if (there.panel !== panel || model.panels[own.panel]?.piece === model.panels[panel]?.piece) continue
      if (isAlong(outline, laid(there.lay, [0, 0]), laid(there.lay, [0, crease.length])))
        return { crease, host }
    }
  }
  return null
}

/** A piece stuck flat on a face. */
function stuckOn(model: Model, glue: ModelGlue): Joint {
  const { piece, onPiece } = model.panels[glue.panel] as ModelPanel
  const { mechanism } = model.builds[glue.owner] ?? {}
  const own = model.pieces.find(({ owner }) => owner === glue.owner)
  const line = own?.lines.find(({ kind }) => kind === 'glue')
  return {
    of: mechanism?.id ?? '',
    owner: glue.owner,
    isTaped: false,
    isThrough: false,
    host: {
      piece: model.pieces[piece]?.id ?? '',
      points: glue.outline.map((flat): Spot => laid(onPiece, flat)),
      face: glue.face ?? 'front',
    },
    own: { piece: own?.id ?? '', points: line?.points ?? [], face: 'back' },
    fold: null,
    line: null,
  }
}

/**
 * A piece joined along a crease. The tab lies on the host where the two panels make their angle, or behind it:
 * it then runs on from the panel's inner face, or from the other one. That face of it is seen, the fold to it is
 * a valley, and it is glued by the other.
 */
function joined(model: Model, glue: ModelGlue, { crease, host }: Place, isLeftHanded: boolean): Joint {
  const own: Side = host === 'left' ? 'right' : 'left'
  const [there, here] = [crease[host], crease[own]]
  const onHost = sheetOf(model, there.panel, there.lay)
  const onOwn = sheetOf(model, here.panel, here.lay)
  const ends = (lay: Lay): [Spot, Spot] => [laid(lay, [0, 0]), laid(lay, [0, crease.length])]
  const [hostPiece, ownPiece] = [there, here].map(
    ({ panel }) => model.pieces[model.panels[panel]?.piece ?? -1],
  )
  const edge = ends(onOwn)
  const tab = ownPiece?.lines.find(
    ({ kind, points }) => kind === 'glue' && isAlong([points[0], points.at(-1)] as Spot[], ...edge),
  )
  const within = unlaid(there.lay, glue.aside ?? [0, 0])[0] > 0
  const inner = innerFace(model, crease, own, isLeftHanded)
  const shown = within ? inner : other(inner)
  const { onPiece } = model.panels[glue.panel] as ModelPanel
  const isTaped = !glue.closed
  const isThrough = glue.slit !== undefined
  const face = innerFace(model, crease, host, isLeftHanded)
  return {
    of: crease.name,
    owner: glue.owner,
    isTaped,
    isThrough,
    // Behind the host a tab is bent the same way, and glued by its other face on the host's other face.
    host: {
      piece: hostPiece?.id ?? '',
      points: glue.outline.map((flat): Spot => laid(onPiece, flat)),
      face: isThrough ? other(face) : face,
    },
    // Tape lies where a tab would, on the face that is seen.
    own: {
      piece: ownPiece?.id ?? '',
      points: tab?.points ?? edge,
      face: isTaped || isThrough ? shown : other(shown),
    },
    fold: isTaped ? null : shown === 'front' ? 'valley' : 'mountain',
    line: { host: ends(onHost), own: edge },
  }
}

function found(model: Model): readonly Joint[] {
  const turned = leftHanded(model)
  return model.glue.map((glue) => {
    const found = glue.aside === undefined ? null : creaseAt(model, glue)
    return found
      ? joined(model, glue, found, turned[model.creases.indexOf(found.crease)] ?? false)
      : stuckOn(model, glue)
  })
}

/** The back of the card on its cover, one stretch of the rim after the other: glued last, when all else moves. */
function onCover(model: Model, joints: readonly Joint[]): readonly Joint[] {
  const behind = joints.flatMap(({ host }) =>
    host.piece === 'card' && host.face === 'back' ? [host.points] : [],
  )
  return coverRim(model, behind).map(
    ({ half, points }): Joint => ({
      of: half,
      owner: -1,
      isTaped: false,
      isThrough: false,
      host: { piece: 'cover', points, face: 'front' },
      own: { piece: 'card', points, face: 'back' },
      fold: null,
      line: null,
    }),
  )
}

/**
 * Every place where pieces of the design are stuck together, in the order of its mechanisms, its cover last;
 * worked out once.
 */
export const jointsOf: (design: Design) => readonly Joint[] = once((design: Design) => {
  const model = modelOf(design)
  const inside = found(model)
  return [...inside, ...onCover(model, inside)]
})

/** The mechanisms whose tabs go through slits, by id: in any piece, or in the one that is named. */
export function threaded(design: Design, piece?: string): readonly string[] {
  const through = jointsOf(design).filter(
    ({ isThrough, host }) => isThrough && (piece === undefined || host.piece === piece),
  )
  const owners = new Set(through.map(({ owner }) => owner))
  return design.mechanisms.filter((_, index) => owners.has(index)).map(({ id }) => id)
}
