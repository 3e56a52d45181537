import * as says from '../../../content/words/sheet/sections.ts'
import type { PathMark, Point } from '../../drawing/pen/marks.ts'
import { CAPITAL, wordWidth } from './letters.ts'
import type { Block, SheetMark } from './setting.ts'

const INCH = 25.4

const LONG = 100

const INCHES = 4

const SIZE = 2.8

/** Ends stand out from the steps between them. */
const TICK = { end: 3, step: 1.6 }

/** Between the two lines, and from a line's end to its words. */
const APART = 1.6

const NEAR = 1.6

/** A line with ticks above (-1) or below (1) it, and its length in words at its end. */
function ruler({
  length,
  step,
  y,
  side,
  words,
  of,
}: {
  readonly length: number
  readonly step: number
  readonly y: number
  readonly side: 1 | -1
  readonly words: string
  readonly of: string
}): SheetMark[] {
  const line: PathMark = {
    mark: 'path',
    runs: [
      [
        [0, y],
        [length, y],
      ],
    ],
    closed: false,
    role: 'axis',
    of,
  }
  const ticks = Array.from({ length: Math.round(length / step) + 1 }, (_, k): Point[] => {
    const end = k === 0 || k * step > length - step / 2
    return [
      [k * step, y],
      [k * step, y + side * (end ? TICK.end : TICK.step)],
    ]
  })
  return [
    line,
    { mark: 'path', runs: ticks, closed: false, role: 'axis', of: `${of}-ticks` },
    {
      mark: 'word',
      at: [INCHES * INCH + NEAR, y + (side < 0 ? 0 : CAPITAL * SIZE)],
      text: words,
      role: 'note',
      anchor: 'start',
      size: SIZE,
      bold: true,
      of,
    },
  ]
}

/**
 * The two check lines, back to back as on a ruler: 100 mm above, 4 in (101.6 mm) below, marked
 * `check-100mm` and `check-4in`.
 */
export function rulers(): Block {
  const y = TICK.end
  return {
    width: INCHES * INCH + NEAR + wordWidth(says.hundredMm, SIZE, true),
    height: 2 * TICK.end + APART,
    marks: [
      ...ruler({ length: LONG, step: 10, y, side: -1, words: says.hundredMm, of: 'check-100mm' }),
      ...ruler({
        length: INCHES * INCH,
        step: INCH,
        y: y + APART,
        side: 1,
        words: says.fourInches,
        of: 'check-4in',
      }),
    ],
  }
}

export const RULER_WIDTH = rulers().width

/** A block turned a quarter anticlockwise, to stand in a narrow column. */
export function upright(block: Block): Block {
  const turn = ([x, y]: Point): Point => [y, block.width - x]
  return {
    width: block.height,
    height: block.width,
    marks: block.marks.map((mark) =>
      mark.mark === 'path'
        ? { ...mark, runs: mark.runs.map((run) => run.map(turn)) }
        : { ...mark, at: turn(mark.at), turn: (mark.turn ?? 0) - 90 },
    ),
  }
}
