import type {
  Check,
  Derived,
  Design,
  Field,
  FlatCrease,
  LineKind,
  Piece,
  Placed,
  SheetHandle,
} from '../../paper/index.ts'
import { flatCreases, flatParts, handlesOf, nameOf, pieces, settable, settingOf } from '../../paper/index.ts'
import { faultMarks } from '../pen/faults.ts'
import { gridMark, squareSample } from '../pen/grid.ts'
import { hatch, strokes } from '../pen/hatch.ts'
import type { Rect, Wish } from '../pen/lettering.ts'
import { gripRadius, meet, placeWords, ridesBelow, textWidth, wordRect } from '../pen/lettering.ts'
import type { Drawing, Mark, PathMark, Point, Role, WordMark } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { angleText, lengthText } from '../pen/numbers.ts'
import type { Size } from '../view/camera.ts'
import { cardOf } from '../view/paper.ts'
import type { Extent, Layout } from './layout.ts'
import { layOut, roomFor } from './layout.ts'

/**
 * A place on a flat piece, mm. On the card: gutter on x = 0, right page at x > 0, the reader's end at y = 0,
 * seen from inside. On a glued piece: in its own frame, seen from its front.
 */
export type SheetPoint = readonly [x: number, y: number]

export interface PatternOptions {
  /** `screen` fills a box of px; `sheet` is true size in mm, without squares, handles or legend. Default screen. */
  readonly for?: 'screen' | 'sheet'
  /** Which side of the paper is seen; from outside the sheet is mirrored and folds run the other way. Default inside. */
  readonly face?: 'inside' | 'outside'
  /** Points that can be dragged: ids for all of theirs, or single ones as `id/name`; true for all. */
  readonly handles?: boolean | readonly string[]
  /** The one that is being dragged, as `id/name`, and the words that ride above it: its own label is left out. */
  readonly held?: { readonly handle: string; readonly words: string }
  /** Where the pieces lay in the picture before: so they stay, if there is room for all. */
  readonly stay?: Layout
  /** Sizes drawn as measured lines and arcs: see `dimensions.ts`, which comes with those who ask for it. */
  readonly dimensions?: Dimensions
  /** Surfaces of mechanisms in a tint of their card; default true. */
  readonly tint?: boolean
  /** 10 mm squares; default true on screen. */
  readonly squares?: boolean
  /** Names of the line kinds that are there; default true on screen. */
  readonly legend?: boolean
  /** The glued pieces too, beside the card or below it; default true on screen. On the sheet: the card alone. */
  readonly glued?: boolean
  readonly faults?: readonly Check[]
  /** Height of the type: px (default 15) on screen, mm (default 3.4) on the sheet. */
  readonly text?: number
  readonly unit?: LengthUnit
}

/** Measured lines and arcs of some mechanisms, or of all. */
export interface Dimensions {
  readonly of: true | readonly string[]
  draw(design: Design, handles: readonly SheetHandle[], board: Board): void
}

export interface Pattern extends Drawing {
  /** How the pieces lie: to be given to the next picture as `stay` while a hand drags. */
  readonly layout: Layout
  /** From a point of the drawing to a flat piece (the card if left out), mm, and back. */
  toSheet(p: Point, piece?: string): SheetPoint
  fromSheet(p: SheetPoint, piece?: string): Point
}

export const wanted = (which: boolean | readonly string[] | undefined, id: string): boolean =>
  which === true || (Array.isArray(which) && which.includes(id))

const flipped: Partial<Record<LineKind, LineKind>> = { mountain: 'valley', valley: 'mountain' }

/** What the legend says of each kind of line. */
const LEGEND: readonly (readonly [LineKind, string])[] = [
  ['cut', 'cut'],
  ['valley', 'valley'],
  ['mountain', 'mountain'],
  ['glue', 'glue'],
  ['crease', 'fold pressed flat'],
]

interface LegendPlan {
  readonly items: readonly {
    readonly role: Role
    readonly words: string
    readonly x: number
    readonly row: number
  }[]
  /** Length of a sample line. */
  readonly long: number
  readonly height: number
}

/** Lengths in the legend, in ems: of a sample line, of the square, beside them, between entries. */
const SAMPLE = 1.6

const BOX = 0.93

const NEAR = 0.33

const APART = 0.87

/** The legend in as few rows as it needs; a little closer where that saves one. */
function legendPlan(entries: readonly (readonly [Role, string])[], width: number, text: number): LegendPlan {
  const [wide, close] = [legendRows(entries, width, text, 1), legendRows(entries, width, text, 0.75)]
  return close.height < wide.height ? close : wide
}

/** Rows of samples and words, centred, wrapped where the box ends. */
function legendRows(
  entries: readonly (readonly [Role, string])[],
  width: number,
  text: number,
  closeness: number,
): LegendPlan {
  const long = SAMPLE * text * closeness
  const rows: { role: Role; words: string; wide: number }[][] = [[]]
  const apart = APART * text * closeness
  let used = 0
  for (const [role, words] of entries) {
    const wide = (role === 'square' ? BOX * text : long) + NEAR * text + textWidth(words, text)
    const row = rows[rows.length - 1] as (typeof rows)[number]
    if (row.length > 0 && used + apart + wide > width - 12) {
      rows.push([{ role, words, wide }])
      used = wide
    } else {
      used += wide + (row.length > 0 ? apart : 0)
      row.push({ role, words, wide })
    }
  }
  const items = rows.flatMap((row, index) => {
    const total = row.reduce((sum, { wide }) => sum + wide, 0) + apart * (row.length - 1)
    let x = (width - total) / 2
    return row.map(({ role, words, wide }) => {
      const item = { role, words, x, row: index }
      x += wide + apart
      return item
    })
  })
  return { items, long, height: rows.length * text * 1.6 + 8 }
}

function legendMarks(plan: LegendPlan, top: number, text: number): Mark[] {
  return plan.items.flatMap(({ role, words, x, row }): Mark[] => {
    const y = top + (row + 0.5) * text * 1.6
    const wide = role === 'square' ? BOX * text : plan.long
    const line: readonly Point[] = [
      [x, y],
      [x + wide, y],
    ]
    const sample: PathMark =
      role === 'square' ? squareSample(x, y, wide) : { mark: 'path', runs: [line], closed: false, role }
    const across: Mark[] = role === 'glue' ? [{ ...sample, runs: strokes(line, 7, 6) }] : []
    const at: Point = [x + wide + NEAR * text, y + text * 0.33]
    return [sample, ...across, { mark: 'word', at, text: words, role: 'note', anchor: 'start', size: text }]
  })
}

export const labelOf = (m: Placed, name: string): Field | Derived<Placed> | undefined =>
  settable(m).find((field) => field.name === name)

export const say = (field: Field | Derived<Placed>, value: number, unit: LengthUnit): string =>
  field.unit === 'mm' ? lengthText(value, unit) : angleText(value)

/** A fold's wedge angle as an arc on the sheet: where it lies, and its middle. */
interface Arc {
  readonly id: string
  readonly piece: string
  readonly points: readonly SheetPoint[]
  readonly middle: SheetPoint
  readonly corner: SheetPoint
  readonly words: string
}

/** What is drawn of a design's pieces: equal ones of one mechanism once, with their number. */
interface Shown {
  readonly shown: readonly Piece[]
  /** A piece that is not drawn, and the equal one that is. */
  readonly twins: ReadonlyMap<string, string>
  readonly counts: ReadonlyMap<string, number>
}

const ownerOf = (piece: string): string => piece.slice(0, piece.indexOf('/'))

const alike = (a: Piece, b: Piece): boolean =>
  ownerOf(a.id) === ownerOf(b.id) &&
  a.lines.length === b.lines.length &&
  a.lines.every(({ kind, points }, k) => {
    const other = b.lines[k]
    return (
      kind === other?.kind &&
      points.length === other.points.length &&
      points.every(
        ([x, y], n) => Math.hypot(x - (other.points[n]?.[0] ?? 0), y - (other.points[n]?.[1] ?? 0)) < 1e-6,
      )
    )
  })

function shownPieces(all: readonly Piece[], glued: boolean): Shown {
  const shown: Piece[] = []
  const twins = new Map<string, string>()
  const counts = new Map<string, number>()
  for (const piece of glued ? all : all.slice(0, 1)) {
    const twin = shown.find((other) => other.id !== 'card' && alike(other, piece))
    if (twin) twins.set(piece.id, twin.id)
    else shown.push(piece)
    const of = twin?.id ?? piece.id
    counts.set(of, (counts.get(of) ?? 0) + 1)
  }
  return { shown, twins, counts }
}

/** A piece's name for the reader: `moth`, `pond platform`, `pond wall, 3 times`. */
function pieceName(id: string, count: number): string {
  const [owner = '', part = ''] = id.split('/')
  const name = nameOf(part === 'piece' ? owner : `${owner} ${part.replace(/-\d+$/, '')}`)
  return count > 1 ? `${name}, ${count} times` : name
}

/** What the drawing says of the glued pieces it shows. */
function withPieces(parts: readonly Piece[], counts: ReadonlyMap<string, number>): string {
  const names = parts.slice(1).map(({ id }) => pieceName(id, counts.get(id) ?? 1))
  return names.length === 0 ? '' : ` With it the pieces to glue on: ${names.join('; ')}.`
}

/** Room above the pieces for their names, px. */
interface NameRoom {
  readonly text: number
  /** Above those that can be dragged: their dots must not cover the name. */
  readonly lift: number
}

/** The pieces side by side, as they are seen: `hand` -1 for the outside, where left and right change places. */
function laidOut(
  { shown, counts }: Shown,
  room: Size,
  hand: number,
  { text, lift }: NameRoom,
  stay: Layout | undefined,
): Layout {
  const extents = shown.map(({ id, outline }): Extent => {
    const [xs, ys] = [outline.map(([x]) => hand * x), outline.map(([, y]) => y)]
    return {
      id,
      x: [Math.min(...xs), Math.max(...xs)],
      y: [Math.min(...ys), Math.max(...ys)],
      name: id === 'card' ? 0 : textWidth(pieceName(id, counts.get(id) ?? 1), text),
    }
  })
  const name = text * 1.35 + lift
  return stay && roomFor(extents, stay, room, name) ? stay : layOut(extents, room, name)
}

/** The mechanisms' paper in a tint of its card, each where it is cut from. */
function tints(
  design: Design,
  parts: readonly Piece[],
  face: 'inside' | 'outside',
  fromSheet: (p: SheetPoint, piece?: string) => Point,
): Mark[] {
  const side = face === 'inside' ? 'front' : 'back'
  const marks = new Map<number, PathMark & { runs: Point[][] }>()
  for (const { sheet, owner, panel, piece, points } of flatParts(design)) {
    if (owner < 0 || !parts.some(({ id }) => id === piece)) continue
    const run = points.map((p) => fromSheet(p, piece))
    const mark = marks.get(sheet)
    if (mark) mark.runs.push(run)
    else {
      const paint = { card: cardOf(design, owner), light: 1, face: side } as const
      marks.set(sheet, { mark: 'path', runs: [run], closed: true, role: 'paper', of: panel, paint })
    }
  }
  return [...marks.values()]
}

/** The flat sheet: cuts, folds, sizes and handles, in a box of `size` px or at true size in mm. */
export function pattern(design: Design, size: Size, options: PatternOptions = {}): Pattern {
  const { for: medium = 'screen', face = 'inside', unit = 'mm', faults = [] } = options
  const screen = medium === 'screen'
  const { text = screen ? 15 : 3.4, squares = screen, legend = screen, tint = true } = options
  const { width: page, height: tall } = design.card
  const all = shownPieces(pieces(design), screen && (options.glued ?? true))
  const { shown: parts, twins, counts } = all
  const shown = (kind: LineKind): LineKind => (face === 'inside' ? kind : (flipped[kind] ?? kind))
  const kinds = new Set(parts.flatMap(({ lines }) => lines.map(({ kind }) => shown(kind))))
  const entries: (readonly [Role, string])[] = LEGEND.filter(([kind]) => kinds.has(kind))
  if (squares) entries.push(['square', '10 mm'])
  const plan = legend ? legendPlan(entries, size.width, text) : null

  const padding = 16
  const room = { width: size.width - 2 * padding, height: size.height - (plan?.height ?? 0) - 2 * padding }
  const hand = face === 'inside' ? 1 : -1
  const drawn = new Set([...parts.map(({ id }) => id), ...twins.keys()])
  const handles = handlesOf(design).filter(({ piece }) => drawn.has(piece))
  const dragged = new Set(
    handles
      .filter(({ id, name }) => wanted(options.handles, id) || wanted(options.handles, `${id}/${name}`))
      .map(({ piece }) => twins.get(piece) ?? piece),
  )
  const lift = parts.some(({ id }) => id !== 'card' && dragged.has(id)) ? gripRadius(text) : 0
  const layout: Layout =
    screen && parts.length > 1
      ? laidOut(all, room, hand, { text, lift }, options.stay)
      : {
          scale: screen ? Math.max(0.05, Math.min(room.width / (2 * page), room.height / tall)) : 1,
          shifts: new Map(),
          middle: [0, tall / 2],
        }
  const { scale, shifts, middle } = layout
  const centre: Point = screen ? [size.width / 2, padding + room.height / 2] : [page, tall / 2]
  const shiftOf = (piece: string): SheetPoint => shifts.get(twins.get(piece) ?? piece) ?? [0, 0]
  const fromSheet = ([x, y]: SheetPoint, piece = 'card'): Point => {
    const [dx, dy] = shiftOf(piece)
    return [centre[0] + scale * (hand * x + dx - middle[0]), centre[1] - scale * (y + dy - middle[1])]
  }
  const toSheet = ([x, y]: Point, piece = 'card'): SheetPoint => {
    const [dx, dy] = shiftOf(piece)
    return [hand * ((x - centre[0]) / scale + middle[0] - dx), middle[1] - dy - (y - centre[1]) / scale]
  }
  const box: Rect = screen ? [0, 0, size.width, size.height] : [0, 0, 2 * page, tall]
  const drawable: Rect = screen ? [0, 0, size.width, size.height - (plan?.height ?? 0)] : box
  /** A px length on screen, and the length in mm that looks like it on paper. */
  const px = (n: number): number => (screen ? n : n * 0.22)

  const marks: Mark[] = []
  const wishes: Wish[] = []
  const names: WordMark[] = []
  if (squares) marks.push(squareMark(drawable, fromSheet, toSheet))
  if (tint) marks.push(...tints(design, parts, face, fromSheet))
  for (const { id, lines, outline } of parts) {
    for (const { kind, points, closed = false, of } of lines) {
      const role: Role = screen && of === 'page' ? 'edge' : shown(kind)
      const run = points.map((p) => fromSheet(p, id))
      marks.push({ mark: 'path', runs: [run], closed, role, of })
      if (kind !== 'glue') continue
      const runs = closed ? hatch(run, px(7)) : strokes(run, px(7), px(6))
      marks.push({ mark: 'path', runs, closed: false, role: 'glue', of: `${of}-hatch` })
    }
    if (id === 'card') continue
    const at = outline.map((p) => fromSheet(p, id))
    const xs = at.map(([x]) => x)
    names.push({
      mark: 'word',
      at: [
        (Math.min(...xs) + Math.max(...xs)) / 2,
        Math.min(...at.map(([, y]) => y)) - 0.4 * text - (dragged.has(id) ? lift : 0),
      ],
      text: pieceName(id, counts.get(id) ?? 1),
      role: 'note',
      anchor: 'middle',
      size: text,
      of: id,
    })
  }

  const taken = handles.find(({ id, name }) => options.held?.handle === `${id}/${name}`)
  const riding =
    taken && options.held && ridingRect(options.held.words, fromSheet(taken.at, taken.piece), size, text)
  const rects: Rect[] = [...names.map(wordRect), ...(riding ? [riding] : [])]
  const creases = flatCreases(design).filter(({ piece }) => drawn.has(piece))
  const arcs =
    screen || options.dimensions ? arcsOf(design, creases, (screen ? ARC * text : px(24)) / scale) : []
  for (const { id, piece, points, middle: at, corner, words } of arcs) {
    const held =
      wanted(options.handles, id) ||
      wanted(options.handles, `${id}/slit-end`) ||
      wanted(options.handles, `${id}/fold-line`)
    if (!held && !wanted(options.dimensions?.of, id)) continue
    const role: Role = held ? 'handle' : 'dimension'
    marks.push({
      mark: 'path',
      runs: [points.map((p) => fromSheet(p, piece))],
      closed: false,
      role,
      of: `${id}/wedge`,
    })
    const [cx, cy] = fromSheet(corner, piece)
    const [mx, my] = fromSheet(at, piece)
    const sides: Wish['sides'] =
      my > cy
        ? ['below', mx > cx ? 'below-right' : 'below-left']
        : ['above', mx > cx ? 'above-right' : 'above-left']
    // While the fold is dragged its angle rides beside it.
    if (options.held?.handle === `${id}/fold-line`) continue
    wishes.push({
      text: words,
      role,
      size: text,
      bold: true,
      of: `${id}/wedge`,
      optional: held,
      at: [mx, my],
      gap: px(4),
      sides,
    })
  }
  options.dimensions?.draw(design, handles, { creases, fromSheet, px, text, unit, marks, wishes })
  if (screen)
    draggable(design, handles, options, { creases, fromSheet, px, text, unit, marks, wishes, rects })

  for (const check of faults) {
    const { piece = 'card' } = check
    if (check.ok || !check.flat || !drawn.has(piece)) continue
    const run = check.flat.map((p) => fromSheet(p, piece))
    marks.push(...faultMarks(run, check.name, px(14)))
  }
  const cuts = parts.flatMap(({ id, lines }) =>
    lines.flatMap(({ points }) =>
      points.slice(1).map((p, k) => [fromSheet(points[k] as SheetPoint, id), fromSheet(p, id)] as const),
    ),
  )
  // A name that the riding words would hide is left out as long.
  marks.push(
    ...names.filter((name) => !riding || !meet(wordRect(name), riding)),
    ...placeWords(wishes, drawable, { rects, lines: cuts }),
  )
  if (plan) marks.push(...legendMarks(plan, size.height - plan.height + 2, text))
  const seen = face === 'inside' ? 'inside' : 'outside'
  return {
    box,
    unit: screen ? 'px' : 'mm',
    marks,
    says: `The flat sheet of “${design.title}”, ${lengthText(2 * page, unit)} by ${lengthText(tall, unit)}, seen from ${seen}.${withPieces(parts, counts)}`,
    layout,
    toSheet,
    fromSheet,
  }
}

/** Radius of a wedge angle's arc, in ems. */
const ARC = 1.6

/** Free space between a handle and the words that ride above it, px: its dot grows while it is held. */
const RIDE = 1.15

/** Where the words ride that go with a held handle: above it, below it near the top, inside the picture. */
function ridingRect(words: string, [x, y]: Point, size: Size, text: number): Rect {
  const [width, height] = [textWidth(words, text, true) + 16, 1.5 * text + 4]
  const off = RIDE * gripRadius(text) + 2
  const top = ridesBelow(y, size.height) ? y + off : y - off - height
  return [x - (x / size.width) * width, top, width, height]
}

/** The 10 mm squares that fill the rectangle, true to the sheet. */
function squareMark(
  rect: Rect,
  fromSheet: (p: SheetPoint) => Point,
  toSheet: (p: Point) => SheetPoint,
): Mark {
  const [a, b] = [toSheet([rect[0], rect[1]]), toSheet([rect[0] + rect[2], rect[1] + rect[3]])]
  const tens = (from: number, to: number): readonly number[] => {
    const first = Math.ceil(Math.min(from, to) / 10)
    return Array.from({ length: Math.floor(Math.max(from, to) / 10) - first + 1 }, (_, k) => 10 * (first + k))
  }
  return gridMark(
    tens(a[0], b[0]).map((x) => fromSheet([x, 0])[0]),
    tens(a[1], b[1]).map((y) => fromSheet([0, y])[1]),
    rect,
  )
}

/** The wedge angles of all mechanisms that have one, as arcs of at most `radius` mm. */
function arcsOf(design: Design, creases: readonly FlatCrease[], radius: number): readonly Arc[] {
  return design.mechanisms.flatMap((m): Arc[] => {
    const field = labelOf(m, 'wedge')
    const fold = creases.find(({ name }) => name === `${m.id}/right`)
    const host = creases.find(({ name, piece }) => name === m.on && piece === fold?.piece)
    if (!field || !fold || !host) return []
    const [sx, sy] = fold.start
    const [dx, dy] = [fold.end[0] - sx, fold.end[1] - sy]
    let [hx, hy] = [host.end[0] - host.start[0], host.end[1] - host.start[1]]
    if (hx * dx + hy * dy < 0) [hx, hy] = [-hx, -hy]
    const from = Math.atan2(hy, hx)
    let sweep = Math.atan2(dy, dx) - from
    if (sweep > Math.PI) sweep -= 2 * Math.PI
    if (sweep < -Math.PI) sweep += 2 * Math.PI
    const r = Math.min(radius, 0.45 * Math.hypot(dx, dy))
    if (!(r > 0)) return []
    const at = (t: number): SheetPoint => [
      sx + r * Math.cos(from + t * sweep),
      sy + r * Math.sin(from + t * sweep),
    ]
    const points = Array.from({ length: 13 }, (_, k) => at(k / 12))
    return [
      {
        id: m.id,
        piece: fold.piece,
        points,
        middle: at(0.5),
        corner: [sx, sy],
        words: angleText(Math.abs(settingOf(m, 'wedge'))),
      },
    ]
  })
}

export interface Board {
  readonly creases: readonly FlatCrease[]
  readonly fromSheet: (p: SheetPoint, piece?: string) => Point
  readonly px: (n: number) => number
  readonly text: number
  readonly unit: LengthUnit
  readonly marks: Mark[]
  readonly wishes: Wish[]
}

/** A mechanism's host crease as it lies on a piece. */
export const hostOf = (creases: readonly FlatCrease[], m: Placed, piece: string): FlatCrease | undefined =>
  creases.find((crease) => crease.name === m.on && crease.piece === piece)

/** Whether a handle lies as far from its host crease as its number says: then the number can be shown there. */
export function honest(value: number, { at, acrossWay }: SheetHandle, host: FlatCrease | undefined): boolean {
  if (!host) return false
  const [hx, hy] = host.start
  return Math.abs((at[0] - hx) * acrossWay[0] + (at[1] - hy) * acrossWay[1] - value) < 0.05
}

/** Points that can be dragged, with their numbers beside them. Two at one place are one dot: the first. */
function draggable(
  design: Design,
  handles: readonly SheetHandle[],
  options: PatternOptions,
  { creases, fromSheet, text, unit, marks, wishes, rects }: Board & { readonly rects: Rect[] },
): void {
  const grip = gripRadius(text)
  const said = new Set<string>()
  const dots: Point[] = []
  for (const handle of handles) {
    const { id, name, label, across, at, piece } = handle
    const m = design.mechanisms.find((one) => one.id === id)
    if (!m || !(wanted(options.handles, id) || wanted(options.handles, `${id}/${name}`))) continue
    const p = fromSheet(at, piece)
    if (dots.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1)) continue
    dots.push(p)
    const of = `${id}/${name}`
    marks.push({ mark: 'dot', at: p, radius: 8, role: 'handle', of })
    rects.push([p[0] - grip, p[1] - grip, 2 * grip, 2 * grip])
    // Its number rides beside it.
    if (options.held?.handle === of) continue
    const field = across === undefined ? undefined : labelOf(m, across)
    // A wedge angle is said at its arc.
    if (field?.name === 'wedge') continue
    const host = hostOf(creases, m, piece)
    if (field?.unit === 'mm' && !honest(settingOf(m, field.name), handle, host)) continue
    const value = field && say(field, settingOf(m, field.name), unit)
    const words = field ? `${field.label.toLowerCase()} ${value}` : label.toLowerCase()
    // Equal lengths of one mechanism are said once: both depths of a layer, both cuts of a straight strip.
    const same = `${id} ${value ?? words}`
    if (said.has(same)) continue
    said.add(same)
    wishes.push({
      text: words,
      role: 'handle',
      size: text,
      bold: true,
      of,
      at: p,
      gap: grip + 2,
      optional: true,
    })
  }
}
