// The motion of steps: it begins and ends in the states that the step describes, and goes by what rigid paper can do.
import { describe, expect, test } from 'vitest'
import { motionOf, orderOf } from '../../src/booklet/index.ts'
import type { Mark } from '../../src/drawing/pen/marks.ts'
import { stepMotion } from '../../src/drawing/steps/motion.ts'
import type { Design } from '../../src/paper/index.ts'
import { card, dummies, dummy } from '../sheet/designs.ts'

const SIZE = { width: 340, height: 250 }

const lantern = card(105, 148, [
  { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 32, right: 32 },
])

const wedge = card(105, 148, [{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 110, run: -40, cut: 38 }])

const motion = (design: Design, state: Parameters<typeof stepMotion>[1], of?: readonly string[]) => {
  const found = stepMotion(design, state, SIZE, of ? { of, there: [] } : {})
  if (!found) throw new Error(`${state} moves`)
  return found
}

const facets = (marks: readonly Mark[], panel: string) =>
  marks.flatMap((mark) =>
    mark.mark === 'path' && mark.role === 'facet' && mark.of === panel ? mark.runs : [],
  )

/** Points of two figures in any order. */
const sorted = (runs: readonly (readonly (readonly [number, number])[])[]) =>
  [...new Set(runs.flat().map(([x, y]) => `${x.toFixed(1)} ${y.toFixed(1)}`))].sort()

describe('a strip that is pushed through', () => {
  test.each([
    ['lantern', lantern],
    ['beak', wedge],
  ] as const)(
    '%s passes where the card is flat: there it lies alike on both sides of the turn',
    (id, design) => {
      const push = motion(design, 'reversing', [id])
      expect(push.stretches).toBe(2)
      // A strip cut from a flat sheet is in it at 180 degrees, whichever way it is folded (Maekawa's vertex, unfolded).
      expect(push.told(0.5)).toBe('card open 180°')
      expect(push.told(0)).toBe(push.told(1))
      const before = push.at(0.4999999, true).marks
      const after = push.at(0.5, true).marks
      for (const side of ['left', 'right'])
        expect(sorted(facets(before, `${id}/${side}`))).toEqual(sorted(facets(after, `${id}/${side}`)))
    },
  )

  test('lies in the pages at first and stands before them at last', () => {
    const push = motion(lantern, 'reversing', ['lantern'])
    const still = stepMotion(lantern, 'open', SIZE, { opening: 110 })
    expect(sorted(facets(push.at(0, true).marks, 'lantern/left'))).not.toEqual(
      sorted(facets(push.at(1, true).marks, 'lantern/left')),
    )
    expect(still).not.toBeNull()
  })
})

describe('opening and shutting', () => {
  test('go from shut to the opening of the step, or from it to shut, and stop every 15 degrees', () => {
    const open = stepMotion(lantern, 'open', SIZE, { opening: 105 })
    expect(open?.told(0)).toBe('card open 0°')
    expect(open?.told(1)).toBe('card open 105°')
    expect(open?.stops).toHaveLength(8)
    expect(open?.stops.map((stop) => open.told(stop))).toEqual(
      [0, 15, 30, 45, 60, 75, 90, 105].map((at) => `card open ${at}°`),
    )
    const shut = motion(lantern, 'shut')
    expect(shut.told(1)).toBe('card open 0°')
  })

  test('keep the left page where it is while the card shuts', () => {
    const shut = motion(lantern, 'shut')
    const [first, last] = [0, 0.8].map((share) => sorted(facets(shut.at(share, true).marks, 'page/left')))
    expect(first).toEqual(last)
  })
})

test('a piece that pops jumps: nothing is drawn between its two states', () => {
  const moth = dummy('moth')
  const pop = motion(moth, 'popping', ['moth'])
  expect(pop.says).toContain('jumps')
  const at = (share: number) => sorted(facets(pop.at(share, true).marks, 'moth/left'))
  expect(at(0)).toEqual(at(0.49))
  expect(at(0.5)).toEqual(at(1))
  expect(at(0)).not.toEqual(at(1))
})

test.each(dummies)('%s: every motion stays in its frame', (_, design) => {
  for (const work of orderOf(design)) {
    const found = motionOf(design, work, SIZE)
    for (const share of found ? [0, 0.5, 1] : []) {
      for (const mark of found?.at(share, true).marks ?? []) {
        if (mark.mark !== 'path' || mark.role === 'shadow') continue
        for (const [x, y] of mark.runs.flat())
          expect(
            x > -1 && x < SIZE.width + 1 && y > -1 && y < SIZE.height + 1,
            `${work.does} ${x} ${y}`,
          ).toBe(true)
      }
    }
  }
})

test('what does not move has no motion', () => {
  for (const state of ['flat', 'cutting', 'creased', 'piece'] as const)
    expect(stepMotion(lantern, state, SIZE)).toBeNull()
})
