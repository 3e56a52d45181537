// Wishes by hand: where pieces and folds can come to is told by plane geometry. Quick, beside the slow tests of random ones.
import { describe, expect, test } from 'vitest'
import type { Find } from '../../../../src/paper/answers/seek/find.ts'
import { bestOf, finding, sought } from '../../../../src/paper/answers/seek/find.ts'
import type { Wish } from '../../../../src/paper/answers/seek/wish.ts'
import type { Design, Mechanism } from '../../../../src/paper/index.ts'
import { check } from '../../../../src/paper/index.ts'
import { fold, layer } from '../../shared/check-designs.ts'
import { design, gluedMoth } from '../../shared/designs.ts'
import { apart } from '../../shared/space.ts'

const bare = design([])

const wish = (more: Partial<Wish> = {}): Wish => ({
  opening: 90,
  at: [40, 60, 40],
  on: ['page/right'],
  ...more,
})

const isSound = (made: Design): boolean => check(made, { repairs: false }).every(({ ok }) => ok)

/** The first so many that are found, and how often nothing came in between. */
function firsts(made: Design, wanted: Wish, count: number) {
  const work = finding(made, wanted)
  const finds: Find[] = []
  let [steps, began] = [0, true]
  for (; finds.length < count; steps++) {
    const { done, value } = work.next()
    if (done) break
    if (steps === 0) began = value === null
    if (value) finds.push(value)
  }
  return { finds, began }
}

describe('on a page', () => {
  // At 90 degrees a page's points are (a, l, a) with across a sqrt 2: (40, 60, 40) lies on it.
  test('a piece is brought to a place on it', () => {
    const { finds, missed } = sought(bare, wish())
    expect(missed).toBeNull()
    expect(finds.length).toBeGreaterThan(0)
    for (const one of finds) {
      expect(one.ids).toEqual(['piece-1'])
      expect(one.design.mechanisms).toHaveLength(1)
      expect(one.design.mechanisms[0]).toMatchObject({ kind: 'rider', on: 'page/right', id: 'piece-1' })
      expect(one.miss).toBeLessThanOrEqual(1)
      expect(apart(one.tip, [40, 60, 40])).toBeCloseTo(one.miss, 6)
      expect(isSound(one.design)).toBe(true)
      expect(one.facts.pieces).toBe(1)
    }
    // Each slot is filled once: in front and behind.
    expect(finds.length).toBeLessThanOrEqual(2)
  })

  test('as near as is asked for', () => {
    for (const one of sought(bare, wish({ within: 0.2 })).finds) expect(one.miss).toBeLessThanOrEqual(0.2)
  })

  test('a place off it is missed by its distance from the page', () => {
    // (60, 60, 40): the nearest of the page is (50, 60, 50), 10 sqrt 2 away.
    const { finds, missed } = sought(bare, wish({ at: [60, 60, 40] }))
    expect(finds).toEqual([])
    expect(missed?.miss).toBeGreaterThan(10 * Math.SQRT2 - 1e-6)
    expect(missed?.miss).toBeLessThan(10 * Math.SQRT2 + 0.1)
    expect(missed?.sentence).toBe('No fold reaches: the nearest that works leaves 14 mm.')
    expect(apart(missed?.nearest?.tip ?? [0, 0, 0], [60, 60, 40])).toBeCloseTo(missed?.miss ?? 0, 6)
    expect(missed?.nearest && isSound(missed.nearest.design)).toBe(true)
    // 10.4 off the page and 9.9: from 10 mm on whole ones are told.
    const off = (far: number) => {
      const aside = far * Math.SQRT1_2
      return sought(bare, wish({ at: [50 + aside, 60, 50 - aside] })).missed?.sentence
    }
    expect(off(10.4)).toBe('No fold reaches: the nearest that works leaves 10 mm.')
    expect(off(9.9)).toBe('No fold reaches: the nearest that works leaves 9.9 mm.')
    // Less than 10 mm are told in tenths: (73, 60, 75) is sqrt 2 off the page.
    expect(sought(bare, wish({ at: [73, 60, 75] })).missed?.sentence).toBe(
      'No fold reaches: the nearest that works leaves 1.4 mm.',
    )
  })

  test('a place past the edge is missed by what is past it, unless it need not be hidden', () => {
    // (90, 60, 90) is 127.3 across a page of 105: 22.3 too far.
    const at = [90, 60, 90] as const
    const { finds, missed } = sought(bare, wish({ at: [...at] }))
    expect(finds).toEqual([])
    expect(missed?.miss).toBeGreaterThan(90 * Math.SQRT2 - 105)
    expect(missed?.miss).toBeLessThan(90 * Math.SQRT2 - 105 + 0.5)
    expect(missed?.sentence).toMatch(
      /^What reaches it does not work, and the nearest that works leaves 22 mm\. What stands in the way of a piece: The new piece.+\.$/,
    )
    const open = sought(bare, wish({ at: [...at], hidden: false }))
    expect(open.missed).toBeNull()
    expect(open.finds.length).toBeGreaterThan(0)
    for (const one of open.finds) {
      expect(one.miss).toBeLessThanOrEqual(1)
      const failed = check(one.design, { repairs: false }).flatMap(({ name, ok }) => (ok ? [] : [name]))
      expect(new Set(failed)).toEqual(new Set(['stays-inside']))
    }
  })

  test('what is to be cut from the card is found on no page', () => {
    expect(sought(bare, wish({ made: 'card' }))).toEqual({
      finds: [],
      missed: {
        miss: Number.POSITIVE_INFINITY,
        nearest: null,
        sentence: 'No fold reaches: nothing that works comes near.',
      },
    })
  })
})

describe('on the gutter', () => {
  const over = wish({ at: [0, 60, 30], on: ['gutter'] })

  test('a layer comes first: its ridge is as high over the gutter as both its walls lead', () => {
    const { finds, began } = firsts(bare, over, 2)
    expect(began).toBe(true)
    const [first, second] = finds
    // 2 d cos 45 for a height of 30: d = 21.2, and so 21, which is 0.30 short; its middle at 60.
    expect(first?.design.mechanisms[0]).toMatchObject({
      kind: 'cut-layer',
      on: 'gutter',
      left: 21,
      right: 21,
    })
    expect(first?.miss).toBeCloseTo(30 - 42 * Math.SQRT1_2, 9)
    expect(first?.tip[1]).toBeCloseTo(60, 9)
    expect(first?.sway).toBeCloseTo(1, 9)
    expect(first?.facts).toMatchObject({ layers: 4, pieces: 0, joints: 0 })
    expect(second?.design.mechanisms[0]?.kind).not.toBe('cut-layer')
    for (const one of finds) {
      expect(isSound(one.design)).toBe(true)
      expect(one.miss).toBeLessThanOrEqual(1)
    }
  })

  test('of its own card is what is asked for, and what the design has stays', () => {
    const made = design([layer('step', 'gutter', 110, 140, 20)])
    const [first] = firsts(made, { ...over, made: 'own' }, 1).finds
    expect(first?.design.mechanisms[0]).toEqual(made.mechanisms[0])
    expect(first?.design.mechanisms).toHaveLength(2)
    expect(first?.facts.pieces).toBeGreaterThan(0)
    expect(first?.ids).toEqual([first?.design.mechanisms[1]?.id])
  })
})

describe('what cannot be wished', () => {
  test('names a crease or panel that is not there', () => {
    expect(() => finding(bare, wish({ on: ['gutter', 'owl/ridge'] })).next()).toThrow(
      new RangeError('on must name creases or panels of the design, not owl/ridge'),
    )
    expect(() => finding(bare, wish({ opening: 200 })).next()).toThrow(RangeError)
  })

  test('lies where the card does not go', () => {
    // Pulled tight at 109.5 degrees; a hut's wall in its page's plane at 43.4 or so.
    const tight = design([gluedMoth({ base: 60, facet: 45 })])
    expect(sought(tight, wish({ opening: 120 }))).toEqual({
      finds: [],
      missed: {
        miss: Number.POSITIVE_INFINITY,
        nearest: null,
        sentence: 'The card opens from 0° to 109°, not to 120°.',
      },
    })
    const path: Wish['path'] = [{ opening: 150, at: [0, 60, 30] }]
    expect(sought(tight, wish({ path })).missed?.sentence).toBe(
      'The card opens from 0° to 109°, not to 150°.',
    )
  })

  test('has no room', () => {
    const tiny = design([fold('beak', 'gutter', 60, 6, 6)])
    expect(sought(tiny, wish({ at: [0, 60, 30], on: ['beak/ridge'] })).missed).toEqual({
      miss: Number.POSITIVE_INFINITY,
      nearest: null,
      sentence: 'No fold reaches: nothing that works comes near.',
    })
  })
})

describe('the best', () => {
  const found = (
    name: string,
    more: Partial<Find> & { joints?: number; kind?: string; on?: string },
  ): Find => {
    const { joints = 0, kind = 'cut-layer', on = 'gutter', ...rest } = more
    return {
      ids: [name],
      design: { mechanisms: [{ id: name, kind, on } as unknown as Mechanism] } as unknown as Design,
      tip: [0, 0, 0],
      miss: 0,
      strays: 0,
      sway: 1,
      facts: { layers: 2, thickness: 0.5, paper: [], area: 0, joints, pieces: 0 },
      ...rest,
    }
  }

  const order = (...finds: Find[]) => bestOf(finds).map(({ ids }) => ids.join())

  test('misses least, where all else is alike', () => {
    expect(order(found('a', { miss: 0.4 }), found('b', { miss: 0.1 }), found('c', { miss: 0.2 }))).toEqual([
      'b',
      'c',
      'a',
    ])
  })

  test('sways little: a millimetre of sway counts as two of miss, and beyond 5 no more', () => {
    const kinds = { kind: 'glued-tent' }
    expect(order(found('a', { sway: 2 }), found('b', { sway: 1, miss: 1.9, ...kinds }))).toEqual(['b', 'a'])
    expect(order(found('a', { sway: 2 }), found('b', { sway: 1, miss: 2.1, ...kinds }))).toEqual(['a', 'b'])
    expect(order(found('a', { sway: 9 }), found('b', { sway: 5, miss: 0.1, ...kinds }))).toEqual(['a', 'b'])
  })

  test('is glued little: two joints count as a millimetre', () => {
    const kinds = { kind: 'glued-tent' }
    expect(order(found('a', { joints: 2 }), found('b', { miss: 0.9, ...kinds }))).toEqual(['b', 'a'])
    expect(order(found('a', { joints: 2 }), found('b', { miss: 1.1, ...kinds }))).toEqual(['a', 'b'])
  })

  test('is one new part rather than two, and little card', () => {
    const two = (name: string, more: object) => ({ ...found(name, more), ids: [name, `${name}-2`] })
    expect(order(two('a', {}), found('b', { miss: 9.9, kind: 'glued-tent' }))).toEqual(['b', 'a,a-2'])
    expect(order(two('a', {}), found('b', { miss: 10.1, kind: 'glued-tent' }))).toEqual(['a,a-2', 'b'])
    // 100 cm² count as a millimetre.
    const large = { ...found('a', {}), facts: { ...found('a', {}).facts, area: 1e4 } }
    expect(order(large, found('b', { miss: 0.99995, kind: 'glued-tent' }))).toEqual(['b', 'a'])
    expect(order(large, found('b', { miss: 1.00005, kind: 'glued-tent' }))).toEqual(['a', 'b'])
  })

  test('keeps to a wished path: a millimetre off it counts as four of miss', () => {
    const kinds = { kind: 'glued-tent' }
    expect(order(found('a', { strays: 0.4 }), found('b', { miss: 1.5, ...kinds }))).toEqual(['b', 'a'])
    expect(order(found('a', { strays: 0.4 }), found('b', { miss: 1.7, ...kinds }))).toEqual(['a', 'b'])
    // Half a millimetre farther off the path, it comes later whatever else it has.
    expect(order(found('a', { strays: 0.6 }), found('b', { miss: 40, ...kinds }))).toEqual(['b', 'a'])
    expect(order(found('a', { strays: 0.9 }), found('b', { strays: 0.6, miss: 40, ...kinds }))).toEqual([
      'a',
      'b',
    ])
  })

  test('of each kind on one crease comes before the second of any, and six are enough', () => {
    const all = [1, 2, 3, 4, 5, 6, 7, 8].map((k) =>
      found(`m${k}`, {
        miss: k / 10,
        kind: k <= 5 ? 'cut-layer' : 'glued-tent',
        on: k === 3 ? 'owl/ridge' : 'gutter',
      }),
    )
    // The first of layers on the gutter, of those on the owl, of tents; then the second of layers and of tents; a third.
    expect(order(...all.reverse())).toEqual(['m1', 'm3', 'm6', 'm2', 'm7', 'm4'])
    expect(order()).toEqual([])
  })
})

describe('what nearly grants a wish', () => {
  /** A point so high over its page at 90 degrees, over the gutter. */
  const over = (rise: number, along: number): [number, number, number] => [0, along, rise * Math.SQRT2]

  const cases: readonly (readonly [number, number])[] = [
    [75, 74],
    [90, 74],
    [90, 40],
  ]
  test.each(cases)(
    '%d mm high, %d mm from the end: told no farther than what a lower wish leaves',
    (rise, along) => {
      const high = over(rise, along)
      const { finds, missed } = sought(bare, { opening: 90, at: high })
      expect(finds).toEqual([])
      // Nothing but what a search that looks a little lower finds by itself.
      const granted = [1, 6, 16].flatMap((by) =>
        sought(bare, { opening: 90, at: over(rise - by, along) }).finds.map(({ tip }) => apart(tip, high)),
      )
      expect(granted.length).toBeGreaterThan(0)
      // Halvings end within half a millimetre, a wish may be missed by one, and a search begins elsewhere.
      expect(missed?.miss).toBeLessThanOrEqual(Math.min(...granted) + 2)
      expect(apart(missed?.nearest?.tip ?? [0, 0, 0], high)).toBeCloseTo(missed?.miss ?? 0, 6)
      expect(missed?.nearest && isSound(missed.nearest.design)).toBe(true)
    },
  )

  test('its reasons name no part as if it were there, and of two alike which is meant', () => {
    for (const rise of [75, 90, 110]) {
      const { missed } = sought(bare, { opening: 90, at: over(rise, 74) })
      expect(missed?.sentence).toMatch(/What stands in the way of a .+: /)
      expect(missed?.sentence).not.toMatch(/ \d+’s|-fold \d|(layer|tent|trapezoid|piece|platform) \d/)
      if (missed?.sentence.includes('a V-fold on a V-fold'))
        expect(missed.sentence).toMatch(/(first|second) new V-fold/)
    }
  })
})
