/** The art of a flat piece as lines to colour in: its outlines where nothing lies over them, cut to the paper. */
import type { Art, Design, Flat } from '../../paper/index.ts'
import { between, clip } from '../../paper/plane/clip.ts'
import { laid } from '../../paper/plane/lay.ts'
import type { InkShape, Point } from '../pen/marks.ts'
import { panelsOn } from './panels.ts'
import { artOn } from './shapes.ts'

/** Straight pieces for each cubic. */
const PIECES = 5

/** As finely as lines are looked at, whether something lies over them; mm. */
const FINE = 1.2

/** A run of a shape as points joined by straight lines, closed ones back to their start. */
export function straight(run: readonly Point[], { bends, closed }: InkShape): readonly Point[] {
  if (!bends) return closed ? [...run, run[0] as Point] : run
  const out: Point[] = [run[0] as Point]
  for (let k = 0; k + 3 < run.length; k += 3) {
    const [a, b, c, d] = run.slice(k, k + 4) as [Point, Point, Point, Point]
    for (let n = 1; n <= PIECES; n++) {
      const t = n / PIECES
      const u = 1 - t
      const at = (i: 0 | 1): number =>
        u * u * u * a[i] + 3 * u * u * t * b[i] + 3 * u * t * t * c[i] + t * t * t * d[i]
      out.push([at(0), at(1)])
    }
  }
  return out
}

interface Area {
  readonly points: readonly Point[]
  readonly box: readonly [number, number, number, number]
}

const areaOf = (points: readonly Point[]): Area => {
  const xs = points.map(([x]) => x)
  const ys = points.map(([, y]) => y)
  return { points, box: [Math.min(...xs), Math.min(...ys), Math.max(...xs), Math.max(...ys)] }
}

/** By the even-odd rule. */
function covers({ points, box }: Area, [x, y]: Point): boolean {
  if (x < box[0] || x > box[2] || y < box[1] || y > box[3]) return false
  let within = false
  for (let k = 0; k < points.length; k++) {
    const [ax, ay] = points[k] as Point
    const [bx, by] = points[(k + 1) % points.length] as Point
    if (ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax)) within = !within
  }
  return within
}

/** The part of a segment inside a convex outline that goes round either way. */
function within(segment: readonly Point[], outline: readonly Flat[], turn: number): readonly Point[] {
  let left = segment
  for (let k = 0; k < outline.length && left.length > 1; k++) {
    const [a, b] = [outline[k] as Flat, outline[(k + 1) % outline.length] as Flat]
    const off = left.map(([x, y]) => turn * ((b[0] - a[0]) * (y - a[1]) - (b[1] - a[1]) * (x - a[0])))
    left = clip(left, off, between, 0, false).points
  }
  return left
}

/** Whether a segment lies all to one side of a box. */
const isFar = ([ax, ay]: Point, [bx, by]: Point, [l, t, r, b]: Area['box']): boolean =>
  (ax < l && bx < l) || (ax > r && bx > r) || (ay < t && by < t) || (ay > b && by > b)

const turnOf = (outline: readonly Flat[]): number =>
  Math.sign(
    outline.reduce((sum, [x, y], k) => {
      const [u, v] = outline[(k + 1) % outline.length] as Flat
      return sum + x * v - u * y
    }, 0),
  )

const known = new WeakMap<Design, Map<string, readonly (readonly Point[])[]>>()

/**
 * The lines of one piece by id, in the piece's own coordinates, mm. Empty where nothing is drawn on it. Worked out
 * once for each design.
 */
export function artOutlines(design: Design, piece: string, face: Art['face']): readonly (readonly Point[])[] {
  if (!design.art) return []
  const pieces = known.get(design) ?? new Map<string, readonly (readonly Point[])[]>()
  known.set(design, pieces)
  const key = `${piece} ${face}`
  const found = pieces.get(key) ?? outlinesOf(design, piece, face)
  pieces.set(key, found)
  return found
}

function outlinesOf(design: Design, piece: string, face: Art['face']): readonly (readonly Point[])[] {
  return panelsOn(design, piece).flatMap((panel): Point[][] => {
    const art = artOn(design, panel.name, face)
    if (!art) return []
    const paper = panel.paper.map((outline) => ({ ...areaOf(outline), turn: turnOf(outline) }))
    // A picture has no lines to colour in.
    const inked = [...art.shapes, ...art.lit].filter(({ picture }) => picture === undefined)
    const shapes = inked.flatMap((shape) =>
      shape.runs.map((run) => {
        const line = straight(run, shape)
        return { line, area: shape.fill !== null && shape.closed ? areaOf(line) : null }
      }),
    )
    return shapes.flatMap(({ line }, n) => {
      const over = shapes.slice(n + 1).flatMap(({ area }) => (area ? [area] : []))
      const runs: Point[][] = []
      for (let i = 1; i < line.length; i++) {
        const [from, to] = [line[i - 1] as Point, line[i] as Point]
        const parts = Math.max(1, Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / FINE))
        for (let part = 0; part < parts; part++) {
          const [a, b] = [between(from, to, part / parts), between(from, to, (part + 1) / parts)]
          if (over.some((area) => covers(area, between(a, b, 0.5)))) continue
          for (const { points: outline, box, turn } of paper) {
            if (isFar(a, b, box)) continue
            const cut = within([a, b], outline, turn)
            if (cut.length < 2) continue
            const [p, q] = [laid(panel.onPiece, cut[0] as Point), laid(panel.onPiece, cut.at(-1) as Point)]
            const last = runs.at(-1)
            const end = last?.at(-1)
            if (last && end && Math.hypot(end[0] - p[0], end[1] - p[1]) < 1e-6) last.push(q)
            else runs.push([p, q])
          }
        }
      }
      return runs
    })
  })
}
