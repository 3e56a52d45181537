import * as says from '../../../content/words/bench.ts'
import { isCrowded } from '../../drawing/pattern/shown.ts'
import type { Design, SheetHandle } from '../../paper/index.ts'
import { dragHandle, handlesOf, settable, settingOf } from '../../paper/index.ts'
import type { BenchConfig, HandleChoice } from '../state/config.ts'
import type { LengthUnit, ValueUnit } from '../state/format.ts'
import { shown, small } from '../state/format.ts'
import type { BenchState } from '../state/state.ts'
import { kept, within } from '../state/state.ts'

type Spot = readonly [x: number, y: number]

/** What of a bench's state lies flat. */
type Flat = Pick<BenchState, 'design' | 'point'>

/** A number that a handle moves, as it stands now. */
export interface HandleValue {
  readonly label: string
  readonly value: number
  readonly unit: ValueUnit
}

/** A point of the flat sheet that can be dragged, as it stands now. Places are in the sheet's frame, mm. */
export interface BenchHandle {
  /** `beak/slit-end`. */
  readonly key: string
  readonly label: string
  /** The flat piece it lies on: `card`, or a glued piece, in whose own frame its places are. */
  readonly piece: string
  readonly at: Spot
  /** Unit ways on the sheet in which its values grow; null where it has no such value. */
  readonly acrossWay: Spot | null
  readonly alongWay: Spot | null
  readonly across: HandleValue | null
  readonly along: HandleValue | null
  drag(state: BenchState, to: Spot): BenchState
}

const same = (a: Spot, b: Spot): boolean => Math.hypot(a[0] - b[0], a[1] - b[1]) < 1e-6

/** The nearest point of the card: no handle leaves the paper. */
const onCard = ({ card: { width, height } }: Design, [x, y]: Spot): Spot => [
  within(x, -width, width),
  within(y, 0, height),
]

/** Steps in which a handle is brought back from where it would push another one off the card. */
const STEPS_BACK = 64

/** A handle's drag, as far as it goes with no handle of its mechanism leaving the card. */
function dragged(design: Design, { id, name, piece, at: [x, y] }: SheetHandle, to: Spot): Design | null {
  if (piece !== 'card') return dragHandle(design, id, name, to)
  const [wx, wy] = onCard(design, to)
  const leaves = (one: Design) =>
    handlesOf(one).some(
      ({ id: of, piece, at }) => of === id && piece === 'card' && !same(onCard(one, at), at),
    )
  const free = leaves(design)
  for (let k = STEPS_BACK; k >= 0; k--) {
    const part = k / STEPS_BACK
    const next = dragHandle(design, id, name, [x + part * (wx - x), y + part * (wy - y)])
    if (free || !leaves(next)) return next
  }
  return null
}

function valueNamed(design: Design, id: string, name: string | undefined): HandleValue | null {
  const m = design.mechanisms.find((one) => one.id === id)
  const field = name !== undefined && m ? settable(m).find((one) => one.name === name) : undefined
  return m && field ? { label: field.label, value: settingOf(m, field.name), unit: field.unit } : null
}

function sheetHandle(design: Design, handle: SheetHandle, label: string): BenchHandle {
  const { id, name, piece, at } = handle
  const across = valueNamed(design, id, handle.across)
  const along = valueNamed(design, id, handle.along)
  return {
    key: `${id}/${name}`,
    label,
    piece,
    at,
    acrossWay: across && handle.acrossWay,
    alongWay: along && handle.alongWay,
    across,
    along,
    drag(state, to) {
      const design = dragged(state.design, handle, to)
      return design ? { ...state, design } : state
    },
  }
}

const tenth = (value: number): number => kept(Math.round(value * 10) / 10)

function pointHandle(state: Flat, label: string): BenchHandle {
  const [across, along] = state.point ?? [0, 0]
  return {
    key: 'point/point',
    label,
    piece: 'card',
    at: [across, along],
    acrossWay: [1, 0],
    alongWay: [0, 1],
    across: { label: says.toGutter, value: across, unit: 'mm' },
    along: { label: says.toLowerEdge, value: along, unit: 'mm' },
    drag(now, to) {
      const [x, y] = onCard(now.design, to)
      return { ...now, point: [tenth(Math.max(0, x)), tenth(y)] }
    },
  }
}

/** Every handle of the sheet but for those that lie on another: the second half of a shared slit. */
function everyHandle(design: Design, config: BenchConfig): readonly HandleChoice[] {
  if (config.point) return [{ id: 'point', handle: 'point' }]
  const handles = handlesOf(design)
  return handles
    .filter(
      (handle, k) =>
        !handles.slice(0, k).some((earlier) => earlier.piece === handle.piece && same(earlier.at, handle.at)),
    )
    .map(({ id, name }) => ({ id, handle: name }))
}

/** Which handles a bench offers. It is asked once, so that none comes or goes while one is dragged. */
export const handleChoices = (design: Design, config: BenchConfig): readonly HandleChoice[] =>
  config.handles ?? everyHandle(design, config)

/**
 * The mechanisms that a crowded sheet shows one at a time, in the order of their handles; none where it is not
 * crowded, or where no task names a handle to begin with. Throws a RangeError if the one it names is not there.
 */
export function choosableOf(design: Design, config: BenchConfig): readonly string[] {
  const { first } = config
  if (first === undefined) return []
  const choices = handleChoices(design, config)
  if (!choices.some(({ id, handle }) => first === `${id}/${handle}`))
    throw new RangeError(`there is no handle ${first}`)
  return isCrowded(design) ? [...new Set(choices.map(({ id }) => id))] : []
}

/** The handles as they stand now. Throws a RangeError if the chapter names one that is not there. */
export function benchHandles(state: Flat, choices: readonly HandleChoice[]): readonly BenchHandle[] {
  const all = handlesOf(state.design)
  return choices.map((choice) => {
    if (choice.id === 'point') return pointHandle(state, choice.label ?? says.point)
    const found = all.find(({ id, name }) => id === choice.id && name === choice.handle)
    if (!found) throw new RangeError(`there is no handle ${choice.id} ${choice.handle}`)
    return sheetHandle(state.design, found, choice.label ?? found.label)
  })
}

/** What rides beside a handle while it is dragged, and what is spoken: `slit 38.0 mm, lean 0.0 mm`. */
export function handleSays(handle: BenchHandle, length: LengthUnit): string {
  const parts = [handle.across, handle.along].flatMap((one) =>
    one ? [`${small(one.label)} ${shown(one.value, one.unit, length)}`] : [],
  )
  return parts.join(', ')
}

/** A press of an arrow key: which way on the screen, and how far in mm. */
export interface Nudge {
  /** 1 to the right, -1 to the left. */
  readonly right: number
  /** 1 up, -1 down. */
  readonly up: number
  readonly by: number
}

/**
 * Where a handle goes at a press of an arrow key: along its own way that lies nearest to the key's.
 * A handle that moves one way only follows both pairs of keys.
 */
export function nudged(handle: BenchHandle, { right, up, by }: Nudge): Spot {
  const { acrossWay, alongWay } = handle
  const level = acrossWay && alongWay ? Math.abs(acrossWay[0]) >= Math.abs(alongWay[0]) : null
  const [levelWay, uprightWay] =
    level === null
      ? [acrossWay ?? alongWay, acrossWay ?? alongWay]
      : level
        ? [acrossWay, alongWay]
        : [alongWay, acrossWay]
  const moved = (way: Spot | null, press: number, axis: 0 | 1): Spot => {
    if (!way || press === 0) return [0, 0]
    // Towards the key's own side where the way has one; else a key to the right or up means more.
    const sense = Math.abs(way[axis]) > 0.2 ? Math.sign(way[axis]) : 1
    return [sense * press * by * way[0], sense * press * by * way[1]]
  }
  const [a, b] = [moved(levelWay, right, 0), moved(uprightWay, up, 1)]
  return [handle.at[0] + a[0] + b[0], handle.at[1] + a[1] + b[1]]
}

/** How far one can go from a place, in a way, before the card ends; mm. */
function roomTo({ card: { width, height } }: Design, at: Spot, way: Spot): number {
  const steps = [
    way[0] > 0 ? (width - at[0]) / way[0] : way[0] < 0 ? (-width - at[0]) / way[0] : Number.POSITIVE_INFINITY,
    way[1] > 0 ? (height - at[1]) / way[1] : way[1] < 0 ? -at[1] / way[1] : Number.POSITIVE_INFINITY,
  ]
  return Math.max(0, Math.min(...steps))
}

/** Where `Home` (-1) and `End` (1) send a handle: as far as its first value goes on the card. */
export function toEnd(design: Design, handle: BenchHandle, end: 1 | -1): Spot {
  const way = handle.acrossWay ?? handle.alongWay ?? [0, 0]
  const out: Spot = [end * way[0], end * way[1]]
  const far = roomTo(design, handle.at, out)
  return [handle.at[0] + far * out[0], handle.at[1] + far * out[1]]
}
