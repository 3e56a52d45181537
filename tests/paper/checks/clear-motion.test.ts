import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Check, Design } from '../../../src/paper/index.ts'
import { opensTo, poseAt } from '../../../src/paper/index.ts'
import { KERF } from '../../../src/paper/motion/leaves.ts'
import { first, fold, layer, mirrored, only } from '../shared/check-designs.ts'
import { crossings } from '../shared/crossing.ts'
import { design, gluedMoth, ladder, runs, vFold } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
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

  test('says over what it was judged', () => {
    // cos^2(w/2) = (cos^2 45 - cos^2 60) / sin^2 60 = 1/3: 109.47 degrees.
    const [found] = only('clear-motion', design([gluedMoth({ base: 60, facet: 45 })]))
    expect(found).toMatchObject({ ok: true, verdict: 'clear' })
    expect(found?.sentence).toBe(
      'All parts pass clear of each other, from flat to shut, as far as they go: the moth from 109.4° to shut, with all that stands on it.',
    )
  })

  const tent = {
    id: 'tent',
    kind: 'glued-tent',
    on: 'gutter',
    start: 18.2,
    end: 69,
    leftFoot: 32.9,
    rightFoot: 32.9,
    leftWall: 41.3,
    rightWall: 40.2,
  }

  test('a guest whose host crease is past shut does not hide it', () => {
    const guest = gluedMoth({
      id: 'owl',
      on: 'tent/right',
      apex: 10.7,
      foot: 11.1,
      ridge: 13.6,
      base: 41.5,
      facet: 44.7,
    })
    // The right wall lies along its page, 32.9 + 40.2 from the gutter, where the left one reaches it.
    const far = 32.9 + 40.2
    const from = Math.acos((32.9 ** 2 + far ** 2 - 41.3 ** 2) / (2 * 32.9 * far)) * DEG
    for (const made of [design([tent]), design([tent, guest])]) {
      const [found] = only('clear-motion', made)
      expect(found).toMatchObject({ ok: false, verdict: 'touches' })
      expect(found?.ids).toContain('tent')
      expect(found?.opening).toBeLessThan(from)
      expect(poseAt(made, from - 0.01).creases['tent/right']?.angle).toBeLessThan(0)
      expect(poseAt(made, from + 0.01).creases['tent/right']?.angle).toBeGreaterThan(0)
    }
  })

  test('whatever a glued guest does, it hides nothing that its host runs into', () => {
    let touches = 0
    fc.assert(
      fc.property(
        gluedDesigns({ most: 3, least: 2, kinds: ['glued-v-fold', 'glued-tent'], match: ['any', 'shuts'] }),
        (made) => {
          const [host, ...others] = made.mechanisms
          // Only what stands on it: what stands elsewhere could be hit itself.
          if (!host || others.some(({ on }) => on === 'gutter')) return
          const alone = only('clear-motion', { ...made, mechanisms: [host] })
          const all = only('clear-motion', made)
          for (const one of alone.filter(({ verdict, waits }) => verdict === 'touches' && !waits)) {
            touches++
            expect(all.some(({ ids, ok }) => !ok && one.ids.every((id) => ids.includes(id)))).toBe(true)
          }
        },
      ),
      runs(150),
    )
    expect(touches).toBeGreaterThan(20)
  })
})

describe('facets that keep to their pages', () => {
  test.each([
    ['an outside V-fold with facets as wide as its bases', gluedMoth({ side: 'outside', facet: 45 })],
    [
      'the same with unlike sides',
      gluedMoth({
        side: 'outside',
        base: undefined,
        facet: undefined,
        left: { base: 40, facet: 40 },
        right: { base: 55, facet: 55 },
      }),
    ],
    [
      'an outside tent with walls as wide as its feet',
      {
        id: 'tent',
        kind: 'glued-tent',
        on: 'gutter',
        side: 'outside',
        start: 20,
        end: 60,
        leftFoot: 30,
        rightFoot: 30,
        leftWall: 30,
        rightWall: 30,
      },
    ],
    [
      'facets that make half a turn with their bases',
      gluedMoth({ base: 120, facet: 60, foot: 20, ridge: 20 }),
    ],
  ])('%s pass clear, and lie in the pages all the way', (_, m) => {
    const made = design([m])
    for (let opening = 0; opening <= 180; opening += 1.5)
      for (const [name, { angle }] of Object.entries(poseAt(made, opening).creases))
        if (/\/(left|right)$/.test(name)) expect(Math.abs(angle)).toBeLessThan(1e-5)
    expect(only('clear-motion', made)).toMatchObject([{ ok: true, verdict: 'clear' }])
  })
})
