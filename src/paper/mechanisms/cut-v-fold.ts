import type { Flat } from '../plane/lay.ts'
import { DEGREES, RADIANS } from '../plane/vector.ts'
import type { Build } from './build.ts'
import type { Fits, Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { pointing, SMALLEST } from './shared/fitting.ts'
import { mirroredCreases, mirroredPanels, mirroredShape, placeMirrored } from './shared/mirrored.ts'

/** A V-fold cut from its host: a slit across the crease, and two folds from its ends to the apex. */
export interface CutVFold extends Placed {
  readonly kind: 'cut-v-fold'
  /** Along the host crease, from its origin, mm. */
  readonly apex: number
  /** Signed, apex to slit along the crease, mm. */
  readonly run: number
  /** Slit length on each panel, square to the crease, mm. */
  readonly cut: number
  /** Slit end shifted along the crease, mm; default 0. */
  readonly lean?: number
  /** Points `[across, along]` in the host's coordinates between the slit's foot and its end. */
  readonly outline?: readonly Flat[]
}

const towardOf = (m: CutVFold): 1 | -1 => (m.run < 0 ? -1 : 1)

const footOf = (m: CutVFold): number => m.apex + m.run

const endOf = (m: CutVFold): Flat => [m.cut, m.apex + m.run + (m.lean ?? 0)]

/** Apex to slit end along the crease, outward: positive for every design that `limits` lets pass. */
const outwardOf = (m: CutVFold): number => towardOf(m) * (m.run + (m.lean ?? 0))

/** The nearest lean to the wanted one that keeps the slit's end at least a millimetre past the apex. */
function keptLean(m: CutVFold, lean: number): number {
  const least = Math.min(1, Math.abs(m.run))
  return towardOf(m) > 0 ? Math.max(lean, least - m.run) : Math.min(lean, -least - m.run)
}

function build(m: CutVFold): Build {
  const toward = towardOf(m)
  const shape = mirroredShape(m.apex, toward, 0, outwardOf(m), m.cut)
  const apex: Flat = [0, m.apex]
  const foot: Flat = [0, footOf(m)]
  const slit: readonly Flat[] = [foot, ...(m.outline ?? []), endOf(m)]
  const ridgeLength = Math.abs(m.run)
  const facet = [apex, ...slit].map(([across, along]): Flat => [across, toward * (along - m.apex)])
  const notch = [apex, ...slit]
  return {
    creases: mirroredCreases(shape, ridgeLength, Math.hypot(outwardOf(m), m.cut)),
    panels: mirroredPanels(shape, facet),
    notch: { left: notch, right: notch },
    span: m.run < 0 ? [footOf(m), m.apex] : [m.apex, footOf(m)],
    cuts: { left: [slit], right: [slit] },
    tip: { crease: 'ridge', along: ridgeLength },
    place: (host, out) => placeMirrored(shape, host, out),
    wedge: shape.cos,
  }
}

/** A wedge of half a right angle, or less steep where the paper is not deep enough; its tip stays on the card when shut. */
function fitted(room: Room, { long, deep, at }: Share, toward: 1 | -1): Fitted<CutVFold> | null {
  const whole = room.to - room.from
  const run = Math.round(Math.min(long * whole, room.beyond((room.from + room.to) / 2)))
  const start = Math.round(room.from + at * (whole - run))
  const foot = toward > 0 ? start + run : start
  const cut = Math.round(Math.min(run, deep * room.depth(foot - 0.1 * run, foot + 0.1 * run)))
  if (run < SMALLEST || cut < SMALLEST) return null
  const apex = toward > 0 ? start : start + run
  return {
    variant: pointing(room, toward),
    fields: { apex, run: toward * run, cut, lean: 0 },
  }
}

/** Away from the start, and back to it. */
export const cutVFoldFits: Fits<CutVFold> = (room, share) => [fitted(room, share, 1), fitted(room, share, -1)]

export const cutVFold: Kind<CutVFold> = {
  kind: 'cut-v-fold',
  label: 'V-fold cut from the card',
  word: 'v-fold',
  stock: { from: 'host', loose: 'triangle' },
  fields: [
    {
      name: 'apex',
      label: 'Apex',
      said: { as: 'place' },
      unit: 'mm',
      min: 0,
      max: 2000,
    },
    {
      name: 'run',
      label: 'Apex to slit',
      said: { of: 'way from the apex to the slit' },
      unit: 'mm',
      min: -2000,
      max: 2000,
      sense: 'along',
    },
    {
      name: 'cut',
      label: 'Slit',
      unit: 'mm',
      min: 0,
      max: 2000,
    },
    {
      name: 'lean',
      label: 'Lean',
      said: { as: 'shift', of: 'end of the slit' },
      unit: 'mm',
      min: -2000,
      max: 2000,
      optional: true,
      sense: 'along',
    },
  ],
  points: [
    /** Points between the slit’s foot and its end, for a shaped slit. */
    { name: 'outline', onHost: true },
  ],
  derived: [
    {
      name: 'wedge',
      label: 'Wedge angle',
      arc: 'right',
      unit: 'deg',
      min: 1,
      max: 89,
      get: (m) => Math.atan2(m.cut, outwardOf(m)) * DEGREES,
      set: (m, value) => ({ cut: outwardOf(m) * Math.tan(value * RADIANS) }),
    },
  ],
  aims: ['apex', 'run', 'cut', 'lean'],
  handles: [
    {
      name: 'slit-end',
      label: 'Slit end',
      across: 'cut',
      along: 'lean',
      at: endOf,
      drag: (m, [across, along]) => ({ cut: Math.max(0, across), lean: keptLean(m, along - footOf(m)) }),
    },
    {
      name: 'fold-line',
      label: 'Fold line',
      across: 'wedge',
      at: (m) => [m.cut / 2, m.apex + (m.run + (m.lean ?? 0)) / 2],
      drag: (m, [across, along]) => {
        const outward = Math.max(0.1, towardOf(m) * (along - m.apex))
        return { cut: (outwardOf(m) * Math.max(0, across)) / outward }
      },
    },
    {
      name: 'apex',
      label: 'Apex',
      along: 'apex',
      at: (m) => [0, m.apex],
      drag: (m, [, along]) => {
        const foot = footOf(m)
        const least = Math.max(1, 1 - towardOf(m) * (m.lean ?? 0))
        const there = towardOf(m) > 0 ? Math.min(along, foot - least) : Math.max(along, foot + least)
        const apex = Math.min(2000, Math.max(0, there))
        return { apex, run: foot - apex }
      },
    },
    {
      name: 'slit-foot',
      label: 'Slit foot',
      along: 'run',
      at: (m) => [0, footOf(m)],
      drag: (m, [, along]) => {
        const least = Math.max(1, 1 - towardOf(m) * (m.lean ?? 0))
        const run = along - m.apex
        return { run: towardOf(m) > 0 ? Math.max(run, least) : Math.min(run, -least) }
      },
    },
  ],
  complete: (m) => ({ ...m, lean: m.lean ?? 0 }),
  limits: (m) => {
    // Level with the apex the folds run along the slit: such a card can be drawn, but a hand is kept from it.
    const least = Math.min(1, Math.abs(m.run))
    if (outwardOf(m) >= least) return null
    const side = towardOf(m) > 0 ? 'at least' : 'at most'
    return {
      field: 'lean',
      sentence: `must leave the slit’s end on the slit’s side of the apex: with a run of ${m.run} it is ${side} ${-m.run}`,
      ...(outwardOf(m) < 0 ? { nearest: -m.run } : { nearest: keptLean(m, m.lean ?? 0), drawable: true }),
    }
  },
  build,
  slit: (m) => ({ foot: [0, footOf(m)], end: endOf(m) }),
  moveSlit: (m, { foot, end }) => ({ run: foot[1] - m.apex, cut: end[0], lean: end[1] - foot[1] }),
}
