import { dimensions } from '../../../src/drawing/dimensions.ts'
import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { lantern } from '../garden.ts'

export const patternLantern = (): Drawing =>
  pattern(
    lantern,
    { width: 600, height: 440 },
    { handles: ['body'], dimensions: dimensions(['roof', 'ledge']) },
  )
