// Handles and limits of a glued V-fold, by the right triangle of its joint: across, along and foot as 30, 40 and 50.
import { describe, expect, test } from 'vitest'
import type { GluedVFold } from '../../../src/paper/mechanisms/glued-v-fold.ts'
import { gluedVFold } from '../../../src/paper/mechanisms/glued-v-fold.ts'
import { gluedMoth } from '../shared/designs.ts'

const moth = (more: object = {}) => gluedMoth({ apex: 60, ...more }) as unknown as GluedVFold

const handle = (name: string) => {
  const found = gluedVFold.handles.find((one) => one.name === name)
  if (!found) throw new Error(name)
  return found
}

/** atan(3 / 4), degrees. */
const WEDGE = 36.86989764584402

/** What a drag of the joint's end gives: its base angle on either side, and its foot. */
function dragged(to: readonly [number, number], more: object = {}) {
  const given = handle('joint-end').drag(moth(more), to)
  expect(given['left.base']).toBe(given['right.base'])
  return [given['right.base'], given.foot]
}

describe('the end of a joint', () => {
  test('lies foot along the joint, base degrees off the crease', () => {
    for (const [toward, along] of [
      [1, 100],
      [-1, 20],
    ] as const) {
      const at = handle('joint-end').at(moth({ base: WEDGE, foot: 50, toward }))
      expect(at[0]).toBeCloseTo(30, 9)
      expect(at[1]).toBeCloseTo(along, 9)
    }
  })

  test.each([
    [[30, 100], {}, WEDGE, 50],
    [[30, 20], { toward: -1 }, WEDGE, 50],
    [[30, 20], {}, 180 - WEDGE, 50],
    [[30, 60], {}, 90, 30],
    // Along the crease it keeps a degree, forward and back, and past it too.
    [[0, 100], {}, 1, 40],
    [[0, 20], {}, 179, 40],
    [[-30, 100], {}, 1, 50],
    [[-30, 20], {}, 179, 50],
  ] as [[number, number], object, number, number][])(
    'dragged to %j (%j) is at %d degrees',
    (to, more, base, foot) => {
      const [found, long] = dragged(to, more)
      expect(found).toBeCloseTo(base, 9)
      expect(long).toBeCloseTo(foot, 9)
    },
  )
})

test('the apex and the tip follow the hand; a ridge keeps a millimetre', () => {
  expect(handle('apex').at(moth())).toEqual([0, 60])
  expect(handle('apex').drag(moth(), [9, 70])).toEqual({ apex: 70 })
  expect(handle('tip').at(moth({ ridge: 33 }))).toEqual([0, 33])
  expect(handle('tip').drag(moth(), [9, 44])).toEqual({ ridge: 44 })
  expect(handle('tip').drag(moth(), [9, 0.5])).toEqual({ ridge: 1 })
})

test('both sides turn together', () => {
  const base = gluedVFold.derived.find(({ name }) => name === 'base')
  const facet = gluedVFold.derived.find(({ name }) => name === 'facet')
  const uneven = moth({ left: { base: 30, facet: 80 }, right: { base: 50, facet: 60 } })
  expect([base?.get(uneven), facet?.get(uneven)]).toEqual([50, 60])
  expect(gluedVFold.complete(moth())).toMatchObject({
    left: { base: 45, facet: 60 },
    right: { base: 45, facet: 60 },
    side: 'inside',
    pop: 'up',
    tab: 0,
  })
})

describe('angles that are missing', () => {
  test.each([
    [{ base: undefined }, 'left.base'],
    [{ facet: undefined }, 'left.facet'],
    [{ base: undefined, left: { base: 40 } }, 'right.base'],
    [{ facet: undefined, right: { facet: 70 } }, 'left.facet'],
    [{ facet: undefined, left: { facet: 70 } }, 'right.facet'],
  ])('%j: %s is asked for', (more, field) => {
    expect(gluedVFold.limits?.(moth(more))?.field).toBe(field)
  })

  test('are none where each side has its own', () => {
    const both = { left: { base: 30, facet: 80 }, right: { base: 50, facet: 60 } }
    expect(gluedVFold.limits?.(moth({ base: undefined, facet: undefined, ...both }))).toBeNull()
    expect(gluedVFold.limits?.(moth())).toBeNull()
  })
})
