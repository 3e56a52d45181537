// Where the steps found no room beside the card, its page says on which they are; type that is hard to read is no room.
import { describe, expect, test } from 'vitest'
import type { layOut, SheetLines } from '../../src/sheet/index.ts'
import { CAPITAL } from '../../src/sheet/marks/letters.ts'
import { extent, paragraph } from '../../src/sheet/marks/setting.ts'
import { Shelves } from '../../src/sheet/pages/bed.ts'
import { SAFE } from '../../src/sheet/pages/fit.ts'
import { asRead } from '../../src/sheet/pages/rows.ts'
import { dummies, dummy, laid } from './designs.ts'

const ways: readonly SheetLines[] = ['front', 'ticks', 'back']

type Pages = ReturnType<typeof layOut>

const wordsOn = ({ marks }: Pages[number]) => marks.flatMap((mark) => (mark.mark === 'word' ? [mark] : []))

const texts = (page: Pages[number]): readonly string[] => wordsOn(page).map(({ text }) => text)

test.each(ways)('%s: the first page has the steps, or says where they are', (lines) => {
  let pointed = 0
  for (const [name, design] of dummies) {
    const pages = laid(design, { paper: 'letter', lines, care: [] })
    const [first] = pages
    if (!first || texts(first).includes('Make it')) continue
    pointed++
    const at = pages.findIndex((page) => texts(page).includes('Make it'))
    expect(at, name).toBeGreaterThan(0)
    expect(texts(first).join(' / '), name).toContain(`Make it: page ${at + 1}`)
  }
  expect(pointed).toBeGreaterThan(3)
})

test('sizes give way to steps, and steps to a next page before they become small', () => {
  const [lilies] = laid(dummy('lilies'), { paper: 'a4', care: [] })
  expect(lilies && texts(lilies)).toContain('Make it')
  for (const name of ['lilies', 'scene', 'tree'])
    for (const page of laid(dummy(name), { paper: 'a4', lines: 'ticks', care: [] })) {
      const numbers = wordsOn(page).filter(({ text, bold }) => bold && /^\d+$/.test(text))
      for (const { size } of numbers) expect(CAPITAL * size, name).toBeGreaterThan(2)
    }
})

describe('a card that fills its page', () => {
  test.each(['night-garden', 'garden', 'class-card-large'])(
    '%s says what it is on what is trimmed off',
    (name) => {
      for (const lines of ways) {
        const [page] = laid(dummy(name), { paper: 'letter', lines, art: 'lines', care: [] })
        if (!page) throw new Error('no page')
        const said = wordsOn(page).filter(({ of }) => of === 'near-edge' || of === 'page-number')
        const all = said.map(({ text }) => text).join(' ')
        // US Letter is 279.4 mm wide, two pages of 135 mm are 270.
        expect(all).toContain('Trim 4.7 mm off the left and right edges of this sheet.')
        expect(all).toMatch(/(Inside|Outside) of the card\. Reader’s end.* Make it: page \d .*, page 1 of \d/)
        // The card is 200 mm high, and no printer reaches the rim.
        const [, , , high] = page.box
        for (const word of said) {
          expect(extent(word)[1]).toBeGreaterThan(SAFE + 200)
          expect(extent(word)[3]).toBeLessThanOrEqual(high - SAFE + 1e-9)
        }
      }
    },
  )
})

let counted = 0

test.each(ways)('%s: nor is one sent to a list of joints that is nowhere to be seen', (lines) => {
  let pointed = 0
  for (const name of ['pond', 'house', 'scene', 'hedgehog', 'garden'])
    for (const paper of ['a4', 'letter'] as const) {
      const pages = laid(dummy(name), { paper, lines, care: [] })
      const at = pages.findIndex((page) => texts(page).includes('Joints'))
      expect(at, name).toBeGreaterThan(-1)
      if (at === 0) continue
      pointed++
      expect(pages[0] && texts(pages[0]).join(' / '), name).toContain(`Joints: page ${at + 1}`)
    }
  counted += pointed
})

test('some list of joints is on another page', () => expect(counted).toBeGreaterThan(0))

test('a card that fills its page is told from another one by its page', () => {
  const pages = laid(dummy('class-card-large'), { paper: 'a4', care: [] })
  const said = (k: number): string => (pages[k] ? texts(pages[k]).join(' ') : '')
  expect(said(1)).toContain('Page 1 is the inside of the card.')
  expect(said(1)).not.toContain('This side is the inside')
  // The line runs up the side of the sheet: turned to read it, its upper edge is another.
  expect(said(0)).toMatch(/edge where this line begins.*Trim 5 mm off the two long edges of this sheet\./)
  expect(said(0)).not.toMatch(/upper|lower/)
  const [note] = pages[0] ? wordsOn(pages[0]).filter(({ of }) => of === 'near-edge') : []
  // It begins at the reader's end: low on the page, and runs up.
  expect(note?.turn).toBe(-90)
  expect(note?.at[1]).toBeGreaterThan(190)
})

test.each([
  ['moth', 'letter', 'ticks'],
  ['house', 'letter', 'front'],
] as const)(
  '%s, %s, %s: steps go where they are large and wide, if no page more is taken',
  (name, paper, lines) => {
    const pages = laid(dummy(name), { paper, lines, care: [] })
    expect(pages).toHaveLength(name === 'house' ? 2 : 3)
    const all = pages.flatMap((page) => wordsOn(page).filter(({ of }) => of === 'steps'))
    expect(all.length).toBeGreaterThan(5)
    for (const { size } of all) expect(CAPITAL * size).toBeGreaterThan(2)
    const long = all.map(extent).map(([left, , right]) => right - left)
    expect(Math.max(...long)).toBeGreaterThan(65)
  },
)

test('columns are read from the left, each from its top', () => {
  const cell = (x: number, y: number, width: number) => ({ x, y, width, bottom: y + 40 })
  const [low, high, right] = [cell(8, 212, 96), cell(55, 181, 50), cell(111, 100, 96)]
  for (const cells of [
    [low, high, right],
    [right, low, high],
    [high, right, low],
  ])
    expect(asRead(cells)).toEqual([high, low, right])
})

test('rows in two columns end at about the same height: no last one stands alone', () => {
  const row = {
    width: 40,
    height: 10,
    marks: paragraph([{ text: 'row' }], { size: 3, leading: 4 }, 40).marks,
  }
  const columns = [0, 50].map((x) => ({ x, y: 0, width: 40, bottom: 65 }))
  const found = new Shelves().evenly(Array(6).fill(row), columns, 1, null) ?? []
  const lefts = found.flatMap((mark) => (mark.mark === 'word' ? [mark.at[0]] : []))
  // Filled to its foot, the first column would hold five of them.
  expect(lefts).toEqual([0, 0, 0, 50, 50, 50])
})

test('steps that are parted are read on in the next column, also where a narrow one lies over another', () => {
  const pages = laid(dummy('pond'), { paper: 'letter', lines: 'back', care: [] })
  expect(pages).toHaveLength(3)
  const numbers = pages.flatMap((page) =>
    wordsOn(page).filter(({ text, bold }) => bold && /^\d+$/.test(text)),
  )
  expect(numbers.map(({ text }) => Number(text))).toEqual(numbers.map((_, k) => k + 1))
  numbers.slice(1).forEach(({ at: [x, y] }, k) => {
    const [left, top] = numbers[k]?.at ?? [0, 0]
    expect(y > top || x > left + 50).toBe(true)
  })
})
