/** Small triangles beside what is to be cut or glued more exactly than all the rest: on no line, no letter, no other mark. */
import type { PathMark, Point } from '../../drawing/pen/marks.ts'
import type { Tight } from '../../paper/index.ts'
import { insideBox } from '../../paper/plane/clip.ts'
import type { Rectangle } from './clip.ts'
import { overlap } from './clip.ts'
import type { Stretch } from './stretches.ts'
import { edges, isIn, nearest, stretchesOf } from './stretches.ts'

/** The name of the mark for a size; sizes that are set at one place share it. */
export const careOf = ({ id, handle }: Tight): string => `${id}/${handle}/care`

/** From the middle of a triangle to its corners, and what is left open at each, mm. */
const RADIUS = 1.9

const OPEN = 0.5

/** A triangle of three strokes that points one way (a unit vector). */
export function triangle([x, y]: Point, [dx, dy]: Point, of: string): PathMark {
  const corner = (turn: number): Point => {
    const [c, s] = [Math.cos(turn), Math.sin(turn)]
    return [x + RADIUS * (c * dx - s * dy), y + RADIUS * (s * dx + c * dy)]
  }
  const corners = [0, (2 * Math.PI) / 3, (4 * Math.PI) / 3].map(corner)
  const runs = edges(corners).map(([a, b]): readonly Point[] => {
    const share = OPEN / Math.hypot(b[0] - a[0], b[1] - a[1])
    const at = (t: number): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])]
    return [at(share), at(1 - share)]
  })
  return { mark: 'path', runs, closed: false, role: 'care', of }
}

/** Free paper round a triangle, mm. */
const CLEAR = 0.4

/** So far from its line its middle may be, mm: from its point it is less. */
const NEAR = { least: RADIUS + CLEAR + 0.3, most: 6 }

/** Round a place it is tried on all these sides, degrees: upright and lying before slanting. */
const TURNS = [0, 90, 180, 270, 45, 135, 225, 315, 22.5, 67.5, 112.5, 157.5, 202.5, 247.5, 292.5, 337.5]

const RINGS = 8

/** A size that is to be marked: its handle on the page. */
export interface CareWish {
  readonly id: string
  readonly of: string
  readonly at: Point
}

/** What the marks keep clear of, and where they may be. */
export interface CareGround {
  /** What is printed on the piece. */
  readonly drawn: readonly PathMark[]
  /** Folds and edges, printed or not, and strokes across tape. */
  readonly lines: readonly Stretch[]
  /** The paper of letters. */
  readonly taken: readonly Rectangle[]
  readonly printable: Rectangle
  readonly outline: readonly Point[]
}

const closest = ([x, y]: Point, [a, b]: Stretch): Point => {
  const [dx, dy] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.max(0, Math.min(1, ((x - a[0]) * dx + (y - a[1]) * dy) / (dx * dx + dy * dy || 1)))
  return [a[0] + t * dx, a[1] + t * dy]
}

/** So many lines are tried: one may lie within an outline that leaves no room beside it. */
const MOST_LINES = 8

/** Where on the printed lines of its mechanism a size may be marked, nearest to its handle first. */
function anchors({ id, at }: CareWish, drawn: readonly PathMark[]): readonly Point[] {
  const isOwn = (of: string): boolean => of === id || of === `${id}-place` || of.startsWith(`${id}/`)
  return drawn
    .filter(({ of = '', role }) => role !== 'glue' && isOwn(of))
    .flatMap(stretchesOf)
    .sort((a, b) => nearest(at, a) - nearest(at, b))
    .slice(0, MOST_LINES)
    .flatMap((one) => {
      const [a, b] = one
      const along = [0.25, 0.5, 0.75].map((t): Point => [a[0] + t * (b[0] - a[0]), a[1] + t * (b[1] - a[1])])
      return [closest(at, one), ...along]
    })
}

/** Whether two stretches cross or touch. */
function meet([a, b]: Stretch, [c, d]: Stretch): boolean {
  const side = (p: Point, q: Point, r: Point): number =>
    (q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])
  return side(a, b, c) * side(a, b, d) <= 0 && side(c, d, a) * side(c, d, b) <= 0
}

/**
 * The marks that found free paper within a few mm of their line, and the paper that they take. Each points at its
 * line, and no other lies between: on the piece, if there is room, else beside it.
 */
export function careMarks(
  wishes: readonly CareWish[],
  { drawn, lines, taken, printable, outline }: CareGround,
): readonly { readonly mark: PathMark; readonly box: Rectangle }[] {
  const found: { mark: PathMark; box: Rectangle }[] = []
  if (wishes.length === 0) return found
  const all = [...lines, ...drawn.filter(({ role }) => role !== 'glue').flatMap(stretchesOf)]
  const spot = (wish: CareWish, anchor: Point, inside: boolean): boolean => {
    for (let ring = 0; ring < RINGS; ring++)
      for (const degrees of TURNS) {
        const far = NEAR.least + ((NEAR.most - NEAR.least) * ring) / (RINGS - 1)
        const turn = (degrees * Math.PI) / 180
        const way: Point = [Math.cos(turn), Math.sin(turn)]
        const middle: Point = [anchor[0] - far * way[0], anchor[1] - far * way[1]]
        const half = RADIUS + CLEAR
        const box: Rectangle = [middle[0] - half, middle[1] - half, middle[0] + half, middle[1] + half]
        if (box[0] < printable[0] || box[1] < printable[1] || box[2] > printable[2] || box[3] > printable[3])
          continue
        if (isIn(middle, outline) !== inside) continue
        if ([...taken, ...found.map((one) => one.box)].some((other) => overlap(other, box))) continue
        const sight: Stretch = [middle, [anchor[0] - 0.2 * way[0], anchor[1] - 0.2 * way[1]]]
        if (all.some((line) => insideBox(line[0], line[1], box) !== null || meet(line, sight))) continue
        found.push({ mark: triangle(middle, way, wish.of), box })
        return true
      }
    return false
  }
  for (const wish of wishes)
    anchors(wish, drawn).some((anchor) => spot(wish, anchor, true) || spot(wish, anchor, false))
  return found
}
