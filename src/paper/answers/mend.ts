import { check } from '../checks/check.ts'
import { affected, neighbourhood, nothingVanishes, standing } from '../checks/repair.ts'
import type { Finding } from '../checks/subject.ts'
import { mechanismsIn } from '../checks/subject.ts'
import type { Check } from '../checks/verdict.ts'
import { assign, change, read, settable, settingOf } from '../design/change.ts'
import type { Design } from '../design/design.ts'
import { ownerOf } from '../design/name.ts'
import { fieldsFor, isHoldable, isSetTo } from '../design/setting.ts'
import { fitsOf } from '../mechanisms/fits.ts'
import type { Change, Field } from '../mechanisms/kind.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { modelOf } from '../model/model.ts'
import { compile } from '../motion/pose.ts'
import * as says from '../words/answers.ts'
import { isLess, isQuick, weighOne, weighQuick, weighSlow, weightOf, weightOfAll } from './merit.ts'
import { PLACES, SIZES, sitsOnOf, variantsOf } from './seek/offers.ts'
import { roomsOf, roomsOn } from './seek/room.ts'
import type { Effort } from './seek/sound.ts'

export interface Pins {
  /** Values that stay: `<id>.<field>`, as in `beak.cut` or `moth.left.base`. */
  readonly pins?: readonly string[]
}

/** One number that mending changed. */
export interface Mending {
  readonly id: string
  readonly field: string
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly from: number
  readonly to: number
}

export interface Mended {
  readonly design: Design
  readonly changes: readonly Mending[]
  /** What still fails. */
  readonly left: readonly Check[]
}

/** What mending may cost, in looks at two moving panels: about a second and a half. */
const EFFORT = 1.1e5

/** Of that, for bringing the changes back as near to the given design as they go. */
const FOR_NEARNESS = 0.25

/** Sizes are changed in these steps, mm and degrees; the last is beyond any card. */
const STEPS = [0.5, 1, 1.5, 2.5, 4, 6, 9, 13, 20, 30, 45, 70, 100, 150, 220, 500, 1000, 1500] as const

/** What a careful hand can cut, mm and degrees. */
const GRAIN = 0.1

/** A change is worth making if it takes off so much weight. */
const WORTH = 1e-6

/** A millimetre of change weighs so much, to choose among changes that mend as much. */
const PER_MM = 0.004

/** Shares by which a whole mechanism is made smaller or larger, and shifts of it along its fold, as shares of its host. */
const SCALES = [1, 0.85, 0.7, 0.55, 0.4, 0.25, 1.2, 1.5, 2] as const

const SHIFTS = [...new Set([0, 0.06, 0.15, 0.3, 0.5].flatMap((share) => [share, -share]))]

/** More rounds than a design has faults for. */
const MOST_ROUNDS = 60

/** The values that must stay, and the search's means. */
interface Work {
  readonly given: Design
  readonly pinned: readonly { readonly id: string; readonly field: string }[]
  readonly effort: Effort
  /** Parts of the given design, by the ids in them. */
  readonly parts: Map<string, Design>
}

/** A changed design, and how much was changed, mm and degrees. */
interface Step {
  readonly design: Design
  readonly size: number
}

/** Reads pins; throws a RangeError that names the one that is not there. */
function pinsIn(design: Design, pins: readonly string[]): Work['pinned'] {
  return pins.map((pin) => {
    const dot = pin.indexOf('.')
    const [id, field] = [pin.slice(0, dot), pin.slice(dot + 1)]
    const m = design.mechanisms.find((one) => one.id === id)
    if (!m) throw new RangeError(says.notPin(pin))
    const names = settable(m).map(({ name }) => name)
    if (!names.includes(field)) throw new RangeError(says.notPinOf(id, names, field))
    return { id, field }
  })
}

const isPinned = ({ pinned }: Work, id: string, field: string): boolean =>
  pinned.some((pin) => pin.id === id && pin.field === field)

/** Whether every pinned value is what it was, to the last digit. */
const keepsPins = ({ given, pinned }: Work, next: Design): boolean =>
  pinned.every(({ id, field }) => {
    const [old, now] = [given, next].map(({ mechanisms }) => mechanisms.find((m) => m.id === id))
    // In a part of the design what is not there stays as it is.
    return !old || !now || settingOf(old, field) === settingOf(now, field)
  })

const grained = (value: number): number => Number((Math.round(value / GRAIN) * GRAIN).toFixed(3))

/** The given design with no more mechanisms than a part of it. */
function givenPart({ given, parts }: Work, { mechanisms }: Design): Design {
  const key = mechanisms.map(({ id }) => id).join(' ')
  const ids = new Set(mechanisms.map(({ id }) => id))
  const found = parts.get(key) ?? { ...given, mechanisms: given.mechanisms.filter(({ id }) => ids.has(id)) }
  parts.set(key, found)
  return found
}

/** A design with fields of one mechanism changed; null if a file could not hold it, a pin moves, or a part is all but taken away. */
function changed(work: Work, design: Design, id: string, fields: Change): Design | null {
  const next = change(design, id, fields)
  return isHoldable(next) && keepsPins(work, next) && nothingVanishes(givenPart(work, next), next)
    ? next
    : null
}

/** One number of a mechanism set anew. */
function set(work: Work, design: Design, id: string, field: string, to: number): Design | null {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) return null
  const next = changed(work, design, id, fieldsFor(m, field, to))
  const now = next?.mechanisms.find((one) => one.id === id)
  return next && now && isSetTo(now, field, to) ? next : null
}

/** The numbers of a mechanism that can be turned by themselves: a derived one only where it moves several fields. */
const knobsOf = (m: Mechanism): readonly string[] =>
  settable(m)
    .filter((one) => !('set' in one) || Object.keys(one.set(m, settingOf(m, one.name))).length > 1)
    .map(({ name }) => name)

/** Every single number of these mechanisms, turned by every step either way, nearest first. */
function* turns(work: Work, design: Design, ids: readonly string[]): Generator<Step> {
  for (const by of STEPS)
    for (const id of ids) {
      const m = design.mechanisms.find((one) => one.id === id)
      if (!m) continue
      for (const field of knobsOf(m))
        for (const way of [1, -1]) {
          const next = set(work, design, id, field, grained(settingOf(m, field) + way * by))
          if (next) yield { design: next, size: by }
        }
    }
}

/** Where sides do not match when shut, that number which makes them match. */
function* matched(work: Work, design: Design, ids: readonly string[]): Generator<Step> {
  const { builds } = modelOf(design)
  for (const { mechanism: m, build } of builds) {
    const gap = build.shutGap?.gap ?? 0
    if (gap === 0 || !ids.includes(m.id)) continue
    for (const field of knobsOf(m))
      for (const by of [gap, -gap]) {
        const next = set(work, design, m.id, field, Number((settingOf(m, field) + by).toFixed(9)))
        if (next) yield { design: next, size: Math.abs(by) }
      }
  }
}

const isPlace = ({ said }: Field): boolean => said?.as === 'place'

/** How far the numbers of two states of a mechanism lie apart, mm and degrees. */
const farFrom = (one: Mechanism, two: Mechanism): number =>
  kindOf(one).fields.reduce((sum, { name, idle, shorthand }) => {
    if (idle || shorthand) return sum
    return sum + Math.abs(settingOf(one, name) - settingOf(two, name))
  }, 0)

/** Whole mechanisms shifted along their folds and made smaller or larger, all that is not pinned. */
function* moved(work: Work, design: Design, ids: readonly string[]): Generator<Step> {
  const model = modelOf(design)
  for (const id of ids) {
    const index = design.mechanisms.findIndex((m) => m.id === id)
    const m = design.mechanisms[index]
    if (!m) continue
    const room = model.creases[model.builds[index]?.host ?? 0]?.length ?? 0
    const fields = kindOf(m).fields.filter(
      ({ name, unit, shorthand, idle }) =>
        unit === 'mm' && !shorthand && !idle && typeof read(m, name) === 'number',
    )
    const places = fields.filter(isPlace).map(({ name }) => settingOf(m, name))
    const middle = places.reduce((sum, at) => sum + at, 0) / Math.max(1, places.length)
    const steps: Step[] = []
    for (const scale of SCALES)
      for (const shift of SHIFTS) {
        if (scale === 1 && shift === 0) continue
        const to: Record<string, number> = {}
        for (const field of fields) {
          if (isPinned(work, id, field.name)) continue
          const now = settingOf(m, field.name)
          const next = isPlace(field) ? middle + scale * (now - middle) + shift * room : scale * now
          to[field.name] = Math.min(field.max, Math.max(field.min, grained(next)))
        }
        const next = changed(work, design, id, to)
        if (next) steps.push({ design: next, size: farFrom(m, next.mechanisms[index] as Mechanism) })
      }
    yield* steps.sort((a, b) => a.size - b.size)
  }
}

/** Whole mechanisms made as new ones would be in their place, all that is not pinned; the choices stay. */
function* refitted(work: Work, design: Design, ids: readonly string[]): Generator<Step> {
  for (const id of ids) {
    const index = design.mechanisms.findIndex((m) => m.id === id)
    const m = design.mechanisms[index]
    if (!m) continue
    const kind = kindOf(m)
    // Where it sat is free again for this; what sits on it stays out of account.
    const without = new Set([id])
    for (const one of design.mechanisms) if (without.has(ownerOf(one.on))) without.add(one.id)
    const rest: Design = { ...design, mechanisms: design.mechanisms.filter((one) => !without.has(one.id)) }
    const model = modelOf(rest)
    const on = (list: readonly { readonly name: string }[]) => list.findIndex(({ name }) => name === m.on)
    const rooms =
      sitsOnOf(kind) === 'panel'
        ? roomsOf(model, on(model.panels))
        : roomsOn(compile(rest), on(model.creases))
    const steps: Step[] = []
    for (const variant of variantsOf(kind))
      for (const room of rooms)
        for (const [long, deep] of SIZES)
          for (const at of PLACES) {
            const fit = fitsOf(kind)(room, { long, deep, at })[variant]
            if (!fit) continue
            const whole = assign({ ...m, ...fit.fields } as Mechanism, {})
            if ((kind.choices ?? []).some(({ name }) => read(whole, name) !== read(m, name))) continue
            const fields: Record<string, number> = {}
            for (const { name, shorthand } of kind.fields) {
              const value = read(whole, name)
              if (!shorthand && !isPinned(work, id, name) && typeof value === 'number') fields[name] = value
            }
            const next = changed(work, design, id, fields)
            if (next) steps.push({ design: next, size: farFrom(m, next.mechanisms[index] as Mechanism) })
          }
    yield* steps.sort((a, b) => a.size - b.size)
  }
}

type Way = (work: Work, design: Design, ids: readonly string[]) => Iterable<Step>

/** The kinds of steps, from those that change least; the next is tried where the ones before mend nothing. */
const WAYS: readonly (readonly Way[])[] = [
  [matched, turns],
  [moved, refitted],
]

/** The fields of a mechanism that differ between two states of a design. */
function* differences(before: Design, after: Design) {
  for (const [k, m] of after.mechanisms.entries()) {
    const old = before.mechanisms[k] as Mechanism
    if (m === old) continue
    for (const { name, label, unit, shorthand } of kindOf(m).fields) {
      if (shorthand || typeof read(m, name) !== 'number') continue
      const [from, to] = [settingOf(old, name), settingOf(m, name)]
      if (Math.abs(from - to) > 1e-9) yield { id: m.id, field: name, label, unit, from, to }
    }
  }
}

/** What two designs differ in, put into a larger design. */
function grafted(whole: Design, part: Design): Design {
  const byId = new Map(part.mechanisms.map((m) => [m.id, m]))
  return { ...whole, mechanisms: whole.mechanisms.map((m) => byId.get(m.id) ?? m) }
}

/** What a look at all checks of a whole design costs, in looks, for each of its mechanisms. */
const EXAMINED = 80

/** What fails in a whole design: what is quick to tell first, and of that the heaviest. */
function failuresOf(design: Design, effort: Effort): readonly Finding[] {
  effort.left -= EXAMINED * design.mechanisms.length
  return check(design, { repairs: false })
    .filter(({ ok }) => !ok)
    .sort((a, b) => Number(isQuick(b)) - Number(isQuick(a)) || weightOf(b) - weightOf(a))
}

/** Of the steps that take most off what is quick to tell, so many are asked about the rest. */
const SHORT_LIST = 4

/** What trying one step costs beside its checks, in looks, for each mechanism of the design it is tried in. */
const TRYING = 4

/** A step, and how much it takes off. */
interface Gain extends Step {
  readonly ids: ReadonlySet<string>
  readonly gain: number
}

/** The mechanisms that a fault is about: where glue is cut through, those as well that cut the panel it is on. */
function concernedIn(design: Design, finding: Finding): readonly string[] {
  const own = mechanismsIn(finding)
  if (finding.name !== 'glue') return own
  const cut = modelOf(design).panels.flatMap(({ name, notches }) =>
    finding.ids.includes(name) ? notches.flatMap(({ owner }) => design.mechanisms[owner]?.id ?? []) : [],
  )
  return [...new Set([...own, ...cut])]
}

/** What is concerned, what it stands on, and all that stands on it: where most steps are told to be no use. */
function coreOf(design: Design, concerned: readonly string[]): Design {
  const kept = new Set(standing(design, concerned))
  const on = new Set(concerned)
  for (const m of design.mechanisms) if (on.has(ownerOf(m.on))) on.add(m.id)
  return { ...design, mechanisms: design.mechanisms.filter(({ id }) => kept.has(id) || on.has(id)) }
}

/** A fault that is to be mended, and where. */
interface Fault {
  readonly finding: Finding
  readonly concerned: readonly string[]
  /** Of a large design the part in which a step is judged; and the smaller one in which most are told to be no use. */
  readonly part: Design
  readonly core: Design
}

/** The steps that take most weight off what is quick to tell, or harm none of it where that is not what fails; best first. */
function shortList(work: Work, fault: Fault, ways: readonly Way[]): readonly Gain[] {
  const { effort } = work
  const { finding, concerned, part, core } = fault
  const quick = isQuick(finding)
  const all = standing(core, concerned)
  const about = { effort, ids: new Set(concerned) }
  const target = quick ? weighOne(core, finding.name, about) : 0
  // What comes from farther away is judged in the larger part at once.
  const isHere = quick && target > WORTH
  const before = new Map<string, number>()
  let best: Gain[] = []
  for (const way of ways)
    for (const step of way(work, core, all)) {
      if (effort.left <= 0) return best
      effort.left -= TRYING * core.mechanisms.length
      const cost = PER_MM * step.size
      const last = best.length < SHORT_LIST ? undefined : best.at(-1)
      // Most steps do not mend it, and that is told at once.
      if (isHere && !(weighOne(step.design, finding.name, about) < target - WORTH)) continue
      // What a change may spoil is weighed with what it is to mend.
      const ids = new Set([...affected(core, step.design), ...concerned])
      const key = [...ids].sort().join(' ')
      const now = before.get(key) ?? weighQuick(part, { effort, ids })
      before.set(key, now)
      // Steps grow, and none can gain more than all that there is.
      if (quick && last && last.gain >= now - cost) continue
      const whole = grafted(part, step.design)
      const less = now - weighQuick(whole, { effort, ids })
      if (quick ? !(less > WORTH) : !(less > -WORTH)) continue
      const gain = less - cost
      if (quick && last && gain <= last.gain) continue
      best = [...best, { design: whole, size: step.size, ids, gain }].sort((a, b) => b.gain - a.gain)
      if (quick) best = best.slice(0, SHORT_LIST)
    }
  return best
}

/** A step that takes off so much of a fault's weight is good: no larger ones are looked at. */
const GOOD = 0.5

/** The step that takes most weight off what concerns some mechanisms; null if none does. */
function bestStep(work: Work, fault: Fault): Step | null {
  const { effort } = work
  const { part, finding } = fault
  const quick = isQuick(finding)
  const before = new Map<string, number>()
  let best: Gain | null = null
  for (const ways of WAYS) {
    for (const one of shortList(work, fault, ways)) {
      if (effort.left <= 0) return best ?? one
      const key = [...one.ids].sort().join(' ')
      const now = before.get(key) ?? weighSlow(part, { effort, ids: one.ids })
      before.set(key, now)
      const less = now - weighSlow(one.design, { effort, ids: one.ids })
      const gain = one.gain + (Number.isFinite(less) ? less : 0)
      if ((quick || less > WORTH) && (!best || gain > best.gain)) best = { ...one, gain }
      // Where nothing is left, no step that changes more is better.
      if (!quick && less > WORTH && now - less < WORTH) break
    }
    if (best && best.gain >= GOOD * weightOf(finding)) return best
  }
  return best
}

/** Two sides that were alike are parted where that saves so much change of one of them, mm and degrees: a step of it. */
const PARTING = 1

/** The number of the same size on a mechanism's other side, where both sides are alike. */
function alikeOf(m: Mechanism, field: string): string | null {
  const twin = kindOf(m).fields.find(({ name }) => name === field)?.twin
  return twin !== undefined && Math.abs(settingOf(m, twin) - settingOf(m, field)) < 1e-9 ? twin : null
}

/** A number to bring back, and its twin where both were alike and are: both go back together, else each by itself. */
interface Back {
  readonly id: string
  readonly field: string
  readonly twin: string | null
  readonly isBoth: boolean
  readonly from: number
}

/** What was changed, the largest changes first; sides that are alike together, and only then each by itself. */
function backsOf(given: Design, now: Design): readonly Back[] {
  const singles = [...differences(given, now)]
    .sort((a, b) => Math.abs(b.to - b.from) - Math.abs(a.to - a.from))
    .map(({ id, field, from }): Back => {
      const [old, m] = [given, now].map(({ mechanisms }) => mechanisms.find((one) => one.id === id))
      const twin = old && m && alikeOf(old, field) === alikeOf(m, field) ? alikeOf(m, field) : null
      return { id, field, twin, isBoth: false, from }
    })
  const firsts = singles.filter(
    ({ id, twin }, k) => twin !== null && k < singles.findIndex((one) => one.id === id && one.field === twin),
  )
  return [...firsts.map((one) => ({ ...one, isBoth: true })), ...singles]
}

/** Brings changed numbers back towards the given design, one after another, as far as nothing fails anew. */
function nearer(work: Work, mended: Design): Design {
  const { given, effort } = work
  let now = mended
  const known = new Set(
    failuresOf(mended, effort).map((one) => `${one.name} ${mechanismsIn(one).sort().join(' ')}`),
  )
  const holds = (next: Design | null): next is Design => {
    if (!next || effort.left <= 0) return false
    const ids = affected(now, next)
    const weighing = { effort, ids, known }
    return ids.size === 0 || (weighQuick(next, weighing) === 0 && weighSlow(next, weighing) === 0)
  }
  for (let round = 0; round < 2; round++) {
    let came = false
    for (const { id, field, twin, isBoth, from } of backsOf(given, now)) {
      const m = now.mechanisms.find((one) => one.id === id)
      if (!m) continue
      const to = settingOf(m, field)
      const isAlike = !isBoth && twin !== null && alikeOf(m, field) === twin
      if (Math.abs(to - from) < (isAlike ? PARTING : 1e-9)) continue
      const put = (value: number): Design | null =>
        isBoth && twin !== null
          ? changed(work, now, id, { [field]: value, [twin]: value })
          : set(work, now, id, field, value)
      let grain = isAlike ? PARTING : GRAIN
      const whole = put(from)
      if (holds(whole)) {
        now = whole
        came = true
        continue
      }
      let [good, bad] = [to, from]
      while (Math.abs(good - bad) > grain) {
        const middle = grained((good + bad) / 2)
        if (middle === good || middle === bad) break
        const next = put(middle)
        if (holds(next)) {
          now = next
          good = middle
          grain = GRAIN
          came = true
        } else bad = middle
      }
    }
    if (!came) break
  }
  return now
}

/**
 * The nearest design found that passes all checks: as many numbers are changed as it takes, those that change least
 * first, and never a pinned one. Every step takes weight off what fails (`merit.ts`), so it never runs in circles; in
 * the end the changes are brought back as near to the given values as the checks allow. What cannot be mended is left
 * and told. Lengths in mm, angles in degrees. Throws a RangeError for a pin that is not there.
 */
export function mend(design: Design, { pins = [] }: Pins = {}): Mended {
  const effort: Effort = { left: EFFORT * (1 - FOR_NEARNESS) }
  const work: Work = { given: design, pinned: pinsIn(design, pins), effort, parts: new Map() }
  let now = design
  let failing = failuresOf(now, effort)
  const stuck = new Set<string>()
  for (let round = 0; round < MOST_ROUNDS && effort.left > 0; round++) {
    const next = failing.find((one) => !one.waits && !stuck.has(keyFor(one)))
    if (!next) break
    const concerned = concernedIn(now, next)
    const [part, core] = [neighbourhood(now, concerned), coreOf(now, concerned)]
    const step = concerned.length === 0 ? null : bestStep(work, { finding: next, concerned, part, core })
    const whole = step && grafted(now, step.design)
    const after = whole && failuresOf(whole, effort)
    if (whole && after && isLess(weightOfAll(after), weightOfAll(failing))) {
      now = whole
      failing = after
      stuck.clear()
    } else stuck.add(keyFor(next))
  }
  if (now !== design) {
    effort.left = Math.max(0, effort.left) + EFFORT * FOR_NEARNESS
    const near = nearer(work, now)
    if (near !== now && !isLess(weightOfAll(failing), weightOfAll(failuresOf(near, effort)))) now = near
  }
  const left = check(now, { repairs: false }).filter(({ ok }) => !ok)
  return { design: now, changes: [...differences(design, now)], left }
}

const keyFor = (one: Finding): string => `${one.name} ${mechanismsIn(one).sort().join(' ')}`
