import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { view } from '../../../src/drawing/view/view.ts'
import { moth } from '../garden.ts'

export const viewMothFlat = (): Drawing =>
  view(moth, 180, { turn: -30, tilt: 44 }, { width: 600, height: 440 })
