// Twins of designs of every kind: the same paper seen another way must stand the same way.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Check, Design, Vec3 } from '../../../src/paper/index.ts'
import { check, compile, measure, modelOf, poseAt } from '../../../src/paper/index.ts'
import { openings, runs } from '../shared/designs.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
import { apart } from '../shared/space.ts'
import { farthest, inner, mirrored, otherSide, scaled, shifted, transplanted } from '../shared/twins.ts'

/** Poses of the same paper may differ by rounding alone, mm; a little more where a fold all but stops. */
const EXACT = 1e-6

const same = (name: string): string => name

/** Openings at which no fold of it all but stops: there a rounding error moves it by its root. */
const calm = (made: Design, opening: number): boolean => {
  const poser = compile(made)
  const pose = poser(opening)
  return poser.model.builds.every(({ build, host }) => {
    const angle = host === 0 ? opening : (pose.creases[poser.model.creases[host]?.name ?? '']?.angle ?? 0)
    return (build.range ?? [0, 180]).every((stop) => Math.abs(angle - stop) > 1e-3 || stop === opening)
  })
}

describe('a design of every kind and its twin', () => {
  test('left for right, everything stands in a mirror, and the same stop', () => {
    fc.assert(
      fc.property(gluedDesigns(), openings, (made, opening) => {
        fc.pre(calm(made, opening))
        const [here, there] = [poseAt(made, opening), poseAt(mirrored(made), opening)]
        expect(there.stopped).toEqual(here.stopped)
        fc.pre(here.stopped.length === 0)
        expect(farthest(here, there, ([x, y, z]) => [-x, y, z], otherSide)).toBeLessThan(EXACT)
      }),
      runs(300),
    )
  })

  test('left for right, a ruler reads the same, and every check says the same', () => {
    // The value of a touch is where the search met it: one of many points.
    const told = (checks: readonly Check[]): string[] =>
      checks
        .map(
          ({ name, ok, verdict, value }) =>
            `${name} ${ok} ${verdict ?? ''} ${ok || name === 'clear-motion' ? '' : value.toFixed(3)}`,
        )
        .sort()
    fc.assert(
      fc.property(gluedDesigns({ most: 3 }), (made) => {
        const twin = mirrored(made)
        for (const opening of [40, 110]) {
          fc.pre(calm(made, opening))
          const [here, there] = [measure(made, opening), measure(twin, opening)]
          fc.pre(poseAt(made, opening).stopped.length === 0)
          expect(Math.abs(here.margin - there.margin)).toBeLessThan(EXACT)
          for (const [id, tip] of Object.entries(here.tips)) {
            expect(Math.abs(tip.rise - (there.tips[id]?.rise ?? Number.NaN))).toBeLessThan(EXACT)
            expect(Math.abs(tip.reach - (there.tips[id]?.reach ?? Number.NaN))).toBeLessThan(EXACT)
            expect(Math.abs(tip.standOff - (there.tips[id]?.standOff ?? Number.NaN))).toBeLessThan(EXACT)
          }
        }
        expect(told(check(twin, { repairs: false }))).toEqual(told(check(made, { repairs: false })))
      }),
      runs(40),
    )
  })

  test('drawn twice as large, it stands twice as large, at the same angles, and misses by twice as much', () => {
    fc.assert(
      fc.property(gluedDesigns(), openings, (made, opening) => {
        fc.pre(calm(made, opening))
        const twin = scaled(made, 2)
        const [here, there] = [poseAt(made, opening), poseAt(twin, opening)]
        expect(there.stopped).toEqual(here.stopped)
        expect(farthest(here, there, ([x, y, z]) => [2 * x, 2 * y, 2 * z], same)).toBeLessThan(EXACT)
        const gaps = (d: Design) =>
          modelOf(d).builds.map(({ build }) => build.shutGap ?? { gap: 0, unit: 'mm' })
        gaps(made).forEach(({ gap, unit }, k) => {
          expect(gaps(twin)[k]?.gap).toBeCloseTo(unit === 'mm' ? 2 * gap : gap, 9)
        })
      }),
      runs(200),
    )
  })

  test('moved along the gutter, all of it moves along the gutter', () => {
    fc.assert(
      fc.property(gluedDesigns(), openings, fc.integer({ min: -50, max: 50 }), (made, opening, by) => {
        fc.pre(calm(made, opening))
        const [here, there] = [poseAt(made, opening), poseAt(shifted(made, by), opening)]
        expect(farthest(here, there, ([x, y, z]) => [x, y + by, z], same)).toBeLessThan(EXACT)
      }),
      runs(200),
    )
  })
})

describe('guests and riders', () => {
  test('a guest moved to the gutter of a card opened as far as its host crease stands as it stood', () => {
    let compared = 0
    fc.assert(
      fc.property(
        gluedDesigns({ least: 2, most: 6 }),
        fc.double({ min: 5, max: 175, noNaN: true }),
        fc.nat(),
        (made, opening, pick) => {
          fc.pre(calm(made, opening))
          const guests = made.mechanisms.filter(({ kind }) => kind !== 'rider')
          const guest = guests[pick % Math.max(1, guests.length)]
          const pose = poseAt(made, opening)
          const angle = pose.creases[guest?.on ?? '']?.angle ?? Number.NaN
          if (!guest || !(angle > 0.01 && angle < 179.99) || pose.stopped.length > 0) return
          const alone = { ...made, mechanisms: transplanted(made, guest.id, 'gutter') }
          const [there, here] = [inner(made, guest.id, opening), inner(alone, guest.id, angle)]
          if (guest.on !== 'gutter') compared++
          expect(there).toHaveLength(here.length)
          there.forEach((distance, k) => {
            expect(Math.abs(distance - (here[k] as number))).toBeLessThan(EXACT)
          })
        },
      ),
      runs(300),
    )
    expect(compared).toBeGreaterThan(40)
  })

  test('a rider keeps all its distances to the panel it is stuck on', () => {
    let ridden = 0
    fc.assert(
      fc.property(gluedDesigns({ least: 3, most: 8 }), openings, openings, (made, one, other) => {
        const poser = compile(made)
        poser.model.builds.forEach(({ hostPanel }, owner) => {
          if (hostPanel === undefined) return
          ridden++
          const face = poser.model.panels.findIndex((panel) => panel.owner === owner)
          const distances = (opening: number): number[] => {
            poser(opening)
            const [on, off] = [hostPanel, face].map((panel) =>
              (poser.model.panels[panel]?.outline ?? []).map((flat) => poser.lift(panel, flat)),
            ) as [Vec3[], Vec3[]]
            return on.flatMap((p) => off.map((q) => apart(p, q)))
          }
          const [before, after] = [distances(one), distances(other)]
          before.forEach((distance, k) => {
            expect(Math.abs(distance - (after[k] as number))).toBeLessThan(1e-9)
          })
        })
      }),
      runs(150),
    )
    expect(ridden).toBeGreaterThan(50)
  })
})
