import type { Mechanism } from './registry.ts'
import { kindOf } from './registry.ts'
import type { Build, Card, Flat, Fold, Lay, Side } from './types.ts'
import { compose, sameLay } from './vector.ts'

/** A design as read from a file: every id is unique and every host stands before its guests. */
export interface Design {
  readonly hingebook: 1
  readonly title: string
  readonly card: Card
  readonly mechanisms: readonly Mechanism[]
}

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
}

export interface ModelPanel {
  readonly name: string
  /** Index into `Model.builds`; -1 for the card's own pages. */
  readonly owner: number
  /** The crease, and its side, whose flat coordinates the outline uses. */
  readonly crease: number
  readonly side: Side
  readonly outline: readonly Flat[]
  /** What its guests took out, each an outline in this panel's coordinates. */
  readonly notches: { readonly owner: number; readonly outline: readonly Flat[] }[]
}

export interface ModelBuild {
  readonly mechanism: Mechanism
  readonly build: Build
  /** Index of the host crease. */
  readonly host: number
  /** Index of its first crease; the others follow in the order of `build.creases`. */
  readonly firstCrease: number
  readonly firstPanel: number
  /** Index of the crease whose tip rises. */
  readonly tipCrease: number
}

/** A design put together, at no opening in particular. */
export interface Model {
  readonly design: Design
  readonly creases: readonly ModelCrease[]
  readonly panels: readonly ModelPanel[]
  readonly builds: readonly ModelBuild[]
}

const turned: Record<Fold, Fold> = { mountain: 'valley', valley: 'mountain' }

/** Finds a guest's panel: `host-left`, `host-right`, or one of its own by part. */
function settle(
  hang: { panel: string; lay: Lay },
  host: ModelCrease,
  own: ReadonlyMap<string, number>,
): PanelLay {
  if (hang.panel === 'host-left') return { panel: host.left.panel, lay: compose(host.left.lay, hang.lay) }
  if (hang.panel === 'host-right') return { panel: host.right.panel, lay: compose(host.right.lay, hang.lay) }
  const panel = own.get(hang.panel)
  if (panel === undefined) throw new RangeError(`a crease hangs on an unknown panel, ${hang.panel}`)
  return { panel, lay: hang.lay }
}

const throughLay = (lay: Lay, points: readonly Flat[]): Flat[] =>
  points.map(([across, along]) => [
    lay.origin[0] + along * lay.run[0] + across * lay.off[0],
    lay.origin[1] + along * lay.run[1] + across * lay.off[1],
  ])

/** Puts a design together. Throws a RangeError if a host is missing: a parsed design never does. */
function assemble(design: Design): Model {
  const { width, height } = design.card
  const page: readonly Flat[] = [
    [0, 0],
    [0, height],
    [width, height],
    [width, 0],
  ]
  const creases: ModelCrease[] = [
    {
      name: 'gutter',
      owner: -1,
      length: height,
      fold: 'valley',
      left: { panel: 0, lay: sameLay },
      right: { panel: 1, lay: sameLay },
      guests: [],
    },
  ]
  const panels: ModelPanel[] = [
    { name: 'page/left', owner: -1, crease: 0, side: 'left', outline: page, notches: [] },
    { name: 'page/right', owner: -1, crease: 0, side: 'right', outline: page, notches: [] },
  ]
  const builds: ModelBuild[] = []
  const creaseByName = new Map([['gutter', 0]])

  design.mechanisms.forEach((mechanism, index) => {
    const host = creaseByName.get(mechanism.on)
    const hostCrease = host === undefined ? undefined : creases[host]
    if (host === undefined || !hostCrease)
      throw new RangeError(`${mechanism.id} sits on ${mechanism.on}, which is no crease of an earlier mechanism`)
    const build = kindOf(mechanism).build(mechanism)
    const firstCrease = creases.length
    const firstPanel = panels.length
    const own = new Map(build.panels.map((panel, k) => [panel.part, firstPanel + k]))
    const creaseIndex = new Map(build.creases.map((crease, k) => [crease.part, firstCrease + k]))
    for (const crease of build.creases) {
      const name = `${mechanism.id}/${crease.part}`
      creaseByName.set(name, creases.length)
      creases.push({
        name,
        owner: index,
        length: crease.length,
        fold: crease.fold === 'as-host' ? hostCrease.fold : turned[hostCrease.fold],
        left: settle(crease.left, hostCrease, own),
        right: settle(crease.right, hostCrease, own),
        guests: [],
      })
    }
    for (const panel of build.panels)
      panels.push({
        name: `${mechanism.id}/${panel.part}`,
        owner: index,
        crease: creaseIndex.get(panel.crease) ?? host,
        side: panel.side,
        outline: panel.outline,
        notches: [],
      })
    if (build.notch)
      for (const side of ['left', 'right'] as const) {
        const { panel, lay } = hostCrease[side]
        panels[panel]?.notches.push({ owner: index, outline: throughLay(lay, build.notch[side]) })
      }
    hostCrease.guests.push(index)
    builds.push({
      mechanism,
      build,
      host,
      firstCrease,
      firstPanel,
      tipCrease: creaseIndex.get(build.tip.crease) ?? host,
    })
  })
  return { design, creases, panels, builds }
}

const made = new WeakMap<Design, Model>()

/** The model of a design, put together once for each design object. */
export function modelOf(design: Design): Model {
  let model = made.get(design)
  if (!model) {
    model = assemble(design)
    made.set(design, model)
  }
  return model
}

export { throughLay }
