import { check } from '../checks/check.ts'
import { checksThat } from '../checks/table.ts'
import type { CheckName } from '../checks/verdict.ts'
import { change, settable, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { fieldsFor, isHoldable, isSetTo } from '../design/setting.ts'
import { downTo } from '../design/tree.ts'
import { riseOf, tipAt } from '../measure/measure.ts'
import { closesNowhere } from '../mechanisms/build.ts'
import type { Change } from '../mechanisms/kind.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { modelOf } from '../model/model.ts'
import { compile } from '../motion/pose.ts'
import { broughtIn } from '../motion/range.ts'
import { descended } from '../plane/descent.ts'
import { halving } from '../plane/search.ts'

/** Where a mechanism's tip is wanted: at this opening (degrees), this high and this far along the gutter (mm). */
export interface Target {
  readonly opening: number
  readonly rise?: number
  readonly reach?: number
}

/** One way of bringing the tip there, or as near as it goes. */
export interface Aimed {
  /** The settings that were moved, and their new values. */
  readonly settings: Readonly<Record<string, number>>
  /** The same as fields of the design file. */
  readonly fields: Change
  readonly design: Design
  readonly rise: number
  readonly reach: number
  /** How far it misses, mm. */
  readonly miss: number
}

export interface Aim {
  /** True if a design within the checks brings the tip there. */
  readonly reached: boolean
  /** Every way found that is within the checks, least change first. */
  readonly ways: readonly Aimed[]
  /** If it is out of reach: the nearest that is within the checks. */
  readonly nearest: Aimed | null
}

/** Two ways nearer than this in every setting are one, mm or degrees. */
const ONE_WAY = 1e-4

/** A tip this near to the target is there, mm. */
const THERE = 1e-6

interface Setting {
  readonly name: string
  readonly min: number
  readonly max: number
  readonly now: number
  /** The setting of the same size on the other side, where the two are equal now. */
  readonly twin?: string
}

/** The settings of a mechanism with the range that makes sense on this card. */
function settingsOf(design: Design, id: string): readonly Setting[] {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  const big = Math.max(design.card.width, design.card.height)
  const { aims } = kindOf(m)
  return settable(m)
    .filter(({ name }) => aims.includes(name))
    .map(({ name, unit, min, max, ...rest }) => {
      const now = settingOf(m, name)
      const twin = 'twin' in rest ? rest.twin : undefined
      return {
        name,
        min: unit === 'mm' ? Math.max(min, -big) : min,
        max: unit === 'mm' ? Math.min(max, big) : max,
        now,
        ...(twin !== undefined && settingOf(m, twin) === now ? { twin } : {}),
      }
    })
}

/** Whether sides that are equal stay so, if these settings are moved. */
const staysEven = (names: readonly Setting[]): boolean =>
  names.every(({ twin }) => twin === undefined || names.some(({ name }) => name === twin))

/** The design with some settings of a mechanism at these values; null where a file cannot hold it. */
function withSettings(
  design: Design,
  id: string,
  names: readonly Setting[],
  values: readonly number[],
): Design | null {
  let next = design
  for (let k = 0; k < names.length; k++) {
    const { name } = names[k] as Setting
    const value = values[k] as number
    const m = next.mechanisms.find((one) => one.id === id)
    if (!m) return null
    next = change(next, id, fieldsFor(m, name, value))
    // Some numbers move another along, which may be at its end: then a file cannot hold this one.
    const now = next.mechanisms.find((one) => one.id === id)
    if (!now || !isSetTo(now, name, value)) return null
  }
  return isHoldable(next) ? next : null
}

/** What is missed, one number for each wanted reading, mm; null where the mechanism closes at no opening and there is no tip. */
function missed(design: Design, id: string, target: Target): number[] | null {
  if (modelOf(design).builds.some(({ mechanism, build }) => mechanism.id === id && closesNowhere(build)))
    return null
  const { rise, reach } = tipOf(design, id, target.opening)
  return [
    ...(target.rise === undefined ? [] : [rise - target.rise]),
    ...(target.reach === undefined ? [] : [reach - target.reach]),
  ]
}

const missIn = (design: Design, id: string, target: Target): number => {
  const found = missed(design, id, target)
  return found ? norm(found) : Number.POSITIVE_INFINITY
}

function tipOf(design: Design, id: string, opening: number): { rise: number; reach: number } {
  const poser = compile(design)
  poser(opening)
  const at = tipAt(
    poser,
    design.mechanisms.findIndex((m) => m.id === id),
  )
  return { rise: riseOf(at, opening), reach: at[1] }
}

const norm = (v: readonly number[]): number => Math.hypot(...v)

/** Starting values spread over a setting's range, the present one first. */
function starts({ min, max, now }: Setting): readonly number[] {
  return [now, ...[0.2, 0.75].map((t) => min + t * (max - min))]
}

/** Every choice of so many settings, each once. */
function choices(settings: readonly Setting[], count: number): readonly (readonly Setting[])[] {
  if (count === 0) return [[]]
  return settings.flatMap((one, k) => choices(settings.slice(k + 1), count - 1).map((rest) => [one, ...rest]))
}

/** Where to begin: one or two settings from all their starts together, more of them from the starts in step. */
function grid(names: readonly Setting[]): readonly (readonly number[])[] {
  const each = names.map(starts)
  if (each.length > 2) return [0, 1, 2].map((k) => each.map((values) => values[k] as number))
  const [first = [], second] = each
  return first.flatMap((x) => (second ? second.map((y) => [x, y]) : [[x]]))
}

/** The checks that are quick beside the proof that nothing meets on the way, and that one. */
const QUICK = checksThat(({ cost }) => cost !== 'last')

const SLOW = checksThat(({ cost }) => cost === 'last')

const failing = (design: Design, names: readonly CheckName[]): CheckName[] =>
  check(design, { repairs: false, names }).flatMap(({ name, ok }) => (ok ? [] : [name]))

/** Whether a design breaks nothing that holds now, by the quick checks or by all. */
interface Judge {
  quick(design: Design): boolean
  whole(design: Design): boolean
}

/** The slow check is made last, and each design judged once. None may stop the card short of an opening that it reaches now. */
function judgeFor(before: Design, opening: number): Judge {
  const opens = (design: Design): boolean => broughtIn(design, opening) === opening
  const free = !opens(before)
  const broken = new Set(failing(before, [...QUICK, ...SLOW]))
  const breaks = (design: Design, names: readonly CheckName[]) =>
    failing(
      design,
      names.filter((name) => !broken.has(name)),
    ).some((name) => !broken.has(name))
  const known = new Map<string, boolean>()
  const once = (pass: string, design: Design, names: readonly CheckName[]): boolean => {
    const key = pass + JSON.stringify(design.mechanisms)
    const found = known.get(key) ?? !breaks(design, names)
    known.set(key, found)
    return found
  }
  const quick = (design: Design) => (free || opens(design)) && once('quick', design, QUICK)
  return {
    quick,
    whole: (design) =>
      quick(design) && (SLOW.every((name) => broken.has(name)) || once('whole', design, SLOW)),
  }
}

/** A set of values for some settings, as the search found them. */
interface Found {
  readonly names: readonly Setting[]
  readonly values: readonly number[]
}

/**
 * The settings of mechanism `id` that bring its tip to a wanted rise and reach (mm) at an opening
 * (degrees): one setting is moved for one wanted reading, two for both, one more where no so few do it;
 * all others stay. All ways found from many starts are given, those within the checks only. If there is
 * none, the nearest design within the checks is. Throws a RangeError for an unknown mechanism or an empty target.
 */
export function aim(design: Design, id: string, target: Target): Aim {
  const work = aiming(design, id, target)
  for (;;) {
    const { done, value } = work.next()
    if (done) return value
  }
}

/** The same bit by bit, for a caller that has more to do: each step takes a few hundredths of a second at most. */
export function* aiming(design: Design, id: string, target: Target): Generator<void, Aim> {
  if (!design.mechanisms.some((m) => m.id === id)) throw new RangeError(`there is no mechanism ${id}`)
  const count = [target.rise, target.reach].filter((wanted) => wanted !== undefined).length
  if (count === 0) throw new RangeError('the target must name a rise, a reach or both')
  const settings = settingsOf(design, id)
  const one = yield* search(design, id, target, choices(settings, count))
  const judge = judgeFor(design, target.opening)
  yield
  const ways = yield* within(design, id, target, one.found, judge)
  if (ways.length > 0) return { reached: true, ways, nearest: null }
  // What so many settings cannot do one more may: a tent is moved along by both its ends together.
  const two = yield* search(design, id, target, choices(settings, count + 1))
  const more = yield* within(design, id, target, two.found, judge)
  const least = more.filter(
    (way, k) =>
      more.findIndex((other) => Object.keys(other.settings).join() === Object.keys(way.settings).join()) ===
      k,
  )
  if (least.length > 0) return { reached: true, ways: least, nearest: null }
  const close = [...one.close, ...two.close]
  return { reached: false, ways: [], nearest: yield* nearestWithin(design, id, target, close, judge) }
}

/** How large a change is; of two as large, the one that leaves both sides equal is the lesser by a whisker. */
const sizeOf = (names: readonly Setting[], values: readonly number[]): number =>
  norm(names.map(({ now }, k) => (values[k] as number) - now)) + (staysEven(names) ? 0 : ONE_WAY)

/** Every set of values that brings the tip there, each once, least change first; and those that come near. */
function* search(
  design: Design,
  id: string,
  target: Target,
  among: readonly (readonly Setting[])[],
): Generator<void, { found: readonly Found[]; close: readonly (Found & { miss: number })[] }> {
  const alone = downTo(design, id)
  const found: (Found & { far: number })[] = []
  const close: (Found & { miss: number })[] = []
  for (const names of among) {
    const miss = (x: readonly number[]) => {
      const next = withSettings(alone, id, names, x)
      return next && missed(next, id, target)
    }
    for (const start of grid(names)) {
      const end = descended(miss, start, names, THERE / 10)
      yield
      if (!end) continue
      const { x, miss: left } = end
      close.push({ names, values: x, miss: left })
      if (left > THERE) continue
      const twin = found.some(
        (one) => one.names === names && one.values.every((v, k) => Math.abs(v - (x[k] as number)) < ONE_WAY),
      )
      if (twin) continue
      found.push({ names, values: x, far: sizeOf(names, x) })
    }
  }
  return { found: found.sort((a, b) => a.far - b.far), close: close.sort((a, b) => a.miss - b.miss) }
}

/** Those of the found ones that break nothing, in their order. */
function* within(
  design: Design,
  id: string,
  target: Target,
  found: readonly Found[],
  judge: Judge,
): Generator<void, readonly Aimed[]> {
  const ways: Aimed[] = []
  for (const one of found) {
    const next = withSettings(design, id, one.names, one.values)
    if (next && judge.whole(next)) ways.push(aimed(design, id, target, one, next))
    yield
  }
  return ways
}

/** What is told of a design that breaks nothing. */
function aimed(design: Design, id: string, target: Target, { names, values }: Found, next: Design): Aimed {
  const tip = tipOf(next, id, target.opening)
  const m = next.mechanisms.find((one) => one.id === id)
  const fields: Record<string, number | string> = {}
  let soFar = design
  names.forEach(({ name }, k) => {
    const now = soFar.mechanisms.find((one) => one.id === id)
    if (!now) return
    const set = fieldsFor(now, name, values[k] as number)
    Object.assign(fields, set)
    soFar = change(soFar, id, set)
  })
  return {
    settings: Object.fromEntries(names.map(({ name }) => [name, m ? settingOf(m, name) : 0])),
    fields,
    design: next,
    rise: tip.rise,
    reach: tip.reach,
    miss: missIn(next, id, target),
  }
}

/** So many of the nearest misses are walked to. */
const MOST_WALKS = 6

/** A walk ends this near to where a check fails, mm or degrees: nobody cuts finer. */
const HAIR = 0.02

/** Walks from the present design towards each near miss as far as the checks allow; the best of these. */
function* nearestWithin(
  design: Design,
  id: string,
  target: Target,
  close: readonly (Found & { miss: number })[],
  judge: Judge,
): Generator<void, Aimed | null> {
  const best = [...close].sort((a, b) => a.miss - b.miss)
  const tried = best
    .filter((one, k) => best.findIndex((other) => other.names === one.names) === k)
    .slice(0, MOST_WALKS)
  let nearest: Aimed | null = null
  for (const { names, values } of tried) {
    const long = Math.max(...names.map(({ now }, k) => Math.abs((values[k] as number) - now)))
    const along = (t: number) => {
      const x = names.map(({ now }, k) => now + t * ((values[k] as number) - now))
      return { names, values: x, next: withSettings(design, id, names, x) }
    }
    /** How far the walk goes before something breaks, up to `most`; it halves what is left. */
    const reaches = function* (holds: (next: Design) => boolean, most: number): Generator<void, number> {
      const sound = (t: number) => {
        const { next } = along(t)
        return next !== null && holds(next)
      }
      if (sound(most)) return most
      const work = halving(0, most, HAIR / long)
      let step = work.next(false)
      while (!step.done) {
        step = work.next(sound(step.value))
        yield
      }
      return step.value[0]
    }
    // The slow check is asked only about what the quick ones leave.
    const quick = yield* reaches(judge.quick, 1)
    const most = along(quick).next
    // As far as that it must come nearer than what is known, or the slow check is not worth making.
    if (!most || (nearest && missIn(most, id, target) >= nearest.miss)) continue
    const whole = yield* reaches(judge.whole, quick)
    const { next, ...there } = along(whole)
    const way = next && aimed(design, id, target, there, next)
    if (way && (!nearest || way.miss < nearest.miss)) nearest = way
  }
  return nearest
}
