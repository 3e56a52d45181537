import * as says from '../../../content/words/sheet/joints.ts'
import type { Design, Joint, JointSide } from '../../paper/index.ts'
import { jointsOf } from '../../paper/index.ts'
import type { SheetFace } from './instructions.ts'
import { pieceName } from './instructions.ts'

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
}

function lettered(design: Design): readonly LetteredJoint[] {
  const letters = new Map<string, string>()
  return jointsOf(design).map((joint) => {
    const letter = letters.get(joint.of) ?? letterOf(letters.size)
    letters.set(joint.of, letter)
    return { ...joint, letter }
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
  /** It is part of what is stuck on, not of what that is stuck to. */
  readonly isOwn: boolean
  /** No fold lies between the two: a piece is stuck flat on a face. */
  readonly isFlat: boolean
  /** It is part of the rim by which the card is glued on its cover. */
  readonly isRim: boolean
  readonly of: string
}

/** The face that is printed: of the card the inside is the front. */
const printedFace: Readonly<Record<SheetFace, JointSide['face']>> = { inside: 'front', outside: 'back' }

/** Every place on a piece that is glued or taped. */
export function placesOn(design: Design, piece: string, face: SheetFace): readonly JointPlace[] {
  return letteredJoints(design).flatMap((joint) => {
    const { own, host } = joint
    if (host.piece !== piece && own.piece !== piece) return []
    return [placeOf(joint, host, own, face), placeOf(joint, own, host, face)].filter(
      (one, k) => [host, own][k]?.piece === piece && one.points.length > 1,
    )
  })
}

const placeOf = (
  { letter, of, isTaped, own, host, line }: LetteredJoint,
  side: JointSide,
  other: JointSide,
  face: SheetFace,
): JointPlace => ({
  letter,
  partner: pieceName(other.piece),
  points: side.points,
  isTaped,
  isBehind: side.face !== printedFace[face],
  isOwn: side === own,
  isFlat: line === null,
  isRim: host.piece === 'cover',
  of,
})

/** What is said of a joint in the list: what is stuck to what. */
export const jointSays = ({ own, host, isTaped, isThrough }: LetteredJoint): string =>
  (isTaped ? says.taped : isThrough ? says.throughSlits : says.glued)(
    pieceName(own.piece),
    pieceName(host.piece),
  )
