import { pointInSection } from '../../../src/drawing/page-point/page-point.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { section } from '../../../src/drawing/section/section.ts'
import { bare } from '../garden.ts'

export const pointSection = (): Drawing =>
  pointInSection(section(bare, 60, 80, { width: 340, height: 280 }), [60, 80], 60, { text: 15, unit: 'in' })
