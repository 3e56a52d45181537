/** How a letter and its partner's name are set: the letter upright, or who looks for its twin turns the paper. Lengths in mm. */
import type { Point, WordMark } from '../../drawing/pen/marks.ts'
import type { Rectangle } from './clip.ts'
import { CAPITAL, TAIL, wordWidth } from './letters.ts'

/** The type size of a letter, and of the name with it; null: it stands alone. */
export interface Style {
  readonly size: number
  readonly name: number | null
  /** Two letters may be turned. */
  readonly mayTurn?: true
}

/** A letter as it is set, round its middle. */
export interface Shape {
  readonly box: Rectangle
  /** The middle of the letter itself. */
  readonly letter: Point
  /** The name runs up from the letter. */
  readonly isStack?: true
  readonly marks: readonly WordMark[]
}

interface Lettered {
  readonly letter: string
  readonly partner: string
}

const base = { mark: 'word', role: 'note', anchor: 'start' } as const

/** Capitals have no tails but that of Q: with the free paper that is kept round a letter it has room enough. */
const LITTLE = 0.064

/** Between a letter and a name that runs up from it. */
const BETWEEN = 0.9

/** The letter, and its partner's name after it. */
function row({ letter, partner }: Lettered, { size, name }: Style): Shape {
  const wide = wordWidth(letter, size, true)
  const space = name === null ? 0 : wordWidth(' ', name)
  const long = name === null ? wide : wide + space + wordWidth(partner, name)
  const drop = (CAPITAL * size) / 2
  const tail = name === null ? LITTLE * size : TAIL * name
  return {
    box: [-long / 2, -drop, long / 2, drop + tail],
    letter: [(wide - long) / 2, 0],
    marks: [
      { ...base, size, at: [-long / 2, drop], text: letter, bold: true },
      ...(name === null
        ? []
        : [{ ...base, size: name, at: [wide + space - long / 2, drop] as const, text: partner }]),
    ],
  }
}

/** Where paper is narrow: the letter upright, and its partner's name running up from it. */
function stack({ letter, partner }: Lettered, size: number, name: number): Shape {
  const half = wordWidth(letter, size, true) / 2
  const [capital, drop] = [CAPITAL * size, (CAPITAL * name) / 2]
  const down = (capital + BETWEEN + wordWidth(partner, name)) / 2
  return {
    box: [-Math.max(half, drop), -down, Math.max(half, drop + TAIL * name), down + LITTLE * size],
    letter: [0, down - capital / 2],
    isStack: true,
    marks: [
      { ...base, size, at: [-half, down], text: letter, bold: true },
      { ...base, size: name, at: [drop, down - capital - BETWEEN], text: partner, turn: -90 },
    ],
  }
}

/** Two letters where there is room for one: turned, they are no others. */
function turned({ letter }: Lettered, size: number): Shape {
  const half = wordWidth(letter, size, true) / 2
  const drop = (CAPITAL * size) / 2
  return {
    box: [-drop, -half, drop + LITTLE * size, half],
    letter: [0, 0],
    marks: [{ ...base, size, at: [drop, half], text: letter, bold: true, turn: -90 }],
  }
}

/** The ways to set a letter, the best first. A single one always stands upright: turned, Z would be read as N, and C as U. */
export function shapesOf(wish: Lettered, style: Style): readonly Shape[] {
  if (style.name !== null) return [row(wish, style), stack(wish, style.size, style.name)]
  return style.mayTurn && wish.letter.length > 1
    ? [row(wish, style), turned(wish, style.size)]
    : [row(wish, style)]
}

export const boxOf = ({ box: [l, t, r, b] }: Shape, [x, y]: Point): Rectangle => [x + l, y + t, x + r, y + b]
