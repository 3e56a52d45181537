/** Of which card a page is, and which of its pages: on free paper, at its rim if it can be. Pages get mixed up on a table. */
import * as says from '../../../content/words/sheet/pages.ts'
import { doNotCut } from '../../../content/words/sheet.ts'
import type { Point } from '../../drawing/pen/marks.ts'
import type { Rectangle } from '../marks/clip.ts'
import { runsThrough } from '../marks/clip.ts'
import { upright } from '../marks/rulers.ts'
import type { Block, Run, SheetMark } from '../marks/setting.ts'
import { extent, moved, paragraph, toldAs } from '../marks/setting.ts'
import { edges, isIn, stretchesOf } from '../marks/stretches.ts'
import { printableOf } from './bed.ts'

const TYPE = { size: 2.5, leading: 3 }

/** A longer title is left out. */
const LONGEST = 90

/** Free paper round it, mm; and from place to place where it is tried. */
const CLEAR = 1.2

/** The same in a strip that is trimmed off, where no other paper is free. */
const NARROW = 0.5

const STEP = 3

/** What lies on a page. */
export interface Covered {
  readonly width: number
  readonly height: number
  readonly marks: readonly SheetMark[]
  /** Outlines of its pieces, as they lie. */
  readonly outlines: readonly (readonly Point[])[]
  readonly taken: readonly Rectangle[]
}

/** The rim from the lower right corner on: along the lower edge, the upper one, then upright at the right and left. */
function* atRim(flat: Block, [left, top, right, bottom]: Rectangle): Generator<readonly [Block, Point]> {
  for (const y of [bottom - flat.height, top])
    for (let x = right - flat.width; x >= left; x -= STEP) yield [flat, [x, y]]
  const standing = upright(flat)
  for (const x of [right - standing.width, left])
    for (let y = bottom - standing.height; y >= top; y -= STEP) yield [standing, [x, y]]
}

/** Everywhere, from the lower edge up. */
function* within(flat: Block, [left, top, right, bottom]: Rectangle): Generator<readonly [Block, Point]> {
  for (let y = bottom - flat.height; y >= top; y -= STEP)
    for (let x = right - flat.width; x >= left; x -= STEP) yield [flat, [x, y]]
}

/**
 * The number of a page, counted from 1, of so many; none of a single page, or of one that its pieces fill. With it the
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
  const words = (text: string) =>
    toldAs(
      paragraph([...warning, { text, role: 'guide' }], TYPE, Number.POSITIVE_INFINITY, 'page-number'),
      'P',
    )
  const [named, short] = [words(says.numbered(title, number, all)), words(says.number(number, all))]
  const room = printableOf(page)
  function* atAnyRim() {
    if (named.width <= LONGEST) yield* atRim(named, room)
    yield* atRim(short, room)
  }
  function* tried() {
    for (const spot of atAnyRim()) yield [...spot, CLEAR] as const
    for (const spot of atAnyRim()) yield [...spot, NARROW] as const
    for (const spot of within(short, room)) yield [...spot, CLEAR] as const
  }
  const { marks, outlines, taken } = page
  const stretches = marks.flatMap((mark) => (mark.mark === 'word' ? [] : stretchesOf(mark)))
  const isCrossed = runsThrough([...stretches, ...outlines.flatMap(edges)])
  const boxes = [...taken, ...marks.flatMap((mark) => (mark.mark === 'word' ? [extent(mark)] : []))]
  for (const [block, [x, y], clear] of tried()) {
    const box: Rectangle = [x - clear, y - clear, x + block.width + clear, y + block.height + clear]
    const middle: Point = [x + block.width / 2, y + block.height / 2]
    const isFree =
      !isCrossed(box) &&
      !boxes.some((one) => box[0] < one[2] && one[0] < box[2] && box[1] < one[3] && one[1] < box[3]) &&
      !outlines.some((outline) => isIn(middle, outline))
    if (isFree) return block.marks.map((mark) => moved(mark, x, y))
  }
  return []
}
