/** Of which card a page is, and which of its pages: on free paper, at its rim if it can be. Pages get mixed up on a table. */
import * as says from '../../../content/words/sheet/pages.ts'
import { doNotCut } from '../../../content/words/sheet.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import type { Rectangle } from '../marks/clip.ts'
import { grown, overlap, runsThrough } from '../marks/clip.ts'
import { upright } from '../marks/rulers.ts'
import type { Block, Run, SheetMark, Type } from '../marks/setting.ts'
import { extent, moved, paragraph, toldAs } from '../marks/setting.ts'
import { edges, isIn, stretchesOf } from '../marks/stretches.ts'
import { printableOf } from './bed.ts'

/** Capitals of 2 mm can be read at arm's length: common practice, no source. The smaller one is for a narrow strip that is trimmed off. */
const TYPE = { size: 3, leading: 3.6 }
const SMALL = { size: 2.5, leading: 3 }

/** A longer title is left out. */
const LONGEST = 100

/** Free paper round it, mm. */
const CLEAR = 1.2

/** The same in a strip that is trimmed off, where no other paper is free. */
const NARROW = 0.5

/** From other words: nearer it would be read as their next line. */
const FROM_WORDS = 4

/** What lies on a page. */
export interface Covered {
  readonly width: number
  readonly height: number
  readonly marks: readonly SheetMark[]
  /** Outlines of its pieces, as they lie. */
  readonly outlines: readonly (readonly Point[])[]
  readonly taken: readonly Rectangle[]
}

/** The corners of what a printer reaches, the lower right one first: there one looks for it, and nowhere else. */
function* corners(
  blocks: readonly Block[],
  [left, top, right, bottom]: Rectangle,
): Generator<readonly [Block, Point]> {
  for (const isLow of [true, false])
    for (const isRight of [true, false])
      for (const block of blocks) {
        const x = isRight ? right - block.width : left
        yield [block, [x, isLow ? bottom - block.height : top]]
      }
}

/**
 * The number of a page, counted from 1, of so many; none of a single page, or of one whose corners are taken. With it the
 * warning that stands on the first: one cuts at the others too.
 */
export function pageNumber(
  title: string,
  number: number,
  all: number,
  page: Covered,
  isFaulty = false,
): readonly SheetMark[] {
  if (all === 1) return []
  const warning: readonly Run[] = isFaulty ? [{ text: `${doNotCut} `, bold: true }] : []
  const words = (text: string, type: Type): Block =>
    toldAs(paragraph([...warning, { text }], type, Number.POSITIVE_INFINITY, 'page-number'), 'P')
  const room = printableOf(page)
  const spotsIn = (type: Type): readonly (readonly [Block, Point])[] => {
    const [named, short] = [
      words(says.numbered(title, number, all), type),
      words(says.number(number, all), type),
    ]
    const flat = named.width <= LONGEST ? [named, short] : [short]
    return [...corners(flat, room), ...corners(flat.map(upright), room)]
  }
  const { marks, outlines, taken } = page
  const stretches = marks.flatMap((mark) => (mark.mark === 'word' ? [] : stretchesOf(mark)))
  const isCrossed = runsThrough([...stretches, ...outlines.flatMap(edges)])
  const others = marks.flatMap((mark) => (mark.mark === 'word' ? [extent(mark)] : []))
  for (const [type, clear] of [
    [TYPE, CLEAR],
    [TYPE, NARROW],
    [SMALL, NARROW],
  ] as const)
    for (const [block, [x, y]] of spotsIn(type)) {
      const at: Rectangle = [x, y, x + block.width, y + block.height]
      const box = grown(at, clear)
      const middle: Point = [x + block.width / 2, y + block.height / 2]
      const isFree =
        !isCrossed(box) &&
        !taken.some((one) => overlap(one, box)) &&
        !others.some((one) => overlap(one, grown(at, FROM_WORDS))) &&
        !outlines.some((outline) => isIn(middle, outline))
      if (isFree) return block.marks.map((mark) => moved(mark, x, y))
    }
  return []
}
