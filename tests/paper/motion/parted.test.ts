// What keeps two flat bodies from being proved apart: on two pages and on the two walls of a layer, whose places are
// school geometry. A right wall's point `a` from the ridge lies at (a sin h, l, (40 - a) cos h), h half the opening;
// a left one's at (-a sin h, ...): the walls make the opening's own angle, and beyond their ridge (a < 0) they cross.
import { describe, expect, test } from 'vitest'
import { compile } from '../../../src/paper/index.ts'
import type { Box, Facet, Leaf } from '../../../src/paper/motion/leaves.ts'
import { liftsOf } from '../../../src/paper/motion/lift.ts'
import { bodyOf, motionOf } from '../../../src/paper/motion/motion.ts'
import type { Doubt } from '../../../src/paper/motion/parted.ts'
import { FIRST, proofsIn } from '../../../src/paper/motion/parted.ts'
import type { Flat } from '../../../src/paper/plane/lay.ts'
import { layer } from '../shared/check-designs.ts'
import { design } from '../shared/designs.ts'
import { RAD } from '../shared/space.ts'

const motion = motionOf(compile(design([layer('lamp', 'gutter', 40, 80, 20)])))

const [LEFT, RIGHT, LEFT_WALL, RIGHT_WALL] = [0, 1, 2, 3] as const

const scene = { motion, lifts: liftsOf(motion.model, [0, 180]) }

const proofs = proofsIn(scene, [0, 180])

const rectangle = (a0: number, a1: number, l0: number, l1: number): Flat[] => [
  [a0, l0],
  [a1, l0],
  [a1, l1],
  [a0, l1],
]

const facet = (panel: number, box: Box): Facet => {
  const body = bodyOf(panel, rectangle(...box))
  return { whole: body, body, box }
}

/** The same as a leaf, and how often its paper was asked for. */
function look(one: Facet, two: Facet, from: number, to: number, of = proofs) {
  const leaf = ({ body, box }: Facet): Leaf => ({
    panel: body.panel,
    outline: body,
    box,
    facets: () => [],
  })
  const seen = { asked: 0, effort: { left: 100 } }
  const doubt = of.doubt(
    leaf(one),
    leaf(two),
    () => {
      seen.asked++
      return [[one], [two]]
    },
    motion.stretch(motion.still(from), motion.still(to)),
    seen.effort,
  )
  return { doubt, asked: seen.asked, looks: 100 - seen.effort.left }
}

const pair = (one: Facet, two: Facet): Doubt => ({ one, two, gap: 0 })

describe('on two pages', () => {
  const left = facet(LEFT, [10, 20, 0, 10])
  const right = facet(RIGHT, [10, 20, 0, 10])

  test('what lies to one side of the other’s plane is apart by outlines alone, from shut on', () => {
    for (const [from, to] of [
      [0, 5],
      [20, 90],
      [170, 180],
    ] as const)
      expect(look(left, right, from, to)).toEqual({
        doubt: null,
        asked: 0,
        looks: 0,
      })
  })

  test('how far they are apart is told square to the one or the other', () => {
    // On two lines at an angle w, 10 from where they meet: the nearest are 10 sin w off the other line, up to 90
    // degrees; beyond that, the corners themselves: 20 sin(w/2) along the line between them, which is no axis there.
    for (const w of [10, 45, 80])
      expect(proofs.gapAt(pair(left, right), motion.still(w))).toBeCloseTo(10 * Math.sin(w * RAD), 9)
    // Flat they lie on either side of the gutter: 20 in between.
    expect(proofs.gapAt(pair(left, right), motion.still(180))).toBeCloseTo(20, 9)
    // Shut one over the other.
    expect(proofs.gapAt(pair(left, right), motion.still(0))).toBeCloseTo(0, 9)
    // Side by side along the gutter: 3 mm.
    const on = facet(RIGHT, [10, 20, 13, 23])
    expect(proofs.gapAt(pair(left, on), motion.still(0))).toBeCloseTo(3, 9)
  })

  test('they coincide where one lies over the other all the time', () => {
    const over = (one: Facet, two: Facet, from: number, to: number) =>
      proofs.coincide(pair(one, two), motion.stretch(motion.still(from), motion.still(to)))
    const same = facet(RIGHT, [15, 30, 5, 25])
    expect(over(right, same, 0, 180)).toBe(true)
    expect(over(right, same, 20, 30)).toBe(true)
    // Edge to edge in one plane; and on two pages, that lie over each other shut alone.
    expect(over(right, facet(RIGHT, [20, 30, 0, 10]), 20, 30)).toBe(false)
    expect(over(right, facet(RIGHT, [20 - 1e-5, 30, 0, 10]), 20, 30)).toBe(true)
    expect(over(left, right, 0, 10)).toBe(false)
    // At both ends and in the middle: not where they part in between.
    expect(over(left, right, 0, 0)).toBe(true)
  })

  test('a body that reaches across the gutter touches nothing off it', () => {
    // In the left page's plane from 20 mm behind the gutter on: the right page's plane meets it on the gutter alone.
    const through = facet(LEFT, [-20, 20, 0, 10])
    for (const w of [20, 90, 150])
      expect(proofs.gapAt(pair(through, right), motion.still(w))).toBeCloseTo(10 * Math.sin(w * RAD), 9)
    expect(look(through, right, 80, 90).doubt).toBeNull()
    // Too wide for that: it says so, and does not look at the paper.
    expect(look(through, right, 20, 150)).toEqual({
      doubt: true,
      asked: 0,
      looks: 0,
    })
  })
})

describe('on two walls that cross beyond their ridge', () => {
  const crossing = (beyond: number, from = 40, to = 80) => [
    facet(LEFT_WALL, [-beyond, 15, from - 40, to - 40]),
    facet(RIGHT_WALL, [-beyond, 15, 0, 40]),
  ]

  const cross = crossing(5) as [Facet, Facet]

  test('they cross by what reaches beyond, square to the other wall', () => {
    for (const w of [30, 90, 150])
      expect(proofs.gapAt(pair(...cross), motion.still(w))).toBeCloseTo(-5 * Math.sin(w * RAD), 6)
    // Along the ridge they would be clear of each other by a smaller way: 2 mm of it are shared.
    const [one] = crossing(5, 78, 90) as [Facet, Facet]
    expect(proofs.gapAt(pair(one, cross[1]), motion.still(90))).toBeCloseTo(-2, 6)
  })

  test('is found in a narrow stretch, at its first look, and not in a wide one', () => {
    const found = look(...cross, 85, 90)
    expect(found.doubt).toMatchObject({ one: cross[0], two: cross[1] })
    expect((found.doubt as Doubt).gap).toBeCloseTo(-5 * Math.sin(87.5 * RAD), 6)
    expect(found.asked).toBe(1)
    expect(found.looks).toBe(1)
    expect(look(...cross, 80, 80 + FIRST).doubt).not.toBe(true)
    expect(look(...cross, 80, 80 + 1.02 * FIRST).doubt).toBe(true)
  })

  test('are met where their edges go through each other: on the ridge, half way', () => {
    // In the right wall's coordinates: 0 from the ridge, and of 40 mm of it 20 along.
    const [a, l] = proofs.spot(pair(...cross), motion.still(90))
    expect(a).toBeCloseTo(0, 9)
    expect(l).toBeCloseTo(20, 9)
    // Only the last 2 mm: edges at 38 of the one, at 40 of the other.
    const [one] = crossing(5, 78, 90) as [Facet, Facet]
    const [b, m] = proofs.spot(pair(one, cross[1]), motion.still(90))
    expect(b).toBeCloseTo(0, 9)
    expect(m).toBeCloseTo(39, 9)
  })

  test('where nothing goes through, the corner nearest to the plane is told', () => {
    // 3 to 15 from the ridge on the left wall, at 60 degrees: 3 cos 60 along the right one and 3 sin 60 off it.
    const off = facet(LEFT_WALL, [3, 15, 5, 30])
    const [a, l] = proofs.spot(pair(off, cross[1]), motion.still(60))
    expect(a).toBeCloseTo(1.5, 9)
    expect([5, 30]).toContain(Math.round(l * 1e6) / 1e6)
    expect(proofs.gapAt(pair(off, cross[1]), motion.still(60))).toBeCloseTo(3 * Math.sin(60 * RAD), 9)
  })

  test('walls that end at their ridge are joined there, and apart', () => {
    const [one, two] = crossing(0) as [Facet, Facet]
    for (const [from, to] of [
      [0, 5],
      [60, 70],
      [175, 180],
    ] as const)
      expect(look(one, two, from, to).doubt).toBeNull()
    // Joints count for nothing: what else there is stands 15 sin w off.
    expect(proofs.gapAt(pair(one, two), motion.still(30))).toBeCloseTo(15 * Math.sin(30 * RAD), 6)
  })

  test('of several the one that crosses is told, and of those that are not proved apart the nearest', () => {
    const clear = facet(LEFT_WALL, [3, 15, 0, 40])
    const effort = { left: 10 }
    const leaf = ({ body, box }: Facet): Leaf => ({
      panel: body.panel,
      outline: body,
      box,
      facets: () => [],
    })
    const doubt = proofs.doubt(
      leaf(cross[0]),
      leaf(cross[1]),
      () => [[clear, cross[0]], [cross[1]]],
      motion.stretch(motion.still(85), motion.still(90)),
      effort,
    )
    expect(doubt).toMatchObject({ one: cross[0], two: cross[1] })
    // The clear one is told so by its box, and no look is taken at it.
    expect(effort.left).toBe(9)
  })

  test('where there is no paper there is no doubt', () => {
    const effort = { left: 10 }
    const leaf = ({ body, box }: Facet): Leaf => ({
      panel: body.panel,
      outline: body,
      box,
      facets: () => [],
    })
    const stretch = motion.stretch(motion.still(85), motion.still(90))
    const [one, two] = [leaf(cross[0]), leaf(cross[1])]
    expect(proofs.doubt(one, two, () => [[cross[0]], []], stretch, effort)).toBeNull()
    expect(proofs.doubt(one, two, () => [[], [cross[1]]], stretch, effort)).toBeNull()
    expect(effort.left).toBe(10)
  })
})

describe('in the shut stack', () => {
  // A wall lies along its page shut: from the ridge, 40 mm off the gutter, back to 20. Paper of the left page at 25 to
  // 35 mm lies over the left wall, and under the right one.
  test('an order is proved in the first degree, of the range that the card has', () => {
    const wall = facet(RIGHT_WALL, [2, 18, 2, 38])
    const page = facet(RIGHT, [25, 35, 45, 75])
    expect(look(wall, page, 0, 1).doubt).toBeNull()
    // The walls as far as beyond the ridge pass through each other there, shut or not.
    const [one, two] = [facet(LEFT_WALL, [-5, 15, 0, 40]), facet(RIGHT_WALL, [-5, 15, 0, 40])]
    expect(look(one, two, 0, 1).doubt).not.toBeNull()
  })

  test('flat, too', () => {
    const wall = facet(RIGHT_WALL, [2, 18, 2, 38])
    const page = facet(RIGHT, [5, 35, 45, 75])
    expect(look(wall, page, 179, 180).doubt).toBeNull()
  })
})
