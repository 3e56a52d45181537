import { chart } from '../../../src/drawing/chart/chart.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { beak } from '../garden.ts'

export const chartBeak = (): Drawing => chart(beak, 96, { width: 340, height: 280 })
