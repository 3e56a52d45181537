// What is written at pieces and lists is read at arm's length: capitals of 2 mm in the darkest ink (common practice, no source).
import { expect, test } from 'vitest'
import type { SheetPage } from '../../src/sheet/index.ts'
import { CAPITAL } from '../../src/sheet/marks/letters.ts'
import { inkOf } from '../../src/sheet/marks/looks.ts'
import { dummy, laid } from './designs.ts'

const wordsOf = ({ marks }: SheetPage, isMeant: (of: string | undefined) => boolean) =>
  marks.flatMap((mark) => (mark.mark === 'word' && isMeant(mark.of) ? [mark] : []))

test.each(['heron', 'pond', 'moon'])('%s: which face, which end and which page are told in 2 mm', (name) => {
  const pages = laid(dummy(name), { paper: 'a4', care: [] })
  const said = pages.flatMap((page) => wordsOf(page, (of) => of === 'near-edge' || of === 'page-number'))
  expect(said.length).toBeGreaterThan(1)
  for (const { text, size, role } of said) {
    expect(CAPITAL * size, text).toBeGreaterThan(1.99)
    expect(inkOf(role), text).toBe('#000000')
  }
})

test('sizes have capitals of 1.9 mm', () => {
  for (const name of ['heron', 'pond', 'lantern', 'hedgehog'])
    for (const page of laid(dummy(name), { paper: 'a4', lines: 'ticks', care: [] }))
      for (const { text, size } of wordsOf(page, (of) => of === undefined))
        if (/^Open \d|Ridge \d/.test(text)) expect(CAPITAL * size, `${name}: ${text}`).toBeGreaterThan(1.9)
})

test('the check lines have their name on each page, under the column beside them', () => {
  for (const page of laid(dummy('moth'), { paper: 'a4', care: [] }))
    expect(wordsOf(page, () => true).filter(({ text }) => text === 'Check the size')).toHaveLength(1)
  const [, page] = laid(dummy('class-card-large'), { paper: 'a4', care: [] })
  const at = (name: string) => page && wordsOf(page, () => true).find(({ text }) => text === name)?.at[0]
  expect(at('Check the size')).toBe(at('The card'))
  expect(at('The card')).toBeGreaterThan(100)
})
