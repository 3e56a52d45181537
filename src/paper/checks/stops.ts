import type { Design } from '../design/design.ts'
import { modelOf } from '../model/model.ts'
import type { End, Why } from '../motion/range.ts'
import { rangesOf, toldEnd } from '../motion/range.ts'
import * as says from '../words/stops.ts'
import { side, The } from './names.ts'

/** What keeps a card from opening, or from shutting, any further. */
export interface Stop {
  /** Degrees. */
  readonly opening: number
  /** The mechanism. */
  readonly id: string
  /** `stop`: it is pulled tight. `through`: a facet of it would have to go through paper it is joined to. */
  readonly why: Why['how']
  /** The crease that is shut there, and the panel that the facet would have to go through. */
  readonly crease?: string
  readonly panel?: string
  /** One plain sentence. */
  readonly sentence: string
}

export interface Stops {
  /** Null: the card shuts. */
  readonly least: Stop | null
  /** Null: the card opens flat. */
  readonly most: Stop | null
  /** Ids of mechanisms that fit at no opening which the others allow, and of which the range tells nothing. */
  readonly nowhere: readonly string[]
}

const degrees = (opening: number): string => `${opening.toFixed(1)}°`

/** What bounds the range of a card at either end; see `openingRange`. */
export function openingStops(design: Design): Stops {
  const { card, nowhere } = rangesOf(design)
  const { creases, panels } = modelOf(design)
  const idOf = (owner: number): string => design.mechanisms[owner]?.id ?? ''
  const told = ({ at: opening, why }: End, verb: 'open' | 'shut'): Stop | null => {
    if (!why) return null
    const id = idOf(why.owner)
    const end = toldEnd(opening, verb === 'open' ? 'most' : 'least')
    const crease = creases[why.crease ?? -1]
    if (why.how === 'stop' || !crease) {
      const sentence = says.pulledTight(
        The(id),
        degrees(end),
        degrees(verb === 'open' ? 180 - end : end),
        verb,
      )
      return { opening, id, why: 'stop', sentence }
    }
    const panel =
      [crease.left, crease.right]
        .map(({ panel }) => panels[panel])
        .find((one) => one !== undefined && one.owner !== why.owner)?.name ?? ''
    const sentence = says.wouldGoThrough(The(id), degrees(end), side(panel), verb)
    return { opening, id, why: 'through', crease: crease.name, panel, sentence }
  }
  return { least: told(card.low, 'shut'), most: told(card.high, 'open'), nowhere: nowhere.map(idOf) }
}
