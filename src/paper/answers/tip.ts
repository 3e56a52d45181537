import { change, clamped, settable, settingOf, settled } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { fieldsFor } from '../design/setting.ts'
import { downTo } from '../design/tree.ts'
import { tipAt } from '../measure/measure.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { compile } from '../motion/pose.ts'
import type { Bounds } from '../plane/descent.ts'
import { solution } from '../plane/descent.ts'
import type { Vec3 } from '../plane/vector.ts'
import { distance, dot, scale, subtract } from '../plane/vector.ts'
import type { Ranges } from './own-wrongs.ts'
import { isWorse, OVER, rangeOf, SOON_TOLD, wrongsOf } from './own-wrongs.ts'

/** A step for differences, mm or degrees. */
const STEP = 1e-3

/** Keeps a step finite where the tip hardly answers: of the square of mm per mm. */
const DAMPING = 1e-4

const MOST_STEPS = 12

/** No step is longer, mm: of a long way the part that can be gone is gone. */
const STRIDE = 20

/** The smallest share of a step that is tried. */
const LEAST_SHARE = 1 / 16

/** A step brings the tip nearer by so much at least, mm: no part is ruined for a hair. */
const LEAST_GAIN = 0.01

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

/** What a tip is brought by. */
export interface TipOptions {
  /** Fields that stay as they are. */
  readonly kept?: readonly string[]
  /** The ranges that a hand may set numbers in, by `<id>.<field>`; those of a file if left out. */
  readonly ranges?: Ranges
}

/** The sizes of a part that bring its tip about. */
interface Sizes {
  readonly valuesOf: (design: Design) => number[]
  /** The design with other values, as they are: a small way beyond a range tells how the tip moves at its end. */
  readonly set: (from: Design, values: readonly number[]) => Design
  /** The same, each within its range; null where no paper has them. */
  readonly within: (from: Design, values: readonly number[]) => Design | null
}

function sizesOf(start: Mechanism, kept: readonly string[], ranges: Ranges): Sizes {
  const { aims } = kindOf(start)
  const free = settable(start).filter(({ name }) => aims.includes(name) && !kept.includes(name))
  const bounds = free.map((field) => {
    const { min, max } = rangeOf(start, field, ranges)
    const now = settingOf(start, field.name)
    return { min: Math.min(min, now), max: Math.max(max, now) }
  })
  const own = ({ mechanisms }: Design) => mechanisms.find(({ id }) => id === start.id)
  const valuesOf = (design: Design): number[] => {
    const m = own(design)
    return free.map(({ name }) => (m ? settingOf(m, name) : 0))
  }
  const set = (from: Design, values: readonly number[]): Design => {
    let next = from
    for (const [k, { name }] of free.entries()) {
      const m = own(next)
      const value = values[k]
      if (m && value !== undefined && Math.abs(settingOf(m, name) - value) > 1e-9)
        next = change(next, start.id, fieldsFor(m, name, value))
    }
    return next
  }
  const keeps = (design: Design): boolean => {
    const m = own(design)
    return kept.every((name) => m && Math.abs(settingOf(m, name) - settingOf(start, name)) <= OVER)
  }
  const within = (from: Design, values: readonly number[]): Design | null => {
    const next = settled(
      set(
        from,
        values.map((value, k) => clamped(value, bounds[k] as Bounds)),
      ),
    )
    return next && keeps(next) ? next : null
  }
  return { valuesOf, set, within }
}

/** A design on the way, and where its tip is. */
interface Stride {
  readonly design: Design
  readonly tip: Vec3
}

/** Whether a design is as good as paper as the one that the way began with. */
type IsSane = (next: Design) => boolean

/** One stride nearer to where the tip is wanted; null where none is found. */
function nearer(
  { design, tip }: Stride,
  at: Vec3,
  opening: number,
  sizes: Sizes,
  isSane: IsSane,
): Stride | null {
  const values = sizes.valuesOf(design)
  const columns = values.map((value, i): Vec3 => {
    const moved = tipOf(
      sizes.set(
        design,
        values.map((one, j) => (i === j ? value + STEP : one)),
      ),
      opening,
    )
    return scale(subtract(moved, tip), 1 / STEP)
  })
  const away = distance(tip, at)
  const step = leastChange(columns, scale(subtract(at, tip), Math.min(1, STRIDE / away)))
  // Where all together lead nowhere, one number alone may: past the end of the page a layer still rises.
  const ways = [step, ...step.map((_, i) => step.map((by, j) => (i === j ? by : 0)))]
  for (const by of ways)
    for (let part = 1; part >= LEAST_SHARE; part /= 2) {
      const next = sizes.within(
        design,
        values.map((value, i) => value + part * (by[i] ?? 0)),
      )
      const there = next && tipOf(next, opening)
      // Whether it is sane takes longest to tell.
      if (next && there && distance(there, at) < away - LEAST_GAIN && isSane(next))
        return { design: next, tip: there }
    }
  return null
}

/** The designs on the way of a tip to where it is wanted, the nearest last. */
function wayTowards(
  design: Design,
  at: Vec3,
  opening: number,
  sizes: Sizes,
  isSane: IsSane,
): readonly Design[] {
  const way: Design[] = []
  let now: Stride | null = { design, tip: tipOf(design, opening) }
  for (let k = 0; k < MOST_STEPS && distance(now.tip, at) > THERE; k++) {
    now = nearer(now, at, opening, sizes, isSane)
    if (!now) break
    way.push(now.design)
  }
  return way
}

/**
 * The design with a mechanism's own sizes changed so that its tip comes to a point of space, or as near to it as a
 * few steps bring it: of several ways the least change. Sizes are rounded to 0.1. No number leaves its range, and the
 * part stays one that can be cut and folded by itself: what was wrong before gets no worse. The design itself if
 * nothing helps.
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
  const sizes = sizesOf(start, kept, ranges)
  // What is drawn moves no tip.
  const { art: _, ...alone } = downTo(design, id)
  const itself = new Set([id])
  const before = wrongsOf(alone, itself, ranges, SOON_TOLD)
  const way = wayTowards(
    alone,
    at,
    opening,
    sizes,
    (next) => !isWorse(wrongsOf(next, itself, ranges, SOON_TOLD), before),
  )
  // Rounded, the farthest that is as sane as before by all checks; other halves of shared slits have followed by now.
  const far = (next: Design): number => distance(tipOf(downTo(next, id), opening), at)
  const first = far(design)
  for (const one of way.toReversed()) {
    const next = sizes.within(design, sizes.valuesOf(one).map(tenth))
    if (!next || !(far(next) < first)) continue
    const ids = new Set(next.mechanisms.flatMap((m, k) => (m === design.mechanisms[k] ? [] : [m.id])))
    if (!isWorse(wrongsOf(next, ids, ranges), wrongsOf(design, ids, ranges))) return next
  }
  return design
}
