import type { Drawing } from '../../../src/drawing/marks.ts'
import { view } from '../../../src/drawing/view.ts'
import { pond } from '../garden.ts'

export const viewPondFromBehind = (): Drawing =>
  view(pond, 140, { turn: 150, tilt: 30 }, { width: 600, height: 440 })
