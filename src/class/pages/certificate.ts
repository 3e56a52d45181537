/** A certificate for the finished card: two to a page, to be cut apart. */
import { plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import { paragraph } from '../../sheet/marks/setting.ts'
import type { Class } from '../class.ts'
import type { Figure } from './card.ts'
import type { Pictured } from './frame.ts'
import { bold, LOOKS, piled, said, sideBySide, toFill } from './frame.ts'
import { slipPages } from './recall.ts'

function certificate({ order }: Class, width: number, figure: Figure): Pictured {
  const look = order.choice.large ? LOOKS.large : LOOKS.usual
  const words = order.words.certificate
  const wide = Math.min(78, width * 0.42)
  const text = width - wide - 8
  const left = piled(
    [
      paragraph([bold(words.title ?? '')], { size: 11, leading: 13 }, text),
      toFill('', look.body, text, text, '', 'name'),
      said(words.says ?? '', look.body, text),
      paragraph([bold(plainText(order.design.title))], look.title, text),
      toFill(order.words.labels.date ?? '', look.body, text, text, ''),
      toFill(words.signed ?? '', look.body, text, text, ''),
    ],
    look.cell * 1.15,
  )
  const right = piled([figure(wide), said(words.fold ?? '', look.small, wide)], look.cell)
  return sideBySide(left, right, text + 8)
}

export const certificatePages = (of: Class, figure: Figure): readonly SheetPage[] =>
  slipPages(
    of,
    (width) => certificate(of, width, figure),
    of.order.words.labels.certificate ?? '',
    2,
  )
