import type { Class, Order } from '../../class/class.ts'
import { classOf, nameOfMeasure } from '../../class/class.ts'
import type { Measured, Tell } from '../../class/spread.ts'
import { measuredOn } from '../../class/spread.ts'
import { uncovered } from '../../sheet/index.ts'
import type { Wanted } from './asked.ts'

/** The sizes that may differ on a card. */
export const sizesOf = ({
  design,
  lead,
  point,
}: Pick<Wanted, 'design' | 'lead' | 'point'>): readonly Measured[] =>
  measuredOn(uncovered(design), lead ?? null, point)

/** The order with what differs settled: a size that this card does not have is the first that it has. */
export function settled(wanted: Wanted): Order {
  const { choice } = wanted
  const names = sizesOf(wanted).map(nameOfMeasure)
  const differs =
    choice.differs === 'none' ? null : names.includes(choice.differs) ? choice.differs : (names[0] ?? null)
  return { ...wanted, choice: { ...choice, differs } }
}

export const madeClass = (wanted: Wanted, tell?: Tell): Class => classOf(settled(wanted), tell)
