import * as says from '../../../content/words/drawing/steps.ts'
import type { GuestLine, Making } from '../../making/making.ts'
import { guestLines, making } from '../../making/making.ts'
import type { Design, Surface, Vec3 } from '../../paper/index.ts'
import { kindOf, modelOf, ownerOf, poseAt, ridgeOf, SHUT } from '../../paper/index.ts'
import { add, dot, subtract, unit } from '../../paper/plane/vector.ts'
import { angleText } from '../pen/numbers.ts'
import { standing } from '../view/camera.ts'
import type { Scene, Task } from './scene.ts'
import { ghostsOf, inked, middle, only, pushed, STEP_EYE } from './scene.ts'

/** What is small is drawn so many times as large as the card, at most: which way up the card is can still be told. */
const CLOSE_BY = 2.2

/** And on one page alone, where nothing stands about. */
const CLOSE_TO_FOLD = 3.2

/** The strips on folds of others: they still lie in their hosts, which stand. */
function standingHosts({ design, guests, before, opening = 60 }: Task): {
  state: Making
  lines: GuestLine[]
} {
  const state: Making = { opening, through: before, cut: guests }
  return { state, lines: guests.flatMap((id) => guestLines(design, state, id)) }
}

/** The side of the slit that faces the eye more: its line from the fold outward, and what lies behind the fold. */
function bladePath(paper: readonly Surface[], lines: readonly GuestLine[], id: string): readonly Vec3[] {
  const sides = lines
    .filter(({ kind, of }) => kind === 'cut' && of === id)
    .map(({ leaf, points }) => ({
      front: paper.find((one) => one.leaf === leaf)?.front ?? [0, 0, 1],
      points,
    }))
  const facing = ({ front }: { front: Vec3 }): number => Math.abs(dot(front, STEP_EYE))
  const [best] = [...sides].sort((a, b) => facing(b) - facing(a))
  const [foot, next] = best?.points ?? []
  if (!best || !foot || !next) return []
  const [end] = best.points.slice(-1)
  const away = unit(subtract(foot, end ?? next))
  return [add(foot, away, 20), add(foot, away, 1)]
}

/** The two panels that meet in the fold on which a guest sits. */
function pinchedIn({ design, before }: Task, on: string): readonly string[] {
  const { creases, panels } = modelOf(only(design, before))
  const fold = creases.find(({ name }) => name === on)
  return fold ? [fold.left, fold.right].flatMap(({ panel }) => panels[panel]?.name ?? []) : []
}

/** The page on which a fold lies in the shut card: by the side of what stands on the gutter from which it comes. */
function sideOf({ mechanisms }: Pick<Design, 'mechanisms'>, on: string): 'left' | 'right' {
  const host = mechanisms.find(({ id }) => id === ownerOf(on))
  if (host && host.on !== 'gutter') return sideOf({ mechanisms }, host.on)
  return on.endsWith('/right') ? 'right' : 'left'
}

/**
 * The fold on which the first guest sits, pinched: flat as in the shut card, on the page of its side. What lies over it
 * there is left out, or nothing of it would be seen.
 */
export function nestedCutting(task: Task): Scene {
  const { design, before, guests } = task
  const [id = ''] = guests
  const on = design.mechanisms.find((m) => m.id === id)?.on ?? ''
  const pinched = pinchedIn(task, on)
  const side = sideOf(design, on)
  const page = `page/${side}`
  const state: Making = { opening: SHUT, through: before, cut: [id] }
  const kept = new Set([page, ...pinched, `${id}/left`, `${id}/right`])
  // Plain: on what is painted no line of a pencil is seen.
  const paper = making(design, state).flatMap(({ flat: _, ...one }) => (kept.has(one.panel) ? [one] : []))
  // Both layers are cut alike: the lines of the upper one are seen.
  const place = standing(side, SHUT)
  const height = ({ points }: Surface): number => place(middle(points))[2]
  const [upper] = paper
    .filter(({ panel }) => pinched.includes(panel))
    .sort((one, other) => height(other) - height(one))
  const seen = guestLines(design, state, id).filter(({ leaf }) => leaf === upper?.leaf)
  return {
    paper,
    ink: seen.flatMap(({ leaf, kind, points, of }) => inked(leaf, kind, points, of)),
    stand: side,
    opening: SHUT,
    cutsNow: true,
    about: paper.filter(({ panel }) => panel !== page).flatMap(({ points }) => points),
    closest: CLOSE_TO_FOLD,
    over: [{ role: 'hand', points: bladePath(paper, seen, id) }],
    says: says.nestedCutting,
  }
}

export function nestedCreased(task: Task): Scene {
  const { state, lines } = standingHosts(task)
  return {
    paper: making(task.design, state),
    ink: lines.flatMap(({ leaf, kind, points, of }) => inked(leaf, kind, points, of)),
    stand: 'gutter',
    opening: state.opening,
    about: lines.flatMap(({ points }) => points),
    over: [],
    says: says.nestedCreased(angleText(state.opening, 0)),
  }
}

export function nestedReversing({ design, guests, before, opening = 110 }: Task): Scene {
  const popped = poseAt(only(design, [...before, ...guests]), opening)
  const over = guests.flatMap((id): Scene['over'] => {
    const m = design.mechanisms.find((one) => one.id === id)
    const host = m && popped.creases[m.on]
    const ridge = popped.creases[ridgeOf(design, id) ?? '']
    const ghosts = ghostsOf(popped.panels, id)
    if (!m || !host || !ridge) return ghosts
    const [from, to] = kindOf(m).build(m).span
    const along = unit(subtract(host.end, host.start))
    const foot = add(host.start, along, (from + to) / 2)
    return [...ghosts, { role: 'hand', points: pushed(foot, middle([ridge.start, ridge.end]), 26) }]
  })
  return {
    paper: making(design, { opening, through: before, cut: guests }),
    ink: [],
    stand: 'gutter',
    opening,
    about: over.flatMap(({ points }) => points),
    closest: CLOSE_BY,
    over,
    says: says.nestedReversing(angleText(opening, 0)),
  }
}
