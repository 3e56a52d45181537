// Faults of every kind, and the least that mends them: nothing smaller can, by lengths and angles on paper; what is found
// is no more than a hand's tenth larger.
import { describe, expect, test } from 'vitest'
import type { Design, Mended } from '../../../src/paper/index.ts'
import { check, mend, parseDesign } from '../../../src/paper/index.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'

const total = ({ changes }: Mended): number =>
  changes.reduce((sum, { from, to }) => sum + Math.abs(to - from), 0)

function mended(made: Design, pins: readonly string[] = []): Mended {
  const found = mend(made, { pins })
  expect(found.left).toEqual([])
  expect(check(found.design, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
  // A file can hold it, and what is told to be changed is all that is.
  expect(parseDesign(JSON.parse(JSON.stringify(found.design)))).toEqual(found.design)
  const ids = new Set(found.changes.map(({ id }) => id))
  found.design.mechanisms.forEach((m, k) => {
    if (!ids.has(m.id)) expect(m).toEqual(made.mechanisms[k])
  })
  return found
}

const square = (a: number, l: number, size: number) => [
  [a, l],
  [a + size, l],
  [a + size, l + size],
  [a, l + size],
]

describe('the least change', () => {
  const rows: readonly (readonly [what: string, mechanisms: readonly object[], least: number])[] = [
    ['a strip 3 mm wide is made 5 wide', [layer('reed', 'gutter', 60, 63, 20)], 2],
    // 110 on a page of 105, and a bridge of 5: 100.
    ['a slit over the edge is cut back to a bridge from it', [fold('beak', 'gutter', 110, -40, 110)], 10],
    // Shut, its tip leans 20 past the apex: 128 is the farthest for that.
    ['a beak that leans out is moved back', [fold('beak', 'gutter', 131, -40, 40 * Math.sqrt(3))], 3],
    ['facets that differ by 3 degrees are made to match', [gluedMoth({ right: { base: 45, facet: 63 } })], 3],
    [
      'glue over a hole is moved off it',
      [
        layer('lamp', 'gutter', 20, 60, 30),
        { id: 'moon', kind: 'rider', on: 'page/right', shape: square(20, 20, 30), glue: square(27, 30, 10) },
      ],
      // The piece over it is in the way of the strip as well: from 20 to 30, where the hole ends.
      10,
    ],
    [
      'a guest cut too near to the end of its strip is moved inwards',
      [layer('lamp', 'gutter', 20, 90, 30), layer('eye', 'lamp/ridge', 3, 30, 9)],
      2,
    ],
    [
      'a guest cut too deep for the wall behind it is cut less deep',
      [layer('lamp', 'gutter', 20, 90, 30), layer('eye', 'lamp/ridge', 20, 50, 27)],
      // 2 mm on either side: both its cuts.
      4,
    ],
    // Ridges of 30 that lean 30 cos(2 · 53.13) = 8.4 past their apexes each: 16.8 apart they only touch.
    [
      'two owls that collide are parted',
      [fold('owl', 'gutter', 60, -30, 40), fold('moth', 'gutter', 70, 30, 40)],
      0,
    ],
  ]

  test.each(rows)('%s', (_, mechanisms, least) => {
    const found = mended(design(mechanisms))
    expect(total(found)).toBeGreaterThanOrEqual(least - 1e-6)
    expect(total(found)).toBeLessThanOrEqual(least === 0 ? 6.9 : least + 0.11)
  })

  test.each(rows.slice(0, 3))('%s, whatever else stands there', (_, mechanisms, least) => {
    const found = mended(design([...mechanisms, layer('step', 'gutter', 10, 30, 12)]))
    expect(total(found)).toBeLessThanOrEqual(least + 0.11)
    expect(found.changes.every(({ id }) => id !== 'step')).toBe(true)
  })
})

describe('a host is mended', () => {
  test('so that its guest stays sound, and by no more than it takes', () => {
    // 112 deep shut on a page of 105: 3.5 less on either side. Its guest is cut 10 into walls of 56.
    const made = design([layer('lamp', 'gutter', 20, 90, 56), layer('eye', 'lamp/ridge', 20, 50, 10)])
    const found = mended(made)
    expect(found.changes.every(({ id }) => id === 'lamp')).toBe(true)
    expect(total(found)).toBeLessThanOrEqual(7.2)
    expect(total(found)).toBeGreaterThanOrEqual(7 - 1e-6)
  })

  test('with its guest where that needs it', () => {
    // The guest ends 5 mm before the end of its strip, which must be made shorter by 4: the end of the card is too near.
    const made = design([layer('lamp', 'gutter', 60, 147, 20), layer('eye', 'lamp/ridge', 40, 82, 8)])
    const found = mended(made)
    // 147 to 143, and the guest's end by as much.
    expect(total(found)).toBeLessThanOrEqual(8.2)
    expect(total(found)).toBeGreaterThanOrEqual(8 - 1e-6)
  })
})

describe('what is pinned', () => {
  test.each([
    ['step.end', 'b.start'],
    ['step.start', 'b.start'],
  ])('%s stays, and another number gives way', (pin) => {
    const made = design([layer('step', 'gutter', 30, 70, 20), layer('b', 'gutter', 66, 110, 20)])
    const found = mended(made, [pin])
    expect(found.changes.some(({ id, field }) => `${id}.${field}` === pin)).toBe(false)
    expect(total(found)).toBeLessThanOrEqual(9.2)
  })

  test('must be there', () => {
    const made = design([layer('step', 'gutter', 30, 70, 20)])
    expect(() => mend(made, { pins: ['owl.end'] })).toThrow(
      new RangeError('pins must name mechanisms of the design, as in beak.cut, not owl.end'),
    )
    expect(() => mend(made, { pins: ['step.apex'] })).toThrow(
      /^pins of step must be one of .*start.*, not apex$/,
    )
  })
})

test('what is sound is left as it is', () => {
  const made = design([layer('step', 'gutter', 30, 70, 20), gluedMoth({ apex: 90, foot: 30, ridge: 30 })])
  const found = mend(made)
  expect(found.design).toBe(made)
  expect(found).toMatchObject({ changes: [], left: [] })
})
