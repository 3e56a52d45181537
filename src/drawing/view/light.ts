import type { Vec3 } from '../../paper/index.ts'
import { dot, unit } from '../../paper/plane/vector.ts'
import type { Lens, Stand } from './camera.ts'

/** Where light comes from, seen by the reader: to the right, towards the reader, up. It turns with the reader. */
const LAMP: Vec3 = [-0.56, 0.42, 0.74]

/** For a card that stands upright and faces the reader: from further in front. */
const LAMP_IN_FRONT: Vec3 = [-0.5, 0.78, 0.42]

/** A surface that faces down still gets this much of the light from all round. */
const FROM_BELOW = 0.64

/** Unit vector to the lamp, in the table's frame. */
export function lampFor({ right }: Lens, stand: Stand = 'gutter'): Vec3 {
  const [across, near, up] = stand === 'edge' ? LAMP_IN_FRONT : LAMP
  // `right` is level, so (right.y, -right.x) points at the reader.
  return unit([across * right[0] + near * right[1], across * right[1] - near * right[0], up])
}

/** What a surface with this unit normal gets: straight from the lamp, and from all round; 0 to 1 each. */
export const lightOn = (normal: Vec3, lamp: Vec3): { light: number; sky: number } => ({
  light: Math.max(0, dot(normal, lamp)),
  sky: FROM_BELOW + ((1 - FROM_BELOW) * (1 + normal[2])) / 2,
})

/** Places of a lamp `spread` wide (a unit vector's shift), evenly over its disc by the golden angle. Source: Vogel 1979. */
export function lampPlaces(lamp: Vec3, count: number, spread: number): readonly Vec3[] {
  if (count === 1) return [lamp]
  return Array.from({ length: count }, (_, k) => {
    const radius = spread * Math.sqrt((k + 0.5) / count)
    const angle = k * Math.PI * (3 - Math.sqrt(5))
    return unit([lamp[0] + radius * Math.cos(angle), lamp[1] + radius * Math.sin(angle), lamp[2]])
  })
}
