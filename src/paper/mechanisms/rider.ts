import type { Flat } from '../plane/lay.ts'
import { sameLay } from '../plane/lay.ts'
import { RADIANS } from '../plane/vector.ts'
import type { Build } from './build.ts'
import type { Fitted, Kind, Placed, Room, Share } from './kind.ts'
import { SMALLEST } from './shared/fitting.ts'

/** A piece of any shape stuck on one panel: it rides with it. */
export interface Rider extends Placed {
  readonly kind: 'rider'
  /** Its outline, and the part of it that is glued, in the panel's flat coordinates. */
  readonly shape: readonly Flat[]
  readonly glue: readonly Flat[]
  /** Shifts both, mm; default 0. */
  readonly across?: number
  readonly along?: number
  /** Which side of its panel it is stuck on; default front: the side seen from inside the open card. */
  readonly face?: 'front' | 'back'
  /** Turns both about the middle of the glue, degrees; default 0. */
  readonly turn?: number
  /** The longest way across the shape, mm: the shape alone is scaled to it about the middle of the glue. */
  readonly size?: number
}

/** The mean of the corners. */
function middle(points: readonly Flat[]): Flat {
  const sum = points.reduce<Flat>(([a, l], [across, along]) => [a + across, l + along], [0, 0])
  return [sum[0] / Math.max(1, points.length), sum[1] / Math.max(1, points.length)]
}

/** The longest way from corner to corner, mm. */
const longest = (points: readonly Flat[]): number =>
  Math.max(
    0,
    ...points.flatMap((p, k) => points.slice(k + 1).map((q) => Math.hypot(p[0] - q[0], p[1] - q[1]))),
  )

/** Where the middle of the glue lies on the panel. */
function anchor(m: Rider): Flat {
  const [a, l] = middle(m.glue)
  return [a + (m.across ?? 0), l + (m.along ?? 0)]
}

/** Shape and glue where they lie on the panel. */
function placed(m: Rider): { shape: readonly Flat[]; glue: readonly Flat[] } {
  const from = middle(m.glue)
  const to = anchor(m)
  const turn = (m.turn ?? 0) * RADIANS
  const [sine, cosine] = [Math.sin(turn), Math.cos(turn)]
  const natural = longest(m.shape)
  const grow = m.size === undefined || natural === 0 ? 1 : m.size / natural
  const moved = (points: readonly Flat[], k: number) =>
    points.map(([across, along]): Flat => {
      const [a, l] = [(across - from[0]) * k, (along - from[1]) * k]
      return [to[0] + a * cosine - l * sine, to[1] + a * sine + l * cosine]
    })
  return { shape: moved(m.shape, grow), glue: moved(m.glue, 1) }
}

/** So finely the places of what is drawn are kept, per mm: one that moves with a hand moves often. */
const FINE = 1e4

/** The motion, and the growth, that took the shape from where it lay to where it lies. */
function carried(before: Rider, after: Rider): ((drawn: Flat) => Flat) | null {
  const grown = ({ shape, size }: Rider): number => {
    const natural = longest(shape)
    return size === undefined || natural === 0 ? 1 : size / natural
  }
  const [from, to] = [anchor(before), anchor(after)]
  const turn = ((after.turn ?? 0) - (before.turn ?? 0)) * RADIANS
  const grow = grown(after) / grown(before)
  if (from[0] === to[0] && from[1] === to[1] && turn === 0 && grow === 1) return null
  const [sine, cosine] = [grow * Math.sin(turn), grow * Math.cos(turn)]
  const kept = (x: number): number => Math.round(x * FINE) / FINE + 0
  return ([across, along]) => {
    const [a, l] = [across - from[0], along - from[1]]
    return [kept(to[0] + a * cosine - l * sine), kept(to[1] + a * sine + l * cosine)]
  }
}

/** Which corner of the drawn shape lies farthest from the crease its panel hangs on: its tip, however it is turned. */
const tipCorner = (shape: readonly Flat[]): number =>
  shape.reduce((far, p, k) => (p[0] > (shape[far] as Flat)[0] ? k : far), 0)

function build(m: Rider): Build {
  const { shape, glue } = placed(m)
  const far = shape[tipCorner(m.shape)] ?? [0, 0]
  return {
    creases: [],
    panels: [
      {
        part: 'face',
        crease: 'host',
        side: 'right',
        outline: shape,
        flat: { panel: 'piece', lay: sameLay },
      },
    ],
    notch: null,
    span: [0, 0],
    cuts: { left: [], right: [] },
    tip: { crease: 'host', along: far[1], across: far[0] },
    pieces: [
      {
        part: 'piece',
        outline: shape,
        lines: [{ kind: 'glue', points: glue, closed: true, of: m.id }],
      },
    ],
    glue: [{ panel: 'host', outline: glue, closed: true, face: m.face ?? 'front' }],
    fromBack: m.face === 'back',
    turns: () => {},
    place: () => true,
  }
}

/** Corners of a round piece. */
const CORNERS = 16

/** A round piece in the middle of what is free, glued over its inner half; on either side of the panel. */
export function riderFits({ spot }: Room, { deep }: Share): readonly (Fitted<Rider> | null)[] {
  const radius = Math.round(deep * (spot?.radius ?? 0))
  if (!spot || radius < SMALLEST) return [null, null]
  const [across, along] = spot.at.map(Math.round) as [number, number]
  const round = (r: number): readonly Flat[] =>
    Array.from({ length: CORNERS }, (_, k): Flat => {
      const turn = (2 * Math.PI * k) / CORNERS
      return [tenths(across + r * Math.cos(turn)), tenths(along + r * Math.sin(turn))]
    })
  const shape = round(radius)
  const one = (face: 'front' | 'back'): Fitted<Rider> => ({
    variant: face === 'front' ? 'on the front' : 'on the back',
    fields: { shape, glue: round(radius / 2), face, across: 0, along: 0, turn: 0, size: longest(shape) },
  })
  return [one('front'), one('back')]
}

const tenths = (x: number): number => Math.round(x * 10) / 10

export const rider: Kind<Rider> = {
  kind: 'rider',
  label: 'Piece stuck on a face',
  word: 'piece',
  sitsOn: 'panel',
  stock: { from: 'own-card', held: 'face' },
  fields: [
    {
      name: 'across',
      label: 'Shift across',
      unit: 'mm',
      min: -2000,
      max: 2000,
      optional: true,
      sense: 'across',
    },
    {
      name: 'along',
      label: 'Shift along',
      unit: 'mm',
      min: -2000,
      max: 2000,
      optional: true,
      sense: 'along',
    },
    {
      name: 'turn',
      label: 'Turn',
      unit: 'deg',
      min: -180,
      max: 180,
      optional: true,
      sense: 'turn',
    },
    {
      name: 'size',
      label: 'Size',
      unit: 'mm',
      min: 1,
      max: 2000,
      optional: true,
    },
  ],
  choices: [
    {
      name: 'face',
      label: 'Stuck on',
      values: ['front', 'back'],
      words: ['Front', 'Back'],
    },
  ],
  points: [
    /** The outline of the piece, in the panel’s flat coordinates. */
    { name: 'shape', required: true },
    /** The part of it that is glued, in the same coordinates. */
    { name: 'glue', required: true },
  ],
  derived: [],
  aims: ['across', 'along'],
  handles: [
    {
      name: 'piece',
      label: 'The piece',
      across: 'across',
      along: 'along',
      at: anchor,
      drag: (m, [across, along]) => {
        const [a, l] = middle(m.glue)
        return { across: across - a, along: along - l }
      },
    },
  ],
  complete: (m) => ({
    ...m,
    face: m.face ?? 'front',
    across: m.across ?? 0,
    along: m.along ?? 0,
    turn: m.turn ?? 0,
    size: m.size ?? Math.max(1, longest(m.shape)),
  }),
  limits: (m) =>
    m.shape.length < 3
      ? { field: 'shape', sentence: `must hold at least 3 points, not ${m.shape.length}` }
      : m.glue.length < 3
        ? { field: 'glue', sentence: `must hold at least 3 points, not ${m.glue.length}` }
        : null,
  build,
  carries: carried,
}
