import * as says from '../../../content/words/drawing/steps.ts'
import type { GuestLine, Making } from '../../making/making.ts'
import { guestLines, making } from '../../making/making.ts'
import type { Surface, Vec3 } from '../../paper/index.ts'
import { kindOf, poseAt, ridgeOf } from '../../paper/index.ts'
import { add, dot, subtract, unit } from '../../paper/plane/vector.ts'
import { angleText } from '../pen/numbers.ts'
import type { Scene, Task } from './scene.ts'
import { ghostsOf, inked, middle, only, pushed, STEP_EYE } from './scene.ts'

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

export function nestedCutting(task: Task): Scene {
  const { state, lines } = standingHosts(task)
  const paper = making(task.design, state)
  return {
    paper,
    ink: lines.flatMap(({ leaf, kind, points, of }) => inked(leaf, kind, points, of)),
    stand: 'gutter',
    opening: state.opening,
    cutsNow: true,
    about: lines.flatMap(({ points }) => points),
    over: task.guests.map((id) => ({ role: 'hand', points: bladePath(paper, lines, id) })),
    says: says.nestedCutting(angleText(state.opening, 0)),
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
    over,
    says: says.nestedReversing(angleText(opening, 0)),
  }
}
