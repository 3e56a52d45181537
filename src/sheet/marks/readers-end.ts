import { turned } from '../../making/turn.ts'
import type { Design, Joint } from '../../paper/index.ts'
import { jointsOf } from '../../paper/index.ts'
import type { SheetFace } from './instructions.ts'

type Vector = readonly [x: number, y: number]

const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1]

const minus = (a: Vector, b: Vector): Vector => [a[0] - b[0], a[1] - b[1]]

/** An edge of a piece, and how far its end lies farther from the reader than its beginning. */
type Climb = readonly [edge: Vector, rise: number]

/**
 * The way on a piece that leads away from the reader, by least squares over its edges; the shortest answer where
 * they leave one way open, as on a tent. Null where they say nothing.
 */
function wayOf(climbs: readonly Climb[]): Vector | null {
  const sum = (of: (edge: Vector, rise: number) => number): number =>
    climbs.reduce((total, [edge, rise]) => total + of(edge, rise), 0)
  const scale = sum((edge) => dot(edge, edge))
  if (scale === 0) return null
  // Normal equations of way . edge = rise, with a whisker of damping for the way that is left open.
  const a = sum(([x]) => x * x) + 1e-6 * scale
  const b = sum(([x, y]) => x * y)
  const c = sum(([, y]) => y * y) + 1e-6 * scale
  const [p, q] = [sum(([x], rise) => x * rise), sum(([, y], rise) => y * rise)]
  const way: Vector = [(c * p - b * q) / (a * c - b * b), (a * q - b * p) / (a * c - b * b)]
  return Math.hypot(...way) < 0.05 ? null : way
}

/** A joint's edges on two of its pieces, the one known to climb this way. */
function climbs({ own, host, line }: Joint, isOwn: boolean, way: Vector): readonly Climb[] {
  const edges: readonly (readonly [own: Vector, host: Vector])[] = line
    ? [[minus(line.own[1], line.own[0]), minus(line.host[1], line.host[0])]]
    : own.points
        .slice(1)
        .map((point, k) => [
          minus(point, own.points[0] ?? point),
          minus(host.points[k + 1] ?? [0, 0], host.points[0] ?? [0, 0]),
        ])
  return edges.map(([here, there]): Climb => (isOwn ? [here, dot(way, there)] : [there, dot(way, here)]))
}

/**
 * By piece: the way that leads away from the reader. On the card it is up the gutter; on what is stuck to a
 * known piece it is as the places that meet have it, and so from piece to piece.
 */
function awayWays(design: Design): ReadonlyMap<string, Vector> {
  const joints = jointsOf(design)
  const known = new Map<string, Vector>([['card', [0, 1]]])
  const names = [...new Set(joints.flatMap(({ own, host }) => [own.piece, host.piece]))]
  for (let before = 0; before < known.size; ) {
    before = known.size
    for (const piece of names) {
      if (known.has(piece)) continue
      const found = joints.flatMap((joint): readonly Climb[] => {
        const isOwn = joint.own.piece === piece
        if (!isOwn && joint.host.piece !== piece) return []
        const way = known.get(isOwn ? joint.host.piece : joint.own.piece)
        return way ? climbs(joint, isOwn, way) : []
      })
      const way = wayOf(found)
      if (way) known.set(piece, way)
    }
  }
  return known
}

export type End = 'below' | 'above' | 'left' | 'right'

/** Where on each printed piece its reader's end is, by how it is turned; a piece whose places do not tell is left out. */
export type Ends = (piece: string, turn?: number) => End | undefined

/** Where the reader's ends are on the pieces of a design, printed on one face. */
export function readersEnds(design: Design, face: SheetFace): Ends {
  const ways = awayWays(design)
  return (piece, turn = 0) => {
    const way = ways.get(piece)
    if (!way) return undefined
    const [x, y] = turned(way, turn)
    if (Math.abs(y) >= Math.abs(x)) return y > 0 ? 'below' : 'above'
    return x > 0 === (face === 'inside') ? 'left' : 'right'
  }
}
