import fc from 'fast-check'
import { intersection, setPrecision, union } from 'polyclip-ts'
import { afterAll, beforeAll, describe, expect, test } from 'vitest'
import type { Design, Flat } from '../../../src/paper/index.ts'
import { compile, modelOf, patchesOf } from '../../../src/paper/index.ts'
import { mostLayers } from '../../../src/paper/measure/layers.ts'
import { first, fold, layer, mirrored, only } from '../shared/check-designs.ts'
import { design, ladder, runs } from '../shared/designs.ts'
import { gardens } from '../shared/gardens.ts'

// Edges of folded panels lie on one another but for rounding: points this near are one to it. It is one setting
// for all who use the library, so it goes back when these tests are done.
beforeAll(() => setPrecision(1e-7))
afterAll(() => setPrecision())

const layersOf = (made: Design): number => mostLayers(compile(made)).count

/** The convex parts of the paper in the shut card, by panel: y along the gutter, z away from it. */
function shut(made: Design): Map<number, [number, number][][]> {
  const poser = compile(made)
  poser(0)
  const parts = new Map<number, [number, number][][]>()
  for (const { panel, outline } of patchesOf(modelOf(made)))
    parts.set(panel, [
      ...(parts.get(panel) ?? []),
      outline.map((flat: Flat): [number, number] => {
        const [, y, z] = poser.lift(panel, flat)
        return [y, z]
      }),
    ])
  return parts
}

const holds = (part: readonly [number, number][], y: number, z: number): boolean => {
  const turns = part.map(([a, b], k) => {
    const [c, d] = part[(k + 1) % part.length] as [number, number]
    return (c - a) * (z - b) - (d - b) * (y - a)
  })
  return turns.every((turn) => turn > -1e-9) || turns.every((turn) => turn < 1e-9)
}

describe('layers of the shut card, by hand', () => {
  test.each([
    // A bare card: two pages.
    ['a bare card', [], 2],
    // A V-fold folds two facets in between, over what is left of the pages.
    ['one V-fold', [fold('beak', 'gutter', 110, -40, 38)], 4],
    // A layer's two halves lie between the pages beyond the hole they left.
    ['one layer', [layer('lamp', 'gutter', 40, 80, 20)], 4],
    // A layer in a layer: beyond the lamp's hole and the flame's, both lie over the pages.
    [
      'a layer in a layer',
      [layer('lamp', 'gutter', 20, 120, 30), layer('flame', 'lamp/ridge', 20, 80, 15)],
      6,
    ],
    ['two side by side', [layer('lamp', 'gutter', 10, 60, 20), layer('moon', 'gutter', 70, 130, 20)], 4],
  ])('%s', (_, mechanisms, count) => {
    expect(layersOf(design(mechanisms))).toBe(count)
  })
})

test('the spot that is pointed at lies in as many panels as are counted', () => {
  fc.assert(
    fc.property(gardens(6), (made) => {
      const { count, at, panels } = mostLayers(compile(made))
      const over = [...shut(made)].filter(([, parts]) => parts.some((part) => holds(part, at.y, at.z)))
      expect(over.length).toBe(count)
      expect(over.map(([panel]) => panel).sort()).toEqual([...panels].sort())
    }),
    runs(60),
  )
})

test('no spot of a dense grid lies under more layers', () => {
  fc.assert(
    fc.property(gardens(6), (made) => {
      const count = layersOf(made)
      const parts = [...shut(made).values()]
      const points = parts.flat(2)
      const [y0, y1] = [Math.min(...points.map(([y]) => y)), Math.max(...points.map(([y]) => y))]
      const [z0, z1] = [Math.min(...points.map(([, z]) => z)), Math.max(...points.map(([, z]) => z))]
      for (let i = 0; i < 60; i++)
        for (let j = 0; j < 60; j++) {
          const [y, z] = [y0 + ((i + 0.37) / 60) * (y1 - y0), z0 + ((j + 0.61) / 60) * (z1 - z0)]
          expect(parts.filter((panel) => panel.some((part) => holds(part, y, z))).length).toBeLessThanOrEqual(
            count,
          )
        }
    }),
    runs(30),
  )
})

test('polyclip-ts finds an area under all the panels counted, and none under one more', () => {
  fc.assert(
    fc.property(gardens(3), (made) => {
      const { count, panels } = mostLayers(compile(made))
      const paper = new Map(
        [...shut(made)].map(([panel, parts]) => [
          panel,
          union(parts.map((part) => [part]) as never) as never,
        ]),
      )
      const area = (polygons: readonly (readonly (readonly [number, number])[])[][]) =>
        polygons
          .flat()
          .reduce(
            (sum, ring) =>
              sum +
              ring.reduce(
                (s, [a, b], k) =>
                  s +
                  a * (ring[(k + 1) % ring.length]?.[1] ?? 0) -
                  b * (ring[(k + 1) % ring.length]?.[0] ?? 0),
                0,
              ) /
                2,
            0,
          )
      const [one, ...rest] = panels.map((panel) => paper.get(panel) as never)
      expect(area(intersection(one as never, ...rest) as never)).toBeGreaterThan(0)
      expect(count).toBe(panels.length)
      for (const [panel, more] of paper)
        if (!panels.includes(panel))
          expect(area(intersection(one as never, ...rest, more) as never)).toBeLessThan(1e-3)
    }),
    runs(30),
  )
})

describe('thickness', () => {
  test('is layers times caliper, with a caution above 2 mm (common practice, no source)', () => {
    const thick = (caliper: number) => first('thickness', [layer('lamp', 'gutter', 40, 80, 20)], { caliper })
    expect(thick(0.25)).toMatchObject({ ok: true, value: 1, caution: true })
    expect(thick(0.5)).toMatchObject({ ok: true, value: 2 })
    expect(thick(0.5 + 1e-6).ok).toBe(false)
    expect(thick(0.6).sentence).toBe(
      'Shut, the card is 2.4 mm thick where 4 layers lie on one another: it may not stay shut.',
    )
  })

  test.each(ladder)('$name: the spot lies in the shut card', ({ design: made }) => {
    const { space, opening } = only('thickness', made)[0] ?? {}
    expect(opening).toBe(0)
    expect(space?.[0]).toBe(0)
  })

  test('the mirrored twin is as thick', () => {
    fc.assert(
      fc.property(gardens(6), (made) => {
        expect(layersOf(mirrored(made))).toBe(layersOf(made))
      }),
      runs(40),
    )
  })
})
