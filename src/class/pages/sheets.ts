/** The sheets that pupils cut, each with its code and a line for the name. */
import type { Point } from '../../drawing/pen/marks.ts'
import type { Design, Tight } from '../../paper/index.ts'
import { plainText, tightest } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import { layOut, usualArt } from '../../sheet/index.ts'
import { onPage } from '../../sheet/marks/piece-marks.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import type { Class, Sheet } from '../class.ts'
import { sizeSays } from '../spread.ts'
import { codeOn } from './code.ts'

/** Half of a cross at a point to be measured, and how far from it its number stands, mm. */
const CROSS = 2.5

/** A cross at each of the two points of a bare card, and how far they are from the gutter. */
function crosses({ placed }: SheetPage, of: Class, { size }: Sheet): SheetMark[] {
  const { measured } = of
  const place = placed.find(({ piece }) => piece === 'card')?.place
  if (!place || size === null || measured?.what !== 'gap') return []
  return [-1, 1].flatMap((side): SheetMark[] => {
    const [x, y] = onPage(place, [side * size, measured.along ?? 0])
    const runs: Point[][] = [
      [
        [x - CROSS, y],
        [x + CROSS, y],
      ],
      [
        [x, y - CROSS],
        [x, y + CROSS],
      ],
    ]
    return [
      { mark: 'path', runs, closed: false, role: 'care', of: 'point' },
      {
        ...{ mark: 'word', at: [x, y + CROSS + 4], anchor: 'middle', role: 'note', size: 3.2, bold: true },
        ...{ text: sizeSays(measured, size).replaceAll('\u00a0', ' '), of: 'point' },
      },
    ]
  })
}

/** What a sheet is called: the design's title and its code. */
export const titleOf = ({ order }: Class, { code }: Sheet): string =>
  `${plainText(order.design.title)} ${code}`

const known = new WeakMap<Design, readonly Tight[]>()

/** What asks for care on the card as it was designed: the same on all its copies, and worked out once. */
export function careIn(design: Design): readonly Tight[] {
  const found = known.get(design) ?? tightest(design)
  known.set(design, found)
  return found
}

/**
 * One pupil's pages. Where all sheets are alike they are drawn once, `first`, and only their codes differ.
 */
export function sheetPages(of: Class, sheet: Sheet, first?: readonly SheetPage[]): readonly SheetPage[] {
  const { order, sheets } = of
  const { choice } = order
  const [like] = sheets
  if (first && like && sheet.design === like.design && of.measured?.what !== 'gap')
    return first.map((page) => recoded(page, titleOf(of, like), titleOf(of, sheet)))
  const pages = layOut(
    { ...sheet.design, title: titleOf(of, sheet) },
    {
      paper: choice.paper,
      art: choice.picture ? usualArt(sheet.design) : 'none',
      words: choice.large ? 'few' : 'all',
      care: careIn(of.design),
    },
  )
  const codes = sheets.map(({ code }) => code)
  return pages.map((page) => {
    const crossed = { ...page, marks: [...page.marks, ...crosses(page, of, sheet)] }
    return { ...crossed, marks: [...crossed.marks, ...codeOn(crossed, sheet.design, sheet.code, codes)] }
  })
}

/** The same page under another code: the last word of its title, and the title at its number. */
function recoded(page: SheetPage, from: string, to: string): SheetPage {
  const [was = '', is = ''] = [from.split(' ').at(-1), to.split(' ').at(-1)]
  const isTitle = (text: string): boolean => text === was || text.endsWith(` ${was}`)
  return {
    ...page,
    says: page.says.replace(from, to),
    marks: page.marks.map((mark) =>
      mark.mark !== 'word'
        ? mark
        : mark.of === 'page-number'
          ? { ...mark, text: mark.text.replace(from, to) }
          : mark.bold && isTitle(mark.text)
            ? { ...mark, text: `${mark.text.slice(0, mark.text.length - was.length)}${is}` }
            : mark,
    ),
  }
}
