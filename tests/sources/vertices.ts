// Where folds meet on the printed sheet, read from its lines alone.
import type { Design, Fold, PieceLine } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import { DEG } from '../paper/shared/space.ts'

type Spot = readonly [x: number, y: number]

/** Two ends nearer than this on the sheet are one vertex, mm. */
const SAME = 1e-6

export interface Ray {
  /** Direction on the sheet, degrees from 0 to 360. */
  readonly direction: number
  readonly fold: Fold
  /** The crease it belongs to. */
  readonly crease: string
}

export interface Vertex {
  readonly at: Spot
  /** Anticlockwise. */
  readonly rays: readonly Ray[]
  /** Degrees from each ray to the next. */
  readonly sectors: readonly number[]
}

const far = (a: Spot, b: Spot): number => Math.hypot(a[0] - b[0], a[1] - b[1])

function distanceToSegment(p: Spot, a: Spot, b: Spot): number {
  const [ux, uy] = [b[0] - a[0], b[1] - a[1]]
  const length2 = ux * ux + uy * uy
  const t = length2 === 0 ? 0 : ((p[0] - a[0]) * ux + (p[1] - a[1]) * uy) / length2
  const near = Math.min(1, Math.max(0, t))
  return far(p, [a[0] + near * ux, a[1] + near * uy])
}

const segments = ({ points, closed }: PieceLine): [Spot, Spot][] =>
  points.flatMap((a, k): [Spot, Spot][] => {
    const b = points[k + 1] ?? (closed ? points[0] : undefined)
    return b ? [[a, b]] : []
  })

const isFold = (kind: PieceLine['kind']): kind is Fold => kind === 'mountain' || kind === 'valley'

/** Whether a cut, or the edge of the paper, runs through a point of the sheet. */
export function onCut(design: Design, spot: Spot): boolean {
  const lines = pieces(design).flatMap((piece) => piece.lines)
  const cuts = lines.filter(({ kind }) => kind === 'cut').flatMap(segments)
  return cuts.some(([p, q]) => distanceToSegment(spot, p, q) <= SAME)
}

/** Every point inside the paper where a fold ends: not on its edge, and on no cut. */
export function vertices(design: Design): readonly Vertex[] {
  const lines = pieces(design).flatMap((piece) => piece.lines)
  const folds = lines.flatMap((line) => {
    const { kind, of } = line
    return isFold(kind) ? segments(line).map(([a, b]) => ({ a, b, fold: kind, crease: of })) : []
  })
  const spots: Spot[] = []
  for (const { a, b } of folds)
    for (const end of [a, b]) {
      const known = spots.some((spot) => far(spot, end) < SAME)
      if (!known && !onCut(design, end)) spots.push(end)
    }
  return spots.map((at) => {
    const rays = folds
      .filter(({ a, b }) => distanceToSegment(at, a, b) < SAME)
      .flatMap(({ a, b, fold, crease }) =>
        [a, b]
          .filter((end) => far(end, at) > SAME)
          .map((end): Ray => {
            const direction = DEG * Math.atan2(end[1] - at[1], end[0] - at[0])
            return { direction: (direction + 360) % 360, fold, crease }
          }),
      )
      .sort((p, q) => p.direction - q.direction)
    const sectors = rays.map(({ direction }, k) => {
      const next = rays[(k + 1) % rays.length]?.direction ?? direction
      return (next - direction + 360) % 360
    })
    return { at, rays, sectors }
  })
}
