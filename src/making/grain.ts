import type { Piece } from '../paper/index.ts'

/** Ways that differ by less than half a degree, or by half a turn, are one. */
const keyOf = (way: number): number => Math.round(((way + 2 * Math.PI) % Math.PI) / (Math.PI / 360)) % 360

/**
 * The way of the folds of a piece that are longest together, radians; null without folds. The folds of its tabs count
 * only where it has no others: they stay as they are, what moves is folded again and again.
 */
export function mainFold({ lines }: Pick<Piece, 'lines'>): number | null {
  const glued = new Set(lines.flatMap(({ kind, of }) => (kind === 'glue' ? [of] : [])))
  const folds = lines.filter(({ kind }) => kind === 'mountain' || kind === 'valley')
  const moving = folds.filter(({ of }) => !glued.has(of))
  const ways = new Map<number, { long: number; way: number }>()
  for (const { points } of moving.length > 0 ? moving : folds) {
    const [a, b] = points
    if (!a || !b) continue
    const way = Math.atan2(b[1] - a[1], b[0] - a[0])
    const found = ways.get(keyOf(way)) ?? { long: 0, way }
    ways.set(keyOf(way), { ...found, long: found.long + Math.hypot(b[0] - a[0], b[1] - a[1]) })
  }
  let best: { long: number; way: number } | null = null
  for (const one of ways.values()) if (!best || one.long > best.long + 1e-9) best = one
  return best?.way ?? null
}
