/** The panels that lie on a flat piece, hosts before what is cut from them. */
import type { Design, Flat } from '../../paper/index.ts'
import { coverHalves, modelOf, patchesOf } from '../../paper/index.ts'
import type { Lay } from '../../paper/plane/lay.ts'

export interface FlatPanel {
  readonly name: string
  readonly outline: readonly Flat[]
  /** From its flat coordinates to the piece's. */
  readonly onPiece: Lay
  /** Its paper in convex parts, without what is cut loose. */
  readonly paper: readonly (readonly Flat[])[]
}

/** The panels of one piece by id; the cover has two of its own. */
export function panelsOn(design: Design, piece: string): readonly FlatPanel[] {
  if (piece === 'cover') return coverHalves(design).map((half) => ({ ...half, paper: [half.outline] }))
  const model = modelOf(design)
  const index = model.pieces.findIndex(({ id }) => id === piece)
  const patches = patchesOf(model)
  return model.panels.flatMap(({ name, outline, onPiece, piece: own }, k): FlatPanel[] =>
    own === index
      ? [
          {
            name,
            outline,
            onPiece,
            paper: patches.filter(({ panel }) => panel === k).map((patch) => patch.outline),
          },
        ]
      : [],
  )
}
