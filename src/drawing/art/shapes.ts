/** What a design draws on its panels, as shapes ready for a pen: smooth outlines worked out, like neighbours joined. */
import type { Art, Design, Flat } from '../../paper/index.ts'
import type { InkShape, Point } from '../pen/marks.ts'
import { PAPERS } from '../pen/papers.ts'

/** The art of one face of a panel, in its flat coordinates, mm; `lit` is what gives light, drawn over the shade. */
export interface PanelArt {
  readonly shapes: readonly InkShape[]
  readonly lit: readonly InkShape[]
}

/**
 * A smooth line through the points as cubics: a start, then three points each.
 * Source: uniform Catmull-Rom splines (Catmull and Rom 1974) in Bezier form: a sixth of the way between
 * the neighbours.
 */
export function smooth(points: readonly Flat[], closed: boolean): Point[] {
  const n = points.length
  const at = (k: number): Flat => points[closed ? (k + n) % n : Math.min(n - 1, Math.max(0, k))] as Flat
  const out: Point[] = [at(0)]
  for (let k = 0; k < (closed ? n : n - 1); k++) {
    const [a, b, c, d] = [at(k - 1), at(k), at(k + 1), at(k + 2)]
    // A point given twice is a corner: the line stops there and sets out anew.
    if (b[0] === c[0] && b[1] === c[1]) continue
    out.push(
      [b[0] + (c[0] - a[0]) / 6, b[1] + (c[1] - a[1]) / 6],
      [c[0] - (d[0] - b[0]) / 6, c[1] - (d[1] - b[1]) / 6],
      c,
    )
  }
  return out
}

const area = (points: readonly Flat[]): number =>
  points.reduce((sum, [x, y], k) => {
    const [u, v] = points[(k + 1) % points.length] as Flat
    return sum + x * v - u * y
  }, 0)

function inkShape({ shape, curve, closed, fill, line, lineColour, lineWidth, picture }: Art): InkShape {
  if (picture !== undefined)
    return { runs: [shape], bends: false, closed: true, fill: null, line: null, width: 0, picture }
  // Filled outlines all go round one way: joined, none takes away from another under the non-zero rule.
  const turned = closed && area(shape) < 0 ? [...shape].reverse() : shape
  return {
    runs: [curve ? smooth(turned, closed) : turned],
    bends: curve,
    closed,
    fill: fill === null ? null : PAPERS[fill],
    line: line ? PAPERS[lineColour] : null,
    width: lineWidth,
  }
}

const alike = (a: InkShape, b: InkShape): boolean =>
  a.picture === undefined &&
  b.picture === undefined &&
  a.bends === b.bends &&
  a.closed === b.closed &&
  a.fill === b.fill &&
  a.line === b.line &&
  a.width === b.width

/** Least across, least along, most across, most along, mm. */
export type FlatBox = readonly [x0: number, y0: number, x1: number, y1: number]

/** What a shape spans, half of its line's width aside. */
export function spanOf({ runs }: InkShape): FlatBox {
  let [x0, y0, x1, y1] = [Infinity, Infinity, -Infinity, -Infinity]
  for (const run of runs)
    for (const [x, y] of run) {
      x0 = Math.min(x0, x)
      x1 = Math.max(x1, x)
      y0 = Math.min(y0, y)
      y1 = Math.max(y1, y)
    }
  return [x0, y0, x1, y1]
}

const both = (a: FlatBox, b: FlatBox): FlatBox => [
  Math.min(a[0], b[0]),
  Math.min(a[1], b[1]),
  Math.max(a[2], b[2]),
  Math.max(a[3], b[3]),
]

const meet = (a: FlatBox, b: FlatBox, air: number): boolean =>
  a[0] < b[2] + air && b[0] < a[2] + air && a[1] < b[3] + air && b[1] < a[3] + air

/** Shapes do not grow by joining beyond this, mm: what is large is hard to put in perspective by one matrix. */
const LARGEST = 45

interface Joined {
  shape: InkShape
  span: FlatBox
}

/** Shapes that look alike become one, unless their lines would be covered or something lies between them. */
function joined(shapes: readonly InkShape[]): readonly InkShape[] {
  const out: Joined[] = []
  for (const shape of shapes) {
    const span = spanOf(shape)
    let at = out.length - 1
    let found: Joined | null = null
    for (; at >= 0 && !found; at--) {
      const one = out[at] as Joined
      const [x0, y0, x1, y1] = both(one.span, span)
      if (
        alike(one.shape, shape) &&
        (shape.fill === null || shape.line === null) &&
        Math.max(x1 - x0, y1 - y0) < LARGEST
      )
        found = one
      else if (meet(one.span, span, (one.shape.width + shape.width) / 2)) break
    }
    if (found) {
      found.shape = { ...found.shape, runs: [...found.shape.runs, ...shape.runs] }
      found.span = both(found.span, span)
    } else out.push({ shape, span })
  }
  return out.map(({ shape }) => shape)
}

const known = new WeakMap<readonly Art[], Map<string, PanelArt>>()

/** The art on one face of a panel; null where there is none. */
export function artOn({ art }: Design, panel: string, face: Art['face']): PanelArt | null {
  if (!art) return null
  let found = known.get(art)
  if (!found) {
    const lists = new Map<string, Art[]>()
    for (const one of art.filter(({ trace }) => !trace))
      for (const name of [one.on, ...one.also]) {
        const key = `${name} ${one.face}`
        const list = lists.get(key)
        if (list) list.push(one)
        else lists.set(key, [one])
      }
    found = new Map(
      [...lists].map(([key, list]) => [
        key,
        {
          shapes: joined(list.filter(({ glows }) => !glows).map(inkShape)),
          lit: joined(list.filter(({ glows }) => glows).map(inkShape)),
        },
      ]),
    )
    known.set(art, found)
  }
  return found.get(`${panel} ${face}`) ?? null
}
