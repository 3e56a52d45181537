// A frame's fourteen numbers, as its type tells them.
import { expect, test } from 'vitest'
import { emptyFrame, partOf, uprightFrame } from '../../../src/paper/plane/frame.ts'

test('an upright frame lies as the gutter does: x to the right, along y, inside along z, and shut', () => {
  const frame = uprightFrame()
  expect([...frame]).toEqual([0, 0, 0, 1, 0, 0, 0, 1, 0, 0, 0, 1, 0, 1])
  expect(uprightFrame()).not.toBe(frame)
  expect(partOf(frame, 0)).toEqual([0, 0, 0])
  expect(partOf(frame, 3)).toEqual([1, 0, 0])
  expect(partOf(frame, 6)).toEqual([0, 1, 0])
  expect(partOf(frame, 9)).toEqual([0, 0, 1])
})

test('each part is its own three numbers', () => {
  const frame = emptyFrame()
  frame.forEach((_, k) => {
    frame[k] = k
  })
  expect(([0, 3, 6, 9] as const).map((from) => partOf(frame, from))).toEqual([
    [0, 1, 2],
    [3, 4, 5],
    [6, 7, 8],
    [9, 10, 11],
  ])
})
