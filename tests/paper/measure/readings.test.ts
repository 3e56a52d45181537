// What a ruler is held to, in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import { opensTo, partMargin } from '../../../src/paper/measure/readings.ts'
import { topOf } from '../../../src/paper/measure/top.ts'
import type { Placed } from '../../../src/paper/mechanisms/kind.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const step = (startCut: number, endCut: number) => ({
  id: 'step',
  kind: 'cut-trapezoid',
  on: 'gutter',
  start: 20,
  end: 60,
  startCut,
  endCut,
})

describe('where a ruler is held', () => {
  test.each([
    ['a V-fold rises to its tip', fold('beak', 'gutter', 110, -40, 40), 'tip'],
    ['so does a trapezoid at its far end', step(10, 30), 'tip'],
    ['and at its near end', step(30, 10), 'tip'],
    ['one with equal cuts stays level', step(20, 20), 'ridge'],
    ['so does a layer', layer('lamp', 'gutter', 20, 60, 30), 'ridge'],
  ] as const)('%s', (_, mechanism, held) => {
    expect(topOf(design([mechanism]).mechanisms[0] as Placed)).toBe(held)
  })
})

describe('how far a mechanism lets the card open', () => {
  const guest = { ...layer('eye', 'moth/ridge', 10, 20, 5) }

  test('flat, unless it or what it stands on stops it before', () => {
    expect(opensTo(design([layer('lamp', 'gutter', 20, 60, 30)]), 'lamp')).toBe(180)
    // Base 60 and facet 45: the octahedron's angle, arccos(-1/3).
    const made = design([gluedMoth({ base: 60, facet: 45 }), guest, layer('lamp', 'gutter', 110, 140, 9)])
    const stop = (Math.acos(-1 / 3) * 180) / Math.PI
    expect(opensTo(made, 'moth')).toBeCloseTo(stop, 6)
    expect(opensTo(made, 'eye')).toBeCloseTo(stop, 6)
    expect(opensTo(made, 'lamp')).toBe(180)
  })

  test('not at all, what fits together nowhere', () => {
    // Feet of 50 and 10 mm want walls that reach over the 40 mm between them.
    const roof = { id: 'roof', kind: 'glued-tent', on: 'gutter', start: 20, end: 60 }
    const made = design([{ ...roof, leftFoot: 50, rightFoot: 10, leftWall: 5, rightWall: 5 }])
    expect(opensTo(made, 'roof')).toBe(0)
  })
})

describe('the margin of one part of a shut card', () => {
  // Shut, a layer's ridge lies both depths from the gutter: 40 and 90 mm on a page of 105 x 148.
  const made = design([layer('lamp', 'gutter', 50, 80, 20), layer('lamp-post', 'gutter', 90, 120, 45)])

  test('is its own alone', () => {
    expect(partMargin(made, 'lamp')).toBeCloseTo(50, 9)
    expect(partMargin(made, 'lamp-post')).toBeCloseTo(15, 9)
  })

  test('is below nought past the side', () => {
    expect(partMargin(design([layer('lamp', 'gutter', 50, 80, 60)]), 'lamp')).toBeCloseTo(-15, 9)
  })
})
