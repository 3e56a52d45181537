import fc from 'fast-check'
import { expect, test } from 'vitest'
import { poseAt } from '../../../src/paper/index.ts'
import { first, fold, only } from '../shared/check-designs.ts'
import { design, designs, ladder, runs } from '../shared/designs.ts'

test('everything cut from the sheet shuts flat and opens flat: Kawasaki’s condition holds at every apex', () => {
  fc.assert(
    fc.property(designs({ most: 8 }), (made) => {
      for (const name of ['shuts-flat', 'opens-flat'] as const) {
        expect(only(name, made)[0]?.ok).toBe(true)
        // On its way it does not: the number is a measured one.
        expect(only(name, made)[0]?.value).toBeLessThan(1e-6)
      }
      const { panels } = poseAt(made, 0)
      expect(
        Math.max(
          ...Object.values(panels)
            .flat()
            .map(([x]) => Math.abs(x)),
        ),
      ).toBeLessThan(1e-6)
    }),
    runs(100),
  )
})

test.each(ladder)('$name lies flat, shut and open', ({ design: made }) => {
  expect(only('shuts-flat', made)[0]?.ok).toBe(true)
  expect(only('opens-flat', made)[0]?.ok).toBe(true)
})

test('folds square to the gutter never turn: such a V-fold does not open flat', () => {
  // A slit end level with the apex: a wedge of 90 degrees, tan(w/2) = cos 90 tan(t/2) = 0.
  const stuck = first('opens-flat', [fold('beak', 'gutter', 60, -40, 30, { lean: 40 })])
  expect(stuck).toMatchObject({ ok: false, opening: 180 })
  expect(stuck.value).toBeCloseTo(80, 6)
})

const moth = (base: number, facet: number, left = facet) => ({
  id: 'moth',
  kind: 'glued-v-fold',
  on: 'gutter',
  apex: 40,
  toward: 1,
  left: { base, facet: left },
  right: { base, facet },
  foot: 40,
  ridge: 40,
  tab: 8,
})

test('a glued V-fold with facets smaller than its base stops the card where the closed form says', () => {
  // cos²(t/2) = (cos² a − cos² b) / sin² b for base b 60, facet a 45: arccos(−1/3), the octahedron’s angle
  // (Coxeter, Regular Polytopes, table I; from memory).
  const stop = first('opens-flat', [moth(60, 45)])
  expect(stop).toMatchObject({ ok: false, unit: 'deg', ids: ['moth'] })
  expect(stop.opening).toBeCloseTo((Math.acos(-1 / 3) * 180) / Math.PI, 6)
  expect(stop.sentence).toBe('The moth stops the card at 109.5°, 70.5° short of flat.')
})

test('a glued V-fold that stands up when the card is flat does not keep it from opening flat', () => {
  expect(only('opens-flat', design([moth(45, 60)]))[0]?.ok).toBe(true)
})

test('a glued V-fold whose sides differ cannot shut flat, and says by how many degrees', () => {
  // Shut flat, base and facet add up alike on both sides (Kawasaki and Justin, alternating sums).
  expect(first('shuts-flat', [moth(45, 60, 50)])).toMatchObject({
    ok: false,
    unit: 'deg',
    sentence: 'The moth cannot shut flat: its left and right side differ by 10.0°.',
  })
})
