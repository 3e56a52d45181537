import fc from 'fast-check'
import { describe, expect, it } from 'vitest'
import type { Extent, Layout } from '../../src/drawing/pattern/layout.ts'
import { layOut, roomFor } from '../../src/drawing/pattern/layout.ts'
import { runs } from '../paper/shared/designs.ts'

const card: Extent = { id: 'card', x: [-105, 105], y: [0, 148], name: 0 }

const NAME = 20

const extents: fc.Arbitrary<readonly Extent[]> = fc
  .array(
    fc.record({
      left: fc.double({ min: -90, max: 40, noNaN: true }),
      wide: fc.double({ min: 1, max: 200, noNaN: true }),
      low: fc.double({ min: -40, max: 60, noNaN: true }),
      tall: fc.double({ min: 1, max: 150, noNaN: true }),
      name: fc.double({ min: 20, max: 160, noNaN: true }),
    }),
    { minLength: 1, maxLength: 26 },
  )
  .map((all) =>
    all.map(({ left, wide, low, tall, name }, k) => ({
      id: `piece-${k}`,
      x: [left, left + wide],
      y: [low, low + tall],
      name,
    })),
  )

/** Left, bottom, right, top in px, y up, with the name above. */
function rectOf({ id, x, y, name }: Extent, { scale, shifts, middle }: Layout, text: number) {
  const [dx, dy] = shifts.get(id) ?? [0, 0]
  const centre = ((x[0] + x[1]) / 2 + dx - middle[0]) * scale
  const half = Math.max(((x[1] - x[0]) / 2) * scale, name / 2)
  return {
    left: centre - half,
    right: centre + half,
    bottom: (y[0] + dy - middle[1]) * scale,
    top: (y[1] + dy - middle[1]) * scale + (name > 0 ? text : 0),
  }
}

describe('layOut', () => {
  it('keeps pieces and their names apart, inside the room, and on whole squares', () => {
    fc.assert(
      fc.property(
        extents,
        fc.integer({ min: 250, max: 900 }),
        fc.integer({ min: 250, max: 700 }),
        (pieces, width, height) => {
          const all = [card, ...pieces]
          const layout = layOut(all, { width, height }, NAME)
          // A room too small for the pieces at all: nothing to hold it to.
          fc.pre(layout.shifts.size > 0)
          const rects = all.map((one) => rectOf(one, layout, NAME))
          // A name may hang over its cell by half a square: it is centred over the piece, the cell over the grid.
          const slack = 10 * layout.scale
          for (const { left, right, bottom, top } of rects) {
            expect(left).toBeGreaterThan(-width / 2 - slack)
            expect(right).toBeLessThan(width / 2 + slack)
            expect(bottom).toBeGreaterThan(-height / 2 - 1e-6)
            expect(top).toBeLessThan(height / 2 + 1e-6)
          }
          rects.forEach((a, k) => {
            for (const b of rects.slice(k + 1)) {
              const across = Math.min(a.right, b.right) - Math.max(a.left, b.left)
              const along = Math.min(a.top, b.top) - Math.max(a.bottom, b.bottom)
              expect(across < slack + 1e-6 || along < 1e-6).toBe(true)
            }
          })
          for (const shift of layout.shifts.values())
            for (const n of shift) expect(Math.abs(n / 10 - Math.round(n / 10))).toBeLessThan(1e-9)
        },
      ),
      runs(300),
    )
  })

  it('puts pieces beside the card in a wide room and below it in a tall one', () => {
    const moth: Extent = { id: 'moth', x: [-58, 58], y: [0, 80], name: 40 }
    const wide = layOut([card, moth], { width: 900, height: 300 }, NAME).shifts.get('moth') ?? [0, 0]
    const tall = layOut([card, moth], { width: 300, height: 600 }, NAME).shifts.get('moth') ?? [0, 0]
    expect(wide[0]).toBeGreaterThan(105 + 58)
    expect(tall[1]).toBeLessThan(-80)
    expect(Math.abs(tall[0])).toBeLessThanOrEqual(10)
  })

  it('has room for what it laid out, and none for a piece that grew across a neighbour or out of the room', () => {
    const room = { width: 500, height: 400 }
    fc.assert(
      fc.property(extents, (pieces) => {
        const all = [card, ...pieces]
        const layout = layOut(all, room, NAME)
        fc.pre(layout.shifts.size > 0)
        expect(roomFor(all, layout, room, NAME)).toBe(true)
        const [first] = pieces as [Extent]
        const grown: Extent = { ...first, x: [first.x[0] - 400, first.x[1] + 400] }
        expect(roomFor([card, grown, ...pieces.slice(1)], layout, room, NAME)).toBe(false)
        expect(roomFor([...all, { ...first, id: 'new' }], layout, room, NAME)).toBe(false)
      }),
      runs(200),
    )
  })
})
