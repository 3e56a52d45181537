import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { tangle } from '../garden.ts'

export const viewTangle = (): Drawing =>
  view(tangle, 100, { ...DEFAULT_CAMERA, tilt: 60 }, { width: 600, height: 440 })
