/** Loaded when a reader says where the tip should be. No page needed. */

import * as says from '../../../content/words/aim/panel.ts'
import type { Aimed, Design, Measure, Mechanism, Target } from '../../paper/index.ts'
import { change, fieldsFor, kindOf, measure, nameOf, settable, settingOf, topOf } from '../../paper/index.ts'
import type { Bench } from '../model/bench-model.ts'
import { offeredBy } from '../model/offered.ts'
import type { LengthUnit } from '../state/format.ts'
import { large, shown, small, typed } from '../state/format.ts'
import { mechanismOf } from '../state/mechanism-of.ts'
import { kept } from '../state/state.ts'

/** What weighs too much for one file with this one: it is there already, since a hand came near the bench. */
export type Tools = typeof import('../model/checker.ts')

/** What a reader may wish for. */
export type Wish = 'rise' | 'reach'

export const WISHES: readonly Wish[] = ['rise', 'reach']

/** Where the tip is on the card as it stands, mm. */
export type Place = Readonly<Record<Wish, number>>

/** A tip as it was measured. Throws a RangeError for an unknown mechanism. */
export function placeIn({ tips }: Measure, id: string): Place {
  const tip = tips[id]
  if (!tip) throw new RangeError(`there is no mechanism ${id}`)
  return { rise: tip.rise, reach: tip.reach }
}

const placeOf = (design: Design, id: string, opening: number): Place => placeIn(measure(design, opening), id)

/** What can be wished for, mm: no higher than a page is wide, no further than the gutter is long. */
export function rangeOfWish({ card }: Design, wish: Wish, now: Place): readonly [min: number, max: number] {
  const most = wish === 'rise' ? card.width : card.height
  return [Math.min(0, Math.floor(now[wish])), Math.max(most, Math.ceil(now[wish]))]
}

/** What was typed, read: the wish, or what is wrong with it and in which field. */
export type Read =
  | { readonly target: Target; readonly fault: null }
  | { readonly target: null; readonly fault: { readonly field: Wish | null; readonly says: string } }

export function readWish(
  texts: Readonly<Record<Wish, string>>,
  design: Design,
  now: Place,
  opening: number,
  length: LengthUnit,
): Read {
  const wished: Partial<Record<Wish, number>> = {}
  for (const wish of WISHES) {
    if (texts[wish].trim() === '') continue
    const value = typed(texts[wish], 'mm', length)
    const [min, max] = rangeOfWish(design, wish, now)
    if (value === null || value < min || value > max + 0.02)
      return {
        target: null,
        fault: {
          field: wish,
          says: says.goesFrom(large(says.wishes[wish]), shown(min, 'mm', length), shown(max, 'mm', length)),
        },
      }
    wished[wish] = value
  }
  return Object.keys(wished).length === 0
    ? { target: null, fault: { field: null, says: says.nothingTyped } }
    : { target: { opening, ...wished }, fault: null }
}

/** Nearer than this nobody can tell, mm. */
const NEAR = 0.1

const wished = (target: Target): readonly Wish[] => WISHES.filter((wish) => target[wish] !== undefined)

const isThere = (place: Place, target: Target): boolean =>
  wished(target).every((wish) => Math.abs(place[wish] - (target[wish] ?? 0)) <= NEAR)

/** One way for the reader to take. */
export interface Way {
  /** `Slit 34.2 mm instead of 38.0 mm.` */
  readonly says: string
  readonly aimed: Aimed
}

/** What is told of a wish. */
export interface Answer {
  readonly says: string
  readonly ways: readonly Way[]
}

/** A number that differs, as the reader knows it. */
interface Difference {
  readonly label: string
  readonly unit: 'mm' | 'deg'
  readonly from: number
  readonly to: number
  /** A place along the fold: that is said behind the number. */
  readonly isAlong?: true
}

/** The numbers by which a way differs from the card as it stands. */
function differences(bench: Bench, design: Design, id: string, aimed: Aimed): readonly Difference[] {
  const [before, after] = [mechanismOf(design, id), mechanismOf(aimed.design, id)]
  const owner = design.mechanisms.length > 1 ? nameOf(id) : null
  const slit = kindOf(before).slit
  const names = Object.keys(aimed.settings)
  const offeredAs = (name: string) =>
    offeredBy(bench).fields.find(({ key }) => key === `${id}.${name}`)?.label
  // An apex that moves takes its slit along, or leaves it where it was: then the reader is told the slit's own place.
  const moves =
    slit !== undefined && names.some((name) => name === 'apex' || (name === 'run' && !offeredAs(name)))
  const plain = names
    .filter((name) => !moves || name !== 'run')
    .map((name): Difference => {
      const field = settable(before).find((one) => one.name === name)
      return {
        label: offeredAs(name) ?? says.sizeOf(field?.label ?? name, owner),
        unit: field?.unit ?? 'mm',
        from: settingOf(before, name),
        to: settingOf(after, name),
      }
    })
  const foot = (m: Mechanism) => slit?.(m).foot[1] ?? 0
  // `Eye: depth of the slit` says whose it is before the colon.
  const cut = offeredAs('cut')
  const whose = cut?.match(/^[^:]*: /)?.[0]
  const place: Difference = {
    label: whose ? says.slitPlaceWhose(whose) : says.slitPlace(cut === undefined ? owner : null),
    unit: 'mm',
    from: foot(before),
    to: foot(after),
    isAlong: true,
  }
  return [...plain, ...(moves ? [place] : [])].filter(({ from, to }) => Math.abs(to - from) >= NEAR / 2)
}

function differencesSay(all: readonly Difference[], length: LengthUnit): string {
  const parts = all.map(({ label, unit, from, to, isAlong }, k) => {
    const size = isAlong ? says.sizeAlong : says.size
    return size(k === 0 ? large(label) : small(label), shown(to, unit, length), shown(from, unit, length))
  })
  return says.way(parts)
}

/** Where a tip stands: `36.0 mm high`, `80.0 mm along the gutter`, or both. */
function placeSays(place: Place, wishes: readonly Wish[], length: LengthUnit): string {
  return says.atOnce(wishes.map((wish) => says.places[wish](shown(place[wish], 'mm', length))))
}

const waysOf = (
  bench: Bench,
  design: Design,
  id: string,
  found: readonly Aimed[],
  length: LengthUnit,
): Way[] => {
  const told = found.flatMap((aimed): Way[] => {
    const all = differences(bench, design, id, aimed)
    return all.length > 0 ? [{ says: differencesSay(all, length), aimed }] : []
  })
  return told.filter((way, k) => told.findIndex((one) => one.says === way.says) === k)
}

/**
 * Works out how mechanism `id` of a bench's card can bring its tip to a place, bit by bit. Each step takes a few
 * hundredths of a second at most.
 */
export function* answering(
  { aiming }: Tools,
  bench: Bench,
  design: Design,
  id: string,
  target: Target,
  length: LengthUnit,
): Generator<void, Answer> {
  const top = topOf(mechanismOf(design, id))
  const now = placeOf(design, id, target.opening)
  const wishes = wished(target)
  if (wishes.every((wish) => Math.abs(now[wish] - (target[wish] ?? 0)) < NEAR / 2))
    return { says: says.thereAlready(top), ways: [] }
  const { ways: found, nearest } = yield* aiming(design, id, target)
  const ways = waysOf(bench, design, id, found, length)
  if (ways.length > 0) return { says: says.ways(ways.length), ways }
  const near = nearest ? waysOf(bench, design, id, [nearest], length) : []
  return {
    says:
      near.length > 0 && nearest
        ? says.nearest(top, placeSays(nearest, wishes, length))
        : says.outOfReach(top),
    ways: near,
  }
}

const failing = ({ check }: Tools, design: Design): ReadonlySet<string> =>
  new Set(check(design, { repairs: false }).flatMap(({ ok, name }) => (ok ? [] : [name])))

/** The design with a way's settings written shorter; null where that is no design. */
function written(
  design: Design,
  id: string,
  aimed: Aimed,
  short: (value: number, now: number) => number,
): Design | null {
  let next = design
  for (const [name, value] of Object.entries(aimed.settings)) {
    const now = settingOf(mechanismOf(design, id), name)
    next = change(next, id, fieldsFor(mechanismOf(next, id), name, short(value, now)))
  }
  const all = { ...next, mechanisms: next.mechanisms.map((m) => keptNumbers(m)) }
  return all.mechanisms.every((m) => !kindOf(m).limits?.(m)) ? all : null
}

/** Every number to a thousandth, so that a link gives the very same design. */
const keptNumbers = <T>(value: T): T =>
  (typeof value === 'number'
    ? kept(value)
    : Array.isArray(value)
      ? value.map(keptNumbers)
      : value && typeof value === 'object'
        ? Object.fromEntries(Object.entries(value).map(([key, one]) => [key, keptNumbers(one)]))
        : value) as T

/**
 * The design that a way gives, for a hand to make: its settings to a tenth of a millimetre or degree, where the tip
 * then still stands within a tenth of a millimetre and no further check fails; else as they are.
 */
export function taken(tools: Tools, design: Design, id: string, target: Target, { aimed }: Way): Design {
  const goal: Target = {
    opening: target.opening,
    ...Object.fromEntries(wished(target).map((wish) => [wish, aimed[wish]])),
  }
  const before = failing(tools, design)
  const shorter = [
    (value: number) => Math.round(value * 10) / 10,
    // Up against a check, the way back is the safe one.
    (value: number, now: number) => (value > now ? Math.floor(value * 10) : Math.ceil(value * 10)) / 10,
  ]
  for (const short of shorter) {
    const next = written(design, id, aimed, short)
    if (!next || !isThere(placeOf(next, id, target.opening), goal)) continue
    if ([...failing(tools, next)].every((name) => before.has(name))) return next
  }
  return written(design, id, aimed, kept) ?? aimed.design
}

/** Said when a way has been taken. */
export function takenSays(design: Design, id: string, target: Target, length: LengthUnit): string {
  const place = placeSays(placeOf(design, id, target.opening), wished(target), length)
  return says.taken(topOf(mechanismOf(design, id)), place)
}
