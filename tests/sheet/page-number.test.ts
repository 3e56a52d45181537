// Which page of how many, in a free corner: places by hand.
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawing/pen/marks.ts'
import { layOut } from '../../src/sheet/index.ts'
import type { Rectangle } from '../../src/sheet/marks/clip.ts'
import { CAPITAL, TAIL, wordWidth } from '../../src/sheet/marks/letters.ts'
import type { SheetMark } from '../../src/sheet/marks/setting.ts'
import { extent } from '../../src/sheet/marks/setting.ts'
import { pageNumber } from '../../src/sheet/pages/page-number.ts'
import { beak, card, dummy } from './designs.ts'

const page = { width: 210, height: 297, marks: [], outlines: [], taken: [] }

const placed = (title: string, more: object = {}) => {
  const [mark] = pageNumber(title, 2, 3, { ...page, ...more })
  return mark?.mark === 'word' ? mark : undefined
}

const box = ([left, top, right, bottom]: Rectangle): readonly Point[] => [
  [left, top],
  [right, top],
  [right, bottom],
  [left, bottom],
]

test('a page of its own needs none', () => {
  expect(pageNumber('Owl', 1, 1, page)).toEqual([])
})

test('stands in the lower right corner, within what a printer reaches', () => {
  const mark = placed('Owl')
  expect(mark?.text).toBe('Owl, page 2 of 3')
  const [x = 0, y = 0] = mark?.at ?? []
  expect(y).toBeGreaterThan(297 - 6.5 - 3)
  expect(y).toBeLessThan(297 - 6.5)
  expect(x).toBeGreaterThan(165)
})

test('a title that would take half the page is left out', () => {
  expect(placed('Nachtigall'.repeat(12))?.text).toBe('Page 2 of 3')
})

describe('goes where paper is free', () => {
  const isAt = (more: object) => placed('Owl', more)?.at ?? [Number.NaN, Number.NaN]

  const word = (x: number, y: number, turn = 0): SheetMark => ({
    mark: 'word',
    at: [x, y],
    text: 'x'.repeat(40),
    role: 'note',
    anchor: 'start',
    size: 2.5,
    turn,
  })

  test('to another corner, along no edge: elsewhere it would be read as one of the words there', () => {
    expect(isAt({ marks: [word(150, 290)] })[0]).toBeCloseTo(6.5, 6)
    expect(isAt({ taken: [[0, 250, 210, 297]] })[1]).toBeLessThan(10)
    const low = [word(150, 290), word(10, 290)]
    const [x = 0, y = 0] = isAt({ marks: low })
    expect(x > 150 && y < 10).toBe(true)
    expect(isAt({ marks: [...low, word(150, 9)] }).map(Math.round)).toEqual([7, 9])
    expect(pageNumber('Owl', 2, 3, { ...page, marks: [...low, word(150, 9), word(10, 9)] })).toEqual([])
  })

  test('4 mm from all words', () => {
    // Capitals of 2 mm end 6.5 mm above the edge of the paper, and with what hangs below them at 290.5.
    const [, y = 0] = isAt({})
    const top = y - CAPITAL * 3
    const over = (by: number) => word(150, top - by - TAIL * 2.5)
    expect(isAt({ marks: [over(4.01)] })[1]).toBe(y)
    expect(isAt({ marks: [over(4.01)] })[0]).toBeGreaterThan(150)
    expect(isAt({ marks: [over(3.99)] })[0]).toBeCloseTo(6.5, 6)
  })

  test('never onto a line, and never within a piece', () => {
    const line: SheetMark = {
      mark: 'path',
      runs: [
        [
          [190, 200],
          [190, 297],
        ],
      ],
      closed: false,
      role: 'cut',
    }
    expect(isAt({ marks: [line] })[0]).toBeLessThan(173)
    // A piece that reaches past the paper has no line near the corner.
    expect(isAt({ outlines: [box([100, 200, 400, 400])] })[0]).toBeLessThan(82)
  })

  test('upright where a corner is too narrow, and nowhere where all is taken', () => {
    const middle = [13, 0, 197, 297] as const
    const [mark] = pageNumber('Owl', 2, 3, { ...page, taken: [middle] })
    expect(mark?.mark === 'word' ? Math.abs(mark.turn ?? 0) : 0).toBe(90)
    expect(mark && extent(mark)[2]).toBeCloseTo(210 - 6.5, 6)
    expect(pageNumber('Owl', 2, 3, { ...page, taken: [[0, 0, 210, 297]] })).toEqual([])
  })
})

test('a card that fails is warned of on each page that one may cut', () => {
  const words = pageNumber('Owl', 2, 3, page, true).flatMap((mark) =>
    mark.mark === 'word' ? [[mark.text, mark.bold ?? false]] : [],
  )
  expect(words).toEqual([
    ['Do not cut yet.', true],
    ['Owl, page 2 of 3', false],
  ])
  // A space parts the two: by the letters' own widths.
  const [warning, number] = pageNumber('Owl', 2, 3, page, true)
  if (warning?.mark !== 'word' || number?.mark !== 'word') throw new Error('two words were expected')
  const end = warning.at[0] + wordWidth(warning.text, warning.size, true)
  expect(number.at[0] - end).toBeCloseTo(wordWidth(' ', number.size), 9)
})

test('is on each page of a print that has several, tiles too', () => {
  const numbers = (pages: ReturnType<typeof layOut>) =>
    pages.map(({ marks }) => {
      const mark = marks.find(({ of }) => of === 'page-number')
      return mark?.mark === 'word' ? mark.text : null
    })
  expect(numbers(layOut(dummy('hedgehog'), { paper: 'a4', art: 'lines' }))).toEqual(
    [1, 2, 3].map((k) => `Hedgehog at the pond, page ${k} of 3`),
  )
  const tiled = numbers(layOut(card(148, 210, [beak(160, -50, 50)], 'Beak'), { paper: 'a5', tiled: true }))
  // A tile whose foot is full of words has no room for it; which sheet it is stands there anyway.
  expect(tiled.filter((one) => one !== null).length).toBeGreaterThan(3)
  tiled.forEach((one, k) => {
    if (one !== null) expect(one).toBe(`Beak, page ${k + 1} of ${tiled.length}`)
  })
  expect(numbers(layOut(card(105, 148, [beak(110, -40, 38)]), { paper: 'a4' }))).toEqual([null])
})
