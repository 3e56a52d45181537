import { dimensions } from '../../../src/drawing/dimensions.ts'
import type { Drawing } from '../../../src/drawing/marks.ts'
import { pattern } from '../../../src/drawing/pattern.ts'
import { heron } from '../garden.ts'

export const patternSheet = (): Drawing =>
  pattern(heron, { width: 340, height: 280 }, { for: 'sheet', dimensions: dimensions(['beak', 'jaw']) })
