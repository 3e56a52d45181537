import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawing/pen/marks.ts'
import { foldPlaces, onPlane, panelAt } from '../../src/drawing/view/places.ts'
import { view } from '../../src/drawing/view/view.ts'
import type { Vec3 } from '../../src/paper/index.ts'
import { compile, parseDesign } from '../../src/paper/index.ts'

const design = parseDesign({
  hingebook: 1,
  title: 'Beak',
  card: { width: 105, height: 148 },
  mechanisms: [{ id: 'beak', kind: 'cut-v-fold', on: 'gutter', apex: 30, run: 60, cut: 40 }],
})
const size = { width: 600, height: 480 }
const camera = { turn: -20, tilt: 34 }

describe('folds in a picture', () => {
  const poser = compile(design)
  const drawn = view(poser, 100, camera, size)
  const places = foldPlaces(poser, 100, drawn.toScreen, drawn.marks)

  test('are all there, with their ends where the picture has them', () => {
    expect(places.map(({ name }) => name)).toEqual(['gutter', 'beak/ridge', 'beak/left', 'beak/right'])
    const [gutter] = places
    // The gutter runs along y from the reader's end (the card's own frame).
    expect(gutter?.ends[0]).toEqual(drawn.toScreen([0, 0, 0]))
    expect(gutter?.ends[1]).toEqual(drawn.toScreen([0, 148, 0]))
  })

  test('can be pressed where paper of their own is seen', () => {
    for (const { name, seen } of places) {
      const [at] = seen
      if (!at) continue
      const near = [panelAt(drawn.marks, [at[0] + 3, at[1]]), panelAt(drawn.marks, [at[0] - 3, at[1]])]
      const owner = name === 'gutter' ? 'page' : 'beak'
      expect(near.some((panel) => panel?.startsWith(owner) || panel?.startsWith('page'))).toBe(true)
    }
    expect(places.find(({ name }) => name === 'beak/ridge')?.seen.length).toBeGreaterThan(2)
  })

  test('of a shut card, seen from its back, the folds inside are hidden', () => {
    const shut = view(poser, 0, { turn: 90, tilt: 5 }, size)
    const inside = foldPlaces(poser, 0, shut.toScreen, shut.marks).find(({ name }) => name === 'beak/ridge')
    expect(inside?.seen).toEqual([])
  })

  test('beside the card there is no panel', () => {
    expect(panelAt(drawn.marks, [2, 2])).toBeNull()
  })
})

describe('a point dragged in a plane', () => {
  const drawn = view(design, 90, camera, size)
  const far = (a: Point, b: Point) => Math.hypot(a[0] - b[0], a[1] - b[1])

  test('is found again from its picture', () => {
    for (const wanted of [
      [0, 100, 40],
      [12, 20, 5],
      [-8, 140, 90],
    ] as Vec3[]) {
      const found = onPlane(drawn.toScreen, [wanted[0], 60, 20], drawn.toScreen(wanted))
      expect(found[0]).toBe(wanted[0])
      expect(Math.hypot(found[1] - wanted[1], found[2] - wanted[2])).toBeLessThan(1e-3)
    }
  })

  test('stays where it is in a plane that is seen edge-on', () => {
    const flat = (p: Vec3): Point => [p[0] + p[1], p[0] + p[1]]
    expect(onPlane(flat, [0, 10, 5], [70, 90])).toEqual([0, 10, 5])
  })

  test('lies under the pointer', () => {
    const to: Point = [330, 200]
    expect(far(drawn.toScreen(onPlane(drawn.toScreen, [0, 60, 30], to)), to)).toBeLessThan(0.01)
  })
})
