// How high something may stand over a face, by right triangles.
import { describe, expect, test } from 'vitest'
import { room } from '../../../../src/paper/index.ts'
import { layer } from '../../shared/check-designs.ts'
import { A6, design, gluedMoth } from '../../shared/designs.ts'
import { RAD } from '../../shared/space.ts'

const CELL = A6.height / 16

const hut = (more: object = {}) => ({
  id: 'hut',
  kind: 'glued-tent',
  on: 'gutter',
  start: 40,
  end: 110,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 40,
  rightWall: 40,
  ...more,
})

describe('over a page', () => {
  test('are cells over all of it, each from its middle', () => {
    const { cell, cells, panel, face } = room(design([]), 'page/right')
    expect([panel, face, cell]).toEqual(['page/right', 'front', CELL])
    // 105 mm hold 11 middles of cells of 9.25, 148 hold 16.
    expect(cells).toHaveLength(11 * 16)
    const ats = cells.map(({ at }) => at)
    expect(Math.min(...ats.map(([a]) => a))).toBeCloseTo(CELL / 2, 9)
    expect(Math.max(...ats.map(([a]) => a))).toBeCloseTo(10.5 * CELL, 9)
    expect(Math.max(...ats.map(([, l]) => l))).toBeCloseTo(15.5 * CELL, 9)
    expect(cells.every(({ bare }) => bare)).toBe(true)
  })

  test('the other page is all there is: at right angles and beyond it is never met', () => {
    for (const made of [room(design([]), 'page/right'), room(design([]), 'page/left', { opening: 120 })])
      expect(made.cells.every(({ height }) => height === Number.POSITIVE_INFINITY)).toBe(true)
  })

  test.each([30, 60, 80])(
    'at %d degrees it is met after a tan t, within a / cos t of the gutter',
    (opening) => {
      for (const panel of ['page/right', 'page/left'])
        for (const { at, height } of room(design([]), panel, { opening }).cells) {
          const there = at[0] / Math.cos(opening * RAD) < A6.width
          if (there) expect(height).toBeCloseTo(at[0] * Math.tan(opening * RAD), 6)
          else expect(height).toBe(Number.POSITIVE_INFINITY)
        }
    },
  )

  test('nothing is behind it', () => {
    const { cells, face } = room(design([hut()]), 'page/right', { face: 'back', opening: 60 })
    expect(face).toBe('back')
    expect(cells.every(({ height }) => height === Number.POSITIVE_INFINITY)).toBe(true)
  })
})

test('eleven openings are looked at, from the one asked for to flat', () => {
  expect(room(design([]), 'page/right', { opening: 60 }).openings).toEqual([
    60, 72, 84, 96, 108, 120, 132, 144, 156, 168, 180,
  ])
  const { openings } = room(design([]), 'page/right')
  expect([openings[0], openings.at(-1), openings.length]).toEqual([90, 180, 11])
  // No farther than the card goes: 60 and 45 are pulled tight at arccos(-1/3).
  const tight = room(design([gluedMoth({ base: 60, facet: 45 })]), 'page/right').openings
  expect(tight[0]).toBe(90)
  expect(tight.at(-1)).toBeCloseTo(Math.acos(-1 / 3) / RAD, 9)
  expect(tight[5]).toBeCloseTo((90 + Math.acos(-1 / 3) / RAD) / 2, 9)
})

describe('under a tent', () => {
  // Flat, its ridge is sqrt(40² - 30²) high over the gutter, and its wall falls to nothing 30 from it.
  const over = (across: number) => (Math.sqrt(700) * (30 - across)) / 30

  test('the wall is met as high as it is there, and beside it nothing', () => {
    const { cells } = room(design([hut()]), 'page/right', { opening: 180 })
    let [under, beside] = [0, 0]
    for (const { at, height } of cells) {
      const within = at[1] > 40 && at[1] < 110 && at[0] < 30
      if (within) {
        under++
        expect(height).toBeCloseTo(over(at[0]), 6)
      } else {
        beside++
        expect(height).toBe(Number.POSITIVE_INFINITY)
      }
    }
    expect(under).toBeGreaterThan(10)
    expect(beside).toBeGreaterThan(100)
  })

  test('the least of all openings counts', () => {
    // Nearer to shut its wall stands steeper over a foot, so what is least at flat is least of all there.
    const { cells } = room(design([hut()]), 'page/right', { opening: 120 })
    for (const { at, height } of cells)
      if (at[1] > 40 && at[1] < 110 && at[0] < 30) {
        expect(height).toBeLessThanOrEqual(over(at[0]) + 1e-6)
        expect(height).toBeGreaterThan(0)
      }
  })

  test('seen from the wall’s own inside the page is under it', () => {
    // Flat: a place u mm from the joint is u sin s over the page, with cos s = 3/4, and the way square to the wall is that over cos s.
    const found = room(design([hut()]), 'hut/right', { face: 'back', opening: 180 })
    const sine = Math.sqrt(1 - 0.75 ** 2)
    expect(found.cells.length).toBeGreaterThan(50)
    for (const { at, height } of found.cells) {
      // Its flat coordinates count from the ridge: 40 - across from the joint. Steep as it is, its way goes outwards or in.
      const up = (40 - at[0]) * sine
      expect(height).toBeCloseTo(up / 0.75, 6)
    }
    expect(
      room(design([hut()]), 'hut/right', { opening: 180 }).cells.every(
        ({ height }) => height === Number.POSITIVE_INFINITY,
      ),
    ).toBe(true)
  })
})

describe('what is taken', () => {
  const square = (a: number, l: number, half: number) => [
    [a - half, l - half],
    [a + half, l - half],
    [a + half, l + half],
    [a - half, l + half],
  ]
  const star = {
    id: 'star',
    kind: 'rider',
    on: 'page/right',
    shape: square(60, 70, 20),
    glue: square(60, 70, 10),
  }

  test('is no cell where a hole is', () => {
    const { cells } = room(design([layer('step', 'gutter', 40, 110, 30)]), 'page/right')
    const inHole = (a: number, l: number) => a < 30 && l > 40 && l < 110
    expect(cells.some(({ at }) => inHole(...at))).toBe(false)
    // Three columns of cells by seven rows are gone: middles from 4.6 to 23.1, and from 41.6 to 106.4 or nearly.
    const gone = Array.from({ length: 16 }, (_, k) => (k + 0.5) * CELL).filter((l) => l > 40 && l < 110)
    expect(cells).toHaveLength(11 * 16 - 3 * gone.length)
  })

  test('is not bare where something is stuck or glued, and only there', () => {
    for (const { at, bare } of room(design([star]), 'page/right').cells)
      expect(bare).toBe(!(Math.abs(at[0] - 60) < 20 && Math.abs(at[1] - 70) < 20))
    // The tabs of the tent lie under it, 12 wide inwards of its joints.
    const tabbed = room(design([hut({ tab: 12 })]), 'page/right').cells
    expect(tabbed.some(({ bare }) => !bare)).toBe(true)
    for (const { at, bare } of tabbed)
      if (!bare) expect(Math.abs(at[0] - 30) < 12 && at[1] > 40 && at[1] < 110).toBe(true)
    // Tape along a joint takes no room.
    expect(room(design([hut()]), 'page/right').cells.every(({ bare }) => bare)).toBe(true)
    // What is stuck on the one page leaves the other bare.
    expect(room(design([star]), 'page/left').cells.every(({ bare }) => bare)).toBe(true)
  })

  test('a panel that is not there is refused', () => {
    expect(() => room(design([]), 'owl/left')).toThrow(new RangeError('there is no panel owl/left'))
  })
})
