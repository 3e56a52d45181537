/** The art of a flat piece in colour: panel by panel, in the piece's own coordinates, each clipped to its outline. */
import type { Art, Design, Flat } from '../../paper/index.ts'
import { modelOf } from '../../paper/index.ts'
import { laid } from '../../paper/plane/lay.ts'
import type { InkShape, Point } from '../pen/marks.ts'
import type { Hex } from '../pen/papers.ts'
import { PAPERS } from '../pen/papers.ts'
import { panelsOn } from './panels.ts'
import { artOn } from './shapes.ts'

/** A panel to be painted; lengths in mm. */
export interface PaintedPanel {
  readonly of: string
  /** Nothing is painted beyond it. */
  readonly outline: readonly Point[]
  /** What it is cut from, where the design says so; null: the paper as it comes. */
  readonly paper: Hex | null
  /** In the order in which they lie on one another. */
  readonly shapes: readonly InkShape[]
}

/** What a panel's piece is cut from: the colour is on the front, the back is pale. */
function paperOf({ papers, mechanisms }: Design, panel: string, face: Art['face']): Hex | null {
  const [owner = ''] = panel.split('/')
  const name =
    face === 'front' && (owner === 'page' || owner === 'cover' || mechanisms.some(({ id }) => id === owner))
  const colour = name ? papers?.[owner] : undefined
  return colour === undefined ? null : PAPERS[colour]
}

/**
 * What is painted on one face of a piece, by id. What is cut loose from a panel lies over it: its own panels follow.
 * Empty where the design names no colours.
 */
export function artColours(design: Design, piece: string, face: Art['face']): readonly PaintedPanel[] {
  if (!design.art && !design.papers) return []
  return panelsOn(design, piece).flatMap(({ name, outline, onPiece }): PaintedPanel[] => {
    const art = artOn(design, name, face)
    const paper = paperOf(design, name, face)
    if (!art && paper === null) return []
    const flat = (points: readonly Flat[]): Point[] => points.map((point) => laid(onPiece, point))
    const shapes = [...(art?.shapes ?? []), ...(art?.lit ?? [])]
    return [
      {
        of: name,
        outline: flat(outline),
        paper,
        shapes: shapes.map((shape) => ({ ...shape, runs: shape.runs.map(flat) })),
      },
    ]
  })
}

/** What a glued piece is cut from, for its tabs; null where the design does not say. */
export function tabPaper(design: Design, piece: string, face: Art['face']): Hex | null {
  const { pieces, builds } = modelOf(design)
  const owner = pieces.find(({ id }) => id === piece)?.owner ?? -1
  const id = builds[owner]?.mechanism.id
  return id === undefined ? null : paperOf(design, id, face)
}
