import fc from 'fast-check'
import * as polyclip from 'polyclip-ts'
import { orient2d } from 'robust-predicates'
import { describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../../src/paper/index.ts'
import { modelOf, patchesOf } from '../../../src/paper/index.ts'
import { design, designs, ladder, runs, vFold } from '../shared/designs.ts'

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

/** Whether a polygon holds a point: its winding number, by the exact signs of robust-predicates (Unlicense). */
function within([x, y]: Flat, points: readonly Flat[]): boolean {
  let turns = 0
  points.forEach(([ax, ay], k) => {
    const [bx, by] = points[(k + 1) % points.length] as Flat
    const side = orient2d(ax, ay, bx, by, x, y)
    if (ay <= y && by > y && side < 0) turns++
    if (ay > y && by <= y && side > 0) turns--
  })
  return turns !== 0
}

function toEdge([x, y]: Flat, points: readonly Flat[]): number {
  return Math.min(
    ...points.map(([ax, ay], k) => {
      const [bx, by] = points[(k + 1) % points.length] as Flat
      const square = (bx - ax) ** 2 + (by - ay) ** 2
      const t =
        square === 0 ? 0 : Math.min(1, Math.max(0, ((x - ax) * (bx - ax) + (y - ay) * (by - ay)) / square))
      return Math.hypot(x - ax - t * (bx - ax), y - ay - t * (by - ay))
    }),
  )
}

describe('what is left of the panels', () => {
  test.each(ladder)('$name: as much paper as polyclip-ts leaves', ({ design: made }) => {
    const all = patchesOf(modelOf(made))
    modelOf(made).panels.forEach((_, index) => {
      const own = all.filter(({ panel }) => panel === index)
      expect(own.reduce((sum, { outline }) => sum + areaOf(outline), 0)).toBeCloseTo(leftOf(made, index), 4)
    })
  })

  test('whatever is cut, a pin through the paper that is left goes through one patch, and through a hole none', () => {
    const pins = fc.array(
      fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
      {
        minLength: 10,
        maxLength: 10,
      },
    )
    fc.assert(
      fc.property(designs({ most: 5, depth: 4 }), pins, (made, places) => {
        const { panels } = modelOf(made)
        const all = patchesOf(modelOf(made))
        panels.forEach(({ outline, notches }, index) => {
          const own = all.filter(({ panel }) => panel === index)
          const [wide, long] = [0, 1].map((k) => Math.max(...outline.map((p) => p[k] as number))) as [
            number,
            number,
          ]
          for (const [a, b] of places) {
            const pin: Flat = [a * wide, b * long]
            const edges = [
              outline,
              ...notches.map((notch) => notch.outline),
              ...own.map((patch) => patch.outline),
            ]
            // A pin on an edge tells nothing.
            if (edges.some((ring) => toEdge(pin, ring) < 1e-4)) continue
            const paper = within(pin, outline) && !notches.some((notch) => within(pin, notch.outline))
            expect(own.filter((patch) => within(pin, patch.outline))).toHaveLength(paper ? 1 : 0)
          }
        })
      }),
      runs(150),
    )
  })

  test('every patch is convex, so that it can be drawn and sorted as one', () => {
    fc.assert(
      fc.property(designs({ most: 5, depth: 4 }), (made) => {
        for (const { outline, drawn } of patchesOf(modelOf(made))) {
          expect(drawn).toHaveLength(outline.length)
          outline.forEach((p, k) => {
            const q = outline[(k + 1) % outline.length] as Flat
            const r = outline[(k + 2) % outline.length] as Flat
            expect((q[0] - p[0]) * (r[1] - p[1]) - (q[1] - p[1]) * (r[0] - p[0])).toBeGreaterThan(-1e-9)
          })
        }
      }),
      runs(150),
    )
  })

  test('a V-fold leaves a hole in each page of just its own two facets', () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 45)])
    const all = patchesOf(modelOf(made))
    const area = (name: string): number => {
      const index = modelOf(made).panels.findIndex((panel) => panel.name === name)
      return all.filter(({ panel }) => panel === index).reduce((sum, { outline }) => sum + areaOf(outline), 0)
    }
    expect(area('beak/left')).toBeCloseTo((40 * 40) / 2, 9)
    for (const side of ['left', 'right'])
      expect(area(`page/${side}`) + area(`beak/${side}`)).toBeCloseTo(105 * 148, 9)
  })
})
