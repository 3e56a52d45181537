import type { Placed } from '../mechanisms/kind.ts'
import { kindOf } from '../mechanisms/registry.ts'

/** What a ruler is held to when a mechanism's rise is read: the tip of a ridge that rises, or a ridge that stays level. */
export function topOf(m: Placed): 'tip' | 'ridge' {
  const { tip, creases } = kindOf(m).build(m)
  const ridge = creases.find(({ part }) => part === tip.crease)
  return ridge && tip.along > 0 && tip.along < ridge.length ? 'ridge' : 'tip'
}
