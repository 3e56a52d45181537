import { dimensions } from '../../../src/drawing/dimensions.ts'
import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { lantern } from '../garden.ts'

export const patternOutside = (): Drawing =>
  pattern(lantern, { width: 340, height: 280 }, { face: 'outside', dimensions: dimensions() })
