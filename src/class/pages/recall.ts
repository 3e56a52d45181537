/** Questions from memory, to be cut apart: two slips to a page, one in large print. */
import * as says from '../../../content/words/class/pages.ts'
import { plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import { hung, moved, paragraph } from '../../sheet/marks/setting.ts'
import { SAFE } from '../../sheet/pages/fit.ts'
import type { Class } from '../class.ts'
import { paperIn } from '../class.ts'
import type { Pictured } from './frame.ts'
import { bold, LOOKS, pageOf, piled, shifted } from './frame.ts'
import { headWith } from './worksheet.ts'

const EDGE = 14

const BOX = 3.4

/** A box to tick. */
const box = (side: number): SheetMark => ({
  mark: 'path',
  runs: [
    [
      [0, 0],
      [side, 0],
      [side, side],
      [0, side],
    ],
  ],
  closed: true,
  role: 'axis',
  of: 'tick',
})

export function slipOf(of: Class, width: number): Pictured {
  const { order } = of
  const look = order.choice.large ? LOOKS.large : LOOKS.usual
  const side = order.choice.large ? 1.5 * BOX : BOX
  return piled(
    [
      headWith(order.words.labels.recall ?? '', of, width),
      ...order.chapter.recall.map(({ asks, choices }, k) =>
        piled(
          [
            paragraph([bold(`${k + 1}. ${asks}`)], look.body, width),
            ...choices.map((one) =>
              hung([box(side)], side + 2.5, paragraph([{ text: one }], look.body, width - side - 2.5)),
            ),
          ],
          look.row * 1.2,
        ),
      ),
    ],
    look.cell * 0.9,
  )
}

/** Of so many slips a page has at most. */
const MOST_A_PAGE = 4

/** Pages of slips, as many to a page as there is room for, with lines between them to cut along. */
export function slipPages(
  of: Class,
  slip: (width: number) => Pictured,
  name: string,
  most = MOST_A_PAGE,
): readonly SheetPage[] {
  const paper = paperIn(of)
  const { pupils } = of.order.choice
  const block = slip(paper.width - 2 * EDGE)
  const each = Math.max(1, Math.min(most, Math.floor(paper.height / (block.height + 1.6 * EDGE))))
  const part = paper.height / each
  const count = Math.ceil(pupils / each)
  return Array.from({ length: count }, (_, page): SheetPage => {
    const here = Math.min(each, pupils - page * each)
    const slips = Array.from({ length: here }, () => ({
      ...block,
      height: part,
      marks: block.marks.map((mark) => moved(mark, EDGE, (part - block.height) / 2)),
      panels: shifted(block.panels ?? [], EDGE, (part - block.height) / 2),
    }))
    const { marks, panels = [] } = piled(slips, 0)
    const cuts = Array.from({ length: each - 1 }, (_, k): SheetMark => {
      const y = (k + 1) * part
      return {
        mark: 'path',
        runs: [
          [
            [SAFE, y],
            [paper.width - SAFE, y],
          ],
        ],
        closed: false,
        role: 'cut',
        of: 'cut',
      }
    })
    const shows = says.slips(plainText(of.order.design.title), name, page + 1, count)
    return pageOf(paper, [...marks, ...cuts], panels, shows)
  })
}

export const recallPages = (of: Class): readonly SheetPage[] =>
  of.order.chapter.recall.length === 0
    ? []
    : slipPages(of, (width) => slipOf(of, width), of.order.words.labels.recall ?? '')
