/** A sheet's code where its page has no title: on free paper of a piece, so that it is still there once that is cut out. */
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import type { Design } from '../../paper/index.ts'
import type { SheetPage } from '../../sheet/index.ts'
import type { Rectangle } from '../../sheet/marks/clip.ts'
import { corners, grown, overlap, runsThrough } from '../../sheet/marks/clip.ts'
import { CAPITAL, TAIL, wordWidth } from '../../sheet/marks/letters.ts'
import { lyingOn } from '../../sheet/marks/lying.ts'
import type { SheetMark } from '../../sheet/marks/setting.ts'
import { extent } from '../../sheet/marks/setting.ts'
import { edges, isIn, stretchesOf } from '../../sheet/marks/stretches.ts'
import { printableOf } from '../../sheet/pages/bed.ts'

const SIZE = 3.4

/** Free paper round it, and how finely a place is looked for, mm. */
const CLEAR = 1.2

const STEP = 1.5

/**
 * The code of a sheet as near to the lower left corner of its paper as there is room for it, within a piece if that
 * can be; none where the page says it already, or has no piece.
 * @param codes of the whole class: the longest of them would find room there too
 */
export function codeOn(
  page: SheetPage,
  design: Design,
  code: string,
  codes: readonly string[],
): readonly SheetMark[] {
  const { marks, placed, box } = page
  const isSaid = marks.some((mark) => mark.mark === 'word' && mark.bold && mark.text.endsWith(code))
  if (isSaid || placed.length === 0) return []
  const outlines = lyingOn(design)(placed)
  const isCrossed = runsThrough([
    ...marks.flatMap((mark) => (mark.mark === 'path' ? stretchesOf(mark) : [])),
    ...outlines.flatMap(edges),
  ])
  const words = marks.flatMap((mark) => (mark.mark === 'word' ? [extent(mark)] : []))
  const isFree = (one: Rectangle): boolean => !words.some((word) => overlap(word, one)) && !isCrossed(one)
  const isOnPiece = (one: Rectangle): boolean =>
    outlines.some((outline) => corners(one).every((corner) => isIn(corner, outline)))
  const width = Math.max(...codes.map((one) => wordWidth(one, SIZE, true)))
  const [left, top, right, bottom] = printableOf({ width: box[2], height: box[3] })
  const spots: Point[] = []
  for (let y = bottom - TAIL * SIZE; y >= top + CAPITAL * SIZE; y -= STEP)
    for (let x = left; x <= right - width; x += STEP) spots.push([x, y])
  const far = ([x, y]: Point): number => Math.hypot(x - left, y - bottom)
  spots.sort((a, b) => far(a) - far(b))
  const room = ([x, y]: Point): Rectangle => grown([x, y - CAPITAL * SIZE, x + width, y + TAIL * SIZE], CLEAR)
  const at =
    spots.find((spot) => isFree(room(spot)) && isOnPiece(room(spot))) ??
    spots.find((spot) => isFree(room(spot)))
  const mark = { mark: 'word', role: 'note', anchor: 'start', bold: true, of: 'code' } as const
  return at ? [{ ...mark, at, text: code, size: SIZE } satisfies WordMark] : []
}
