// Which page of how many, on free paper: places by hand.
import { describe, expect, test } from 'vitest'
import type { Point } from '../../src/drawing/pen/marks.ts'
import { layOut } from '../../src/sheet/index.ts'
import type { Rectangle } from '../../src/sheet/marks/clip.ts'
import { wordWidth } from '../../src/sheet/marks/letters.ts'
import type { SheetMark } from '../../src/sheet/marks/setting.ts'
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
  expect(x).toBeGreaterThan(170)
})

test('a title that would take half the page is left out', () => {
  expect(placed('Nachtigall'.repeat(12))?.text).toBe('Page 2 of 3')
})

describe('goes where paper is free', () => {
  const isAt = (more: object) => placed('Owl', more)?.at ?? [Number.NaN, Number.NaN]

  test('to the left along the edge, then to the upper edge', () => {
    const word: SheetMark = {
      mark: 'word',
      at: [150, 290],
      text: 'x'.repeat(40),
      role: 'note',
      anchor: 'start',
      size: 2.5,
    }
    expect(isAt({ marks: [word] })[0]).toBeLessThan(130)
    expect(isAt({ taken: [[0, 250, 210, 297]] })[1]).toBeLessThan(10)
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

  test('at the side, upright, where the ends are taken; in the middle where the rim is; nowhere where all is', () => {
    const ends = [
      [0, 0, 210, 20],
      [0, 277, 210, 297],
    ] as const
    const upright = pageNumber('Owl', 2, 3, { ...page, taken: ends })[0]
    expect(upright?.mark === 'word' ? Math.abs(upright.turn ?? 0) : 0).toBe(90)
    const rim = [...ends, [0, 0, 20, 297], [190, 0, 210, 297]] as const
    const [x = 0, y = 0] = isAt({ taken: rim })
    expect(x > 20 && x < 190 && y > 20 && y < 277).toBe(true)
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
  // A tile whose foot is full of words has no room for it.
  expect(tiled.filter((one) => one !== null).length).toBeGreaterThan(4)
  tiled.forEach((one, k) => {
    if (one !== null) expect(one).toBe(`Beak, page ${k + 1} of ${tiled.length}`)
  })
  expect(numbers(layOut(card(105, 148, [beak(110, -40, 38)]), { paper: 'a4' }))).toEqual([null])
})
