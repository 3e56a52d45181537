import { assign, read, settingOf } from '../../design/change.ts'
import type { Card } from '../../design/design.ts'
import type { Build, Side } from '../../mechanisms/build.ts'
import type { Field } from '../../mechanisms/kind.ts'
import type { Mechanism } from '../../mechanisms/registry.ts'
import { kindOf } from '../../mechanisms/registry.ts'
import type { Bounds } from '../../plane/descent.ts'
import { descended, slopes } from '../../plane/descent.ts'
import type { Frame } from '../../plane/frame.ts'
import { emptyFrame } from '../../plane/frame.ts'
import type { Vec3 } from '../../plane/vector.ts'
import { distance } from '../../plane/vector.ts'

/** Where a tip is to be at an opening, mm. */
export interface Mark {
  readonly opening: number
  readonly at: Vec3
}

/** One mechanism of a chain that is to be built, and on what of the one before it. */
export interface Link {
  readonly m: Mechanism
  /** The crease of the one before, by its place in `Build.creases`; of the first: none. */
  readonly crease: number
  /** On which side of that crease the panel hangs that it sits on, if it sits on a panel. */
  readonly side: Side
}

/** Where a chain begins: the frame of its host crease at the opening of each mark. */
export interface Seat {
  readonly card: Card
  readonly frames: readonly Frame[]
}

/** A chain whose tip has been brought to its marks, or as near as it goes. */
export interface Brought {
  readonly links: readonly Link[]
  /** How far the tip is from the first mark, and from the farthest of all, mm. */
  readonly miss: number
  readonly worst: number
}

/** A number of one link that can be chosen. */
interface Knob extends Bounds {
  readonly link: number
  readonly field: Field
}

/** A descent ends this near to the marks, mm. */
const ENOUGH = 0.02

/** A field that moves the tip by less than this, mm for a millimetre or degree, is free of it. */
const FREE = 1e-4

function tipIn({ tip, creases }: Build, host: Frame, out: readonly Frame[], side: Side): Vec3 {
  if (tip.crease === 'host') {
    const sine = (side === 'left' ? -1 : 1) * (host[12] as number) * (tip.across ?? 0)
    const cosine = (host[13] as number) * (tip.across ?? 0)
    const at = (k: number) =>
      (host[k] as number) +
      sine * (host[3 + k] as number) +
      cosine * (host[9 + k] as number) +
      tip.along * (host[6 + k] as number)
    return [at(0), at(1), at(2)]
  }
  const f = out[creases.findIndex(({ part }) => part === tip.crease)] ?? host
  const at = (k: number) => (f[k] as number) + tip.along * (f[6 + k] as number)
  return [at(0), at(1), at(2)]
}

/** Frames to place creases in, by link: overwritten by the next call. */
const scratch: Frame[][] = []

function framesFor(link: number, count: number): Frame[] {
  scratch[link] ??= []
  const frames = scratch[link]
  while (frames.length < count) frames.push(emptyFrame())
  return frames.slice(0, count)
}

/** Where the tip of a chain is at each mark's opening; null if a link has no such size, or is stopped before it. */
function tipsOf(links: readonly Link[], { frames }: Seat): { tips: Vec3[]; gaps: number[] } | null {
  const builds: Build[] = []
  for (const { m } of links) {
    const kind = kindOf(m)
    if (kind.limits?.(m)) return null
    builds.push(kind.build(m))
  }
  const tips: Vec3[] = []
  for (const frame of frames) {
    let host = frame
    let tip: Vec3 | null = null
    for (let k = 0; k < links.length; k++) {
      const build = builds[k] as Build
      const out = framesFor(k, build.creases.length)
      if (!build.place(host, out)) return null
      tip = tipIn(build, host, out, (links[k] as Link).side)
      host = out[links[k + 1]?.crease ?? 0] ?? host
    }
    if (!tip?.every(Number.isFinite)) return null
    tips.push(tip)
  }
  return { tips, gaps: builds.map(({ shutGap }) => shutGap?.gap ?? 0) }
}

/** Where the tip of a chain is at the first mark's opening; null if it does not get there. */
export const tipOfChain = (links: readonly Link[], seat: Seat): Vec3 | null =>
  tipsOf(links, seat)?.tips[0] ?? null

function knobsOf(links: readonly Link[], card: Card): readonly Knob[] {
  const big = Math.max(card.width, card.height)
  return links.flatMap(({ m }, link) =>
    kindOf(m)
      .fields.filter(({ shorthand, idle }) => !shorthand && !idle)
      .filter((field) => typeof read(m, field.name) === 'number')
      .map(
        (field): Knob => ({
          link,
          field,
          min: field.unit === 'mm' ? Math.max(field.min, -big) : field.min,
          max: field.unit === 'mm' ? Math.min(field.max, big) : field.max,
        }),
      ),
  )
}

const valuesOf = (links: readonly Link[], knobs: readonly Knob[]): readonly number[] =>
  knobs.map(({ link, field }) => settingOf((links[link] as Link).m, field.name))

function withValues(links: readonly Link[], knobs: readonly Knob[], x: readonly number[]): readonly Link[] {
  return links.map((link, index): Link => {
    const fields: Record<string, number> = {}
    knobs.forEach((knob, k) => {
      if (knob.link === index) fields[knob.field.name] = x[k] as number
    })
    return { ...link, m: assign(link.m, fields) }
  })
}

/** What a chain misses of its marks, mm, those after the first by their weight, and by how much its sides differ when shut. */
function missedBy(links: readonly Link[], seat: Seat, marks: readonly Mark[], weight = 1): number[] | null {
  const found = tipsOf(links, seat)
  if (!found) return null
  return [
    ...marks.flatMap(({ at }, k) =>
      [0, 1, 2].map(
        (i) => (k === 0 ? 1 : weight) * (((found.tips[k] as Vec3)[i] as number) - (at[i] as number)),
      ),
    ),
    ...found.gaps,
  ]
}

/** How far from the marks: from the first, and from the farthest. */
function missesOf(links: readonly Link[], seat: Seat, marks: readonly Mark[]): Brought | null {
  const found = tipsOf(links, seat)
  if (!found || found.gaps.some((gap) => Math.abs(gap) > 1e-9)) return null
  const off = found.tips.map((tip, k) => distance(tip, (marks[k] as Mark).at))
  return { links, miss: off[0] ?? 0, worst: Math.max(...off) }
}

/** Steps to which sizes are rounded, mm and degrees, coarsest first: what a ruler shows, and what it does not. */
const GRAINS = [1, 0.5, 0.1] as const

/** The sizes rounded to a grain, sides that must match when shut made to match again; null if they cannot. */
function rounded(
  links: readonly Link[],
  knobs: readonly Knob[],
  seat: Seat,
  grain: number,
): readonly Link[] | null {
  const x = valuesOf(links, knobs).map((v, k) => {
    const { min, max } = knobs[k] as Knob
    return Math.min(max, Math.max(min, Number((Math.round(v / grain) * grain).toFixed(3))))
  })
  let now = withValues(links, knobs, x)
  for (let link = 0; link < links.length; link++) {
    const gap = tipsOf(now, seat)?.gaps[link]
    if (gap === undefined) return null
    if (Math.abs(gap) <= 1e-9) continue
    const mended = knobs.flatMap((knob, k) => {
      if (knob.link !== link) return []
      return [gap, -gap].flatMap((by) => {
        const value = Number(((x[k] as number) + by).toFixed(6))
        const next = withValues(now, [knob], [value])
        const left = tipsOf(next, seat)?.gaps[link]
        return left !== undefined && Math.abs(left) <= 1e-9 && value >= knob.min && value <= knob.max
          ? [next]
          : []
      })
    })[0]
    if (!mended) return null
    now = mended
  }
  return now
}

/**
 * Brings the tip of a chain to its marks by the sizes of its links, changing them as little as may be, and rounds
 * them to what a ruler shows as far as it stays `within` so many mm of the first mark; null if it gets nowhere.
 * @param weight how much a millimetre off another mark counts beside one off the first
 */
export function bring(
  start: readonly Link[],
  seat: Seat,
  marks: readonly Mark[],
  within: number,
  weight = 1,
): Brought | null {
  const knobs = knobsOf(start, seat.card)
  const missed = (x: readonly number[]) => missedBy(withValues(start, knobs, x), seat, marks, weight)
  const found = descended(missed, valuesOf(start, knobs), knobs, ENOUGH)
  if (!found) return null
  const exact = withValues(start, knobs, found.x)
  for (const grain of GRAINS) {
    const links = rounded(exact, knobs, seat, grain)
    const misses = links && missesOf(links, seat, marks)
    if (misses && misses.miss <= within) return misses
  }
  const links = rounded(exact, knobs, seat, 0.1)
  return links && missesOf(links, seat, marks)
}

/** The same chain with the sizes that leave its tip where it is made so much larger, in whole mm. */
export function resized(
  links: readonly Link[],
  seat: Seat,
  marks: readonly Mark[],
  by: number,
): readonly Link[] {
  const knobs = knobsOf(links, seat.card)
  const missed = (x: readonly number[]) => missedBy(withValues(links, knobs, x), seat, marks)
  const x = valuesOf(links, knobs)
  const here = missed(x)
  const J = here && slopes(missed, x, here)
  if (!J) return links
  return withValues(
    links,
    knobs,
    x.map((v, k) => {
      const { field, min, max } = knobs[k] as Knob
      const moves = Math.max(...(J[k] as number[]).map(Math.abs))
      return moves < FREE && field.unit === 'mm' ? Math.min(max, Math.max(min, Math.round(v * by))) : v
    }),
  )
}

/** The farthest that one millimetre or degree more in any one number of a chain moves its tip, mm. */
export function swayOf(links: readonly Link[], seat: Seat): number {
  const here = tipOfChain(links, seat)
  if (!here) return 0
  const knobs = knobsOf(links, seat.card)
  const x = valuesOf(links, knobs)
  return Math.max(
    0,
    ...knobs.flatMap((_, k) => {
      const there = tipOfChain(
        withValues(
          links,
          knobs,
          x.map((v, i) => (i === k ? v + 1 : v)),
        ),
        seat,
      )
      return there ? [distance(here, there)] : []
    }),
  )
}
