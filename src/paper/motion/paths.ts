import type { Model } from '../model/model.ts'
import type { Parting } from '../plane/parting.ts'
import { ROUNDING } from '../plane/parting.ts'
import type { Vec3 } from '../plane/vector.ts'
import { WORLD } from './chain.ts'
import type { Box } from './leaves.ts'
import type { Lifts } from './lift.ts'
import type { Body, Motion, Still, Stretch } from './motion.ts'

/** What is looked at: the motion, and how stuck-on paper is held off in it. */
export interface Scene {
  readonly motion: Motion
  readonly lifts: Lifts
}

/** Writes the points of a body in the frame of a panel: across, along, and square to it. */
function seenInto(
  to: Float64Array,
  { motion: { model }, lifts }: Scene,
  still: Still,
  body: Body,
  panel: number,
): Float64Array {
  const { crease, side } = model.panels[panel] as Model['panels'][number]
  const f = still.frame(crease)
  const S = (side === 'left' ? -1 : 1) * (f[12] as number)
  const C = f[13] as number
  const [ox, oy, oz] = [f[0] as number, f[1] as number, f[2] as number]
  const [xx, xy, xz] = [f[3] as number, f[4] as number, f[5] as number]
  const [dx, dy, dz] = [f[6] as number, f[7] as number, f[8] as number]
  const [nx, ny, nz] = [f[9] as number, f[10] as number, f[11] as number]
  const [ex, ey, ez] = [S * xx + C * nx, S * xy + C * ny, S * xz + C * nz]
  const [hx, hy, hz] = [C * xx - S * nx, C * xy - S * ny, C * xz - S * nz]
  const [lx, ly, lz] = liftedBy(model, lifts, still, body.panel)
  const under = lifts.at(panel, still.opening)
  const from = still.places(body)
  for (let i = 0; i < from.length; i += 3) {
    const x = (from[i] as number) + lx - ox
    const y = (from[i + 1] as number) + ly - oy
    const z = (from[i + 2] as number) + lz - oz
    to[i] = x * ex + y * ey + z * ez
    to[i + 1] = x * dx + y * dy + z * dz
    to[i + 2] = x * hx + y * hy + z * hz - under
  }
  return to
}

const FLUSH: Vec3 = [0, 0, 0]

/** How far a panel is held off its own plane, in space, mm. */
function liftedBy(model: Model, lifts: Lifts, still: Still, panel: number): Vec3 {
  const by = lifts.at(panel, still.opening)
  if (by === 0) return FLUSH
  const { crease, side } = model.panels[panel] as Model['panels'][number]
  const f = still.frame(crease)
  const S = (side === 'left' ? -1 : 1) * (f[12] as number)
  const C = f[13] as number
  const square = (k: number): number => by * (C * (f[3 + k] as number) - S * (f[9 + k] as number))
  return [square(0), square(1), square(2)]
}

export const seen = (scene: Scene, still: Still, body: Body, panel: number): Float64Array =>
  seenInto(new Float64Array((body.flat.length / 2) * 3), scene, still, body, panel)

/** One body over a stretch, seen from a panel: its corners at both ends, and M for each. There may be room for more. */
export interface Path {
  corners: number
  from: Float64Array
  to: Float64Array
  M: Float64Array
}

export const roomFor = (corners: number): Path => ({
  corners,
  from: new Float64Array(3 * corners),
  to: new Float64Array(3 * corners),
  M: new Float64Array(corners),
})

/** Fills a path's memory. */
export function follow(path: Path, scene: Scene, stretch: Stretch, body: Body, panel: number): Path {
  const corners = body.flat.length / 2
  if (corners > path.M.length) Object.assign(path, roomFor(corners))
  path.corners = corners
  seenInto(path.from, scene, stretch.from, body, panel)
  seenInto(path.to, scene, stretch.to, body, panel)
  stretch.bends(panel, body, path.M)
  const more = scene.lifts.bend(stretch, panel, body.panel)
  const half = (stretch.width * stretch.width) / 2
  for (let k = 0; k < path.corners; k++) path.M[k] = ((path.M[k] as number) + more) * half
  return path
}

/** Whether every corner stays beyond `edge` along a direction through the whole stretch, joints aside. */
export function beyond(
  { corners, from, to, M }: Path,
  x: number,
  y: number,
  z: number,
  edge: number,
): boolean {
  for (let k = 0, i = 0; k < corners; k++, i += 3) {
    const a = x * (from[i] as number) + y * (from[i + 1] as number) + z * (from[i + 2] as number) - edge
    const b = x * (to[i] as number) + y * (to[i + 1] as number) + z * (to[i + 2] as number) - edge
    if (!(a > -ROUNDING && b > -ROUNDING)) return false
    const m = M[k] as number
    if (m < ROUNDING && a < ROUNDING && b < ROUNDING) continue
    const [p, q] = [Math.max(0, a - ROUNDING), Math.max(0, b - ROUNDING)]
    if (!(p + q + 2 * Math.sqrt(p * q) > m + ROUNDING)) return false
  }
  return true
}

/**
 * The same for a stretch at one end of the motion, `end`, along a direction and beyond an edge that are seen
 * with heights divided by how far the opening is from there, in radians; `width` is that of the stretch.
 */
export function beyondNear(
  path: Path,
  end: 'from' | 'to',
  { x, y, z, edge }: Parting,
  width: number,
): boolean {
  const { corners, M } = path
  const [from, to] = end === 'from' ? [path.from, path.to] : [path.to, path.from]
  const [u, v] = [width * x, width * y]
  const g = Math.hypot(u, v)
  for (let k = 0, i = 0; k < corners; k++, i += 3) {
    const [a0, l0, h0] = [from[i], from[i + 1], from[i + 2]] as unknown as Vec3
    const [a1, l1, h1] = [to[i], to[i + 1], to[i + 2]] as unknown as Vec3
    const a = z * h0
    const b = z * h1 + u * a1 + v * l1 - width * edge
    if (!(a > -ROUNDING && b > -ROUNDING)) return false
    const m = (M[k] as number) * (Math.hypot(z, g) + g) + Math.abs(u * (a1 - a0) + v * (l1 - l0))
    if (m < ROUNDING && a < ROUNDING && b < ROUNDING) continue
    const [p, q] = [Math.max(0, a - ROUNDING), Math.max(0, b - ROUNDING)]
    if (!(p + q + 2 * Math.sqrt(p * q) > m + ROUNDING)) return false
  }
  return true
}

/** Whether a path keeps to one side of the plane, or beyond one of the sides of the box, of a panel that stands still. */
export function clearOfBox(path: Path, [a0, a1, l0, l1]: Box): boolean {
  return (
    beyond(path, 0, 0, 1, 0) ||
    beyond(path, 0, 0, -1, 0) ||
    beyond(path, 1, 0, 0, a1) ||
    beyond(path, -1, 0, 0, -a0) ||
    beyond(path, 0, 1, 0, l1) ||
    beyond(path, 0, -1, 0, -l0)
  )
}

/** The box round nothing. */
export const NOWHERE: readonly number[] = [
  ...[Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  ...[Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
  ...[Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY],
]

/** The box in the world that a body keeps to over a stretch, held off its panel by so much at most: least and greatest x, y, z. */
export function sweptBox(stretch: Stretch, body: Body, lift: number): Float64Array {
  const [p, q] = [stretch.from.places(body), stretch.to.places(body)]
  const bends = stretch.bends(WORLD, body)
  const box = Float64Array.from(NOWHERE)
  const eighth = (stretch.width * stretch.width) / 8
  for (let i = 0; i < p.length; i++) {
    const off = (bends[Math.floor(i / 3)] as number) * eighth + lift
    const k = 2 * (i % 3)
    box[k] = Math.min(box[k] as number, (p[i] as number) - off, (q[i] as number) - off)
    box[k + 1] = Math.max(box[k + 1] as number, (p[i] as number) + off, (q[i] as number) + off)
  }
  return box
}
