import type { Design, FreeRoom, Poser, Vec3 } from '../../paper/index.ts'
import { swing } from '../../paper/index.ts'
import type { Point } from '../pen/marks.ts'

/** Openings between shut and flat at which a trail is drawn. */
const STEPS = 36

/** The way of a mechanism's tip through the whole motion, on the screen, from shut to flat. */
export const trailOf = (design: Design, id: string, toScreen: (p: Vec3) => Point): readonly Point[] =>
  swing(design, id, STEPS).map(({ at }) => toScreen(at))

/** A place of a panel on which something may still stand. */
export interface RoomMark {
  readonly outline: readonly Point[]
  /** How high it may stand there, 0 (nothing to speak of) to 1 (as high as it likes). */
  readonly share: number
}

/** Lower than this nothing can stand, mm; from there up to the second it is shaded. */
const LOW = 2
const HIGH = 40

/** The free places of a panel as they lie in a picture: cell by cell, where nothing is cut, glued or stuck. */
export function roomMarks(
  poser: Poser,
  opening: number,
  free: FreeRoom,
  toScreen: (p: Vec3) => Point,
): readonly RoomMark[] {
  const panel = poser.model.panels.findIndex(({ name }) => name === free.panel)
  if (panel < 0) return []
  poser(opening)
  const half = free.cell / 2
  return free.cells.flatMap(({ at: [across, along], bare, height }): RoomMark[] => {
    if (!bare || height < LOW) return []
    const corners = [
      [across - half, along - half],
      [across + half, along - half],
      [across + half, along + half],
      [across - half, along + half],
    ] as const
    return [
      {
        outline: corners.map((corner) => toScreen(poser.lift(panel, corner))),
        share: Math.min(1, (height - LOW) / (HIGH - LOW)),
      },
    ]
  })
}
