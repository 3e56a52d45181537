// Several numbers shifted together, and pieces of their own card as they lie flat; by hand.
import { describe, expect, test } from 'vitest'
import { kindNamed } from '../../../src/paper/index.ts'
import { together } from '../../../src/paper/mechanisms/kind.ts'
import { design, gluedMoth, gluedPond } from '../shared/designs.ts'

describe('numbers that are shifted together', () => {
  const range = { min: 0, max: 10 }

  test.each([
    [1, 1],
    [2, 2],
    [5, 2],
    [-2, -2],
    [-3, -3],
    [-9, -3],
    [0, 0],
  ])('by %d go by %d: none leaves its range', (shift, goes) => {
    expect(together(shift, [3, 8, 5], range)).toBe(goes)
  })
})

describe('a piece of its own card lies flat with its ridge on x = 0', () => {
  const tent = {
    id: 'tent',
    kind: 'glued-tent',
    on: 'gutter',
    start: 40,
    end: 80,
    leftFoot: 30,
    rightFoot: 24,
    leftWall: 36,
    rightWall: 42,
  }

  test.each([gluedMoth(), gluedPond, tent])('$kind', (mechanism) => {
    const [m] = design([mechanism]).mechanisms
    const panels = m ? (kindNamed(m.kind)?.build(m).panels ?? []) : []
    for (const [side, off] of [
      ['left', [-1, 0]],
      ['right', [1, 0]],
    ] as const) {
      const panel = panels.find(({ part }) => part === side)
      expect(panel?.flat.lay).toEqual({ origin: [0, 0], run: [0, 1], off })
      expect(panel?.side).toBe(side)
    }
  })

  test('a tent’s walls are as wide as they are said to be, and as long as it', () => {
    const [m] = design([tent]).mechanisms
    const panels = m ? (kindNamed(m.kind)?.build(m).panels ?? []) : []
    expect(panels.map(({ part, outline }) => [part, outline[2]])).toEqual([
      ['left', [36, 40]],
      ['right', [42, 40]],
    ])
  })
})
