import type { Flat } from '../plane/lay.ts'
import type { Placed } from './kind.ts'
import { kindOf } from './registry.ts'

const depth = (lines: readonly (readonly Flat[])[]): number =>
  Math.max(0, ...lines.flatMap((line) => line.map(([across]) => across)))

/** Whether its two sides are cut to different depths: they cannot be cut through both layers to the end. */
export function isUneven(m: Placed): boolean {
  const { left, right } = kindOf(m).build(m).cuts
  return Math.abs(depth(left) - depth(right)) > 1e-6
}
