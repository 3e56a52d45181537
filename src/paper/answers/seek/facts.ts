import type { Design } from '../../design/design.ts'
import { thickest } from '../../measure/layers.ts'
import { modelOf } from '../../model/model.ts'
import { extentOf } from '../../plane/near.ts'

/** What new mechanisms ask of a maker. */
export interface Facts {
  /** Layers of card at the thickest spot of the shut card, and their thickness, mm. */
  readonly layers: number
  readonly thickness: number
  /** Card to cut the new pieces from, mm: a rectangle for each; none where all is cut from what is there. */
  readonly paper: readonly { readonly width: number; readonly height: number }[]
  /** The same together, mm². */
  readonly area: number
  /** Places to be glued. */
  readonly joints: number
  /** Pieces to cut out. */
  readonly pieces: number
}

/** The facts of the mechanisms named, in a design. */
export function factsOf(design: Design, ids: ReadonlySet<string>): Facts {
  const model = modelOf(design)
  const isNew = (owner: number): boolean => ids.has(design.mechanisms[owner]?.id ?? '')
  const paper = model.pieces.flatMap(({ owner, outline }) => {
    if (!isNew(owner)) return []
    const [x0, x1, y0, y1] = extentOf(outline)
    return [{ width: x1 - x0, height: y1 - y0 }]
  })
  return {
    ...thickest(design),
    paper,
    area: paper.reduce((sum, { width, height }) => sum + width * height, 0),
    joints: model.glue.filter(({ owner }) => isNew(owner)).length,
    pieces: paper.length,
  }
}
