import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { aim, aiming, check, measure, settingOf } from '../../../src/paper/index.ts'
import { design, gluedMoth, gluedPond, runs, vFold } from '../shared/designs.ts'

const failing = (made: Design): readonly string[] =>
  check(made, { repairs: false }).flatMap(({ ok, name }) => (ok ? [] : [name]))

const moth = (more: object = {}) => design([gluedMoth(more)])

/** What a ruler reads at the tip of the design that `aim` gives. */
const tipOf = (made: Design, id: string, opening: number) => {
  const tip = measure(made, opening).tips[id]
  if (!tip) throw new Error(id)
  return tip
}

describe('bringing a tip to a place', () => {
  // Random places round where the tip is now, so that most can be had.
  const place = fc.record({
    opening: fc.integer({ min: 50, max: 130 }),
    rise: fc.integer({ min: -8, max: 8 }),
    reach: fc.integer({ min: -12, max: 12 }),
  })
  const makes = {
    beak: () => design([vFold('beak', 'gutter', 100, -40, 42)]),
    moth,
    tent: () =>
      design([
        {
          id: 'tent',
          kind: 'glued-tent',
          on: 'gutter',
          start: 50,
          end: 90,
          leftFoot: 25,
          rightFoot: 25,
          leftWall: 40,
          rightWall: 40,
        },
      ]),
    pond: () => design([gluedPond]),
  }

  test.each(Object.keys(makes) as (keyof typeof makes)[])(
    'of a %s: what it gives really reaches, breaks no check, and starts with the least change',
    (id) => {
      let reached = 0
      fc.assert(
        fc.property(place, ({ opening, rise, reach }) => {
          const made = makes[id]()
          const now = tipOf(made, id, opening)
          const target = { opening, rise: now.rise + rise, reach: now.reach + reach }
          const found = aim(made, id, target)
          const before = failing(made)
          for (const way of found.ways) {
            const tip = tipOf(way.design, id, opening)
            expect(Math.abs(tip.rise - target.rise)).toBeLessThan(1e-6)
            expect(Math.abs(tip.reach - target.reach)).toBeLessThan(1e-6)
            expect(failing(way.design).filter((name) => !before.includes(name))).toEqual([])
            // The settings it names are those of the design it gives.
            const m = way.design.mechanisms[0]
            for (const [name, value] of Object.entries(way.settings))
              expect(m && settingOf(m, name)).toBeCloseTo(value, 9)
          }
          const changes = found.ways.map(({ settings }) =>
            Math.hypot(
              ...Object.entries(settings).map(
                ([name, value]) => value - settingOf(made.mechanisms[0] ?? { id, kind: '', on: '' }, name),
              ),
            ),
          )
          // Of two that are as large to a ten-thousandth the even one goes first.
          for (const [k, far] of changes.entries())
            if (k > 0) expect(far).toBeGreaterThan((changes[k - 1] as number) - 1.1e-4)
          expect(found.reached).toBe(found.ways.length > 0)
          if (found.reached) reached++
          // Out of reach: the nearest is within the checks, and does not miss by more than now.
          else if (found.nearest) {
            expect(failing(found.nearest.design).filter((name) => !before.includes(name))).toEqual([])
            expect(found.nearest.miss).toBeLessThanOrEqual(Math.hypot(rise, reach) + 1e-9)
          }
        }),
        runs(8),
      )
      expect(reached).toBeGreaterThan(3)
    },
  )

  test('a tip can be had from either side: two apexes, mirrored in the place along the gutter', () => {
    const { ways } = aim(design([vFold('beak', 'gutter', 100, -40, 42)]), 'beak', {
      opening: 90,
      rise: 25,
      reach: 80,
    })
    const pairs = ways
      .map(({ settings }) => settings)
      .filter(({ apex, run }) => apex !== undefined && run !== undefined)
    expect(pairs).toHaveLength(2)
    const [one, two] = pairs
    expect((one?.apex ?? 0) + (two?.apex ?? 0)).toBeCloseTo(160, 5)
    expect((one?.run ?? 1) + (two?.run ?? 1)).toBeCloseTo(0, 5)
  })

  test('the ridge of 45 and 60 in a card half open stands straight up: its length for 20 mm is 20 times root 2', () => {
    // Rise at 90 degrees: ridge times sin 90 times sin 45.
    const { ways } = aim(moth(), 'moth', { opening: 90, rise: 20 })
    const ridge = ways.flatMap(({ settings }) => (settings.ridge === undefined ? [] : [settings.ridge]))
    expect(ridge[0]).toBeCloseTo(20 * Math.SQRT2, 6)
  })

  test('one reading wanted, one setting moved; two readings, two', () => {
    for (const { settings } of aim(moth(), 'moth', { opening: 90, rise: 25 }).ways)
      expect(Object.keys(settings)).toHaveLength(1)
    for (const { settings } of aim(moth(), 'moth', { opening: 90, rise: 25, reach: 65 }).ways)
      expect(Object.keys(settings)).toHaveLength(2)
  })

  test('what no setting does alone, one more does: a tent is moved along whole', () => {
    const now = tipOf(makes.tent(), 'tent', 110)
    const [along] = aim(makes.tent(), 'tent', { opening: 110, reach: now.reach + 40 }).ways
    expect(along?.settings.start).toBeCloseTo(90, 5)
    expect(along?.settings.end).toBeCloseTo(130, 5)
    const [both] = aim(makes.tent(), 'tent', { opening: 110, reach: now.reach + 40, rise: now.rise + 2 }).ways
    expect(Object.keys(both?.settings ?? {}).sort()).toEqual(['end', 'start', 'wall'])
  })

  test('a layer with even sides stays even where one side alone would do as well', () => {
    // The ridge's rise is the lesser depth times the sine of the opening: 34 deep at 90 degrees it stands 34 high.
    const even = design([
      { id: 'body', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 34, right: 34 },
    ])
    const [first] = aim(even, 'body', { opening: 90, rise: 20 }).ways
    expect(first?.design.mechanisms[0]).toMatchObject({
      left: expect.closeTo(20, 5),
      right: expect.closeTo(20, 5),
    })
  })

  test('bit by bit it comes to the same', () => {
    for (const target of [
      { opening: 90, rise: 25, reach: 65 },
      { opening: 90, rise: 300 },
    ]) {
      const work = aiming(moth(), 'moth', target)
      let steps = 0
      for (;;) {
        const { done, value } = work.next()
        if (!done) {
          steps++
          continue
        }
        expect(value).toEqual(aim(moth(), 'moth', target))
        break
      }
      expect(steps).toBeGreaterThan(10)
    }
  })

  test('higher than the card is wide is out of reach, and it says so', () => {
    const found = aim(moth(), 'moth', { opening: 90, rise: 300 })
    expect(found.reached).toBe(false)
    expect(found.ways).toEqual([])
    expect(found.nearest?.miss).toBeGreaterThan(150)
    expect(found.nearest?.miss).toBeLessThan(300 - tipOf(moth(), 'moth', 90).rise + 1e-9)
  })

  test('lengths end at the card, angles do not', () => {
    // A page of 40 by 40: no length beyond 40 mm is looked for, but facets of 60 degrees and more are.
    const small = design([gluedMoth({ apex: 12, foot: 10, ridge: 12 })], { width: 40, height: 40 })
    const now = tipOf(small, 'moth', 90)
    const { ways } = aim(small, 'moth', { opening: 90, rise: now.rise - 0.5 })
    const facets = ways.flatMap(({ settings }) => (settings.facet === undefined ? [] : [settings.facet]))
    expect(facets[0]).toBeGreaterThan(60)
    const far = aim(design([vFold('beak', 'gutter', 30, -12, 40)], { width: 40, height: 40 }), 'beak', {
      opening: 90,
      reach: 60,
    })
    expect(far.reached).toBe(false)
  })

  test('an unknown mechanism and an empty wish are refused in words', () => {
    expect(() => aim(moth(), 'owl', { opening: 90, rise: 5 })).toThrow('there is no mechanism owl')
    expect(() => aim(moth(), 'moth', { opening: 90 })).toThrow('must name a rise, a reach or both')
  })
})
