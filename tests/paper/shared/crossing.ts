// Where panels cross at one opening, found without the kernel's bounds, faces or separating planes: on which
// side of a panel's plane the other's corners are, by the exact signs of robust-predicates (J. R. Shewchuk's
// adaptive predicates); the line in which the two planes meet, by gl-matrix; and the stretches of it that lie
// on the paper of both.
import { orient3d } from 'robust-predicates'
import type { Design, Flat, Pose, Vec3 } from '../../../src/paper/index.ts'
import { compile, modelOf } from '../../../src/paper/index.ts'
import { crossOf, dotOf, minus, plus, sizeOf, times, unit } from './space.ts'

type Ring = readonly Flat[]

const areaOf = (points: Ring): number =>
  Math.abs(
    points.reduce((sum, [a, l], k) => {
      const [b, m] = points[(k + 1) % points.length] as Flat
      return sum + a * m - b * l
    }, 0) / 2,
  )

/** The paper of every panel: its outline and the holes in it, inside by the even-odd rule. */
const papers = (design: Design): Map<string, Ring[]> =>
  new Map(
    modelOf(design).panels.map(({ name, outline, notches }) => [
      name,
      areaOf(outline) < 1e-6 ? [] : [outline, ...notches.map((notch) => notch.outline)],
    ]),
  )

export interface Plane {
  readonly origin: Vec3
  readonly across: Vec3
  readonly along: Vec3
  readonly normal: Vec3
  /** Three corners that span it. */
  readonly corners: readonly [Vec3, Vec3, Vec3]
}

/** A panel's flat coordinates in space, from three of its corners. */
export function planeOf(flat: Ring, points: readonly Vec3[]): Plane | null {
  let best = { area: 1e-3, i: 0, j: 0, k: 0 }
  for (let i = 0; i < flat.length; i++)
    for (let j = 0; j < i; j++)
      for (let k = 0; k < j; k++) {
        const area = areaOf([flat[i], flat[j], flat[k]] as Flat[])
        if (area > best.area) best = { area, i, j, k }
      }
  if (best.area === 1e-3) return null
  const [f0, f1, f2] = [flat[best.i], flat[best.j], flat[best.k]] as [Flat, Flat, Flat]
  const [p0, p1, p2] = [points[best.i], points[best.j], points[best.k]] as [Vec3, Vec3, Vec3]
  const [a1, l1, a2, l2] = [f1[0] - f0[0], f1[1] - f0[1], f2[0] - f0[0], f2[1] - f0[1]]
  const det = a1 * l2 - a2 * l1
  const [u, v] = [minus(p1, p0), minus(p2, p0)]
  const across = unit(plus(times(u, l2 / det), times(v, -l1 / det)))
  const along = unit(plus(times(u, -a2 / det), times(v, a1 / det)))
  const origin = minus(p0, plus(times(across, f0[0]), times(along, f0[1])))
  return { origin, across, along, normal: unit(crossOf(across, along)), corners: [p0, p1, p2] }
}

const flatOf = (plane: Plane, p: Vec3): Flat => {
  const q = minus(p, plane.origin)
  return [dotOf(q, plane.across), dotOf(q, plane.along)]
}

/** On which side of a plane a point is: the exact sign of the tetrahedron's volume. */
const sideOf = ({ corners: [a, b, c] }: Plane, p: Vec3): number => orient3d(...a, ...b, ...c, ...p)

/** The parameters at which a line in the plane crosses the paper's edges, sorted: in, out, in, out. */
function stretchesOf(rings: readonly Ring[], from: Flat, way: Flat): number[] {
  const at: number[] = []
  const off = ([a, l]: Flat) => way[0] * (l - from[1]) - way[1] * (a - from[0])
  for (const points of rings)
    points.forEach((p, k) => {
      const q = points[(k + 1) % points.length] as Flat
      const [here, there] = [off(p), off(q)]
      if (here < 0 === there < 0) return
      const t = here / (here - there)
      const x: Flat = [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]
      at.push(way[0] * (x[0] - from[0]) + way[1] * (x[1] - from[1]))
    })
  return at.sort((a, b) => a - b)
}

/** By panel, where folds and joints lie in it, each as its two ends. */
const foldsOf = (design: Design): Map<string, [Flat, Flat][]> => {
  const { panels, creases } = modelOf(design)
  const folds = new Map(panels.map(({ name }) => [name, [] as [Flat, Flat][]]))
  for (const { left, right, length } of creases)
    for (const { panel, lay } of [left, right])
      folds
        .get(panels[panel]?.name ?? '')
        ?.push([lay.origin, [lay.origin[0] + length * lay.run[0], lay.origin[1] + length * lay.run[1]]])
  return folds
}

const isOn = ([a, l]: Flat, [[x, y], [u, v]]: [Flat, Flat]): boolean =>
  Math.abs(Math.hypot(a - x, l - y) + Math.hypot(a - u, l - v) - Math.hypot(u - x, v - y)) < 1e-9

function distanceToEdges(rings: readonly Ring[], [a, l]: Flat, folds: readonly [Flat, Flat][] = []): number {
  let least = Number.POSITIVE_INFINITY
  for (const points of rings)
    points.forEach(([x, y], k) => {
      const [u, v] = points[(k + 1) % points.length] as Flat
      if (folds.some((fold) => isOn([x, y], fold) && isOn([u, v], fold))) return
      const size = (u - x) ** 2 + (v - y) ** 2
      const t = size > 0 ? Math.max(0, Math.min(1, ((a - x) * (u - x) + (l - y) * (v - y)) / size)) : 0
      least = Math.min(least, Math.hypot(a - x - t * (u - x), l - y - t * (v - y)))
    })
  return least
}

export interface Crossing {
  readonly panels: readonly [string, string]
  readonly at: Vec3
}

/**
 * Where the front of every panel lies, as a sign of its across × along: the side that is printed, so the one
 * from which its flat piece is seen (`ModelPanel.onPiece` lays it on that piece).
 */
const fronts = (design: Design): Map<string, number> =>
  new Map(
    modelOf(design).panels.map(({ name, onPiece: { off, run } }) => [
      name,
      Math.sign(off[0] * run[1] - off[1] * run[0]),
    ]),
  )

/** Moves every piece that is stuck on a panel off it by `hair` mm, to the side it is stuck on, and all that is stuck on it too. */
function shifted(design: Design, pose: Pose, hair: number): Map<string, readonly Vec3[]> {
  const flats = new Map(modelOf(design).panels.map(({ name, outline }) => [name, outline]))
  const side = fronts(design)
  const moved = new Map<string, { by: Vec3; hair: number }>()
  for (const m of design.mechanisms) {
    if (m.kind !== 'rider') continue
    const under = planeOf(flats.get(m.on) ?? [], pose.panels[m.on] ?? [])
    if (!under) continue
    const way = (side.get(m.on) ?? 0) * (m.face === 'back' ? -1 : 1)
    // What is stuck on such a piece lies between it and whatever that one is stuck on.
    const host = moved.get(m.on) ?? { by: [0, 0, 0], hair: 3 * hair }
    const thin = host.hair / 3
    moved.set(`${m.id}/face`, { by: plus(host.by, times(under.normal, way * thin)), hair: thin })
  }
  return new Map(
    Object.entries(pose.panels).map(([name, points]) => {
      const off = moved.get(name)
      return [name, off ? points.map((p) => plus(p, off.by)) : points]
    }),
  )
}

/**
 * Looks for panels that cross with more than `deep` mm of paper all round the place, on both. Pieces stuck on
 * others are first moved off them by `hair` mm; what they cross may do so right at a fold, where paper goes on.
 */
export function crossings(design: Design, deep: number, hair = 0): (opening: number) => Crossing[] {
  const rings = papers(design)
  const flats = new Map(modelOf(design).panels.map(({ name, outline }) => [name, outline]))
  const poser = compile(design)
  const folds = hair > 0 ? foldsOf(design) : new Map<string, [Flat, Flat][]>()
  const stuck = new Set(design.mechanisms.flatMap(({ id, kind }) => (kind === 'rider' ? [`${id}/face`] : [])))
  return (opening) => {
    const places = shifted(design, poser(opening), hair)
    const sheets = [...rings].flatMap(([name, paper]) => {
      const points = places.get(name) ?? []
      const plane = planeOf(flats.get(name) ?? [], points)
      return plane && paper.length > 0 ? [{ name, paper, plane, points }] : []
    })
    return sheets.flatMap((one, i) =>
      sheets.slice(i + 1).flatMap((two): Crossing[] => {
        const sides = one.points.map((p) => sideOf(two.plane, p))
        if (!sides.some((side) => side > 0) || !sides.some((side) => side < 0)) return []
        const turn = crossOf(one.plane.normal, two.plane.normal)
        if (sizeOf(turn) < 1e-9) return []
        const way = unit(turn)
        // A point of both planes: from the origin of the first, square to the line, until the second is met.
        const down = crossOf(way, one.plane.normal)
        const high = dotOf(minus(one.plane.origin, two.plane.origin), two.plane.normal)
        const start = plus(one.plane.origin, times(down, -high / dotOf(down, two.plane.normal)))
        const line = (plane: Plane): [Flat, Flat] => {
          const from = flatOf(plane, start)
          const to = flatOf(plane, plus(start, way))
          return [from, [to[0] - from[0], to[1] - from[1]]]
        }
        const [a, b] = [
          stretchesOf(one.paper, ...line(one.plane)),
          stretchesOf(two.paper, ...line(two.plane)),
        ]
        const loose = stuck.has(one.name) || stuck.has(two.name)
        const rim = ({ name, paper, plane }: typeof one, at: Vec3): number =>
          distanceToEdges(paper, flatOf(plane, at), loose ? folds.get(name) : [])
        for (let k = 0; k + 1 < a.length; k += 2)
          for (let m = 0; m + 1 < b.length; m += 2) {
            const low = Math.max(a[k] as number, b[m] as number)
            const top = Math.min(a[k + 1] as number, b[m + 1] as number)
            if (top - low < 2 * deep) continue
            const at = plus(start, times(way, (low + top) / 2))
            if (rim(one, at) > deep && rim(two, at) > deep) return [{ panels: [one.name, two.name], at }]
          }
        return []
      }),
    )
  }
}

/**
 * What lies over a spot [along, out] of the plane between the pages of a card that is nearly shut: by panel,
 * how far right of it, mm. Panels are left out where the spot is within `rim` mm of their edges.
 */
export function heightsAt(design: Design, opening: number): (spot: Flat, rim: number) => Map<string, number> {
  const { panels } = compile(design)(opening)
  const flats = new Map(modelOf(design).panels.map(({ name, outline }) => [name, outline]))
  const sheets = [...papers(design)].flatMap(([name, paper]) => {
    const plane = planeOf(flats.get(name) ?? [], panels[name] ?? [])
    return plane && paper.length > 0 ? [{ name, paper, plane }] : []
  })
  return ([y, z], rim) =>
    new Map(
      sheets.flatMap(({ name, paper, plane }): [string, number][] => {
        const [nx, ny, nz] = plane.normal
        const x = plane.origin[0] - (ny * (y - plane.origin[1]) + nz * (z - plane.origin[2])) / nx
        const at = flatOf(plane, [x, y, z])
        const inside = stretchesOf(paper, at, [1, 1e-3]).filter((t) => t > 0).length % 2 === 1
        return inside && distanceToEdges(paper, at) > rim ? [[name, x]] : []
      }),
    )
}
