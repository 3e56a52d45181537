import { pointOnSheet } from '../../../src/drawing/page-point/page-point.ts'
import { pattern } from '../../../src/drawing/pattern/pattern.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { bare } from '../garden.ts'

export const pointSheet = (): Drawing =>
  pointOnSheet(pattern(bare, { width: 340, height: 280 }), [60, 75], bare.card, { text: 15, unit: 'mm' })
