/**
 * The motion of a step, from the state in which it finds the card to the one in which it leaves it. Every pose between
 * is the kernel's; where paper jumps from one state to another, nothing is drawn between them.
 */
import * as says from '../../../content/words/drawing/motion.ts'
import { heldBy } from '../../making/gluing.ts'
import type { Making } from '../../making/making.ts'
import { making } from '../../making/making.ts'
import type { Design, Surface, Vec3 } from '../../paper/index.ts'
import { change, kindOf, openingRange, SHUT } from '../../paper/index.ts'
import { turned } from '../../paper/plane/turn.ts'
import { RADIANS } from '../../paper/plane/vector.ts'
import type { Drawing } from '../pen/marks.ts'
import { angleText } from '../pen/numbers.ts'
import type { Size, Stand } from '../view/camera.ts'
import { standing } from '../view/camera.ts'
import type { Scene, Task } from './scene.ts'
import { only } from './scene.ts'
import { creasedIn, foldedOver, OVER, OVER_COVER, overCover } from './scenes-cut.ts'
import { HELD, overFold, overSlits } from './scenes-glued.ts'
import type { StepOptions, StepState } from './steps.ts'
import { commonScale, isPictured, sceneMarks, taskOf } from './steps.ts'

/** What happens between two turns: the card at a share from 0 to 1. */
interface Stretch {
  readonly stand: Stand
  readonly opening: (share: number) => number
  readonly shows: (opening: number, share: number) => Pick<Scene, 'paper' | 'ink'>
  /** How far it is, where another thing than the opening tells that. */
  readonly told?: (share: number) => string
}

export interface StepMotion {
  /** What moves, in a sentence. */
  readonly says: string
  /** How many stretches it has, one after the other. */
  readonly stretches: number
  /** Where it stops when it goes in steps: shares from 0 to 1. */
  readonly stops: readonly number[]
  /** What it shows at a share from 0 to 1. `quick`: without the shadows on paper. */
  at(share: number, quick?: boolean): Drawing
  /** How far it is, in words. */
  told(share: number): string
}

/** What stands off the table by less lies flat, mm: no more than card is thick. */
const SAME = 0.25

/** Where motion goes in steps, so many degrees from stop to stop. */
const STEP = 15

const between =
  (from: number, to: number): Stretch['opening'] =>
  (share) =>
    from + (to - from) * share

/** The corners of some mechanisms' own panels. */
const cornersOf = (paper: readonly Surface[], ids: readonly string[]): readonly Vec3[] =>
  paper.flatMap(({ panel, points }) => (ids.some((id) => panel.startsWith(`${id}/`)) ? points : []))

/** Whether parts of a card lie flat on the table with it. */
const liesFlat = (paper: readonly Surface[], ids: readonly string[]): boolean =>
  cornersOf(paper, ids).every(([, , z]) => Math.abs(z) < SAME)

interface Plan {
  readonly says: string
  readonly stretches: readonly Stretch[]
}

/** Paper with nothing drawn on it for the step. */
const bare = (paper: readonly Surface[]): Pick<Scene, 'paper' | 'ink'> => ({ paper, ink: [] })

const swings = (design: Design, state: Omit<Making, 'opening'>): Stretch['shows'] => {
  return (opening) => bare(making(design, { ...state, opening }))
}

/** Strips that lie in their hosts come over to the other side where all lies flat: there both states are one. */
function pushing({ design, cut, guests, before, opening = 110 }: Task): Plan {
  const ids = [...cut, ...guests]
  const lying = swings(design, { through: before, cut: ids })
  const stood = swings(design, { through: [...before, ...ids], cut: [] })
  const [, most] = openingRange(only(design, [...before, ...ids]))
  const passes = [lying, stood].every((shows) => liesFlat(shows(most, 0).paper, ids))
  const turn = passes ? most : opening
  return {
    says: passes ? says.pushing : says.stripsJump,
    stretches: [
      { stand: 'gutter', opening: between(opening, turn), shows: lying },
      { stand: 'gutter', opening: between(turn, opening), shows: stood },
    ],
  }
}

function popping({ design, glued: ids, before, opening = 110 }: Task): Plan {
  const whole = only(design, [...before, ...ids])
  const set = (state: 'up' | 'down'): Stretch => {
    const design = ids.reduce((one, id) => {
      const m = one.mechanisms.find((other) => other.id === id)
      const pops = m && kindOf(m).pops
      return pops ? change(one, id, pops[state]) : one
    }, whole)
    const through = design.mechanisms.map(({ id }) => id)
    return { stand: 'gutter', opening: () => opening, shows: swings(design, { through, cut: [] }) }
  }
  return {
    says: says.pieceJumps,
    stretches: [set('down'), set('up')],
  }
}

function closing({ design, glued: ids, before }: Task): Plan {
  const lying = ids.filter((id) => heldBy(design, id) === 'joints')
  const others = [...before, ...ids.filter((id) => !lying.includes(id))]
  const through = [...before, ...ids]
  const [, most] = openingRange(only(design, through))
  const wide = Math.min(150, most)
  return {
    says: says.closing,
    stretches: [
      {
        ...{ stand: 'left', opening: between(wide, SHUT) },
        shows: swings(design, { through: others, cut: [], lying }),
      },
      { stand: 'left', opening: between(SHUT, wide), shows: swings(design, { through, cut: [] }) },
    ],
  }
}

function shutting({ design, through }: Task): Plan {
  const [, most] = openingRange(design)
  return {
    says: says.shutting,
    stretches: [
      {
        ...{ stand: 'left', opening: between(Math.min(110, most), SHUT) },
        shows: swings(design, { through, cut: [] }),
      },
    ],
  }
}

const opening = ({ design, through, opening: to = 96 }: Task): Plan => ({
  says: says.opening,
  stretches: [{ stand: 'gutter', opening: between(SHUT, to), shows: swings(design, { through, cut: [] }) }],
})

/** What is held over its place comes down on it; what is folded lies there already. */
function lowering({ design, glued: ids, before, opening = 150 }: Task): Plan | null {
  const lifted = ids.filter((id) => heldBy(design, id) !== 'joints')
  if (lifted.length === 0) return null
  return {
    says: says.lowering,
    stretches: [
      {
        ...{ stand: 'gutter', opening: () => opening },
        shows: (at, share) =>
          bare(
            making(design, {
              ...{ opening: at, through: [...before, ...ids], cut: [] },
              lifted: Object.fromEntries(lifted.map((id) => [id, HELD * (1 - share)])),
            }),
          ),
      },
    ],
  }
}

/** What sits on the outside of a fold comes up to it. */
const saddling = (task: Task): Plan => {
  const { stand, opening } = overFold(task, 0)
  return {
    says: says.lowering,
    stretches: [{ stand, opening: () => opening, shows: (_, share) => overFold(task, HELD * (1 - share)) }],
  }
}

/** What has its tabs straight comes down until they are through their slits. */
function threaded(task: Task): Plan {
  const { opening = 150 } = task
  const held = between(HELD, 0)
  const isLoose = task.inHand.length > 0
  const over = isLoose ? says.pieceOverPlatform : says.pieceOverCard
  return {
    says: isLoose ? says.threadingLoose : says.threading,
    stretches: [
      {
        ...{ stand: 'gutter', opening: () => opening },
        shows: (at, share) => overSlits(task, at, held(share)),
        told: (share) => over(held(share).toFixed(0)),
      },
    ],
  }
}

/** The shut card on its way from lying on its left page to lying on its right one, about the gutter. */
const turningOver = (paper: readonly Surface[], share: number): readonly Surface[] => {
  const over = (p: Vec3): Vec3 => turned(p, [0, 0, 0], [0, 1, 0], 180 * share * RADIANS)
  return paper.map((one) => ({ ...one, points: one.points.map(over), front: over(one.front) }))
}

/** Strips folded over to the front and back flat; then the same with the card turned over. */
function creasing(task: Task): Plan | null {
  if (creasedIn(task).length === 0) return null
  const still = () => SHUT
  const fold = (side: 'front' | 'back', from: number, to: number): Stretch => {
    const at = between(from, to)
    return {
      ...{ stand: side === 'front' ? 'left' : 'right', opening: still },
      shows: (_, share) => bare(foldedOver(task, side === 'front' ? at(share) : -at(share))),
      told: (share) => (side === 'front' ? says.stripsToFront : says.stripsToBack)(angleText(at(share), 0)),
    }
  }
  return {
    says: says.creasing,
    stretches: [
      fold('front', 0, OVER),
      fold('front', OVER, 0),
      {
        ...{ stand: 'left', opening: still },
        shows: (_, share) => bare(turningOver(foldedOver(task, 0), share)),
        told: (share) => says.turnedOver(angleText(180 * share, 0)),
      },
      fold('back', 0, OVER),
      fold('back', OVER, 0),
    ],
  }
}

/** The card comes down on its cover, gutter on gutter; then both shut, and open as one. */
function covered(task: Task): Plan | null {
  const { design, opening = 150 } = task
  if (!design.card.cover) return null
  const held = between(OVER_COVER, 0)
  const lowered: Stretch = {
    ...{ stand: 'gutter', opening: () => opening },
    shows: (at, share) => overCover(task, at, held(share)),
    told: (share) => says.cardOverCover(held(share).toFixed(0)),
  }
  const asOne = (from: number, to: number): Stretch => ({
    ...{ stand: 'gutter', opening: between(from, to) },
    shows: (at) => bare(overCover(task, at, 0).paper),
  })
  return {
    says: says.covering,
    stretches: [lowered, asOne(opening, SHUT), asOne(SHUT, opening)],
  }
}

const PLANS: Partial<Record<StepState, (task: Task) => Plan | null>> = {
  reversing: pushing,
  popping,
  closing,
  shut: shutting,
  open: opening,
  glued: lowering,
  threading: threaded,
  astride: saddling,
  creased: creasing,
  covering: covered,
}

/** Shares of one stretch at which its corners are looked at, so that all of it is in the picture. */
const LOOKS = [0, 0.25, 0.5, 0.75, 1]

/** The motion of a step; null if nothing moves in it. */
export function stepMotion(
  whole: Design,
  state: StepState,
  size: Size,
  options: StepOptions = {},
): StepMotion | null {
  const task = taskOf(whole, options, state)
  const { design } = task
  const plan = PLANS[state]?.(task)
  if (!plan) return null
  const { says: moves, stretches } = plan
  const placeAt = (share: number): { readonly stretch: Stretch; readonly part: number } => {
    const along = Math.min(1, Math.max(0, share)) * stretches.length
    const k = Math.min(stretches.length - 1, Math.floor(along))
    return { stretch: stretches[k] as Stretch, part: along - k }
  }
  const sceneAt = (share: number): Scene => {
    const { stretch, part } = placeAt(share)
    const { stand, shows } = stretch
    const opening = stretch.opening(part)
    return { ...shows(opening, part), stand, opening, over: [], says: moves }
  }
  const scale = commonScale(design, size)
  let frame: readonly Vec3[] | null = null
  const framed = (): readonly Vec3[] => {
    frame ??= stretches.flatMap((_, k) =>
      LOOKS.flatMap((look) => {
        const { paper, stand, opening } = sceneAt((k + 0.999 * look) / stretches.length)
        const place = standing(stand, opening)
        return paper.flatMap(({ points }) => points.map(place))
      }),
    )
    return frame
  }
  const told = (share: number): string => {
    const { stretch, part } = placeAt(share)
    return stretch.told?.(part) ?? says.cardOpen(angleText(stretch.opening(part), 0))
  }
  return {
    says: moves,
    stretches: stretches.length,
    stops: stretches.flatMap(({ opening }, k) => {
      const count = Math.max(1, Math.ceil(Math.abs(opening(1) - opening(0)) / STEP))
      return Array.from(
        { length: count + (k === stretches.length - 1 ? 1 : 0) },
        (_, n) => (k + n / count) / stretches.length,
      )
    }),
    told,
    at: (share, quick = false) => ({
      box: [0, 0, size.width, size.height],
      unit: 'px',
      marks: sceneMarks(sceneAt(share), design, size, {
        ...{ scale, centre: size.width / 2, text: 15, pictured: isPictured(state), frame: framed(), quick },
      }),
      says: says.now(moves, told(share)),
    }),
  }
}
