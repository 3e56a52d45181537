import type { Point } from '../../drawing/pen/marks.ts'
import type { Design, Piece } from '../../paper/index.ts'
import { pieces } from '../../paper/index.ts'
import { letteredJoints } from '../marks/joint-places.ts'
import { lyingOn } from '../marks/lying.ts'
import type { SheetMark } from '../marks/setting.ts'
import { extent } from '../marks/setting.ts'
import { isIn } from '../marks/stretches.ts'
import type { SheetPage } from './layout.ts'
import type { Drawn } from './named-piece.ts'

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

/** The same foretold before any page is made: with each piece by itself, upright, on free paper, as `drawn` draws it. */
export const mayHaveLettersBeside = (
  design: Design,
  drawn: (piece: Piece) => Pick<Drawn, 'marks' | 'place'>,
): boolean =>
  pieces(design)
    .filter(({ id }) => id !== 'card' && id !== 'cover')
    .some((piece) => {
      const { marks, place } = drawn(piece)
      return hasLettersBeside(design, [{ marks, placed: [{ piece: piece.id, place }] }])
    })
