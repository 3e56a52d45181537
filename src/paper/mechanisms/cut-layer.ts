import type { Frame } from '../plane/frame.ts'
import type { Flat } from '../plane/lay.ts'
import type { Build } from './build.ts'
import type { Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { SMALLEST, stretchIn } from './shared/fitting.ts'
import { endAfterStart, rectangle, shifted, stretchFields } from './shared/parallel.ts'
import { stripCreases } from './shared/strip.ts'

/** A strip between two cuts, folded out as a layer: a parallelogram across the host crease. */
export interface CutLayer extends Placed {
  readonly kind: 'cut-layer'
  /** Along the host crease, mm. */
  readonly start: number
  readonly end: number
  /** Depth of the cuts on either panel, mm; the one left out equals the other. */
  readonly left?: number
  readonly right?: number
}

/** Both depths, mm. */
const depths = (m: CutLayer): { left: number; right: number } => ({
  left: m.left ?? m.right ?? 0,
  right: m.right ?? m.left ?? 0,
})

/**
 * The side folds are the host frame carried along the two panels; the ridge is their sum, with the
 * inside turned over. Source: parallelogram (planar four-bar with equal opposite links).
 */
function place(m: CutLayer, host: Frame, out: readonly Frame[]): boolean {
  const { left: a, right: b } = depths(m)
  const ridge = out[0] as Frame
  const left = out[1] as Frame
  const right = out[2] as Frame
  const S = host[12] as number
  const C = host[13] as number
  for (let k = 0; k < 3; k++) {
    const X = host[3 + k] as number
    const D = host[6 + k] as number
    const N = host[9 + k] as number
    const O = (host[k] as number) + D * m.start
    ridge[k] = O + (b - a) * S * X + (a + b) * C * N
    left[k] = O - a * S * X + a * C * N
    right[k] = O + b * S * X + b * C * N
    ridge[3 + k] = left[3 + k] = right[3 + k] = X
    ridge[6 + k] = left[6 + k] = right[6 + k] = D
    ridge[9 + k] = -N
    left[9 + k] = right[9 + k] = N
  }
  ridge[12] = left[12] = right[12] = S
  ridge[13] = left[13] = right[13] = C
  return true
}

function build(m: CutLayer): Build {
  const { left: a, right: b } = depths(m)
  const long = m.end - m.start
  // The left facet reaches from the left fold to the ridge: it is as wide as the right cut is deep.
  const creases = stripCreases(long, long, {
    left: { host: shifted(a, m.start, 1), facet: shifted(b, 0, -1) },
    right: { host: shifted(b, m.start, 1), facet: shifted(a, 0, -1) },
  })
  const cuts = (depth: number): (readonly Flat[])[] =>
    depth > 0
      ? [
          [
            [0, m.start],
            [depth, m.start],
          ],
          [
            [0, m.end],
            [depth, m.end],
          ],
        ]
      : []
  return {
    creases,
    panels: [
      {
        part: 'left',
        crease: 'ridge',
        side: 'left',
        outline: rectangle(b, 0, long),
        flat: { panel: 'host-left', lay: shifted(a - b, m.start, 1) },
      },
      {
        part: 'right',
        crease: 'ridge',
        side: 'right',
        outline: rectangle(a, 0, long),
        flat: { panel: 'host-right', lay: shifted(b - a, m.start, 1) },
      },
    ],
    notch: { left: rectangle(a, m.start, m.end), right: rectangle(b, m.start, m.end) },
    span: [m.start, m.end],
    cuts: { left: cuts(a), right: cuts(b) },
    tip: { crease: 'ridge', along: long / 2 },
    place: (host, out) => place(m, host, out),
    // Every crease of a parallelogram turns as its host does.
    turns: (_from, _to, out) => out.set([1, 0, 1, 0, 1, 0]),
  }
}

/** Both cuts alike: shut, its ridge lies twice as far out as they are deep. */
export function cutLayerFits(room: Room, share: Share): readonly (Fitted<CutLayer> | null)[] {
  const { start, end, depth } = stretchIn(room, share)
  const deep = Math.round(depth / 2)
  if (end - start < SMALLEST || deep < SMALLEST) return [null]
  return [{ variant: '', fields: { start, end, left: deep, right: deep } }]
}

export const cutLayer: Kind<CutLayer> = {
  kind: 'cut-layer',
  label: 'Layer cut from the card',
  word: 'layer',
  stock: { from: 'host', loose: 'strip' },
  fields: [
    ...stretchFields,
    {
      name: 'left',
      twin: 'right',
      label: 'Left depth',
      unit: 'mm',
      min: 0,
      max: 2000,
      optional: true,
    },
    {
      name: 'right',
      twin: 'left',
      label: 'Right depth',
      unit: 'mm',
      min: 0,
      max: 2000,
      optional: true,
    },
  ],
  points: [],
  derived: [
    {
      name: 'depth',
      label: 'Depth',
      unit: 'mm',
      min: 0,
      max: 2000,
      get: (m) => Math.max(depths(m).left, depths(m).right),
      set: (_, value) => ({ left: value, right: value }),
    },
  ],
  aims: ['start', 'end', 'depth', 'left', 'right'],
  handles: [
    {
      name: 'start-corner',
      label: 'First cut’s end',
      across: 'depth',
      along: 'start',
      at: (m) => [depths(m).right, m.start],
      drag: (m, [across, along]) => ({
        left: Math.max(0, across),
        right: Math.max(0, across),
        start: Math.min(along, m.end - 1),
      }),
    },
    {
      name: 'end-corner',
      label: 'Second cut’s end',
      across: 'depth',
      along: 'end',
      at: (m) => [depths(m).right, m.end],
      drag: (m, [across, along]) => ({
        left: Math.max(0, across),
        right: Math.max(0, across),
        end: Math.max(along, m.start + 1),
      }),
    },
    {
      name: 'left-fold',
      label: 'Left fold',
      across: 'left',
      side: 'left',
      at: (m) => [depths(m).left, (m.start + m.end) / 2],
      drag: (m, [across]) => ({ left: Math.max(0, across), right: depths(m).right }),
    },
    {
      name: 'right-fold',
      label: 'Right fold',
      across: 'right',
      at: (m) => [depths(m).right, (m.start + m.end) / 2],
      drag: (m, [across]) => ({ right: Math.max(0, across), left: depths(m).left }),
    },
  ],
  complete: (m) => ({ ...m, ...depths(m) }),
  limits: (m) => {
    if (m.left === undefined && m.right === undefined)
      return {
        field: 'left',
        sentence: 'is missing: give the depth of the cuts, left, right or both, from 0 to 2000 mm',
      }
    return endAfterStart(m)
  },
  build,
}
