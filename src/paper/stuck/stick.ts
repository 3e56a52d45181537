/** A piece of any outline stuck on a face: where there is room for it, upright, as large as is sound. */
import { lastTip, withMechanism } from '../answers/seek/offers.ts'
import { roomsOf } from '../answers/seek/room.ts'
import { additionsTo } from '../answers/seek/sound.ts'
import { side } from '../checks/names.ts'
import type { Design } from '../design/design.ts'
import { freeId } from '../design/tree.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { modelOf } from '../model/model.ts'
import type { Flat } from '../plane/lay.ts'
import { roundest } from '../plane/roundest.ts'
import type { Vec3 } from '../plane/vector.ts'
import { noRoom } from '../words/stuck.ts'
import { glueArea, hundredths, LEAST_GLUE } from './glue-area.ts'
import { placedOn, uprightOn } from './upright.ts'

/** What is stuck: an outline right and up of any point, in any unit. */
export interface Cut {
  /** What it is called: the id, with a number if that is taken. */
  readonly word: string
  readonly outline: readonly (readonly [x: number, y: number])[]
  readonly face?: 'front' | 'back'
}

export interface Stuck {
  readonly id: string
  /** The given one with the piece as its last. */
  readonly design: Design
  readonly tip: Vec3
  /** Degrees: where the tip is told. */
  readonly opening: number
  /** From the drawing to the panel's flat coordinates: `at + size * (x * right + y * up)`. */
  readonly lay: { readonly right: Flat; readonly up: Flat; readonly at: Flat; readonly size: number }
}

/** Why it could not be stuck. */
export interface Unstuck {
  readonly sentence: string
}

/** How far it may reach beyond the free circle of its face, and down to what: shares of that circle's radius. */
const SHARES = [1.45, 1.2, 1, 0.85, 0.7, 0.55, 0.4, 0.28] as const

/** Smaller than this across nobody cuts it out, mm. Common practice, no source. */
const SMALLEST = 8

/** Looks at two moving panels: about a tenth of a second. */
const EFFORT = 1.2e4

/** So many sizes that hold by the quick checks are proved clear before we leave it. */
const MOST_PROOFS = 4

/** A piece with this outline, mm in the panel's flat coordinates, glued where it can be; null where it cannot. */
export function pieceOn(
  design: Design,
  panel: string,
  { id, shape, face = 'front' }: { id: string; shape: readonly Flat[]; face?: 'front' | 'back' },
): Mechanism | null {
  const model = modelOf(design)
  const index = model.panels.findIndex(({ name }) => name === panel)
  const glue = index < 0 ? null : glueArea(model, index, shape)
  if (!glue) return null
  return {
    id,
    kind: 'rider',
    on: panel,
    shape: shape.map(([a, l]): Flat => [hundredths(a), hundredths(l)]),
    glue,
    face,
    across: 0,
    along: 0,
    turn: 0,
  }
}

/**
 * Sticks a piece on a panel: its roundest place over the middle of what is free there, upright when the card is open,
 * as large as fails no check; the rest keeps the checks that it had. Throws a RangeError if there is no such panel.
 */
export function stick(design: Design, on: string, { word, outline, face = 'front' }: Cut): Stuck | Unstuck {
  const model = modelOf(design)
  const panel = model.panels.findIndex(({ name }) => name === on)
  if (panel < 0) throw new RangeError(`there is no panel ${on}`)
  const upright = uprightOn(design, on, face)
  const { at: middle } = roundest([outline])
  const far = Math.max(...outline.map(([x, y]) => Math.hypot(x - middle[0], y - middle[1])))
  const id = freeId(design, word)
  const added = new Set([id])
  const judge = additionsTo(design, { left: EFFORT })
  let [proofs, sentence] = [0, '']
  for (const { spot } of roomsOf(model, panel)) {
    if (!spot) continue
    for (const share of SHARES) {
      const size = (share * spot.radius) / far
      if (2 * share * spot.radius < SMALLEST) continue
      const at: Flat = [
        spot.at[0] - size * (middle[0] * upright.right[0] + middle[1] * upright.up[0]),
        spot.at[1] - size * (middle[0] * upright.right[1] + middle[1] * upright.up[1]),
      ]
      const piece = pieceOn(design, on, { id, shape: outline.map(placedOn(upright, at, size)), face })
      if (!piece) continue
      const next = withMechanism(design, piece)
      const quick = judge.quick(next, added)
      const against = quick ?? judge.slow(next, added)
      if (!against) return { id, design: next, ...lastTip(next, 90), lay: { ...upright, at, size } }
      sentence = against.sentence
      if (!quick && ++proofs >= MOST_PROOFS) return { sentence }
    }
  }
  return { sentence: sentence || noRoom(side(on), SMALLEST, 2 * LEAST_GLUE) }
}
