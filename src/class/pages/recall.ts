/** Questions from memory, to be cut apart: two slips to a page, one in large print. */
import { plainText } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import { hung, moved, paragraph } from '../../sheet/marks/setting.ts'
import type { Class } from '../class.ts'
import { paperIn } from '../class.ts'
import type { Pictured } from './frame.ts'
import { bold, LOOKS, piled } from './frame.ts'
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

/** A page of slips, with a line to cut along between them. */
export function slipPages(
  of: Class,
  slip: (width: number) => Pictured,
  name: string,
  perPage = of.order.choice.large ? 1 : 2,
): readonly SheetPage[] {
  const paper = paperIn(of)
  const { pupils } = of.order.choice
  const width = paper.width - 2 * EDGE
  const half = paper.height / 2
  const block = slip(width)
  const fits = block.height <= half - 1.5 * EDGE
  const each = fits ? perPage : 1
  const count = Math.ceil(pupils / each)
  return Array.from({ length: count }, (_, page): SheetPage => {
    const here = Math.min(each, pupils - page * each)
    const tops = Array.from({ length: here }, (_, k) => k * half + EDGE)
    return {
      box: [0, 0, paper.width, paper.height],
      unit: 'mm',
      paper,
      placed: [],
      painting: block.panels?.length
        ? {
            areas: [],
            bands: [],
            panels: tops.flatMap((top) =>
              (block.panels ?? []).map((panel) => ({
                ...panel,
                outline: panel.outline.map(([x, y]) => [x + EDGE, y + top] as const),
                shapes: panel.shapes.map((shape) => ({
                  ...shape,
                  runs: shape.runs.map((run) => run.map(([x, y]) => [x + EDGE, y + top] as const)),
                })),
              })),
            ),
          }
        : null,
      marks: [
        ...tops.flatMap((top) => block.marks.map((mark) => moved(mark, EDGE, top))),
        ...(each > 1
          ? [
              {
                mark: 'path' as const,
                runs: [
                  [
                    [6.5, half],
                    [paper.width - 6.5, half],
                  ] as const,
                ],
                closed: false,
                role: 'cut' as const,
                of: 'cut',
              },
            ]
          : []),
      ],
      says: `${plainText(of.order.design.title)}: ${name}, page ${page + 1} of ${count}.`,
    }
  })
}

export const recallPages = (of: Class): readonly SheetPage[] =>
  of.order.chapter.recall.length === 0
    ? []
    : slipPages(of, (width) => slipOf(of, width), of.order.words.labels.recall ?? '')
