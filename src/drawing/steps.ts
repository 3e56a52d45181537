import type { Design, GuestLine, Making, Surface, Vec3 } from '../paper/index.ts'
import {
  change,
  foldsTogether,
  glueAreas,
  guestLines,
  heldBy,
  kindOf,
  loose,
  making,
  pieces,
  poseAt,
  SHUT,
} from '../paper/index.ts'
import type { Camera, Lens, Size, Stand } from './camera.ts'
import { lensFor, motionPoints, standing } from './camera.ts'
import { hatch } from './hatch.ts'
import type { Drawing, Mark, Point } from './marks.ts'
import { angleText } from './numbers.ts'
import type { InkLine } from './paper.ts'
import { paperMarks, shadowMarks } from './paper.ts'
import type { Wish } from './words.ts'
import { placeWords } from './words.ts'

/**
 * The states that making steps speak of.
 *
 *   flat       the sheet lies open, its lines drawn
 *   folding    one page is lifted over to the other
 *   cutting    shut with the lines outside; the slits are cut through both layers
 *   front      the strips folded over to the front, both layers together
 *   back       the card turned over, the strips folded the other way
 *   creased    front and back side by side
 *   reversing  half open; one strip still lies in the pages and is being pushed through
 *   piece      what is glued on, cut out, flat on the table
 *   folded     the same, folded over at its ridge, or its tabs bent
 *   glued      the card open, the piece on its place: folded and lying on the left page, or held over it
 *   closing    the right page comes over on the piece
 *   popping    the piece still lies down in the fold and is being pushed up
 *   taping     as open, with tape along the joints
 *   shut       shut, the strips inside, pressed
 *   open       standing open
 *
 * Strips on other folds than the gutter are cut, creased and reversed on the standing card, their hosts through.
 */
export const stepStates = [
  'flat',
  'folding',
  'cutting',
  'front',
  'back',
  'creased',
  'reversing',
  'piece',
  'folded',
  'glued',
  'closing',
  'popping',
  'taping',
  'shut',
  'open',
] as const
export type StepState = (typeof stepStates)[number]

export interface StepOptions {
  /**
   * Degrees; for `open` (default 96), `reversing` and `popping` (110), `glued` (150), `closing` (45), `taping`
   * (120), and for strips that are cut or creased on the standing card (60).
   */
  readonly opening?: number
  /** Mechanisms that the step is about; default all on the gutter, for glued pieces all there are. */
  readonly of?: readonly string[]
  /** Height of the type, px; default 15. */
  readonly text?: number
}

/** All steps are seen from the same place. */
export const STEP_CAMERA: Camera = { turn: -26, tilt: 50 }
const STEP_EYE: Vec3 = [-0.28, -0.58, 0.77]

const PADDING = 12
/** A hair more than fits by the corners of the paper alone: the standing card's own scale is such. */
const FITTED = 1.12
/** How far a strip is folded over: far enough to look folded, not so far that it looks glued down. */
const OVER = 152
const LIFTED = 62
const RADIANS = Math.PI / 180

/** One state put in place. */
interface Scene {
  readonly paper: readonly Surface[]
  readonly ink: readonly InkLine[]
  readonly stand: Stand
  readonly opening: number
  /** Arrows and ghosts over the paper, in the card's frame (drawn as lines in space). */
  readonly over: readonly {
    readonly role: 'hand' | 'ghost'
    readonly points: readonly Vec3[]
    readonly closed?: boolean
  }[]
  /** Words beside a point of the card's frame. */
  readonly words?: readonly { readonly text: string; readonly at: Vec3 }[]
  readonly says: string
}

/** The lines of the flat sheet, put on the two pages. `keep` chooses by what they belong to. */
function inkOn(design: Design, opening: number, keep: (of: string, kind: string) => boolean): InkLine[] {
  const half = (Math.max(SHUT, opening) / 2) * RADIANS
  const lift = (x: number, y: number, side: number): Vec3 => [
    side * Math.abs(x) * Math.sin(half),
    y,
    Math.abs(x) * Math.cos(half),
  ]
  const lines: InkLine[] = []
  for (const { kind, points: corners, closed = false, of } of pieces(design)[0]?.lines ?? []) {
    if (of === 'page' || !keep(of, kind)) continue
    const points = closed ? [...corners, ...corners.slice(0, 1)] : corners
    for (let k = 0; k + 1 < points.length; k++) {
      const [a, b] = [points[k], points[k + 1]] as [readonly [number, number], readonly [number, number]]
      // A line across the gutter is two lines, one on each page.
      const t = a[0] * b[0] < 0 ? a[0] / (a[0] - b[0]) : null
      const cut: readonly [number, number] | null = t === null ? null : [0, a[1] + t * (b[1] - a[1])]
      for (const [p, q] of cut ? [[a, cut] as const, [cut, b] as const] : [[a, b] as const]) {
        const side = p[0] + q[0] < 0 ? -1 : 1
        lines.push({
          sheet: side < 0 ? 0 : 1,
          role: kind,
          points: [lift(p[0], p[1], side), lift(q[0], q[1], side)],
          face: 'front',
          of,
        })
      }
    }
  }
  return lines
}

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

/** The way of the right page's edge over the table, the left page lying still; in the card's frame at an opening. */
function pagePath(design: Design, from: number, to: number, at = LIFTED): readonly Vec3[] {
  const { width, height } = design.card
  // The turn that undoes the stand is the other stand's.
  const back = standing('right', at)
  return Array.from({ length: 13 }, (_, k) => {
    const opening = from + ((to - from) * k) / 12
    const half = (opening / 2) * RADIANS
    return back(standing('left', opening)([width * Math.sin(half), height * 0.5, width * Math.cos(half)]))
  })
}

/** The way of a finger that pushes from behind: it comes from further back and ends a little beyond. */
function pushed(from: Vec3, to: Vec3, least = 42): readonly Vec3[] {
  const way: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const long = Math.hypot(...way) || 1
  const at = (reach: number): Vec3 =>
    [0, 1, 2].map((k) => (to[k] as number) + (reach * (way[k] as number)) / long) as Vec3
  return [at(-Math.max(1.5 * long, least)), at(0.12 * long)]
}

const middle = (points: readonly Vec3[]): Vec3 =>
  [0, 1, 2].map((k) => points.reduce((sum, p) => sum + (p[k] as number), 0) / points.length) as Vec3

/** What a step is about. */
interface Task {
  readonly design: Design
  /** The strips on the gutter that are cut or pushed. */
  readonly cut: readonly string[]
  /** The strips on other folds. */
  readonly guests: readonly string[]
  /** The glued mechanisms. */
  readonly glued: readonly string[]
  /** What stands before all of `guests` and `glued` in the design. */
  readonly before: readonly string[]
  readonly opening: number | undefined
}

/** Lines of the strips that will be folded, not those that are cut. */
const foldsOf =
  ({ cut }: Task) =>
  (of: string, kind: string): boolean =>
    kind !== 'cut' && cut.some((id) => of.startsWith(`${id}/`))

function flat({ design }: Task): Scene {
  return {
    paper: making(design, { opening: 180, through: [], cut: [] }),
    ink: inkOn(design, 180, () => true),
    stand: 'gutter',
    opening: 180,
    over: [],
    says: 'The sheet lies flat with its lines drawn.',
  }
}

function folding({ design }: Task): Scene {
  return {
    paper: making(design, { opening: LIFTED, through: [], cut: [] }),
    ink: inkOn(design, LIFTED, () => true),
    stand: 'left',
    opening: LIFTED,
    over: [{ role: 'hand', points: pagePath(design, 165, LIFTED + 8) }],
    says: 'The right page is lifted over to the left one.',
  }
}

/** A straight line as ink on a sheet. */
const inked = (
  sheet: number,
  role: InkLine['role'],
  points: readonly Vec3[],
  of: string,
  face: InkLine['face'] = 'both',
): InkLine[] => points.slice(1).map((p, k) => ({ sheet, role, points: [points[k] as Vec3, p], face, of }))

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]
const plus = (a: Vec3, b: Vec3, k = 1): Vec3 => [a[0] + k * b[0], a[1] + k * b[1], a[2] + k * b[2]]
const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
const unit = (a: Vec3): Vec3 => {
  const long = Math.hypot(...a) || 1
  return [a[0] / long, a[1] / long, a[2] / long]
}

/** Slanting lines that fill an outline in space, `step` mm apart, as ink on its sheet. */
function hatched(sheet: number, outline: readonly Vec3[], of: string, step = 4.5): InkLine[] {
  const [a, b, c] = outline
  if (!a || !b || !c) return []
  const u = unit(minus(b, a))
  const off = minus(c, a)
  const v = unit(plus(off, u, -dot(off, u)))
  const flat = outline.map((p): Point => [dot(minus(p, a), u), dot(minus(p, a), v)])
  return hatch(flat, step).flatMap((run) =>
    inked(
      sheet,
      'glue',
      run.map(([x, y]) => plus(plus(a, u, x), v, y)),
      of,
    ),
  )
}

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
    .map(({ sheet, points }) => ({
      front: paper.find((one) => one.sheet === sheet)?.front ?? [0, 0, 1],
      points,
    }))
  const facing = ({ front }: { front: Vec3 }): number => Math.abs(dot(front, STEP_EYE))
  const [best] = [...sides].sort((a, b) => facing(b) - facing(a))
  const [foot, next] = best?.points ?? []
  if (!best || !foot || !next) return []
  const [end] = best.points.slice(-1)
  const away = unit(minus(foot, end ?? next))
  return [plus(foot, away, 20), plus(foot, away, 1)]
}

function nestedCutting(task: Task): Scene {
  const { state, lines } = standingHosts(task)
  const paper = making(task.design, state)
  return {
    paper,
    ink: lines.flatMap(({ sheet, kind, points, of }) => inked(sheet, kind, points, of)),
    stand: 'gutter',
    opening: state.opening,
    over: task.guests.map((id) => ({ role: 'hand', points: bladePath(paper, lines, id) })),
    says: `The card is open ${angleText(state.opening, 0)}; each slit is cut from its fold through both layers.`,
  }
}

function nestedCreased(task: Task): Scene {
  const { state, lines } = standingHosts(task)
  return {
    paper: making(task.design, state),
    ink: lines.flatMap(({ sheet, kind, points, of }) => inked(sheet, kind, points, of)),
    stand: 'gutter',
    opening: state.opening,
    over: [],
    says: `The card is open ${angleText(state.opening, 0)}; the strips are cut and their fold lines creased both ways.`,
  }
}

function nestedReversing({ design, guests, before, opening = 110 }: Task): Scene {
  const popped = poseAt(only(design, [...before, ...guests]), opening)
  return {
    paper: making(design, { opening, through: before, cut: guests }),
    ink: [],
    stand: 'gutter',
    opening,
    over: guests.flatMap((id) => {
      const m = design.mechanisms.find((one) => one.id === id)
      const host = m && popped.creases[m.on]
      const ridge = popped.creases[`${id}/ridge`]
      const ghosts = ghostsOf(popped.panels, id)
      if (!m || !host || !ridge) return ghosts
      const [from, to] = kindOf(m).build(m).span
      const along = unit(minus(host.end, host.start))
      const foot = plus(host.start, along, (from + to) / 2)
      return [
        ...ghosts,
        { role: 'hand' as const, points: pushed(foot, middle([ridge.start, ridge.end]), 26) },
      ]
    }),
    says: `The card is open ${angleText(opening, 0)}; strips that still lie in their hosts are pushed through.`,
  }
}

/** A part of the design. */
const only = (design: Design, ids: readonly string[]): Design => ({
  ...design,
  mechanisms: design.mechanisms.filter(({ id }) => ids.includes(id)),
})

/** The outlines of a mechanism's own panels as they would stand. */
const ghostsOf = (panels: Readonly<Record<string, readonly Vec3[]>>, id: string) =>
  Object.entries(panels)
    .filter(([name]) => name.startsWith(`${id}/`))
    .map(([, points]) => ({ role: 'ghost' as const, points: points.map((p): Vec3 => [...p]), closed: true }))

/** Mechanisms' own pieces on the table, in the card's frame where it lies flat. */
function onTable(task: Task, folded: boolean): Scene {
  const [id = '', ...others] = task.glued
  const { paper, lines, path } = loose(task.design, folded ? id : task.glued, folded)
  const tabs = paper.filter(({ panel }) => folded && panel.endsWith('/tab'))
  return {
    paper,
    ink: [
      ...lines.flatMap(({ sheet, kind, points, closed, of }) => [
        ...inked(sheet, kind, closed ? [...points, ...points.slice(0, 1)] : points, of),
        ...(kind === 'glue' && closed ? hatched(sheet, points, of) : []),
      ]),
      ...tabs.flatMap(({ sheet, points, panel }) => hatched(sheet, points, panel)),
    ],
    stand: 'gutter',
    opening: 180,
    over: path.length > 0 ? [{ role: 'hand', points: path }] : [],
    says: folded
      ? `The piece of ${id} is folded and its tabs are bent.`
      : others.length > 0
        ? `The pieces of ${[id, ...others].join(', ')} are cut out and lie flat, with their fold lines and their glue areas.`
        : `The piece of ${id} is cut out and lies flat, with its fold lines and its glue areas.`,
  }
}

/** How far a piece is held off its place, mm. */
const HELD = 32

/** The piece on its place, not yet fixed on the other side. */
function glued(task: Task): Scene {
  const { design, glued: ids, before, opening = 150 } = task
  const how = new Map(ids.map((id) => [id, heldBy(design, id)]))
  const lying = ids.filter((id) => how.get(id) === 'joints')
  const lifted = ids.filter((id) => how.get(id) !== 'joints')
  const through = [...before, ...lifted]
  const state: Making = { opening, through, cut: [], lying }
  const paper = making(design, { ...state, lifted: Object.fromEntries(lifted.map((id) => [id, HELD])) })
  const there = making(design, state)
  const held = paper.filter(({ panel }) => lying.some((id) => panel.startsWith(`${id}/`)))
  const arrows = lifted.flatMap((id) => {
    const moved = paper.flatMap((one, k) => {
      const home = there[k]
      const [p, q] = [one.points[0], home?.points[0]]
      return p && q && one.panel.startsWith(`${id}/`) && Math.hypot(...minus(p, q)) > 1 ? [{ one, home }] : []
    })
    const from = middle(moved.flatMap(({ one }) => one.points))
    const to = middle(moved.flatMap(({ home }) => home?.points ?? []))
    return moved.length > 0
      ? [{ role: 'hand' as const, points: [from, plus(to, minus(from, to), 0.12)] }]
      : []
  })
  return {
    paper,
    ink: [
      ...held
        .filter(({ panel }) => panel.endsWith('/tab') || panel.endsWith('/tape'))
        .flatMap(({ sheet, points, panel }) => hatched(sheet, points, panel)),
      ...lifted
        .filter((id) => how.get(id) === 'face')
        .flatMap((id) =>
          glueAreas(design, [...before, ...lifted, ...lying], id, opening).flatMap(
            ({ sheet, points, closed }) =>
              closed
                ? [
                    ...inked(sheet, 'glue', [...points, ...points.slice(0, 1)], id),
                    ...hatched(sheet, points, id),
                  ]
                : [],
          ),
        ),
    ],
    stand: 'gutter',
    opening,
    over: arrows,
    says:
      lying.length > 0
        ? `The card is open ${angleText(opening, 0)}; the folded piece lies on the left page, its left joint on its line.`
        : `The card is open ${angleText(opening, 0)}; the piece is held over its place.`,
  }
}

function closing(task: Task): Scene {
  const { design, glued: ids, before, opening = 45 } = task
  const lying = ids.filter((id) => heldBy(design, id) === 'joints')
  const through = [...before, ...ids.filter((id) => !lying.includes(id))]
  const paper = making(design, { opening, through, cut: [], lying })
  return {
    paper,
    ink: paper
      .filter(({ panel }) => lying.some((id) => panel === `${id}/right/tab` || panel === `${id}/right/tape`))
      .flatMap(({ sheet, points, panel }) => hatched(sheet, points, panel)),
    stand: 'left',
    opening,
    over: [{ role: 'hand', points: pagePath(design, Math.min(150, opening + 85), opening + 8, opening) }],
    says: 'The right page comes over and is pressed on the piece.',
  }
}

function popping(task: Task): Scene {
  const { design, glued: ids, before, opening = 110 } = task
  const whole = only(design, [...before, ...ids])
  const set = (pop: string): Design =>
    ids.reduce((one, id) => {
      const m = one.mechanisms.find((other) => other.id === id)
      if (!m || !kindOf(m).choices?.some(({ name }) => name === 'pop'))
        throw new RangeError(`${id} has one state only: there is nothing to pop`)
      return change(one, id, { pop })
    }, whole)
  const down = set('down')
  const [low, high] = [poseAt(down, opening), poseAt(set('up'), opening)]
  return {
    paper: making(down, { opening, through: down.mechanisms.map(({ id }) => id), cut: [] }),
    ink: [],
    stand: 'gutter',
    opening,
    over: ids.flatMap((id) => {
      const [from, to] = [low.creases[`${id}/ridge`], high.creases[`${id}/ridge`]]
      const ghosts = ghostsOf(high.panels, id)
      return from && to
        ? [...ghosts, { role: 'hand' as const, points: pushed(from.end, to.end, 10) }]
        : ghosts
    }),
    says: `The card is open ${angleText(opening, 0)}; the piece still lies down in the fold, and its ridge is pushed up.`,
  }
}

function taping({ design, glued: ids, opening = 120 }: Task): Scene {
  const paper = making(design, {
    opening,
    through: design.mechanisms.map(({ id }) => id),
    cut: [],
    taped: ids,
  })
  const tapes = paper.filter(({ tape, layer }) => tape && layer === 1)
  return {
    paper,
    ink: paper
      .filter(({ tape }) => tape)
      .flatMap(({ sheet, points, panel }) => hatched(sheet, points, panel)),
    stand: 'gutter',
    opening,
    over: [],
    words: tapes.slice(0, 2).map(({ points }) => ({ text: 'tape', at: middle(points.slice(1, 3)) })),
    says: `The card stands open ${angleText(opening, 0)}, with tape along the whole of every joint.`,
  }
}

function cutting(task: Task): Scene {
  if (task.cut.length === 0 && task.guests.length > 0) return nestedCutting(task)
  const { design, cut } = task
  const [slit] = inkOn(design, 0, (of, kind) => kind === 'cut' && cut.includes(of)).filter(
    ({ sheet }) => sheet === 1,
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
    says: 'The card is shut with the lines outside, and cut from the fold through both layers.',
  }
}

/** Folded over to the front, or with the card turned over to the back. */
function folded(task: Task, side: 'front' | 'back'): Scene {
  const { design, cut } = task
  const over = side === 'front' ? OVER : -OVER
  const together = cut.filter((id) => foldsTogether(design, id))
  const lying: Making = { opening: 0, through: [], cut }
  return {
    paper: insideOut(
      making(design, { ...lying, folds: Object.fromEntries(together.map((id) => [id, over])) }),
    ),
    ink: inkOn(design, 0, foldsOf(task)),
    stand: side === 'front' ? 'left' : 'right',
    opening: SHUT,
    over: together.map((id) => ({ role: 'hand', points: foldPath(design, lying, id, over) })),
    says:
      side === 'front'
        ? 'The card is shut; both layers of each strip are folded over to the front.'
        : 'The card is turned over; both layers of each strip are folded the other way.',
  }
}

function reversing(task: Task): Scene {
  if (task.cut.length === 0 && task.guests.length > 0) return nestedReversing(task)
  const { design, cut, opening = 110 } = task
  const paper = making(design, { opening, through: [], cut })
  const popped = poseAt(design, opening)
  const [first] = cut
  const outlines = ['left', 'right'].flatMap((side) => {
    const points = popped.panels[`${first}/${side}`]
    return points ? [{ role: 'ghost' as const, points, closed: true }] : []
  })
  const ridge = popped.creases[`${first}/ridge`]
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
    says: `The card is open ${angleText(opening, 0)}; a strip that still lies in the pages is pushed through to the inside.`,
  }
}

function shut({ design }: Task): Scene {
  const { width, height } = design.card
  const over = (z: number): Vec3 => [z, height * 0.5, width * 0.45]
  return {
    paper: making(design, { opening: 0, through: design.mechanisms.map(({ id }) => id), cut: [] }),
    ink: [],
    stand: 'left',
    opening: SHUT,
    over: [{ role: 'hand', points: [over(0.42 * width), over(4)] }],
    says: 'The card is shut and pressed.',
  }
}

function open({ design, opening = 96 }: Task): Scene {
  return {
    paper: making(design, { opening, through: design.mechanisms.map(({ id }) => id), cut: [] }),
    ink: [],
    stand: 'gutter',
    opening,
    over: [],
    says: `The card stands open ${angleText(opening, 0)}.`,
  }
}

const scenes: Readonly<Record<Exclude<StepState, 'creased'>, (task: Task) => Scene>> = {
  flat,
  folding,
  cutting,
  front: (task) => folded(task, 'front'),
  back: (task) => folded(task, 'back'),
  reversing,
  piece: (task) => onTable(task, false),
  folded: (task) => onTable(task, true),
  glued,
  closing,
  popping,
  taping,
  shut,
  open,
}

/** States that are about pieces of their own card. */
const GLUED: ReadonlySet<StepState> = new Set(['piece', 'folded', 'glued', 'closing', 'popping', 'taping'])

/** One scale for all steps of a design: that of the state which needs most room. */
function commonScale(design: Design, size: Size): number {
  const room = (stand: Stand, openings: readonly number[]) =>
    lensFor({
      card: design.card,
      camera: STEP_CAMERA,
      size,
      points: motionPoints(design.card, stand, openings),
      padding: PADDING,
    }).scale
  return Math.min(room('gutter', [180]), room('gutter', [96]), room('left', [LIFTED]))
}

function sceneMarks(
  scene: Scene,
  design: Design,
  size: Size,
  { scale, centre, text }: { scale: number; centre: number; text: number },
): Mark[] {
  const { paper, ink, stand, opening, over, words = [] } = scene
  const place = standing(stand, opening)
  const points = paper.flatMap((one) => one.points.map(place))
  const framing = { card: design.card, camera: STEP_CAMERA, size, points, padding: PADDING }
  // One scale for all states; a piece too large for it is drawn as large as it goes.
  const lens: Lens = lensFor({ ...framing, scale: Math.min(scale, lensFor(framing).scale * FITTED) })
  const shift = centre - size.width / 2
  const shifted: Lens = {
    ...lens,
    toScreen: (p) => {
      const [x, y] = lens.toScreen(p)
      return [x + shift, y]
    },
  }
  const marks: Mark[] = [
    ...shadowMarks(
      paper.map((one) => one.points.map(place)),
      shifted,
    ),
    ...paperMarks(design, paper, ink, shifted, place),
  ]
  for (const { role, points: path, closed = false } of over) {
    if (path.length < 2) continue
    const run: Point[] = path.map((p) => shifted.toScreen(place(p)))
    const arrow = role === 'hand' ? { arrow: 'end' as const } : {}
    for (const one of ['halo', role] as const)
      marks.push({ mark: 'path', runs: [run], closed, role: one, ...arrow })
  }
  const wishes = words.map(
    ({ text: said, at }): Wish => ({
      text: said,
      role: 'hand',
      size: text,
      at: shifted.toScreen(place(at)),
      gap: 6,
      sides: ['below', 'right', 'left'],
    }),
  )
  marks.push(...placeWords(wishes, [0, 0, size.width, size.height]))
  return marks
}

/** The figure of one making step, in a box of `size` px: all from the model, from one place, in one scale. */
export function stepFigure(design: Design, state: StepState, size: Size, options: StepOptions = {}): Drawing {
  const { text = 15 } = options
  const scale = commonScale(design, size)
  const box = [0, 0, size.width, size.height] as const
  const onGutter = design.mechanisms.filter((m) => m.on === 'gutter').map(({ id }) => id)
  const { of, opening } = options
  const own = design.mechanisms.filter(({ id }) => heldBy(design, id) !== null).map(({ id }) => id)
  const meant = (ids: readonly string[]): readonly string[] =>
    of ? ids.filter((id) => of.includes(id)) : ids
  const cut = meant(onGutter.filter((id) => !own.includes(id)))
  const guests = of
    ? design.mechanisms
        .map(({ id }) => id)
        .filter((id) => of.includes(id) && !cut.includes(id) && !own.includes(id))
    : []
  const glued = meant(own)
  if (GLUED.has(state) && glued.length === 0)
    throw new RangeError(`a step that shows ${state} needs a mechanism of its own card, and there is none`)
  const first = design.mechanisms.findIndex(({ id }) => guests.includes(id) || glued.includes(id))
  const before = design.mechanisms.slice(0, Math.max(0, first)).map(({ id }) => id)
  const task: Task = { design, cut, guests, glued, before, opening }
  const nested = state === 'creased' && cut.length === 0 && guests.length > 0
  if (state !== 'creased' || nested) {
    const scene = state === 'creased' ? nestedCreased(task) : scenes[state](task)
    return {
      box,
      unit: 'px',
      marks: sceneMarks(scene, design, size, { scale, centre: size.width / 2, text }),
      says: scene.says,
    }
  }
  const room: Size = { width: size.width, height: size.height - text * 1.5 }
  const halves = [
    { scene: scenes.front(task), centre: size.width * 0.27, words: 'to the front' },
    { scene: scenes.back(task), centre: size.width * 0.73, words: 'to the back' },
  ]
  return {
    box,
    unit: 'px',
    marks: halves.flatMap(({ scene, centre, words }): Mark[] => [
      ...sceneMarks(scene, design, room, { scale: scale * 0.86, centre, text }),
      {
        mark: 'word',
        at: [centre, size.height - text * 0.5],
        text: words,
        role: 'note',
        anchor: 'middle',
        size: text,
      },
    ]),
    says: 'The card is shut; both layers of each strip are folded over to the front, then to the back.',
  }
}
