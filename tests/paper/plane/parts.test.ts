// Convex parts of outlines, and what is left when others are taken out: areas by polyclip-ts (MIT), edges by search.
import fc from 'fast-check'
import { difference } from 'polyclip-ts'
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import type { Part } from '../../../src/paper/plane/convex.ts'
import { common, convexParts, minus, overlapOf, signedArea } from '../../../src/paper/plane/convex.ts'
import { edgesOf, nearestOn } from '../../../src/paper/plane/segment.ts'
import { runs } from '../shared/designs.ts'
import { between } from '../shared/gardens.ts'
import { RAD } from '../shared/space.ts'

/** Star-shaped outlines, dented or not, either way round; half of them on a grid, with edges in line. */
const outlines: fc.Arbitrary<Flat[]> = fc
  .record({
    arms: fc.array(fc.oneof(between(5, 40), fc.constantFrom(10, 20)), { minLength: 3, maxLength: 9 }),
    at: fc.tuple(between(-20, 20), between(-20, 20)),
    back: fc.boolean(),
  })
  .map(({ arms, at, back }) => {
    const points = arms.map((arm, k): Flat => {
      const turn = (360 / arms.length) * k * RAD
      return [at[0] + arm * Math.cos(turn), at[1] + arm * Math.sin(turn)]
    })
    return back ? points.reverse() : points
  })

const combs: fc.Arbitrary<Flat[]> = fc
  .array(fc.integer({ min: 1, max: 9 }), { minLength: 2, maxLength: 5 })
  .map((teeth) => [
    [0, 0],
    [teeth.length * 4, 0],
    ...teeth.flatMap((high, k): Flat[] => {
      const right = (teeth.length - k) * 4
      return [
        [right, 2 + high],
        [right - 2, 2 + high],
        [right - 2, 2],
        [right - 4, 2],
      ]
    }),
  ])

const area = (points: readonly Flat[]): number =>
  Math.abs(
    points.reduce((sum, [a, l], k) => {
      const [b, m] = points[(k + 1) % points.length] as Flat
      return sum + (a * m - b * l) / 2
    }, 0),
  )

const isConvex = (points: readonly Flat[]): boolean =>
  points.every(([a, l], k) => {
    const [b, m] = points[(k + 1) % points.length] as Flat
    const [c, n] = points[(k + 2) % points.length] as Flat
    return (b - a) * (n - l) - (m - l) * (c - a) >= -1e-6
  })

const edges = (part: Part, drawn: boolean) => edgesOf(part.points).filter((_, k) => part.drawn[k] === drawn)

const long = ({ a, b }: { a: Flat; b: Flat }): number => Math.hypot(a[0] - b[0], a[1] - b[1])

const lengthOf = (list: readonly { a: Flat; b: Flat }[]): number =>
  list.reduce((sum, one) => sum + long(one), 0)

const middle = ({ a, b }: { a: Flat; b: Flat }): Flat => [(a[0] + b[0]) / 2, (a[1] + b[1]) / 2]

const onEdges = (p: Flat, outline: readonly Flat[]): boolean =>
  edgesOf(outline).some((edge) => nearestOn(edge, p).distance < 1e-6)

/** Parts are convex, counter-clockwise, as many flags as corners, and lie beside each other. */
function sound(parts: readonly Part[]): void {
  for (const part of parts) {
    expect(part.drawn).toHaveLength(part.points.length)
    expect(isConvex(part.points)).toBe(true)
    expect(signedArea(part.points)).toBeGreaterThan(0)
  }
  parts.forEach((one, k) => {
    for (const two of parts.slice(k + 1)) expect(area(common(one.points, two.points))).toBeLessThan(1e-6)
  })
}

describe('convex parts', () => {
  test('cover the outline, once, and draw its edges and no seams', () => {
    fc.assert(
      fc.property(fc.oneof(outlines, combs), (outline) => {
        const parts = convexParts(outline)
        sound(parts)
        expect(parts.reduce((sum, { points }) => sum + area(points), 0)).toBeCloseTo(area(outline), 6)
        const drawn = parts.flatMap((part) => edges(part, true))
        expect(lengthOf(drawn)).toBeCloseTo(lengthOf(edgesOf(outline)), 6)
        for (const edge of drawn) expect(onEdges(middle(edge), outline)).toBe(true)
        for (const seam of parts.flatMap((part) => edges(part, false)))
          if (long(seam) > 1e-6) expect(onEdges(middle(seam), outline)).toBe(false)
      }),
      runs(200),
    )
  })

  test('a convex outline is its own only part; points told twice and slivers are none', () => {
    const square: Flat[] = [
      [0, 0],
      [10, 0],
      [10, 0],
      [10, 10],
      [0, 10],
    ]
    expect(convexParts(square)).toEqual([
      { points: [square[0], square[2], square[3], square[4]], drawn: [true, true, true, true] },
    ])
    expect(convexParts(square.slice(0, 3))).toEqual([])
    expect(convexParts([...square].reverse())[0]?.points).toHaveLength(4)
    expect(signedArea(convexParts([...square].reverse())[0]?.points ?? [])).toBe(100)
    // Half of a base times its height.
    expect(
      signedArea([
        [0, 0],
        [6, 0],
        [2, 4],
      ]),
    ).toBe(12)
  })

  test('how far two reach over each other is told along the shortest way out', () => {
    const box = (x: number, y: number, w: number, h: number): Part =>
      convexParts([
        [x, y],
        [x + w, y],
        [x + w, y + h],
        [x, y + h],
      ])[0] as Part
    expect(overlapOf(box(0, 0, 10, 10), box(7, 1, 10, 5))).toBeCloseTo(3, 12)
    expect(overlapOf(box(0, 0, 10, 10), box(1, 8, 5, 9))).toBeCloseTo(2, 12)
    expect(overlapOf(box(0, 0, 10, 10), box(-9, 1, 10, 5))).toBeCloseTo(1, 12)
    expect(overlapOf(box(0, 0, 10, 10), box(10, 0, 5, 5))).toBe(0)
    expect(overlapOf(box(0, 0, 10, 10), box(30, 0, 5, 5))).toBe(0)
    // Inside, it has to go out: 4 to its nearest side and its own width.
    expect(overlapOf(box(0, 0, 10, 10), box(4, 3, 2, 2))).toBeCloseTo(5, 12)
    const none: Part = { points: [], drawn: [] }
    expect(overlapOf(none, none)).toBe(0)
  })
})

describe('taking one out of another', () => {
  const convex: fc.Arbitrary<Part> = fc
    .record({
      turns: fc.array(fc.integer({ min: 0, max: 35 }), { minLength: 3, maxLength: 7 }),
      at: fc.tuple(fc.integer({ min: -9, max: 9 }), fc.integer({ min: -9, max: 9 })),
      size: between(4, 18),
      seams: fc.array(fc.boolean(), { minLength: 7, maxLength: 7 }),
    })
    .map(({ turns, at, size, seams }): Part => {
      const points = [...new Set(turns)]
        .sort((a, b) => a - b)
        .map((k): Flat => [at[0] + size * Math.cos(10 * k * RAD), at[1] + size * Math.sin(10 * k * RAD)])
      return { points, drawn: points.map((_, k) => seams[k] ?? true) }
    })
    .filter(({ points }) => points.length > 2 && area(points) > 1)

  test('leaves what polyclip-ts leaves, in parts beside each other', () => {
    fc.assert(
      fc.property(convex, convex, (whole, hole) => {
        const left = minus(whole, hole)
        for (const part of left) {
          expect(part.drawn).toHaveLength(part.points.length)
          expect(isConvex(part.points)).toBe(true)
          expect(area(common(part.points, hole.points))).toBeLessThan(1e-5)
        }
        const ring = (part: Part): [[number, number][]] => [part.points.map(([a, l]) => [a, l])]
        const wanted = (difference(ring(whole), ring(hole)) as [number, number][][][])
          .flat()
          .reduce((sum, points) => sum + signedArea(points as Flat[]), 0)
        expect(left.reduce((sum, { points }) => sum + area(points), 0)).toBeCloseTo(wanted, 4)
      }),
      runs(300),
    )
  })

  test('draws what was drawn of the whole and of the hole, and no cut made only to part them', () => {
    fc.assert(
      fc.property(convex, convex, (whole, hole) => {
        for (const part of minus(whole, hole))
          edgesOf(part.points).forEach((edge, k) => {
            if (long(edge) < 1e-3) return
            // Anywhere on an edge the answer is the same: a third along it, away from corners.
            const p: Flat = [edge.a[0] + (edge.b[0] - edge.a[0]) / 3, edge.a[1] + (edge.b[1] - edge.a[1]) / 3]
            const on = (of: Part) =>
              edgesOf(of.points)
                .map((one, m) => ({ one, drawn: of.drawn[m] === true }))
                .filter(({ one }) => nearestOn(one, p).distance < 1e-7)
            const [outer, inner] = [on(whole), on(hole)]
            // Edges of both in one line, or corners close by, may be told either way.
            if (outer.length + inner.length > 1) return
            expect(part.drawn[k]).toBe([...outer, ...inner].some(({ drawn }) => drawn))
          })
      }),
      runs(300),
    )
  })
})
