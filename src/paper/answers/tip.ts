import { change, clamped, settable, settingOf, settled } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { fieldsFor } from '../design/setting.ts'
import { downTo } from '../design/tree.ts'
import { tipAt } from '../measure/measure.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { compile } from '../motion/pose.ts'
import type { Bounds } from '../plane/descent.ts'
import { solution } from '../plane/descent.ts'
import type { Vec3 } from '../plane/vector.ts'
import { add, distance, dot, subtract } from '../plane/vector.ts'
import type { Ranges } from './own-wrongs.ts'
import { OVER, rangeOf, worseIn, wrongsOf } from './own-wrongs.ts'

/** A step for differences, mm or degrees. */
const STEP = 1e-3

/** Keeps a step finite where the tip hardly answers: of the square of mm per mm. */
const DAMPING = 1e-4

const MOST_STEPS = 8

/** A tip goes a long way in legs of so much, mm, each by a few steps: what stands beside the way is then met sideways. */
const LEG = 15

const LEG_STEPS = 3

/** No card is larger, mm: what lies farther off is gone towards in as many legs. */
const FARTHEST = 300

/** The smallest share of a step that is tried. */
const LEAST_SHARE = 1 / 32

/** A step along a wall moves the tip by so much of it at least, mm per mm or degree: no part is ruined for a hair. */
const LEAST_GAIN = 0.25

/** A tip this near to where it is wanted is there, mm. */
const THERE = 0.02

/** To a tenth of a millimetre or degree: what a careful hand can cut. */
const tenth = (value: number): number => Math.round(value * 10) / 10

function tipOf(design: Design, opening: number): Vec3 {
  const poser = compile(design)
  poser(opening)
  return tipAt(poser, design.mechanisms.length - 1)
}

/**
 * The change of settings, of all that move the tip by `r`, whose squares are least: J' (J J' + damping)^-1 r. Damped,
 * the equations always have a solution.
 * (Levenberg 1944; the least-norm solution of a set with fewer equations than unknowns.)
 * @param columns how the tip moves with each setting, mm per mm or degree
 */
export function leastChange(columns: readonly Vec3[], r: Vec3): number[] {
  const square = r.map((_, i) =>
    r.map((_, j) =>
      columns.reduce(
        (all, column) => all + (column[i] as number) * (column[j] as number),
        i === j ? DAMPING : 0,
      ),
    ),
  )
  const along = solution(square, r) as Vec3
  return columns.map((column) => dot(column, along))
}

const product = (a: readonly number[], b: readonly number[]): number =>
  a.reduce((sum, one, k) => sum + one * (b[k] ?? 0), 0)

/** A change without what would lead through walls: `walls` are square to each other and of length 1. */
const alongside = (walls: readonly (readonly number[])[], step: readonly number[]): readonly number[] =>
  walls.reduce<readonly number[]>((rest, wall) => {
    const into = product(wall, rest)
    return rest.map((one, k) => one - into * (wall[k] ?? 0))
  }, step)

/** The walls and one more; null if it adds nothing to them. */
function walled(
  walls: readonly (readonly number[])[],
  slope: readonly number[],
): readonly (readonly number[])[] | null {
  const rest = alongside(walls, slope)
  const long = Math.hypot(...rest)
  return long > 1e-6 * Math.hypot(...slope) ? [...walls, rest.map((one) => one / long)] : null
}

/** The least change of settings that leads along all walls: `leastChange` of what is left of each. */
function leastAlong(
  walls: readonly (readonly number[])[],
  columns: readonly Vec3[],
  r: Vec3,
): readonly number[] {
  const rows = [0, 1, 2].map((k) =>
    alongside(
      walls,
      columns.map((column) => column[k] as number),
    ),
  )
  const left = columns.map((_, i): Vec3 => [rows[0]?.[i] ?? 0, rows[1]?.[i] ?? 0, rows[2]?.[i] ?? 0])
  return leastChange(left, r)
}

/** Each number rounded down or up, every way once. */
const roundings = (values: readonly number[]): readonly (readonly number[])[] =>
  values.reduce<readonly (readonly number[])[]>(
    (all, value) => {
      const ways = [...new Set([Math.floor(value * 10) / 10, Math.ceil(value * 10) / 10])]
      return all.flatMap((before) => ways.map((way) => [...before, way]))
    },
    [[]],
  )

/** A design and where its tip is. */
interface Reached {
  readonly design: Design
  readonly tip: Vec3
}

/** What a tip is brought by. */
export interface TipOptions {
  /** Fields that stay as they are. */
  readonly kept?: readonly string[]
  /** The ranges that a hand may set numbers in, by `<id>.<field>`; those of a file if left out. */
  readonly ranges?: Ranges
}

/**
 * The design with a mechanism's own sizes changed so that its tip comes to a point of space, or as near to it as a
 * few steps bring it: of several ways the least change. Sizes are rounded to 0.1. It goes along what it must not pass:
 * no number leaves its range, and the part stays one that can be cut and folded by itself; what was wrong before gets
 * no worse. The design itself if nothing helps.
 * @param at mm, in the card's frame
 * Throws a RangeError for an unknown mechanism, and for an opening that is none.
 */
export function tipTowards(
  design: Design,
  id: string,
  opening: number,
  at: Vec3,
  { kept = [], ranges = {} }: TipOptions = {},
): Design {
  const start = design.mechanisms.find((one) => one.id === id)
  if (!start) throw new RangeError(`there is no mechanism ${id}`)
  const { aims } = kindOf(start)
  const free = settable(start).filter(({ name }) => aims.includes(name) && !kept.includes(name))
  const bounds = free.map((field) => {
    const { min, max } = rangeOf(start, field, ranges)
    const now = settingOf(start, field.name)
    return { min: Math.min(min, now), max: Math.max(max, now) }
  })
  const set = (from: Design, values: readonly number[]): Design => {
    let next = from
    for (const [k, { name }] of free.entries()) {
      const m = next.mechanisms.find((one) => one.id === id)
      const value = values[k]
      if (m && value !== undefined && Math.abs(settingOf(m, name) - value) > 1e-9)
        next = change(next, id, fieldsFor(m, name, value))
    }
    return next
  }
  const valuesOf = ({ mechanisms }: Design): number[] => {
    const m = mechanisms.find((one) => one.id === id)
    return free.map(({ name }) => (m ? settingOf(m, name) : 0))
  }
  const apart = (tip: Vec3, there: Vec3): number => {
    const far = distance(tip, there)
    return Number.isNaN(far) ? Number.POSITIVE_INFINITY : far
  }
  const farFrom = (tip: Vec3): number => apart(tip, at)
  /** The design with other values, each within its range. */
  const moved = (from: Design, values: readonly number[]): Design | null =>
    settled(
      set(
        from,
        values.map((value, k) => clamped(value, bounds[k] as Bounds)),
      ),
    )
  const keeps = ({ mechanisms }: Design): boolean => {
    const m = mechanisms.find((one) => one.id === id)
    return kept.every((name) => m && Math.abs(settingOf(m, name) - settingOf(start, name)) <= OVER)
  }
  const alone = downTo(design, id)
  const itself = new Set([id])
  const before = wrongsOf(alone, itself, ranges)
  let now: Reached = { design: alone, tip: tipOf(alone, opening) }
  const way = [now]
  /** One step towards a place: where it leads, or null if it leads no nearer. */
  const stepped = (now: Reached, there: Vec3): Reached | null => {
    const values = valuesOf(now.design)
    const slopeOf = (i: number): Vec3 => {
      const tipBy = (by: number): Vec3 =>
        tipOf(
          set(
            now.design,
            values.map((one, j) => (i === j ? one + by : one)),
          ),
          opening,
        )
      // At the end of its range a number goes back alone.
      const by = (values[i] ?? 0) + STEP > (bounds[i]?.max ?? 0) ? -STEP : STEP
      const [x, y, z] = tipBy(by)
      return [(x - now.tip[0]) / by, (y - now.tip[1]) / by, (z - now.tip[2]) / by]
    }
    const columns = values.map((_, i) => slopeOf(i))
    let walls: readonly (readonly number[])[] = []
    let better: Reached | null = null
    while (!better && walls.length < free.length) {
      const step = leastAlong(walls, columns, subtract(there, now.tip))
      const ended = step.findIndex((by, i) => {
        const { min, max } = bounds[i] as Bounds
        const value = values[i] as number
        return (by > OVER && value >= max - OVER) || (by < -OVER && value <= min + OVER)
      })
      let more =
        ended < 0
          ? null
          : walled(
              walls,
              step.map((_, i) => (i === ended ? 1 : 0)),
            )
      if (ended >= 0) {
        if (!more) break
        walls = more
        continue
      }
      for (let part = 1; part >= LEAST_SHARE && !better; part /= 2) {
        const wanted = values.map((value, i) => value + part * (step[i] ?? 0))
        const next = moved(now.design, wanted)
        if (!next || !keeps(next)) continue
        const tip = tipOf(next, opening)
        const nearer = apart(tip, there) < apart(now.tip, there)
        const moves = walls.length === 0 || apart(now.tip, tip) > LEAST_GAIN * part * Math.hypot(...step)
        const isLast = part / 2 < LEAST_SHARE
        // Whether it is sound takes longest to tell.
        if (!(nearer && moves) && !isLast) continue
        const wrongs = wrongsOf(next, itself, ranges)
        const worse = worseIn(wrongs, before)
        if (worse === null && nearer && moves) better = { design: next, tip }
        else if (worse !== null && isLast) {
          // What stands in the way: which numbers lead into it, and how much.
          const by = wrongs.get(worse) ?? 0
          const slope = wanted.map((_, i) => {
            const further = moved(
              now.design,
              wanted.map((one, j) => (i === j ? one + STEP : one)),
            )
            const slower = further ? (wrongsOf(further, itself, ranges).get(worse) ?? 0) - by : 0
            return Number.isFinite(slower) ? slower / STEP : 0
          })
          more = walled(walls, slope)
        }
      }
      if (better || !more) break
      walls = more
    }
    return better
  }
  const legs = Math.ceil(Math.min(farFrom(now.tip), FARTHEST) / LEG)
  const { tip: from } = now
  for (let leg = 1; leg <= legs; leg++) {
    const last = leg === legs
    const there = last ? at : add(from, subtract(at, from), leg / legs)
    for (let k = 0; k < (last ? MOST_STEPS : LEG_STEPS) && apart(now.tip, there) > THERE; k++) {
      const next = stepped(now, there)
      if (next) {
        now = next
        way.push(now)
        continue
      }
      // Where one leg leads nowhere, those after it hardly will: the place itself is tried.
      if (k === 0 && !last) leg = legs - 1
      break
    }
  }
  // Rounded, the farthest that is as sane as before; other halves of shared slits have followed by now.
  const first = farFrom(tipOf(alone, opening))
  const rounded = (values: readonly number[]): { readonly design: Design; readonly far: number } | null => {
    const next = settled(set(design, values))
    if (!next) return null
    const ids = new Set(next.mechanisms.flatMap((m, k) => (m === design.mechanisms[k] ? [] : [m.id])))
    if (!keeps(next) || worseIn(wrongsOf(next, ids, ranges), wrongsOf(design, ids, ranges)) !== null)
      return null
    const far = farFrom(tipOf(downTo(next, id), opening))
    return far < first ? { design: next, far } : null
  }
  for (const one of way.slice(1).reverse()) {
    const values = valuesOf(one.design)
    const plain = rounded(values.map(tenth))
    if (plain) return plain.design
    const [nearest] = roundings(values)
      .flatMap((each) => rounded(each) ?? [])
      .sort((a, b) => a.far - b.far)
    if (nearest) return nearest.design
  }
  return design
}
