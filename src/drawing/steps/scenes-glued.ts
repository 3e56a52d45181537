import * as says from '../../../content/words/drawing/steps.ts'
import type { Loose } from '../../making/gluing.ts'
import { ARC, glueAreas, heldBy, loose } from '../../making/gluing.ts'
import type { Making } from '../../making/making.ts'
import { making } from '../../making/making.ts'
import type { Design, Flat, Surface, Vec3 } from '../../paper/index.ts'
import { change, jointsOf, kindOf, modelOf, ownerOf, poseAt, ridgeOf, SHUT } from '../../paper/index.ts'
import { clip } from '../../paper/plane/clip.ts'
import { turned } from '../../paper/plane/turn.ts'
import { add, cross, distance, dot, RADIANS, subtract, unit } from '../../paper/plane/vector.ts'
import { angleText } from '../pen/numbers.ts'
import type { InkLine } from '../view/paper.ts'
import { drawnLines } from './ink.ts'
import type { Scene, Task } from './scene.ts'
import { ghostsOf, hatched, inked, middle, only, pagePath, pushed, STEP_EYE, struck } from './scene.ts'

const UPRIGHT: Vec3 = [0, 1, 0]

const aboutRidge = (p: Vec3, degrees: number): Vec3 => turned(p, [0, 0, 0], UPRIGHT, degrees * RADIANS)

/** How far a half of a folded piece reaches from its ridge, mm. */
const broad = (half: readonly Surface[]): number =>
  Math.max(...half.flatMap(({ points }) => points.map(([x, , z]) => Math.hypot(x, z))))

/** A lopsided piece that is folded turned over, so that its broader half lies behind the other and looks out there. */
function broadBehind(piece: Loose): Loose {
  const { paper } = piece
  const lower = paper.filter(({ points }) => points.every(([, , z]) => Math.abs(z) < 1e-6))
  const upper = paper.filter((one) => !lower.includes(one))
  const hasTab = paper.some(({ panel }) => panel.endsWith('/tab'))
  if (hasTab || piece.path.length === 0 || upper.length === 0) return piece
  if (broad(upper) <= broad(lower) + 1) return piece
  const [far] = upper
    .flatMap(({ points }) => points)
    .sort(([x, , z], [u, , w]) => u * u + w * w - x * x - z * z)
  if (!far) return piece
  // The upper half comes down on the other side of the ridge.
  const side = far[0] > 0 ? 1 : -1
  const gape = Math.atan2(far[2], Math.abs(far[0])) / RADIANS
  const over = (p: Vec3): Vec3 => aboutRidge(p, -side * (180 - gape))
  const flat = paper.map((one) => ({ ...one, points: one.points.map(over), front: over(one.front) }))
  const tip = lower
    .flatMap(({ points }) => points)
    .reduce((best, p) => (Math.abs(p[0]) > Math.abs(best[0]) ? p : best))
  return {
    ...piece,
    paper: flat,
    path: Array.from({ length: 1 + ARC }, (_, k) =>
      aboutRidge(over(tip), side * (18 + (124 * (ARC - k)) / ARC)),
    ),
    unfolded: [],
  }
}

/** Mechanisms' own pieces on the table, in the card's frame where it lies flat. */
export function onTable(task: Task, folded: boolean): Scene {
  const [id = ''] = task.glued
  const lying = loose(task.design, folded ? id : task.glued, folded)
  const { paper, lines, path, unfolded = [] } = folded ? broadBehind(lying) : lying
  const tabs = paper.filter(({ panel }) => folded && panel.endsWith('/tab'))
  return {
    paper,
    ink: [
      ...lines.flatMap(({ leaf, kind, points, closed, of }) => {
        const piece = paper.find((one) => one.leaf === leaf)?.panel ?? ''
        const flat = points.map(([x, y]): Flat => [x, y])
        return drawnLines(task.design, piece, { kind, points: flat, closed }).flatMap((line) =>
          inked(
            leaf,
            line.role,
            line.points.map(([x, y]): Vec3 => [x, y, 0]),
            of,
          ),
        )
      }),
      ...tabs.flatMap(({ leaf, points, panel }) => hatched(leaf, points, panel)),
    ],
    stand: 'gutter',
    opening: 180,
    fills: true,
    over: [
      ...(unfolded.length > 0 ? [{ role: 'ghost' as const, points: unfolded, closed: true }] : []),
      ...(path.length > 0 ? [{ role: 'hand' as const, points: path }] : []),
    ],
    says: folded ? says.pieceFolded(id) : says.piecesFlat(task.glued),
  }
}

/** How far a piece is held off its place, mm. */
export const HELD = 32

/** How far tape reaches on the page, mm. */
const TAPE = 8

const away = (p: Vec3, others: readonly Vec3[]): number => Math.min(...others.map((q) => distance(p, q)))

/** Tape on the page along the joint that a folded piece lies on: what of it the piece leaves to be seen. */
function leftTape(
  { design, before }: Task,
  paper: readonly Surface[],
  id: string,
  opening: number,
): readonly Surface[] {
  const own = paper.filter(({ panel }) => panel.startsWith(`${id}/`)).flatMap(({ points }) => points)
  return glueAreas(design, [...before, id], id, opening).flatMap(({ leaf, points, closed }): Surface[] => {
    const [a, b] = points
    const page = paper.find((one) => one.leaf === leaf)
    if (closed || !a || !b || !page || away(b, own) > 1) return []
    const along = unit(subtract(b, a))
    const across = cross(page.front, along)
    const out = dot(across, subtract(middle(own), a)) > 0 ? -TAPE : TAPE
    const outline = [a, b, add(b, across, out), add(add(a, across, out), along, Math.abs(out))]
    return [
      {
        panel: `${id}/left/tape`,
        owner: page.owner,
        leaf: 1 + Math.max(...paper.map((one) => one.leaf)),
        layer: page.layer + 1,
        points: outline,
        drawn: outline.map(() => true),
        front: page.front,
        tape: true,
      },
    ]
  })
}

/** Whether the middle of a surface lies under one of others, seen square to it. */
function isUnder({ points, front }: Surface, others: readonly Surface[]): boolean {
  const at = middle(points)
  return others.some((one) => {
    const turns = one.points.map((p, k) =>
      dot(cross(subtract(one.points[(k + 1) % one.points.length] as Vec3, p), subtract(at, p)), front),
    )
    return turns.every((turn) => turn > 0) || turns.every((turn) => turn < 0)
  })
}

/** From the edge of a piece to the arrow that tells its way, mm. */
const ASIDE = 5

/** Past the corner of a piece that is nearest to the eye, and the same on its place: neither is hidden by an arrow. */
function besideOf(from: readonly Vec3[], to: readonly Vec3[]): readonly [Vec3, Vec3] | null {
  const near = from.reduce(
    (best, p, k) => (dot(p, STEP_EYE) > dot(from[best] as Vec3, STEP_EYE) ? k : best),
    0,
  )
  const [p, q] = [from[near], to[near]]
  if (!p || !q) return null
  const out = unit(subtract(p, middle(from)))
  return [add(p, out, ASIDE), add(q, out, ASIDE)]
}

/** The piece on its place, not yet fixed on the other side. */
export function glued(task: Task): Scene {
  const { design, glued: ids, before, opening = 150 } = task
  const how = new Map(ids.map((id) => [id, heldBy(design, id)]))
  const lying = ids.filter((id) => how.get(id) === 'joints')
  const lifted = ids.filter((id) => how.get(id) !== 'joints')
  const through = [...before, ...lifted]
  const state: Making = { opening, through, cut: [], lying }
  const paper = making(design, {
    ...state,
    lifted: Object.fromEntries(lifted.map((id) => [id, HELD])),
  }).filter(({ panel }) => !(panel.endsWith('/tape') && lying.some((id) => panel.startsWith(`${id}/`))))
  const there = making(design, state)
  const leftTapes = lying.flatMap((id) => leftTape(task, paper, id, opening))
  const arrows = lifted.flatMap((id) => {
    const moved = paper.flatMap((one, k) => {
      const home = there[k]
      const [p, q] = [one.points[0], home?.points[0]]
      return p && q && one.panel.startsWith(`${id}/`) && distance(p, q) > 1 ? [{ one, home }] : []
    })
    if (moved.length === 0) return []
    const [here, home] = [
      moved.flatMap(({ one }) => one.points),
      moved.flatMap(({ home }) => home?.points ?? []),
    ]
    const [from, to] = (how.get(id) === 'face' && besideOf(here, home)) || [middle(here), middle(home)]
    return [{ role: 'hand' as const, points: [from, add(to, subtract(from, to), 0.12)] }]
  })
  const own = paper.filter(({ panel }) => lying.some((id) => panel.startsWith(`${id}/`)))
  return {
    paper: [...paper, ...leftTapes],
    ink: [
      ...leftTapes.flatMap(({ leaf, points, panel }) => hatched(leaf, points, panel)),
      ...lifted
        .filter((id) => how.get(id) === 'face')
        .flatMap((id) =>
          glueAreas(design, [...before, ...lifted, ...lying], id, opening).flatMap(
            ({ leaf, points, closed }) =>
              closed
                ? [
                    ...inked(leaf, 'place', [...points, ...points.slice(0, 1)], id),
                    ...hatched(leaf, points, id),
                  ]
                : [],
          ),
        ),
    ],
    stand: 'gutter',
    opening,
    over: [
      ...arrows,
      // Where the piece itself hides it.
      ...leftTapes
        .filter((tape) => isUnder(tape, own))
        .map(({ points }) => ({ role: 'ghost' as const, points, closed: true })),
    ],
    says: (lying.length > 0 ? says.laidOnLeft : says.heldOverPlace)(angleText(opening, 0)),
  }
}

/** How far a card is open whose inner folds are pinched, degrees: nearly shut, but to be seen into. */
const PINCHED = 50

/** From where a finger presses, mm. */
const PRESS = 26

/** Pieces on the outside of a fold, held off it so far, mm. Of the gutter the outside is seen when the card is shut. */
export function overFold({ design, glued: ids, before }: Task, held: number): Omit<Scene, 'over' | 'says'> {
  const isOnGutter = design.mechanisms.every((m) => !ids.includes(m.id) || m.on === 'gutter')
  const opening = isOnGutter ? SHUT : PINCHED
  const through = [...before, ...ids]
  const paper = making(design, {
    ...{ opening, through, cut: [] },
    lifted: Object.fromEntries(ids.map((id) => [id, held])),
  })
  return {
    paper,
    // Its places, as long as it does not hide them.
    ink: (held > 0 ? ids : []).flatMap((id) =>
      glueAreas(design, through, id, opening).flatMap(({ leaf, points, closed }): InkLine[] => {
        const face = jointsOf(design).find(({ of }) => ownerOf(of) === id)?.host.face ?? 'front'
        const front = paper.find((one) => one.leaf === leaf)?.front
        const lines = closed
          ? [...inked(leaf, 'place', [...points, ...points.slice(0, 1)], id), ...hatched(leaf, points, id)]
          : front
            ? struck(leaf, points, front, id)
            : []
        return lines.map((line) => ({ ...line, face }))
      }),
    ),
    stand: isOnGutter ? 'left' : 'gutter',
    opening,
  }
}

/** The corners of the pieces that a step is about. */
const cornersOf = (paper: readonly Surface[], ids: readonly string[], side = ''): readonly Vec3[] =>
  paper.flatMap(({ panel, points }) => (ids.some((id) => panel.startsWith(`${id}/${side}`)) ? points : []))

/** A piece on its way to the fold that it will sit on. */
export function astride(task: Task): Scene {
  const over = overFold(task, HELD)
  const from = middle(cornersOf(over.paper, task.glued))
  const to = middle(cornersOf(overFold(task, 0).paper, task.glued))
  const hosts = task.design.mechanisms
    .filter(({ id }) => task.glued.includes(id))
    .map(({ on }) => ownerOf(on))
  return {
    ...over,
    about: [
      ...cornersOf(over.paper, [...task.glued, ...hosts]),
      ...cornersOf(overFold(task, 0).paper, task.glued),
      ...over.ink.flatMap(({ points }) => points),
    ],
    over: [{ role: 'hand', points: [from, add(to, subtract(from, to), 0.12)] }],
    says: says.heldAstride,
  }
}

/** The same on its fold: what is stuck second is pressed from without. */
export function saddled(task: Task): Scene {
  const on = overFold(task, 0)
  const [left, right] = (['left', 'right'] as const).map((side) =>
    middle(cornersOf(on.paper, task.glued, side)),
  ) as [Vec3, Vec3]
  const out = unit(subtract(right, left))
  return {
    ...on,
    over: [{ role: 'hand', points: [add(right, out, PRESS), add(right, out, 1)] }],
    says: says.setAstride,
  }
}

/** Of the paper of a design: some parts, and the pieces through which they go. */
function loosened(part: Design, paper: readonly Surface[], ids: readonly string[]): readonly Surface[] {
  const joints = jointsOf(part).filter(({ of }) => ids.includes(ownerOf(of)))
  const kept = new Set(joints.flatMap(({ host, own }) => [host.piece, own.piece]))
  const { panels, pieces } = modelOf(part)
  return paper.filter(({ leaf, panel }) => {
    const at = panels[leaf]
    return at ? kept.has(pieces[at.piece]?.id ?? '') : ids.includes(ownerOf(panel))
  })
}

/** Pieces held over their slits, mm, their tabs straight: what goes through at 0. */
export function overSlits(
  { design, glued: ids, before, inHand }: Task,
  opening: number,
  held: number,
): Pick<Scene, 'paper' | 'ink'> {
  const through = [...before, ...ids]
  const lifted = Object.fromEntries(ids.map((id) => [id, held]))
  const paper = making(design, { opening, through, cut: [], straight: ids, lifted })
  return {
    paper: inHand.length === 0 ? paper : loosened(only(design, through), paper, ids),
    ink: ids.flatMap((id) =>
      glueAreas(design, through, id, opening).flatMap(({ leaf, slit }) =>
        inked(leaf, 'cut', slit, id, 'front'),
      ),
    ),
  }
}

/** The piece over its slits, and the way that it goes. */
export function threading(task: Task): Scene {
  const { opening = 150 } = task
  const over = overSlits(task, opening, HELD)
  const ends = (of: readonly Surface[]): Vec3 =>
    middle(of.flatMap(({ panel, points }) => (panel.endsWith('/tab') ? points : [])))
  const [from, to] = [ends(over.paper), ends(overSlits(task, opening, 0).paper)]
  return {
    ...over,
    stand: 'gutter',
    opening,
    over: [{ role: 'hand', points: [from, add(to, subtract(from, to), 0.12)] }],
    says: task.inHand.length > 0 ? says.heldOverLoose : says.heldOverSlits(angleText(opening, 0)),
  }
}

/** How far off the gutter it ends, mm. */
const SHORT = 1.5

/** Tape that would reach past the gutter, and out through the other page, ends there. */
function onLeft(one: Surface, opening: number): Surface {
  if (!one.tape) return one
  const half = (opening / 2) * RADIANS
  const out = one.points.map((p) => dot(p, [-Math.sin(half), 0, Math.cos(half)]) - SHORT)
  if (out.every((off) => off >= 0)) return one
  const { points } = clip<Vec3>(one.points, out, (p, q, t) => add(p, subtract(q, p), t))
  return { ...one, points, drawn: points.map(() => true) }
}

export function closing(task: Task): Scene {
  const { design, glued: ids, before, opening = 45 } = task
  const lying = ids.filter((id) => heldBy(design, id) === 'joints')
  const through = [...before, ...ids.filter((id) => !lying.includes(id))]
  const paper = making(design, { opening, through, cut: [], lying }).map((one) => onLeft(one, opening))
  return {
    paper,
    ink: paper
      .filter(({ panel }) => lying.some((id) => panel.startsWith(`${id}/`)) && /\/(tab|tape)$/.test(panel))
      .flatMap(({ leaf, points, panel }) => hatched(leaf, points, panel)),
    stand: 'left',
    opening,
    over: [{ role: 'hand', points: pagePath(design, Math.min(150, opening + 85), opening + 8, opening) }],
    says: says.closing,
  }
}

export function popping(task: Task): Scene {
  const { design, glued: ids, before, opening = 110 } = task
  const whole = only(design, [...before, ...ids])
  const set = (state: 'up' | 'down'): Design =>
    ids.reduce((one, id) => {
      const m = one.mechanisms.find((other) => other.id === id)
      const pops = m && kindOf(m).pops
      if (!pops) throw new RangeError(`${id} has one state only: there is nothing to pop`)
      return change(one, id, pops[state])
    }, whole)
  const down = set('down')
  const [low, high] = [poseAt(down, opening), poseAt(set('up'), opening)]
  return {
    paper: making(down, { opening, through: down.mechanisms.map(({ id }) => id), cut: [] }),
    ink: [],
    stand: 'gutter',
    opening,
    over: ids.flatMap((id) => {
      const ridge = ridgeOf(whole, id) ?? ''
      const [from, to] = [low.creases[ridge], high.creases[ridge]]
      const ghosts = ghostsOf(high.panels, id)
      return from && to
        ? [...ghosts, { role: 'hand' as const, points: pushed(from.end, to.end, 10) }]
        : ghosts
    }),
    says: says.popping(angleText(opening, 0)),
  }
}

export function taping({ design, glued: ids, opening = 120 }: Task): Scene {
  const paper = making(design, {
    opening,
    through: design.mechanisms.map(({ id }) => id),
    cut: [],
    taped: ids,
  })
  const tapes = paper.filter(({ tape }) => tape)
  // Each joint has two strips of it, one on either paper, under one name.
  const joints = tapes.filter(({ panel }, k) => tapes.findIndex((one) => one.panel === panel) === k)
  return {
    paper,
    ink: tapes.flatMap(({ leaf, points, panel }) => hatched(leaf, points, panel)),
    stand: 'gutter',
    opening,
    over: [],
    words: joints.map(({ points }) => ({ text: says.tape, at: middle(points.slice(1, 3)) })),
    says: says.taping(angleText(opening, 0)),
  }
}
