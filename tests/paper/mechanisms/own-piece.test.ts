// Glue tabs and the outlines of pieces, in numbers worked by hand.
import { describe, expect, test } from 'vitest'
import { ownPiece, tabOutline } from '../../../src/paper/mechanisms/shared/own-piece.ts'
import type { Flat } from '../../../src/paper/plane/lay.ts'
import { sameLay } from '../../../src/paper/plane/lay.ts'
import { RAD } from '../shared/space.ts'

const near = (found: readonly Flat[], wanted: readonly (readonly [number, number])[]): void => {
  expect(found.map((p) => p.map((x) => Number(x.toFixed(6)) + 0))).toEqual(
    wanted.map((p) => p.map((x) => Number(x.toFixed(6)) + 0)),
  )
}

describe('a tab along a joint', () => {
  const corners = (long: number, tab: number, room?: number) =>
    tabOutline(sameLay, long, tab, room === undefined ? {} : { room }).outline

  test('is set in at its ends by as much as it is wide, or by a third of the joint', () => {
    near(corners(30, 8), [
      [0, 0],
      [0, 30],
      [8, 22],
      [8, 8],
    ])
    near(corners(30, 12), [
      [0, 0],
      [0, 30],
      [12, 20],
      [12, 10],
    ])
    near(corners(10, 30), [
      [0, 0],
      [0, 10],
      [30, 10 - 10 / 3],
      [30, 10 / 3],
    ])
  })

  test('is an open line where there is none, to be taped', () => {
    expect(tabOutline(sameLay, 30, 0)).toEqual({
      outline: [
        [0, 0],
        [0, 30],
      ],
      closed: false,
      aside: [1, 15],
    })
    expect(tabOutline(sameLay, 30, 8)).toMatchObject({ closed: true, aside: [1, 15] })
  })

  test('keeps to the room at its start: farther in, then narrower', () => {
    // At 45 degrees the bevel just fits; at 30 it begins 8 / tan 30 in; at 20 half the joint is all there is.
    near(corners(30, 8, 45 * RAD), corners(30, 8))
    near(corners(30, 8, 30 * RAD), [
      [0, 0],
      [0, 30],
      [8, 22],
      [8, 8 * Math.sqrt(3)],
    ])
    const wide = 15 * Math.tan(20 * RAD)
    near(corners(30, 8, 20 * RAD), [
      [0, 0],
      [0, 30],
      [wide, 22],
      [wide, 15],
    ])
    // No room at all: no width. A right angle or more: all the room it wants.
    for (const none of [0, -0.3])
      near(corners(30, 8, none), [
        [0, 0],
        [0, 30],
        [0, 22],
        [0, 8],
      ])
    for (const all of [90 * RAD, 120 * RAD]) near(corners(10, 30, all), corners(10, 30))
  })

  test('of no length has no size', () => {
    near(corners(0, 8), [
      [0, 0],
      [0, 0],
      [0, 0],
      [0, 0],
    ])
  })

  test('lies where its joint lies', () => {
    const lay = { origin: [3, 4], run: [1, 0], off: [0, -1] } as const
    near(tabOutline(lay, 30, 8).outline, [
      [3, 4],
      [33, 4],
      [25, -4],
      [11, -4],
    ])
    near([tabOutline(lay, 30, 8).aside], [[18, 3]])
  })
})

describe('a piece walked round its edge', () => {
  // Up the right side, back along the top, down the left side with a tab: the piece is on the right hand.
  const walk = (of: string, more: object = {}) => [
    [20, 30] as Flat,
    [20, 0] as Flat,
    { from: [0, 0] as Flat, to: [0, 30] as Flat, of, ...more },
  ]

  test('carries its tab outside, with a fold and an outline of glue', () => {
    const { part, outline, lines } = ownPiece('wall', 6, walk('pond/foot'))
    expect(part).toBe('wall')
    near(outline, [
      [20, 30],
      [20, 0],
      [0, 0],
      [-6, 6],
      [-6, 24],
      [0, 30],
    ])
    expect(lines.map(({ kind, of, closed = false }) => [kind, of, closed])).toEqual([
      ['valley', 'pond/foot', false],
      ['glue', 'pond/foot', true],
    ])
    near(lines[0]?.points ?? [], [
      [0, 0],
      [0, 30],
    ])
    near(lines[1]?.points ?? [], [
      [0, 0],
      [-6, 6],
      [-6, 24],
      [0, 30],
    ])
  })

  test('has no lines where it has no tabs', () => {
    const { outline, lines } = ownPiece('wall', 0, walk('pond/foot'))
    near(outline, [
      [20, 30],
      [20, 0],
      [0, 0],
      [0, 30],
    ])
    expect(lines).toEqual([])
  })

  test('folds its tab the way it is told, and makes room at the end that is tight', () => {
    const at = (end: 'from' | 'to') =>
      ownPiece('wall', 6, walk('pond/foot', { fold: 'mountain', tight: { at: end, room: 30 * RAD } }))
    expect(at('from').lines[0]?.kind).toBe('mountain')
    const far = 6 * Math.sqrt(3)
    near(at('from').outline.slice(3, 5), [
      [-6, far],
      [-6, 24],
    ])
    near(at('to').outline.slice(3, 5), [
      [-6, 6],
      [-6, 30 - far],
    ])
  })

  test('names no corner twice, neither on its way nor where it closes', () => {
    const { outline } = ownPiece('wall', 0, [
      [0, 0],
      [0, 1e-10],
      [9, 0],
      { from: [9, 0], to: [9, 9], of: 'x' },
      [0, 0],
    ])
    near(outline, [
      [0, 0],
      [9, 0],
      [9, 9],
    ])
    // A hair farther apart are two.
    expect(
      ownPiece('wall', 0, [
        [0, 0],
        [0, 1e-6],
        [9, 0],
      ]).outline,
    ).toHaveLength(3)
    // An edge of no length carries no tab.
    expect(ownPiece('wall', 6, [{ from: [0, 0], to: [0, 0], of: 'x' }, [9, 0], [9, 9]]).lines).toEqual([])
  })
})
