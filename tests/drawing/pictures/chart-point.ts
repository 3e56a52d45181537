import { chart } from '../../../src/drawing/chart/chart.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { bare } from '../garden.ts'

export const chartPoint = (): Drawing =>
  chart(bare, 140, { width: 240, height: 200 }, { point: [60, 80], unit: 'in', text: 12 })
