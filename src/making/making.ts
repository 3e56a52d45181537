import type { Design } from '../paper/design/design.ts'
import type { Build, LineKind, Side } from '../paper/mechanisms/build.ts'
import { kindOf } from '../paper/mechanisms/registry.ts'
import type { Model, ModelCrease } from '../paper/model/model.ts'
import { modelOf } from '../paper/model/model.ts'
import type { Stacking } from '../paper/model/patches.ts'
import { stackingOf } from '../paper/model/patches.ts'
import { baseOf } from '../paper/motion/base.ts'
import type { Poser } from '../paper/motion/pose.ts'
import { compile, SHUT } from '../paper/motion/pose.ts'
import type { Surface } from '../paper/motion/surface.ts'
import { frontOf, surfaces } from '../paper/motion/surface.ts'
import { convexParts } from '../paper/plane/convex.ts'
import type { Flat, Lay } from '../paper/plane/lay.ts'
import { throughLay } from '../paper/plane/lay.ts'
import { turned } from '../paper/plane/turn.ts'
import type { Vec3 } from '../paper/plane/vector.ts'
import { cross, dot, RADIANS, subtract } from '../paper/plane/vector.ts'
import { heldOff, laidDown, straightTabs, tapes } from './gluing.ts'

/** How far the making has come. */
export interface Making {
  /** Degrees, 0 shut to 180 flat. */
  readonly opening: number
  /** Ids that have been pushed through to the inside; a guest only together with its host. */
  readonly through: readonly string[]
  /** Ids that are cut but still lie in their host. What is in neither list is not cut yet. */
  readonly cut: readonly string[]
  /**
   * Degrees by which some of the `cut` ones are folded about their fold lines, both layers of the shut
   * card together: above 0 towards the outside of the right page, below 0 towards that of the left page.
   */
  readonly folds?: Readonly<Record<string, number>>
  /**
   * Ids of glued mechanisms with two joints that lie folded on their host's left panel: as in the shut card,
   * the left joint on its line, the right half on the left one, and what will hold the right joint on top.
   */
  readonly lying?: readonly string[]
  /** Ids of glued mechanisms held off their place, mm: a piece over its face, a platform over its walls. */
  readonly lifted?: Readonly<Record<string, number>>
  /** Ids of glued mechanisms with tape along their joints. */
  readonly taped?: readonly string[]
  /** Ids of glued mechanisms whose tabs are not bent yet: they go on straight from the joints. */
  readonly straight?: readonly string[]
}

/** Two flat points nearer than this are one, mm. */
const ONE_POINT = 1e-6

/** Whether a mechanism (index) stands on another one, or on what stands on that. */
function standsOn(model: Model, owner: number, other: number): boolean {
  for (let at = baseOf(model, owner); at >= 0; at = baseOf(model, at)) if (at === other) return true
  return false
}

/** Where the fold line of one side lies in the host's panel; null if this kind has none there. */
function foldLay(build: Build, side: Side): Lay | null {
  const panel = `host-${side}`
  for (const { left, right } of build.creases) {
    if (left.panel === panel) return left.lay
    if (right.panel === panel) return right.lay
  }
  return null
}

/** Whether the fold lines of both layers lie on one another in the shut card, so that they can be creased as one. */
export function foldsTogether(design: Design, id: string): boolean {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  const build = kindOf(m).build(m)
  const [left, right] = [foldLay(build, 'left'), foldLay(build, 'right')]
  if (!left || !right) return false
  const apart = (a: readonly number[], b: readonly number[]) =>
    Math.hypot((a[0] as number) - (b[0] as number), (a[1] as number) - (b[1] as number))
  return apart(left.origin, right.origin) < ONE_POINT && apart(left.run, right.run) < ONE_POINT
}

/** The same model with the notches of mechanisms that are cut, but not through, taken out of their hosts. */
function withHoles(model: Model, loose: readonly { build: Build; host: ModelCrease }[]): Model {
  const panels = model.panels.map((panel) => ({ ...panel, notches: [...panel.notches] }))
  for (const { build, host } of loose)
    if (build.notch)
      for (const side of ['left', 'right'] as const)
        panels[host[side].panel]?.notches.push({
          owner: -1,
          outline: throughLay(host[side].lay, build.notch[side]),
        })
  return { ...model, panels }
}

/**
 * The paper in space while the card is being made: some mechanisms pushed through, some only cut, lying
 * in their host or folded over with the card shut.
 *
 * Idealisation: the two layers of a folded strip turn as one about the fold line of the layer that they
 * fold towards; the other layer's fold line stays behind by the gap between the pages (see SHUT).
 * Throws a RangeError if a strip is to be folded and the card is not shut, or if the two layers' fold
 * lines do not lie on one another.
 */
export function making(design: Design, state: Making): readonly Surface[] {
  const { through, cut, folds = {}, lying = [], lifted = {}, taped = [], straight = [] } = state
  if (Object.values(folds).some((fold) => fold !== 0) && state.opening > 1)
    throw new RangeError(
      `both layers fold over together only in the shut card, not at ${state.opening} degrees`,
    )
  const part: Design = {
    ...design,
    mechanisms: design.mechanisms.filter((m) => through.includes(m.id) || lying.includes(m.id)),
  }
  const whole = modelOf(part)
  const loose = design.mechanisms.flatMap((m, owner) => {
    const host = whole.creases.find((crease) => crease.name === m.on)
    return cut.includes(m.id) && host ? [{ id: m.id, owner, host, build: kindOf(m).build(m) }] : []
  })
  const poser = compile(part)
  poser(Math.max(SHUT, state.opening))
  const open: Poser = Object.assign((opening: number) => poser(opening), {
    model: withHoles(whole, loose),
    frames: poser.frames,
    lift: poser.lift,
  })
  const owners = part.mechanisms.map((m) => design.mechanisms.indexOf(m))
  const index = (id: string): number => part.mechanisms.findIndex((m) => m.id === id)
  let found: readonly Surface[] = surfaces(open)
  for (const id of lying) found = laidDown(found, poser, index(id))
  for (const id of straight) found = [...found, ...straightTabs(found, poser, index(id))]
  for (const [id, off] of Object.entries(lifted)) {
    const riders = part.mechanisms.flatMap((m, k) =>
      m.id in lifted || !standsOn(whole, k, index(id)) ? [] : [k],
    )
    found = heldOff(found, whole, index(id), off, riders)
  }
  for (const id of taped) found = [...found, ...tapes(found, poser, index(id))]
  const paper = found.map((one) => ({ ...one, owner: one.owner < 0 ? -1 : (owners[one.owner] as number) }))
  let leaf = 1 + Math.max(...found.map((one) => one.leaf))
  for (const { id, owner, host, build } of loose) {
    if (!build.notch) continue
    const fold = folds[id] ?? 0
    if (fold !== 0 && !foldsTogether(design, id))
      throw new RangeError(`the fold lines of ${id} do not lie on one another in the shut card`)
    const toward: Side = fold < 0 ? 'left' : 'right'
    const hinge = fold === 0 ? null : hingeOf(poser, host, build, toward)
    for (const side of ['left', 'right'] as const) {
      const { panel, lay } = host[side]
      const front = frontOf(whole, poser.frames, panel)
      const place = (p: Vec3): Vec3 =>
        hinge ? turned(p, hinge.origin, hinge.way, fold * hinge.sign * RADIANS) : p
      for (const { points, drawn } of convexParts(throughLay(lay, build.notch[side])))
        paper.push({
          panel: `${id}/${side}`,
          owner,
          leaf,
          ...(stackingOf(whole)[whole.panels[panel]?.piece ?? 0] as Stacking),
          points: points.map((flat) => place(poser.lift(panel, flat))),
          drawn,
          front: hinge ? turned(front, [0, 0, 0], hinge.way, fold * hinge.sign * RADIANS) : front,
        })
      leaf++
    }
  }
  return paper
}

/**
 * The line about which a strip folds over, on the layer that it folds towards. `sign` makes a turn by a
 * positive angle go to the outside of the right page, by a negative one to that of the left page.
 */
function hingeOf(poser: Poser, host: ModelCrease, build: Build, toward: Side) {
  const { panel, lay: hostLay } = host[toward]
  const fold = foldLay(build, toward)
  if (!fold) return null
  const { origin, run, off } = fold
  // A crease's "across" leads away from the strip, into the rest of the host.
  const flat: readonly Flat[] = [
    origin,
    [origin[0] + run[0], origin[1] + run[1]],
    [origin[0] - off[0], origin[1] - off[1]],
  ]
  const [at, along, strip] = throughLay(hostLay, flat).map((one) => poser.lift(panel, one)) as [
    Vec3,
    Vec3,
    Vec3,
  ]
  const way = subtract(along, at)
  // A small turn about `way` moves the strip along way x (strip - at): is that the paper's back, its outside?
  const outwards = dot(cross(way, subtract(strip, at)), frontOf(poser.model, poser.frames, panel)) < 0
  return { origin: at, way, sign: outwards === (toward === 'right') ? 1 : -1 }
}

/** A line of a guest that is cut from its host, as it lies in the host; mm. */
export interface GuestLine {
  /** The host's panel it lies on (see Surface). */
  readonly leaf: number
  readonly side: Side
  readonly kind: LineKind
  readonly points: readonly Vec3[]
  readonly of: string
}

/** The cuts and folds of a guest that still lies in its host, in space. */
export function guestLines(design: Design, state: Making, id: string): readonly GuestLine[] {
  const m = design.mechanisms.find((one) => one.id === id)
  if (!m) throw new RangeError(`there is no mechanism ${id}`)
  const part: Design = {
    ...design,
    mechanisms: design.mechanisms.filter((one) => state.through.includes(one.id)),
  }
  const whole = modelOf(part)
  const host = whole.creases.find((crease) => crease.name === m.on)
  if (!host) return []
  const poser = compile(part)
  poser(Math.max(SHUT, state.opening))
  const folds = new Map(modelOf(design).creases.map(({ name, fold }) => [name, fold]))
  const build = kindOf(m).build(m)
  return (['left', 'right'] as const).flatMap((side): GuestLine[] => {
    const { panel, lay } = host[side]
    const line = (kind: LineKind, points: readonly Flat[], of: string): GuestLine => ({
      leaf: panel,
      side,
      kind,
      points: throughLay(lay, points).map((flat) => poser.lift(panel, flat)),
      of,
    })
    return [
      ...build.cuts[side].map((points) => line('cut', points, id)),
      ...build.creases.flatMap(({ part: name, length, left, right }): GuestLine[] => {
        const own = [left, right].find((hang) => hang.panel === `host-${side}`)
        if (!own) return []
        const { origin, run } = own.lay
        const end: Flat = [origin[0] + length * run[0], origin[1] + length * run[1]]
        const crease = `${id}/${name}`
        return [line(folds.get(crease) ?? 'valley', [origin, end], crease)]
      }),
    ]
  })
}
