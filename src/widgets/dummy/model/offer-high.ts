import * as says from '../../../../content/words/dummy/slips.ts'
import type { Offer } from '../../../paper/index.ts'
import { highest, kindNamed, riseOf } from '../../../paper/index.ts'
import type { LengthUnit } from '../../state/format.ts'
import { shown } from '../../state/format.ts'

/** What never stands higher is hardly worth cutting, mm. Common practice, no source. */
const LOW = 12

/** Where a room is no larger, it is the room that keeps a part low, mm. */
const LITTLE = 30

/** How high an offered part stands, in a few words: a low one says so, before it is cut. */
export function offerHigh({ kind, id, design, tip, opening, room }: Offer, unit: LengthUnit): string {
  const rise = riseOf(tip, opening)
  const much = shown(Math.abs(rise), 'mm', unit)
  if (rise < -0.05) return says.behind(much)
  // What lies flat on its face is no lower for want of room, and on a card that is all but shut everything is low.
  if (kindNamed(kind)?.sitsOn === 'panel' || highest(design, id).rise >= LOW) return says.high(much)
  return room <= LITTLE ? says.onlyHighHere(much) : says.onlyHigh(much)
}
