// Letters beside the pieces of a good copy: each by the middle of its own joint, so that nobody takes it for that of the
// joint on the other side of the apex. Common practice, no source; distances by plane geometry of the test's own.
import { polygonContains } from 'd3'
import { describe, expect, test } from 'vitest'
import { pieces } from '../../src/paper/index.ts'
import { EVERYWHERE } from '../../src/sheet/marks/clip.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import { pieceMarks } from '../../src/sheet/marks/piece-marks.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { dummies, dummy } from './designs.ts'

type Spot = readonly [number, number]

const PLACE = { origin: [0, 0], mirrored: false } as const

/** How far along a line the nearest point to a spot is, from 0 to 1. */
function along([x, y]: Spot, [[ax, ay], [bx, by]]: readonly [Spot, Spot]): number {
  const [u, v] = [bx - ax, by - ay]
  return ((x - ax) * u + (y - ay) * v) / (u * u + v * v)
}

/** The two ends of each taped edge of a piece, and the middle of its letter. */
const worded = dummies.flatMap(([file, design]) =>
  pieces(design)
    .filter(({ id }) => id !== 'card' && id !== 'cover')
    .flatMap((piece) => {
      const places = placesOn(design, piece.id, 'inside')
      const { words } = pieceMarks(piece, places, PLACE, 'ticks', EVERYWHERE)
      return places
        .filter(({ isTaped, isOwn }) => isTaped && isOwn)
        .map(({ of, points }) => {
          const letter = words.find((word) => word.of === of && word.bold)
          if (!letter) throw new Error(`${file}: ${of} has no letter`)
          const [left, top, right, bottom] = extent(letter)
          return {
            name: `${file} ${of}`,
            ends: points as unknown as readonly [Spot, Spot],
            at: [(left + right) / 2, -(top + bottom) / 2] as const,
          }
        })
    }),
)

describe('the letter of a taped edge', () => {
  test('is found on many pieces', () => expect(worded.length).toBeGreaterThan(20))

  test.each(worded)('$name stands by its middle half', ({ ends, at }) => {
    const [from, to] = ends
    if (Math.hypot(to[0] - from[0], to[1] - from[1]) < 20) return
    expect(along(at, ends)).toBeGreaterThan(0.25)
    expect(along(at, ends)).toBeLessThan(0.75)
  })

  test('has a short name after it on either side of a piece, and none where only one of two has room for it', () => {
    const namesOn = (name: string, id: string): readonly string[] => {
      const design = dummy(name)
      const piece = pieces(design).find((one) => one.id === id)
      if (!piece) throw new Error(`there is no ${id}`)
      const { words } = pieceMarks(piece, placesOn(design, id, 'inside'), PLACE, 'ticks', EVERYWHERE)
      return words.map(({ text }) => text)
    }
    expect(namesOn('house', 'fir/piece')).toEqual(['C', 'card', 'D', 'card'])
    expect(namesOn('pond', 'lily/piece')).toEqual(['G', 'H'])
  })
})

test('where every line is printed the letters of taped edges stand on their piece', () => {
  for (const name of ['owl', 'lilies', 'pond', 'moth']) {
    const design = dummy(name)
    for (const piece of pieces(design).filter(({ id }) => id !== 'card')) {
      const places = placesOn(design, piece.id, 'inside').filter(({ isTaped, isOwn }) => isTaped && isOwn)
      const { words } = pieceMarks(piece, places, PLACE, 'front', EVERYWHERE)
      for (const word of words.filter(({ bold }) => bold)) {
        const [left, top, right, bottom] = extent(word)
        const at: Spot = [(left + right) / 2, -(top + bottom) / 2]
        expect(
          polygonContains([...piece.outline] as [number, number][], [...at]),
          `${name} ${word.text}`,
        ).toBe(true)
      }
    }
  }
})
