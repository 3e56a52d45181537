import type { ScaleLinear } from 'd3'
import { range, scaleLinear } from 'd3'
import * as says from '../../../content/words/drawing/section.ts'
import type { Design, Poser, Surface, Vec3 } from '../../paper/index.ts'
import { compile, isRead, kindOf, nameOf, ridgeOf, riseOf, surfaces, tipAt } from '../../paper/index.ts'
import { RADIANS } from '../../paper/plane/vector.ts'
import { gridMark, squareSample } from '../pen/grid.ts'
import type { Rect, Wish } from '../pen/lettering.ts'
import { placeWords, textWidth } from '../pen/lettering.ts'
import type { Drawing, Mark, Point } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { angleText, lengthText, riseSaid, riseText } from '../pen/numbers.ts'
import type { Size } from '../view/camera.ts'
import { cardOf } from '../view/paper.ts'
import type { Slice } from './slices.ts'
import { slices } from './slices.ts'

export interface SectionOptions {
  /** The mechanism whose ridge is measured. */
  readonly of?: string
  /** The openings that the framing has room for, degrees; default the whole motion. */
  readonly frame?: readonly number[]
  /** Height of the type, px; default 15. */
  readonly text?: number
  readonly unit?: LengthUnit
}

export interface Section extends Drawing {
  /** Where the plane cuts, mm along the gutter from the reader's end. */
  readonly station: number
  /** A point of the plane, `[x, z]` mm, on the screen. */
  toScreen(p: readonly [x: number, z: number]): Point
}

const PADDING = 20

/** How much of the pages a tight section shows: their ends tell nothing. */
const NEAR_THE_GUTTER = 0.7

/** Half of the width and the height, mm, of a tight section: what stands in it now, and its pages at these openings. */
function extentOf(page: number, frame: readonly number[], cuts: readonly Slice[]): readonly [number, number] {
  const ends = cuts.flatMap(({ panel, from, to }) => (panel.startsWith('page/') ? [] : [from, to]))
  const near = NEAR_THE_GUTTER * page
  const halves = frame.map((opening) => (opening / 2) * RADIANS)
  return [
    Math.max(page / 4, ...halves.map((half) => near * Math.sin(half)), ...ends.map(([x]) => Math.abs(x))),
    Math.max(page / 4, ...halves.map((half) => near * Math.cos(half)), ...ends.map(([, , z]) => z)),
  ]
}

/** A point of space where it lies in the section. */
const flat = (p: Vec3): readonly [number, number] => [p[0], p[2]]

/** Where a crease meets the plane; null if it does not. */
function meets({ start, end }: { start: Vec3; end: Vec3 }, station: number): Vec3 | null {
  const t = (station - start[1]) / (end[1] - start[1])
  // A hair more than the crease itself, so that a station taken at a tip finds that tip.
  if (!(t >= -1e-9 && t <= 1 + 1e-9)) return null
  return [start[0] + t * (end[0] - start[0]), station, start[2] + t * (end[2] - start[2])]
}

/** Points where ends of at least two slices meet: folds seen end-on. */
function folds(cuts: readonly Slice[]): readonly Vec3[] {
  const ends = cuts.flatMap(({ from, to }) => [from, to])
  const near = (a: Vec3, b: Vec3) => Math.hypot(a[0] - b[0], a[2] - b[2]) < 1e-5
  return ends.filter(
    (p, k) => ends.findIndex((q) => near(p, q)) === k && ends.filter((q) => near(p, q)).length > 1,
  )
}

/** From a leaf to the one stuck on it, px: their lines lie side by side. */
const SIDE_BY_SIDE = 5

/** A slice of what is stuck on a face, put beside the slice of its face, on the side it is stuck on. */
function beside(cut: Slice, paper: readonly Surface[], design: Design, off: number): Slice {
  const kind = (owner: number): boolean => {
    const m = design.mechanisms[owner]
    return m !== undefined && kindOf(m).sitsOn === 'panel'
  }
  let count = 0
  for (let at = cut.owner; kind(at); count++) {
    const [host] = (design.mechanisms[at]?.on ?? '').split('/')
    at = design.mechanisms.findIndex(({ id }) => id === host)
  }
  const front = paper.find(({ leaf }) => leaf === cut.leaf)?.front
  const long = front ? Math.hypot(front[0], front[2]) : 0
  if (count === 0 || !front || long < 1e-6) return cut
  const shift = ([x, y, z]: Vec3): Vec3 => [
    x + (count * off * front[0]) / long,
    y,
    z + (count * off * front[2]) / long,
  ]
  return { ...cut, from: shift(cut.from), to: shift(cut.to) }
}

/** The share of the line a-b that runs within `near` px of the line c-d. */
function hidden(a: Point, b: Point, c: Point, d: Point, near: number): number {
  const [dx, dy] = [d[0] - c[0], d[1] - c[1]]
  const square = dx * dx + dy * dy || 1
  let count = 0
  for (let k = 0; k <= 10; k++) {
    const p: Point = [a[0] + (k / 10) * (b[0] - a[0]), a[1] + (k / 10) * (b[1] - a[1])]
    const t = Math.min(1, Math.max(0, ((p[0] - c[0]) * dx + (p[1] - c[1]) * dy) / square))
    if (Math.hypot(p[0] - c[0] - t * dx, p[1] - c[1] - t * dy) < near) count++
  }
  return count / 11
}

/**
 * The card cut by a plane square to the gutter, seen from the reader's end, in a box of `size` px.
 * `at` is the station in mm along the gutter, or a mechanism's id: then the plane goes through its tip.
 * One scale for the whole motion, or for the openings of `frame`. Throws a RangeError for an unknown id.
 */
export function section(
  source: Poser | Design,
  opening: number,
  at: number | string,
  size: Size,
  options: SectionOptions = {},
): Section {
  const poser = typeof source === 'function' ? source : compile(source)
  const { design } = poser.model
  const { text = 15, unit = 'mm' } = options
  const pose = poser(opening)
  const indexOf = (id: string): number => design.mechanisms.findIndex((m) => m.id === id)
  const station = typeof at === 'number' ? at : tipAt(poser, indexOf(at))[1]
  const measured = options.of ?? (typeof at === 'string' ? at : undefined)
  const page = design.card.width

  const paper = surfaces(poser)
  const plain = slices(paper, station)
  const [wide, tall] = options.frame ? extentOf(page, options.frame, plain) : [page, page]
  const below = text * 1.6 + 4
  const room: Size = { width: size.width - 2 * PADDING, height: size.height - below - 2 * PADDING }
  const scale = Math.max(0.05, Math.min(room.width / (2 * wide), room.height / tall))
  const [middle, foot] = [size.width / 2, PADDING + (room.height + scale * tall) / 2]
  const across = scaleLinear([-page, page], [middle - scale * page, middle + scale * page])
  const up = scaleLinear([0, page], [foot, foot - scale * page])
  const toScreen = ([x, z]: readonly [number, number]): Point => [across(x), up(z)]
  const drawable: Rect = [0, 0, size.width, size.height - below]
  const marks: Mark[] = [squareMark(drawable, across, up)]
  const wishes: Wish[] = []
  const lines: [Point, Point][] = []
  const rects: Rect[] = []

  const cuts = plain.map((cut) => beside(cut, paper, design, SIDE_BY_SIDE / scale))
  const half = (opening / 2) * RADIANS
  for (const side of [-1, 1] as const) {
    // Where the page is cut away near the gutter, its plane goes on as a ghost.
    const name = side < 0 ? 'page/left' : 'page/right'
    const from = Math.min(
      ...cuts
        .filter(({ panel }) => panel === name)
        .flatMap((one) => [one.from, one.to].map((p) => Math.hypot(p[0], p[2]))),
    )
    if (from > 1e-6 && Number.isFinite(from))
      marks.push({
        mark: 'path',
        runs: [[toScreen([0, 0]), toScreen([side * from * Math.sin(half), from * Math.cos(half)])]],
        closed: false,
        role: 'ghost',
        of: name,
      })
  }
  for (const { panel, owner, from, to } of cuts) {
    const run = [toScreen(flat(from)), toScreen(flat(to))] as [Point, Point]
    lines.push(run)
    marks.push({
      mark: 'path',
      runs: [run],
      closed: false,
      role: 'slice',
      of: panel,
      paint: { card: cardOf(design, owner), light: 1, face: 'front' },
    })
  }
  for (const p of folds(cuts)) marks.push({ mark: 'dot', at: toScreen(flat(p)), radius: 3.5, role: 'edge' })

  const tip =
    measured === undefined || !isRead(design, indexOf(measured))
      ? null
      : ridgePoint(poser, pose.creases, indexOf(measured), typeof at === 'string', station)
  let said = ''
  if (tip && measured !== undefined) {
    const rise = riseOf(tip, opening)
    const side = tip[0] < -1e-6 ? -1 : 1
    const across: readonly [number, number] = [side * Math.sin(half), Math.cos(half)]
    const [x, z] = flat(tip)
    const beneath: readonly [number, number] = [x + side * rise * Math.cos(half), z - rise * Math.sin(half)]
    // Where the line would run on the paper itself it stands beside it, between two thin guides.
    const [a, b] = [toScreen([x, z]), toScreen(beneath)]
    const shifted =
      rise * scale > 2 &&
      cuts.some(({ from, to }) => hidden(a, b, toScreen(flat(from)), toScreen(flat(to)), 5) > 0.6)
    const shift = shifted ? 16 / scale : 0
    const moved = (p: readonly [number, number]): Point =>
      toScreen([p[0] + shift * across[0], p[1] + shift * across[1]])
    const [from, to] = [moved([x, z]), moved(beneath)]
    if (shifted)
      marks.push({ mark: 'path', runs: [[a, from]], closed: false, role: 'guide', of: `${measured}/rise` })
    marks.push({ mark: 'path', runs: [[from, to]], closed: false, role: 'dimension', of: `${measured}/rise` })
    if (rise * scale > 16) marks.push(squareCorner(to, [from[0] - to[0], from[1] - to[1]], side))
    marks.push(
      { mark: 'dot', at: to, radius: 2, role: 'dimension', of: `${measured}/rise` },
      { mark: 'dot', at: a, radius: 5.5, role: 'dimension', of: `${measured}/tip` },
    )
    lines.push([from, to])
    rects.push([a[0] - 7, a[1] - 7, 14, 14])
    const words = riseText(rise, unit)
    said = riseSaid(nameOf(measured), rise, unit)
    wishes.unshift({
      text: words,
      role: 'dimension',
      size: text,
      bold: true,
      of: `${measured}/rise`,
      at: [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2],
      orAt: [a],
      gap: 10,
      sides: ['above-right', 'right', 'above', 'above-left', 'left'],
    })
  }
  marks.push(...placeWords(wishes, drawable, { rects, lines }))
  marks.push(...footMarks(lengthText(station, unit), size, text))
  return {
    box: [0, 0, size.width, size.height],
    unit: 'px',
    marks,
    says: says.section(design.title, lengthText(station, unit), angleText(opening, 0), said),
    station,
    toScreen,
  }
}

/** The point that is measured: the tip itself, or where the ridge meets the plane. */
function ridgePoint(
  poser: Poser,
  creases: Readonly<Record<string, { start: Vec3; end: Vec3 }>>,
  index: number,
  atTip: boolean,
  station: number,
): Vec3 | null {
  const m = poser.model.design.mechanisms[index]
  if (!m) return null
  if (atTip) return tipAt(poser, index)
  const ridge = creases[ridgeOf(poser.model.design, m.id) ?? '']
  return ridge ? meets(ridge, station) : null
}

/** The side of a square, mm. */
const SQUARE = 10

type Scale = ScaleLinear<number, number>

/** Squares that fill the rectangle, with a corner at the gutter. */
function squareMark(rect: Rect, across: Scale, up: Scale): Mark {
  const [x, y, w, h] = rect
  const lines = (scale: Scale, from: number, to: number): readonly number[] => {
    const ends = [scale.invert(from), scale.invert(to)]
    const [low, high] = [Math.min(...ends), Math.max(...ends)]
    const places = range(Math.ceil(low / SQUARE) * SQUARE, high, SQUARE).map((at) => scale(at))
    return places.sort((a, b) => a - b)
  }
  return gridMark(lines(across, x, x + w), lines(up, y, y + h), rect)
}

/** The small square that says: at a right angle. */
function squareCorner(at: Point, up: Point, side: number): Mark {
  const long = Math.hypot(up[0], up[1]) || 1
  const [ux, uy] = [(7 * up[0]) / long, (7 * up[1]) / long]
  const [vx, vy] = side > 0 ? [uy, -ux] : [-uy, ux]
  return {
    mark: 'path',
    runs: [
      [
        [at[0] + ux, at[1] + uy],
        [at[0] + ux + vx, at[1] + uy + vy],
        [at[0] + vx, at[1] + vy],
      ],
    ],
    closed: false,
    role: 'guide',
  }
}

/** Beneath the picture: where it is cut, and what a square is. */
function footMarks(station: string, size: Size, text: number): Mark[] {
  const scale = '10 mm'
  const side = 0.93 * text
  const rest = 0.4 * text + side + 1.2 * text + textWidth(scale, text)
  const all = says.along(station)
  const words = textWidth(all, text) + rest < size.width - 8 ? all : station
  const wide = textWidth(words, text) + rest
  const x = (size.width - wide) / 2
  const y = size.height - text * 0.8 - 2
  const square = x + textWidth(words, text) + 1.2 * text
  return [
    { mark: 'word', at: [x, y + text * 0.33], text: words, role: 'note', anchor: 'start', size: text },
    squareSample(square, y, side),
    {
      mark: 'word',
      at: [square + side + 0.4 * text, y + text * 0.33],
      text: scale,
      role: 'note',
      anchor: 'start',
      size: text,
    },
  ]
}
