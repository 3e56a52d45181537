// Directions marked on the two panels of a crease, as a protractor laid on the paper would mark them.
import type { Flat, ModelCrease, Poser, Side, Vec3 } from '../../src/paper/index.ts'
import { laid } from '../../src/paper/plane/lay.ts'
import { minus, RAD } from '../paper/shared/space.ts'

/** The crease of that name. Throws a RangeError if there is none. */
export function creaseOf(poser: Poser, name: string): ModelCrease {
  const crease = poser.model.creases.find((one) => one.name === name)
  if (!crease) throw new RangeError(`there is no crease ${name}`)
  return crease
}

/** A point of one side of a crease, in space at the opening posed last. */
export const pointOn = (poser: Poser, crease: ModelCrease, side: Side, flat: Flat): Vec3 =>
  poser.lift(crease[side].panel, laid(crease[side].lay, flat))

/** The direction that leaves the crease's origin at an angle to the crease, degrees, on one of its panels. */
export function marked(poser: Poser, crease: ModelCrease, side: Side, angle: number): Vec3 {
  const [across, along] = [100 * Math.sin(angle * RAD), 100 * Math.cos(angle * RAD)]
  return minus(pointOn(poser, crease, side, [across, along]), pointOn(poser, crease, side, [0, 0]))
}

/** Poses the design at the opening at which the crease's inside angle is the wanted one, degrees. */
export function openTo(poser: Poser, crease: string, angle: number): number {
  let [low, high] = [0, 180]
  for (;;) {
    const middle = (low + high) / 2
    const reached = poser(middle).creases[crease]?.angle ?? Number.NaN
    if (middle === low || middle === high || reached === angle) return middle
    if (reached < angle) low = middle
    else high = middle
  }
}
