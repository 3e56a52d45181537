import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Flat } from '../../../src/paper/index.ts'
import { parseDesign } from '../../../src/paper/index.ts'
import {
  areaOf,
  cutLine,
  doubled,
  flattened,
  fromStroke,
  MOST_CORNERS,
  simplified,
  slotFor,
  snapped,
  whole,
} from '../../../src/widgets/pieces/outline.ts'
import { dataIn, readPath } from '../../../src/widgets/pieces/path.ts'
import type { Sketch } from '../../../src/widgets/pieces/sketch.ts'
import {
  addPiece,
  draw,
  drawnOn,
  reshape,
  ringOf,
  rub,
  sketchOf,
} from '../../../src/widgets/pieces/sketch.ts'
import { design, gluedMoth, runs } from '../../paper/shared/designs.ts'

const square: readonly Flat[] = [
  [0, 0],
  [10, 0],
  [10, 10],
  [0, 10],
]

const places = fc.double({ min: -100, max: 100, noNaN: true })

const clouds = (most: number) => fc.array(fc.tuple(places, places), { maxLength: most })

/** The distance of a point from a segment, by its projection. */
function offLine(p: Flat, a: Flat, b: Flat): number {
  const [x, y] = [b[0] - a[0], b[1] - a[1]]
  const t = Math.min(1, Math.max(0, ((p[0] - a[0]) * x + (p[1] - a[1]) * y) / (x * x + y * y || 1)))
  return Math.hypot(p[0] - a[0] - t * x, p[1] - a[1] - t * y)
}

describe('outlines', () => {
  test('a smooth line goes through its points and is a circle where they lie on one', () => {
    const ring = Array.from(
      { length: 16 },
      (_, k): Flat => [20 * Math.cos((k * Math.PI) / 8), 20 * Math.sin((k * Math.PI) / 8)],
    )
    const line = flattened(ring, true)
    for (const p of ring)
      expect(Math.min(...line.map((q) => Math.hypot(p[0] - q[0], p[1] - q[1])))).toBeLessThan(1e-9)
    for (const [x, y] of line) expect(Math.hypot(x, y)).toBeCloseTo(20, 1)
  })

  test('a point given twice is a corner', () => {
    const line = flattened(
      [
        [0, 0],
        [0, 0],
        [10, 0],
        [10, 0],
        [10, 10],
        [10, 10],
        [0, 10],
        [0, 10],
      ],
      true,
    )
    for (const p of line)
      expect(Math.min(...square.map((a, k) => offLine(p, a, square[(k + 1) % 4] as Flat)))).toBeLessThan(1e-9)
  })

  test('a stroke that shakes becomes few points near it', () => {
    const stroke = Array.from({ length: 300 }, (_, k): Flat => {
      const turn = (2 * Math.PI * k) / 300
      return [50 * Math.cos(turn) + 0.2 * Math.sin(k * 7), 50 * Math.sin(turn) + 0.2 * Math.cos(k * 5)]
    })
    const points = fromStroke(stroke, true)
    expect(points.length).toBeLessThan(40)
    const ring = cutLine(points, true) ?? []
    for (const [x, y] of ring) expect(Math.abs(Math.hypot(x, y) - 50)).toBeLessThan(1.6)
    expect(Math.abs(areaOf(ring)) / (Math.PI * 2500)).toBeCloseTo(1, 1)
  })

  test('fewer points keep within what is asked', () => {
    fc.assert(
      fc.property(clouds(60), (points) => {
        const few = simplified(points, 2, false)
        for (const p of points) {
          const off =
            few.length === 1
              ? Math.hypot(p[0] - (few[0] as Flat)[0], p[1] - (few[0] as Flat)[1])
              : Math.min(...few.slice(1).map((b, k) => offLine(p, few[k] as Flat, b)))
          expect(off).toBeLessThanOrEqual(2 + 1e-9)
        }
      }),
      runs(100),
    )
  })

  test('whatever is drawn is cut as one ring that crosses itself nowhere, or as nothing', () => {
    fc.assert(
      fc.property(clouds(9), fc.boolean(), (points, curve) => {
        const ring = cutLine(points, curve)
        if (!ring) return
        expect(ring.length).toBeGreaterThanOrEqual(3)
        expect(ring.length).toBeLessThanOrEqual(MOST_CORNERS)
        expect(ring.flat().every(Number.isFinite)).toBe(true)
      }),
      runs(100),
    )
    // A bow tie is its larger half; both loops where they are joined by paper.
    expect(
      Math.abs(
        areaOf(
          whole([
            [0, 0],
            [20, 20],
            [20, 0],
            [0, 10],
          ]) ?? [],
        ),
      ),
    ).toBeGreaterThan(100)
    expect(
      whole([
        [0, 0],
        [5, 5],
        [10, 10],
      ]),
    ).toBeNull()
  })

  test('a half becomes a whole that is alike on both sides', () => {
    const leaf = doubled([
      [0, 10],
      [6, 2],
      [0, -10],
    ])
    expect(leaf).toEqual([
      [0, 10],
      [6, 2],
      [0, -10],
      [-6, 2],
    ])
  })

  test('a point is drawn to a corner first, then to an edge, then to nothing', () => {
    expect(snapped([9.5, 9.4], [square], 1)).toEqual([10, 10])
    expect(snapped([5, 0.6], [square], 1)).toEqual([5, 0])
    expect(snapped([5, 4], [square], 1)).toEqual([5, 4])
  })

  test('a new point goes between the two that it lies between', () => {
    expect(slotFor(square, [10.4, 5], true).after).toBe(1)
    expect(slotFor(square, [-0.4, 5], true).after).toBe(3)
    expect(slotFor(square, [-0.4, 5], false).after).not.toBe(3)
  })
})

describe('a sketch', () => {
  const card = design([gluedMoth({ ridge: 50 })])
  const sketch: Sketch = {
    points: [
      [6, 15],
      [18, 18],
      [20, 30],
      [8, 32],
    ].map((at) => ({ at: at as unknown as Flat })),
    curve: true,
    closed: true,
  }

  test('is stuck on, on both faces if asked, in one edit', () => {
    const one = addPiece(card, 'moth/right', sketch, false)
    expect(one.done && one.design.mechanisms.length).toBe(2)
    const two = addPiece(card, 'moth/right', sketch, true)
    if (!two.done) throw new Error(two.sentence)
    const [, right, left] = two.design.mechanisms
    expect([right?.on, left?.on]).toEqual(['moth/right', 'moth/left'])
    expect(left).toEqual({ ...right, id: left?.id, on: 'moth/left' })
    const off = addPiece(
      card,
      'moth/right',
      { ...sketch, points: sketch.points.map(({ at }) => ({ at: [at[0] + 300, at[1]] })) },
      false,
    )
    expect(off.done ? '' : off.sentence).toContain('glue')
    expect(off.design).toBe(card)
  })

  test('of a cut outline gives nearly the same outline again', () => {
    const ring = ringOf(sketch) ?? []
    const again = ringOf(sketchOf(ring)) ?? []
    expect(sketchOf(ring).points.length).toBeLessThan(ring.length)
    expect(Math.abs(areaOf(again)) / Math.abs(areaOf(ring))).toBeCloseTo(1, 1)
    const cornered = sketchOf(square)
    expect(cornered).toEqual({ points: square.map((at) => ({ at })), curve: false, closed: true })
  })

  test('gives a piece another outline and keeps it glued', () => {
    const first = addPiece(card, 'moth/right', sketch, false)
    if (!first.done || first.id === undefined) throw new Error('not stuck')
    const wider = {
      ...sketch,
      points: sketch.points.map(({ at }, k) => ({ at: k === 2 ? ([26, 30] as const) : at })),
    }
    const next = reshape(first.design, first.id, wider)
    if (!next.done) throw new Error(next.sentence)
    expect(next.design.mechanisms.at(-1)).toMatchObject({ kind: 'rider', shape: ringOf(wider) })
    expect(parseDesign(next.design)).toEqual(next.design)
  })

  test('is drawn on a face, and rubbed out there alone', () => {
    const ink = { fill: 'amber', line: false, lineColour: 'ink', lineWidth: 0.6 } as const
    const drawn = draw(card, 'moth/right', sketch, ink, true)
    if (!drawn.done) throw new Error(drawn.sentence)
    expect(drawnOn(drawn.design, 'moth/left')).toBe(1)
    const rubbed = rub(drawn.design, 'moth/right', 'last')
    expect(drawnOn(rubbed.design, 'moth/right')).toBe(0)
    expect(drawnOn(rubbed.design, 'moth/left')).toBe(1)
    const short = draw(card, 'moth/right', { ...sketch, points: [] }, ink, false)
    expect(short.done ? '' : short.sentence).toBe('A shape needs 3 points, not 0.')
  })
})

describe('path data', () => {
  test('is read as the standard has it', () => {
    // Worked by hand: a square of 10 with its upper side up, brought to 1 across.
    const found = readPath('M0 0h10v10H0z')
    expect(found.done && [...found.outline].sort()).toEqual([
      [-0.5, -0.5],
      [-0.5, 0.5],
      [0.5, -0.5],
      [0.5, 0.5],
    ])
    const round = readPath('M-5 0 A5 5 0 0 1 5 0 A5 5 0 0 1 -5 0Z')
    if (!round.done) throw new Error(round.sentence)
    for (const [x, y] of round.outline) expect(Math.hypot(x, y)).toBeCloseTo(0.5, 1)
    expect(Math.abs(areaOf(round.outline))).toBeCloseTo(Math.PI / 4, 1)
    // The largest ring is the outline, also where it begins with a relative move.
    const two = readPath('M0 0h1v1h-1z m20 20 h10 v20 h-10z')
    expect(two.done && Math.abs(areaOf(two.outline))).toBeCloseTo(0.5, 6)
  })

  test('is found in an SVG, and nothing else of it is kept', () => {
    const svg =
      '<svg onload="alert(1)"><script>alert(2)</script><path id="a" d="M0 0h4v4z"/><path d=\'M0 0 h10 v10 h-10 z\'/></svg>'
    expect(dataIn(svg)).toBe('M0 0 h10 v10 h-10 z')
    expect(readPath(svg).done).toBe(true)
    expect(dataIn('<svg><rect width="3"/></svg>')).toBeNull()
  })

  test.each([
    ['', 'no path'],
    ['hello', 'no path'],
    ['M0 0', 'encloses nothing'],
    ['M0 0 L10 10 L20 20z', 'encloses nothing'],
    ['M0 0 C1 1 2 2', 'could not be read'],
    ['M0 0 L1e999 4 L 5 5z', 'above 100000'],
    ['M0 0 C1e308 0 -1e308 5 3 3z', 'above 100000'],
    ['M0 0 L NaN 4 z', 'no path'],
    ['<path d="javascript:alert(1)"/>', 'no path'],
    [`M0 0${'L1 1'.repeat(9000)}`, 'too long'],
    [`M0 0${'l1 1'.repeat(2000)}`, 'at most 2400'],
    [`<svg>${'<path '.repeat(200_000)}`, 'no path'],
    [`${'x'.repeat(3_000_000)}`, 'too long'],
  ])('says what is wrong with %.40s', (text, why) => {
    const found = readPath(text)
    expect(found.done ? '' : found.sentence).toContain(why)
    expect(found.done ? '' : found.sentence).toMatch(/^[A-Z].*\.$/)
  })

  test('of any kind gives an outline of finite points or a sentence', () => {
    const step = fc.tuple(
      fc.constantFrom(...'MmLlHhVvCcSsQqTtAaZz'),
      fc.array(fc.oneof(fc.integer(), fc.double(), fc.constantFrom(0, 1e308, -1e-308)), { maxLength: 8 }),
    )
    const data = fc
      .array(step, { maxLength: 12 })
      .map((steps) => steps.map(([letter, numbers]) => letter + numbers.join(' ')).join(' '))
    fc.assert(
      fc.property(
        fc.oneof(
          data,
          fc.string(),
          data.map((d) => `M0 0 ${d}`),
        ),
        (text) => {
          const found = readPath(text)
          if (found.done)
            for (const [x, y] of found.outline) expect(Math.abs(x) <= 0.6 && Math.abs(y) <= 0.6).toBe(true)
          else expect(found.sentence.length).toBeGreaterThan(10)
        },
      ),
      runs(400),
    )
  })
})
