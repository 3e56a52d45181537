import type { Design } from '../design/design.ts'
import { modelOf } from '../model/model.ts'
import { compile } from '../motion/pose.ts'
import { openingRange } from '../motion/range.ts'
import type { Vec3 } from '../plane/vector.ts'
import { indexOf, riseOf, tipAt } from './measure.ts'

/** The path of a mechanism's tip over the range of the card in `steps` equal openings; mm. */
export function swing(
  design: Design,
  id: string,
  steps = 60,
): readonly { opening: number; at: Vec3; rise: number }[] {
  const poser = compile(design)
  const index = indexOf(modelOf(design), id)
  const [least, most] = openingRange(design)
  return Array.from({ length: steps + 1 }, (_, k) => {
    const opening = k === steps ? most : least + ((most - least) * k) / steps
    poser(opening)
    const at = tipAt(poser, index)
    return { opening, at, rise: riseOf(at, opening) }
  })
}
