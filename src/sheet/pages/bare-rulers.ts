import type { Rectangle } from '../marks/clip.ts'
import { rulers, upright } from '../marks/rulers.ts'
import type { Block, SheetMark } from '../marks/setting.ts'
import { moved } from '../marks/setting.ts'
import type { Bed } from './bed.ts'

/** Free paper that the check lines keep round them, mm. */
const CLEAR = 2.2

const at = (block: Block, x: number, y: number): SheetMark[] => block.marks.map((mark) => moved(mark, x, y))

const holds = ([left, top, right, bottom]: Rectangle, { width, height }: Block): boolean =>
  width <= right - left && height <= bottom - top

/** The check lines, and the rectangle of the page that they take. */
export interface PlacedRulers {
  readonly marks: readonly SheetMark[]
  readonly taken: Rectangle
}

const placed = (block: Block, x: number, y: number): PlacedRulers => ({
  marks: at(block, x, y),
  taken: [x, y, x + block.width, y + block.height],
})

/**
 * The check lines where no cell holds them: below the card, above it, or upright at its sides. Never on it: there
 * solid means cut. Null if there is no room: a card that fills its paper leaves them to the next page.
 */
export function bareRulers({ card, printable, column, top }: Bed): PlacedRulers | null {
  const [flat, tall] = [rulers(), upright(rulers())]
  const below: Rectangle = [Math.max(card[0], printable[0]), card[3] + CLEAR, printable[2], printable[3]]
  if (holds(below, flat)) return placed(flat, below[0], below[1])
  const above: Rectangle = [below[0], printable[1], printable[2], card[1] - CLEAR]
  if (!top && holds(above, flat)) return placed(flat, above[0], above[3] - flat.height)
  const right: Rectangle = [card[2] + CLEAR, Math.max(card[1], printable[1]), printable[2], printable[3]]
  if (holds(right, tall)) return placed(tall, right[0], right[1])
  const left: Rectangle = [printable[0], right[1], card[0] - CLEAR, printable[3]]
  if (!column && holds(left, tall)) return placed(tall, left[2] - tall.width, left[1])
  return null
}
