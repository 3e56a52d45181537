import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { beak } from '../garden.ts'

/** A hand on the slit's end: its number rides beside it. */
export const patternHeld = (): Drawing =>
  pattern(
    beak,
    { width: 600, height: 440 },
    {
      handles: ['beak'],
      held: { handle: 'beak/slit-end', words: 'slit 42.0 mm' },
      legend: false,
      unit: 'in',
    },
  )
