import { side } from '../../checks/names.ts'
import { fold } from '../../checks/phrases.ts'
import type { Design } from '../../design/design.ts'
import { tipAt } from '../../measure/measure.ts'
import { fitsOf } from '../../mechanisms/fits.ts'
import type { Room, Share } from '../../mechanisms/kind.ts'
import type { AnyKind, Mechanism } from '../../mechanisms/registry.ts'
import { kinds } from '../../mechanisms/registry.ts'
import { SMALLEST } from '../../mechanisms/shared/fitting.ts'
import { modelOf } from '../../model/model.ts'
import { compile } from '../../motion/pose.ts'
import { broughtIn } from '../../motion/range.ts'
import { signedArea } from '../../plane/convex.ts'
import type { Vec3 } from '../../plane/vector.ts'
import * as says from '../../words/answers.ts'
import { roomsOf, roomsOn } from './room.ts'
import type { Effort, Judge } from './sound.ts'
import { additionsTo } from './sound.ts'

/** A mechanism that can be built on a crease or panel, already sized: the design with it, sound in all that is new. */
export interface Offer {
  readonly kind: string
  /** What the trade calls it. */
  readonly label: string
  /** Which of the kind's ways it is; empty where there is only one. */
  readonly variant: string
  /** How much room it was sized for, mm: how long the free stretch is, or how deep its middle, whichever is less. */
  readonly room: number
  /** The new mechanism's. */
  readonly id: string
  /** The given one with the new mechanism as its last. */
  readonly design: Design
  /** Where its tip is at `opening`, mm. */
  readonly tip: Vec3
  /** Degrees: 90, or the nearest to which the card comes. */
  readonly opening: number
}

/** Why nothing is offered. */
export interface NoOffer {
  /** The longest free stretch of the crease, or the widest free place of the panel, mm. */
  readonly free: number
  /** What the smallest mechanism takes, mm. */
  readonly needed: number
  readonly sentence: string
}

/** Shares of the room, nicest first: about two thirds, then less deep, then smaller. */
export const SIZES: readonly (readonly [long: number, deep: number])[] = [
  [0.65, 0.65],
  [0.65, 0.4],
  [0.45, 0.45],
  [0.45, 0.25],
  [0.3, 0.3],
  [0.3, 0.15],
  [0.18, 0.18],
  [0.1, 0.1],
]

/** Where in the stretch, as shares of what is left of it: the middle first. */
export const PLACES = [0.5, 0.85, 0.15] as const

/** Looks at two moving panels that all offers of one crease or panel may take together: about a tenth of a second. */
const EFFORT = 1.2e4

/** So many designs that hold by the quick checks are proved clear for one variant before we leave it. */
const MOST_PROOFS = 3

/** A short id that no mechanism has yet. */
export function newId({ mechanisms }: Design, { word }: AnyKind): string {
  const taken = new Set(mechanisms.map(({ id }) => id))
  let number = 1
  while (taken.has(`${word}-${number}`)) number++
  return `${word}-${number}`
}

/** A crease and the panel beside it may have one name: what is asked for, or both. */
export interface Ask {
  readonly sitsOn?: 'crease' | 'panel'
  /** Where the tip is told, degrees; 90 if left out. */
  readonly opening?: number
}

export const sitsOnOf = ({ sitsOn = 'crease' }: AnyKind): 'crease' | 'panel' => sitsOn

/** What sits on a crease or a panel finds its rooms there. Throws a RangeError where there is neither. */
function roomsAt(design: Design, on: string): Readonly<Record<'crease' | 'panel', readonly Room[]>> {
  const model = modelOf(design)
  const crease = model.creases.findIndex(({ name, hidden }) => name === on && !hidden)
  const panel = model.panels.findIndex(({ name }) => name === on)
  if (crease < 0 && panel < 0) throw new RangeError(`there is no crease or panel ${on}`)
  return {
    crease: crease < 0 ? [] : roomsOn(compile(design), crease),
    panel: panel < 0 ? [] : roomsOf(model, panel),
  }
}

/** The design with one mechanism more. */
export const withMechanism = (design: Design, mechanism: Mechanism): Design => ({
  ...design,
  mechanisms: [...design.mechanisms, mechanism],
})

/** How much paper a mechanism has, mm²: of two that are as large by their shares the larger is nicer. */
const paperOf = (kind: AnyKind, fields: object): number =>
  kind
    .build({ id: '', kind: kind.kind, on: '', ...fields } as Mechanism)
    .panels.reduce((sum, { outline }) => sum + Math.abs(signedArea(outline)), 0)

/** How long a room is, or how deep in its middle, whichever is less, mm. */
function extentOf({ from, to, depth, spot }: Room): number {
  const middle = (from + to) / 2
  return spot ? 2 * spot.radius : Math.min(to - from, depth(middle, middle))
}

/** Every size and place of one variant of a kind in these rooms, nicest first, each once. */
function* fittings(kind: AnyKind, rooms: readonly Room[], variant: number) {
  const seen = new Set<string>()
  for (const [k, room] of rooms.entries()) {
    const extent = extentOf(room)
    for (const [long, deep] of SIZES) {
      // Beside the largest stretch the middle of the others will do.
      const fits = (k === 0 ? PLACES : PLACES.slice(0, 1)).flatMap((at) => {
        const fit = fitsOf(kind)(room, { long, deep, at })[variant]
        return fit ? [{ ...fit, room: extent, paper: paperOf(kind, fit.fields) }] : []
      })
      for (const fit of fits.sort((one, two) => two.paper - one.paper)) {
        const key = JSON.stringify(fit.fields)
        if (!seen.has(key)) yield fit
        seen.add(key)
      }
    }
  }
}

const ANYWHERE: Room = { from: 0, to: 0, depth: () => 0, beyond: () => 0 }

const ANY_SHARE: Share = { long: 1, deep: 1, at: 0 }

/** A kind's variants, by number. */
export const variantsOf = (kind: AnyKind): readonly number[] =>
  fitsOf(kind)(ANYWHERE, ANY_SHARE).map((_, k) => k)

/** The nicest sound mechanism of one variant; null if none is. */
function nicest(
  design: Design,
  on: string,
  kind: AnyKind,
  found: Iterable<{ readonly variant: string; readonly room: number; readonly fields: object }>,
  judge: Judge,
): Pick<Offer, 'id' | 'design' | 'variant' | 'room'> | null {
  const id = newId(design, kind)
  const added = new Set([id])
  let proofs = 0
  for (const { variant, room, fields } of found) {
    const next = withMechanism(design, { id, kind: kind.kind, on, ...fields } as Mechanism)
    if (judge.quick(next, added)) continue
    if (!judge.slow(next, added)) return { id, design: next, variant, room }
    if (++proofs >= MOST_PROOFS) return null
  }
  return null
}

/** The tip of the mechanism that stands last, and the opening that it was posed at. */
export function lastTip(design: Design, asked: number): { readonly tip: Vec3; readonly opening: number } {
  const opening = broughtIn(design, asked)
  const poser = compile(design)
  poser(opening)
  return { tip: tipAt(poser, design.mechanisms.length - 1), opening }
}

/**
 * What can be built on a crease or panel, by its name: for every kind, and every variant of it, the mechanism that
 * takes about two thirds of the room there, or the largest that works: in whole mm and degrees, failing no check, and
 * with all checks as they were for the rest. In the order of the kinds; empty if there is nothing: `noOffer` says why.
 * Throws a RangeError if there is no such crease or panel.
 */
export function offers(design: Design, on: string, { sitsOn, opening = 90 }: Ask = {}): readonly Offer[] {
  const rooms = roomsAt(design, on)
  const asked = kinds.filter((kind) => sitsOn === undefined || sitsOnOf(kind) === sitsOn)
  const variants = asked.flatMap((kind) => variantsOf(kind).map((variant) => ({ kind, variant })))
  let left = EFFORT
  return variants.flatMap(({ kind, variant }, k): Offer[] => {
    // An equal share of what the ones before it left.
    const share = left / (variants.length - k)
    const effort: Effort = { left: share }
    const there = rooms[sitsOnOf(kind)]
    const best = nicest(design, on, kind, fittings(kind, there, variant), additionsTo(design, effort))
    left -= share - effort.left
    if (!best) return []
    return [{ kind: kind.kind, label: kind.label, ...best, ...lastTip(best.design, opening) }]
  })
}

/** Why nothing is offered on a crease or panel: the room that there is, and the least that is needed, mm. */
export function noOffer(design: Design, on: string, { sitsOn }: Ask = {}): NoOffer {
  const rooms = roomsAt(design, on)
  const here = sitsOn === 'panel' || rooms.crease.length === 0 ? rooms.panel : rooms.crease
  const sizes = here.map(({ from, to, depth, spot }) =>
    spot ? 2 * spot.radius : Math.min(to - from, depth(from, to)),
  )
  const free = Math.max(0, ...sizes)
  const needed = LEAST
  const place = here === rooms.panel ? side(on) : fold(on)
  const sentence = free < needed ? says.noRoom(place, free.toFixed(0), needed) : says.roomForNothing(place)
  return { free, needed, sentence }
}

/** The smallest mechanism with a bridge of paper on either side, mm. */
const LEAST = 2 * SMALLEST
