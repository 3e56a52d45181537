import type { PathMark, Point, WordMark } from '../drawing/marks.ts'
import { CAPITAL } from './letters.ts'
import type { Block, SheetMark } from './setting.ts'

const INCH = 25.4
const LONG = 100
const INCHES = 4
const TYPE = 2.8
/** Ends and whole tens stand out. */
const TICK = { end: 3, step: 1.6 }

/** What the two check lines need, mm. */
export const RULER_WIDTH = INCHES * INCH

/** A line with ticks on one side and words beyond the ticks. `up`: -1 above the line, 1 below it. */
function ruler(
  length: number,
  step: number,
  y: number,
  up: 1 | -1,
  of: string,
  words: readonly [string, string],
): SheetMark[] {
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
  const ticks: PathMark = {
    mark: 'path',
    runs: Array.from({ length: Math.round(length / step) + 1 }, (_, k): Point[] => {
      const tall = k === 0 || k * step > length - step / 2
      return [
        [k * step, y],
        [k * step, y + up * (tall ? TICK.end : TICK.step)],
      ]
    }),
    closed: false,
    role: 'axis',
    of: `${of}-ticks`,
  }
  const base = y + up * (TICK.end + 0.8) + (up > 0 ? CAPITAL * TYPE : 0)
  const word = (text: string, x: number, anchor: 'start' | 'end'): WordMark => ({
    mark: 'word',
    at: [x, base],
    text,
    role: 'note',
    anchor,
    size: TYPE,
    bold: true,
    of,
  })
  return [line, ticks, word(words[0], 0, 'start'), word(words[1], length, 'end')]
}

/**
 * The two check lines, back to back as on a ruler: 100 mm above, 4 in (101.6 mm) below. Their own words
 * name them; `of` is `check-100mm` and `check-4in`.
 */
export function rulers(): Block {
  const above = CAPITAL * TYPE + 0.8 + TICK.end
  const marks = [
    ...ruler(LONG, 10, above, -1, 'check-100mm', ['0', '100 mm']),
    ...ruler(INCHES * INCH, INCH, above + 1.6, 1, 'check-4in', ['0', '4 in']),
  ]
  return { width: RULER_WIDTH, height: 2 * above + 1.6, marks }
}

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
