/** The picture of a step of a chapter. */
import type { Drawing } from '../drawing/pen/marks.ts'
import type { StepState } from '../drawing/steps/steps.ts'
import { stepFigure } from '../drawing/steps/steps.ts'
import type { Chapter } from './chapters.ts'
import { shadowFitted } from './shadow-room.ts'

export interface StepProps {
  readonly shows: StepState
  readonly at?: number
  readonly only?: string
  readonly there?: string
  readonly dots?: boolean
  readonly turn?: number
  readonly tilt?: number
  readonly place: string
}

const SIZE = { width: 340, height: 250 } as const

/** A picture grows so many times at most for the shadow of its card: all steps keep nearly one scale. */
const ROOM = 1.08

/** Throws an Error that names the place where a step speaks of what the chapter’s card does not have. */
export function stepPicture(
  { design, config }: Pick<Chapter, 'design' | 'config'>,
  { shows, at, only, there, dots, turn, tilt, place }: StepProps,
): Drawing {
  const ids = only?.split(/\s+/)
  const before = there === 'nothing' ? [] : there?.split(/\s+/)
  const stranger = [...(ids ?? []), ...(before ?? [])].find(
    (id) => !design.mechanisms.some((m) => m.id === id),
  )
  if (stranger !== undefined)
    throw new Error(
      `${place} <Step> speaks of "${stranger}"; ${design.title} has ${design.mechanisms.map(({ id }) => id).join(', ')}.`,
    )
  if (dots && !config.point)
    throw new Error(`${place} <Step> has dots, and this chapter’s bench has no point.`)
  if ((turn === undefined) !== (tilt === undefined))
    throw new Error(`${place} <Step> has a turn or a tilt alone; it takes both, or neither.`)
  const chosen = turn === undefined || tilt === undefined ? undefined : { turn, tilt }
  // The card is done: it is seen as the reader knows it from the bench.
  const isDone = shows === 'open'
  const figure = stepFigure(design, shows, SIZE, {
    ...(at === undefined ? {} : { opening: at }),
    ...(ids === undefined ? {} : { of: ids }),
    ...(before === undefined ? {} : { there: before }),
    ...(dots && config.point ? { dot: config.point } : {}),
    camera: chosen ?? (isDone ? config.camera : undefined),
    stand: isDone && !chosen ? config.stand : undefined,
    near: true,
    covered: isDone,
  })
  return shadowFitted(figure, ROOM)
}
