/** What can be dragged on the flat drawing, with its numbers beside it, and the angles that are dragged along. */
import type { Derived, Design, Field, FlatCrease, Placed, SheetHandle } from '../../paper/index.ts'
import { kindOf, settable, settingOf } from '../../paper/index.ts'
import type { Rect, Wish } from '../pen/lettering.ts'
import { gripRadius, ridesBelow, textWidth } from '../pen/lettering.ts'
import type { Mark, Point } from '../pen/marks.ts'
import type { LengthUnit } from '../pen/numbers.ts'
import { angleText, lengthText } from '../pen/numbers.ts'
import type { Size } from '../view/camera.ts'
import type { Ground, SheetPoint } from './ground.ts'

/** What the drags are drawn on, and how. */
export interface Board {
  readonly design: Design
  /** Where the creases lie on the pieces that are drawn. */
  readonly creases: readonly FlatCrease[]
  readonly ground: Ground
  readonly text: number
  readonly unit: LengthUnit
  /** The handle that is being dragged, as `id/name`. */
  readonly held: string | undefined
  /** What a handle is called where its own name is another's too, by `id/name`. */
  readonly called: Readonly<Record<string, string>>
}

/** Marks, and words that want a place near what they speak of. */
export interface Drawn {
  readonly marks: readonly Mark[]
  readonly wishes: readonly Wish[]
  /** What no word may cover. */
  readonly rects: readonly Rect[]
}

type Said = Field | Derived<Placed>

const nameOfHandle = ({ id, name }: SheetHandle): string => `${id}/${name}`

const numberOf = (m: Placed, name: string): Said | undefined =>
  settable(m).find((field) => field.name === name)

const say = (field: Said, value: number, unit: LengthUnit): string =>
  field.unit === 'mm' ? lengthText(value, unit) : angleText(value)

const isArc = (field: Said | undefined): boolean =>
  field !== undefined && 'arc' in field && field.arc !== undefined

/** A mechanism's host crease as it lies on a piece. */
const hostOf = (creases: readonly FlatCrease[], m: Placed, piece: string): FlatCrease | undefined =>
  creases.find((crease) => crease.name === m.on && crease.piece === piece)

/** Whether a handle lies as far from its host crease as its number says: then the number can be shown there. */
function honest(value: number, { at, acrossWay }: SheetHandle, host: FlatCrease | undefined): boolean {
  if (!host) return false
  const [hx, hy] = host.start
  return Math.abs((at[0] - hx) * acrossWay[0] + (at[1] - hy) * acrossWay[1] - value) < 0.05
}

/** Points that can be dragged, with their numbers beside them. Two at one place are one dot: the first. */
export function dots(handles: readonly SheetHandle[], board: Board): Drawn {
  const { design, creases, ground, text, unit, held, called } = board
  const [marks, wishes, rects]: [Mark[], Wish[], Rect[]] = [[], [], []]
  const grip = gripRadius(text)
  const said = new Set<string>()
  const taken: Point[] = []
  for (const handle of handles) {
    const { id, label, across, at, piece } = handle
    const m = design.mechanisms.find((one) => one.id === id)
    if (!m) continue
    const p = ground.fromSheet(at, piece)
    if (taken.some((q) => Math.hypot(p[0] - q[0], p[1] - q[1]) < 1)) continue
    taken.push(p)
    const of = nameOfHandle(handle)
    marks.push({ mark: 'dot', at: p, radius: 8, role: 'handle', of })
    rects.push([p[0] - grip, p[1] - grip, 2 * grip, 2 * grip])
    // Its number rides beside it.
    if (held === of) continue
    const field = across === undefined ? undefined : numberOf(m, across)
    // An angle is said at its arc.
    if (isArc(field)) continue
    const host = hostOf(creases, m, piece)
    if (field?.unit === 'mm' && !honest(settingOf(m, field.name), handle, host)) continue
    const value = field && say(field, settingOf(m, field.name), unit)
    const isShared = handles.some((other) => other.id !== id && other.label === label && !other.across)
    const words = field
      ? `${field.label.toLowerCase()} ${value}`
      : ((isShared ? called[of] : undefined) ?? label).toLowerCase()
    // Equal lengths of one mechanism are said once: both depths of a layer, both cuts of a straight strip.
    const same = `${id} ${value ?? words}`
    if (said.has(same)) continue
    said.add(same)
    wishes.push({
      ...{ text: words, role: 'handle', size: text, bold: true, of },
      ...{ at: p, gap: grip + 2, optional: true },
      ...(value === undefined ? {} : { brief: value }),
    })
  }
  return { marks, wishes, rects }
}

/** Radius of an angle's arc, in ems. */
const ARC = 1.6

/** An angle between a host crease and a crease of its guest, as an arc on a flat piece. */
interface Arc {
  readonly piece: string
  readonly points: readonly SheetPoint[]
  readonly corner: SheetPoint
}

/** The arcs of all angles that the handles turn. */
export function arcs(handles: readonly SheetHandle[], board: Board): Drawn {
  const { design, ground, text, held } = board
  const [marks, wishes]: [Mark[], Wish[]] = [[], []]
  for (const m of design.mechanisms)
    for (const angle of kindOf(m).derived) {
      const own = handles.filter(({ id, across }) => id === m.id && turns(m, angle, across))
      const arc = own.length > 0 && arcOf(m, angle, board)
      if (!arc) continue
      const of = `${m.id}/${angle.name}`
      const points = arc.points.map((p) => ground.fromSheet(p, arc.piece))
      marks.push({ mark: 'path', runs: [points], closed: false, role: 'handle', of })
      // While the crease is dragged its angle rides beside it.
      if (own.some((handle) => handle.across === angle.name && nameOfHandle(handle) === held)) continue
      const at = points[MIDDLE] as Point
      const [cx, cy] = ground.fromSheet(arc.corner, arc.piece)
      const level = at[1] > cy ? 'below' : 'above'
      const sides = [level, `${level}-${at[0] > cx ? 'right' : 'left'}`] as const
      wishes.push({
        ...{ text: angleText(Math.abs(angle.get(m))), role: 'handle', size: text, bold: true, of },
        ...{ optional: true, at, gap: 4, sides },
      })
    }
  return { marks, wishes, rects: [] }
}

/** Whether moving a handle across its host crease changes an angle. */
const turns = (m: Placed, angle: Derived<Placed>, across: string | undefined): boolean =>
  across !== undefined &&
  angle.arc !== undefined &&
  (across === angle.name || Object.keys(angle.set(m, angle.get(m))).includes(across))

/** Which point of an arc is its middle. */
const MIDDLE = 6

function arcOf(m: Placed, angle: Derived<Placed>, board: Board): Arc | null {
  const { creases, ground, text } = board
  const fold = creases.find(({ name }) => name === `${m.id}/${angle.arc}`)
  const host = fold && hostOf(creases, m, fold.piece)
  if (!fold || !host) return null
  const [sx, sy] = fold.start
  const [dx, dy] = [fold.end[0] - sx, fold.end[1] - sy]
  let [hx, hy] = [host.end[0] - host.start[0], host.end[1] - host.start[1]]
  if (hx * dx + hy * dy < 0) [hx, hy] = [-hx, -hy]
  const from = Math.atan2(hy, hx)
  const sweep = Math.atan2(hx * dy - hy * dx, hx * dx + hy * dy)
  const r = Math.min((ARC * text) / ground.layout.scale, 0.45 * Math.hypot(dx, dy))
  if (!(r > 0)) return null
  const at = (t: number): SheetPoint => [
    sx + r * Math.cos(from + t * sweep),
    sy + r * Math.sin(from + t * sweep),
  ]
  return {
    piece: fold.piece,
    points: Array.from({ length: 2 * MIDDLE + 1 }, (_, k) => at(k / (2 * MIDDLE))),
    corner: fold.start,
  }
}

/** Free space between a handle and the words that ride above it, px: its dot grows while it is held. */
const RIDE = 1.15

/** Where the words ride that go with a held handle: above it, below it near the top, inside the picture. */
export function ridingRect(words: string, [x, y]: Point, size: Size, text: number): Rect {
  const [width, height] = [textWidth(words, text, true) + 16, 1.5 * text + 4]
  const off = RIDE * gripRadius(text) + 2
  const top = ridesBelow(y, size.height) ? y + off : y - off - height
  return [x - (x / size.width) * width, top, width, height]
}
