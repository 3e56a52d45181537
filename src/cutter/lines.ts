/** What a machine cuts and scores on a sheet, in the order in which it should: creases, inner cuts, outlines. */

import type { NestedSheet } from '../making/nest.ts'
import { turned } from '../making/turn.ts'
import type { Flat, LineKind, Piece } from '../paper/index.ts'

/** `glue`: places that are glued on the face that lies up, `glue-behind`: on the other one. */
export type Layer = 'glue' | 'glue-behind' | 'valley' | 'mountain' | 'crease' | 'inner-cut' | 'outline'

/** First what is only drawn, then creases while the paper still lies fast, cuts within a piece, and what frees it last. */
export const LAYERS: readonly Layer[] = [
  'glue',
  'glue-behind',
  'valley',
  'mountain',
  'crease',
  'inner-cut',
  'outline',
]

export interface Run {
  readonly points: readonly Flat[]
  readonly closed: boolean
  /** The piece that it belongs to. */
  readonly of: string
  /** Which of all that lie on the sheet that is: of several copies each is one. */
  readonly nth: number
}

export interface CutSheet {
  readonly width: number
  readonly height: number
  /** In the order in which they are cut; a layer with nothing on it is left out. mm, y upwards. */
  readonly layers: readonly { readonly layer: Layer; readonly runs: readonly Run[] }[]
  /** Each piece that lies on it, whole. */
  readonly lying: readonly { readonly of: string; readonly outline: readonly Flat[] }[]
}

export interface LineOptions {
  /** Uncut stretches that hold a piece in its sheet, mm each; 0: none. */
  readonly bridge: number
  /** Creases as cuts and gaps in turn, mm; null: whole lines, to be scored. */
  readonly perforate: { readonly cut: number; readonly gap: number } | null
  /** Places for glue are drawn too. */
  readonly glue: boolean
}

const layerOf: Readonly<Record<Exclude<LineKind, 'glue'>, Layer>> = {
  cut: 'inner-cut',
  mountain: 'mountain',
  valley: 'valley',
  crease: 'crease',
}

const far = (a: Flat, b: Flat): number => Math.hypot(b[0] - a[0], b[1] - a[1])

const between = (a: Flat, b: Flat, t: number): Flat => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]

const sidesOf = ({ points, closed }: Run): readonly (readonly [Flat, Flat])[] =>
  points.flatMap((a, k): [Flat, Flat][] => {
    const b = points[k + 1] ?? (closed ? points[0] : undefined)
    return b ? [[a, b]] : []
  })

/** Two ends nearer than this are one, mm. */
const SAME = 1e-4

const keyOf = (a: Flat, b: Flat): string => {
  const ends = [a, b].map(([x, y]) => `${Math.round(x / SAME)} ${Math.round(y / SAME)}`)
  return ends.sort().join(' ')
}

/** The runs without the sides that were cut before: an edge that two share is cut once. */
function once(runs: readonly Run[], seen: Set<string>): Run[] {
  return runs.flatMap((run): Run[] => {
    const sides = sidesOf(run)
    const isNew = sides.map(([a, b]) => {
      const key = keyOf(a, b)
      const fresh = !seen.has(key)
      seen.add(key)
      return fresh
    })
    if (isNew.every((one) => one)) return [run]
    const left: Flat[][] = []
    sides.forEach(([a, b], k) => {
      if (!isNew[k]) return
      if (k > 0 && isNew[k - 1]) left.at(-1)?.push(b)
      else left.push([a, b])
    })
    return left.map((points) => ({ ...run, points, closed: false }))
  })
}

/** From bridge to bridge along an outline, about; and how many there are at least and at most. */
const BRIDGED = 90

const BRIDGES = { least: 2, most: 8 } as const

/** An outline with bridges in it: never on a corner where a side is long enough, so that corners come out clean. */
function bridged(run: Run, bridge: number): Run[] {
  const sides = sidesOf(run)
  const around = sides.reduce((sum, [a, b]) => sum + far(a, b), 0)
  if (bridge <= 0 || !run.closed || around < 4 * bridge * BRIDGES.least) return [run]
  const count = Math.min(BRIDGES.most, Math.max(BRIDGES.least, Math.round(around / BRIDGED)))
  // Along the outline: where each bridge has its middle.
  const middles: number[] = []
  for (let k = 0; k < count; k++) {
    const wanted = ((k + 0.5) / count) * around
    let from = 0
    for (const [a, b] of sides) {
      const long = far(a, b)
      if (wanted >= from && wanted <= from + long) {
        const room = Math.min(bridge, long / 2)
        middles.push(Math.min(from + long - room, Math.max(from + room, wanted)))
        break
      }
      from += long
    }
  }
  const runs: Flat[][] = []
  let along = 0
  let open = false
  const isBridge = (s: number): boolean => middles.some((middle) => Math.abs(s - middle) < bridge / 2)
  for (const [a, b] of sides) {
    const long = far(a, b)
    const stops = middles
      .flatMap((middle) => [middle - bridge / 2, middle + bridge / 2])
      .filter((s) => s > along && s < along + long)
    const marks = [along, ...stops.sort((p, q) => p - q), along + long]
    for (let k = 1; k < marks.length; k++) {
      const [s, t] = [marks[k - 1] as number, marks[k] as number]
      if (t - s < SAME) continue
      if (isBridge((s + t) / 2)) {
        open = false
        continue
      }
      const [p, q] = [between(a, b, (s - along) / long), between(a, b, (t - along) / long)]
      if (open) runs.at(-1)?.push(q)
      else runs.push([p, q])
      open = true
    }
    along += long
  }
  // The outline begins and ends between two bridges: its last run goes on into its first.
  const [first, last] = [runs[0], runs.at(-1)]
  if (first && last && first !== last && open && !isBridge(0)) {
    runs.pop()
    runs[0] = [...last, ...first.slice(1)]
  }
  return runs.map((points) => ({ ...run, points, closed: false }))
}

/** A crease as cuts in a row, uncut at both its ends: it does not tear from there. */
function perforated(run: Run, { cut, gap }: { readonly cut: number; readonly gap: number }): Run[] {
  return sidesOf(run).flatMap(([a, b]): Run[] => {
    const long = far(a, b)
    const count = Math.max(1, Math.round((long - gap) / (cut + gap)))
    const scale = long / (count * cut + (count + 1) * gap)
    return Array.from({ length: count }, (_, k) => {
      const from = (gap + k * (cut + gap)) * scale
      return {
        ...run,
        points: [between(a, b, from / long), between(a, b, (from + cut * scale) / long)],
        closed: false,
      }
    })
  })
}

/**
 * The lines of a sheet's pieces, each once.
 * @param isBehind whether a place of a piece is glued on the face that lies down
 */
export function cutLines(
  sheet: NestedSheet,
  pieces: readonly Piece[],
  options: LineOptions,
  isBehind: (piece: string, points: readonly Flat[]) => boolean,
): CutSheet {
  const { bridge, perforate, glue } = options
  const byId = new Map(pieces.map((piece) => [piece.id, piece]))
  const found = new Map<Layer, Run[]>(LAYERS.map((layer) => [layer, []]))
  const lying: { of: string; outline: readonly Flat[] }[] = []
  for (const [nth, { id, turn, at }] of sheet.nested.entries()) {
    const piece = byId.get(id)
    const place = (p: Flat): Flat => {
      const [x, y] = turned(p, turn)
      return [x + at[0], y + at[1]]
    }
    lying.push({ of: id, outline: piece?.outline.map(place) ?? [] })
    for (const { kind, points, closed = false } of piece?.lines ?? []) {
      const isOutline = kind === 'cut' && points === piece?.outline
      const run: Run = { points: points.map(place), closed, of: id, nth }
      if (kind === 'glue') {
        if (glue) found.get(isBehind(id, points) ? 'glue-behind' : 'glue')?.push(run)
      } else found.get(isOutline ? 'outline' : layerOf[kind])?.push(run)
    }
  }
  const cuts = new Set<string>()
  const layers = [...LAYERS].reverse().map((layer) => {
    const all = found.get(layer) ?? []
    // Outlines keep what they share with inner cuts: they are asked first.
    const runs = layer === 'outline' || layer === 'inner-cut' ? once(all, cuts) : once(all, new Set())
    const isFold = layer === 'valley' || layer === 'mountain'
    return {
      layer,
      runs: runs.flatMap((run) =>
        layer === 'outline' ? bridged(run, bridge) : isFold && perforate ? perforated(run, perforate) : [run],
      ),
    }
  })
  return {
    width: sheet.width,
    height: sheet.height,
    layers: layers.reverse().filter(({ runs }) => runs.length > 0),
    lying,
  }
}
