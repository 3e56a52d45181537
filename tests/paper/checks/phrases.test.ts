// The words that the checks share: where one way of saying a number ends and the next begins.
import { expect, test } from 'vitest'
import { place, side, The, the } from '../../../src/paper/checks/names.ts'
import { degrees, fold, mm, when } from '../../../src/paper/checks/phrases.ts'

test.each([
  [0, '0.0 mm'],
  [12.34, '12.3 mm'],
  [-12.34, '12.3 mm'],
  [0.05, '0.1 mm'],
  [0.0499, '0.05 mm'],
  [0.0321, '0.03 mm'],
  [0.0005, '0.0005 mm'],
  [0.00049, 'less than 0.001 mm'],
  [-1e-9, 'less than 0.001 mm'],
])('%d is told as %s', (value, told) => {
  expect(mm(value)).toBe(told)
})

test.each([
  [0, 'shut', 'when the card is shut'],
  [180, 'flat', 'when the card lies flat'],
  [0.04, '0.0°', 'when the card is open at 0.0°'],
  [0.94, '0.9°', 'when the card is open at 0.9°'],
  [1, '1.0°', 'when the card is open at 1°'],
  [90.5, '90.5°', 'when the card is open at 91°'],
  [179.96, '180.0°', 'when the card is open at 180°'],
])('an opening of %d is %s', (opening, told, sentence) => {
  expect(degrees(opening)).toBe(told)
  expect(when(opening)).toBe(sentence)
})

test('a part is called as a reader would call it', () => {
  expect([the('left-reed'), The('moth')]).toEqual(['the left reed', 'The moth'])
  expect(['gutter', 'page/left', 'moth/ridge', 'left-reed/right'].map(place)).toEqual([
    'the gutter',
    'the left page',
    'the moth’s ridge',
    'the left reed’s right',
  ])
  expect(['gutter', 'moth/ridge', 'moth/left'].map(fold)).toEqual([
    'the gutter',
    'the moth’s ridge',
    'the moth’s left fold',
  ])
  expect(['page/right', 'pond/wall-1', 'moth/right'].map(side)).toEqual([
    'the right page',
    'the pond’s wall-1',
    'the moth’s right side',
  ])
})
