import type { Chain } from './chain.ts'
import { chainFrom, hingesOf, WORLD } from './chain.ts'
import type { Model } from './model.ts'
import type { Poser } from './pose.ts'
import type { Flat, Frame, Lay } from './types.ts'
import { RADIANS } from './vector.ts'

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
 * and a point of Q at t across and s along from the origin o of c has |p''| <= |o''| + t |e''| + s |d''|.
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

/** A pose that is kept, with every crease's frame. */
export interface Still {
  /** Degrees. */
  readonly opening: number
  readonly frames: readonly Frame[]
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
  bends(root: number, body: Body): Float64Array
  /** The same for y alone, seen from the world: a panel that turns about directions along y keeps its y. */
  bendsAlongY(body: Body): Float64Array
}

export interface Motion {
  readonly model: Model
  /** The pose at an opening in degrees; asked for twice, it is posed once. */
  still(opening: number): Still
  stretch(from: Still, to: Still): Stretch
}

/** Bounds by panel: |o''|, |e''| and |d''| of the crease by which it is reached. */
interface Bend {
  readonly origin: Float64Array
  readonly across: Float64Array
  readonly along: Float64Array
}

const angleOf = (frame: Frame): number => 2 * Math.atan2(frame[12] as number, frame[13] as number)

/** Bounds on |angle'| and |angle''| of every crease between two stills, by the opening in radians, in pairs. */
function ratesOf(model: Model, from: Still, to: Still, width: number): Float64Array {
  const rates = new Float64Array(2 * model.creases.length)
  rates[0] = 1
  const turns = new Float64Array(2 * Math.max(0, ...model.builds.map(({ build }) => build.creases.length)))
  for (const { build, host, firstCrease } of model.builds) {
    const rate = rates[2 * host] as number
    const change = rates[2 * host + 1] as number
    if (build.turns) {
      // The host's angle may leave the range between its two ends, but not by more than its rate allows.
      const a = angleOf(from.frames[host] as Frame)
      const b = angleOf(to.frames[host] as Frame)
      const spare = Math.max(0, (rate * width - Math.abs(b - a)) / 2)
      build.turns(Math.max(0, Math.min(a, b) - spare), Math.max(a, b) + spare, turns)
    } else turns.fill(Number.POSITIVE_INFINITY)
    for (let k = 0; k < build.creases.length; k++) {
      const first = turns[2 * k] as number
      const second = turns[2 * k + 1] as number
      rates[2 * (firstCrease + k)] = first * rate
      rates[2 * (firstCrease + k) + 1] = second * rate * rate + first * change
    }
  }
  return rates
}

function bendFrom({ root, steps }: Chain, panels: number, rates: Float64Array): Bend {
  // What no crease leads to may be anywhere.
  const unknown = () => new Float64Array(panels).fill(Number.POSITIVE_INFINITY)
  const [origin, across, along, spin, jerk] = [unknown(), unknown(), unknown(), unknown(), unknown()]
  for (const panel of root === WORLD ? [0, 1] : [root]) {
    // Seen from the world, each page turns about the gutter by half the opening.
    origin[panel] = along[panel] = jerk[panel] = 0
    spin[panel] = root === WORLD ? 0.5 : 0
    across[panel] = root === WORLD ? 0.25 : 0
  }
  for (const step of steps) {
    const { panel: p, next: q, crease } = step
    const e = across[p] as number
    const d = along[p] as number
    origin[q] = (origin[p] as number) + step.originAcross * e + step.originAlong * d
    along[q] = step.runAcross * e + step.runAlong * d
    const w = spin[p] as number
    const j = jerk[p] as number
    if (crease < 0) {
      across[q] = step.offAcross * e + step.offAlong * d
      spin[q] = w
      jerk[q] = j
    } else {
      const r1 = rates[2 * crease] as number
      const r2 = rates[2 * crease + 1] as number
      across[q] = j + w * w + 2 * w * r1 + Math.sqrt(r2 * r2 + r1 * r1 * r1 * r1)
      spin[q] = w + r1
      jerk[q] = j + r2 + w * r1
    }
  }
  return { origin, across, along }
}

/** The same along y alone, given the bounds from the world: y is square to every turn of an upright panel. */
function bendAlongY({ steps, upright }: Chain, { across: whole }: Bend): Bend {
  const [origin, across, along] = [whole, whole, whole].map(() => new Float64Array(whole.length)) as [
    Float64Array,
    Float64Array,
    Float64Array,
  ]
  upright.forEach((known, panel) => {
    if (!known) origin[panel] = across[panel] = along[panel] = Number.POSITIVE_INFINITY
  })
  for (const { panel: p, next: q, ...step } of steps) {
    if (upright[q]) continue
    const e = across[p] as number
    const d = along[p] as number
    origin[q] = (origin[p] as number) + step.originAcross * e + step.originAlong * d
    along[q] = step.runAcross * e + step.runAlong * d
    across[q] = whole[q] as number
  }
  return { origin, across, along }
}

/** The bound for each point of a body, from those of its panel's entry crease. */
function bendsOf({ entries }: Chain, bend: Bend, { panel, flat }: Body): Float64Array {
  const { origin, run, off } = entries[panel] as Lay
  const [o, e, d] = [bend.origin[panel], bend.across[panel], bend.along[panel]] as [number, number, number]
  const bends = new Float64Array(flat.length / 2)
  for (let i = 0; i < bends.length; i++) {
    const a = (flat[2 * i] as number) - origin[0]
    const l = (flat[2 * i + 1] as number) - origin[1]
    bends[i] = o + Math.abs(a * off[0] + l * off[1]) * e + Math.abs(a * run[0] + l * run[1]) * d
  }
  return bends
}

/** Where the points of a body are, given the frames. */
function placed({ panels }: Model, frames: readonly Frame[], { panel, flat }: Body): Float64Array {
  const { crease, side } = panels[panel] as Model['panels'][number]
  const f = frames[crease] as Frame
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

/** The motion of a posed design. */
export function motionOf(poser: Poser): Motion {
  const { model } = poser
  const hinges = hingesOf(model)
  const chain = once((root: number) => chainFrom(hinges, root))
  const still = once((opening: number): Still => {
    poser(opening)
    const frames = poser.frames.map((frame) => frame.slice())
    return { opening, frames, places: once((body: Body) => placed(model, frames, body)) }
  })
  const stretch = (from: Still, to: Still): Stretch => {
    const width = Math.abs(to.opening - from.opening) * RADIANS
    const rates = ratesOf(model, from, to, width)
    const bend = once((root: number) => bendFrom(chain(root), model.panels.length, rates))
    const alongY = once((root: number) => bendAlongY(chain(root), bend(root)))
    return {
      from,
      to,
      width,
      bends: (root, body) => bendsOf(chain(root), bend(root), body),
      bendsAlongY: (body) => bendsOf(chain(WORLD), alongY(WORLD), body),
    }
  }
  return { model, still, stretch }
}
