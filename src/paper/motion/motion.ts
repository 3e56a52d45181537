import type { Model, ModelBuild } from '../model/model.ts'
import type { Frame } from '../plane/frame.ts'
import { emptyFrame, uprightFrame } from '../plane/frame.ts'
import type { Flat } from '../plane/lay.ts'
import { halfAngleInto, RADIANS } from '../plane/vector.ts'
import type { Chain, Reach, Step } from './chain.ts'
import { chainFrom, hingesOf, WORLD } from './chain.ts'
import type { Poser } from './pose.ts'
import { checkOpening } from './pose.ts'
import { turnsOf } from './turning.ts'

/*
 * How far the moving model can be from straight lines: the ground on which the checks of the motion stand.
 *
 * Between two openings, a radians apart, a point at p with |p''| <= bend keeps within bend a² / 8 of the
 * straight line between its two places, and within bend / 2 · t (a - t) at the time t. (Linear
 * interpolation, the standard remainder.) So two poses and a bound on the second derivative say where the
 * point can be at every opening in between. Nothing here is sampled.
 *
 * The bounds climb the chain of creases. In a frame fixed to one panel (the root), let a panel P have
 * angular velocity |w| <= spin and angular acceleration <= jerk, and let its crease c turn at a rate r with
 * |r| <= r1, |r'| <= r2. A unit direction e of the panel Q beyond c, square to c, is in P a unit vector on a
 * circle: |e'| <= r1, |e''| <= hypot(r2, r1²). Adding the motion of P (Coriolis and the rest):
 *
 *   |e''| <= jerk + spin² + 2 spin r1 + hypot(r2, r1²)
 *   spin of Q <= spin + r1          jerk of Q <= jerk + r2 + spin r1
 *
 * and a point of Q at t across and s along from an end o of c has |p''| <= |o''| + t |e''| + s |d''|; of c's
 * two ends we take the one that gives less, so that a point on two creases is known to stand still.
 * The rates r1, r2 come from `Build.turns`, that is from each mechanism's closed form.
 */

/** Flat points of one panel, packed as across, along. */
export interface Body {
  readonly panel: number
  readonly flat: Float64Array
}

export const bodyOf = (panel: number, points: readonly Flat[]): Body => ({
  panel,
  flat: Float64Array.from(points.flat()),
})

/** A pose that is kept. What nobody asks about is not posed. */
export interface Still {
  /** Degrees. */
  readonly opening: number
  /** The frame of a crease, by index. */
  frame(crease: number): Frame
  /** A crease's inside angle, radians. */
  angle(crease: number): number
  /** Where a body's points are in space, packed as x, y, z; mm. */
  places(body: Body): Float64Array
}

/** The motion between two stills. */
export interface Stretch {
  readonly from: Still
  readonly to: Still
  /** Radians of opening. */
  readonly width: number
  /** Bounds on |p''| of a body's points, mm per radian², seen from a root: a panel's index, or `WORLD`. */
  bends(root: number, body: Body, to?: Float64Array): Float64Array
  /** The same for y alone, seen from the world: a panel that turns about directions along y keeps its y. */
  bendsAlongY(body: Body): Float64Array
  /** Bounds on how fast a panel turns, seen from a root: radians per radian of opening, and their change per radian. */
  turns(root: number, panel: number): readonly [spin: number, jerk: number]
}

/** Two stills and how far they are apart, in radians of opening. */
type Between = Pick<Stretch, 'from' | 'to' | 'width'>

export interface Motion {
  readonly model: Model
  /** The pose at an opening in degrees; asked for twice, it is posed once. */
  still(opening: number): Still
  stretch(from: Still, to: Still): Stretch
}

/**
 * Bounds by panel, six numbers each: |p''| at the origin and at the end of the crease by which it is
 * reached, |e''| and |d''|, then spin and jerk.
 */
type Bend = Float64Array

const [ORIGIN, END, ACROSS, ALONG, SPIN, JERK, SIX] = [0, 1, 2, 3, 4, 5, 6] as const

const angleOf = (frame: Frame): number => 2 * Math.atan2(frame[12] as number, frame[13] as number)

/**
 * Bounds on |angle'| and |angle''| of one mechanism's creases between two stills, by the opening in radians,
 * in pairs; its host's must stand in `rates` already.
 */
function ratesOf(
  { build, host, firstCrease }: ModelBuild,
  { from, to, width }: Between,
  rates: Float64Array,
  turns: Float64Array,
): void {
  const rate = rates[2 * host] as number
  const change = rates[2 * host + 1] as number
  const bounds = turnsOf(build)
  if (bounds) {
    // The host's angle may leave the range between its two ends, but not by more than its rate allows.
    const a = from.angle(host)
    const b = to.angle(host)
    const spare = Math.max(0, (rate * width - Math.abs(b - a)) / 2)
    const [low, high] = [Math.min(a, b) - spare, Math.max(a, b) + spare]
    // A host that is bent past shut turns its guests as it does bent as far the right way.
    bounds(Math.max(0, low, -high), Math.max(high, -low), turns)
  } else turns.fill(Number.POSITIVE_INFINITY)
  for (let k = 0; k < build.creases.length; k++) {
    const first = turns[2 * k] as number
    const second = turns[2 * k + 1] as number
    rates[2 * (firstCrease + k)] = first * rate
    rates[2 * (firstCrease + k) + 1] = second * rate * rate + first * change
  }
}

/** The bound at a point of the panel whose bounds begin at `p`: from the end of its entry that serves better. */
function bendAt(bend: Bend, p: number, { across, fromOrigin, fromEnd }: Reach): number {
  const d = bend[p + ALONG] as number
  const near = Math.min(
    (bend[p + ORIGIN] as number) + fromOrigin * d,
    (bend[p + END] as number) + fromEnd * d,
  )
  return near + across * (bend[p + ACROSS] as number)
}

/** The bounds of a root itself: seen from the world, each page turns about the gutter by half the opening. */
function bendOfRoot(root: number, panel: number, to: Bend): void {
  // All else is nought, and stays so.
  if (root !== WORLD) return
  to[SIX * panel + SPIN] = 0.5
  to[SIX * panel + ACROSS] = 0.25
}

/** The bounds of a panel, one step beyond another whose bounds are known. */
function bendBeyond(step: Step, panel: number, rates: Float64Array, to: Bend): void {
  const p = SIX * step.panel
  const q = SIX * panel
  const e = to[p + ACROSS] as number
  const d = to[p + ALONG] as number
  const w = to[p + SPIN] as number
  const j = to[p + JERK] as number
  to[q + ORIGIN] = bendAt(to, p, step.origin)
  to[q + END] = bendAt(to, p, step.end)
  to[q + ALONG] = step.runAcross * e + step.runAlong * d
  if (step.crease < 0) {
    to[q + ACROSS] = step.offAcross * e + step.offAlong * d
    to[q + SPIN] = w
    to[q + JERK] = j
  } else {
    const r1 = rates[2 * step.crease] as number
    const r2 = rates[2 * step.crease + 1] as number
    to[q + ACROSS] = j + w * w + 2 * w * r1 + Math.sqrt(r2 * r2 + r1 * r1 * r1 * r1)
    to[q + SPIN] = w + r1
    to[q + JERK] = j + r2 + w * r1
  }
}

/** The same along y alone, given the bounds from the world: y is square to every turn of an upright panel. */
function bendAlongY(step: Step, panel: number, whole: Bend, to: Bend): void {
  const p = SIX * step.panel
  const q = SIX * panel
  if (step.upright) {
    to.fill(0, q, q + SIX)
    return
  }
  const e = to[p + ACROSS] as number
  const d = to[p + ALONG] as number
  to[q + ORIGIN] = bendAt(to, p, step.origin)
  to[q + END] = bendAt(to, p, step.end)
  to[q + ALONG] = step.runAcross * e + step.runAlong * d
  to[q + ACROSS] = whole[q + ACROSS] as number
}

/** The bound for each point of a body. */
function bendsOf(
  { entry, length: lengthOf }: Chain,
  bend: Bend,
  { panel, flat }: Body,
  to: Float64Array,
): Float64Array {
  const { origin, run, off } = entry(panel)
  const length = lengthOf(panel)
  const o = bend[SIX * panel + ORIGIN] as number
  const u = bend[SIX * panel + END] as number
  const e = bend[SIX * panel + ACROSS] as number
  const d = bend[SIX * panel + ALONG] as number
  for (let i = 0, k = 0; i < flat.length; i += 2, k++) {
    const a = (flat[i] as number) - origin[0]
    const l = (flat[i + 1] as number) - origin[1]
    const s = a * run[0] + l * run[1]
    to[k] =
      Math.min(o + Math.abs(s) * d, u + Math.abs(s - length) * d) + Math.abs(a * off[0] + l * off[1]) * e
  }
  return to
}

/** Where the points of a body are, given the frames. */
function placed({ panels }: Model, frame: Still['frame'], { panel, flat }: Body): Float64Array {
  const { crease, side } = panels[panel] as Model['panels'][number]
  const f = frame(crease)
  const S = (side === 'left' ? -1 : 1) * (f[12] as number)
  const C = f[13] as number
  const to = new Float64Array((flat.length / 2) * 3)
  for (let k = 0; k < 3; k++) {
    const o = f[k] as number
    const e = S * (f[3 + k] as number) + C * (f[9 + k] as number)
    const d = f[6 + k] as number
    for (let i = 0, j = k; i < flat.length; i += 2, j += 3)
      to[j] = o + (flat[i] as number) * e + (flat[i + 1] as number) * d
  }
  return to
}

/** `make(key)`, made once for each key. */
function once<K, V>(make: (key: K) => V): (key: K) => V {
  const known = new Map<K, V>()
  return (key) => {
    let value = known.get(key)
    if (value === undefined) {
      value = make(key)
      known.set(key, value)
    }
    return value
  }
}

/** Frames of a model at one opening, each mechanism placed when first asked for. */
function framesAt(model: Model, opening: number): Still['frame'] {
  checkOpening(opening)
  const gutter = uprightFrame()
  halfAngleInto(gutter, 12, opening)
  const frames = [gutter]
  const frame = (crease: number): Frame => {
    const known = frames[crease]
    if (known) return known
    const found = model.builds[model.creases[crease]?.owner ?? -1]
    if (!found) throw new RangeError(`there is no crease ${crease}`)
    const { build, host, firstCrease } = found
    const out = build.creases.map(() => emptyFrame())
    build.place(frame(host), out)
    out.forEach((made, k) => {
      frames[firstCrease + k] = made
    })
    return frames[crease] as Frame
  }
  return frame
}

/** The motion of a posed design. */
export function motionOf({ model }: Pick<Poser, 'model'>): Motion {
  const hinges = hingesOf(model)
  const chain = once((root: number) => chainFrom(hinges, root))
  const still = once((opening: number): Still => {
    const frame = framesAt(model, opening)
    return {
      opening,
      frame,
      angle: once((crease: number) => angleOf(frame(crease))),
      places: once((body: Body) => placed(model, frame, body)),
    }
  })
  // One memory for each root, filled anew, panel by panel, by whichever stretch asks next.
  const room = () => ({
    of: new Int32Array(model.panels.length),
    bend: new Float64Array(SIX * model.panels.length),
  })
  const memory = once((_root: number) => room())
  const memoryAlongY = room()
  const rates = {
    of: new Int32Array(model.builds.length),
    list: new Float64Array(2 * model.creases.length),
    turns: new Float64Array(2 * Math.max(0, ...model.builds.map(({ build }) => build.creases.length))),
  }
  rates.list[0] = 1
  let count = 0
  const stretch = (from: Still, to: Still): Stretch => {
    const me = ++count
    const width = Math.abs(to.opening - from.opening) * RADIANS
    const rate = (crease: number): void => {
      const owner = model.creases[crease]?.owner ?? -1
      const found = model.builds[owner]
      if (!found || rates.of[owner] === me) return
      rates.of[owner] = me
      rate(found.host)
      ratesOf(found, { from, to, width }, rates.list, rates.turns)
    }
    const bend = (root: number, panel: number): Bend => {
      const kept = memory(root)
      if (kept.of[panel] === me) return kept.bend
      kept.of[panel] = me
      const step = chain(root).stepTo(panel)
      if (step) {
        bend(root, step.panel)
        if (step.crease >= 0) rate(step.crease)
        bendBeyond(step, panel, rates.list, kept.bend)
      } else bendOfRoot(root, panel, kept.bend)
      return kept.bend
    }
    const alongY = (panel: number): Bend => {
      const kept = memoryAlongY
      if (kept.of[panel] === me) return kept.bend
      kept.of[panel] = me
      const step = chain(WORLD).stepTo(panel)
      // Pages keep their place along the gutter.
      if (step) {
        alongY(step.panel)
        bendAlongY(step, panel, bend(WORLD, panel), kept.bend)
      }
      return kept.bend
    }
    const forEach = ({ flat }: Body): Float64Array => new Float64Array(flat.length / 2)
    return {
      from,
      to,
      width,
      bends: (root, body, memory = forEach(body)) =>
        bendsOf(chain(root), bend(root, body.panel), body, memory),
      turns: (root, panel) => {
        const bounds = bend(root, panel)
        return [bounds[SIX * panel + SPIN] as number, bounds[SIX * panel + JERK] as number]
      },
      bendsAlongY: (body) => bendsOf(chain(WORLD), alongY(body.panel), body, forEach(body)),
    }
  }
  return { model, still, stretch }
}
