import { describe, expect, test } from 'vitest'
import { roomMarks, trailOf } from '../../src/drawing/view/trails.ts'
import type { FreeRoom, Vec3 } from '../../src/paper/index.ts'
import { compile, parseDesign } from '../../src/paper/index.ts'

const layer = parseDesign({
  hingebook: 1,
  title: 'Step',
  card: { width: 105, height: 148 },
  mechanisms: [{ id: 'step', kind: 'cut-layer', on: 'gutter', start: 40, end: 80, left: 20, right: 20 }],
})

/** Seen straight along the gutter: x to the right, z up. */
const along = ([x, , z]: Vec3): readonly [number, number] => [x, -z]

describe('the trail of a tip', () => {
  test('of a layer runs along z = 2 d cos(half the opening): twice the depth shut, in the gutter flat', () => {
    // Two depths d at half angles to the upright meet at twice d times the cosine (a rhombus, Euclid I.34).
    const trail = trailOf(layer, 'step', along)
    expect(trail[0]?.[1]).toBeCloseTo(-40, 6)
    expect(trail.at(-1)?.[1]).toBeCloseTo(0, 6)
    const middle = trail[(trail.length - 1) / 2]
    expect(middle?.[1]).toBeCloseTo(-40 * Math.SQRT1_2, 6)
    expect(trail.every(([x]) => Math.abs(x) < 1e-9)).toBe(true)
  })
})

describe('the room on a panel', () => {
  const free = (height: number, bare = true): FreeRoom => ({
    panel: 'page/right',
    face: 'front',
    cell: 10,
    cells: [{ at: [50, 20], bare, height }],
    openings: [],
  })
  const poser = compile(layer)

  test('is a square on the panel: at flat its corners lie 5 mm to each side', () => {
    const flat = ([x, y]: Vec3): readonly [number, number] => [x, y]
    const [mark] = roomMarks(poser, 180, free(100), flat)
    const rounded = mark?.outline.map(([x, y]) => [Math.round(x), Math.round(y)])
    expect(rounded).toEqual([
      [45, 15],
      [55, 15],
      [55, 25],
      [45, 25],
    ])
  })

  test('is darker the higher something may stand, and not there where nothing can', () => {
    const share = (height: number, bare = true) => roomMarks(poser, 90, free(height, bare), along)[0]?.share
    expect(share(1.9)).toBeUndefined()
    expect(share(30, false)).toBeUndefined()
    expect(share(2)).toBe(0)
    expect(share(21)).toBeCloseTo(0.5, 9)
    expect(share(Number.POSITIVE_INFINITY)).toBe(1)
  })

  test('of a panel that is not there is none', () => {
    expect(roomMarks(poser, 90, { ...free(30), panel: 'owl/left' }, along)).toEqual([])
  })
})
