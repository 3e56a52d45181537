import type { Design, Flat, Poser, Surface, Vec3 } from '../../paper/index.ts'
import { kindOf } from '../../paper/index.ts'
import { dot, subtract } from '../../paper/plane/vector.ts'
import type { FlatBox } from '../art/shapes.ts'
import { artOn, spanOf } from '../art/shapes.ts'
import type { ArtMark, InkShape, Mark, Matrix, Paint, PathMark, Point, Role } from '../pen/marks.ts'
import { PAPERS } from '../pen/papers.ts'
import type { Lens } from './camera.ts'
import type { Fold } from './folds.ts'
import { fadesOn, foldsAlong, foldsOn, isHollow } from './folds.ts'
import { flameAt, glowOn } from './glow.ts'
import { lightOn } from './light.ts'
import type { Part } from './order.ts'
import { paintOrder } from './order.ts'
import type { Caster, Receiver } from './shadows.ts'
import { caster, clockwise, shadowsOn } from './shadows.ts'

/** A line drawn on one leaf of the paper, in space. */
export interface InkLine {
  readonly leaf: number
  readonly role: Role
  readonly points: readonly [Vec3, Vec3]
  /** The side of the paper it is drawn on. */
  readonly face: 'front' | 'back' | 'both'
  readonly of?: string
}

/** How many card colours there are beside the base. */
const CARDS = 4

const TAPE = 5

const mirrorName = (name: string): string =>
  name.replace(/left|right/g, (side) => (side === 'left' ? 'right' : 'left'))

/**
 * The card each mechanism is cut from, 1 to 4 in turn. A mirror twin takes its twin's: a mechanism of the
 * same kind on the mirrored crease; a piece on a face only if their ids, too, differ by left and right alone.
 */
function cards({ mechanisms }: Design): readonly number[] {
  const twins = new Map<string, string>()
  const found: number[] = []
  let count = 0
  mechanisms.forEach(({ id, kind, on }, index) => {
    const [host = '', part = ''] = on.split('/')
    const other = twins.get(host)
    // A host without a twin is its own mirror image, but for its two sides.
    const mirrored = other === undefined ? `${host}/${mirrorName(part)}` : `${other}/${mirrorName(part)}`
    const alike = (one: { id: string; kind: string; on: string }): boolean =>
      one.kind === kind &&
      one.on === mirrored &&
      one.on !== on &&
      !twins.has(one.id) &&
      (kindOf(one).sitsOn !== 'panel' || mirrorName(one.id) === id)
    const at = mechanisms.slice(0, index).findIndex(alike)
    const twin = mechanisms[at]
    if (!twin) found.push(1 + (count++ % CARDS))
    else {
      twins.set(id, twin.id).set(twin.id, id)
      found.push(found[at] as number)
    }
  })
  return found
}

const known = new WeakMap<Design, readonly number[]>()

/** The card a mechanism (by index) is cut from; 0, the base, for the card's own pages. */
export function cardOf(design: Design, owner: number): number {
  if (owner < 0) return 0
  let list = known.get(design)
  if (!list) {
    list = cards(design)
    known.set(design, list)
  }
  return list[owner] ?? 0
}

/** What a leaf of paper in space is like, worked out once for a picture. */
interface Leaf {
  readonly index: number
  readonly panel: string
  readonly owner: number
  readonly card: number
  readonly paper: string | undefined
  readonly normal: Vec3
  readonly layer: number
  readonly faces: readonly Surface[]
  /** Its flat coordinates in space: null where it has none. */
  readonly axes: Axes | null
}

interface Axes {
  readonly origin: Vec3
  readonly u: Vec3
  readonly v: Vec3
  readonly box: FlatBox
}

/** Where flat coordinates lie in space: from three corners that are well apart. */
function axesOf(faces: readonly Surface[], place: (p: Vec3) => Vec3): Axes | null {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  let best = 0
  let found: Omit<Axes, 'box'> | null = null
  for (const { flat, points } of faces) {
    if (!flat) return null
    for (const [x, y] of flat) {
      x0 = Math.min(x0, x)
      x1 = Math.max(x1, x)
      y0 = Math.min(y0, y)
      y1 = Math.max(y1, y)
    }
    const [a] = flat as [Flat]
    for (let k = 1; k + 1 < flat.length; k++) {
      const [b, c] = [flat[k] as Flat, flat[k + 1] as Flat]
      const [bx, by, cx, cy] = [b[0] - a[0], b[1] - a[1], c[0] - a[0], c[1] - a[1]]
      const det = bx * cy - cx * by
      if (Math.abs(det) <= best) continue
      best = Math.abs(det)
      const from = place(points[0] as Vec3)
      const [p, q] = [subtract(place(points[k] as Vec3), from), subtract(place(points[k + 1] as Vec3), from)]
      const u = [0, 1, 2].map((n) => ((p[n] as number) * cy - (q[n] as number) * by) / det) as unknown as Vec3
      const v = [0, 1, 2].map((n) => ((q[n] as number) * bx - (p[n] as number) * cx) / det) as unknown as Vec3
      found = {
        origin: [
          from[0] - a[0] * u[0] - a[1] * v[0],
          from[1] - a[0] * u[1] - a[1] * v[1],
          from[2] - a[0] * u[2] - a[1] * v[2],
        ],
        u,
        v,
      }
    }
  }
  return found && { ...found, box: [x0, y0, x1, y1] }
}

/** How light falls on the paper. */
export interface Lighting {
  /** Unit vector to the lamp, in the table's frame. */
  readonly lamp: Vec3
  /** Whether parts throw shadows on one another, and whether those are soft; default none. */
  readonly shadows?: 'none' | 'hard' | 'soft'
  /** Posed as the paper is: it tells folds from cuts, and hollows darken. */
  readonly poser?: Poser
  /** Mechanisms, by id, on which the light is; all else is dimmed. */
  readonly lit?: ReadonlySet<string> | undefined
  /** The pages keep their art to themselves: lines drawn on them are what counts. */
  readonly bare?: boolean
}

/** What is left of the light where it is dimmed. */
const DIM = { light: 0.12, sky: 0.55 } as const

/** A panel that a matrix would put further off than this is drawn point by point, px. */
const TOLERANCE = 0.8

type Spot = ReturnType<Lens['onPlane']>

/**
 * Flat coordinates of a box to the screen as a matrix: level with the box's middle lines, and between what is off
 * at its corners and at its middle. Null where that would be too far.
 */
function matrixFor([x0, y0, x1, y1]: FlatBox, spot: Spot): Matrix | null {
  const [cx, cy] = [(x0 + x1) / 2, (y0 + y1) / 2]
  const [wide, tall] = [Math.max(1, x1 - x0), Math.max(1, y1 - y0)]
  const left = spot(cx - wide / 2, cy)
  const right = spot(cx + wide / 2, cy)
  const low = spot(cx, cy - tall / 2)
  const high = spot(cx, cy + tall / 2)
  const middle = spot(cx, cy)
  const [a, b] = [(right[0] - left[0]) / wide, (right[1] - left[1]) / wide]
  const [c, d] = [(high[0] - low[0]) / tall, (high[1] - low[1]) / tall]
  // How far the corners are off the middle's matrix, and all by how much on the whole.
  const offs = [spot(x0, y0), spot(x0, y1), spot(x1, y0), spot(x1, y1)]
  let [mx, my] = [0, 0]
  for (let k = 0; k < 4; k++) {
    const at = offs[k] as [number, number]
    const x = k < 2 ? x0 - cx : x1 - cx
    const y = k % 2 === 0 ? y0 - cy : y1 - cy
    at[0] -= middle[0] + a * x + c * y
    at[1] -= middle[1] + b * x + d * y
    mx += at[0] / 8
    my += at[1] / 8
  }
  const most = TOLERANCE * TOLERANCE
  if (mx * mx + my * my > most) return null
  for (const at of offs) if ((at[0] - mx) ** 2 + (at[1] - my) ** 2 > most) return null
  return [a, b, c, d, middle[0] + mx - a * cx - c * cy, middle[1] + my - b * cx - d * cy]
}

const boxes = new WeakMap<InkShape, FlatBox>()

/** What a shape spans, mm. */
function boxOf(shape: InkShape): FlatBox {
  let box = boxes.get(shape)
  if (!box) {
    box = spanOf(shape)
    boxes.set(shape, box)
  }
  return box
}

/**
 * Shapes of a panel on the screen: by one matrix if that is near enough, else each by its own, and point by point
 * what is too large even for that.
 */
function artMark(shapes: readonly InkShape[], matrix: Matrix | null, spot: Spot, grow: number): ArtMark {
  if (matrix) return { mark: 'art', shapes, matrix }
  const own = shapes.map((shape) => matrixFor(boxOf(shape), spot))
  return {
    mark: 'art',
    matrix: null,
    own,
    shapes: shapes.map((shape, k) =>
      own[k]
        ? shape
        : {
            ...shape,
            runs: shape.runs.map((run) => run.map(([x, y]) => spot(x, y))),
            width: shape.width * grow,
          },
    ),
  }
}

/** The edges of a leaf's faces by what they are, as runs of points. */
function edgeMarks(
  { faces }: Leaf,
  folds: readonly Fold[],
  seen: Vec3,
  toScreen: (p: Vec3) => Point,
): PathMark[] {
  const runs: Record<'dip' | 'brow' | 'edge', Point[][]> = { dip: [], brow: [], edge: [] }
  for (const { points, flat, drawn } of faces) {
    const along = flat && foldsAlong(flat, folds)
    let last: Role | null = null
    for (let k = 0; k < points.length; k++) {
      if (!drawn[k]) {
        last = null
        continue
      }
      const next = (k + 1) % points.length
      const fold = folds[along?.[k] ?? -1]
      const role = fold ? (isHollow(fold, seen) ? 'dip' : 'brow') : 'edge'
      const to = toScreen(points[next] as Vec3)
      if (role === last) runs[role].at(-1)?.push(to)
      else runs[role].push([toScreen(points[k] as Vec3), to])
      last = role
    }
  }
  return (['dip', 'brow', 'edge'] as const).flatMap((role): PathMark[] =>
    runs[role].length === 0 ? [] : [{ mark: 'path', runs: runs[role], closed: false, role }],
  )
}

/** How far the shadow of what is stuck flat on a face falls, px. */
const STUCK = 1.6

/**
 * The paper as the eye sees it: surfaces in painter's order, each with what is drawn on it, its hollows, the
 * shadows on it and its edges. Colours go by the design; `place` brings a point of the card's frame into the
 * table's.
 */
export function paperMarks(
  design: Design,
  paper: readonly Surface[],
  ink: readonly InkLine[],
  lens: Lens,
  place: (p: Vec3) => Vec3,
  { lamp, shadows = 'none', poser, lit: inLight, bare = false }: Lighting,
): readonly Mark[] {
  const parts: Part[] = paper.map((surface, from) => ({
    leaf: surface.leaf,
    points: surface.points.map(place),
    drawn: surface.drawn,
    layer: surface.layer,
    normal: place(surface.over === -1 ? flipped(surface.front) : surface.front),
    from,
  }))
  const faces = new Map<number, Surface[]>()
  for (const surface of paper) {
    const list = faces.get(surface.leaf)
    if (list) list.push(surface)
    else faces.set(surface.leaf, [surface])
  }
  const leaves = new Map<number, Leaf>()
  for (const [index, list] of faces) {
    const [{ panel, owner, tape = false, front, layer }] = list as [Surface]
    const id = panel.split('/')[0] ?? ''
    const named = tape ? undefined : design.papers?.[id]
    const cover = id === 'cover' && owner < 0
    const colour = named ?? (cover ? 'night' : undefined)
    leaves.set(index, {
      index,
      panel,
      owner,
      card: tape ? TAPE : cardOf(design, owner),
      paper: colour && PAPERS[colour],
      normal: place(front),
      layer,
      faces: list,
      axes: axesOf(list, place),
    })
  }
  ink.forEach(({ leaf, points }, k) => {
    const { normal, layer = 0 } = leaves.get(leaf) ?? {}
    if (normal)
      parts.push({
        layer,
        leaf,
        points: points.map(place),
        drawn: [true, false],
        normal,
        from: paper.length + k,
        line: true,
      })
  })
  const { eye, toScreen } = lens
  const casters = shadows === 'none' ? [] : castersOf(leaves, poser, place)
  const flame = poser ? flameAt(poser, place, inLight) : null

  const paints = new Map<number, Paint>()
  const paintOf = (leaf: Leaf, at: Vec3): Paint => {
    let paint = paints.get(leaf.index)
    if (!paint) {
      const front = dot(leaf.normal, subtract(eye, at)) >= 0
      const seen: Vec3 = front ? leaf.normal : flipped(leaf.normal)
      const { light, sky } = lightOn(seen, lamp)
      const dim = inLight !== undefined && !inLight.has(leaf.panel.split('/')[0] ?? '')
      paint = {
        card: leaf.card,
        ...(leaf.paper === undefined ? {} : { paper: leaf.paper }),
        light: dim ? DIM.light * light : light,
        sky: dim ? DIM.sky * sky : sky,
        ...(dim ? { dim } : {}),
        face: front ? 'front' : 'back',
      }
      paints.set(leaf.index, paint)
    }
    return paint
  }

  const details = new Map<number, readonly (PathMark | ArtMark)[]>()
  const detailOf = (leaf: Leaf, paint: Paint): readonly (PathMark | ArtMark)[] => {
    const known = details.get(leaf.index)
    if (known) return known
    const { axes, index, owner, panel } = leaf
    const seen: Vec3 = paint.face === 'front' ? leaf.normal : flipped(leaf.normal)
    const on: (PathMark | ArtMark)[] = []
    const folds = poser && index < poser.model.panels.length ? foldsOn(poser, index, place) : []
    let lit: ArtMark | null = null
    if (axes && !paint.dim) {
      const { origin: o, u, v, box } = axes
      const spot = lens.onPlane(o, u, v)
      const receiver: Receiver = { leaf: index, origin: o, u, v, normal: seen, box }
      const glow = flame && glowOn(flame, receiver, toScreen)
      const art = bare && owner < 0 ? null : artOn(design, panel, paint.face)
      if (art || glow) {
        const matrix = matrixFor(box, spot)
        const [x, y] = [(box[0] + box[2]) / 2, (box[1] + box[3]) / 2]
        const [p, q, r] = [spot(x, y), spot(x + 1, y), spot(x, y + 1)]
        const grow = (Math.hypot(q[0] - p[0], q[1] - p[1]) + Math.hypot(r[0] - p[0], r[1] - p[1])) / 2
        // Cut to the surface as all that lies on it: so it may be the same in every frame.
        const whole: PathMark = { mark: 'path', runs: [lens.all], closed: true, role: 'bare' }
        // A light needs a ground of its own under it, as art does.
        if (glow || art?.shapes.length) on.push(whole)
        if (art?.shapes.length) on.push(artMark(art.shapes, matrix, spot, grow))
        if (glow || art?.shapes.length) on.push({ ...whole, role: 'shade' })
        if (art?.lit.length) lit = artMark(art.lit, matrix, spot, grow)
      }
      on.push(...fadesOn(folds, seen, toScreen))
      if (shadows !== 'none') {
        on.push(...shadowsOn(casters, receiver, lamp, shadows === 'soft', spot))
      }
      if (glow) on.push(glow)
      if (lit) on.push(lit)
    }
    on.push(...edgeMarks(leaf, folds, seen, (p) => toScreen(place(p))))
    details.set(index, on)
    return on
  }

  const marks: Mark[] = []
  let open: { leaf: number; runs: Point[][] } | null = null
  for (const part of paintOrder(parts, eye)) {
    const leaf = leaves.get(part.leaf) as Leaf
    const paint = paintOf(leaf, part.points[0] as Vec3)
    const run = clockwise(part.points.map(toScreen))
    if (part.line) {
      const { role, face, of } = ink[part.from - paper.length] as InkLine
      if (face !== 'both' && face !== paint.face) continue
      open = null
      marks.push({
        mark: 'path',
        runs: [run],
        closed: false,
        role,
        paint,
        ...(of === undefined ? {} : { of }),
      })
      continue
    }
    if (open && open.leaf === part.leaf) {
      // One path for neighbours of one leaf: no seam shows between them.
      open.runs.push(run)
      continue
    }
    open = { leaf: part.leaf, runs: [run] }
    const on = detailOf(leaf, paint)
    if (shadows !== 'none' && leaf.panel.endsWith('/face'))
      marks.push({
        mark: 'path',
        runs: [run.map(([x, y]): Point => [x + STUCK, y + STUCK])],
        closed: true,
        role: 'shadow',
        strength: 0.8,
      })
    marks.push({ mark: 'path', runs: open.runs, closed: true, role: 'facet', paint, of: leaf.panel, on })
  }
  return marks
}

const flipped = ([x, y, z]: Vec3): Vec3 => [-x, -y, -z]

/** What stops light: whole panels where nothing was taken out of them, else their faces. */
function castersOf(
  leaves: ReadonlyMap<number, Leaf>,
  poser: Poser | undefined,
  place: (p: Vec3) => Vec3,
): readonly Caster[] {
  const out: Caster[] = []
  for (const [leaf, { faces }] of leaves) {
    const panel = poser?.model.panels[leaf]
    if (poser && panel && panel.notches.length === 0 && faces.length > 1)
      out.push(
        caster(
          leaf,
          panel.outline.map((flat) => place(poser.lift(leaf, flat))),
        ),
      )
    else for (const { points } of faces) out.push(caster(leaf, points.map(place)))
  }
  return out
}
