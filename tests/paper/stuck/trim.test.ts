import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../../src/paper/index.ts'
import { check, compile, modelOf, openingRange, trim, trimToFace } from '../../../src/paper/index.ts'
import { inHalf } from '../../../src/paper/plane/halves.ts'
import { design, gluedMoth, runs } from '../shared/designs.ts'

const round = (at: Flat, radius: number, corners = 24): readonly Flat[] =>
  Array.from({ length: corners }, (_, k): Flat => {
    const turn = (2 * Math.PI * k) / corners
    return [at[0] + radius * Math.cos(turn), at[1] + radius * Math.sin(turn)]
  })

/** Even-odd rule by the ray to the right: textbook, shared with nothing. */
const isIn = (ring: readonly Flat[], [x, y]: Flat): boolean =>
  ring.reduce((within, [ax, ay], k) => {
    const [bx, by] = ring[(k + 1) % ring.length] as Flat
    return ay > y !== by > y && x < ax + ((y - ay) / (by - ay)) * (bx - ax) ? !within : within
  }, false)

/** How far the edge of a piece reaches past the card over many openings, mm, by dense sampling; below 0 it stays inside. */
function reachesOut(made: Design, id: string, hair = 0): number {
  const { card } = made
  const model = modelOf(made)
  const index = model.panels.findIndex(({ name }) => name === `${id}/face`)
  const ring = model.panels[index]?.outline ?? []
  const poser = compile(made)
  const [least, most] = openingRange(made)
  let worst = Number.NEGATIVE_INFINITY
  for (let k = 0; k <= 240; k++) {
    const opening = least + ((most - least) * k) / 240
    poser(opening)
    ring.forEach((p, n) => {
      const q = ring[(n + 1) % ring.length] as Flat
      for (const t of [0, 0.25, 0.5, 0.75]) {
        const [x, y, z] = poser.lift(index, [p[0] + t * (q[0] - p[0]), p[1] + t * (q[1] - p[1])])
        worst = Math.max(worst, -y, y - card.height, Math.hypot(x, z) - card.width)
        if (opening === 0) worst = Math.max(worst, -z)
      }
    })
  }
  return worst - hair
}

describe('an outline cut to a half of the plane', () => {
  test('falls into the parts that it has there', () => {
    // A comb with three teeth, cut across its teeth.
    const comb: readonly Flat[] = [
      [0, 0],
      [50, 0],
      [50, 30],
      [40, 30],
      [40, 10],
      [30, 10],
      [30, 30],
      [20, 30],
      [20, 10],
      [10, 10],
      [10, 30],
      [0, 30],
    ]
    const teeth = inHalf(comb, { way: [0, -1], upTo: -20 })
    expect(teeth).toHaveLength(3)
    for (const tooth of teeth) expect(tooth).toHaveLength(4)
    const [back] = inHalf(comb, { way: [0, 1], upTo: 20 })
    expect(back).toHaveLength(12)
  })

  test('keeps every point of it that lies there, and no other', () => {
    const stars = fc.array(fc.integer({ min: 4, max: 40 }), { minLength: 5, maxLength: 14 })
    fc.assert(
      fc.property(
        stars,
        fc.integer({ min: 0, max: 359 }),
        fc.integer({ min: -30, max: 30 }),
        (radii, turn, upTo) => {
          const ring = radii.map((r, k): Flat => {
            const at = (2 * Math.PI * k) / radii.length
            return [r * Math.cos(at), r * Math.sin(at)]
          })
          const way: Flat = [Math.cos((turn * Math.PI) / 180), Math.sin((turn * Math.PI) / 180)]
          const parts = inHalf(ring, { way, upTo: upTo + 0.01 })
          for (let x = -39; x < 40; x += 6.1)
            for (let y = -39; y < 40; y += 6.1) {
              const off = upTo + 0.01 - way[0] * x - way[1] * y
              if (Math.abs(off) < 1e-3) continue
              const count = parts.filter((part) => isIn(part, [x, y])).length
              expect(count).toBe(off > 0 && isIn(ring, [x, y]) ? 1 : 0)
            }
        },
      ),
      runs(200),
    )
  })
})

describe('trimming a piece', () => {
  const moth = gluedMoth({ ridge: 50 })

  test('leaves one that stays inside as it is', () => {
    const made = design([
      moth,
      { id: 'disc', kind: 'rider', on: 'moth/right', shape: round([14, 25], 6), glue: round([14, 25], 3, 8) },
    ])
    expect(trim(made, 'disc')).toEqual({ done: true, design: made, off: 0, left: 1 })
  })

  test('cuts random big pieces until no place of their edge leaves the card at any opening', () => {
    let cut = 0
    const pieces = fc.record({
      on: fc.constantFrom('moth/left', 'moth/right', 'page/left', 'page/right'),
      radius: fc.integer({ min: 20, max: 140 }),
      turn: fc.integer({ min: -180, max: 180 }),
      across: fc.integer({ min: -6, max: 6 }),
      apex: fc.integer({ min: 30, max: 80 }),
      dent: fc.double({ min: 0.3, max: 1, noNaN: true }),
    })
    fc.assert(
      fc.property(pieces, ({ on, radius, turn, across, apex, dent }) => {
        const middle: Flat = on.startsWith('page') ? [50, 70] : [16, 25]
        const shape = round(middle, radius, 22).map(([a, l], k): Flat => {
          const share = k % 2 === 0 ? 1 : dent
          return [middle[0] + share * (a - middle[0]), middle[1] + share * (l - middle[1])]
        })
        const made = design([
          { ...moth, apex },
          { id: 'disc', kind: 'rider', on, shape, glue: round(middle, 5, 8), turn, across },
        ])
        const before = reachesOut(made, 'disc')
        const found = trim(made, 'disc')
        if (!found.done) return
        expect(reachesOut(found.design, 'disc')).toBeLessThan(1e-6)
        // By so much as sampling sees, and hardly more.
        if (before > 0) {
          cut++
          expect(found.off).toBeGreaterThan(before - 1e-6)
          expect(found.left).toBeLessThan(1)
        }
        const { panels, glue } = modelOf(found.design)
        const ring = panels.find(({ name }) => name === 'disc/face')?.outline ?? []
        for (const p of glue.find(({ owner }) => owner === 1)?.outline ?? []) {
          const inwards: Flat = [p[0] + (middle[0] + across - p[0]) * 0.02, p[1] + (middle[1] - p[1]) * 0.02]
          expect(isIn(ring, inwards)).toBe(true)
        }
      }),
      runs(40),
    )
    expect(cut).toBeGreaterThan(10)
  })

  test('cuts off no more than it must', () => {
    // On a page the card is its own measure: half a millimetre inside the rim, and nothing else.
    const made = design([
      {
        id: 'sheet',
        kind: 'rider',
        on: 'page/right',
        shape: [
          [20, 20],
          [140, 20],
          [140, 100],
          [20, 100],
        ],
        glue: round([50, 60], 10, 8),
      },
    ])
    const found = trim(made, 'sheet')
    if (!found.done) throw new Error(found.sentence)
    expect(found.off).toBeCloseTo(35, 6)
    const across = (
      modelOf(found.design).panels.find(({ name }) => name === 'sheet/face')?.outline ?? []
    ).map(([a]) => a)
    expect(Math.max(...across)).toBeCloseTo(104.5, 2)
    expect(Math.min(...across)).toBe(20)
    expect(check(found.design, { names: ['stays-inside'], repairs: false }).every(({ ok }) => ok)).toBe(true)
  })

  test('says so where its glue lies outside', () => {
    const made = design([
      {
        id: 'sheet',
        kind: 'rider',
        on: 'page/right',
        shape: round([160, 60], 20),
        glue: round([160, 60], 8, 8),
      },
    ])
    const found = trim(made, 'sheet')
    expect(found.done ? '' : found.sentence).toContain('glue')
    expect(() => trim(made, 'nobody')).toThrow(RangeError)
  })

  test('to its face takes everything off that hangs over', () => {
    const made = design([
      moth,
      {
        id: 'disc',
        kind: 'rider',
        on: 'moth/right',
        shape: round([16, 25], 60),
        glue: round([16, 25], 4, 8),
      },
    ])
    const found = trimToFace(made, 'disc')
    if (!found.done) throw new Error(found.sentence)
    const { panels } = modelOf(found.design)
    const face = panels.find(({ name }) => name === 'moth/right')?.outline ?? []
    const ring = panels.find(({ name }) => name === 'disc/face')?.outline ?? []
    const middle: Flat = [16, 25]
    for (const [a, l] of ring)
      expect(isIn(face, [a + (middle[0] - a) * 0.01, l + (middle[1] - l) * 0.01])).toBe(true)
    expect(check(found.design, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
  })
})
