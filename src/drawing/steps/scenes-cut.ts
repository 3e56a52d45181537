import * as says from '../../../content/words/drawing/steps.ts'
import type { Making } from '../../making/making.ts'
import { foldsTogether, making } from '../../making/making.ts'
import type { Design, Surface, Vec3 } from '../../paper/index.ts'
import { jointsOf, kindOf, ownerOf, poseAt, ridgeOf, SHUT } from '../../paper/index.ts'
import { add, dot, length, RADIANS, subtract, unit } from '../../paper/plane/vector.ts'
import { angleText } from '../pen/numbers.ts'
import { lensFor } from '../view/camera.ts'
import { coverSurfaces } from '../view/cover.ts'
import type { InkLine } from '../view/paper.ts'
import type { Scene, Task } from './scene.ts'
import { ghostsOf, hatched, inked, inkOn, LIFTED, middle, pagePath, pushed, STEP_CAMERA } from './scene.ts'
import { nestedCutting, nestedReversing } from './scenes-nested.ts'

/** How far a strip is folded over: far enough to look folded, not so far that it looks glued down. */
export const OVER = 152

/** The paper turned inside out: what was the inside is now seen from outside. */
const insideOut = (paper: readonly Surface[]): readonly Surface[] =>
  paper.map((one) => ({ ...one, front: [-one.front[0], -one.front[1], -one.front[2]] }))

const farthest = (from: readonly Vec3[], to: readonly Vec3[]): number => {
  let best = 0
  let far = -1
  from.forEach((p, k) => {
    const q = to[k] as Vec3
    const d = Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2])
    if (d > far + 1e-6) [best, far] = [k, d]
  })
  return best
}

/** How much farther out than the paper an arrow goes that tells its way: so it ends before it meets its own start. */
const OUTSIDE = 1.1

/** The way that a folded strip took, outside of it: so that of two that meet in a slit each has its own. */
function foldPath(design: Design, state: Making, id: string, over: number): readonly Vec3[] {
  const at = (degrees: number): readonly Vec3[] =>
    making(design, { ...state, folds: { [id]: degrees } }).find(
      ({ panel }) => panel === `${id}/${over > 0 ? 'left' : 'right'}`,
    )?.points ?? []
  const corner = farthest(at(0), at(over))
  const point = (degrees: number): Vec3 => {
    const corners = at(degrees)
    return middle([corners[corner] ?? middle(corners), middle(corners)])
  }
  const centre = middle([point(0), point(Math.sign(over) * 180)])
  return Array.from({ length: 17 }, (_, k) =>
    add(centre, subtract(point(over * (0.04 + (0.92 * k) / 16)), centre), OUTSIDE),
  )
}

/** Lines of the strips that will be folded, not those that are cut. */
const foldsOf =
  ({ cut }: Task) =>
  (of: string, kind: string): boolean =>
    kind !== 'cut' && cut.some((id) => of.startsWith(`${id}/`))

/** How far a fold line lies in from the edge of its strip, mm: all of it on the strip, whose paper its ink must suit. */
const ON_STRIP = 0.9

/**
 * Fold lines at the edge of strips that are cut and lie in the card are drawn on those; where a strip is folded over at
 * its line, that is an edge by itself.
 */
function onStrips(ink: readonly InkLine[], paper: readonly Surface[], folded: readonly string[]): InkLine[] {
  return ink.flatMap((line): readonly InkLine[] => {
    const id = ownerOf(line.of ?? '')
    if (line.role === 'cut') return [line]
    if (folded.includes(id)) return []
    const strip = paper.filter(({ panel }) => panel === `${id}/${line.leaf === 0 ? 'left' : 'right'}`)
    const [first] = strip
    if (!first) return [line]
    const [a, b] = line.points
    const along = unit(subtract(b, a))
    const inward = subtract(middle(strip.flatMap(({ points }) => points)), a)
    const way = unit(add(inward, along, -dot(inward, along)))
    return [{ ...line, leaf: first.leaf, points: [add(a, way, ON_STRIP), add(b, way, ON_STRIP)] }]
  })
}

/** The pages where their gutter is drawn as a line: an edge along it would fill the gaps of its dashes. */
const withoutGutter = (paper: readonly Surface[]): readonly Surface[] =>
  paper.map((one) => ({
    ...one,
    drawn: one.drawn.map((isDrawn, k) => {
      const ends = [one.points[k], one.points[(k + 1) % one.points.length]]
      return isDrawn && !ends.every((p) => p && Math.hypot(p[0], p[2]) < ON_GUTTER)
    }),
  }))

/** A point this near to the gutter lies on it, mm. */
const ON_GUTTER = 0.01

export function flat({ design }: Task): Scene {
  return {
    paper: withoutGutter(making(design, { opening: 180, through: [], cut: [] })),
    ink: inkOn(design, 180, () => true),
    stand: 'gutter',
    opening: 180,
    over: [],
    says: says.flat,
  }
}

export function folding({ design }: Task): Scene {
  return {
    paper: making(design, { opening: LIFTED, through: [], cut: [] }),
    ink: inkOn(design, LIFTED, () => true),
    stand: 'left',
    opening: LIFTED,
    over: [{ role: 'hand', points: pagePath(design, 165, LIFTED + 8) }],
    says: says.folding,
  }
}

export function cutting(task: Task): Scene {
  if (task.cut.length === 0 && task.guests.length > 0) return nestedCutting(task)
  const { design, cut } = task
  const [slit] = inkOn(design, 0, (of, kind) => kind === 'cut' && cut.includes(of)).filter(
    ({ leaf }) => leaf === 1,
  )
  // The blades come from the fold, along the slit.
  const foot = slit && (slit.points[0][2] < slit.points[1][2] ? slit.points[0] : slit.points[1])
  const from = (back: number): Vec3 => [0, foot?.[1] ?? 0, (foot?.[2] ?? 0) - back]
  const paper = insideOut(making(design, { opening: 0, through: [], cut }))
  const isDrawn = (of: string, kind: string): boolean =>
    foldsOf(task)(of, kind) || (kind === 'cut' && cut.includes(of))
  return {
    paper,
    ink: onStrips(inkOn(design, 0, isDrawn), paper, []),
    cutsNow: true,
    stand: 'left',
    opening: SHUT,
    over: foot ? [{ role: 'hand', points: [from(0.26 * design.card.width), from(2)] }] : [],
    says: says.cutting,
  }
}

/** The strips that are folded over in the shut card, both layers as one. */
export const creasedIn = ({ design, cut }: Task): readonly string[] =>
  cut.filter((id) => foldsTogether(design, id))

/** The card shut with its lines outside, those strips folded over by so many degrees: below 0 to the back. */
export function foldedOver(task: Task, over: number): readonly Surface[] {
  const folds = Object.fromEntries(creasedIn(task).map((id) => [id, over]))
  return insideOut(making(task.design, { opening: 0, through: [], cut: task.cut, folds }))
}

/** Folded over to the front, or with the card turned over to the back. */
export function folded(task: Task, side: 'front' | 'back'): Scene {
  const { design, cut } = task
  const over = side === 'front' ? OVER : -OVER
  const lying: Making = { opening: 0, through: [], cut }
  const paper = foldedOver(task, over)
  return {
    paper,
    ink: onStrips(inkOn(design, 0, foldsOf(task)), paper, creasedIn(task)),
    stand: side === 'front' ? 'left' : 'right',
    opening: SHUT,
    over: creasedIn(task).map((id) => ({ role: 'hand', points: foldPath(design, lying, id, over) })),
    says: side === 'front' ? says.foldedToFront : says.foldedToBack,
  }
}

/** What lies in the pages is drawn so many times as large as the card, at most: it is still seen where that is. */
const CLOSE_BY = 1.9

export function reversing(task: Task): Scene {
  if (task.cut.length === 0 && task.guests.length > 0) return nestedReversing(task)
  const { design, cut, opening = 110 } = task
  const paper = making(design, { opening, through: [], cut })
  const popped = poseAt(design, opening)
  // One finger pushes one strip after the other: outlines and arrows of all would be a tangle.
  const over = cut.slice(0, 1).flatMap((id): Scene['over'] => {
    const ghosts = ghostsOf(popped.panels, id)
    const ridge = popped.creases[ridgeOf(design, id) ?? '']
    const strip = paper.find(({ panel }) => panel === `${id}/right`)
    const onGutter = strip?.points.filter((p) => Math.hypot(p[0], p[2]) < ON_GUTTER) ?? []
    if (!ridge || onGutter.length === 0) return ghosts
    const to = middle([ridge.start, ridge.end])
    return [...ghosts, { role: 'hand', points: pushed(middle(onGutter), to) }]
  })
  return {
    paper,
    ink: [],
    stand: 'gutter',
    opening,
    over,
    about: [
      ...over.flatMap(({ points }) => points),
      ...paper.flatMap(({ panel, points }) => (cut.includes(ownerOf(panel)) ? points : [])),
    ],
    closest: CLOSE_BY,
    says: says.reversing(angleText(opening, 0)),
  }
}

/** How far a card is still open that is being shut, degrees. */
const NEARLY_SHUT = 22

/** The upper page comes down; the hand is beside its free edge, over the table. */
export function shut({ design, through, opening = NEARLY_SHUT }: Task): Scene {
  return {
    paper: making(design, { opening, through, cut: [] }),
    ink: [],
    stand: 'left',
    opening,
    over: [
      {
        role: 'hand',
        points: pagePath(design, opening + 26, opening - 8, opening, { beyond: 11, along: 0.7 }),
      },
    ],
    says: says.shut,
  }
}

/** From the gutter of a shut card to where a thumb runs along it, and from its middle to where that begins, mm. */
const THUMB = { in: 7, from: 5, end: 3 } as const

/** Shut, and the fold rubbed down from its middle out to both ends. */
export function pressed({ design, through }: Task): Scene {
  const { height } = design.card
  const half = height / 2
  const rubbed = (way: 1 | -1): readonly Vec3[] =>
    [THUMB.from, half - THUMB.end].map((out): Vec3 => [0, half + way * out, THUMB.in])
  return {
    paper: making(design, { opening: SHUT, through, cut: [] }),
    ink: [],
    stand: 'left',
    opening: SHUT,
    over: ([1, -1] as const).map((way) => ({ role: 'hand', points: rubbed(way) })),
    says: says.pressed,
  }
}

/** How far a card is still open to its back that is folded the other way, degrees. */
const FOLDED_BACK = 84

/** The gutter worked the other way: a ridge, the inside of the pages without. */
export function ridged({ design, through, opening = FOLDED_BACK }: Task): Scene {
  const { width } = design.card
  const top = width * Math.cos((opening / 2) * RADIANS)
  const over = ([x, y, z]: Vec3): Vec3 => [x, y, top - z]
  const way = (side: 1 | -1): readonly Vec3[] =>
    Array.from({ length: 13 }, (_, k): Vec3 => {
      const half = ((opening + 74 - (66 * k) / 12) / 2) * RADIANS
      const reach = width + 9
      return over([side * reach * Math.sin(half), 0.3 * design.card.height, reach * Math.cos(half)])
    })
  return {
    paper: making(design, { opening, through, cut: [] }).map((one) => ({
      ...one,
      points: one.points.map(over),
      front: [-one.front[0], one.front[1], one.front[2]],
    })),
    ink: [],
    stand: 'gutter',
    opening,
    over: ([1, -1] as const).map((side) => ({ role: 'hand', points: way(side) })),
    says: says.ridged,
  }
}

/** How far a card is open that stands like a tent, and how far strips reach down from its gutter, mm. */
const TENT = 70

const STRIP = 14

/** Strips lie off the card so far that they are seen to lie on it, mm. */
const OFF = 0.8

/** Where nothing that is cut moves along the gutter: stretches of it, mm from the near edge. */
function still({ card, mechanisms }: Design): readonly (readonly [number, number])[] {
  const moving = mechanisms
    .filter((m) => m.on === 'gutter' && kindOf(m).stock.from !== 'own-card')
    .map((m) => kindOf(m).build(m).span)
    .sort(([a], [b]) => a - b)
  const ends = [0, ...moving.flat(), card.height]
  return ends.flatMap((from, k) => {
    const to = ends[k + 1]
    return k % 2 === 0 && to !== undefined && to - from > 4 ? [[from + 1, to - 1] as const] : []
  })
}

/** The card from behind: it stands on its edges, and strips of paper lie over its gutter. */
export function backing({ design, through, opening = TENT }: Task): Scene {
  const card = making(design, { opening, through, cut: [] })
  const half = (opening / 2) * RADIANS
  const top = design.card.width * Math.cos(half)
  const over = ([x, y, z]: Vec3): Vec3 => [-x, y, top - z]
  const pages = card.filter(({ panel }) => panel.startsWith('page/'))
  let leaf = 1 + Math.max(...card.map((one) => one.leaf))
  const strips = still(design).flatMap(([from, to]) =>
    ([-1, 1] as const).flatMap((side): Surface[] => {
      const page = pages.find(({ panel }) => panel === (side < 0 ? 'page/left' : 'page/right'))
      if (!page) return []
      const at = (out: number, y: number): Vec3 => [side * out * Math.sin(half), y, out * Math.cos(half)]
      const { front, owner } = page
      const points = [at(0, from), at(0, to), at(STRIP, to), at(STRIP, from)].map((p) => add(p, front, -OFF))
      return [
        {
          ...{ panel: 'gutter/strip', owner, leaf: leaf++, layer: 0, tape: true },
          ...{ points, drawn: [false, true, true, true], front },
        },
      ]
    }),
  )
  const turnedOver = [...card, ...strips].map(
    (one): Surface => ({
      ...one,
      points: one.points.map(over),
      front: [-one.front[0], one.front[1], -one.front[2]],
    }),
  )
  return { paper: turnedOver, ink: [], stand: 'gutter', opening, over: [], says: says.backing }
}

/** How far the card is held over its cover, mm. */
export const OVER_COVER = 40

/** The finished card so far over its cover, mm, and where that is glued. */
export function overCover(
  { design, through }: Task,
  opening: number,
  held: number,
): Pick<Scene, 'paper' | 'ink'> {
  const card = making(design, { opening, through, cut: [] })
  const cover = coverSurfaces(design, opening, 1 + Math.max(...card.map(({ leaf }) => leaf)))
  const [left, right] = cover
  if (!left || !right)
    throw new RangeError('a step that shows covering needs a card with a cover, and there is none')
  const half = (opening / 2) * RADIANS
  const rim = jointsOf(design).flatMap(({ of, host }) => {
    if (host.piece !== 'cover') return []
    const {
      leaf,
      points: [corner],
    } = of === left.panel ? left : right
    const outline = host.points.map(
      ([x, y]): Vec3 => [x * Math.sin(half), y, Math.abs(x) * Math.cos(half) + (corner?.[2] ?? 0)],
    )
    return [
      ...inked(leaf, 'place', [...outline, ...outline.slice(0, 1)], of, 'front'),
      ...hatched(leaf, outline, of),
    ]
  })
  const up = ([x, y, z]: Vec3): Vec3 => [x, y, z + held]
  return {
    paper: [...cover, ...card.map((one) => ({ ...one, points: one.points.map(up) }))],
    ink: seenBeside(design, rim, opening, held),
  }
}

/** Lines under the card are cut into stretches of this length, mm. */
const STRETCH = 1.5

/** Of lines on the cover what is seen beside the card, not through what is cut in it: there it would pass for glue. */
function seenBeside(
  { card }: Design,
  lines: readonly InkLine[],
  opening: number,
  held: number,
): readonly InkLine[] {
  const half = (opening / 2) * RADIANS
  const { eye } = lensFor({
    card,
    camera: STEP_CAMERA,
    size: { width: 1, height: 1 },
    points: [[0, 0, 0]],
    padding: 0,
  })
  const isHidden = (p: Vec3): boolean =>
    [-1, 1].some((side) => {
      const across: Vec3 = [side * Math.sin(half), 0, Math.cos(half)]
      const front: Vec3 = [-side * Math.cos(half), 0, Math.sin(half)]
      const to = subtract(eye, p)
      const t = dot(subtract([0, 0, held], p), front) / dot(to, front)
      const [x, y, z] = add(p, to, t)
      const out = dot([x, y, z - held], across)
      return t > 0 && out >= 0 && out <= card.width && y >= 0 && y <= card.height
    })
  return lines.flatMap((line) => {
    const [a, b] = line.points
    const way = subtract(b, a)
    const count = Math.max(1, Math.ceil(length(way) / STRETCH))
    const at = (k: number): Vec3 => add(a, way, k / count)
    const runs: [number, number][] = []
    for (let k = 0; k < count; k++) {
      if (isHidden(add(a, way, (k + 0.5) / count))) continue
      const last = runs.at(-1)
      if (last?.[1] === k) last[1] = k + 1
      else runs.push([k, k + 1])
    }
    return runs.map(([from, to]): InkLine => ({ ...line, points: [at(from), at(to)] }))
  })
}

/** The finished card over its cover, and where that is glued. */
export function covering(task: Task): Scene {
  const {
    design: { card },
    opening = 150,
  } = task
  const half = (opening / 2) * RADIANS
  const edge = (z: number): Vec3 => [
    card.width * Math.sin(half),
    card.height / 2,
    card.width * Math.cos(half) + OVER_COVER + z,
  ]
  return {
    ...overCover(task, opening, OVER_COVER),
    stand: 'gutter',
    opening,
    over: [{ role: 'hand', points: [edge(-3), edge(6 - OVER_COVER)] }],
    says: says.covering,
  }
}

/** The same with its cover behind it. */
export const inCover = (scene: Scene, design: Design): Scene => ({
  ...scene,
  paper: [
    ...coverSurfaces(design, scene.opening, 1 + Math.max(...scene.paper.map(({ leaf }) => leaf))),
    ...scene.paper,
  ],
})

export function open({ design, through, opening = 96 }: Task): Scene {
  return {
    paper: making(design, { opening, through, cut: [] }),
    ink: [],
    stand: 'gutter',
    opening,
    over: [],
    says: says.open(angleText(opening, 0)),
  }
}
