// The V-fold cut from a card: its side folds, its ridge and how high it rises, against values made by other methods.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Vec3 } from '../../src/paper/index.ts'
import { compile, highest, measure, modelOf, poseAt, riseOf } from '../../src/paper/index.ts'
import { design, designs, openings, runs, vFold } from '../paper/shared/designs.ts'
import { between, minus, RAD } from '../paper/shared/space.ts'
import { floats, fromLengths } from './lengths.ts'

/** Printed to six decimals. */
const SIX = 5.1e-7

const beakOf = (wedge: number) => design([vFold('beak', 'gutter', 20, 60, wedge)])

const directionOf = ({ start, end }: { start: Vec3; end: Vec3 }): Vec3 => minus(end, start)

/** The angle from the gutter (away from the apex, under the V-fold) to the ridge, degrees. */
function ridgeAngle(wedge: number, opening: number): number {
  const ridge = poseAt(beakOf(wedge), opening).creases['beak/ridge']
  return ridge ? between(directionOf(ridge), [0, 1, 0]) : Number.NaN
}

describe('side folds open by tan(w/2) = cos a tan(t/2)', () => {
  // The degree-4 vertex with sectors a, 180 - a: Tachi 2009; Evans, Lang, Magleby, Howell 2015; Lang and Howell,
  // J. Mech. Robotics 10 (2018) 021004, ‘fold-angle multiplier’ [paper found, formula memory].
  test.each([
    { wedge: 45, opening: 90, fold: 70.528779 },
    { wedge: 45, opening: 120, fold: 101.536959 },
    { wedge: 30, opening: 90, fold: 81.786789 },
    { wedge: 60, opening: 60, fold: 32.204228 },
  ])('wedge $wedge, card open $opening: the folds stand at $fold [computed by three spheres]', (row) => {
    const { creases } = poseAt(beakOf(row.wedge), row.opening)
    for (const side of ['left', 'right'])
      expect(Math.abs((creases[`beak/${side}`]?.angle ?? Number.NaN) - row.fold)).toBeLessThan(SIX)
  })

  test('the rule holds for every V-fold on every crease, with that crease’s angle in place of the card’s', () => {
    fc.assert(
      fc.property(designs(), openings, (made, opening) => {
        const { creases } = poseAt(made, opening)
        for (const m of made.mechanisms) {
          if (m.kind !== 'cut-v-fold') continue
          const host = (creases[m.on]?.angle ?? Number.NaN) * RAD
          const outward = Math.abs(m.run + (m.lean ?? 0))
          const cosine = outward / Math.hypot(outward, m.cut)
          const ruled = 2 * Math.atan2(cosine * Math.sin(host / 2), Math.cos(host / 2))
          for (const side of ['left', 'right'])
            expect(Math.abs((creases[`${m.id}/${side}`]?.angle ?? Number.NaN) * RAD - ruled)).toBeLessThan(
              1e-11,
            )
        }
      }),
      runs(200),
    )
  })

  // The degree-4 vertex again: opposite creases fold alike. Both angles are taken from where three spheres put the
  // paper (`lengths.ts`), which knows no angle of the kernel's.
  test('the ridge opens just as far as the crease it was cut from', () => {
    let told = 0
    fc.assert(
      fc.property(designs({ most: 4 }), fc.double({ min: 2, max: 178, noNaN: true }), (made, opening) => {
        const { creases } = poseAt(made, opening)
        const reference = fromLengths(floats, made, { open: opening })
        for (const { id, on } of made.mechanisms) {
          const [one, two] = (reference.missing.has(id) ? undefined : reference.crease(on)) ?? []
          if (!one || !two) continue
          const host = between(one.off, two.off)
          told++
          expect(Math.abs((creases[`${id}/ridge`]?.angle ?? Number.NaN) - host)).toBeLessThan(1e-6)
        }
      }),
      runs(100),
    )
    expect(told).toBeGreaterThan(100)
  })
})

describe('the free tip is where three spheres meet', () => {
  // Trilateration (analytic geometry, surveying; any textbook); the numbers come from three spheres worked out
  // apart from this program [computed].
  test.each([
    { wedge: 45, opening: 90, popped: 70.528779, rise: 2 / 3 },
    { wedge: 45, opening: 120, popped: 53.130102, rise: 0.69282 },
    { wedge: 30, opening: 90, popped: 44.415309, rise: 0.494872 },
    { wedge: 60, opening: 60, popped: 112.619865, rise: 6 / 13 },
  ])('cut at $wedge degrees, card open $opening: ridge at $popped, rise $rise of its length', (row) => {
    expect(Math.abs(ridgeAngle(row.wedge, row.opening) - row.popped)).toBeLessThan(SIX)
    const { rise } = measure(beakOf(row.wedge), row.opening).tips.beak ?? { rise: Number.NaN }
    expect(Math.abs(rise / 60 - row.rise)).toBeLessThan(SIX)
  })

  test('the spherical cosine rule, solved for the ridge, puts it there at every wedge and opening', () => {
    const wedges = fc.double({ min: 1, max: 85, noNaN: true })
    fc.assert(
      fc.property(wedges, openings, (wedge, opening) => {
        // cos a = cos a cos φ + sin a sin φ cos(t/2): besides φ = 0, the root is φ = 2 δ.
        const cosine = opening > 90 ? Math.sin((90 - opening / 2) * RAD) : Math.cos((opening / 2) * RAD)
        const ridge = 2 * Math.atan2(Math.sin(wedge * RAD) * cosine, Math.cos(wedge * RAD))
        expect(Math.abs(ridge / RAD - ridgeAngle(wedge, opening))).toBeLessThan(1e-9)
      }),
      runs(500),
    )
  })
})

describe('how high it rises', () => {
  test('a 45 degree beak in a card at right angles rises two thirds of its ridge, exactly', () => {
    const { rise } = measure(beakOf(45), 90).tips.beak ?? { rise: Number.NaN }
    expect(Math.abs(rise - 40)).toBeLessThan(1e-12)
    // Its ridge then leans as the faces of a tetrahedron meet. Coxeter, Regular Polytopes, table I [memory].
    expect(Math.abs(ridgeAngle(45, 90) - Math.acos(1 / 3) / RAD)).toBeLessThan(1e-12)
  })

  test('a 45 degree beak is highest when the card stands at arccos(-1/3), 109.47 degrees: 1/√2 of its ridge', () => {
    const top = highest(beakOf(45), 'beak')
    expect(Math.abs(top.rise - 60 / Math.SQRT2)).toBeLessThan(1e-9)
    // A maximum is flat: half the digits of the rise are what its place can be found to.
    expect(Math.abs(top.opening - Math.acos(-1 / 3) / RAD)).toBeLessThan(1e-5)
  })

  // No outside value: it guards the search for the top, whose rises are checked above and below.
  test('the highest opening found is no lower than any other', () => {
    fc.assert(
      fc.property(designs({ most: 3 }), openings, (made, opening) => {
        for (const { id } of made.mechanisms) {
          const { rise } = measure(made, opening).tips[id] ?? { rise: Number.NaN }
          expect(rise).toBeLessThan(highest(made, id).rise + 1e-7)
        }
      }),
      runs(50),
    )
  })

  test('on the gutter the rise is L sin φ sin(t/2), what a ruler on the page reads', () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 80, noNaN: true }), openings, (wedge, opening) => {
        const { rise } = measure(beakOf(wedge), opening).tips.beak ?? { rise: Number.NaN }
        // tan(φ/2) = tan a cos(t/2): the gutter mirrored in the plane of the folds (plane geometry of mirrors).
        const half = Math.tan(wedge * RAD) * Math.cos((opening / 2) * RAD)
        const ruled = ((60 * 2 * half) / (1 + half * half)) * Math.sin((opening / 2) * RAD)
        expect(Math.abs(rise - ruled)).toBeLessThan(1e-9)
      }),
      runs(200),
    )
  })

  test('shut, the ridge lies at twice the wedge angle from the gutter', () => {
    for (const wedge of [20, 30, 45, 60, 75]) expect(ridgeAngle(wedge, 0)).toBeCloseTo(2 * wedge, 10)
  })

  test('a point on a page has no rise', () => {
    const poser = compile(design([]))
    for (const opening of [0, 35, 90, 150, 180]) {
      poser(opening)
      for (const panel of [0, 1]) expect(riseOf(poser.lift(panel, [50, 20]), opening)).toBeCloseTo(0, 12)
    }
    expect(modelOf(design([])).panels).toHaveLength(2)
  })
})
