import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Check, Design } from '../../../src/paper/index.ts'
import { opensTo, poseAt } from '../../../src/paper/index.ts'
import { KERF } from '../../../src/paper/motion/sheets.ts'
import { first, fold, layer, mirrored, only } from '../shared/check-designs.ts'
import { crossings } from '../shared/crossing.ts'
import { design, ladder, runs, vFold } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'
import { apart, DEG, RAD } from '../shared/space.ts'

/** Two equal V-folds, point to point on the gutter with a gap between them. */
const owls = (wedge: number, ridge: number, gap: number): Design =>
  design([vFold('owl', 'gutter', 100, -ridge, wedge), vFold('moth', 'gutter', 100 + gap, ridge, wedge)], {
    width: 200,
    height: 220,
  })

const motion = (made: Design): Check => only('clear-motion', made)[0] as Check

describe('a proof', () => {
  test.each(ladder)('$name passes clear', ({ design: made }) => {
    expect(motion(made)).toMatchObject({ ok: true, verdict: 'clear', value: 0 })
  })

  test('two halves of one slit touch only when flat, and that is no collision', () => {
    const heron = [fold('beak', 'gutter', 124, -48, 42), fold('jaw', 'gutter', 40, 36, 42)]
    expect(first('clear-motion', heron)).toMatchObject({ ok: true, verdict: 'clear' })
  })

  test('holds against dense sampling: no opening shows two panels that cross', () => {
    let proved = 0
    fc.assert(
      fc.property(gardens(6), fc.integer({ min: 0, max: 99 }), (made, shift) => {
        if (motion(made).verdict !== 'clear') return
        proved++
        // Papers that cross with a rim of 0.1 mm all round: twice what a cut takes away.
        const look = crossings(made, 2 * KERF + 0.01)
        for (let opening = 1 + shift / 100; opening <= 180; opening += 2.03) expect(look(opening)).toEqual([])
      }),
      runs(150),
    )
    expect(proved).toBeGreaterThan(20)
  })

  test('holds for V-folds point to point, where most do collide', () => {
    const seen = { clear: 0, touches: 0, undecided: 0 }
    fc.assert(
      fc.property(
        fc.integer({ min: 300, max: 620 }),
        fc.integer({ min: 20, max: 60 }),
        fc.integer({ min: 1, max: 200 }),
        (wedge, ridge, gap) => {
          const made = owls(wedge / 10, ridge, gap / 10)
          const { verdict, opening } = motion(made)
          seen[verdict ?? 'undecided']++
          const look = crossings(made, 2 * KERF + 0.01)
          if (verdict === 'clear') for (let at = 1; at <= 180; at += 1.7) expect(look(at)).toEqual([])
          // Where they touch they do cross, there or a little further on.
          if (verdict === 'touches')
            expect(
              [0, 0.2, 1, 3, 10].some(
                (on) => crossings(made, 1e-6)(Math.max(0.5, (opening ?? 0) - on)).length > 0,
              ),
            ).toBe(true)
        },
      ),
      runs(80),
    )
    expect(seen.clear).toBeGreaterThan(5)
    expect(seen.touches).toBeGreaterThan(5)
    expect(seen.undecided).toBe(0)
  })
})

describe('two owls back to back', () => {
  // Ridge angle f from the gutter, tan(f/2) = tan a cos(t/2) (mirror of the gutter; sources: spherical
  // cosine rule). The tips lean back by -L cos f each; they meet where that is half the gap.
  const meeting = (wedge: number, ridge: number, gap: number): number =>
    2 * Math.acos(Math.tan(Math.acos(-gap / 2 / ridge) / 2) / Math.tan(wedge * RAD)) * DEG

  test.each([
    [53, 30, 8],
    [55, 40, 4],
    [60, 30, 20],
  ])('with wedge %i, ridges of %i and a gap of %i mm meet where their tips do', (wedge, ridge, gap) => {
    const found = motion(owls(wedge, ridge, gap))
    expect(found).toMatchObject({ ok: false, verdict: 'touches' })
    const at = meeting(wedge, ridge, gap)
    // The tips are rounded off by half a cut, so they are felt a little later.
    expect(found.opening).toBeLessThanOrEqual(at + 1e-6)
    expect(found.opening).toBeGreaterThan(meeting(wedge, ridge, gap + 8 * KERF))
    expect(found.sentence).toBe(
      `The owl and the moth run into each other when the card is open at ${Math.round(found.opening ?? 0)}°.`,
    )
  })

  test('pass clear if the gap is as wide as they lean when shut, and touch if it is a millimetre less', () => {
    const lean = 2 * 40 * -Math.cos(2 * 55 * RAD)
    expect(motion(owls(55, 40, lean + 0.01))).toMatchObject({ ok: true, verdict: 'clear' })
    expect(motion(owls(55, 40, lean - 1))).toMatchObject({ ok: false, verdict: 'touches' })
  })

  test('the place that is pointed at lies on both, in space and on the sheet', () => {
    const made = owls(55, 40, 4)
    const { space, flat, opening, ids } = motion(made)
    expect(ids.slice(0, 2)).toEqual(['owl', 'moth'])
    expect(space?.[0]).toBeLessThan(0.5)
    // Half-way between the two apexes, by symmetry.
    expect(space?.[1]).toBeCloseTo(102, 0)
    const tip = poseAt(made, opening ?? 0).panels['owl/left']?.[1]
    expect(apart(space ?? [0, 0, 0], tip ?? [0, 0, 0])).toBeLessThan(0.5)
    expect(flat?.length).toBe(1)
  })
})

test('what cannot be cut cannot be judged, and says what to mend first', () => {
  expect(
    first('clear-motion', [fold('beak', 'gutter', 110, -40, 38), fold('eye', 'beak/ridge', 30, 14, 4)]),
  ).toMatchObject({
    ok: false,
    verdict: 'undecided',
    waits: true,
    sentence: 'Whether all parts pass clear of each other can be told once the eye can be cut.',
  })
})

test('a V-fold whose folds never turn lies flat on the page: nobody can tell that it passes clear', () => {
  const stuck = first('clear-motion', [fold('beak', 'gutter', 60, -40, 30, { lean: 40 })])
  expect(stuck).toMatchObject({ ok: false, verdict: 'undecided' })
  expect(Number.isFinite(stuck.value)).toBe(true)
})

test('lanterns in lanterns pass clear: every layer keeps parallel to a page', () => {
  const lanterns = [
    layer('lamp', 'gutter', 10, 110, 40),
    layer('flame', 'lamp/ridge', 15, 85, 22),
    layer('spark', 'flame/ridge', 15, 55, 9),
  ]
  expect(first('clear-motion', lanterns)).toMatchObject({ ok: true, verdict: 'clear' })
})

test('the mirrored twin has the same verdict at the same opening', () => {
  fc.assert(
    fc.property(gardens(5), (made) => {
      const [one, two] = [motion(made), motion(mirrored(made))]
      expect(two.verdict).toBe(one.verdict)
      if (one.opening !== undefined) expect(two.opening).toBeCloseTo(one.opening, 2)
    }),
    runs(40),
  )
})

describe('a card that stops short of shut and of flat', () => {
  // Two facets span at most their sum, at least their difference (triangle inequality on the sphere), and
  // what they span is given by the spherical law of cosines.
  const lone = {
    id: 'owl',
    kind: 'glued-v-fold',
    on: 'gutter',
    apex: 30,
    toward: 1,
    foot: 40,
    ridge: 45,
    tab: 0,
  }
  const [b1, a1, b2, a2] = [27.29, 19.281, 25.21, 17.2]
  const made = design([{ ...lone, left: { base: b1, facet: a1 }, right: { base: b2, facet: a2 } }])
  const spanAt = (span: number): number => {
    const [p, q] = [b1 * RAD, b2 * RAD]
    const cosine = (Math.cos(span * RAD) - Math.cos(p) * Math.cos(q)) / (Math.sin(p) * Math.sin(q))
    return Math.acos(Math.min(1, cosine)) * DEG
  }

  test('is judged between its two stops, not beyond them', () => {
    expect(opensTo(made, 'owl')).toBeCloseTo(spanAt(a1 + a2), 6)
    const found = only('clear-motion', made)
    expect(found[0]).toMatchObject({ ok: false, verdict: 'touches' })
    for (const { opening } of found) {
      expect(opening).toBeGreaterThanOrEqual(spanAt(Math.abs(a1 - a2)))
      expect(opening).toBeLessThanOrEqual(spanAt(a1 + a2))
    }
  })

  test('cannot be judged where no opening suits two of its parts, and is not called clear', () => {
    const tent = { kind: 'glued-tent', on: 'gutter', leftFoot: 30, rightFoot: 30, tab: 0 }
    const [motionOf] = only(
      'clear-motion',
      design([
        // Reaches from foot to foot up to 60 degrees: 2 x 30 sin 30 = 15 + 15.
        { ...tent, id: 'low', start: 20, end: 50, leftWall: 15, rightWall: 15 },
        // Reaches back from 83.6 degrees on: 2 x 30 sin(83.6 / 2) = 60 - 20.
        { ...tent, id: 'high', start: 80, end: 110, leftWall: 60, rightWall: 20 },
      ]),
    )
    expect(motionOf).toMatchObject({ ok: false, verdict: 'undecided', waits: true })
    expect(motionOf?.sentence).toContain('at no opening do all parts of the card fit together')
  })
})
