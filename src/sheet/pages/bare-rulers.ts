import type { PathMark } from '../../drawing/pen/marks.ts'
import type { Rectangle } from '../marks/clip.ts'
import { rulers, upright } from '../marks/rulers.ts'
import type { Block, SheetMark } from '../marks/setting.ts'
import { moved } from '../marks/setting.ts'
import type { Bed } from './bed.ts'

/** Free paper that the check lines keep round them, mm. */
const CLEAR = 2.2

const overlap = (a: Rectangle, b: Rectangle): boolean =>
  a[0] < b[2] && b[0] < a[2] && a[1] < b[3] && b[1] < a[3]

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

/** The check lines in the margins round the card: below it, above it, or upright at its sides. */
function besideCard({ card, printable, column, top }: Bed): PlacedRulers | null {
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

/**
 * The check lines on the card itself, for a card that fills its paper: where they touch none of its
 * lines, as near the reader's end as can be.
 */
function onCard(
  lines: readonly PathMark[],
  letters: readonly Rectangle[],
  { card, printable }: Bed,
): PlacedRulers | null {
  const crossed = lines
    .filter((line) => line.of !== 'page')
    .flatMap(({ runs }) => runs.flatMap((run) => run.slice(1).map((b, k) => [run[k] ?? b, b] as const)))
    .map(([[ax, ay], [bx, by]]): Rectangle => {
      const [left, right] = [Math.min(ax, bx), Math.max(ax, bx)]
      return [left - CLEAR, Math.min(ay, by) - CLEAR, right + CLEAR, Math.max(ay, by) + CLEAR]
    })
  const busy = [...crossed, ...letters]
  const left = Math.max(card[0], printable[0]) + CLEAR
  const top = Math.max(card[1], printable[1]) + CLEAR
  const right = Math.min(card[2], printable[2]) - CLEAR
  const bottom = Math.min(card[3], printable[3]) - CLEAR
  for (const block of [rulers(), upright(rulers())])
    for (let y = bottom - block.height; y >= top; y -= 2)
      for (let x = left; x + block.width <= right; x += 2)
        if (!busy.some((box) => overlap(box, [x, y, x + block.width, y + block.height])))
          return placed(block, x, y)
  return null
}

/**
 * The check lines where no cell holds them: beside the card, or on it if it may carry them. Null if they would
 * touch its lines.
 */
export const bareRulers = (
  lines: readonly PathMark[],
  letters: readonly Rectangle[],
  bed: Bed,
  mayCover: boolean,
): PlacedRulers | null => besideCard(bed) ?? (mayCover ? onCard(lines, letters, bed) : null)
