// What stops a card, mechanism by mechanism, in closed forms: quick, beside the dense looking.
import { describe, expect, test } from 'vitest'
import { openingRange, openingStops } from '../../../src/paper/index.ts'
import { broughtIn, rangesOf, toldEnd } from '../../../src/paper/motion/range.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { DEG, RAD } from '../shared/space.ts'

const tent = (more: object = {}) => ({
  id: 'tent',
  kind: 'glued-tent',
  on: 'gutter',
  start: 20,
  end: 90,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 40,
  rightWall: 40,
  ...more,
})

/** Base 60 and facet 45: pulled tight at the octahedron's angle. */
const TIGHT = Math.acos(-1 / 3) * DEG

const tight = (more: object = {}) => gluedMoth({ base: 60, facet: 45, ...more })

/** The right wall in its page's plane: 40² = 30² + 66² - 2 30 66 cos w. */
const LEAST = Math.acos((30 * 30 + 66 * 66 - 40 * 40) / (2 * 30 * 66)) * DEG

const leaning = tent({ rightWall: 36 })

test('an end is told to a tenth that the card reaches', () => {
  // Arithmetic: the nearest tenth would be out of the range at the first of each pair, and is its end at the second.
  expect([toldEnd(TIGHT, 'most'), toldEnd(109.41, 'most')]).toEqual([109.4, 109.4])
  expect([toldEnd(43.32, 'least'), toldEnd(43.39, 'least')]).toEqual([43.4, 43.4])
  // What rounding leaves of a tenth takes none away.
  for (const end of ['least', 'most'] as const)
    expect([toldEnd(0, end), toldEnd(180, end), toldEnd(0.3 * 3, end)]).toEqual([0, 180, 0.9])
  // A hair short of flat is not told as flat (common practice, no source).
  const { most } = openingStops(design([tight({ facet: 59.9999 })]))
  expect(most?.opening).toBeGreaterThan(179.5)
  expect(most?.sentence).toMatch(/ at 179\.\d°, 0\.[1-9]° short of flat/)
})

describe('a lineage', () => {
  test('is from shut to flat where nothing stops it', () => {
    const { lineage, card, nowhere } = rangesOf(design([layer('step', 'gutter', 20, 60, 20)]))
    for (const owner of [-1, 0])
      expect(lineage(owner)).toEqual({ low: { at: 0, why: null }, high: { at: 180, why: null } })
    expect(card).toEqual(lineage(0))
    expect(nowhere).toEqual([])
  })

  test('ends at a stop, or where it would go through its page, and says which', () => {
    const { lineage } = rangesOf(design([tight(), leaning]))
    expect(lineage(0)).toEqual({
      low: { at: 0, why: null },
      high: { at: expect.closeTo(TIGHT, 8), why: { owner: 0, how: 'stop' } },
    })
    // Of its creases ridge, left and right, the first of all stand in the list after those of the moth.
    expect(lineage(1)).toEqual({
      low: { at: expect.closeTo(LEAST, 8), why: { owner: 1, how: 'through', crease: 6 } },
      high: { at: 180, why: null },
    })
  })

  test('of what stands on another is that other’s, and its own where that is less', () => {
    const made = design([
      leaning,
      layer('eye', 'tent/ridge', 5, 25, 8),
      tight({ on: 'tent/left', apex: 20, foot: 12, ridge: 12 }),
    ])
    const { lineage, card } = rangesOf(made)
    expect(lineage(1)).toEqual(lineage(0))
    const [own, host] = [lineage(2), lineage(0)]
    expect(own?.low.at).toBeGreaterThanOrEqual((host?.low.at ?? 0) - 1e-9)
    expect(card.low.at).toBeCloseTo(LEAST, 8)
  })

  test('on a ridge of a cut V-fold the guest meets the gutter’s angle, on a side fold another', () => {
    const heron = fold('heron', 'gutter', 100, -60, 60 * Math.tan(50 * RAD))
    const guest = (on: string) => design([heron, tight({ on, apex: 5, foot: 8, ridge: 8 })])
    const ridge = rangesOf(guest('heron/ridge'))
    expect(ridge.lineage(1)?.high).toEqual({ at: expect.closeTo(TIGHT, 8), why: { owner: 1, how: 'stop' } })
    expect(ridge.lineage(0)?.high.at).toBe(180)
    // tan(f/2) = cos 50 tan(w/2).
    const side = rangesOf(guest('heron/left'))
    expect(side.lineage(1)?.high.at).toBeCloseTo(
      2 * Math.atan(Math.tan((TIGHT * RAD) / 2) / Math.cos(50 * RAD)) * DEG,
      7,
    )
    expect(side.card.high).toEqual(side.lineage(1)?.high)
  })
})

describe('of two that are as far past shut', () => {
  test('the first is named', () => {
    // Facets wider than their bases that lie back in the fold: both would go through their pages.
    expect(openingStops(design([gluedMoth({ pop: 'down' })])).most).toMatchObject({
      id: 'moth',
      why: 'through',
      crease: 'moth/left',
      panel: 'page/left',
      opening: 0,
    })
  })
})

describe('what fits nowhere', () => {
  const never = tent({ leftWall: 90, rightWall: 10 })

  test('by itself is left out, with what stands on it', () => {
    const made = design([
      never,
      tight({ id: 'eye', on: 'tent/ridge', apex: 20, foot: 12, ridge: 12 }),
      layer('step', 'gutter', 100, 120, 9),
    ])
    const { lineage, nowhere, card } = rangesOf(made)
    expect(lineage(0)).toBeNull()
    expect(lineage(1)).toBeNull()
    expect(lineage(2)?.high.at).toBe(180)
    expect(nowhere).toContain(0)
    expect(card).toEqual({ low: { at: 0, why: null }, high: { at: 180, why: null } })
  })

  test('with another: one of them is left out, and the card goes as the other does', () => {
    // Feet of 30 and walls of 5 are in one line at 2 asin(5 / 30) = 19.2 degrees, before the leaning one can be.
    const short = tent({ id: 'hut', start: 100, end: 140, leftWall: 5, rightWall: 5 })
    const stop = 2 * Math.asin(5 / 30) * DEG
    expect(stop).toBeLessThan(LEAST)
    const { nowhere, card, lineage } = rangesOf(design([leaning, short], { height: 160 }))
    expect(nowhere).toEqual([0])
    expect(card.high).toEqual({ at: expect.closeTo(stop, 8), why: { owner: 1, how: 'stop' } })
    expect(lineage(0)?.low.at).toBeCloseTo(LEAST, 8)
  })
})

test('an opening is brought into the range', () => {
  const made = design([tight({ apex: 105, foot: 20, ridge: 20 }), leaning])
  const [least, most] = openingRange(made)
  expect(least).toBeCloseTo(LEAST, 8)
  expect(most).toBeCloseTo(TIGHT, 8)
  expect([0, 60, 180].map((opening) => broughtIn(made, opening))).toEqual([least, 60, most])
})
