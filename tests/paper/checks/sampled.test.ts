// What the proof of clear motion says against what dense sampling sees, on random designs of every kind.

import { readdirSync, readFileSync } from 'node:fs'
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../../src/paper/index.ts'
import { check, compile, parseDesign } from '../../../src/paper/index.ts'
import { meetings } from '../../../src/paper/motion/clearance.ts'
import { KERF } from '../../../src/paper/motion/leaves.ts'
import { motionOf } from '../../../src/paper/motion/motion.ts'
import { layer } from '../shared/check-designs.ts'
import { crossings, heightsAt } from '../shared/crossing.ts'
import { design } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'
import { gluedDesigns } from '../shared/glued-designs.ts'
import { allKinds, kindsWith } from '../shared/kinds.ts'

/** So many designs, and no fewer on a slow machine. */
const tries = (usual: number) => ({ numRuns: Math.max(usual, Number(process.env.RUNS ?? 0)) })

const PATIENCE = 300_000

/** Papers that cross with a rim of 0.1 mm all round: twice what a cut takes away. */
const RIM = 2 * KERF + 0.01

const DUMMIES = new URL('../../../content/dummies/', import.meta.url)

const dummies: readonly Design[] = readdirSync(DUMMIES)
  .filter((file) => file.endsWith('.hingebook.json'))
  .map((file) => parseDesign(JSON.parse(readFileSync(new URL(file, DUMMIES), 'utf8'))))

const NEARLY_SHUT = [0.01, 0.1, 0.5]

/** Openings that no mechanism keeps the card from. */
function reached(made: Design, openings: readonly number[]): number[] {
  const poser = compile(made)
  return openings.filter((opening) => poser(opening).stopped.length === 0)
}

describe('a design that is called clear', () => {
  test.each([
    ['of every kind', gluedDesigns({ most: 5 }), 400],
    ['of cut kinds', gardens(6), 250],
  ] as const)(
    '%s shows no two panels that cross, at no opening',
    (_, made, count) => {
      const kinds = new Set<string>()
      let clear = 0
      fc.assert(
        fc.property(made, fc.integer({ min: 0, max: 399 }), (one, shift) => {
          const motion = check(one, { repairs: false }).filter(({ name }) => name === 'clear-motion')
          if (motion.some(({ verdict }) => verdict !== 'clear')) return
          clear++
          for (const { kind } of one.mechanisms) kinds.add(kind)
          const steps = Array.from({ length: 44 }, (_, k) => 1 + shift / 100 + 4.01 * k)
          const look = crossings(one, RIM)
          for (const opening of reached(one, [...NEARLY_SHUT, ...steps])) expect(look(opening)).toEqual([])
        }),
        tries(count),
      )
      expect(clear).toBeGreaterThan(count / 5)
      expect(kinds.size).toBe(count === 400 ? allKinds.length : kindsWith('sprout').length)
    },
    PATIENCE,
  )
})

describe('the shut stack', () => {
  test('has one order: whatever lies under something at 1 degree lies under it at every smaller opening', () => {
    let pairs = 0
    const same = (made: Design) => {
      const low = heightsAt(made, 0.01)
      const high = [0.1, 1].map((opening) => heightsAt(made, opening))
      for (let y = 0.7; y < made.card.height; y += made.card.height / 13)
        for (let z = 0.9; z < made.card.width; z += made.card.width / 17) {
          const at = low([y, z], 0.3)
          for (const one of high.map((look) => look([y, z], 0.3)))
            for (const [name, x] of at)
              for (const [other, w] of at) {
                const [p, q] = [one.get(name), one.get(other)]
                // A piece stuck on a face lies in its plane.
                if (!(x < w - 1e-9) || p === undefined || q === undefined) continue
                pairs++
                expect(p, `${name} under ${other}`).toBeLessThan(q)
              }
        }
    }
    for (const made of dummies) same(made)
    expect(pairs).toBeGreaterThan(1000)
  })

  test(
    'is called clear only where sampling sees nothing cross',
    () => {
      const seen = { touches: 0, clear: 0 }
      fc.assert(
        fc.property(gluedDesigns({ most: 4, match: ['alike', 'shuts'] }), (made) => {
          const poser = compile(made)
          const drawable = check(made, { repairs: false }).every(
            ({ name, ok }) =>
              ok || !['inside-fold', 'cuts-inside', 'cuts-apart', 'shuts-flat'].includes(name),
          )
          if (!drawable || poser(0).stopped.length > 0) return
          const found = meetings({
            motion: motionOf(poser),
            range: () => [0, 1],
            alone: () => [0, 1],
            effort: { left: 2e5 },
          })
          if (found.length === 0) {
            seen.clear++
            for (const opening of [0.01, 0.05, 0.2, 0.9]) expect(crossings(made, RIM)(opening)).toEqual([])
          } else if (
            crossings(made, RIM)(0.2).length > 0 &&
            found.some(({ verdict }) => verdict === 'touches')
          )
            seen.touches++
        }),
        tries(200),
      )
      expect(seen.clear).toBeGreaterThan(40)
      expect(seen.touches).toBeGreaterThan(20)
    },
    PATIENCE,
  )
})

test('a piece that turns about a seam of the page is seen to go through it', () => {
  // A piece on a layer's side sticks out past both ends of the layer's fold, so into the page all the time.
  const long: Flat[] = [
    [15, -14],
    [35, -14],
    [35, 11],
    [15, 11],
  ]
  const made = design([
    layer('lamp', 'gutter', 40, 50, 25),
    {
      id: 'moth',
      kind: 'rider',
      on: 'lamp/right',
      shape: long,
      glue: [
        [16, 1],
        [24, 1],
        [24, 9],
        [16, 9],
      ],
    },
  ])
  const [motion] = check(made, { repairs: false }).filter(({ name }) => name === 'clear-motion')
  expect(motion).toMatchObject({ ok: false, verdict: 'touches' })
  expect(crossings(made, RIM)(90).map(({ panels }) => panels)).toContainEqual(['page/right', 'moth/face'])
})
