import { ticks } from 'd3-array'
import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import { roundSteps } from '../../src/drawing/scale.ts'
import { runs } from '../paper/designs.ts'

describe('roundSteps', () => {
  // The outside reference is d3-array's `ticks`, a general-purpose library.
  it('are those of a library that is made for it', () => {
    fc.assert(
      fc.property(
        fc.integer({ min: -20, max: 0 }),
        fc.integer({ min: 1, max: 40 }),
        fc.double({ min: 2, max: 4, noNaN: true }),
        fc.constantFrom(20, 0.5),
        (floor, ceiling, count, unit) => {
          const [from, to] = [floor * unit, ceiling * unit]
          const [ours, theirs] = [roundSteps(from, to, count), ticks(from, to, count)]
          expect(ours).toHaveLength(theirs.length)
          for (const [k, step] of theirs.entries()) expect(ours[k]).toBeCloseTo(step, 9)
        },
      ),
      runs(500),
    )
  })
})
