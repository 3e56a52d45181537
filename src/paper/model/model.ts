import type { Design } from '../design/design.ts'
import type { Build, CreasePart, Fold, Hang, PieceLine, Side } from '../mechanisms/build.ts'
import type { Mechanism } from '../mechanisms/registry.ts'
import { kindOf } from '../mechanisms/registry.ts'
import { convexParts, overlapOf } from '../plane/convex.ts'
import type { Flat, Lay } from '../plane/lay.ts'
import { compose, isMirroring, laid, MIRROR, sameLay, throughLay } from '../plane/lay.ts'
import { areNear, extentOf } from '../plane/near.ts'
import { once } from '../plane/once.ts'

/** Where a crease lies in one of its two panels. */
export interface PanelLay {
  /** Index into `Model.panels`. */
  readonly panel: number
  readonly lay: Lay
}

export interface ModelCrease {
  readonly name: string
  /** Index into `Model.builds`; -1 for the gutter. */
  readonly owner: number
  readonly length: number
  readonly fold: Fold
  readonly left: PanelLay
  readonly right: PanelLay
  /** Indices of the mechanisms that sit on it. */
  readonly guests: number[]
  /** A frame that only carries a panel: no fold, and no place for a guest. */
  readonly hidden: boolean
}

export interface ModelPanel {
  readonly name: string
  /** Index into `Model.builds`; -1 for the card's own pages. */
  readonly owner: number
  /** The crease, and its side, whose flat coordinates the outline uses. */
  readonly crease: number
  readonly side: Side
  readonly outline: readonly Flat[]
  /** The flat piece it is part of (index into `Model.pieces`), and where: flat coordinates to x, y. */
  readonly piece: number
  readonly onPiece: Lay
  /**
   * How many layers of paper it lies off the plane of its frame, where it is stuck on another panel: above 0
   * towards the side that `frontOf` calls the front, 0 for what is folded or jointed. See `liftOf`.
   */
  readonly lift: number
  /** Its front is on the side that `frontOf` would call the back, were it not stuck on there. */
  readonly turned: boolean
  /** The panel that it is stuck on, if it is. */
  readonly stuckOn?: number
  /** What its guests took out, each an outline in this panel's coordinates. */
  readonly notches: { readonly owner: number; readonly outline: readonly Flat[] }[]
}

export interface ModelBuild {
  readonly mechanism: Mechanism
  readonly build: Build
  /** Index of the host crease: of a rider, the one its panel hangs on. */
  readonly host: number
  /** Index of the panel it sits on, for kinds that sit on one. */
  readonly hostPanel?: number
  /** Index of its first crease; the others follow in the order of `build.creases`. */
  readonly firstCrease: number
  readonly firstPanel: number
  /** Index of the crease whose tip rises. */
  readonly tipCrease: number
}

/** A flat piece of card: the card itself first, then every glued piece. */
export interface ModelPiece {
  readonly id: string
  /** Index into `Model.builds`; -1 for the card itself. */
  readonly owner: number
  readonly outline: readonly (readonly [x: number, y: number])[]
  readonly lines: readonly PieceLine[]
  /** It lies as its kind gives it, but for left and right changed: so that its front is seen. */
  readonly mirrored: boolean
}

/** Where a mechanism is glued: an outline, or an open line to tape along, in a panel's coordinates. */
export interface ModelGlue {
  readonly owner: number
  readonly panel: number
  /** The face of the panel that the glue is on, where it is stuck flat; of a joint `jointsOf` tells the faces. */
  readonly face?: 'front' | 'back'
  readonly outline: readonly Flat[]
  readonly closed: boolean
  /** A point off its joint, on the side where the tab lies. */
  readonly aside?: Flat
  /** The slit in the panel through which its tab goes to the other face. */
  readonly slit?: readonly [Flat, Flat]
}

/** A design put together, at no opening in particular. */
export interface Model {
  readonly design: Design
  readonly creases: readonly ModelCrease[]
  readonly panels: readonly ModelPanel[]
  readonly builds: readonly ModelBuild[]
  readonly pieces: readonly ModelPiece[]
  readonly glue: readonly ModelGlue[]
}

const turned: Record<Fold, Fold> = { mountain: 'valley', valley: 'mountain' }

const foldOf = (fold: CreasePart['fold'], host: Fold): Fold =>
  fold === 'as-host' ? host : fold === 'against-host' ? turned[host] : fold

/** A model that is being put together, with what later mechanisms can sit on by name. */
interface Unfinished {
  readonly creases: ModelCrease[]
  readonly panels: ModelPanel[]
  readonly builds: ModelBuild[]
  readonly pieces: ModelPiece[]
  readonly glue: ModelGlue[]
  readonly creaseByName: Map<string, number>
  readonly panelByName: Map<string, number>
}

/** What a new mechanism sits on, what it adds, and where its own parts will stand in the lists. */
interface Newcomer {
  readonly id: string
  readonly owner: number
  readonly build: Build
  /** Index of the host crease: of a rider, the one its panel hangs on. */
  readonly host: number
  readonly hostCrease: ModelCrease
  /** The panel it sits on, for kinds that sit on one. */
  readonly hostPanel: number | undefined
  /** Its pieces lie as its kind gives them, but for left and right changed. */
  readonly mirrored: boolean
  /** Its own panels, creases and pieces, by part. */
  readonly panel: ReadonlyMap<string, number>
  readonly crease: ReadonlyMap<string, number>
  readonly piece: ReadonlyMap<string, number>
}

/** Finds a panel a part hangs on: `host-left`, `host-right`, `host`, or one of the mechanism's own. */
function settle(hang: Hang, { hostCrease, hostPanel, panel: own }: Newcomer): PanelLay {
  const { left, right } = hostCrease
  if (hang.panel === 'host-left') return { panel: left.panel, lay: compose(left.lay, hang.lay) }
  if (hang.panel === 'host-right') return { panel: right.panel, lay: compose(right.lay, hang.lay) }
  const panel = hang.panel === 'host' ? hostPanel : own.get(hang.panel)
  if (panel === undefined) throw new RangeError(`there is no panel ${hang.panel}`)
  return { panel, lay: hang.lay }
}

/** How much nearer to what it is stuck on each piece stuck on a stuck piece lies than that one does. */
const FINER = 4

/**
 * On which side of its own plane a panel's front lies: 1 along C x - S n of its crease's frame (C x + S n of a left
 * panel), else -1. That points out of the crease on a right panel, into it on a left one; a valley's front is inside.
 */
export function frontSign({ creases }: Pick<Model, 'creases'>, { crease, side, turned }: ModelPanel): 1 | -1 {
  const inward = side === 'left'
  const mountain = creases[crease]?.fold === 'mountain'
  return (inward !== mountain) !== turned ? 1 : -1
}

/** Whether two outlines have paper in common. */
function overlaps(one: readonly Flat[], two: readonly Flat[]): boolean {
  return (
    areNear(extentOf(one), extentOf(two), 0) &&
    convexParts(one).some((a) => convexParts(two).some((b) => overlapOf(a, b) > 0))
  )
}

/**
 * On which side of its host panel a piece is stuck, and how far off it lies: one layer above all earlier
 * pieces on that side which it overlaps. What is stuck on such a piece again lies between it and the next.
 */
function stuckOn(
  panels: readonly ModelPanel[],
  host: number | undefined,
  outline: readonly Flat[],
  fromBack: boolean,
): Pick<ModelPanel, 'lift' | 'turned' | 'stuckOn'> {
  if (host === undefined) return { lift: 0, turned: false }
  const under = panels[host] as ModelPanel
  const turned = under.turned !== fromBack
  const beneath = panels.filter(
    (other) => other.stuckOn === host && other.turned === turned && overlaps(other.outline, outline),
  )
  let layer = 1
  for (let panel = under; panel.stuckOn !== undefined; panel = panels[panel.stuckOn] as ModelPanel)
    layer /= FINER
  const off = Math.max(0, ...beneath.map(({ lift }) => Math.abs(lift - under.lift))) + layer
  return { lift: under.lift + (turned ? -off : off), turned, stuckOn: host }
}

const notFound = (id: string, on: string) =>
  new RangeError(`${id} sits on ${on}, and there is no crease or panel ${on}`)

/** The card by itself: its gutter, its two pages, and the one piece that they are. */
function bareCard({ width, height }: Design['card']): Unfinished {
  const outline: readonly Flat[] = [
    [0, 0],
    [0, height],
    [width, height],
    [width, 0],
  ]
  const gutter: ModelCrease = {
    name: 'gutter',
    owner: -1,
    length: height,
    fold: 'valley',
    left: { panel: 0, lay: sameLay },
    right: { panel: 1, lay: sameLay },
    guests: [],
    hidden: false,
  }
  const page = { owner: -1, crease: 0, outline, piece: 0, lift: 0, turned: false }
  const card: ModelPiece = {
    id: 'card',
    owner: -1,
    outline: [
      [-width, 0],
      [width, 0],
      [width, height],
      [-width, height],
    ],
    lines: [],
    mirrored: false,
  }
  return {
    creases: [gutter],
    panels: [
      { ...page, name: 'page/left', side: 'left', onPiece: { ...sameLay, off: [-1, 0] }, notches: [] },
      { ...page, name: 'page/right', side: 'right', onPiece: sameLay, notches: [] },
    ],
    pieces: [card],
    builds: [],
    glue: [],
    creaseByName: new Map([['gutter', 0]]),
    panelByName: new Map([
      ['page/left', 0],
      ['page/right', 1],
    ]),
  }
}

/** Where the next mechanism sits, and where its parts will stand. Throws a RangeError if its host is missing. */
function newcomer(model: Unfinished, mechanism: Mechanism, owner: number): Newcomer {
  const { creases, panels, pieces, creaseByName, panelByName } = model
  const kind = kindOf(mechanism)
  const hostPanel = kind.sitsOn === 'panel' ? panelByName.get(mechanism.on) : undefined
  const host = kind.sitsOn === 'panel' ? panels[hostPanel ?? -1]?.crease : creaseByName.get(mechanism.on)
  if (host === undefined) throw notFound(mechanism.id, mechanism.on)
  const hostCrease = creases[host] as ModelCrease
  const build = kind.build(mechanism)
  const from = (parts: readonly { readonly part: string }[], first: number) =>
    new Map(parts.map(({ part }, k) => [part, first + k]))
  return {
    id: mechanism.id,
    owner,
    build,
    host,
    hostCrease,
    hostPanel,
    mirrored: liesMirrored(build, hostCrease, hostPanel, panels),
    panel: from(build.panels, panels.length),
    crease: from(build.creases, creases.length),
    piece: from(build.pieces ?? [], pieces.length),
  }
}

/** A piece's front is seen: on a face as the face's own is, on a fold by which way the fold goes. */
function liesMirrored(
  build: Build,
  host: ModelCrease,
  hostPanel: number | undefined,
  panels: readonly ModelPanel[],
): boolean {
  const under = panels[hostPanel ?? host.right.panel]?.onPiece ?? sameLay
  const { fromBack = false } = build
  if (hostPanel !== undefined) return isMirroring(under) !== fromBack
  const turns = [fromBack, host.fold === 'mountain', isMirroring(compose(under, host.right.lay))]
  return turns.filter(Boolean).length % 2 === 1
}

function addPieces({ pieces }: Unfinished, { id, owner, build, mirrored }: Newcomer): void {
  const flip = ([x, y]: readonly [number, number]): readonly [number, number] => [mirrored ? -x : x, y]
  for (const { part, outline, lines } of build.pieces ?? [])
    pieces.push({
      id: `${id}/${part}`,
      owner,
      outline: outline.map(flip),
      lines: lines.map((line) => ({ ...line, points: line.points.map(flip) })),
      mirrored,
    })
}

function addPanels({ panels, panelByName }: Unfinished, made: Newcomer): void {
  const { id, owner, build, host, hostPanel, mirrored } = made
  /** Where it lies flat: in its host's piece, or on a piece of its own card. */
  const flat = (hang: Hang): Pick<ModelPanel, 'piece' | 'onPiece'> => {
    const piece = made.piece.get(hang.panel)
    if (piece !== undefined) return { piece, onPiece: mirrored ? compose(MIRROR, hang.lay) : hang.lay }
    const { panel, lay } = settle(hang, made)
    const under = panels[panel]
    return { piece: under?.piece ?? 0, onPiece: under ? compose(under.onPiece, lay) : lay }
  }
  for (const panel of build.panels) {
    const name = `${id}/${panel.part}`
    const onHost = panel.crease === 'host'
    const crease = onHost ? host : made.crease.get(panel.crease)
    if (crease === undefined) throw new RangeError(`there is no crease ${panel.crease}`)
    panelByName.set(name, panels.length)
    panels.push({
      name,
      owner,
      crease,
      side: onHost && hostPanel !== undefined ? (panels[hostPanel]?.side ?? 'right') : panel.side,
      outline: panel.outline,
      ...flat(panel.flat),
      ...stuckOn(panels, hostPanel, panel.outline, build.fromBack ?? false),
      notches: [],
    })
  }
}

function addCreases({ creases, creaseByName }: Unfinished, made: Newcomer): void {
  const { id, owner, build, hostCrease } = made
  for (const { part, length, fold, left, right, hidden = false } of build.creases) {
    const name = `${id}/${part}`
    if (!hidden) creaseByName.set(name, creases.length)
    creases.push({
      name,
      owner,
      length,
      fold: foldOf(fold, hostCrease.fold),
      left: settle(left, made),
      right: settle(right, made),
      guests: [],
      hidden,
    })
  }
}

/** What it takes out of its host's panels, and where it is glued on them. */
function joinHost({ panels, glue }: Unfinished, made: Newcomer): void {
  const { owner, build, hostCrease, hostPanel } = made
  if (build.notch)
    for (const side of ['left', 'right'] as const) {
      const { panel, lay } = hostCrease[side]
      panels[panel]?.notches.push({ owner, outline: throughLay(lay, build.notch[side]) })
    }
  for (const { panel, outline, closed, face, aside, slit } of build.glue ?? []) {
    const on = settle({ panel, lay: sameLay }, made)
    glue.push({
      owner,
      panel: on.panel,
      ...(face ? { face } : {}),
      outline: throughLay(on.lay, outline),
      closed,
      ...(aside ? { aside: laid(on.lay, aside) } : {}),
      ...(slit ? { slit: [laid(on.lay, slit[0]), laid(on.lay, slit[1])] } : {}),
    })
  }
  if (hostPanel === undefined) hostCrease.guests.push(owner)
}

/** Puts a design together. Throws a RangeError if a host is missing: a parsed design never does. */
function assemble(design: Design): Model {
  const model = bareCard(design.card)
  design.mechanisms.forEach((mechanism, owner) => {
    const made = newcomer(model, mechanism, owner)
    const { build, host, hostPanel } = made
    const [firstCrease, firstPanel] = [model.creases.length, model.panels.length]
    addPieces(model, made)
    addPanels(model, made)
    addCreases(model, made)
    joinHost(model, made)
    model.builds.push({
      mechanism,
      build,
      host,
      ...(hostPanel === undefined ? {} : { hostPanel }),
      firstCrease,
      firstPanel,
      tipCrease: made.crease.get(build.tip.crease) ?? host,
    })
  })
  const { creases, panels, builds, pieces, glue } = model
  return { design, creases, panels, builds, pieces, glue }
}

/** The crease of a mechanism that carries its tip, by name; undefined if it has none of its own. */
export function ridgeOf(design: Design, id: string): string | undefined {
  const { builds, creases } = modelOf(design)
  const index = builds.findIndex(({ mechanism }) => mechanism.id === id)
  const crease = creases[builds[index]?.tipCrease ?? -1]
  return crease?.owner === index ? crease.name : undefined
}

/** How that crease is folded, seen from the front of its paper; undefined if it has none of its own. */
export function ridgeFold(design: Design, id: string): Fold | undefined {
  const name = ridgeOf(design, id)
  return modelOf(design).creases.find((crease) => crease.name === name)?.fold
}

/** The model of a design, put together once for each design object. */
export const modelOf: (design: Design) => Model = once(assemble)
