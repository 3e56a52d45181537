/** A class pack: every page that a lesson needs. */
import * as says from '../../content/words/class/pages.ts'
import { plainText } from '../paper/index.ts'
import type { SheetFont, SheetPage } from '../sheet/index.ts'
import type { Class, Section } from './class.ts'
import { figureBlock, plainFigure } from './pages/card.ts'
import { certificatePages } from './pages/certificate.ts'
import { keyPages } from './pages/key.ts'
import { makingPages } from './pages/making.ts'
import { recallPages } from './pages/recall.ts'
import { sheetPages } from './pages/sheets.ts'
import { teacherPages } from './pages/teacher.ts'
import { worksheetPages } from './pages/worksheet.ts'
import { SEEN } from './seen.ts'
import type { Shopping } from './shopping.ts'
import { shoppingFor } from './shopping.ts'
import type { Tell } from './spread.ts'

export interface Pack {
  readonly sections: readonly Section[]
  readonly shopping: Shopping
}

/** One after the other, as a room may stop between them. */
export type Pause = () => Promise<void>

/** All pages. `tell` hears of each sheet that is drawn. Throws a `TooLargeError` as a sheet does. */
export async function packOf(of: Class, tell: Tell = () => {}, pause: Pause = async () => {}): Promise<Pack> {
  const { order, sheets } = of
  const { choice } = order
  const figure = figureBlock(of, order.seen ?? SEEN)
  const drawn: SheetPage[][] = []
  for (const [k, sheet] of sheets.entries()) {
    drawn.push([...sheetPages(of, sheet, drawn[0])])
    tell(k + 1, sheets.length)
    await pause()
  }
  const making = choice.large ? makingPages(of, drawn.flat()) : []
  const worksheets = sheets.flatMap((sheet) => worksheetPages(of, sheet, figure))
  const recall = recallPages(of)
  const key = keyPages(of)
  const certificates = choice.certificate ? certificatePages(of, plainFigure(of, order.seen ?? SEEN)) : []
  const rest: readonly Section[] = [
    { name: 'sheets', pages: drawn.flat() },
    {
      name: 'making',
      pages: Array.from({ length: making.length === 0 ? 0 : choice.pupils }, () => making).flat(),
    },
    { name: 'worksheets', pages: worksheets },
    { name: 'recall', pages: recall },
    { name: 'key', pages: key },
    { name: 'certificates', pages: certificates },
  ]
  const teacher = teacherOf(of, rest)
  return { ...teacher, sections: [...teacher.sections, ...rest] }
}

/**
 * The teacher's own section, and what must be there for all. How many pages it has hangs on nothing that it says of
 * the others.
 */
export function teacherOf(of: Class, rest: readonly Section[]): Pack {
  const countIn = (sections: readonly Section[]): number =>
    sections.reduce((sum, { pages }) => sum + pages.length, 0)
  const cardSheets = countIn(rest.filter(({ name }) => name === 'sheets'))
  const others = countIn(rest) - cardSheets
  const shopping = (own: readonly SheetPage[]): Shopping =>
    shoppingFor(of.design, of.order.choice, { cardSheets, paperSheets: others + own.length })
  const pages = (own: readonly SheetPage[]): readonly SheetPage[] =>
    teacherPages(of, shopping(own), [{ name: 'teacher', pages: own }, ...rest])
  const own = pages(pages([]))
  return { sections: [{ name: 'teacher', pages: own }], shopping: shopping(own) }
}

/**
 * What the pack will need, without drawing all of it: one pupil's pages are drawn, and counted for all. Throws a
 * `TooLargeError` as a sheet does.
 */
export async function shoppingOf(of: Class): Promise<Shopping> {
  const { choice } = of.order
  const { sections } = await packOf({ ...of, sheets: of.sheets.slice(0, 1) })
  const pages = (name: Section['name']): number =>
    sections.find((one) => one.name === name)?.pages.length ?? 0
  const each = (name: Section['name']): number => choice.pupils * pages(name)
  return shoppingFor(of.design, choice, {
    cardSheets: each('sheets'),
    paperSheets:
      pages('teacher') +
      pages('making') +
      each('worksheets') +
      pages('recall') +
      pages('key') +
      pages('certificates'),
  })
}

/** The pack, or some of its sections, as one PDF. The writer is loaded on the first call. */
export async function packPdf(
  { order }: Class,
  { sections }: Pack,
  font: SheetFont,
  only?: Section['name'],
): Promise<Uint8Array> {
  const { pagesPdf } = await import('../sheet/files/pdf.ts')
  const pages = sections.filter(({ name }) => only === undefined || name === only).flatMap((one) => one.pages)
  const title = only === 'sheets' ? says.sheetsTitle : says.packTitle
  return pagesPdf(pages, title(plainText(order.design.title), order.choice.pupils), font)
}
