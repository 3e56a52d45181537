// Whether parts pass clear of each other, in numbers worked by hand: quick, beside the slow proofs' own tests.
import { expect, test } from 'vitest'
import { clearMotion } from '../../../src/paper/checks/clear-motion.ts'
import { subjectOf } from '../../../src/paper/checks/subject.ts'
import { KERF } from '../../../src/paper/motion/leaves.ts'
import { first, fold } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { DEG } from '../shared/space.ts'

const motion = (...mechanisms: object[]) => first('clear-motion', mechanisms)

/** Two V-folds whose tips lean past their apexes towards each other, `gap` mm between these. */
const owls = (gap: number) => [fold('owl', 'gutter', 70, -30, 40), fold('moth', 'gutter', 70 + gap, 30, 40)]

/** A ridge stands at f from the gutter, tan(f/2) = tan(wedge) cos(opening/2): both tips reach half the gap past. */
const meetAt = (gap: number): number => {
  const cosine = -gap / 2 / 30
  const half = Math.sqrt((1 - cosine) / (1 + cosine))
  return 2 * DEG * Math.acos(half / (40 / 30))
}

test.each([4, 10, 15])('two tips %d mm apart meet where both lean as far as that', (gap) => {
  const found = motion(...owls(gap))
  expect(found).toMatchObject({
    ok: false,
    verdict: 'touches',
    ids: ['owl', 'moth', 'owl/left', 'moth/left'],
  })
  // A rim as wide as half a cut does not count, on either side.
  expect(found.opening).toBeLessThanOrEqual(meetAt(gap) + 1e-6)
  expect(found.opening).toBeGreaterThan(meetAt(gap + 8 * KERF))
  expect(found.sentence).toBe(
    `The owl and the moth run into each other when the card is open at ${Math.round(found.opening ?? 0)}°.`,
  )
  // Where: between the two apexes, off the gutter.
  expect(found.space?.[1]).toBeGreaterThan(70)
  expect(found.space?.[1]).toBeLessThan(70 + gap)
  expect(found.space?.[0]).toBeCloseTo(0, 0)
  expect(found.value).toBeGreaterThan(0)
})

test('two tips that are farther apart than they lean pass clear', () => {
  // Shut they lean 30 cos(2 53.13) = 8.4 mm past each apex.
  expect(motion(...owls(16.9))).toMatchObject({
    ok: true,
    verdict: 'clear',
    value: 0,
    ids: [],
    sentence: 'All parts pass clear of each other, from flat to shut.',
  })
  expect(motion(...owls(16.5)).ok).toBe(false)
})

const tight = gluedMoth({ apex: 80, base: 60, facet: 45 })
const hut = {
  id: 'hut',
  kind: 'glued-tent',
  on: 'gutter',
  start: 20,
  end: 60,
  leftFoot: 30,
  rightFoot: 30,
  leftWall: 40,
  rightWall: 36,
}

test('what stops the card is told with how far it goes', () => {
  // Base 60 and facet 45 are pulled tight at arccos(-1/3), the octahedron's angle; 50 and 45 at 157.2 degrees:
  // cos²(t/2) = (cos² 45 - cos² 50) / sin² 50.
  const owl = gluedMoth({ id: 'owl', apex: 20, base: 50, facet: 45, foot: 20, ridge: 20 })
  const cos2 = (degrees: number) => Math.cos(degrees / DEG) ** 2
  const far = 2 * DEG * Math.acos(Math.sqrt((cos2(45) - cos2(50)) / (1 - cos2(50))))
  expect(motion(tight).sentence).toBe(
    'All parts pass clear of each other, from flat to shut, as far as they go: the moth from 109.4° to shut, with all that stands on it.',
  )
  expect(motion(tight, owl).sentence).toBe(
    `All parts pass clear of each other, from flat to shut, as far as they go: the moth from 109.4° to shut and the owl from ${(Math.floor(far * 10) / 10).toFixed(1)}° to shut, with all that stands on them.`,
  )
})

test('what would have to go through its page says so, and where', () => {
  const found = motion(gluedMoth({ pop: 'down' }))
  expect(found).toMatchObject({ ok: false, verdict: 'touches', unit: 'deg', limit: 0, sense: 'at-most' })
  expect(found.sentence).toMatch(
    /^The moth would have to go through the (left|right) page: it cannot lie down like this\.$/,
  )
  expect(found.ids[0]).toBe('moth')
  expect(found.value).toBeGreaterThan(1)
  // A facet as wide as its base lies in the fold, and is in nobody's way.
  expect(motion(gluedMoth({ pop: 'down', facet: 45 }))).toMatchObject({ ok: true, verdict: 'clear' })
})

test('parts that fit together at no opening are told apart from those that touch', () => {
  // Its walls differ by 80, and its joints are never more than 60 apart.
  const never = { ...hut, leftWall: 90, rightWall: 10 }
  expect(motion(never, tight)).toMatchObject({
    ok: false,
    verdict: 'undecided',
    waits: true,
    ids: ['hut'],
    sentence:
      'Nothing can be told of the whole motion. The hut fits at no opening of its fold: its two sides can never meet.',
  })
})

test('every look is counted, and where none is left nothing is called clear', () => {
  const look = (left: number) => {
    const effort = { left }
    const made = design(owls(30))
    const found = clearMotion(subjectOf(made, { bridge: 5, thickness: 2 }, null, effort), new Set())
    return { spent: left - effort.left, verdicts: found.map(({ verdict }) => verdict) }
  }
  const { spent, verdicts } = look(1e6)
  expect(verdicts).toEqual(['clear'])
  expect(spent).toBeGreaterThan(0)
  expect(spent).toBeLessThan(1e4)
  expect(look(0).verdicts).toContain('undecided')
  expect(look(0).verdicts).not.toContain('clear')
})
