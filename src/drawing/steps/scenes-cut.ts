import * as says from '../../../content/words/drawing/steps.ts'
import type { Making } from '../../making/making.ts'
import { foldsTogether, making } from '../../making/making.ts'
import type { Design, Surface, Vec3 } from '../../paper/index.ts'
import { jointsOf, poseAt, ridgeOf, SHUT } from '../../paper/index.ts'
import { RADIANS } from '../../paper/plane/vector.ts'
import { angleText } from '../pen/numbers.ts'
import { coverSurfaces } from '../view/cover.ts'
import type { Scene, Task } from './scene.ts'
import { ghostsOf, hatched, inked, inkOn, LIFTED, middle, pagePath, pushed } from './scene.ts'
import { nestedCutting, nestedReversing } from './scenes-nested.ts'

/** How far a strip is folded over: far enough to look folded, not so far that it looks glued down. */
export const OVER = 152

/** The paper turned inside out: what was the inside is now seen from outside. */
const insideOut = (paper: readonly Surface[]): readonly Surface[] =>
  paper.map((one) => ({ ...one, front: [-one.front[0], -one.front[1], -one.front[2]] }))

const farthest = (from: readonly Vec3[], to: readonly Vec3[]): number => {
  let best = 0
  let far = -1
  from.forEach((p, k) => {
    const q = to[k] as Vec3
    const d = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
    if (d > far + 1e-6) [best, far] = [k, d]
  })
  return best
}

/** The way that the outermost point of a folded strip took. */
function foldPath(design: Design, state: Making, id: string, over: number): readonly Vec3[] {
  const at = (degrees: number): readonly Vec3[] =>
    making(design, { ...state, folds: { [id]: degrees } }).find(
      ({ panel }) => panel === `${id}/${over > 0 ? 'left' : 'right'}`,
    )?.points ?? []
  const corner = farthest(at(0), at(over))
  return Array.from({ length: 13 }, (_, k) => at((over * k) / 12)[corner]).filter(
    (p): p is Vec3 => p !== undefined,
  )
}

/** Lines of the strips that will be folded, not those that are cut. */
const foldsOf =
  ({ cut }: Task) =>
  (of: string, kind: string): boolean =>
    kind !== 'cut' && cut.some((id) => of.startsWith(`${id}/`))

export function flat({ design }: Task): Scene {
  return {
    paper: making(design, { opening: 180, through: [], cut: [] }),
    ink: inkOn(design, 180, () => true),
    stand: 'gutter',
    opening: 180,
    over: [],
    says: says.flat,
  }
}

export function folding({ design }: Task): Scene {
  return {
    paper: making(design, { opening: LIFTED, through: [], cut: [] }),
    ink: inkOn(design, LIFTED, () => true),
    stand: 'left',
    opening: LIFTED,
    over: [{ role: 'hand', points: pagePath(design, 165, LIFTED + 8) }],
    says: says.folding,
  }
}

export function cutting(task: Task): Scene {
  if (task.cut.length === 0 && task.guests.length > 0) return nestedCutting(task)
  const { design, cut } = task
  const [slit] = inkOn(design, 0, (of, kind) => kind === 'cut' && cut.includes(of)).filter(
    ({ leaf }) => leaf === 1,
  )
  // The blades come from the fold, along the slit.
  const foot = slit && (slit.points[0][2] < slit.points[1][2] ? slit.points[0] : slit.points[1])
  const from = (back: number): Vec3 => [0, foot?.[1] ?? 0, (foot?.[2] ?? 0) - back]
  return {
    paper: insideOut(making(design, { opening: 0, through: [], cut })),
    ink: inkOn(design, 0, foldsOf(task)),
    stand: 'left',
    opening: SHUT,
    over: foot ? [{ role: 'hand', points: [from(0.26 * design.card.width), from(2)] }] : [],
    says: says.cutting,
  }
}

/** The strips that are folded over in the shut card, both layers as one. */
export const creasedIn = ({ design, cut }: Task): readonly string[] =>
  cut.filter((id) => foldsTogether(design, id))

/** The card shut with its lines outside, those strips folded over by so many degrees: below 0 to the back. */
export function foldedOver(task: Task, over: number): readonly Surface[] {
  const folds = Object.fromEntries(creasedIn(task).map((id) => [id, over]))
  return insideOut(making(task.design, { opening: 0, through: [], cut: task.cut, folds }))
}

/** Folded over to the front, or with the card turned over to the back. */
export function folded(task: Task, side: 'front' | 'back'): Scene {
  const { design, cut } = task
  const over = side === 'front' ? OVER : -OVER
  const lying: Making = { opening: 0, through: [], cut }
  return {
    paper: foldedOver(task, over),
    ink: inkOn(design, 0, foldsOf(task)),
    stand: side === 'front' ? 'left' : 'right',
    opening: SHUT,
    over: creasedIn(task).map((id) => ({ role: 'hand', points: foldPath(design, lying, id, over) })),
    says: side === 'front' ? says.foldedToFront : says.foldedToBack,
  }
}

export function reversing(task: Task): Scene {
  if (task.cut.length === 0 && task.guests.length > 0) return nestedReversing(task)
  const { design, cut, opening = 110 } = task
  const paper = making(design, { opening, through: [], cut })
  const popped = poseAt(design, opening)
  const [first] = cut
  const outlines = first === undefined ? [] : ghostsOf(popped.panels, first)
  const ridge = popped.creases[(first !== undefined && ridgeOf(design, first)) || '']
  const strip = paper.find(({ panel }) => panel === `${first}/right`)
  const onGutter = strip?.points.filter((p) => Math.hypot(p[0], p[2]) < 1e-6) ?? []
  return {
    paper,
    ink: [],
    stand: 'gutter',
    opening,
    over:
      ridge && onGutter.length > 0
        ? [...outlines, { role: 'hand', points: pushed(middle(onGutter), middle([ridge.start, ridge.end])) }]
        : outlines,
    says: says.reversing(angleText(opening, 0)),
  }
}

export function shut({ design, through }: Task): Scene {
  const { width, height } = design.card
  const over = (z: number): Vec3 => [z, height * 0.5, width * 0.45]
  return {
    paper: making(design, { opening: 0, through, cut: [] }),
    ink: [],
    stand: 'left',
    opening: SHUT,
    over: [{ role: 'hand', points: [over(0.42 * width), over(4)] }],
    says: says.shut,
  }
}

/** How far the card is held over its cover, mm. */
export const OVER_COVER = 40

/** The finished card so far over its cover, mm, and where that is glued. */
export function overCover(
  { design, through }: Task,
  opening: number,
  held: number,
): Pick<Scene, 'paper' | 'ink'> {
  const card = making(design, { opening, through, cut: [] })
  const cover = coverSurfaces(design, opening, 1 + Math.max(...card.map(({ leaf }) => leaf)))
  const [left, right] = cover
  if (!left || !right)
    throw new RangeError('a step that shows covering needs a card with a cover, and there is none')
  const half = (opening / 2) * RADIANS
  const rim = jointsOf(design).flatMap(({ of, host }) => {
    if (host.piece !== 'cover') return []
    const {
      leaf,
      points: [corner],
    } = of === left.panel ? left : right
    const outline = host.points.map(
      ([x, y]): Vec3 => [x * Math.sin(half), y, Math.abs(x) * Math.cos(half) + (corner?.[2] ?? 0)],
    )
    return [
      ...inked(leaf, 'glue', [...outline, ...outline.slice(0, 1)], of, 'front'),
      ...hatched(leaf, outline, of),
    ]
  })
  const up = ([x, y, z]: Vec3): Vec3 => [x, y, z + held]
  return { paper: [...cover, ...card.map((one) => ({ ...one, points: one.points.map(up) }))], ink: rim }
}

/** The finished card over its cover, and where that is glued. */
export function covering(task: Task): Scene {
  const {
    design: { card },
    opening = 150,
  } = task
  const half = (opening / 2) * RADIANS
  const edge = (z: number): Vec3 => [
    card.width * Math.sin(half),
    card.height / 2,
    card.width * Math.cos(half) + OVER_COVER + z,
  ]
  return {
    ...overCover(task, opening, OVER_COVER),
    stand: 'gutter',
    opening,
    over: [{ role: 'hand', points: [edge(-3), edge(6 - OVER_COVER)] }],
    says: says.covering,
  }
}

export function open({ design, through, opening = 96 }: Task): Scene {
  return {
    paper: making(design, { opening, through, cut: [] }),
    ink: [],
    stand: 'gutter',
    opening,
    over: [],
    says: says.open(angleText(opening, 0)),
  }
}
