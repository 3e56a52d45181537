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
  expect(stop.sentence).toBe('The moth stops the card at 109.4°, 70.6° short of flat.')
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

test('a cut across a glued joint stands with its joint when the card is flat, and that is no fault', () => {
  const tent = {
    id: 'tent',
    kind: 'glued-tent',
    on: 'gutter',
    start: 18.2,
    end: 69,
    leftFoot: 15.1,
    rightFoot: 15.1,
    leftWall: 27.4,
    rightWall: 27.4,
  }
  const layer = {
    id: 'reed',
    kind: 'cut-layer',
    on: 'tent/right',
    start: 1.1,
    end: 6.1,
    left: 3.6,
    right: 3.6,
  }
  const made = design([tent, layer])
  // Flat, a joint of a tent with a foot of 15.1 and a wall of 27.4 is open at 180 - arccos(15.1 / 27.4), not at 180.
  expect(poseAt(made, 180).creases['tent/right']?.angle).toBeCloseTo(
    180 - (Math.acos(15.1 / 27.4) * 180) / Math.PI,
    9,
  )
  expect(only('opens-flat', made)).toMatchObject([{ ok: true }])
})

test('what would have to go through its page is not said to open flat', () => {
  const found = first('opens-flat', [{ ...moth(45, 60), pop: 'down' }])
  expect(found).toMatchObject({ ok: false, opening: 0, value: 180, ids: ['moth'] })
})
