import { dimensions } from '../../../src/drawing/dimensions.ts'
import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { heron } from '../garden.ts'

export const patternHeron = (): Drawing =>
  pattern(
    heron,
    { width: 600, height: 440 },
    { handles: ['beak', 'jaw'], dimensions: dimensions(['left-eye', 'right-eye']) },
  )
