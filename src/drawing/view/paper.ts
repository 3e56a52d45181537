import type { Design, Surface, Vec3 } from '../../paper/index.ts'
import { kindOf } from '../../paper/index.ts'
import { dot, unit } from '../../paper/plane/vector.ts'
import type { Mark, Paint, Point, Role } from '../pen/marks.ts'
import type { Lens } from './camera.ts'
import type { Part } from './order.ts'
import { paintOrder } from './order.ts'

/** A line drawn on one sheet of the paper, in space. */
export interface InkLine {
  readonly sheet: number
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

/** Where light comes from, seen by the reader: from the left, a little from the front, mostly from above. */
const LAMP: Vec3 = [-0.47, 0.3, 0.83]

const AMBIENT = 0.34

/** Unit vector to the lamp, in the table's frame. The lamp goes round with the reader. */
export function lampFor({ right }: Lens): Vec3 {
  // `right` is level, so (right.y, -right.x) points at the reader.
  const way: Vec3 = [
    LAMP[0] * right[0] + LAMP[1] * right[1],
    LAMP[0] * right[1] - LAMP[1] * right[0],
    LAMP[2],
  ]
  return unit(way)
}

/** How much light the side of a sheet that faces the eye gets, 0 to 1. */
const lightOn = (normal: Vec3, lamp: Vec3): number => AMBIENT + (1 - AMBIENT) * Math.max(0, dot(normal, lamp))

/** The drawn edges of a part as runs of points, as long as they go. */
function edgeRuns(part: Part, toScreen: Lens['toScreen']): Point[][] {
  const n = part.points.length
  const runs: Point[][] = []
  const first = part.drawn.indexOf(false)
  const start = first < 0 ? 0 : first + 1
  let run: Point[] = []
  for (let k = 0; k < n; k++) {
    const index = (start + k) % n
    if (!part.drawn[index]) {
      if (run.length > 1) runs.push(run)
      run = []
      continue
    }
    if (run.length === 0) run.push(toScreen(part.points[index] as Vec3))
    run.push(toScreen(part.points[(index + 1) % n] as Vec3))
  }
  if (run.length > 1) runs.push(run)
  return runs
}

/** All runs of a surface go round one way, so that none takes away from another under the non-zero rule. */
function clockwise(run: Point[]): Point[] {
  let area = 0
  run.forEach(([x, y], k) => {
    const [u, v] = run[(k + 1) % run.length] as Point
    area += x * v - u * y
  })
  return area < 0 ? run.reverse() : run
}

/**
 * The paper as the eye sees it: surfaces in painter's order, each followed by its edges and by what is
 * drawn on it. Colours go by the design; `place` brings a point of the card's frame into the table's.
 */
export function paperMarks(
  design: Design,
  paper: readonly Surface[],
  ink: readonly InkLine[],
  lens: Lens,
  place: (p: Vec3) => Vec3,
): readonly Mark[] {
  const parts: Part[] = paper.map((surface, from) => ({
    sheet: surface.sheet,
    points: surface.points.map(place),
    drawn: surface.drawn,
    layer: surface.layer,
    normal: place(surface.front),
    from,
  }))
  const sheets = new Map(
    parts.map(({ sheet, normal, layer = 0 }, from) => {
      const { owner = -1, tape = false } = paper[from] ?? {}
      return [sheet, { normal, layer, card: tape ? TAPE : cardOf(design, owner) }]
    }),
  )
  ink.forEach(({ sheet, points }, k) => {
    const { normal, layer = 0 } = sheets.get(sheet) ?? {}
    if (normal)
      parts.push({
        layer,
        sheet,
        points: points.map(place),
        drawn: [true, false],
        normal,
        from: paper.length + k,
        line: true,
      })
  })
  const lamp = lampFor(lens)
  const { eye, toScreen } = lens
  const marks: Mark[] = []
  let open: { sheet: number; runs: Point[][]; edges: Point[][] } | null = null
  for (const part of paintOrder(parts, eye)) {
    const p = part.points[0] as Vec3
    const front = dot(part.normal, [eye[0] - p[0], eye[1] - p[1], eye[2] - p[2]]) >= 0
    const paint: Paint = {
      card: sheets.get(part.sheet)?.card ?? 0,
      light: lightOn(front ? part.normal : [-part.normal[0], -part.normal[1], -part.normal[2]], lamp),
      face: front ? 'front' : 'back',
    }
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
    const edges = edgeRuns(part, toScreen)
    if (open && open.sheet === part.sheet) {
      // One path for neighbours of one sheet: no seam shows between them.
      open.runs.push(run)
      open.edges.push(...edges)
      continue
    }
    const of = (paper[part.from] as Surface).panel
    open = { sheet: part.sheet, runs: [run], edges: [...edges] }
    marks.push(
      { mark: 'path', runs: open.runs, closed: true, role: 'facet', paint, of },
      { mark: 'path', runs: open.edges, closed: false, role: 'edge', paint, of },
    )
  }
  return marks.filter((mark) => mark.mark !== 'path' || mark.runs.length > 0)
}

/** The shadow's shift for each mm of height: to the reader's right, and away. The lamp over the table hangs high. */
const SHIFT = [0.26, 0.16] as const

/** How far the lamp is spread, and how many of its places throw a shadow: together they make a soft one. */
const SPREAD = 0.2

const PLACES = 10

/** Evenly over the lamp's disc, by the golden angle. Source: Vogel 1979. */
const LAMP_PLACES: readonly (readonly [number, number])[] = Array.from({ length: PLACES }, (_, k) => {
  const radius = SPREAD * Math.sqrt((k + 0.5) / PLACES)
  const angle = k * Math.PI * (3 - Math.sqrt(5))
  return [radius * Math.cos(angle), radius * Math.sin(angle)]
})

/** How far a card that lies on the table still stands off it, mm: it is never quite flat. */
const LIFT = 3.5

/** The soft shadow on the table of outlines in the table's frame. */
export function shadowMarks(outlines: readonly (readonly Vec3[])[], lens: Lens): readonly Mark[] {
  const [rx, ry] = lens.right
  return LAMP_PLACES.map(([du, dv]): Mark => {
    const [sx, sy] = [SHIFT[0] * rx - SHIFT[1] * ry + du, SHIFT[0] * ry + SHIFT[1] * rx + dv]
    const runs = outlines.map((outline) => {
      return clockwise(
        outline.map(([x, y, z]) => lens.toScreen([x + sx * (z + LIFT), y + sy * (z + LIFT), 0])),
      )
    })
    return { mark: 'path', runs, closed: true, role: 'shadow' }
  })
}
