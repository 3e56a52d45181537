// Wishes made from random sound designs, and so known to be possible: what is found for them, checked again.
import { describe, expect, test } from 'vitest'
import type { Design, Find, Vec3, Wish } from '../../../src/paper/index.ts'
import {
  bestOf,
  check,
  find,
  finding,
  measure,
  parseDesign,
  poseAt,
  sought,
  swing,
} from '../../../src/paper/index.ts'
import { design, gluedPond } from '../shared/designs.ts'
import { seenToWork, soundDesigns } from '../shared/sound.ts'

const PATIENCE = 120_000

const bare = design([])

const sound = (made: Design): boolean => check(made, { repairs: false }).every(({ ok }) => ok)

const tipOf = ({ design: made, ids }: Find, opening: number): Vec3 =>
  measure(made, opening).tips[ids.at(-1) ?? '']?.at ?? [Number.NaN, Number.NaN, Number.NaN]

const apart = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

/** A wish for the tip that the last mechanism of a design has, on the design without it. */
function wishFor(made: Design, opening: number): { given: Design; wish: Wish } {
  const last = made.mechanisms.at(-1)
  const at = measure(made, opening).tips[last?.id ?? '']?.at as Vec3
  return { given: { ...made, mechanisms: made.mechanisms.slice(0, -1) }, wish: { opening, at } }
}

describe('wishes that are known to be possible', () => {
  const asked = soundDesigns(16, 17).map((made, k) => wishFor(made, [60, 90, 120, 150][k % 4] as number))
  const answers = asked.map(({ given, wish }) => ({ given, wish, finds: find(given, wish) }))

  test('are found, nine in ten at least', () => {
    const share = answers.filter(({ finds }) => finds.length > 0).length / answers.length
    expect(share).toBeGreaterThanOrEqual(0.9)
  })

  test(
    'are found within a millimetre, where a ruler finds the tip, by sound designs alone',
    () => {
      for (const { given, wish, finds } of answers)
        for (const one of finds) {
          expect(one.design.mechanisms.slice(0, given.mechanisms.length)).toEqual(given.mechanisms)
          expect(one.design.mechanisms.slice(given.mechanisms.length).map(({ id }) => id)).toEqual(one.ids)
          expect(one.ids.length).toBeLessThanOrEqual(2)
          const tip = tipOf(one, wish.opening)
          expect(apart(tip, wish.at)).toBeLessThanOrEqual(1)
          expect(apart(tip, one.tip)).toBeLessThan(1e-6)
          expect(sound(one.design)).toBe(true)
          expect(parseDesign(JSON.parse(JSON.stringify(one.design))).mechanisms).toEqual(
            one.design.mechanisms,
          )
        }
    },
    PATIENCE,
  )

  test(
    'are seen to be given',
    () => {
      for (const { finds } of answers) for (const one of finds.slice(0, 2)) seenToWork(one.design, 9)
    },
    PATIENCE,
  )

  test('are answered alike when asked again', () => {
    const [first] = asked
    if (!first) throw new Error('nothing was asked')
    expect(JSON.stringify(find(first.given, first.wish))).toBe(JSON.stringify(answers[0]?.finds))
  })
})

describe('ways that are known to be gone', () => {
  // The way of the last tip of a random sound design, from its shut side on: three marks of it, and its end.
  const asked = soundDesigns(6, 41).flatMap((made, k) => {
    const opening = [90, 120, 150][k % 3] as number
    const { given, wish } = wishFor(made, opening)
    const last = made.mechanisms.at(-1)?.id ?? ''
    const path = [0.3, 0.55, 0.8].map((share) => {
      const when = Math.round(share * opening)
      return { opening: when, at: measure(made, when).tips[last]?.at as Vec3 }
    })
    return path.every(({ at }) => at !== undefined) ? [{ given, wish: { ...wish, path, near: 4 } }] : []
  })
  const answers = asked.map(({ given, wish }) => ({ wish, finds: find(given, wish) }))

  test('are found, three in four at least', () => {
    expect(asked.length).toBeGreaterThanOrEqual(5)
    const share = answers.filter(({ finds }) => finds.length > 0).length / answers.length
    expect(share).toBeGreaterThanOrEqual(0.75)
  })

  test(
    'are gone as near as is told, the nearest first, by sound designs alone',
    () => {
      for (const { wish, finds } of answers) {
        for (const one of finds) {
          // A tip as a ruler finds it at each mark, by poses that share nothing with the search.
          const off = wish.path.map(({ opening, at }) => apart(tipOf(one, opening), at))
          expect(Math.max(...off)).toBeCloseTo(one.strays, 6)
          expect(one.strays).toBeLessThanOrEqual(4 + 1e-9)
          expect(apart(tipOf(one, wish.opening), wish.at)).toBeLessThanOrEqual(1)
          expect(sound(one.design)).toBe(true)
        }
        const steps = finds.map(({ strays }) => Math.floor(strays / 0.5))
        expect(steps).toEqual([...steps].sort((a, b) => a - b))
      }
    },
    PATIENCE,
  )

  test('that may be missed by much are not met at the cost of the tip’s own place', () => {
    // A mark far below where tips of the gutter come by: 15 mm may be missed, and the tip itself is met all the same.
    const path = [{ opening: 45, at: [0, 70, 28] as Vec3 }]
    const finds = find(bare, { opening: 90, at: [0, 70, 45], path, near: 20, on: ['gutter'] })
    expect(finds.length).toBeGreaterThan(0)
    for (const one of finds) {
      expect(apart(tipOf(one, 90), [0, 70, 45])).toBeLessThanOrEqual(1)
      expect(apart(tipOf(one, 45), [0, 70, 28])).toBeLessThanOrEqual(20)
    }
  })

  test('that cannot be gone are told by how far the nearest strays', () => {
    const path = [{ opening: 45, at: [0, 140, 90] as Vec3 }]
    const { finds, missed } = sought(bare, { opening: 90, at: [0, 40, 20], path, on: ['gutter'] })
    expect(finds).toEqual([])
    expect(missed?.sentence).toMatch(/^(No way goes along the path|What reaches it does not work)/)
    const { nearest, miss = 0 } = missed ?? {}
    if (!nearest) throw new Error('nothing was near')
    const off = [
      apart(tipOf(nearest as Find, 90), [0, 40, 20]),
      apart(tipOf(nearest as Find, 45), [0, 140, 90]),
    ]
    expect(Math.max(...off)).toBeCloseTo(miss, 6)
  })
})

describe('a beak 40 mm above the page at 90 degrees', () => {
  // On the gutter a point this far from either page: 40 times the square root of two above the table.
  const wish: Wish = { opening: 90, at: [0, 70, 40 * Math.SQRT2] }
  const finds = find(bare, wish)

  test('is given by unlike mechanisms, the simplest first', () => {
    expect(finds.length).toBeGreaterThanOrEqual(4)
    expect(finds.length).toBeLessThanOrEqual(6)
    const kindsOf = finds.map(({ design: { mechanisms } }) => mechanisms.map(({ kind }) => kind).join())
    expect(new Set(kindsOf).size).toBeGreaterThanOrEqual(3)
    expect(finds[0]?.ids).toHaveLength(1)
  })

  test('stands 40 mm off the page', () => {
    for (const one of finds)
      expect(measure(one.design, 90).tips[one.ids.at(-1) ?? '']?.rise).toBeGreaterThan(39)
  })

  test('can be of the card alone, or of its own card alone', () => {
    const from = (made: 'card' | 'own') =>
      find(bare, { ...wish, made }).flatMap(({ design: { mechanisms } }) =>
        mechanisms.map(({ kind }) => kind.startsWith('cut')),
      )
    expect(new Set(from('card'))).toEqual(new Set([true]))
    expect(new Set(from('own'))).toEqual(new Set([false]))
  })

  test.each(['near', 'far', 'gutter'] as const)('comes from where it is asked to: %s', (from) => {
    for (const one of find(bare, { ...wish, from })) {
      const path = swing(one.design, one.ids.at(-1) ?? '', 180)
      const [shut, open] = [path[0], path[90]]
      const [a, b] = [shut?.at as Vec3, open?.at as Vec3]
      // By hand: up off the page, along the gutter either way, or inwards; the longest of these.
      const ways = {
        gutter: open?.rise ?? 0,
        near: b[1] - a[1],
        far: a[1] - b[1],
        edge: Math.hypot(a[0], a[2]) - Math.hypot(b[0], b[2]),
      }
      expect(ways[from]).toBe(Math.max(...Object.values(ways)))
    }
  })

  test('sinks no lower than is asked', () => {
    const high = find(bare, { ...wish, above: 15 })
    expect(high.length).toBeGreaterThan(0)
    for (const one of high)
      for (const { opening, rise } of swing(one.design, one.ids.at(-1) ?? '', 90))
        if (opening >= 90) expect(rise).toBeGreaterThan(14.5)
  })

  test('goes a drawn way', () => {
    const [known] = find(bare, { ...wish, made: 'own' })
    if (!known) throw new Error('nothing was found')
    const path = [40, 140].map((opening) => ({ opening, at: tipOf(known, opening) }))
    const all = find(bare, { ...wish, path, near: 3 })
    expect(all.length).toBeGreaterThan(0)
    for (const one of all)
      for (const mark of path) expect(apart(tipOf(one, mark.opening), mark.at)).toBeLessThanOrEqual(3)
  })

  test('is built on no other fold than is allowed', () => {
    const given = design([gluedPond])
    for (const {
      design: { mechanisms },
    } of find(given, { ...wish, on: ['pond/ridge'] }))
      expect(mechanisms[1]?.on).toBe('pond/ridge')
  })
})

test(
  'two mechanisms are chained where one alone cannot',
  () => {
    // Low beside the gutter, where a small tent on the side fold of a layer has its ridge.
    const wish: Wish = { opening: 90, at: [28.3, 70, 20.7], on: ['gutter'] }
    const pairs = find(bare, wish)
    expect(pairs.length).toBeGreaterThan(2)
    for (const one of pairs) {
      expect(sound(one.design)).toBe(true)
      const [parent, child] = one.design.mechanisms
      expect(one.ids).toEqual([parent?.id, child?.id])
      expect(parent?.on).toBe('gutter')
      expect(child?.on.startsWith(`${parent?.id}/`)).toBe(true)
    }
  },
  PATIENCE,
)

describe('what cannot be', () => {
  test(
    'says how near it comes',
    () => {
      const wish: Wish = { opening: 90, at: [0, 74, 400], on: ['gutter'] }
      const { finds, missed } = sought(bare, wish)
      expect(finds).toEqual([])
      expect(missed?.sentence).toMatch(/^No fold reaches: the nearest that works leaves \d+ mm\.$/)
      const { nearest, miss = 0 } = missed ?? {}
      if (!nearest) throw new Error('nothing was near')
      expect(sound(nearest.design)).toBe(true)
      expect(apart(tipOf({ ...nearest } as Find, 90), wish.at)).toBeCloseTo(miss, 6)
    },
    PATIENCE,
  )

  test('an opening that the card does not reach is told', () => {
    // A facet angle under the base angle: it stops at 109.47 degrees (geometry.md, section 4).
    const stopped = design([
      {
        id: 'moth',
        kind: 'glued-v-fold',
        on: 'gutter',
        apex: 40,
        toward: 1,
        base: 60,
        facet: 45,
        foot: 20,
        ridge: 20,
      },
    ])
    const { missed } = sought(stopped, { opening: 150, at: [0, 60, 30] })
    expect(missed?.sentence).toBe('The card opens from 0° to 109°, not to 150°.')
  })

  test.each([
    [
      { opening: 200, at: [0, 0, 0] },
      'opening must be a number from 0 (shut) to 180 (flat) degrees, not 200',
    ],
    [
      { opening: 90, at: [0, Number.NaN, 0] },
      'at must be three numbers x, y, z from -2000 to 2000 mm, not 0, NaN, 0',
    ],
    [{ opening: 90, at: [0, 0, 0], within: 0 }, 'within must be a number from 0.1 to 100 mm, not 0'],
  ] as const)('%j is refused', (wish, sentence) => {
    expect(() => find(bare, wish as unknown as Wish)).toThrow(new RangeError(sentence))
  })
})

test('finds come as they are found, and the best of them are what is given', () => {
  const wish: Wish = { opening: 90, at: [0, 70, 50] }
  const work = finding(bare, wish)
  const finds: Find[] = []
  let steps = 0
  for (let { done, value } = work.next(); !done; { done, value } = work.next()) {
    steps++
    if (value && 'ids' in value) finds.push(value)
  }
  expect(steps).toBeGreaterThan(finds.length)
  expect(bestOf(finds)).toEqual(find(bare, wish))
})

test('a tip that may stick out may: what is not hidden is told by its check alone', () => {
  const wish: Wish = { opening: 90, at: [0, 74, 120] }
  const shown = find(bare, { ...wish, hidden: false })
  expect(shown.length).toBeGreaterThan(0)
  for (const one of shown)
    for (const { name, ok } of check(one.design, { repairs: false }))
      if (name !== 'stays-inside') expect(ok).toBe(true)
})

test('what a find asks of a maker', () => {
  const [own] = find(bare, { opening: 90, at: [0, 70, 50], made: 'own' })
  if (!own) throw new Error('nothing was found')
  const { layers, thickness, paper, area, joints, pieces } = own.facts
  // Two pages, and at least two facets between them.
  expect(layers).toBeGreaterThanOrEqual(4)
  expect(thickness).toBeCloseTo(layers * bare.card.caliper, 9)
  expect(paper).toHaveLength(pieces)
  expect(area).toBeCloseTo(
    paper.reduce((sum, { width, height }) => sum + width * height, 0),
    9,
  )
  expect(joints).toBeGreaterThanOrEqual(2)
  expect(poseAt(own.design, 90).stopped).toEqual([])
})
