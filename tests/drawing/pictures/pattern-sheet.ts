import { dimensions } from '../../../src/drawing/pattern/dimensions.ts'
import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { heron } from '../garden.ts'

export const patternSheet = (): Drawing =>
  pattern(heron, { width: 340, height: 280 }, { for: 'sheet', dimensions: dimensions(['beak', 'jaw']) })
