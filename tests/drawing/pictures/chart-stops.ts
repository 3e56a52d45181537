import { chart } from '../../../src/drawing/chart/chart.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { stops } from '../garden.ts'

/** A card that neither shuts nor opens flat, without its dot. */
export const chartStops = (): Drawing =>
  chart(stops, 80, { width: 600, height: 440 }, { of: ['moth'], handle: false })
