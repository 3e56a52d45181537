import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { heron } from '../garden.ts'

export const patternHeron = (): Drawing =>
  pattern(heron, { width: 600, height: 440 }, { handles: ['beak', 'jaw'] })
