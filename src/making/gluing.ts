import type { Design } from '../paper/design/design.ts'
import type { LineKind, Side } from '../paper/mechanisms/build.ts'
import { kindOf } from '../paper/mechanisms/registry.ts'
import type { Model, ModelCrease, ModelGlue, PanelLay } from '../paper/model/model.ts'
import { modelOf, ridgeFold } from '../paper/model/model.ts'
import { flatParts, pieces } from '../paper/model/pieces.ts'
import type { Poser } from '../paper/motion/pose.ts'
import { compile, SHUT } from '../paper/motion/pose.ts'
import type { Surface } from '../paper/motion/surface.ts'
import { frontOf } from '../paper/motion/surface.ts'
import { between, clip } from '../paper/plane/clip.ts'
import { convexParts } from '../paper/plane/convex.ts'
import type { Flat, Lay } from '../paper/plane/lay.ts'
import { laid, throughLay, unlaid } from '../paper/plane/lay.ts'
import { turned } from '../paper/plane/turn.ts'
import type { Vec3 } from '../paper/plane/vector.ts'
import { add, cross, dot, length, RADIANS, scale, subtract } from '../paper/plane/vector.ts'

/** How a mechanism of its own card is held while the glue dries (see `Stock`); null if it is cut from its host. */
export function heldBy(design: Design, id: string): 'joints' | 'walls' | 'face' | null {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  const { stock } = kindOf(m)
  return stock.from === 'own-card' ? stock.held : null
}

/** A crease that joins a mechanism's own card to its host. */
interface Joint {
  readonly crease: ModelCrease
  readonly side: Side
  readonly own: PanelLay
  readonly host: PanelLay
}

function jointsOf(model: Model, index: number): readonly Joint[] {
  const isOwn = ({ panel }: PanelLay): boolean => model.panels[panel]?.owner === index
  return model.creases.flatMap((crease): Joint[] => {
    const { owner, left, right } = crease
    if (owner !== index || isOwn(left) === isOwn(right)) return []
    return isOwn(left)
      ? [{ crease, side: 'right', own: left, host: right }]
      : [{ crease, side: 'left', own: right, host: left }]
  })
}

/** How a panel stands in space: origin, across, along, front. */
type PanelFrame = readonly [Vec3, Vec3, Vec3, Vec3]

function panelFrame({ model, frames, lift }: Poser, panel: number): PanelFrame {
  const origin = lift(panel, [0, 0])
  return [
    origin,
    subtract(lift(panel, [1, 0]), origin),
    subtract(lift(panel, [0, 1]), origin),
    frontOf(model, frames, panel),
  ]
}

/** What lies so in one place, brought into the other. */
function carried([from, a, b, c]: PanelFrame, [to, d, e, f]: PanelFrame) {
  const turn = (v: Vec3): Vec3 => add(add(scale(d, dot(v, a)), scale(e, dot(v, b))), scale(f, dot(v, c)))
  return { turn, move: (p: Vec3): Vec3 => add(to, turn(subtract(p, from))) }
}

/** An outline bent about its first edge, degrees: above 0 towards the side that `front` points to. */
function bent(outline: readonly Vec3[], front: Vec3, degrees: number): { points: Vec3[]; front: Vec3 } {
  const [at, end, far] = outline as [Vec3, Vec3, Vec3]
  const long = subtract(end, at)
  const way = scale(long, 1 / length(long))
  const sign = dot(cross(way, subtract(far, at)), front) < 0 ? -1 : 1
  const angle = sign * degrees * RADIANS
  return {
    points: outline.map((p) => turned(p, at, way, angle)),
    front: turned(front, [0, 0, 0], way, angle),
  }
}

/** How far a tab is bent back over its piece, degrees: nearly flat on it, but to be seen. */
const BACK = 158

/** Half the width of tape along a joint, mm. */
const TAPE = 6

const nextLeaf = (paper: readonly Surface[]): number => 1 + Math.max(-1, ...paper.map(({ leaf }) => leaf))

const all = (points: readonly unknown[]): boolean[] => points.map(() => true)

/** The joint's line in the own panel, and how far it keeps from the joint's ends. */
const strip = (lay: Lay, long: number, from: number, to: number): readonly Flat[] => {
  const inset = Math.min(TAPE, long / 4)
  return throughLay(lay, [
    [from, from < 0 ? inset : 0],
    [from, long],
    [to, long],
    [to, inset],
  ])
}

/** The tab of a joint where its panel would go on beyond it: what is glued on the page, on whichever side that lies there. */
function tabBeyond({ outline, aside = [0, 0] }: ModelGlue, own: PanelLay, page: PanelLay): readonly Flat[] {
  const away = unlaid(page.lay, aside)[0] > 0 ? -1 : 1
  return outline.map((flat) => {
    const [across, along] = unlaid(page.lay, flat)
    return laid(own.lay, [away * across, along])
  })
}

/** The paper with one mechanism lying folded on its host's left panel, as it would in the shut card. */
export function laidDown(paper: readonly Surface[], poser: Poser, index: number): readonly Surface[] {
  const { model } = poser
  const build = model.builds[index]
  const host = build && model.creases[build.host]
  if (!build || !host) return paper
  const shut = compile(model.design)
  shut(SHUT)
  const panel = host.left.panel
  const { turn, move } = carried(panelFrame(shut, panel), panelFrame(poser, panel))
  const down = paper.map((one): Surface => {
    if (one.owner !== index) return one
    const { front, points } = flatSurface(shut, one)
    return { ...one, points: points.map(move), front: turn(front) }
  })
  const joint = jointsOf(model, index).find(({ side }) => side === 'right')
  if (!joint) return down
  const { own, host: page, crease } = joint
  const front = frontOf(model, shut.frames, own.panel)
  const lifted = (outline: readonly Flat[]): Vec3[] => outline.map((flat) => shut.lift(own.panel, flat))
  // The tab is as wide as the glue that waits for it on the page.
  const glue = model.glue.find((one) => one.owner === index && one.panel === page.panel)
  const hasTab = glue?.closed === true
  const held = hasTab
    ? bent(lifted(tabBeyond(glue, own, page)), front, BACK)
    : { points: lifted(strip(own.lay, crease.length, -TAPE, TAPE)), front }
  const base = paper.find(({ leaf }) => leaf === own.panel)
  return [
    ...down,
    {
      panel: `${crease.name}/${hasTab ? 'tab' : 'tape'}`,
      owner: index,
      leaf: nextLeaf(paper),
      ...onFront(base),
      points: held.points.map(move),
      drawn: all(held.points),
      front: turn(held.front),
      ...(hasTab ? {} : { tape: true }),
    },
  ]
}

/** How paper lies that runs on from other paper, and what lies on the front of it. */
const asIs = ({ layer, over = 1 }: Pick<Surface, 'layer' | 'over'> = { layer: 0 }) => ({ layer, over })
function onFront(base?: Surface) {
  const { layer, over } = asIs(base)
  return { layer: layer + over, over }
}

/** The tabs of one mechanism, each in the plane of its panel: as wide as the glue that waits for it. */
export function straightTabs(paper: readonly Surface[], poser: Poser, index: number): readonly Surface[] {
  const { model } = poser
  let leaf = nextLeaf(paper)
  return jointsOf(model, index).flatMap(({ crease, own, host: page }): Surface[] => {
    const glue = model.glue.find((one) => one.owner === index && one.panel === page.panel)
    if (!glue?.closed) return []
    const points = tabBeyond(glue, own, page).map((flat) => poser.lift(own.panel, flat))
    return [
      {
        panel: `${crease.name}/tab`,
        owner: index,
        leaf: leaf++,
        ...asIs(paper.find((one) => one.leaf === own.panel)),
        points,
        drawn: all(points),
        front: frontOf(model, poser.frames, own.panel),
      },
    ]
  })
}

/** The same part of the paper at the opening that another poser posed last. */
function flatSurface(poser: Poser, { leaf, flat }: Surface): { points: Vec3[]; front: Vec3 } {
  return {
    points: (flat ?? []).map((p) => poser.lift(leaf, p)),
    front: frontOf(poser.model, poser.frames, leaf),
  }
}

/** The paper with what one mechanism puts over its place held off it by some mm: all but walls and joints. */
export function heldOff(
  paper: readonly Surface[],
  model: Model,
  index: number,
  off: number,
  riders: readonly number[] = [],
): readonly Surface[] {
  const moves = ({ owner, leaf }: Surface): boolean =>
    owner === index && model.creases[model.panels[leaf]?.crease ?? 0]?.hidden !== true
  const sum = paper.filter(moves).reduce<Vec3>((way, { front }) => add(way, front), [0, 0, 0])
  const way = scale(sum, off / (length(sum) || 1))
  const goes = (one: Surface): boolean => moves(one) || riders.includes(one.owner)
  return paper.map((one) => (goes(one) ? { ...one, points: one.points.map((p) => add(p, way)) } : one))
}

/** Tape along the joints of one mechanism: half of each strip on the host, half on the piece. */
export function tapes(paper: readonly Surface[], poser: Poser, index: number): readonly Surface[] {
  let leaf = nextLeaf(paper)
  return jointsOf(poser.model, index).flatMap(({ crease, own, host }) =>
    [host, own].map(({ panel, lay }): Surface => {
      const points = strip(lay, crease.length, 0, TAPE).map((flat) => poser.lift(panel, flat))
      const base = paper.find((one) => one.leaf === panel)
      return {
        panel: `${crease.name}/tape`,
        owner: index,
        leaf: leaf++,
        ...onFront(base),
        points,
        drawn: all(points),
        front: frontOf(poser.model, poser.frames, panel),
        tape: true,
      }
    }),
  )
}

/** Where a mechanism is glued on its host, as outlines or open lines in space, each with its leaf and its tab's slit. */
export function glueAreas(
  design: Design,
  through: readonly string[],
  id: string,
  opening: number,
): readonly { leaf: number; points: readonly Vec3[]; closed: boolean; slit: readonly Vec3[] }[] {
  const part: Design = {
    ...design,
    mechanisms: design.mechanisms.filter((m) => through.includes(m.id) || m.id === id),
  }
  const poser = compile(part)
  poser(Math.max(SHUT, opening))
  const index = part.mechanisms.findIndex((m) => m.id === id)
  return poser.model.glue
    .filter(({ owner }) => owner === index)
    .map(({ panel, outline, closed, slit = [] }) => ({
      leaf: panel,
      points: outline.map((flat) => poser.lift(panel, flat)),
      closed,
      slit: slit.map((flat) => poser.lift(panel, flat)),
    }))
}

/** A mechanism's own card before it is glued, lying on a table (z = 0), mm. */
export interface Loose {
  readonly paper: readonly Surface[]
  /** Fold lines and glue areas, each with the leaf it is drawn on. */
  readonly lines: readonly {
    readonly leaf: number
    readonly kind: LineKind
    readonly points: readonly Vec3[]
    readonly closed: boolean
    readonly of: string
  }[]
  /** The way that the outermost point took when the piece was folded. */
  readonly path: readonly Vec3[]
  /** Where the half that is folded over lay before. */
  readonly unfolded?: readonly Vec3[]
}

const APART = 14

/** Shifts for pieces side by side: the first behind, the others in a row before it; middles on x = 0. */
function rowsOf(outlines: readonly (readonly Flat[])[]): readonly Flat[] {
  const boxes = outlines.map((outline) => {
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)]
    return { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
  })
  const [first, ...rest] = boxes
  const wide = rest.reduce((sum, { x0, x1 }) => sum + x1 - x0, 0) + APART * (rest.length - 1)
  let x = -wide / 2
  return [
    ...(first ? [[-(first.x0 + first.x1) / 2, -first.y0] as const] : []),
    ...rest.map(({ x0, x1, y1 }): Flat => {
      const at: Flat = [x - x0, -APART - y1]
      x += x1 - x0 + APART
      return at
    }),
  ]
}

/** Shifts for many pieces: side by side in rows no wider than `wide`, each row before the last; middles on x = 0. */
function shelvesOf(outlines: readonly (readonly Flat[])[], wide: number): readonly Flat[] {
  const shifts: Flat[] = []
  let row: { x0: number; x1: number; y0: number; y1: number }[] = []
  let front = 0
  const long = () => row.reduce((sum, { x0, x1 }) => sum + x1 - x0, APART * (row.length - 1))
  const place = (): void => {
    let x = -long() / 2
    const deep = Math.max(...row.map(({ y0, y1 }) => y1 - y0))
    for (const { x0, x1, y0, y1 } of row) {
      shifts.push([x - x0, front - (deep + y0 + y1) / 2])
      x += x1 - x0 + APART
    }
    front -= deep + APART
    row = []
  }
  for (const outline of outlines) {
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)]
    const box = { x0: Math.min(...xs), x1: Math.max(...xs), y0: Math.min(...ys), y1: Math.max(...ys) }
    if (row.length > 0 && long() + APART + box.x1 - box.x0 > wide) place()
    row.push(box)
  }
  if (row.length > 0) place()
  return shifts
}

const onTable = ([x, y]: Flat): Vec3 => [x, y, 0]

/** The pieces lying flat, their fronts up: those of one mechanism, or of several in the order named. */
function lyingFlat(design: Design, ids: readonly string[]): Loose {
  const all = pieces(design)
  const own = ids.flatMap((id) => {
    const owner = design.mechanisms.findIndex((m) => m.id === id)
    return all.filter((piece) => piece.id.startsWith(`${id}/`)).map((piece) => ({ ...piece, owner }))
  })
  const outlines = own.map(({ outline }) => outline)
  const shifts = ids.length > 1 ? shelvesOf(outlines, 2 * design.card.width) : rowsOf(outlines)
  const at = (k: number, [x, y]: Flat): Vec3 =>
    onTable([x + (shifts[k]?.[0] ?? 0), y + (shifts[k]?.[1] ?? 0)])
  return {
    paper: own.flatMap(({ id: panel, owner, outline }, leaf) =>
      convexParts(outline).map(({ points, drawn }): Surface => {
        return {
          panel,
          owner,
          leaf,
          layer: 0,
          points: points.map((p) => at(leaf, p)),
          drawn,
          front: [0, 0, 1],
        }
      }),
    ),
    lines: own.flatMap(({ lines }, leaf) =>
      // The first line is the outline itself.
      lines.slice(1).map(({ kind, points, closed = false, of }) => ({
        leaf,
        kind,
        points: points.map((p) => at(leaf, p)),
        closed,
        of,
      })),
    ),
    path: [],
  }
}

/** Tabs of a flat piece: an outline each, its fold first, and the panel that carries it. */
const tabsOf = (
  lines: readonly { kind: LineKind; points: readonly Flat[]; closed?: boolean; of: string }[],
) =>
  lines.flatMap(({ kind, points, of }, k) => {
    const next = lines[k + 1]
    const [a, b] = points
    if (kind !== 'valley' || next?.kind !== 'glue' || next.of !== of || !a || !b) return []
    return [{ of, points: [a, b, ...next.points.slice(1, -1).reverse()] }]
  })

/** How wide the halves of a folded piece still gape, and how far the tabs of a wall are bent; degrees. */
const GAPE = 20

const BENT = 72

/** So many stretches make an arc that is drawn as large as it goes. */
export const ARC = 40

/** The piece folded over at its ridge: its left half on the table, the right one over it, the right tab bent back. */
function foldedOver(design: Design, owner: number, id: string): Loose {
  const piece = pieces(design).find((one) => one.id.startsWith(`${id}/`))
  if (!piece) return { paper: [], lines: [], path: [] }
  const model = modelOf(design)
  // A mountain closes away from its front: the piece lies on its front.
  const way = ridgeFold(design, id) === 'mountain' ? -1 : 1
  const hand = model.pieces.some(({ id: name, mirrored }) => name === piece.id && mirrored) ? -1 : 1
  const front: Vec3 = [0, 0, way]
  const put = ([x, y]: Flat): Vec3 => [way * x, y, 0]
  const axis: Vec3 = [0, 1, 0]
  const over = (p: Vec3, degrees = 180 - GAPE): Vec3 =>
    turned(p, [0, 0, 0], axis, -way * hand * degrees * RADIANS)
  let leaf = 0
  const numbers = new Map<string, number>()
  const paper = flatParts(design)
    .filter((part) => part.piece === piece.id)
    .map(({ panel, owner: of, points, drawn }): Surface => {
      if (!numbers.has(panel)) numbers.set(panel, leaf++)
      const right = points.reduce((sum, [x]) => sum + hand * x, 0) > 0
      const flat = points.map(put)
      return {
        panel,
        owner: of,
        leaf: numbers.get(panel) as number,
        layer: 0,
        points: right ? flat.map((p) => over(p)) : flat,
        drawn,
        front: right ? over(front) : front,
      }
    })
  const rights = jointsOf(model, owner).flatMap(({ side, crease }) => (side === 'right' ? [crease.name] : []))
  const tabs = tabsOf(piece.lines)
    .filter(({ of }) => rights.includes(of))
    .map(({ of, points }): Surface => {
      const tab = bent(points.map(put), front, BACK)
      const turnedOver = tab.points.map((p) => over(p))
      return {
        panel: `${of}/tab`,
        owner,
        leaf: leaf++,
        layer: 0,
        points: turnedOver,
        drawn: all(turnedOver),
        front: over(tab.front),
      }
    })
  const far = piece.outline.reduce<Flat>((best, p) => (hand * p[0] > hand * best[0] ? p : best), [0, 0])
  const path = Array.from({ length: 1 + ARC }, (_, k) => over(put(far), 4 + (k * (142 - 4)) / ARC))
  const { points } = clip(
    piece.outline,
    piece.outline.map(([x]) => hand * x),
    between,
    1e-6,
  )
  const unfolded = points.map(put)
  return { paper: [...paper, ...tabs], lines: [], path, unfolded }
}

/** Walls with their tabs bent up. */
function bentWalls(design: Design, owner: number, id: string): Loose {
  const own = pieces(design).filter(
    (piece) => piece.id.startsWith(`${id}/`) && tabsOf(piece.lines).length > 0,
  )
  // All in one row: none lies behind.
  const shifts = rowsOf([[], ...own.map(({ outline }) => outline)]).slice(1)
  const parts = flatParts(design)
  let leaf = 0
  const paper = own.flatMap(({ id: piece, lines }, k): Surface[] => {
    const put = ([x, y]: Flat): Vec3 => onTable([x + (shifts[k]?.[0] ?? 0), y + (shifts[k]?.[1] ?? 0)])
    const wall = leaf++
    const flat = parts.filter((part) => part.piece === piece)
    return [
      ...flat.map(
        ({ panel, points, drawn }): Surface => ({
          panel,
          owner,
          leaf: wall,
          layer: 0,
          points: points.map(put),
          drawn,
          front: [0, 0, 1],
        }),
      ),
      ...tabsOf(lines).map(({ of, points }): Surface => {
        const tab = bent(points.map(put), [0, 0, 1], BENT)
        return {
          panel: `${of}/tab`,
          owner,
          leaf: leaf++,
          layer: 0,
          points: tab.points,
          drawn: all(points),
          front: tab.front,
        }
      }),
    ]
  })
  return { paper, lines: [], path: [] }
}

/**
 * Glued mechanisms' own card on the table: flat (any number of mechanisms), or folded (the first one). Throws
 * a RangeError if one has none.
 */
export function loose(design: Design, ids: string | readonly string[], folded: boolean): Loose {
  const named = typeof ids === 'string' ? [ids] : ids
  for (const id of named)
    if (heldBy(design, id) === null)
      throw new RangeError(`${id} is cut from its host and has no piece of its own`)
  const [id = ''] = named
  const held = folded ? heldBy(design, id) : null
  const owner = design.mechanisms.findIndex((m) => m.id === id)
  if (held === 'joints') return foldedOver(design, owner, id)
  return held === 'walls' ? bentWalls(design, owner, id) : lyingFlat(design, named)
}
