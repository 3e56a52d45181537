import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { view } from '../../../src/drawing/view/view.ts'
import { pond } from '../garden.ts'

export const viewPond = (): Drawing =>
  view(
    pond,
    110,
    { turn: -30, tilt: 44 },
    { width: 600, height: 440 },
    { rise: ['pond'], handle: true, text: 24 },
  )
