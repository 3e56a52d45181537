import * as says from '../../../content/words/drawing/steps.ts'
import { heldBy } from '../../making/gluing.ts'
import type { Design, Flat, Vec3 } from '../../paper/index.ts'
import { pagePoint } from '../../paper/index.ts'
import type { Wish } from '../pen/lettering.ts'
import { placeWords } from '../pen/lettering.ts'
import type { Drawing, Mark, Point } from '../pen/marks.ts'
import type { Camera, Lens, Size, Stand } from '../view/camera.ts'
import { lensFor, motionPoints, standing } from '../view/camera.ts'
import { lampFor } from '../view/light.ts'
import { paperMarks } from '../view/paper.ts'
import { shadowMarks } from '../view/shadows.ts'
import { inInk } from './ink.ts'
import type { Scene, Task } from './scene.ts'
import { LIFTED, STEP_CAMERA } from './scene.ts'
import {
  backing,
  covering,
  cutting,
  flat,
  folded,
  folding,
  inCover,
  open,
  pressed,
  reversing,
  ridged,
  shut,
} from './scenes-cut.ts'
import { astride, closing, glued, onTable, popping, saddled, taping, threading } from './scenes-glued.ts'
import { nestedCreased } from './scenes-nested.ts'

/**
 * The states that making steps speak of.
 *
 *   flat       the sheet lies open, its lines drawn
 *   coloured   the same with its picture under the lines
 *   folding    one page is lifted over to the other
 *   cutting    shut with the lines outside; the slits are cut through both layers
 *   front      the strips folded over to the front, both layers together
 *   back       the card turned over, the strips folded the other way
 *   creased    front and back side by side
 *   reversing  half open; one strip still lies in the pages and is being pushed through
 *   piece      what is glued on, cut out, flat on the table
 *   folded     the same, folded over at its ridge, or its tabs bent
 *   glued      the card open, the piece on its place: folded and lying on the left page, or held over it
 *   threading  the card open, the piece held over its slits, its tabs straight
 *   astride    a fold pinched, the piece held off the outside of it
 *   saddled    the same, the piece on it, pressed
 *   closing    the right page comes over on the piece
 *   popping    the piece still lies down in the fold and is being pushed up
 *   taping     as open, with tape along the joints
 *   shut       nearly shut, the upper page coming down
 *   pressed    shut, the fold rubbed down from its middle to its ends
 *   ridged     folded the other way: the gutter is a ridge
 *   backing    from behind, on its edges like a tent: strips of paper over the gutter
 *   open       standing open
 *   covering   held over its open cover, whose rim is hatched: glued on last
 *
 * Strips on other folds than the gutter are cut, creased and reversed on the standing card, their hosts through.
 */
export const stepStates = [
  'flat',
  'coloured',
  'folding',
  'cutting',
  'front',
  'back',
  'creased',
  'reversing',
  'piece',
  'folded',
  'glued',
  'threading',
  'astride',
  'saddled',
  'closing',
  'popping',
  'taping',
  'shut',
  'pressed',
  'ridged',
  'backing',
  'open',
  'covering',
] as const

export type StepState = (typeof stepStates)[number]

export interface StepOptions {
  /**
   * Degrees; for `open` (default 96), `reversing` and `popping` (110), `glued` and `threading` (150), `closing` (45), `taping`
   * (120), `covering` (150), and for strips that are cut or creased on the standing card (60).
   */
  readonly opening?: number
  /** Mechanisms that the step is about; default all on the gutter, for glued pieces all there are. */
  readonly of?: readonly string[]
  /** What stands already; default all that come before those in the design. With it, nothing else is shown. */
  readonly there?: readonly string[]
  /** What pieces are threaded through before it is set up: it is drawn without what is under it. */
  readonly inHand?: readonly string[]
  /** A dot drawn by hand on the right page and its twin on the left, for `flat` and `open`: mm from the gutter and from the reader's end. */
  readonly dot?: Flat
  /** Height of the type, px; default 15. */
  readonly text?: number
  /** Pages stay plain in every state: of a small picture little is left but what it points at. */
  readonly plain?: boolean
  /** From where it is seen; default the place of all steps. */
  readonly camera?: Camera | undefined
  /** An `open` card has its cover on, if it has one: it is seen through every hole. */
  readonly covered?: boolean
  /** How an `open` card rests; default on its gutter. */
  readonly stand?: Stand | undefined
  /** What is worked on fills the picture, where that is small. */
  readonly near?: boolean
}

const PADDING = 12

/** How large a dot is that is drawn by hand, px from its middle. */
const DOT = 4

/** A hair more than fits by the corners of the paper alone: the standing card's own scale is such. */
const FITTED = 1.12

/** What is worked on is drawn so many times as large as the card, at most. */
const LARGEST = 3

/** And what is looked at closely. */
const CLOSEST = 5

/** Round what is looked at closely: this share of the picture's height. */
const CLOSE = 0.2

const scenes: Readonly<Record<Exclude<StepState, 'creased'>, (task: Task) => Scene>> = {
  flat,
  coloured: flat,
  folding,
  cutting,
  front: (task) => folded(task, 'front'),
  back: (task) => folded(task, 'back'),
  reversing,
  piece: (task) => onTable(task, false),
  folded: (task) => onTable(task, true),
  glued,
  threading,
  astride,
  saddled,
  closing,
  popping,
  taping,
  shut,
  pressed,
  ridged,
  backing,
  open,
  covering,
}

/** States in which the pages show what is drawn on them. In all others a line or a place on them is what counts. */
const PICTURED: ReadonlySet<StepState> = new Set(['coloured', 'open', 'covering'])

export const isPictured = (state: StepState): boolean => PICTURED.has(state)

/** States in which strips that are cut from the card are nothing yet but a part of it. */
const UNPAINTED: ReadonlySet<StepState> = new Set(['cutting', 'front', 'back', 'creased', 'reversing'])

/** Their paper there: tinted, so that they are told from the card, and never a hole's white or black. */
const TINT = 'heron'

/** States that are about pieces of their own card. */
const GLUED: ReadonlySet<StepState> = new Set([
  'piece',
  'folded',
  'glued',
  'threading',
  'astride',
  'saddled',
  'closing',
  'popping',
  'taping',
])

/** One scale for all steps of a design: that of the state which needs most room. */
export function commonScale(design: Design, size: Size): number {
  const room = (stand: Stand, openings: readonly number[]) =>
    lensFor({
      card: design.card,
      camera: STEP_CAMERA,
      size,
      points: motionPoints(design.card, (opening) => standing(stand, opening), openings),
      padding: PADDING,
    }).scale
  return Math.min(room('gutter', [180]), room('gutter', [96]), room('left', [LIFTED]))
}

/** How a scene is put on the screen. */
interface Framed {
  /** Pixels per mm. */
  readonly scale: number
  /** Its middle, px from the left. */
  readonly centre: number
  readonly text: number
  /** Whether the pages show what is drawn on them. */
  readonly pictured: boolean
  /** What must be in the picture, in the table's frame; all that is there unless said. */
  readonly frame?: readonly Vec3[]
  /** From where it is seen, if not from where all steps are. */
  readonly camera?: Camera | undefined
  /** What is small fills the picture, and the rest of the card goes beyond its frame. */
  readonly near?: boolean
  /** While it moves no shadows fall on paper, and those on the table are plain. */
  readonly quick?: boolean
}

/** The marks of a scene, from the place from which all steps are seen. */
export function sceneMarks(
  scene: Scene,
  design: Design,
  size: Size,
  { scale, centre, text, pictured, frame, camera, near = false, quick = false }: Framed,
): Mark[] {
  const { paper, ink, stand, opening, over, words = [], dots = [], cutsNow = false } = scene
  const place = standing(stand, opening)
  const about = near ? scene.about : undefined
  const whole = [
    ...paper.flatMap((one) => one.points),
    ...(scene.fills ? over.flatMap(({ points }) => points) : []),
  ]
  const points = frame ?? (about ?? whole).map(place)
  const padding = about ? CLOSE * Math.min(size.width, size.height) : PADDING
  const framing = { card: design.card, camera: camera ?? STEP_CAMERA, size, points, padding, stand }
  // One scale for all states; what is too large for it is drawn as large as it goes.
  const fitted = !frame && !camera && paper.some(({ panel }) => panel.startsWith('page/')) ? FITTED : 1
  const most = about
    ? (scene.closest ?? CLOSEST) * scale
    : scene.fills
      ? LARGEST * scale
      : camera
        ? Number.POSITIVE_INFINITY
        : scale
  const lens: Lens = lensFor({
    ...framing,
    scale: Math.min(most, lensFor(framing).scale * (about ? 1 : fitted)),
  })
  const shifted = movedLens(lens, centre - size.width / 2)
  const lamp = lampFor(shifted, stand)
  const marks: Mark[] = [
    ...shadowMarks(
      paper.map((one) => one.points.map(place)),
      shifted,
      lamp,
      !quick,
    ),
    ...inInk(
      paperMarks(design, paper, ink, shifted, place, {
        ...{ lamp, shadows: quick ? 'none' : 'hard', bare: !pictured },
      }),
      cutsNow,
    ),
  ]
  for (const at of dots)
    marks.push({ mark: 'dot', at: shifted.toScreen(place(at)), radius: DOT, role: 'dimension' })
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
  // Words lie on the pages or beside the card rather than on what they speak of.
  const shapes = paper.flatMap(({ panel, points }) =>
    panel.startsWith('page/') ? [] : [points.map((p) => shifted.toScreen(place(p)))],
  )
  marks.push(...placeWords(wishes, [0, 0, size.width, size.height], { shapes }))
  return marks
}

/** The same picture so many pixels to the right. */
function movedLens(lens: Lens, by: number): Lens {
  const move = ([x, y]: Point): Point => [x + by, y]
  return {
    ...lens,
    all: lens.all.map(move),
    toScreen: (p) => move(lens.toScreen(p)),
    onPlane: (origin, u, v) => {
      const spot = lens.onPlane(origin, u, v)
      return (a, b) => move(spot(a, b))
    },
  }
}

/** Which mechanisms a step is about, and which are there. */
export function taskOf(whole: Design, options: StepOptions, state?: StepState): Task {
  const task = partsOf(whole, options)
  if (!state || !UNPAINTED.has(state)) return task
  const tinted = Object.fromEntries([...task.cut, ...task.guests].map((id) => [id, TINT] as const))
  return { ...task, design: { ...whole, papers: { ...whole.papers, ...tinted } } }
}

function partsOf(design: Design, options: StepOptions): Task {
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
  const mounted = meant(own)
  const first = design.mechanisms.findIndex(({ id }) => guests.includes(id) || mounted.includes(id))
  const before = options.there ?? design.mechanisms.slice(0, Math.max(0, first)).map(({ id }) => id)
  const done = [...before, ...cut, ...guests, ...mounted]
  const through = design.mechanisms
    .map(({ id }) => id)
    .filter((id) => options.there === undefined || done.includes(id))
  const { inHand = [] } = options
  return { design, cut, guests, glued: mounted, before, through, opening, inHand }
}

/** The same with a dot on the right page and its twin on the left. */
function dotted(scene: Scene, point: Flat): Scene {
  const { at, twin } = pagePoint(point, scene.opening)
  return { ...scene, dots: [at, twin], says: `${scene.says} ${says.dots}` }
}

/** The figure of one making step, in a box of `size` px: all from the model, from one place, in one scale. */
export function stepFigure(whole: Design, state: StepState, size: Size, options: StepOptions = {}): Drawing {
  const { text = 15, plain = false, dot, camera, stand, near = false, covered = false } = options
  const task = taskOf(whole, options, state)
  const { design } = task
  const scale = commonScale(design, size)
  const box = [0, 0, size.width, size.height] as const
  if (GLUED.has(state) && task.glued.length === 0)
    throw new RangeError(`a step that shows ${state} needs a mechanism of its own card, and there is none`)
  const { cut, guests } = task
  const nested = state === 'creased' && cut.length === 0 && guests.length > 0
  if (state !== 'creased' || nested) {
    const drawn = state === 'creased' ? nestedCreased(task) : scenes[state](task)
    const bound = covered && state === 'open' ? inCover(drawn, design) : drawn
    const resting = stand && state === 'open' ? { ...bound, stand } : bound
    const scene = dot ? dotted(resting, dot) : resting
    return {
      box,
      unit: 'px',
      marks: sceneMarks(scene, design, size, {
        ...{ scale, centre: size.width / 2, text, pictured: !plain && isPictured(state), camera, near },
      }),
      says: scene.says,
    }
  }
  const room: Size = { width: size.width, height: size.height - text * 1.5 }
  const halves = [
    { scene: scenes.front(task), centre: size.width * 0.27, words: says.toFront },
    { scene: scenes.back(task), centre: size.width * 0.73, words: says.toBack },
  ]
  return {
    box,
    unit: 'px',
    marks: halves.flatMap(({ scene, centre, words }): Mark[] => [
      ...sceneMarks(scene, design, room, { scale: scale * 0.86, centre, text, pictured: false }),
      {
        mark: 'word',
        at: [centre, size.height - text * 0.5],
        text: words,
        role: 'note',
        anchor: 'middle',
        size: text,
      },
    ]),
    says: says.creased,
  }
}
