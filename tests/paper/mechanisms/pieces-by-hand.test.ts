// The flat pieces of glued kinds with unlike sides, drawn on paper: a tab is set in at its ends by as much as it is wide.
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { modelOf, pieces } from '../../../src/paper/index.ts'
import { turnsOf } from '../../../src/paper/motion/turning.ts'
import { laid } from '../../../src/paper/plane/lay.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { RAD } from '../shared/space.ts'

const rounded = (points: readonly Flat[] = []) =>
  points.map(([x, y]): Flat => [Number(x.toFixed(6)) + 0, Number(y.toFixed(6)) + 0])

const outlinesOf = (m: object) =>
  pieces(design([m]))
    .slice(1)
    .map(({ outline }) => rounded(outline))

/** Where a panel's corners lie on its flat piece. */
function onPiece(m: object, name: string) {
  const panel = modelOf(design([m])).panels.find((one) => one.name === name)
  if (!panel) throw new Error(`there is no ${name}`)
  return rounded(panel.outline.map((p) => laid(panel.onPiece, p)))
}

const glueOf = (m: object): readonly (readonly [panel: number, outline: readonly Flat[]])[] =>
  modelOf(design([m])).glue.map(({ panel, outline }) => [panel, rounded(outline)])

describe('a tent with walls of 44 and 40, feet of 26 and 30, and tabs of 6', () => {
  const hut = {
    id: 'hut',
    kind: 'glued-tent',
    on: 'gutter',
    start: 20,
    end: 70,
    leftFoot: 26,
    rightFoot: 30,
    leftWall: 44,
    rightWall: 40,
    tab: 6,
  }

  test('is one piece from tab to tab, its ridge on x = 0', () => {
    expect(outlinesOf(hut)).toEqual([
      [
        [40, 50],
        [46, 44],
        [46, 6],
        [40, 0],
        [-44, 0],
        [-50, 6],
        [-50, 44],
        [-44, 50],
      ],
    ])
    expect(onPiece(hut, 'hut/left')).toEqual([
      [0, 0],
      [0, 50],
      [-44, 50],
      [-44, 0],
    ])
    expect(onPiece(hut, 'hut/right')).toContainEqual([40, 50])
  })

  test('is glued beyond its joints', () => {
    expect(glueOf(hut)).toEqual([
      [
        0,
        [
          [26, 20],
          [26, 70],
          [32, 64],
          [32, 26],
        ],
      ],
      [
        1,
        [
          [30, 20],
          [30, 70],
          [36, 64],
          [36, 26],
        ],
      ],
    ])
  })
})

describe('a platform from -30 to 36 on walls of 20, with tabs of 5', () => {
  const pond = {
    id: 'pond',
    kind: 'floating-layer',
    on: 'gutter',
    start: 40,
    end: 90,
    height: 20,
    left: 30,
    right: 36,
    walls: [-25, 0, 33],
    tab: 5,
  }

  test('is a plain rectangle, and every wall has a tab on either side', () => {
    const [platform, ...walls] = outlinesOf(pond)
    expect(platform).toEqual([
      [-30, 0],
      [36, 0],
      [36, 50],
      [-30, 50],
    ])
    expect(walls).toHaveLength(3)
    for (const wall of walls)
      expect(wall).toEqual([
        [20, 50],
        [25, 45],
        [25, 5],
        [20, 0],
        [0, 0],
        [-5, 5],
        [-5, 45],
        [0, 50],
      ])
  })

  test('its halves lie on either side of the ridge, its walls within their pieces', () => {
    expect(onPiece(pond, 'pond/left')).toEqual([
      [0, 0],
      [0, 50],
      [-30, 50],
      [-30, 0],
    ])
    expect(onPiece(pond, 'pond/right')).toContainEqual([36, 50])
    for (const name of ['pond/wall-1', 'pond/wall-2', 'pond/wall-3'])
      expect(onPiece(pond, name).toSorted()).toEqual(
        [
          [0, 0],
          [0, 50],
          [20, 0],
          [20, 50],
        ].toSorted(),
      )
  })

  test('walls are glued outwards, but inwards under the platform where there is no room', () => {
    const across = glueOf(pond).map(([panel, outline]) => [
      panel,
      Math.min(...outline.map(([a]) => a)),
      Math.max(...outline.map(([a]) => a)),
    ])
    expect(across).toEqual([
      // On the pages always outwards: 25 to 30, 0 to 5, 33 to 38.
      [0, 25, 30],
      // Under the left half 25 and 5 are just 30; under the right one 33 and 5 are more than 36.
      [2, 25, 30],
      [1, 0, 5],
      [3, 0, 5],
      [1, 33, 38],
      [3, 28, 33],
    ])
    const folds = pieces(design([pond]))
      .slice(2)
      .map(({ lines }) =>
        lines.flatMap(({ kind }) => (kind === 'mountain' || kind === 'valley' ? [kind] : [])),
      )
    // Only the tab that turns inwards folds the other way.
    expect(folds.map((kinds) => kinds.filter((kind) => kind === 'mountain').length)).toEqual([0, 0, 1])
  })

  test('its ridge turns as the gutter does, its walls half as fast, and evenly', () => {
    const build = modelOf(design([pond])).builds[0]?.build
    const out = new Float64Array(14).fill(Number.NaN)
    if (build) turnsOf(build)?.(0, Math.PI, out)
    expect([...out]).toEqual([1, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0.5, 0, 0.5, 0])
  })
})

describe('the tabs of a V-fold', () => {
  const moth = (b1: number, a1: number, b2: number, a2: number, tab = 8) => ({
    ...gluedMoth({ tab, base: undefined, facet: undefined }),
    right: { base: b1, facet: a1 },
    left: { base: b2, facet: a2 },
  })

  const tabsOf = (m: object) =>
    pieces(design([m]))
      .slice(1)
      .flatMap(({ lines }) => lines.filter(({ kind }) => kind === 'glue'))
      .map(({ points }) => points as readonly Flat[])

  test('with room are as wide as is said, and set in as much', () => {
    // A facet of 90 on the right: its joint runs along x from the apex, with the tab under it.
    const [right] = tabsOf(moth(60, 90, 60, 80))
    expect(rounded(right).toSorted()).toEqual(
      [
        [40, 0],
        [32, -8],
        [8, -8],
        [0, 0],
      ].toSorted(),
    )
  })

  test('share what the facets leave of a full turn', () => {
    // 160 and 150 leave 50: a tab may take 25 degrees from either joint at the apex, and no more.
    const tabs = tabsOf(moth(60, 160, 70, 150))
    for (const [k, facet] of [
      [0, 160],
      [1, 150],
    ] as const)
      for (const [x, y] of tabs[k] ?? []) {
        if (Math.hypot(x, y) < 1e-9) continue
        // From the ridge round to it, on its own side.
        const turn = (Math.atan2(k === 0 ? x : -x, y) / RAD + 360) % 360
        expect(turn).toBeGreaterThanOrEqual(facet - 1e-6)
        expect(turn).toBeLessThanOrEqual(facet + 25 + 1e-6)
      }
    // It is set in by what that takes: 8 / tan 25.
    const inner = Math.min(
      ...(tabs[0] ?? []).filter((p) => Math.hypot(...p) > 1e-9).map((p) => Math.hypot(...p)),
    )
    expect(inner).toBeCloseTo(Math.hypot(8, 8 / Math.tan(25 * RAD)), 6)
  })

  test('do not reach round to the fold behind the apex, on either page', () => {
    // Bases of 165 and 150 leave 15 and 30 degrees.
    for (const [panel, outline] of glueOf(moth(165, 40, 150, 50))) {
      for (const [across] of outline) expect(across).toBeGreaterThanOrEqual(-1e-6)
      const [first, , , last] = outline as unknown as [Flat, Flat, Flat, Flat]
      const off = Math.atan2(last[0] - first[0], first[1] - last[1]) / RAD
      // As near to it as it may come, where the tab is set in farthest.
      expect(off).toBeGreaterThanOrEqual(-1e-6)
      expect(Math.hypot(last[0] - first[0], last[1] - first[1])).toBeCloseTo(
        panel === 1
          ? // 8 wide it would have to be set in by 8 / tan 15 = 29.9: no more than half the joint, and so 20 tan 15 wide.
            Math.hypot(20, 20 * Math.tan(15 * RAD))
          : Math.hypot(8, 8 / Math.tan(30 * RAD)),
        6,
      )
    }
  })
})
