import * as says from '../../../content/words/drawing/view.ts'
import type { Check, Design, Flat, Pose, Poser, Surface, Vec3 } from '../../paper/index.ts'
import { compile, isRead, nameOf, riseOf, SHUT, surfaces, tipAt } from '../../paper/index.ts'
import { RADIANS } from '../../paper/plane/vector.ts'
import { faultMarks } from '../pen/faults.ts'
import type { Wish } from '../pen/lettering.ts'
import { gripRadius, placeWords, textWidth } from '../pen/lettering.ts'
import type { Drawing, Mark, Point } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { angleText, riseSaid, riseText } from '../pen/numbers.ts'
import type { Camera, Lens, Size, Stand } from './camera.ts'
import { lensFor, motionPoints, standing, unplaced } from './camera.ts'
import { coverSurfaces } from './cover.ts'
import { flameAt, hazeOf } from './glow.ts'
import { lampFor } from './light.ts'
import { paperMarks } from './paper.ts'
import { shadowMarks } from './shadows.ts'

export interface ViewOptions {
  /** Ids whose rise is measured in the picture; default none. */
  readonly rise?: readonly string[]
  /** The page's edge can be dragged to open and shut the card. */
  readonly handle?: boolean
  /** Failed checks are pointed at. */
  readonly faults?: readonly Check[]
  /** How the card rests on the table; default on its gutter. */
  readonly stand?: Stand
  /** Mechanisms, by id, that stand in the light; all else is dimmed. Left out, all is lit. */
  readonly lit?: readonly string[]
  /** The card is moving: shadows are hard, so that a frame is quick. */
  readonly moving?: boolean
  /** The openings that the framing has room for, degrees, and all that stands up now; default the whole motion. */
  readonly frame?: readonly number[]
  /** Height of the type, px; default 15. */
  readonly text?: number
  readonly unit?: LengthUnit
  /** The card is painted by somebody else (see `cardMarks`): only what lies over it is drawn. */
  readonly over?: boolean
}

export interface View extends Drawing {
  /** So many of the marks, the first of them, are the card and its shadows; the others lie over it. */
  readonly card: number
  /** The eye, in the card's frame, mm. */
  readonly eye: Vec3
  /** A point of the card's frame on the screen, px. */
  toScreen(p: Vec3): Point
  /** The opening, degrees, that brings the page's edge nearest to a point of the screen. */
  toOpening(p: Point): number
}

/** From the left and above: both pages are seen from inside, the lit one fuller. */
export const DEFAULT_CAMERA: Camera = { turn: -26, tilt: 36 }

/** Radius of the ring round a failed check, px. */
const FAULT = 14

const apart = (a: Point, b: Point): number => Math.hypot(a[0] - b[0], a[1] - b[1])

/** The point, or the nearest that has `off` px to every edge of the picture. */
const within = ([x, y]: Point, { width, height }: Size, off: number): Point => [
  Math.min(width - off, Math.max(off, x)),
  Math.min(height - off, Math.max(off, y)),
]

/** Pixels kept free round the motion: more in a large picture. */
const padding = (size: Size): number => Math.max(10, Math.min(22, 0.04 * size.width))

/** Where the opening handle sits: on the right page's outer edge, near the reader. */
const handleFlat = (card: { width: number; height: number }): Flat => [card.width, card.height * 0.18]

/** The opening whose handle lies nearest to a point: a coarse search, then a fine one round its best. */
function nearestOpening(p: Point, handleAt: (opening: number) => Point): number {
  const far = (opening: number): number => {
    const [x, y] = handleAt(opening)
    return Math.hypot(x - p[0], y - p[1])
  }
  let best = 0
  for (let opening = 0; opening <= 180; opening += 5) if (far(opening) < far(best)) best = opening
  for (let step = 2.5; step > 0.02; step /= 2)
    for (const next of [best - step, best + step])
      if (next >= 0 && next <= 180 && far(next) < far(best)) best = next
  return best
}

/** A card at an opening, on its stand before a lens. */
interface Sight {
  readonly poser: Poser
  readonly pose: Pose
  readonly paper: readonly Surface[]
  readonly lens: Lens
  placedAt(opening: number): (p: Vec3) => Vec3
  place(p: Vec3): Vec3
}

function sightOf(
  source: Poser | Design,
  opening: number,
  camera: Camera,
  size: Size,
  { stand = 'gutter', frame }: ViewOptions,
): Sight {
  const poser = typeof source === 'function' ? source : compile(source)
  const { design, panels } = poser.model
  const { card } = design
  const placedAt = (at: number) => standing(stand, at)
  const place = placedAt(opening)
  // Shut, the layers keep a hair's breadth so that their order is known.
  const pose = poser(Math.max(SHUT, opening))
  const paper = [...coverSurfaces(design, pose.opening, panels.length), ...surfaces(poser)]
  const pages = motionPoints(card, placedAt, frame)
  const lens = lensFor({
    card,
    camera,
    size,
    stand,
    points: frame ? [...pages, ...paper.flatMap(({ points }) => points.map(place))] : pages,
    padding: padding(size),
  })
  return { poser, pose, paper, lens, placedAt, place }
}

/** The card's surfaces with all that lies on them, what it throws on the table, and the light about it. */
function surfaceMarks(
  { poser, pose, paper, lens, place }: Sight,
  { stand = 'gutter', lit, moving = false }: ViewOptions,
): readonly Mark[] {
  const { design, panels } = poser.model
  const { card } = design
  const lamp = lampFor(lens, stand)
  const onTable = [
    ...panels.map((panel) => pose.panels[panel.name] ?? []),
    ...(card.cover ? paper.slice(0, 2).map(({ points }) => points) : []),
  ]
  const flame = lit ? null : flameAt(poser, place)
  return [
    ...shadowMarks(
      onTable.map((outline) => outline.map(place)),
      lens,
      lamp,
      !moving,
    ),
    ...paperMarks(design, paper, [], lens, place, {
      lamp,
      shadows: moving ? 'hard' : 'soft',
      poser,
      lit: lit && new Set(lit),
    }),
    ...(flame ? [hazeOf(flame, lens)] : []),
  ]
}

/** The part of a view that `View.card` counts, alone. Throws a RangeError as `view` does. */
export const cardMarks = (
  source: Poser | Design,
  opening: number,
  camera: Camera,
  size: Size,
  options: ViewOptions = {},
): readonly Mark[] => surfaceMarks(sightOf(source, opening, camera, size, options), options)

/**
 * The standing card in space at an opening (degrees, 0 to 180), in a box of `size` px.
 * The scale depends on the card and the camera alone: it does not jump while the card opens or a
 * mechanism changes. Throws a RangeError if the opening is not in range.
 */
export function view(
  source: Poser | Design,
  opening: number,
  camera: Camera,
  size: Size,
  options: ViewOptions = {},
): View {
  const sight = sightOf(source, opening, camera, size, options)
  const { poser, pose, paper, lens, placedAt, place } = sight
  const { design } = poser.model
  const { card } = design
  const { text = 15, unit = 'mm', stand = 'gutter' } = options
  const eye = unplaced(stand, opening)(lens.eye)
  const toScreen = (p: Vec3): Point => lens.toScreen(place(p))
  const marks: Mark[] = options.over ? [] : [...surfaceMarks(sight, options)]
  const under = marks.length
  const wishes: Wish[] = []
  const lines: [Point, Point][] = []
  const rects: [number, number, number, number][] = []
  const ring = (at: Point, radius: number) =>
    rects.push([at[0] - radius, at[1] - radius, 2 * radius, 2 * radius])
  const idOf = (id: string): number => design.mechanisms.findIndex((m) => m.id === id)

  // Words lie on the pages or beside the card rather than on what pops up.
  const shapes = paper.flatMap(({ panel, points }) =>
    /^(page|cover)\//.test(panel) ? [] : [points.map(toScreen)],
  )
  poser(opening)

  const rises: string[] = []
  for (const id of options.rise ?? []) {
    const index = idOf(id)
    if (index < 0 || !isRead(design, index)) continue
    const tip = tipAt(poser, index)
    const rise = riseOf(tip, opening)
    // On the gutter both pages lie beneath: measure to the one whose inside the eye sees better.
    const side = Math.abs(tip[0]) > 1e-6 ? Math.sign(tip[0]) : eye[0] > 0 ? -1 : 1
    const half = (opening / 2) * RADIANS
    const foot: Vec3 = [tip[0] + side * rise * Math.cos(half), tip[1], tip[2] - rise * Math.sin(half)]
    const [a, b] = [toScreen(tip), toScreen(foot)]
    marks.push(
      { mark: 'path', runs: [[a, b]], closed: false, role: 'halo' },
      { mark: 'path', runs: [[a, b]], closed: false, role: 'dimension', of: `${id}/rise` },
      { mark: 'dot', at: b, radius: 2, role: 'dimension', of: `${id}/rise` },
      { mark: 'dot', at: a, radius: 5.5, role: 'dimension', of: `${id}/tip` },
    )
    lines.push([a, b])
    ring(a, 7)
    const said = riseText(rise, unit)
    rises.push(riseSaid(nameOf(id), rise, unit))
    wishes.push({
      text: said,
      role: 'dimension',
      size: text,
      bold: true,
      of: `${id}/rise`,
      at: a,
      orAt: [[(a[0] + b[0]) / 2, (a[1] + b[1]) / 2], b],
      gap: 11,
      sides: ['right', 'above-right', 'above', 'left', 'above-left'],
    })
  }

  const handleAt = (at: number): Point => {
    const [across, along] = handleFlat(card)
    const half = (at / 2) * RADIANS
    return lens.toScreen(placedAt(at)([across * Math.sin(half), along, across * Math.cos(half)]))
  }
  if (options.handle) {
    const at = handleAt(opening)
    marks.push({ mark: 'dot', at, radius: 8, role: 'handle', of: 'opening' })
    ring(at, gripRadius(text))
  }

  const rings: { readonly at: Point; readonly words: string }[] = []
  for (const check of options.faults ?? []) {
    if (check.ok) continue
    for (const name of check.ids) {
      const panel = pose.panels[name]
      const page = name === 'page/left' ? 0 : name === 'page/right' ? 1 : -1
      if (page >= 0 && check.flat) {
        // A place of the flat sheet that lies on a page.
        const run = check.flat.map(([x, y]) => toScreen(poser.lift(page, [Math.abs(x), y])))
        marks.push(
          ...faultMarks(run, check.name, FAULT).map((mark) =>
            mark.mark === 'dot' ? { ...mark, at: within(mark.at, size, FAULT + 2) } : mark,
          ),
        )
      } else if (page < 0 && panel)
        marks.push({ mark: 'path', runs: [panel.map(toScreen)], closed: true, role: 'fault', of: check.name })
    }
    if (!check.space) continue
    const when = check.opening ?? opening
    // What lies past the frame is pointed at from its edge.
    const at = within(toScreen(check.space), size, FAULT + 2)
    const words = Math.abs(when - opening) > 1 ? says.failsAt(angleText(when, 0)) : ''
    if (!rings.some((one) => apart(one.at, at) < FAULT / 2))
      marks.push({ mark: 'dot', at, radius: FAULT, role: 'fault', of: check.name })
    // Rings that lie near one another share equal words.
    const shared = rings.some((one) => one.words === words && apart(one.at, at) < 2 * textWidth(words, text))
    rings.push({ at, words })
    ring(at, FAULT + 1)
    if (words && !shared)
      wishes.push({ text: words, role: 'fault', size: text, of: check.name, at, gap: FAULT + 4 })
  }

  marks.push(...placeWords(wishes, [0, 0, size.width, size.height], { rects, lines, shapes }))
  return {
    box: [0, 0, size.width, size.height],
    unit: 'px',
    marks,
    card: under,
    ground: 'table',
    says: says.card(design.title, angleText(opening, 0), rises),
    eye,
    toScreen,
    toOpening: (p) => nearestOpening(p, handleAt),
  }
}
