import type { Design, Making, Surface, Vec3 } from '../paper/index.ts'
import { foldsTogether, making, pieces, poseAt, SHUT } from '../paper/index.ts'
import type { Camera, Lens, Size, Stand } from './camera.ts'
import { lensFor, motionPoints, standing } from './camera.ts'
import type { Drawing, Mark, Point } from './marks.ts'
import { angleText } from './numbers.ts'
import type { InkLine } from './paper.ts'
import { paperMarks, shadowMarks } from './paper.ts'

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
 *   shut       shut, the strips inside, pressed
 *   open       standing open
 */
export const stepStates = [
  'flat',
  'folding',
  'cutting',
  'front',
  'back',
  'creased',
  'reversing',
  'shut',
  'open',
] as const
export type StepState = (typeof stepStates)[number]

export interface StepOptions {
  /** Degrees; for `open` (default 96) and `reversing` (default 110). */
  readonly opening?: number
  /** Mechanisms that the step is about; default all on the gutter. */
  readonly of?: readonly string[]
  /** Height of the type, px; default 15. */
  readonly text?: number
}

/** All steps are seen from the same place. */
export const STEP_CAMERA: Camera = { turn: -26, tilt: 50 }

const PADDING = 12
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
  for (const { kind, points, of } of pieces(design)[0]?.lines ?? []) {
    if (of === 'page' || !keep(of, kind)) continue
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

/** The way of the right page's edge over the table, the left page lying still; in the card's frame at LIFTED. */
function pagePath(design: Design, from: number, to: number): readonly Vec3[] {
  const { width, height } = design.card
  // The turn that undoes the stand is the other stand's.
  const back = standing('right', LIFTED)
  return Array.from({ length: 13 }, (_, k) => {
    const opening = from + ((to - from) * k) / 12
    const half = (opening / 2) * RADIANS
    return back(standing('left', opening)([width * Math.sin(half), height * 0.5, width * Math.cos(half)]))
  })
}

/** The way of a finger that pushes from behind: it comes from further back and ends a little beyond. */
function pushed(from: Vec3, to: Vec3): readonly Vec3[] {
  const way: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const long = Math.hypot(...way) || 1
  const at = (reach: number): Vec3 =>
    [0, 1, 2].map((k) => (to[k] as number) + (reach * (way[k] as number)) / long) as Vec3
  return [at(-Math.max(1.5 * long, 42)), at(0.12 * long)]
}

const middle = (points: readonly Vec3[]): Vec3 =>
  [0, 1, 2].map((k) => points.reduce((sum, p) => sum + (p[k] as number), 0) / points.length) as Vec3

/** What a step is about: the strips on the gutter that are cut or pushed. */
interface Task {
  readonly design: Design
  readonly cut: readonly string[]
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

function cutting(task: Task): Scene {
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

function reversing({ design, cut, opening = 110 }: Task): Scene {
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
  shut,
  open,
}

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

function sceneMarks(scene: Scene, design: Design, size: Size, scale: number, centre: number): Mark[] {
  const { paper, ink, stand, opening, over } = scene
  const place = standing(stand, opening)
  const points = paper.flatMap((one) => one.points.map(place))
  const lens: Lens = lensFor({
    card: design.card,
    camera: STEP_CAMERA,
    size,
    points,
    padding: PADDING,
    scale,
  })
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
  return marks
}

/** The figure of one making step, in a box of `size` px: all from the model, from one place, in one scale. */
export function stepFigure(design: Design, state: StepState, size: Size, options: StepOptions = {}): Drawing {
  const { text = 15 } = options
  const scale = commonScale(design, size)
  const box = [0, 0, size.width, size.height] as const
  const onGutter = design.mechanisms.filter((m) => m.on === 'gutter').map(({ id }) => id)
  const { of = onGutter, opening } = options
  const task: Task = { design, cut: onGutter.filter((id) => of.includes(id)), opening }
  if (state !== 'creased') {
    const scene = scenes[state](task)
    return {
      box,
      unit: 'px',
      marks: sceneMarks(scene, design, size, scale, size.width / 2),
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
      ...sceneMarks(scene, design, room, scale * 0.86, centre),
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
