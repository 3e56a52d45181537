// A letter beside its line is read as that line's: by distances on paper, worked out here.
import { describe, expect, test } from 'vitest'
import type { Point, WordMark } from '../../src/drawing/pen/marks.ts'
import { pieces } from '../../src/paper/index.ts'
import type { SheetLines } from '../../src/sheet/index.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import type { Wish } from '../../src/sheet/marks/lettering.ts'
import { lettered } from '../../src/sheet/marks/lettering.ts'
import { CAPITAL, wordWidth } from '../../src/sheet/marks/letters.ts'
import { onPage, pieceMarks } from '../../src/sheet/marks/piece-marks.ts'
import { edges, isIn, nearest } from '../../src/sheet/marks/stretches.ts'
import { dummies } from './designs.ts'

/** A gable whose two sides are taped, half as wide as it is given and so high, mm. */
function gable(wide: number, high: number) {
  const apex: Point = [100, 20]
  const [left, right]: [Point, Point] = [
    [100 - wide, 20 + high],
    [100 + wide, 20 + high],
  ]
  const outline: readonly Point[] = [apex, right, [100 + wide, 60 + high], [100 - wide, 60 + high], left]
  const wish = (letter: string, points: readonly Point[]): Wish => ({
    ...{ letter, partner: 'card', points, isLine: true, of: letter },
    ...{ mayBeInside: false, stay: 'anywhere' },
  })
  const wishes = [wish('J', [apex, left]), wish('K', [apex, right])]
  const { marks, lost } = lettered(wishes, {
    lines: [...edges(outline), [apex, [100, 60 + high]]],
    printable: [0, 0, 200, 200],
    outline,
  })
  return { wishes, outline, lost, letters: marks.filter(({ bold }) => bold) }
}

/** The middle of a letter, turned as it is. */
function middle({ at: [x, y], size, text, turn = 0 }: WordMark): Point {
  const [half, drop] = [wordWidth(text, size, true) / 2, (CAPITAL * size) / 2]
  return turn === 0 ? [x + half, y - drop] : [x - drop, y - half]
}

describe.each([
  [8, 8],
  [11, 16],
  [5, 30],
  [20, 20],
  [45, 45],
  [60, 12],
])('two edges that meet, %i mm wide and %i mm high', (wide, high) => {
  const { wishes, outline, lost, letters } = gable(wide, high)

  test('each letter is clearly nearer to its own edge', () => {
    expect(lost).toEqual([])
    expect(letters).toHaveLength(2)
    for (const letter of letters) {
      const far = (own: boolean): number[] =>
        wishes
          .filter((wish) => (wish.letter === letter.text) === own)
          .map(({ points: [a, b] }) => nearest(middle(letter), [a as Point, b as Point]))
      expect((far(false)[0] as number) - (far(true)[0] as number)).toBeGreaterThanOrEqual(1 - 1e-9)
    }
  })

  test('and stands on its piece where that has room', () => {
    if (wide < 20 || high < 20) return
    expect(letters.some((letter) => isIn(middle(letter), outline))).toBe(true)
  })
})

describe('a place too small for its partner’s name', () => {
  const square = (from: number, to: number): readonly Point[] => [
    [from, from],
    [to, from],
    [to, to],
    [from, to],
  ]
  const told = (wide: number, round: number, more: Partial<Wish> = {}) => {
    const place = square(50, 50 + wide)
    const outline = square(50 - round, 50 + wide + round)
    const wish: Wish = {
      ...{ letter: 'T', partner: 'lawn platform', points: place, isLine: false, of: 'T' },
      ...{ mayBeInside: true, stay: 'anywhere' },
      ...more,
    }
    const { marks } = lettered([wish], {
      lines: [...edges(outline), ...edges(place)],
      printable: [0, 0, 200, 200],
      outline,
    })
    const [letter] = marks
    return { says: marks.map(({ text }) => text), isWithin: letter ? isIn(middle(letter), place) : null }
  }

  test('has it beside it, where its piece has room', () => {
    expect(told(8, 25)).toEqual({ says: ['T', 'lawn platform'], isWithin: false })
  })

  test('holds the letter alone where it would stand beside the piece, or on a face that is seen', () => {
    expect(told(4, 0.3, { partner: 'o' })).toEqual({ says: ['T'], isWithin: true })
    expect(told(8, 25, { isQuiet: true })).toEqual({ says: ['T'], isWithin: true })
  })
})

const EVERYWHERE = [-1e4, -1e4, 1e4, 1e4] as const

/** How far a letter is from a place of its piece. */
const away = (letter: Point, points: readonly Point[]): number =>
  points.length > 2 && isIn(letter, points)
    ? 0
    : Math.min(
        ...(points.length > 2 ? edges(points) : [points as never]).map((side) => nearest(letter, side)),
      )

type Joints = ReturnType<typeof placesOn>

/** A letter of a joint on a piece of the garden, and how far it is from the nearest of some joints there. */
interface Lettered {
  readonly word: WordMark
  readonly says: string
  readonly joints: Joints
  readonly farFrom: (some: Joints) => number
}

const lettersOn = (lines: SheetLines): readonly Lettered[] =>
  dummies.flatMap(([name, design]) =>
    pieces(design).flatMap((piece) => {
      const joints = placesOn(design, piece.id, lines === 'back' ? 'outside' : 'inside')
      const place = { origin: [0, 0] as const, mirrored: lines === 'back' }
      const { words } = pieceMarks(piece, joints, place, lines, EVERYWHERE)
      return words
        .filter(({ bold, text }) => bold && joints.some(({ letter }) => letter === text))
        .map((word): Lettered => {
          const farFrom = (some: Joints): number =>
            Math.min(
              ...some.map(({ points }) =>
                away(
                  middle(word),
                  points.map((point) => onPage(place, point)),
                ),
              ),
            )
          return { word, says: `${name} ${piece.id} ${word.text}`, joints, farFrom }
        })
    }),
  )

test.each(['front', 'ticks', 'back'] as const)(
  'printed as %s: on every piece of the garden a letter is clearly nearer to its own place than to any other',
  (lines) => {
    const letters = lettersOn(lines)
    const doubtful = letters.flatMap(({ word, says, joints, farFrom }) => {
      const own = farFrom(joints.filter(({ letter }) => letter === word.text))
      // What is dotted has its letter within, and says so by that.
      const other = farFrom(
        joints.filter(({ letter, isBehind, isTaped }) => letter !== word.text && (isTaped || !isBehind)),
      )
      // In its own area, or so much nearer to it.
      return own === 0 || other - own >= 1 - 1e-9 ? [] : [says]
    })
    expect(letters.length).toBeGreaterThan(200)
    expect(doubtful).toEqual([])
  },
)

/** A capital of 2 mm can be read at arm's length: common practice, no source. */
const READABLE = 2

test.each(['front', 'ticks', 'back'] as const)(
  'printed as %s: letters stand upright, can be read but where there is no paper for it, and on a tab stand in it',
  (lines) => {
    const letters = lettersOn(lines)
    const isSmall = ({ size }: WordMark): boolean => size * CAPITAL < READABLE
    const turnedOrAstray = letters.flatMap(({ word, says, joints, farFrom }) => {
      const tabs = joints.filter(
        ({ letter, isOwn, isTaped, isFlat }) => letter === word.text && isOwn && !isTaped && !isFlat,
      )
      const isAstray = lines !== 'ticks' && tabs.length > 0 && farFrom(tabs) > 0
      // Two letters take twice the room: where there is none for them upright, they are turned.
      const isTurned = word.turn && (word.text.length < 2 || !isSmall(word))
      return isTurned || isAstray ? [says] : []
    })
    expect(letters.length).toBeGreaterThan(200)
    expect(letters.filter(({ word }) => isSmall(word)).length / letters.length).toBeLessThan(0.03)
    expect(turnedOrAstray).toEqual([])
  },
)

describe('where there is room', () => {
  const box = (w: number, h: number): readonly Point[] => [
    [50, 50],
    [50 + w, 50],
    [50 + w, 50 + h],
    [50, 50 + h],
  ]
  const setIn = (w: number, h: number, letter = 'Z') => {
    const points = box(w, h)
    const wish: Wish = {
      ...{ letter, partner: 'pond', points, isLine: false, of: letter },
      ...{ mayBeInside: true, stay: 'anywhere', isTab: true },
    }
    return lettered([wish], { lines: edges(points), printable: [0, 0, 200, 200], outline: points }).marks
  }

  test('for both side by side, the name follows its letter', () => {
    const [letter, name] = setIn(20, 6)
    expect([letter?.turn, name?.turn, name?.text]).toEqual([undefined, undefined, 'pond'])
    expect(name?.at[1]).toBe(letter?.at[1])
  })

  test('for both in a narrow place, the name runs up from a letter that stands upright', () => {
    const [letter, name] = setIn(5, 20)
    expect([letter?.turn, name?.turn, name?.text]).toEqual([undefined, -90, 'pond'])
    // Its paper begins above the letter, with some between.
    expect((letter?.at[1] ?? 0) - CAPITAL * (letter?.size ?? 0) - (name?.at[1] ?? 0)).toBeGreaterThan(0.5)
  })

  test('for the letter alone, it is no smaller for want of its name', () => {
    const [letter, ...others] = setIn(5, 5)
    expect((letter?.size ?? 0) * CAPITAL).toBeGreaterThan(READABLE)
    expect(others).toEqual([])
  })

  test('for a smaller one only, it stands in its tab all the same', () => {
    const [letter] = setIn(3, 2.8)
    expect((letter?.size ?? 0) * CAPITAL).toBeLessThan(READABLE)
    expect(letter && isIn(middle(letter), box(3, 2.8))).toBe(true)
  })
})

describe('two places of one piece', () => {
  const square = (x: number, wide: number): readonly Point[] => [
    [x, 50],
    [x + wide, 50],
    [x + wide, 50 + wide],
    [x, 50 + wide],
  ]
  const put = (places: readonly (readonly Point[])[], more: Partial<Wish>) => {
    const outline: readonly Point[] = [
      [0, 0],
      [200, 0],
      [200, 200],
      [0, 200],
    ]
    const wishes = places.map(
      (points, k): Wish => ({
        ...{ letter: 'JK'[k] as string, partner: 'card', points, isLine: false, of: 'JK'[k] as string },
        ...{ mayBeInside: true, stay: 'inside' },
        ...more,
      }),
    )
    const lines = [...edges(outline), ...places.flatMap(edges)]
    const { marks } = lettered(wishes, { lines, printable: [0, 0, 200, 200], outline })
    return places.map((points, k) => {
      const own = marks.filter(({ of }) => of === 'JK'[k])
      const letter = own.find(({ bold }) => bold) as WordMark
      return { isNamed: own.length > 1, isIn: isIn(middle(letter), points) }
    })
  }

  test('say alike what can be said at both: where one has no room for a name within, neither has it', () => {
    const places = [square(40, 20), square(120, 6)]
    expect(put(places, {})).toEqual([
      { isNamed: true, isIn: true },
      { isNamed: true, isIn: false },
    ])
    expect(put(places, { pair: 'moth' })).toEqual([
      { isNamed: false, isIn: true },
      { isNamed: false, isIn: true },
    ])
  })

  test('a letter leaves some of the hatch to be seen, or stands beside it', () => {
    const places = [square(40, 3.4)]
    expect(put(places, { isTab: true })).toEqual([{ isNamed: false, isIn: true }])
    expect(put(places, { isTab: true, isHatched: true })).toEqual([{ isNamed: true, isIn: false }])
  })

  test('a letter stands on the side of its line that it should', () => {
    const line: readonly Point[] = [
      [100, 40],
      [100, 120],
    ]
    for (const way of [-1, 1]) {
      const { marks } = lettered(
        [
          {
            ...{ letter: 'J', partner: 'card', points: line, isLine: true, of: 'J', mayBeInside: false },
            ...{
              stay: 'anywhere',
              aside: [
                [100, 40],
                [way, 0],
              ],
            },
          },
        ],
        {
          lines: [
            [
              [100, 40],
              [100, 120],
            ],
          ],
          printable: [0, 0, 200, 200],
          outline: [],
        },
      )
      const letter = marks.find(({ bold }) => bold) as WordMark
      expect(Math.sign(middle(letter)[0] - 100)).toBe(way)
    }
  })
})
