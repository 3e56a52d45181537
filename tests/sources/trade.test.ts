// What every paper engineer knows at the table, checked in the model. Common practice, no source: nobody
// prints these as numbers, and they come from memory. The geometry behind them is tested beside this file.
import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, Vec3 } from '../../src/paper/index.ts'
import { measure, pieces, poseAt, shutMargin } from '../../src/paper/index.ts'
import { A6, design, designs, openings, runs, vFold } from '../paper/shared/designs.ts'
import { apart, between, minus } from '../paper/shared/space.ts'

const layer = (id: string, on: string, start: number, end: number, left: number, right = left) => ({
  id,
  kind: 'cut-layer',
  on,
  start,
  end,
  left,
  right,
})

const direction = (made: Design, opening: number, crease: string): Vec3 => {
  const { start, end } = poseAt(made, opening).creases[crease] ?? { start: [0, 0, 0], end: [0, 0, 0] }
  return minus(end, start)
}

/** Every test here rests on common practice alone. */
const practice = (fact: string): string => `${fact} [common practice, no source]`

describe('cutting from one sheet', () => {
  test(practice('what is cut from the card itself always shuts flat and opens flat'), () => {
    fc.assert(
      fc.property(designs(), (made) => {
        for (const [opening, wanted] of [
          [0, 0],
          [180, 180],
        ] as const)
          for (const { angle } of Object.values(poseAt(made, opening).creases)) expect(angle).toBe(wanted)
      }),
      runs(100),
    )
  })

  test(practice('nothing is added and nothing thrown away: the open card is one whole sheet'), () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 45), layer('lantern', 'gutter', 10, 40, 15)])
    const [card, ...others] = pieces(made)
    expect(others).toEqual([])
    expect(card?.outline).toEqual([
      [-A6.width, 0],
      [A6.width, 0],
      [A6.width, A6.height],
      [-A6.width, A6.height],
    ])
  })

  test(practice('the piece that pops folds the other way to the gutter: mountain against valley'), () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 45), layer('lantern', 'gutter', 10, 40, 15)])
    const kinds = new Map(
      pieces(made).flatMap(({ lines }) => lines.map(({ of, kind }) => [of, kind] as const)),
    )
    for (const id of ['beak', 'lantern']) {
      expect(kinds.get(`${id}/ridge`)).toBe('mountain')
      expect(kinds.get(`${id}/left`)).toBe('valley')
      expect(kinds.get(`${id}/right`)).toBe('valley')
    }
  })

  test(practice('every new fold can carry a smaller mechanism, and that one another'), () => {
    fc.assert(
      fc.property(designs({ chain: true, depth: 6 }), openings, (made, opening) => {
        expect(poseAt(made, opening).stopped).toEqual([])
      }),
      runs(50),
    )
  })
})

describe('layers', () => {
  test(
    practice('in a card at right angles the top of a layer lies level and its front stands upright'),
    () => {
      const made = design([layer('lantern', 'gutter', 10, 40, 22)])
      // One page lying on the table: turn the symmetric card by 45 degrees.
      const { panels } = poseAt(made, 90)
      const [a, , , d] = panels['lantern/left'] as Vec3[]
      const [gutter, , , edge] = panels['page/right'] as Vec3[]
      expect(between(minus(d as Vec3, a as Vec3), minus(gutter as Vec3, edge as Vec3))).toBeLessThan(1e-9)
    },
  )

  test(
    practice(
      'a box in the corner behind a box makes stairs: its height is added, its depth starts at the wall',
    ),
    () => {
      const made = design([layer('lower', 'gutter', 10, 60, 40), layer('upper', 'lower/left', 5, 45, 12)])
      const [x, , z] = measure(made, 90).tips.upper?.at ?? [0, 0, 0]
      // Over the right page as the floor, and before the left one as the wall: both at 45 degrees to the model.
      expect((z - x) / Math.SQRT2).toBeCloseTo(40 + 12, 9)
      expect((z + x) / Math.SQRT2).toBeCloseTo(12, 9)
    },
  )

  test(practice('deeper cuts than half the page show at the edge of the shut card'), () => {
    fc.assert(
      fc.property(fc.double({ min: 5, max: 100, noNaN: true }), (deep) => {
        const { margin } = shutMargin(design([layer('lantern', 'gutter', 74, 74, deep)]))
        expect(margin < 0).toBe(deep > A6.width / 2)
      }),
      runs(100),
    )
  })
})

describe('V-folds', () => {
  test(practice('a beak cut at 45 degrees lies square to the gutter when the card is shut'), () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 45)])
    expect(between(direction(made, 0, 'beak/ridge'), [0, 1, 0])).toBeCloseTo(90, 9)
  })

  test(practice('the wider the wedge, the farther the beak leans over its apex'), () => {
    fc.assert(
      fc.property(
        fc.double({ min: 5, max: 80, noNaN: true }),
        fc.double({ min: 5, max: 150, noNaN: true }),
        (wedge, opening) => {
          const lean = (angle: number) =>
            between(
              direction(design([vFold('beak', 'gutter', 20, 60, angle)]), opening, 'beak/ridge'),
              [0, 1, 0],
            )
          expect(lean(wedge + 1)).toBeGreaterThan(lean(wedge))
        },
      ),
      runs(100),
    )
  })

  test(
    practice('two V-folds on one slit are a mouth: it opens as the card shuts and shuts as the card opens'),
    () => {
      const made = design([vFold('beak', 'gutter', 110, -40, 40), vFold('jaw', 'gutter', 30, 40, 40)])
      const gapes = Array.from({ length: 37 }, (_, k) => measure(made, 5 * k).gapes[0]?.gape ?? Number.NaN)
      gapes.slice(1).forEach((gape, k) => {
        expect(gape).toBeLessThan(gapes[k] as number)
      })
      expect(gapes.at(-1)).toBeLessThan(1e-9)
    },
  )

  test(practice('the tip moves, the page does not: a mark on the page stays where it was drawn'), () => {
    const made = design([vFold('beak', 'gutter', 110, -40, 45)])
    for (const opening of [0, 60, 120, 180]) {
      const [gutter, , corner] = poseAt(made, opening).panels['page/right'] as Vec3[]
      expect(apart(gutter as Vec3, corner as Vec3)).toBeCloseTo(Math.hypot(A6.width, A6.height), 9)
    }
  })
})
