import type { Design } from '../paper/index.ts'
import { openingRange, SHUT } from '../paper/index.ts'

/**
 * Openings from as far shut to as far open as the card goes, evenly spread, degrees. Shut is a hair above nought, where
 * the layers keep their order.
 * @param count how many, at least 2
 */
export function openingSteps(design: Design, count: number): readonly number[] {
  const [low, high] = openingRange(design)
  const from = Math.min(high, Math.max(SHUT, low))
  return Array.from({ length: count }, (_, k) => from + ((high - from) * k) / (count - 1))
}

/** There and back again: the card opens and shuts, and its first step follows on its last. */
export const thereAndBack = <T>(steps: readonly T[]): readonly T[] => [
  ...steps,
  ...steps.slice(1, -1).reverse(),
]
