import type { Point } from '../../drawing/pen/marks.ts'
import type { Design } from '../../paper/index.ts'
import { pieces } from '../../paper/index.ts'
import { EVERYWHERE } from '../marks/clip.ts'
import type { SheetLines } from '../marks/instructions.ts'
import { faceOf } from '../marks/instructions.ts'
import { letteredJoints, placesOn } from '../marks/joint-places.ts'
import { lyingOn } from '../marks/lying.ts'
import { pieceMarks } from '../marks/piece-marks.ts'
import type { SheetMark } from '../marks/setting.ts'
import { extent } from '../marks/setting.ts'
import { isIn } from '../marks/stretches.ts'
import type { SheetPage } from './layout.ts'

const middle = (mark: SheetMark): Point => {
  const [left, top, right, bottom] = extent(mark)
  return [(left + right) / 2, (top + bottom) / 2]
}

/** Whether some joint's letter lies beside all pieces: whoever cuts them out cuts it off. */
export function hasLettersBeside(
  design: Design,
  pages: readonly Pick<SheetPage, 'marks' | 'placed' | 'part'>[],
): boolean {
  const lying = lyingOn(design)
  // The cover is laid on by its edges too.
  const joints = letteredJoints(design).filter(({ host }) => host.piece !== 'cover')
  const lettered = new Map(joints.map(({ of, letter }) => [of, letter]))
  return pages.some(({ marks, placed, part }) => {
    const outlines = lying(placed)
    return [...marks, ...(part?.marks ?? [])].some(
      (mark) =>
        mark.mark === 'word' &&
        mark.of !== undefined &&
        lettered.get(mark.of) === mark.text &&
        !outlines.some((outline) => isIn(middle(mark), outline)),
    )
  })
}

/** The same foretold before any page is made: with each piece by itself, upright, on free paper. */
export const mayHaveLettersBeside = (design: Design, lines: SheetLines): boolean =>
  pieces(design)
    .filter(({ id }) => id !== 'card' && id !== 'cover')
    .some((piece) => {
      const place = { origin: [0, 0], mirrored: faceOf(lines) === 'outside' } as const
      const { words } = pieceMarks(piece, placesOn(design, piece.id, faceOf(lines)), place, lines, EVERYWHERE)
      return hasLettersBeside(design, [{ marks: words, placed: [{ piece: piece.id, place }] }])
    })
