// Which parts are looked at, over which openings and for how long: two V-folds whose tips lean towards each other and
// meet at an opening that trigonometry tells, and layers that stand over each other.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../../src/paper/index.ts'
import { compile, parseDesign } from '../../../src/paper/index.ts'
import type { Search } from '../../../src/paper/motion/clearance.ts'
import { meetings } from '../../../src/paper/motion/clearance.ts'
import { KERF } from '../../../src/paper/motion/leaves.ts'
import { motionOf } from '../../../src/paper/motion/motion.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { apart, DEG } from '../shared/space.ts'

/** Two V-folds with slits of 40 at 30 mm from their apexes, which are `gap` apart, leaning towards each other. */
const owls = (gap: number, ...more: readonly object[]): Design =>
  design([fold('owl', 'gutter', 70, -30, 40), fold('moth', 'gutter', 70 + gap, 30, 40), ...more])

/**
 * Where they meet, degrees: a ridge stands at f from the gutter, tan(f/2) = tan(wedge) cos(w/2), and both tips reach
 * half the gap past their apexes; half a cut's width is left out of each.
 */
const meetAt = (gap: number): number => {
  const cosine = -gap / 2 / (30 - KERF)
  const half = Math.sqrt((1 - cosine) / (1 + cosine))
  return 2 * DEG * Math.acos(half / (40 / 30))
}

function look(made: Design, more: Partial<Search> = {}) {
  const asked: string[] = []
  const effort = { left: 1e5 }
  const found = meetings({
    motion: motionOf(compile(made)),
    range: (one, two) => {
      asked.push(`${one} ${two}`)
      return [0, 180]
    },
    alone: () => [0, 180],
    effort,
    ...more,
  })
  const { panels } = compile(made).model
  return {
    found,
    names: found.map((one) => one.panels.map((panel) => panels[panel]?.name)),
    asked: asked.sort(),
    spent: 1e5 - effort.left,
  }
}

describe('two tips', () => {
  test.each([4, 10])('%d mm apart meet where trigonometry says so', (gap) => {
    const made = owls(gap)
    const { found, names } = look(made)
    expect(found).toHaveLength(1)
    const [one] = found
    expect(one?.verdict).toBe('touches')
    // From that opening on they are seen to cross.
    expect(one?.opening).toBeLessThanOrEqual(meetAt(gap) + 1e-6)
    expect(one?.opening).toBeGreaterThan(meetAt(gap) - 3e-4)
    expect(names[0]?.map((name) => name?.split('/')[0])).toEqual(['owl', 'moth'])
    // Half way between both apexes, over the gutter; told in space and on the second panel.
    const poser = compile(made)
    poser(one?.opening ?? 0)
    expect(one?.at[0]).toBeCloseTo(0, 3)
    expect(one?.at[1]).toBeCloseTo(70 + gap / 2, 3)
    expect(apart(poser.lift(one?.panels[1] ?? 0, one?.flat ?? [0, 0]), one?.at ?? [0, 0, 0])).toBeLessThan(
      1e-9,
    )
    expect(one?.depth).toBeGreaterThan(1e-6)
    expect(one?.depth).toBeLessThan(1)
  })

  test('are looked at from the widest opening that is asked for down to the least', () => {
    const at = meetAt(10)
    const over = (least: number, most: number) => look(owls(10), { range: () => [least, most] }).found
    expect(over(at + 0.1, 180)).toEqual([])
    expect(over(at - 0.1, 180)).toHaveLength(1)
    // They cross all the way from here on: first where it begins.
    expect(over(0, 30)[0]?.opening).toBeCloseTo(30, 9)
    expect(over(10, 20)[0]?.opening).toBeCloseTo(20, 9)
    expect(over(0, at + 5)[0]?.opening).toBeCloseTo(at, 3)
    expect(look(owls(10), { range: () => null }).found).toEqual([])
  })

  test('are not looked at where nobody asks', () => {
    expect(look(owls(10), { wants: (one, two) => one === two }).found).toEqual([])
    expect(look(owls(10), { wants: (one, two) => one === 0 && two === 1 }).found).toHaveLength(1)
    expect(look(owls(10), { skips: () => true })).toMatchObject({
      found: [],
      spent: 0,
    })
    // Their facets on the other side meet as well.
    const { names } = look(owls(10))
    const [first, second] = [names[0]?.[0], names[0]?.[1]]
    const { panels } = compile(owls(10)).model
    const rest = look(owls(10), {
      skips: (one, two) => panels[one]?.name === first && panels[two]?.name === second,
    })
    expect(rest.found).toHaveLength(1)
    expect(rest.names).not.toEqual(names)
  })
})

describe('two tips that come together as the card opens', () => {
  /**
   * Facets of 60 on bases of 45 degrees: flat, the ridges stand at 45 from the gutter, cos 60 = cos 45 cos p, and lean
   * towards each other by 40 cos 45 each. (A right spherical triangle.)
   */
  const moths = (gap: number) =>
    design(
      [
        gluedMoth({ apex: 40, foot: 15, ridge: 40 }),
        gluedMoth({ id: 'owl', apex: 40 + gap, toward: -1, foot: 15, ridge: 40 }),
      ],
      { height: 200 },
    )
  const reach = 80 * Math.SQRT1_2

  test('meet in the last degrees alone, where they lean farthest', () => {
    const { found } = look(moths(reach - 0.6))
    expect(found).toMatchObject([{ verdict: 'touches', opening: 180 }])
    expect(look(moths(reach - 0.6), { range: () => [0, 170] }).found).toEqual([])
    expect(look(moths(reach + 0.1)).found).toEqual([])
  })
})

describe('which are looked at', () => {
  const of = (made: Design, more: Partial<Search> = {}) => look(made, more).asked

  test('each with itself and what it stands on, and others that come near on their way', () => {
    expect(of(design([]))).toEqual(['-1 -1'])
    // Two layers side by side never come near; nor does what stands on the one.
    const apartFrom = design([layer('a', 'gutter', 10, 50, 20), layer('b', 'gutter', 80, 120, 20)])
    expect(of(apartFrom)).toEqual(['-1 -1', '-1 0', '-1 1', '0 0', '1 1'])
    const guest = design([layer('a', 'gutter', 10, 60, 30), layer('b', 'a/ridge', 10, 40, 10)])
    expect(of(guest)).toEqual(['-1 -1', '-1 0', '-1 1', '0 0', '0 1', '1 1'])
    // 16 mm apart, but their tips come together.
    expect(of(owls(10))).toContain('0 1')
    // Where one of them goes nowhere, or only over openings at which they are still apart, they need not be.
    expect(of(owls(10), { alone: () => null })).not.toContain('0 1')
    expect(of(owls(10), { alone: (one) => (one === 0 ? [150, 180] : [0, 30]) })).not.toContain('0 1')
    expect(of(owls(10), { alone: (one) => (one === 0 ? [0, 60] : [45, 180]) })).toContain('0 1')
  })

  test('and only where they are asked for', () => {
    const asked: string[] = []
    const wants = (one: number, two: number) => {
      asked.push(`${one} ${two}`)
      return one === -1
    }
    expect(of(owls(10), { wants })).toEqual(['-1 -1', '-1 0', '-1 1'])
    expect(asked).toContain('0 1')
  })
})

describe('looks', () => {
  const many = (gap: number) => owls(gap, layer('step', 'gutter', 120, 140, 10))

  test('are counted, and where there are none nothing is told', () => {
    const { spent, found } = look(many(10))
    expect(found).toHaveLength(1)
    expect(spent).toBeGreaterThan(0)
    expect(spent).toBeLessThan(2000)
    const none = look(many(10), { effort: { left: 0 } })
    // Every couple that was to be looked at, at the widest opening that it has.
    expect(none.found).toHaveLength(none.asked.length)
    for (const one of none.found)
      expect(one).toMatchObject({
        verdict: 'undecided',
        opening: 180,
        at: [0, 0, 0],
        flat: [0, 0],
        depth: 0,
      })
  })

  test('that are too few leave undecided where it stopped', () => {
    const few = { left: 12 }
    const { found } = look(parseDesign(JSON.parse(JSON.stringify(many(10)))), {
      effort: few,
    })
    expect(found.some(({ verdict }) => verdict === 'undecided')).toBe(true)
    expect(few.left).toBeLessThanOrEqual(0)
    expect(few.left).toBeGreaterThan(-60)
  })

  test('do not count where they are said not to', () => {
    const effort = { left: 500 }
    expect(look(many(10), { effort, counts: () => false }).found).toHaveLength(1)
    expect(effort.left).toBe(500)
    // Told are the papers looked at, and the openings.
    const spans = new Set<string>()
    look(many(10), {
      range: () => [20, 160],
      counts: (papers, span) => {
        expect(papers.length).toBeGreaterThanOrEqual(2)
        spans.add(span.join(' '))
        return true
      },
    })
    expect([...spans]).toEqual(['20 160'])
  })

  test('are taken once for the same paper: what is kept costs as much, and says the same', () => {
    const made = many(10)
    const [one, two] = [look(made), look(made)]
    expect(two.found).toEqual(one.found)
    expect(two.spent).toBe(one.spent)
    // Over other openings it is another question.
    expect(look(made, { range: () => [meetAt(10) + 1, 180] }).found).toEqual([])
    expect(look(made, { range: () => [0, meetAt(10) - 5] }).found[0]?.opening).toBeCloseTo(meetAt(10) - 5, 9)
    expect(look(made).found).toEqual(one.found)
    // One more at the end changes nothing for the others, but who is who.
    const before = design([layer('first', 'gutter', 5, 20, 8), ...made.mechanisms])
    const next = look({
      ...before,
      mechanisms: [before.mechanisms[0], ...made.mechanisms] as never,
    })
    expect(next.names).toEqual(one.names)
    expect(next.found[0]?.opening).toBe(one.found[0]?.opening)
    expect(next.found[0]?.panels).toEqual(one.found[0]?.panels.map((panel) => panel + 2))
  })
})

describe('what stands over each other', () => {
  // Both on the gutter: the ridge of the one is 2 x 20 cos(w/2) high, that of the other 2 x 30 cos(w/2); where they
  // share a stretch of the gutter the page is cut twice.
  test('is clear as long as it moves alike, and crosses where it does not', () => {
    const nested = design([layer('a', 'gutter', 30, 100, 30), layer('b', 'gutter', 45, 85, 15)])
    expect(look(nested).found).toEqual([])
    // A V-fold of its own card whose ridge stands within the walls of a layer at some opening.
    const through = look(
      design([layer('a', 'gutter', 30, 100, 30), gluedMoth({ apex: 50, foot: 40, ridge: 60 })]),
    )
    expect(through.found.some(({ verdict }) => verdict === 'touches')).toBe(true)
    for (const { opening, depth } of through.found) {
      expect(opening).toBeGreaterThan(0)
      expect(opening).toBeLessThanOrEqual(180)
      expect(depth).toBeGreaterThan(0)
    }
  })

  test('at most one meeting is told of each two', () => {
    const { names } = look(
      design([layer('a', 'gutter', 30, 100, 30), gluedMoth({ apex: 50, foot: 40, ridge: 60 })]),
    )
    const couples = names.map((two) => two.map((name) => name?.split('/')[0]).join(' '))
    expect(new Set(couples).size).toBe(couples.length)
  })

  test('is held a hair off where it is stuck in one plane', () => {
    const shape = [
      [30, 30],
      [60, 30],
      [60, 60],
      [30, 60],
    ]
    const star = (id: string, on: string) => ({
      id,
      kind: 'rider',
      on,
      shape,
      glue: shape,
    })
    // One on each page: they come to lie on each other shut, and are clear.
    expect(look(design([star('one', 'page/left'), star('two', 'page/right')])).found).toEqual([])
    // One over the other is held a hair off it.
    expect(look(design([star('one', 'page/left'), star('two', 'page/left')])).found).toEqual([])
  })
})
