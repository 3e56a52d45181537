// Many pieces with all their letters in one place: the work grows with their number, not with its square.
import { describe, expect, test } from 'vitest'
import type { Design } from '../../src/paper/index.ts'
import { pieces } from '../../src/paper/index.ts'
import { placesOn } from '../../src/sheet/marks/joint-places.ts'
import type { Ground, Wish } from '../../src/sheet/marks/lettering.ts'
import { lettered } from '../../src/sheet/marks/lettering.ts'
import { edges } from '../../src/sheet/marks/stretches.ts'
import { card, MOTH } from './designs.ts'

/** V-folds of their own card, one a little beyond the other: their glue places overlap. */
const crowd = (count: number): Design =>
  card(
    105,
    148,
    Array.from({ length: count }, (_, k) => ({ ...MOTH, id: `wing-${k}`, apex: 10 + (56 * k) / count })),
  )

/** What the letters of the card ask for. */
function asked(design: Design): { readonly wishes: readonly Wish[]; readonly ground: Ground } {
  const [piece] = pieces(design)
  const places = placesOn(design, 'card', 'inside')
  const outline = piece?.outline ?? []
  return {
    wishes: places.map(({ letter, partner, points, of }) => ({
      ...{ letter, partner, points, of, isLine: false, mayBeInside: true, stay: 'inside' as const },
    })),
    ground: {
      lines: [...edges(outline), ...places.flatMap(({ points }) => edges(points))],
      printable: [-105, 0, 105, 148],
      outline,
    },
  }
}

const looks = (count: number) => {
  const { wishes, ground } = asked(crowd(count))
  return { ...lettered(wishes, ground).looks, letters: wishes.length }
}

describe('letters in a crowd', () => {
  const [few, many] = [looks(20), looks(80)]

  test('each looks at so many places and no more', () => {
    for (const { places, letters } of [few, many]) expect(places / letters).toBeLessThan(7000)
  })

  test('four times as many letters look at four times as many places', () => {
    expect(many.letters).toBe(4 * few.letters)
    expect(many.places).toBeLessThan(6 * few.places)
  })

  test('and what lies near a place is found without asking all the others', () => {
    // Asking every line and every letter for each place would be hundreds of looks a place.
    expect(many.near / many.places).toBeLessThan(40)
  })
})
