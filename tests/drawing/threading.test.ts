// Tabs that go through slits, as a step shows them: straight on from their panels, through the page in the slit's line.
import { describe, expect, test } from 'vitest'
import { stepMotion } from '../../src/drawing/steps/motion.ts'
import { overSlits } from '../../src/drawing/steps/scenes-glued.ts'
import { stepFigure, taskOf } from '../../src/drawing/steps/steps.ts'
import type { Vec3 } from '../../src/paper/index.ts'
import { poseAt } from '../../src/paper/index.ts'
import { card } from '../sheet/designs.ts'

const house = card(105, 148, [
  {
    ...{ id: 'house', kind: 'glued-tent', on: 'gutter', start: 20, end: 80, tab: 10, tabs: 'slit' },
    ...{ leftFoot: 30, rightFoot: 30, leftWall: 45, rightWall: 45 },
  },
])

const moth = card(105, 148, [
  {
    ...{ id: 'moth', kind: 'glued-v-fold', on: 'gutter', apex: 30, toward: 1, tab: 8, tabs: 'slit' },
    ...{ base: 45, facet: 55, foot: 60, ridge: 50 },
  },
])

/** On the outside of the fold: its tabs go through to the inside. */
const lily = card(105, 148, [
  {
    ...{ id: 'lily', kind: 'glued-v-fold', on: 'gutter', apex: 90, toward: 1, tab: 8, tabs: 'slit' },
    ...{ base: 60, facet: 80, foot: 40, ridge: 20, side: 'outside' },
  },
])

const minus = (a: Vec3, b: Vec3): Vec3 => [a[0] - b[0], a[1] - b[1], a[2] - b[2]]

const cross = (a: Vec3, b: Vec3): Vec3 => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
]

const dot = (a: Vec3, b: Vec3): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2]

/** Distance of a point from the plane of three others, with a sign. */
const offPlane = (p: Vec3, [a, b, c]: readonly Vec3[]): number => {
  const n = cross(minus(b as Vec3, a as Vec3), minus(c as Vec3, a as Vec3))
  return dot(minus(p, a as Vec3), n) / Math.hypot(...n)
}

describe.each([
  ['house', house],
  ['moth', moth],
  ['lily', lily],
] as const)('the tabs of the %s', (id, design) => {
  const task = taskOf(design, { of: [id], there: [] })
  const tabsAt = (held: number) =>
    overSlits(task, 120, held).paper.filter(({ panel }) => panel.endsWith('/tab'))

  test('lie in the planes of their panels, and beyond the page', () => {
    const { panels } = poseAt(design, 120)
    const tabs = tabsAt(0)
    expect(tabs.map(({ panel }) => panel)).toEqual([`${id}/left/tab`, `${id}/right/tab`])
    for (const { panel, points } of tabs) {
      const side = panel.includes('left') ? 'left' : 'right'
      for (const p of points) expect(offPlane(p, panels[`${id}/${side}`] ?? [])).toBeCloseTo(0, 9)
      const page = panels[`page/${side}`] ?? []
      const middle = (of: readonly Vec3[]): Vec3 =>
        [0, 1, 2].map((k) => of.reduce((sum, p) => sum + (p[k] ?? 0), 0) / of.length) as unknown as Vec3
      // The panel stands on one side of the page, its tab beyond the other.
      const [above, below] = [panels[`${id}/${side}`] ?? [], points].map((one) => offPlane(middle(one), page))
      expect(Math.sign(above ?? 0)).toBe(-Math.sign(below ?? 0))
      expect(Math.abs(below ?? 0)).toBeGreaterThan(1)
    }
  })

  test('meet the page along their slits', () => {
    const { ink } = overSlits(task, 120, 0)
    const slits = ink.filter(({ role }) => role === 'cut').map(({ points }) => points)
    expect(slits).toHaveLength(2)
    for (const { points } of tabsAt(0)) {
      const [a, b] = points as readonly Vec3[] as [Vec3, Vec3]
      const spare = slits.map(([from, to]) => {
        const long = Math.hypot(...minus(to as Vec3, from as Vec3))
        return [a, b].map(
          (p) => Math.hypot(...minus(p, from as Vec3)) + Math.hypot(...minus(to as Vec3, p)) - long,
        )
      })
      expect(Math.min(...spare.map((one) => Math.max(...one)))).toBeLessThan(1e-9)
    }
  })

  test('are held over the card, and come down into it', () => {
    const found = stepMotion(
      design,
      'threading',
      { width: 340, height: 250 },
      { of: [id], there: [], opening: 120 },
    )
    expect(found?.told(0)).toBe('piece 32 mm over the card')
    expect(found?.told(1)).toBe('piece 0 mm over the card')
    const [high, low] = [tabsAt(32), tabsAt(0)]
    const moved = high.map(({ points }, k) => minus(points[0] as Vec3, low[k]?.points[0] as Vec3))
    for (const by of moved) expect(Math.hypot(...by)).toBeCloseTo(32, 9)
    // Straight up from the gutter, as both halves are pulled alike.
    for (const [x, , z] of moved) {
      expect(x).toBeCloseTo(0, 9)
      // From inside the card it comes down, from outside up.
      expect(Math.sign(z)).toBe(id === 'lily' ? -1 : 1)
    }
    const figure = stepFigure(design, 'threading', { width: 340, height: 250 }, { of: [id], there: [] })
    expect(figure.says).toContain('over its slits')
  })
})
