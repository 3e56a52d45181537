// Every crease's frame, the unseen ones too that only carry a panel: square, of unit length, and both panels where
// they hang on it, by gl-matrix (MIT).
import fc from 'fast-check'
import { expect, test } from 'vitest'
import type { Flat, Vec3 } from '../../../src/paper/index.ts'
import { compile } from '../../../src/paper/index.ts'
import { laid } from '../../../src/paper/plane/lay.ts'
import { runs } from '../shared/designs.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
import { apart, crossOf, dotOf, plus, sizeOf, times } from '../shared/space.ts'

test('both panels of every crease lie as its frame says', () => {
  let unseen = 0
  fc.assert(
    fc.property(
      gluedDesigns({ most: 5, match: ['alike', 'shuts'] }),
      fc.double({ min: 2, max: 178, noNaN: true }),
      (made, opening) => {
        const poser = compile(made)
        const { stopped } = poser(opening)
        if (stopped.length > 0) return
        poser.model.creases.forEach((crease, k) => {
          const f = poser.frames[k] as Float64Array
          const at = (i: number): Vec3 => [f[i], f[i + 1], f[i + 2]] as unknown as Vec3
          const [o, x, d, n] = [at(0), at(3), at(6), at(9)]
          for (const unit of [x, d, n]) expect(Math.abs(sizeOf(unit) - 1)).toBeLessThan(1e-9)
          // x, d and n are square to each other, of either hand.
          expect(Math.abs(Math.abs(dotOf(crossOf(x, d), n)) - 1)).toBeLessThan(1e-9)
          expect(Math.abs(dotOf(x, d))).toBeLessThan(1e-9)
          expect(Math.abs(Math.hypot(f[12] as number, f[13] as number) - 1)).toBeLessThan(1e-9)
          if (crease.hidden) unseen++
          for (const [side, sign] of [
            ['right', 1],
            ['left', -1],
          ] as const)
            for (const flat of [
              [0, 0],
              [10, 0],
              [7, crease.length],
            ] as Flat[]) {
              const across = plus(times(x, sign * (f[12] as number)), times(n, f[13] as number))
              const wanted = plus(plus(o, times(across, flat[0])), times(d, flat[1]))
              const { panel, lay } = crease[side]
              expect(apart(poser.lift(panel, laid(lay, flat)), wanted)).toBeLessThan(1e-8)
            }
        })
      },
    ),
    runs(150),
  )
  expect(unseen).toBeGreaterThan(50)
})
