import type { Flat } from '../plane/lay.ts'
import { DEGREES } from '../plane/vector.ts'
import type { Build } from './build.ts'
import type { Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { endsOf, SMALLEST, stretchIn } from './shared/fitting.ts'
import { mirroredCreases, mirroredPanels, mirroredShape, placeMirrored } from './shared/mirrored.ts'
import { endAfterStart, stretchFields } from './shared/parallel.ts'

/** A strip between two cuts of different depth: a V-fold whose apex lies off the piece. */
export interface CutTrapezoid extends Placed {
  readonly kind: 'cut-trapezoid'
  /** Along the host crease, mm. */
  readonly start: number
  readonly end: number
  /** Depth of the two cuts on each panel, mm. Equal: a layer. One of them 0: a V-fold. */
  readonly startCut: number
  readonly endCut: number
}

function build(m: CutTrapezoid): Build {
  const long = m.end - m.start
  const shape = mirroredShape(m.start, 1, m.startCut, long, m.endCut - m.startCut)
  const outline = (from: number): readonly Flat[] => [
    [0, from],
    [0, from + long],
    [m.endCut, from + long],
    [m.startCut, from],
  ]
  const cuts: (readonly Flat[])[] = []
  if (m.startCut > 0)
    cuts.push([
      [0, m.start],
      [m.startCut, m.start],
    ])
  if (m.endCut > 0)
    cuts.push([
      [0, m.end],
      [m.endCut, m.end],
    ])
  return {
    creases: mirroredCreases(shape, long, Math.hypot(long, m.endCut - m.startCut)),
    panels: mirroredPanels(shape, outline(0)),
    notch: { left: outline(m.start), right: outline(m.start) },
    span: [m.start, m.end],
    cuts: { left: cuts, right: cuts },
    tip: { crease: 'ridge', along: m.endCut > m.startCut ? long : m.endCut < m.startCut ? 0 : long / 2 },
    place: (host, out) => placeMirrored(shape, host, out),
    wedge: shape.cos,
  }
}

/** One cut is twice as deep as the other. */
export function cutTrapezoidFits(room: Room, share: Share): readonly (Fitted<CutTrapezoid> | null)[] {
  const { start, end, depth } = stretchIn(room, share)
  const deep = Math.round(Math.min(depth / 2, 0.8 * (end - start)))
  const less = Math.round(deep / 2)
  if (end - start < SMALLEST || less < SMALLEST) return [null, null]
  const { near, far } = endsOf(room)
  return [
    { variant: `wider at ${far}`, fields: { start, end, startCut: less, endCut: deep } },
    { variant: `wider at ${near}`, fields: { start, end, startCut: deep, endCut: less } },
  ]
}

export const cutTrapezoid: Kind<CutTrapezoid> = {
  kind: 'cut-trapezoid',
  label: 'Trapezoid cut from the card',
  word: 'trapezoid',
  stock: { from: 'host', loose: 'strip' },
  fields: [
    ...stretchFields,
    {
      name: 'startCut',
      label: 'First cut',
      unit: 'mm',
      min: 0,
      max: 2000,
    },
    {
      name: 'endCut',
      label: 'Second cut',
      unit: 'mm',
      min: 0,
      max: 2000,
    },
  ],
  points: [],
  derived: [
    {
      name: 'wedge',
      label: 'Wedge angle',
      unit: 'deg',
      min: -89,
      max: 89,
      sense: 'widening',
      get: (m) => Math.atan2(m.endCut - m.startCut, m.end - m.start) * DEGREES,
      set: (m, value) => ({
        endCut: Math.max(0, m.startCut + (m.end - m.start) * Math.tan(value / DEGREES)),
      }),
    },
  ],
  aims: ['start', 'end', 'startCut', 'endCut'],
  handles: [
    {
      name: 'start-corner',
      label: 'First cut’s end',
      across: 'startCut',
      along: 'start',
      at: (m) => [m.startCut, m.start],
      drag: (m, [across, along]) => ({ startCut: Math.max(0, across), start: Math.min(along, m.end - 1) }),
    },
    {
      name: 'end-corner',
      label: 'Second cut’s end',
      across: 'endCut',
      along: 'end',
      at: (m) => [m.endCut, m.end],
      drag: (m, [across, along]) => ({ endCut: Math.max(0, across), end: Math.max(along, m.start + 1) }),
    },
  ],
  complete: (m) => m,
  limits: endAfterStart,
  build,
}
