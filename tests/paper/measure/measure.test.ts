import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Vec3 } from '../../../src/paper/index.ts'
import { highest, measure, poseAt, sharedSlits, shutMargin, swing } from '../../../src/paper/index.ts'
import { A6, design, designs, openings, runs, vFold } from '../shared/designs.ts'
import { apart, crossOf, dotOf, minus, sizeOf, unit } from '../shared/space.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

/** The tip of a V-fold or of one end of a trapezoid, or the middle of a layer's ridge. */
function tipOf(made: Design, id: string, opening: number): Vec3 {
  const m = made.mechanisms.find((one) => one.id === id)
  const { start, end } = poseAt(made, opening).creases[`${id}/ridge`] ?? { start: [0, 0, 0], end: [0, 0, 0] }
  const part =
    m?.kind === 'cut-v-fold'
      ? 1
      : m?.kind === 'cut-trapezoid' && m.endCut !== m.startCut
        ? Number(m.endCut > m.startCut)
        : 0.5
  return [0, 1, 2].map(
    (k) => (start[k] as number) + part * ((end[k] as number) - (start[k] as number)),
  ) as Vec3
}

describe('what a ruler reads', () => {
  test('rise: how far the tip is from the page beneath it', () => {
    fc.assert(
      fc.property(designs({ most: 4 }), fc.double({ min: 1, max: 179, noNaN: true }), (made, opening) => {
        const { panels } = poseAt(made, opening)
        const { tips } = measure(made, opening)
        for (const { id } of made.mechanisms) {
          const tip = tipOf(made, id, opening)
          const [gutter, far, , corner] = panels[tip[0] > 0 ? 'page/right' : 'page/left'] as Vec3[]
          const square = unit(
            crossOf(minus(far as Vec3, gutter as Vec3), minus(corner as Vec3, gutter as Vec3)),
          )
          const off = Math.abs(dotOf(minus(tip, gutter as Vec3), square))
          expect(Math.abs(Math.abs(tips[id]?.rise ?? Number.NaN) - off)).toBeLessThan(1e-9)
        }
      }),
      runs(100),
    )
  })

  test('stand-off: how far it is from the gutter; reach: how far along it', () => {
    fc.assert(
      fc.property(designs({ most: 4 }), openings, (made, opening) => {
        const { tips } = measure(made, opening)
        for (const { id } of made.mechanisms) {
          const tip = tipOf(made, id, opening)
          const away = sizeOf(crossOf(tip, [0, 1, 0]))
          expect(Math.abs((tips[id]?.standOff ?? Number.NaN) - away)).toBeLessThan(1e-9)
          expect(Math.abs((tips[id]?.reach ?? Number.NaN) - tip[1])).toBeLessThan(1e-9)
          expect(apart(tips[id]?.at ?? [Number.NaN, 0, 0], tip)).toBeLessThan(1e-9)
        }
      }),
      runs(100),
    )
  })

  test('shut and flat nothing rises', () => {
    fc.assert(
      fc.property(designs({ most: 4 }), fc.constantFrom(0, 180), (made, opening) => {
        for (const { rise } of Object.values(measure(made, opening).tips))
          expect(Math.abs(rise)).toBeLessThan(1e-9)
      }),
      runs(50),
    )
  })

  test('swing: the tip’s whole path keeps the ridge’s length from the apex, and starts and ends in the card', () => {
    const path = swing(design([beak]), 'beak')
    expect(path[0]?.opening).toBe(0)
    expect(path.at(-1)?.opening).toBe(180)
    for (const { at } of path) expect(apart(at, [0, 110, 0])).toBeCloseTo(40, 10)
    expect(apart(path[0]?.at as Vec3, [0, 110, 40])).toBeLessThan(1e-9)
    expect(apart(path.at(-1)?.at as Vec3, [0, 70, 0])).toBeLessThan(1e-9)
    expect(swing(design([beak]), 'beak', 4).map(({ opening }) => opening)).toEqual([0, 45, 90, 135, 180])
  })

  test('a mechanism that is not there cannot be measured', () => {
    expect(() => swing(design([beak]), 'owl')).toThrow('there is no mechanism owl')
    expect(() => highest(design([beak]), 'owl')).toThrow('there is no mechanism owl')
  })

  test('a bare card has no tips and no gapes', () => {
    expect(measure(design([]), 90)).toMatchObject({ tips: {}, gapes: [] })
  })
})

describe('two V-folds on one slit: a beak', () => {
  const jaw = (wedge: number) => ({ ...vFold('jaw', 'gutter', 30, 40, wedge) })

  test('share it only if both slits lie in the same place', () => {
    expect(sharedSlits(design([beak, jaw(45)]))).toEqual([[0, 1]])
    expect(sharedSlits(design([beak, jaw(44)]))).toEqual([])
    expect(sharedSlits(design([beak, { ...jaw(45), apex: 31 }]))).toEqual([])
  })

  test('gapes by the distance of its tips: not at all when flat, most when shut', () => {
    const made = design([beak, jaw(45)])
    const gape = (opening: number): number => measure(made, opening).gapes[0]?.gape ?? Number.NaN
    expect(measure(made, 90).gapes[0]?.between).toEqual(['beak', 'jaw'])
    expect(gape(180)).toBeLessThan(1e-9)
    // Shut, both ridges stand square to the gutter, as far apart as their apexes.
    expect(gape(0)).toBeCloseTo(80, 9)
    // Half open: each tip is a third of its run from the other apex’s side, cos 70.53 = 1/3.
    expect(gape(90)).toBeCloseTo(80 - (2 * 40) / 3, 9)
    for (let opening = 1; opening <= 180; opening++) expect(gape(opening)).toBeLessThan(gape(opening - 1))
  })

  test('with unequal halves the gape follows from both ridges', () => {
    const made = design([
      vFold('beak', 'gutter', 110, -60, 30),
      { ...jaw(45), apex: 20, run: 30, cut: 60 * Math.tan(Math.PI / 6) },
    ])
    const { tips, gapes } = measure(made, 75)
    expect(gapes).toHaveLength(1)
    expect(gapes[0]?.gape).toBeCloseTo(apart(tips.beak?.at as Vec3, tips.jaw?.at as Vec3), 9)
  })
})

describe('the margin of the shut card', () => {
  test('a 45 degree V-fold stands square to the gutter: the page less its ridge is left', () => {
    expect(shutMargin(design([vFold('reed', 'gutter', 74, 40, 45)]))).toMatchObject({ panel: 'reed/left' })
    const { margin } = shutMargin(design([vFold('reed', 'gutter', 74, 60, 45)]))
    // The slit’s corner lies 60 + 74 along, 148 - 134 from the far edge; the tip 105 - 60 from the side.
    expect(margin).toBeCloseTo(14, 9)
    expect(shutMargin(design([vFold('reed', 'gutter', 30, 90, 45)])).margin).toBeCloseTo(15, 9)
  })

  test('a layer is left as far out as both its cuts are deep together', () => {
    const layer = { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 50, right: 30 }
    expect(shutMargin(design([layer])).margin).toBeCloseTo(A6.width - 80, 9)
    expect(shutMargin(design([{ ...layer, left: 90 }])).margin).toBeCloseTo(A6.width - 120, 9)
  })

  test('sticks out by as much as it is below nought, and measure says the same at every opening', () => {
    const made = design([vFold('owl', 'gutter', 20, 120, 45)])
    for (const opening of [0, 50, 180]) expect(measure(made, opening).margin).toBeCloseTo(A6.width - 120, 9)
  })
})
