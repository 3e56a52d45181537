// What a new one of each kind would be in a room: shares of it, worked out on paper and rounded to whole millimetres.
import { describe, expect, test } from 'vitest'
import { kindNamed } from '../../../src/paper/index.ts'
import { fitsOf as fitsOfKind } from '../../../src/paper/mechanisms/fits.ts'
import type { Room, Share } from '../../../src/paper/mechanisms/kind.ts'
import { stretchIn, tabFor } from '../../../src/paper/mechanisms/shared/fitting.ts'

/** A stretch from 10 to 110, with 60 mm of paper on either side and 80 mm of card beyond. */
const room = (more: Partial<Room> = {}): Room => ({
  from: 10,
  to: 110,
  depth: () => 60,
  beyond: () => 80,
  ...more,
})

const share = (more: Partial<Share> = {}): Share => ({ long: 0.65, deep: 0.5, at: 0.5, ...more })

const fitsOf = (name: string, there: Room, of: Share) => {
  const kind = kindNamed(name)
  return kind ? fitsOfKind(kind)(there, of) : []
}

const fieldsOf = (kind: string, there = room(), of = share()) =>
  fitsOf(kind, there, of).map((fit) => fit?.fields ?? null)

test('a stretch is its share of the room, and as deep as paper and card allow', () => {
  // 65 of 100 mm leave 35: half of them before it, 10 + 17.5.
  expect(stretchIn(room(), share())).toEqual({ start: 28, end: 93, depth: 30 })
  expect(stretchIn(room(), share({ at: 0 }))).toMatchObject({ start: 10, end: 75 })
  expect(stretchIn(room(), share({ at: 1 }))).toMatchObject({ start: 45, end: 110 })
  expect(stretchIn(room({ beyond: () => 20 }), share({ deep: 0.4 })).depth).toBe(8)
  // Paper is asked for over the stretch, and card beyond its middle.
  const asked: number[] = []
  stretchIn(
    room({
      depth: (from, to) => asked.push(from, to),
      beyond: (along) => asked.push(along),
    }),
    share(),
  )
  expect(asked).toEqual([28, 93, 60.5])
})

test('a tab is a third of its joint, from 3 to 8 mm', () => {
  expect([5, 9, 12, 14, 24, 90].map(tabFor)).toEqual([3, 3, 4, 5, 8, 8])
})

test('what points along the gutter points from the reader or back, as all else on the card is measured', () => {
  const variants = (name: string) =>
    fitsOf(name, room({ isGutter: true }), share()).map((fit) => fit?.variant)
  expect(variants('cut-v-fold')).toEqual(['away from your end', 'back to your end'])
  expect(variants('cut-trapezoid')).toEqual(['wider at the far end', 'wider at your end'])
  expect(variants('glued-v-fold')).toEqual([
    'inside, away from your end',
    'inside, back to your end',
    'outside, away from your end',
    'outside, back to your end',
  ])
})

describe('cut from the card', () => {
  test('a layer: both cuts alike, half as deep as it may be', () => {
    expect(fieldsOf('cut-layer')).toEqual([{ start: 28, end: 93, left: 15, right: 15 }])
    // Nothing is smaller than 5 mm: not its length, and not its depth.
    expect(fieldsOf('cut-layer', room(), share({ long: 0.05 }))).toEqual([
      { start: 58, end: 63, left: 15, right: 15 },
    ])
    expect(fieldsOf('cut-layer', room(), share({ long: 0.04 }))).toEqual([null])
    expect(fieldsOf('cut-layer', room(), share({ deep: 0.15 }))).toMatchObject([{ left: 5 }])
    expect(fieldsOf('cut-layer', room(), share({ deep: 0.14 }))).toEqual([null])
  })

  test('a trapezoid: one cut half as deep as the other, either way', () => {
    expect(fitsOf('cut-trapezoid', room(), share())).toEqual([
      { variant: 'wider at the fold’s end', fields: { start: 28, end: 93, startCut: 8, endCut: 15 } },
      { variant: 'wider at the fold’s start', fields: { start: 28, end: 93, startCut: 15, endCut: 8 } },
    ])
    // 16 mm long: no deeper than 0.8 of that, 13.
    expect(fieldsOf('cut-trapezoid', room(), share({ long: 0.16, deep: 1 }))).toMatchObject([
      { startCut: 7, endCut: 13 },
      { startCut: 13, endCut: 7 },
    ])
    // 18 mm of depth: cuts of 9 and 5; 16 mm: of 8 and 4, and that is too small.
    expect(fieldsOf('cut-trapezoid', room(), share({ deep: 0.3 }))).toMatchObject([
      { startCut: 5 },
      { endCut: 5 },
    ])
    expect(fieldsOf('cut-trapezoid', room(), share({ deep: 16 / 60 }))).toEqual([null, null])
    expect(fieldsOf('cut-trapezoid', room(), share({ long: 0.04 }))).toEqual([null, null])
  })

  test('a V-fold: a slit at the end of its run, either way', () => {
    expect(fitsOf('cut-v-fold', room(), share())).toEqual([
      { variant: 'away from the fold’s start', fields: { apex: 28, run: 65, cut: 30, lean: 0 } },
      { variant: 'back to the fold’s start', fields: { apex: 93, run: -65, cut: 30, lean: 0 } },
    ])
    // Its ridge stays on the card when shut: no longer than what is beyond the middle.
    expect(fieldsOf('cut-v-fold', room({ beyond: () => 50 }))).toEqual([
      { apex: 35, run: 50, cut: 30, lean: 0 },
      { apex: 85, run: -50, cut: 30, lean: 0 },
    ])
    // No steeper than half a right angle.
    expect(fieldsOf('cut-v-fold', room(), share({ long: 0.2, deep: 1 }))).toEqual([
      { apex: 50, run: 20, cut: 20, lean: 0 },
      { apex: 70, run: -20, cut: 20, lean: 0 },
    ])
    // Paper is asked for a tenth of the run on either side of the slit, card beyond the middle of the room.
    const asked: number[] = []
    const there = room({
      depth: (from, to) => {
        asked.push(from, to)
        return 60
      },
      beyond: (along) => {
        asked.push(along)
        return 80
      },
    })
    fitsOf('cut-v-fold', there, share())
    expect(asked.map((x) => Number(x.toFixed(6)))).toEqual([60, 86.5, 99.5, 60, 21.5, 34.5])
    expect(fieldsOf('cut-v-fold', room(), share({ long: 0.05, deep: 1 }))).toMatchObject([
      { cut: 5 },
      { cut: 5 },
    ])
    expect(fieldsOf('cut-v-fold', room(), share({ long: 0.04, deep: 1 }))).toEqual([null, null])
    expect(fieldsOf('cut-v-fold', room(), share({ deep: 0.07 }))).toEqual([null, null])
  })
})

describe('of its own card', () => {
  test('a tent: walls half as long again as its feet, or nearly on the back', () => {
    const stretch = { start: 28, end: 93, pop: 'up' }
    expect(fitsOf('glued-tent', room(), share())).toEqual([
      {
        variant: 'inside',
        // 0.4 and 0.6 of 30 deep.
        fields: {
          ...stretch,
          leftFoot: 12,
          rightFoot: 12,
          leftWall: 18,
          rightWall: 18,
          side: 'inside',
          tab: 4,
        },
      },
      {
        variant: 'outside',
        // 0.6 of 30, and 1.4 times as much.
        fields: {
          ...stretch,
          leftFoot: 18,
          rightFoot: 18,
          leftWall: 25,
          rightWall: 25,
          side: 'outside',
          tab: 6,
        },
      },
    ])
    // 11 mm deep: a foot of 4 is too small, one of 7 is not.
    expect(fieldsOf('glued-tent', room(), share({ deep: 11 / 60 }))).toMatchObject([null, { leftFoot: 7 }])
    expect(fieldsOf('glued-tent', room(), share({ deep: 0.2 }))).toMatchObject([
      { leftFoot: 5 },
      { leftFoot: 7 },
    ])
    expect(fieldsOf('glued-tent', room(), share({ long: 0.04 }))).toEqual([null, null])
  })

  test('a platform: three quarters as wide as there is paper, on walls a fifth as high', () => {
    // 0.22, 0.75 of 30, and the walls at 0.75 of that.
    expect(fieldsOf('floating-layer')).toEqual([
      { start: 28, end: 93, height: 7, left: 23, right: 23, walls: [-17, 0, 17], tab: 3 },
    ])
    // Its tab stays under it: 60 x 0.75 = 45 of reach, 34 to the wall, and tabs of 4 for walls of 13.
    expect(fieldsOf('floating-layer', room(), share({ deep: 1 }))).toMatchObject([
      { height: 13, left: 45, tab: 4 },
    ])
    expect(fieldsOf('floating-layer', room(), share({ deep: 20.5 / 60 }))).toMatchObject([{ height: 5 }])
    expect(fieldsOf('floating-layer', room(), share({ deep: 20 / 60 }))).toEqual([null])
    expect(fieldsOf('floating-layer', room(), share({ long: 0.04 }))).toEqual([null])
  })

  test('a V-fold: steep inside, flat on the back, and both ways', () => {
    const inside = {
      left: { base: 45, facet: 60 },
      right: { base: 45, facet: 60 },
      side: 'inside',
      pop: 'up',
    }
    const outside = {
      left: { base: 30, facet: 45 },
      right: { base: 30, facet: 45 },
      side: 'outside',
      pop: 'up',
    }
    expect(fieldsOf('glued-v-fold')).toEqual([
      // 65 of joint would take 46.0 of the fold, and so begins at 10 + 27.0. It may be as long as 0.5 x 60 / 0.9 mm
      // deep paper lets it at 45 degrees: 47.1. Back from there, 33.2 farther on.
      { ...inside, apex: 37, toward: 1, foot: 47, ridge: 42, tab: 8 },
      { ...inside, apex: 70, toward: -1, foot: 47, ridge: 42, tab: 8 },
      // 65 at 30 degrees take 56.3: from 10 + 21.9, and paper is deep enough for all of them.
      { ...outside, apex: 32, toward: 1, foot: 65, ridge: 59, tab: 8 },
      { ...outside, apex: 88, toward: -1, foot: 65, ridge: 59, tab: 8 },
    ])
    expect(fitsOf('glued-v-fold', room(), share()).map((fit) => fit?.variant)).toEqual([
      'inside, away from the fold’s start',
      'inside, back to the fold’s start',
      'outside, away from the fold’s start',
      'outside, back to the fold’s start',
    ])
    // No longer than the card beyond the middle of the room.
    expect(fieldsOf('glued-v-fold', room({ beyond: () => 20 }))[0]).toMatchObject({
      foot: 20,
      ridge: 18,
      tab: 7,
    })
    expect(fieldsOf('glued-v-fold', room(), share({ long: 0.05 }))[0]).toMatchObject({ foot: 5 })
    expect(fieldsOf('glued-v-fold', room(), share({ long: 0.04 }))).toEqual([null, null, null, null])
    expect(fieldsOf('glued-v-fold', room({ beyond: (along) => (along === 60 ? 30 : 1) }))[0]).toMatchObject({
      foot: 30,
    })
    // Paper is asked for from a fifth of the joint on: near the apex it takes none.
    const asked: number[] = []
    const there = room({
      depth: (from, to) => {
        asked.push(from, to)
        return 60
      },
    })
    fitsOf('glued-v-fold', there, share())
    const [from, to] = [10 + (100 - 65 * Math.SQRT1_2) / 2, 65 * Math.SQRT1_2]
    expect(asked[0]).toBeCloseTo(from + 0.2 * to, 9)
    expect(asked[1]).toBeCloseTo(from + to, 9)
  })

  test('a piece: round, in the middle of what is free, glued over half of it', () => {
    const there = room({ spot: { at: [30.4, 50.6], radius: 20 } })
    const [front, back] = fitsOf('rider', there, share())
    expect([front?.variant, back?.variant]).toEqual(['on the front', 'on the back'])
    const fields = front?.fields as unknown as Record<'shape' | 'glue', [number, number][]>
    expect(fields.shape).toHaveLength(16)
    // A radius of 10 about (30, 51): to the right, above, to the left, below; and at 45 degrees 7.07 either way.
    expect([0, 4, 8, 12].map((k) => fields.shape[k])).toEqual([
      [40, 51],
      [30, 61],
      [20, 51],
      [30, 41],
    ])
    expect(fields.shape[2]).toEqual([37.1, 58.1])
    expect([0, 4].map((k) => fields.glue[k])).toEqual([
      [35, 51],
      [30, 56],
    ])
    // The longest way across it, between corners in tenths: twice 7.1 either way.
    const size = expect.closeTo(14.2 * Math.SQRT2, 9)
    expect(front?.fields).toMatchObject({ face: 'front', across: 0, along: 0, turn: 0, size })
    expect(back?.fields).toEqual({ ...front?.fields, face: 'back' })
    expect(fieldsOf('rider')).toEqual([null, null])
    expect(fieldsOf('rider', room({ spot: { at: [30, 50], radius: 10 } }))).toMatchObject([
      { size: 10 },
      { size: 10 },
    ])
    expect(fieldsOf('rider', room({ spot: { at: [30, 50], radius: 8.9 } }))).toEqual([null, null])
  })
})
