import type {
  Build,
  CreasePart,
  Field,
  Flat,
  Frame,
  Kind,
  Lay,
  OwnPiece,
  PanelPart,
  Placed,
} from '../types.ts'
import { sameLay } from '../vector.ts'
import { along, endAfterStart, tabField } from './glued-tent.ts'
import { ownPiece, tabOutline } from './own-piece.ts'

/** A platform on upright walls: its crease stays over the host crease, its halves parallel to the host's panels. */
export interface FloatingLayer extends Placed {
  readonly kind: 'floating-layer'
  /** Along the host crease, mm. */
  readonly start: number
  readonly end: number
  /** How high the walls are, mm. */
  readonly height: number
  /** How far the platform reaches on either side of its crease, mm. */
  readonly left: number
  readonly right: number
  /** Where the walls stand: across from the host crease, left of it below zero, mm. */
  readonly walls: readonly number[]
  readonly tab?: number
}

const rectangle = (across: number, long: number): readonly Flat[] => [
  [0, 0],
  [0, long],
  [across, long],
  [across, 0],
]

/**
 * Ridge: the host frame lifted by the walls' height along the inside normal. Each wall stands along
 * that normal on its own foot: page, wall, platform, wall round it are a parallelogram.
 */
function place(m: FloatingLayer, host: Frame, out: readonly Frame[]): boolean {
  const S = host[12] as number
  const C = host[13] as number
  for (let i = 0; i < out.length; i++) {
    const frame = out[i] as Frame
    const foot = i === 0 ? 0 : (m.walls[i - 1] as number)
    for (let k = 0; k < 3; k++) {
      const X = host[3 + k] as number
      const D = host[6 + k] as number
      const N = host[9 + k] as number
      frame[k] =
        (host[k] as number) +
        m.start * D +
        foot * S * X +
        Math.abs(foot) * C * N +
        (i === 0 ? m.height * N : 0)
      frame[3 + k] = X
      frame[6 + k] = D
      frame[9 + k] = N
    }
    frame[12] = i === 0 ? S : 0
    frame[13] = i === 0 ? C : 1
  }
  return true
}

function build(m: FloatingLayer): Build {
  const long = m.end - m.start
  const tab = m.tab ?? 0
  const wallName = (k: number) => `wall-${k + 1}`
  const feet: readonly CreasePart[] = m.walls.map((_, k) => ({
    part: wallName(k),
    hidden: true,
    length: long,
    fold: 'valley',
    left: { panel: wallName(k), lay: sameLay },
    right: { panel: wallName(k), lay: sameLay },
  }))
  const platform = (side: 'left' | 'right', across: number): PanelPart => ({
    part: side,
    crease: 'ridge',
    side,
    outline: rectangle(across, long),
    flat: { panel: 'platform', lay: { ...sameLay, off: side === 'left' ? [-1, 0] : [1, 0] } },
  })
  const wallPieces: readonly OwnPiece[] = m.walls.map((_, k) =>
    ownPiece(wallName(k), tab, [
      { from: [m.height, long], to: [m.height, 0], of: `${m.id}/${wallName(k)}` },
      { from: [0, 0], to: [0, long], of: `${m.id}/${wallName(k)}` },
    ]),
  )
  const joint = (foot: number): Lay => ({ origin: [Math.abs(foot), m.start], run: [0, 1], off: [1, 0] })
  return {
    creases: [
      {
        part: 'ridge',
        length: long,
        fold: 'valley',
        left: { panel: 'left', lay: sameLay },
        right: { panel: 'right', lay: sameLay },
      },
      ...feet,
    ],
    panels: [
      platform('left', m.left),
      platform('right', m.right),
      ...m.walls.map(
        (_, k): PanelPart => ({
          part: wallName(k),
          crease: wallName(k),
          side: 'right',
          outline: rectangle(m.height, long),
          flat: { panel: wallName(k), lay: sameLay },
        }),
      ),
    ],
    notch: null,
    span: [m.start, m.start],
    cuts: { left: [], right: [] },
    tip: { crease: 'ridge', along: long / 2 },
    pieces: [
      {
        part: 'platform',
        outline: [
          [-m.left, 0],
          [m.right, 0],
          [m.right, long],
          [-m.left, long],
        ],
        lines: m.walls.map((foot) => ({
          kind: 'glue',
          points: [
            [foot, 0],
            [foot, long],
          ],
          of: m.id,
        })),
      },
      ...wallPieces,
    ],
    glue: m.walls.map((foot) => ({
      panel: foot < 0 ? 'host-left' : 'host-right',
      ...tabOutline(joint(foot), long, tab),
    })),
    turns: (_from, _to, out) => {
      // The platform turns as the host does; a wall keeps to the plane half-way between the host's panels.
      out.fill(0, 0, 2 * (1 + m.walls.length))
      out[0] = 1
    },
    place: (host, out) => place(m, host, out),
  }
}

const size = (name: string, label: string, help: string): Field => ({
  name,
  label,
  unit: 'mm',
  min: 0,
  max: 2000,
  help,
})

export const floatingLayer: Kind<FloatingLayer> = {
  kind: 'floating-layer',
  label: 'Floating layer',
  fields: [
    ...along,
    size('height', 'Height', 'How high the walls are.'),
    size('left', 'Left reach', 'How far the platform reaches to the left of its crease.'),
    size('right', 'Right reach', 'How far the platform reaches to the right of its crease.'),
    tabField,
  ],
  lists: [
    {
      name: 'walls',
      label: 'Walls',
      unit: 'mm',
      min: -2000,
      max: 2000,
      help: 'Where the walls stand, left of the host crease below zero.',
    },
  ],
  points: [],
  derived: [],
  aims: ['start', 'end', 'height'],
  handles: [
    {
      name: 'start-edge',
      label: 'Platform’s near edge',
      across: 'right',
      along: 'start',
      at: (m) => [m.right, m.start],
      drag: (m, [a, l]) => ({ right: Math.max(0, a), start: Math.min(l, m.end - 1) }),
    },
    {
      name: 'end-edge',
      label: 'Platform’s far edge',
      across: 'left',
      along: 'end',
      side: 'left',
      at: (m) => [m.left, m.end],
      drag: (m, [a, l]) => ({ left: Math.max(0, a), end: Math.max(l, m.start + 1) }),
    },
  ],
  complete: (m) => ({ ...m, tab: m.tab ?? 0 }),
  limits: endAfterStart,
  build,
}
