import type { Drawing } from '../../../src/drawing/pen/marks.ts'
import { DEFAULT_CAMERA, view } from '../../../src/drawing/view/view.ts'
import { heron } from '../garden.ts'

export const viewHeronSmall = (): Drawing =>
  view(heron, 60, DEFAULT_CAMERA, { width: 340, height: 280 }, { rise: ['beak', 'jaw'], handle: true })
