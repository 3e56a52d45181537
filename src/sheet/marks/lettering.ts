/** Letters beside and inside the places that are glued: never on a line, never on each other. */

import { hatch } from '../../drawing/pen/hatch.ts'
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import { insideBox } from '../../paper/plane/clip.ts'
import type { Rectangle } from './clip.ts'
import { beside, corners, grown, overlap } from './clip.ts'
import type { Shape, Style } from './letter-shapes.ts'
import { boxOf, shapesOf } from './letter-shapes.ts'
import { CAPITAL, TAIL } from './letters.ts'
import type { Stretch } from './stretches.ts'
import { edges, isIn, nearest } from './stretches.ts'

/** A letter that looks for a place. */
export interface Wish {
  readonly letter: string
  readonly partner: string
  /** The area or the line that it is for, on the page. */
  readonly points: readonly Point[]
  /** What it stands beside where it finds no room in that; the same unless said. */
  readonly round?: readonly Point[]
  readonly isLine: boolean
  readonly of: string
  /** It may stand in the area that it is for. */
  readonly mayBeInside: boolean
  /** Else where: on the piece, beside it, or wherever there is room. */
  readonly stay: 'inside' | 'anywhere' | 'outside'
  /** The joints of one piece with another: what can be said at all of them is said alike. The same as no other unless said. */
  readonly pair?: string
  /** A piece is stuck flat here, letter on letter: no name runs up from it, or it would seem to be turned. */
  readonly isLevel?: true
  /** From a point of its line the way to the side on which it should stand. */
  readonly aside?: readonly [from: Point, way: Point]
  /** Its area is hatched: in it there is room for a letter and some of the hatch. */
  readonly isHatched?: true
  /** It is a tab of its piece: there a letter stands, with its partner's name or without. */
  readonly isTab?: boolean
  /** On a face that will be seen, and on no paper that will be covered: it stands alone, small and near. */
  readonly isQuiet?: boolean
}

/** What letters keep clear of, and where they may be. */
export interface Ground {
  readonly lines: readonly Stretch[]
  readonly printable: Rectangle
  /** The piece itself. */
  readonly outline: readonly Point[]
}

/** Free paper round a letter, mm. */
const CLEAR = 0.5

const holds = (a: Rectangle, b: Rectangle): boolean =>
  a[0] <= b[0] && a[1] <= b[1] && a[2] >= b[2] && a[3] >= b[3]

/** The paper that words so long cover, their middle at a point. */
export function boxAt([x, y]: Point, long: number, size: number, turn: 0 | -90): Rectangle {
  const [half, drop, tail] = [long / 2, (CAPITAL * size) / 2, TAIL * size]
  return turn === 0
    ? [x - half, y - drop, x + half, y + drop + tail]
    : [x - drop, y - half, x + drop + tail, y + half]
}

/** Cells of the page, mm, by which what is near is found; and the steps in which a line is followed through them. */
const CELL = 4

const FOLLOWED = 2

/** So many cells in a row of the page: no paper is wider than 4 m. */
const ROW = 1024

/** Things on the page by the cells that they lie in: asking for what is near looks at nothing else. */
class Near<T> {
  private readonly cells = new Map<number, T[]>()

  private put(key: number, thing: T): void {
    const there = this.cells.get(key)
    if (there) there.push(thing)
    else this.cells.set(key, [thing])
  }

  addBox(thing: T, [l, t, r, b]: Rectangle): void {
    for (let i = Math.floor(l / CELL); i <= Math.floor(r / CELL); i++)
      for (let k = Math.floor(t / CELL); k <= Math.floor(b / CELL); k++) this.put(i * ROW + k, thing)
  }

  addLine(thing: T, [[ax, ay], [bx, by]]: Stretch): void {
    const count = Math.ceil(Math.hypot(bx - ax, by - ay) / FOLLOWED) + 1
    let last = Number.NaN
    for (let k = 0; k <= count; k++) {
      const key =
        Math.floor((ax + (k / count) * (bx - ax)) / CELL) * ROW +
        Math.floor((ay + (k / count) * (by - ay)) / CELL)
      if (key !== last) this.put(key, thing)
      last = key
    }
  }

  /** Whether something in the cells that a rectangle touches passes a test. */
  some([l, t, r, b]: Rectangle, test: (thing: T) => boolean): boolean {
    for (let i = Math.floor(l / CELL); i <= Math.floor(r / CELL); i++)
      for (let k = Math.floor(t / CELL); k <= Math.floor(b / CELL); k++)
        if (this.cells.get(i * ROW + k)?.some(test)) return true
    return false
  }
}

const boundsOf = (points: readonly Point[]): Rectangle =>
  points.reduce<Rectangle>(
    ([l, t, r, b], [x, y]) => [Math.min(l, x), Math.min(t, y), Math.max(r, x), Math.max(b, y)],
    [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY, Number.NEGATIVE_INFINITY],
  )

const centre = (points: readonly Point[]): Point => {
  const [l, t, r, b] = boundsOf(points)
  return [(l + r) / 2, (t + b) / 2]
}

/** So many strokes of a hatch are seen beside a letter, of at least so much, mm. */
const STROKES = 4

const STROKE = 1.5

/** Whether enough of the hatch of an area is seen beside a letter. */
const isHatchSeen = (area: readonly Point[], box: Rectangle): boolean =>
  hatch(area).flatMap(([a, b]) => (a && b ? beside([a, b], [box], STROKE) : [])).length >= STROKES

/** So many places are tried in an area, in rows and columns. */
const GRID = 17

/** Points spread over an area, those near its middle first. */
function within(points: readonly Point[]): readonly Point[] {
  const [cx, cy] = centre(points)
  const half = Math.max(...points.map(([x]) => Math.abs(x - cx)))
  const high = Math.max(...points.map(([, y]) => Math.abs(y - cy)))
  const at: Point[] = []
  for (let i = 0; i < GRID; i++)
    for (let k = 0; k < GRID; k++) {
      const point: Point = [cx + half * ((2 * i) / (GRID - 1) - 1), cy + high * ((2 * k) / (GRID - 1) - 1)]
      if (isIn(point, points)) at.push(point)
    }
  return at.sort((a, b) => Math.hypot(a[0] - cx, a[1] - cy) - Math.hypot(b[0] - cx, b[1] - cy))
}

/** How much farther from a place's middle a letter may be to be nearer to the place itself. */
const STRAY = 0.5

/** Whether a point lies beside the first or the last quarter of a line, or beyond: there the next line begins. */
function isPastMiddle([x, y]: Point, [a, b]: readonly Point[]): boolean {
  if (!a || !b) return false
  const [u, v] = [b[0] - a[0], b[1] - a[1]]
  return Math.abs(((x - a[0]) * u + (y - a[1]) * v) / (u * u + v * v || 1) - 0.5) > 0.25
}

const sidesOf = (points: readonly Point[]): readonly Stretch[] =>
  points.length === 2 ? [[points[0], points[1]] as unknown as Stretch] : edges(points)

/** So many corners of a place are looked round. */
const MOST_CORNERS = 8

/** Points round a place, those first that would be read as its own: near to it, and to its middle. */
function around(points: readonly Point[]): readonly Point[] {
  const middle = centre(points)
  const sides = sidesOf(points)
  const some = points.filter((_, k) => k % Math.ceil(points.length / MOST_CORNERS) === 0)
  const from =
    points.length > MOST_CORNERS
      ? [...some, middle]
      : [...points, middle, ...sides.map(([a, b]): Point => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2])]
  const spots: Point[] = []
  const costs: number[] = []
  for (const [x, y] of from)
    for (let ring = 0; ring < 24; ring++)
      for (let k = 0; k < 12; k++) {
        const [far, turn] = [2 + 1.5 * ring, (k * Math.PI) / 6]
        const spot: Point = [x + far * Math.cos(turn), y + far * Math.sin(turn)]
        let near = Number.POSITIVE_INFINITY
        for (const side of sides) near = Math.min(near, nearest(spot, side))
        spots.push(spot)
        costs.push(near + STRAY * Math.sqrt((spot[0] - middle[0]) ** 2 + (spot[1] - middle[1]) ** 2))
      }
  return Uint32Array.from(spots.keys())
    .sort((a, b) => (costs[a] as number) - (costs[b] as number))
    .reduce<Point[]>((out, k) => {
      out.push(spots[k] as Point)
      return out
    }, [])
}

/** So many of the nearest places are tried in every style; of those farther off one in `FAR`, small. */
const MOST_NEAR = 300

const FAR = 8

/** Capitals of 2 mm can be read at arm's length: common practice, no source. */
const READ = 3

const NAME = 2.5

const alone = (...sizes: readonly number[]): readonly Style[] => sizes.map((size) => ({ size, name: null }))

const named: readonly Style[] = [{ size: READ, name: NAME }]

const lone = alone(3.2, READ)

/** From the one that says most to what can just be read. */
const styles: readonly Style[] = [...named, ...lone]

const quiet = alone(READ)

/** Taken where nothing else finds room. */
const tiny: readonly Style[] = alone(2.5, 2, 1.6).map((style) => ({ ...style, mayTurn: true }))

const least: readonly Style[] = [{ size: NAME, name: NAME }, ...tiny]

/** A letter with a name after it is no farther than this from what it is for, mm: nearer to that than to anything else. */
const REACH = 5

/** The same beside an edge to the left of which it stands, so that the name is between the two. */
const NAMED_REACH = 9

/** By so much a letter beside its place is nearer to that than to any other, mm, if free paper can be found there. */
const CLEARLY = 1

/** Free paper for a letter. */
interface Spot {
  readonly point: Point
  readonly shape: Shape
  readonly box: Rectangle
}

/** The best place where it is read as its own place's, and one where it might be read as another's. */
interface Found {
  readonly clear: Spot | null
  readonly doubtful: Spot | null
}

/** The letters where they stand, and those that found no free paper. */
export interface Lettering {
  readonly marks: readonly WordMark[]
  /** The paper that they take, with some round it. */
  readonly taken: readonly Rectangle[]
  readonly lost: readonly Wish[]
  /** How often a place was looked at, and how often something near it: what the work is in proportion to. */
  readonly looks: { readonly places: number; readonly near: number }
}

/** Puts every letter in its area where that holds it, else as near to it as free paper is. */
export function lettered(wishes: readonly Wish[], ground: Ground): Lettering {
  const marks: WordMark[] = []
  const taken: Rectangle[] = []
  const lost: Wish[] = []
  const looks = { places: 0, near: 0 }
  const areas = new Near<Wish>()
  for (const wish of wishes) if (!wish.isLine) areas.addBox(wish, boundsOf(wish.points))
  const lines = new Near<Stretch>()
  for (const line of ground.lines) lines.addLine(line, line)
  const letters = new Near<Rectangle>()
  /** What the letters of a pair take that are not put yet. */
  let meant: readonly Rectangle[] = []
  const isFree = (box: Rectangle, own: Wish, inside: boolean): boolean => {
    looks.places += 1
    const wide = grown(box, CLEAR)
    if (!holds(ground.printable, wide)) return false
    // No edge of any place or piece runs through it: it lies where its corner does.
    const corner: Point = [wide[0], wide[1]]
    if (inside && !isIn(corner, own.points)) return false
    if (!inside && own.stay !== 'anywhere' && isIn(corner, ground.outline) !== (own.stay === 'inside'))
      return false
    const isTaken = (other: Rectangle): boolean => {
      looks.near += 1
      return overlap(other, wide)
    }
    if (letters.some(wide, isTaken) || meant.some(isTaken)) return false
    const isCrossed = ([a, b]: Stretch): boolean => {
      looks.near += 1
      return insideBox(a, b, wide) !== null
    }
    if (lines.some(grown(wide, FOLLOWED / 2 + 0.01), isCrossed)) return false
    // In another's area it would be read as that one's.
    const isOthers = (other: Wish): boolean => {
      looks.near += 1
      return isIn(corner, other.points)
    }
    return inside || !areas.some([corner[0], corner[1], corner[0], corner[1]], isOthers)
  }
  // Beside a piece it is the piece that a letter must be near to; to the left of its line the end of its partner's name
  // is, and the letter no farther off than a short name is long.
  const isAstray = (letter: Point, box: Rectangle, wish: Wish): boolean => {
    const { points, stay, isLine } = wish
    const isFar = (point: Point, sides: readonly Stretch[], reach: number): boolean =>
      sides.every((side) => nearest(point, side) > reach)
    if (stay !== 'outside') return isFar(letter, sidesOf(wish.round ?? points), REACH)
    if (!isLine) return isFar(letter, edges(ground.outline), REACH)
    const line = sidesOf(points)
    return (
      isPastMiddle(letter, points) ||
      isFar(letter, line, NAMED_REACH) ||
      corners(box).every((corner) => isFar(corner, line, REACH))
    )
  }
  const awayFrom = (letter: Point, { points }: Wish): number =>
    isIn(letter, points) ? 0 : Math.min(...sidesOf(points).map((side) => nearest(letter, side)))
  // Two that share a letter are one to the reader.
  const isClear = (letter: Point, wish: Wish): boolean => {
    const own = awayFrom(letter, wish) + CLEARLY
    return wishes.every((other) => other.letter === wish.letter || awayFrom(letter, other) >= own)
  }
  const free = (
    wish: Wish,
    at: readonly Point[],
    inside: boolean,
    some: readonly Style[],
    isMeant: (shape: Shape) => boolean = () => true,
  ): Found => {
    let doubtful: Spot | null = null
    for (const style of some) {
      let clear: Spot | null = null
      const shapes = shapesOf(wish, style).filter(
        (shape) => isMeant(shape) && !(wish.isLevel && shape.isStack),
      )
      // In its place the best way to set it is found first; beside it the nearest place, with the name however it fits.
      for (const first of inside || style.mayTurn ? shapes : [null])
        for (const point of at)
          for (const shape of first ? [first] : shapes) {
            const box = boxOf(shape, point)
            const letter: Point = [point[0] + shape.letter[0], point[1] + shape.letter[1]]
            if (!inside && style.name !== null && isAstray(letter, box, wish)) continue
            // The letter at the foot of a long name would stand beside the next line.
            if (!inside && shape.isStack && wish.isLine && isPastMiddle(letter, wish.points)) continue
            if (!isFree(box, wish, inside)) continue
            if (inside && wish.isHatched && !isHatchSeen(wish.points, grown(box, CLEAR))) continue
            const spot = { point, shape, box }
            if (!isClear(letter, wish)) {
              doubtful ??= spot
              continue
            }
            // On its piece it is cut out with it.
            if (inside || wish.stay !== 'anywhere' || isIn(point, ground.outline))
              return { clear: spot, doubtful }
            clear ??= spot
          }
      // In its place it is its own, but better off others.
      if (clear || (inside && doubtful)) return { clear: clear ?? doubtful, doubtful }
    }
    return { clear: null, doubtful }
  }
  const put = (wish: Wish, spot: Spot | null): boolean => {
    if (!spot) return false
    const { point, shape, box } = spot
    marks.push(
      ...shape.marks.map(
        (mark): WordMark => ({ ...mark, of: wish.of, at: [point[0] + mark.at[0], point[1] + mark.at[1]] }),
      ),
    )
    const wide = grown(box, CLEAR)
    taken.push(wide)
    letters.addBox(wide, wide)
    return true
  }
  /** The ways to say a joint, the best first: each finds a place or none, as the letters lie that have one. */
  const waysFor = (wish: Wish, isPair: boolean): readonly (() => Spot | null)[] => {
    const spots = wish.mayBeInside && !wish.isLine ? within(wish.points) : []
    const into = (some: readonly Style[]) => (): Spot | null =>
      spots.length > 0 ? free(wish, spots, true, some).clear : null
    const usual = wish.isQuiet ? quiet : styles
    const isOnSide = ([x, y]: Point): boolean => {
      const [[u, v], way] = wish.aside ?? [
        [0, 0],
        [0, 0],
      ]
      return !wish.aside || (x - u) * way[0] + (y - v) * way[1] > 0
    }
    // Beside its piece it finds no paper on it: those places are not tried, or all of the nearest might be such.
    const near = once(() =>
      around(wish.round ?? wish.points).filter(
        (spot) => wish.stay !== 'outside' || !isIn(spot, ground.outline),
      ),
    )
    const close = once(() => near().filter(isOnSide).slice(0, MOST_NEAR))
    // Two that are said alike both stand by the middle of their lines.
    const central = once(() => close().filter((spot) => !wish.isLine || !isPastMiddle(spot, wish.points)))
    const best = (some: readonly Style[], isMeant?: (shape: Shape) => boolean) => (): Spot | null =>
      free(wish, central(), false, some, isMeant).clear
    // With its partner's name close by, on its piece, it says more than alone in its place.
    const onPiece = (isMeant: (shape: Shape) => boolean) => (): Spot | null => {
      const { clear } = free(wish, close(), false, named, isMeant)
      return clear && isIn(clear.point, ground.outline) ? clear : null
    }
    const all = (): Spot | null => {
      const aside = free(wish, close(), false, usual)
      // Where there is no room on that side, on either.
      const around = wish.aside ? near().slice(0, MOST_NEAR) : close()
      const first = wish.aside && !aside.clear ? free(wish, around, false, usual) : aside
      const next = first.clear ? null : free(wish, around, false, least)
      const found = first.clear ?? next?.clear ?? first.doubtful ?? into(least)() ?? next?.doubtful
      if (found) return found
      const far = near().filter((_, k) => k >= MOST_NEAR && k % FAR === 0)
      // Beside its piece a letter is always far from what it is for, and tells its partner all the same.
      const small = wish.stay === 'outside' ? [...styles, ...least] : [...usual.slice(-1), ...least]
      const last = free(wish, far, false, small)
      return last.clear ?? last.doubtful
    }
    // What paper will cover is better small than large on a face that will be seen.
    const inside = wish.isQuiet
      ? [into(named), into(lone), into(least)]
      : // A piece is turned to and fro while it is glued: what stands in the tab is the tab's.
        [into(named), ...(wish.isTab ? [into(lone), into(tiny)] : [])]
    return [
      ...inside,
      ...(spots.length > 0
        ? [...(isPair ? [onPiece(isRow), onPiece(isStack)] : [onPiece(() => true)]), into(lone)]
        : []),
      ...(!isPair
        ? []
        : wish.isQuiet
          ? [best(quiet)]
          : [best(named, isRow), best(named, isStack), best(lone)]),
      all,
    ]
  }
  // The smallest places choose first.
  const size = ({ points }: Wish): number => {
    const [cx, cy] = centre(points)
    return Math.max(...points.map(([x, y]) => Math.hypot(x - cx, y - cy)))
  }
  const pairs = new Map<string, Wish[]>()
  for (const wish of [...wishes].sort((a, b) => size(a) - size(b))) {
    const pair = wish.pair ?? `${pairs.size}`
    pairs.set(pair, [...(pairs.get(pair) ?? []), wish])
  }
  for (const pair of pairs.values()) {
    const ways = pair.map((wish) => waysFor(wish, pair.length > 1))
    const isAlike = ways.every(({ length }) => length === ways[0]?.length)
    /** All of them in one of the ways; none if one of them finds no place so. */
    const inOne = (k: number): boolean => {
      const spots: Spot[] = []
      for (const own of ways) {
        const spot = own[k]?.()
        if (!spot) break
        spots.push(spot)
        meant = spots.map(({ box }) => grown(box, CLEAR))
      }
      meant = []
      if (spots.length < pair.length) return false
      for (const [n, wish] of pair.entries()) put(wish, spots[n] ?? null)
      return true
    }
    const last = (ways[0]?.length ?? 1) - 1
    const isPut = pair.length > 1 && isAlike && Array.from({ length: last }, (_, k) => k).some(inOne)
    if (isPut) continue
    for (const [n, wish] of pair.entries()) {
      const isOne = ways[n]?.some((way) => put(wish, way()))
      if (!isOne) lost.push(wish)
    }
  }
  return { marks, taken, lost, looks }
}

const isStack = (shape: Shape): boolean => shape.isStack ?? false

const isRow = (shape: Shape): boolean => !isStack(shape)

/** What is worked out only where it is asked for, and then once. */
function once<T>(work: () => T): () => T {
  let known: { readonly value: T } | undefined
  return () => {
    known ??= { value: work() }
    return known.value
  }
}
