import { chart } from '../../../src/drawing/chart/chart.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { lantern } from '../garden.ts'

export const chartLantern = (): Drawing =>
  chart(lantern, 40, { width: 600, height: 440 }, { of: ['body', 'roof', 'ledge'], unit: 'in' })
