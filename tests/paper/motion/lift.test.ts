// How stuck-on paper is held a hair off its panel: half a sine wave over the motion, worked by hand.
import { describe, expect, test } from 'vitest'
import { modelOf } from '../../../src/paper/index.ts'
import { liftsOf, THIN } from '../../../src/paper/motion/lift.ts'
import type { Stretch } from '../../../src/paper/motion/motion.ts'
import { design } from '../shared/designs.ts'

const square = [
  [20, 20],
  [50, 20],
  [50, 50],
  [20, 50],
]

const star = (id: string, on: string, face = 'front') => ({
  id,
  kind: 'rider',
  on,
  face,
  shape: square,
  glue: square,
})

const model = modelOf(
  design([
    star('one', 'page/right'),
    star('two', 'page/right'),
    star('back', 'page/right', 'back'),
    star('left', 'page/left'),
  ]),
)

const [ONE, TWO, BACK, LEFT] = ['one', 'two', 'back', 'left'].map((id) =>
  model.panels.findIndex(({ name }) => name === `${id}/face`),
) as [number, number, number, number]

describe('the lift', () => {
  const whole = liftsOf(model, [0, 180])

  // The inside of a right page lies along -(C x - S n), of a left one along C x + S n.
  test.each([
    ['on the right page', ONE, -1],
    ['over another', TWO, -2],
    ['on the back', BACK, 1],
    ['on the left page', LEFT, 1],
    ['of the page itself', 1, 0],
  ])('%s is so many layers', (_, panel, layers) => {
    expect(whole.most(panel)).toBeCloseTo(Math.abs(layers) * THIN, 12)
    for (const [opening, share] of [
      [0, 0],
      [30, 0.5],
      [90, 1],
      [150, 0.5],
      [180, 0],
    ] as const)
      expect(whole.at(panel, opening) / THIN).toBeCloseTo(layers * share, 9)
  })

  test('goes by the range of the card', () => {
    const part = liftsOf(model, [60, 120])
    expect(part.at(TWO, 60) / THIN).toBeCloseTo(0, 9)
    expect(part.at(TWO, 70) / THIN).toBeCloseTo(-1, 9)
    expect(part.at(TWO, 90) / THIN).toBeCloseTo(-2, 9)
    expect(liftsOf(model, [90, 90]).at(TWO, 90)).toBe(0)
  })

  test('bends the way by no more than the second derivative of a turned sine', () => {
    const turning = (spin: number, jerk: number) => ({ turns: () => [spin, jerk] }) as unknown as Stretch
    // Over half a turn q is 1: A (1 + 2 spin + spin² + jerk), and of what it is seen from its own A q².
    expect(whole.bend(turning(0, 0), 1, TWO) / THIN).toBeCloseTo(2, 9)
    expect(whole.bend(turning(3, 0), 1, TWO) / THIN).toBeCloseTo(2 * (1 + 6 + 9), 9)
    expect(whole.bend(turning(3, 5), 1, TWO) / THIN).toBeCloseTo(2 * (1 + 6 + 9 + 5), 9)
    expect(whole.bend(turning(3, 5), LEFT, TWO) / THIN).toBeCloseTo(2 * 21 + 1, 9)
    expect(whole.bend(turning(3, 5), TWO, 1) / THIN).toBeCloseTo(2, 9)
    // Over a sixth of a turn q is 3.
    const part = liftsOf(model, [60, 120])
    expect(part.bend(turning(1, 2), 1, ONE) / THIN).toBeCloseTo(9 + 6 + 1 + 2, 9)
    expect(part.bend(turning(1, 2), TWO, ONE) / THIN).toBeCloseTo(18 + 18, 9)
  })
})
