import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { view } from '../../../src/drawing/view/view.ts'
import { heron } from '../garden.ts'

export const viewHeronFromBehind = (): Drawing =>
  view(heron, 110, { turn: 150, tilt: 25 }, { width: 600, height: 440 })
