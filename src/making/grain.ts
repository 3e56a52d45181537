import type { Piece } from '../paper/index.ts'

/** Ways that differ by less than half a degree, or by half a turn, are one. */
const keyOf = (way: number): number => Math.round(((way + 2 * Math.PI) % Math.PI) / (Math.PI / 360)) % 360

/**
 * The way of the folds of a piece that are longest together, radians; null without folds. The folds of its tabs count
 * only where it has no others: they stay as they are, what moves is folded again and again.
 */
export function mainFold(piece: Pick<Piece, 'lines'>): number | null {
  return foldsAlong(piece)?.way ?? null
}

type Fold = readonly [start: readonly [number, number], end: readonly [number, number]]

/** The longest of the folds that lie in the way of the main fold, mm; null without folds. */
export function longestFold(piece: Pick<Piece, 'lines'>): Fold | null {
  return foldsAlong(piece)?.longest ?? null
}

interface Along {
  readonly way: number
  readonly long: number
  readonly longest: Fold
}

const longOf = ([a, b]: Fold): number => Math.hypot(b[0] - a[0], b[1] - a[1])

function foldsAlong({ lines }: Pick<Piece, 'lines'>): Along | null {
  const glued = new Set(lines.flatMap(({ kind, of }) => (kind === 'glue' ? [of] : [])))
  const folds = lines.filter(({ kind }) => kind === 'mountain' || kind === 'valley')
  const moving = folds.filter(({ of }) => !glued.has(of))
  const ways = new Map<number, Along>()
  for (const { points } of moving.length > 0 ? moving : folds) {
    const [a, b] = points
    if (!a || !b) continue
    const way = Math.atan2(b[1] - a[1], b[0] - a[0])
    const fold: Fold = [a, b]
    const found = ways.get(keyOf(way)) ?? { long: 0, way, longest: fold }
    const longest = longOf(fold) > longOf(found.longest) ? fold : found.longest
    ways.set(keyOf(way), { ...found, longest, long: found.long + longOf(fold) })
  }
  let best: Along | null = null
  for (const one of ways.values()) if (!best || one.long > best.long + 1e-9) best = one
  return best
}
