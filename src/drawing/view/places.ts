import type { Poser, Vec3 } from '../../paper/index.ts'
import { edgesOf, isWithin } from '../../paper/plane/segment.ts'
import type { Mark, Point } from '../pen/marks.ts'

/** A fold that can be pressed in the view: its name, its ends on the screen, and where a finger may meet it. */
export interface FoldPlace {
  readonly name: string
  readonly ends: readonly [Point, Point]
  /** Where it is seen, the middle first; none: it lies behind paper. */
  readonly seen: readonly Point[]
}

/** Where along a fold one looks whether it is seen, from the middle outwards. */
const LOOKS = [0.5, 0.35, 0.65, 0.2, 0.8] as const

/** A look goes so far to either side of the fold, px. */
const ASIDE = 3

/** The topmost panel at a point of a picture; null: there is none. */
export function panelAt(marks: readonly Mark[], at: Point): string | null {
  let found: string | null = null
  for (const mark of marks)
    if (mark.mark === 'path' && mark.role === 'facet' && mark.of !== undefined)
      for (const run of mark.runs) if (isWithin(edgesOf(run), at)) found = mark.of
  return found
}

const between = (a: Point, b: Point, part: number): Point => [
  a[0] + part * (b[0] - a[0]),
  a[1] + part * (b[1] - a[1]),
]

/** Where a fold is seen: paper of its own lies on top there, on one side at least. */
function seenAt(
  marks: readonly Mark[],
  [a, b]: readonly [Point, Point],
  own: readonly string[],
): readonly Point[] {
  const long = Math.hypot(b[0] - a[0], b[1] - a[1])
  if (long < 1) return []
  const off: Point = [(-ASIDE * (b[1] - a[1])) / long, (ASIDE * (b[0] - a[0])) / long]
  return LOOKS.map((part) => between(a, b, part)).filter((at) => {
    const sides = [1, -1].map((side) => panelAt(marks, [at[0] + side * off[0], at[1] + side * off[1]]))
    return sides.some((panel) => panel !== null && own.includes(panel))
  })
}

/**
 * The folds of a card as they stand in a picture of it. Hidden frames and folds without length are left out.
 * @param toScreen a point of the card's frame, mm, on the screen, px
 * @param marks what the picture is made of, in the order in which it is painted
 */
export function foldPlaces(
  poser: Poser,
  opening: number,
  toScreen: (p: Vec3) => Point,
  marks: readonly Mark[],
): readonly FoldPlace[] {
  const { model } = poser
  const { creases } = poser(opening)
  return model.creases.flatMap((crease): FoldPlace[] => {
    const there = creases[crease.name]
    if (crease.hidden || crease.length <= 0 || !there) return []
    const ends = [toScreen(there.start), toScreen(there.end)] as const
    const own = [crease.left, crease.right].map(({ panel }) => model.panels[panel]?.name ?? '')
    return [{ name: crease.name, ends, seen: seenAt(marks, ends, own) }]
  })
}

/** A step for differences, mm. */
const STEP = 0.01

/**
 * The point of a plane square to x whose picture is a point of the screen, by Newton's steps from a point of that
 * plane near it: where a tip is when it is dragged and keeps its distance from the gutter's own plane. The start
 * itself if the plane is seen edge-on.
 */
export function onPlane(toScreen: (p: Vec3) => Point, start: Vec3, to: Point): Vec3 {
  const [x] = start
  let [, y, z] = start
  for (let k = 0; k < 8; k++) {
    const here = toScreen([x, y, z])
    const [ay, az] = [toScreen([x, y + STEP, z]), toScreen([x, y, z + STEP])]
    const [a, b] = [(ay[0] - here[0]) / STEP, (az[0] - here[0]) / STEP]
    const [c, d] = [(ay[1] - here[1]) / STEP, (az[1] - here[1]) / STEP]
    const area = a * d - b * c
    if (Math.abs(area) < 1e-3) return start
    const [u, v] = [to[0] - here[0], to[1] - here[1]]
    y += (u * d - v * b) / area
    z += (v * a - u * c) / area
  }
  return [x, y, z]
}
