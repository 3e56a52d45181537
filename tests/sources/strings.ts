// A card as knots and taut strings: the file format read once more, with no formula of folding in it.
// A panel is three knots and their flat places; every other point of it is a weighted sum of the three.
import type { Flat, Mechanism, Vec3 } from '../../src/paper/index.ts'

/** A point as weights over the knots. */
type Sum = ReadonlyMap<number, number>

interface Panel {
  readonly corners: readonly [Sum, Sum, Sum]
  readonly flat: readonly [Flat, Flat, Flat]
}

/** One side of a crease: its own coordinates `[across, along]`, laid on a panel. */
interface Half {
  readonly panel: Panel
  readonly origin: Flat
  readonly along: Flat
  readonly across: Flat
}

interface Crease {
  readonly left: Half
  readonly right: Half
  readonly length: number
}

/** Two points, and how far apart they are on the flat sheet, mm. */
export interface Taut {
  readonly a: Sum
  readonly b: Sum
  readonly length: number
}

export interface Strung {
  /** Knots of the pages, whose places the opening gives; the others are free. */
  readonly fixed: number
  readonly knots: number
  readonly strings: readonly Taut[]
  /** Both ends of every crease. */
  readonly ends: Readonly<Record<string, readonly [start: Sum, end: Sum]>>
  /** The free knots: which end of which ridge each is. */
  readonly free: readonly { readonly crease: string; readonly end: 'start' | 'end' }[]
}

const sides = ['left', 'right'] as const

const knot = (index: number): Sum => new Map([[index, 1]])

function blend(parts: readonly (readonly [Sum, number])[]): Sum {
  const whole = new Map<number, number>()
  for (const [sum, weight] of parts)
    for (const [index, own] of sum) whole.set(index, (whole.get(index) ?? 0) + weight * own)
  return whole
}

/** A flat point of a panel as a weighted sum of its corners: Möbius's barycentric coordinates. */
function onPanel({ corners, flat: [p, q, r] }: Panel, [x, y]: Flat): Sum {
  const whole = (q[0] - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (q[1] - p[1])
  const second = ((x - p[0]) * (r[1] - p[1]) - (r[0] - p[0]) * (y - p[1])) / whole
  const third = ((q[0] - p[0]) * (y - p[1]) - (x - p[0]) * (q[1] - p[1])) / whole
  return blend([
    [corners[0], 1 - second - third],
    [corners[1], second],
    [corners[2], third],
  ])
}

const inPanel = ({ origin, along, across }: Half, [a, b]: Flat): Flat => [
  origin[0] + a * across[0] + b * along[0],
  origin[1] + a * across[1] + b * along[1],
]

const onHalf = (half: Half, flat: Flat): Sum => onPanel(half.panel, inPanel(half, flat))

/** The side of the line from `from` to `to` (panel coordinates) on which `inner` lies, or the other one. */
function beside(panel: Panel, from: Flat, to: Flat, inner: Flat, way: 'towards' | 'away'): Half {
  const long = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along: Flat = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
  const square: Flat = [along[1], -along[0]]
  const off = (inner[0] - from[0]) * square[0] + (inner[1] - from[1]) * square[1]
  const sign = off > 0 === (way === 'towards') ? 1 : -1
  return { panel, origin: from, along, across: [sign * square[0], sign * square[1]] }
}

const flatDistance = (p: Flat, q: Flat): number => Math.hypot(p[0] - q[0], p[1] - q[1])

interface Strip {
  /** The ridge in its own coordinates, and the fold on each side: seen flat, in the facets. */
  readonly ridge: readonly Flat[]
  readonly facet: Readonly<Record<'left' | 'right', readonly [Flat, Flat]>>
  /** The same folds in the host's coordinates, and a point of the host between fold and crease. */
  readonly host: Readonly<Record<'left' | 'right', readonly [Flat, Flat]>>
  readonly inner: Readonly<Record<'left' | 'right', Flat>>
}

/** What each kind cuts, from `geometry` alone: depths, starts and ends. */
function stripOf(m: Mechanism): Strip {
  if (m.kind === 'cut-v-fold') {
    const toward = m.run < 0 ? -1 : 1
    const end: Flat = [m.cut, m.apex + m.run + (m.lean ?? 0)]
    const fold: [Flat, Flat] = [[0, m.apex], end]
    const facet: [Flat, Flat] = [
      [0, 0],
      [m.cut, toward * (end[1] - m.apex)],
    ]
    const foot: Flat = [0, m.apex + m.run]
    return {
      ridge: [
        [0, 0],
        [0, Math.abs(m.run)],
      ],
      facet: { left: facet, right: facet },
      host: { left: fold, right: fold },
      inner: { left: foot, right: foot },
    }
  }
  if (m.kind !== 'cut-layer' && m.kind !== 'cut-trapezoid') throw new RangeError(`no strings for ${m.kind}`)
  const long = m.end - m.start
  const layer = m.kind === 'cut-layer'
  const depth = {
    left: layer ? [m.left ?? 0, m.left ?? 0] : [m.startCut, m.endCut],
    right: layer ? [m.right ?? 0, m.right ?? 0] : [m.startCut, m.endCut],
  } as const
  // The strip folds over: what was left of the old crease is right of the new one.
  const facet = (side: 'left' | 'right'): [Flat, Flat] => {
    const wide = layer ? depth[side === 'left' ? 'right' : 'left'] : depth[side]
    return [
      [wide[0] as number, 0],
      [wide[1] as number, long],
    ]
  }
  const host = (side: 'left' | 'right'): [Flat, Flat] => [
    [depth[side][0] as number, m.start],
    [depth[side][1] as number, m.end],
  ]
  const inner: Flat = [0, (m.start + m.end) / 2]
  return {
    ridge: [
      [0, 0],
      [0, long],
    ],
    facet: { left: facet('left'), right: facet('right') },
    host: { left: host('left'), right: host('right') },
    inner: { left: inner, right: inner },
  }
}

/** The card's pages as knots: both ends of the gutter, and a corner of either page. */
export function strung(card: { width: number; height: number }, mechanisms: readonly Mechanism[]): Strung {
  const { width, height } = card
  const page = (corner: number): Half => ({
    panel: {
      corners: [knot(0), knot(1), knot(corner)],
      flat: [
        [0, 0],
        [0, height],
        [width, 0],
      ],
    },
    origin: [0, 0],
    along: [0, 1],
    across: [1, 0],
  })
  const creases = new Map<string, Crease>([['gutter', { left: page(2), right: page(3), length: height }]])
  const strings: Taut[] = []
  const free: { crease: string; end: 'start' | 'end' }[] = []
  let knots = 4
  for (const m of mechanisms) {
    const host = creases.get(m.on)
    if (!host) throw new RangeError(`there is no crease ${m.on}`)
    const { ridge, facet, host: folds, inner } = stripOf(m)
    const foldEnds = (side: 'left' | 'right') =>
      folds[side].map((flat) => onHalf(host[side], flat)) as [Sum, Sum]
    const ridgeEnds = ridge.map((flat, k): Sum => {
      // The apex of a V-fold is on the host already.
      if (k === 0 && m.kind === 'cut-v-fold') return foldEnds('right')[0]
      free.push({ crease: `${m.id}/ridge`, end: k === 0 ? 'start' : 'end' })
      knots += 1
      // A string from the ridge's other end, if that one is free too, and four to the folds' ends.
      for (const side of sides)
        for (const [j, end] of foldEnds(side).entries())
          if (!(m.kind === 'cut-v-fold' && j === 0 && side === 'left'))
            strings.push({ a: knot(knots - 1), b: end, length: flatDistance(flat, facet[side][j] as Flat) })
      return knot(knots - 1)
    }) as [Sum, Sum]
    if (m.kind !== 'cut-v-fold')
      strings.push({
        a: ridgeEnds[0],
        b: ridgeEnds[1],
        length: flatDistance(ridge[0] as Flat, ridge[1] as Flat),
      })
    const facetOf = (side: 'left' | 'right'): Panel => {
      const [from, to] = facet[side]
      // Three corners that are not in line: the fold's end is the widest.
      const wide = to[0] >= from[0] ? 1 : 0
      return {
        corners: [ridgeEnds[0], ridgeEnds[1], foldEnds(side)[wide]],
        flat: [ridge[0] as Flat, ridge[1] as Flat, facet[side][wide]],
      }
    }
    const panels = { left: facetOf('left'), right: facetOf('right') }
    const own = (side: 'left' | 'right'): Half => ({
      panel: panels[side],
      origin: [0, 0],
      along: [0, 1],
      across: [1, 0],
    })
    const long = flatDistance(ridge[0] as Flat, ridge[1] as Flat)
    creases.set(`${m.id}/ridge`, { left: own('left'), right: own('right'), length: long })
    for (const side of sides) {
      const [from, to] = folds[side].map((flat) => inPanel(host[side], flat)) as [Flat, Flat]
      const onHost = beside(host[side].panel, from, to, inPanel(host[side], inner[side]), 'away')
      const [start, end] = facet[side]
      const onFacet = beside(panels[side], start, end, [0, long / 2], 'towards')
      const length = flatDistance(from, to)
      creases.set(
        `${m.id}/${side}`,
        side === 'left' ? { left: onHost, right: onFacet, length } : { left: onFacet, right: onHost, length },
      )
    }
  }
  const ends = Object.fromEntries(
    [...creases].map(([name, { right, length }]) => [
      name,
      [onHalf(right, [0, 0]), onHalf(right, [0, length])] as const,
    ]),
  )
  return { fixed: 4, knots, strings, ends, free }
}

/** Where a weighted sum of knots is. */
export function placeOf(sum: Sum, knots: readonly Vec3[]): Vec3 {
  const to: Vec3 = [0, 0, 0]
  for (const [index, weight] of sum)
    for (let k = 0; k < 3; k++) to[k] = (to[k] as number) + weight * ((knots[index] as Vec3)[k] as number)
  return to
}
