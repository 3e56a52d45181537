/** The small picture beside a word: a plain card from the dummies, with what the word means marked on it. */
import { z } from 'astro/zod'
import type { Drawing, Mark, Point } from '../drawing/pen/marks.ts'
import { stepFigure, stepStates } from '../drawing/steps/steps.ts'
import { view } from '../drawing/view/view.ts'
import type { Design, Vec3 } from '../paper/index.ts'
import { measure, poseAt } from '../paper/index.ts'

export const wordPictureSchema = z.strictObject({
  /** The name of a file in content/dummies. */
  dummy: z.string(),
  /** Degrees. */
  opening: z.number().min(0).max(180).default(104),
  /** Creases that are drawn red, by name. */
  lines: z.array(z.string()).default([]),
  /** The crease at whose start a dot is drawn. */
  point: z.string().optional(),
  /** Two mechanisms: a line goes from tip to tip. */
  between: z.tuple([z.string(), z.string()]).optional(),
  /** Mechanisms that stand in the light, all else dimmed. */
  lit: z.array(z.string()).optional(),
  /** The mechanism whose rise is measured. */
  rise: z.string().optional(),
  /** A making step in place of the standing card. */
  step: z.enum(stepStates).optional(),
})

export type WordPicture = z.infer<typeof wordPictureSchema>

const SIZE = { width: 240, height: 160 }

const CAMERA = { turn: -26, tilt: 38, far: 2 }

/** What is drawn on the paper would be in the way here. */
const plain = ({ art: _, papers: __, ...design }: Design): Design => design

/** Throws an Error that names a crease or mechanism which the design does not have. */
export function wordPicture(drawn: Design, word: WordPicture): Drawing {
  const design = plain(drawn)
  const { opening, lines, point, between, lit, rise, step } = word
  if (step !== undefined) return stepFigure(design, step, SIZE)
  const standing = view(design, opening, CAMERA, SIZE, {
    frame: [opening - 4, opening + 4],
    text: 15,
    ...(lit ? { lit } : {}),
    ...(rise === undefined ? {} : { rise: [rise] }),
  })
  const { creases } = poseAt(design, opening)
  const known = <T>(found: T | undefined, name: string): T => {
    if (found === undefined) throw new Error(`${design.title} has no ${name} for a picture of a word`)
    return found
  }
  const at = (p: Vec3): Point => standing.toScreen(p)
  const red = (a: Vec3, b: Vec3): Mark[] =>
    (['halo', 'dimension'] as const).map((role) => ({
      mark: 'path',
      runs: [[at(a), at(b)]],
      closed: false,
      role,
    }))
  const { tips } = measure(design, opening)
  const tip = (id: string): Vec3 => known(tips[id], id).at
  return {
    ...standing,
    marks: [
      ...standing.marks,
      ...lines.flatMap((name) => {
        const { start, end } = known(creases[name], name)
        return red(start, end)
      }),
      ...(between ? red(tip(between[0]), tip(between[1])) : []),
      ...(point === undefined
        ? []
        : [
            {
              mark: 'dot',
              at: at(known(creases[point], point).start),
              radius: 6,
              role: 'dimension',
            } as const,
          ]),
    ],
  }
}
