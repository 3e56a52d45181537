// Pieces on faces in squares and strips: areas, reaches and directions worked out on paper.
import { describe, expect, test } from 'vitest'
import type { Design, Flat, Vec3 } from '../../../src/paper/index.ts'
import { check, modelOf, stick, trim, trimToFace } from '../../../src/paper/index.ts'
import { roundest } from '../../../src/paper/plane/roundest.ts'
import { glueArea } from '../../../src/paper/stuck/glue-area.ts'
import { pieceOn } from '../../../src/paper/stuck/stick.ts'
import { placedOn, seenUpright, uprightOn } from '../../../src/paper/stuck/upright.ts'
import { fold, layer } from '../shared/check-designs.ts'
import { design, gluedMoth } from '../shared/designs.ts'
import { RAD } from '../shared/space.ts'

const box = (a0: number, l0: number, a1: number, l1: number): readonly Flat[] => [
  [a0, l0],
  [a1, l0],
  [a1, l1],
  [a0, l1],
]

const near = (p: Flat | undefined, [a, l]: Flat, by = 0.1) => {
  expect(Math.abs((p?.[0] ?? Number.NaN) - a)).toBeLessThan(by)
  expect(Math.abs((p?.[1] ?? Number.NaN) - l)).toBeLessThan(by)
}

describe('the roundest place', () => {
  test('of a square is its middle, of a triangle its inscribed circle', () => {
    const square = roundest([box(10, 20, 50, 60)])
    near(square.at, [30, 40], 0.01)
    expect(square.radius).toBeCloseTo(20, 2)
    // Sides 30, 40 and 50: radius (30 + 40 - 50) / 2.
    const triangle = roundest([
      [
        [0, 0],
        [40, 0],
        [0, 30],
      ],
    ])
    expect(triangle.radius).toBeGreaterThan(9.98)
    expect(triangle.radius).toBeLessThanOrEqual(10)
    near(triangle.at, [10, 10], 0.1)
  })

  test('lies in all outlines and in no hole', () => {
    // Squares of 40 that share a strip 12 wide and 40 high; the middle of it is cut out, 12 by 12.
    const shared = roundest([box(0, 0, 40, 40), box(28, 0, 68, 40)])
    expect(shared.radius).toBeCloseTo(6, 1)
    expect(shared.at[0]).toBeCloseTo(34, 1)
    const holed = roundest([box(0, 0, 40, 40)], [box(0, 0, 40, 30)])
    expect(holed.radius).toBeCloseTo(5, 1)
    expect(holed.at[1]).toBeCloseTo(35, 1)
    expect(roundest([box(0, 0, 10, 10), box(20, 0, 30, 10)]).radius).toBe(0)
  })
})

describe('where a piece is glued', () => {
  const bare = modelOf(design([]))
  const page = bare.panels.findIndex(({ name }) => name === 'page/right')
  const glueOf = (shape: readonly Flat[]) => glueArea(bare, page, shape)

  test('nine tenths of the way to its edge, in sixteen directions', () => {
    const glue = glueOf(box(30, 50, 70, 90)) ?? []
    expect(glue).toHaveLength(16)
    // From the middle, (50, 70): 20 to the sides, 20 sqrt 2 to the corners.
    near(glue[0], [68, 70])
    near(glue[2], [68, 88])
    near(glue[4], [50, 88])
    near(glue[8], [32, 70])
    near(glue[10], [32, 52])
    near(glue[12], [50, 52])
    for (const [a, l] of glue) {
      expect(Math.round(a * 100) / 100).toBe(a)
      expect(Math.round(l * 100) / 100).toBe(l)
    }
  })

  test('along a strip no farther than three times its half width', () => {
    const glue = glueOf(box(20, 40, 90, 50)) ?? []
    // Its middle may lie anywhere along it: 0.9 x 15 from there at most, and on one side as much as that.
    const middle = ((glue[4]?.[0] ?? 0) + (glue[12]?.[0] ?? 0)) / 2
    const far = Math.max(...glue.map(([a]) => Math.abs(a - middle)))
    expect(far).toBeCloseTo(13.5, 1)
    const along = glue.map(([, l]) => l)
    expect(Math.max(...along) - Math.min(...along)).toBeCloseTo(9, 1)
  })

  test('only on paper: not beyond the panel, nor over its holes', () => {
    // It hangs over the edge at 105 by half: the strip of 15 that is left.
    const half = glueOf(box(90, 40, 120, 80)) ?? []
    expect(half.length).toBe(16)
    for (const [a] of half) {
      expect(a).toBeGreaterThan(90)
      expect(a).toBeLessThan(105)
    }
    const holed = modelOf(design([layer('step', 'gutter', 40, 100, 30)]))
    const right = holed.panels.findIndex(({ name }) => name === 'page/right')
    const beside = glueArea(holed, right, box(20, 50, 60, 90)) ?? []
    expect(beside.length).toBe(16)
    // The hole reaches to 30.
    for (const [a] of beside) expect(a).toBeGreaterThan(30)
    expect(glueArea(holed, right, box(4, 50, 28, 90))).toBeNull()
  })

  test('nowhere on less than 4 mm', () => {
    expect(glueOf(box(20, 40, 60, 43.9))).toBeNull()
    expect(glueOf(box(20, 40, 60, 44.2))).not.toBeNull()
    expect(glueOf(box(110, 40, 130, 80))).toBeNull()
  })

  test('and the piece is made of its outline and that, in hundredths', () => {
    const piece = pieceOn(design([]), 'page/right', {
      id: 'star',
      shape: box(30, 50.123, 70, 90),
      face: 'back',
    })
    expect(piece).toMatchObject({
      id: 'star',
      kind: 'rider',
      on: 'page/right',
      face: 'back',
      across: 0,
      along: 0,
      turn: 0,
    })
    expect((piece as unknown as { shape: Flat[] }).shape[0]).toEqual([30, 50.12])
    expect(pieceOn(design([]), 'page/right', { id: 'star', shape: box(30, 50, 70, 90) })).toMatchObject({
      face: 'front',
    })
    expect(pieceOn(design([]), 'owl/left', { id: 'star', shape: box(30, 50, 70, 90) })).toBeNull()
    expect(pieceOn(design([]), 'page/right', { id: 'star', shape: box(30, 50, 70, 52) })).toBeNull()
  })
})

describe('upright', () => {
  const bare = design([])

  test('on a flat card is along it, and right is right on both pages', () => {
    // Panels count across from the gutter: to the left on the left page.
    const [right, left] = [
      uprightOn(bare, 'page/right', 'front', 180),
      uprightOn(bare, 'page/left', 'front', 180),
    ]
    near(right.up, [0, 1], 1e-9)
    near(right.right, [1, 0], 1e-9)
    near(left.up, [0, 1], 1e-9)
    near(left.right, [-1, 0], 1e-9)
    // From behind it is the other way round.
    near(uprightOn(bare, 'page/right', 'back', 180).right, [-1, 0], 1e-9)
  })

  test.each([60, 90, 140])('at %d degrees leans up the page as far as it is steep', (opening) => {
    // The reader looks down at 34 degrees: up is (0, sin 34, cos 34), and a page leads (sin, 0, cos) of half the opening.
    const u = Math.cos(34 * RAD) * Math.cos((opening / 2) * RAD)
    const v = Math.sin(34 * RAD)
    const size = Math.hypot(u, v)
    const { up, right } = uprightOn(bare, 'page/right', 'front', opening)
    near(up, [u / size, v / size], 1e-9)
    // Square to it, to the right of who looks at the inside: down the page and along its outside.
    near(right, [v / size, -u / size], 1e-9)
    const left = uprightOn(bare, 'page/left', 'front', opening)
    near(left.up, [u / size, v / size], 1e-9)
    near(left.right, [-v / size, u / size], 1e-9)
  })

  test('is told for 90 degrees, or as near as the card goes', () => {
    expect(uprightOn(bare, 'page/right')).toEqual(uprightOn(bare, 'page/right', 'front', 90))
    const tight = design([gluedMoth({ base: 60, facet: 45 })])
    expect(uprightOn(tight, 'page/left', 'front', 180)).toEqual(
      uprightOn(tight, 'page/left', 'front', Math.acos(-1 / 3) / RAD),
    )
    expect(() => uprightOn(bare, 'owl/left')).toThrow(new RangeError('there is no panel owl/left'))
  })

  test('a drawing is laid there and read back', () => {
    const lay = { right: [0, 1], up: [-1, 0] } as const
    // 3 to the right and 2 up, twice as large, from (10, 20): along by 6, and across back by 4.
    expect(placedOn(lay, [10, 20], 2)([3, 2])).toEqual([6, 26])
    expect(placedOn(lay, [0, 0])([3, 2])).toEqual([-2, 3])
    expect(seenUpright(lay, [-2, 3])).toEqual([3, 2])
  })
})

describe('sticking', () => {
  const square = { word: 'star', outline: box(-1, -1, 1, 1) }

  const stuck = (made: Design, on: string, more: object = {}) => {
    const found = stick(made, on, { ...square, ...more })
    if (!('design' in found)) throw new Error(found.sentence)
    return found
  }

  test('puts it over the middle of what is free, upright, and as large as is sound', () => {
    const small = design([], { width: 60, height: 80 })
    const found = stuck(small, 'page/right')
    expect(found.id).toBe('star')
    expect(found.opening).toBe(90)
    const [piece] = found.design.mechanisms
    expect(piece).toMatchObject({ id: 'star', kind: 'rider', on: 'page/right', face: 'front' })
    expect(check(found.design, { repairs: false }).filter(({ ok }) => !ok)).toEqual([])
    const { right, up, at, size } = found.lay
    expect([right, up]).toEqual([uprightOn(small, 'page/right').right, uprightOn(small, 'page/right').up])
    expect(at[0]).toBeCloseTo(30, 0)
    // Its corner is a share of the free circle's radius, 30, from the middle: 1.45, 1.2, 1, 0.85 …
    const shares = [1.45, 1.2, 1, 0.85, 0.7, 0.55, 0.4, 0.28]
    const share = (size * Math.SQRT2) / 30
    const k = shares.findIndex((one) => Math.abs(one - share) < 0.01)
    expect(k).toBeGreaterThanOrEqual(0)
    // The next larger one would not do.
    if (k > 0) {
      const larger = ((shares[k - 1] as number) / share) * size
      const shape = square.outline.map(placedOn({ right, up }, at, larger))
      const more = pieceOn(small, 'page/right', { id: 'star', shape })
      const next: Design = { ...small, mechanisms: more ? [more] : [] }
      expect(more === null || check(next, { repairs: false }).some(({ ok }) => !ok)).toBe(true)
    }
    // Its corners are where the lay says.
    const shape = (piece as unknown as { shape: Flat[] }).shape
    square.outline.forEach((p, i) => {
      near(shape[i], placedOn({ right, up }, at, size)(p as [number, number]), 0.006)
    })
    expect(Math.hypot(...(found.tip as Vec3))).toBeGreaterThan(0)
  })

  test('an outline drawn about another point lies in the same place', () => {
    const small = design([], { width: 60, height: 80 })
    const one = stuck(small, 'page/left')
    const two = stuck(small, 'page/left', { outline: box(9, 19, 11, 21) })
    const shapes = [one, two].map(
      ({ design: made }) => (made.mechanisms[0] as unknown as { shape: Flat[] }).shape,
    )
    shapes[0]?.forEach((p, k) => {
      near(shapes[1]?.[k], p, 0.02)
    })
  })

  test('a second one gets a name and a place of its own, on the side that is asked for', () => {
    const first = stuck(design([], { width: 60, height: 80 }), 'page/right')
    const second = stuck(first.design, 'page/right', { face: 'back' })
    expect(second.id).toBe('star-2')
    expect(second.design.mechanisms[0]).toBe(first.design.mechanisms[0])
    expect(second.design.mechanisms[1]).toMatchObject({ id: 'star-2', face: 'back' })
  })

  test('where there is no room that is said', () => {
    const tiny = design([fold('beak', 'gutter', 60, 6, 6)])
    expect(stick(tiny, 'beak/left', square)).toEqual({
      sentence:
        'There is no room on the beak’s left side: a piece needs a place 8 mm wide, and glue 4 mm wide.',
    })
    expect(() => stick(tiny, 'owl/left', square)).toThrow(new RangeError('there is no panel owl/left'))
  })
})

describe('trimming on a page, where the card is its own measure', () => {
  const sheet = (shape: readonly Flat[], glue = box(40, 40, 60, 60), more: object = {}) =>
    design([{ id: 'star', kind: 'rider', on: 'page/right', shape, glue, ...more }])
  const cut = (made: Design) => {
    const found = trim(made, 'star')
    if (!found.done) throw new Error(found.sentence)
    const outline = modelOf(found.design).panels.find(({ name }) => name === 'star/face')?.outline ?? []
    return {
      ...found,
      a: [Math.min(...outline.map(([a]) => a)), Math.max(...outline.map(([a]) => a))],
      l: [Math.min(...outline.map(([, l]) => l)), Math.max(...outline.map(([, l]) => l))],
    }
  }

  test.each([
    // What hangs over, and half a millimetre more, goes: by areas of rectangles.
    ['the near end', box(20, -10, 70, 70), 10, [20, 70], [0.5, 70], 69.5 / 80],
    ['the far end', box(20, 38, 70, 158), 10, [20, 70], [38, 147.5], 109.5 / 120],
    ['the side', box(20, 30, 125, 70), 20, [20, 104.5], [30, 70], 84.5 / 105],
    ['the gutter', box(-5, 30, 70, 70), 5, [0.5, 70], [30, 70], 69.5 / 75],
  ] as const)('%s', (_, shape, off, a, l, left) => {
    const found = cut(sheet(shape))
    expect(found.off).toBeCloseTo(off, 6)
    for (const k of [0, 1] as const) {
      expect(found.a[k]).toBeCloseTo(a[k], 2)
      expect(found.l[k]).toBeCloseTo(l[k], 2)
    }
    expect(found.left).toBeCloseTo(left, 3)
  })

  test('all at once, glue too', () => {
    const found = cut(sheet(box(-5, -5, 110, 155), box(90, 130, 109, 152)))
    expect(found.a[0]).toBeCloseTo(0.5, 2)
    expect(found.a[1]).toBeCloseTo(104.5, 2)
    expect(found.l[0]).toBeCloseTo(0.5, 2)
    expect(found.l[1]).toBeCloseTo(147.5, 2)
    expect(found.off).toBeCloseTo(7, 6)
    const glue = modelOf(found.design).glue[0]?.outline ?? []
    expect(Math.max(...glue.map(([a]) => a))).toBeCloseTo(104.5, 2)
    expect(Math.max(...glue.map(([, l]) => l))).toBeCloseTo(147.5, 2)
  })

  test('where it lay counts, and is in its points from then on', () => {
    // Shifted by 60 across: from 80 to 130.
    const found = cut(sheet(box(20, 30, 70, 70), box(30, 40, 40, 60), { across: 60 }))
    expect(found.off).toBeCloseTo(25, 6)
    expect(found.a[0]).toBeCloseTo(80, 2)
    expect(found.a[1]).toBeCloseTo(104.5, 2)
    expect(found.design.mechanisms[0]).toMatchObject({ across: 0, along: 0, turn: 0 })
    expect(found.design.mechanisms[0]).not.toHaveProperty('size')
  })

  test('what keeps inside is left alone', () => {
    const made = sheet(box(20, 30, 70, 70))
    expect(trim(made, 'star')).toEqual({ done: true, design: made, off: 0, left: 1 })
    // Right at the edge as well.
    expect(trim(sheet(box(20, 30, 105, 70)), 'star')).toMatchObject({ off: 0, left: 1 })
  })

  test('less than 9 mm² of glue holds nothing', () => {
    const lost = { done: false, sentence: 'No glue would be left of it. Move the piece inwards first.' }
    // Of a strip of glue 4 high, from 102.5 to 104.5 are left: 8; from 102 on: 10.
    expect(trim(sheet(box(20, 30, 125, 70), box(102.5, 50, 110, 54)), 'star')).toEqual(lost)
    expect(trim(sheet(box(20, 30, 125, 70), box(102, 50, 110, 54)), 'star').done).toBe(true)
  })

  test('to the outline of the page all of it goes that hangs over', () => {
    const found = trimToFace(sheet(box(20, -10, 125, 70)), 'star')
    if (!found.done) throw new Error(found.sentence)
    // 85 by 70 of 105 by 80; it hung over by 20 to the side.
    expect(found.left).toBeCloseTo((85 * 70) / (105 * 80), 3)
    expect(found.off).toBeGreaterThanOrEqual(20)
    const inside = sheet(box(20, 30, 70, 70))
    expect(trimToFace(inside, 'star')).toEqual({ done: true, design: inside, off: 0, left: 1 })
    expect(trimToFace(sheet(box(100, 30, 125, 70), box(104.9, 35, 120, 60)), 'star').done).toBe(false)
    expect(() => trimToFace(inside, 'owl')).toThrow(new RangeError('there is no piece owl'))
  })

  test('a face with dents is left to the hand', () => {
    // Between the slit's foot, (0, 50), and its end, (40, 50): a corner towards the apex is a dent, one away from it is not.
    const on = (corner: Flat) =>
      design([
        fold('beak', 'gutter', 100, -50, 40, { outline: [corner] }),
        { id: 'star', kind: 'rider', on: 'beak/right', shape: box(2, 10, 30, 40), glue: box(4, 25, 12, 35) },
      ])
    expect(trimToFace(on([20, 60]), 'star')).toEqual({
      done: false,
      sentence: 'The face has dents: draw the outline by hand.',
    })
    const cutTo = trimToFace(on([20, 40]), 'star')
    expect(cutTo.done && cutTo.left).toBeLessThan(1)
  })
})
