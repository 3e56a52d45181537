import { dimensions } from '../../../src/drawing/pattern/dimensions.ts'
import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { lantern } from '../garden.ts'

export const patternOutside = (): Drawing =>
  pattern(lantern, { width: 340, height: 280 }, { face: 'outside', dimensions: dimensions() })
