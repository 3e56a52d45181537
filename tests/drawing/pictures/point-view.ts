import { pointInView } from '../../../src/drawing/page-point/page-point.ts'
import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { bare } from '../garden.ts'

export const pointView = (): Drawing =>
  pointInView(view(bare, 60, DEFAULT_CAMERA, { width: 340, height: 280 }, { handle: true }), [60, 80], 60, {
    text: 15,
    unit: 'mm',
  })
