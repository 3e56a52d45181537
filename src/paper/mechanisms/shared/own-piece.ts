import type { Flat, Lay } from '../../plane/lay.ts'
import { laid } from '../../plane/lay.ts'
import type { Fold, OwnPiece, PieceLine } from '../build.ts'
import type { Choice, Fault, Field } from '../kind.ts'

/** Width of the glue tabs, for every kind of its own card that has some. */
export const tabField: Field = {
  name: 'tab',
  label: 'Glue tab',
  unit: 'mm',
  min: 0,
  max: 100,
  optional: true,
  idle: true,
}

/** On which side of the host's fold a four-bar stands, and in which of its two states. */
export const stateChoices: readonly Choice[] = [
  {
    name: 'side',
    label: 'Side',
    values: ['inside', 'outside'],
    words: ['Inside', 'Off the back'],
  },
  {
    name: 'pop',
    label: 'State',
    values: ['up', 'down'],
    words: ['Popped', 'Still down'],
  },
]

/** Whether its tabs are glued on the face that they stand on, or pushed through a slit and glued behind it. */
export type Tabs = 'flat' | 'slit'

export const tabsChoice: Choice = {
  name: 'tabs',
  label: 'Tabs on the card',
  values: ['flat', 'slit'],
  words: ['Glued on it', 'Through a slit'],
}

/** A tab narrower than this cannot be pushed through and glued behind, mm. Common practice, no source. */
export const LEAST_THROUGH = 3

/** Tabs that go through slits must be there, and wide enough. */
export const tabLimit = ({ tab = 0, tabs }: { readonly tab?: number; readonly tabs?: Tabs }): Fault | null =>
  tabs === 'slit' && tab < LEAST_THROUGH
    ? {
        field: 'tab',
        sentence: `must be at least ${LEAST_THROUGH} mm where tabs go through slits, not ${tab}`,
        nearest: LEAST_THROUGH,
      }
    : null

/** What sets either state. */
export const states = { up: { pop: 'up' }, down: { pop: 'down' } } as const

/** An edge of a piece that carries a glue tab, walked with the piece on the right hand. */
export interface TabEdge {
  readonly from: Flat
  readonly to: Flat
  /** The crease it is. */
  readonly of: string
  /** How its tab is folded, as seen from the piece's front: a valley unless said. */
  readonly fold?: Fold
  /** Where another tab or a fold begins at one of its ends: the angle that is left for this tab there, radians. */
  readonly tight?: { readonly at: 'from' | 'to'; readonly room: number }
  /** Its tab goes through a slit, and keeps off that end (else off both alike) by as much at its fold, mm. */
  readonly shoulders?: Shoulders
}

/** How far a tab that goes through a slit begins from the ends of its edge, mm: the edge stands on the card there. */
export interface Shoulders {
  readonly tight: number
  readonly loose: number
}

const NO_SHOULDERS: Shoulders = { tight: 0, loose: 0 }

/** Shoulders of a tab, mm, and paper between slit and host crease. Common practice, no source. */
export const SHOULDER = 5

/** How much longer than its tab a slit is at each end, mm. Common practice, no source. */
const SLACK = 0.5

/**
 * The shoulders of a tab that goes through a slit. `aslant`: where the joint starts on the host crease, the sine of
 * the angle between them; the slit then keeps so far off that crease as well.
 */
export function shouldersOf(
  tabs: Tabs | undefined,
  long: number,
  aslant?: number,
): { readonly shoulders: Shoulders } | null {
  if (tabs !== 'slit') return null
  const loose = Math.min(SHOULDER, long / 6)
  const tight = aslant === undefined ? loose : Math.min((SHOULDER + SLACK) / aslant, long / 3)
  return { shoulders: { loose, tight } }
}

/**
 * How far a tab is set in at its ends, and how wide it can be, mm. It is set in by as much as it is wide, where
 * the edge is long enough; farther at an end where there is little room, and narrower where that is not enough.
 * One that goes through a slit begins within its shoulders, and tapers half as much.
 */
function bevel(
  long: number,
  tab: number,
  room = Math.PI / 2,
  shoulders?: Shoulders,
): { tight: number; loose: number; wide: number } {
  if (!(long > 0)) return { tight: 0, loose: 0, wide: 0 }
  const taper = (shoulder: number): number =>
    shoulders
      ? shoulder + Math.min(tab / 2, (long - shoulders.tight - shoulders.loose) / 4)
      : Math.min(tab, long / 3)
  const slope = room < Math.PI / 2 ? Math.tan(Math.max(0, room)) : Number.POSITIVE_INFINITY
  const loose = taper(shoulders?.loose ?? 0)
  const wide = Math.min(tab, (long / 2) * slope)
  return { tight: Math.max(taper(shoulders?.tight ?? 0), wide === 0 ? 0 : wide / slope), loose, wide }
}

/**
 * The outline of a tab along a joint, in the host's flat coordinates, on the side that `lay.off`
 * points to; an open line where there is no tab and the joint is taped. `room`: the angle left for it at the
 * joint's start, radians, where that is less than a right angle. `aside` lies off the joint, where the tab is.
 * With shoulders the tab lies behind the host, and `slit` is the cut through which it goes.
 */
export function tabOutline(
  lay: Lay,
  long: number,
  tab: number,
  { room, shoulders }: { readonly room?: number; readonly shoulders?: Shoulders } = {},
): { outline: readonly Flat[]; closed: boolean; aside: Flat; slit?: readonly [Flat, Flat] } {
  const { tight, loose, wide } = bevel(long, tab, room, shoulders)
  const [first, last] = [shoulders?.tight ?? 0, long - (shoulders?.loose ?? 0)]
  const corners: readonly Flat[] =
    tab > 0
      ? [
          [0, first],
          [0, last],
          [wide, long - loose],
          [wide, tight],
        ]
      : [
          [0, 0],
          [0, long],
        ]
  return {
    outline: corners.map((corner) => laid(lay, corner)),
    closed: tab > 0,
    aside: laid(lay, [1, long / 2]),
    ...(tab > 0 && shoulders ? { slit: [laid(lay, [0, first - SLACK]), laid(lay, [0, last + SLACK])] } : {}),
  }
}

/** A piece walked round its edge: plain corners, and edges that carry a tab. */
export function ownPiece(part: string, tab: number, walk: readonly (Flat | TabEdge)[]): OwnPiece {
  const outline: Flat[] = []
  const lines: PieceLine[] = []
  const push = (p: Flat) => {
    const last = outline.at(-1)
    if (!last || Math.hypot(p[0] - last[0], p[1] - last[1]) > 1e-9) outline.push(p)
  }
  for (const step of walk) {
    if (!('of' in step)) {
      push(step)
      continue
    }
    const { from, to, of, tight, fold = 'valley', shoulders } = step
    push(from)
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (tab > 0 && long > 0) {
      const run: Flat = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
      const out: Flat = [-run[1], run[0]]
      const end = bevel(long, tab, tight?.room, shoulders)
      const turn = <T>(at: T, other: T): readonly [T, T] => (tight?.at === 'to' ? [other, at] : [at, other])
      const [first, last] = turn(end.tight, end.loose)
      const { tight: near, loose: far } = shoulders ?? NO_SHOULDERS
      const [low, high] = turn(near, far)
      const at = (along: number, across: number): Flat => [
        from[0] + run[0] * along + out[0] * across,
        from[1] + run[1] * along + out[1] * across,
      ]
      const base = shoulders ? ([at(low, 0), at(long - high, 0)] as const) : ([from, to] as const)
      const corners = [at(first, end.wide), at(long - last, end.wide)] as const
      for (const corner of [base[0], ...corners, base[1]]) push(corner)
      lines.push({ kind: fold, points: base, of })
      lines.push({ kind: 'glue', points: [base[0], ...corners, base[1]], closed: true, of })
    }
    push(to)
  }
  const [first, last] = [outline[0], outline.at(-1)]
  if (first && last && Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-9) outline.pop()
  return { part, outline, lines }
}
