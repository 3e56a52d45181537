import type { Flat, Lay, OwnPiece, PieceLine } from '../types.ts'
import { laid } from '../vector.ts'

/** An edge of a piece that carries a glue tab, walked with the piece on the right hand. */
export interface TabEdge {
  readonly from: Flat
  readonly to: Flat
  /** The crease it is. */
  readonly of: string
}

/** How far a tab is set in at its ends, mm: as much as it is wide, where the edge is long enough. */
const bevel = (long: number, tab: number): number => Math.min(tab, long / 3)

/**
 * The outline of a tab along a joint, in the host's flat coordinates, on the side that `lay.off`
 * points to; an open line where there is no tab and the joint is taped.
 */
export function tabOutline(
  lay: Lay,
  long: number,
  tab: number,
): { outline: readonly Flat[]; closed: boolean } {
  const b = bevel(long, tab)
  const corners: readonly Flat[] =
    tab > 0
      ? [
          [0, 0],
          [0, long],
          [tab, long - b],
          [tab, b],
        ]
      : [
          [0, 0],
          [0, long],
        ]
  return { outline: corners.map((corner) => laid(lay, corner)), closed: tab > 0 }
}

/** A piece walked round its edge: plain corners, and edges that carry a tab (folded along a valley). */
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
    const { from, to, of } = step
    push(from)
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    if (tab > 0 && long > 0) {
      const run: Flat = [(to[0] - from[0]) / long, (to[1] - from[1]) / long]
      const out: Flat = [-run[1], run[0]]
      const b = bevel(long, tab)
      const at = (along: number, across: number): Flat => [
        from[0] + run[0] * along + out[0] * across,
        from[1] + run[1] * along + out[1] * across,
      ]
      const corners = [at(b, tab), at(long - b, tab)] as const
      push(corners[0])
      push(corners[1])
      lines.push({ kind: 'valley', points: [from, to], of })
      lines.push({ kind: 'glue', points: [from, ...corners, to], closed: true, of })
    }
    push(to)
  }
  const [first, last] = [outline[0], outline.at(-1)]
  if (first && last && Math.hypot(first[0] - last[0], first[1] - last[1]) < 1e-9) outline.pop()
  return { part, outline, lines }
}
