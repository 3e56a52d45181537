import { change, read, settable, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { ownerOf } from '../design/name.ts'
import { fieldsFor, isHoldable, isSetTo } from '../design/setting.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { modelOf } from '../model/model.ts'
import { signedArea } from '../plane/convex.ts'
import { lastWhole } from '../plane/whole.ts'
import type { About, Finding } from './subject.ts'
import { keyOf, mechanismsIn } from './subject.ts'
import { checksThat } from './table.ts'
import type { CheckName, Repair } from './verdict.ts'

/** What the checks find on a design: all of them, or those named; about all mechanisms, or some; null: the search has cost enough. */
export type Examine = (
  design: Design,
  names: readonly CheckName[] | null,
  about: About | null,
) => readonly Finding[] | null

/** What a search for a repair may use. */
export interface Means {
  readonly examine: Examine
  /** How many changes of a design can still be tried by the quick checks, beside examining in full what is found. */
  affords(design: Design): number
}

/** Repairs are rounded to this many steps to the millimetre or degree: what a careful hand can cut. */
const STEPS = 10

/** Of changes that seem to keep all other checks, so many are examined in full; and of those that do not. */
const TRIED = 6

/** More than any number of checks that fail. */
const SPOILS = 1e6

/** Designs of no more mechanisms than this are searched whole. */
const SMALL = 4

/** So many neighbours on either side are looked at with a mechanism in a larger design. */
const NEIGHBOURS = 1

const failures = (findings: readonly Finding[]): Set<string> =>
  new Set(findings.filter(({ ok }) => !ok).map(keyOf))

/** One number of one mechanism, turned up or down. */
interface Knob {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly from: number
  readonly way: 1 | -1
}

interface Turn {
  readonly knob: Knob
  /** In tenths, outwards from where it stands. */
  readonly steps: number
  readonly to: number
  readonly design: Design
}

function knobsOf(design: Design, ids: readonly string[]): Knob[] {
  return ids
    .flatMap((id) => design.mechanisms.filter((m) => m.id === id))
    .flatMap((m) =>
      settable(m).flatMap((setting): Knob[] => {
        const { name: field, label, unit } = setting
        const from = settingOf(m, field)
        // A derived number that sets one field is that field in other words.
        if ('set' in setting && Object.keys(setting.set(m, from)).length < 2) return []
        if (!Number.isFinite(from)) return []
        return ([1, -1] as const).map((way) => ({ id: m.id, field, label, unit, from, way }))
      }),
    )
}

/** The design with a knob turned by some tenths, or null if a file could not hold it. */
function turned(design: Design, knob: Knob, steps: number): Turn | null {
  const start = knob.from * STEPS
  const grid = knob.way > 0 ? Math.floor(start + 1e-6) + steps : Math.ceil(start - 1e-6) - steps
  const to = grid / STEPS
  const m = design.mechanisms.find(({ id }) => id === knob.id)
  if (!m) return null
  const next = change(design, knob.id, fieldsFor(m, knob.field, to))
  const now = next.mechanisms.find(({ id }) => id === knob.id)
  if (!now || !isSetTo(now, knob.field, to) || !isHoldable(next)) return null
  return nothingVanishes(design, next) ? { knob, steps, to, design: next } : null
}

/** A part that shrinks to less than this share of its area is not mended but taken away. */
const LEFT = 0.1

export function nothingVanishes(before: Design, after: Design): boolean {
  const [old, now] = [modelOf(before).panels, modelOf(after).panels]
  return old.every(
    ({ outline }, k) => Math.abs(signedArea(now[k]?.outline ?? [])) >= LEFT * Math.abs(signedArea(outline)),
  )
}

/** Each place that is tried lies by so much farther off than the last, or more where little can be afforded; near by, every tenth. */
const GROWTH = 1.25

/** Up to so many tenths every one is tried, where that can be afforded. */
const NEARBY = 24

/** More tenths than any number of a file may change by. */
const BEYOND = 1e5

/** Where a knob is tried, in tenths from where it stands, over the whole of its range. */
function grid(design: Design, { unit }: Knob, places: number): number[] {
  const most = STEPS * (unit === 'deg' ? 180 : design.card.width + design.card.height)
  const all: number[] = []
  const growth = Math.max(GROWTH, most ** (1 / Math.max(2, places)))
  const near = Math.min(NEARBY, places / 2)
  for (let steps = 1; steps <= most; steps = steps < near ? steps + 1 : Math.ceil(steps * growth))
    all.push(steps)
  return all
}

/** The numbers in which two designs differ, by mechanism. */
function changesOf(before: Design, after: Design): Repair['change'] {
  return after.mechanisms.flatMap((m, k) => {
    const old = before.mechanisms[k]
    const fields: Record<string, number> = {}
    for (const { name } of kindOf(m).fields) {
      const value = read(m, name)
      // Rounding in the last digits is no change; nor is it worth writing down.
      if (typeof value === 'number' && old && !(Math.abs(value - Number(read(old, name) ?? 0)) < 1e-9))
        fields[name] = Number(value.toFixed(9))
    }
    return Object.keys(fields).length > 0 ? [{ id: m.id, fields }] : []
  })
}

/** Checks of the cuts themselves: a cut that can no longer be made hides what follows from it, and that is no repair. */
const cuts = checksThat(({ stage }) => stage === 'cuts')

/** Checks that are quick enough to be asked at every step of a search. */
const quick = checksThat(({ cost }) => cost === 'step')

/** The mechanisms that differ between two designs, and all that sits on them. */
export function affected(before: Design, after: Design): Set<string> {
  const ids = new Set<string>()
  after.mechanisms.forEach((m, k) => {
    if (m !== before.mechanisms[k] || ids.has(ownerOf(m.on))) ids.add(m.id)
  })
  return ids
}

/** The mechanisms and all that they sit on, those named first. */
export function standing(design: Design, named: readonly string[]): string[] {
  const hosts = new Set(named)
  for (const m of [...design.mechanisms].reverse())
    if (hosts.has(m.id) && ownerOf(m.on) !== 'gutter' && ownerOf(m.on) !== 'page') hosts.add(ownerOf(m.on))
  return [...hosts]
}

/** Of a large design the part in which a search is made: what is concerned, what sits on it, its neighbours, and what they stand on. */
export function neighbourhood(design: Design, concerned: readonly string[]): Design {
  const { mechanisms } = design
  if (mechanisms.length <= SMALL) return design
  const kept = new Set(concerned)
  const from = new Map(modelOf(design).builds.map(({ mechanism, build }) => [mechanism.id, build.span[0]]))
  for (const id of standing(design, concerned)) {
    const on = mechanisms.find((m) => m.id === id)?.on
    const row = mechanisms
      .filter((m) => m.on === on)
      .sort((a, b) => (from.get(a.id) ?? 0) - (from.get(b.id) ?? 0))
    const at = row.findIndex((m) => m.id === id)
    for (const { id: next } of row.slice(Math.max(0, at - NEIGHBOURS), at + NEIGHBOURS + 1)) kept.add(next)
  }
  for (const m of mechanisms) if (kept.has(ownerOf(m.on))) kept.add(m.id)
  const all = new Set(standing(design, [...kept]))
  return { ...design, mechanisms: mechanisms.filter(({ id }) => all.has(id)) }
}

/** One knob's part of the search. */
interface Lane {
  readonly knob: Knob
  /** The last step that was tried and did not serve. */
  bad: number
  /** Nothing more is to be found here. */
  closed: boolean
  /** What the last turn harmed: see `harmOf`. */
  harm: number
  /** The first turn that does. */
  harmful: Turn | null
}

/** To a millionth: of two changes of one size, the one that came first. */
const size = ({ knob, to }: Turn): number => Math.round(Math.abs(to - knob.from) * 1e6)

/** The least turn between one that does not serve and one that does, by halving. */
function refined(part: Design, bad: number, found: Turn, serves: (turn: Turn) => boolean): Turn {
  let best = found
  const serving = (steps: number): boolean => {
    const turn = turned(part, found.knob, steps)
    if (!turn || !serves(turn)) return false
    best = turn
    return true
  }
  lastWhole(serving, found.steps, bad)
  return best
}

/**
 * The nearest change of one number that mends what a check found and keeps every other check that held; if there is
 * none, of those that mend it the one after which the fewest checks fail; null if no single change that was tried
 * mends it. A degree counts as much as a millimetre: a point 57 mm away moves as far. Numbers of the mechanisms
 * concerned are tried, and of their hosts: all of them over the whole of their range, nearest first.
 */
export function repairFor(
  design: Design,
  finding: Finding,
  findings: readonly Finding[],
  { examine, affords }: Means,
): Repair | null {
  const target = keyOf(finding)
  const failed = failures(findings)
  const concerned = mechanismsIn(finding)
  const alone: About = { ids: new Set(concerned), alone: true }
  if (concerned.length === 0) return null
  const isTarget = (one: Finding): boolean => !one.ok && keyOf(one) === target
  const small = neighbourhood(design, concerned)
  // What comes from farther away is searched for in the whole.
  const part = small === design || examine(small, [finding.name], alone)?.some(isTarget) ? small : design
  const asked = [...new Set([...quick, ...(quick.includes(finding.name) ? [] : cuts)])]

  /** How many checks fail anew, by the quick ones; `SPOILS` if what is left cannot be cut, infinite if the fault is not mended. */
  const harmOf = ({ design: next }: Turn): number => {
    if (quick.includes(finding.name)) {
      // Most changes do not mend it, and that is told at once.
      const own = examine(next, [finding.name], alone)
      if (!own || own.some(isTarget)) return Number.POSITIVE_INFINITY
    }
    const about: About = { ids: new Set([...affected(part, next), ...concerned]), alone: false }
    const found = examine(next, asked, about)
    if (!found) return Number.POSITIVE_INFINITY
    const fresh = found.filter((one) => !one.ok && !failed.has(keyOf(one)))
    if (found.some(isTarget)) return Number.POSITIVE_INFINITY
    if (fresh.some(({ name }) => cuts.includes(name))) return SPOILS
    if (quick.includes(finding.name)) return fresh.length
    const slow = examine(next, [finding.name], alone)
    return !slow || slow.some((one) => !one.ok && (isTarget(one) || !failed.has(keyOf(one))))
      ? Number.POSITIVE_INFINITY
      : fresh.length
  }
  /** How many checks fail in the whole design that held before; null if the fault is not mended there. */
  const harmInAll = (turn: Turn): number | null => {
    const whole = turned(design, turn.knob, turn.steps)
    const found = whole && examine(whole.design, null, null)
    if (!found || found.some(isTarget)) return null
    return [...failures(found)].filter((key) => !failed.has(key)).length
  }
  const repairBy = ({ knob, steps, to }: Turn, keepsRest: boolean): Repair | null => {
    const whole = turned(design, knob, steps)
    const { id, field, label, unit, from } = knob
    return whole && { id, field, label, unit, from, to, change: changesOf(design, whole.design), keepsRest }
  }
  // Where only one value will do (two sides that must match), the slope of the measure points at it.
  const hintsOf = (knob: Knob): number[] => {
    const one = turned(part, knob, 1)
    const after = one && examine(one.design, [finding.name], alone)?.find(isTarget)
    if (!one || !after) return []
    const slope = (after.value - finding.value) / Math.abs(one.to - knob.from)
    const steps = Math.round((STEPS * (finding.limit - finding.value)) / slope)
    // Where the measure hardly changes, the slope may point anywhere: past all that a file may hold, the last that it may is tried.
    return [steps - 1, steps, steps + 1].filter((k) => k > 0).map((k) => Math.min(k, BEYOND))
  }

  const lanes = knobsOf(part, standing(part, concerned)).map(
    (knob): Lane => ({ knob, bad: 0, closed: false, harm: Number.POSITIVE_INFINITY, harmful: null }),
  )
  // A place costs two looks where the check itself is slow, and what is found is refined.
  const places = affords(part) / (2 * Math.max(1, lanes.length))
  const line = lanes
    .flatMap((lane) =>
      [...new Set([...hintsOf(lane.knob), ...grid(part, lane.knob, places)])].map((steps) => ({
        lane,
        steps,
      })),
    )
    .sort((a, b) => a.steps - b.steps)

  /** Tries one place of one knob: the least turn up to there that mends all and harms nothing, as far as the quick checks tell. */
  const tried = (lane: Lane, steps: number): Turn | null => {
    let turn = turned(part, lane.knob, steps)
    if (!turn) {
      // The last value that a file may hold.
      lane.closed = true
      const fine = lastAllowed(part, lane.knob, lane.bad, steps)
      turn = fine > lane.bad ? turned(part, lane.knob, fine) : null
    }
    const harm = turn ? harmOf(turn) : Number.POSITIVE_INFINITY
    if (turn && harm === 0) {
      const least = refined(part, lane.bad, turn, (one) => harmOf(one) === 0)
      Object.assign(lane, { bad: turn.steps, harm })
      return least
    }
    if (!turn) return null
    const { bad, harm: before } = lane
    Object.assign(lane, { bad: turn.steps, harm })
    if (harm >= before) return null
    // It mends, and harms something else: less of it, where it just mends, may not.
    for (const limit of harm < SPOILS && before > SPOILS ? [SPOILS, harm] : [harm]) {
      const least = refined(part, bad, turn, (one) => harmOf(one) <= limit)
      const left = harmOf(least)
      if (left === 0) return least
      if (left < SPOILS) lane.harmful ??= least
    }
    return null
  }

  const spoils: Turn[] = []
  let waiting: Turn[] = []
  let left = TRIED
  for (let k = 0; k <= line.length && left > 0 && affords(part) > 0; ) {
    const next = line[k]
    const [best] = waiting
    // Nothing nearer than the best one can be found any more: it is examined in full.
    const isNearest = (): boolean => !lanes.some(({ bad, closed }) => !closed && bad < (best?.steps ?? 0))
    if (best && (!next || isNearest())) {
      waiting = waiting.slice(1)
      left--
      const harm = harmInAll(best)
      if (harm === 0) return repairBy(best, true)
      if (harm !== null) spoils.push(best)
      continue
    }
    k++
    if (!next || next.lane.closed || next.steps <= next.lane.bad) continue
    const found = tried(next.lane, next.steps)
    if (found) waiting = [...waiting, found].sort((a, b) => size(a) - size(b))
  }
  const harmful = lanes.flatMap(({ harmful: found }) => found ?? [])
  const least = [...spoils, ...waiting, ...harmful]
    .sort((a, b) => size(a) - size(b))
    .slice(0, TRIED)
    .flatMap((turn) => {
      const harm = harmInAll(turn)
      return harm === null ? [] : { turn, harm }
    })
    .reduce<{ turn: Turn; harm: number } | null>((a, b) => (a && a.harm <= b.harm ? a : b), null)
  return least && repairBy(least.turn, least.harm === 0)
}

/** The last step of a knob between one that a file may hold and one that it may not. */
function lastAllowed(design: Design, knob: Knob, allowed: number, refused: number): number {
  return lastWhole((steps) => turned(design, knob, steps) !== null, allowed, refused)
}
