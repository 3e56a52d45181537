import * as says from '../../../content/words/sheet/joints.ts'
import type { Design, Joint, JointSide } from '../../paper/index.ts'
import { jointsOf, modelOf, pieces } from '../../paper/index.ts'
import { laid } from '../../paper/plane/lay.ts'
import type { SheetFace } from './instructions.ts'
import { pieceName } from './instructions.ts'

type Spot = JointSide['points'][number]

/** Letters that nobody takes for a line, a one or a nought. */
const LETTERS = 'ABCDEFGHJKLMNPQRSTUVWXYZ'

/** The letter of a joint, counted from 0: A to Z, then AA and on. */
export function letterOf(k: number): string {
  const last = LETTERS[k % LETTERS.length] ?? ''
  return k < LETTERS.length ? last : `${letterOf(Math.floor(k / LETTERS.length) - 1)}${last}`
}

/** A joint with the letter that both its places carry. */
export interface LetteredJoint extends Joint {
  readonly letter: string
  /** The outline of what is stuck flat on a front, where it will lie on its host; for any other joint none. */
  readonly under: JointSide['points']
  /** Of what is taped: the way from its line to the side that the standing piece hides, square to it, on the host. */
  readonly hidden: Spot | null
}

/** Of what is stuck flat on a front: neither of the two pieces is mirrored to the other there. */
function underOf(design: Design, { line, host, own }: Joint): JointSide['points'] {
  if (line !== null || host.piece === 'cover' || host.face !== 'front') return []
  const outline = pieces(design).find(({ id }) => id === own.piece)?.outline ?? []
  return carried(outline, own.points, host.points)
}

/** A tab points to whoever reads, and tape lies as one would: beyond the line the piece stands before the paper. */
function hiddenFrom(design: Design, { isTaped, line }: Joint, k: number): Spot | null {
  const model = modelOf(design)
  const { aside, panel = -1 } = model.glue[k] ?? {}
  const on = model.panels[panel]
  if (!isTaped || !line || !aside || !on) return null
  const [[ax, ay], [bx, by]] = line.host
  const [x, y] = laid(on.onPiece, aside)
  const long = Math.hypot(bx - ax, by - ay) || 1
  const side = Math.sign((bx - ax) * (y - ay) - (by - ay) * (x - ax))
  return [(side * (by - ay)) / long, (-side * (bx - ax)) / long]
}

function lettered(design: Design): readonly LetteredJoint[] {
  const letters = new Map<string, string>()
  return jointsOf(design).map((joint, k) => {
    const letter = letters.get(joint.of) ?? letterOf(letters.size)
    letters.set(joint.of, letter)
    return { ...joint, letter, under: underOf(design, joint), hidden: hiddenFrom(design, joint, k) }
  })
}

const known = new WeakMap<Design, readonly LetteredJoint[]>()

/** Each joint has its own letter; the stretches of the rim along one half of the cover share one. Worked out once. */
export function letteredJoints(design: Design): readonly LetteredJoint[] {
  let joints = known.get(design)
  if (!joints) {
    joints = lettered(design)
    known.set(design, joints)
  }
  return joints
}

/** One of the two places of a joint, as it is printed on one face of its piece. */
export interface JointPlace {
  readonly letter: string
  /** What it is stuck to, as the reader calls it. */
  readonly partner: string
  readonly points: JointSide['points']
  readonly isTaped: boolean
  /** It is the other face that is glued. */
  readonly isBehind: boolean
  /** On either of its pieces it is the other face that is glued. */
  readonly isAllBehind: boolean
  /** It is part of what is stuck on, not of what that is stuck to. */
  readonly isOwn: boolean
  /** No fold lies between the two: a piece is stuck flat on a face. */
  readonly isFlat: boolean
  /** It is part of the rim by which the card is glued on its cover. */
  readonly isRim: boolean
  /** The outline of what is stuck flat on this front, where it will lie; for any other place none. */
  readonly under: JointSide['points']
  /** Beside a slit through which a tab leaves this face: the strip that the piece screens from who looks; for any other place none. */
  readonly screened: JointSide['points']
  /** Of a line on which another piece is taped: the way from it to the side that the piece hides; of any other place none. */
  readonly hidden: Spot | null
  readonly of: string
}

/** The face that is printed: of the card the inside is the front. */
const printedFace: Readonly<Record<SheetFace, JointSide['face']>> = { inside: 'front', outside: 'back' }

/** Every place on a piece that is glued or taped. */
export function placesOn(design: Design, piece: string, face: SheetFace): readonly JointPlace[] {
  return letteredJoints(design).flatMap((joint) => {
    const { own, host, under, hidden } = joint
    if (host.piece !== piece && own.piece !== piece) return []
    return [placeOf(joint, host, own, face, under, hidden), placeOf(joint, own, host, face)].filter(
      (one, k) => [host, own][k]?.piece === piece && one.points.length > 1,
    )
  })
}

/** Points that go where a glued place goes: it has the same corners in the same order on both of its pieces. */
function carried(
  points: JointSide['points'],
  [a, b]: JointSide['points'],
  [p, q]: JointSide['points'],
): JointSide['points'] {
  if (!a || !b || !p || !q) return []
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const [s, t] = [q[0] - p[0], q[1] - p[1]]
  const square = u * u + v * v || 1
  return points.map(([x, y]) => {
    const along = ((x - a[0]) * u + (y - a[1]) * v) / square
    const aside = ((y - a[1]) * u - (x - a[0]) * v) / square
    return [p[0] + along * s - aside * t, p[1] + along * t + aside * s] as const
  })
}

/**
 * A tab points away from the fold that its piece stands on, and to whoever looks at the open card from its reader's
 * end. On the other side of the slit the piece itself stands before the paper: as far off as the tab reaches behind.
 */
function screenedBy([a, b, ...tab]: JointSide['points']): JointSide['points'] {
  if (!a || !b) return []
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  const square = u * u + v * v || 1
  return [
    a,
    b,
    ...tab.map(([x, y]) => {
      const off = (2 * ((y - a[1]) * u - (x - a[0]) * v)) / square
      return [x + off * v, y - off * u] as const
    }),
  ]
}

const placeOf = (
  { letter, of, isTaped, isThrough, own, host, line }: LetteredJoint,
  side: JointSide,
  other: JointSide,
  face: SheetFace,
  under: JointSide['points'] = [],
  hidden: Spot | null = null,
): JointPlace => ({
  letter,
  partner: pieceName(other.piece),
  points: side.points,
  isTaped,
  isBehind: side.face !== printedFace[face],
  isAllBehind: [side, other].every((one) => one.face !== printedFace[face]),
  isOwn: side === own,
  isFlat: line === null,
  isRim: host.piece === 'cover',
  under,
  screened: isThrough && side === host && side.face !== printedFace[face] ? screenedBy(side.points) : [],
  hidden,
  of,
})

/** What is said of a joint in the list: what is stuck to what. */
export const jointSays = ({ own, host, isTaped, isThrough }: LetteredJoint): string =>
  (isTaped ? says.taped : isThrough ? says.throughSlits : says.glued)(
    pieceName(own.piece),
    pieceName(host.piece),
  )
