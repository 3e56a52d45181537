/** A certificate for the finished card: two to a page, to be cut apart. */
import { plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import { moved, paragraph } from '../../sheet/marks/setting.ts'
import type { Class } from '../class.ts'
import type { Figure } from './card.ts'
import type { Pictured } from './frame.ts'
import { bold, LOOKS, piled, said, shifted, sideBySide, toFill } from './frame.ts'
import { slipPages } from './recall.ts'

/** From the frame to what is in it, mm. */
const WITHIN = 9

/** A frame of two lines. */
function framed(block: Pictured, width: number): Pictured {
  const height = block.height + 2 * WITHIN
  const box = (off: number): SheetMark => ({
    mark: 'path',
    runs: [
      [
        [off, off],
        [width - off, off],
        [width - off, height - off],
        [off, height - off],
      ],
    ],
    closed: true,
    role: 'axis',
    of: 'frame',
  })
  return {
    ...{ width, height },
    marks: [box(0), box(1.6), ...block.marks.map((mark) => moved(mark, WITHIN, WITHIN))],
    panels: shifted(block.panels ?? [], WITHIN, WITHIN),
  }
}

function certificate({ order }: Class, width: number, figure: Figure): Pictured {
  const look = order.choice.large ? LOOKS.large : LOOKS.usual
  const words = order.words.certificate
  const inner = width - 2 * WITHIN
  const wide = inner * 0.48
  const text = inner - wide - 7
  const left = piled(
    [
      paragraph([bold(words.title ?? '')], { size: 10, leading: 12 }, text),
      toFill('', look.body, text, text, '', 'name'),
      said(words.says ?? '', look.body, text),
      paragraph([bold(plainText(order.design.title))], look.title, text),
      toFill(order.words.labels.date ?? '', look.body, text, text, ''),
      toFill(words.signed ?? '', look.body, text, text, ''),
    ],
    look.cell * 1.1,
  )
  return framed(sideBySide(left, figure(wide), text + 7), width)
}

export const certificatePages = (of: Class, figure: Figure): readonly SheetPage[] =>
  slipPages(of, (width) => certificate(of, width, figure), of.order.words.labels.certificate ?? '', 2)
