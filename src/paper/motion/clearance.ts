import { facesOf } from '../model/faces.ts'
import { creaseLines, isAlong } from '../model/lines.ts'
import type { Model } from '../model/model.ts'
import type { Frame } from '../plane/frame.ts'
import type { Flat } from '../plane/lay.ts'
import type { Parting } from '../plane/parting.ts'
import { parting, piercings, ROUNDING, TOUCH } from '../plane/parting.ts'
import type { Vec3 } from '../plane/vector.ts'
import { RADIANS } from '../plane/vector.ts'
import { WORLD } from './chain.ts'
import type { Lifts } from './lift.ts'
import { liftsOf } from './lift.ts'
import type { Body, Motion, Still, Stretch } from './motion.ts'
import { bodyOf } from './motion.ts'
import { seamsAlong } from './seams.ts'

/*
 * Do two panels meet on the way? Proved, not sampled.
 *
 * Two convex bodies are apart if a plane lies between them. Over a stretch of the motion we look from the
 * frame of the second panel, where it stands still. Take a direction fixed in that frame; let v_i(t) be how
 * far corner i of the first is beyond the second along it. With v_i = a at one end, b at the other and
 * |v_i''| <= bend (see `motion.ts`), v_i(t) >= line - bend/2 (t - t0)(t1 - t), and that is above 0 in the
 * whole stretch, ends aside, exactly if
 *
 *   (sqrt a + sqrt b)^2 > M,   M = bend (t1 - t0)^2 / 2.
 *
 * So a and b may be 0 at an end: panels that lie in one plane when the card is flat are proved apart up to
 * that very moment. A corner with v_i = 0 that bends by 0 is pinned: it is a joint of the two panels (on
 * their common crease, or the apex they share), and may touch. Panels joined by a crease are proved apart
 * in this way too: all corners off the crease stay above the other's plane as long as the crease's angle
 * keeps its sign; and so are panels that share one point: the cones there do not cross.
 *
 * If no plane is found the stretch is halved. If the two do cross at its middle, they touch. If it gets too
 * narrow to halve, we say that we cannot tell.
 *
 * Shut, all paper lies in one plane, and no plane that stands still goes between two sheets of the stack.
 * But heights over it that grow with the opening t look alike at every t once they are divided by t, and
 * bodies are apart exactly if they are so with one direction stretched. There a plane
 * x a + y l + z h / t = edge does stand still; times t it reads
 *
 *   v_i(t) = z h_i + t (x a_i + y l_i - edge),   |v_i''| <= bend (hypot(z, g) + g) + 2 |u| / t1²
 *
 * with g = t1 hypot(x, y) and u the corner's way along (x, y) from shut to t1, times t1 (a rate is within
 * bend t1 / 2 of the mean). So the stretch from shut to the first opening is proved like all others: the
 * stack has an order, the one in which its sheets lie just before, and none passes through another. The same
 * holds at the other end, with t counted back from there: what lies down on the page when the card is flat lies
 * down on what is stuck to the page.
 *
 * Paper that is stuck on a panel lies on one side of it: see `lift.ts`.
 */

/** Half the width of a cut, mm: paper this near to a cut edge is not looked at, so that the two edges of one cut do not count as touching when flat. */
export const KERF = 0.05

/** The stretches of the motion at first, and the narrowest, in degrees. */
const FIRST = 11.25

const NARROWEST = 0.005

/** Below this opening, degrees, heights over the shut stack are looked at in the measure of the opening. */
const NEARLY_SHUT = 1

/** So often we cannot tell of two parts, in hope of seeing them touch elsewhere, before we leave it at that. */
const DOUBTS = 8

/** What is known of two panels (indices) that are not proved clear of each other. */
export interface Meeting {
  readonly panels: readonly [number, number]
  readonly verdict: 'touches' | 'undecided'
  /** The first opening at which they touch as the card shuts, or where we cannot tell; degrees. */
  readonly opening: number
  readonly at: Vec3
  /** In the coordinates of the second panel. */
  readonly flat: Flat
  /** How far one was seen to pass into the other, mm, or the gap that could not be proved. */
  readonly depth: number
}

/** A panel as the search sees it. */
interface Sheet {
  readonly panel: number
  /** Its whole outline, and the box round it. */
  readonly outline: Body
  readonly box: Box
  /** The convex parts of the paper itself, without a narrow rim along cut edges; and some seams between them. */
  readonly faces: readonly Facet[]
}

interface Facet {
  /** With the rim, for what shares a point with it; without, for all else. */
  readonly whole: Body
  readonly body: Body
  readonly box: Box
}

/** Least and greatest across and along. */
type Box = readonly [number, number, number, number]

function boxOf(flat: Float64Array): Box {
  let [a0, a1, l0, l1] = [1, -1, 1, -1].map((s) => s * Number.POSITIVE_INFINITY) as [
    number,
    number,
    number,
    number,
  ]
  for (let i = 0; i < flat.length; i += 2) {
    const [a, l] = [flat[i] as number, flat[i + 1] as number]
    a0 = Math.min(a0, a)
    a1 = Math.max(a1, a)
    l0 = Math.min(l0, l)
    l1 = Math.max(l1, l)
  }
  return [a0, a1, l0, l1]
}

/** A convex outline (counter-clockwise) with the strip along its cut edges taken off. */
function trimmed(outline: readonly Flat[], cut: readonly boolean[]): readonly Flat[] {
  let points = outline
  outline.forEach((a, k) => {
    if (!cut[k]) return
    const b = outline[(k + 1) % outline.length] as Flat
    const size = Math.hypot(b[0] - a[0], b[1] - a[1])
    const inside = (p: Flat) => ((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])) / size - KERF
    points = points.flatMap((p, i) => {
      const q = points[(i + 1) % points.length] as Flat
      const [here, there] = [inside(p), inside(q)]
      const t = here / (here - there)
      const meet: Flat[] = here * there < 0 ? [[p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])]] : []
      return here >= 0 ? [p, ...meet] : meet
    })
  })
  return points
}

function sheetsOf(model: Model): Sheet[] {
  const folds = creaseLines(model)
  const sheets = model.panels.map(({ outline }, panel) => {
    const body = bodyOf(panel, outline)
    return { panel, outline: body, box: boxOf(body.flat), faces: [] as Facet[] }
  })
  for (const { panel, outline, drawn } of facesOf(model)) {
    const cut = outline.map(
      (a, k) =>
        drawn[k] === true &&
        !isAlong({ a, b: outline[(k + 1) % outline.length] as Flat }, folds[panel] ?? []),
    )
    const points = trimmed(outline, cut)
    if (points.length < 3) continue
    const body = bodyOf(panel, points)
    sheets[panel]?.faces.push({ whole: bodyOf(panel, outline), body, box: boxOf(body.flat) })
  }
  sheets.forEach(({ panel, faces }) => {
    const parts = facesOf(model).filter((face) => face.panel === panel)
    for (const [a, right, b, left] of seamsAlong(parts, folds[panel] ?? [])) {
      const short = Math.min(0.5, KERF / Math.hypot(b[0] - a[0], b[1] - a[1]))
      const inset = (p: Flat, q: Flat): Flat => [p[0] + short * (q[0] - p[0]), p[1] + short * (q[1] - p[1])]
      const body = bodyOf(panel, [inset(a, b), right, inset(b, a), left])
      faces.push({ whole: bodyOf(panel, [a, right, b, left]), body, box: boxOf(body.flat) })
    }
  })
  return sheets
}

/** What is looked at: the motion, and how stuck-on paper is held off in it. */
interface Scene {
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
  const f = still.frames[crease] as Frame
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

/** How far a panel is held off its own plane, in space, mm: along across × along. */
function liftedBy(model: Model, lifts: Lifts, still: Still, panel: number): Vec3 {
  const by = lifts.at(panel, still.opening)
  if (by === 0) return FLUSH
  const { crease, side } = model.panels[panel] as Model['panels'][number]
  const f = still.frames[crease] as Frame
  const S = (side === 'left' ? -1 : 1) * (f[12] as number)
  const C = f[13] as number
  const square = (k: number): number => by * (C * (f[3 + k] as number) - S * (f[9 + k] as number))
  return [square(0), square(1), square(2)]
}

const seen = (scene: Scene, still: Still, body: Body, panel: number): Float64Array =>
  seenInto(new Float64Array((body.flat.length / 2) * 3), scene, still, body, panel)

/** One body over a stretch, seen from a panel: its corners at both ends, and M for each. */
export interface Path {
  corners: number
  readonly from: Float64Array
  readonly to: Float64Array
  readonly M: Float64Array
}

const roomFor = (corners: number): Path => ({
  corners,
  from: new Float64Array(3 * corners),
  to: new Float64Array(3 * corners),
  M: new Float64Array(corners),
})

/** Fills a path's memory. */
function follow(path: Path, scene: Scene, stretch: Stretch, body: Body, panel: number): Path {
  path.corners = body.flat.length / 2
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
function beyondNear(path: Path, end: 'from' | 'to', { x, y, z, edge }: Parting, width: number): boolean {
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
function clearOfBox(path: Path, [a0, a1, l0, l1]: Box): boolean {
  return (
    beyond(path, 0, 0, 1, 0) ||
    beyond(path, 0, 0, -1, 0) ||
    beyond(path, 1, 0, 0, a1) ||
    beyond(path, -1, 0, 0, -a0) ||
    beyond(path, 0, 1, 0, l1) ||
    beyond(path, 0, -1, 0, -l0)
  )
}

/** Two facets that were not proved apart. */
interface Doubt {
  readonly one: Facet
  readonly two: Facet
  readonly gap: number
}

export interface Search {
  readonly motion: Motion
  /** The openings that the card can reach, degrees. */
  readonly range: readonly [least: number, most: number]
  /** Whether a pair of panels (indices) is to be looked at. */
  readonly wants: (one: number, two: number) => boolean
  /** Pairs with the same name are one: when one of them touches, the others are left alone. */
  readonly name: (one: number, two: number) => string
  /** Looks at two panels, or two parts of them, in a stretch that are left before we say that we cannot tell; counted down. */
  readonly effort: { left: number }
}

/**
 * Every pair of panels that touches, or is not proved clear, between shut and the widest opening. At
 * most one meeting for each name.
 */
export function meetings({ motion, range, wants, name, effort }: Search): readonly Meeting[] {
  const { model } = motion
  const [least, most] = range
  const scene: Scene = { motion, lifts: liftsOf(model, range) }
  const sheets = sheetsOf(model)
  const found = new Map<string, Meeting>()
  const doubts = new Map<string, number>()
  const path = roomFor(
    Math.max(
      ...sheets.flatMap(({ outline, faces }) =>
        [outline, ...faces.flatMap(({ body, whole }) => [body, whole])].map(({ flat }) => flat.length / 2),
      ),
    ),
  )

  /**
   * Whether two facets are parted as seen from the first one's panel. A guest's apex lies in the middle of
   * its host's ridge: only from the host does that ridge stand still, so that a direction square to it can
   * keep the guest beyond both its ends.
   */
  const back = roomFor(path.M.length)
  const joined = roomFor(path.M.length)
  const partedBackward = (a: Facet, b: Facet, stretch: Stretch, middle: Still): boolean => {
    follow(back, scene, stretch, b.body, a.body.panel)
    const pinned = pinnedIn(back)
    const points = seen(scene, middle, b.body, a.body.panel)
    const { x, y, z, edge, gap } = parting(points, pinned, a.body.flat)
    return gap >= 0 && beyond(back, x, y, z, edge)
  }

  const pinnedIn = (of: Path): boolean[] => Array.from(of.M.subarray(0, of.corners), (m) => m < ROUNDING)

  /**
   * Whether two facets that share a point are parted by a plane through it, rim and all: the cones there
   * do not cross. It takes far wider stretches than to follow the hair's breadth between their rims.
   */
  const partedAtPoint = (a: Facet, b: Facet, stretch: Stretch, middle: Still): boolean => {
    follow(joined, scene, stretch, a.whole, b.body.panel)
    const pinned = pinnedIn(joined)
    if (!pinned.includes(true)) return false
    const points = seen(scene, middle, a.whole, b.body.panel)
    const { x, y, z, edge, gap } = parting(points, pinned, b.whole.flat)
    return gap >= 0 && beyond(joined, x, y, z, edge)
  }

  /** Whether two facets are parted in a stretch at an end of the motion, with heights in the measure of the way from there. */
  const partedNear = (end: 'from' | 'to', a: Body, b: Body, stretch: Stretch): boolean => {
    follow(joined, scene, stretch, a, b.panel)
    const points = (end === 'from' ? joined.to : joined.from).slice(0, 3 * joined.corners)
    for (let i = 2; i < points.length; i += 3) points[i] = (points[i] as number) / stretch.width
    const found = parting(points, pinnedIn(joined), b.flat)
    return found.gap >= 0 && beyondNear(joined, end, found, stretch.width)
  }
  const ordered = (end: 'from' | 'to', a: Facet, b: Facet, stretch: Stretch): boolean =>
    stretch[end].opening === (end === 'from' ? least : most) &&
    (partedNear(end, a.body, b.body, stretch) ||
      partedNear(end, b.body, a.body, stretch) ||
      partedNear(end, a.whole, b.whole, stretch) ||
      partedNear(end, b.whole, a.whole, stretch))

  /** What keeps two sheets from being proved apart in a stretch: null if nothing, true if the stretch is only too wide. */
  const doubt = (one: Sheet, two: Sheet, stretch: Stretch): Doubt | true | null => {
    if (clearOfBox(follow(path, scene, stretch, one.outline, two.panel), two.box)) return null
    if (clearOfBox(follow(path, scene, stretch, two.outline, one.panel), one.box)) return null
    if (stretch.width > FIRST * RADIANS * 1.01) return true
    const middle = motion.still((stretch.from.opening + stretch.to.opening) / 2)
    let worst: Doubt | null = null
    for (const a of one.faces) {
      follow(path, scene, stretch, a.body, two.panel)
      let points: Float64Array | undefined
      let pinned: boolean[] = []
      for (const b of two.faces) {
        if (clearOfBox(path, b.box)) continue
        effort.left--
        if (partedAtPoint(a, b, stretch, middle)) continue
        if (!points) {
          points = seen(scene, middle, a.body, two.panel)
          pinned = pinnedIn(path)
        }
        const { x, y, z, edge, gap: found } = parting(points, pinned, b.body.flat)
        if (found >= 0 && beyond(path, x, y, z, edge)) continue
        if (found >= -TOUCH && partedBackward(a, b, stretch, middle)) continue
        if (ordered('from', a, b, stretch) || ordered('to', a, b, stretch)) continue
        // No direction at all: bodies without size.
        const gap = Number.isFinite(found) ? found : 0
        if (!worst || gap < worst.gap) worst = { one: a, two: b, gap }
        if (gap < -TOUCH) return worst
      }
    }
    return worst
  }

  const gapAt = ({ one, two }: Doubt, still: Still): number => {
    const path = motion.stretch(still, still)
    const pinned = Array.from(path.bends(two.body.panel, one.body), (bend) => bend < ROUNDING)
    return parting(seen(scene, still, one.body, two.body.panel), pinned, two.body.flat).gap
  }

  /** The meeting of two facets that cross at `opening`: the opening up to `wide` at which they first touch as the card shuts. */
  const touching = (pair: Doubt, opening: number, wide: number): Meeting => {
    let [inside, outside] = [opening, wide]
    if (gapAt(pair, motion.still(wide)) < -TOUCH) inside = wide
    else
      for (let k = 0; k < 16; k++) {
        const middle = (inside + outside) / 2
        if (gapAt(pair, motion.still(middle)) < -TOUCH) inside = middle
        else outside = middle
      }
    return { ...spot(pair, motion.still(inside)), verdict: 'touches', opening: inside, depth: -pair.gap }
  }

  /** Where two facets meet, or where the first is nearest to the second's panel. */
  const spot = ({ one, two }: Doubt, still: Still): Pick<Meeting, 'panels' | 'at' | 'flat'> => {
    const panels = [one.body.panel, two.body.panel] as const
    const points = seen(scene, still, one.body, two.body.panel)
    const marks: (readonly [number, number])[] = piercings(points, two.body.flat)
    const back = seen(scene, still, two.body, one.body.panel)
    for (const [a, l] of piercings(back, one.body.flat)) {
      const mark = { panel: one.body.panel, flat: Float64Array.of(a, l) }
      const there = seen(scene, still, mark, two.body.panel)
      marks.push([there[0] as number, there[1] as number])
    }
    if (marks.length === 0) {
      const corners = Array.from({ length: points.length / 3 }, (_, k) => 3 * k)
      const nearest = corners.reduce((p, q) =>
        Math.abs(points[q + 2] as number) < Math.abs(points[p + 2] as number) ? q : p,
      )
      marks.push([points[nearest] as number, points[nearest + 1] as number])
    }
    const flat: Flat = [
      marks.reduce((sum, [a]) => sum + a, 0) / marks.length,
      marks.reduce((sum, [, l]) => sum + l, 0) / marks.length,
    ]
    const at = still.places({ panel: two.body.panel, flat: Float64Array.from(flat) })
    return { panels, flat, at: [at[0] as number, at[1] as number, at[2] as number] }
  }

  const walk = (from: Still, to: Still, pairs: readonly (readonly [Sheet, Sheet])[]): void => {
    const stretch = motion.stretch(from, to)
    const boxes = new Map<number, Float64Array>()
    const boxIn = (sheet: Sheet): Float64Array => {
      let box = boxes.get(sheet.panel)
      if (!box) {
        box = sweptBox(stretch, sheet.outline, scene.lifts.most(sheet.panel))
        boxes.set(sheet.panel, box)
      }
      return box
    }
    const narrow = to.opening - from.opening < NARROWEST
    const open = pairs.filter(([one, two]) => {
      const key = name(one.panel, two.panel)
      if (found.get(key)?.verdict === 'touches' || (doubts.get(key) ?? 0) >= DOUBTS) return false
      if (boxesApart(boxIn(one), boxIn(two))) return false
      effort.left--
      const what = doubt(one, two, stretch)
      if (what === null) return false
      const middle = (from.opening + to.opening) / 2
      if (what !== true && what.gap < -TOUCH) {
        found.set(key, touching(what, middle, to.opening))
        return false
      }
      if (!narrow && effort.left > 0) return true
      doubts.set(key, (doubts.get(key) ?? 0) + 1)
      const pair = what === true ? whole(one, two) : what
      if (pair && !found.has(key))
        found.set(key, {
          ...spot(pair, motion.still(middle)),
          verdict: 'undecided',
          opening: middle,
          depth: Math.max(0, pair.gap),
        })
      return false
    })
    if (open.length === 0) return
    const middle = motion.still((from.opening + to.opening) / 2)
    // From flat towards shut, as the card is made: the first touch found is the first one felt.
    walk(middle, to, open)
    walk(from, middle, open)
  }
  const whole = (one: Sheet, two: Sheet): Doubt | null => {
    const [a, b] = [one.faces[0], two.faces[0]]
    return a && b ? { one: a, two: b, gap: 0 } : null
  }

  const pairs = sheets.flatMap((one, i) =>
    sheets.slice(i + 1).flatMap((two): [Sheet, Sheet][] => (wants(one.panel, two.panel) ? [[one, two]] : [])),
  )
  const nearly = Math.max(NEARLY_SHUT, least)
  if (most > nearly) walk(motion.still(nearly), motion.still(most), pairs)
  if (least < nearly) walk(motion.still(least), motion.still(Math.min(nearly, most)), pairs)
  return [...found.values()]
}

/** The box in the world that a body keeps to over a stretch, held off its panel by so much at most: least and greatest x, y, z. */
function sweptBox(stretch: Stretch, body: Body, lift: number): Float64Array {
  const [p, q] = [stretch.from.places(body), stretch.to.places(body)]
  const bends = stretch.bends(WORLD, body)
  const box = Float64Array.of(1, -1, 1, -1, 1, -1).map((sign) => sign * Number.POSITIVE_INFINITY)
  const eighth = (stretch.width * stretch.width) / 8
  for (let i = 0; i < p.length; i++) {
    const off = (bends[Math.floor(i / 3)] as number) * eighth + lift
    const k = 2 * (i % 3)
    box[k] = Math.min(box[k] as number, (p[i] as number) - off, (q[i] as number) - off)
    box[k + 1] = Math.max(box[k + 1] as number, (p[i] as number) + off, (q[i] as number) + off)
  }
  return box
}

const boxesApart = (one: Float64Array, two: Float64Array): boolean =>
  [0, 2, 4].some(
    (k) => (one[k] as number) > (two[k + 1] as number) || (two[k] as number) > (one[k + 1] as number),
  )
