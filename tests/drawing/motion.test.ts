// The motion of steps: it begins and ends in the states that the step describes, and goes by what rigid paper can do.
import { describe, expect, test } from 'vitest'
import { motionOf, orderOf } from '../../src/booklet/index.ts'
import type { Mark } from '../../src/drawing/pen/marks.ts'
import { stepMotion } from '../../src/drawing/steps/motion.ts'
import { foldedOver, overCover } from '../../src/drawing/steps/scenes-cut.ts'
import { taskOf } from '../../src/drawing/steps/steps.ts'
import type { Design } from '../../src/paper/index.ts'
import { card, dummies, dummy } from '../sheet/designs.ts'

const SIZE = { width: 340, height: 250 }

const lantern = card(105, 148, [
  { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 32, right: 32 },
])

/** Deeper on one side. */
const uneven = card(105, 148, [
  { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 32, right: 20 },
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

describe('strips that are creased', () => {
  const crease = motion(lantern, 'creased')
  const strip = (share: number) => sorted(facets(crease.at(share, true).marks, 'lantern/right'))
  const page = (share: number) => sorted(facets(crease.at(share, true).marks, 'page/right'))

  test.each([30, 90, 152, -30, -90, -152])('go round their fold line by %d degrees, both layers', (over) => {
    const paper = foldedOver(taskOf(lantern, {}), over)
    // By hand: 32 mm from the fold, an end that lay in the gutter goes round it on a circle.
    const [x, z] = [32 * Math.sin((over * Math.PI) / 180), 32 * (1 - Math.cos((over * Math.PI) / 180))]
    for (const side of ['left', 'right']) {
      const corners = paper.find(({ panel }) => panel === `lantern/${side}`)?.points ?? []
      expect(corners.map(([, y]) => y).sort((a, b) => a - b)).toEqual(
        [40, 40, 80, 80].map((y) => expect.closeTo(y, 6)),
      )
      // The two pages of a shut card lie a hair apart.
      const ends = corners.filter((p) => Math.hypot(p[0] - x, p[2] - z) < 0.5)
      expect(ends, side).toHaveLength(2)
    }
  })

  test('are folded over and lie flat again, first on one side of the card and then on the other', () => {
    expect(crease.stretches).toBe(5)
    expect([0, 0.2, 0.4, 0.5, 0.6, 0.8, 1].map((share) => crease.told(share))).toEqual([
      'strips folded 0° over to the front',
      'strips folded 152° over to the front',
      'card turned over by 0°',
      'card turned over by 90°',
      'strips folded 0° over to the back',
      'strips folded 152° over to the back',
      'strips folded 0° over to the back',
    ])
    for (const [one, other] of [
      [0, 0.3999999],
      [0.1, 0.3],
      [0.4, 0.3999999],
      [0.6, 0.5999999],
      [0.6, 1],
      [0.7, 0.9],
    ] as const)
      expect(strip(one), `${one} and ${other}`).toEqual(strip(other))
    expect(strip(0.1)).not.toEqual(strip(0))
    expect(strip(0.7)).not.toEqual(strip(0.6))
  })

  test('come over to the side that is seen, not under the card', () => {
    for (const share of [0.2, 0.8]) {
      const painted = crease
        .at(share, true)
        .marks.flatMap((mark) => (mark.mark === 'path' && mark.role === 'facet' ? [mark.of ?? ''] : []))
      const last = (name: string): number => painted.findLastIndex((of) => of.startsWith(name))
      expect(last('lantern/'), `${share}`).toBeGreaterThan(last('page/'))
    }
  })

  test('leave the card where it is, but while it is turned over', () => {
    for (const share of [0.1, 0.2, 0.3]) expect(page(share)).toEqual(page(0))
    for (const share of [0.7, 0.8, 0.9]) expect(page(share)).toEqual(page(1))
    expect(page(1)).not.toEqual(page(0))
  })
})

describe('a card that is laid on its cover', () => {
  const bound = { ...lantern, card: { ...lantern.card, cover: true } }
  const cover = motion(bound, 'covering')
  const at = (share: number, panel: string) => sorted(facets(cover.at(share, true).marks, panel))

  test('comes down on it, and the cover lies still meanwhile', () => {
    expect(cover.told(0)).toBe('card 40 mm over its cover')
    expect(cover.told(1 / 6)).toBe('card 20 mm over its cover')
    expect(at(0.3, 'cover/left')).toEqual(at(0, 'cover/left'))
    expect(at(0.3, 'page/left')).not.toEqual(at(0, 'page/left'))
    const high = (held: number): number =>
      overCover(taskOf(bound, {}), 150, held).paper.find(({ panel }) => panel === 'page/left')
        ?.points[0]?.[2] ?? Number.NaN
    expect(high(40) - high(0)).toBeCloseTo(40, 9)
  })

  test('and shuts and opens with it as one', () => {
    expect([1 / 3, 0.5, 2 / 3, 1].map((share) => cover.told(share))).toEqual([
      'card open 150°',
      'card open 75°',
      'card open 0°',
      'card open 150°',
    ])
    for (const panel of ['page/left', 'page/right', 'lantern/left', 'cover/left', 'cover/right']) {
      expect(at(0.3333333, panel), panel).toEqual(at(0.3333334, panel))
      expect(at(0.5, panel), panel).not.toEqual(at(0.4, panel))
      expect(at(1, panel), panel).toEqual(at(1 / 3, panel))
    }
  })

  test('a card without a cover is laid on none', () => {
    expect(stepMotion(lantern, 'covering', SIZE)).toBeNull()
  })
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
  for (const state of ['flat', 'cutting', 'piece'] as const)
    expect(stepMotion(lantern, state, SIZE)).toBeNull()
  // Strips whose two layers fold about different lines are creased when they are pushed.
  expect(stepMotion(uneven, 'creased', SIZE)).toBeNull()
})
