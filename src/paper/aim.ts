import { change, fieldsFor, settable, settingOf } from './change.ts'
import { check } from './check.ts'
import { riseOf, tipAt } from './measure.ts'
import type { Design } from './model.ts'
import { compile } from './pose.ts'
import { kindOf } from './registry.ts'
import type { Change, CheckName } from './types.ts'

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
  /** Checks that hold now and would fail then. */
  readonly breaks: readonly CheckName[]
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
const SAME = 1e-4
/** A tip this near to the target is there, mm. */
const THERE = 1e-6

interface Setting {
  readonly name: string
  readonly min: number
  readonly max: number
  readonly now: number
}

/** The settings of a mechanism with the range that makes sense on this card. */
function settingsOf(design: Design, id: string): readonly Setting[] {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  const big = Math.max(design.card.width, design.card.height)
  const { aims } = kindOf(m)
  return settable(m)
    .filter(({ name }) => aims.includes(name))
    .map(({ name, unit, min, max }) => ({
      name,
      min: unit === 'mm' ? Math.max(min, -big) : min,
      max: unit === 'mm' ? Math.min(max, big) : max,
      now: settingOf(m, name),
    }))
}

/** The design with one or two settings of a mechanism at these values; null outside their limits. */
function withSettings(
  design: Design,
  id: string,
  names: readonly Setting[],
  values: readonly number[],
): Design | null {
  let next = design
  for (let k = 0; k < names.length; k++) {
    const { name, min, max } = names[k] as Setting
    const value = values[k] as number
    if (!(value >= min && value <= max)) return null
    const m = next.mechanisms.find((one) => one.id === id)
    if (!m) return null
    next = change(next, id, fieldsFor(m, name, value))
  }
  return next.mechanisms.every((m) => !kindOf(m).limits?.(m)) ? next : null
}

/** What is missed, one number for each wanted reading, mm. */
function missed(design: Design, id: string, target: Target): number[] {
  const { rise, reach } = tipOf(design, id, target.opening)
  return [
    ...(target.rise === undefined ? [] : [rise - target.rise]),
    ...(target.reach === undefined ? [] : [reach - target.reach]),
  ]
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

/** The design with nothing but a mechanism and what it stands on: all that its tip depends on. */
function standing(design: Design, id: string): Design {
  const kept = new Set<string>()
  for (let m = design.mechanisms.find((one) => one.id === id); m; ) {
    kept.add(m.id)
    const host = m.on.split('/')[0]
    m = design.mechanisms.find((one) => one.id === host)
  }
  return { ...design, mechanisms: design.mechanisms.filter((m) => kept.has(m.id)) }
}

const norm = (v: readonly number[]): number => Math.hypot(...v)

/**
 * Damped Gauss-Newton (Levenberg-Marquardt) in one or two settings, derivatives by central
 * differences. Returns the values at the least miss it found.
 */
function descend(
  miss: (x: readonly number[]) => readonly number[] | null,
  start: readonly number[],
): readonly number[] | null {
  let x = [...start]
  let r = miss(x)
  if (!r) return null
  let damping = 1e-3
  let stuck = 0
  for (let turn = 0; turn < 40 && norm(r) > THERE / 10; turn++) {
    const h = 1e-4
    const columns = x.map((_, k) => {
      const moved = (d: number) => miss(x.map((v, i) => (i === k ? v + d : v)))
      const [a, b] = [moved(h), moved(-h)]
      return a && b ? a.map((v, i) => (v - (b[i] as number)) / (2 * h)) : null
    })
    if (columns.some((column) => column === null)) return x
    const J = columns as number[][]
    const at = (i: number, j: number) =>
      (J[i] as number[]).reduce((sum, v, k) => sum + v * ((J[j] as number[])[k] as number), 0)
    const g = J.map((column) => column.reduce((sum, v, k) => sum + v * ((r as number[])[k] as number), 0))
    const a = at(0, 0) * (1 + damping) + 1e-12
    let step: number[]
    if (x.length === 1) step = [-(g[0] as number) / a]
    else {
      const d = at(1, 1) * (1 + damping) + 1e-12
      const b = at(0, 1)
      const det = a * d - b * b
      step = [
        -(d * (g[0] as number) - b * (g[1] as number)) / det,
        -(a * (g[1] as number) - b * (g[0] as number)) / det,
      ]
    }
    const next = x.map((v, k) => v + (step[k] as number))
    const rn = miss(next)
    if (rn && norm(rn) < norm(r)) {
      // Creeping towards a place that misses: Gauss-Newton halves the miss many times over where it can be had.
      stuck = norm(rn) > 0.9 * norm(r) ? stuck + 1 : 0
      if (stuck > 4) return next
      x = next
      r = rn
      damping = Math.max(1e-9, damping / 5)
    } else {
      damping *= 8
      if (damping > 1e6) break
    }
  }
  return x
}

/** Starting values spread over a setting's range, the present one first. */
function starts({ min, max, now }: Setting): readonly number[] {
  return [now, ...[0.2, 0.75].map((t) => min + t * (max - min))]
}

/** The pairs of settings (or single ones) that can be solved for as many readings. */
function choices(settings: readonly Setting[], count: number): readonly (readonly Setting[])[] {
  if (count === 1) return settings.map((one) => [one])
  return settings.flatMap((one, k) => settings.slice(k + 1).map((two) => [one, two]))
}

/**
 * The settings of mechanism `id` that bring its tip to a wanted rise and reach (mm) at an opening
 * (degrees): one setting is moved for one wanted reading, two for both, all others stay. All ways
 * found from many starts are given, those within the checks only. If there is none, the nearest
 * design within the checks is. Throws a RangeError for an unknown mechanism or an empty target.
 */
export function aim(design: Design, id: string, target: Target): Aim {
  if (!design.mechanisms.some((m) => m.id === id)) throw new RangeError(`there is no mechanism ${id}`)
  const count = missed(design, id, target).length
  if (count === 0) throw new RangeError('the target must name a rise, a reach or both')
  const settings = settingsOf(design, id)
  const failing = (d: Design): CheckName[] =>
    check(d, { repairs: false }).flatMap(({ name, ok }) => (ok ? [] : [name]))
  const before = new Set(failing(design))
  const aimed = (names: readonly Setting[], values: readonly number[], next: Design): Aimed => {
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
      miss: norm(missed(next, id, target)),
      breaks: failing(next).filter((name) => !before.has(name)),
    }
  }
  const found: { names: readonly Setting[]; values: readonly number[]; far: number }[] = []
  const close: { names: readonly Setting[]; values: readonly number[]; miss: number }[] = []
  const alone = standing(design, id)
  for (const names of choices(settings, count)) {
    const miss = (x: readonly number[]) => {
      const next = withSettings(alone, id, names, x)
      return next ? missed(next, id, target) : null
    }
    const grid =
      names.length === 1
        ? starts(names[0] as Setting).map((x) => [x])
        : starts(names[0] as Setting).flatMap((x) => starts(names[1] as Setting).map((y) => [x, y]))
    for (const start of grid) {
      const x = descend(miss, start)
      const r = x && miss(x)
      if (!x || !r) continue
      close.push({ names, values: x, miss: norm(r) })
      if (norm(r) > THERE) continue
      const twin = found.some(
        (one) => one.names === names && one.values.every((v, k) => Math.abs(v - (x[k] as number)) < SAME),
      )
      if (twin) continue
      const far = norm(names.map(({ now }, k) => (x[k] as number) - now))
      found.push({ names, values: x, far })
    }
  }
  const ways: Aimed[] = []
  for (const { names, values } of found.sort((a, b) => a.far - b.far)) {
    const next = withSettings(design, id, names, values)
    const way = next && aimed(names, values, next)
    if (way && way.breaks.length === 0) ways.push(way)
  }
  if (ways.length > 0) return { reached: true, ways, nearest: null }
  return { reached: false, ways, nearest: nearestWithin(design, id, close, aimed) }
}

/** Walks from the present design towards each near miss as far as the checks allow; the best of these. */
function nearestWithin(
  design: Design,
  id: string,
  close: readonly { names: readonly Setting[]; values: readonly number[]; miss: number }[],
  aimed: (names: readonly Setting[], values: readonly number[], next: Design) => Aimed,
): Aimed | null {
  const best = [...close].sort((a, b) => a.miss - b.miss)
  const tried = best
    .filter((one, k) => best.findIndex((other) => other.names === one.names) === k)
    .slice(0, 4)
  let nearest: Aimed | null = null
  for (const { names, values } of tried) {
    const at = (t: number): Aimed | null => {
      const x = names.map(({ now }, k) => now + t * ((values[k] as number) - now))
      const next = withSettings(design, id, names, x)
      const way = next && aimed(names, x, next)
      return way && way.breaks.length === 0 ? way : null
    }
    let low = 0
    let high = 1
    let kept = at(1)
    if (!kept) {
      kept = at(0)
      for (let k = 0; k < 16; k++) {
        const middle = (low + high) / 2
        const way = at(middle)
        if (way) {
          low = middle
          kept = way
        } else high = middle
      }
    }
    if (kept && (!nearest || kept.miss < nearest.miss)) nearest = kept
  }
  return nearest
}
