import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { view } from '../../../src/drawing/view/view.ts'
import { pond } from '../garden.ts'

export const viewPondFromBehind = (): Drawing =>
  view(pond, 140, { turn: 150, tilt: 30 }, { width: 600, height: 440 })
