// Areas of flat outlines, and what two of them share: by the shoelace formula and polyclip-ts, nothing of the kernel's.
import { intersection } from 'polyclip-ts'
import type { Flat } from '../../../src/paper/index.ts'

export type Ring = [number, number][]

export const ring = (points: readonly Flat[]): [Ring] => [points.map(([x, y]) => [x, y])]

export const areaOf = (points: readonly Flat[]): number =>
  Math.abs(
    points.reduce((sum, [x, y], k) => {
      const [u, v] = points[(k + 1) % points.length] as Flat
      return sum + x * v - u * y
    }, 0),
  ) / 2

/** Square millimetres that two simple outlines have in common. */
export const shared = (one: readonly Flat[], two: readonly Flat[]): number =>
  intersection(ring(one), ring(two)).reduce((sum, [outer = []]) => sum + areaOf(outer), 0)
