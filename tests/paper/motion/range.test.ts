import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import {
  compile,
  highest,
  measure,
  openingRange,
  openingStops,
  poseAt,
  swing,
} from '../../../src/paper/index.ts'
import { design, gluedMoth, runs, vFold } from '../shared/designs.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
import { DEG, RAD } from '../shared/space.ts'

/** A tent with one foot and wall on either side. */
const tent = (more: object = {}) => ({
  id: 'tent',
  kind: 'glued-tent',
  on: 'gutter',
  start: 20,
  end: 70,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 40,
  rightWall: 40,
  ...more,
})

/** The least angle of all creases by the plain pose, degrees; -Infinity where something is stopped. */
function lookAt(made: Design): (opening: number) => number {
  const poser = compile(made)
  return (opening) => {
    const { stopped, creases } = poser(opening)
    return stopped.length > 0
      ? Number.NEGATIVE_INFINITY
      : Math.min(...Object.values(creases).map(({ angle }) => angle))
  }
}

/** What rounding may leave of an angle that is nought, degrees: paper can be like this. */
const sound = (angle: number): boolean => angle > -1e-5

/** Paper cannot be like this, nor hardly any nearer to it. */
const unsound = (angle: number): boolean => angle < 1e-5

describe('the range of a card', () => {
  test('is all of it for what shuts and opens flat', () => {
    for (const made of [
      design([]),
      design([gluedMoth()]),
      design([vFold('heron', 'gutter', 100, -40, 40)]),
    ]) {
      expect(openingRange(made)).toEqual([0, 180])
      expect(openingStops(made)).toEqual({ least: null, most: null, nowhere: [] })
    }
  })

  test('ends where facets narrower than their bases are pulled tight', () => {
    // cos^2(w/2) = (cos^2 a - cos^2 b) / sin^2 b: 109.47 degrees for b 60, a 45 (spherical law of cosines, a right triangle).
    const made = design([gluedMoth({ base: 60, facet: 45 })])
    const [least, most] = openingRange(made)
    expect(least).toBe(0)
    expect(most).toBeCloseTo(Math.acos(-1 / 3) * DEG, 9)
    expect(openingStops(made).most).toMatchObject({
      id: 'moth',
      why: 'stop',
      sentence: 'The moth stops the card at 109.4°, 70.6° short of flat.',
    })
    expect(openingStops(made).least).toBeNull()
  })

  test('ends where a wall comes into the plane of its page', () => {
    // Plane law of cosines about the gutter: the right wall lies along its page, its ridge 30 + 36 from the
    // gutter, and the left wall reaches there from 30: 40^2 = 30^2 + 66^2 - 2 30 66 cos w.
    const made = design([tent({ rightWall: 36 })])
    const [least, most] = openingRange(made)
    const cosine = (30 * 30 + 66 * 66 - 40 * 40) / (2 * 30 * 66)
    expect(least).toBeCloseTo(Math.acos(cosine) * DEG, 9)
    expect(most).toBe(180)
    expect(openingStops(made).least).toMatchObject({
      id: 'tent',
      why: 'through',
      crease: 'tent/right',
      panel: 'page/right',
      opening: least,
    })
    expect(openingStops(made).least?.sentence).toMatch(
      /^The tent stops the card at \d+\.\d°: shut further, it would have to go through the right page\.$/,
    )
  })

  test('a guest stops the card where its host crease is open as far as it goes', () => {
    // On the ridge of a heron cut at a wedge a the guest meets the gutter's own angle; on its right fold
    // tan(f/2) = cos a tan(w/2) (the multiplier of a degree-4 vertex).
    const heron = vFold('heron', 'gutter', 100, -60, 50)
    const stop = Math.acos(-1 / 3) * DEG
    const guest = (on: string) =>
      design([heron, gluedMoth({ on, apex: 5, foot: 8, ridge: 8, base: 60, facet: 45 })])
    expect(openingRange(guest('heron/ridge'))[1]).toBeCloseTo(stop, 8)
    const fold = 2 * Math.atan(Math.tan((stop * RAD) / 2) / Math.cos(50 * RAD)) * DEG
    expect(openingRange(guest('heron/right'))[1]).toBeCloseTo(fold, 8)
  })

  test('is nothing but shut for facets wider than their bases that lie back in the fold', () => {
    const made = design([gluedMoth({ pop: 'down' })])
    expect(openingRange(made)).toEqual([0, 0])
    expect(openingStops(made).most).toMatchObject({ id: 'moth', why: 'through', opening: 0 })
  })

  test('past its stop a tent with equal sides stays as it is there, even between its pages', () => {
    // Pulled tight its walls lie in one line from foot to foot: 2 x 30 sin(w/2) = 20 + 20, its ridge 30 cos(w/2) high.
    const made = design([tent({ leftWall: 20, rightWall: 20 })])
    const stop = 2 * Math.asin(2 / 3) * DEG
    expect(openingRange(made)[1]).toBeCloseTo(stop, 9)
    for (const opening of [stop, 90, 120, 180]) {
      const { panels, creases } = poseAt(made, opening)
      const { start, end } = creases['tent/ridge'] ?? {}
      for (const p of [start, end]) {
        expect(p?.[0]).toBeCloseTo(0, 9)
        expect(p?.[2]).toBeCloseTo(30 * Math.cos((stop / 2) * RAD), 6)
      }
      const mirrored = panels['tent/left']?.map(([x, y, z]) => [-x, y, z])
      for (const [k, p] of (panels['tent/right'] ?? []).entries())
        for (const axis of [0, 1, 2]) expect(p[axis]).toBeCloseTo(mirrored?.[k]?.[axis] ?? Number.NaN, 9)
    }
  })

  test('leaves out what fits at no opening, and names it', () => {
    const made = design([tent({ leftWall: 90, rightWall: 10 }), gluedMoth({ base: 60, facet: 45, apex: 90 })])
    expect(openingStops(made).nowhere).toEqual(['tent'])
    expect(openingRange(made)[1]).toBeCloseTo(Math.acos(-1 / 3) * DEG, 9)
  })

  test('what is measured keeps to it', () => {
    // Facets of 45 on bases of 60: pulled tight at arccos(-1/3), where the ridge lies in one plane with both
    // joints and its angle to the gutter has cos p = cos 60 / cos 45 (a right spherical triangle).
    const made = design([gluedMoth({ base: 60, facet: 45 })])
    const stop = Math.acos(-1 / 3) * DEG
    const path = swing(made, 'moth', 10)
    expect(path[0]?.opening).toBe(0)
    expect(path[10]?.opening).toBeCloseTo(stop, 9)
    expect(highest(made, 'moth').opening).toBeLessThanOrEqual(stop)
    const tight = measure(made, 180)
    expect(tight.opening).toBeCloseTo(stop, 9)
    // The gutter's angle to the plane of both joints: cos 60 = cos p cos 45, and the tip is 40 along the ridge.
    expect(tight.tips.moth?.reach).toBeCloseTo(60 + (40 * Math.cos(60 * RAD)) / Math.cos(45 * RAD), 5)
    // Nothing that would lie inside a page is told of: wider than its bases and lying back, it can only be shut.
    expect(measure(design([gluedMoth({ pop: 'down' })]), 90)).toMatchObject({ opening: 0 })
  })

  test('holds every opening that dense looking finds sound round it, and none beside', () => {
    const seen = { whole: 0, stop: 0, through: 0, nowhere: 0, guest: 0 }
    fc.assert(
      fc.property(gluedDesigns({ most: 7 }), fc.integer({ min: 0, max: 99 }), (made, shift) => {
        const [least, most] = openingRange(made)
        const { nowhere, least: low, most: high } = openingStops(made)
        const look = lookAt(made)
        if (nowhere.length > 0) {
          seen.nowhere++
          for (let opening = shift / 100; opening <= 180; opening += 1)
            expect(unsound(look(opening))).toBe(true)
          return
        }
        if (!low && !high) seen.whole++
        for (const end of [low, high]) {
          if (end) seen[end.why]++
          if (end && made.mechanisms.find((m) => m.id === end.id)?.on !== 'gutter') seen.guest++
        }
        // How near to an end it is looked at, degrees.
        const NEAR = 1e-3
        for (let opening = shift / 100; opening <= 180; opening += 1) {
          if (opening > least + NEAR && opening < most - NEAR && !sound(look(opening)))
            throw new Error(`not sound at ${opening}, within ${least} to ${most}`)
          if ((opening < least - NEAR || opening > most + NEAR) && !unsound(look(opening)))
            throw new Error(`sound at ${opening}, outside ${least} to ${most}`)
        }
        if (most - least > 3 * NEAR) {
          expect(sound(look(least + NEAR))).toBe(true)
          expect(sound(look(most - NEAR))).toBe(true)
        }
        if (low && least > NEAR) expect(unsound(look(least - NEAR))).toBe(true)
        if (high && most < 180 - NEAR) expect(unsound(look(most + NEAR))).toBe(true)
      }),
      runs(400),
    )
    for (const count of Object.values(seen)) expect(count).toBeGreaterThan(5)
  })

  test('is quick: 25 stopping guests, each on the one before', () => {
    const chain = Array.from({ length: 25 }, (_, k) =>
      gluedMoth({
        id: `m${k}`,
        on: k === 0 ? 'gutter' : `m${k - 1}/ridge`,
        apex: k === 0 ? 60 : 1,
        base: 40 + k / 2,
        facet: 39.9 + k / 2,
        side: k === 0 ? 'inside' : 'outside',
      }),
    )
    const times = Array.from({ length: 20 }, () => {
      const made = design(chain)
      compile(made)
      const from = performance.now()
      openingRange(made)
      return performance.now() - from
    }).sort((a, b) => a - b)
    expect(times[10]).toBeLessThan(4)
  })
})
