/** What is drawn on a panel as flat colour, or a picture made of dots, in triangles: one layer a hair above the other. */
import { straight } from '../drawing/art/outlines.ts'
import { artOn } from '../drawing/art/shapes.ts'
import type { InkShape, Matrix } from '../drawing/pen/marks.ts'
import { pictureMatrix } from '../drawing/pen/svg-values.ts'
import type { Design, Flat } from '../paper/index.ts'
import { common, convexParts, signedArea } from '../paper/plane/convex.ts'

/** From one layer of colour to the next, mm: as little as programs for three dimensions still keep apart. */
const LAYER = 0.02

/** A colour, `#rrggbb`; or the address of a picture, and where on the paper its unit square lies, downwards from its top. */
export type Ink = { readonly colour: string } | { readonly picture: string; readonly square: Matrix }

/** Convex outlines of one colour, or of one picture, counter-clockwise in the panel's plane, mm. */
export interface InkPatch {
  readonly ink: Ink
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

interface Inked {
  readonly ink: Ink
  readonly parts: readonly (readonly Flat[])[]
}

function picturePatch(picture: string, corners: readonly Flat[]): Inked {
  const square = pictureMatrix(corners)
  const [a, b, c, d, x, y] = square
  const outline: Flat[] = [
    [x, y],
    [x + c, y + d],
    [x + a + c, y + b + d],
    [x + a, y + b],
  ]
  return { ink: { picture, square }, parts: [anticlockwise(outline)] }
}

function shapePatches(shape: InkShape): readonly Inked[] {
  if (shape.picture !== undefined) return [picturePatch(shape.picture, shape.runs[0] ?? [])]
  const runs = shape.runs.map((run) => straight(run, shape))
  return [
    ...(shape.fill === null
      ? []
      : [
          {
            ink: { colour: shape.fill },
            parts: runs.flatMap((run) => convexParts(run).map(({ points }) => points)),
          },
        ]),
    ...(shape.line === null
      ? []
      : [{ ink: { colour: shape.line }, parts: runs.flatMap((run) => strokeParts(run, shape.width)) }]),
  ]
}

/** The art of a panel cut to its paper (convex outlines either way round, in the panel's own plane, mm). */
export function inkPatches(
  design: Design,
  panel: string,
  paper: readonly (readonly Flat[])[],
): readonly InkPatch[] {
  const turned = paper.map(anticlockwise)
  return (['front', 'back'] as const).flatMap((face) => {
    const art = artOn(design, panel, face)
    const shapes = [...(art?.shapes ?? []), ...(art?.lit ?? [])]
    return shapes.flatMap(shapePatches).flatMap(({ ink, parts }, k): InkPatch[] => {
      const outlines = onPaper(parts, turned)
      return outlines.length === 0 ? [] : [{ ink, face, above: LAYER * (k + 1), outlines }]
    })
  })
}
