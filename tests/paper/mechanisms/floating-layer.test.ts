// A platform on walls, flat: its outlines, tabs and joints in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import { handlesOf, kindOf } from '../../../src/paper/index.ts'
import type { FloatingLayer } from '../../../src/paper/mechanisms/floating-layer.ts'
import { floatingLayer } from '../../../src/paper/mechanisms/floating-layer.ts'
import { design } from '../shared/designs.ts'

const pond: FloatingLayer = {
  id: 'pond',
  kind: 'floating-layer',
  on: 'gutter',
  start: 40,
  end: 90,
  height: 20,
  left: 30,
  right: 36,
  walls: [-20, 0, 30],
  tab: 8,
}

const built = (more: Partial<FloatingLayer> = {}) => floatingLayer.build({ ...pond, ...more })

describe('a platform on walls', () => {
  test('has one ridge over its host, and each wall a joint below and above', () => {
    const { creases } = built()
    expect(creases.map(({ part, length, hidden = false }) => [part, length, hidden])).toEqual([
      ['ridge', 50, false],
      ['foot-1', 50, true],
      ['top-1', 50, true],
      ['foot-2', 50, true],
      ['top-2', 50, true],
      ['foot-3', 50, true],
      ['top-3', 50, true],
    ])
    // The wall at 20 on the left hangs on the right of its foot, those on the right on the left; one on the
    // crease itself counts to the right.
    expect(creases.slice(1).map(({ left, right }) => [left.panel, right.panel])).toEqual([
      ['host-left', 'wall-1'],
      ['left', 'wall-1'],
      ['wall-2', 'host-right'],
      ['wall-2', 'right'],
      ['wall-3', 'host-right'],
      ['wall-3', 'right'],
    ])
    expect(creases[1]?.left.lay).toMatchObject({ origin: [20, 40], off: [1, 0] })
    expect(creases[2]?.left.lay).toMatchObject({ origin: [20, 0], off: [-1, 0] })
    expect(creases[2]?.right.lay).toMatchObject({ origin: [20, 0], off: [-1, 0] })
    expect(creases[5]?.left.lay).toMatchObject({ origin: [0, 0], off: [1, 0] })
    expect(creases[5]?.right.lay).toMatchObject({ origin: [30, 40], off: [1, 0] })
  })

  test('has a panel for each half and each wall', () => {
    expect(built().panels.map(({ part, crease, side, outline }) => [part, crease, side, outline[2]])).toEqual(
      [
        ['left', 'ridge', 'left', [30, 50]],
        ['right', 'ridge', 'right', [36, 50]],
        ['wall-1', 'foot-1', 'right', [20, 50]],
        ['wall-2', 'foot-2', 'left', [20, 50]],
        ['wall-3', 'foot-3', 'left', [20, 50]],
      ],
    )
    expect(built().tip).toEqual({ crease: 'ridge', along: 25 })
    expect(built().span).toEqual([40, 40])
  })

  test('is glued on the page with tabs outwards, and under the platform inwards where there is no room', () => {
    const glue = built().glue?.map(({ panel, outline }) => [panel, ...outline.slice(1)])
    expect(glue).toEqual([
      ['host-left', [20, 90], [28, 82], [28, 48]],
      // 20 + 8 on a half of 30 has room outwards.
      ['left', [20, 50], [28, 42], [28, 8]],
      ['host-right', [0, 90], [8, 82], [8, 48]],
      ['right', [0, 50], [8, 42], [8, 8]],
      ['host-right', [30, 90], [38, 82], [38, 48]],
      // 30 + 8 on a half of 36 has none: it turns back.
      ['right', [30, 50], [22, 42], [22, 8]],
    ])
    // As far as it just goes; and a wall so near to the crease that a tab would lead over it never turns back.
    const top = (more: Partial<FloatingLayer>) => built(more).glue?.[1]?.outline[2]?.[0]
    expect(top({ walls: [28], right: 36 })).toBe(36)
    expect(top({ walls: [28.5], right: 36 })).toBe(20.5)
    expect(top({ walls: [8], right: 9 })).toBe(0)
    expect(top({ walls: [7], right: 9 })).toBe(15)
  })

  test('folds a tab that turns back the other way', () => {
    const folds = (walls: readonly number[], right = 36) =>
      built({ walls, right }).pieces?.[1]?.lines.flatMap(({ kind }) => (kind === 'glue' ? [] : [kind]))
    // First the edge on the right of the piece, then the one on its left: of a wall on the right the foot lies right.
    expect(folds([20])).toEqual(['valley', 'valley'])
    expect(folds([30])).toEqual(['valley', 'mountain'])
    expect(folds([-25])).toEqual(['mountain', 'valley'])
  })

  test('lies flat as a platform and its walls', () => {
    const [platform, wall] = built().pieces ?? []
    expect(platform?.outline).toEqual([
      [-30, 0],
      [36, 0],
      [36, 50],
      [-30, 50],
    ])
    expect(wall?.outline).toEqual([
      [20, 50],
      [28, 42],
      [28, 8],
      [20, 0],
      [0, 0],
      [-8, 8],
      [-8, 42],
      [0, 50],
    ])
    expect(built({ tab: 0 }).pieces?.[1]?.outline).toHaveLength(4)
  })

  test('turns as its host does, its walls half as fast', () => {
    const out = new Float64Array(14)
    built().turns?.(0, 1, out)
    expect([...out]).toEqual([1, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0.5, 0])
  })

  test('is dragged by its edges and by a wall’s top', () => {
    const at = (name: string) => floatingLayer.handles.find((handle) => handle.name === name)
    expect(at('start-edge')?.at(pond)).toEqual([36, 40])
    expect(at('start-edge')?.drag(pond, [50, 20])).toEqual({ right: 50, start: 20 })
    expect(at('start-edge')?.drag(pond, [-3, 95])).toEqual({ right: 0, start: 89 })
    expect(at('end-edge')?.at(pond)).toEqual([30, 90])
    expect(at('end-edge')?.drag(pond, [12, 70])).toEqual({ left: 12, end: 70 })
    expect(at('end-edge')?.drag(pond, [-2, 30])).toEqual({ left: 0, end: 41 })
    expect(at('wall-top')?.at(pond)).toEqual([20, 25])
    expect(at('wall-top')?.drag(pond, [33, 0])).toEqual({ height: 33 })
    expect(at('wall-top')?.drag(pond, [-5, 0])).toEqual({ height: 1 })
    expect(handlesOf(design([pond])).map(({ name }) => name)).toContain('wall-top')
  })

  test('needs a wall, and an end after its start; its tab is nothing unless it is said', () => {
    expect(kindOf(pond).limits?.(pond)).toBeNull()
    expect(floatingLayer.limits?.({ ...pond, walls: [] })?.field).toBe('walls')
    expect(floatingLayer.limits?.({ ...pond, end: 40 })).toBeNull()
    expect(floatingLayer.limits?.({ ...pond, end: 39 })).toMatchObject({ field: 'end', nearest: 40 })
    const { tab: _, ...bare } = pond
    expect(floatingLayer.complete(bare).tab).toBe(0)
    expect(floatingLayer.complete(pond).tab).toBe(8)
    expect(floatingLayer.build(bare).glue?.every(({ closed }) => !closed)).toBe(true)
  })
})
