import fc from 'fast-check'
import * as polyclip from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../src/paper/index.ts'
import { faces, modelOf } from '../../src/paper/index.ts'
import { design, designs, ladder, runs, vFold } from './designs.ts'

type Ring = [number, number][]

/** To a millionth of a millimetre: polyclip-ts loses its way between edges that are all but in line. */
const ring = (points: readonly Flat[]): Ring =>
  points.map(([a, b]) => [Math.round(a * 1e6) / 1e6, Math.round(b * 1e6) / 1e6])

const areaOf = (points: readonly (readonly [number, number])[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], k) => {
      const [u, v] = points[(k + 1) % points.length] ?? [x, y]
      return sum + x * v - u * y
    }, 0) / 2,
  )

/** Area of what polyclip-ts (MIT) answers: outer rings less holes. */
const areaOfAll = (polygons: readonly (readonly Ring[])[]): number =>
  polygons.reduce(
    (sum, [outer, ...holes]) =>
      sum + areaOf(outer ?? []) - holes.reduce((all, hole) => all + areaOf(hole), 0),
    0,
  )

/** What is left of a panel when its guests’ notches are taken out, by polyclip-ts (MIT). */
function leftOf(made: Design, index: number): number {
  const panel = modelOf(made).panels[index]
  if (!panel) return Number.NaN
  const notches = panel.notches.map(({ outline }): [Ring] => [ring(outline)])
  const whole: [Ring] = [ring(panel.outline)]
  return areaOfAll(notches.length > 0 ? polyclip.difference(whole, ...notches) : polyclip.union(whole))
}

describe('what is left of the panels', () => {
  test.each(ladder)('$name: as much paper as polyclip-ts leaves', ({ design: made }) => {
    const all = faces(modelOf(made))
    modelOf(made).panels.forEach((_, index) => {
      const own = all.filter(({ panel }) => panel === index)
      expect(own.reduce((sum, { outline }) => sum + areaOf(outline), 0)).toBeCloseTo(leftOf(made, index), 4)
    })
  })

  test('whatever is cut, the faces cover just what is left, in convex parts', () => {
    const plain = designs({ most: 4, single: true, parts: [0.2, 0.6] })
    fc.assert(
      fc.property(plain, (made) => {
        const all = faces(modelOf(made))
        modelOf(made).panels.forEach((_, index) => {
          const own = all.filter(({ panel }) => panel === index)
          const covered = own.reduce((sum, { outline }) => sum + areaOf(outline), 0)
          expect(Math.abs(covered - leftOf(made, index))).toBeLessThan(1e-5 * (1 + covered))
        })
        for (const { outline, drawn } of all) {
          expect(drawn).toHaveLength(outline.length)
          outline.forEach((p, k) => {
            const q = outline[(k + 1) % outline.length] as Flat
            const r = outline[(k + 2) % outline.length] as Flat
            expect((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])).toBeGreaterThan(-1e-6)
          })
        }
      }),
      runs(100),
    )
  })

  test('a V-fold leaves a hole in each page of just its own two facets', () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 45)])
    const all = faces(modelOf(made))
    const area = (name: string): number => {
      const index = modelOf(made).panels.findIndex((panel) => panel.name === name)
      return all.filter(({ panel }) => panel === index).reduce((sum, { outline }) => sum + areaOf(outline), 0)
    }
    expect(area('beak/left')).toBeCloseTo((40 * 40) / 2, 9)
    for (const side of ['left', 'right'])
      expect(area(`page/${side}`) + area(`beak/${side}`)).toBeCloseTo(105 * 148, 9)
  })
})
