// A V-fold as four rigid bodies on hinges, moved by rapier3d (Apache-2.0): masses, joints and time steps, no
// formula of folding. Every body's own frame is the flat sheet, so that each hinge has one axis in both its bodies.
import * as RAPIER from '@dimforge/rapier3d-compat'
import { mat3, quat } from 'gl-matrix'
import type { Design, Flat, Pose, Vec3 } from '../../src/paper/index.ts'
import { poseAt } from '../../src/paper/index.ts'
import { crossOf, minus, RAD, unit } from '../paper/shared/space.ts'

/** One unit of the engine is a hundred millimetres: bodies about as large as it likes them. */
const UNIT = 100

export interface Hinged {
  /** Turns the pages to the opening (degrees) in equal time steps, then waits. */
  turnTo(opening: number, steps: number, wait: number): void
  /** The direction of the ridge as the left and as the right facet have it. */
  ridge(): readonly [left: Vec3, right: Vec3]
  free(): void
}

/** Turns the flat sheet's axes into those of a panel with these three corners, flat and in space. */
function turnOf(flat: readonly [Flat, Flat, Flat], space: readonly [Vec3, Vec3, Vec3]): quat {
  const basis = (p: Vec3, q: Vec3, r: Vec3): mat3 => {
    const u = unit(minus(q, p))
    const w = unit(crossOf(u, minus(r, p)))
    return mat3.fromValues(...u, ...crossOf(w, u), ...w)
  }
  const [p, q, r] = flat.map(([x, y]): Vec3 => [x, y, 0]) as [Vec3, Vec3, Vec3]
  const back = mat3.transpose(mat3.create(), basis(p, q, r))
  return quat.normalize(
    quat.create(),
    quat.fromMat3(quat.create(), mat3.multiply(mat3.create(), basis(...space), back)),
  )
}

/** The two pages turn by half the opening's lack to either side. */
const pageTurn = (opening: number, side: 1 | -1): quat => {
  const half = (-side * (180 - opening) * RAD) / 4
  return quat.fromValues(0, Math.sin(half), 0, Math.cos(half))
}

const rotation = (q: quat) => ({ x: q[0], y: q[1], z: q[2], w: q[3] })

/** Loads the engine once; it is WebAssembly. */
export const ready = (): Promise<void> => RAPIER.init()

/** A card with one V-fold on its gutter, standing at an opening that the kernel gives; from there on its own. */
export function hinged(made: Design, opening: number): Hinged {
  const m = made.mechanisms[0]
  if (m?.kind !== 'cut-v-fold') throw new RangeError('one V-fold on the gutter')
  const pose: Pose = poseAt(made, opening)
  const world = new RAPIER.World({ x: 0, y: 0, z: 0 })
  world.numSolverIterations = 16
  const page = (side: 1 | -1) =>
    world.createRigidBody(
      RAPIER.RigidBodyDesc.kinematicPositionBased().setRotation(rotation(pageTurn(opening, side))),
    )
  const pages = [page(-1), page(1)] as const
  const foot = m.apex + m.run
  const facets = ([-1, 1] as const).map((side) => {
    const flat: [Flat, Flat, Flat] = [
      [0, m.apex],
      [0, foot],
      [side * m.cut, foot + (m.lean ?? 0)],
    ]
    const corners = pose.panels[side < 0 ? 'beak/left' : 'beak/right'] as Vec3[]
    const space = [corners[0], corners[1], corners.at(-1)] as [Vec3, Vec3, Vec3]
    const turn = turnOf(flat, space)
    // The flat sheet's origin, carried along: the apex minus the turned apex.
    const apex = quat.create()
    quat.multiply(apex, turn, quat.fromValues(0, m.apex, 0, 0))
    quat.multiply(apex, apex, quat.conjugate(quat.create(), turn))
    const [x, y, z] = [0, 1, 2].map((k) => ((corners[0]?.[k] as number) - (apex[k] as number)) / UNIT) as Vec3
    const middle = {
      x: (side * m.cut) / 3 / UNIT,
      y: (m.apex + 2 * foot + (m.lean ?? 0)) / 3 / UNIT,
      z: 0,
    }
    const body = world.createRigidBody(
      RAPIER.RigidBodyDesc.dynamic()
        .setTranslation(x, y, z)
        .setRotation(rotation(turn))
        .setLinearDamping(2)
        .setAngularDamping(2)
        .setCanSleep(false)
        .setAdditionalMassProperties(1, middle, { x: 0.02, y: 0.02, z: 0.02 }, { x: 0, y: 0, z: 0, w: 1 }),
    )
    return { body, flat }
  }) as [
    { body: RAPIER.RigidBody; flat: [Flat, Flat, Flat] },
    { body: RAPIER.RigidBody; flat: [Flat, Flat, Flat] },
  ]

  /** A hinge along a line of the flat sheet. */
  const hinge = (a: RAPIER.RigidBody, b: RAPIER.RigidBody, from: Flat, to: Flat): void => {
    const middle = { x: (from[0] + to[0]) / 2 / UNIT, y: (from[1] + to[1]) / 2 / UNIT, z: 0 }
    const long = Math.hypot(to[0] - from[0], to[1] - from[1])
    const axis = { x: (to[0] - from[0]) / long, y: (to[1] - from[1]) / long, z: 0 }
    world.createImpulseJoint(RAPIER.JointData.revolute(middle, middle, axis), a, b, true)
  }
  const [left, right] = facets
  hinge(pages[0], left.body, left.flat[0], left.flat[2])
  hinge(pages[1], right.body, right.flat[0], right.flat[2])
  hinge(left.body, right.body, left.flat[0], left.flat[1])

  let now = opening
  const direction = ({ body, flat }: (typeof facets)[0]): Vec3 => {
    const { x, y, z, w } = body.rotation()
    const turn = quat.fromValues(x, y, z, w)
    const v = quat.fromValues(flat[1][0] - flat[0][0], flat[1][1] - flat[0][1], 0, 0)
    const turned = quat.multiply(
      quat.create(),
      quat.multiply(quat.create(), turn, v),
      quat.conjugate(quat.create(), turn),
    )
    return unit([turned[0], turned[1], turned[2]])
  }
  return {
    turnTo(to, steps, wait) {
      for (let k = 1; k <= steps + wait; k++) {
        const at = now + (to - now) * Math.min(1, k / steps)
        pages[0].setNextKinematicRotation(rotation(pageTurn(at, -1)))
        pages[1].setNextKinematicRotation(rotation(pageTurn(at, 1)))
        world.step()
      }
      now = to
    },
    ridge: () => [direction(left), direction(right)],
    free: () => world.free(),
  }
}
