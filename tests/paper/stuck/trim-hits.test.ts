// Pieces cut clear of what goes through them; what is left is tried again by sampling that shares no code with the checks.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { check, trimHits } from '../../../src/paper/index.ts'
import { design, gluedMoth, runs } from '../shared/designs.ts'
import { seenToWork } from '../shared/sound.ts'

const round = (at: Flat, radius: number, corners = 16): readonly Flat[] =>
  Array.from({ length: corners }, (_, k): Flat => {
    const turn = (2 * Math.PI * k) / corners
    return [at[0] + radius * Math.cos(turn), at[1] + radius * Math.sin(turn)]
  })

const moth = gluedMoth({ ridge: 50 })

const stuck = (on: string, at: Flat, radius: number) =>
  design([moth, { id: 'disc', kind: 'rider', on, shape: round(at, radius), glue: round(at, 3, 8) }])

const hits = (made: ReturnType<typeof design>): number =>
  check(made, { names: ['clear-motion'], repairs: false }).filter(({ ok }) => !ok).length

describe('a piece that other paper goes through', () => {
  test('is left as it is where nothing does', () => {
    const made = stuck('moth/right', [14, 25], 5)
    expect(hits(made)).toBe(0)
    expect(trimHits(made, 'disc')).toEqual({ done: true, design: made, off: 0, left: 1 })
  })

  test('that hangs over the gutter is cut along it, and the side of its glue stays', () => {
    // The gutter is the line across = 0; the other page swings through what hangs over it.
    const made = stuck('page/right', [10, 25], 16)
    expect(hits(made)).toBeGreaterThan(0)
    const cut = trimHits(made, 'disc')
    if (!cut.done) throw new Error(cut.sentence)
    expect(hits(cut.design)).toBe(0)
    const disc = cut.design.mechanisms[1] as unknown as { readonly shape: readonly Flat[] }
    const across = disc.shape.map(([x]) => x)
    expect(Math.min(...across)).toBeCloseTo(0.5, 1)
    expect(Math.max(...across)).toBeCloseTo(26, 6)
    expect(cut.off).toBeCloseTo(6.5, 1)
    // A circle of radius 16 cut 9.5 from its middle keeps 1 - (acos(h) - h sqrt(1 - h²)) / π of itself, h = 9.5 / 16.
    const h = 9.5 / 16
    expect(cut.left).toBeCloseTo(1 - (Math.acos(h) - h * Math.sqrt(1 - h * h)) / Math.PI, 1)
  })

  test('is clear on the whole way when it was cut, wherever it was stuck; or it is said that no cut does it', () => {
    let cleared = 0
    fc.assert(
      fc.property(
        fc.constantFrom('moth/left', 'moth/right', 'page/right'),
        fc.integer({ min: 4, max: 30 }),
        fc.integer({ min: 10, max: 60 }),
        fc.integer({ min: 5, max: 22 }),
        (on, across, along, radius) => {
          const made = stuck(on, [on.endsWith('left') ? -across : across, along], radius)
          if (hits(made) === 0) return
          const cut = trimHits(made, 'disc')
          if (!cut.done) {
            expect(cut.sentence).toMatch(/\.$/)
            return
          }
          expect(hits(cut.design)).toBe(0)
          expect(cut.left).toBeLessThan(1)
          const others = check(cut.design, { repairs: false }).filter(({ ok }) => !ok)
          if (others.length === 0) seenToWork(cut.design, 13)
          cleared++
        },
      ),
      runs(40),
    )
    expect(cleared).toBeGreaterThan(3)
  }, 120_000)
})
