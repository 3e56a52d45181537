import fc from 'fast-check'
import { expect, test } from 'vitest'
import { compile, modelOf, parseDesign } from '../../../src/paper/index.ts'
import { turnsOf } from '../../../src/paper/motion/turning.ts'

/** Random glued V-folds and tents that shut flat, on the gutter, in every state. */
const sided = fc.record({
  side: fc.constantFrom('inside', 'outside'),
  pop: fc.constantFrom('up', 'down'),
})

const closing = (outer: boolean, b1: number, a1: number, b2: number) => (outer ? b1 + a1 - b2 : a1 - b1 + b2)

const vFold = fc
  .tuple(
    sided,
    fc.double({ min: 20, max: 80, noNaN: true }),
    fc.double({ min: 20, max: 100, noNaN: true }),
    fc.double({ min: -30, max: 30, noNaN: true }),
  )
  .map(([state, base, facet, more]) => {
    const other = Math.min(85, Math.max(15, Math.abs(more) < 8 ? base : base + more))
    const outer = (state.pop === 'up') !== (state.side === 'outside')
    return {
      kind: 'glued-v-fold',
      ...state,
      apex: 50,
      toward: 1,
      foot: 30,
      ridge: 40,
      right: { base, facet },
      left: { base: other, facet: closing(outer, base, facet, other) },
    }
  })
  .filter(({ left }) => left.facet > 5 && left.facet < 150)

const tent = fc
  .tuple(
    sided,
    fc.double({ min: 10, max: 50, noNaN: true }),
    fc.double({ min: 20, max: 70, noNaN: true }),
    fc.double({ min: 10, max: 50, noNaN: true }),
  )
  .map(([state, rightFoot, rightWall, leftFoot]) => {
    const outer = (state.pop === 'up') !== (state.side === 'outside')
    const leftWall = closing(outer, rightFoot, rightWall, leftFoot)
    return { kind: 'glued-tent', ...state, start: 10, end: 40, rightFoot, rightWall, leftFoot, leftWall }
  })
  .filter(({ leftWall }) => leftWall > 2)

// Central differences (any numerical analysis text) measure the rates that `Build.turns` bounds.
test('no joint turns faster than its bound, nor does its rate change faster', () => {
  fc.assert(
    fc.property(
      fc.oneof(vFold, tent),
      fc.double({ min: 0, max: 178, noNaN: true }),
      fc.constantFrom(0.3, 2, 10),
      (mechanism, from, wide) => {
        const design = parseDesign({
          hingebook: 1,
          title: 'Owl',
          card: { width: 200, height: 300 },
          mechanisms: [{ id: 'owl', on: 'gutter', ...mechanism }],
        })
        const build = modelOf(design).builds[0]?.build
        const [least, most] = build?.range ?? [0, 180]
        const to = Math.min(180, from + wide)
        fc.pre(from > least + 0.5 && (most === 180 || to < most - 0.5))
        const bounds = new Float64Array(6)
        if (build) turnsOf(build)?.((from * Math.PI) / 180, (to * Math.PI) / 180, bounds)
        const poser = compile(design)
        const angles = (opening: number) => {
          const { creases } = poser(opening)
          return ['ridge', 'left', 'right'].map((part) => creases[`owl/${part}`]?.angle ?? Number.NaN)
        }
        const h = 0.02
        for (let k = 0; k <= 4; k++) {
          const at = Math.min(to - h, Math.max(from + h, from + ((to - from) * k) / 4))
          const [before, here, after] = [at - h, at, at + h].map(angles) as [number[], number[], number[]]
          here.forEach((angle, j) => {
            const first = ((after[j] as number) - (before[j] as number)) / (2 * h)
            const second =
              (((after[j] as number) - 2 * angle + (before[j] as number)) / (h * h)) * (180 / Math.PI)
            // Second differences of angles good to 1e-13 degrees carry noise of about 1e-3 at this step.
            expect(Math.abs(first)).toBeLessThanOrEqual((bounds[2 * j] as number) * (1 + 1e-5) + 1e-6)
            expect(Math.abs(second)).toBeLessThanOrEqual((bounds[2 * j + 1] as number) * (1 + 1e-3) + 2e-3)
          })
        }
      },
    ),
    { numRuns: 400 },
  )
})
