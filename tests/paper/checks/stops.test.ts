// What keeps a card from opening, told in words; the angle of the stop from the octahedron.
import { expect, test } from 'vitest'
import { openingStops } from '../../../src/paper/checks/stops.ts'
import { layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const STOP = (Math.acos(-1 / 3) * 180) / Math.PI

test('a card that opens flat and shuts is stopped by nothing', () => {
  expect(openingStops(design([layer('lamp', 'gutter', 40, 80, 20)]))).toEqual({
    least: null,
    most: null,
    nowhere: [],
  })
})

test('what is pulled tight is named, with its opening and what is missing', () => {
  const { least, most, nowhere } = openingStops(
    design([layer('lamp', 'gutter', 110, 130, 9), gluedMoth({ base: 60, facet: 45 })]),
  )
  expect(least).toBeNull()
  expect(nowhere).toEqual([])
  expect(most).toEqual({
    opening: expect.closeTo(STOP, 6),
    id: 'moth',
    why: 'stop',
    sentence: 'The moth stops the card at 109.4°, 70.6° short of flat.',
  })
})

test('what fits nowhere is told apart', () => {
  // Feet of 50 and 10 mm want walls that reach over the 40 mm between them; these are 10 mm together.
  const roof = { id: 'roof', kind: 'glued-tent', on: 'gutter', start: 20, end: 60 }
  const made = design([{ ...roof, leftFoot: 50, rightFoot: 10, leftWall: 5, rightWall: 5 }])
  expect(openingStops(made).nowhere).toEqual(['roof'])
})
