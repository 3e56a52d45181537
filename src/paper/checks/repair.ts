import { change, fieldsFor, isHoldable, isSetTo, read, settable, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { modelOf } from '../model/model.ts'
import { signedArea } from '../plane/convex.ts'
import type { Finding } from './subject.ts'
import { keyOf, mechanismsIn } from './subject.ts'
import type { CheckName, Repair } from './verdict.ts'

/** What the checks find on a design: all of them, or those named about these mechanisms alone; null: the search has cost enough. */
export type Examine = (
  design: Design,
  names: readonly CheckName[] | null,
  only: ReadonlySet<string> | null,
) => readonly Finding[] | null

/** Repairs are rounded to this many steps to the millimetre or degree: what a careful hand can cut. */
const STEPS = 10

/** How much wider each step of the search is than the last. */
const GROWTH = 1.6

/** Repairs that keep all other checks are looked for among this many. */
const TRIED = 6

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

function nothingVanishes(before: Design, after: Design): boolean {
  const [old, now] = [modelOf(before).panels, modelOf(after).panels]
  return old.every(
    ({ outline }, k) => Math.abs(signedArea(now[k]?.outline ?? [])) >= LEFT * Math.abs(signedArea(outline)),
  )
}

/**
 * The least turn from `first` steps outwards that is good. Steps grow until one is good, then the bracket
 * is halved: goodness need not be monotone, a good stretch narrower than the step may be missed, and what
 * is returned is good in any case.
 */
function leastGood(
  design: Design,
  knob: Knob,
  first: number,
  good: (turn: Turn) => boolean,
  hint: number | null,
): Turn | null {
  const most = STEPS * (knob.unit === 'deg' ? 180 : design.card.width + design.card.height)
  let bad = first - 1
  let found: Turn | null = null
  let steps = first
  for (let stride = 1; !found && steps <= most; steps += Math.ceil(stride), stride *= GROWTH) {
    let turn = turned(design, knob, steps)
    if (!turn) {
      // The last value that a file may hold.
      let [fine, refused] = [bad, steps]
      while (refused - fine > 1) {
        const middle = (fine + refused) >> 1
        if (turned(design, knob, middle)) fine = middle
        else refused = middle
      }
      turn = fine > bad ? turned(design, knob, fine) : null
      if (turn && good(turn)) found = turn
      break
    }
    if (good(turn)) found = turn
    else bad = steps
  }
  // Where only one value will do (two sides that must match), the slope of the measure points at it.
  if (!found && hint !== null && hint >= first && hint <= most)
    for (const near of [hint, hint - 1, hint + 1]) {
      const turn = near >= first ? turned(design, knob, near) : null
      if (turn && good(turn)) return turn
    }
  while (found && found.steps - bad > 1) {
    const middle = turned(design, knob, (found.steps + bad) >> 1)
    if (middle && good(middle)) found = middle
    else bad = (found.steps + bad) >> 1
  }
  return found
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

const repairBy = (before: Design, { knob, to, design }: Turn, keepsRest: boolean): Repair => ({
  id: knob.id,
  field: knob.field,
  label: knob.label,
  unit: knob.unit,
  from: knob.from,
  to,
  change: changesOf(before, design),
  keepsRest,
})

/** Checks of the cuts themselves. */
const drawn: readonly CheckName[] = ['inside-fold', 'cuts-inside', 'cuts-apart']

/** Checks that are quick enough to be asked at every step of a search. */
const quick: readonly CheckName[] = [
  'shuts-flat',
  'opens-flat',
  'stays-inside',
  'inside-fold',
  'cuts-inside',
  'cuts-apart',
  'bridge',
  'narrow',
  'glue',
]

/**
 * The nearest change of one number that mends what a check found, and if there is one, keeps every other
 * check that held; else the one after which the fewest checks fail; null if no single change mends it. A degree
 * counts as much as a millimetre: a point 57 mm away moves as far. Numbers of the mechanisms concerned are tried
 * first, then those of their hosts.
 */
export function repairFor(
  design: Design,
  finding: Finding,
  findings: readonly Finding[],
  examine: Examine,
): Repair | null {
  const target = keyOf(finding)
  const failed = failures(findings)
  const concerned = mechanismsIn(finding)
  const only = new Set(concerned)
  // A cut that can no longer be made hides what follows from it: that is no repair.
  const asked = [...new Set([finding.name, ...drawn])]
  const failing = (next: Design): Finding[] | undefined =>
    examine(next, asked, only)?.filter((one) => !one.ok && (keyOf(one) === target || !failed.has(keyOf(one))))
  const mended = ({ design: next }: Turn): boolean => failing(next)?.length === 0
  const keeps = (turn: Turn, names: readonly CheckName[] | null): boolean => {
    const found = examine(turn.design, names, null)
    if (!found) return false
    const after = failures(found)
    return !after.has(target) && [...after].every((key) => failed.has(key))
  }
  const hintOf = (knob: Knob): number | null => {
    const one = turned(design, knob, 1)
    const after = one && failing(one.design)?.find((other) => keyOf(other) === target)
    if (!one || !after) return null
    const slope = (after.value - finding.value) / Math.abs(one.to - knob.from)
    const steps = Math.round((STEPS * (finding.limit - finding.value)) / slope)
    return Number.isFinite(steps) && steps > 0 ? steps : null
  }
  // To a millionth: of two changes of one size, the one that came first.
  const size = ({ knob, to }: Turn): number => Math.round(Math.abs(to - knob.from) * 1e6)

  for (const ids of rounds(design, concerned)) {
    const turns = knobsOf(design, ids)
      .flatMap((knob) => leastGood(design, knob, 1, mended, hintOf(knob)) ?? [])
      .sort((a, b) => size(a) - size(b))
    if (turns.length === 0) continue
    const near = turns.slice(0, TRIED)
    for (const turn of near) if (keeps(turn, quick) && keeps(turn, null)) return repairBy(design, turn, true)
    // Turned a little further, one of them may keep the rest as well.
    const further = near
      .flatMap((turn) => {
        const good = (next: Turn) => mended(next) && keeps(next, quick)
        return leastGood(design, turn.knob, turn.steps + 1, good, null) ?? []
      })
      .sort((a, b) => size(a) - size(b))
    for (const turn of further) if (keeps(turn, null)) return repairBy(design, turn, true)
    return repairBy(design, leastHarm(near, examine), false)
  }
  return null
}

/** Of turns that each break something else, the one after which the fewest checks fail; the first of several. */
function leastHarm(turns: readonly Turn[], examine: Examine): Turn {
  const harm = turns.map(({ design }) => {
    const found = examine(design, null, null)
    return found ? failures(found).size : Number.POSITIVE_INFINITY
  })
  return turns[Math.max(0, harm.indexOf(Math.min(...harm)))] as Turn
}

/** Whose numbers to try: the mechanisms concerned, then all that they sit on. */
function rounds(design: Design, concerned: readonly string[]): readonly (readonly string[])[] {
  const hosts = new Set(concerned)
  for (const m of [...design.mechanisms].reverse())
    if (hosts.has(m.id)) {
      const host = m.on.split('/')[0] ?? ''
      if (design.mechanisms.some(({ id }) => id === host)) hosts.add(host)
    }
  const above = [...hosts].filter((id) => !concerned.includes(id))
  return above.length > 0 ? [concerned, above] : [concerned]
}
