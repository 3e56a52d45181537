import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import type { Design, PieceLine } from '../../../src/paper/index.ts'
import { modelOf, pieces, poseAt } from '../../../src/paper/index.ts'
import { A6, design, designs, runs, vFold } from '../shared/designs.ts'

const beak = vFold('beak', 'gutter', 110, -40, 45)

const jaw = vFold('jaw', 'gutter', 30, 40, 45)

const lantern = { id: 'lantern', kind: 'cut-layer', on: 'gutter', start: 20, end: 60, left: 30, right: 20 }

const linesOf = (made: Design): readonly PieceLine[] => pieces(made).flatMap(({ lines }) => lines)

const named = (made: Design, of: string): readonly PieceLine[] =>
  linesOf(made).filter((line) => line.of === of)

const longOf = ({ points }: PieceLine): number =>
  points.reduce((sum, [x, y], k) => {
    const before = points[k - 1]
    return before ? sum + Math.hypot(x - before[0], y - before[1]) : 0
  }, 0)

const tidy = (value: number): number => Math.round(value * 1e6) / 1e6 + 0

const spots = (line: PieceLine | undefined) => line?.points.map((point) => point.map(tidy))

describe('the flat card to print', () => {
  test('a bare card is its outline, cut, and one valley fold', () => {
    const [card, ...others] = pieces(design([]))
    expect(others).toEqual([])
    expect(card?.id).toBe('card')
    expect(card?.lines.map(({ kind, of }) => `${kind} ${of}`)).toEqual(['cut page', 'valley gutter'])
    expect(card?.lines[1]?.points).toEqual([
      [0, 0],
      [0, A6.height],
    ])
  })

  test('a beak: one slit through both pages, a mountain ridge, two valleys, and the gutter broken for it', () => {
    const made = design([beak])
    expect(named(made, 'beak').map(spots)).toEqual([
      [
        [-40, 70],
        [0, 70],
        [40, 70],
      ],
    ])
    expect(named(made, 'beak/ridge').map(({ kind }) => kind)).toEqual(['mountain'])
    expect(named(made, 'beak/ridge').map(spots)).toEqual([
      [
        [0, 110],
        [0, 70],
      ],
    ])
    for (const side of ['left', 'right'])
      expect(named(made, `beak/${side}`).map(({ kind }) => kind)).toEqual(['valley'])
    expect(named(made, 'gutter').map(spots)).toEqual([
      [
        [0, 0],
        [0, 70],
      ],
      [
        [0, 110],
        [0, 148],
      ],
    ])
  })

  test('a slit that two V-folds share is cut once', () => {
    const cuts = linesOf(design([beak, jaw])).filter(({ kind, of }) => kind === 'cut' && of !== 'page')
    expect(cuts).toHaveLength(1)
  })

  test('an uneven layer: the old fold inside the strip is pressed flat again, the new one lies beside it', () => {
    const made = design([lantern])
    expect(named(made, 'lantern').map(spots)).toEqual([
      [
        [-30, 20],
        [0, 20],
        [20, 20],
      ],
      [
        [-30, 60],
        [0, 60],
        [20, 60],
      ],
    ])
    expect(named(made, 'lantern/ridge').map(spots)).toEqual([
      [
        [-10, 20],
        [-10, 60],
      ],
    ])
    expect(named(made, 'gutter').map(({ kind }) => kind)).toEqual(['valley', 'valley', 'crease'])
    expect(spots(named(made, 'gutter')[2])).toEqual([
      [0, 20],
      [0, 60],
    ])
  })

  test('an even layer folds along the old line: there is nothing to press flat', () => {
    const kinds = linesOf(design([{ ...lantern, left: 20 }])).map(({ kind }) => kind)
    expect(kinds).not.toContain('crease')
  })

  test('a shaped slit is cut as it was drawn', () => {
    const made = design([
      {
        ...beak,
        outline: [
          [10, 66],
          [25, 74],
        ],
      },
    ])
    expect(named(made, 'beak').map(spots)).toEqual([
      [
        [-40, 70],
        [-25, 74],
        [-10, 66],
        [0, 70],
        [10, 66],
        [25, 74],
        [40, 70],
      ],
    ])
  })

  test('on a ridge everything is turned over: the guest’s ridge is a valley, its side folds mountains', () => {
    const made = design([beak, vFold('eye', 'beak/ridge', 8, 14, 30), vFold('lid', 'eye/ridge', 4, 6, 20)])
    const kind = (of: string) => named(made, of)[0]?.kind
    expect([kind('eye/ridge'), kind('eye/left'), kind('eye/right')]).toEqual([
      'valley',
      'mountain',
      'mountain',
    ])
    expect([kind('lid/ridge'), kind('lid/left'), kind('lid/right')]).toEqual(['mountain', 'valley', 'valley'])
  })
})

describe('every sheet', () => {
  test('is the card with all its folds where the flat model has them', () => {
    fc.assert(
      fc.property(designs(), (made) => {
        const flat = poseAt(made, 180).creases
        for (const { kind, of, points } of linesOf(made)) {
          if (kind === 'cut') continue
          const { start, end } = flat[of] ?? { start: [0, 0, 0], end: [0, 0, 0] }
          const [ux, uy] = [end[0] - start[0], end[1] - start[1]]
          const long = Math.hypot(ux, uy)
          for (const [x, y] of points) {
            const along = ((x - start[0]) * ux + (y - start[1]) * uy) / long
            const off = ((x - start[0]) * uy - (y - start[1]) * ux) / long
            expect(Math.abs(off)).toBeLessThan(1e-9)
            expect(along).toBeGreaterThan(-1e-9)
            expect(along).toBeLessThan(long + 1e-9)
          }
        }
      }),
      runs(200),
    )
  })

  test('folds each crease over its whole length, less what its guests took', () => {
    fc.assert(
      fc.property(designs({ single: true }), (made) => {
        for (const { name, length, guests } of modelOf(made).creases) {
          const spans = guests.map((index) => modelOf(made).builds[index]?.build.span ?? [0, 0])
          const taken = spans.reduce((sum, [from, to]) => sum + to - from, 0)
          const folded = named(made, name).filter(({ kind }) => kind === 'mountain' || kind === 'valley')
          const long = folded.reduce((sum, line) => sum + longOf(line), 0)
          expect(Math.abs(long - (length - taken))).toBeLessThan(1e-6)
        }
      }),
      runs(200),
    )
  })

  test('has finite numbers alone, however poor the design', () => {
    fc.assert(
      fc.property(designs({ poor: true, steepest: 90 }), (made) => {
        for (const { points } of linesOf(made))
          for (const value of points.flat()) expect(value).toSatisfy(Number.isFinite)
      }),
      runs(200),
    )
  })
})
