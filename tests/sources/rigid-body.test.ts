// A V-fold carried from one opening to another by a rigid-body engine, rapier3d (Apache-2.0), against the kernel's
// pose there. The engine counts in single precision and in time steps: a hundredth of a degree is asked of it.
import { beforeAll, describe, expect, test } from 'vitest'
import type { Vec3 } from '../../src/paper/index.ts'
import { poseAt } from '../../src/paper/index.ts'
import { design, vFold } from '../paper/shared/designs.ts'
import { between, minus } from '../paper/shared/space.ts'
import { hinged, ready } from './hinged.ts'

const GOOD_FOR = 0.01

beforeAll(ready)

describe('a rigid-body engine', () => {
  test.each([
    { wedge: 30, from: 60, to: 130 },
    { wedge: 45, from: 120, to: 60 },
    { wedge: 45, from: 60, to: 120 },
    { wedge: 60, from: 100, to: 40 },
    { wedge: 60, from: 40, to: 150 },
  ])(
    'carries a V-fold of $wedge degrees from $from to $to, and finds the ridge where the kernel has it',
    (row) => {
      const made = design([{ ...vFold('beak', 'gutter', 110, -60, row.wedge), lean: 5 }])
      const model = hinged(made, row.from)
      const before = model.ridge()[0]
      model.turnTo(row.to, 300, 200)
      const { start, end } = poseAt(made, row.to).creases['beak/ridge'] ?? {
        start: [0, 0, 0],
        end: [0, 0, 0],
      }
      const ridge: Vec3 = minus(end, start)
      for (const own of model.ridge()) expect(between(own, ridge)).toBeLessThan(GOOD_FOR)
      // It went there by itself: the ridge has moved far more than the engine is good for.
      expect(between(before, ridge)).toBeGreaterThan(1000 * GOOD_FOR)
      model.free()
    },
  )
})
