import type { Frame } from '../plane/frame.ts'
import { sameLay } from '../plane/lay.ts'
import type { Build, CreasePart, Hang, OwnPiece, PanelPart } from './build.ts'
import type { Field, Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { SMALLEST, stretchIn, tabOn, USUAL_CALIPER } from './shared/fitting.ts'
import type { Tabs } from './shared/own-piece.ts'
import {
  ownPiece,
  SHOULDER,
  shouldersOf,
  tabField,
  tabLimit,
  tabOutline,
  tabsChoice,
} from './shared/own-piece.ts'
import { endAfterStart, rectangle, shifted, stretchFields } from './shared/parallel.ts'

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
  /** How the feet of walls that stand off the host crease are glued; all other tabs lie flat. */
  readonly tabs?: Tabs
}

/** A wall's joint with the page below it, and with the platform above it: hidden, they only carry panels. */
const footName = (k: number): string => `foot-${k + 1}`

const topName = (k: number): string => `top-${k + 1}`

/** The side of the host on which a wall stands; one on the crease itself counts to the right. */
const sideOf = (foot: number): 'left' | 'right' => (foot < 0 ? 'left' : 'right')

/**
 * Ridge: the host frame lifted by the walls' height along the inside normal. Page, wall, platform and
 * wall round it are parallelograms, so every wall stands along that normal and makes half the host's
 * angle with its page below, and with the platform above.
 *
 * Order of `out`: ridge, then foot and top of each wall.
 */
function place(m: FloatingLayer, host: Frame, out: readonly Frame[]): boolean {
  const S = host[12] as number
  const C = host[13] as number
  // Sine and cosine of a quarter of the host's angle.
  const cosine = Math.sqrt((1 + C) / 2)
  const sine = S / (2 * cosine)
  const ridge = out[0] as Frame
  for (let k = 0; k < 3; k++) {
    const X = host[3 + k] as number
    const D = host[6 + k] as number
    const N = host[9 + k] as number
    const O = (host[k] as number) + m.start * D
    ridge[k] = O + m.height * N
    ridge[3 + k] = X
    ridge[6 + k] = D
    ridge[9 + k] = N
    for (let w = 0; w < m.walls.length; w++) {
      const foot = out[1 + 2 * w] as Frame
      const top = out[2 + 2 * w] as Frame
      const across = m.walls[w] as number
      const side = across < 0 ? -1 : 1
      const normal = side * sine * X + cosine * N
      foot[k] = O + across * S * X + Math.abs(across) * C * N
      foot[3 + k] = cosine * X - side * sine * N
      foot[6 + k] = D
      foot[9 + k] = normal
      top[k] = (foot[k] as number) + m.height * N
      top[3 + k] = -(foot[3 + k] as number)
      top[6 + k] = D
      top[9 + k] = -normal
    }
  }
  ridge[12] = S
  ridge[13] = C
  for (let i = 1; i < out.length; i++) {
    const frame = out[i] as Frame
    frame[12] = sine
    frame[13] = cosine
  }
  return true
}

function build(m: FloatingLayer): Build {
  const long = m.end - m.start
  const tab = m.tab ?? 0
  const wallName = (k: number) => `wall-${k + 1}`
  // On the host crease or close to it a slit would tear that fold.
  const through = (across: number) => shouldersOf(Math.abs(across) < SHOULDER ? 'flat' : m.tabs, long)
  /** A wall hangs on the left of its foot on the right page, mirror-wise on the left one. */
  const joints = m.walls.flatMap((across, k): CreasePart[] => {
    const side = sideOf(across)
    const hidden = { hidden: true, length: long, fold: 'valley' } as const
    const wall = (from: number, off: 1 | -1) => ({ panel: wallName(k), lay: shifted(from, 0, off) })
    const base = { panel: `host-${side}`, lay: shifted(Math.abs(across), m.start, 1) }
    const roof = { panel: side, lay: shifted(Math.abs(across), 0, -1) }
    const hang = (page: Hang, own: Hang) =>
      side === 'left' ? { left: page, right: own } : { left: own, right: page }
    return [
      { part: footName(k), ...hidden, ...hang(base, wall(0, 1)) },
      { part: topName(k), ...hidden, ...hang(roof, wall(m.height, -1)) },
    ]
  })
  const platform = (side: 'left' | 'right', across: number): PanelPart => ({
    part: side,
    crease: 'ridge',
    side,
    outline: rectangle(across, 0, long),
    flat: { panel: 'platform', lay: { ...sameLay, off: side === 'left' ? [-1, 0] : [1, 0] } },
  })
  /** Under the platform a tab turns inwards where there is no room for it on the outside. */
  const turnsOut = (foot: number): boolean => Math.abs(foot) + tab <= m[sideOf(foot)] || Math.abs(foot) < tab
  const wallPieces: readonly OwnPiece[] = m.walls.map((foot, k) => {
    const of = `${m.id}/${wallName(k)}`
    const top = turnsOut(foot) ? 'valley' : 'mountain'
    // A wall's front looks away from the host crease: one on the right lies with its foot to the right.
    const ends = { roof: { fold: top }, page: { fold: 'valley', ...through(foot) } } as const
    const [right, left] = sideOf(foot) === 'left' ? [ends.roof, ends.page] : [ends.page, ends.roof]
    return ownPiece(wallName(k), tab, [
      { from: [m.height, long], to: [m.height, 0], of, ...right },
      { from: [0, 0], to: [0, long], of, ...left },
    ])
  })
  return {
    creases: [
      {
        part: 'ridge',
        length: long,
        fold: 'valley',
        left: { panel: 'left', lay: sameLay },
        right: { panel: 'right', lay: sameLay },
      },
      ...joints,
    ],
    panels: [
      platform('left', m.left),
      platform('right', m.right),
      ...m.walls.map(
        (across, k): PanelPart => ({
          part: wallName(k),
          crease: footName(k),
          side: sideOf(across) === 'left' ? 'right' : 'left',
          outline: rectangle(m.height, 0, long),
          flat: {
            panel: wallName(k),
            lay: sideOf(across) === 'left' ? sameLay : shifted(m.height, 0, -1),
          },
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
        lines: [],
      },
      ...wallPieces,
    ],
    glue: m.walls.flatMap((foot) => {
      const side = sideOf(foot)
      const across = Math.abs(foot)
      const off = turnsOut(foot) ? 1 : -1
      return [
        {
          panel: `host-${side}`,
          ...tabOutline(shifted(across, m.start, 1), long, tab, through(foot) ?? {}),
        },
        { panel: side, ...tabOutline(shifted(across, 0, off), long, tab) },
      ]
    }),
    turns: (_from, _to, out) => {
      // The platform turns as the host does, a wall half as fast, both evenly.
      for (let i = 0; i <= 2 * m.walls.length; i++) {
        out[2 * i] = i === 0 ? 1 : 0.5
        out[2 * i + 1] = 0
      }
    },
    place: (host, out) => place(m, host, out),
  }
}

const size = (name: string, label: string): Field => ({
  name,
  label,
  unit: 'mm',
  min: 0,
  max: 2000,
})

/** Walls in the middle and at three quarters of the reach, a quarter as high as it reaches far. */
export function floatingLayerFits(room: Room, share: Share): readonly (Fitted<FloatingLayer> | null)[] {
  const { start, end, depth } = stretchIn(room, share)
  const height = Math.round(0.22 * depth)
  const reach = Math.round(0.75 * depth)
  const wall = Math.round(0.75 * reach)
  const tab = Math.min(tabOn(room.caliper ?? USUAL_CALIPER, height), reach - wall)
  if (end - start < SMALLEST || height < SMALLEST) return [null]
  return [
    { variant: '', fields: { start, end, height, left: reach, right: reach, walls: [-wall, 0, wall], tab } },
  ]
}

export const floatingLayer: Kind<FloatingLayer> = {
  kind: 'floating-layer',
  label: 'Floating layer',
  word: 'platform',
  stock: { from: 'own-card', held: 'walls' },
  fields: [
    ...stretchFields,
    size('height', 'Height'),
    {
      ...size('left', 'Left reach'),
      twin: 'right',
    },
    {
      ...size('right', 'Right reach'),
      twin: 'left',
    },
    tabField,
  ],
  choices: [tabsChoice],
  lists: [
    {
      name: 'walls',
      label: 'Walls',
      unit: 'mm',
      min: -2000,
      max: 2000,
      sense: 'sides',
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
    {
      name: 'wall-top',
      label: 'Top of the first wall',
      across: 'height',
      piece: 'wall-1',
      at: (m) => [m.height, (m.end - m.start) / 2],
      drag: (_, [across]) => ({ height: Math.max(1, across) }),
    },
  ],
  complete: (m) => ({ ...m, tab: m.tab ?? 0 }),
  limits: (m) =>
    m.walls.length === 0
      ? { field: 'walls', sentence: 'must name at least one place for a wall, from -2000 to 2000 mm' }
      : (endAfterStart(m) ?? tabLimit(m)),
  build,
}
