import type { Design } from '../design/design.ts'
import type { Model } from '../model/model.ts'
import { modelOf } from '../model/model.ts'
import type { Frame } from '../plane/frame.ts'
import { emptyFrame, uprightFrame } from '../plane/frame.ts'
import type { Flat } from '../plane/lay.ts'
import type { Vec3 } from '../plane/vector.ts'
import { DEGREES, halfAngleInto } from '../plane/vector.ts'

/** Poses one design over and over, in the same memory: the answer is overwritten by the next call. */
export interface Poser {
  (opening: number): Pose
  readonly model: Model
  /** The frames of the creases at the opening posed last, in the order of `model.creases`. */
  readonly frames: readonly Frame[]
  /** A flat point of a panel (index into `model.panels`), in space at the opening posed last. */
  lift(panel: number, flat: Flat): Vec3
}

/**
 * The least opening, degrees, at which a shut card is put in space: its layers keep their order (0.1 mm
 * apart at 100 mm from the gutter) and nobody can see the difference.
 */
export const SHUT = 0.05

/** Throws a RangeError unless the opening is a number from 0 to 180. */
export function checkOpening(opening: number): void {
  if (!(opening >= 0 && opening <= 180))
    throw new RangeError(`opening must be a number from 0 (shut) to 180 (flat) degrees, not ${opening}`)
}

const zero = (): Vec3 => [0, 0, 0]

/** Writes `across`, `along` of one side of a crease into `to`. */
function liftInto(to: Vec3, f: Frame, sine: number, across: number, along: number): void {
  const s = sine * across
  const c = (f[13] as number) * across
  to[0] = (f[0] as number) + s * (f[3] as number) + along * (f[6] as number) + c * (f[9] as number)
  to[1] = (f[1] as number) + s * (f[4] as number) + along * (f[7] as number) + c * (f[10] as number)
  to[2] = (f[2] as number) + s * (f[5] as number) + along * (f[8] as number) + c * (f[11] as number)
}

/**
 * A poser for the design. Poses at every opening from 0 to 180 degrees; lengths in mm.
 * No allocation after the first call, but for `lift`.
 */
export function compile(design: Design): Poser {
  const model = modelOf(design)
  const frames = model.creases.map(() => emptyFrame())
  const gutter = frames[0] as Frame
  gutter.set(uprightFrame())
  const steps = model.builds.map(({ mechanism, build, host, firstCrease }) => ({
    id: mechanism.id,
    place: build.place,
    host: frames[host] as Frame,
    out: frames.slice(firstCrease, firstCrease + build.creases.length),
  }))
  const pose: Pose = { opening: 0, panels: {}, creases: {}, stopped: [] }
  const panelSteps = model.panels.map((panel) => {
    const points = panel.outline.map(zero)
    pose.panels[panel.name] = points
    return {
      frame: frames[panel.crease] as Frame,
      sign: panel.side === 'left' ? -1 : 1,
      points,
      flat: Float64Array.from(panel.outline.flat()),
    }
  })
  const creaseSteps = model.creases.flatMap((crease, k) => {
    if (crease.hidden) return []
    const record = { start: zero(), end: zero(), angle: 0 }
    pose.creases[crease.name] = record
    return [{ frame: frames[k] as Frame, length: crease.length, record }]
  })

  const run = (opening: number): Pose => {
    checkOpening(opening)
    pose.opening = opening
    if (pose.stopped.length > 0) pose.stopped.length = 0
    halfAngleInto(gutter, 12, opening)
    for (let i = 0; i < steps.length; i++) {
      const step = steps[i] as (typeof steps)[number]
      if (!step.place(step.host, step.out)) pose.stopped.push(step.id)
    }
    for (let i = 0; i < panelSteps.length; i++) {
      const { frame, sign, points, flat } = panelSteps[i] as (typeof panelSteps)[number]
      const sine = sign * (frame[12] as number)
      for (let k = 0; k < points.length; k++)
        liftInto(points[k] as Vec3, frame, sine, flat[2 * k] as number, flat[2 * k + 1] as number)
    }
    for (let i = 0; i < creaseSteps.length; i++) {
      const { frame, length, record } = creaseSteps[i] as (typeof creaseSteps)[number]
      const { start, end } = record
      for (let k = 0; k < 3; k++) {
        const at = frame[k] as number
        start[k] = at
        end[k] = at + length * (frame[6 + k] as number)
      }
      record.angle = 2 * DEGREES * Math.atan2(frame[12] as number, frame[13] as number)
    }
    return pose
  }
  const lift = (panel: number, [across, along]: Flat): Vec3 => {
    const step = panelSteps[panel]
    if (!step) throw new RangeError(`there is no panel ${panel}`)
    const to = zero()
    liftInto(to, step.frame, step.sign * (step.frame[12] as number), across, along)
    return to
  }
  return Object.assign(run, { model, frames, lift })
}

const copy = (v: Vec3): Vec3 => [v[0], v[1], v[2]]

/**
 * The whole model at one opening (degrees, 0 shut to 180 flat), in memory of its own.
 * Throws a RangeError if the opening is not in that range.
 */
export function poseAt(design: Design, opening: number): Pose {
  return compile(design)(opening)
}

/** A pose that later calls of the poser leave alone. */
export function keep(pose: Pose): Pose {
  return {
    opening: pose.opening,
    panels: Object.fromEntries(Object.entries(pose.panels).map(([name, points]) => [name, points.map(copy)])),
    creases: Object.fromEntries(
      Object.entries(pose.creases).map(([name, { start, end, angle }]) => [
        name,
        { start: copy(start), end: copy(end), angle },
      ]),
    ),
    stopped: [...pose.stopped],
  }
}

/** The model at one opening. */
export interface Pose {
  /** Degrees, 0 shut to 180 flat. */
  opening: number
  /** Every panel's whole outline in space, mm; what children took out of it is not taken out here. */
  panels: Record<string, Vec3[]>
  creases: Record<string, { start: Vec3; end: Vec3; angle: number }>
  /** Ids of mechanisms that cannot reach this opening; they stay at their stop. */
  stopped: string[]
}
