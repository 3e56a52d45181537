// Pages of words for a class: where their cells stand. Common practice, no source: a table keeps its head, and a last
// page of two lines is spared.
import { expect, test, vi } from 'vitest'
import { classOf } from '../../src/class/class.ts'
import { packOf, teacherOf } from '../../src/class/pack.ts'
import type { Cell } from '../../src/class/pages/frame.ts'
import { LOOKS, pagesOf, said } from '../../src/class/pages/frame.ts'
import { AGES } from '../../src/class/words.ts'
import type { SheetPage } from '../../src/sheet/index.ts'
import { paperOf } from '../../src/sheet/index.ts'
import { chapters, orderFor } from './shared.ts'

vi.setConfig({ testTimeout: 60_000 })

const look = LOOKS.usual

const rowsOf = (count: number): Cell => ({
  label: 'Rows',
  rows: (width) => Array.from({ length: count }, (_, k) => said(`Row ${k}.`, look.body, width)),
})

const laid = (count: number): readonly SheetPage[] =>
  pagesOf([rowsOf(count)], {
    ...{ paper: paperOf('a4'), look },
    ...{ head: (width) => said('Head', look.title, width), foot: 'Foot', says: 'Page' },
  })

/** From row to row, mm. */
const stride = ([page]: readonly SheetPage[]): number => {
  const at = (text: string): number =>
    page?.marks.flatMap((mark) => (mark.mark === 'word' && mark.text === text ? [mark.at[1]] : []))[0] ??
    Number.NaN
  return at('Row 1.') - at('Row 0.')
}

test('rows come closer where that spares a page, and only there', () => {
  const counts = Array.from({ length: 90 }, (_, k) => k + 2)
  const usual = stride(laid(2))
  const most = Math.max(...counts.filter((n) => laid(n).length === 1 && stride(laid(n)) === usual))
  expect(laid(most + 1)).toHaveLength(1)
  expect(stride(laid(most + 1))).toBeLessThan(usual)
  expect(stride(laid(most + 1))).toBeGreaterThan(usual - 0.31 * look.row)
  const two = counts.find((n) => laid(n).length === 2) ?? 0
  expect(two).toBeGreaterThan(most)
  expect(stride(laid(two))).toBeCloseTo(usual, 9)
})

const textOn = ({ marks }: SheetPage): string =>
  marks.map((mark) => (mark.mark === 'word' ? mark.text : '')).join(' ')

const lessons = AGES.flatMap((ages) => ([45, 90] as const).map((minutes) => ({ ages, minutes })))

test.each(chapters)('$slug: the teacher’s pages keep together what belongs together', async ({ slug }) => {
  const few = { pupils: 1, groups: 1 }
  // The other pages are counted, and are drawn once.
  const { sections } = await packOf(classOf(orderFor(slug, few)))
  for (const { ages, minutes } of lessons) {
    const made = classOf(orderFor(slug, { ...few, ages, minutes }))
    const texts = (teacherOf(made, sections.slice(1)).sections[0]?.pages ?? []).map(textOn)
    const pageOf = (text: string): number => texts.findIndex((one) => one.includes(text))
    const { rubric } = made.order.lesson
    const of = `${slug}, ${ages}, ${minutes}`
    expect(pageOf('Not yet There Beyond'), of).toBeGreaterThanOrEqual(0)
    for (const { aim } of rubric) expect(texts[pageOf('Not yet There Beyond')], of).toContain(aim)
    // The sentence over the standards stands with the first of them.
    expect(texts[pageOf('In our own words.')], of).toMatch(/\(US\)/)
    expect(texts.join(' ')).toContain('For 1 pupil in 1 group, ')
  }
})

test('the answer key of three pupils is one page in large print too', async () => {
  const { sections } = await packOf(
    classOf(orderFor('layers', { pupils: 3, groups: 3, ages: '7-9', large: true, differs: 'body.depth' })),
  )
  expect(sections.find(({ name }) => name === 'key')?.pages).toHaveLength(1)
})
