import type { Vec3 } from '../../paper/index.ts'
import { between, clip } from '../../paper/plane/clip.ts'
import { distance, dot } from '../../paper/plane/vector.ts'
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
  let last = run[run.length - 1] as Point
  for (let k = 0; k < run.length; k++) {
    const next = run[k] as Point
    area += last[0] * next[1] - next[0] * last[1]
    last = next
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

/** Room for the corners of a shadow and their heights over the surface; grown when a caster has more. */
let heights = new Float64Array(64)
let fallen = new Float64Array(4 * 64)

const NONE: readonly Point[] = []

/**
 * The shadow of one caster on a surface along the lamp's direction, in the surface's u and v, cut to its box;
 * empty where none falls on it. Only what lies over the lit side throws one. Most casters throw none on most
 * surfaces: nothing is made for those.
 */
export function shadowOf(from: Caster, on: Receiver, lamp: Vec3): readonly Point[] {
  const { origin, normal, box, u: across, v: along } = on
  const steep = dot(normal, lamp)
  if (steep < GRAZING || from.leaf === on.leaf) return NONE
  const { corners, middle, radius } = from
  const lampU = dot(lamp, across) / steep
  const lampV = dot(lamp, along) / steep
  const least = box[0]
  const low = box[1]
  const high = box[2]
  const top = box[3]
  const ox = origin[0]
  const oy = origin[1]
  const oz = origin[2]
  // By the ball round the caster: whether its shadow can reach the surface at all.
  const x = middle[0] - ox
  const y = middle[1] - oy
  const z = middle[2] - oz
  const rise = x * normal[0] + y * normal[1] + z * normal[2]
  if (rise + radius <= LIES_ON) return NONE
  const ballU = x * across[0] + y * across[1] + z * across[2] - rise * lampU
  const ballV = x * along[0] + y * along[1] + z * along[2] - rise * lampV
  const wide = radius * (1 + Math.abs(lampU))
  const long = radius * (1 + Math.abs(lampV))
  if (ballU + wide < least || ballU - wide > high || ballV + long < low || ballV - long > top) return NONE
  const count = corners.length / 3
  if (heights.length < count) {
    heights = new Float64Array(count)
    fallen = new Float64Array(4 * count)
  }
  let most = 0
  for (let k = 0; k < count; k++) {
    const h =
      ((corners[3 * k] as number) - ox) * normal[0] +
      ((corners[3 * k + 1] as number) - oy) * normal[1] +
      ((corners[3 * k + 2] as number) - oz) * normal[2]
    heights[k] = h
    if (h > most) most = h
  }
  if (most <= LIES_ON) return NONE
  let found = 0
  let x0 = Number.POSITIVE_INFINITY
  let y0 = Number.POSITIVE_INFINITY
  let x1 = Number.NEGATIVE_INFINITY
  let y1 = Number.NEGATIVE_INFINITY
  for (let k = 0; k < count; k++) {
    const next = (k + 1) % count
    const hp = heights[k] as number
    const hq = heights[next] as number
    const crosses = (hp > 1e-6 && hq < -1e-6) || (hp < -1e-6 && hq > 1e-6)
    // The corner itself, and where its edge goes through the surface.
    for (let way = hp >= 0 ? 0 : 1; way < (crosses ? 2 : 1); way++) {
      const t = way === 0 ? 0 : hp / (hp - hq)
      const h = way === 0 ? hp : 0
      const a = mixed(corners, 3 * k, 3 * next, t) - ox
      const b = mixed(corners, 3 * k + 1, 3 * next + 1, t) - oy
      const c = mixed(corners, 3 * k + 2, 3 * next + 2, t) - oz
      const u = a * across[0] + b * across[1] + c * across[2] - h * lampU
      const v = a * along[0] + b * along[1] + c * along[2] - h * lampV
      if (u < x0) x0 = u
      if (u > x1) x1 = u
      if (v < y0) y0 = v
      if (v > y1) y1 = v
      fallen[2 * found] = u
      fallen[2 * found + 1] = v
      found++
    }
  }
  if (found < 3 || x0 >= high || x1 <= least || y0 >= top || y1 <= low) return NONE
  const out: Point[] = []
  for (let k = 0; k < found; k++) out.push([fallen[2 * k] as number, fallen[2 * k + 1] as number])
  let cut: readonly Point[] = out
  if (x0 < least) cut = cutAt(cut, 0, least, 1)
  if (x1 > high) cut = cutAt(cut, 0, high, -1)
  if (y0 < low) cut = cutAt(cut, 1, low, 1)
  if (y1 > top) cut = cutAt(cut, 1, top, -1)
  return cut.length < 3 ? NONE : cut
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
      if (fallen.length > 2) runs.push(clockwise(fallen.map((p) => toScreen(p[0], p[1]))))
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
  const toTable = lens.onPlane([0, 0, 0], [1, 0, 0], [0, 1, 0])
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
      return fallen.length < 3 ? [] : [clockwise(fallen.map((p) => toTable(p[0], p[1])))]
    }),
    closed: true,
    role: 'shadow',
    of: 'table',
    ...(soft ? { series: 1 } : {}),
    strength: 1 / places.length,
  }))
}
