import type { Lay } from '../../plane/lay.ts'
import { sameLay } from '../../plane/lay.ts'
import type { CreasePart } from '../build.ts'

/** How a side fold lies in the host's panel, and in the strip's own facet. */
interface FoldLays {
  readonly host: Lay
  readonly facet: Lay
}

/** The three creases of a strip that stays part of the host's sheet: its ridge, and a fold on either side. */
export function stripCreases(
  ridgeLength: number,
  foldLength: number,
  { left, right }: { readonly left: FoldLays; readonly right: FoldLays },
): readonly CreasePart[] {
  return [
    {
      part: 'ridge',
      length: ridgeLength,
      fold: 'against-host',
      left: { panel: 'left', lay: sameLay },
      right: { panel: 'right', lay: sameLay },
    },
    {
      part: 'left',
      length: foldLength,
      fold: 'as-host',
      left: { panel: 'host-left', lay: left.host },
      right: { panel: 'left', lay: left.facet },
    },
    {
      part: 'right',
      length: foldLength,
      fold: 'as-host',
      left: { panel: 'right', lay: right.facet },
      right: { panel: 'host-right', lay: right.host },
    },
  ]
}
