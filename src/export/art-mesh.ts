/** What is drawn on a panel as flat colour in triangles, one layer a hair above the other. Pictures made of dots stay out. */
import { straight } from '../drawing/art/outlines.ts'
import { artOn } from '../drawing/art/shapes.ts'
import type { InkShape } from '../drawing/pen/marks.ts'
import type { Design, Flat } from '../paper/index.ts'
import { common, convexParts, signedArea } from '../paper/plane/convex.ts'

/** From one layer of colour to the next, mm: as little as programs for three dimensions still keep apart. */
const LAYER = 0.02

/** Convex outlines of one colour, counter-clockwise in the panel's plane, mm. */
export interface ColourPatch {
  /** `#rrggbb`. */
  readonly colour: string
  readonly face: 'front' | 'back'
  /** How far above its face of the paper, mm. */
  readonly above: number
  readonly outlines: readonly (readonly Flat[])[]
}

/** A finer line shows no gap where it bends, mm. */
const FINE = 0.7

/** A line `width` wide, as a box along each of its pieces and, unless it is fine, an octagon at each of its points. */
function strokeParts(points: readonly Flat[], width: number): readonly (readonly Flat[])[] {
  const half = width / 2
  const boxes = points.slice(1).flatMap(([x, y], k) => {
    const [a, b] = points[k] as Flat
    const long = Math.hypot(x - a, y - b)
    if (long === 0) return []
    const [u, v] = [((x - a) / long) * half, ((y - b) / long) * half]
    const box: Flat[] = [
      [a + v, b - u],
      [x + v, y - u],
      [x - v, y + u],
      [a - v, b + u],
    ]
    return [box]
  })
  if (width < FINE) return boxes
  const dots = points.map(([x, y]) =>
    Array.from({ length: 8 }, (_, k): Flat => {
      const angle = ((k + 0.5) * Math.PI) / 4
      return [x + half * Math.cos(angle), y + half * Math.sin(angle)]
    }),
  )
  return [...boxes, ...dots]
}

const anticlockwise = (outline: readonly Flat[]): readonly Flat[] =>
  signedArea(outline) < 0 ? [...outline].reverse() : outline

/** The parts that lie on the paper. */
const onPaper = (
  parts: readonly (readonly Flat[])[],
  paper: readonly (readonly Flat[])[],
): readonly (readonly Flat[])[] =>
  parts.flatMap((part) => paper.map((patch) => common(part, patch)).filter((cut) => cut.length > 2))

function shapePatches(shape: InkShape): readonly { colour: string; parts: readonly (readonly Flat[])[] }[] {
  const runs = shape.runs.map((run) => straight(run, shape))
  return [
    ...(shape.fill === null
      ? []
      : [{ colour: shape.fill, parts: runs.flatMap((run) => convexParts(run).map(({ points }) => points)) }]),
    ...(shape.line === null
      ? []
      : [{ colour: shape.line, parts: runs.flatMap((run) => strokeParts(run, shape.width)) }]),
  ]
}

/** The art of a panel cut to its paper (convex outlines either way round, in the panel's own plane, mm). */
export function colourPatches(
  design: Design,
  panel: string,
  paper: readonly (readonly Flat[])[],
): readonly ColourPatch[] {
  const turned = paper.map(anticlockwise)
  return (['front', 'back'] as const).flatMap((face) => {
    const art = artOn(design, panel, face)
    const shapes = [...(art?.shapes ?? []), ...(art?.lit ?? [])].filter(
      ({ picture }) => picture === undefined,
    )
    return shapes.flatMap(shapePatches).flatMap(({ colour, parts }, k): ColourPatch[] => {
      const outlines = onPaper(parts, turned)
      return outlines.length === 0 ? [] : [{ colour, face, above: LAYER * (k + 1), outlines }]
    })
  })
}
