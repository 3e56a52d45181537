/** Where panels meet: which edges of the paper are folds, and the dark that gathers in their hollows. */
import type { Flat, Model, Poser, Vec3 } from '../../paper/index.ts'
import { dot, subtract, unit } from '../../paper/plane/vector.ts'
import type { PathMark, Point } from '../pen/marks.ts'

/** One side of a crease: a line on a panel from which another rises. Fixed while the card moves. */
interface Meeting {
  readonly panel: number
  readonly other: number
  /** The crease's ends on the panel, and on the other; mm. */
  readonly line: readonly [Flat, Flat]
  /** A point of each panel one millimetre from the crease's start, square to it. */
  readonly off: Flat
  readonly otherStart: Flat
  readonly otherOff: Flat
  /** Whether the crease ends on the panel's edge, at its start and at its end. */
  readonly toEdge: readonly [boolean, boolean]
  /** The panel goes on beyond the crease. */
  readonly through: boolean
}

/** An end nearer than this to the panel's outline reaches it, mm. */
const AT_EDGE = 1.5

const far = ([x, y]: Flat, [ax, ay]: Flat, [bx, by]: Flat): number => {
  const square = (bx - ax) ** 2 + (by - ay) ** 2 || 1
  const t = Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
  return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay))
}

const nearOutline = (p: Flat, outline: readonly Flat[]): boolean =>
  outline.some((a, k) => far(p, a, outline[(k + 1) % outline.length] as Flat) < AT_EDGE)

function meetingsIn(model: Model): readonly (readonly Meeting[])[] {
  const found: Meeting[][] = model.panels.map(() => [])
  for (const { left, right, length, hidden } of model.creases) {
    if (hidden || left.panel === right.panel) continue
    for (const [one, two] of [
      [left, right],
      [right, left],
    ] as const) {
      const at = ({ lay }: typeof one, across: number, along: number): Flat => [
        lay.origin[0] + along * lay.run[0] + across * lay.off[0],
        lay.origin[1] + along * lay.run[1] + across * lay.off[1],
      ]
      const outline = model.panels[one.panel]?.outline ?? []
      const line = [at(one, 0, 0), at(one, 0, length)] as const
      const middle = at(one, 0, length / 2)
      found[one.panel]?.push({
        panel: one.panel,
        other: two.panel,
        line,
        off: at(one, 1, 0),
        otherStart: at(two, 0, 0),
        otherOff: at(two, 1, 0),
        toEdge: [nearOutline(line[0], outline), nearOutline(line[1], outline)],
        through: !outline.some((a, k) => far(middle, a, outline[(k + 1) % outline.length] as Flat) < 1e-3),
      })
    }
  }
  return found
}

const known = new WeakMap<Model, readonly (readonly Meeting[])[]>()

/** A meeting at the pose: how its panel's seen side stands to the other. */
export interface Fold {
  readonly start: Vec3
  readonly end: Vec3
  /** Unit, along the panel and square to the crease, away from it. */
  readonly way: Vec3
  /** The other panel's own such way. */
  readonly other: Vec3
  readonly line: readonly [Flat, Flat]
  readonly toEdge: readonly [boolean, boolean]
  readonly through: boolean
}

/** The folds on a panel (index into the model's) at the pose last taken; `place` into the table's frame. */
export function foldsOn(poser: Poser, panel: number, place: (p: Vec3) => Vec3): readonly Fold[] {
  const { model } = poser
  let meetings = known.get(model)
  if (!meetings) {
    meetings = meetingsIn(model)
    known.set(model, meetings)
  }
  return (meetings[panel] ?? []).map(({ line, off, other, otherStart, otherOff, toEdge, through }): Fold => {
    const start = place(poser.lift(panel, line[0]))
    return {
      start,
      end: place(poser.lift(panel, line[1])),
      way: unit(subtract(place(poser.lift(panel, off)), start)),
      other: unit(subtract(place(poser.lift(other, otherOff)), place(poser.lift(other, otherStart)))),
      line,
      toEdge,
      through,
    }
  })
}

/** What rises less than this from a surface (sine) leaves it bright. */
const FLAT = 0.03

/** Of a hollow that is nearly shut. */
const DARKEST = 0.75

const FAINTEST = 0.07

/** How far the dark reaches from the crease, mm: further for a long one. */
const reachOf = (length: number): number => Math.min(16, 3 + 0.22 * length)

/** Whether an edge of the flat paper lies on the line of a fold. */
const liesOn = (a: Flat, b: Flat, { line: [p, q] }: Fold): boolean =>
  far(a, p, q) < 0.02 && far(b, p, q) < 0.02

/** What was found of an outline: the folds are the same ones if the first of them is. */
interface Along {
  readonly count: number
  readonly first: Fold['line'] | undefined
  readonly folds: readonly number[]
}

const alongs = new WeakMap<readonly Flat[], Along>()

/** For each edge of a flat outline the fold that it lies on, as an index into the panel's folds; -1: none. */
export function foldsAlong(outline: readonly Flat[], folds: readonly Fold[]): readonly number[] {
  const [count, first] = [folds.length, folds[0]?.line]
  const known = alongs.get(outline)
  if (known && known.count === count && known.first === first) return known.folds
  const found = outline.map((a, k) => {
    const b = outline[(k + 1) % outline.length] as Flat
    return folds.findIndex((one) => liesOn(a, b, one))
  })
  alongs.set(outline, { count, first, folds: found })
  return found
}

/** Whether the fold's hollow is on the side that `normal` points to. */
export const isHollow = (fold: Fold, normal: Vec3): boolean => dot(fold.other, normal) > FLAT

/** The dark in the hollows on the side of a panel that is seen. */
export function fadesOn(
  folds: readonly Fold[],
  normal: Vec3,
  toScreen: (p: Vec3) => Point,
): readonly PathMark[] {
  const marks: PathMark[] = []
  for (const { start, end, way, other, toEdge, through } of folds) {
    if (dot(other, normal) < FLAT) continue
    const along = subtract(end, start)
    const length = Math.hypot(...along)
    if (length < 1) continue
    const reach = reachOf(length)
    for (const side of through ? [1, -1] : [1]) {
      const w: Vec3 = [side * way[0], side * way[1], side * way[2]]
      const angle = Math.acos(Math.max(-1, Math.min(1, dot(w, other)))) / Math.PI
      const strength = DARKEST * (1 - angle)
      if (strength < FAINTEST) continue
      const at = (t: number, off: number): Vec3 => [
        start[0] + t * along[0] + off * w[0],
        start[1] + t * along[1] + off * w[1],
        start[2] + t * along[2] + off * w[2],
      ]
      const quad = [at(0, 0), at(1, 0), at(1, reach), at(0, reach)].map(toScreen)
      const [edgeA, edgeB] = toEdge
      const mark = { mark: 'path', runs: [quad], closed: true, role: 'fade', strength } as const
      if (edgeA && edgeB) {
        const [a, b] = quad as [Point, Point, Point, Point]
        const [o, q] = [toScreen(at(0.5, 0)), toScreen(at(0.5, reach))]
        marks.push({
          ...mark,
          fade: { kind: 'band', matrix: [q[0] - o[0], q[1] - o[1], b[0] - a[0], b[1] - a[1], a[0], a[1]] },
        })
        continue
      }
      // A crease that ends inside the panel: its dark thins out along it too.
      const from = edgeA ? 0 : edgeB ? 1 : 0.5
      const to = edgeA ? 1 : edgeB ? 0 : 1
      const [o, p, q] = [toScreen(at(from, 0)), toScreen(at(to, 0)), toScreen(at(from, reach))]
      marks.push({
        ...mark,
        fade: {
          kind: edgeA || edgeB ? 'corner' : 'round',
          matrix: [p[0] - o[0], p[1] - o[1], q[0] - o[0], q[1] - o[1], o[0], o[1]],
        },
      })
    }
  }
  return marks
}
