import * as says from '../../content/words/making.ts'
import type { Design, Piece } from '../paper/index.ts'
import { thickest } from '../paper/index.ts'

/** From this thickness on a fold that lies round the layers is better made as two, mm. Common practice, no source. */
const ROUND = 0.8

/** The layers of the cover itself. */
const OWN = 2

/**
 * How far apart the cover's fold is scored twice, mm: as thick as what lies in it when it is shut. 0 where one score
 * will do.
 */
export function spineOf(design: Design): number {
  if (!design.card.cover) return 0
  const { layers } = thickest(design)
  const inside = (layers - OWN) * design.card.caliper
  return inside < ROUND ? 0 : Math.ceil(2 * inside - 1e-9) / 2
}

/** A piece with the lines that are scored: of a cover that is scored twice these two, in place of its fold. */
export function scored(design: Design, piece: Piece): Piece {
  const half = piece.id === 'cover' ? spineOf(design) / 2 : 0
  if (half === 0) return piece
  const lines = piece.lines.flatMap((line) =>
    line.of === 'cover/gutter'
      ? [-half, half].map((off) => ({
          ...line,
          points: line.points.map(([x, y]): readonly [number, number] => [x + off, y]),
        }))
      : [line],
  )
  return { ...piece, lines }
}

/** How the cover is scored; empty where it is folded as any card is. */
export function spineSays(design: Design): string {
  const apart = spineOf(design)
  return apart === 0 ? '' : `${says.scoreTwice(apart)} `
}
