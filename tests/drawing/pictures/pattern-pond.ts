import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { pond } from '../garden.ts'

export const patternPond = (): Drawing =>
  pattern(pond, { width: 600, height: 440 }, { handles: ['pond', 'back'] })
