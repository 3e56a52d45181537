/** Pieces as they lie on a page. */
import type { Point } from '../../drawing/pen/marks.ts'
import type { Design } from '../../paper/index.ts'
import { pieces } from '../../paper/index.ts'
import type { Place } from './piece-marks.ts'
import { onPage } from './piece-marks.ts'

/** A piece, by its id, and where it lies. */
export interface Placed {
  readonly piece: string
  readonly place: Place
}

/** The outlines of pieces of a design where they lie; page coordinates, mm. */
export function lyingOn(design: Design): (placed: readonly Placed[]) => readonly (readonly Point[])[] {
  const flat = new Map(pieces(design).map(({ id, outline }) => [id, outline]))
  return (placed) =>
    placed.map(({ piece, place }) => (flat.get(piece) ?? []).map((point) => onPage(place, point)))
}
