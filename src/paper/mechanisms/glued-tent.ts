import type { Lay } from '../plane/lay.ts'
import { sameLay } from '../plane/lay.ts'
import type { Build, CreasePart, OwnPiece } from './build.ts'
import type { Change, Field, Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { together } from './kind.ts'
import { SMALLEST, stretchIn, tabOn, USUAL_CALIPER } from './shared/fitting.ts'
import { fourBar, liesInHost, placeFourBar, rangeOf, shutGap, shutsOuter } from './shared/four-bar.ts'
import type { Tabs } from './shared/own-piece.ts'
import {
  ownPiece,
  shouldersOf,
  stateChoices,
  states,
  tabField,
  tabLimit,
  tabOutline,
  tabsChoice,
} from './shared/own-piece.ts'
import { endAfterStart, rectangle, stretchFields } from './shared/parallel.ts'

/** A tent of its own card: two walls that meet in a ridge parallel to the host crease. */
export interface GluedTent extends Placed {
  readonly kind: 'glued-tent'
  /** Along the host crease, mm. */
  readonly start: number
  readonly end: number
  /** Host crease to joint, mm. */
  readonly leftFoot: number
  readonly rightFoot: number
  /** Joint to ridge, mm. */
  readonly leftWall: number
  readonly rightWall: number
  readonly side?: 'inside' | 'outside'
  readonly pop?: 'up' | 'down'
  /** Width of the glue tabs, mm; 0: no tabs, tape along the joint. */
  readonly tab?: number
  readonly tabs?: Tabs
}

const barOf = (m: GluedTent) =>
  fourBar(
    'planar',
    { base: m.rightFoot, facet: m.rightWall },
    { base: m.leftFoot, facet: m.leftWall },
    m.pop === 'down' ? -1 : 1,
    m.side === 'outside',
  )

function piece(m: GluedTent): OwnPiece {
  const long = m.end - m.start
  const [l, r] = [-m.leftWall, m.rightWall]
  const through = shouldersOf(m.tabs, long)
  return ownPiece('piece', m.tab ?? 0, [
    { from: [r, long], to: [r, 0], of: `${m.id}/right`, ...through },
    { from: [l, 0], to: [l, long], of: `${m.id}/left`, ...through },
  ])
}

function build(m: GluedTent): Build {
  const long = m.end - m.start
  const bar = barOf(m)
  // Read once: a number taken out of an object at every pose would be a new one in memory each time.
  const { start } = m
  const range = rangeOf(bar)
  const away = shutsOuter(bar) ? 1 : -1
  const parts = {
    left: { foot: m.leftFoot, wall: m.leftWall },
    right: { foot: m.rightFoot, wall: m.rightWall },
  }
  const inHost = (foot: number, off: 1 | -1): Lay => ({ origin: [foot, m.start], run: [0, 1], off: [off, 0] })
  const joint = (side: 'left' | 'right'): CreasePart => {
    const page = { panel: `host-${side}`, lay: inHost(parts[side].foot, away) }
    const own = { panel: side, lay: { origin: [parts[side].wall, 0], run: [0, 1], off: [-1, 0] } as const }
    return {
      part: side,
      length: long,
      fold: 'valley',
      left: side === 'left' ? page : own,
      right: side === 'left' ? own : page,
    }
  }
  return {
    creases: [
      {
        part: 'ridge',
        length: long,
        fold: m.pop === 'down' ? 'valley' : 'mountain',
        left: { panel: 'left', lay: sameLay },
        right: { panel: 'right', lay: sameLay },
      },
      joint('left'),
      joint('right'),
    ],
    panels: (['left', 'right'] as const).map((side) => ({
      part: side,
      crease: 'ridge',
      side,
      outline: rectangle(parts[side].wall, 0, long),
      flat: { panel: 'piece', lay: { ...sameLay, off: side === 'left' ? [-1, 0] : [1, 0] } },
    })),
    notch: null,
    span: [m.start, m.start],
    cuts: { left: [], right: [] },
    tip: { crease: 'ridge', along: long / 2 },
    pieces: [piece(m)],
    fromBack: m.side === 'outside',
    glue: (['left', 'right'] as const).map((side) => ({
      panel: `host-${side}`,
      ...tabOutline(inHost(parts[side].foot, 1), long, m.tab ?? 0, shouldersOf(m.tabs, long) ?? {}),
    })),
    shutGap: shutGap(bar),
    lies: liesInHost(bar),
    range,
    linkage: bar,
    place: (host, out) => placeFourBar(bar, range, start, 1, host, out),
  }
}

/** What a foot or a wall can be, mm. */
const SIZES = { min: 0, max: 2000 } as const

const size = (name: string, twin: string, label: string): Field => ({
  name,
  label,
  unit: 'mm',
  ...SIZES,
  twin,
})

/** Both walls changed by as much, as far as the first of them can go. */
function bothWalls(m: GluedTent, value: number): Change {
  const shift = together(value - m.rightWall, [m.leftWall, m.rightWall], SIZES)
  return { rightWall: m.rightWall + shift, leftWall: m.leftWall + shift }
}

function bothFeet(m: GluedTent, value: number): Change {
  const shift = together(value - m.rightFoot, [m.leftFoot, m.rightFoot], SIZES)
  return { rightFoot: m.rightFoot + shift, leftFoot: m.leftFoot + shift }
}

/** Walls half as long again as its feet: shut, it reaches as far as both together. */
export function gluedTentFits(room: Room, share: Share): readonly (Fitted<GluedTent> | null)[] {
  const { start, end, depth } = stretchIn(room, share)
  const one = (side: 'inside' | 'outside'): Fitted<GluedTent> | null => {
    const foot = Math.round((side === 'inside' ? 0.4 : 0.6) * depth)
    const wall = Math.round(side === 'inside' ? 1.5 * foot : 1.4 * foot)
    if (end - start < SMALLEST || foot < SMALLEST) return null
    return {
      variant: side,
      fields: {
        start,
        end,
        leftFoot: foot,
        rightFoot: foot,
        leftWall: wall,
        rightWall: wall,
        side,
        pop: 'up',
        tab: tabOn(room.caliper ?? USUAL_CALIPER, foot),
      },
    }
  }
  return [one('inside'), one('outside')]
}

export const gluedTent: Kind<GluedTent> = {
  kind: 'glued-tent',
  label: 'Tent of its own card',
  word: 'tent',
  stock: { from: 'own-card', held: 'joints' },
  pops: states,
  fields: [
    ...stretchFields,
    size('leftFoot', 'rightFoot', 'Left foot'),
    size('rightFoot', 'leftFoot', 'Right foot'),
    size('leftWall', 'rightWall', 'Left wall'),
    size('rightWall', 'leftWall', 'Right wall'),
    tabField,
  ],
  choices: [...stateChoices, tabsChoice],
  points: [],
  derived: [
    {
      name: 'wall',
      label: 'Walls',
      said: { as: 'both' },
      unit: 'mm',
      ...SIZES,
      get: (m) => m.rightWall,
      set: bothWalls,
    },
    {
      name: 'foot',
      label: 'Feet',
      said: { as: 'both' },
      unit: 'mm',
      ...SIZES,
      get: (m) => m.rightFoot,
      set: bothFeet,
    },
  ],
  aims: ['start', 'end', 'wall', 'leftFoot', 'rightFoot'],
  handles: [
    {
      name: 'start-foot',
      label: 'Right joint’s start',
      across: 'rightFoot',
      along: 'start',
      at: (m) => [m.rightFoot, m.start],
      drag: (m, [a, l]) => ({ rightFoot: Math.max(0, a), start: Math.min(l, m.end - 1) }),
    },
    {
      name: 'end-foot',
      label: 'Left joint’s end',
      across: 'leftFoot',
      along: 'end',
      side: 'left',
      at: (m) => [m.leftFoot, m.end],
      drag: (m, [a, l]) => ({ leftFoot: Math.max(0, a), end: Math.max(l, m.start + 1) }),
    },
    {
      name: 'wall',
      label: 'Wall',
      across: 'wall',
      piece: 'piece',
      at: (m) => [m.rightWall, (m.end - m.start) / 2],
      drag: (m, [across]) => bothWalls(m, Math.max(1, across)),
    },
  ],
  complete: (m) => ({ ...m, side: m.side ?? 'inside', pop: m.pop ?? 'up', tab: m.tab ?? 0 }),
  limits: (m) => endAfterStart(m) ?? tabLimit(m),
  build,
}
