import type { Vec3 } from '../../paper/index.ts'
import { between, clip } from '../../paper/plane/clip.ts'
import { distance, dot, subtract } from '../../paper/plane/vector.ts'
import type { PathMark, Point } from '../pen/marks.ts'
import type { Lens } from './camera.ts'
import { lampPlaces } from './light.ts'

/** A flat outline that stops light; those of one `leaf` throw no shadow on that leaf. */
export interface Caster {
  readonly leaf: number
  /** x, y, z of each corner in turn. */
  readonly corners: Float64Array
  /** Of a ball round it. */
  readonly middle: Vec3
  readonly radius: number
}

export function caster(leaf: number, points: readonly Vec3[]): Caster {
  const corners = new Float64Array(3 * points.length)
  const middle: [number, number, number] = [0, 0, 0]
  points.forEach((p, k) => {
    for (let n = 0; n < 3; n++) {
      corners[3 * k + n] = p[n] as number
      middle[n] = (middle[n] as number) + (p[n] as number) / points.length
    }
  })
  const radius = Math.max(0, ...points.map((p) => distance(p, middle)))
  return { leaf, corners, middle, radius }
}

/** A flat surface that a shadow falls on: a corner, its axes (unit, square to one another), its lit side's normal. */
export interface Receiver {
  readonly leaf: number
  readonly origin: Vec3
  readonly u: Vec3
  readonly v: Vec3
  readonly normal: Vec3
  /** What it spans along u and v, mm: least u, least v, most u, most v. */
  readonly box: readonly [number, number, number, number]
}

/** What stands less than this over a surface lies on it, mm. */
const LIES_ON = 0.05

/** A lamp lower than this over a surface (sine) lights it hardly at all: no shadow shows. */
const GRAZING = 0.03

/** How far the lamp is spread: soft shadows are those of several of its places. */
const SPREAD = 0.06

const PLACES = 4

/** All runs of a surface go round one way, so that none takes away from another under the non-zero rule. */
export function clockwise(run: Point[]): Point[] {
  let area = 0
  for (let k = 0; k < run.length; k++) {
    const [x, y] = run[k] as Point
    const [u, v] = run[(k + 1) % run.length] as Point
    area += x * v - u * y
  }
  return area < 0 ? run.reverse() : run
}

/** A polygon cut to one side of an upright (axis 0) or level (axis 1) line. */
const cutAt = (points: readonly Point[], axis: 0 | 1, limit: number, sign: 1 | -1): readonly Point[] =>
  clip(
    points,
    points.map((p) => sign * (p[axis] - limit)),
    between,
  ).points

/** Whether a caster's shadow can reach a surface at all: by the ball round it. */
function misses({ middle, radius }: Caster, on: Receiver, lamp: Vec3, steep: number): boolean {
  const [x, y, z] = subtract(middle, on.origin)
  const h = x * on.normal[0] + y * on.normal[1] + z * on.normal[2]
  if (h + radius <= LIES_ON) return true
  const lampU = dot(lamp, on.u) / steep
  const lampV = dot(lamp, on.v) / steep
  const u = x * on.u[0] + y * on.u[1] + z * on.u[2] - h * lampU
  const v = x * on.v[0] + y * on.v[1] + z * on.v[2] - h * lampV
  const [wide, long] = [radius * (1 + Math.abs(lampU)), radius * (1 + Math.abs(lampV))]
  const [least, low, high, top] = on.box
  return u + wide < least || u - wide > high || v + long < low || v - long > top
}

/** Heights of a caster's corners over a surface; grown when a caster has more. */
let heights = new Float64Array(64)

/**
 * The shadow of one caster on a surface along the lamp's direction, in the surface's u and v, cut to its box;
 * empty where none falls on it. Only what lies over the lit side throws one.
 */
export function shadowOf(from: Caster, on: Receiver, lamp: Vec3): readonly Point[] {
  const steep = dot(on.normal, lamp)
  if (steep < GRAZING || from.leaf === on.leaf || misses(from, on, lamp, steep)) return []
  const { corners } = from
  const count = corners.length / 3
  if (heights.length < count) heights = new Float64Array(count)
  const [ox, oy, oz] = on.origin
  const [nx, ny, nz] = on.normal
  let most = 0
  for (let k = 0; k < count; k++) {
    const h =
      ((corners[3 * k] as number) - ox) * nx +
      ((corners[3 * k + 1] as number) - oy) * ny +
      ((corners[3 * k + 2] as number) - oz) * nz
    heights[k] = h
    if (h > most) most = h
  }
  if (most <= LIES_ON) return []
  const [lampU, lampV] = [dot(lamp, on.u) / steep, dot(lamp, on.v) / steep]
  const out: Point[] = []
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count
    const [hp, hq] = [heights[k] as number, heights[next] as number]
    const crosses = (hp > 1e-6 && hq < -1e-6) || (hp < -1e-6 && hq > 1e-6)
    // The corner itself, and where its edge goes through the surface.
    for (let way = hp >= 0 ? 0 : 1; way < (crosses ? 2 : 1); way++) {
      const t = way === 0 ? 0 : hp / (hp - hq)
      const h = way === 0 ? hp : 0
      const a = mixed(corners, 3 * k, 3 * next, t) - ox
      const b = mixed(corners, 3 * k + 1, 3 * next + 1, t) - oy
      const c = mixed(corners, 3 * k + 2, 3 * next + 2, t) - oz
      const u = a * on.u[0] + b * on.u[1] + c * on.u[2] - h * lampU
      const v = a * on.v[0] + b * on.v[1] + c * on.v[2] - h * lampV
      if (u < x0) x0 = u
      if (u > x1) x1 = u
      if (v < y0) y0 = v
      if (v > y1) y1 = v
      out.push([u, v])
    }
  }
  const [least, low, high, top] = on.box
  if (out.length < 3 || x0 >= high || x1 <= least || y0 >= top || y1 <= low) return []
  let cut: readonly Point[] = out
  if (x0 < least) cut = cutAt(cut, 0, least, 1)
  if (x1 > high) cut = cutAt(cut, 0, high, -1)
  if (y0 < low) cut = cutAt(cut, 1, low, 1)
  if (y1 > top) cut = cutAt(cut, 1, top, -1)
  return cut.length < 3 ? [] : cut
}

const mixed = (list: Float64Array, from: number, to: number, t: number): number =>
  (1 - t) * (list[from] as number) + t * (list[to] as number)

/** The shadows of all casters on one surface: one path for each place of the lamp. `soft`: of a lamp with a size. */
export function shadowsOn(
  casters: readonly Caster[],
  on: Receiver,
  lamp: Vec3,
  soft: boolean,
  toScreen: (u: number, v: number) => Point,
): readonly PathMark[] {
  if (dot(on.normal, lamp) < GRAZING) return []
  const places = lampPlaces(lamp, soft ? PLACES : 1, SPREAD)
  return places.flatMap((place): PathMark[] => {
    const runs: Point[][] = []
    for (const one of casters) {
      const fallen = shadowOf(one, on, place)
      if (fallen.length > 2) runs.push(clockwise(fallen.map(([u, v]) => toScreen(u, v))))
    }
    return runs.length === 0
      ? []
      : [{ mark: 'path', runs, closed: true, role: 'shadow', strength: 1 / places.length }]
  })
}

/** How far a card that lies on the table still stands off it, mm: it is never quite flat. */
const LIFT = 1.5

/** How wide the lamp is for the shadow on the table, and by how many of its places it is drawn. */
const TABLE_SPREAD = 0.13

const TABLE_PLACES = { soft: 8, quick: 4 } as const

/** As far as a shadow is followed over the table, in diagonals of the card. */
const TABLE_REACH = 2.2

/** The shadow on the table of outlines in the table's frame. One that is `soft` is blurred by the page's own means. */
export function shadowMarks(
  outlines: readonly (readonly Vec3[])[],
  lens: Lens,
  lamp: Vec3,
  soft = true,
): readonly PathMark[] {
  const reach = TABLE_REACH * lens.diagonal
  const on: Receiver = {
    leaf: -1,
    origin: [0, 0, -LIFT],
    u: [1, 0, 0],
    v: [0, 1, 0],
    normal: [0, 0, 1],
    box: [-reach, -reach, reach, reach],
  }
  const casters = outlines.map((points, leaf) => caster(leaf, points))
  const places = lampPlaces(lamp, soft ? TABLE_PLACES.soft : TABLE_PLACES.quick, TABLE_SPREAD)
  return places.map((place) => ({
    mark: 'path',
    runs: casters.flatMap((one) => {
      const fallen = shadowOf(one, on, place)
      return fallen.length < 3 ? [] : [clockwise(fallen.map(([x, y]) => lens.toScreen([x, y, 0])))]
    }),
    closed: true,
    role: 'shadow',
    of: 'table',
    ...(soft ? { series: 1 } : {}),
    strength: 1 / places.length,
  }))
}
