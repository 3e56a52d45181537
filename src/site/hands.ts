import * as says from '../../content/words/site/hands.ts'
import type { Design } from '../paper/index.ts'
import { jointsOf, modelOf, pieces } from '../paper/index.ts'

/** What a design asks of the hands: counted by the kernel, without the card's own rim and cover. */
export interface Hands {
  readonly cuts: number
  readonly folds: number
  readonly glued: number
  readonly parts: number
}

/** How hard it is, from 1: by cuts, folds and glue places together. */
export type Level = 1 | 2 | 3

export const LEVELS: readonly { readonly level: Level; readonly says: string; readonly most: number }[] = [
  { level: 1, says: says.easy, most: 20 },
  { level: 2, says: says.someCare, most: 40 },
  { level: 3, says: says.patientHands, most: Number.POSITIVE_INFINITY },
]

export function handsOf(design: Design): Hands {
  const model = modelOf(design)
  const lines = pieces(design).flatMap((piece) => piece.lines.filter(({ kind }) => kind === 'cut'))
  const rims = design.card.cover ? 2 : 1
  return {
    cuts: lines.length - rims,
    folds: model.creases.filter(({ hidden }) => !hidden).length,
    glued: jointsOf(design).filter(({ owner }) => owner >= 0).length,
    parts: design.mechanisms.length,
  }
}

export const levelOf = ({ cuts, folds, glued }: Hands): (typeof LEVELS)[number] =>
  LEVELS.find(({ most }) => cuts + folds + glued <= most) ?? (LEVELS[2] as (typeof LEVELS)[number])
