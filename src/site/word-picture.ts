/** The small picture beside a word: a plain card from the dummies, with what the word means marked on it. */
import type { Drawing, Mark, Point } from '../drawing/pen/marks.ts'
import { stepFigure } from '../drawing/steps/steps.ts'
import type { Size } from '../drawing/view/camera.ts'
import { view } from '../drawing/view/view.ts'
import type { Design, Vec3 } from '../paper/index.ts'
import { measure, poseAt } from '../paper/index.ts'
import { RADIANS } from '../paper/plane/vector.ts'
import type { WordPicture } from './word-told.ts'

const SIZE: Size = { width: 240, height: 160 }

const CAMERA = { turn: -26, tilt: 38, far: 2 }

/** What is drawn on the paper would be in the way here. */
export const plain = (drawn: Design): Design => {
  const { art, papers, ...design } = drawn
  // The very same where nothing is drawn: what is known of a design is kept by it.
  return art || papers ? design : drawn
}

const middle = ({ start, end }: { readonly start: Vec3; readonly end: Vec3 }): Vec3 => [
  (start[0] + end[0]) / 2,
  (start[1] + end[1]) / 2,
  (start[2] + end[2]) / 2,
]

/** Fibres of the paper: short strokes along the gutter, staggered. */
function fibres({ width, height }: Design['card'], at: (across: number, along: number) => Point): Mark[] {
  const runs: Point[][] = []
  for (let row = 1; row < 9; row++)
    for (const side of [-1, 1]) {
      const across = (side * width * row) / 9
      for (let along = 8 + 14 * (row % 2); along + 18 < height; along += 30)
        runs.push([at(across, along), at(across, along + 18)])
    }
  return [{ mark: 'path', runs, closed: false, role: 'guide', paint: { card: 0, light: 1, face: 'front' } }]
}

/** Along the gutter from the reader's end to below a tip, and up to it. */
function reachMarks(tip: Vec3, at: (p: Vec3) => Point): Mark[] {
  const below: Vec3 = [0, tip[1], 0]
  const along = { mark: 'path', runs: [[at([0, 0, 0]), at(below)]], closed: false } as const
  return [
    { ...along, role: 'halo' },
    { ...along, role: 'dimension', arrow: 'both' },
    { mark: 'path', runs: [[at(below), at(tip)]], closed: false, role: 'swing' },
    { mark: 'dot', at: at(tip), radius: 4.5, role: 'dimension' },
  ]
}

/** A pen with a blunt point that presses on a place of the picture. */
function penMarks([x, y]: Point): Mark[] {
  const run = [
    [0, 0],
    [4, -13],
    [38, -66],
    [49, -59],
    [15, -6],
  ].map(([dx = 0, dy = 0]): Point => [x + dx, y + dy])
  const tip = [run[1] as Point, run[4] as Point]
  const outline = { mark: 'path', runs: [run], closed: true } as const
  return [
    { ...outline, role: 'halo' },
    { ...outline, role: 'paper', paint: { card: 1, light: 1, face: 'front' } },
    { ...outline, role: 'hand' },
    { mark: 'path', runs: [tip], closed: false, role: 'hand' },
  ]
}

/**
 * What a word means, marked on a card from the dummies; at an opening of its own or, while it moves, `at` another, degrees.
 * Throws an Error that names a crease or mechanism which the design does not have.
 */
export function wordPicture(drawn: Design, word: WordPicture, size: Size = SIZE, at?: number): Drawing {
  const design = plain(drawn)
  const opening = at ?? word.opening
  const moving = at !== undefined
  const { lines, point, between, lit, rise, reach, grain, pen, step } = word
  if (step !== undefined) return stepFigure(design, step, size, { plain: true })
  const standing = view(design, opening, CAMERA, size, {
    // One frame for all of the motion: only the card moves.
    frame: [word.opening - 4, word.opening + 4],
    moving,
    text: 15,
    ...(lit ? { lit } : {}),
    ...(rise === undefined ? {} : { rise: [rise] }),
  })
  const { creases } = poseAt(design, opening)
  const known = <T>(found: T | undefined, name: string): T => {
    if (found === undefined) throw new Error(`${design.title} has no ${name} for a picture of a word`)
    return found
  }
  const place = (p: Vec3): Point => standing.toScreen(p)
  const red = (a: Vec3, b: Vec3): Mark[] =>
    (['halo', 'dimension'] as const).map((role) => ({
      mark: 'path',
      runs: [[place(a), place(b)]],
      closed: false,
      role,
    }))
  const { tips } = measure(design, opening)
  const tip = (id: string): Vec3 => known(tips[id], id).at
  const half = (opening / 2) * RADIANS
  const onPage = (across: number, along: number): Point =>
    place([across * Math.sin(half), along, Math.abs(across) * Math.cos(half)])
  return {
    ...standing,
    marks: [
      ...standing.marks,
      ...lines.flatMap((name) => {
        const { start, end } = known(creases[name], name)
        return red(start, end)
      }),
      ...(grain ? fibres(design.card, onPage) : []),
      ...(reach === undefined ? [] : reachMarks(tip(reach), place)),
      ...(pen === undefined ? [] : penMarks(place(middle(known(creases[pen], pen))))),
      ...(between ? red(tip(between[0]), tip(between[1])) : []),
      ...(point === undefined
        ? []
        : [
            {
              mark: 'dot',
              at: place(known(creases[point], point).start),
              radius: 6,
              role: 'dimension',
            } as const,
          ]),
    ],
  }
}
