import { describe, expect, test } from 'vitest'
import { leastChange } from '../../../src/paper/answers/tip.ts'
import type { Design, Vec3 } from '../../../src/paper/index.ts'
import { compile, parseDesign, tipAt, tipTowards } from '../../../src/paper/index.ts'

const card = { width: 105, height: 148 }

const designOf = (...mechanisms: object[]): Design =>
  parseDesign({ hingebook: 1, title: 'Tip', card, mechanisms })

function tipOf(design: Design, id: string, opening: number): Vec3 {
  const poser = compile(design)
  poser(opening)
  return tipAt(
    poser,
    design.mechanisms.findIndex((m) => m.id === id),
  )
}

const far = (a: Vec3, b: Vec3): number => Math.hypot(a[0] - b[0], a[1] - b[1], a[2] - b[2])

describe('the least change', () => {
  test('of two equal ways takes half of each', () => {
    const [a, b] = leastChange(
      [
        [0, 0, 1],
        [0, 0, 1],
      ],
      [0, 0, 6],
    ) as [number, number]
    // Lagrange: x + y = 6 with x² + y² least gives x = y = 3; the damping takes less than a thousandth of it.
    expect(a).toBeCloseTo(3, 3)
    expect(b).toBeCloseTo(3, 3)
  })

  test('of a weak and a strong way is in proportion to their strength', () => {
    // x + 2 y = 10 with x² + y² least: (x, y) = (2, 4).
    const [a, b] = leastChange(
      [
        [0, 1, 0],
        [0, 2, 0],
      ],
      [0, 10, 0],
    ) as [number, number]
    expect(a).toBeCloseTo(2, 3)
    expect(b).toBeCloseTo(4, 3)
  })

  test('asks nothing of what moves the tip elsewhere', () => {
    const [a, b] = leastChange(
      [
        [1, 0, 0],
        [0, 0, 1],
      ],
      [0, 0, 5],
    ) as [number, number]
    expect(a).toBeCloseTo(0, 9)
    expect(b).toBeCloseTo(5, 2)
  })
})

describe('a tip that is dragged', () => {
  test('a layer deepens to the height asked for: its rise over the page is depth times the sine of the opening', () => {
    const layer = designOf({
      id: 'step',
      kind: 'cut-layer',
      on: 'gutter',
      start: 40,
      end: 80,
      left: 20,
      right: 20,
    })
    // At 90° equal depths d put the ridge at a height of d √2 over the gutter.
    const [x, y] = tipOf(layer, 'step', 90)
    const next = tipTowards(layer, 'step', 90, [x, y, 30 * Math.SQRT2])
    expect(next.mechanisms[0]).toMatchObject({ left: 30, right: 30, start: 40, end: 80 })
  })

  test('a tip moved along the gutter takes its mechanism along', () => {
    const beak = designOf({ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 60, run: 40, cut: 30 })
    const [x, y, z] = tipOf(beak, 'beak', 90)
    const next = tipTowards(beak, 'beak', 90, [x, y + 12, z])
    expect(far(tipOf(next, 'beak', 90), [x, y + 12, z])).toBeLessThan(0.3)
  })

  test('leaves alone what is kept, and the other parts', () => {
    const beak = designOf(
      { id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 40, cut: 30 },
      { id: 'step', kind: 'cut-layer', on: 'gutter', start: 90, end: 120, left: 20, right: 20 },
    )
    const [x, y, z] = tipOf(beak, 'beak', 90)
    const next = tipTowards(beak, 'beak', 90, [x, y, z + 4], ['apex', 'cut'])
    expect(next.mechanisms[0]).toMatchObject({ apex: 30, cut: 30 })
    expect(next.mechanisms[1]).toEqual(beak.mechanisms[1])
    expect(far(tipOf(next, 'beak', 90), [x, y, z + 4])).toBeLessThan(4)
  })

  test('what cannot be reached is come nearer to, and every number stays in its range', () => {
    const beak = designOf({ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 40, cut: 30 })
    const next = tipTowards(beak, 'beak', 90, [0, 5000, 9000])
    expect(() => parseDesign(JSON.parse(JSON.stringify(next)))).not.toThrow()
  })

  test('an unknown part is refused', () => {
    expect(() => tipTowards(designOf(), 'owl', 90, [0, 0, 0])).toThrow(/there is no mechanism owl/)
  })
})
