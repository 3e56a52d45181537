/**
 * Our own shapes of the night garden, as a reader sees them: right, and up, in a square of about 100. A point given
 * twice in a row is a corner of a smooth outline.
 */
import * as says from '../../../content/words/pieces.ts'
import type { Flat, PaperColour } from '../../paper/index.ts'
import { cutLine, doubled } from './outline.ts'

/** What is drawn on a shape, in its own square. */
export interface Drawn {
  readonly shape: readonly Flat[]
  readonly fill?: PaperColour
  readonly line?: PaperColour
  readonly curve?: boolean
  readonly open?: boolean
  readonly glows?: boolean
}

export interface Shape {
  /** What the piece is called on the card. */
  readonly word: string
  readonly label: string
  readonly paper: PaperColour
  readonly points: readonly Flat[]
  readonly curve: boolean
  readonly drawn: readonly Drawn[]
}

const circle = (x: number, y: number, r: number, corners = 10): readonly Flat[] =>
  Array.from({ length: corners }, (_, k): Flat => {
    const turn = (2 * Math.PI * k) / corners
    return [x + r * Math.sin(turn), y + r * Math.cos(turn)]
  })

const arc = (x: number, y: number, r: number, from: number, to: number, count: number): readonly Flat[] =>
  Array.from({ length: count }, (_, k): Flat => {
    const turn = ((from + ((to - from) * k) / (count - 1)) * Math.PI) / 180
    return [x + r * Math.cos(turn), y + r * Math.sin(turn)]
  })

const corner = (x: number, y: number): readonly Flat[] => [
  [x, y],
  [x, y],
]

const star: readonly Flat[] = Array.from({ length: 10 }, (_, k): Flat => {
  const [r, turn] = [k % 2 === 0 ? 50 : 23, (Math.PI * k) / 5]
  return [r * Math.sin(turn), r * Math.cos(turn)]
})

export const SHELF: readonly Shape[] = [
  {
    word: 'moon',
    label: says.moon,
    paper: 'moon',
    curve: true,
    points: [
      ...corner(19, 46),
      ...arc(0, 0, 50, 80, 280, 9),
      ...corner(19, -46),
      ...arc(24, 0, 36, 245, 115, 5),
    ],
    drawn: [
      { shape: circle(-31, 12, 6), fill: 'cream', curve: true },
      { shape: circle(-26, -14, 4), fill: 'cream', curve: true },
      { shape: circle(-10, 34, 3.5), fill: 'cream', curve: true },
    ],
  },
  {
    word: 'star',
    label: says.star,
    paper: 'flame',
    curve: false,
    points: star,
    drawn: [{ shape: star.map(([x, y]): Flat => [x * 0.55, y * 0.55]), fill: 'moon', glows: true }],
  },
  {
    word: 'leaf',
    label: says.leaf,
    paper: 'leaf',
    curve: true,
    points: doubled([...corner(0, 52), [22, 24], [27, -4], [16, -30], ...corner(0, -48)]),
    drawn: [
      {
        shape: [
          [0, 46],
          [0, -48],
        ],
        line: 'moss',
        open: true,
      },
      ...[22, 2, -18].flatMap((y): Drawn[] => [
        {
          shape: [
            [0, y],
            [16, y + 12],
          ],
          line: 'moss',
          open: true,
        },
        {
          shape: [
            [0, y],
            [-16, y + 12],
          ],
          line: 'moss',
          open: true,
        },
      ]),
    ],
  },
  {
    word: 'reeds',
    label: says.reeds,
    paper: 'fern',
    curve: false,
    points: [
      [-24, -50],
      [24, -50],
      [34, 24],
      [15, -12],
      [10, -4],
      [10, 38],
      [6, 46],
      [2, 48],
      [0, 58],
      [-2, 48],
      [-6, 46],
      [-10, 38],
      [-10, -6],
      [-15, -14],
      [-32, 14],
    ],
    drawn: [
      {
        shape: [
          [-8, 6],
          [8, 6],
          [8, 38],
          [4, 45],
          [-4, 45],
          [-8, 38],
        ],
        fill: 'bark',
      },
      {
        shape: [
          [0, -48],
          [0, 6],
        ],
        line: 'moss',
        open: true,
      },
      {
        shape: [
          [18, -46],
          [31, 14],
        ],
        line: 'moss',
        open: true,
      },
      {
        shape: [
          [-18, -46],
          [-29, 6],
        ],
        line: 'moss',
        open: true,
      },
    ],
  },
  {
    word: 'feather',
    label: says.feather,
    paper: 'heron',
    curve: true,
    points: [
      ...corner(-3, -56),
      ...corner(-3, -36),
      [-18, -22],
      [-21, 8],
      [-9, 44],
      ...corner(6, 58),
      [19, 34],
      [22, 4],
      [15, -24],
      ...corner(3, -36),
      ...corner(3, -56),
    ],
    drawn: [
      {
        shape: [
          [0, -54],
          [1, 4],
          [5, 52],
        ],
        line: 'dusk',
        curve: true,
        open: true,
      },
      ...[-20, -4, 12, 28].flatMap((y): Drawn[] => [
        {
          shape: [
            [1, y],
            [15, y + 11],
          ],
          line: 'dusk',
          open: true,
        },
        {
          shape: [
            [1, y],
            [-14, y + 9],
          ],
          line: 'dusk',
          open: true,
        },
      ]),
    ],
  },
  {
    word: 'lantern',
    label: says.lantern,
    paper: 'bark',
    curve: false,
    points: doubled([
      [0, 52],
      [9, 50],
      [9, 41],
      [30, 32],
      [33, 23],
      [27, 22],
      [30, -32],
      [35, -34],
      [35, -44],
      [0, -44],
    ]),
    drawn: [
      {
        shape: [
          [-21, 18],
          [21, 18],
          [24, -28],
          [-24, -28],
        ],
        fill: 'amber',
        glows: true,
      },
      {
        shape: [
          [0, 14],
          [9, -6],
          [0, -20],
          [-9, -6],
        ],
        fill: 'moon',
        curve: true,
        glows: true,
      },
      {
        shape: [
          [0, 20],
          [0, -30],
        ],
        line: 'bark',
        open: true,
      },
    ],
  },
  {
    word: 'heron-head',
    label: says.heronHead,
    paper: 'heron',
    curve: true,
    points: [
      ...corner(-34, -50),
      [-32, -18],
      [-34, 8],
      ...corner(-54, 26),
      [-28, 30],
      [-8, 34],
      [10, 27],
      ...corner(58, 8),
      [14, 4],
      [-4, -6],
      [-10, -24],
      ...corner(-8, -50),
    ],
    drawn: [
      {
        shape: [
          [-54, 26],
          [-30, 27],
          [-12, 31],
          [-6, 24],
          [-20, 18],
          [-36, 18],
        ],
        fill: 'ink',
        curve: true,
      },
      { shape: [[10, 26], ...corner(58, 8), [14, 5]], fill: 'flame', curve: true },
      { shape: circle(0, 20, 5), fill: 'moon', curve: true },
      { shape: circle(1, 20, 2.4, 8), fill: 'ink', curve: true },
    ],
  },
  {
    word: 'owl-eye',
    label: says.owlEye,
    paper: 'oat',
    curve: true,
    points: circle(0, 0, 50, 12),
    drawn: [
      { shape: circle(0, 0, 38, 12), fill: 'amber', curve: true },
      { shape: circle(0, 0, 21, 12), fill: 'ink', curve: true },
      { shape: circle(8, 9, 6), fill: 'moon', curve: true },
    ],
  },
  {
    word: 'moth-wing',
    label: says.mothWing,
    paper: 'lilac',
    curve: true,
    points: [
      ...corner(-46, 4),
      [-30, 28],
      [4, 44],
      ...corner(48, 46),
      [44, 20],
      ...corner(26, 2),
      [32, -18],
      [18, -42],
      [-14, -40],
      ...corner(-46, -16),
    ],
    drawn: [
      { shape: circle(14, 22, 13), fill: 'plum', curve: true },
      { shape: circle(14, 22, 6), fill: 'amber', curve: true },
      { shape: circle(6, -20, 8), fill: 'plum', curve: true },
      {
        shape: [
          [-44, 0],
          [-10, 2],
          [24, 2],
        ],
        line: 'plum',
        curve: true,
        open: true,
      },
    ],
  },
  {
    word: 'hedgehog',
    label: says.hedgehog,
    paper: 'bark',
    curve: false,
    points: [
      [-46, -32],
      [-58, -22],
      [-47, -14],
      [-58, -2],
      [-44, 4],
      [-50, 18],
      [-34, 18],
      [-34, 34],
      [-20, 27],
      [-12, 42],
      [-2, 29],
      [10, 40],
      [14, 25],
      [27, 28],
      [30, 10],
      [44, -6],
      [58, -18],
      [50, -28],
      [36, -32],
    ],
    drawn: [
      {
        shape: [
          [22, 8],
          [34, 6],
          [58, -18],
          [50, -28],
          [36, -32],
          [14, -32],
          [16, -12],
        ],
        fill: 'cream',
        curve: true,
      },
      { shape: circle(36, -8, 3.4, 8), fill: 'ink', curve: true },
      { shape: circle(53, -19, 4.4, 8), fill: 'ink', curve: true },
      ...[-34, -16, 0].map(
        (x): Drawn => ({
          shape: [
            [x, -14],
            [x - 7, 4],
          ],
          line: 'oat',
          open: true,
        }),
      ),
      ...[-26, -8].map(
        (x): Drawn => ({
          shape: [
            [x, 6],
            [x - 6, 22],
          ],
          line: 'oat',
          open: true,
        }),
      ),
    ],
  },
  {
    word: 'mushroom',
    label: says.mushroom,
    paper: 'rust',
    curve: true,
    points: doubled([
      [0, 46],
      [34, 28],
      ...corner(46, 0),
      ...corner(13, -5),
      [10, -26],
      ...corner(17, -48),
      ...corner(0, -48),
    ]),
    drawn: [
      {
        shape: [
          [-13, -5],
          [13, -5],
          [10, -26],
          [17, -48],
          [-17, -48],
          [-10, -26],
        ],
        fill: 'cream',
      },
      { shape: circle(-16, 18, 7), fill: 'cream', curve: true },
      { shape: circle(14, 27, 6), fill: 'cream', curve: true },
      { shape: circle(24, 8, 5), fill: 'cream', curve: true },
    ],
  },
  {
    word: 'cloud',
    label: says.cloud,
    paper: 'water',
    curve: true,
    points: [
      ...corner(-50, -22),
      [-58, -4],
      [-44, 10],
      ...corner(-34, 10),
      [-28, 28],
      [-6, 34],
      ...corner(12, 20),
      [30, 26],
      [42, 10],
      ...corner(40, 4),
      [58, -4],
      ...corner(50, -22),
    ],
    drawn: [
      {
        shape: [
          [-30, -8],
          [-12, -4],
          [4, -10],
          [20, -6],
        ],
        line: 'heron',
        curve: true,
        open: true,
      },
    ],
  },
]

const cut = new Map<Shape, readonly Flat[]>()

/** The corners to cut a shape along, in its own square. */
export function outlineOf(shape: Shape): readonly Flat[] {
  let found = cut.get(shape)
  if (!found) {
    found = cutLine(shape.points, shape.curve) ?? shape.points
    cut.set(shape, found)
  }
  return found
}
