import * as says from '../../../content/words/bench.ts'
import type { FigureName } from '../state/config.ts'

/** What stands under each figure, and calls it everywhere. */
export const captions: Readonly<Record<FigureName, string>> = {
  view: says.standingCard,
  sheet: says.flatSheet,
  section: says.section,
  chart: says.chart,
}
