// The flat pieces of glued mechanisms against a second polygon library: polyclip-ts (MIT).
import fc from 'fast-check'
import type { Geom } from 'polyclip-ts'
import { difference, intersection, union } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { modelOf } from '../../src/paper/index.ts'
import { design, runs } from '../paper/shared/designs.ts'
import { gluedDesigns } from '../paper/shared/glued-designs.ts'

type Ring = readonly (readonly [number, number])[]

/** Area of rings with holes, mm², by the shoelace formula. */
const areaOf = (geom: Geom): number =>
  (geom as [number, number][][][]).reduce(
    (sum, polygon) =>
      sum +
      polygon.reduce((inner, ring, k) => {
        const twice = ring.reduce((total, [x, y], i) => {
          const [u, v] = ring[(i + 1) % ring.length] as [number, number]
          return total + x * v - u * y
        }, 0)
        return inner + (k === 0 ? 1 : -1) * Math.abs(twice / 2)
      }, 0),
    0,
  )

/** Rounded to a millionth of a millimetre, so that the library need not tell rounding from slivers. */
const ring = (points: Ring): Geom => [
  [points.map(([x, y]): [number, number] => [Math.round(x * 1e6) / 1e6, Math.round(y * 1e6) / 1e6])],
]

const closedArea = (points: Ring): number => areaOf(ring(points))

/** A piece's parts: its panels, flat, and its glue tabs. */
function partsOf(design: Design) {
  const model = modelOf(design)
  return model.pieces.slice(1).map((piece, k) => ({
    piece,
    panels: model.panels
      .filter((panel) => panel.piece === k + 1)
      .map(({ outline, onPiece }) =>
        outline.map(([across, along]): [number, number] => [
          onPiece.origin[0] + across * onPiece.off[0] + along * onPiece.run[0],
          onPiece.origin[1] + across * onPiece.off[1] + along * onPiece.run[1],
        ]),
      ),
    tabs: piece.lines
      .filter(({ kind, closed, of }) => kind === 'glue' && closed && of.includes('/'))
      .map(({ points }) => points),
  }))
}

/** Slivers of rounding, mm². */
const SLIVER = 1e-2

describe('a piece of its own card', () => {
  const side = fc.tuple(fc.integer({ min: 15, max: 100 }), fc.integer({ min: 15, max: 120 }))
  const size = fc.integer({ min: 6, max: 90 })
  const moth = fc
    .tuple(side, size, size, fc.integer({ min: 3, max: 15 }), fc.boolean(), fc.integer({ min: -20, max: 20 }))
    .map(([[base, facet], foot, ridge, tab, even, more]) => {
      const other = even ? base : Math.max(10, Math.min(110, base + more))
      return design(
        [
          {
            id: 'moth',
            kind: 'glued-v-fold',
            on: 'gutter',
            apex: 100,
            toward: 1,
            foot,
            ridge,
            right: { base, facet },
            left: { base: other, facet: Math.max(10, Math.min(150, base + facet - other)) },
            tab,
          },
        ],
        { width: 200, height: 300 },
      )
    })

  test('its tabs lie beside each other and beside its facets, never over them, however wide it is', () => {
    fc.assert(
      fc.property(moth, (made) => {
        const [found] = partsOf(made)
        if (!found) throw new Error('no piece')
        const { panels, tabs } = found
        expect(tabs).toHaveLength(2)
        const [left, right] = panels as unknown as [Ring, Ring]
        // A piece whose own facets overlap on the sheet cannot be cut at all: no fault of the tabs.
        fc.pre(areaOf(intersection(ring(left), ring(right))) < SLIVER)
        const facets = union(ring(left), ring(right))
        const [one, two] = tabs as [Ring, Ring]
        expect(areaOf(intersection(ring(one), ring(two)))).toBeLessThan(SLIVER)
        for (const tab of tabs) expect(areaOf(intersection(facets, ring(tab)))).toBeLessThan(SLIVER)
      }),
      runs(300),
    )
  })

  test('what is cut out is its facets and its tabs, no more and no less', () => {
    fc.assert(
      fc.property(moth, (made) => {
        const [found] = partsOf(made)
        if (!found) throw new Error('no piece')
        const { piece, panels, tabs } = found
        const [left, right] = panels as unknown as [Ring, Ring]
        fc.pre(areaOf(intersection(ring(left), ring(right))) < SLIVER)
        const parts = union(ring(left), ring(right), ...tabs.map(ring))
        expect(areaOf(difference(parts, ring(piece.outline)))).toBeLessThan(SLIVER)
        expect(areaOf(difference(ring(piece.outline), parts))).toBeLessThan(SLIVER)
      }),
      runs(300),
    )
  })

  test('pieces of tents, layers and riders are as large as their panels and tabs together', () => {
    fc.assert(
      fc.property(gluedDesigns({ kinds: ['glued-tent', 'floating-layer', 'rider'], most: 4 }), (made) => {
        for (const { piece, panels, tabs } of partsOf(made)) {
          const parts = [...panels, ...tabs].reduce((sum, one) => sum + closedArea(one), 0)
          const cut = areaOf(union(ring(piece.outline)))
          expect(Math.abs(cut - parts)).toBeLessThan(SLIVER * (1 + piece.outline.length))
        }
      }),
      runs(100),
    )
  })

  test('a tab is as wide as it is told, where there is room', () => {
    const made = design(
      [
        {
          id: 'moth',
          kind: 'glued-v-fold',
          on: 'gutter',
          apex: 100,
          toward: 1,
          foot: 60,
          ridge: 50,
          base: 45,
          facet: 45,
          tab: 8,
        },
      ],
      { width: 200, height: 300 },
    )
    for (const tab of partsOf(made)[0]?.tabs ?? []) {
      // A trapezium 60 long, 8 wide, cut at 45 degrees at both ends.
      expect(closedArea(tab)).toBeCloseTo(8 * (60 - 8), 3)
    }
  })
})
