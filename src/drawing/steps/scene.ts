import type { Design, Flat, Surface, Vec3 } from '../../paper/index.ts'
import { pieces, SHUT } from '../../paper/index.ts'
import { add, cross, dot, length, RADIANS, subtract, unit } from '../../paper/plane/vector.ts'
import { hatch } from '../pen/hatch.ts'
import type { Point } from '../pen/marks.ts'
import type { Camera, Stand } from '../view/camera.ts'
import { standing } from '../view/camera.ts'
import type { InkLine } from '../view/paper.ts'
import { drawnLines, SPACE, tapeStrokes } from './ink.ts'

/** All steps are seen from the same place. */
export const STEP_CAMERA: Camera = { turn: -26, tilt: 50 }

export const STEP_EYE: Vec3 = [-0.28, -0.58, 0.77]

export const LIFTED = 62

/** One state put in place. */
export interface Scene {
  readonly paper: readonly Surface[]
  readonly ink: readonly InkLine[]
  readonly stand: Stand
  readonly opening: number
  /** Arrows and ghosts over the paper, in the card's frame (drawn as lines in space). */
  readonly over: readonly {
    readonly role: 'hand' | 'ghost'
    readonly points: readonly Vec3[]
    readonly closed?: boolean
  }[]
  /** Words beside a point of the card's frame. */
  readonly words?: readonly { readonly text: string; readonly at: Vec3 }[]
  /** What is drawn on the pages by hand, in the card's frame. */
  readonly dots?: readonly Vec3[]
  /** The cuts that are drawn are made in this step: they stand out. */
  readonly cutsNow?: boolean
  /** It lies by itself on the table: drawn as large as it goes. */
  readonly fills?: boolean
  /** What is worked on, where that is small, in the card's frame. */
  readonly about?: readonly Vec3[]
  /** So many times as large as the card that may be drawn, at most. */
  readonly closest?: number
  readonly says: string
}

/** The lines of the flat sheet, put on the two pages. `keep` chooses by what they belong to. */
export function inkOn(
  design: Design,
  opening: number,
  keep: (of: string, kind: string) => boolean,
): InkLine[] {
  const half = (Math.max(SHUT, opening) / 2) * RADIANS
  const lift = (x: number, y: number, side: number): Vec3 => [
    side * Math.abs(x) * Math.sin(half),
    y,
    Math.abs(x) * Math.cos(half),
  ]
  const lines: InkLine[] = []
  const [card] = pieces(design)
  for (const { kind, points: corners, closed = false, of } of card?.lines ?? []) {
    if (of === 'page' || of.startsWith('cover/') || !keep(of, kind)) continue
    for (const { role, points } of drawnLines(design, card?.id ?? '', { kind, points: corners, closed }))
      for (let k = 0; k + 1 < points.length; k++) {
        const [a, b] = [points[k], points[k + 1]] as [Flat, Flat]
        // A line across the gutter is two lines, one on each page.
        const t = a[0] * b[0] < 0 ? a[0] / (a[0] - b[0]) : null
        const cut: Flat | null = t === null ? null : [0, a[1] + t * (b[1] - a[1])]
        for (const [p, q] of cut ? [[a, cut] as const, [cut, b] as const] : [[a, b] as const]) {
          const side = p[0] + q[0] < 0 ? -1 : 1
          lines.push({
            leaf: side < 0 ? 0 : 1,
            role,
            points: [lift(p[0], p[1], side), lift(q[0], q[1], side)],
            face: 'front',
            of,
          })
        }
      }
  }
  return lines
}

/**
 * The way of the right page's edge over the table, the left page lying still; in the card's frame at an opening. `beyond`:
 * so far outside of the edge, mm, and `along` which share of it.
 */
export function pagePath(
  design: Design,
  from: number,
  to: number,
  at = LIFTED,
  { beyond = 0, along = 0.5 } = {},
): readonly Vec3[] {
  const { width, height } = design.card
  const reach = width + beyond
  // The turn that undoes the stand is the other stand's.
  const back = standing('right', at)
  return Array.from({ length: 13 }, (_, k) => {
    const opening = from + ((to - from) * k) / 12
    const half = (opening / 2) * RADIANS
    return back(standing('left', opening)([reach * Math.sin(half), height * along, reach * Math.cos(half)]))
  })
}

/** The way of a finger that pushes from behind: it comes from further back and ends a little beyond. */
export function pushed(from: Vec3, to: Vec3, least = 42): readonly Vec3[] {
  const way: Vec3 = [to[0] - from[0], to[1] - from[1], to[2] - from[2]]
  const long = Math.hypot(...way) || 1
  const at = (reach: number): Vec3 =>
    [0, 1, 2].map((k) => (to[k] as number) + (reach * (way[k] as number)) / long) as Vec3
  return [at(-Math.max(1.5 * long, least)), at(0.12 * long)]
}

export const middle = (points: readonly Vec3[]): Vec3 =>
  [0, 1, 2].map((k) => points.reduce((sum, p) => sum + (p[k] as number), 0) / points.length) as Vec3

/** What a step is about. */
export interface Task {
  readonly design: Design
  /** The strips on the gutter that are cut or pushed. */
  readonly cut: readonly string[]
  /** The strips on other folds. */
  readonly guests: readonly string[]
  /** The glued mechanisms. */
  readonly glued: readonly string[]
  /** What stands before all of `guests` and `glued` in the design. */
  readonly before: readonly string[]
  /** What is in its place once the step is done; all there is if the step does not say. */
  readonly through: readonly string[]
  readonly opening: number | undefined
  /** What is not set up yet, and threaded through all the same. */
  readonly inHand: readonly string[]
}

/** A straight line as ink on a leaf. */
export const inked = (
  leaf: number,
  role: InkLine['role'],
  points: readonly Vec3[],
  of: string,
  face: InkLine['face'] = 'both',
): InkLine[] => points.slice(1).map((p, k) => ({ leaf, role, points: [points[k] as Vec3, p], face, of }))

/** Slanting lines that fill an outline in space, `step` mm apart, as ink on its leaf. */
export function hatched(leaf: number, outline: readonly Vec3[], of: string, step = SPACE): InkLine[] {
  const [a, b, c] = outline
  if (!a || !b || !c) return []
  const u = unit(subtract(b, a))
  const off = subtract(c, a)
  const v = unit(add(off, u, -dot(off, u)))
  const flat = outline.map((p): Point => [dot(subtract(p, a), u), dot(subtract(p, a), v)])
  return hatch(flat, step).flatMap((run) =>
    inked(
      leaf,
      'glue',
      run.map(([x, y]) => add(add(a, u, x), v, y)),
      of,
    ),
  )
}

/** A line along which paper is taped, in space, `front` the normal of its leaf: dashes, with strokes across. */
export function struck(leaf: number, line: readonly Vec3[], front: Vec3, of: string): InkLine[] {
  const [a, b] = line
  if (!a || !b) return []
  const long = subtract(b, a)
  const u = unit(long)
  const v = cross(front, u)
  const runs = tapeStrokes([
    [0, 0],
    [length(long), 0],
  ])
  return [
    ...inked(leaf, 'place', [a, b], of),
    ...runs.flatMap((run) =>
      inked(
        leaf,
        'glue',
        run.map(([x, y]) => add(add(a, u, x), v, y)),
        of,
      ),
    ),
  ]
}

/** A part of the design. */
export const only = (design: Design, ids: readonly string[]): Design => ({
  ...design,
  mechanisms: design.mechanisms.filter(({ id }) => ids.includes(id)),
})

/** The outlines of a mechanism's own panels as they would stand. */
export const ghostsOf = (panels: Readonly<Record<string, readonly Vec3[]>>, id: string) =>
  Object.entries(panels)
    .filter(([name]) => name.startsWith(`${id}/`))
    .map(([, points]) => ({ role: 'ghost' as const, points: points.map((p): Vec3 => [...p]), closed: true }))
