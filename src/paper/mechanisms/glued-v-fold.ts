import type { Flat, Lay } from '../plane/lay.ts'
import { sameLay } from '../plane/lay.ts'
import { DEGREES, RADIANS } from '../plane/vector.ts'
import type { Build, CreasePart, OwnPiece } from './build.ts'
import type { Change, Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { together } from './kind.ts'
import { pointing, SMALLEST, tabOn, USUAL_CALIPER } from './shared/fitting.ts'
import { fourBar, liesInHost, placeFourBar, rangeOf, shutGap, shutsOuter } from './shared/four-bar.ts'
import type { TabEdge, Tabs } from './shared/own-piece.ts'
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

/** Angles of one side, degrees. */
export interface VSide {
  /** Host crease to joint, in the host's panel. */
  readonly base: number
  /** Joint to ridge, in the facet. */
  readonly facet: number
}

/** A V-fold of its own card, glued or taped along two joints that meet on the host crease. */
export interface GluedVFold extends Placed {
  readonly kind: 'glued-v-fold'
  /** Along the host crease, mm. */
  readonly apex: number
  /** Which way along the host crease the joints run. */
  readonly toward: 1 | -1
  readonly left: VSide
  readonly right: VSide
  /** The short way of writing equal sides in the file. */
  readonly base?: number
  readonly facet?: number
  /** Length of a joint, and of the ridge, mm. */
  readonly foot: number
  readonly ridge: number
  readonly side?: 'inside' | 'outside'
  readonly pop?: 'up' | 'down'
  /** Points `[across, along]` from the ridge's tip to the joint's end, measured from the ridge. */
  readonly outline?: readonly Flat[]
  /** Width of the glue tabs, mm; 0: no tabs, tape along the joint. */
  readonly tab?: number
  readonly tabs?: Tabs
}

const sides = (m: GluedVFold): { left: VSide; right: VSide } => ({
  left: { base: m.left?.base ?? m.base ?? 0, facet: m.left?.facet ?? m.facet ?? 0 },
  right: { base: m.right?.base ?? m.base ?? 0, facet: m.right?.facet ?? m.facet ?? 0 },
})

const barOf = (m: GluedVFold) => {
  const { left, right } = sides(m)
  return fourBar('spherical', right, left, m.pop === 'down' ? -1 : 1, m.side === 'outside')
}

/** A joint in the host's panel: along it, and away from the host crease (or back to it). */
function jointInHost(m: GluedVFold, base: number, away: 1 | -1): Lay {
  const sin = Math.sin(base * RADIANS)
  const cos = Math.cos(base * RADIANS)
  return { origin: [0, m.apex], run: [sin, m.toward * cos], off: [away * cos, -away * m.toward * sin] }
}

/** A joint in its facet: along it, and towards the ridge. */
function jointInFacet(facet: number): Lay {
  const sin = Math.sin(facet * RADIANS)
  const cos = Math.cos(facet * RADIANS)
  return { origin: [0, 0], run: [sin, cos], off: [-cos, sin] }
}

const facetOutline = (m: GluedVFold, facet: number): readonly Flat[] => [
  [0, 0],
  [0, m.ridge],
  ...(m.outline ?? []),
  [m.foot * Math.sin(facet * RADIANS), m.foot * Math.cos(facet * RADIANS)],
]

/**
 * The angle left for a tab at the apex, radians: on the piece both tabs share what its facets leave of a full
 * turn; on the page it may not reach round to the host crease behind the apex.
 */
function roomFor(m: GluedVFold, side: 'left' | 'right'): number {
  const { left, right } = sides(m)
  const shared = (360 - left.facet - right.facet) / 2
  return Math.min(shared, 180 - (side === 'left' ? left : right).base) * RADIANS
}

const through = (m: GluedVFold, side: 'left' | 'right'): ReturnType<typeof shouldersOf> =>
  shouldersOf(m.tabs, m.foot, Math.sin(sides(m)[side].base * RADIANS))

function piece(m: GluedVFold, outlines: { left: readonly Flat[]; right: readonly Flat[] }): OwnPiece {
  const { left, right } = sides(m)
  const edge = (side: 'left' | 'right', facet: number): TabEdge => {
    const sign = side === 'left' ? -1 : 1
    const end: Flat = [sign * m.foot * Math.sin(facet * RADIANS), m.foot * Math.cos(facet * RADIANS)]
    const room = roomFor(m, side)
    return side === 'right'
      ? { from: end, to: [0, 0], of: `${m.id}/right`, tight: { at: 'to', room }, ...through(m, side) }
      : { from: [0, 0], to: end, of: `${m.id}/left`, tight: { at: 'from', room }, ...through(m, side) }
  }
  const rim = (outline: readonly Flat[], sign: 1 | -1): Flat[] =>
    outline.slice(1, -1).map(([across, along]): Flat => [sign * across, along])
  return ownPiece('piece', m.tab ?? 0, [
    ...rim(outlines.right, 1),
    edge('right', right.facet),
    edge('left', left.facet),
    ...rim(outlines.left, -1).slice(1).reverse(),
  ])
}

function build(m: GluedVFold): Build {
  const { left, right } = sides(m)
  const bar = barOf(m)
  // Read once: a number taken out of an object at every pose would be a new one in memory each time.
  const { apex, toward } = m
  const range = rangeOf(bar)
  const away = shutsOuter(bar) ? 1 : -1
  const outlines = { left: facetOutline(m, left.facet), right: facetOutline(m, right.facet) }
  const joint = (side: 'left' | 'right', { base, facet }: VSide): CreasePart => {
    const page = { panel: `host-${side}`, lay: jointInHost(m, base, away) }
    const own = { panel: side, lay: jointInFacet(facet) }
    return {
      part: side,
      length: m.foot,
      fold: 'valley',
      left: side === 'left' ? page : own,
      right: side === 'left' ? own : page,
    }
  }
  const flat = (side: 'left' | 'right') => ({
    panel: 'piece',
    lay: { ...sameLay, off: side === 'left' ? ([-1, 0] as const) : ([1, 0] as const) },
  })
  return {
    creases: [
      {
        part: 'ridge',
        length: m.ridge,
        fold: m.pop === 'down' ? 'valley' : 'mountain',
        left: { panel: 'left', lay: sameLay },
        right: { panel: 'right', lay: sameLay },
      },
      joint('left', left),
      joint('right', right),
    ],
    panels: (['left', 'right'] as const).map((side) => ({
      part: side,
      crease: 'ridge',
      side,
      outline: outlines[side],
      flat: flat(side),
    })),
    notch: null,
    span: [m.apex, m.apex],
    cuts: { left: [], right: [] },
    tip: { crease: 'ridge', along: m.ridge },
    pieces: [piece(m, outlines)],
    fromBack: m.toward < 0 !== (m.side === 'outside'),
    glue: (['left', 'right'] as const).map((side) => ({
      panel: `host-${side}`,
      ...tabOutline(jointInHost(m, sides(m)[side].base, 1), m.foot, m.tab ?? 0, {
        room: roomFor(m, side),
        ...through(m, side),
      }),
    })),
    shutGap: shutGap(bar),
    lies: liesInHost(bar),
    range,
    linkage: bar,
    place: (host, out) => placeFourBar(bar, range, apex, toward, host, out),
  }
}

/** What a base or facet angle can be, degrees. */
const ANGLES = { min: 1, max: 179 } as const

const angle = (name: string, label: string) => ({ name, label, unit: 'deg', ...ANGLES }) as const

/** Both sides turned by as much, as far as the first of them can go. */
const both = (m: GluedVFold, key: 'base' | 'facet', value: number): Change => {
  const { left, right } = sides(m)
  const shift = together(value - right[key], [left[key], right[key]], ANGLES)
  return { [`right.${key}`]: right[key] + shift, [`left.${key}`]: left[key] + shift }
}

/** What stands well, degrees: steeper joints inside, where the ridge has all the room of the open card. */
const STANDS = { inside: { base: 45, facet: 60 }, outside: { base: 30, facet: 45 } } as const

/** As high as its joints are long; inside it stands in the fold, outside it rides on its back. */
export function gluedVFoldFits(
  room: Room,
  { long, deep, at }: Share,
): readonly (Fitted<GluedVFold> | null)[] {
  const whole = room.to - room.from
  const one = (side: 'inside' | 'outside', toward: 1 | -1): Fitted<GluedVFold> | null => {
    const { base, facet } = STANDS[side]
    const [sine, cosine] = [Math.sin(base * RADIANS), Math.cos(base * RADIANS)]
    const most = Math.min(long * whole, room.beyond((room.from + room.to) / 2))
    const span = Math.min(most / cosine, most)
    const start = room.from + at * (whole - span * cosine)
    const depth = room.depth(start + 0.2 * span * cosine, start + span * cosine) / 0.9
    const foot = Math.round(Math.min(span, (deep * depth) / sine))
    if (foot < SMALLEST) return null
    const apex = Math.round(toward > 0 ? start : start + foot * cosine)
    const side2 = { base, facet }
    const ridge = Math.round(0.9 * foot)
    return {
      variant: `${side}, ${pointing(room, toward)}`,
      fields: {
        apex,
        toward,
        left: side2,
        right: side2,
        foot,
        ridge,
        side,
        pop: 'up',
        tab: tabOn(room.caliper ?? USUAL_CALIPER, foot),
      },
    }
  }
  return [one('inside', 1), one('inside', -1), one('outside', 1), one('outside', -1)]
}

export const gluedVFold: Kind<GluedVFold> = {
  kind: 'glued-v-fold',
  label: 'V-fold of its own card',
  word: 'v-fold',
  stock: { from: 'own-card', held: 'joints' },
  pops: states,
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
      ...angle('base', 'Base angle'),
      optional: true,
      shorthand: true,
    },
    {
      ...angle('facet', 'Facet angle'),
      optional: true,
      shorthand: true,
    },
    {
      ...angle('left.base', 'Left base angle'),
      twin: 'right.base',
    },
    { ...angle('left.facet', 'Left facet angle'), twin: 'right.facet' },
    {
      ...angle('right.base', 'Right base angle'),
      twin: 'left.base',
    },
    {
      ...angle('right.facet', 'Right facet angle'),
      twin: 'left.facet',
    },
    {
      name: 'foot',
      label: 'Joint',
      unit: 'mm',
      min: 0,
      max: 2000,
    },
    {
      name: 'ridge',
      label: 'Ridge',
      unit: 'mm',
      min: 0,
      max: 2000,
    },
    tabField,
  ],
  choices: [
    {
      name: 'toward',
      label: 'Joints run',
      values: [1, -1],
      words: ['Outward', 'Back'],
      required: true,
    },
    ...stateChoices,
    tabsChoice,
  ],
  points: [/** Points from the tip of the ridge to the end of the joint. */ { name: 'outline' }],
  derived: [
    {
      name: 'base',
      label: 'Base angle',
      unit: 'deg',
      ...ANGLES,
      get: (m) => sides(m).right.base,
      set: (m, value) => both(m, 'base', value),
    },
    {
      name: 'facet',
      label: 'Facet angle',
      unit: 'deg',
      ...ANGLES,
      get: (m) => sides(m).right.facet,
      set: (m, value) => both(m, 'facet', value),
    },
  ],
  aims: ['apex', 'ridge', 'base', 'facet'],
  handles: [
    {
      name: 'apex',
      label: 'Apex',
      along: 'apex',
      at: (m) => [0, m.apex],
      drag: (_, [, along]) => ({ apex: along }),
    },
    {
      name: 'joint-end',
      label: 'Joint’s end',
      across: 'base',
      along: 'foot',
      at: (m) => {
        const { base } = sides(m).right
        return [m.foot * Math.sin(base * RADIANS), m.apex + m.toward * m.foot * Math.cos(base * RADIANS)]
      },
      drag: (m, [across, along]) => {
        const out = m.toward * (along - m.apex)
        const base = Math.min(179, Math.max(1, Math.atan2(Math.max(0.1, across), out) * DEGREES))
        return { ...both(m, 'base', base), foot: Math.hypot(across, out) }
      },
    },
    {
      name: 'tip',
      label: 'Ridge’s tip',
      along: 'ridge',
      piece: 'piece',
      at: (m) => [0, m.ridge],
      drag: (_, [, along]) => ({ ridge: Math.max(1, along) }),
    },
  ],
  complete: (m) => {
    const { base: _base, facet: _facet, ...rest } = m
    return { ...rest, ...sides(m), side: m.side ?? 'inside', pop: m.pop ?? 'up', tab: m.tab ?? 0 }
  },
  limits: (m) => {
    const missing = (['left', 'right'] as const).flatMap((side) =>
      (['base', 'facet'] as const)
        .filter((key) => m[side]?.[key] === undefined && m[key] === undefined)
        .map((key) => `${side}.${key}`),
    )
    return missing[0] === undefined
      ? tabLimit(m)
      : {
          field: missing[0],
          sentence: 'is missing: give base and facet, for both sides or for each, from 1 to 179 degrees',
        }
  },
  build,
}
